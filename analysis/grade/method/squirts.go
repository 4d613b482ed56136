package method

import (
	"fmt"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// Squirts of one siphon are readings of one foam: they show how it scatters, and not what a second
// making of the formula would do. Students call them repeats.

var (
	repeatSaid = pattern.Of(`(?i)(\brepeat(s|ed|ing)?\b|\breplicat\w*|\brepetitions?|\bduplicat\w*|\btriplicat\w*|\b(?:made|did|done|tested|measured) (?:it |each |every \w+ |all )?(?:twice|two times|three times)|\bwiederhol\w*|\brépét\w*|\brépli\w*|\brepetici\w*|\brepétid\w*|\brepet\w*|\bréplicas?|\bripet\w*|\breplich\w*|\bherhal\w*)`)
	squirt     = pattern.Of(`(?i)\b(squirts?|shots?|dollops?|portions?|rosettes?|bowls?|cups?|samples?|readings?|measurements?|sprays?|servings?|presses|plates|nozzlefuls?|pulls?|doses?|spritz\w*|portionen|proben|messungen|jets?|giclées?|pressions|prises|chorros?|disparos?|raciones|muestras|spruzz\w*|porzioni|campioni|spuiten|spuitjes|porties)\b`)
	// oneSiphon is what they are all of, or how they follow each other.
	oneSiphon = pattern.Of(`(?i)\b(?:(?:the |that |from )?(?:same|one|single|a single|very same) (?:siphon|syphon|charge|canister|whipper|fill\w*|batch|bottle|mix|foam|load|can|jug)|(?:from|out of|of) (?:the |that |this |its |our )?(?:(?:charged|filled|loaded|full) )?(?:siphon|syphon|canister|whipper|bottle|same|charge)|one after (?:the )?(?:other|another)|in a row|straight after` +
		`|(?:aus|von) (?:demselben|derselben|einem|einer) (?:siphon|füllung|flasche)|hintereinander|nacheinander|(?:du|d'un) (?:même |seul )?siphon|de la même recharge|l'une? après l'autre|del? mismo sifón|de la misma carga|seguid[oa]s|uno tras otro|d[ae]llo stesso sifone|della stessa carica|di seguito|uno dopo l'altro|uit (?:dezelfde|hetzelfde|één) (?:sifon|vulling)|achter elkaar)`)
	notRepeats = pattern.Of(`(?i)(\b(?:no|not|never|none|isn't|aren't|are not|is not|nicht|keine|pas|no son|non sono|geen)\b[^.;]{0,24}\b(?:repeat\w*|repetition\w*|replicat\w*|wiederhol\w*|répét\w*|repetici\w*|ripetizion\w*|herhal\w*)|\b(?:new|fresh|own|separate|another|second|neue[rsn]?|nouve\w+|nuev\w+|nuov\w+|nieuw\w*) (?:mix\w*|charge\w*|siphon|canister|batch\w*|fill\w*|making\w*|weighing\w*|mélange|mezcla|miscela|mischung\w*|ansatz|mengsel)\b|\bmezcla nueva\b|\bweighed (?:again|anew)\b|\bfrom new\b|\bnot counted\b|\bmean of\b[^.;]*\bsquirts\b)`)
)

// squirtsAsRepeats asks of sentences that call what came out of one siphon repeats.
func squirtsAsRepeats(w *handin.Work) (out []finding.Found) {
	for _, p := range w.Words {
		if p.Note != nil {
			continue
		}
		for _, s := range sentence.Split(p.Text) {
			if repeatSaid.MatchString(s) && squirt.MatchString(s) && oneSiphon.MatchString(s) && !notRepeats.MatchString(s) {
				out = append(out, finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: squirts of one siphon are readings of one foam. A repeat is a new mix in a new charge; only that shows what two makings differ by.", say.Quoted(s)), p.At).Kinds(SquirtsAsRepeats))
				break
			}
		}
	}
	return out
}

// SquirtsAsRepeats is the kind of the question whether repeats are squirts of one siphon.
const SquirtsAsRepeats = "squirts as repeats"

// CallsSquirtsRepeats reports a work that says so in a sentence.
func CallsSquirtsRepeats(w *handin.Work) bool { return len(squirtsAsRepeats(w)) > 0 }

// NoRepeats reports a text which says that squirts are no repeats, or that a repeat was a new mix.
func NoRepeats(text string) bool { return notRepeats.MatchString(text) }

// SaysRepeated reports a text that calls something repeated, and does not say of what is none.
func SaysRepeated(text string) bool {
	return repeatSaid.MatchString(text) && !notRepeats.MatchString(text)
}

// OfSquirts reports a text that speaks of squirts.
func OfSquirts(text string) bool { return squirt.MatchString(text) }
