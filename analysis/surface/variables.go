package surface

import (
	"math"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/table"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/stat"
)

// candidate is a variable that may join the surface.
type candidate struct {
	name, label, unit string
	log               bool
	least             float64 // the smallest scale: what a kitchen would call a step
}

// The floors are a kitchen's own steps: five points of fat, a quarter more
// emulsifier, one and a half points of HLB. Common practice, no source.
var (
	fatCandidate     = candidate{FatPercent, "fat", "%", false, 5}
	percentCandidate = candidate{EmulsifierPercent, "emulsifier", "%", true, 0.22}
	gramsCandidate   = candidate{EmulsifierGrams, "emulsifier", "g", true, 0.22}
	hlbCandidate     = candidate{BlendHLB, "blend HLB", "", false, 1.5}
)

// KnownShare is the share of trials a variable must be known in to join the surface;
// below it more would be lost by dropping trials than by dropping the variable.
const KnownShare = 0.6

// vary decides which variables the trials vary and carry, and places every trial on
// their surface.
func vary(trials []Placed) (Space, []result.SetVariable, error) {
	s := Space{}
	column, err := columns(trials)
	if err != nil {
		return s, nil, err
	}
	chosen, constants, aside := choose(trials, column)
	s.Constants = constants
	place(trials, chosen, column)
	var coords []region.Coordinate
	for i, c := range chosen {
		v := c.variable(i, trials)
		s.Vars = append(s.Vars, v)
		coords = append(coords, region.Coordinate{Log: v.Log, Centre: v.Centre, Scale: v.Scale})
	}
	s.Basis = region.Curved(coords)
	return s, aside, nil
}

// columns gives a candidate's value in every trial, NaN where there is none or
// where the trial cannot lie on the surface.
func columns(trials []Placed) (func(candidate) []float64, error) {
	used := make([]trial.Trial, len(trials))
	for i := range trials {
		used[i] = *trials[i].Trial
	}
	frame, err := table.New(used)
	if err != nil {
		return nil, err
	}
	return func(c candidate) []float64 {
		v := frame.Numbers(c.name)
		for i, t := range trials {
			if !works.Emulsified(t.Trial) {
				v[i] = math.NaN()
			}
		}
		return v
	}, nil
}

// choose takes the candidates that vary and are known often enough.
func choose(trials []Placed, column func(candidate) []float64) (chosen []candidate, constants map[string]float64, aside []result.SetVariable) {
	eligible := 0
	for _, t := range trials {
		if works.Emulsified(t.Trial) {
			eligible++
		}
	}
	known := func(c candidate) (v []float64) {
		for _, x := range column(c) {
			if !math.IsNaN(x) {
				v = append(v, x)
			}
		}
		return v
	}
	emulsifier := percentCandidate
	if len(known(gramsCandidate)) > len(known(percentCandidate)) {
		emulsifier = gramsCandidate
	}
	constants = map[string]float64{}
	for _, c := range []candidate{fatCandidate, emulsifier, hlbCandidate} {
		v := known(c)
		leave := func(reason string, value *float64) {
			aside = append(aside, result.SetVariable{Name: c.name, Label: c.label, Unit: c.unit, Reason: reason, Value: value})
		}
		switch low, high := ends(v); {
		case len(v) == 0:
			leave("not in the log", nil)
		case float64(len(v)) < KnownShare*float64(eligible):
			leave("known for too few of the trials", nil)
		case high-low <= 1e-9*math.Abs(high):
			leave("the same in every trial", &high)
			constants[c.name] = high
		default:
			chosen = append(chosen, c)
		}
	}
	return chosen, constants, aside
}

// place gives every trial that says all of the chosen variables its mix.
func place(trials []Placed, chosen []candidate, column func(candidate) []float64) {
	columns := make([][]float64, len(chosen))
	for k, c := range chosen {
		columns[k] = column(c)
	}
	for i := range trials {
		if !works.Emulsified(trials[i].Trial) {
			continue
		}
		mix := make([]float64, 0, len(chosen))
		for _, values := range columns {
			if !math.IsNaN(values[i]) {
				mix = append(mix, values[i])
			}
		}
		if len(mix) == len(chosen) {
			trials[i].Mix = mix
		}
	}
}

// scaleSDs standard deviations are half the range of evenly spread trials, and one
// far-out trial hardly moves them.
const scaleSDs = 1.7

// variable is the i-th chosen one, as the placed trials have it.
func (c candidate) variable(i int, trials []Placed) result.Variable {
	var values, used []float64
	for _, t := range trials {
		if t.Mix == nil {
			continue
		}
		values = append(values, t.Mix[i])
		if c.log {
			used = append(used, math.Log(t.Mix[i]))
		} else {
			used = append(used, t.Mix[i])
		}
	}
	centre, sd := stat.MeanStdDev(used, nil)
	if len(used) < 2 {
		sd = 0
	}
	low, high := ends(values)
	return result.Variable{Name: c.name, Label: c.label, Unit: c.unit, Log: c.log, Role: result.Moved, Low: low, High: high,
		Centre: centre, Scale: math.Max(scaleSDs*sd, c.least)}
}

func ends(v []float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range v {
		low, high = math.Min(low, x), math.Max(high, x)
	}
	return low, high
}
