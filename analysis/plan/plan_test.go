package plan

import (
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
)

var update = flag.Bool("update", false, "write the points that the reference script reads; then run it")

const reference = "../../testdata/reference/plan"

// wide is a box as kitchens move in.
var wide = Ranges{Fat: Span{35, 55}, Emulsifier: Span{1, 4}, HLB: Span{5, 11}}

func weekOf(l Layout, trials, days int) week { return lay(wide, l, trials, days, stream(1)) }

// D-efficiency and prediction variance of every layout against plain matrix algebra in R
// on the same points (precision.R beside them).
func TestPrecisionIsRs(t *testing.T) {
	var points, places [][]string
	coded := map[string][][]float64{}
	for _, l := range Layouts {
		w := weekOf(l, 24, 3)
		for _, p := range w.made {
			x := w.region.coded(p)
			coded[l.String()] = append(coded[l.String()], x)
			points = append(points, []string{l.String(), exactly(x[0]), exactly(x[1]), exactly(x[2])})
		}
	}
	var at [][]float64
	g := weekOf(Cover, 24, 3).region
	for _, p := range g.places {
		x := g.coded(p)
		at = append(at, x)
		places = append(places, []string{exactly(x[0]), exactly(x[1]), exactly(x[2])})
	}
	if *update {
		write(t, "points.csv", append([][]string{{"layout", "x1", "x2", "x3"}}, points...))
		write(t, "places.csv", append([][]string{{"x1", "x2", "x3"}}, places...))
	}
	if !reflect.DeepEqual(read(t, "points.csv")[1:], points) || !reflect.DeepEqual(read(t, "places.csv")[1:], places) {
		t.Fatal("the points are not those that the script read: run with -update, then the script")
	}
	for _, r := range read(t, "precision.csv")[1:] {
		terms := straight
		if r[1] == "2" {
			terms = curved
		}
		mean, most := Variance(coded[r[0]], at, terms)
		for i, got := range []float64{Efficiency(coded[r[0]], terms), mean, most} {
			want, err := strconv.ParseFloat(r[2+i], 64)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got-want) > 1e-8*math.Abs(want) {
				t.Errorf("%s, order %s, column %d: %.12g, R %.12g", r[0], r[1], 2+i, got, want)
			}
		}
	}
}

func exactly(v float64) string { return strconv.FormatFloat(v, 'g', 17, 64) }

func read(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(reference, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		for i := range r {
			r[i] = strings.TrimSpace(r[i])
		}
	}
	return rows
}

