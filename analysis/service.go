package analysis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/trial"
)

// service splits the surest start over canisters; nil if nobody asks or nothing is known.
// Trials to be made keep the batch of trials.
func service(r *result.Results, canisters []trial.Canister, asked *float64) *result.Service {
	if len(canisters) == 0 || len(r.Starts) == 0 || len(r.Starts[0].Ingredients) == 0 {
		return nil
	}
	s := &result.Service{From: "--batch", Ingredients: []result.FormulaLine{}, Fills: []result.Fill{}}
	largest := largestFills(r.Trials)
	litres, said, fills := 0.0, 0.0, 0.0
	var strange []string
	for _, c := range canisters {
		litres, said, fills = litres+c.Litres, said+c.Grams, fills+largest[c.Litres]
		if largest[c.Litres] == 0 && !slices.Contains(strange, c.Text) {
			strange = append(strange, c.Text)
		}
	}
	switch {
	case said > 0:
		s.Grams = said
	case asked != nil:
		s.Grams = *asked
	case len(strange) == 0:
		s.Grams, s.From = fills, "the largest fills logged, "+eachSize(canisters, largest)
	default:
		s.Note = fmt.Sprintf("no trial filled a canister of %s, so no fill is suggested: add up what their markings allow and say it with --batch, for example --batch 1200", strings.Join(strange, " or "))
		return s
	}
	start := r.Starts[0]
	total := 0.0
	for _, l := range start.Ingredients {
		total += l.Grams
	}
	step := r.Batch.ScaleStepGrams
	for _, l := range start.Ingredients {
		l.Grams = formula.OnScale(int(math.Round(l.Grams*s.Grams/total/step)), step)
		l.WithinGrams, l.Ounces, l.TooLittle = nil, nil, nil // which are those of the trials' batch
		l.WeighingErrorPercent = 100 * step / 2 / l.Grams
		s.Ingredients = append(s.Ingredients, l)
	}
	for _, c := range canisters {
		f := result.Fill{Canister: c.Text, Grams: c.Grams}
		if c.Litres > 0 {
			f.Litres = &c.Litres
			switch {
			case f.Grams > 0:
			case asked == nil:
				f.Grams = largest[c.Litres]
			default:
				f.Grams = math.Floor(s.Grams * c.Litres / litres)
			}
		}
		f.Beyond = f.Grams > largest[c.Litres]
		s.Fills = append(s.Fills, f)
	}
	return s
}

// servedAt adds what so many grams for service cost: whoever makes them serves the portions
// out of them, not out of a batch of the trials.
func servedAt(c *result.Cost, grams float64) {
	if c == nil {
		return
	}
	all := c.Per100Grams * grams / 100
	c.Service = &all
	if c.Portions != nil {
		each := all / float64(*c.Portions)
		c.Portion = &each
	}
}

// largestFills is the most that a trial had in a canister, by litres; what was too much for
// its canister does not count.
func largestFills(trials []result.Trial) map[float64]float64 {
	out := map[float64]float64{}
	for _, t := range trials {
		litres, many, ok := kitchen.CanisterSize(t.Canister)
		if ok && many == 1 && t.Used && !t.Flagged && t.BatchGrams != nil {
			out[litres] = math.Max(out[litres], *t.BatchGrams)
		}
	}
	return out
}

// eachSize says the largest fill of each size.
func eachSize(canisters []trial.Canister, largest map[float64]float64) string {
	var said []string
	for _, c := range canisters {
		if one := fmt.Sprintf("%.0f g in %s", largest[c.Litres], c.Text); !slices.Contains(said, one) {
			said = append(said, one)
		}
	}
	return strings.Join(said, " and ")
}
