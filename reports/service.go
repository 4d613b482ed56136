package reports

import (
	"fmt"
	"slices"

	"foamfield/analysis/result"
)

// service says how the surest start is made for service and split over canisters.
func (b *builder) service() []Block {
	s := b.r.Service
	if s == nil {
		return nil
	}
	if s.Note != "" {
		return []Block{head("For service"), Paragraph{Text: capital(say(sentence(s.Note)))}}
	}
	var grams, fills []Text
	for i, l := range s.Ingredients {
		grams = append(grams, say(num(fmt.Sprintf("service.ingredients[%d].grams", i), l.Grams, decimals(b.r.Batch.ScaleStepGrams)), " g "+l.Name))
	}
	for i, f := range s.Fills {
		name := f.Canister
		if name == "" {
			name = fmt.Sprintf("canister %d", i+1)
		}
		fills = append(fills, say(trimmed(fmt.Sprintf("service.fills[%d].grams", i), f.Grams, 0), " g into "+name))
	}
	t := say("Make ", trimmed("service.grams", s.Grams, 1), " g ("+s.From+"): ", listed(grams), ". Then ", listed(fills), ". Chargers: to each canister's marking.")
	blocks := []Block{head("For service"), Paragraph{Text: t}}
	if slices.ContainsFunc(s.Fills, func(f result.Fill) bool { return f.Beyond }) {
		blocks = append(blocks, Callout{Caution: true, Title: "Fill:", Text: say("No trial had as much in a canister of this size. Never more than each canister's marking allows; try it before service.")})
	}
	return blocks
}
