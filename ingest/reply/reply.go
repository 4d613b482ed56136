// Package reply reads a cell that answers a question of yes or no.
package reply

import (
	"foamfield/ingest/event"
	"foamfield/ingest/lexis"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/units"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
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

// Sense says how a reply answers. A yes or a no answers what the header asks; good
// and bad judge the foam, whatever was asked; a mark may do either, which only its
// column shows; a strength alone affirms a fault; nearly says that it did not
// quite happen.
type Sense uint8

// The senses.
const (
	NoSense  Sense = iota // a word, or what happened
	Affirms               // yes, no, partly
	Values                // Yes = good, Partly = middling, No = bad
	Marks                 // ✓, +, 1: see Mark
	Strength              // badly, very
	Nearly                // almost, not quite
)

// Reply is what a cell answers to a question of yes or no.
type Reply struct {
	Answer Answer
	Sense  Sense
	Mark   string        // of Marks, in one form: ✓ ✗ x o + - 1 0 ● ○ or a number
	Word   quantity.Word // when the cell does not answer: not measured, the same as above …
	Events []event.Event // what its words say happened
}

// affirmTexts lists the texts that answer what is asked.
var affirmTexts = map[Answer]string{
	Yes: `y|yes|yep|yeah|yes!|true|t|oui|vrai|s|sí|si|sì|verdadero|cierto|j|ja|jep|wahr|vero|fully|completely|entirely|totally yes|
		complètement|complet|complète|completo|completa|entièrement|completamente|del todo|komplett|völlig|vollständig|ganz|tutto|
		jawel|waar|volledig|helemaal|geheel`,
	Partly: `partly|partially|partial|part|half|some|somewhat|sometimes|a bit|bit|a little|little|slight|slightly|light|lightly|minor|mild|moderate|+/-|±|~|spits|spit|spat|sputters|sputtered|
		un peu|peu|en partie|partiellement|partiel|partielle|à moitié|moitié|léger|légère|légèrement|parfois|crache|
		un poco|poco|algo|en parte|parcialmente|parcial|a medias|ligero|ligera|ligeramente|a veces|escupe|
		leicht|ein bisschen|bisschen|ein wenig|wenig|etwas|teilweise|zum Teil|teils|halb|manchmal|spritzt|spuckt|
		un po'|un po|un pochino|in parte|parzialmente|parziale|a metà|leggero|leggera|leggermente|a volte|sputa|schizza|
		deels|gedeeltelijk|half|een beetje|beetje|licht|lichtjes|enigszins|soms|spettert|sputtert`,
	No: `n|no|nope|no!|false|f|none|nil|never|not|not at all|not really|non|faux|jamais|pas du tout|aucun|aucune|falso|nunca|nada|ninguno|ninguna|
		nein|nee|nie|falsch|kein|keine|keiner|nicht|gar nicht|mai|per niente|nessuno|nessuna|
		niet|nooit|geen|onwaar|helemaal niet`,
}

// valueTexts lists the texts that call a foam good or bad, whatever was asked.
var valueTexts = map[Answer]string{
	Yes: `ok|okay|o.k.|fine|good|great|perfect|excellent|lovely|nice|well|all good|all well|all fine|pass|passed|success|worked|works|no problem|no problems|no issue|no issues|no trouble|nothing wrong|not bad|beautifully|perfectly|nicely|easily|smoothly|cleanly|cleanly out|pas mal|nicht schlecht|
		👍|👌|🙂|😀|😊|😃|bien|bon|bonne|parfait|parfaite|très bien|réussi|pas de problème|aucun problème|bueno|buena|perfecto|muy bien|sin problema|sin problemas|
		gut|sehr gut|super|perfekt|prima|kein Problem|keine Probleme|alles gut|bene|buono|buona|perfetto|molto bene|nessun problema|riuscito|
		goed|prima|heel goed|perfect|gelukt|uitstekend|mooi|geen probleem|geen problemen|in orde`,
	Partly: `so-so|so so|meh|okay-ish|okish|okayish|ok-ish|average|mediocre|passable|middling|not great|medium|mouais|moyen|bof|regular|así así|mittel|mäßig|geht so|medio|così così|matig|middelmatig|redelijk|gaat wel|😐`,
	No: `bad|fail|failed|fails|failure|poor|awful|terrible|useless|rubbish|👎|🙁|☹|😞|😡|mauvais|mauvaise|raté|échec|nul|malo|mala|fallo|falló|fatal|
		schlecht|misslungen|gescheitert|cattivo|cattiva|male|fallito|pessimo|slecht|mislukt`,
}

// strengthTexts say how much of something there was, and nothing more.
const strengthTexts = `++|+++|++++|heavy|heavily|a lot|lots|lot|much|badly|very|severe|severely|strong|strongly|extremely|
	beaucoup|fort|fortement|très|mucho|mucha|bastante|muy|fuerte|viel|stark|sehr|molto|tanto|forte|veel|sterk|erg|heel|zeer`

// nearlyTexts say that something did not quite happen.
const nearlyTexts = `almost|nearly|not quite|just about|hardly|barely|presque|à peine|casi|apenas|beinahe|kaum|quasi|appena|bijna|nauwelijks|net niet`

// strengtheners stand before a word and do not turn it round.
const strengtheners = `very|completely|totally|always|really|quite|fully|perfectly|absolutely|so|too|pretty|extremely|très|toujours|complètement|tout à fait|
	muy|siempre|completamente|sehr|immer|ganz|völlig|total|molto|sempre|del tutto|heel|altijd|helemaal|zeer|erg`

// unmade are cells that say nobody looked, or nothing was made.
const unmade = `not checked|not looked at|not looked|didn't look|did not look|not sure|unsure|unclear|not tried|not attempted|didn't try|did not try|not made|not done|cancelled|
	no gas|no gas left|out of gas|ran out of gas|no siphon|no siphon left|no canister|no canister left|no charger|no chargers|no chargers left|no time|no data|
	non testé|pas testé|pas essayé|pas vérifié|pas fait|plus de gaz|no probado|sin probar|no hecho|sin gas|nicht probiert|nicht geprüft|nicht getestet|nicht gemacht|kein Gas|kein Gas mehr|
	non provato|non controllato|non fatto|senza gas|niente gas|
	niet getest|niet geprobeerd|niet gemaakt|niet bekeken|geen gas|geen gas meer`

type replyKind struct {
	answer Answer
	sense  Sense
}

var replyOf = sync.OnceValue(func() map[string]replyKind {
	m := map[string]replyKind{}
	add := func(texts string, k replyKind) {
		for _, text := range lexis.Listed(texts) {
			m[lexis.CellKey(text)] = k
		}
	}
	for _, a := range []Answer{Partly, Yes, No} {
		add(affirmTexts[a], replyKind{a, Affirms})
	}
	add(strengthTexts, replyKind{Yes, Strength})
	add(nearlyTexts, replyKind{No, Nearly})
	for _, a := range []Answer{Partly, Yes, No} {
		add(valueTexts[a], replyKind{a, Values})
	}
	return m
})

// markOf gives marks one form.
var markOf = map[string]string{"✓": "✓", "✔": "✓", "☑": "✓", "✅": "✓", "√": "✓", "v": "✓", "✗": "✗", "✘": "✗", "☒": "✗", "❌": "✗",
	"x": "x", "o": "o", "0": "0", "1": "1", "+": "+", "-": "-", "●": "●", "•": "●", "○": "○"}

var smallNumber = pattern.Of(`^\d{1,2}([.,]\d)?$`)

var (
	isUnmade     = sync.OnceValue(func() map[string]bool { return lexis.Cells(unmade) })
	strengthens  = sync.OnceValue(func() map[string]bool { return lexis.Cells(strengtheners + "|" + strengthTexts) })
	longStrength = 3 // words a strengthener may have
)

// Parse reads a cell that answers a question of yes or no; every word of it is
// accounted for, or it is an *quantity.Unreadable. What "clogged" answers depends on the
// question: it is in Events.
func Parse(text string) (Reply, error) {
	bad := &quantity.Unreadable{Text: strings.TrimSpace(text), Why: "is neither yes nor no", Type: "type yes, partly or no"}
	if len(text) > quantity.LongestCell {
		return Reply{}, bad
	}
	if plain := withoutFootnote(text); plain != text {
		if r, err := Parse(plain); err == nil {
			return r, nil
		}
	}
	k := lexis.CellKey(text)
	if r, ok := shortReply(strings.TrimSpace(text), k); ok {
		return r, nil
	}
	if r, ok := wordReply(k); ok {
		return r, nil
	}
	if r, ok, err := leadingReply(text, k); ok || err != nil {
		return r, err
	}
	switch events, sure := event.Sure(text); {
	case sure && len(events) == 1 && events[0] == event.Fine:
		return Reply{Answer: Yes, Sense: Values}, nil
	case sure && len(events) > 0:
		return Reply{Events: events}, nil
	}
	if rest, cut := withoutStrength(k); cut {
		if r, err := Parse(rest); err == nil && r.Sense != Marks && r.Word == quantity.NoWord {
			return r, nil // "very stable" is stable
		}
	}
	return Reply{}, bad
}

// withoutFootnote takes the mark of a footnote off the end of a word: "yes*".
func withoutFootnote(text string) string {
	text = strings.TrimSpace(text)
	plain := strings.TrimRight(text, "*†‡§¹²³⁴⁵⁶⁷⁸⁹")
	if r, _ := utf8.DecodeLastRuneInString(plain); !unicode.IsLetter(r) {
		return text
	}
	return plain
}

// shortReply is a cell that is one word or mark.
func shortReply(typed, k string) (Reply, bool) {
	if kind, ok := replyOf()[k]; ok {
		return Reply{Answer: kind.answer, Sense: kind.sense}, true
	}
	for _, form := range [...]string{k, lexis.Fold(typed), typed} {
		if mark, ok := markOf[form]; ok {
			return Reply{Sense: Marks, Mark: mark}, true
		}
	}
	if isUnmade()[k] {
		return Reply{Word: quantity.NotMeasured, Events: []event.Event{event.NotMade}}, true
	}
	if smallNumber.MatchString(k) {
		mark := strings.TrimSuffix(strings.TrimSuffix(strings.ReplaceAll(k, ",", "."), ".0"), ".")
		return Reply{Sense: Marks, Mark: mark}, true
	}
	return Reply{}, false
}

// wordReply is a cell that stands for no answer, or for an amount.
func wordReply(k string) (Reply, bool) {
	if k == "y/n" { // the question printed in a form, not answered
		return Reply{Word: quantity.NotMeasured}, true
	}
	r, ok := quantity.ReadWord(k, units.Count)
	if !ok {
		return Reply{}, false
	}
	switch r.Word {
	case quantity.Trace, quantity.Ring:
		return Reply{Answer: Partly, Sense: Affirms}, true
	case quantity.Puddle:
		return Reply{Answer: Yes, Sense: Affirms}, true
	case quantity.Zero:
		return Reply{Answer: No, Sense: Affirms}, true
	case quantity.NotMeasured, quantity.DidNotComeOut, quantity.NoFoam, quantity.Ditto:
		return Reply{Word: r.Word}, true
	case quantity.Overnight: // o/n, the same in French
		return Reply{Word: quantity.NotMeasured}, k == "o/n"
	}
	return Reply{}, false
}

var replyEnds = strings.NewReplacer(",", " ; ", ";", " ; ", ":", " ; ", "(", " ; ", ")", " ", " - ", " ; ", ".", " ; ", "!", " ; ", "?", " ; ", "->", " ; ", "=>", " ; ")

// leadingReply reads "yes, after straining" and "oui, un peu": the first words
// answer, a part after a yes softens it; a second answer contradicts it.
func leadingReply(text, k string) (r Reply, ok bool, err error) {
	head, tail, ended := firstWords(k)
	kind := replyOf()[head]
	switch {
	case kind.sense != Affirms && !(ended && kind.sense == Values):
		return Reply{}, false, nil
	case !ended && (kind.answer == No || event.Of(k) != nil):
		return Reply{}, false, nil // "no clog": the question decides; "not much", "no more cream": nobody knows
	}
	r = Reply{Answer: kind.answer, Sense: kind.sense}
	if second, again := replyOf()[tail]; again {
		switch {
		case second.sense != Affirms || second.answer == kind.answer:
		case kind.answer == Yes && second.answer == Partly:
			r.Answer = Partly
		default:
			return Reply{}, false, &quantity.Unreadable{Text: strings.TrimSpace(text), Why: "has two answers", Type: "type the one that counts: yes, partly or no"}
		}
		return r, true, nil
	}
	events, sure := event.Sure(tail)
	if !sure || smallNumber.MatchString(tail) { // "yes 2": of what
		return Reply{}, false, nil
	}
	r.Events = slices.DeleteFunc(events, func(e event.Event) bool { return e == event.Fine })
	return r, true, nil
}

// firstWords are those up to a mark that ends them, or else the first word.
func firstWords(k string) (head, tail string, ended bool) {
	if strings.Contains(k, "/") {
		return "", "", false
	}
	if head, tail, ended = strings.Cut(replyEnds.Replace(k), ";"); !ended {
		head, tail, _ = strings.Cut(k, " ")
		if len(head) < 2 || tail == "" { // "o gas", "s 12"
			return "", "", false
		}
	}
	return strings.TrimSpace(head), strings.Trim(tail, " ;"), ended
}

// withoutStrength takes the strengtheners off the front of a text.
func withoutStrength(k string) (rest string, cut bool) {
	words := strings.Fields(k)
	for n := min(longStrength, len(words)-1); n >= 1; n-- {
		if strengthens()[strings.Join(words[:n], " ")] {
			return strings.Join(words[n:], " "), true
		}
	}
	return k, false
}
