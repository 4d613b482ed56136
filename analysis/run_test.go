package analysis

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/thorough"

	"gonum.org/v1/gonum/stat/distuv"
)

// run reads and analyses a log.
func run(t testing.TB, path string, set Settings) *result.Results {
	t.Helper()
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	set.Seed = 1
	r, err := Run(log, set)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func written(t testing.TB, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

const demo = "../testdata/demo/week.xlsx"

// plain is the demo as it comes, which many tests look at and none changes.
var plain = sync.OnceValue(func() *result.Results {
	log, err := ingest.Read([]string{demo}, ingest.Options{})
	if err != nil {
		panic(err)
	}
	r, err := Run(log, Settings{Seed: 1})
	if err != nil {
		panic(err)
	}
	return r
})

// fewest is how many of n limits of 90 % hold the truth at least: fewer do once in 400 times.
func fewest(n int) int {
	least := 0
	for (distuv.Binomial{N: float64(n), P: 0.9}).CDF(float64(least)) <= 1.0/400 {
		least++
	}
	return least
}

// The demo's truth is documented with its generator: the recommended start must
// truly work there, and its claim must not be more than a little above the truth.
func TestDemoStartTrulyWorks(t *testing.T) {
	r := plain()
	if r.Status != result.Recommended || len(r.Starts) == 0 {
		t.Fatalf("status %s: %s", r.Status, r.StatusReason)
	}
	k := kitchen.Demo()
	for _, s := range r.Starts {
		truth := k.Chance(kitchen.Mix{FatPercent: *s.Mix.FatPercent, EmulsifierPercent: *s.Mix.EmulsifierPercent, BlendHLB: *s.Mix.BlendHLB}, kitchen.Usual)
		t.Logf("%s: fat %.1f, emulsifier %.2f, HLB %.1f: claimed %.3f (%.3f to %.3f), truly %.3f", s.Aim,
			*s.Mix.FatPercent, *s.Mix.EmulsifierPercent, *s.Mix.BlendHLB, s.Chance.Mean, s.Chance.Low, s.Chance.High, truth)
		if truth < 0.85 {
			t.Errorf("%s start truly works only %.3f", s.Aim, truth)
		}
		if s.Chance.Mean > truth+0.1 {
			t.Errorf("%s start claims %.3f, truly %.3f", s.Aim, s.Chance.Mean, truth)
		}
	}
}

// What must hold of every start of every log.
func checkStarts(t *testing.T, r *result.Results) {
	t.Helper()
	for _, s := range r.Starts {
		if s.Chance.Low > s.Chance.Mean || s.Chance.Mean > s.Chance.High {
			t.Errorf("%s: chance %+v", s.Aim, s.Chance)
		}
		sum := s.Chance.Mean
		for _, v := range s.Fails {
			sum += v
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s: chance and failures add up to %v", s.Aim, sum)
		}
		if c := s.Fails[result.CameOut]; c > 0.05 {
			t.Errorf("%s: clogs with chance %.3f", s.Aim, c)
		}
		if s.Aim == result.Richest && s.Chance.Mean < r.Targets.WantedChance.Value-0.01 {
			t.Errorf("richest start has chance %.3f", s.Chance.Mean)
		}
		if len(s.Ingredients) > 0 {
			total := 0.0
			for _, l := range s.Ingredients {
				total += l.Grams
				if steps := l.Grams / r.Batch.ScaleStepGrams; math.Abs(steps-math.Round(steps)) > 1e-6 {
					t.Errorf("%s: %v g of %s is off the scale's step", s.Aim, l.Grams, l.Name)
				}
			}
			if math.Abs(total-r.Batch.Grams) > 1e-6 {
				t.Errorf("%s: grams add up to %v, batch %v", s.Aim, total, r.Batch.Grams)
			}
		}
		for _, v := range r.Variables {
			x := map[string]*float64{surface.FatPercent: s.Mix.FatPercent, surface.EmulsifierPercent: s.Mix.EmulsifierPercent,
				surface.EmulsifierGrams: s.Mix.EmulsifierGrams, surface.BlendHLB: s.Mix.BlendHLB}[v.Name]
			if v.Role == result.Held {
				if set, named := s.Mix.Extras[v.Name]; named && set != *v.FixedAt {
					t.Errorf("%s: %s at %v, fixed at %v", s.Aim, v.Name, set, *v.FixedAt)
				}
				x = v.FixedAt
			}
			if x == nil || *x < v.Low-0.3 || *x > v.High+0.3 {
				t.Errorf("%s: %s outside what was tried", s.Aim, v.Name)
			}
		}
	}
	for _, n := range r.NextTrials {
		if n.ClogChance != nil && *n.ClogChance > 0.2 {
			t.Errorf("suggested trial clogs with chance %.3f", *n.ClogChance)
		}
	}
}

const header = "no,oil g,water g,GMS g,sucrose ester 15 g,came out,hold min,split\n"

// row is one trial as a line of the log: fat f of 200 g, emulsifier e, high-HLB share.
func row(i int, fat, e, high float64, rest string) string {
	return fmt.Sprintf("%d,%.1f,%.1f,%.2f,%.2f,%s\n", i, 2*fat, 200-2*fat-2*e, 2*e*(1-high), 2*e*high, rest)
}

// spread is n rows over a range of mixes; of says what happened.
func spread(n int, of func(i int, fat, e float64) string) string {
	var b strings.Builder
	b.WriteString(header)
	for i := range n {
		fat := 32 + float64(i*7%23)
		e := 1 + float64(i*5%11)/6
		b.WriteString(row(i+1, fat, e, 0.3+float64(i*3%7)/20, of(i, fat, e)))
	}
	return b.String()
}

func TestStatuses(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	good := func(i int, fat, e float64) string {
		if fat > 48 || e < 1.5 {
			return "y," + fmt.Sprint(6+i%5) + ",n"
		}
		return "y,25+,n"
	}
	cases := []struct {
		name string
		log  string
		set  Settings
		want result.Status
	}{
		{"something works", spread(24, good), Settings{}, result.Recommended},
		{"a chance nobody can reach", spread(24, good), Settings{Chance: ptr(0.9999)}, result.BestAvailable},
		{"six trials", spread(6, good), Settings{}, result.TooFewTrials},
		{"nothing works", spread(60, func(i int, fat, e float64) string { return "y," + fmt.Sprint(3+i%7) + ",n" }), Settings{}, result.NothingWorked},
		{"all clogged", spread(12, func(int, float64, float64) string { return "n,n/a," }), Settings{}, result.NothingWorked},
		{"all still standing at 30", spread(12, func(int, float64, float64) string { return "y,30+,n" }), Settings{}, result.Recommended},
		{"all watched to 15 only", spread(12, func(int, float64, float64) string { return "y,15+,n" }), Settings{}, result.BestAvailable},
	}
	one := header
	for i := range 10 {
		one += row(i+1, 45, 2, 0.4, fmt.Sprintf("y,%d,n", 24+i))
	}
	cases = append(cases, struct {
		name string
		log  string
		set  Settings
		want result.Status
	}{"one formula ten times", one, Settings{}, result.Recommended})
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := run(t, written(t, c.log), c.set)
			if r.Status != c.want {
				t.Errorf("status %s (%s), want %s", r.Status, r.StatusReason, c.want)
			}
			checkStarts(t, r)
			if _, err := json.Marshal(r); err != nil {
				t.Error(err)
			}
			for _, f := range r.Fits {
				if f.Failure == "" && len(f.Terms) == 0 {
					t.Errorf("fit %s %s %d has neither terms nor a reason", f.Result, f.Distribution, f.Order)
				}
			}
		})
	}
}

