package table

import (
	"math"
	"slices"
	"testing"

	"foamfield/ingest/trial"

	"pgregory.net/rapid"
)

func some(v float64) *float64 { return &v }

func trials() []trial.Trial {
	return []trial.Trial{
		{Composition: trial.Composition{FatPercent: some(40), EmulsifierPercent: some(2), EmulsifierGrams: some(5), BlendHLB: some(7.123456789012345)}},
		{Composition: trial.Composition{FatPercent: some(50)}},
		{},
	}
}

func frame(t *testing.T, trials []trial.Trial) *Frame {
	t.Helper()
	f, err := New(trials)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestColumns(t *testing.T) {
	f := frame(t, trials())
	nan := math.NaN()
	for name, want := range map[string][]float64{
		"fat_percent": {40, 50, nan}, "emulsifier_percent": {2, nan, nan}, "emulsifier_grams": {5, nan, nan},
		"blend_hlb": {7.123456789012345, nan, nan},
	} {
		same := func(x, y float64) bool { return x == y || math.IsNaN(x) && math.IsNaN(y) }
		if got := f.Numbers(name); !slices.EqualFunc(got, want, same) {
			t.Errorf("%s = %v, want %v", name, got, want)
		}
	}
	f.Numbers("fat_percent")[0] = 0
	if got := f.Numbers("fat_percent")[0]; got != 40 {
		t.Errorf("the frame itself was handed out: fat is now %v", got)
	}
}

func TestNoTrials(t *testing.T) {
	if got := frame(t, nil).Numbers("fat_percent"); len(got) != 0 {
		t.Errorf("%v", got)
	}
}

func TestNoSuchColumnPanics(t *testing.T) {
	f := frame(t, trials())
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	f.Numbers("nothing")
}

// Numbers come out as they went in, to the last bit.
func TestFullPrecision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64(), 1, 20).Draw(t, "values")
		log := make([]trial.Trial, len(values))
		for i := range values {
			log[i].FatPercent = &values[i]
		}
		f, err := New(log)
		if err != nil {
			t.Fatal(err)
		}
		if got := f.Numbers("fat_percent"); !slices.Equal(got, values) {
			t.Fatalf("%v became %v", values, got)
		}
	})
}

func BenchmarkNew(b *testing.B) {
	log := make([]trial.Trial, 10_000)
	for i := range log {
		log[i] = trials()[i%3]
	}
	for b.Loop() {
		if _, err := New(log); err != nil {
			b.Fatal(err)
		}
	}
}
