package reports

import (
	"fmt"

	"foamfield/analysis/result"
)

// tries answers for the formulas somebody asked about.
func (b *builder) tries() Section {
	s := Section{ID: "tries", Title: "Formulas you asked about", Reader: Cook}
	for i, t := range b.r.Tries {
		path := fmt.Sprintf("tries[%d]", i)
		if t.Chance == nil {
			s.Blocks = append(s.Blocks, head(t.Name), List{Items: sentences(t.Notes)})
			continue
		}
		asked := result.Start{Mix: t.Mix, Chance: *t.Chance, Fails: t.Fails, Predicted: t.Predicted, Ingredients: t.Ingredients,
			GramsNote: t.GramsNote, MadeTimes: t.MadeTimes, MadeWorked: t.MadeWorked, ClosestTrial: t.ClosestTrial, Notes: t.Notes}
		s.Blocks = append(s.Blocks, head(t.Name))
		s.Blocks = append(s.Blocks, b.inGrams("", path, asked)...)
		s.Blocks = append(s.Blocks, b.sure(path, asked)...)
	}
	return s
}

// triesInBrief is a line a formula for a terminal.
func (b *builder) triesInBrief() (out []Block) {
	for i, t := range b.r.Tries {
		line := say(Span{Text: t.Name, Strong: true}, ": ")
		if t.Chance == nil {
			for _, n := range t.Notes[max(0, len(t.Notes)-2):] {
				line = say(line, capital(say(sentence(n))), " ")
			}
		} else {
			path := fmt.Sprintf("tries[%d]", i)
			line = say(line, b.oftenAndFails(path, result.Start{Chance: *t.Chance, Fails: t.Fails}))
			var grams []Text
			for k, l := range t.Ingredients {
				grams = append(grams, say(l.Name+" ", trimmed(fmt.Sprintf("tries[%d].ingredients[%d].grams", i, k), l.Grams, 2), " g"))
			}
			if len(grams) > 0 {
				line = say(line, " In grams: ", listed(grams), ".")
			}
		}
		out = append(out, Paragraph{Text: line})
	}
	return out
}

func sentences(notes []string) (items []Text) {
	for _, n := range notes {
		items = append(items, capital(say(sentence(n))))
	}
	return items
}