func ptr(v float64) *float64 { return &v }

// One formula made ten times: the made count and the chance come from its own repeats.
func TestOneFormula(t *testing.T) {
	text := header
	for i := range 10 {
		text += row(i+1, 45, 2, 0.4, fmt.Sprintf("y,%d,n", 24+i))
	}
	r := run(t, written(t, text), Settings{})
	if len(r.Starts) != 1 || r.Starts[0].MadeTimes != 10 || r.Starts[0].MadeWorked != 10 {
		t.Fatalf("%+v", r.Starts)
	}
	rep := r.Repeatability[0]
	if rep.Groups != 1 || rep.DF != 9 || rep.CVPercent == nil || *rep.CVPercent < 5 || *rep.CVPercent > 20 {
		t.Errorf("repeatability %+v", rep)
	}
}

// A log with the five classic columns only: grams stay grams, only the two lines
// with the same three numbers are repeats, and no split into ingredients is invented.
func TestFiveColumns(t *testing.T) {
	thorough.NotShort(t, "analyses another log")
	r := run(t, "../testdata/demo/five-columns.csv", Settings{})
	checkStarts(t, r)
	if r.Variables[1].Name != surface.EmulsifierGrams {
		t.Errorf("variables %+v", r.Variables)
	}
	for i, a := range r.Trials {
		alike := ""
		for _, b := range r.Trials[:i] {
			if *a.FatPercent == *b.FatPercent && *a.BlendHLB == *b.BlendHLB && *a.EmulsifierGrams == *b.EmulsifierGrams {
				alike = b.At
				break
			}
		}
		if a.RepeatOf != alike {
			t.Errorf("trial %s is held for a repeat of %q, its numbers for one of %q", a.At, a.RepeatOf, alike)
		}
	}
	for _, s := range r.Starts {
		if len(s.Ingredients) > 0 || s.GramsNote == "" {
			t.Errorf("grams out of nothing: %+v", s)
		}
	}
}

