package analysis

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
)

// Canister is one that a service fills.
type Canister struct {
	Text   string  // as typed
	Litres float64 // 0 = not said
	Grams  float64 // to go into it; 0 = by its size
}

// service splits the surest start over canisters; nil if nobody asks or nothing is known.
// Trials to be made keep the batch of trials.
func service(r *result.Results, canisters []Canister, asked *float64) *result.Service {
	if len(canisters) == 0 || len(r.Starts) == 0 || len(r.Starts[0].Ingredients) == 0 {
		return nil
	}
	s := &result.Service{From: "--batch", Ingredients: []result.FormulaLine{}, Fills: []result.Fill{}}
	size, _, sized := litresOf(r.Batch.Canister)
	logged := func(c Canister) bool { return sized && c.Litres == size && r.Batch.LargestFillGrams != nil }
	litres, said, strange := 0.0, 0.0, ""
	for _, c := range canisters {
		litres, said = litres+c.Litres, said+c.Grams
		if !logged(c) {
			strange = c.Text
		}
	}
	switch {
	case said > 0:
		s.Grams = said
	case asked != nil:
		s.Grams = *asked
	case strange == "":
		s.Grams, s.From = *r.Batch.LargestFillGrams*float64(len(canisters)), fmt.Sprintf("the largest fill logged, %.0f g in %s", *r.Batch.LargestFillGrams, r.Batch.Canister)
	default:
		s.Note = fmt.Sprintf("no trial filled a canister of %s, so no fill is suggested: say with --batch how much all of them get, each by its marking", strange)
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
		l.WithinGrams, l.Ounces = nil, nil
		l.WeighingErrorPercent = 100 * step / 2 / l.Grams
		s.Ingredients = append(s.Ingredients, l)
	}
	for _, c := range canisters {
		f := result.Fill{Canister: c.Text, Grams: c.Grams}
		if c.Litres > 0 {
			f.Litres = &c.Litres
			if f.Grams == 0 {
				f.Grams = math.Floor(s.Grams * c.Litres / litres)
			}
		}
		f.Beyond = !logged(c) || f.Grams > *r.Batch.LargestFillGrams
		s.Fills = append(s.Fills, f)
	}
	return s
}

var litresText = regexp.MustCompile(`(?i)^\s*([0-9]+(?:[.,][0-9]+)?)\s*(l|litres?|liters?|ml)\.?\s*(?:[x×*]\s*([0-9]+))?\s*$`)

// litresOf reads "0.5 L x 2"; false if it is no size.
func litresOf(text string) (litres float64, many int, ok bool) {
	m := litresText.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, false
	}
	litres, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64)
	if strings.EqualFold(m[2], "ml") {
		litres /= 1000
	}
	many = 1
	if m[3] != "" {
		many, _ = strconv.Atoi(m[3])
	}
	return litres, many, err == nil && litres > 0 && litres <= 10 && many > 0 && many <= 50
}

// ParseCanisters reads the canisters of a service: "1 L x 2, 0.5 L".
func ParseCanisters(text string) ([]Canister, error) {
	var out []Canister
	for _, item := range regexp.MustCompile(`[;+]|,\s+|,$`).Split(text, -1) {
		if strings.TrimSpace(item) == "" {
			continue
		}
		litres, many, ok := litresOf(item)
		if !ok {
			return nil, fmt.Errorf("%q is no size of canister; type for example \"1 L x 2, 0.5 L\"", strings.TrimSpace(item))
		}
		for range many {
			out = append(out, Canister{Text: strconv.FormatFloat(litres, 'f', -1, 64) + " L", Litres: litres})
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no canister was typed; type for example \"1 L x 2, 0.5 L\"")
	}
	return out, nil
}
