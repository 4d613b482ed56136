package survey

import (
	"math"
	"testing"
)

func TestReadingLimit(t *testing.T) {
	for _, c := range []struct {
		name        string
		values      []float64
		step, least float64
	}{
		{"tenths", []float64{0, 3.1, 3.2, 4, 7}, 0.1, 3.1},
		{"halves", []float64{2.5, 1, 3, 0.5, 3}, 0.5, 0.5},
		{"nothing to go by", nil, 0.5, 0},
		{"too few to show a step", []float64{0, 5, 30}, 0.5, 5},
		{"only zeros", []float64{0, 0, 0, 0}, 0.5, 0},
	} {
		if l := limitOf(c.values); math.Abs(l.Step-c.step) > 1e-9 || l.Least != c.least || l.From == "" {
			t.Errorf("%s: step %v, least %v, want %v and %v", c.name, l.Step, l.Least, c.step, c.least)
		}
	}
}
