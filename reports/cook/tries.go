package cook

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// tries answers for the formulas somebody asked about.
func (b pages) tries() document.Section {
	s := document.Section{ID: "tries", Title: "Formulas you asked about", Reader: document.Cook}
	for i, t := range b.R.Tries {
		path := fmt.Sprintf("tries[%d]", i)
		if t.Chance == nil {
			s.Blocks = append(s.Blocks, say.Head(t.Name), document.List{Items: sentences(t.Notes)})
			continue
		}
		asked := result.Start{Mix: t.Mix, Chance: *t.Chance, Fails: t.Fails, Predicted: t.Predicted, Ingredients: t.Ingredients,
			GramsNote: t.GramsNote, MadeTimes: t.MadeTimes, MadeWorked: t.MadeWorked, MadeUnclear: t.MadeUnclear, ClosestTrial: t.ClosestTrial, Notes: t.Notes}
		s.Blocks = append(s.Blocks, say.Head(t.Name))
		s.Blocks = append(s.Blocks, b.inGrams("", path, asked)...)
		s.Blocks = append(s.Blocks, b.Sure(path, asked)...)
	}
	return s
}

// triesInBrief is a line a formula for a terminal.
func (b pages) triesInBrief() (out []document.Block) {
	for i, t := range b.R.Tries {
		line := say.Text(document.Span{Text: t.Name, Strong: true}, ": ")
		if t.Chance == nil {
			for _, n := range t.Notes[max(0, len(t.Notes)-2):] {
				line = say.Text(line, say.Sentence(n), " ")
			}
		} else {
			path := fmt.Sprintf("tries[%d]", i)
			line = say.Text(line, b.OftenAndFails(path, result.Start{Chance: *t.Chance, Fails: t.Fails}))
			var grams []document.Text
			for k, l := range t.Ingredients {
				grams = append(grams, say.Text(l.Name+" ", say.Trimmed(fmt.Sprintf("tries[%d].ingredients[%d].grams", i, k), l.Grams, 2), " g"))
			}
			if len(grams) > 0 {
				line = say.Text(line, " In grams: ", say.Listed(grams), ".")
			}
			for _, n := range t.Notes { // what was taken for granted, and what to beware of
				line = say.Text(line, " ", say.Sentence(n))
			}
		}
		out = append(out, document.Paragraph{Text: line})
	}
	return out
}

func sentences(notes []string) (items []document.Text) {
	for _, n := range notes {
		items = append(items, say.Sentence(n))
	}
	return items
}
