package analysis

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// beside is a term of every line that does not follow from fat, emulsifier and HLB. Mixes
// are searched and named with it held.
type beside struct {
	name  string // as the terms in the results call it
	prior func(prior) posterior.Normal
	at    func(*placed) float64
	// of and level, if it is the offset of one level of a choice, or of something that
	// is averaged over.
	of, level string
	averaged  bool
}

// chosen says whether it is the offset of something that a mix is made of.
func (b *beside) chosen() bool { return b.of != "" && !b.averaged }

// What an extra must show before it joins the surface. An extra is a number a kitchen
// sets before the foam is made: chargers, minutes of rest, a temperature, a column it
// declared.
const (
	// variedIn is the share of trials, and variedLeast their number, that must lie in
	// either half of an extra's range: one or two odd trials are no comparison.
	variedIn    = 0.15
	variedLeast = 3
	// The surface has the first trials to itself; every extra asks for some more.
	firstTrials   = 10
	trialsAnExtra = 6
	// copied is the share of an extra's variation that may go with the other variables
	// before nobody can tell which of them did it: its variance is then five times inflated.
	copied = 0.8
)

// extra is how the trials on the surface had one of the log's extras.
type extra struct {
	trial.Variable
	trials, known int
	low, high     float64
	rarer         int     // trials in the emptier half of the range
	usual         float64 // the value most had, of those that worked if any did
	alike         int     // known trials that had it
}

func newExtra(x trial.Variable, trials []*placed) extra {
	e := extra{Variable: x, trials: len(trials)}
	var values, worked []float64
	for _, t := range trials {
		v, ok := t.Extras[x.Name]
		if !ok {
			continue
		}
		values = append(values, v)
		if t.works == yes && t.Flagged == "" {
			worked = append(worked, v)
		}
	}
	e.known = len(values)
	if e.known == 0 {
		return e
	}
	e.low, e.high = ends(values)
	upper := 0
	for _, v := range values {
		if v > (e.low+e.high)/2 {
			upper++
		}
	}
	e.rarer = min(upper, e.known-upper)
	if len(worked) == 0 {
		worked = values
	}
	e.usual = usual(worked)
	for _, v := range values {
		if v == e.usual {
			e.alike++
		}
	}
	return e
}

// usual is the most frequent value, of several the one nearest the middle one.
func usual(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	middle := sorted[len(sorted)/2]
	times := map[float64]int{}
	for _, v := range sorted {
		times[v]++
	}
	return slices.MinFunc(sorted, func(a, b float64) int {
		return cmp.Or(cmp.Compare(times[b], times[a]), cmp.Compare(math.Abs(a-middle), math.Abs(b-middle)))
	})
}

// at is a trial's value; a trial that does not say is taken to have had the usual one.
func (e *extra) at(t *placed) float64 {
	if v, ok := t.Extras[e.Name]; ok {
		return v
	}
	return e.usual
}

// unfit says why an extra cannot join the surface whatever else is on it, "" if it can.
func (e *extra) unfit() string {
	switch {
	case e.Result:
		return "measured on the foam, so a result and not a setting; listed with the trials"
	case e.known == 0:
		return "not known for any trial that can be compared"
	case e.low == e.high:
		return "the same in every trial that says it"
	case float64(e.known) < carried*float64(e.trials):
		return fmt.Sprintf("known for %d of %d trials only", e.known, e.trials)
	case e.rarer < variedLeast || float64(e.rarer) < variedIn*float64(e.known):
		return fmt.Sprintf("it changed in too few trials to say what it does: %d of %d had the same", e.alike, e.known)
	}
	return ""
}

// fills says whether an extra is what goes into the canister, which only its size can
// be a measure of.
func (e *extra) fills() bool { return e.Name == "chargers" || e.Name == "fill_grams" }

