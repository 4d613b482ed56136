package groups

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/analysis/fits"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

var update = flag.Bool("update", false, "write the table of false alarms anew, from many logs")

// Tests, levels and drift are R's (groups.R beside the log).
func TestGroupsAsR(t *testing.T) {
	checked := 0
	for _, e := range effects(t, filepath.Join(groupReference, "log.csv")) {
		for _, want := range rowsOf(t, filepath.Join(groupReference, "tests.csv")) {
			if want["distribution"] != e.Distribution || want["by"] != e.By {
				continue
			}
			agree(t, e.By+" statistic", e.LikelihoodRatio, want["statistic"], 1e-6)
			agree(t, e.By+" p", e.P, want["p"], 1e-6)
			agree(t, e.By+" residual df", e.ResidualDF, want["residual_df"], 0)
			if fmt.Sprint(e.DF) != want["df"] {
				t.Errorf("%s: df %d, R has %s", e.By, e.DF, want["df"])
			}
			checked++
		}
		for _, want := range rowsOf(t, filepath.Join(groupReference, "factors.csv")) {
			if want["distribution"] != e.Distribution || want["by"] != e.By {
				continue
			}
			f := e.Drift
			for _, l := range e.Levels {
				if l.Name == want["level"] {
					f = l.Factor
				}
			}
			if f == nil {
				t.Errorf("%s %s has no factor", e.By, want["level"])
				continue
			}
			agree(t, e.By+" "+want["level"]+" mid", &f.Mid, want["mid"], 1e-6)
			agree(t, e.By+" "+want["level"]+" low", &f.Low, want["low"], 1e-6)
			agree(t, e.By+" "+want["level"]+" high", &f.High, want["high"], 1e-6)
			checked++
		}
	}
	if want := 3 + 5 + 2 + 1; checked != want {
		t.Errorf("%d figures were held against R, want %d", checked, want)
	}
}

