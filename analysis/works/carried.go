package works

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// Carried is what the trials of a log can say of the outcomes asked for.
type Carried struct {
	Judged    Judged
	NotJudged []result.Outcome // numbers asked for that nobody logged
	// WatchedMinutes is the longest any foam was watched, nil if no hold is judged; a
	// target beyond it is a guess, an extrapolation.
	WatchedMinutes *float64
	HoldIsAGuess   bool
}

// Carry decides which outcomes the trials carry: a yes/no one if somebody wrote an
// answer down, a number if it was seen once. One observation will do: leaving a target
// out because nearly all trials clogged before it would claim that it is always met.
func Carry(trials []*trial.Trial, want result.Targets) Carried {
	c := Carried{Judged: Judged{}}
	for _, o := range want.Outcomes() {
		for _, t := range trials {
			switch o {
			case result.CameOut:
				c.Judged[o] = c.Judged[o] || t.CameOut != trial.Unknown
			case result.Broke:
				c.Judged[o] = c.Judged[o] || t.Broke != trial.Unknown
			default: // what a control without emulsifier did says nothing of the surface
				c.Judged[o] = c.Judged[o] || Emulsified(t) && Tells(t, o)
			}
		}
		if IsNumber(o) && !c.Judged[o] {
			c.NotJudged = append(c.NotJudged, o)
		}
	}
	if !c.Judged[result.HoldMinutes] {
		return c
	}
	longest := 0.0
	for _, t := range trials {
		if t.Hold == nil {
			continue
		}
		seen := t.Hold.Low
		if !math.IsInf(t.Hold.High, 1) {
			seen = t.Hold.High
		}
		longest = math.Max(longest, seen)
	}
	c.WatchedMinutes = &longest
	c.HoldIsAGuess = longest < want.HoldMinutes.Value
	return c
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
