package weigh

import (
	"slices"
	"testing"

	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
)

// scaleOf weighs on a surface of fat alone.
func scaleOf() *Scale {
	space := surface.Space{Vars: []result.Variable{{Name: surface.FatPercent}}, Basis: region.Straight([]region.Coordinate{{Centre: 40, Scale: 5}})}
	return New(&surface.Surface{Space: space}, result.Batch{}, nil)
}

// Those that worked come first however far they are, of two alike the earlier.
func TestNearest(t *testing.T) {
	fats := []float64{41, 60, 44, 41, 39, 44}
	worked := []works.Tri{works.No, works.Yes, works.Yes, works.Unknown, works.No, works.Yes}
	var templates []*surface.Placed
	place := map[*surface.Placed]int{}
	for i := range fats {
		p := &surface.Placed{Mix: []float64{fats[i]}, Works: worked[i]}
		place[p] = i
		templates = append(templates, p)
	}
	want := []int{2, 5, 1, 0, 3, 4}
	for k, p := range scaleOf().nearest([]float64{41.5}, templates) {
		if place[p] != want[k] {
			t.Errorf("place %d has trial %d, not %d", k, place[p], want[k])
		}
	}
}

// A formula is weighed in the proportions of the nearest of all trials.
func BenchmarkNearest(b *testing.B) {
	templates := make([]*surface.Placed, 100_000)
	for i := range templates {
		templates[i] = &surface.Placed{Mix: []float64{30 + float64(i*7919%3000)/100}, Works: works.Tri(i % 3)}
	}
	s := scaleOf()
	for b.Loop() {
		s.nearest([]float64{41.5}, templates)
	}
}

// Every limit that is passed is said, and each ingredient once.
func TestLimitNotes(t *testing.T) {
	passed := func(name string, percent, limit float64, where string) Passed {
		return Passed{formula.Line{Name: name, PercentOfMix: percent}, ingredient.Limit{Percent: limit, Where: where}}
	}
	for _, c := range []struct {
		over []Passed
		want []string
	}{
		{nil, nil},
		{[]Passed{passed("PS 60", 0.5, 0.4, "toppings")}, []string{"PS 60 is 0.5 % of this mix, above the 0.4 % on file for toppings: check the text in force where you serve"}},
		{[]Passed{passed("PS 60", 0.5, 0.4, "toppings"), passed("SSL", 0.3, 0.2, "sauces"), passed("PS 60", 0.5, 0.1, "ices")},
			[]string{"PS 60 is 0.5 % of this mix, above the 0.4 % on file for toppings, and the 0.1 % on file for ices: check the text in force where you serve",
				"SSL is 0.3 % of this mix, above the 0.2 % on file for sauces: check the text in force where you serve"}},
	} {
		if got := LimitNotes(c.over); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
