package column

import (
	"foamfield/ingest/pattern"
	"strconv"
	"strings"
)

// A header of what drained may say of how much foam: "drained off 50 g foam, g", "drip (% of
// 50 g)", "liquid out of 50 g (g)". The grams of foam are no minute, and no unit.

var (
	ofSample = pattern.Of(`(?i)[,\s(]*\b(?:(?:out of|off|of|from|per|aus|von|auf|je|pro|sur|de|su|per|por|pour|da) (?:a |each |every |einer |une )?)(\d+(?:[.,]\d+)?) ?(?:g|grams?|gramm|grammes)\b(?: (?:of )?(?:the )?(?:foam|sample|schaum|mousse|espuma|schiuma))?`)
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
	grams, err := strconv.ParseFloat(strings.Replace(header[m[2]:m[3]], ",", ".", 1), 64)
	before, after := header[:m[0]], header[m[1]:]
	if strings.Count(before, "(") == strings.Count(before, ")") && strings.HasPrefix(after, ")") {
		after = after[1:] // the bracket opened with what was cut
	}
	return strings.TrimSpace(before + after), grams, err == nil && grams > 0
}

// ofItsSample reads a header that says of how much foam it is; false for any other.
func ofItsSample(header string) (m Meaning, ok bool) {
	rest, grams, ok := withoutSample(header)
	if !ok {
		if ok = liquidIn.MatchString(header) && ofTheFoam.MatchString(header); !ok {
			return m, false
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
