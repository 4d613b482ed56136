package sentence

import (
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"
)

// A level is named as its makings are, "P3" for P3.1 and P3.2; by the word for a level, or by its bare
// number where that is said to be the best.

var (
	levelWord  = pattern.Of(`(?i)\b(?:levels?|steps?|stufen?|niveaux?|nivel(?:es)?|livell[oi]|niveaus?|series|groups?)\s*(\d{1,2})\b`)
	bestNumber = pattern.Of(`(?i)\b(?:best|winner|optimum)\b[^.;,:()\d]{0,60}?\bis (?:the |number )?(\d{1,2}[a-z]?)\b`)
)

// levels takes the levels that are named so: a number that no unit follows.
func (n *naming) levels() {
	for _, m := range levelWord.FindAllStringSubmatch(n.s.Text, -1) {
		if len(n.work.Level(m[1])) > 0 && !unitAfter(n.s.Text, m[0]) {
			n.add(m[1], false)
		}
	}
	if m := bestNumber.FindStringSubmatch(n.s.Text); m != nil && !unitAfter(n.s.Text, m[0]) {
		n.add(m[1], false)
	}
}

// called are the trials of a name, or the makings of which it is the level.
func called(w *handin.Work, id string) []*handin.Trial {
	if found := w.ByID(id); len(found) > 0 {
		return found
	}
	return w.Level(id)
}
