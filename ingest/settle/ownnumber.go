package settle

import (
	"strconv"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
)

// A header may say the number that counts of its ingredient: "soft wax HLB 4", "curd 12 % fat".

// byItsNumber is an ingredient nobody knows whose header says what counts here: only
// an emulsifier has an HLB, and a fat percent is all of the mix that a food changes.
func byItsNumber(header string) (i ingredient.Ingredient, ok bool) {
	i.From = fromHeader
	if ownHLB.MatchString(header) {
		i.Kind, i.HLB = ingredient.Emulsifier, hlbIn(ownHLB, header)
		return i, i.HLB != nil
	}
	if saysFatFree(header) {
		i.Kind, i.FatPercent = ingredient.Water, &ingredient.Range{}
		return i, true
	}
	if v, said := numberIn(ownFat, header); said {
		i.Kind, i.FatPercent = ingredient.Water, exactly(v)
		if v >= leastFatOfFat {
			i.Kind = ingredient.Fat
		}
		return i, v <= 100
	}
	return i, false
}

// leastFatOfFat parts a food that brings the fat from one that has some.
const leastFatOfFat = 10

// fromHeader is whose value it is that a header gives.
const fromHeader = "the header says so"

var (
	ownHLB = pattern.Of(`(?i)\bhlb[ =:]*(\d+(?:[.,]\d+)?)`)
	ownFat = pattern.Of(`(?i)(\d+(?:[.,]\d+)?) ?% ?(?:fat|fett|mg|gras)\b`)
)

// hlbIn is the HLB that a header gives in some form, nil if it gives none or no emulsifier can have it.
func hlbIn(form *pattern.Pattern, header string) *ingredient.Range {
	if v, said := numberIn(form, header); said && 0 < v && v <= ingredient.MostHLB {
		return exactly(v)
	}
	return nil
}

// numberIn is the number that a header gives in some form.
func numberIn(form *pattern.Pattern, header string) (float64, bool) {
	found := form.FindStringSubmatch(header)
	if found == nil {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(found[1], ",", ".", 1), 64)
	return v, err == nil
}

func exactly(v float64) *ingredient.Range { return &ingredient.Range{Low: v, Value: v, High: v} }

// saysFatFree reports a header that says of an ingredient that it has no fat; what is skimmed in part has.
func saysFatFree(header string) bool {
	return fatFree.MatchString(partSkimmed.ReplaceAllString(header, ""))
}

var (
	partSkimmed = pattern.Of(`(?i)\b(?:semi|half|part|partly|partially)[ -]?skimmed\b`)
	fatFree     = pattern.Of(`(?i)\b(?:fat[ -]?free|non[ -]?fat|(?:no|without|free of) fat|defatted|skimmed|fettfrei|entfettet|ohne fett|sans (?:gras|matière grasse)|sin grasa|desgrasad[oa]|senza grassi|sgrassat[oa]|vetvrij|ontvet|zonder vet)\b|\bdégraissée?(?:[^\pL]|$)|(?:^|[^\d.,])0(?:[.,]0+)? ?% ?(?:fat|mg|fett|vet|gras|grasa|grassi)\b`)
)
