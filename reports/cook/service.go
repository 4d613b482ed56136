package cook

import (
	"fmt"
	"slices"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// service says how the surest start is made for service and split over canisters.
func (b pages) service() []document.Block {
	s := b.R.Service
	if s == nil || len(b.R.Starts) == 0 {
		return nil
	}
	if s.Note != "" {
		return []document.Block{say.Head("For service"), document.Paragraph{Text: say.Sentence(s.Note)}}
	}
	if wording.Fails(b.R.Starts[0]) {
		return []document.Block{say.Head("For service"), document.Paragraph{Text: say.Text("No grams for service: this mix fails more often than it works.")}}
	}
	var grams, fills []document.Text
	for i, l := range s.Ingredients {
		grams = append(grams, say.Text(say.Num(fmt.Sprintf("service.ingredients[%d].grams", i), l.Grams, say.Decimals(b.R.Batch.ScaleStepGrams)), " g "+l.Name))
	}
	for i, f := range s.Fills {
		name := f.Canister
		if name == "" {
			name = fmt.Sprintf("canister %d", i+1)
		}
		fills = append(fills, say.Text(say.Trimmed(fmt.Sprintf("service.fills[%d].grams", i), f.Grams, 0), " g into "+name))
	}
	t := say.Text("Make ", say.Trimmed("service.grams", s.Grams, 1), " g ("+s.From+"): ", say.Listed(grams), ". Then ", say.Listed(fills), ". Chargers: to each canister's marking.")
	blocks := []document.Block{say.Head("For service"), document.Paragraph{Text: t}}
	if slices.ContainsFunc(s.Fills, func(f result.Fill) bool { return f.Beyond }) {
		blocks = append(blocks, document.Callout{Caution: true, Title: "Fill:", Text: say.Text(untried(s.Fills), " Never more than each canister's marking allows; try it before service.")})
	}
	return blocks
}

// untried says which fills no trial had.
func untried(fills []result.Fill) string {
	var sizes []string
	for _, f := range fills {
		switch {
		case !f.Beyond || slices.Contains(sizes, f.Canister):
		case f.Litres == nil:
			return "How large these canisters are is not said, so no trial tells whether so much goes in."
		default:
			sizes = append(sizes, f.Canister)
		}
	}
	return "No trial had as much in a canister of " + wording.Either(sizes) + "."
}
