package judging

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
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
		{name: "alike, and one still standing then", trials: []made{exact(1, 20), exact(1, 20), still(1, 15)}, groups: 1, made: 3, df: 1.5, note: "from few repeats, some known only up to bounds"},
	} {
		r := scattered(c.trials)
		if r.Groups != c.groups || r.Trials != c.made || r.DF != c.df || (r.CVHigh != nil) != c.upper || !strings.HasPrefix(r.Note, c.note) {
			t.Errorf("%s: %+v", c.name, r)
		}
		if (r.SDLn != nil) != (c.df > 0) || r.SDLn != nil && math.Abs(*r.SDLn-c.sd) > 1e-12 {
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
