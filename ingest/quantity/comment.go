package quantity

import (
	"strconv"
	"strings"

	"foamfield/ingest/lexis"
	"foamfield/ingest/pattern"
)

// A comment at a cell may say which number was meant to stand there: "should read 27", "typo, it
// was 2.0 g". Nobody needs the kitchen for that row then.

const aNumber = `(\d+(?:[.,]\d+)?(?: ?(?:%|g|gr|grams?|kg|ml|min|mins|minutes|minuten|minuti|minutos)\b)?)`

var (
	// readsAs is said of what is written, and of no plan: a cell that "should be 3 g" may lack
	// what went in.
	readsAs = pattern.Of(`\b(?:should (?:have )?(?:read|say|said)|(?:to be )?read as|(?:correct|right|true|real)(?: value| number| figure)?(?: is| was|:)|corrected(?: value)?(?: to| is)?|` +
		`soll(?:te)? (?:heissen|lauten)|muss(?:te)? (?:heissen|lauten)|richtig(?: ist| war| ware)?|korrigiert(?: auf)?|il faut lire|lire|a lire|corrige(?: en)?|debe(?:ria)? (?:decir|poner)|lease|corregido(?: a)?|` +
		`dovrebbe dire|si legga|leggere|corretto(?: in)?|lees|gecorrigeerd(?: naar)?) ?[:=]? ?` + aNumber)
	really = pattern.Of(`\b(?:really|actually|in fact|eigentlich|tatsachlich|en fait|en realite|en realidad|in realta|eigenlijk)(?: it)?(?: was| were| is| war| waren| ist| etait| est| era| es| e)? ?[:=]? ?` + aNumber +
		`|\b(?:was|were|is|war|waren|ist|etait|est|era|es) (?:really|actually|in fact|eigentlich|tatsachlich|en fait|en realidad|in realta|eigenlijk) ` + aNumber)
	// slips own up to a number typed wrong; what it was, or is to be, is then the number meant.
	slips = pattern.Of(`\b(?:typo|typing (?:error|mistake|slip)|typed wrong|wrongly typed|mistyped|misread|misreading|digits? (?:swapped|switched|transposed|reversed)|swapped digits|wrong number|written down wrong|` +
		`tippfehler|schreibfehler|verschrieben|vertippt|zahlendreher|falsch abgelesen|faute de frappe|erreur de (?:frappe|saisie|lecture)|chiffres inverses|errata|error (?:de tecleo|al (?:escribir|teclear)|de lectura)|cifras (?:cambiadas|invertidas)|` +
		`errore di (?:battitura|lettura)|refuso|cifre (?:invertite|scambiate)|typfout|tikfout|schrijffout|cijfers (?:omgedraaid|verwisseld))\b`)
	// A bare "was 25" may be what stood there before.
	meant = pattern.Of(`(?:\b(?:it|this|that|they|he|we) (?:was|were|is|are|meant)|\b(?:should be|should have been|meant|es (?:war|waren|ist|sind)|soll sein|sollte sein|gemeint(?: war| waren)?|c'etait|c'est|devrait etre|deberia ser|dovrebbe essere|het (?:was|is)|moet zijn|bedoeld)|\bfor|[:=-]|>) ?` + aNumber)
	// rather puts it against the number that is typed: "27, not 72".
	rather = pattern.Of(aNumber + `,? (?:and |und |et |y |e |en )?(?:not|nicht|pas|no|non|niet) ` + aNumber)

	// unsure are also words of what is to come.
	unsure  = pattern.Of(`\?|\b(?:next (?:time|week|one|batch)|tomorrow|nachstes mal|prochaine fois|proxima vez|prossima volta|volgende keer|maybe|perhaps|probably|possibly|i think|i guess|might|could|about|roughly|vielleicht|wohl|vermutlich|glaube|peut-etre|sans doute|je crois|quizas?|tal vez|creo|forse|credo|misschien|waarschijnlijk|denk)\b`)
	figures = pattern.Of(`\d+(?:[.,]\d+)?`)
)

// Meant is the number, with its unit, that a comment at a cell of a number says was meant there,
// "" where it says none or another number as well.
func Meant(comment string, typed float64) string {
	text := strings.Join(strings.Fields(lexis.Fold(comment)), " ")
	if unsure.MatchString(text) {
		return ""
	}
	found := ""
	switch {
	case readsAs.MatchString(text):
		found = readsAs.FindStringSubmatch(text)[1]
	case really.MatchString(text):
		m := really.FindStringSubmatch(text)
		found = m[1] + m[2]
	case rather.MatchString(text):
		if m := rather.FindStringSubmatch(text); numberOf(m[2]) == typed {
			found = m[1]
		}
	case slips.MatchString(text):
		if m := meant.FindStringSubmatch(text); m != nil {
			found = m[1]
		}
	}
	if found == "" || numberOf(found) == typed {
		return ""
	}
	for _, other := range figures.FindAllString(text, -1) {
		if v := numberOf(other); v != typed && v != numberOf(found) {
			return ""
		}
	}
	return found
}

// numberOf is the number a text begins with.
func numberOf(text string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(figures.FindString(text), ",", ".", 1), 64)
	return v
}
