package reports

import (
	"fmt"

	"foamfield/analysis/result"
)

// An invented run with something in every field; no model is behind it.

func at(v float64) *float64 { return &v }
func truth(v bool) *bool    { return &v }

func kitchen() *result.Results {
	yes, no, partly := result.Yes, result.No, result.Partly
	mix := func(fat, e, hlb float64) result.Mix {
		return result.Mix{FatPercent: at(fat), EmulsifierPercent: at(e), EmulsifierGrams: at(e * 3), BlendHLB: at(hlb), Extras: map[string]float64{"salt_percent": 0.8125}}
	}
	lines := []result.FormulaLine{
		{Name: "clarified butter", Kind: "fat", Grams: 129.27, PercentOfMix: 43.0917, PercentOfPart: at(100), Part: "fat", WeighingErrorPercent: 0.0387},
		{Name: "cider", Kind: "water part", Grams: 165.03, PercentOfMix: 55.01, PercentOfPart: at(100), Part: "water", WeighingErrorPercent: 0.0303},
		{Name: "GMS", Kind: "emulsifier", Grams: 3.61, PercentOfMix: 1.2034, PercentOfPart: at(2.7927), Part: "fat", WeighingErrorPercent: 1.385},
		{Name: "sucrose ester 15", Kind: "emulsifier", Grams: 2.08, PercentOfMix: 0.6933, WeighingErrorPercent: 2.4038},
	}
	start := func(aim result.Aim, fat, mean, low float64) result.Start {
		return result.Start{Aim: aim, Status: result.Recommended, Mix: mix(fat, 1.897, 7.877), Ingredients: lines,
			Chance: result.Chance{Mean: mean, Low: low, High: 0.968, Level: 0.9},
			Fails:  map[result.Outcome]float64{result.CameOut: 0.0403, result.Broke: 0.1262, result.HoldMinutes: 0.0061, result.DrainedPercent: 1e-7},
			Predicted: map[result.Outcome]result.Predicted{result.HoldMinutes: {Median: 33.4, Low: 21.7, High: 52.1},
				result.DrainedPercent: {Median: 3.14, Low: 1.72, High: 6.06}},
			ClosestTrial: &result.Closest{At: "week.xlsx, sheet Tue, row 4", ID: "2", Worked: truth(true),
				Differences: map[string]float64{"fat_percent": -1.74, "emulsifier_percent": 0.21, "blend_hlb": 0.003}},
			Slack: map[string]result.Slack{"fat_percent": {Low: 40.2, High: 45.9}, "emulsifier_percent": {Low: 1.61, High: 2.24}, "blend_hlb": {Low: 7, High: 10.04}},
			Notes: []string{"proportions between ingredients of one kind are those of trial 2"}}
	}
	r := &result.Results{
		Schema: result.Schema, Version: "test", Seed: 7, Status: result.Recommended, StatusReason: "a mix inside what was tried reaches the wanted chance",
		Inputs: []result.Input{{File: "week.xlsx", SHA256: "00ff"}},
		Rows:   result.Rows{Read: 15, Furniture: 4, Trials: 11, Used: 10, SetAside: []result.SetAside{{At: "week.xlsx, sheet Tue, row 9", Reason: "the fat is 140 %"}}},
		Counts: result.Counts{Used: 10, CameOut: 7, Partly: 1, Clogged: 2, Broke: 1, Worked: 5, Failed: 4, Unknown: 1, StillStanding: 3, ShortHold: 1, TooWet: 1, NoEmulsifier: 1},
		Problems: []result.Problem{
			{Kind: "to know", Severity: result.ForInformation, At: "week.xlsx, sheet Tue, cell F7", Count: 1, Read: "“trace” is read as at most 0.5 g", Do: "type a bound such as <0.5"},
			{Kind: "sum", Severity: result.PleaseLook, At: "week.xlsx, sheet Tue, cell D5", Count: 3, Read: "the ingredients add up to 300 g, the batch says 310 g", Do: "correct the batch"},
			{Kind: "range", Severity: result.MustFix, At: "week.xlsx, sheet Tue, cell C9", Count: 1, Read: "a fat of 140 %", Do: "type a percent between 0 and 100"},
		},
		Columns: []result.Column{{At: "week.xlsx, sheet Tue, cell A2", Header: "no", ReadAs: "trial"}, {At: "week.xlsx, sheet Tue, cell H2", Header: "mood"}},
		Targets: result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
			DrainedAtMinutes: result.Target{Value: 20, From: "assumed"}, WantedChance: result.Target{Value: 0.8, From: "assumed"}},
		Batch: result.Batch{Grams: 300, GramsFrom: "the middle of 10 logged batches", ScaleStepGrams: 0.1, LargestFillGrams: at(300), Canister: "0.5 L", Canisters: 1},
		Variables: []result.Variable{{Name: "fat_percent", Label: "fat", Unit: "%", Low: 31.84, High: 57.71, Centre: 45, Scale: 11},
			{Name: "emulsifier_percent", Label: "emulsifier", Unit: "%", Log: true, Low: 0.93, High: 3.36, Centre: 0.6, Scale: 0.5},
			{Name: "blend_hlb", Label: "blend HLB", Low: 5.2, High: 11.83, Centre: 8.6, Scale: 2.2}},
		SetAside: []result.SetVariable{{Name: "chargers", Reason: "it never changed", Value: at(1)}},
		Fits: []result.Fit{{Result: "hold_minutes", Distribution: "lognormal", Transform: "ln", Order: 2, N: 7, Observations: result.Observations{Exact: 4, AtLeast: 3},
			JudgedBy: true, LogLikelihood: at(-23.4567891), Scale: at(0.31234), NullReason: "3 of 7 results are known only up to bounds", LikelihoodRSquared: at(0.71234),
			Estimator: result.MaximumLikelihood, JudgedReason: "it predicts left-out results best of those fitted (the highest left-out score)", LeaveOneOutScore: at(-3.21),
			Terms: []result.Term{{Variables: []string{}, Estimate: 3.2123, StdError: at(0.0912)}, {Variables: []string{"emulsifier_percent", "emulsifier_percent"}, Estimate: -0.8123},
				{Variables: []string{"fat_percent", "blend_hlb"}, Estimate: 1.25e-9, StdError: at(2.5)}},
			Covariance: [][]float64{{0.01}}},
			{Result: "broke", Distribution: "logistic", Order: 1, N: 8, NullReason: "not fitted", Failure: "every result lies on one side", Terms: []result.Term{}},
			{Result: "drained_percent", Distribution: "normal", Order: 1, N: 7, JudgedBy: true, Observations: result.Observations{Exact: 7}, RSquared: at(0.83), AdjustedRSquared: at(0.77),
				LeaveOneOutRSquared: at(-0.2), ResidualSD: at(1.3), ResidualDF: new(int), LackOfFit: &result.LackOfFit{F: at(2.6), DF1: 3, DF2: 2, P: at(0.29)}, LeaveOneOutScore: at(-3.3)}},
		Model:   []result.Model{{Outcome: result.CameOut, Kind: "yes_no", N: 10, Events: new(int), Draws: 4000, ESS: 2712.4, Observations: result.Observations{Exact: 10}}},
		Effects: []result.Effect{},
		Repeatability: []result.Repeatability{{Result: "hold_minutes", Groups: 2, Trials: 4, DF: 2, SDLn: at(0.2027), CVPercent: at(20.48), CVLow: at(11.75), CVHigh: at(110.83), Note: "from 2 repeats only: a rough figure"},
			{Result: "drained_percent", Note: "no formula was made twice"}},
		Confounded: []result.Confounded{{A: "fat", B: "the day", Share: 0.913, Sentence: "these trials hardly tell fat from the day: they changed together"}},
		GroupEffects: []result.GroupEffect{{By: "day", Result: "hold_minutes", Distribution: "lognormal", N: 7, DF: 1, ResidualDF: at(2.5), LikelihoodRatio: at(6.3214), P: at(0.03123), PAdjusted: at(0.04567), Order: 2, F: &result.FTest{F: 7.31, DF1: 1, DF2: 2.5, Counted: 5.5},
			Inflation: at(3.456), Verdict: result.Likely, Sentence: "shown: hold differs from one day to another",
			Levels: []result.Level{{Name: "Mon", Trials: 4, Factor: &result.Band{Mid: 1.31, Low: 1.04, High: 1.65}}, {Name: "Tue", Trials: 3}}},
			{By: "order", Result: "hold_minutes", Distribution: "lognormal", N: 7, DF: 1, ResidualDF: at(2.5), LikelihoodRatio: at(0.31), P: at(0.6123), PAdjusted: at(0.6123), Order: 1, OrderBy: result.ByDate, Drift: &result.Band{Mid: 0.8123, Low: 0.4, High: 1.7},
				BesideReason: "tested beside straight terms: this log is too small for the curved ones it is judged by",
				Verdict:      result.CannotTell, Sentence: "these trials do not show whether hold drifts from the first date to the last"},
			{By: "emulsifier_percent", Result: "hold_minutes", Distribution: "lognormal", N: 7, DF: 1, ResidualDF: at(2.5), LikelihoodRatio: at(4.1), P: at(0.0321), PAdjusted: at(0.0963), Order: 2, Change: &result.Band{Mid: 1.7123, Low: 1.1, High: 2.7},
				Verdict: result.CannotTell, Sentence: "suggested, not shown: hold changes with emulsifier, but 3 comparisons were made, and among so many one looks like this by chance more often than 1 time in 20"},
			{By: "cook", Result: "hold_minutes", Distribution: "lognormal", N: 7, NotToldFrom: []string{"fat"}, Verdict: result.CannotTell, Levels: []result.Level{{Name: "RT", Trials: 7}},
				Sentence: "these trials cannot tell the cook from fat", Failure: "the cook is a combination of the variables in these trials"}},
		Residuals: []result.Residual{{Result: "hold_minutes", At: "week.xlsx, sheet Tue, row 3", ID: "1", Order: 1, Day: "Mon", Cook: "RT", Fitted: 17.3456, Ratio: &result.Interval{Low: at(1.153), High: at(1.153)},
			Standardised: result.Interval{Low: at(0.48), High: at(0.48)}, Score: at(0.4812), LeftOut: at(16.789), LeftOutLogLike: at(-2.9)},
			{Result: "hold_minutes", At: "week.xlsx, sheet Tue, row 6", ID: "4", Order: 4, Day: "Mon", Cook: "JB", Fitted: 24.1, Ratio: &result.Interval{Low: at(0.83)}, Standardised: result.Interval{Low: at(-0.6)}, Score: at(-0.712)},
			{Result: "hold_minutes", At: "week.xlsx, sheet Tue, row 7", Order: 5, Day: "Tue", Cook: "JB", Fitted: 9.7, Ratio: &result.Interval{Low: at(0.5), High: at(0.7)}, Standardised: result.Interval{Low: at(-1.9), High: at(-1)}, Score: at(-1.4)}},
		Detectable: []result.Detectable{{Result: "hold_minutes", Between: "two_formulas", Made: 2, SDLn: 0.2812, DF: 5, Factor: 2.6867},
			{Result: "hold_minutes", Between: "fat_percent", SDLn: 0.2812, DF: 5, Factor: 3.1234}},
		CannotTell: []result.NotShown{{Kind: "few_levels", Sentence: "blend HLB was tried at two levels only, so whether the results bend or peak between them is unclear"}},
		Peaks: []result.Peak{{Variable: "fat_percent", Best: 35.72, NoLongerPay: at(0.533)}, {Variable: "emulsifier_percent", Best: 3.36, AtEdge: "high"},
			{Variable: "blend_hlb", Best: 5.2, AtEdge: "low", NoLongerPay: at(0.95)}},
		Limits: []result.Limit{{Outcome: result.CameOut, Share: 0.337}, {Outcome: result.HoldMinutes, Share: 0.622}, {Outcome: result.Broke, Share: 0.026}},
		Summaries: []result.Summary{{By: "day", Name: "Mon", Trials: 6, CameOut: 5, Worked: 4, Repeats: 1, CV: at(18.2), Problems: 1},
			{By: "day", Name: "Tue", Trials: 4, CameOut: 2, Worked: 1}, {By: "student", Name: "bench 2", Trials: 4}},
		Starts: []result.Start{start(result.Surest, 43.09, 0.861, 0.624), start(result.Richest, 47.61, 0.806, 0.51)},
		BestSeen: &result.BestSeen{At: "week.xlsx, sheet Tue, row 4", ID: "2", Works: truth(true), Mix: mix(44.83, 1.69, 7.87), Ingredients: lines,
			HoldMinutes: &result.Interval{Low: at(30)}, Drained: &result.Interval{Low: at(3.3333), High: at(3.3333)}, MadeTimes: 2},
		NextTrials: []result.NextTrial{{Purpose: "confirm", Mix: mix(43.09, 1.897, 7.877), Ingredients: lines, Reason: "the surest start, made for the first time", ClogChance: at(0.0403), Chance: at(0.861)},
			{Purpose: "step", Mix: mix(40, 1.5, 7.9), Reason: "the same with less fat"}},
		Ingredients: []result.Used{{Name: "clarified butter", Kind: "fat", FatPercent: at(99.5), From: "common practice, no source", Allergens: []string{"milk"}},
			{Name: "GMS", Kind: "emulsifier", HLB: at(3.8), HLBLow: at(3), HLBHigh: at(4.3), From: "published excipient data", Allergens: []string{}, Note: "ask the supplier"},
			{Name: "cider", Kind: "water part"}},
		Allergens: result.Allergens{Found: []string{"milk"}, Unknown: []string{"cider"}},
		Cautions:  []result.Caution{{Kind: "vent", Text: "Vent all gas before opening"}, {Kind: "scope", Text: "A chance here is about the foam only."}},
	}
	for i, fat := range []float64{31.84, 38.2, 44.7, 51.3, 57.71} {
		r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: fat, Mix: mix(fat, 2.1, 8.2), LimitedBy: result.CameOut, Workable: i < 4,
			Chance: result.Chance{Mean: 0.95 - 0.05*float64(i), Low: 0.8 - 0.15*float64(i), High: 0.99, Level: 0.9}})
	}
	for i, v := range []string{"fat_percent", "emulsifier_percent", "blend_hlb"} {
		e := result.Effect{Variable: v, Fixed: mix(43, 1.9, 7.9), Verdict: []result.Verdict{result.Clear, result.Likely, result.CannotTell}[i], ShareUp: 0.99, Change: result.Band{Mid: 0.4 + float64(i), Low: 0.2, High: 3}}
		for k := range 6 {
			e.X = append(e.X, []float64{30, 1, 5}[i]+float64(k)*[]float64{5.51, 0.43, 1.27}[i])
			e.Hold = append(e.Hold, result.Band{Mid: 20.4 + 3*float64(k), Low: 15, High: 60})
			e.Tested = append(e.Tested, k > 0 && k < 5)
		}
		r.Effects = append(r.Effects, e)
	}
	for i := range 11 {
		t := result.Trial{At: fmt.Sprintf("week.xlsx, sheet Tue, row %d", i+3), Rows: []int{i + 3}, ID: fmt.Sprint(i + 1), Order: i + 1, Day: "Mon", Cook: "RT", Used: i != 6,
			Ingredient: []result.Amount{{Name: "clarified butter", Grams: 129}}, BatchGrams: at(300), FatPercent: at(34.27 + 2*float64(i)), EmulsifierPercent: at(1.37 + 0.1*float64(i)),
			EmulsifierGrams: at(4.1), BlendHLB: at(7.43), Extras: map[string]float64{"chargers": 1}, HoldMinutes: &result.Interval{Low: at(20), High: at(20)},
			DrainedPercent: &result.Interval{Low: at(0), High: at(0.8333)}, CameOut: &yes, Broke: truth(false), Works: truth(i%2 == 0), ForeseenChance: at(0.4 + 0.05*float64(i))}
		switch i {
		case 1:
			t.CameOut, t.FailedBy, t.HoldMinutes, t.DrainedPercent = &no, []result.Outcome{result.CameOut}, nil, nil
			t.Missing = map[string]string{"hold_minutes": "did_not_come_out", "drained_percent": "did_not_come_out"}
		case 3:
			t.CameOut, t.FailedBy, t.Note, t.Flagged = &partly, []result.Outcome{result.CameOut}, "half came out", true
		case 5:
			t.FailedBy, t.HoldMinutes = []result.Outcome{result.HoldMinutes, result.DrainedPercent}, &result.Interval{Low: at(10), High: at(15.5)}
		case 6:
			t.Reason, t.Works = "the fat is 140 %", nil
		case 7:
			t.Works, t.RepeatOf, t.HoldMinutes = nil, "week.xlsx, sheet Tue, row 3", &result.Interval{High: at(30)}
		case 8:
			t.EmulsifierPercent, t.BlendHLB, t.ID = nil, nil, ""
		}
		r.Trials = append(r.Trials, t)
	}
	return r
}

