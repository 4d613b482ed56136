package row

import (
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A kitchen that types 25 under hold and "still standing" into the notes stopped watching
// at 25: the foam held that long or longer.

var (
	stoodOn = pattern.Of(`(?i)\b(?:still (?:standing|up|there|holding|firm)|stopped (?:watching|looking|timing|there|the clock|the timer)|(?:had|have) to stop|stood longer|no longer watched|not watched (?:any )?longer|stand noch|steht noch|stand länger|nicht länger beobachtet|encore debout|tenait encore|seguía en pie|sigue en pie|ancora in piedi)\b`)
	wentOn  = pattern.Of(`(?i)\b(?:gone|fell|fallen|collapsed|sank|slumped|down|then|not still|no longer|until|till|but not|weg|zusammengefallen|nicht mehr|dann|tombé|retombé|puis|cayó|luego|caduto|poi|if|next)\b`)
	figures = pattern.Of(`\d+(?:[.,]\d+)?`)
)

// stoodByNote makes a hold a bound where the note says that the foam still stood then.
func (r *reader) stoodByNote() {
	h := &r.Seen.Hold
	m := stoodOn.FindString(r.Note)
	if m == "" || !h.OK() || h.Low != h.High {
		return
	}
	if rest := strings.Replace(r.Note, m, "", 1); wentOn.MatchString(rest) {
		return
	}
	for _, text := range figures.FindAllString(r.Note, -1) {
		if v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64); err != nil || v != h.Low {
			return // it speaks of another minute
		}
	}
	h.High = math.Inf(1)
	r.say(trial.Check("hold by its note", r.s.At(h.Row, h.Col), "the note says "+say.Quoted(r.Note)+", so the hold of "+say.Quoted(r.s.Text(h.Row, h.Col))+" is read as at least that",
		"type a plus behind the minutes if that is right, as in 25+; else change the note"))
}
