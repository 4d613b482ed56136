package column

import (
	"strings"

	"foamfield/ingest/pattern"
)

// Whoever lays trials out as a design may put the letter of a factor or the number of a result
// before each name: "A: fat %", "X2 = emulsifier %", "Y1: hold min".

var factorLabel = pattern.Of(`^\s*((?:(?i:factor|facteur|faktor|fattore|factor|response|réponse|respuesta|risposta|antwort|respons)\s+)?(?:[A-Z]|[XYRZxyrz]\s?_?[0-9₀-₉]{1,2}|[0-9]))\s*[:=]\s*(\S.*)$`)

// withoutFactors are headers without such labels, where two and more have one of their own before
// names that differ: the HLB of "A: HLB" and "B: HLB" is of A and of B.
func withoutFactors(headers []string) []string {
	labels, names := map[string]bool{}, map[string]bool{}
	bare := make([]string, len(headers))
	for i, h := range headers {
		bare[i] = h
		parts := groups(h)
		m := factorLabel.FindStringSubmatch(parts[len(parts)-1])
		if m == nil || Read(m[2]).Role == None {
			continue
		}
		name := strings.ToLower(Read(m[2]).Words)
		if labels[m[1]] || names[name] {
			return headers
		}
		labels[m[1]], names[name] = true, true
		parts[len(parts)-1] = m[2]
		bare[i] = strings.Join(parts, " / ")
	}
	if len(labels) < 2 {
		return headers
	}
	return bare
}
