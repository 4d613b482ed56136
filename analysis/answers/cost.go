package answers

import (
	"cmp"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/ingredient"
)

// prices are what the kitchen pays, by the log's names; nil where it says none.
func (s *Ground) prices() map[string]ingredient.Price {
	var out map[string]ingredient.Price
	for _, t := range s.OnSurface() {
		for _, p := range t.Recipe {
			if p.What.Price == nil {
				continue
			}
			if out == nil {
				out = map[string]ingredient.Price{}
			}
			out[p.Name] = *p.What.Price
		}
	}
	return out
}

// cost of a formula in grams; nil without grams or prices, or where prices are in several
// currencies.
func (s *Ground) cost(lines []result.FormulaLine, prices map[string]ingredient.Price, portions int) *result.Cost {
	if len(lines) == 0 || len(prices) == 0 {
		return nil
	}
	c := &result.Cost{Unpriced: []string{}}
	grams := 0.0
	for _, l := range lines {
		grams += l.Grams
		price, ok := prices[l.Name]
		if !ok {
			c.Unpriced = append(c.Unpriced, l.Name)
			continue
		}
		if c.Currency != "" && price.Currency != "" && price.Currency != c.Currency {
			return nil
		}
		c.Currency = cmp.Or(c.Currency, price.Currency)
		c.Batch += l.Grams * price.PerGram
	}
	if len(c.Unpriced) == len(lines) {
		return nil
	}
	c.Per100Grams = 100 * c.Batch / grams
	if portions > 0 {
		each := c.Batch / float64(portions)
		c.Portions, c.Portion = &portions, &each
	}
	return c
}

const (
	cheapestTried = 30   // mixes weighed on the scale, the cheapest first
	worthSaving   = 0.02 // of the cost; less is not named
)

// cheapest is the mix of least cost that has the wanted chance as weighed; nil where there
// are no prices, no such mix, or nothing to save.
func (s *Ground) cheapest(starts []result.Start, portions int) *result.Cheapest {
	prices := s.prices()
	if len(starts) == 0 || len(prices) == 0 || starts[0].Cost == nil || s.HoldIsAGuess {
		return nil
	}
	_, template, _ := s.Scale.Grams(s.Values(starts[0].Mix))
	if template == nil {
		return nil
	}
	type priced struct {
		at   region.Point
		cost float64
	}
	var all []priced
	for _, p := range s.Search.Points() {
		if !p.Allowed || p.Chance < s.want.WantedChance.Value {
			continue
		}
		if f := s.inProportions(template, p.Mix); f != nil {
			all = append(all, priced{p, costOf(f, prices)})
		}
	}
	slices.SortStableFunc(all, func(a, b priced) int { return cmp.Compare(a.cost, b.cost) })
	for _, p := range all[:min(len(all), cheapestTried)] {
		f := s.inProportions(template, p.at.Mix)
		values := s.Scale.Values(f)
		if at := s.Search.At(values); !at.Allowed || at.Chance < s.want.WantedChance.Value {
			continue
		}
		lines := s.Scale.Lines(f)
		cost := s.cost(lines, prices, portions)
		if cost == nil || cost.Batch > starts[0].Cost.Batch*(1-worthSaving) {
			return nil
		}
		return &result.Cheapest{Mix: s.Mix(values), Ingredients: lines, Chance: s.chance(values), Cost: *cost}
	}
	return nil
}

func costOf(f *formula.Formula, prices map[string]ingredient.Price) (sum float64) {
	for _, l := range f.Lines {
		sum += l.Grams * prices[l.Name].PerGram
	}
	return sum / f.BatchGrams
}

// inProportions is a mix in the proportions of one trial; nil if they cannot make it.
func (s *Ground) inProportions(t *surface.Placed, values []float64) *formula.Formula {
	m := s.Mix(values)
	if m.FatPercent == nil || m.EmulsifierPercent == nil {
		return nil
	}
	f, err := s.Scale.Solve(t.Recipe, formula.Wanted{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: m.BlendHLB})
	if err != nil {
		return nil
	}
	return f
}
