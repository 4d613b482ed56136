package analysis

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

// The fits of a log are those that a plain script in another language finds in the same file, and
// so are their scores without each trial: fits.csv, by testdata/reference/plain/plain.R with
// --left-out (R 4, survival). It fits yes and no by plain likelihood alone.
func TestFitsOfAPlainScript(t *testing.T) {
	thorough.NotShort(t, "analyses a log")
	file, err := os.Open("../testdata/reference/plain/fits.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]string{"hold": "hold_minutes", "drained": "drained_percent", "gaussian": "normal"}
	ours := func(name string) string {
		if is, other := names[name]; other {
			return is
		}
		return name
	}
	theirs := map[[3]string][]string{}
	for _, l := range lines[1:] {
		theirs[[3]string{ours(l[0]), ours(l[1]), l[2]}] = l[3:]
	}
	alike := func(f result.Fit, what string, got *float64, text string, within float64) int {
		want, err := strconv.ParseFloat(text, 64)
		if err != nil || got == nil {
			return 0
		}
		if math.Abs(*got-want) > within*math.Abs(want) {
			t.Errorf("%s, %s, order %d: %s %.12g, there %.12g", f.Result, f.Distribution, f.Order, what, *got, want)
		}
		return 1
	}
	fits, scores := 0, 0
	for _, f := range run(t, "../testdata/reference/plain/sixty.csv", Settings{}).Fits {
		if f.Estimator != result.MaximumLikelihood || f.Failure != "" {
			continue
		}
		l := theirs[[3]string{f.Result, f.Distribution, strconv.Itoa(f.Order)}]
		if l == nil {
			t.Errorf("%s, %s, order %d is not there", f.Result, f.Distribution, f.Order)
			continue
		}
		fits += alike(f, "log likelihood", f.LogLikelihood, l[0], 1e-10)
		scores += alike(f, "score", f.LeaveOneOutScore, l[1], 1e-8)
	}
	if fits != 17 || scores != 12 {
		t.Errorf("%d fits and %d scores were compared", fits, scores)
	}
}
