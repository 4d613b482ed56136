package quantity

import (
	"fmt"
	"foamfield/ingest/event"
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
	"math"
	"slices"
	"strings"
)

// LongestCell is the most bytes a cell with a number may have; longer text is a
// note.
const LongestCell = 200

// expected says, for each dimension, what to type.
var expected = [...]struct{ what, type_ string }{
	units.Any:         {"a number", "type one number, such as 12.5"},
	units.Mass:        {"a weight", "type grams, such as 3.2"},
	units.Minutes:     {"a time", "type minutes, such as 12, >20 or 10-15"},
	units.Percent:     {"a percentage", "type percent, such as 45"},
	units.Temperature: {"a temperature", "type degrees Celsius, such as 60"},
	units.Count:       {"a count", "type a whole number, such as 4"},
	units.Plain:       {"a plain number", "type one number, such as 7.5"},
	units.Volume:      {"a volume", "type millilitres, such as 25"},
	units.Score:       {"a score", "type a number, such as 7 or 7/9"},
	units.Chargers:    {"a number of chargers", "type how many chargers, such as 2"},
	units.Length:      {"a length", "type millimetres, such as 12"},
}

// clause is one number, or two that belong together, with what is said about it.
type clause struct {
	low, high float64 // in the unit in
	in        units.Unit
	written   units.Unit // as typed
	plusMinus float64
	scale     float64
	bound     meaning // atLeast, atMost, gone or noMeaning
	approx    bool
	comma     bool
}

// reader reads one cell.
type reader struct {
	text    string
	tokens  []lexis.Token
	i       int
	want    units.Dimension
	column  units.Unit
	clauses []clause
	left    []string // words not understood
	before  bool     // some of them stand before the first number
	doubts  []string
	bound   meaning // said, but not yet of any number
	approx  bool
	between bool
	other   float64
	foreign error // a number in a unit that does not belong here, kept in case no other comes
}

func (p *reader) fail(why, cure string) error {
	return &Unreadable{Text: strings.TrimSpace(p.text), Why: why, Type: cure}
}

func (p *reader) doubt(format string, args ...any) {
	if d := fmt.Sprintf(format, args...); !slices.Contains(p.doubts, d) {
		p.doubts = append(p.doubts, d)
	}
}

// lettersForFigures is what a number typed with the letters O or l was meant to
// be, "" if it is none.
func lettersForFigures(folded string, want units.Dimension) string {
	bare := strings.TrimLeft(folded, "<>=≤≥~ ")
	if want == units.Volume || want == units.Any || len(bare) < 2 || !strings.ContainsAny(bare, "0123456789") || !strings.ContainsAny(bare, "ol") ||
		strings.Trim(bare, "0123456789.,ol") != "" {
		return ""
	}
	return strings.NewReplacer("o", "0", "l", "1").Replace(folded)
}

func parseCell(text string, want units.Dimension, unit units.Unit, comma bool) (Reading, error) {
	p := &reader{text: text, want: want, column: unit}
	if len(text) > LongestCell {
		return Reading{}, p.fail("is a long text where "+expected[want].what+" is expected", expected[want].type_+", and keep the rest for a notes column")
	}
	folded := lexis.Unquoted(lexis.Unwrap(lexis.Fold(text)))
	if r, ok := ReadWord(folded, want); ok {
		return r, nil
	}
	if strings.HasPrefix(folded, "#") {
		return Reading{}, p.fail("is a spreadsheet error", "repair the formula in that cell, or "+expected[want].type_)
	}
	if meant := lettersForFigures(folded, want); meant != "" {
		return Reading{}, p.fail("has a letter where a figure is meant", "type "+meant+" if that was it")
	}
	if p.isDate(folded) {
		return Reading{}, p.fail("is a date where "+expected[want].what+" is expected; a spreadsheet makes one of 3.5 and 10-15", expected[want].type_+", with a letter or an apostrophe before a range")
	}
	if r, ok := readStars(folded, want); ok {
		return r, nil
	}
	if r, ok := shareOf(folded); ok && want == units.Percent {
		return r, nil
	}
	if kept, replaced, ok := corrected(folded); ok {
		folded = kept
		p.doubt("the %s was taken for what it replaces", strings.TrimSpace(replaced))
	}
	p.tokens = lexis.Lex(folded, comma)
	for p.i < len(p.tokens) {
		if err := p.step(); err != nil {
			return Reading{}, err
		}
	}
	return p.finish()
}

// at returns the token n places on, a zero mark past the end.
func (p *reader) at(n int) lexis.Token {
	if p.i+n < len(p.tokens) {
		return p.tokens[p.i+n]
	}
	return lexis.Token{Kind: lexis.AMark}
}

