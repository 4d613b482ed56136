package analysis

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/latent"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/ingest/table"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// study is one run in the making: the log on one side, the results on the other.
type study struct {
	log    *trial.Log
	want   result.Targets
	judged judged
	out    *result.Results
	trials []placed // those used, in the log's order
	surface
	daySD    float64 // added to the scatter of numbers where the log cannot show it
	chain    *region.Chain
	links    []link        // what the chain's links were fitted on
	declared []link        // results beside the chain that were fitted
	fitted   []*latent.Fit // behind each of out.Fits, nil for none of a number
	search   *region.Search
	draws    *region.Draws
	seed     uint64

	extras    []trial.Variable // the log's, and the additions it varied
	additions []string         // names of these

	tradeSigns bool
}

// placed is a used trial with what the study makes of it.
type placed struct {
	*trial.Trial
	shown    *result.Trial
	mix      []float64 // values of the surface's variables, nil if off the surface
	beside   []float64 // values of the terms beside them
	passes   map[result.Outcome]tri
	works    tri
	failedBy []result.Outcome
	group    int            // index of the first trial of the same formula
	recipe   []formula.Part // every ingredient in grams; nil if the log does not have them all
}

// surface is the variables the model is built on.
type surface struct {
	vars      []result.Variable
	basis     region.Basis
	constants map[string]float64 // variables that never changed
	beside    []beside           // terms beside the mix
	settings  []result.Variable  // the extras among them
	usual     map[string]float64 // extras that go with every mix that is named
}

// Names of the three variables of a foam.
const (
	fatPercent        = "fat_percent"
	emulsifierPercent = "emulsifier_percent"
	emulsifierGrams   = "emulsifier_grams"
	blendHLB          = "blend_hlb"
)

// stream is an own random stream for one purpose, so that a change in one place
// moves no other number.
func (s *study) stream(purpose uint64) *rand.Rand {
	return rand.New(rand.NewPCG(s.seed, purpose))
}

const (
	streamModel  = 1 << 8 // plus the outcome's place in the chain
	streamDraws  = 2 << 8
	streamPrior  = 3 << 8
	streamWidths = 4 << 8
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
	fatCandidate     = candidate{fatPercent, "fat", "%", false, 5}
	percentCandidate = candidate{emulsifierPercent, "emulsifier", "%", true, 0.22}
	gramsCandidate   = candidate{emulsifierGrams, "emulsifier", "g", true, 0.22}
	hlbCandidate     = candidate{blendHLB, "blend HLB", "", false, 1.5}
)

// carried is the share of trials a variable must be known in to join the surface;
// below it more would be lost by dropping trials than by dropping the variable.
const carried = 0.6

// emulsified says whether a trial can lie on the surface at all: without
// emulsifier there is no HLB and no logarithm.
func emulsified(t *trial.Trial) bool {
	for _, v := range []*float64{t.EmulsifierPercent, t.EmulsifierGrams} {
		if v != nil && *v <= 0 {
			return false
		}
	}
	return true
}

// chooseVariables decides which variables the trials vary and carry, and places
// every trial on their surface.
func (s *study) chooseVariables() error {
	s.constants = map[string]float64{}
	used := make([]trial.Trial, len(s.trials))
	for i := range s.trials {
		used[i] = *s.trials[i].Trial
	}
	frame, err := table.New(used, nil)
	if err != nil {
		return err
	}
	eligible := 0
	for _, t := range s.trials {
		if emulsified(t.Trial) {
			eligible++
		}
	}
	// column is a candidate's value in every used trial, NaN where there is none or
	// where the trial cannot lie on the surface.
	column := func(c candidate) []float64 {
		v := frame.Numbers(c.name)
		for i, t := range s.trials {
			if !emulsified(t.Trial) {
				v[i] = math.NaN()
			}
		}
		return v
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
	var chosen []candidate
	for _, c := range []candidate{fatCandidate, emulsifier, hlbCandidate} {
		v := known(c)
		aside := func(reason string, value *float64) {
			s.out.SetAside = append(s.out.SetAside, result.SetVariable{Name: c.name, Label: c.label, Unit: c.unit, Reason: reason, Value: value})
		}
		switch low, high := ends(v); {
		case len(v) == 0:
			aside("not in the log", nil)
		case float64(len(v)) < carried*float64(eligible):
			aside("known for too few of the trials", nil)
		case high-low <= 1e-9*math.Abs(high):
			aside("the same in every trial", &high)
			s.constants[c.name] = high
		default:
			chosen = append(chosen, c)
		}
	}
	columns := make([][]float64, len(chosen))
	for k, c := range chosen {
		columns[k] = column(c)
	}
	for i := range s.trials {
		if !emulsified(s.trials[i].Trial) {
			continue
		}
		mix := make([]float64, 0, len(chosen))
		for _, values := range columns {
			if !math.IsNaN(values[i]) {
				mix = append(mix, values[i])
			}
		}
		if len(mix) == len(chosen) {
			s.trials[i].mix = mix
		}
	}
	var coords []region.Coordinate
	for i, c := range chosen {
		var values, used []float64
		for _, t := range s.trials {
			if t.mix == nil {
				continue
			}
			values = append(values, t.mix[i])
			if c.log {
				used = append(used, math.Log(t.mix[i]))
			} else {
				used = append(used, t.mix[i])
			}
		}
		centre, sd := stat.MeanStdDev(used, nil)
		if len(used) < 2 {
			sd = 0
		}
		low, high := ends(values)
		// 1.7 standard deviations are half the range of evenly spread trials, and
		// one far-out trial hardly moves them.
		v := result.Variable{Name: c.name, Label: c.label, Unit: c.unit, Log: c.log, Role: result.Moved, Low: low, High: high,
			Centre: centre, Scale: math.Max(1.7*sd, c.least)}
		s.vars = append(s.vars, v)
		coords = append(coords, region.Coordinate{Log: v.Log, Centre: v.Centre, Scale: v.Scale})
	}
	s.basis = region.Curved(coords)
	s.chooseExtras()
	s.chooseChoices()
	s.placeBeside()
	s.out.Variables = slices.Concat(s.vars, s.settings)
	return nil
}

func ends(v []float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range v {
		low, high = math.Min(low, x), math.Max(high, x)
	}
	return low, high
}

// place is the index of a variable on the surface, or -1.
func (s *surface) place(name string) int {
	for i, v := range s.vars {
		if v.Name == name {
			return i
		}
	}
	return -1
}

// mixOf is a point of the surface as a mix, constants filled in.
func (s *surface) mixOf(values []float64) result.Mix {
	m := result.Mix{}
	set := func(name string, v float64) {
		switch name {
		case fatPercent:
			m.FatPercent = &v
		case emulsifierPercent:
			m.EmulsifierPercent = &v
		case emulsifierGrams:
			m.EmulsifierGrams = &v
		case blendHLB:
			m.BlendHLB = &v
		}
	}
	for name, v := range s.constants {
		set(name, v)
	}
	for i, v := range s.vars {
		set(v.Name, values[i])
	}
	if len(s.usual) > 0 {
		m.Extras = maps.Clone(s.usual)
	}
	return m
}

// onSurface is the trials that lie on the surface.
func (s *study) onSurface() (out []*placed) {
	for i := range s.trials {
		if s.trials[i].mix != nil {
			out = append(out, &s.trials[i])
		}
	}
	return out
}

// distance between two mixes in the surface's own coordinates.
func (s *surface) distance(a, b []float64) float64 {
	return floats.Distance(s.basis.Place(a), s.basis.Place(b), 2)
}
