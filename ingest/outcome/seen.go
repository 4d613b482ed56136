// Package outcome decides what happened to a foam from what a trial's cells say:
// whether it came out, split, how long it held and how much drained.
package outcome

import (
	"math"
	"slices"

	"foamfield/ingest/event"
	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// Cell is a row and a column of a table; a column of 0 is none.
type Cell struct{ Row, Col int }

// OK reports a cell that is there.
func (c Cell) OK() bool { return c.Col > 0 }

// Said is what a cell answers to the question of its column.
type Said struct {
	Answer trial.Answer
	Cell
	Blank bool // nothing is typed, which is no in a column that is only ever marked
}

// Measured is a reading and where it stands.
type Measured struct {
	quantity.Reading
	Cell
}

// Event is something a text says happened. The text of a result column, or one
// typed in place of a number, is meant as a result; a note's only counts when
// nothing else answers.
type Event struct {
	What event.Event
	Cell
	Note bool
}

// Drain is one reading of the drained liquid.
type Drain struct {
	Measured
	Minute float64 // when it was read; NaN = not said
	Grams  bool    // grams, to be divided by the sample; else percent of the foam
}

// Cup is one of the two measures of an overrun.
type Cup struct {
	Grams float64
	Cell
	Volume bool
}

// Seen is what a trial's cells say happened, before they are weighed against each
// other.
type Seen struct {
	Row                  int // the first of the trial's rows
	Out, Clogged, Spits  Said
	Broke, Oil           Said
	Hold, LastOK, GoneBy Measured
	Drains               []Drain
	Sample               Measured
	SampleSaid           bool // its cell cannot be used, which is said there
	LiquidCup, FoamCup   Cup
	Overrun              *float64 // logged
	Events               []Event
}

// dropBlanks forgets the blanks read as no where nothing at all is typed: an empty
// row is a trial nobody made yet.
func (s *Seen) dropBlanks() {
	answers := [...]*Said{&s.Out, &s.Clogged, &s.Spits, &s.Broke, &s.Oil}
	if s.Hold.OK() || s.LastOK.OK() || s.GoneBy.OK() || len(s.Drains) > 0 || len(s.Events) > 0 {
		return
	}
	for _, a := range answers {
		if a.Answer != trial.Unknown && !a.Blank {
			return
		}
	}
	for _, a := range answers {
		*a = Said{}
	}
}

// Value is a variable that follows from the outcomes.
type Value struct {
	trial.Variable
	Value float64
}

// Result is what happened.
type Result struct {
	CameOut, Broke trial.Answer
	Hold, Drained  *trial.Interval
	HoldAt         trial.Place
	Missing        map[string]trial.Why
	Curve          *trial.Curve // its readings alone, until the whole log is read
	Values         []Value      // overrun
	Findings       []trial.Finding
}

// judge weighs one trial's cells.
type judge struct {
	s           *scheme.Scheme
	seen        *Seen
	target      float64 // minute at which drainage counts
	cloggedSaid bool    // that results are logged though it clogged
	Result
}

// Of decides what happened in a trial. A clogged foam has no hold, no drainage and
// no breaking; that is a fact about it, not a missing number.
func Of(s *scheme.Scheme, seen *Seen, drainedAt float64) Result {
	j := &judge{s: s, seen: seen, target: drainedAt}
	seen.dropBlanks()
	j.CameOut = j.cameOut()
	j.Broke = j.broke()
	j.Hold = j.hold()
	j.Drained = j.drained()
	j.overrun()
	j.fromResults()
	j.Missing = missing(&j.Result)
	return j.Result
}

func (j *judge) at(c Cell) trial.Place { return j.s.At(c.Row, c.Col) }
func (j *judge) text(c Cell) string    { return j.s.Text(c.Row, c.Col) }
func (j *judge) say(f trial.Finding)   { j.Findings = append(j.Findings, f) }

// fromResults takes from a hold or a drainage what is said nowhere else: that the
// foam came out and did not split.
func (j *judge) fromResults() {
	if j.Broke == trial.Unknown && j.CameOut != trial.No && j.Hold != nil && j.s.TypesBreaks {
		j.Broke = trial.No
		j.say(trial.Note("not broken taken from the hold", j.HoldAt, "where a foam split, the column says so",
			"a foam with a hold is taken not to have split; add a column \"split\" with yes or no").Once())
	}
	if out := (Cell{j.seen.Row, j.s.OutColumn}); out.OK() && j.unread(out) {
		return // which is said there
	}
	if j.CameOut != trial.Unknown || j.Hold == nil && j.Drained == nil && j.Broke == trial.Unknown {
		return
	}
	j.CameOut = trial.Yes
	out := Cell{j.seen.Row, j.s.OutColumn}
	if !out.OK() {
		j.say(trial.Note("came out taken from results", j.at(out), "some trials say nothing of whether they came out",
			"a trial with a hold, a drainage or a split is taken to have come out; add a column \"came out\" with yes, partly or no").Once())
	} else if j.text(out) == "" {
		j.say(trial.Note("came out taken from results", j.at(out), "nothing is typed here, and what follows says that it came out",
			"type yes, partly or no; a trial with a hold, a drainage or a split is taken to have come out").Once())
	}
}

// The reasons for each result that is absent, shared by all trials.
var missingSets [1 << 5]map[string]trial.Why

var resultNames = [4]string{"hold_minutes", "drained_percent", "came_out", "broke"}

func init() {
	for set := range missingSets {
		why := trial.Why(set >> 4)
		for i, name := range resultNames {
			if set&(1<<i) != 0 {
				if missingSets[set] == nil {
					missingSets[set] = map[string]trial.Why{}
				}
				missingSets[set][name] = why
			}
		}
	}
}

// missing says why each absent result is absent; the map is shared and not to be
// written to.
func missing(r *Result) map[string]trial.Why {
	set := 0
	for i, absent := range [...]bool{r.Hold == nil, r.Drained == nil, r.CameOut == trial.Unknown, r.Broke == trial.Unknown} {
		if absent {
			set |= 1 << i
		}
	}
	if r.CameOut == trial.No {
		set |= int(trial.DidNotComeOut) << 4
	}
	return missingSets[set]
}

// hasNumber reports a drainage that is a number above nought.
func hasNumber(d Drain) bool { return d.High > 0 && d.Word == quantity.NoWord }

func firstNumber(drains []Drain) int { return slices.IndexFunc(drains, hasNumber) }

func bounded(v float64) bool { return !math.IsInf(v, 0) }
