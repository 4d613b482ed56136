package kitchen

import (
	"math"
	"testing"
)

func TestPriceOf(t *testing.T) {
	for text, want := range map[string]struct {
		perKilo  float64
		currency string
	}{
		"12.50": {12.5, ""}, "€ 12,50 / kg": {12.5, "€"}, "3 EUR per 250 g": {12, "EUR"}, "£9/500g": {18, "£"}, "2.2 $ / lb": {2.2 / 0.45359237, "$"}, "0": {0, ""},
	} {
		if p, ok := priceOf(text); !ok || math.Abs(1000*p.PerGram-want.perKilo) > 1e-9 || p.Currency != want.currency {
			t.Errorf("%q is %v %q a kilogram (%v), want %v", text, 1000*p.PerGram, p.Currency, ok, want)
		}
	}
	for _, text := range []string{"", "cheap", "3 / L", "3 per bottle", "-2", "3-4", "3 per 0 g"} {
		if p, ok := priceOf(text); ok {
			t.Errorf("%q is %+v", text, p)
		}
	}
}