// guess is a run whose hold target lies beyond what anybody watched.
func guess() *result.Results {
	r := kitchen()
	r.Status, r.StatusReason, r.HoldIsAGuess, r.WatchedMinutes = result.BestAvailable, "nobody watched a foam past 15 minutes", true, at(15)
	r.Starts = r.Starts[:1]
	r.Starts[0].Status = result.BestAvailable
	for i := range r.FatLimit {
		r.FatLimit[i].Workable = false
	}
	return r
}

// unlogged is a run whose log says nothing of a target that came from somewhere.
func unlogged(o result.Outcome, from string) *result.Results {
	r := kitchen()
	r.NotJudged, r.Targets.DrainedPercent.From = []result.Outcome{o}, from
	r.Model = []result.Model{{Outcome: result.CameOut}}
	for _, other := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		if other != o {
			r.Model = append(r.Model, result.Model{Outcome: other})
		}
	}
	for i := range r.Starts {
		delete(r.Starts[i].Predicted, o)
		delete(r.Starts[i].Fails, o)
	}
	if o == result.HoldMinutes || from != "assumed" {
		r.Status, r.StatusReason = result.BestAvailable, "the log says nothing of it, so these chances leave it out"
		for i := range r.Starts {
			r.Starts[i].Status = result.BestAvailable
		}
	}
	return r
}