func (p *reader) isMark(n int, text string) bool {
	t := p.at(n)
	return t.Kind == lexis.AMark && t.Text == text
}

// step reads the next clause, phrase or word.
func (p *reader) step() error {
	t := p.at(0)
	switch {
	case t.Kind == lexis.ANumber:
		return p.readClause()
	case t.Kind == lexis.ABadNumber:
		return p.fail("has points and commas that make no number", expected[p.want].type_)
	case p.isMark(0, "-") && p.at(1).Kind == lexis.ANumber && len(p.clauses) == 0:
		if !p.at(1).Glued {
			p.doubt("the dash before the number was read as a minus sign")
		}
		return p.readClause()
	}
	if p.want == units.Minutes || p.want == units.Any {
		if m, n := lexis.Match(p.tokens, p.i, func(s string) (float64, bool) { m, ok := durations[s]; return m, ok }); n > 0 {
			p.i += n
			p.add(clause{low: m, high: m, in: units.Minute, written: units.NoUnit})
			return nil
		}
	}
	if m, n := matchPhrase(p.tokens, p.i); n > 0 {
		return p.readPhrase(m, n)
	}
	p.i++
	if t.Kind == lexis.AWord {
		p.leave(t.Text)
		return nil
	}
	return p.readMark(t)
}

// leave sets a word aside.
func (p *reader) leave(word string) {
	p.left = append(p.left, word)
	p.before = p.before || len(p.clauses) == 0
}

func (p *reader) readPhrase(m meaning, n int) error {
	first := p.at(0).Text
	p.i += n
	if p.saysNothing(m, first) {
		p.leave(first)
		return nil
	}
	switch m {
	case atLeast, atMost, gone:
		return p.say(m)
	case approximate:
		p.approx = true
	case between:
		p.between = true
	case minimumWord:
		return p.fail("may mean minutes or a minimum", "type 20 for 20 minutes, or >20 for more than 20")
	case to:
		if first == "bis" && len(p.clauses) == 0 {
			p.doubt("“bis” may say that it lasted until then or was no longer watched")
		}
	}
	return nil
}

// saysNothing reports a phrase that is only a word where it stands.
func (p *reader) saysNothing(m meaning, first string) bool {
	switch m {
	case approximate:
		return p.at(0).Kind == lexis.AWord && event.Nearly(first) // 12 almost split
	case minimumWord:
		return p.at(0).Kind != lexis.ANumber
	case timesWord:
		return p.want != units.Chargers && p.want != units.Count
	case outOf, plusMinus:
		return len(p.clauses) == 0 && first != "von"
	}
	return false
}

// say notes a bound for the next number, or for the last if none follows.
func (p *reader) say(m meaning) (err error) {
	p.bound, err = p.both(p.bound, m)
	return err
}

// both is the bound of two said of one number: gone yields to the other.
func (p *reader) both(a, b meaning) (meaning, error) {
	switch {
	case a == noMeaning, a == gone && b != noMeaning:
		return b, nil
	case b == noMeaning, b == gone, a == b:
		return a, nil
	}
	return a, p.fail("says both more than and less than", expected[p.want].type_)
}

func (p *reader) readMark(t lexis.Token) error {
	switch t.Text {
	case ">", "<":
		return p.angle(t.Text)
	case "+":
		return p.plus()
	case "~":
		p.approx = true
	case "?":
		p.approx = true
		p.doubt("a question mark stands beside it")
	case ":":
		if len(p.clauses) > 0 && p.at(0).Kind == lexis.ANumber && p.want != units.Minutes && p.want != units.Any {
			return p.fail("has two numbers", expected[p.want].type_+", the one that is meant")
		}
	case ",", ";", ".", "(", ")", "[", "]", "!", "=", "..", "-", "_", "|":
	case "*", "^":
		p.doubt("a footnote mark was left aside")
	default:
		p.leave(t.Text)
	}
	return nil
}

// angle reads > and <, which behind the last number are an arrow: 12 > split.
func (p *reader) angle(sign string) error {
	switch {
	case len(p.clauses) > 0 && p.at(0).Kind != lexis.ANumber && p.at(1).Kind != lexis.ANumber:
		p.leave(sign)
		return nil
	case sign == ">":
		return p.say(atLeast)
	}
	return p.say(atMost)
}

