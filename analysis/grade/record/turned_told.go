package record

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// holdOfTrial is the hold of one trial in a text beside the table: "trial 5: 17 min", "K3 (17 min)",
// "Versuch 2 hielt 17 min".
var holdOfTrial = pattern.Of(`(?i)(?:^|[^\pL\d.,])((?:\pL+\.?\s*)?(?:\pL{0,3}-?\d{1,3}[a-z]?|\pL))\s*(?:[:=(]\s*)?(?:(?:it |was )?(?:held|stood|lasted|hielt|stand|tenu|a tenu|aguantó|ha tenuto|tenne|hield|stond)\s+)?(?:for |up |ca\.? |about )?(\d+(?:[.,]\d+)?)\s*min`)

// resultsToldTurned asks of a hold and what drained of one trial where a text tells its hold to be the
// number under the drainage, and each of the two would fit among the others in the other's place.
func (r *reader) resultsToldTurned(w *handin.Work, t *handin.Table) {
	hold := t.Hold()
	if hold == nil {
		return
	}
	for _, p := range w.Words {
		if p.Note != nil {
			continue
		}
		for _, m := range holdOfTrial.FindAllStringSubmatch(inMinutes(p.Text), -1) {
			found, told := w.ByID(m[1]), numberTold(m[2])
			if len(found) != 1 || found[0].Table != t {
				continue
			}
			for _, drained := range t.All(column.DrainedAmount) {
				r.turnedAsTold(t, hold, drained, found[0].Index, told, p)
			}
		}
	}
}

func (r *reader) turnedAsTold(t *handin.Table, hold, drained *handin.Column, i int, told float64, p handin.Phrase) {
	h, d := hold.Cells[i], drained.Cells[i]
	if !r.fresh(h) || !r.fresh(d) || math.Abs(d.Value-told) > 1e-9 || math.Abs(h.Value-told) < 0.51 {
		return
	}
	low, high, n := othersOf(t, hold, i)
	least, most, m := othersOf(t, drained, i)
	if n < 3 || m < 3 || !within(d.Value, low, high, 0.25) || !within(h.Value, least, most, 0.25) {
		return
	}
	words := fmt.Sprintf("%s and %s look exchanged (%s, %s): %s is told of the hold in %s. Which is which?", h.Text, d.Text, hold.Header, drained.Header, say.Quoted(p.Text), place(p.At))
	r.add(about(words, h, "exchanged cells").And(d.At), h.At, d.At)
	r.meant[h.At], r.meant[d.At] = d.Value, h.Value
}