// gramsInABatch is a run of a log of emulsifier grams in batches of unknown weight.
func gramsInABatch() *result.Results {
	r := kitchen()
	for i := range r.Starts {
		s := &r.Starts[i]
		s.Ingredients, s.Mix.EmulsifierPercent, s.GramsNote = nil, nil, "the log has no grams of each ingredient, so the formula is given in percent only"
	}
	for i := range r.NextTrials {
		r.NextTrials[i].Ingredients = nil
	}
	return r
}

// oneFormula is a run of one formula made over and over.
func oneFormula() *result.Results {
	r := kitchen()
	r.SetAside = []result.SetVariable{{Name: "fat_percent", Reason: "the same in every trial", Value: at(42)}}
	r.Variables, r.FatLimit, r.Grid, r.Effects, r.Peaks, r.Starts = nil, nil, nil, nil, nil, r.Starts[:1]
	return r
}

// overALimit is a run whose start is above a use limit on file.
func overALimit() *result.Results {
	r := kitchen()
	r.Starts[0].Notes = append(r.Starts[0].Notes, "GMS is 1.2 % of this mix, above the 0.5 % on file for desserts: check the text in force where you serve")
	return r
}

// stoppedRun is a run that names no start.
func stoppedRun(status result.Status, reason string) *result.Results {
	r := kitchen()
	r.Status, r.StatusReason, r.Starts = status, reason, []result.Start{}
	if status == result.NothingWorked {
		r.BestSeen = nil
		r.Counts.Worked = 0
	}
	if status != result.NoSafeStart {
		r.Fits, r.Model, r.Effects, r.Peaks, r.Limits, r.FatLimit, r.Grid, r.Confounded = nil, nil, nil, nil, nil, nil, nil, nil
	}
	return r
}

