package remark

import (
	"strconv"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A note may give the number that counts beside the one that stands in the cell: "butter was
// 190, not 280".

const (
	anAmount = `(\d+(?:[.,]\d+)?(?: ?(?:g|kg|grams?|gramm|grammes|grammi|gramos|%|min|minutes?|minuten|minuti|minutos|ml))?)`
	itIs     = `(?:\s*[:=]\s*|\s+)(?:(?:is|was|were|are|should (?:be|read|have been)|must be|has to be|is really|was really|was actually|actually|really|correct is|ist|war|waren|sollte|muss|soll|muss heißen|sollte heißen|eigentlich|est|était|doit être|en fait|es|era|fue|debe ser|è|deve essere|erano|is eigenlijk|moet zijn|waren)\s*:?\s+)?`
	notThat  = `(?:not|and not|instead of|rather than|nicht|und nicht|statt|anstatt|pas|et pas|et non|et non pas|non|e non|au lieu de|no|y no|en vez de|en lugar de|invece di|anziché|niet|en niet|in plaats van)`
	butThat  = `(?:but|sondern|mais|sino|ma|bensì|maar)`
	saysWhy  = `(?:\s*[,;(]?\s*(?:sorry|typo|typed wrong|mistyped|tippfehler|verschrieben|faute de frappe|erreur de frappe|errata|errore di battitura|tikfout))?`
	itsName  = `^(?:the |der |die |das |le |la |les |l'|el |il |lo |de |het )?([^\d:=,;]*?[^\s\d:=,;])`
	atTheEnd = `\s*[).!]*$`
)

var (
	keptFirst    = pattern.Of(itsName + itIs + anAmount + `[,;]?\s*\(?` + notThat + `\s+` + anAmount + saysWhy + atTheEnd)
	replacedHead = pattern.Of(itsName + itIs + notThat + `\s+` + anAmount + `,?\s*` + butThat + `\s+` + anAmount + saysWhy + atTheEnd)
	keptAlone    = pattern.Of(itsName + itIs + anAmount + saysWhy + atTheEnd)
)

// Replaced is what a note says of one cell of its row.
type Replaced struct {
	Name    string  // of its column, folded
	Counts  string  // the number that counts
	Instead float64 // the one it stands for; only where Both
	Both    bool
}

// ReplacedBy reads a note that is nothing but a number that counts, with its name and perhaps
// the number that does not.
func ReplacedBy(text string) (i Replaced, ok bool) {
	if !strings.ContainsAny(text, "0123456789") {
		return i, false
	}
	text = strings.TrimSpace(say.Fold(text))
	replaced := ""
	if m := keptFirst.FindStringSubmatch(text); m != nil {
		i.Name, i.Counts, replaced = m[1], m[2], m[3]
	} else if m := replacedHead.FindStringSubmatch(text); m != nil {
		i.Name, i.Counts, replaced = m[1], m[3], m[2]
	} else if m := keptAlone.FindStringSubmatch(text); m != nil {
		i.Name, i.Counts = m[1], m[2]
		return i, true
	} else {
		return i, false
	}
	replaced = strings.TrimRight(replaced, " %abcdefghijklmnopqrstuvwxyz")
	v, err := strconv.ParseFloat(strings.Replace(replaced, ",", ".", 1), 64)
	i.Instead, i.Both = v, true
	return i, err == nil
}
