package weigh

import (
	"testing"

	"foamfield/analysis/formula"
	"foamfield/ingest/ingredient"
)

// What the scale cannot weigh to 5 % has its pre-mix in what it goes into; what it can has none.
func TestTooLittle(t *testing.T) {
	line := func(name string, grams float64) formula.Line {
		i, ok := ingredient.Lookup(name)
		if !ok {
			t.Fatalf("%s is not known", name)
		}
		return formula.Line{Name: name, What: i, Grams: grams}
	}
	for _, c := range []struct {
		mono, ester, step float64
		melt, stir        bool // whether the one needs a pre-mix in the fat, the other in the water part
	}{
		{4, 2, 0.1, false, false},
		{0.9, 2, 0.1, true, false},
		{4, 0.9, 0.1, false, true},
		{0.9, 0.9, 0.1, true, true},
		{0.9, 0.9, 0.01, false, false},
		{4, 2, 1, true, true},
		{1, 4, 0.1, false, false}, // 5 % and no more
	} {
		f := &formula.Formula{Lines: []formula.Line{line("butter", 130), line("cider", 166), line("GMS", c.mono), line("sucrose ester 15", c.ester)}}
		got := tooLittle(f, c.step)
		for _, want := range []struct {
			name, carrier string
			grams         float64
			needed        bool
		}{{"GMS", "butter", c.mono, c.melt}, {"sucrose ester 15", "cider", c.ester, c.stir}} {
			r := got[want.name]
			if (r != nil) != want.needed {
				t.Errorf("%v: %s: %+v", c, want.name, r)
			}
			if r == nil || r.Premix == nil {
				continue
			}
			m := r.Premix
			comes := m.TakeGrams * m.WeighGrams / (m.WeighGrams + m.IntoGrams)
			if m.Carrier != want.carrier || m.Melted != (want.carrier == "butter") || comes < 0.95*want.grams || comes > 1.05*want.grams {
				t.Errorf("%v: %s: %+v brings %v g", c, want.name, *m, comes)
			}
		}
		if got["butter"] != nil || got["cider"] != nil {
			t.Errorf("%v: a pre-mix for what is most of the mix: %v", c, got)
		}
	}
}
