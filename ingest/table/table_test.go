package table

import (
	"foamfield/ingest/trial"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func some(v float64) *float64 { return &v }

func trials() []trial.Trial {
	inf := math.Inf(1)
	return []trial.Trial{
		{Order: 1, ID: "T1", Day: "Tue", Cook: "", At: trial.Place{File: "week.xlsx", Sheet: "Tue", Row: 5},
			Composition: trial.Composition{FatPercent: some(40), EmulsifierPercent: some(2), EmulsifierGrams: some(5), BlendHLB: some(7.123456789012345), BatchGrams: some(250)},
			Extras:      map[string]float64{"chargers": 2}, Hold: &trial.Interval{Low: 20, High: inf}, CameOut: trial.Yes, Broke: trial.No},
		{Order: 2, ID: "T2", Day: "Mon", At: trial.Place{File: "week.xlsx", Sheet: "Mon", Row: 6},
			Composition: trial.Composition{FatPercent: some(50)}, CameOut: trial.No, Flagged: "overfilled"},
		{Order: 3, ID: "T3", Day: "Tue", At: trial.Place{File: "week.xlsx", Sheet: "Tue", Row: 7}, Aside: "no results",
			Hold: &trial.Interval{Low: 12, High: 12}, Drained: &trial.Interval{Low: math.Inf(-1), High: 1}, CameOut: trial.Partly, Broke: trial.Yes},
	}
}

func frame(t *testing.T) *Frame {
	t.Helper()
	f, err := New(trials(), []string{"chargers", "rest_minutes"})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// equal compares numbers, NaN being equal to NaN.
func equal(a, b []float64) bool {
	return slices.EqualFunc(a, b, func(x, y float64) bool { return x == y || math.IsNaN(x) && math.IsNaN(y) })
}

func TestColumns(t *testing.T) {
	f := frame(t)
	nan, inf := math.NaN(), math.Inf(1)
	for name, want := range map[string][]float64{
		"order": {1, 2, 3}, "row": {5, 6, 7}, "used": {1, 1, 0}, "flagged": {0, 1, 0}, "batch_grams": {250, nan, nan},
		"fat_percent": {40, 50, nan}, "emulsifier_percent": {2, nan, nan}, "emulsifier_grams": {5, nan, nan},
		"blend_hlb": {7.123456789012345, nan, nan}, "hold_low": {20, nan, 12}, "hold_high": {inf, nan, 12},
		"drained_low": {nan, nan, -inf}, "drained_high": {nan, nan, 1}, "came_out": {1, 0, 0.5}, "broke": {0, nan, 1},
		"chargers": {2, nan, nan}, "rest_minutes": {nan, nan, nan},
	} {
		if got := f.Numbers(name); !equal(got, want) {
			t.Errorf("%s = %v, want %v", name, got, want)
		}
	}
	for name, want := range map[string][]string{
		"id": {"T1", "T2", "T3"}, "day": {"Tue", "Mon", "Tue"}, "cook": {"", "", ""}, "student": {"", "", ""}, "canister": {"", "", ""},
		"file": {"week.xlsx", "week.xlsx", "week.xlsx"}, "sheet": {"Tue", "Mon", "Tue"},
	} {
		if got := f.Words(name); !slices.Equal(got, want) {
			t.Errorf("%s = %q, want %q", name, got, want)
		}
	}
	if want := len(numbers) + len(words) + 2; len(f.Names()) != want {
		t.Errorf("%d columns, want %d: %v", len(f.Names()), want, f.Names())
	}
}

func TestRowsAndGroups(t *testing.T) {
	f := frame(t)
	ids := func(g *Frame) []string { return g.Words("id") }
	for _, c := range []struct {
		name string
		got  []string
		want []string
	}{
		{"where", ids(f.Where("fat_percent", func(v float64) bool { return v >= 45 })), []string{"T2"}},
		{"where NaN", ids(f.Where("fat_percent", math.IsNaN)), []string{"T3"}},
		{"where none", ids(f.Where("order", func(float64) bool { return false })), []string{}},
		{"none, again", ids(f.Rows(nil).Sorted("order").Complete("order")), []string{}},
		{"complete", ids(f.Complete("fat_percent", "hold_low")), []string{"T1"}},
		{"sorted", ids(f.Sorted("hold_low")), []string{"T3", "T1", "T2"}},
		{"sorted words", ids(f.Sorted("day")), []string{"T2", "T1", "T3"}},
		{"rows", ids(f.Rows([]int{2, 0})), []string{"T3", "T1"}},
		{"as it was", ids(f), []string{"T1", "T2", "T3"}},
	} {
		if !slices.Equal(c.got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
	if got, want := f.Groups("day"), []Group{{"Tue", []int{0, 2}}, {"Mon", []int{1}}}; !reflect.DeepEqual(got, want) {
		t.Errorf("groups %v, want %v", got, want)
	}
	if got := f.Known("hold_low"); !equal(got, []float64{20, 12}) {
		t.Errorf("known %v", got)
	}
	g := f.With("twice", []float64{2, 4, 6}).With("fat_percent", []float64{1, 2, math.NaN()})
	if !equal(g.Numbers("twice"), []float64{2, 4, 6}) || !equal(g.Numbers("fat_percent"), []float64{1, 2, math.NaN()}) || !equal(f.Numbers("fat_percent"), []float64{40, 50, math.NaN()}) {
		t.Errorf("with: %v, %v; before: %v", g.Numbers("twice"), g.Numbers("fat_percent"), f.Numbers("fat_percent"))
	}
}

func TestNoTrials(t *testing.T) {
	f, err := New(nil, []string{"chargers"})
	if err != nil || f.Len() != 0 || len(f.Numbers("chargers")) != 0 || f.Groups("day") != nil {
		t.Errorf("%v, %v", f, err)
	}
}

func TestNamesMustDiffer(t *testing.T) {
	for _, extras := range [][]string{{"a", "a"}, {"fat_percent"}, {"day"}, {""}} {
		if f, err := New(trials(), extras); err == nil {
			t.Errorf("extras %q: %v", extras, f.Names())
		}
	}
}

func TestMistakesPanic(t *testing.T) {
	f := frame(t)
	for name, do := range map[string]func(){
		"no column":        func() { f.Numbers("nothing") },
		"words as numbers": func() { f.Numbers("day") },
		"numbers as words": func() { f.Words("order") },
		"sort by nothing":  func() { f.Sorted("nothing") },
		"wrong length":     func() { f.With("x", []float64{1}) },
		"row out of range": func() { f.Rows([]int{3}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			do()
		}()
	}
}

// Numbers go through every step to the last bit.
func TestFullPrecision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64(), 1, 20).Draw(t, "values")
		log := make([]trial.Trial, len(values))
		for i, v := range values {
			log[i] = trial.Trial{Order: i, Extras: map[string]float64{"x": v}}
		}
		f, err := New(log, []string{"x"})
		if err != nil {
			t.Fatal(err)
		}
		g := f.Sorted("x").Where("x", func(float64) bool { return true }).With("y", make([]float64, len(values)))
		want := slices.Clone(values)
		slices.SortStableFunc(want, func(a, b float64) int {
			switch {
			case a < b:
				return -1
			case a > b:
				return 1
			}
			return 0
		})
		if got := g.Numbers("x"); !slices.Equal(got, want) {
			t.Fatalf("%v became %v", want, got)
		}
	})
}

func BenchmarkNew(b *testing.B) {
	log := make([]trial.Trial, 10_000)
	for i := range log {
		log[i] = trials()[i%3]
	}
	for b.Loop() {
		if _, err := New(log, []string{"chargers"}); err != nil {
			b.Fatal(err)
		}
	}
}
