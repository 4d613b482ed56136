package ingest

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// takeExtra reads a cell of a variable: process, score, declared.
func (b *row) takeExtra(t *trial.Trial, f *field) {
	if f.extra == "" {
		return
	}
	m, ok := b.read(t, f)
	if !ok {
		return
	}
	v, exact := m.Exact()
	switch {
	case exact:
	case m.Word != quantity.NoWord:
		return
	case math.IsInf(m.Low, 0) || math.IsInf(m.High, 0):
		b.problem("bound where one number is needed", trial.PleaseLook, f.col, quoted(b.text(f.col))+" is only a bound and is not used", "type the number that was measured")
		return
	default:
		v = (m.Low + m.High) / 2
	}
	b.book.extras = append(b.book.extras, pair{name: f.extra, value: v})
}

// canister is the size as typed, with the header's unit when the cell has none.
func (b *row) canister(f *field) string {
	text := b.text(f.col)
	if f.Unit != quantity.NoUnit {
		if _, bare := bareNumber(b.sheet, b.cellAt(f.col)); bare {
			text += " " + f.Unit.String()
		}
	}
	return b.book.same(text)
}

// mostChargers is the most that a canister of two litres is marked for, two for each
// half litre. Common practice, no source.
const mostChargers = 8

// flag marks a trial whose fill or gas goes beyond what canisters are commonly
// marked for. It is not judged: the canister's own marking decides.
func (b *row) flag(t *trial.Trial) {
	if n, ok := t.Extras["chargers"]; ok && n > mostChargers {
		why := fmt.Sprintf("%s chargers are more than any canister takes", number(n))
		t.Flagged = why + ": " + noFormula
		col := 0
		if i := slices.IndexFunc(b.table.fields, func(f field) bool { return f.extra == "chargers" }); i >= 0 {
			col = b.table.fields[i].col
		}
		b.problem("check the canister", trial.MustFix, col, why, "type how many were used, and look whether the cells beside it are swapped; "+noFormula)
		return
	}
	litres := b.book.litres(t.Canister)
	if litres == 0 {
		return
	}
	fill, filled := t.Extras["fill_grams"]
	if !filled && t.BatchGrams != nil {
		fill, filled = *t.BatchGrams, true
	}
	var why string
	if filled && fill > 1000*litres*2/3*(1+1e-9) {
		why = fmt.Sprintf("%s in a canister of %s L is more than two thirds full", grams(fill), number(litres))
	}
	if n, ok := t.Extras["chargers"]; ok && n > 4*litres*(1+1e-9) {
		if why != "" {
			why += "; "
		}
		why += fmt.Sprintf("%s chargers for %s L is more than two for each half litre", number(n), number(litres))
	}
	if why != "" {
		t.Flagged = why + ": check against your canister's marking; " + noFormula
		b.problem("check the canister", trial.PleaseLook, 0, why, "check against your canister's marking; "+noFormula)
	}
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
