package plots

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
		var marks []mark
		var want, got [fates]int
		for range rapid.IntRange(0, 1500).Draw(t, "trials") {
			k := fate(rapid.IntRange(0, int(fates)-1).Draw(t, "fate"))
			x := rapid.Float64Range(30, 50+float64(wide)).Draw(t, "x") // some beyond the frame
			y := rapid.Float64Range(30, 70+float64(high)).Draw(t, "y")
			marks = append(marks, mark{at: vg.Point{X: vg.Length(x), Y: vg.Length(y)}, fate: k, far: x > 200})
			want[k]++
		}
		out := gatherMarks(marks, above, below)
		if !slices.Equal(out, gatherMarks(marks, above, below)) {
			t.Error("a second time gives other marks")
		}
		type cell struct {
			below       bool
			column, row int
			fate        fate
		}
		seen, stood := map[cell]bool{}, map[vg.Point]bool{}
		for _, m := range out {
			got[m.fate] += m.trials
			in := cell{below: m.at.Y < 60, fate: m.fate, column: place(m.at.X, 40, 40+wide)}
			if !in.below {
				in.row = place(m.at.Y, 60, 60+high)
			}
			if seen[in] || stood[m.at] {
				t.Errorf("two marks of a fate in cell %+v, or on %v", in, m.at)
			}
			seen[in], stood[m.at] = true, true
			if m.trials < 1 || m.at.X < 40 || m.at.X > 40+wide || m.at.Y < 40 || m.at.Y > 60+high {
				t.Errorf("%+v lies outside", m)
			}
		}
		if got != want {
			t.Errorf("%v trials became %v", want, got)
		}
	})
}

// The trials of the piles are those foreseen, however many a mark stands for.
func TestPilesLoseNothing(t *testing.T) {
	for _, full := range []int{3, 10, 100} {
		f := foreseenFigure{full: full}
		var want, got [fates]int
		for i := range 977 {
			k := fate(i * i % int(fates))
			f.chances, f.fates = append(f.chances, float64(i%331)/331), append(f.fates, k)
			want[k]++
		}
		for _, m := range f.heaped() {
			got[m.fate] += m.trials
			if m.trials > full || m.up != (m.fate == worked) {
				t.Errorf("%+v, of %d", m, full)
			}
		}
		if got != want {
			t.Errorf("%v trials became %v", want, got)
		}
	}
}

func TestInTenths(t *testing.T) {
	for _, tt := range []struct{ in, want string }{
		{`<path d="M10,20L12.34,19.96Z" />`, `<path d="m10 20l2.3 0z" />`},
		{`<path d="M1,1L2,2ZL0.5,1e-05" />`, `<path d="m1 1l1 1zl-.5-1" />`},
		{`<path d="M0,0C1,2,3,4,-5,-6.06M1,1" />`, `<path d="m0 0c1 2 3 4-5-6.1m6 7.1" />`},
		{`<text x="1.234">d</text>`, `<text x="1.234">d</text>`},
	} {
		if got := string(inTenths([]byte(tt.in))); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.in, got, tt.want)
		}
	}
}
