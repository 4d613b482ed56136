package reports

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/reports/document"
	"foamfield/reports/weeks"
)

// threeWeeks is a history in which the best HLB moves and a lot goes with a week.
func threeWeeks() *result.Trend {
	ratio := func(v float64) *result.Ratio { return &result.Ratio{Ratio: v, Low: v * 0.81, High: v * 1.27} }
	t := &result.Trend{Schema: result.TrendSchema, Inputs: []result.Input{{File: "march.xlsx"}}, OrderBy: result.TrendByDate, Trials: 36, ReferenceFrom: "the surest start",
		Summary: []string{"Hold in the week of 16 Mar 2026 is 0.72 times what it is in the week of 2 Mar 2026."}, Notes: []string{"one without a date was left out"},
		Questions:      []result.Question{{Asked: "which stands first, the day or the month?", Do: "type it"}},
		Now:            &result.Now{Period: "week of 16 Mar 2026", Lots: []string{"butter lot B"}, Latest: &result.TrendChance{Mean: 0.413, Low: 0.112, High: 0.763}, Pooled: &result.TrendChance{Mean: 0.713, Low: 0.412, High: 0.863}, Matters: true, Sentence: "it matters"},
		CannotSeparate: []result.NotApart{{A: "butter lot", B: "week", Sentence: "the butter lot changed with the week"}},
		Groups:         []result.GroupStep{{By: "butter lot or week", Of: "B", Against: "A", Outcome: result.HoldMinutes, Ratio: 0.7123, Low: 0.611, High: 0.83, Trials: 12}},
		Components:     []result.Component{{Of: "day", Outcome: result.HoldMinutes, SD: 0.123, Low: 0.021, High: 0.237}},
		Changes:        []result.Change{{Outcome: result.HoldMinutes, At: "2026-03-16", Low: "2026-03-16", High: "2026-03-17", Ratio: *ratio(0.713), P: 0.0023, Sentence: "hold changed"}},
		Foreseen:       []result.WeekSaid{{Period: "week of 16 Mar 2026", Trials: 12, Said: 8.13, Worked: 5}},
		Disagree:       []result.OldTrial{{At: "march.xlsx, row 4", Period: "week of 2 Mar 2026", Outcome: result.HoldMinutes, Ratio: 2.213}},
		Drainage:       []result.DrainageCurve{{At: "march.xlsx, row 4", Model: "power law of half-times", Trials: 2, Readings: 9, HalfTime: 12.31, HalfTimeLimits: &result.Interval{Low: at(10.2), High: at(15.1)}, AtTarget: 6.13}}}
	for i, label := range []string{"week of 2 Mar 2026", "week of 9 Mar 2026", "week of 16 Mar 2026"} {
		v := 1.1 - 0.17*float64(i)
		t.Periods = append(t.Periods, result.Period{Label: label, FirstDate: "2026-03-02", LastDate: "2026-03-05", Trials: 12, Level: ratio(v), DrainedLevel: ratio(1 / v),
			HoldMinutes: &result.Band{Mid: 21 * v, Low: 17 * v, High: 26 * v}, Chance: &result.TrendChance{Mean: 0.613, Low: 0.213, High: 0.913},
			Clogged: result.TrendCount{Count: 1, Of: 12, Low: 0.0043, High: 0.339}})
		t.Optimum = append(t.Optimum, result.Optimum{Variable: "blend_hlb", Label: "blend HLB", Outcome: result.HoldMinutes, Period: label, At: 8.13 + float64(i), Low: 7.4 + float64(i), High: 9.1 + float64(i), Inside: 0.983})
	}
	t.Tests = []result.TrendTest{
		{What: "optimum:blend_hlb", Outcome: result.HoldMinutes, P: at(0.00123), PAdjusted: at(0.0112), Verdict: result.Shown, Effect: ratio(2.13), SmallestSeen: at(1.13), Sentence: "shown: it moves"},
		{What: "lot", By: "butter lot", Outcome: result.HoldMinutes, Verdict: result.NotTested, Sentence: "not tested: butter lot changed only with the weeks"}}
	c := result.Control{Outcome: result.HoldMinutes, Of: "residuals", Unit: "ratio", Centre: at(1.013), Low: at(0.513), High: at(1.97), Slope: ratio(0.913), Rising: at(0.0213), Sentence: "none lies outside",
		Catches: []result.Catch{{Repeats: 2, Ratio: 0.613}}}
	for k := range 9 {
		p := result.ControlPoint{At: "march.xlsx, row 4", Date: "2026-03-02", Period: "week of 2 Mar 2026", Value: result.Interval{Low: at(0.8 + 0.05*float64(k))}}
		if k%4 > 0 {
			p.Value.High = p.Value.Low
		}
		c.Points = append(c.Points, p)
	}
	t.Control = []result.Control{c}
	return t
}

