package plots

import (
	"fmt"
	"math"
	"math/rand/v2"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// The invented kitchen of the tests: rich mixes clog and split, lean ones fall,
// and a wrong HLB splits. Its chances are made up; no model is fitted.

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// links are the chances that each link of the chain holds.
func links(fat, emulsifier, hlb float64) map[result.Outcome]float64 {
	e := math.Log(emulsifier / 1.8)
	return map[result.Outcome]float64{
		result.CameOut:        logistic(3.6 - 0.25*(fat-46) - 2.4*e),
		result.Broke:          logistic(4 - 0.22*(fat-46) + 1.5*e - 0.35*(hlb-8.2)*(hlb-8.2)),
		result.HoldMinutes:    logistic(3 + 0.22*(fat-40) + 2.6*e - 0.1*(hlb-8)*(hlb-8)),
		result.DrainedPercent: logistic(3.5 + 0.15*(fat-38) + 1.8*e - 0.3*(hlb-7)),
	}
}

func chanceOf(fat, emulsifier, hlb float64) (p float64, limit result.Outcome) {
	p = 1
	worst, all := 2.0, links(fat, emulsifier, hlb)
	for _, o := range result.Chain {
		q := all[o]
		p *= q
		if q < worst {
			worst, limit = q, o
		}
	}
	return p, limit
}

func number64(v float64) *float64 { return &v }

func steps(lo, hi float64, n int, log bool) []float64 {
	out := make([]float64, n)
	for i := range out {
		s := float64(i) / float64(n-1)
		out[i] = lo + s*(hi-lo)
		if log {
			out[i] = lo * math.Pow(hi/lo, s)
		}
	}
	return out
}

// kitchen is a log of n trials with everything the analysis would say of them.
func kitchen(n int, seed uint64) *result.Results {
	r := log(n, seed)
	r.Status = result.Recommended
	r.Variables = []result.Variable{
		{Name: wording.FatPercent, Label: "fat", Unit: "%", Low: 31, High: 57},
		{Name: wording.EmulsifierPercent, Label: "emulsifier", Unit: "%", Log: true, Low: 0.9, High: 3.3},
		{Name: wording.BlendHLB, Label: "blend HLB", Low: 5, High: 12},
	}
	fats, emulsifiers, hlbs := steps(30, 58, 57, false), steps(0.8, 3.5, 50, true), steps(4.5, 12.5, 50, false)
	tested := func(fat, e, hlb float64) bool {
		a, b, c := (fat-44)/14.5, math.Log(e/1.7)/0.72, (hlb-8.4)/4.2
		return a*a+b*b+c*c < 1
	}
	grid := func(name, up string, ups []float64, at func(fat, up float64) (float64, float64, float64), fixed result.Mix) {
		g := result.Grid{Name: name, X: result.Axis{Variable: wording.FatPercent, Values: fats}, Y: result.Axis{Variable: up, Values: ups}, Fixed: fixed}
		for _, u := range ups {
			var p []float64
			var t []bool
			var l []result.Outcome
			for _, fat := range fats {
				q, limit := chanceOf(at(fat, u))
				p, l, t = append(p, q), append(l, limit), append(t, tested(at(fat, u)))
			}
			g.Chance, g.Tested, g.LimitedBy = append(g.Chance, p), append(g.Tested, t), append(g.LimitedBy, l)
		}
		r.Grid = append(r.Grid, g)
	}
	grid("fat_by_emulsifier", wording.EmulsifierPercent, emulsifiers,
		func(fat, e float64) (float64, float64, float64) { return fat, e, 8 }, result.Mix{BlendHLB: number64(8)})
	grid("fat_by_hlb", wording.BlendHLB, hlbs,
		func(fat, h float64) (float64, float64, float64) { return fat, 1.8, h }, result.Mix{EmulsifierPercent: number64(1.8)})

	for _, fat := range steps(30, 57, 28, false) {
		best, limit := 0.0, result.Outcome("")
		for _, e := range emulsifiers {
			if p, l := chanceOf(fat, e, 8); p > best {
				best, limit = p, l
			}
		}
		air := 0.06 + 0.012*math.Abs(fat-44)
		r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: fat, LimitedBy: limit, Workable: best >= 0.8,
			Chance: result.Chance{Mean: best, Low: math.Max(0, best-1.6*air), High: math.Min(1, best+air), Level: 0.9}})
	}
	start := func(aim result.Aim, fat, e, h float64) result.Start {
		p, _ := chanceOf(fat, e, h)
		return result.Start{Aim: aim, Status: result.Recommended, Chance: result.Chance{Mean: p},
			Mix: result.Mix{FatPercent: &fat, EmulsifierPercent: &e, BlendHLB: &h}}
	}
	r.Starts = []result.Start{start(result.Surest, 43, 2, 8), start(result.Richest, 48, 1.9, 8)}
	r.FatEnd = &result.FatEnd{FatPercent: 48, FailsFirstBy: result.Broke}
	effect := func(name string, x []float64, hold func(float64) float64, v result.Verdict, change float64, fixed result.Mix) {
		e := result.Effect{Variable: name, X: x, Fixed: fixed, Verdict: v, Change: result.Band{Mid: change}}
		for i, u := range x {
			wide := 1.25 + 0.8*math.Abs(float64(i)/float64(len(x)-1)-0.5)
			e.Hold = append(e.Hold, result.Band{Mid: hold(u), Low: hold(u) / wide, High: hold(u) * wide})
			e.Tested = append(e.Tested, i > 2 && i < len(x)-3)
		}
		r.Effects = append(r.Effects, e)
	}
	effect(wording.FatPercent, steps(30, 58, 30, false), func(x float64) float64 { return holdOf(x, 1.8, 8) }, result.Clear, 2.3, result.Mix{EmulsifierPercent: number64(1.8), BlendHLB: number64(8)})
	effect(wording.EmulsifierPercent, steps(0.8, 3.5, 30, true), func(x float64) float64 { return holdOf(43, x, 8) }, result.Likely, 1.9, result.Mix{FatPercent: number64(43), BlendHLB: number64(8)})
	effect(wording.BlendHLB, steps(4.5, 12.5, 30, false), func(x float64) float64 { return holdOf(43, 1.8, x) }, result.CannotTell, 0.9, result.Mix{FatPercent: number64(43), EmulsifierPercent: number64(1.8)})
	days, cooks := []string{"Mon", "Tue", "Wed", "Thu"}, []string{"RT", "JB"}
	for i, t := range r.Trials {
		if t.HoldMinutes == nil || t.BlendHLB == nil {
			continue
		}
		fitted := holdOf(*t.FatPercent, *t.EmulsifierPercent, *t.BlendHLB)
		over := func(v *float64) *float64 {
			if v == nil {
				return nil
			}
			return number64(*v / fitted)
		}
		r.Residuals = append(r.Residuals, result.Residual{Result: string(result.HoldMinutes), At: t.At, Order: t.Order, Fitted: fitted,
			Day: days[i*len(days)/len(r.Trials)], Cook: cooks[i%2], Ratio: &result.Interval{Low: over(t.HoldMinutes.Low), High: over(t.HoldMinutes.High)}})
	}
	compare := func(by string, v result.Verdict, names []string) {
		e := result.GroupEffect{By: by, Result: string(result.HoldMinutes), Verdict: v}
		for i, n := range names {
			l := result.Level{Name: n, Trials: 3, Factor: &result.Band{Mid: 0.8 + 0.2*float64(i), Low: 0.6 + 0.2*float64(i), High: 1.1 + 0.2*float64(i)}}
			if i == 1 {
				l.Factor = nil
			}
			e.Levels = append(e.Levels, l)
		}
		r.GroupEffects = append(r.GroupEffects, e)
	}
	compare("day", result.Likely, days)
	compare("cook", result.CannotTell, cooks)
	return r
}

