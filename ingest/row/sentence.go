package row

import (
	"fmt"
	"math"
	"regexp"

	"foamfield/ingest/column"
	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// Some kitchens log what happened in a sentence: "came out fine, held 19 min, 12.9 %
// drained after 20 min". Where no column has the hold or what drained, the sentence
// is read for it, and that is said.

const (
	amount = `((?:about |over |more than |at least |> ?|< ?|~ ?)?\d+(?:[.,]\d+)?)`
	minute = `\s*(?:min|mins|minutes|minuten|')(?:\b|$)`
)

var (
	heldFor    = regexp.MustCompile(`(?i)\b(?:held|holds|hold|stood|stands|stand|lasted|lasts|stayed up|collapsed|fell|slumped|hielt|stand|zusammengefallen|tenu|tient|tenue)\b[^\d.;]{0,24}?` + amount + minute)
	standingAt = regexp.MustCompile(`(?i)\bstill (?:standing|up|there|holding)\b[^\d.;]{0,16}?(\d+(?:[.,]\d+)?)`)
	drainedOf  = regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)\s*%[^.;,]{0,16}?\b(?:drained|leaked|wept|liquid|serum|abgelaufen|drainé)\b|\b(?:drained|lost|leaked|wept|drainage|verlor|perdu)\b[^\d.;]{0,12}?(\d+(?:[.,]\d+)?)\s*%`)
	readAfter  = regexp.MustCompile(`(?i)%[^.;]*?\b(?:after|at|in|nach|après|à)\s+(\d+(?:[.,]\d+)?)` + minute)
)

// sentence reads the hold and what drained out of the text of a result.
func (r *reader) sentence(f *scheme.Field, text string) {
	at := r.cell(f)
	if r.s.Find(column.Hold) == nil && r.s.Find(column.GoneBy) == nil && r.s.Find(column.HoldOver) == nil {
		if m := heldFor.FindStringSubmatch(text); m != nil {
			r.heard(f, "the hold", m[1]+" min", quantity.Minutes, &r.Seen.Hold)
		} else if m := standingAt.FindStringSubmatch(text); m != nil {
			r.heard(f, "the hold", ">="+m[1]+" min", quantity.Minutes, &r.Seen.Hold)
		}
	}
	if r.s.Find(column.DrainedAmount) != nil {
		return
	}
	if m := drainedOf.FindStringSubmatch(text); m != nil {
		d := outcome.Drain{Minute: math.NaN()}
		r.heard(f, "what drained", m[1]+m[2]+" %", quantity.Percent, &d.Measured)
		if m := readAfter.FindStringSubmatch(text); m != nil {
			if v, err := quantity.Parse(m[1], quantity.Minutes, quantity.Minute); err == nil {
				d.Minute = v.Low
			}
		}
		if d.Measured.OK() {
			d.Cell = at
			r.Seen.Drains = append(r.Seen.Drains, d)
		}
	}
}

// heard keeps a number of a sentence and says it.
func (r *reader) heard(f *scheme.Field, what, typed string, want quantity.Dimension, into *outcome.Measured) {
	v, err := quantity.Parse(typed, want, quantity.NoUnit)
	if err != nil || v.Word != quantity.NoWord {
		return
	}
	*into = outcome.Measured{Reading: v, Cell: r.cell(f)}
	r.say(trial.Check("read from a sentence", r.at(f), fmt.Sprintf("%s is taken from the sentence: %s", what, say.Quoted(typed)),
		"type it into a column of its own, such as \"hold min\" or \"drained % at 20 min\"").Once())
}
