// Package surface lays out the trials of a log: which variables they vary and carry,
// what goes beside the mix, where every trial lies, and which of them repeat a formula.
// It believes nothing yet: what moves what is the next room's.
package surface

import (
	"maps"
	"math"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// Surface is the trials used, each placed among the variables that they vary.
type Surface struct {
	Space
	works.Carried
	Trials    []Placed
	Terms     []Term            // terms of every line beside the mix
	Settings  []result.Variable // the extras among them, which come first
	Extras    []trial.Variable  // the log's, and the additions it varied
	Additions []string          // names of those that are ingredients
	Choices   []result.Choice
	Averaged  []result.Choice
	SetAside  []result.SetVariable
	Copied    []result.Confounded // extras that changed with another variable
}

// Placed is a used trial and its place.
type Placed struct {
	*trial.Trial
	Mix      []float64 // values of the surface's variables, nil if off the surface
	Beside   []float64 // values of the terms beside them
	Works    works.Tri
	FailedBy []result.Outcome
	Group    int            // index of the first trial of the same formula
	RepeatOf string         // where that trial stands, "" for a first
	Recipe   []formula.Part // every ingredient in grams; nil if the log does not have them all
}

// Of lays out a log. The grams that a scale can tell apart say what a repeat is.
func Of(log *trial.Log, want result.Targets, scaleStep float64) (*Surface, error) {
	trials := used(log)
	extras, additions := addAdditions(log.Extras, trials)
	s := &Surface{Trials: trials, Extras: extras, Additions: additions}
	var err error
	if s.Space, s.SetAside, err = vary(trials); err != nil {
		return nil, err
	}
	s.carry(want)
	b := newBeside(s.OnSurface(), &s.Space)
	b.chooseExtras(extras, additions, len(Canisters(log)))
	b.chooseChoices()
	s.Terms, s.Settings, s.Usual = b.terms, b.settings, b.usual
	s.Choices, s.Averaged, s.Copied = b.choices, b.averaged, b.copied
	s.SetAside = append(s.SetAside, b.aside...)
	s.Basis.Beside = b.place()
	s.group(scaleStep)
	return s, nil
}

// carry settles what is judged, and by it whether each trial worked.
func (s *Surface) carry(want result.Targets) {
	var on, used []*trial.Trial
	for i := range s.Trials {
		t := &s.Trials[i]
		used = append(used, t.Trial)
		if t.Mix != nil {
			on = append(on, t.Trial)
		}
	}
	s.Carried = works.Carry(on, used, want)
	outcomes := want.Outcomes()
	for i := range s.Trials {
		t := &s.Trials[i]
		t.Works, t.FailedBy = works.Verdict(s.Judged.Passes(t.Trial, want), outcomes)
	}
}

// used is the trials that count, in the log's order.
func used(log *trial.Log) []Placed {
	out := make([]Placed, 0, len(log.Trials))
	for i := range log.Trials {
		t := &log.Trials[i]
		if !t.Used() {
			continue
		}
		one := Placed{Trial: t}
		if t.FatPercent != nil { // else some of the mix is not known
			one.Recipe = recipe(t)
		}
		out = append(out, one)
	}
	return out
}

// recipe is a trial's mix in grams, nil unless the log has every ingredient: some
// logs write the grams of the emulsifier only.
func recipe(t *trial.Trial) []formula.Part {
	sum := 0.0
	for _, p := range t.Parts {
		sum += p.Grams
	}
	if t.BatchGrams == nil || len(t.Parts) < 2 || math.Abs(sum-*t.BatchGrams) > 0.02**t.BatchGrams {
		return nil
	}
	return parts(t)
}

// parts is what a trial weighed, as far as the log has it. One emulsifier of no HLB beside a blend
// HLB that is logged is what the kitchen blends; of two the grams might make any HLB.
func parts(t *trial.Trial) []formula.Part {
	out := make([]formula.Part, len(t.Parts))
	blend := -1
	for i, p := range t.Parts {
		out[i] = formula.Part{Name: p.Name, Grams: p.Grams, What: p.What}
		switch {
		case p.What.Kind != ingredient.Emulsifier || p.Grams <= 0:
		case blend >= 0 || p.What.HLB != nil || t.BlendHLB == nil:
			blend = len(out)
		default:
			blend = i
		}
	}
	if blend >= 0 && blend < len(out) {
		out[blend].Blended = true
	}
	return out
}

// Blends says whether a trial's grams alone do not say its mix, the HLB being made by blending.
func (t *Placed) Blends() bool {
	return slices.ContainsFunc(t.Recipe, func(p formula.Part) bool { return p.Blended })
}

// Canisters is the sizes of canister the log names, sorted.
func Canisters(log *trial.Log) []string {
	sizes := map[string]bool{}
	for i := range log.Trials {
		if t := &log.Trials[i]; t.Used() && t.Canister != "" {
			sizes[t.Canister] = true
		}
	}
	return slices.Sorted(maps.Keys(sizes))
}

// OnSurface is the trials that lie on the surface.
func (s *Surface) OnSurface() (out []*Placed) {
	for i := range s.Trials {
		if s.Trials[i].Mix != nil {
			out = append(out, &s.Trials[i])
		}
	}
	return out
}

// MixOf is a trial's mix, with its own values of the extras that are named.
func (s *Surface) MixOf(t *Placed) result.Mix {
	m := result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent,
		EmulsifierGrams: t.EmulsifierGrams, BlendHLB: t.BlendHLB}
	for name := range s.Usual {
		if v, ok := t.Extras[name]; ok {
			if m.Extras == nil {
				m.Extras = map[string]float64{}
			}
			m.Extras[name] = v
		}
	}
	return m
}

// Name is how a person would call a trial.
func (t *Placed) Name() string {
	if t.ID != "" {
		return "trial " + t.ID
	}
	return t.At.String()
}
