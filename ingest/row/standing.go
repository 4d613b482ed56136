package row

import (
	"math"
	"strings"

	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
)

// A kitchen that looks at a foam every few minutes writes a row a look: standing, yes,
// yes, fell. It held until the last look at which it stood, and not to the next.

// down are the words for a foam that no longer stands.
var down = map[string]bool{}

func init() {
	for w := range strings.FieldsSeq("fell fallen down gone collapsed flat slumped no n weg gefallen zusammengefallen nein tombé tombée retombé non") {
		down[w] = true
	}
}

// standing reads whether a foam stood at the look of this row, false where the cell
// is no such answer.
func (r *reader) standing(f *scheme.Field) bool {
	minute := r.minute()
	if math.IsNaN(minute) {
		return false
	}
	at := outcome.Measured{Reading: quantity.Reading{Low: minute, High: minute}, Cell: r.cell(f)}
	text := say.Fold(r.text(f))
	if down[text] {
		if !r.Seen.GoneBy.OK() {
			r.Seen.GoneBy = at
		}
		return true
	}
	reply, err := r.s.Reply(text)
	if err != nil || reply.Answer != quantity.Yes {
		return false
	}
	if !r.Seen.GoneBy.OK() {
		r.Seen.LastOK = at
	}
	return true
}