// settings is a log that varied the rest and two pairs of emulsifiers.
func settings() *result.Results {
	r := kitchen()
	r.Variables = append(r.Variables, result.Variable{Name: "rest_minutes", Label: "rest", Unit: "min", Low: 5, High: 30, Centre: 15, Scale: 12.5,
		Role: result.Held, FixedAt: at(15), Assumed: 2})
	r.SetAside = []result.SetVariable{{Name: "chargers", Label: "chargers", Reason: "the same in every trial", Value: at(1)}}
	r.Choices = []result.Choice{{By: "emulsifiers", Held: "GMS and sucrose ester 15", Levels: []result.ChoiceLevel{{Name: "GMS and sucrose ester 15", Trials: 6},
		{Name: "GMS and polysorbate 80", Trials: 3, HoldFactor: &result.Band{Mid: 0.74, Low: 0.61, High: 0.92}, Verdict: result.Clear},
		{Name: "others", Trials: 1, HoldFactor: &result.Band{Mid: 1.1, Low: 0.7, High: 1.6}, Verdict: result.CannotTell}}}}
	for i := range r.Starts {
		r.Starts[i].Mix.Extras = map[string]float64{"rest_minutes": 15, "chargers": 1}
		r.Starts[i].ClosestTrial.Differences["rest_minutes"] = -10
	}
	r.Effects = []result.Effect{{Variable: "rest_minutes", X: []float64{5, 30}, Hold: []result.Band{{Mid: 14, Low: 12, High: 16}, {Mid: 18.6, Low: 17, High: 21}},
		Tested: []bool{true, true}, Change: result.Band{Mid: 1.33, Low: 1.1, High: 1.6}, Shape: result.Rises, Verdict: result.Clear, ShareUp: 0.99}}
	return r
}

