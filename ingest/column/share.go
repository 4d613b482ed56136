package column

import (
	"strings"
	"unicode"

	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// A share of low or high is of all emulsifiers, whether or not the header says so: "high HLB
// share %", "Anteil HLB hoch (%)"; the header may give its HLB, "high share (% of blend, HLB 14)".

var (
	sharing     = wordsIn(`share shares proportion fraction part anteil anteile quota frazione proporzione proporción porción fracción parte aandeel deel`)
	whichIs     = pattern.Of(`(?i)\b(?:that is|which is|being|qui est|que es|che è|dat is|der ist|die ist)\b`)
	emulsifying = wordsIn(`emulsifier emulsifiers emulsifying emul emuls surfactant surfactants blend mix mixture émulsifiant émulsifiants mélange emulsionante emulsionantes mezcla emulsionanti miscela
		emulgator emulgatoren emulgatormischung mischung mengsel`)
	besideShare = wordsIn(`hlb of the in with d de du des la le les l del el di della dei dello con von vom der des im mit van het in met à a al en`)
	itsHLB      = pattern.Of(`(?i)\bhlb(?:[ -]?(?:value|wert))?\s*[=:]?\s*\d+(?:[.,]\d+)?`)
	percentSign = pattern.Of(`%|(?i:\bper ?cent\b|\bprozent\b|\bpct\b)`)
)

// ofShare reads a header that says share, or which part of the emulsifier, and low or high; every word
// must be one of those.
func ofShare(header string) (Meaning, bool) {
	if !percentSign.MatchString(header) {
		return Meaning{}, false
	}
	says := whichIs.MatchString(header)
	plain := strings.ToLower(percentSign.ReplaceAllString(whichIs.ReplaceAllString(itsHLB.ReplaceAllString(header, " hlb "), " "), " "))
	of := false
	var rest []string
	for _, w := range strings.FieldsFunc(plain, func(c rune) bool { return !unicode.IsLetter(c) }) {
		switch {
		case sharing[w]:
			says = true
		case emulsifying[w]:
			of = true
		case !besideShare[w]:
			rest = append(rest, w)
		}
	}
	if !says || len(rest) != 1 || strings.ContainsFunc(plain, unicode.IsDigit) || !of && !strings.Contains(plain, "hlb") {
		return Meaning{}, false
	}
	grade, ok := lowOrHigh(rest[0])
	if !ok {
		return Meaning{}, false
	}
	return Meaning{Role: IngredientAmount, Ingredient: grade, Unit: units.PercentUnit, Basis: OfEmulsifier, Words: strings.TrimSpace(header), typed: header, sure: true}, true
}
