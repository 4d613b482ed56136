// Package remark hears what remarks say of a trial: that its cells are not true, and
// results that stand in a sentence.
package remark

import (
	"foamfield/ingest/pattern"
	"slices"
	"strings"

	"foamfield/ingest/event"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
)

// A remark may say that a cell of its row is not true: "forgot the GMS", "18 % cream
// instead", "hold should read 32". Nobody but its kitchen knows the row then, so it
// is set aside until the cell is corrected.

// otherThan are words that say something went into the mix otherwise than the cells
// say, where they stand with the name of something in it.
var otherThan = words(`forgot | forgotten | forget | left out | leave out | went in without | instead of | instead | in place of | by mistake | mistakenly | mixed up | mix up | swapped | swopped | were made with | was made with | turned out to be | from the wrong | wrong | didn't add | did not add | never added | never went in | not added | spilled | spilt | added twice | twice as much | double dose |
	vergessen | weggelassen | statt | anstatt | anstelle | falsch | vertauscht | verwechselt | versehentlich | verschüttet | doppelt | oublié | oubliée | oublié de mettre | au lieu de | à la place de | par erreur | inversé | inversés | renversé |
	olvidé | olvidó | olvidado | en vez de | por error | dimenticato | invece di | per errore | scambiati`)

// leftOut deny a part by its name; of water or oil they speak of the foam.
var leftOut = words(`without | ohne | sans | sin | senza`)

// later are words of a remark on what is to come: "next time without the lecithin".
var later = words(`next time | next week | next one | next batch | tomorrow | try | should try | we could | would be | maybe | perhaps | nächstes mal | nächste mal | beim nächsten | la prochaine fois | prochain essai | la próxima | la prossima volta`)

// corrects are words that say a number of the row is not the one that was meant.
var corrects = words(`should read | should have been | should say | typed wrong | mistyped | typo | was really | was actually | really was | is really | actually was | misread | read wrong | written down wrong | not the number | wrong number |
	müsste heißen | sollte heißen | eigentlich | verschrieben | tippfehler | en fait | il faut lire | erreur de frappe | faute de frappe`)

// plainWords is a text in lower case without its punctuation, blanks at both ends.
func plainWords(text string) string {
	return " " + strings.Join(strings.FieldsFunc(say.Fold(text), func(c rune) bool { return strings.ContainsRune(" .,;:!?()“”\"", c) }), " ") + " "
}

func words(list string) []string {
	out := strings.Split(strings.Join(strings.Fields(list), " "), " | ")
	for i := range out {
		out[i] = " " + strings.TrimSpace(out[i]) + " "
	}
	return out
}

// Corrects says why the cells of a row are not true by a remark on it, "" where it
// says no such thing.
func Corrects(s *scheme.Scheme, text string) (why string) {
	kind := s.Kind(text, kindOf)
	if kind == 0 {
		return ""
	}
	plain := plainWords(text)
	switch {
	case saysOfMix(s, kind, plain):
		return "the note says that something else went in"
	case kind&corrected != 0 && namesColumn(s, plain), kind&added != 0:
		return "the note says that a cell is not true"
	}
	return ""
}

// LeavesOut reports a remark that says of the mix only that something was left out.
func LeavesOut(text string) bool {
	plain, kind := plainWords(text), kindOf(text)
	return (hasAny(plain, leftOut) || kind&denies != 0) && !hasAny(plain, otherThan) && kind&^(otherMix|denies) == 0
}

// OfMix reports a remark that says that something else went into the mix than the cells say.
func OfMix(s *scheme.Scheme, text string) bool {
	return saysOfMix(s, s.Kind(text, kindOf), plainWords(text))
}

func saysOfMix(s *scheme.Scheme, kind uint8, plain string) bool {
	return kind&(otherMix|ofOne) != 0 && namesPart(s, plain) || kind&otherMix != 0 && misses(plain) || kind&denies != 0 && noEmulsifier(s, plain) ||
		kind&another != 0 && swapped(s, plain)
}

// Asks reports a remark that only asks whether a number is the right one: "should be 33?".
func Asks(s *scheme.Scheme, text string) bool {
	return strings.Contains(text, "?") && (Otherwise(text) || Doubts(text) || strings.ContainsAny(text, "0123456789")) && !OfMix(s, text) && !slices.Contains(event.Of(text), event.Void)
}

// Doubts reports a remark that says that a number is not well known.
func Doubts(text string) bool { return hasAny(plainWords(text), doubting) }

var doubting = words(`not sure | unsure | uncertain | not certain | doubtful | in doubt | guess | guessed | a guess | estimate | estimated | approx | approximate | approximately | roughly | about | maybe | perhaps | may be | might be | hard to say | hard to see | hard to read | can't read | illegible | check | recheck | probably |
	unsicher | nicht sicher | geschätzt | ungefähr | etwa | vielleicht | fraglich | unklar | schwer zu sagen | kaum lesbar | prüfen | wohl |
	pas sûr | pas sûre | incertain | estimé | estimée | environ | à peu près | peut-être | douteux | difficile à dire | à vérifier | illisible |
	no seguro | no estoy seguro | dudoso | estimado | aproximado | aproximadamente | quizá | quizás | tal vez | ilegible | comprobar | a ojo |
	non sicuro | incerto | dubbio | stimato | stimata | circa | forse | illeggibile | da verificare | a occhio |
	niet zeker | onzeker | geschat | ongeveer | misschien | twijfel | twijfelachtig | slecht leesbaar | nakijken`)

