package mixture

import (
	"foamfield/analysis/grade/verdict"
	"math"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/ingredient"

	"pgregory.net/rapid"
)

func emulsifierPart(name string, grams, hlb float64) Part {
	a := verdict.Exactly(hlb)
	return Part{Name: name, What: &ingredient.Ingredient{Name: name, Kind: ingredient.Emulsifier}, Grams: grams, HLB: &a, Fat: verdict.Exactly(0)}
}

// Whatever two emulsifiers weigh: the blend lies between their HLBs, typed rightly it is
// right, and typed as the plain mean it is found to be that, unless they weigh alike.
func TestBlendAndItsPlainMean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.5, 20).Draw(t, "a"), rapid.Float64Range(0.5, 20).Draw(t, "b")
		low, high := rapid.Float64Range(1, 8).Draw(t, "low"), rapid.Float64Range(9, 18).Draw(t, "high")
		m := Mixture{Parts: []Part{emulsifierPart("one", a, low), emulsifierPart("other", b, high)}, Sum: 300, total: 300}
		h, ok := BlendOf(&m, nil)
		if !ok || h < low || h > high {
			t.Fatalf("%v", h)
		}
		e := verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(h)}, Ways: BlendWays(&m, nil), Within: 0.1}
		cell := func(x float64) handin.Cell {
			return handin.Cell{Value: x, Known: true, Half: 0.005, Scale: 1}
		}
		if _, wrong := verdict.Judge(cell(math.Round(100*h)/100), e); wrong {
			t.Fatalf("%v is called wrong", h)
		}
		mean := (low + high) / 2
		if v, wrong := verdict.Judge(cell(mean), e); math.Abs(mean-h) > 0.1001 && (!wrong || v.Way == nil || v.Way.Class != "plain mean") {
			t.Fatalf("the plain mean %v of %v: %+v", mean, h, v.Way)
		}
	})
}