// chooseExtras decides which extras join the surface, beside the mix, and which values
// go with every mix that is named. It needs the trials' places on the surface and
// whether they worked.
func (s *study) chooseExtras() {
	trials := s.onSurface()
	sizes := len(canisters(s.log))
	s.usual = map[string]float64{}
	var names []string
	var columns [][]float64
	for i, v := range s.vars {
		names, columns = append(names, v.Label), append(columns, s.column(i, trials))
	}
	for _, x := range s.extras {
		e := newExtra(x, trials)
		reason := e.unfit()
		named := !e.Result && float64(e.known) >= carried*float64(e.trials) && float64(e.alike) >= (1-variedIn)*float64(e.known)
		if reason == "" {
			named = true
			column := make([]float64, len(trials))
			for k, t := range trials {
				column[k] = e.at(t)
			}
			with, share := follows(column, columns)
			switch {
			case e.fills() && sizes > 1:
				reason = "canisters of several sizes were used, and it does not mean the same in each"
			case share >= copied:
				reason = "it changed together with " + names[with] + ", so these trials cannot tell the two apart"
				s.hardlyTell(e.Label, names[with], share)
				named = false // no one value of it goes with every mix
			case len(s.beside) >= (len(trials)-firstTrials)/trialsAnExtra:
				reason = fmt.Sprintf("%d trials are too few to learn what it does as well", len(trials))
				named = false
			default:
				names, columns = append(names, e.Label), append(columns, column)
				s.join(e)
			}
		}
		if reason != "" {
			aside := result.SetVariable{Name: e.Name, Label: e.Label, Unit: e.Unit, Reason: reason}
			if e.known > 0 && e.low == e.high {
				aside.Value = &e.low
			}
			s.out.SetAside = append(s.out.SetAside, aside)
		}
		// Safety: nothing is said of how full a canister of unknown size should be.
		// What goes with the mix anyway is named only where it was a question.
		if slices.Contains(s.additions, e.Name) {
			named = named && reason == ""
		}
		if named && e.known > 0 && (!e.fills() || sizes == 1) {
			s.usual[e.Name] = e.usual
		}
	}
}

// join puts an extra beside the mix, centred on the value it is held at.
func (s *study) join(e extra) {
	scale := (e.high - e.low) / 2
	s.settings = append(s.settings, result.Variable{Name: e.Name, Label: e.Label, Unit: e.Unit, Role: result.Held,
		Low: e.low, High: e.high, Centre: e.usual, Scale: scale, FixedAt: &e.usual, Assumed: e.trials - e.known})
	if slices.Contains(s.additions, e.Name) {
		s.settings[len(s.settings)-1].Ingredient = e.Label
	}
	s.beside = append(s.beside, beside{name: e.Name, prior: func(p prior) posterior.Normal { return p.setting },
		at: func(t *placed) float64 { return (e.at(t) - e.usual) / scale }})
}

// placeBeside gives every trial on the surface its values beside the mix.
func (s *study) placeBeside() {
	for _, t := range s.onSurface() {
		for _, b := range s.beside {
			t.beside = append(t.beside, b.at(t))
		}
	}
	s.basis.Beside = make([]float64, len(s.beside))
	for _, c := range s.out.Averaged {
		for i, b := range s.beside {
			if b.of == c.By {
				s.basis.Beside[i] = 1 / float64(len(c.Levels))
			}
		}
	}
}

// follows is the share of a column's variation that goes with the others together, and
// which of them it goes with most.
func follows(column []float64, others [][]float64) (with int, share float64) {
	// Gram and Schmidt: take from each column what those before it explain.
	var basis [][]float64
	rest := func(v []float64) []float64 {
		v = centred(v)
		whole := floats.Dot(v, v)
		for _, b := range basis {
			along := floats.Dot(v, b)
			floats.AddScaled(v, -along, b)
		}
		if floats.Dot(v, v) <= 1e-9*whole {
			return make([]float64, len(v))
		}
		return v
	}
	most := -1.0
	for i, o := range others {
		if r := squaredCorrelation(column, o); r > most {
			with, most = i, r
		}
		if v := rest(o); floats.Dot(v, v) > 0 {
			floats.Scale(1/floats.Norm(v, 2), v)
			basis = append(basis, v)
		}
	}
	whole, left := centred(column), rest(column)
	return with, 1 - floats.Dot(left, left)/floats.Dot(whole, whole)
}

func centred(v []float64) []float64 {
	out := slices.Clone(v)
	floats.AddConst(-stat.Mean(v, nil), out)
	return out
}
