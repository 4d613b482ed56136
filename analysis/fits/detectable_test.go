package fits

import (
	"path/filepath"
	"strconv"
	"testing"

	"foamfield/analysis/regress"
	"foamfield/analysis/result"
)

// The smallest differences are R's (groups.R beside the log).
func TestDetectableAsR(t *testing.T) {
	f := fitted(t, filepath.Join(groupReference, "log.csv"))
	judged, checked := f.Judged(result.HoldMinutes).Distribution, 0
	for _, d := range f.Detectable() {
		for _, want := range rowsOf(t, filepath.Join(groupReference, "smallest.csv")) {
			if want["distribution"] == judged && want["variable"] == d.Between {
				agree(t, d.Between+" factor", &d.Factor, want["factor"], 1e-6)
				agree(t, d.Between+" SD", &d.SDLn, want["sd_ln"], 1e-6)
				checked++
			}
		}
	}
	if checked != 3 {
		t.Errorf("%d figures were held against R, want 3", checked)
	}
}

// R's noncentral t distribution, by its own algorithm.
func TestShownAsR(t *testing.T) {
	for _, row := range rowsOf(t, filepath.Join(groupReference, "shift.csv")) {
		df, err := strconv.Atoi(row["df"])
		if err != nil {
			t.Fatal(err)
		}
		got := regress.SmallestShown(df)
		agree(t, row["df"]+" df", &got, row["shift"], 1e-7)
	}
}
