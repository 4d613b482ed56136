package groups

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/fits"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/thorough"
)

// lots is a log whose hold peaks over fat and in which the second of two lots of butter,
// made mostly where the fat is far from the middle, holds factor times as long.
func lots(n int, seed uint64, factor float64) string {
	rng := rand.New(rand.NewPCG(seed, 78))
	var b strings.Builder
	b.WriteString("trial,butter lot,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
	for i := range n {
		z, e, h := 2*rng.Float64()-1, math.Exp(1.2*rng.Float64()), 5+6*rng.Float64()
		lot, share := "A", 0.15
		if math.Abs(z) > 0.5 {
			share = 0.8
		}
		ln := 2.9 - 1.2*z*z + 0.4*math.Log(e) - 0.03*(h-8) + 0.2*rng.NormFloat64()
		if rng.Float64() < share {
			lot, ln = "B", ln+math.Log(factor)
		}
		said := fmt.Sprintf("%.1f", math.Exp(ln))
		if ln > math.Log(30) {
			said = "30+"
		}
		fmt.Fprintf(&b, "%d,%s,%.1f,%.2f,%.1f,%s,y\n", i+1, lot, 44+10*z, e, h, said)
	}
	return b.String()
}

// lotEffects is what the lots of a log do to hold, beside the terms of the fit judged by
// and beside straight ones; curved is whether they differ.
func lotEffects(t *testing.T, path, text string) (beside, straight result.GroupEffect, curved bool) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	log, s := laidOut(t, path)
	if !slices.Equal(log.Labels, []string{"butter lot"}) {
		t.Fatalf("labels %q", log.Labels)
	}
	links := holdOf(s)
	v := &comparison{s, fits.Of(s, links)}
	q := question{by: "butter lot", of: func(t *surface.Placed) string { return t.Raw["butter lot"] }, setting: -1}
	straight.Verdict = result.CannotTell
	if err := v.against(&straight, q, &links[0], stand{order: 1, settings: true}); err != nil {
		t.Fatal(err)
	}
	for _, e := range Effects(s, v.fits, links, log.Labels) {
		if e.By == "butter lot" {
			beside = e
		}
	}
	return beside, straight, beside.Order == 2
}

// second is how the second lot holds beside the first, as a band of the difference.
func second(e result.GroupEffect) result.Band {
	for _, l := range e.Levels { // each is a factor of the mean of both
		if l.Name == "B" {
			return result.Band{Mid: l.Factor.Mid * l.Factor.Mid, Low: l.Factor.Low * l.Factor.Low, High: l.Factor.High * l.Factor.High}
		}
	}
	return result.Band{}
}

// A lot that went with the bend of the hold is told as it is beside the curve that judges,
// and not beside straight terms; where lots are alike, they are called different no more
// often than they may be.
func TestLotsBesideTheCurve(t *testing.T) {
	thorough.Only(t, "judges 120 logs beside straight and curved terms")
	path := filepath.Join(t.TempDir(), "log.csv")
	for _, factor := range []float64{0.7, 1} {
		var held, straightHeld, alarms, straightAlarms, judgedCurved int
		mid, straightMid := 0.0, 0.0
		const logs = 60
		for seed := range uint64(logs) {
			beside, straight, curved := lotEffects(t, path, lots(36, seed, factor))
			if curved {
				judgedCurved++
			}
			for _, c := range []struct {
				e            result.GroupEffect
				held, alarms *int
				mid          *float64
			}{{beside, &held, &alarms, &mid}, {straight, &straightHeld, &straightAlarms, &straightMid}} {
				b := second(c.e)
				*c.mid += math.Log(b.Mid) / logs
				if b.Low <= factor && factor <= b.High {
					*c.held++
				}
				if *c.e.P < groupLikely {
					*c.alarms++
				}
			}
		}
		t.Logf("a lot of %.2f, %d of %d judged by a curve: beside it %.2f, limits hold the truth in %d, p < 0.05 in %d; beside straight terms %.2f, %d and %d",
			factor, judgedCurved, logs, math.Exp(mid), held, alarms, math.Exp(straightMid), straightHeld, straightAlarms)
		if judgedCurved < 50 || math.Abs(mid-math.Log(factor)) > 0.05 || held < 48 {
			t.Errorf("a lot of %.2f is said to be %.2f; limits hold the truth in %d of %d", factor, math.Exp(mid), held, logs)
		}
		if straightHeld > 30 || straightMid > mid-0.2 {
			t.Errorf("this log no longer shows what straight terms do: %.2f, held in %d", math.Exp(straightMid), straightHeld)
		}
		if factor == 1 && alarms > 9 {
			t.Errorf("lots that are alike are called different in %d of %d logs", alarms, logs)
		}
	}
}