// A log in percents is weighed by its parts: they make the start's mix, and say what they are.
func TestPercentsInGrams(t *testing.T) {
	thorough.NotShort(t, "analyses another log")
	var log strings.Builder
	log.WriteString("trial,fat %,emulsifier % of mix,blend HLB,came out,hold min\n")
	for i, x := range [][4]float64{{30, 0.8, 7, 12}, {35, 1, 7, 18}, {40, 1, 8, 25}, {45, 1.2, 8, 31}, {50, 1.2, 9, 35}, {55, 1.4, 9, 0}, {45, 1, 10, 22}, {40, 1.4, 10, 28}, {35, 1.2, 11, 15}, {50, 1.4, 7, 0}, {42, 1.2, 9, 33}, {38, 0.8, 9, 19}, {47, 1.4, 10, 30}} {
		came, hold := "yes", fmt.Sprint(x[3])
		if x[3] == 0 {
			came, hold = "no", ""
		}
		fmt.Fprintf(&log, "%d,%v,%v,%v,%s,%s\n", i+1, x[0], x[1], x[2], came, hold)
	}
	path := filepath.Join(t.TempDir(), "percents.csv")
	if err := os.WriteFile(path, []byte(log.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	r := run(t, path, Settings{})
	checkStarts(t, r)
	for _, s := range r.Starts {
		sum, grams := 0.0, map[string]float64{}
		for _, l := range s.Ingredients {
			sum += l.Grams
			grams[l.Kind] += l.Grams
			if (l.BlendedToHLB != nil) != (l.Kind == "emulsifier") {
				t.Errorf("blended: %+v", l)
			}
		}
		if math.Abs(sum-r.Batch.Grams) > 1e-9 || math.Abs(100*grams["fat"]/sum-*s.Mix.FatPercent) > 1e-9 || math.Abs(100*grams["emulsifier"]/sum-*s.Mix.EmulsifierPercent) > 1e-9 || !strings.Contains(s.GramsNote, "counted as pure") {
			t.Errorf("%v of %v g make %+v: %s", grams, sum, s.Mix, s.GramsNote)
		}
	}
}

// Starts that an impossible target or a hard kitchen leads to still keep the rules.
func TestStartsKeepTheRules(t *testing.T) {
	thorough.NotShort(t, "analyses kitchens for some seconds")
	for seed := range uint64(thorough.Of(t, 2, 6)) {
		for _, family := range []kitchen.Family{kitchen.Easy, kitchen.Hard} {
			k := kitchen.New(family, 900+seed)
			var b bytes.Buffer
			if err := kitchen.WriteCSV(&b, k.Log(kitchen.Layouts[seed%4], 16+int(seed)*8, kitchen.Stream(seed, "rules"))); err != nil {
				t.Fatal(err)
			}
			checkStarts(t, run(t, written(t, b.String()), Settings{}))
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	thorough.NotShort(t, "analyses a log again")
	a, err := json.Marshal(plain())
	if err != nil {
		t.Fatal(err)
	}
	for range thorough.Of(t, 1, 3) {
		b, err := json.Marshal(run(t, demo, Settings{}))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a, b) {
			t.Fatal("two runs differ")
		}
	}
}

// Trials used and set aside add up, and what works follows the bounds.
func TestWorks(t *testing.T) {
	r := run(t, written(t, header+
		row(1, 40, 2, 0.4, "y,20+,n")+row(2, 41, 2, 0.4, "y,15+,n")+row(3, 42, 2, 0.4, "y,19,n")+
		row(4, 43, 2, 0.4, "n,n/a,")+row(5, 44, 2, 0.4, "y,30,y")+row(6, 45, 2, 0.4, "partly,25,n")+
		row(7, 46, 2, 0.4, "y,15-25,n")+row(8, 47, 2, 0.4, "y,20-30,n")), Settings{})
	want := []string{"yes", "unknown", "no", "no", "no", "no", "unknown", "yes"}
	for i, tr := range r.Trials {
		got := "unknown"
		if tr.Works != nil {
			got = map[bool]string{true: "yes", false: "no"}[*tr.Works]
		}
		if got != want[i] {
			t.Errorf("trial %s works: %s, want %s", tr.ID, got, want[i])
		}
	}
	c := r.Counts
	if c.Used != 8 || c.Worked+c.Failed+c.Unknown != 8 || c.Clogged != 1 || c.Partly != 1 || c.Broke != 1 {
		t.Errorf("%+v", c)
	}
}

// Leaving a trial out must be able to surprise: a clogged trial among good ones
// is foreseen to work more than it did, and foreseen chances follow what happened.
func TestForeseen(t *testing.T) {
	r := plain()
	var worked, failed, n, m float64
	for _, tr := range r.Trials {
		if tr.ForeseenChance == nil || tr.Works == nil {
			continue
		}
		if *tr.Works {
			worked += *tr.ForeseenChance
			n++
		} else {
			failed += *tr.ForeseenChance
			m++
		}
	}
	if worked/n < failed/m+0.25 {
		t.Errorf("foreseen %.2f where it worked, %.2f where it did not", worked/n, failed/m)
	}
}

// The prior is no opinion on these trials: it is the same belief whatever happened in
// them, it leaves the middle open, and the surest start's chance lies between half and
// double. The richest stands at an edge, of which a wider prior may be less sure.
func TestPriorBelief(t *testing.T) {
	r := plain()
	p := r.PriorBelief
	if p == nil || p.AtCentre < 0.05 || p.AtCentre > 0.5 || p.Reaches < 0.3 || p.Reaches > 0.95 {
		t.Errorf("the prior believes %+v", p)
	}
	for _, s := range r.Starts {
		if len(s.Widths) != 2 || s.Widths[0].Factor != 0.5 || s.Widths[1].Factor != 2 {
			t.Fatalf("%+v", s.Widths)
		}
		half, double := *s.Widths[0].Chance, *s.Widths[1].Chance
		if half > s.Chance.Mean+0.03 || s.Aim == result.Surest && double < s.Chance.Mean-0.03 {
			t.Errorf("%s: half %.3f, as it is %.3f, double %.3f", s.Aim, half, s.Chance.Mean, double)
		}
	}
}

func BenchmarkRun60(b *testing.B) {
	var buf bytes.Buffer
	k := kitchen.New(kitchen.Easy, 1)
	if err := kitchen.WriteCSV(&buf, k.Log(kitchen.Scattered, 60, kitchen.Stream(1, "bench"))); err != nil {
		b.Fatal(err)
	}
	log, err := ingest.Read([]string{written(b, buf.String())}, ingest.Options{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Run(log, Settings{Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
