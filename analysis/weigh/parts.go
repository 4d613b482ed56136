package weigh

import (
	"fmt"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/ingredient"
)

// The three parts that any mix has. A log in percents is weighed by them.
var (
	pureFat    = ingredient.Ingredient{Name: "pure fat", Kind: ingredient.Fat, FatPercent: &ingredient.Range{Low: 100, Value: 100, High: 100}}
	emulsifier = ingredient.Ingredient{Name: "emulsifiers together", Kind: ingredient.Emulsifier}
	allElse    = ingredient.Ingredient{Name: "water part and all else", Kind: ingredient.Water}
	threeParts = []formula.Part{{Name: pureFat.Name, Grams: 1, What: &pureFat}, {Name: emulsifier.Name, Grams: 1, What: &emulsifier, Blended: true},
		{Name: allElse.Name, Grams: 1, What: &allElse}}
)

// inParts weighs a mix of which the log says percents but of no ingredient the grams: how much fat, emulsifier and
// all else a batch takes.
func (s *Scale) inParts(m result.Mix) (*formula.Formula, *surface.Placed, string) {
	if m.FatPercent == nil || m.EmulsifierPercent == nil {
		return nil, nil, "the log has no grams of each ingredient, so the formula is given in percent only"
	}
	f, err := s.Solve(threeParts, formula.Wanted{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: m.BlendHLB})
	if err != nil {
		return nil, nil, err.Error()
	}
	note := "the log has no grams of each ingredient, so fat is counted as pure: of a butter of 82 % take 1.22 times as much, and so much less of the rest"
	if m.BlendHLB != nil {
		note += ". " + blended(*m.BlendHLB)
	}
	return f, nil, note
}

// Taken is what the parts in a formula of a log in percents are taken for.
func Taken(lines []result.FormulaLine) (out []result.Used) {
	for _, p := range threeParts {
		if slices.ContainsFunc(lines, func(l result.FormulaLine) bool { return l.Name == p.Name }) {
			u := result.Used{Name: p.Name, Kind: p.What.Kind.String(), From: "a part of the mix: the log has no grams of each ingredient"}
			if p.What.FatPercent != nil {
				u.FatPercent = &p.What.FatPercent.Value
			}
			out = append(out, u)
		}
	}
	return out
}

// blended says of which emulsifiers the grams are.
func blended(hlb float64) string {
	return fmt.Sprintf("The emulsifiers are weighed together, blended to HLB %.1f: foamfield blend works out how much of each", hlb)
}
