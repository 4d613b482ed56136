package peer

import (
	"slices"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// The table of fat percents has a few rows, the ends and the last that works among them.
func TestSomeFats(t *testing.T) {
	for n := 1; n < 40; n++ {
		for last := -1; last < n; last++ {
			b := pages{mixes.Run{Run: say.Run{R: &result.Results{}}}}
			for i := range n {
				b.R.FatLimit = append(b.R.FatLimit, result.FatLimit{Workable: i <= last})
			}
			got := b.someFats()
			if len(got) != min(n, mostFats) || got[0] != 0 || got[len(got)-1] != n-1 || last >= 0 && !slices.Contains(got, last) || !slices.IsSorted(got) || len(slices.Compact(slices.Clone(got))) != len(got) {
				t.Errorf("%d steps of which %d work: %v", n, last+1, got)
			}
		}
	}
}
