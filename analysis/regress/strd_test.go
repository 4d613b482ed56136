package regress

import (
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
)

const reference = "../../testdata/reference/leastsquares"

var update = flag.Bool("update", false, "write the table of correct digits anew")

func records(t testing.TB, name string) (head []string, rows [][]string) {
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
	return all[0], all[1:]
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// certifiedSet is a set with its design: powers of x up to the set's degree.
func certifiedSet(t testing.TB, set string) (*mat.Dense, []float64) {
	degree := map[string]int{"filip": 10, "wampler1": 5, "wampler2": 5, "wampler3": 5, "wampler4": 5, "wampler5": 5}[set]
	_, rows := records(t, "strd/"+set+".csv")
	var y []float64
	var design []float64
	for _, r := range rows {
		y = append(y, number(t, r[0]))
		if set != "noint1" {
			design = append(design, 1)
		}
		for _, c := range r[1:] {
			design = append(design, number(t, c))
		}
		x := number(t, r[1])
		for k := 2; k <= degree; k++ {
			design = append(design, math.Pow(x, float64(k)))
		}
	}
	return mat.NewDense(len(y), len(design)/len(y), design), y
}

// digits is -log10 of the relative error (the absolute one of a certified 0), at
// most the 15 that the certificates carry, and 15 when all of those agree.
func digits(value, certified float64) float64 {
	if fmt.Sprintf("%.14e", value) == fmt.Sprintf("%.14e", certified) {
		return 15
	}
	off := math.Abs(value - certified)
	if certified != 0 {
		off /= math.Abs(certified)
	}
	return math.Max(0, math.Min(15, -math.Log10(off)))
}

// NIST Statistical Reference Datasets, itl.nist.gov/div898/strd: certified values
// in certified.csv; R's digits from strd.R beside it, with lm's tolerance 1e-12.
func TestCorrectDigitsNoWorseThanR(t *testing.T) {
	_, certified := records(t, "strd/certified.csv")
	_, other := records(t, "strd_digits_r.csv")
	fits := map[string]*Fit{}
	leastOurs, leastR := map[string]float64{}, map[string]float64{}
	var table strings.Builder
	table.WriteString("set,quantity,ours,r\n")
	for i, c := range certified {
		set, quantity := c[0], c[1]
		if fits[set] == nil {
			x, y := certifiedSet(t, set)
			f, err := Least(x, y, nil)
			if err != nil {
				t.Fatal(set, err)
			}
			fits[set] = f
			leastOurs[set], leastR[set] = 15, 15
		}
		f := fits[set]
		var got float64
		switch name := strings.TrimRight(quantity, "0123456789"); name {
		case "coef", "se":
			k, err := strconv.Atoi(strings.TrimPrefix(quantity, name))
			if err != nil {
				t.Fatal(err)
			}
			got = map[string][]float64{"coef": f.Coef, "se": f.SE}[name][k]
		case "sd":
			got = f.ResidualSD
		case "r": // r2
			got = f.R2
		case "f":
			got = f.F
		}
		d, r := digits(got, number(t, c[2])), number(t, other[i][2])
		if other[i][0] != set || other[i][1] != quantity {
			t.Fatalf("the tables differ in row %d", i)
		}
		leastOurs[set], leastR[set] = math.Min(leastOurs[set], d), math.Min(leastR[set], r)
		fmt.Fprintf(&table, "%s,%s,%.2f,%.2f\n", set, quantity, d, r)
		if d < r-0.005 {
			t.Errorf("%s %s: %.2f digits, R has %.2f", set, quantity, d, r)
		}
	}
	if written, err := os.ReadFile(filepath.Join(reference, "strd_digits.csv")); runtime.GOARCH == "amd64" && !*update && (err != nil || string(written) != table.String()) {
		t.Errorf("strd_digits.csv is out of date (%v): run with -update", err)
	}
	for set, d := range leastOurs {
		t.Logf("%-9s at least %5.2f digits, R %5.2f", set, d, leastR[set])
	}
	if *update {
		if err := os.WriteFile(filepath.Join(reference, "strd_digits.csv"), []byte(table.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
