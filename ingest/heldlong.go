package ingest

import (
	"fmt"
	"foamfield/ingest/trial"
	"math"
)

// Kitchens that watch a foam for twenty minutes write 20 for one that still
// stands. Read as the end of it, that shortens every good foam; so a pile of
// equal holds at the top is asked about.

const (
	cappedAtLeast = 5      // holds of the same largest value
	cappedShare   = 1. / 3 // of the exact holds
)

// longestHold follows the largest of the exact holds while a log is read.
type longestHold struct {
	exact   int         // exact holds in all
	minutes float64     // the largest
	equal   int         // how many are that long
	at      trial.Place // of the first of them
	stood   float64     // the latest look at which a foam still stood
	within  float64     // the latest look at which one no longer did
}

func (l *longestHold) see(i trial.Interval, at func() trial.Place) {
	v, exact := i.Exact()
	switch {
	case !exact && math.IsInf(i.High, 1):
		l.stood = max(l.stood, i.Low)
	case !exact:
		l.within = max(l.within, i.High)
	case v > l.minutes:
		l.exact, l.minutes, l.equal, l.at = l.exact+1, v, 1, at()
	default:
		l.exact++
		if v == l.minutes {
			l.equal++
		}
	}
}

// capped reports whether the largest hold looks like the end of the watch.
func (l *longestHold) capped() bool {
	return l.equal >= cappedAtLeast && float64(l.equal) >= cappedShare*float64(l.exact) && l.stood < l.minutes && l.within <= l.minutes
}

func (r *reader) sayCappedHolds() {
	l := &r.longest
	if !l.capped() {
		return
	}
	minutes := number(l.minutes)
	r.problem("holds all end alike", trial.PleaseLook, l.at,
		fmt.Sprintf("%d of %d holds are exactly %s and none is longer", l.equal, l.exact, minutes),
		fmt.Sprintf("if those foams still stood, type %s+", minutes))
}
