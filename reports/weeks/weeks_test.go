package weeks

import (
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/document"
)

// sections are the pages a history has, first to last.
func sections(d document.Document) (ids []string) {
	for _, s := range d.Sections {
		ids = append(ids, s.ID)
	}
	return ids
}

// said is every text of a section's paragraphs, callouts, lists and tables.
func said(d document.Document, id string) string {
	var b strings.Builder
	put := func(texts ...document.Text) {
		for _, t := range texts {
			for _, s := range t {
				b.WriteString(s.Text)
			}
			b.WriteString("\n")
		}
	}
	for _, s := range d.Sections {
		if s.ID != id {
			continue
		}
		for _, block := range s.Blocks {
			switch x := block.(type) {
			case document.Paragraph:
				put(x.Text)
			case document.Callout:
				b.WriteString(x.Title + "\n")
				put(x.Text)
			case document.List:
				put(x.Items...)
			case document.Table:
				b.WriteString(x.Caption + "\n")
				for _, row := range x.Rows {
					put(row...)
				}
			}
		}
	}
	return b.String()
}

func TestPagesOfWhatThereIs(t *testing.T) {
	p, seen := 0.012, 1.4
	chance := &result.TrendChance{Mean: 0.71, Low: 0.42, High: 0.9}
	for _, c := range []struct {
		name     string
		of       result.Trend
		sections []string
		in       string // a section
		says     []string
		silent   []string
	}{
		{"nothing at all", result.Trend{}, nil, "", nil, nil},
		{"a question", result.Trend{Questions: []result.Question{{Asked: "Is 03/04 in March or in April?", Do: "type it as 2026-03-04"}}},
			[]string{"weeks"}, "weeks", []string{"Asked\n", "Is 03/04 in March or in April? Type it as 2026-03-04."}, nil},
		{"a note", result.Trend{Notes: []string{"all trials are of one week"}}, []string{"weeks"}, "weeks", []string{"All trials are of one week."}, nil},
		{"a start that weeks do not touch", result.Trend{Now: &result.Now{Period: "week of 2 Mar 2026", Latest: chance, Pooled: chance}},
			[]string{"weeks"}, "weeks", []string{"as of the week of 2 Mar 2026", "71\n42 to 90"}, []string{"Which one to trust"}},
		{"a start of the latest lot", result.Trend{Now: &result.Now{Period: "week of 2 Mar 2026", Lots: []string{"butter lot B"}, Latest: chance, Matters: true}},
			[]string{"weeks"}, "weeks", []string{"with butter lot B", "Which one to trust", "trust the latest"}, []string{"all weeks taken for one"}},
		{"a week in which clogs were not logged", result.Trend{Periods: []result.Period{{Label: "week 1", Trials: 4, Split: result.TrendCount{Count: 1, Of: 4, Low: 0.01, High: 0.75}}}},
			[]string{"by-week"}, "by-week", []string{"the reference mix", "not logged", "1 of 4 (1 to 75)"}, nil},
		{"what cannot be told apart", result.Trend{CannotSeparate: []result.NotApart{{A: "butter lot", B: "week", Sentence: "the lot changed with week 3, so lot and week cannot be told apart"}}},
			[]string{"lots"}, "lots", []string{"The lot changed with week 3"}, nil},
		{"tests of all four words", result.Trend{Tests: []result.TrendTest{
			{What: "drift", Outcome: result.HoldMinutes, P: &p, PAdjusted: &p, Verdict: result.Shown, Effect: &result.Ratio{Ratio: 0.71, Low: 0.6, High: 0.84}, SmallestSeen: &seen},
			{What: "week", Outcome: result.HoldMinutes, P: &p, PAdjusted: &p, Verdict: result.Suggested},
			{What: "day", Outcome: result.HoldMinutes, P: &p, PAdjusted: &p, Verdict: result.NotSeen},
			{What: "lot", By: "butter lot", Outcome: result.HoldMinutes, Verdict: result.NotTested, Sentence: "not tested: one lot"}}},
			[]string{"tests"}, "tests", []string{"shown", "0.71 (0.60 to 0.84)", "suggested", "not shown", "Not tested: one lot.", "0.012"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := Build(&c.of)
			got := slices.DeleteFunc(sections(d), func(id string) bool { return id == "weeks" && !slices.Contains(c.sections, id) })
			if !slices.Equal(got, c.sections) {
				t.Errorf("sections %v", got)
			}
			text := said(d, c.in)
			for _, s := range c.says {
				if !strings.Contains(text, s) {
					t.Errorf("it does not say %q in %q", s, text)
				}
			}
			for _, s := range c.silent {
				if strings.Contains(text, s) {
					t.Errorf("it says %q in %q", s, text)
				}
			}
		})
	}
}

// What is said to be of dates or of names is what decided the order, and logs are counted.
func TestTitleSaysOfWhat(t *testing.T) {
	log := func(names ...string) (all []result.Input) {
		for _, n := range names {
			all = append(all, result.Input{File: n})
		}
		return all
	}
	for _, c := range []struct {
		name, title, subtitle string
		of                    result.Trend
	}{
		{"no log", "Across weeks: a log", "0 trials in 0 weeks, in the order of their dates", result.Trend{OrderBy: result.TrendByDate}},
		{"one log", "Across weeks: march.xlsx", "1 trial in 1 week, in the order of their dates", result.Trend{OrderBy: result.TrendByDate, Trials: 1, Periods: make([]result.Period, 1), Inputs: log("march.xlsx")}},
		{"one log without weeks", "Across weeks: march.xlsx", "5 trials, in the order of their rows, since there are no dates", result.Trend{OrderBy: result.TrendByName, Trials: 5, Periods: make([]result.Period, 1), Inputs: log("march.xlsx")}},
		{"three logs without dates", "Across weeks: w1.csv and 2 more", "30 trials in 3 weeks, in the order of names, since there are no dates", result.Trend{OrderBy: result.TrendByName, Trials: 30, Periods: make([]result.Period, 3), Inputs: log("w1.csv", "w2.csv", "w3.csv")}},
	} {
		if d := Build(&c.of); d.Title != c.title || d.Subtitle != c.subtitle {
			t.Errorf("%s: %q, %q", c.name, d.Title, d.Subtitle)
		}
	}
}
