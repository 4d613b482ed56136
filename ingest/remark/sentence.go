package remark

import (
	"slices"
	"strings"

	"foamfield/ingest/event"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/units"
)

const (
	amount  = `(\d+(?:[.,]\d+)?(?:\s*(?:-|–|to|bis|à|a|tot|or|ou|oder|o|of)\s*\d+(?:[.,]\d+)?)?\s*\+?)`
	minutes = `(?:min|mins|minutes?|minuten|minuti|minutos|minuut|')`
	minute  = `\s*` + minutes + `(?:[^\pL\d]|$)`
	// duration is a time with its unit, or an hour in words.
	duration = `(` + amount + `\s*(?:(?:` + minutes + `|sec|secs|seconds?|sek|sekunden|secondes|segundos|secondi|seconden|s)(?:\s*\d+\s*(?:s|sec|seconds|sek)?)?|(?:h|hrs?|hours?|std|stunden?|heures?|horas?|ore|ora|uur)(?:\s*\d+(?:\s*` + minutes + `)?)?)|(?:half an|an|one) hour|une (?:demi-)?heure|eine (?:halbe )?stunde|una hora|media hora|un'ora|mezz'ora|een (?:half )?uur)` + orMore + `(?:[^\pL\d]|$)`
	orMore   = `(\s*\+|\s+(?:(?:or|and) (?:more|longer|over)|plus|ou plus|et plus|oder (?:mehr|länger)|und mehr|o más|y más|o più|e oltre|of (?:meer|langer)|en meer))?`
	held     = `held|holds|hold|stood|stands|stand|lasted|lasts|stayed up|collapsed|fell|slumped|` +
		`hielt|hält|gehalten|stand|steht|standzeit|zusammengefallen|gefallen|eingefallen|tenu|tient|tenue|tombée?|retombée?|effondrée?|` +
		`aguantó|aguanta|aguante|duró|dura|se mantuvo|cayó|bajó|tenuta|tenuto|tiene|durata|durato|crollata|crollato|caduta|smontata|hield|houdt|stond|bleef staan|ingezakt|zakte in`
	drained = `drained|leaked|wept|weep|drip|dripped|liquid|serum|lost|drainage|abgelaufen|ausgetreten|verlor|flüssigkeit|abgetropft|` +
		`drainé|drainée|perdu|exsudat|exsudé|égoutté|liquide|drenó|drenado|perdió|escurrió|exudado|suero|drenato|perso|trasudato|siero|uitgelekt|lekte|verloren|verloor|vocht`
)

var (
	heldFor    = pattern.Of(`(?i)(?:^|[^\pL])(?:` + held + `)((?:[^\d.;,\pL][^\d.;]{0,24}?)?)` + duration)
	standingAt = pattern.Of(`(?i)\bstill (?:standing|up|there|holding)\b[^\d.;]{0,16}?(\d+(?:[.,]\d+)?)`)
	drainedOf  = pattern.Of(`(?i)` + amount + `\s*%[^.;,]{0,16}?(?:^|[^\pL])(?:` + drained + `)(?:[^\pL]|$)|(?:^|[^\pL])(?:` + drained + `)((?:[^\d.;,\pL][^\d.;]{0,16}?)?)` + amount + `\s*%`)
	readAfter  = pattern.Of(`(?i)%[^.;]*?(?:^|[^\pL])(?:after|at|in|nach|après|à|a los|tras|dopo|a|na)\s+(\d+(?:[.,]\d+)?)` + minute)
)

// Hold is the hold a sentence says, as it would be typed, "" without one.
func Hold(text string) string {
	if m := heldFor.FindStringSubmatch(text); m != nil {
		if m[len(m)-1] != "" || slices.Contains(event.Of(text), event.Stood) {
			return ">=" + strings.TrimSpace(m[2])
		}
		return bounded(m[1], strings.TrimSpace(m[2]), units.Minutes)
	}
	if m := standingAt.FindStringSubmatch(text); m != nil {
		return ">=" + m[1] + " min"
	}
	return ""
}

// bounded puts before an amount what bounds it of the words that stand there: "on the spoon
// over" 30 min.
func bounded(before, amount string, want units.Dimension) string {
	words := strings.Fields(before)
	for i := range words {
		typed := strings.Join(words[i:], " ") + " " + amount
		if v, err := quantity.Parse(typed, want, units.NoUnit); err == nil && v.Word == quantity.NoWord {
			return typed
		}
	}
	return amount
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
	return bounded(m[2], m[1]+m[3]+" %", units.Percent), minute
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
