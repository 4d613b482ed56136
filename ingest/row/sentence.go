package row

import (
	"fmt"
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Some kitchens log what happened in a sentence: "came out fine, held 19 min, 12.9 %
// drained after 20 min". Where no column has the hold or what drained, the sentence
// is read for it, and that is said.

// sentence reads the hold and what drained out of the text of a result.
func (r *reader) sentence(f *scheme.Field, text string) {
	if r.s.Find(column.Hold) == nil && r.s.Find(column.GoneBy) == nil && r.s.Find(column.HoldOver) == nil {
		if typed := remark.Hold(text); typed != "" {
			r.heard(f, "the hold", typed, units.Minutes, &r.Seen.Hold)
		} else if v, err := quantity.Parse(text, units.Minutes, units.NoUnit); err == nil && v.Word == quantity.NoWord && v.Unit.Dimension() == units.Minutes {
			r.heard(f, "the hold", text, units.Minutes, &r.Seen.Hold) // "18 min"
		}
	}
	if r.s.Find(column.DrainedAmount) != nil {
		return
	}
	if percent, minute := remark.Drained(text); percent != "" {
		d := outcome.Drain{Minute: math.NaN()}
		r.heard(f, "what drained", percent, units.Percent, &d.Measured)
		if v, err := quantity.Parse(minute, units.Minutes, units.Minute); err == nil && minute != "" {
			d.Minute = v.Low
		}
		if d.Measured.OK() {
			r.Seen.Drains = append(r.Seen.Drains, d)
		}
	}
}

// heard keeps a number of a sentence and says it.
func (r *reader) heard(f *scheme.Field, what, typed string, want units.Dimension, into *outcome.Measured) {
	v, err := quantity.Parse(typed, want, units.NoUnit)
	if err != nil || v.Word != quantity.NoWord {
		return
	}
	*into = outcome.Measured{Reading: v, Cell: r.cell(f)}
	r.say(trial.Check("read from a sentence", r.at(f), fmt.Sprintf("%s is taken from the sentence: %s", what, say.Quoted(typed)),
		"type it into a column of its own, such as \"hold min\" or \"drained % at 20 min\"").Once())
}
