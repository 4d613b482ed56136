package row

import (
	"regexp"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A remark may say that a cell of its row is not true: "forgot the GMS", "18 % cream
// instead", "hold should read 32". Nobody but its kitchen knows the row then, so it
// is set aside until the cell is corrected.

// otherThan are words that say something went into the mix otherwise than the cells
// say, where they stand with the name of something in it.
var otherThan = words(`forgot | forgotten | forget | left out | leave out | went in without | without | instead of | instead | in place of | by mistake | mistakenly | mixed up | mix up | swapped | swopped | were made with | was made with | turned out to be | in fact | from the wrong | wrong | didn't add | did not add | never added | never went in | not added | spilled | spilt | added twice | twice as much | double dose |
	vergessen | weggelassen | ohne | statt | anstatt | anstelle | falsch | vertauscht | verwechselt | versehentlich | verschüttet | doppelt | oublié | oubliée | oublié de mettre | sans | au lieu de | à la place de | par erreur | inversé | inversés | renversé |
	olvidé | olvidó | olvidado | sin | en vez de | por error | dimenticato | senza | invece di | per errore | scambiati`)

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

// correction sets the trial aside if a remark says that its cells are not true.
func (r *reader) correction(text string, at outcome.Cell) {
	kind := r.s.Kind(text, kindOf)
	if kind == 0 {
		return
	}
	plain := plainWords(text)
	switch {
	case kind&(otherMix|ofOne) != 0 && r.namesPart(plain), kind&denies != 0 && r.noEmulsifier(plain):
		r.asideFor("the note says that something else went in", text, at)
	case kind&corrected != 0 && r.namesColumn(plain), kind&added != 0:
		r.asideFor("the note says that a cell is not true", text, at)
	}
}

// What the words of a remark may say of its row.
const (
	otherMix uint8 = 1 << iota
	denies
	corrected
	added
	ofOne
)

func kindOf(text string) (kind uint8) {
	plain := plainWords(text)
	for _, k := range []struct {
		kind uint8
		says bool
	}{
		{otherMix, hasAny(plain, otherThan)}, {denies, hasAny(plain, denying)}, {corrected, hasAny(plain, corrects)}, {added, addsNumber.MatchString(plain)},
		{ofOne, sayNumber.MatchString(plain)},
	} {
		if k.says {
			kind |= k.kind
		}
	}
	return kind
}

// denying are the words that deny an emulsifier: "no lecithin".
var denying = words(`no | kein | pas de`)

func (r *reader) asideFor(why, text string, at outcome.Cell) {
	if r.Void != "" {
		return
	}
	r.Void = why + ": " + say.Quoted(text)
	r.say(trial.Check("corrected by its note", r.s.At(at.Row, at.Col), say.Quoted(text)+": "+why+", so the trial is set aside",
		"correct the cell that it speaks of and take these words away; then the trial counts"))
}

// Told takes what a comment on a cell, or a line beside the table, says of this one
// trial.
func (l *Line) Told(text string, at trial.Place) {
	switch {
	case l.Void != "":
	case SaysOtherwise(text):
		why := "a remark says that it does not count, or that a cell of it is not true"
		l.Void = why + ": " + say.Quoted(text)
		l.Findings = append(l.Findings, trial.Check("corrected by its note", l.At, say.Quoted(text)+" at "+at.String()+": the trial is set aside",
			"correct the cell that it speaks of and take these words away; then the trial counts"))
	default:
		l.Findings = append(l.Findings, trial.Check("remark on a trial", l.At, say.Quoted(text)+" at "+at.String()+" speaks of this trial and was not used",
			"type what it says into the cells of the trial, or into its note"))
	}
}

// SaysOtherwise reports a remark on one trial or one cell that says it does not
// count or is not true.
func SaysOtherwise(text string) bool {
	plain := plainWords(text)
	return hasAny(plain, otherThan) || hasAny(plain, corrects) || hasAny(plain, ofACell) || notNumber.MatchString(plain) ||
		slices.Contains(quantity.Events(text), quantity.Void)
}

// ofACell are words that correct the cell they stand at.
var ofACell = words(`mistake | typing mistake | was really | should be | each other's | the other way round | switched | not true | correct is | correction | corrected | falsch herum | fehler`)

var (
	addsNumber = regexp.MustCompile(`\b(?:add|plus|subtract|take off|minus) \d+ ?(?:min|minutes|to|g|%)\b`) // "watch started late, add 4 min"
	sayNumber  = regexp.MustCompile(`\b(?:is|are|was|were) (?:really |only )?\d|\d ?% ?fat\b|\bhlb \d`)     // "PS80 is 1.6 g", "light cream, 20 % fat"
	notNumber  = regexp.MustCompile(`\b(?:not|was) \d`)
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
func (r *reader) namesPart(text string) bool {
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
		if f.IsAmount() && (mentions(text, f.Called()) || mentions(text, f.What.Name) || r.byOtherName(text, f.What.Name)) {
			return true
		}
	}
	return false
}

// byOtherName reports whether a word of a text is another name of an ingredient.
func (r *reader) byOtherName(text, name string) bool {
	for w := range strings.FieldsSeq(text) {
		if i, ok := ingredient.Lookup(w); ok && i.Name == name {
			return true
		}
	}
	return false
}

// noEmulsifier reports a text that denies an emulsifier of its table: "no lecithin".
func (r *reader) noEmulsifier(text string) bool {
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
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
func (r *reader) namesColumn(text string) bool {
	for i := range r.s.Fields {
		if f := &r.s.Fields[i]; f.Want != 0 && (mentions(text, f.Words) || mentions(text, f.Role.String())) {
			return true
		}
	}
	return r.namesPart(text)
}

// mentions reports whether a text has the first telling word of a name.
func mentions(text, name string) bool {
	for w := range strings.FieldsSeq(say.Fold(name)) {
		if len(w) >= 3 && strings.Contains(text, " "+strings.Trim(w, "(),")+" ") {
			return true
		}
	}
	return false
}
