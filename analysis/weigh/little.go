package weigh

import (
	"foamfield/analysis/blend"
	"foamfield/analysis/formula"
	"foamfield/analysis/result"
)

// tooLittle is what to do about the ingredients of a formula that are too little for the
// scale, by name: what foamfield blend says of the same grams.
func tooLittle(f *formula.Formula, step float64) map[string]*result.TooLittle {
	parts := make([]blend.Part, len(f.Lines))
	for i, l := range f.Lines {
		parts[i] = blend.Part{Name: l.Name, Grams: l.Grams, What: &l.What}
	}
	b, err := blend.Of(parts, 0, step)
	if err != nil {
		return nil
	}
	out := map[string]*result.TooLittle{}
	for _, l := range b.Lines {
		r := l.TooLittle
		if r == nil {
			continue
		}
		out[l.Name] = &result.TooLittle{BatchGrams: r.Batch}
		if m := r.Premix; m != nil {
			out[l.Name].Premix = &result.Premix{WeighGrams: m.Weigh, IntoGrams: m.Into, Carrier: m.Carrier, Melted: m.Fat,
				TakeGrams: m.Take, LessGrams: m.Less, ErrorPercent: m.ErrorPercent}
		}
	}
	return out
}
