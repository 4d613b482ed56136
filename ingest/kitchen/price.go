package kitchen

import (
	"foamfield/ingest/pattern"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/units"
)

// priceText is a price as kitchens write one: 12.50, € 12,50 / kg, 3 EUR per 250 g. A bare
// one is for a kilogram.
var priceText = pattern.Of(`^\s*([^\d\s.,/-]{0,4})\s*([0-9]+(?:[.,][0-9]+)?)\s*([^\d\s.,/]{0,4}?)\s*(?:(?:/|(?i:per))\s*([0-9]+(?:[.,][0-9]+)?)?\s*([^\d\s]+))?\s*$`)

const howToPrice = "type it by weight, for example 12.50, 12.50 / kg or 3 per 250 g"

// priceOf reads a price; false if it is none by weight.
func priceOf(text string) (ingredient.Price, bool) {
	m := priceText.FindStringSubmatch(text)
	if m == nil {
		return ingredient.Price{}, false
	}
	number := func(s string) float64 {
		r, err := quantity.Parse(s, units.Plain, units.NoUnit)
		if v, ok := r.Exact(); err == nil && ok {
			return v
		}
		return -1
	}
	p := ingredient.Price{PerGram: number(m[2]), Currency: strings.TrimSpace(m[1] + m[3])}
	grams := 1000.0
	if m[5] != "" {
		each := 1.0
		if m[4] != "" {
			each = number(m[4])
		}
		unit, ok := units.Parse(m[5])
		if !ok || unit.Dimension() != units.Mass {
			return p, false
		}
		one, err := quantity.Parse("1", units.Mass, unit)
		weight, exact := one.Exact()
		if err != nil || !exact {
			return p, false
		}
		grams = each * weight
	}
	p.PerGram /= grams
	return p, p.PerGram >= 0 && grams > 0
}
