package remark

import (
	"foamfield/ingest/pattern"
	"strings"

	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/units"
)

const (
	amount = `((?:about |over |more than |at least |> ?|< ?|~ ?)?\d+(?:[.,]\d+)?)`
	minute = `\s*(?:min|mins|minutes|minuten|')(?:\b|$)`
)

var (
	heldFor    = pattern.Of(`(?i)\b(?:held|holds|hold|stood|stands|stand|lasted|lasts|stayed up|collapsed|fell|slumped|hielt|stand|zusammengefallen|tenu|tient|tenue)\b[^\d.;]{0,24}?` + amount + minute)
	standingAt = pattern.Of(`(?i)\bstill (?:standing|up|there|holding)\b[^\d.;]{0,16}?(\d+(?:[.,]\d+)?)`)
	drainedOf  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*%[^.;,]{0,16}?\b(?:drained|leaked|wept|liquid|serum|abgelaufen|drainé)\b|\b(?:drained|lost|leaked|wept|drainage|verlor|perdu)\b[^\d.;]{0,12}?(\d+(?:[.,]\d+)?)\s*%`)
	readAfter  = pattern.Of(`(?i)%[^.;]*?\b(?:after|at|in|nach|après|à)\s+(\d+(?:[.,]\d+)?)` + minute)
)

// Hold is the hold a sentence says, as it would be typed, "" without one.
func Hold(text string) string {
	if m := heldFor.FindStringSubmatch(text); m != nil {
		return m[1] + " min"
	}
	if m := standingAt.FindStringSubmatch(text); m != nil {
		return ">=" + m[1] + " min"
	}
	return ""
}

// Drained is what a sentence says drained, and the minute it says for it, as they
// would be typed; "" without.
func Drained(text string) (percent, minute string) {
	m := drainedOf.FindStringSubmatch(text)
	if m == nil {
		return "", ""
	}
	if at := readAfter.FindStringSubmatch(text); at != nil {
		minute = at[1]
	}
	return m[1] + m[2] + " %", minute
}

// down are the words for a foam that no longer stands.
var down = map[string]bool{}

func init() {
	for w := range strings.FieldsSeq("fell fallen down gone collapsed flat slumped no n weg gefallen zusammengefallen nein tombé tombée retombé non") {
		down[w] = true
	}
}

// Down reports a text that says a foam no longer stands.
func Down(text string) bool { return down[say.Fold(text)] }

// toMake is what is typed where a liquid was added up to a mass.
var toMake = pattern.Of(`(?i)^\s*(?:to make|make up to|made up to|up to|to|ad|q\.?\s?s\.?(?: to| ad)?|auf|bis|compléter à|qsp|hasta)\s+(\d+(?:[.,]\d+)?\s*(?:g|kg)?)\s*(?:total|in all)?$`)

// MadeTo is the grams a text says a mix was brought to.
func MadeTo(text string) (grams float64, ok bool) {
	m := toMake.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	v, err := quantity.Parse(m[1], units.Mass, units.Gram)
	grams, ok = v.Exact()
	return grams, ok && err == nil
}
