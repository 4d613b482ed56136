package column

import (
	"strconv"
	"strings"

	"foamfield/ingest/lexis"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// A header of what drained may say of how much foam: "drained off 50 g foam, g", "drip (% of
// 50 g)", "liquid out of 50 g (g)". The grams of foam are no minute, and no unit.

var (
	ofSample = pattern.Of(`(?i)[,\s(]*(?:\b(?:out of|off|of|from|per|in|aus|von|auf|je|pro|sur|de|pour|dans|su|per|da|por|en|sobre|uit|van|op) (?:a |each |every |einer |une )?|/ ?)(\d+(?:[.,]\d+)?) ?(g|gr|grams?|gramm|grammes?|grammi|gramos?|kg|oz|ounces?|onces?|onzas?|unzen?|lbs?|pounds?)\b(?: (?:of |de |di )?(?:the )?(?:foam|sample|schaum|mousse|espuma|schiuma|schuim|échantillon|muestra|campione))?`)
	// ofVolume is the same by volume: of such foam nobody knows the grams.
	ofVolume = pattern.Of(`(?i)[,\s(]*\b(?:out of|off|of|from|per|in|aus|von|auf|je|pro|sur|de|pour|dans|su|per|da|por|en|sobre|uit|van|op) (?:a |each |every |einer |une )?\d+(?:[.,]\d+)? ?(?:ml|cl|dl|l|cc) (?:of |de |di |d')?(?:the |la |der )?(?:foam|sample|schaum|mousse|espuma|schiuma|spuma|schuim|échantillon|muestra|campione)`)
	liquidIn = pattern.Of(`(?i)^((?:ml|cl|g) (?:(?:of|de|di|von|van) )?)?(?:liquid|serum|whey|juice|water|run[- ]?off|weep|flüssigkeit|liquide|líquido|liquido|vocht)(?: (?:lost|out|caught|collected))?\b`)
)

// ofTheFoam is what tells the liquid that drained from one that went in.
var ofTheFoam = pattern.Of(`(?i)\b(of|in|from) (the )?(foam|sample|dollop|portion)\b`)

// withoutSample is a header without the foam that its drainage is of.
func withoutSample(header string) (rest string, grams float64, ok bool) {
	if m := ofVolume.FindStringIndex(header); m != nil {
		return cutFrom(header, m[0], m[1]), 0, true
	}
	m := ofSample.FindStringSubmatchIndex(header)
	if m == nil {
		return header, 0, false
	}
	number, err := strconv.ParseFloat(strings.Replace(header[m[2]:m[3]], ",", ".", 1), 64)
	unit, known := units.Of(strings.ToLower(header[m[4]:m[5]]))
	return cutFrom(header, m[0], m[1]), unit.ToBase(lexis.Number{Value: number}), err == nil && known && number > 0
}

// cutFrom is a header without a part of it.
func cutFrom(header string, from, to int) string {
	before, after := header[:from], header[to:]
	if strings.Count(before, "(") == strings.Count(before, ")") && strings.HasPrefix(after, ")") {
		after = after[1:] // the bracket opened with what was cut
	}
	return strings.TrimSpace(before + after)
}

// SampleOf is the grams of foam that a text says something drained from.
func SampleOf(text string) (grams float64, ok bool) {
	_, grams, ok = withoutSample(text)
	return grams, ok && grams > 0
}

// ofItsSample reads a header that says of how much foam it is; false for any other.
func ofItsSample(header string) (m Meaning, ok bool) {
	rest, grams, ok := withoutSample(header)
	if !ok {
		if ok = liquidIn.MatchString(header) && ofTheFoam.MatchString(header); !ok {
			return m, false
		}
	}
	if grams == 100 && strings.Contains(header, "/") { // "g/100 g" is a unit
		if m = openPlain(header).settled(0); m.Role == DrainedAmount && m.Unit == units.PercentUnit {
			return m, true
		}
	}
	for _, text := range []string{rest, liquidIn.ReplaceAllString(rest, "${1}drained")} {
		if m = openPlain(text).settled(0); m.Role == DrainedAmount || m.Role == OilAmount {
			m.Sample = grams
			return m, true
		}
	}
	return m, false
}