// alike makes a kitchen's log anew on its usual day, so that no day, and nothing
// in the order, moves a result; effect is the SD of a day put on ln hold.
func alike(t *testing.T, family kitchen.Family, layout kitchen.Layout, n int, seed uint64, effect float64) string {
	t.Helper()
	k, rng := kitchen.New(family, seed), kitchen.Stream(seed, "alike")
	log := k.Log(layout, n, rng)
	day, today := 0, 0.0
	for i := range log {
		l := &log[i]
		if l.Day != day {
			day, today = l.Day, effect*rng.NormFloat64()
		}
		o := k.Outcome(l.Made, 0, rng)
		l.CameOut, l.Partly, l.Broke, l.Hold, l.Drained = o.CameOut, o.Partly, o.Broke, nil, nil
		if o.CameOut && !o.Broke {
			h := math.Max(1, math.Round(o.HoldMinutes*math.Exp(today)))
			if l.Hold = (&kitchen.Bounds{Low: h, High: h}); h > 25 {
				l.Hold = &kitchen.Bounds{Low: 25, High: math.Inf(1)}
			}
		}
	}
	var b strings.Builder
	if err := kitchen.WriteCSV(&b, log); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// straight is a log whose truth is the judging model's: straight terms, a
// lognormal scatter, days of six trials that are all alike.
func straight(n int, seed uint64) string {
	rng := rand.New(rand.NewPCG(seed, 77))
	var b strings.Builder
	b.WriteString("trial,day,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
	for i := range n {
		fat, e, h := 34+20*rng.Float64(), math.Exp(1.2*rng.Float64()), 5+6*rng.Float64()
		hold := math.Exp(2.5 + 0.03*(fat-44) + 0.4*math.Log(e) - 0.03*h + 0.3*rng.NormFloat64())
		said := fmt.Sprintf("%.1f", hold)
		if hold > 25 {
			said = "25+"
		}
		fmt.Fprintf(&b, "%d,day %d,%.1f,%.2f,%.1f,%s,y\n", i+1, i/6, fat, e, h, said)
	}
	return b.String()
}

// comparing runs the comparison of days on hold, and no more.
func comparing(t *testing.T, path, text string) []result.GroupEffect {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	_, s := laidOut(t, path)
	links := holdOf(s)
	return Effects(s, fits.Of(s, links), links, nil)
}

// Where days are all alike, a day effect and a drift must be called in about 5 % of
// logs at p < 0.05, whether the truth is the model's own or a kitchen's, which it is
// not: then up to 2 points more are let pass.
func TestFalseAlarms(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	logs := thorough.Of(t, 15, 50)
	if *update {
		logs = 1000
	}
	path := filepath.Join(t.TempDir(), "log.csv")
	var out strings.Builder
	out.WriteString("truth,trials,compared,tests,p < 0.05,p < 0.01\n")
	sums := map[string]*tally{}
	for _, truth := range []string{"straight", "one at a time", "scattered", "factorial"} {
		for _, n := range []int{24, 40} {
			rows := map[string]*tally{"day": {}, "order": {}, "either, adjusted": {}}
			for seed := range uint64(logs) {
				least := math.Inf(1)
				for _, e := range comparing(t, path, withoutEffects(t, truth, n, seed)) {
					if e.P == nil || len(e.NotToldFrom) > 0 {
						continue
					}
					rows[e.By].add(*e.P)
					sum(sums, truth == "straight", e.By).add(*e.P)
					least = math.Min(least, *e.PAdjusted)
				}
				if !math.IsInf(least, 1) {
					rows["either, adjusted"].add(least)
					sum(sums, truth == "straight", "either").add(least)
				}
			}
			for _, by := range []string{"day", "order", "either, adjusted"} {
				c := rows[by]
				fmt.Fprintf(&out, "%s,%d,%q,%d,%.3f,%.3f\n", truth, n, by, c.tests, share(c.likely, c.tests), share(c.clear, c.tests))
			}
		}
	}
	t.Log("\n" + out.String())
	for name, c := range sums {
		most := 0.05
		if strings.HasPrefix(name, "kitchens") {
			most = 0.07
		}
		// three standard deviations of a share of so many tests
		air := 3 * math.Sqrt(0.05*0.95/float64(c.tests))
		low := 0.05
		if strings.HasSuffix(name, "either") {
			low = 0 // the adjustment may be too careful
		}
		if got := share(c.likely, c.tests); got < low-air || got > most+air {
			t.Errorf("%s: %.3f of %d tests have p < 0.05", name, got, c.tests)
		}
	}
	if *update {
		if err := os.WriteFile(filepath.Join(groupReference, "false_alarms.csv"), []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// withoutEffects is a log in which no day, and nothing in the order, moves a result.
func withoutEffects(t *testing.T, truth string, n int, seed uint64) string {
	t.Helper()
	if truth == "straight" {
		return straight(n, seed)
	}
	layout := map[string]kitchen.Layout{"one at a time": kitchen.OneAtATime, "scattered": kitchen.Scattered, "factorial": kitchen.Factorial}[truth]
	return alike(t, []kitchen.Family{kitchen.Easy, kitchen.Hard}[seed%2], layout, n, 5000+seed, 0)
}

// tally counts tests and how many of them call something.
type tally struct{ tests, likely, clear int }

func (c *tally) add(p float64) {
	c.tests++
	if p < groupLikely {
		c.likely++
	}
	if p < groupClear {
		c.clear++
	}
}

func share(n, of int) float64 { return float64(n) / float64(of) }

func sum[T any](sums map[string]*T, straight bool, by string) *T {
	name := map[bool]string{true: "straight, ", false: "kitchens, "}[straight] + by
	if sums[name] == nil {
		sums[name] = new(T)
	}
	return sums[name]
}

// Days that move the hold by a factor of two either way (an SD of 0.7) are found in
// most logs of 40 trials.
func TestDayEffectIsFound(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	path := filepath.Join(t.TempDir(), "log.csv")
	found, tests := 0, 0
	logs := thorough.Of(t, 15, 60)
	for seed := range uint64(logs) {
		for _, e := range comparing(t, path, alike(t, kitchen.Easy, kitchen.Scattered, 40, 7000+seed, 0.7)) {
			if e.By == "day" && e.P != nil {
				tests++
				if e.Verdict != result.CannotTell {
					found++
				}
			}
		}
	}
	t.Logf("found in %d of %d", found, tests)
	if 3*tests < 2*logs || 2*found < tests {
		t.Errorf("a day effect of 0.7 on ln hold is found in %d of %d logs", found, tests)
	}
}
