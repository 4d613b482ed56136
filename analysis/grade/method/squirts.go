package method

import (
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

// What comes out of one siphon one after the other is one mix, judged several times. Students call it
// repeats.

var (
	aRepeat  = pattern.Of(`(?i)(\brepeat(s|ed|ing)?\b|\brepetitions?\b|\breplicat\w*|\bwiederhol\w*|\brépét\w*|\brépli\w*|\brepetici\w*|\brépetid\w*|\bréplica\w*|\bripet\w*|\breplich\w*|\bherhal\w*)`)
	aSquirt  = `(?:squirts?|shots?|dollops?|portions?|rosettes?|bowls?|cups?|samples?|readings?|measurements?|pulls?|jets?|doses?|spritzer|portionen|proben|messungen|pressions|portions|prises|chorros?|disparos?|raciones|muestras|spruzzi|porzioni|campioni|porties|spuitjes)`
	oneOf    = `(?:the same|one(?: and the same)?|a single|that|this|our|the|derselben|demselben|einer?|einem|la même|même|mismo|un seul|le même|une seule|la misma|el mismo|un solo|una sola|lo stesso|la stessa|un unico|dezelfde|hetzelfde|één)`
	filled   = `(?:(?:charged|filled|loaded|full) )?(?:siphons?|syphons?|canisters?|whippers?|bottles?|charges?|fills?|fillings?|mix|batch|füllung|flasche|recharge|sifón|carga|mezcla|sifone|carica|miscela|sifon|vulling|mengsel)`
	fromOne  = pattern.Of(`(?i)\b` + aSquirt + `\b[^.;]{0,25}\b(?:from|out of|of|aus|von|du|de|d'|del|dello|della|dal|uit|van)\s+` + oneOf + `\s+` + filled + `\b`)
	together = pattern.Of(`(?i)\b` + aSquirt + `\b[^.;]{0,40}\b(?:one after (?:the other|another)|in a row|straight after each other|hintereinander|nacheinander|à la suite|l'une? après l'autre|seguid[oa]s|uno tras otro|di seguito|uno dopo l'altro|achter elkaar)\b`)
	newMix   = pattern.Of(`(?i)(\b(?:new|fresh|another|second|separate|own) (?:mix|batch|weighing|charge|siphon|canister)|\bweighed (?:again|anew)\b|\bfrom new\b|\bno repeats?\b|\bnot? (?:a |real |true |independent )?(?:repeats?|replicates?)\b|\bneue?n? (?:mischung|ansatz)|\bnouveau mélange|\bmezcla nueva|\bnuova miscela|\bnieuw mengsel)`)
)

// squirtsAsRepeats asks of sentences that call what came out of one siphon repeats.
func squirtsAsRepeats(w *handin.Work) (out []finding.Found) {
	for _, p := range w.Words {
		for _, s := range sentence.Split(p.Text) {
			if !aRepeat.MatchString(s) || newMix.MatchString(s) || !fromOne.MatchString(s) && !together.MatchString(s) {
				continue
			}
			out = append(out, finding.New(criteria.Repeats, graded.Method, "Squirts of one siphon are one mix, judged several times: they show how well you judge, and not what two makings of the formula differ by. Was the formula weighed and charged again?", p.At).Kinds(TwiceInARow))
			break
		}
	}
	return out
}
