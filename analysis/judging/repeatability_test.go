package judging

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/stat/distuv"
)

// made is a trial of a formula and what was seen of its hold.
type made struct {
	formula   int
	low, high float64
	out       trial.Answer
	broke     trial.Answer
}

func (m made) placed() surface.Placed {
	return surface.Placed{Trial: &trial.Trial{Hold: &trial.Interval{Low: m.low, High: m.high}, CameOut: m.out, Broke: m.broke}, Group: m.formula}
}

func scattered(trials []made) result.Repeatability {
	s := &surface.Surface{Carried: works.Carried{Judged: works.Judged{result.HoldMinutes: true}}}
	place := map[int]int{} // a group is known by its first trial
	for i, m := range trials {
		if _, seen := place[m.formula]; !seen {
			place[m.formula] = i
		}
		m.formula = place[m.formula]
		s.Trials = append(s.Trials, m.placed())
	}
	return repeatability(s)[0]
}

// Repeats are those of foams that came out and did not split, with bounds as bounds.
func TestRepeatability(t *testing.T) {
	exact := func(formula int, v float64) made { return made{formula: formula, low: v, high: v} }
	still := func(formula int, v float64) made { return made{formula: formula, low: v, high: math.Inf(1)} }
	clogged := func(m made) made { m.out = trial.No; return m }
	split := func(m made) made { m.broke = trial.Yes; return m }
	pairs := []made{exact(1, 10), exact(1, 10*math.E), exact(2, 5), exact(2, 5*math.E), exact(3, 60)}
	for _, c := range []struct {
		name           string
		trials         []made
		groups, made   int
		df, sd         float64
		upper          bool
		note           string
		sdWithin, read float64
	}{
		{name: "two pairs a factor of e apart", trials: pairs, groups: 2, made: 4, df: 2, sd: math.Sqrt(0.5), upper: false, note: "from 2 repeats only"},
		{name: "a clogged one does not count", trials: append(slices.Clone(pairs), clogged(exact(3, 6))), groups: 2, made: 4, df: 2, sd: math.Sqrt(0.5), note: "from 2 repeats"},
		{name: "a split one does not count", trials: append(slices.Clone(pairs), split(exact(3, 6))), groups: 2, made: 4, df: 2, sd: math.Sqrt(0.5), note: "from 2 repeats"},
		{name: "one repeat has no upper limit", trials: []made{exact(1, 10), exact(1, 11)}, groups: 1, made: 2, df: 1, sd: math.Log(1.1) / math.Sqrt2, note: "from one repeat only: a rough figure, without an upper limit"},
		{name: "two close pairs have one", trials: []made{exact(1, 10), exact(1, 11), exact(2, 20), exact(2, 22)}, groups: 2, made: 4, df: 2, sd: math.Log(1.1) / math.Sqrt2, upper: true, note: "from 2 repeats only: a rough figure"},
		{name: "bounds on one side tell nothing", trials: []made{still(1, 25), still(1, 25), still(1, 25)}, note: "no formula was made twice"},
		{name: "one value and a bound", trials: []made{exact(1, 20), still(1, 25)}, groups: 1, made: 2, df: 0.5, sd: math.NaN(), note: "the repeats are known too loosely"},
		{name: "alike, and one still standing then", trials: []made{exact(1, 20), exact(1, 20), still(1, 15)}, groups: 1, made: 3, df: 1.5, note: "from few repeats, some known only up to bounds"},
	} {
		r := scattered(c.trials)
		if r.Groups != c.groups || r.Trials != c.made || r.DF != c.df || (r.CVHigh != nil) != c.upper || !strings.HasPrefix(r.Note, c.note) {
			t.Errorf("%s: %+v", c.name, r)
		}
		if (r.SDLn != nil) != (c.df >= 1) || r.SDLn != nil && math.Abs(*r.SDLn-c.sd) > 1e-12 {
			t.Errorf("%s: an SD of %v, want %v", c.name, read(r.SDLn), c.sd)
		}
	}
}

// Bounds enter as R's survreg has them (groups.R).
func TestRepeatabilityAsR(t *testing.T) {
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, want := range rowsOf(t, groupReference+"/scatter.csv") {
		var trials []made
		for _, row := range rowsOf(t, groupReference+"/repeats.csv") {
			if formula := int(number(row["formula"])); want["of"] == "bounded" || formula < 3 {
				trials = append(trials, made{formula: formula, low: number(row["low"]), high: number(row["high"])})
			}
		}
		r := scattered(trials)
		groups, n := float64(r.Groups), float64(r.Trials)
		for name, got := range map[string]*float64{"groups": &groups, "trials": &n, "df": &r.DF, "sd_ln": r.SDLn, "cv_percent": r.CVPercent, "low": r.CVLow, "high": r.CVHigh} {
			agree(t, want["of"]+" "+name, got, want[name], 1e-7)
		}
	}
}

// The limits of the scatter hold the truth in about 90 of 100 logs, also where some repeats
// still stood when they were last looked at.
func TestScatterHoldsTheTruth(t *testing.T) {
	thorough.NotShort(t, "simulates many logs")
	const logs, truth = 1000, 0.3
	for _, c := range []struct {
		name  string
		sizes []int
		share float64 // of all results, below where watching stops
	}{
		{"pairs, none bounded", []int{2, 2, 2, 2, 2, 2}, 1},
		{"pairs", []int{2, 2, 2, 2, 2, 2}, 0.75},
		{"threes", []int{3, 3, 3, 3, 3}, 0.75},
		{"threes, many bounded", []int{3, 3, 3, 3, 3}, 0.55},
		{"twos and fours", []int{2, 4, 2, 4, 2, 4, 2, 4}, 0.75},
	} {
		rng := rand.New(rand.NewPCG(5, 79))
		stop := math.Inf(1)
		if c.share < 1 {
			stop = math.Exp(distuv.UnitNormal.Quantile(c.share) * math.Sqrt(0.5*0.5+truth*truth))
		}
		told, held, counted, variance := 0.0, 0, 0, 0.0
		for range logs {
			var trials []made
			for k, n := range c.sizes {
				middle := 0.5 * rng.NormFloat64()
				for range n {
					v := math.Exp(middle + truth*rng.NormFloat64())
					m := made{formula: k, low: v, high: v}
					if v > stop {
						m.low, m.high = stop, math.Inf(1)
					}
					trials = append(trials, m)
				}
			}
			r := scattered(trials)
			if r.DF < leastForLimit || r.CVHigh == nil {
				continue
			}
			counted++
			told += r.DF
			variance += *r.SDLn * *r.SDLn / (truth * truth)
			if want := *coefficient(truth); *r.CVLow <= want && want <= *r.CVHigh {
				held++
			}
		}
		cover := float64(held) / float64(counted)
		t.Logf("%s: held in %.3f of %d, %.1f df, variance %.2f of the true one", c.name, cover, counted, told/float64(counted), variance/float64(counted))
		if cover < 0.84 || cover > 0.94 {
			t.Errorf("%s: the limits hold the truth in %.3f", c.name, cover)
		}
	}
}
