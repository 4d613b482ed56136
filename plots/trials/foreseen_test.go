package trials

import (
	"testing"

	"foamfield/plots/mark"
)

// The trials of the piles are those foreseen, however many a mark stands for.
func TestPilesLoseNothing(t *testing.T) {
	for _, full := range []int{3, 10, 100} {
		f := foreseenFigure{full: full}
		var want, got [mark.Fates]int
		for i := range 977 {
			k := mark.Fate(i * i % int(mark.Fates))
			f.chances, f.fates = append(f.chances, float64(i%331)/331), append(f.fates, k)
			want[k]++
		}
		for _, m := range f.heaped() {
			got[m.fate] += m.trials
			if m.trials > full || m.up != (m.fate == mark.Worked) {
				t.Errorf("%+v, of %d", m, full)
			}
		}
		if got != want {
			t.Errorf("%v trials became %v", want, got)
		}
	}
}