// plus reads a plus sign that joins no numbers.
func (p *reader) plus() error {
	switch {
	case len(p.clauses) > 0:
	case p.at(0).Kind != lexis.ANumber:
		return p.fail("has a plus sign but no number", expected[p.want].type_)
	case p.want != units.Minutes:
		return nil
	default:
		p.doubt("the + before the number was read as “at least”")
	}
	return p.say(atLeast)
}

// add takes a clause with what was said before it.
func (p *reader) add(c clause) {
	c.bound, c.approx = p.bound, p.approx
	p.bound, p.approx, p.between = noMeaning, false, false
	p.clauses = append(p.clauses, c)
}

// finish makes one reading of the clauses.
func (p *reader) finish() (Reading, error) {
	switch {
	case len(p.clauses) == 0 && p.foreign != nil:
		return Reading{}, p.foreign
	case len(p.clauses) == 0:
		return p.withoutNumber()
	case p.foreign != nil:
		p.doubt("a number in another kind of unit was left aside")
	}
	last := &p.clauses[len(p.clauses)-1]
	last.approx = last.approx || p.approx
	var err error
	if last.bound, err = p.both(last.bound, p.bound); err != nil {
		return Reading{}, err
	}
	r, err := p.combine()
	if err != nil {
		return Reading{}, err
	}
	if len(p.left) > 0 {
		if said, err := p.leftovers(&r); err != nil || said {
			return r, err
		}
	}
	r.Doubt = strings.Join(p.doubts, "; ")
	if r.Low == r.High {
		r.Other = p.other
	}
	if !r.inRange() {
		return Reading{}, p.fail("is too large a number", expected[p.want].type_)
	}
	return r, nil
}

// inRange reports a number, or one bound at least, that did not overflow.
func (r Reading) inRange() bool {
	below, above := math.IsInf(r.Low, -1), math.IsInf(r.High, 1)
	return r.Low <= r.High && !math.IsInf(r.Low, 1) && !math.IsInf(r.High, -1) && !(below && above) && !math.IsInf(r.PlusMinus, 0)
}

// leftovers accounts for the words beside a number: they say what happened, or they
// change nothing, or the number is not used. It is true where they make a word of it.
func (p *reader) leftovers(r *Reading) (word bool, err error) {
	words := strings.Join(p.left, " ")
	events, unknown := event.Heard(words)
	if none := firstWord(events, event.Clogged, event.CameOutLiquid); none != NoWord && r.Low == 0 && r.High == 0 {
		*r = none.reading()
		r.Doubt = "the 0 was read as: " + none.String()
		return true, nil
	}
	switch spoon := spoonIn(p.left); {
	case spoon != units.NoUnit && r.Unit == units.NoUnit && (p.want == units.Mass || p.want == units.Volume):
		return false, p.unsized(spoon)
	case r.Low != r.High && slices.ContainsFunc(p.left, func(w string) bool { return event.Denies(w) }):
		return false, p.fail("has a bound and a denial", expected[p.want].type_)
	case wordOf()[words] == Trace:
		p.doubt("the word “%s” was left aside", words)
	case p.mayChange(events, unknown):
		number := *r
		return false, &Unreadable{Text: strings.TrimSpace(p.text), Why: "has words beside its number that may change it (" + words + ")", Type: expected[p.want].type_, Words: words, Number: &number}
	}
	r.Said = words
	return false, nil
}

// wordOfEvent is what a cell says that tells an event and no number.
var wordOfEvent = map[event.Event]Word{event.Clogged: DidNotComeOut, event.CollapsedAtOnce: AtOnce, event.CameOutLiquid: NoFoam, event.Stood: StillStanding}

// firstWord is the word of the first of some events that happened.
func firstWord(happened []event.Event, of ...event.Event) Word {
	for _, e := range of {
		if slices.Contains(happened, e) {
			return wordOfEvent[e]
		}
	}
	return NoWord
}

// mayChange reports words beside a number that leave nobody sure what it counts:
// of what or where it was taken, or something that cannot be true beside it.
func (p *reader) mayChange(events []event.Event, unknown []string) bool {
	if p.want != units.Minutes && handled(p.left) {
		return false
	}
	if slices.Contains(events, event.CameOutLiquid) || slices.ContainsFunc(p.left, func(w string) bool { return changesNumber[w] }) {
		return true
	}
	known, fitting := len(unknown) == 0, true
	switch p.want {
	case units.Minutes, units.Any:
	case units.Percent:
		known, fitting = changesNoAmount(p.left), !slices.Contains(events, event.OilLeak)
	case units.Score:
		fitting = len(events) == 0
	default:
		known, fitting = changesNoAmount(p.left), len(events) == 0
	}
	return !known || !fitting || len(events) == 0 && saidByAny(p.left)
}

