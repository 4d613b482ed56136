package mark

import (
	"slices"
	"testing"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// However the trials lie, none is lost, each cell has one mark of a fate, inside
// it, and no two marks stand on one place.
func TestGatherLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wide := vg.Length(rapid.IntRange(5, 400).Draw(t, "width"))
		high := vg.Length(rapid.IntRange(5, 250).Draw(t, "height"))
		above := vg.Rectangle{Min: vg.Point{X: 40, Y: 60}, Max: vg.Point{X: 40 + wide, Y: 60 + high}}
		below := vg.Rectangle{Min: vg.Point{X: 40, Y: 40}, Max: vg.Point{X: 40 + wide, Y: 60}}
		var marks []Mark
		var want, got [Fates]int
		for range rapid.IntRange(0, 1500).Draw(t, "trials") {
			k := Fate(rapid.IntRange(0, int(Fates)-1).Draw(t, "fate"))
			x := rapid.Float64Range(30, 50+float64(wide)).Draw(t, "x") // some beyond the frame
			y := rapid.Float64Range(30, 70+float64(high)).Draw(t, "y")
			marks = append(marks, Mark{At: vg.Point{X: vg.Length(x), Y: vg.Length(y)}, Fate: k, Far: x > 200})
			want[k]++
		}
		out := Gather(marks, above, below)
		if !slices.Equal(out, Gather(marks, above, below)) {
			t.Error("a second time gives other marks")
		}
		type cell struct {
			below       bool
			column, row int
			fate        Fate
		}
		seen, stood := map[cell]bool{}, map[vg.Point]bool{}
		for _, m := range out {
			got[m.Fate] += m.Trials
			in := cell{below: m.At.Y < 60, fate: m.Fate, column: place(m.At.X, 40, 40+wide)}
			if !in.below {
				in.row = place(m.At.Y, 60, 60+high)
			}
			if seen[in] || stood[m.At] {
				t.Errorf("two marks of a fate in cell %+v, or on %v", in, m.At)
			}
			seen[in], stood[m.At] = true, true
			if m.Trials < 1 || m.At.X < 40 || m.At.X > 40+wide || m.At.Y < 40 || m.At.Y > 60+high {
				t.Errorf("%+v lies outside", m)
			}
		}
		if got != want {
			t.Errorf("%v trials became %v", want, got)
		}
	})
}
