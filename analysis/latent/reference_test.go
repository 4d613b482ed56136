package latent

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The figures in testdata/reference/censored were made by the R script beside
// them: R 4.2.2.
const reference = "../../testdata/reference"

func records(t testing.TB, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(reference, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

var families = map[string]Family{"lognormal": Lognormal, "weibull": Weibull, "loglogistic": Loglogistic, "normal": Normal}

func within(t *testing.T, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= math.Max(rel*math.Abs(want), abs)) {
		t.Errorf("%s = %.15g, want %.15g (off %.2g)", what, got, want, got-want)
	}
}

// Tails from R's dnorm, pnorm, dlogis, plogis and pweibull with log = TRUE. The
// normal's magnify the rounding of z by z².
func TestTailsAgreeWithR(t *testing.T) {
	rows := records(t, "censored/functions.csv")
	for _, r := range rows {
		f, z := families[r[0]], number(t, r[1])
		var got float64
		switch r[2] {
		case "density":
			got = f.density(z).v
		case "above":
			got = f.above(z).v
		case "below":
			got = f.below(z).v
		}
		within(t, strings.Join(r[:3], " "), got, number(t, r[3]), math.Max(4e-15, z*z*0x1p-52), 0)
	}
}
