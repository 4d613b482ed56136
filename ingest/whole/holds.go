package whole

import (
	"fmt"
	"math"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Kitchens that watch a foam for twenty minutes write 20 for one that still stands.
// Read as the end of it, that shortens every good foam; so a pile of equal holds at
// the top is asked about.

const (
	cappedAtLeast = 5      // holds of the same largest value
	cappedShare   = 1. / 3 // of the exact holds
)

// Holds follows the largest of the exact holds while a log is read.
type Holds struct {
	exact   int         // exact holds in all
	minutes float64     // the largest
	equal   int         // how many are that long
	at      trial.Place // of the first of them
	stood   float64     // the latest look at which a foam still stood
	within  float64     // the latest look at which one no longer did
}

// See takes the hold of one more trial, which stands at a place.
func (l *Holds) See(x *trial.Trial, at trial.Place) {
	if x.Hold == nil {
		return
	}
	v, exact := x.Hold.Exact()
	switch {
	case !exact && math.IsInf(x.Hold.High, 1):
		l.stood = max(l.stood, x.Hold.Low)
	case !exact:
		l.within = max(l.within, x.Hold.High)
	case v > l.minutes:
		l.exact, l.minutes, l.equal, l.at = l.exact+1, v, 1, at
	default:
		l.exact++
		if v == l.minutes {
			l.equal++
		}
	}
}

// Capped asks about the largest hold where it looks like the end of the watch.
func (l *Holds) Capped() []trial.Finding {
	if l.equal < cappedAtLeast || float64(l.equal) < cappedShare*float64(l.exact) || l.stood >= l.minutes || l.within > l.minutes {
		return nil
	}
	minutes := say.Number(l.minutes)
	return []trial.Finding{trial.Check("holds all end alike", l.at, fmt.Sprintf("%d of %d holds are exactly %s and none is longer", l.equal, l.exact, minutes),
		fmt.Sprintf("if those foams still stood, type %s+", minutes))}
}