// What the words of a remark may say of its row.
const (
	otherMix uint8 = 1 << iota
	denies
	corrected
	added
	ofOne
	another
)

func kindOf(text string) (kind uint8) {
	plain := plainWords(text)
	if hasAny(plain, later) {
		return 0
	}
	for _, k := range []struct {
		kind uint8
		says bool
	}{
		{otherMix, hasAny(plain, otherThan) || hasAny(plain, leftOut)}, {denies, hasAny(plain, denying)}, {corrected, hasAny(plain, corrects) || isNot.MatchString(plain)}, {added, addsNumber.MatchString(plain)},
		{ofOne, sayNumber.MatchString(plain)}, {another, anotherPart.MatchString(plain)},
	} {
		if k.says {
			kind |= k.kind
		}
	}
	return kind
}

// denying are the words that deny an emulsifier: "no lecithin".
var denying = words(`no | kein | pas de`)

// Otherwise reports a remark on one trial or one cell that says it does not
// count or is not true.
func Otherwise(text string) bool {
	plain := plainWords(text)
	return hasAny(plain, otherThan) || hasAny(plain, leftOut) || hasAny(plain, corrects) || hasAny(plain, ofACell) || notNumber.MatchString(plain) ||
		slices.Contains(event.Of(text), event.Void)
}

// ofACell are words that correct the cell they stand at.
var ofACell = words(`mistake | typing mistake | was really | should be | each other's | the other way round | switched | not true | correct is | correction | corrected | falsch herum | fehler |
	not reliable | unreliable | not to be trusted | do not trust | don't trust | can't be right | cannot be right | nicht verlässlich | unzuverlässig | kann nicht stimmen | stimmt nicht | pas fiable | peu fiable | non fiable |
	no fiable | poco fiable | non affidabile | inaffidabile | poco affidabile | onbetrouwbaar | niet betrouwbaar | klopt niet`)

var (
	addsNumber = pattern.Of(`\b(?:add|plus|subtract|take off|minus) \d+ ?(?:min|minutes|to|g|%)\b`)                                                             // "watch started late, add 4 min"
	sayNumber  = pattern.Of(`\b(?:is|are|was|were) (?:really |only )?\d+(?: \d+)? ?(?:g|kg|grams?|%) |\d ?% ?fat\b`)                                            // "PS80 is 1.6 g", "light cream, 20 % fat"; not "butter was 4 °C"
	isNot      = pattern.Of(`\b(?:is|was|were|ist|war|est|es|è) \d+(?: \d+)?(?: ?(?:g|min|minutes|%|ml))? (?:and |und |et |y |e )?(?:not|nicht|pas|no|non) \d`) // "hold is 20, not 19"
	notNumber  = pattern.Of(`\b(?:not|was) \d`)
)

func hasAny(text string, phrases []string) bool {
	for _, p := range phrases {
		if strings.Contains(text, p) {
			return true
		}
	}
	return false
}

// namesPart reports whether a text names something in the mix of its table.
func namesPart(s *scheme.Scheme, text string) bool {
	for i := range s.Fields {
		f := &s.Fields[i]
		if f.IsAmount() && (mentions(text, f.Called()) || mentions(text, f.What.Name) || byOtherName(text, f.What.Name)) {
			return true
		}
	}
	return false
}

// byOtherName reports whether a word of a text is another name of an ingredient.
func byOtherName(text, name string) bool {
	for w := range strings.FieldsSeq(text) {
		if i, ok := ingredient.Lookup(w); ok && i.Name == name && !slices.Contains(general, w) {
			return true
		}
	}
	return false
}

// noEmulsifier reports a text that denies an emulsifier of its table: "no lecithin".
func noEmulsifier(s *scheme.Scheme, text string) bool {
	for i := range s.Fields {
		f := &s.Fields[i]
		if !f.IsAmount() || f.What.Kind != ingredient.Emulsifier && f.What.Kind != ingredient.Ionic {
			continue
		}
		for _, name := range []string{f.Called(), f.What.Name} {
			for _, no := range denying {
				if strings.Contains(text, no+say.Fold(name)+" ") {
					return true
				}
			}
		}
	}
	return false
}

// namesColumn reports whether a text names a column of numbers of its table.
func namesColumn(s *scheme.Scheme, text string) bool {
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Want != 0 && (mentions(text, f.Words) || mentions(text, f.Role.String())) {
			return true
		}
	}
	return namesPart(s, text)
}

// general are words for parts of a mix that remarks also use of the foam: "without
// shaking, oil on the plate". They count only right behind what is said of them.
var general = strings.Fields("oil fat water liquid eau huile gras wasser öl fett agua aceite grasa acqua olio grasso")

// misses reports a text that says a part of a general name was left out or another.
func misses(text string) bool {
	for _, p := range otherThan {
		for _, g := range general {
			if strings.Contains(text, p+g+" ") || strings.Contains(text, p+"the "+g+" ") {
				return true
			}
		}
	}
	return false
}

// mentions reports whether a text has a telling word of a name.
func mentions(text, name string) bool {
	for w := range strings.FieldsSeq(say.Fold(name)) {
		if len(w) >= 3 && !slices.Contains(general, w) && strings.Contains(text, " "+strings.Trim(w, "(),")+" ") {
			return true
		}
	}
	return false
}
