package surface

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

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

func newExtra(x trial.Variable, trials []*Placed) extra {
	e := extra{Variable: x, trials: len(trials)}
	var values, worked []float64
	for _, t := range trials {
		v, ok := t.Extras[x.Name]
		if !ok {
			continue
		}
		values = append(values, v)
		if t.Works == works.Yes && t.Flagged == "" {
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
func (e *extra) at(t *Placed) float64 {
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
	case float64(e.known) < KnownShare*float64(e.trials):
		return fmt.Sprintf("known for %d of %d trials only", e.known, e.trials)
	case e.rarer < variedLeast || float64(e.rarer) < variedIn*float64(e.known):
		return fmt.Sprintf("changed in too few trials to say what it does: %d of %d had the same", e.alike, e.known)
	}
	return ""
}

// fills says whether an extra is what goes into the canister, which only its size can
// be a measure of.
func (e *extra) fills() bool { return e.Name == "chargers" || e.Name == "fill_grams" }

// chooseExtras decides which extras join the surface, beside the mix, and which values
// go with every mix that is named. It needs the trials' places on the surface and
// whether they worked; sizes is how many sizes of canister the log names.
func (b *beside) chooseExtras(extras []trial.Variable, additions []string, sizes int) {
	for _, x := range extras {
		e := newExtra(x, b.trials)
		addition := slices.Contains(additions, e.Name)
		reason := e.unfit()
		named := !e.Result && float64(e.known) >= KnownShare*float64(e.trials) && float64(e.alike) >= (1-variedIn)*float64(e.known)
		if reason == "" {
			reason, named = b.try(e, addition, sizes)
		}
		if reason != "" {
			aside := result.SetVariable{Name: e.Name, Label: e.Label, Unit: e.Unit, Reason: reason}
			if e.known > 0 && e.low == e.high {
				aside.Value = &e.low
			}
			b.aside = append(b.aside, aside)
		}
		// Safety: nothing is said of how full a canister of unknown size should be.
		// What goes with the mix anyway is named only where it was a question.
		if addition {
			named = named && reason == ""
		}
		if named && e.known > 0 && (!e.fills() || sizes == 1) {
			b.usual[e.Name] = e.usual
		}
	}
}

// try joins a fit extra, or says why it cannot join those that have; named is whether a
// mix is named with its usual value.
func (b *beside) try(e extra, addition bool, sizes int) (reason string, named bool) {
	column := make([]float64, len(b.trials))
	for k, t := range b.trials {
		column[k] = e.at(t)
	}
	with, share := follows(column, b.columns)
	switch {
	case e.fills() && sizes > 1:
		return "canisters of several sizes were used, and it does not mean the same in each", true
	case share >= copied:
		b.copied = append(b.copied, hardlyTell(e.Label, b.names[with], share))
		// no one value of it goes with every mix
		return "it changed together with " + b.names[with] + ", so these trials do not separate the two", false
	case len(b.terms) >= (len(b.trials)-firstTrials)/trialsAnExtra:
		return fmt.Sprintf("%d trials are too few to learn what it does as well", len(b.trials)), false
	}
	b.names, b.columns = append(b.names, e.Label), append(b.columns, column)
	b.join(e, addition)
	return "", true
}

// join puts an extra beside the mix, centred on the value it is held at.
func (b *beside) join(e extra, addition bool) {
	scale := (e.high - e.low) / 2
	v := result.Variable{Name: e.Name, Label: e.Label, Unit: e.Unit, Role: result.Held,
		Low: e.low, High: e.high, Centre: e.usual, Scale: scale, FixedAt: &e.usual, Assumed: e.trials - e.known}
	if addition {
		v.Ingredient = e.Label
	}
	b.settings = append(b.settings, v)
	b.terms = append(b.terms, Term{Name: e.Name, at: func(t *Placed) float64 { return (e.at(t) - e.usual) / scale }})
}
