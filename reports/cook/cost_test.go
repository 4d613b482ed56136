package cook

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// Costs are sentences, each with its stop, whatever is known.
func TestCostsAreSentences(t *testing.T) {
	one, eight := 1, 8
	portion := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		cost result.Cost
		says string
	}{
		{result.Cost{Batch: 3.557, Per100Grams: 0.889}, "It costs 3.56 a batch of 250 g, 0.89 for 100 g."},
		{result.Cost{Batch: 0.2, Per100Grams: 0.08}, "It costs 0.20 a batch of 250 g, 0.080 for 100 g."},
		{result.Cost{Batch: 3.557, Portions: &eight, Portion: portion(0.4446), Currency: "€"}, "It costs € 3.56 a batch of 250 g, € 0.44 for each of 8 portions."},
		{result.Cost{Batch: 3.557, Portions: &one, Portion: portion(3.557)}, "It costs 3.56 a batch of 250 g, which is one portion."},
		{result.Cost{Batch: 3.5, Service: portion(16.8), Portions: &eight, Portion: portion(2.1)}, "It costs 3.50 a batch of 250 g, 16.80 for the 1200 g of service, 2.10 for each of 8 portions."},
		{result.Cost{Batch: 3.5, Service: portion(16.8)}, "It costs 3.50 a batch of 250 g, 16.80 for the 1200 g of service."},
		{result.Cost{Batch: 3, Per100Grams: 1, Unpriced: []string{"cider"}}, "No price is set for cider, which counts as nothing here."},
	} {
		r := &result.Results{Batch: result.Batch{Grams: 250}, Service: &result.Service{Grams: 1200}, Starts: []result.Start{{Cost: &c.cost}}, Cheapest: &result.Cheapest{Cost: c.cost, Chance: result.Chance{Mean: 0.8, Low: 0.12}}}
		said := ""
		for _, b := range (pages{mixes.Run{Run: say.Run{R: r}}}).costs() {
			said += b.(document.Paragraph).Text.String() + " "
		}
		if !strings.Contains(said, c.says) || !strings.Contains(said, "perhaps only 12. Predicted, not yet made") {
			t.Error(said)
		}
	}
}
