package row

import (
	"math"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/outcome"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// colours takes what the colours of a row say of its trial. It comes before the cells, so
// that what is typed wins; colours that contradict each other say nothing.
func (r *reader) colours(n int) {
	colours, cols := r.s.ColoursOf(n)
	out := map[bool]bool{}
	for _, c := range colours {
		for _, e := range c.Events {
			switch e {
			case event.CameOut, event.PartlyOut, event.Broke:
				out[true] = true
			case event.Clogged:
				out[false] = true
			}
		}
	}
	if len(colours) > 1 && len(out) > 1 {
		r.say(trial.Fix("colours disagree", r.s.At(n, cols[1]), "the cells of this row have the colours of "+say.Quoted(colours[0].Text)+" and of "+say.Quoted(colours[1].Text)+", so neither is taken",
			"type what happened into a column of its own, such as \"came out\""))
		return
	}
	for i, c := range colours {
		at := outcome.Cell{Row: n, Col: cols[i]}
		for _, e := range c.Events {
			if e == event.Void {
				r.void(r.s.At(n, cols[i]), "its colour says that it does not count: "+say.Quoted(c.Text))
			}
		}
		r.addEvents(slices.DeleteFunc(slices.Clone(c.Events), func(e event.Event) bool { return e == event.Void }), at, false)
	}
}

// stoodByColour makes a hold a bound where the colour of its row says that the foam still
// stood then.
func (r *reader) stoodByColour(n int) {
	colours, cols := r.s.ColoursOf(n)
	for i, c := range colours {
		h := &r.Seen.Hold
		if f := r.s.Field(cols[i]); c.Stood && h.OK() && h.Low == h.High && f != nil && (f.Role == column.Hold || f.Role == column.TrialID) {
			h.High = math.Inf(1)
			r.say(trial.Note("hold by its colour", r.s.At(h.Row, h.Col), "the colour says "+say.Quoted(c.Text)+", so the hold is read as at least that",
				"nothing to do; type a plus behind the minutes to be sure").Once())
		}
	}
}