// benched is a log with a method, of a kitchen that asks for ounces.
func benched() *result.Results {
	r := settings()
	r.Batch.Ounces = at(300 / 28.349523125)
	r.Method = []result.MethodStep{{Step: "melt at 70 °C"}, {Step: "strain", Critical: true}, {Step: "chill", Critical: true, Limit: "4 h at least"}}
	r.Cautions[0].Bench = "Vent first."
	weigh := func(lines []result.FormulaLine, within bool) (out []result.FormulaLine, parts []result.Part) {
		parts = []result.Part{{Part: "fat", Lines: []int{0, 2}}, {Part: "water", Lines: []int{1}}, {Lines: []int{3}}}
		for i, l := range lines {
			l.Ounces = at(l.Grams / 28.349523125)
			if within {
				l.WithinGrams = at([]float64{5.6, 8.9, 0.2, 0}[i])
			}
			out = append(out, l)
		}
		for k := range parts {
			p := &parts[k]
			for _, i := range p.Lines {
				p.Grams += out[i].Grams
				p.PercentOfMix += out[i].PercentOfMix
			}
			p.Ounces = at(p.Grams / 28.349523125)
		}
		return out, parts
	}
	for i := range r.Starts {
		s := &r.Starts[i]
		s.Ingredients, s.Parts = weigh(s.Ingredients, true)
	}
	for i := range r.NextTrials {
		if n := &r.NextTrials[i]; len(n.Ingredients) > 0 {
			n.Ingredients, n.Parts = weigh(n.Ingredients, false)
		}
	}
	r.BestSeen.Ingredients, _ = weigh(r.BestSeen.Ingredients, false)
	return r
}

