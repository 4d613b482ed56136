package handin

import (
	"slices"
	"strings"

	"foamfield/ingest/pattern"
)

// A level is what several trials are makings of, and what their names have in common: 4a and 4b are
// makings of 4, P3.1 and P3.2 of P3, E2-1 and E2-2 of E2.

var (
	makingLetter = pattern.Of(`^[-. ]?[a-f]$`)
	makingNumber = pattern.Of(`^[-._/ ][1-9]$`)
	levelWord    = pattern.Of(`(?i)^\s*(?:levels?|stufen?|niveaux?|nivel(?:es)?|livell[oi]|niveaus?|steps?|mix(?:es)?|blends?|recipes?|formulas?|foams?)\s+`)
)

// Level are the trials that are makings of what a name says; none where a trial has that very name, or
// where there is but one.
func (w *Work) Level(name string) []*Trial { return LevelIn(w.Tables, name) }

// LevelIn is the same in some tables.
func LevelIn(tables []*Table, name string) (out []*Trial) {
	key := IDKey(levelWord.ReplaceAllString(name, ""))
	if key == "" {
		return nil
	}
	var ids []string
	for _, t := range tables {
		for _, x := range t.Trials {
			id := IDKey(x.ID)
			rest, ok := strings.CutPrefix(id, key)
			switch last := key[len(key)-1]; {
			case id == key:
				return nil
			case !ok || !makingNumber.MatchString(rest) && !(last >= '0' && last <= '9' && makingLetter.MatchString(rest)):
				continue
			}
			if out = append(out, x); !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	if len(ids) < 2 {
		return nil
	}
	return out
}
