package ingest

import (
	"fmt"

	"foamfield/ingest/compose"
	"foamfield/ingest/quantity"
	"foamfield/ingest/row"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// mostChargers is the most that a canister of two litres is marked for, two for each
// half litre. Common practice, no source.
const mostChargers = 8

// flag marks a trial whose fill or gas goes beyond what canisters are commonly
// marked for. It is not judged: the canister's own marking decides.
func (r *reader) flag(s *scheme.Scheme, l *row.Line, x *trial.Trial) string {
	n, gassed := x.Extras["chargers"]
	if gassed && n > mostChargers {
		why := fmt.Sprintf("%s chargers are more than any canister takes", say.Number(n))
		at := x.At
		for i := range s.Fields {
			if f := &s.Fields[i]; f.Extra == "chargers" {
				at = s.At(l.Recipe.Row, f.Col)
			}
		}
		r.said.add(trial.Fix("check the canister", at, why, "type how many were used, and look whether the cells beside it are swapped; "+compose.NoFormula))
		return why + ": " + compose.NoFormula
	}
	litres, known := r.litres[x.Canister]
	if !known {
		litres = canisterLitres(x.Canister)
		if r.litres == nil {
			r.litres = map[string]float64{}
		}
		r.litres[x.Canister] = litres
	}
	if litres == 0 {
		return ""
	}
	fill, filled := x.Extras["fill_grams"]
	if !filled && x.BatchGrams != nil {
		fill, filled = *x.BatchGrams, true
	}
	var why string
	if filled && fill > 1000*litres*2/3*(1+1e-9) {
		why = fmt.Sprintf("%s in a canister of %s L is more than two thirds full", say.Grams(fill), say.Number(litres))
	}
	if gassed && n > 4*litres*(1+1e-9) {
		if why != "" {
			why += "; "
		}
		why += fmt.Sprintf("%s chargers for %s L is more than two for each half litre", say.Number(n), say.Number(litres))
	}
	if why == "" {
		return ""
	}
	r.said.add(trial.Check("check the canister", x.At, why, "check against your canister's marking; "+compose.NoFormula))
	return why + ": check against your canister's marking; " + compose.NoFormula
}

// canisterLitres reads the size of a canister; bare numbers of 100 and more are
// millilitres. 0 = not known.
func canisterLitres(text string) float64 {
	if text == "" {
		return 0
	}
	m, err := quantity.Parse(text, quantity.Volume, quantity.NoUnit)
	if err != nil {
		return 0
	}
	v, ok := m.Exact()
	switch {
	case !ok || v <= 0:
		return 0
	case m.Unit == quantity.NoUnit && v < 10:
		return v
	}
	return v / 1000
}