// changesNumber are words that change nothing of what happened, but what a number
// beside them counts.
var changesNumber = map[string]bool{"each": true, "every": true, "more": true, "most": true, "cream": true, "fridge": true, "cold": true, "hot": true, "warm": true,
	"rest": true, "end": true, "next": true, "day": true, "morning": true, "night": true, "evening": true, "before": true}

// besideAmount are words that change no amount they stand beside.
var besideAmount = map[string]bool{"a": true, "an": true, "the": true, "of": true, "in": true, "about": true, "around": true, "exactly": true, "weighed": true,
	"measured": true, "net": true, "only": true, "just": true, "total": true, "after": true, "at": true, "read": true, "calc": true, "calculated": true, "computed": true, "hlb": true}

// changesNoAmount reports words that name an event or are besideAmount.
func changesNoAmount(words []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !besideAmount[w] && event.Named(w) == event.NoEvent })
}

// saidByAny reports words that deny or soften, with nothing said that they could.
func saidByAny(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return event.Denies(w) || event.Softens(w) })
}

// spoonIn finds the spoon among words that stand behind a number without a
// unit: "1 heaped tsp", "1 gestr. TL". The shortest names count only as the last
// word, as they are words of a language too.
func spoonIn(words []string) units.Unit {
	for i, w := range words {
		switch u, _ := units.Of(w); u {
		case units.Teaspoon, units.Tablespoon, units.Pinch:
			if len(w) > 2 || i == len(words)-1 {
				return u
			}
		}
	}
	return units.NoUnit
}

// unsized is the error of a measure without a fixed size.
func (p *reader) unsized(u units.Unit) error {
	return p.fail("is measured by "+u.String()+", which has no fixed size", "weigh it once and type the grams")
}

// withoutNumber reads what is left when a cell has words only.
func (p *reader) withoutNumber() (Reading, error) {
	word := firstWord(event.Of(p.text), event.Clogged, event.CollapsedAtOnce, event.CameOutLiquid, event.Stood)
	if word == NoWord {
		word = wordOf()[strings.Join(p.left, " ")]
	}
	if word == NoWord {
		return Reading{}, p.fail("is not "+expected[p.want].what, expected[p.want].type_)
	}
	r := word.reading()
	r.Doubt = fmt.Sprintf("“%s” was read as: %s", strings.TrimSpace(p.text), word)
	return r, nil
}

// combine joins the clauses: "ok at 10, gone at 15" is 10 to 15.
func (p *reader) combine() (Reading, error) {
	first := p.clauses[0]
	r := p.interval(first)
	for _, c := range p.clauses[1:] {
		next := p.interval(c)
		switch {
		case first.bound == atLeast && !c.openEnded() && math.IsInf(r.High, 1) && next.Low >= r.Low:
			r.High = next.High
		case first.bound == atLeast && c.openEnded(), first.bound == atMost && c.bound == atLeast:
			r.Low, r.High = math.Max(r.Low, next.Low), math.Min(r.High, next.High)
		case p.want == units.Mass && c.written == first.written:
			return r, p.fail("has two numbers", expected[p.want].type_+", the one that is meant")
		case r.near(next):
		default:
			return r, p.fail("has two numbers that say different things", expected[p.want].type_)
		}
		if r.Low > r.High || r.In != next.In {
			return r, p.fail("has two numbers that contradict each other", expected[p.want].type_)
		}
		r.Approx = r.Approx || next.Approx
	}
	return r, nil
}

// openEnded reports a clause that leaves one end open.
func (c clause) openEnded() bool { return c.bound == atLeast || c.bound == atMost }

func (r Reading) near(s Reading) bool { return near(r.Low, s.Low) && near(r.High, s.High) }

func near(a, b float64) bool { return a == b || math.Abs(a-b) <= 1e-9*math.Abs(a) }

// interval is the reading of one clause.
func (p *reader) interval(c clause) Reading {
	r := Reading{Low: c.low, High: c.high, In: c.in, Unit: c.written, PlusMinus: c.plusMinus, Scale: c.scale, Approx: c.approx, Comma: c.comma}
	if r.Low > r.High {
		r.Low, r.High = r.High, r.Low
		p.doubt("the range runs downwards: read from %s to %s", format(r.Low), format(r.High))
	}
	if c.openEnded() && (r.Low != r.High || r.PlusMinus != 0) {
		p.doubt("a bound and a range stand together: only the bound was read")
		r.PlusMinus = 0
	}
	switch c.bound {
	case atLeast:
		r.High = math.Inf(1)
	case atMost:
		r.Low = math.Inf(-1)
	}
	return r
}