// Beside the curved terms and a setting, tests, their adjustment, levels, drift by date and
// what the setting does are R's (groups.R), to 1e-6; in every distribution, whichever the
// log is judged by.
func TestCurvedGroupsAsR(t *testing.T) {
	log, s := laidOut(t, filepath.Join(groupReference, "curved.csv"))
	var links []belief.Link
	for _, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		links = append(links, belief.Gather(s, o))
	}
	tests, factors := rowsOf(t, filepath.Join(groupReference, "curved_tests.csv")), rowsOf(t, filepath.Join(groupReference, "curved_factors.csv"))
	v := &comparison{s, fits.Of(s, links)}
	checked := 0
	for _, d := range []string{"lognormal", "weibull", "loglogistic"} {
		for i := range v.fits.All {
			f := &v.fits.All[i]
			f.JudgedBy = f.Distribution == d && f.Order == 2
		}
		for _, e := range Effects(s, v.fits, links, log.Labels) {
			of := func(row map[string]string) bool {
				return row["result"] == e.Result && row["distribution"] == d && row["by"] == e.By
			}
			what := strings.Join([]string{e.Result, d, e.By}, " ")
			for _, want := range tests {
				if !of(want) {
					continue
				}
				agree(t, what+" statistic", e.LikelihoodRatio, want["statistic"], 1e-6)
				agree(t, what+" F", &e.F.F, want["f"], 1e-6)
				agree(t, what+" df 2", &e.F.DF2, want["residual_df"], 0)
				agree(t, what+" p", e.P, want["p"], 1e-6)
				agree(t, what+" adjusted p", e.PAdjusted, want["p_adjusted"], 1e-6)
				if fmt.Sprint(e.F.DF1) != want["df"] {
					t.Errorf("%s: df %d, R has %s", what, e.F.DF1, want["df"])
				}
				checked++
			}
			for _, want := range factors {
				if !of(want) {
					continue
				}
				f := e.Drift
				if e.Change != nil {
					f = e.Change
				}
				for _, l := range e.Levels {
					if l.Name == want["level"] {
						f = l.Factor
					}
				}
				agree(t, what+want["level"]+" mid", &f.Mid, want["mid"], 1e-6)
				agree(t, what+want["level"]+" low", &f.Low, want["low"], 1e-6)
				agree(t, what+want["level"]+" high", &f.High, want["high"], 1e-6)
				checked++
			}
		}
	}
	if want := len(tests) + len(factors); checked != want {
		t.Errorf("%d figures were held against R, want %d", checked, want)
	}
}

// What a log cannot carry is left out of what a test stands beside, and said.
func TestStands(t *testing.T) {
	log := func(n, days int, bounded bool) string {
		var b strings.Builder
		b.WriteString("trial,day,rest min,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
		for i := range n {
			var fat float64
			fmt.Sscan(between(i, 0.618, 34, 54), &fat)
			z := (fat - 44) / 10
			minutes, standing := math.Exp(3-1.5*z*z+0.1*float64(i*i%5)), ""
			if bounded && i%3 == 1 {
				standing = "+"
			}
			fmt.Fprintf(&b, "%d,%s,%d,%.2f,%s,%s,%.1f%s,y\n", i+1, string(rune('A'+i*7%days)), 10*(1+i%3), fat, between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), minutes, standing)
		}
		return b.String()
	}
	for _, c := range []struct {
		name     string
		n, days  int
		bounded  bool // every third still stands
		order    int  // judged by
		want     int
		settings bool
		why      string
	}{
		{"room for all", 40, 4, false, 2, 2, true, ""},
		{"judged straight", 40, 4, false, 1, 1, true, ""},
		{"just enough for the curve", 19, 5, false, 2, 2, true, ""},
		{"one too few", 18, 5, false, 2, 1, true, "too small for the curved"},
		{"too few beside a setting", 17, 8, true, 2, 1, false, "too small for settings"},
	} {
		_, s := laidOut(t, written(t, log(c.n, c.days, c.bounded)))
		links := holdOf(s)
		v := &comparison{s, fits.Of(s, links)}
		for i := range v.fits.All {
			v.fits.All[i].JudgedBy = v.fits.All[i].Distribution == "lognormal" && v.fits.All[i].Order == c.order
		}
		for _, e := range Effects(s, v.fits, links, nil) {
			if e.By != "day" {
				continue
			}
			settings := slices.ContainsFunc(e.Beside, func(term []string) bool { return slices.Equal(term, []string{"rest_minutes"}) })
			if e.Order != c.want || settings != c.settings || e.P == nil || (e.BesideReason == "") != (c.why == "") || !strings.Contains(e.BesideReason, c.why) {
				t.Errorf("%s: beside order %d, %v: %q, p %v, %s; on the surface %v", c.name, e.Order, e.Beside, e.BesideReason, read(e.P), e.Failure, len(s.Settings))
			}
		}
	}
}

