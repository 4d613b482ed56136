// Package canister says which trials were too much for their canister.
package canister

import (
	"fmt"
	"strings"

	"foamfield/ingest/compose"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// mostChargers is the most that a canister of two litres is marked for, two for each
// half litre. Common practice, no source.
const mostChargers = 8

// rounding is how far a number may be above a mark that it meets.
const rounding = 1 + 1e-9

// Sizes are the litres of the canisters of a log, by what was typed.
type Sizes struct{ litres map[string]float64 }

// Flag marks a trial, of a row of a table, whose fill or gas goes beyond what
// canisters are commonly marked for. It is not judged: the canister's own marking
// decides.
func (c *Sizes) Flag(s *scheme.Scheme, row int, x *trial.Trial) (why string, found []trial.Finding) {
	if n := x.Extras["chargers"]; n > mostChargers {
		why = fmt.Sprintf("%s chargers are more than any canister takes", say.Number(n))
		return why + ": " + compose.NoFormula, []trial.Finding{trial.Fix("check the canister", chargersAt(s, row, x), why,
			"type how many were used, and look whether the cells beside it are swapped; "+compose.NoFormula)}
	}
	if why = beyond(x, c.of(x.Canister)); why == "" {
		return "", nil
	}
	const do = "check against your canister's marking; " + compose.NoFormula
	return why + ": " + do, []trial.Finding{trial.Check("check the canister", x.At, why, do)}
}

func chargersAt(s *scheme.Scheme, row int, x *trial.Trial) trial.Place {
	at := x.At
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Extra == "chargers" {
			at = s.At(row, f.Col)
		}
	}
	return at
}

// beyond says what is too much for a canister of a size, "" if nothing is or the
// size is not known.
func beyond(x *trial.Trial, litres float64) string {
	if litres == 0 {
		return ""
	}
	var much []string
	fill, filled := x.Extras["fill_grams"]
	if !filled && x.BatchGrams != nil {
		fill = *x.BatchGrams
	}
	if fill > 1000*litres*2/3*rounding {
		much = append(much, fmt.Sprintf("%s in a canister of %s L is more than two thirds full", say.Grams(fill), say.Number(litres)))
	}
	if n := x.Extras["chargers"]; n > 4*litres*rounding {
		much = append(much, fmt.Sprintf("%s chargers for %s L is more than two for each half litre", say.Number(n), say.Number(litres)))
	}
	return strings.Join(much, "; ")
}

// of is the size of a canister, read once.
func (c *Sizes) of(text string) float64 {
	litres, known := c.litres[text]
	if !known {
		litres = litresOf(text)
		if c.litres == nil {
			c.litres = map[string]float64{}
		}
		c.litres[text] = litres
	}
	return litres
}

// litresOf reads the size of a canister; bare numbers of 100 and more are
// millilitres. 0 = not known.
func litresOf(text string) float64 {
	if text == "" {
		return 0
	}
	m, err := quantity.Parse(text, units.Volume, units.NoUnit)
	if err != nil {
		return 0
	}
	v, ok := m.Exact()
	switch {
	case !ok || v <= 0:
		return 0
	case m.Unit == units.NoUnit && v < 10:
		return v
	}
	return v / 1000
}
