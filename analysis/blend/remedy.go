package blend

import (
	"math"

	"foamfield/analysis/result/blended"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
)

// mostScaleError is the error, in percent of the grams, above which weighing is no advice.
const mostScaleError = 5.0

// carried is what an emulsifier is melted or dispersed in.
type carried struct {
	name  string
	grams float64 // 0 = not named
	fat   bool
}

// lipophilicBelow is the HLB below which an emulsifier with nothing to compare it to goes
// with the fat.
const lipophilicBelow = 9

// carrier is the largest ingredient of the part that the emulsifier goes into.
func carrier(parts []Part, p Part, blend *ingredient.Range) carried {
	border := float64(lipophilicBelow)
	if blend != nil && p.What.HLB != nil && math.Abs(blend.Value-p.What.HLB.Value) > 1e-9 {
		border = blend.Value
	}
	c := carried{fat: p.What.HLB != nil && p.What.HLB.Value < border}
	kind := ingredient.Water
	if c.fat {
		kind = ingredient.Fat
	}
	for _, o := range parts {
		if o.What.Kind == kind && o.Grams > c.grams {
			c.name, c.grams = o.Name, o.Grams
		}
	}
	return c
}

// remedy finds the least diluted pre-mix that is weighed to within the error, and the batch.
func remedy(p Part, c carried, batch, step float64) *blended.Remedy {
	least := step / 2 / (mostScaleError / 100)
	r := &blended.Remedy{Times: least / p.Grams}
	if batch > 0 {
		r.Batch = math.Ceil(batch*r.Times/10-1e-9) * 10
	}
	for _, dilution := range []float64{5, 10, 20, 50, 100} {
		for _, times := range []float64{10, 20, 40, 100} {
			m := &blended.Premix{Weigh: onStep(times*step, step), Carrier: c.name, Fat: c.fat}
			m.Into, m.Take = onStep(m.Weigh*(dilution-1), step), onStep(p.Grams*dilution, step)
			m.Less = onStep(m.Take-p.Grams, step)
			comes := m.Take * m.Weigh / (m.Weigh + m.Into)
			m.ErrorPercent = 100 * (mix.WeighingError(m.Weigh, step) + mix.WeighingError(m.Weigh+m.Into, step) +
				mix.WeighingError(m.Take, step) + math.Abs(comes-p.Grams)/p.Grams)
			room := c.grams == 0 || m.Less <= c.grams/2
			if m.Take > 0 && m.Take <= m.Weigh+m.Into && room && m.ErrorPercent <= mostScaleError*(1+1e-9) {
				r.Premix = m
				return r
			}
		}
	}
	return r
}

func onStep(grams, step float64) float64 {
	g := math.Round(grams/step) * step
	return math.Round(g*1e6) / 1e6
}
