package row

import (
	"math"

	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/remark"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
)

// A kitchen that looks at a foam every few minutes writes a row a look: standing, yes,
// yes, fell. It held until the last look at which it stood, and not to the next.

// standing reads whether a foam stood at the look of this row, false where the cell
// is no such answer.
func (r *reader) standing(f *scheme.Field) bool {
	minute := r.minute()
	if math.IsNaN(minute) {
		return false
	}
	at := outcome.Measured{Reading: quantity.Reading{Low: minute, High: minute}, Cell: r.cell(f)}
	text := say.Fold(r.text(f))
	if remark.Down(text) {
		if !r.Seen.GoneBy.OK() {
			r.Seen.GoneBy = at
		}
		return true
	}
	answer, err := r.s.Reply(text)
	stands := err == nil && answer.Answer == reply.Yes
	if stands && !r.Seen.GoneBy.OK() {
		r.Seen.LastOK = at
	}
	return stands
}
