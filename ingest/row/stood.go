package row

import (
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/event"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// A kitchen that types 25 under hold and "still standing" into the notes stopped watching
// at 25: the foam held that long or longer.

var (
	stoodOn = pattern.Of(`(?i)\b(?:still (?:standing|up|there|holding|firm)|stopped (?:watching|looking|timing|there|the clock|the timer)|(?:had|have) to stop|stood longer|no longer watched|not watched (?:any )?longer|stand noch|steht noch|stand länger|nicht länger beobachtet|encore debout|tenait encore|seguía en pie|sigue en pie|ancora in piedi)\b`)
	wentOn  = pattern.Of(`(?i)\b(?:gone|fell|fallen|collapsed|sank|slumped|down|then|not still|no longer|until|till|but not|weg|zusammengefallen|nicht mehr|dann|tombé|retombé|puis|cayó|luego|caduto|poi|if|next)\b`)
	figures = pattern.Of(`\d+(?:[.,]\d+)?`)
)

// stoodByNote makes a hold a bound where the note says that the foam still stood then, or that
// the watch was started late or early.
func (r *reader) stoodByNote() { r.boundedBy(r.s, r.Note, "the note") }

// boundedBy makes a hold a bound by what somebody says of it.
func (l *Line) boundedBy(s *scheme.Scheme, text, whose string) (ok bool) {
	h := &l.Seen.Hold
	if !h.OK() || h.Low != h.High {
		return false
	}
	longer, shorter := event.Clock(text)
	m := stoodOn.FindString(text)
	if m == "" && !longer && !shorter || m != "" && wentOn.MatchString(strings.Replace(text, m, "", 1)) {
		return false
	}
	for _, said := range figures.FindAllString(text, -1) {
		if v, err := strconv.ParseFloat(strings.Replace(said, ",", ".", 1), 64); err != nil || v != h.Low {
			return false // it speaks of another minute
		}
	}
	as, mark := "at least", "type a plus behind the minutes if that is right, as in 25+"
	if h.High = math.Inf(1); shorter && m == "" {
		h.Low, h.High = 0, h.Low
		as, mark = "at most", "type a < before the minutes if that is right, as in <25"
	}
	l.Findings = append(l.Findings, trial.Check("hold by its note", s.At(h.Row, h.Col), whose+" says "+say.Quoted(text)+", so the hold of "+say.Quoted(s.Text(h.Row, h.Col))+" is read as "+as+" that",
		mark+"; else change what it says"))
	return true
}
