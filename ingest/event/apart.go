package event

import (
	"foamfield/ingest/lexis"
	"slices"
	"sync"
)

// Verbs of which a part may stand some words later: "kam nur teilweise heraus", "came only
// partly out". The part is read beside its verb where the words between say how much or how well.

const (
	partedVerbs = `came|comes|come|kam|kommt|kamen|ging|geht|lief|kwam|komt|kwamen`
	partedEnds  = `out|heraus|raus|eruit|aus dem Siphon|uit de sifon`
)

var (
	partedVerb = sync.OnceValue(func() map[string]bool { return lexis.Cells(partedVerbs) })
	partedEnd  = sync.OnceValue(func() map[string]bool {
		ends := map[string]bool{}
		for _, text := range lexis.Listed(partedEnds) {
			ends[lexis.PhraseKey(text)] = true
		}
		return ends
	})
)

// mostBetween are the words that may stand between a verb and its part.
const mostBetween = 4

// rejoined is a text with the parts of its verbs beside them.
func rejoined(tokens []lexis.Token) []lexis.Token {
	for i := range tokens {
		if tokens[i].Kind != lexis.AWord || !partedVerb()[tokens[i].Text] {
			continue
		}
		end, n := i+1, 0
		for end < len(tokens) && end <= i+1+mostBetween && tokens[end].Kind == lexis.AWord {
			if _, n = lexis.Match(tokens, end, func(text string) (bool, bool) { return true, partedEnd()[text] }); n > 0 {
				break
			}
			end++
		}
		if n > 0 && end > i+1 && howMuch(tokens[i+1:end]) {
			part := slices.Clone(tokens[end : end+n])
			tokens = slices.Insert(slices.Delete(tokens, end, end+n), i+1, part...)
		}
	}
	return tokens
}

// cameInPart reports the verb just passed without its part, of what came in part: "came partly",
// "in part came".
func (h *hearing) cameInPart(verb string) bool {
	if !partedVerb()[verb] {
		return false
	}
	next := h.i
	for next < len(h.tokens) && isOnly()[h.tokens[next].Text] {
		next++
	}
	v, n := matchSaid(h.tokens, next)
	return n > 0 && v.event == PartlyOut || len(h.events) > h.from && h.events[len(h.events)-1] == PartlyOut && next == len(h.tokens)
}

// howMuch reports words each of which says how much came or how well.
func howMuch(tokens []lexis.Token) bool {
	for i := 0; i < len(tokens); {
		v, n := matchSaid(tokens, i)
		if more, k := matchSaid(tokens, i+n); n > 0 && v.denies && k > 0 && more.wholly {
			i += n // "kam nicht ganz heraus"
			continue
		}
		switch {
		case n > 0 && (v.wholly || v.event == PartlyOut || v.event == Fine || v.event == CameOut):
			i += n
		case n == 0 && isOnly()[tokens[i].Text]:
			i++
		default:
			return false
		}
	}
	return true
}

// onlys stand before a part: "nur teilweise".
const onlys = `only|just|nur|bloß|bloss|seulement|solo|sólo|solamente|soltanto|slechts|alleen|maar`

var isOnly = sync.OnceValue(func() map[string]bool { return lexis.Cells(onlys) })

// wholes say that it was all of it; denied, that it was a part: "pas complètement sorti".
const wholes = `full|complete|complet|complète|completo|completa|intera|intero|compleet|completely|fully|entirely|totally|wholly|complètement|entièrement|totalement|tout entier|completamente|del todo|totalmente|enteramente|por completo|vollständig|komplett|völlig|vollkommen|ganz|alles|interamente|tutto|tutta|tout|toute|helemaal|volledig|geheel`

// notAtAll are denials of which a word alone would say that a part came.
const notAtAll = `not at all|pas du tout|gar nicht|überhaupt nicht|ganz und gar nicht|gar nichts|para nada|per niente|per nulla|affatto|helemaal niet|helemaal niets|totaal niet`