func write(t *testing.T, name string, rows [][]string) {
	t.Helper()
	f, err := os.Create(filepath.Join(reference, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := csv.NewWriter(f).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
}

// The ends of the axes against the corners: NIST/SEMATECH e-Handbook 5.3.3.6.1, the table
// of alpha for rotatability of a full factorial part, 2^(k/4).
func TestRotatable(t *testing.T) {
	for k, alpha := range map[int]float64{2: 1.414, 3: 1.682, 4: 2.000, 5: 2.378} {
		var axis, corner float64
		rows := composite(k)
		if len(rows) != 1<<k+2*k {
			t.Errorf("%d variables: %d rows", k, len(rows))
		}
		for _, x := range rows {
			if zeros := len(slices.DeleteFunc(slices.Clone(x), func(v float64) bool { return v != 0 })); zeros == k-1 {
				axis = max(axis, slices.Max(x))
			} else {
				corner = max(corner, slices.Max(x))
			}
		}
		if math.Abs(axis/corner-alpha) > 0.0006 {
			t.Errorf("%d variables: %v, published %v", k, axis/corner, alpha)
		}
	}
	// Rotatable: the variance of prediction depends on the distance only.
	points := composite(3)
	for range 6 {
		points = append(points, make([]float64, 3))
	}
	one, _ := Variance(points, [][]float64{{0.6, 0, 0}}, curved)
	for _, x := range [][]float64{{0, 0.6, 0}, {0, 0, -0.6}, {0.36, 0.48, 0}, {0.6 / math.Sqrt(3), 0.6 / math.Sqrt(3), -0.6 / math.Sqrt(3)}} {
		if v, _ := Variance(points, [][]float64{x}, curved); math.Abs(v-one) > 1e-12 {
			t.Errorf("at %v the variance is %v, on an axis %v", x, v, one)
		}
	}
}

// What every week keeps to, whatever is asked: as many trials as asked, in the ranges, a
// control each day, a repeat on each but the first, thick mixes last and none of them first,
// the same for the same seed.
func TestWeeksKeepTheRules(t *testing.T) {
	for seed := range uint64(20) {
		draw := rand.New(rand.NewPCG(seed, 1))
		span := func(low, high float64) Span {
			a := low + draw.Float64()*(high-low)
			return Span{a, a + []float64{0, 0.1, 0.5, 1}[draw.IntN(4)]*(high-a)}
		}
		r := Ranges{span(20, 70), span(0.3, 6), span(4, 14)}
		if len(r.varied()) == 0 {
			continue
		}
		days := 1 + draw.IntN(5)
		trials := min(days*(3+draw.IntN(4)), 15)
		if trials < 3*days {
			continue
		}
		l := []Layout{Cover, Scattered, Corners, Cover, Scattered, Corners, Sharp, Cover, Scattered, Even}[seed%10] // exchanging takes long
		w := lay(r, l, trials, days, stream(seed))
		if len(w.trials) != trials {
			t.Fatalf("%d trials instead of %d", len(w.trials), trials)
		}
		if again := lay(r, l, trials, days, stream(seed)); !reflect.DeepEqual(again.trials, w.trials) {
			t.Fatal("one seed gives two weeks")
		}
		most := math.Inf(-1)
		for _, x := range w.trials {
			most = max(most, w.region.thickness(x.at))
		}
		for day := range days {
			var today []trial
			count := map[Purpose]int{}
			for _, x := range w.trials {
				if x.day == day {
					today = append(today, x)
					count[x.purpose]++
				}
			}
			if count[Control] != 1 || days > 1 && day > 0 && count[Repeat] != 1 {
				t.Fatalf("day %d has %v", day, count)
			}
			for i := 1; i < len(today); i++ {
				if today[i-1].thick && (!today[i].thick || w.region.thickness(today[i].at) < w.region.thickness(today[i-1].at)) {
					t.Fatalf("day %d: a thick mix does not come last, the thicker the later", day)
				}
			}
		}
		for i, p := range Week(r, l, trials, days, seed) {
			m := p.Mix
			if m.FatPercent < r.Fat.Low-1e-9 || m.FatPercent > r.Fat.High+1e-9 {
				t.Fatalf("fat %v outside %v", m.FatPercent, r.Fat)
			}
			if p.Purpose == Control {
				continue
			}
			if m.EmulsifierPercent < r.Emulsifier.Low-1e-9 || m.EmulsifierPercent > r.Emulsifier.High+1e-9 || m.BlendHLB < r.HLB.Low-1e-9 || m.BlendHLB > r.HLB.High+1e-9 {
				t.Fatalf("%v outside %v", m, r)
			}
			for _, j := range p.Skip {
				if j <= i || Thickness(w.mix(w.trials[j])) < Thickness(m)-1e-9 {
					t.Fatalf("trial %d is left out for %d, which is thicker or made already", j, i)
				}
			}
		}
	}
}

// The day and the cook of trials after a log: what was said, else the log's own where it
// leaves no choice.
func TestShiftsAfterALog(t *testing.T) {
	log := func(days, cooks string) *result.Results {
		r := &result.Results{}
		for i, d := range strings.Split(days, ",") {
			day, aside := strings.CutSuffix(d, " aside")
			r.Trials = append(r.Trials, result.Trial{Day: day, Cook: strings.Split(cooks, ",")[i], Used: !aside})
		}
		return r
	}
	for _, c := range []struct {
		days, cooks string
		said        Shifts
		want        string
	}{
		{"1,1,2", "AB,AB,AB", Shifts{}, "[3] [AB]"},
		{"day 1,day 2,day 10", "AB,CD,AB", Shifts{}, "[day 11] []"},
		{"2026-05-03,2026-05-04,2026-05-04", ",,", Shifts{}, "[] []"},
		{"1,2,", "AB,AB,", Shifts{}, "[] []"},
		{"1,2, aside", "AB,AB,", Shifts{}, "[3] [AB]"}, // a row begun and left
		{"Mon,Tue,Wed", "AB,AB,AB", Shifts{Days: []string{"Thu", "Fri"}}, "[Thu Fri] [AB]"},
		{"1,2,3", "AB,CD,AB", Shifts{Cooks: []string{"CD"}}, "[4] [CD]"},
	} {
		got := c.said.after(log(c.days, c.cooks))
		if said := fmt.Sprint(got.Days, " ", got.Cooks); said != c.want {
			t.Errorf("%s, %s: %s, want %s", c.days, c.cooks, said, c.want)
		}
	}
}

// What nobody set and the ingredients do not reach is tried as far as they do, in numbers
// that a person would type, and said.
func TestNarrowedRangesAreSaid(t *testing.T) {
	for _, c := range []struct {
		names  []string
		given  Given
		fat    Span
		hlb    Span
		saying []string // of each note, a part
	}{
		{[]string{"clarified butter", "cider", "GMS", "sucrose ester 15"}, Given{}, Usual.Fat, Usual.HLB, nil},
		{[]string{"cream 35", "milk", "GMS", "sucrose ester 15"}, Given{}, Span{20, 33}, Usual.HLB, []string{"from 3.5 to 33.2 % fat, so the plan tries 20 to 33 %"}},
		{[]string{"cream 35", "milk", "GMS", "sucrose ester 15"}, Given{Fat: &Span{25, 32}}, Span{25, 32}, Usual.HLB, nil},
		{[]string{"olive oil", "stock", "GMS", "sucrose ester 11"}, Given{}, Usual.Fat, Span{5, 10.2}, []string{"a blend HLB of 5 to 10.2, not 5 to 13"}},
	} {
		a := Asked{Given: c.given}
		for _, n := range c.names {
			what, ok := ingredient.Lookup(n)
			if !ok {
				t.Fatal(n)
			}
			a.At = append(a.At, Part{Name: n, Grams: 25, What: &what})
		}
		r, err := a.ranges()
		if err != nil {
			t.Fatal(err)
		}
		said := a.narrowed(r)
		if r.Fat != c.fat || r.HLB != c.hlb || len(said) != len(c.saying) {
			t.Errorf("%v: %v, %v, %q", c.names, r.Fat, r.HLB, said)
			continue
		}
		for i, part := range c.saying {
			if !strings.Contains(said[i], part) {
				t.Errorf("%v: %q", c.names, said[i])
			}
		}
	}
}

// A week that does not move a number says that it tells nothing of it, and names only what
// it moves.
func TestCannotTellOfWhatIsOne(t *testing.T) {
	for _, c := range []struct {
		given       Given
		says, never string
	}{
		{Given{}, "exactly which fat, emulsifier and HLB are best", "does better"},
		{Given{HLB: &Span{8, 8}}, "whether another blend HLB does better", "emulsifier and HLB are best"},
		{Given{HLB: &Span{8, 8}, Emulsifier: &Span{2, 2}}, "exactly which fat is best", "and HLB"},
		{Given{Emulsifier: &Span{2, 2}}, "whether another emulsifier percent does better", "another blend HLB"},
	} {
		a := Asked{Given: c.given, Trials: 6}
		for _, n := range []string{"clarified butter", "cider", "GMS", "sucrose ester 15"} {
			what, ok := ingredient.Lookup(n)
			if !ok {
				t.Fatal(n)
			}
			a.At = append(a.At, Part{Name: n, Grams: 25, What: &what})
		}
		p, err := Of(a)
		if err != nil {
			t.Fatal(err)
		}
		if said := strings.Join(p.Cannot, "\n"); !strings.Contains(said, c.says) || strings.Contains(said, c.never) {
			t.Errorf("%+v: %s", c.given, said)
		}
	}
}