// A lot that went with what else the trials differ in is not told from it.
func TestNotToldFromWhatIsBeside(t *testing.T) {
	var b strings.Builder
	b.WriteString("trial,butter lot,rest min,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
	for i := range 40 {
		rest, lot := 10, "A"
		if i%4 > 1 {
			rest, lot = 30, "B"
		}
		fmt.Fprintf(&b, "%d,%s,%d,%s,%s,%s,%d,y\n", i+1, lot, rest, between(i, 0.618, 34, 54), between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), 10+i*i%13)
	}
	found := effects(t, written(t, b.String()))
	looked := false
	for _, e := range found {
		if e.By != "butter lot" {
			continue
		}
		looked = true
		if e.Verdict != result.CannotTell || !slices.Equal(e.NotToldFrom, []string{"rest"}) || !strings.Contains(e.Sentence, "do not separate the butter lot from rest") {
			t.Errorf("%+v", e)
		}
	}
	if !looked {
		t.Error("lots were not looked at")
	}
}

// Which emulsifiers a foam was made with stands beside a test: a lot that had nothing to
// do with it is tested, one that came with one pair only is not told from the pair.
func TestChoicesStandBeside(t *testing.T) {
	for _, c := range []struct {
		name  string
		lot   func(i int) string
		p     bool
		apart []string
	}{
		{"any pair", func(i int) string { return string(rune('A' + i/2%2)) }, true, []string{}},
		{"a lot a pair", func(i int) string { return string(rune('A' + i%2)) }, false, []string{"which emulsifiers"}},
	} {
		var b strings.Builder
		b.WriteString("no,oil g,water g,GMS g,sucrose ester 15 g,polysorbate 80 g,butter lot,came out,hold min\n")
		for i := range 40 {
			of, minutes := [2]float64{}, 12+5*(i*i%7)
			of[i%2] = 1 + 0.1*float64(i*i%13)
			if i%2 == 1 {
				minutes *= 2
			}
			fmt.Fprintf(&b, "%d,%d,%d,%.1f,%.1f,%.1f,%s,y,%d\n", i+1, 64+i*7%40, 130-i*7%40, 2+0.1*float64(i*5%17), of[0], of[1], c.lot(i), minutes)
		}
		found := effects(t, written(t, b.String()))
		for _, e := range found {
			if e.By != "butter lot" {
				continue
			}
			pairs := 0
			for _, term := range e.Beside {
				if strings.HasPrefix(strings.Join(term, ""), "emulsifiers: ") {
					pairs++
				}
			}
			if pairs != 1 || (e.P != nil) != c.p || !slices.Equal(e.NotToldFrom, c.apart) {
				t.Errorf("%s: beside %v, p %v, not told from %v: %s", c.name, e.Beside, read(e.P), e.NotToldFrom, e.Failure)
			}
		}
		if len(found) < 2 {
			t.Errorf("%s: %d things were looked at", c.name, len(found))
		}
	}
}

// Holm's procedure, on figures worked out by hand: each p times how many are not below it.
func TestAdjust(t *testing.T) {
	p := func(v float64) *float64 { return &v }
	tested := []result.GroupEffect{
		{Result: "a", By: "day", P: p(0.03)}, {Result: "a", By: "cook", P: p(0.01)}, {Result: "b", By: "day", P: p(0.04)},
		{Result: "a", By: "order"}, {Result: "a", By: "lot", P: p(0.04)}, {Result: "a", By: "size", P: p(0.9)},
	}
	tests := adjust(tested)
	if tests["a"] != 4 || tests["b"] != 1 {
		t.Errorf("tests %v", tests)
	}
	for i, want := range []*float64{p(0.09), p(0.04), p(0.04), nil, p(0.09), p(0.9)} {
		if got := tested[i].PAdjusted; (got == nil) != (want == nil) || got != nil && math.Abs(*got-*want) > 1e-15 {
			t.Errorf("%s of %s: %v, want %v", tested[i].By, tested[i].Result, read(got), read(want))
		}
	}
	for i, want := range map[int]string{
		0: "suggested, not shown: hold differs from one day to another, but 4 comparisons were made", // 0.09 from 0.03
		1: "shown: hold differs from one cook to another",
		2: "shown: hold differs from one day to another",
		5: "these trials do not show whether hold differs from one size to another",
	} {
		e := tested[i]
		e.Result, e.Levels = string(result.HoldMinutes), []result.Level{{}}
		groupVerdict(&e, "the "+e.By, 4)
		if !strings.HasPrefix(e.Sentence, want) {
			t.Errorf("%q, want %q", e.Sentence, want)
		}
	}
}
