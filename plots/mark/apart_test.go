package mark

import (
	"testing"

	"gonum.org/v1/plot/vg"

	"foamfield/plots/drawing"
)

// Repeats at one place are as many marks as they are, none far from its place.
func TestRepeatsAreSeen(t *testing.T) {
	frame := vg.Rectangle{Max: vg.Point{X: 300, Y: 200}}
	for _, n := range []int{1, 2, 3, 7, 19} {
		for _, at := range []vg.Point{{X: 150, Y: 100}, {X: 290, Y: 190}} {
			marks := make([]Mark, n)
			for i := range marks {
				marks[i].At = at
			}
			out := Apart(marks, frame)
			for i, a := range out {
				if !drawing.Inside(frame, a.At, 0) || !drawing.Near(a.At, at, 2.01*gapOf(n)) {
					t.Errorf("%d at %v: one lies at %v", n, at, a.At)
				}
				for _, b := range out[:i] {
					if at.X < 200 && drawing.Near(a.At, b.At, 0.9*gapOf(n)) {
						t.Errorf("%d at %v: two lie at %v and %v", n, at, a.At, b.At)
					}
				}
			}
		}
	}
	var holds Holds
	for range 5 {
		holds.Add(AtLeast, 150, 50, 50)
	}
	seen := map[vg.Length]bool{}
	for _, s := range holds.Apart(frame) {
		seen[s.at.X] = true
		if s.at.Y != 50 {
			t.Errorf("a hold is moved to %v", s.at)
		}
	}
	if len(seen) != 5 {
		t.Errorf("five holds at one place are seen as %d", len(seen))
	}
}
