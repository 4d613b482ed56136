package cook

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

const firstProblems = 5

// toCheck says what to look at in the log.
func (b pages) toCheck() document.Section {
	s := document.Section{ID: "check", Title: "What to check in the log", Reader: document.Cook}
	var items []document.Text
	more := 0
	for _, grade := range []result.Severity{result.MustFix, result.PleaseLook} {
		for i, p := range b.R.Problems {
			if p.Severity != grade {
				continue
			}
			if len(items) == firstProblems {
				more++
				continue
			}
			items = append(items, say.Text(document.Span{Text: wording.Capital(say.Grades[grade]), Strong: true}, " ", b.problem(i, p)))
		}
	}
	if t := b.unclear(); len(t) > 0 {
		items = append([]document.Text{say.Text(document.Span{Text: "Fill in", Strong: true}, " ", t)}, items...)
	}
	switch {
	case len(items) == 0:
		s.Blocks = []document.Block{document.Paragraph{Text: b.nothingElse("Nothing: every row was read without a question.")}}
		return s
	case more > 0:
		items = append(items, say.Text(fmt.Sprintf("And %d more %s, listed under Problems.", more, say.Plural(more, "kind of problem", "kinds of problem"))))
	}
	s.Blocks = []document.Block{document.List{Items: items}}
	return s
}

// problem says where, what was read, and what to type instead.
func (b pages) problem(i int, p result.Problem) document.Text {
	t := say.Text(document.Span{Text: b.Place(p.At), Strong: true}, ": "+say.Ended(p.Read))
	if p.Do != "" {
		t = say.Text(t, " ", say.Sentence(p.Do))
	}
	if p.Count > 1 {
		t = say.Text(t, " (", say.Count(fmt.Sprintf("problems[%d].count", i), p.Count), " of this kind)")
	}
	return t
}
