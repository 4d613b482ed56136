package likeliest

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/mat"
)

// The figures in testdata/reference/censored and yesno were made by the R
// scripts beside them: R 4.2.2, survival 3.5-3, brglm2 0.9.
const reference = "../../testdata/reference"

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

// bounded reads a set of bounded observations: a constant and the set's terms.
func bounded(t testing.TB, set string) (*mat.Dense, []latent.Obs) {
	t.Helper()
	name, weighted := strings.CutSuffix(set, "_weighted")
	head, rows := records(t, "censored/"+name+".csv")
	p := len(head) - 2
	weights := head[len(head)-1] == "weight"
	if weights {
		p--
	}
	x := mat.NewDense(len(rows), p+1, nil)
	y := make([]latent.Obs, len(rows))
	for i, r := range rows {
		y[i] = latent.Obs{Low: math.Inf(-1), High: math.Inf(1)}
		if r[0] != "" {
			y[i].Low = number(t, r[0])
		}
		if r[1] != "" {
			y[i].High = number(t, r[1])
		}
		if weights && weighted {
			y[i].Weight = number(t, r[len(r)-1])
		}
		x.Set(i, 0, 1)
		for j := range p {
			x.Set(i, j+1, number(t, r[j+2]))
		}
	}
	return x, y
}

var families = map[string]latent.Family{"lognormal": latent.Lognormal, "weibull": latent.Weibull, "loglogistic": latent.Loglogistic, "normal": latent.Normal}

func within(t *testing.T, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= math.Max(rel*math.Abs(want), abs)) {
		t.Errorf("%s = %.15g, want %.15g (off %.2g)", what, got, want, got-want)
	}
}

func TestScaleFitsAgreeWithSurvreg(t *testing.T) {
	fits := map[string]*Fit{}
	_, rows := records(t, "censored/fits.csv")
	for _, r := range rows {
		key := r[0] + " " + r[1]
		if fits[key] == nil {
			x, y := bounded(t, r[0])
			f, err := FitScale(families[r[1]], x, y)
			if err != nil {
				t.Fatalf("%s: %v", key, err)
			}
			fits[key] = f
		}
		f, want, what := fits[key], number(t, r[3]), key+" "+r[2]
		switch {
		case strings.HasPrefix(r[2], "coef"):
			within(t, what, f.Coef[index(t, r[2], "coef")], want, 1e-8, 0)
		case strings.HasPrefix(r[2], "se"):
			k := index(t, r[2], "se")
			within(t, what, math.Sqrt(f.Covariance.At(k, k)), want, 1e-7, 0)
		case r[2] == "scale":
			within(t, what, f.Scale, want, 1e-8, 0)
		case r[2] == "loglik":
			within(t, what, f.LogLik, want, 0, 1e-8)
		}
	}
	if len(fits) != 29 {
		t.Errorf("%d fits compared, want 29", len(fits))
	}
}

func index(t testing.TB, s, prefix string) int {
	t.Helper()
	k, err := strconv.Atoi(strings.TrimPrefix(s, prefix))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func TestTermTestsAgreeWithSurvreg(t *testing.T) {
	_, rows := records(t, "censored/tests.csv")
	for _, r := range rows {
		x, y := bounded(t, r[0])
		f, err := FitScale(families[r[1]], x, y)
		if err != nil {
			t.Fatal(err)
		}
		k := int(number(t, r[2]))
		n, p := x.Dims()
		less := mat.NewDense(n, p-1, nil)
		for j := range p - 1 {
			from := j
			if j >= k {
				from++
			}
			less.SetCol(j, mat.Col(nil, from, x))
		}
		null, err := FitScale(families[r[1]], less, y)
		if err != nil {
			t.Fatal(err)
		}
		within(t, r[0]+" "+r[1], 2*(f.LogLik-null.LogLik), number(t, r[3]), 0, 2e-8)
	}
}

// NIST/SEMATECH e-Handbook 8.4.1.3, printed: latent.Weibull scale 606.5280, shape
// 1.7208, log likelihood -75.135, AIC 154.27; lognormal AIC 154.39.
func TestHandbookCensoredLifetimes(t *testing.T) {
	x, y := bounded(t, "handbook")
	w, err := FitScale(latent.Weibull, x, y)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "scale", math.Exp(w.Coef[0]), 606.5280, 0, 5.1e-4) // printed digits are of a loose optimum
	within(t, "shape", 1/w.Scale, 1.7208, 0, 5e-5)
	within(t, "log likelihood", w.LogLik, -75.135, 0, 5e-4)
	within(t, "AIC", 4-2*w.LogLik, 154.27, 0, 5e-3)
	l, err := FitScale(latent.Lognormal, x, y)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "lognormal AIC", 4-2*l.LogLik, 154.39, 0, 5e-3)
	if w.data.counts != (latent.Counts{Exact: 10, AtLeast: 10}) || w.N != 20 {
		t.Errorf("%+v", w)
	}
}

func answers(t testing.TB, set string) (*mat.Dense, []bool) {
	t.Helper()
	head, rows := records(t, "yesno/"+set+".csv")
	x := mat.NewDense(len(rows), len(head), nil)
	y := make([]bool, len(rows))
	for i, r := range rows {
		y[i] = r[0] == "1"
		x.Set(i, 0, 1)
		for j := 1; j < len(r); j++ {
			x.Set(i, j, number(t, r[j]))
		}
	}
	return x, y
}

// Coefficients from brglm2 and glm.
func TestYesNoFitsAgreeWithR(t *testing.T) {
	fits := map[string]*YesNoFit{}
	_, rows := records(t, "yesno/fits.csv")
	for _, r := range rows {
		key := r[0] + " " + r[1]
		if fits[key] == nil {
			x, y := answers(t, r[0])
			fit := FitYesNo
			if r[1] == "reduced" {
				fit = FitYesNoFirth
			}
			f, err := fit(x, y)
			if err != nil {
				t.Fatalf("%s: %v", key, err)
			}
			fits[key] = f
		}
		f, what, want := fits[key], key+" "+r[2], number(t, r[3])
		q := strings.TrimRight(r[2], "0123456789")
		switch q {
		case "coef":
			within(t, what, f.Coef[index(t, r[2], q)], want, 1e-8, 0)
		case "se":
			k := index(t, r[2], q)
			within(t, what, math.Sqrt(f.Covariance.At(k, k)), want, 1e-8, 0)
		case "loglik":
			within(t, what, f.LogLik, want, 0, 1e-8)
		case "penalised":
			within(t, what, f.Penalised, want, 0, 1e-8)
		default:
			t.Fatal(q)
		}
	}
}
