package formal

import (
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// NoAim is the kind of the question for an aim, which a class may not have been asked for.
const NoAim = "no aim"

var (
	// aimLabel are labels of an aim.
	aimLabel = pattern.Of(`(?i)^\s*(?:\d+[.)]\s*)?(?:my |our |the )?(?:aims?|goals?|(?:research )?questions?|objectives?|purpose|task|hypothes[ie]s|ziel|fragestellung|frage|aufgabe|but|objectif|objetivo|pregunta|obiettivo|scopo|domanda|doel|vraag)\s*[:?]?\s*$`)
	// aimWords are words by which an aim may be said, anywhere.
	aimWords = pattern.Of(`(?i)(\b(?:aims?|goals?|questions?|objectives?|purpose|hypothes\w+|task|to (?:find|see|test|learn|know|compare|check|show)|find out|finding out|wants? to|wanted to|looking for|trying to|which|whether|how (?:much|many|does|do|far|rich|long)|what (?:is|does|do|happens|if)|what's|(?:effects?|influence|role|impact) of|compar(?:e|es|ed|ing|ison)|versus|vs|testing|investigat\w+|best (?:hlb|blend|ratio|dose|fat|amount|mix)|ziele?|fragestellung|fragen?|aufgabe|wirkung|einfluss|welche[rs]?|vergleich\w*|ob|objectif|quel(?:le)?s?|effet|combien|trouver|comparer|objetivo|pregunta|efecto|cuánt[oa]s?|qué|cuál|comparar|obiettivo|scopo|domanda|effetto|quale|quant[oaie]|confront\w+|doel|vraag|welke?|hoeveel|vergelijk\w*|invloed|nagaan)\b|^\s*but\s*:|\?)`)
)

// askedIn are words by which a conclusion says what had been asked. That some HLB is the best one, and which
// trial had it, answers a question that nobody may have written down.
var askedIn = pattern.Of(`(?i)(\b(?:aims?|goals?|questions?|objectives?|purpose|hypothes\w+|task|to (?:find|see|test|learn|know|compare|check|show)|find out|finding out|want(?:s|ed)? to|looking for|trying to|tried to|whether|how (?:much|many|far|long)|ziele?|fragestellung|fragen?|aufgabe|ob|wollte|herausfinden|objectif|trouver|savoir|comparer|voulais|objetivo|pregunta|saber|comparar|quería|obiettivo|scopo|domanda|sapere|confrontare|volevo|doel|vraag|hoeveel|nagaan|wilde|weten)\b|\?)`)

// hasAim reports words that say, or may say, what was to be found out; of a conclusion those that speak of the
// question.
func hasAim(w *handin.Work, conclusion []trial.Place) bool {
	concluded := map[string]bool{}
	for _, p := range w.Words {
		if slices.Contains(conclusion, p.At) {
			concluded[p.Text] = true
		}
	}
	return slices.ContainsFunc(w.Everything(), func(text string) bool {
		if concluded[text] {
			return askedIn.MatchString(text)
		}
		return aimWords.MatchString(text)
	})
}
