package belief

import (
	"math"
	"testing"

	"foamfield/analysis/result"
)

// TestRuler has, a line a case, what a logged value says on a ruler, and where a target
// begins and ends.
func TestRuler(t *testing.T) {
	nine := ruler{centre: 5, scale: 2, half: 0.5, lowest: 1, top: 9}
	plain := ruler{centre: 100, scale: 20}
	inf := math.Inf(1)
	for _, c := range []struct {
		name      string
		r         ruler
		v         float64
		low, high float64
	}{
		{"a score is half a step wide", nine, 6, 5.5, 6.5},
		{"the top stands for all above", nine, 9, 8.5, inf},
		{"the foot for all below", nine, 1, -inf, 1.5},
		{"a plain number is itself", plain, 130, 130, 130},
	} {
		if o := c.r.seen(c.v); o.Low != c.low || o.High != c.high {
			t.Errorf("%s: %v to %v", c.name, o.Low, o.High)
		}
		o := c.r.onLine(c.v)
		if low := c.r.centre + c.r.scale*math.Log(o.Low); math.Abs(low-c.low) > 1e-9 && !math.IsInf(low, -1) {
			t.Errorf("%s: on the line from %v", c.name, low)
		}
	}
	p := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		name          string
		r             ruler
		low, high     *float64
		wantL, wantHi float64
	}{
		{"6 to 8 of 9", nine, p(6), p(8), (5.5 - 5) / 2, (8.5 - 5) / 2},
		{"at least 6 of 9", nine, p(6), nil, 0.25, inf},
		{"up to the top is no bound", nine, p(6), p(9), 0.25, inf},
		{"from the foot is none either", nine, p(1), p(4), -inf, -0.25},
		{"80 to 120 %", plain, p(80), p(120), -1, 1},
	} {
		low, high := c.r.within(&result.ResultTarget{Low: c.low, High: c.high})
		if low != c.wantL || high != c.wantHi {
			t.Errorf("%s: %v to %v on the line", c.name, low, high)
		}
	}
}