func holdOf(fat, e, hlb float64) float64 {
	return 26 * math.Exp(0.03*(fat-43)+0.5*math.Log(e/1.8)-0.02*(hlb-8)*(hlb-8))
}

// log is a log of n trials without any model.
func log(n int, seed uint64) *result.Results {
	rng := rand.New(rand.NewPCG(seed, 7))
	r := &result.Results{Status: result.TooFewTrials, Targets: result.Targets{
		HoldMinutes: result.Target{Value: 20}, WantedChance: result.Target{Value: 0.8}}}
	yes, no, partly := result.Yes, result.No, result.Partly
	for i := range n {
		fat, e, h := 31+26*rng.Float64(), 0.9*math.Pow(3.6, rng.Float64()), 5+7*rng.Float64()
		if i%11 == 10 {
			e = 0
		}
		t := result.Trial{At: fmt.Sprintf("week.xlsx, row %d", i+3), Order: i + 1, Used: true, FatPercent: &fat, EmulsifierPercent: &e}
		if e > 0 {
			t.BlendHLB = &h
		}
		failed := func(o result.Outcome) bool { return rng.Float64() > links(fat, math.Max(e, 0.4), h)[o] }
		works := true
		t.CameOut = &yes
		for _, o := range result.Chain {
			if o != result.HoldMinutes && failed(o) {
				t.FailedBy = append(t.FailedBy, o)
				works = false
			}
			if o == result.CameOut && !works {
				t.CameOut = &no
				if i%3 == 0 {
					t.CameOut = &partly
				}
				break
			}
		}
		if *t.CameOut == result.Yes {
			hold := math.Round(holdOf(fat, math.Max(e, 0.4), h) * math.Exp(0.3*rng.NormFloat64()))
			if hold < 20 {
				t.FailedBy, works = append(t.FailedBy, result.HoldMinutes), false
			}
			switch {
			case i%7 == 3:
				t.HoldMinutes = &result.Interval{Low: &hold}
			case i%13 == 5:
				t.HoldMinutes = &result.Interval{High: &hold}
			case i%9 == 4:
				t.HoldMinutes = &result.Interval{Low: number64(hold * 0.8), High: &hold}
			default:
				t.HoldMinutes = &result.Interval{Low: &hold, High: &hold}
			}
		}
		if i%8 != 7 || !works {
			t.Works = &works
		}
		p, _ := chanceOf(fat, math.Max(e, 0.4), h)
		t.ForeseenChance = &p
		r.Trials = append(r.Trials, t)
	}
	return r
}
