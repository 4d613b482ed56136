package main

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/kitchen"
	"foamfield/plots/wording"
)

// stock is what is at hand by the names typed, nil if it was not given.
func (f *flags) stock() ([]kitchen.Amount, error) {
	typed := f.text("stock", `type what is at hand, for example --stock "butter 2000, GMS 40"`)
	if typed == "" {
		return nil, f.err
	}
	amounts, err := kitchen.ParseAmounts(typed)
	if err != nil {
		return nil, fmt.Errorf("--stock: %w", err)
	}
	return amounts, nil
}

// gramsAtHand is what is at hand by the names that a plan has for it.
func gramsAtHand(amounts []kitchen.Amount, names []string) (map[string]float64, error) {
	out := map[string]float64{}
	for _, a := range amounts {
		i := slices.IndexFunc(names, func(n string) bool { return strings.EqualFold(n, a.Name) })
		switch {
		case i < 0 && len(names) == 0:
			return nil, fmt.Errorf("--stock: these trials are not in grams of ingredients, so nothing can be held against %q: leave the flag out", a.Name)
		case i < 0:
			return nil, fmt.Errorf("--stock: %q is none of the plan's ingredients: use the same names, %s", a.Name, wording.List(names))
		case a.Unit != kitchen.InGrams:
			return nil, fmt.Errorf("--stock: %q is in %s: type grams or kg", a.Name, a.Unit)
		}
		out[names[i]] = a.Value
	}
	return out, nil
}
