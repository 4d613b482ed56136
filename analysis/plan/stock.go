package plan

import (
	"fmt"
	"math"

	"foamfield/analysis/result"
)

// Beside sets what is at hand beside what the plan takes; without a batch no plan takes too much of it.
func Beside(p *result.Plan, stock map[string]float64) {
	for i := range p.Needs {
		n := &p.Needs[i]
		if s, ok := stock[n.Name]; ok {
			n.Stock, n.Short = &s, p.BatchGrams != nil && s < n.Grams
		}
	}
}

// atMostATrial says how large a trial may be by what is at hand, where no batch was said.
func atMostATrial(p *result.Plan) []string {
	least, name := math.Inf(1), ""
	for _, n := range p.Needs {
		if n.Stock != nil && n.Grams > 0 && *n.Stock/n.Grams < least {
			least, name = *n.Stock/n.Grams, n.Name
		}
	}
	if name == "" {
		return nil
	}
	return []string{fmt.Sprintf("What is at hand is enough for trials of at most %.0f g of mix: %s runs out first.", math.Floor(least*perHundred), name)}
}
