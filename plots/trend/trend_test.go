package trend

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"

	"foamfield/analysis/result"
)

// weekly is a history of so many weeks, of which these have a hold.
func weekly(n int, held ...int) *result.Trend {
	t := &result.Trend{ReferenceFrom: "the surest start"}
	for i := range n {
		t.Periods = append(t.Periods, result.Period{Label: fmt.Sprintf("week of %d Mar 2026", 2+7*i)})
	}
	for _, i := range held {
		t.Periods[i].HoldMinutes = &result.Band{Mid: 20, Low: 15, High: 26}
	}
	return t
}

func TestWeeksNeedTwoToCompare(t *testing.T) {
	endless, none := weekly(2, 0, 1), weekly(2, 0, 1)
	endless.Periods[1].HoldMinutes.High = math.Inf(1)
	none.Periods[1].HoldMinutes.Low = 0
	for _, c := range []struct {
		name  string
		of    *result.Trend
		drawn bool
	}{
		{"no weeks", weekly(0), false},
		{"one week", weekly(1, 0), false},
		{"two weeks, one of which has a hold", weekly(2, 1), false},
		{"a limit without end", endless, false},
		{"a limit that no logarithm has", none, false},
		{"two weeks", weekly(2, 0, 1), true},
		{"three, the middle one without a hold", weekly(3, 0, 2), true},
		{"more than the axis names", weekly(100, 0, 50, 99), true},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, ok := Weeks(c.of)
			if ok != c.drawn {
				t.Fatalf("drawn: %v", ok)
			}
			if !ok {
				return
			}
			if _, err := f.SVG(); err != nil {
				t.Error(err)
			}
			if !strings.Contains(f.Caption, "90 %") || !strings.Contains(f.Caption, c.of.ReferenceFrom) {
				t.Errorf("caption %q", f.Caption)
			}
		})
	}
}

func TestOptimaThatAreInside(t *testing.T) {
	for _, c := range []struct {
		name    string
		inside  []float64 // of the weeks of each variable
		weeks   int
		verdict result.Showing
		drawn   bool
		title   string
	}{
		{"one week", []float64{1}, 1, result.NotSeen, false, ""},
		{"a peak at the end of what was tried", []float64{0.5}, 3, result.NotSeen, false, ""},
		{"a peak that stays", []float64{0.95}, 3, result.NotSeen, true, "No move of the best mix is shown"},
		{"a move that is suggested", []float64{0.95}, 3, result.Suggested, true, "No move of the best mix is shown"},
		{"a move that is shown", []float64{0.95}, 3, result.Shown, true, "The best blend HLB moves from week to week"},
		{"two variables, one of which peaks inside", []float64{0.95, 0.3}, 3, result.NotSeen, true, "No move of the best mix is shown"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := weekly(c.weeks)
			for v, inside := range c.inside {
				name, label := []string{"blend_hlb", "fat_percent"}[v], []string{"blend HLB", "fat"}[v]
				for i, p := range r.Periods {
					at := 8 + float64(i)
					r.Optimum = append(r.Optimum, result.Optimum{Variable: name, Label: label, Period: p.Label, At: at, Low: at - 1, High: at + 1, Inside: inside})
				}
				r.Tests = append(r.Tests, result.TrendTest{What: "optimum:" + name, Verdict: c.verdict})
			}
			f, ok := Optima(r)
			if ok != c.drawn || f.Title != c.title {
				t.Fatalf("drawn %v, title %q", ok, f.Title)
			}
			if !ok {
				return
			}
			if _, err := f.SVG(); err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(f.Alt, "1 panel of") {
				t.Errorf("a variable that peaks outside has a panel: %q", f.Alt)
			}
		})
	}
}

func TestControlIsDrawnAsItIsSaid(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	points := func(n int, out ...int) (all []result.ControlPoint) {
		for i := range n {
			v := 10 + float64(i%3)
			p := result.ControlPoint{Period: "week 1", Value: result.Interval{Low: at(v), High: at(v)}}
			if i%4 == 3 {
				p.Value.High = nil // it held at least so long
			}
			all = append(all, p)
		}
		for _, i := range out {
			all[i].Out = "above"
		}
		return all
	}
	for _, c := range []struct {
		name    string
		points  []result.ControlPoint
		centre  *float64
		outcome result.Outcome
		unit    string
		drawn   bool
		title   string
		run     bool
	}{
		{"two trials", points(2), at(11), result.HoldMinutes, "min", false, "", false},
		{"no limits to hold them to", points(6), nil, result.HoldMinutes, "min", true, "Hold of single trials in the order of time", false},
		{"none outside", points(6), at(11), result.HoldMinutes, "min", true, "Hold: no trial lies outside the usual limits", false},
		{"one outside", points(6, 2), at(11), result.DrainedPercent, "ratio", true, "Drainage: 1 trial lies outside the usual limits", false},
		{"two outside", points(6, 2, 5), at(11), result.HoldMinutes, "ratio", true, "Hold: 2 trials lie outside the usual limits", false},
		{"so many that marks stand for several", points(3000, 7), at(11), result.HoldMinutes, "min", true, "Hold: 1 trial lies outside the usual limits", false},
		{"a long run on one side", points(6), at(11), result.HoldMinutes, "min", true, "Hold of many trials in a row lies on one side of the middle", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			k := &result.Control{Outcome: c.outcome, Unit: c.unit, Points: c.points, Centre: c.centre}
			if c.run {
				k.Outside = []string{"8 in a row on one side, up to march.xlsx, row 9"}
			}
			if c.centre != nil {
				k.Low, k.High = at(5), at(20)
			}
			f, ok := Control(&result.Trend{}, k)
			if ok != c.drawn || f.Title != c.title {
				t.Fatalf("drawn %v, title %q", ok, f.Title)
			}
			if !ok {
				return
			}
			if _, err := f.SVG(); err != nil {
				t.Error(err)
			}
			residuals := strings.Contains(f.Caption, "over what its mix makes one expect")
			if residuals != (c.unit == "ratio") {
				t.Errorf("caption %q", f.Caption)
			}
		})
	}
}

// A week has its name once, where its first trial stands, as far as there is room.
func TestWeekTicks(t *testing.T) {
	for _, c := range []struct {
		labels string
		width  vg.Length
		want   string
	}{
		{"a b c d", 400, "0a 1b 2c 3d"},
		{"a a a a b b c", 400, "0a 4b 6c"},
		{"a a a a b b a", 400, "0a 4b 6a"},
		{"wwwwwwww xxxxxxxx yyyyyyyy zzzzzzzz", 130, "0wwwwwwww 2yyyyyyyy"},
		{"week week week", 40, "0week"},
	} {
		var said []string
		for _, tick := range weekTicks(strings.Fields(c.labels), c.width) {
			said = append(said, fmt.Sprint(tick.Value, tick.Label))
		}
		if got := strings.Join(said, " "); got != c.want {
			t.Errorf("%s on %v: %q, want %q", c.labels, c.width, got, c.want)
		}
	}
}
