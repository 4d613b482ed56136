package whole

import (
	"fmt"
	"slices"

	"foamfield/ingest/cellname"
	"foamfield/ingest/row"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Why a whole trial is set aside.
const (
	NothingRead = "neither what was in it nor what happened could be read"
	NoMix       = "nothing of what was in the mix could be read"
	NoResult    = "no result: neither hold, drainage, coming out nor splitting is logged"
	NotMade     = "it was not made"
)

// BadCell is a cell that is typed but cannot be used and leaves its trial without a
// fat percent.
type BadCell struct {
	Trial int // index in the log
	At    trial.Place
	Text  string
}

func (c *BadCell) reason() string {
	return fmt.Sprintf("no fat percent that can be used: cell %s says %s", cellname.Of(c.At.Row, c.At.Col), say.Quoted(c.Text))
}

// Unusable is why a trial cannot be used at all, "" if it can, and whether it is only for
// its mix. l is where it was read, contradicts why nothing can be built on its masses; bad
// may be nil.
func Unusable(x *trial.Trial, l *row.Line, contradicts string, bad *BadCell) (reason string, mixOpen bool) {
	mix, result := hasMix(x), hasResult(x)
	switch {
	case l.Void != "":
		return l.Void, false
	case !result && l.NotMade:
		return NotMade, false
	case !result && !mix:
		return NothingRead, false
	case !result:
		return NoResult, false
	case contradicts != "":
		return contradicts, true
	case !mix && bad != nil:
		return bad.reason(), true
	case !mix:
		return NoMix, true
	}
	return "", false
}

// hasMix reports that something is known of what was in a trial.
func hasMix(x *trial.Trial) bool {
	return x.FatPercent != nil || x.EmulsifierPercent != nil || x.EmulsifierGrams != nil || x.BlendHLB != nil || len(x.Parts) > 0
}

// hasResult reports that something is known of what happened to a trial.
func hasResult(x *trial.Trial) bool {
	return x.Hold != nil || x.Drained != nil || x.CameOut != trial.Unknown || x.Broke != trial.Unknown
}

// SetAside sets those trials aside whose fat percent waits for one cell, unless no
// trial of the log has a fat percent: then none is studied by it.
func SetAside(trials []trial.Trial, cells []BadCell) {
	if !slices.ContainsFunc(trials, func(t trial.Trial) bool { return t.Used() && t.FatPercent != nil }) {
		return
	}
	for i := range cells {
		t := &trials[cells[i].Trial]
		t.Aside, t.MixOpen = cells[i].reason(), true
	}
}