// Every number of the pages is in trend.json, and the page for cooks has no word of statistics.
func TestTrendSaysWhatTrendJSONHas(t *testing.T) {
	r := threeWeeks()
	encoded, err := TrendJSON(r)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(encoded, &tree); err != nil {
		t.Fatal(err)
	}
	numbers := 0
	check := func(x document.Text) {
		for _, s := range x {
			if s.Num == nil {
				continue
			}
			numbers++
			v, ok := resolve(tree, s.Num.Path)
			if !ok || math.Abs(v-s.Num.Value) > 1e-9*math.Abs(v) || !agrees(s.Text, v) {
				t.Errorf("%q says %q of %v at %s", x, s.Text, v, s.Num.Path)
			}
		}
	}
	d := weeks.Build(r)
	texts(d.Brief, check)
	for _, s := range d.Sections {
		texts(s.Blocks, check)
		words := s.Title + "\n" + whole(s.Blocks)
		for _, b := range s.Blocks {
			if f, is := b.(document.FigureRef); is {
				words += "\n" + d.Figures[f.Name].Title + d.Figures[f.Name].Caption
			}
		}
		if found := statistics.FindString(words); s.Reader == document.Cook && found != "" {
			t.Errorf("section %s says %q", s.ID, found)
		}
	}
	if numbers < 80 || len(d.Sections) < 9 {
		t.Errorf("%d numbers in %d sections", numbers, len(d.Sections))
	}
	if len(plots.Trends(r)) != 3 {
		t.Errorf("%d figures", len(plots.Trends(r)))
	}
	for _, f := range plots.Trends(r) {
		if _, err := f.SVG(); err != nil {
			t.Error(err)
		}
	}
	weeks.Build(&result.Trend{}) // accepts however little there is
}

// Bounds stand in two columns, and a text of the log is no formula.
func TestTidyCSV(t *testing.T) {
	got, err := TidyCSV(result.Tidy{Labels: []string{"butter lot"}, Extras: []string{"chargers"}, Rows: []result.TidyRow{
		{Trial: "=1", At: "a.csv, row 2", Date: "2026-03-02", Period: "week of 2 Mar 2026", Labels: []string{"A"}, Mix: result.Mix{FatPercent: at(40), Extras: map[string]float64{"chargers": 2}},
			Outcome: result.HoldMinutes, Value: result.Interval{Low: at(25)}}}})
	if err != nil {
		t.Fatal(err)
	}
	const want = "trial,at,date,week,day,cook,canister,butter_lot,fat_percent,emulsifier_percent,emulsifier_grams,blend_hlb,chargers,outcome,low,high\n" +
		"'=1,\"a.csv, row 2\",2026-03-02,week of 2 Mar 2026,,,,A,40,,,,2,hold_minutes,25,\n"
	if string(got) != want {
		t.Errorf("%s", strings.ReplaceAll(string(got), "\n", "\\n\n"))
	}
}
