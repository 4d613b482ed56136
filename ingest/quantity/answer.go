package quantity

import (
	"strings"
	"sync"
)

// Answer is yes, partly or no.
type Answer uint8

// The answers.
const (
	NoAnswer Answer = iota
	Yes
	Partly
	No
)

// String is the answer as a word, "" for NoAnswer.
func (a Answer) String() string { return [...]string{"", "yes", "partly", "no"}[a] }

// answerTexts lists the texts of each answer. A cross is a mark in a box: yes.
// Severities are answers to "did it?": a bit is partly, a lot is yes.
var answerTexts = map[Answer]string{
	Yes: `y|yes|yep|yeah|yes!|x|true|t|1|✓|✔|☑|✅|√|o|oui|vrai|s|sí|si|sì|verdadero|cierto|j|ja|jep|wahr|vero|v|
		+++|++++|heavy|heavily|a lot|lots|lot|much|badly|bad|completely|fully|totally|total|very|severe|strong|always|
		beaucoup|fort|fortement|complètement|très|tout|mucho|mucha|bastante|completamente|del todo|fuerte|viel|stark|komplett|völlig|ganz|sehr|
		molto|tanto|forte|tutto`,
	Partly: `partly|partially|partial|part|half|some|somewhat|sometimes|a bit|bit|a little|little|slight|slightly|light|lightly|minor|mild|medium|moderate|+|++|+/-|±|~|spits|spit|spat|sputters|sputtered|almost|nearly|hardly|y/n|
		un peu|peu|en partie|partiellement|partiel|à moitié|moitié|léger|légère|légèrement|parfois|crache|moyen|presque|
		un poco|poco|algo|en parte|parcialmente|parcial|a medias|ligero|ligera|ligeramente|a veces|escupe|medio|casi|
		leicht|ein bisschen|bisschen|ein wenig|wenig|etwas|teilweise|zum Teil|teils|halb|manchmal|spritzt|spuckt|mittel|fast|
		un po'|un po|un pochino|in parte|parzialmente|parziale|a metà|leggero|leggera|leggermente|a volte|sputa|schizza|medio|quasi`,
	No: `n|no|nope|no!|false|f|0|✗|✘|☒|❌|none|nil|never|not|not at all|no problem|non|faux|jamais|pas du tout|aucun|aucune|falso|nunca|nada|ninguno|ninguna|
		nein|nee|nie|falsch|kein|keine|keiner|nicht|gar nicht|mai|per niente|nessuno|nessuna`,
}

var answerOf = sync.OnceValue(func() map[string]Answer {
	m := make(map[string]Answer)
	for _, a := range []Answer{Partly, Yes, No} {
		for _, text := range listed(answerTexts[a]) {
			m[answerKey(text)] = a
		}
	}
	return m
})

func answerKey(text string) string { return keyFolded(unwrap(fold(text))) }

// ParseAnswer reads a yes/no cell. A cell that does not answer gives NoAnswer
// and the Word it says (not measured, did not come out, no foam, the same as
// above); one that is neither is an *Unreadable. What "clogged" answers depends
// on the question: see Events.
func ParseAnswer(text string) (Answer, Word, error) {
	if len(text) <= longestCell {
		k := answerKey(text)
		if a, ok := answerOf()[k]; ok {
			return a, NoWord, nil
		}
		if r, ok := readWord(k, Count); ok {
			switch r.Word {
			case Trace, Ring:
				return Partly, NoWord, nil
			case Puddle:
				return Yes, NoWord, nil
			case Zero:
				return No, NoWord, nil
			case NotMeasured, DidNotComeOut, NoFoam, Ditto:
				return NoAnswer, r.Word, nil
			case Overnight: // o/n: the question printed in a form, not answered
				if k == "o/n" {
					return NoAnswer, NotMeasured, nil
				}
			}
		}
		if a := leadingAnswer(k); a != NoAnswer {
			return a, NoWord, nil
		}
		if r, err := Parse(k, Count, NoUnit); err == nil {
			switch v, exact := r.Exact(); {
			case exact && v == 0:
				return No, NoWord, nil
			case exact && v == 1:
				return Yes, NoWord, nil
			}
		}
	}
	return NoAnswer, NoWord, &Unreadable{Text: strings.TrimSpace(text), Why: "is neither yes nor no", Type: "type yes, partly or no"}
}

// leadingAnswer reads "yes, after straining" and "oui, un peu": the first words
// answer, a severity after a yes softens it.
func leadingAnswer(k string) Answer {
	head, tail, found := strings.Cut(strings.NewReplacer(",", " ; ", ";", " ; ", ":", " ; ", "(", " ; ", ")", " ", " - ", " ; ", ".", " ; ").Replace(k), ";")
	if !found {
		head, tail, _ = strings.Cut(k, " ")
		if len(head) < 2 {
			return NoAnswer // "o gas", "s 12"
		}
	}
	head, tail = strings.TrimSpace(head), strings.TrimSpace(tail)
	a := answerOf()[head]
	if a == Yes && answerOf()[tail] == Partly {
		return Partly
	}
	if !found && Events(k) != nil {
		return NoAnswer // "no clog": the question decides
	}
	return a
}
