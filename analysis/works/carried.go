package works

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// Carried is what the trials of a log can say of the outcomes asked for. The chain that a
// chance is made of has a link for each that is judged and no other, so whatever is said
// of a chance follows from this one value.
type Carried struct {
	Judged    Judged
	NotJudged []result.Outcome       // the others, in the order of the chain
	Why       map[result.Outcome]Why // of each of these
	// WatchedMinutes is the longest any foam was watched that hold is judged by, nil if
	// it is not judged; a target beyond it is a guess, an extrapolation.
	WatchedMinutes *float64
	HoldIsAGuess   bool
}

// Why is why an outcome is not judged.
type Why struct {
	Sentence  string // "how long a foam holds is not logged"
	Elsewhere bool   // it is logged, of trials that no chance rests on
}

// Carry decides which outcomes are judged: those that a trial on the surface tells
// something of. One observation will do: leaving a target out because nearly all trials
// clogged before it would claim that it is always met. A trial off the surface, such as a
// control without emulsifier, says nothing of the mixes on it.
func Carry(surface, used []*trial.Trial, want result.Targets) Carried {
	c := Carried{Judged: Judged{}, Why: map[result.Outcome]Why{}}
	for _, o := range want.Outcomes() {
		if slices.ContainsFunc(surface, func(t *trial.Trial) bool { return Tells(t, o) }) {
			c.Judged[o] = true
			continue
		}
		c.NotJudged = append(c.NotJudged, o)
		c.Why[o] = why(used, o, named(o, want))
	}
	if !c.Judged[result.HoldMinutes] {
		return c
	}
	longest := 0.0
	for _, t := range surface {
		if Tells(t, result.HoldMinutes) {
			longest = math.Max(longest, watched(t.Hold))
		}
	}
	c.WatchedMinutes = &longest
	c.HoldIsAGuess = longest < want.HoldMinutes.Value
	return c
}

// LeftOut says which outcomes are in no chance though no mix is recommended without them.
func (c *Carried) LeftOut(want result.Targets) (sentences []string) {
	for _, o := range c.NotJudged {
		if want.Needs(o) {
			sentences = append(sentences, c.Why[o].Sentence)
		}
	}
	return sentences
}

// watched is how long somebody watched at most.
func watched(hold *trial.Interval) float64 {
	if math.IsInf(hold.High, 1) {
		return hold.Low
	}
	return hold.High
}

// named is an outcome as a sentence begins with it.
func named(o result.Outcome, want result.Targets) string {
	switch o {
	case result.CameOut:
		return "whether a foam comes out"
	case result.Broke:
		return "whether a foam splits"
	case result.HoldMinutes:
		return "how long a foam holds"
	case result.DrainedPercent:
		return "what drains"
	}
	return want.Asked(o).Label
}

// why says of an outcome that no trial on the surface tells of where it is logged.
func why(used []*trial.Trial, o result.Outcome, name string) Why {
	var of []string
	note := func(what string) {
		if !slices.Contains(of, what) {
			of = append(of, what)
		}
	}
	for _, t := range used {
		switch {
		case !sees(t, o):
		case !Tells(t, o):
			note("of foams that did not come out or split")
		case !Emulsified(t):
			note("of trials without emulsifier, which lie apart")
		default:
			note("of trials whose mix is not wholly known")
		}
	}
	if len(of) == 0 {
		return Why{Sentence: name + " is not logged"}
	}
	return Why{name + " is logged only " + strings.Join(of, " and "), true}
}

// Interval is what was seen as the results carry it: nil = no bound on that side.
func Interval(i *trial.Interval) *result.Interval {
	if i == nil {
		return nil
	}
	return &result.Interval{Low: Finite(i.Low), High: Finite(i.High)}
}

// Finite is a number as the results carry it, nil where there is none.
func Finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// Or is the first of two numbers that is known, 0 if neither is.
func Or(a, b *float64) float64 {
	switch {
	case a != nil:
		return *a
	case b != nil:
		return *b
	}
	return 0
}