// benchedTrials is the same without a start.
func benchedTrials() *result.Results {
	r := benched()
	r.Status, r.StatusReason, r.Starts = result.TooFewTrials, "6 trials can be compared; about 8 are needed", []result.Start{}
	return r
}

// runs are one of every status.
func runs() map[string]*result.Results {
	best := kitchen()
	best.Status, best.StatusReason, best.Starts = result.BestAvailable, "no mix inside what was tried reaches the wanted chance; of those that the trials can speak for, this is the likeliest", best.Starts[:1]
	best.Starts[0].Status, best.Starts[0].Chance = result.BestAvailable, result.Chance{Mean: 0.78, Low: 0.4, High: 0.9, Level: 0.9}
	best.Starts[0].Ingredients, best.Starts[0].GramsNote = nil, "the log has no grams of each ingredient, so the formula is given in percent only"
	best.Starts[0].MadeTimes, best.Starts[0].MadeWorked = 3, 2
	for i := range best.FatLimit {
		best.FatLimit[i].Workable = false
	}
	best.Targets.HoldMinutes = result.Target{Value: 17.5, From: "week.xlsx, sheet Targets, cell B2"}
	best.Targets.WantedChance = result.Target{Value: 0.8, From: "--chance"}
	best.Starts[0].ClosestTrial.Differences = map[string]float64{"fat_percent": -1.01}
	poor := kitchen()
	poor.Status, poor.StatusReason, poor.Starts = result.BestAvailable, best.StatusReason, poor.Starts[:1]
	poor.Starts[0].Status, poor.Starts[0].Chance = result.BestAvailable, result.Chance{Mean: 0.03, Low: 0.01, High: 0.2, Level: 0.9}
	for i := range poor.FatLimit {
		poor.FatLimit[i].Workable = false
	}
	return map[string]*result.Results{
		"recommended": kitchen(), "best_available": best, "poor": poor,
		"guess": guess(), "no_hold": unlogged(result.HoldMinutes, "assumed"), "no_drainage": unlogged(result.DrainedPercent, "assumed"),
		"drainage_wanted": unlogged(result.DrainedPercent, "--drained"), "grams_in_a_batch": gramsInABatch(), "one_formula": oneFormula(), "over_a_limit": overALimit(), "settings": settings(),
		"too_few_trials": stoppedRun(result.TooFewTrials, "6 trials can be compared; about 8 are needed"),
		"nothing_worked": stoppedRun(result.NothingWorked, "none of these trials worked, so there is nothing to start from yet"),
		"no_safe_start":  stoppedRun(result.NoSafeStart, "every mix inside what was tried is more likely to clog than 1 in 20"),
		"bench":          benched(),
		"bench_trials":   benchedTrials(),
		"empty":          {},
	}
}
