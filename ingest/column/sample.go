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
	liquidIn = pattern.Of(`(?i)^(?:liquid|serum|whey|juice|water|run[- ]?off|weep|flüssigkeit|liquide|líquido|liquido)(?: (?:lost|out|caught|collected))?\b`)
)

// ofTheFoam is what tells the liquid that drained from one that went in.
var ofTheFoam = pattern.Of(`(?i)\b(of|in|from) (the )?(foam|sample|dollop|portion)\b`)

// withoutSample is a header without the foam that its drainage is of.
func withoutSample(header string) (rest string, grams float64, ok bool) {
	m := ofSample.FindStringSubmatchIndex(header)
	if m == nil {
		return header, 0, false
	}
	number, err := strconv.ParseFloat(strings.Replace(header[m[2]:m[3]], ",", ".", 1), 64)
	unit, known := units.Of(strings.ToLower(header[m[4]:m[5]]))
	before, after := header[:m[0]], header[m[1]:]
	if strings.Count(before, "(") == strings.Count(before, ")") && strings.HasPrefix(after, ")") {
		after = after[1:] // the bracket opened with what was cut
	}
	return strings.TrimSpace(before + after), unit.ToBase(lexis.Number{Value: number}), err == nil && known && number > 0
}

// SampleOf is the grams of foam that a text says something drained from.
func SampleOf(text string) (grams float64, ok bool) {
	_, grams, ok = withoutSample(text)
	return grams, ok
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
	for _, text := range []string{rest, liquidIn.ReplaceAllString(rest, "drained")} {
		if m = openPlain(text).settled(0); m.Role == DrainedAmount || m.Role == OilAmount {
			m.Sample = grams
			return m, true
		}
	}
	return m, false
}
