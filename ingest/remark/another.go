package remark

import (
	"strconv"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A note may speak of other trials than its own: "trial 3: wrong oil", "no. 4 and 5 were made
// without GMS".

var (
	ofTrials = pattern.Of(`(?i)^\s*(?:trials?|runs?|tests?|nos?\.?|nrs?\.?|#|versuche?|essais?|pruebas?|prova|prove)\s*((?:[a-z]{0,2}\d+[a-z]?)(?:\s*(?:,|/|&|\+|and|und|et|y|e|-|–|to|bis|à)\s*(?:[a-z]{0,2}\d+[a-z]?))*)\b\s*[:,–-]?\s*(.+)$`)
	firstID  = pattern.Of(`(?i)^\s*([a-z]{1,2}\d+[a-z]?)\s*(?::|(?:was|were|had|is|war|hatte|était|avait)\b)\s*(.+)$`)
	joiners  = pattern.Of(`(?i)\s*(?:,|/|&|\+|\b(?:and|und|et|y|e)\b)\s*`)
	upTo     = pattern.Of(`(?i)^(\d+)\s*(?:-|–|to|bis|à)\s*(\d+)$`)
)

// mostNamed bounds the trials that a note names as a range.
const mostNamed = 20

// OfOthers are the folded numbers of the trials that a note begins with, and what it says of
// them; none where one is no trial of the table, or is its own.
func OfOthers(note, own string, isTrial func(id string) bool) (ids []string, says string) {
	list := ""
	if m := ofTrials.FindStringSubmatch(note); m != nil {
		list, says = m[1], m[2]
	} else if m := firstID.FindStringSubmatch(note); m != nil {
		list, says = m[1], m[2]
	}
	for _, part := range strings.Split(joiners.ReplaceAllString(list, ","), ",") {
		part = say.Fold(part)
		if m := upTo.FindStringSubmatch(part); m != nil {
			from, _ := strconv.Atoi(m[1])
			to, _ := strconv.Atoi(m[2])
			if to <= from || to-from > mostNamed {
				return nil, ""
			}
			for n := from; n <= to; n++ {
				ids = append(ids, strconv.Itoa(n))
			}
			continue
		}
		ids = append(ids, part)
	}
	for _, id := range ids {
		if id == "" || id == say.Fold(own) || !isTrial(id) {
			return nil, ""
		}
	}
	return ids, says
}
