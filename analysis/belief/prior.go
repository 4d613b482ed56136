package belief

import (
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// prior is what is believed of an outcome before the log, per half range tried of
// each variable. Hold and drained are on the log scale: a straight term of 1 means
// a factor of 2.7 from the middle to the edge of what was tried, either way.
// Scales are common practice, no source; a log of a week outweighs them. A setting
// (chargers, rest, temperature) is expected to do half of what the mix itself does,
// either way: a factor of 1.5 in hold from the middle to the edge of what was tried, 2.2
// from edge to edge. Two kinds of emulsifiers or fat (a choice) at the same numbers
// usually hold within a factor of 1.5 of each other, as 0.3 for each of the two says; two
// cooks within 1.3.
type prior struct {
	constant, straight, square, product posterior.Normal
	setting                             posterior.Normal   // an extra's straight term, per half range tried
	choice                              posterior.Normal   // offset of one kind of emulsifiers or fat
	cook                                posterior.Normal   // offset of who made it
	lean                                map[string]float64 // prior mean of a variable's straight term
	lnSigma                             posterior.Normal
}

var priors = map[result.Outcome]prior{
	// Most mixes a kitchen tries come out; rich and heavily emulsified ones are the
	// ones that clog, and mostly they do so suddenly: from hardly ever to nearly always
	// within half the range tried. A gentler prior for all smears the edge over the
	// whole range and holds good mixes back; a stronger lean claims too much of logs of 12.
	result.CameOut: {
		constant: posterior.Normal{Mean: 3, SD: 3},
		straight: posterior.Normal{SD: 4}, square: posterior.Normal{SD: 2}, product: posterior.Normal{SD: 2},
		lean:    map[string]float64{surface.FatPercent: -2, surface.EmulsifierPercent: -2, surface.EmulsifierGrams: -2},
		setting: posterior.Normal{SD: 1.5}, choice: posterior.Normal{SD: 1}, cook: posterior.Normal{SD: 0.5},
	},
	// Of those that come out few split, and splitting rises with fat.
	result.Broke: {
		constant: posterior.Normal{Mean: -3.5, SD: 2.5},
		straight: posterior.Normal{SD: 3}, square: posterior.Normal{SD: 1}, product: posterior.Normal{SD: 1},
		lean:    map[string]float64{surface.FatPercent: 2},
		setting: posterior.Normal{SD: 1.5}, choice: posterior.Normal{SD: 1}, cook: posterior.Normal{SD: 0.5},
	},
	// A foam holds from a minute to hours; repeats scatter by 15 to 60 %.
	result.HoldMinutes: {
		constant: posterior.Normal{Mean: 2.7, SD: 1.2},
		straight: posterior.Normal{SD: 1.2}, square: posterior.Normal{SD: 0.7}, product: posterior.Normal{SD: 0.4},
		setting: posterior.Normal{SD: 0.4}, choice: posterior.Normal{SD: 0.3}, cook: posterior.Normal{SD: 0.2},
		lnSigma: posterior.Normal{Mean: -1.2, SD: 0.5},
	},
	result.DrainedPercent: {
		constant: posterior.Normal{Mean: 2, SD: 1.2},
		straight: posterior.Normal{SD: 1.2}, square: posterior.Normal{SD: 0.7}, product: posterior.Normal{SD: 0.4},
		setting: posterior.Normal{SD: 0.4}, choice: posterior.Normal{SD: 0.3}, cook: posterior.Normal{SD: 0.2},
		lnSigma: posterior.Normal{Mean: -1, SD: 0.5},
	},
}

// measured is the prior of a result that a kitchen measures in a unit of its own, in
// standard deviations of what it logged: whatever it is, the mix explains part of it.
var measured = prior{
	constant: posterior.Normal{SD: 1},
	straight: posterior.Normal{SD: 0.8}, square: posterior.Normal{SD: 0.5}, product: posterior.Normal{SD: 0.4},
	setting: posterior.Normal{SD: 0.4}, choice: posterior.Normal{SD: 0.3}, cook: posterior.Normal{SD: 0.2},
	lnSigma: posterior.Normal{Mean: -0.5, SD: 0.5},
}

// lnSteepness is how many times as steep as these priors a yes/no line may be, in
// logarithms. How suddenly mixes stop coming out and start to split differs from kitchen
// to kitchen by more than a factor of eight, and few trials show it: one width for all
// understates clogging where edges are gentle (on kitchens of every steepness named
// starts truly clogged 1.6 times as often as was said) or holds good mixes back where
// they are sharp.
var lnSteepness = posterior.Normal{Mean: 0, SD: 0.5}

// nearlyBand is how far from coming out a mix may be and still come out partly, in log
// odds where the edge is as steep as its prior: some third of the half range tried. A
// guess, no source. Partly told from clogged makes the surest start of simulated kitchens
// 0.006 to 0.009 less short of the best one permitted (fresh ones; 0.010 to 0.013 of tuning).
const nearlyBand = 1.2

func priorOf(o result.Outcome) prior {
	if p, ours := priors[o]; ours {
		return p
	}
	return measured
}

// daySD is the day-to-day spread on the log scale added to a prediction when all
// trials were made on one day and so cannot show it. From memory: 15 % or so.
const daySD = 0.15

// terms is the prior of every term of a basis over the given variables.
func (p prior) terms(b region.Basis, vars []result.Variable) []posterior.Normal {
	out := make([]posterior.Normal, len(b.Terms))
	for i, t := range b.Terms {
		switch {
		case len(t) == 0:
			out[i] = p.constant
		case len(t) == 1:
			out[i] = p.straight
			out[i].Mean += p.lean[vars[t[0]].Name]
		case t[0] == t[1]:
			out[i] = p.square
		default:
			out[i] = p.product
		}
	}
	return out
}

// beside is the prior of a term beside the mix.
func (p prior) beside(t surface.Term) posterior.Normal {
	switch {
	case t.Of == "":
		return p.setting
	case t.Averaged:
		return p.cook
	}
	return p.choice
}
