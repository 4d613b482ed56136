package column

import (
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// Read reads one header. A group header above it is joined in front by the
// caller with " / ", a units row behind it in brackets. What the header alone
// leaves open (French "note" or Italian "note") is in Doubt; ReadAll settles it
// by the other headers.
//
// Every word is accounted for: it is the name of the column, a unit, a basis, a
// minute, a scale, or one of the listed words that stand beside a name. A header
// with any other word has no role.
func Read(header string) Meaning { return open(header).settled(0) }

// open reads a header with its groups; several meanings are left in could.
func open(header string) Meaning {
	if len(header) > maxHeader {
		return Meaning{Words: header}
	}
	header = meanOf.ReplaceAllString(header, "${1}mean$3")
	header = scoreFrom.ReplaceAllString(header, "$1-$2")
	header = in100g.ReplaceAllString(parts100.ReplaceAllString(header, "g per 100 g "), "g per 100 g$1")
	if plain := dayForm.ReplaceAllString(header, ""); plain != header && openPlain(plain).Role == Day {
		return openPlain(plain)
	}
	if m, ok := ofItsSample(header); ok {
		return m
	}
	if m, ok := ofRatio(header); ok {
		return m
	}
	if m, ok := ofShare(header); ok {
		return m
	}
	if m, ok := ofPhases(header); ok {
		return m
	}
	if m, ok := ofViscosity(header); ok {
		return m
	}
	return openPlain(header)
}

// dayForm is in which order a day is written: "(ISO)", "dd.mm.yyyy".
var dayForm = pattern.Of(`(?i)\s*[(\[]?\b(?:ISO(?: ?8601)?|(?:[djgtm]{1,2}[-./ ]){2}[yja]{2,4}|[yja]{4}[-./ ][m]{1,2}[-./ ][djgt]{1,2})\b[)\]]?`)

// parts100 are parts in a hundred, as bakers count: "parts per 100 parts fat".
var parts100 = pattern.Of(`(?i)\b(?:parts?|teile?|parties?|partes?|parti|delen|deel)\s*(?:per|in|/|to|auf|pro|pour|por|su|op)\s*(?:a\s+)?(?:100|hundred|hundert|cent|cien|cento|honderd)\s*(?:(?:parts?|teile?|parties?|partes?|parti|delen)\b\s*)?(?:of\s+|de\s+|di\s+|van\s+)?(?:the\s+)?`)

// in100g are grams in 100 g, in other words than per.
var in100g = pattern.Of(`(?i)\bg(?:rams?)?\s*(?:in|je|pro|pour|por|su|op|auf)\s*100\s*g\b(\W)?`)

// scoreFrom is a scale that says what it is: "creaminess (score 1 to 9)".
var scoreFrom = pattern.Of(`(?i)\b(?:scored?|scale|rated|note|punkte|skala|échelle|escala|scala|schaal)\s+(?:from |of |von |de |da |van )?([01])\s*(?:to|-|–|bis|à|a|tot)\s*(\d{1,3})\b`)

// meanOf is a mean with what it was taken of, which says nothing more: "mean of A and B", "moyenne
// des deux siphons".
var meanOf = pattern.Of(`(?i)(^|[^\pL])(mean|average|avg\.?|median|moyenne|médiane|mittel(?:wert)?|durchschnitt|schnitt|media|promedio|mediana|gemiddelde)\s+(?:of|over|from|von|aus|der|über|de|des|du|sur|di|dei|delle|van|entre)` +
	`(?:[\s,&+/-]+(?:the|die|der|den|les|los|las|le|i|de|het|two|three|four|both|all|zwei|drei|vier|beiden?|allen?|deux|trois|quatre|dos|tres|cuatro|ambos|due|tre|quattro|entrambi|twee|drie|vier|beide|alle|` +
	`[A-D]|\d{1,2}|siphons?|sifon(?:s|es|i|en)?|sifón|readings?|squirts?|shots?|repeats?|replicates?|runs?|trials?|makings?|cups?|messungen|wiederholungen|ablesungen|mesures|répétitions|essais|lectures|medidas|repeticiones|lecturas|misure|ripetizioni|letture|prove|metingen|herhalingen|and|und|et|y|e|en|to|bis|à|a|tot))+([^\pL\d]|$)`)

// shearRate is at which a viscosity was measured: "at 20 s-1", "50 1/s".
var shearRate = pattern.Of(`(?i)(?:\b(?:at|bei|à|a|op)\s+|@\s*)?\d+(?:[.,]\d+)?\s*(?:s\s*\^?\s*[-−–⁻]\s*[1¹]|s⁻¹|1\s*/\s*s\b|/\s*s\b)`)

// ofViscosity reads a viscosity without the rate of shear it was measured at.
func ofViscosity(header string) (Meaning, bool) {
	at := shearRate.FindStringIndex(header)
	if at == nil {
		return Meaning{}, false
	}
	m := openPlain(strings.TrimRight(header[:at[0]], " ,;") + header[at[1]:])
	return m, m.Role == Measure
}

// openPlain reads a header that says nothing of the foam that something is of.
func openPlain(header string) Meaning {
	parts := groups(header)
	if len(parts) > 1 && !(IsGroup(parts[0]) && readPart(parts[1]).empty) { // not "FORMULA / g"
		if whole := readPart(header); whole.sure && len(whole.could) > 0 && len(whole.left) == 0 && whole.Doubt == "" && !(whole.Can(IngredientFat) && isPhase(parts[0])) && !isTitle(parts[0]) &&
			!(IsGroup(parts[0]) && (misfit(whole) || namedBelow(parts, whole))) && // "Foam / drained %" is no foam put to drain
			!whole.Can(TrialID) && // "Foam card / trial" is of one thing twice
			!((whole.Role == Note || whole.Role == Result) && saysElse(parts, whole.Role)) {
			return whole
		}
	}
	m := readPart(parts[len(parts)-1])
	for i := len(parts) - 2; i >= 0; i-- {
		m = m.under(readPart(parts[i]), parts[i])
	}
	return m
}

// saysElse reports a header that says by itself what was measured or seen of a foam, and is no
// note or result in words: "Observations / came out".
func saysElse(parts []string, role Role) bool {
	own := readPart(parts[len(parts)-1])
	return own.sure && len(own.left) == 0 && own.Role >= Hold && own.Role <= Result && own.Role != Mouthfeel && own.Role != role
}

// namedBelow reports a header that means by itself what it means with its title: "Mix / fat %".
func namedBelow(parts []string, whole Meaning) bool {
	own := readPart(parts[len(parts)-1])
	return own.sure && len(own.left) == 0 && own.Role == whole.Role && len(own.beside) < len(whole.beside)
}

func isTitle(group string) bool {
	_, ok := readPart(group).asTitle()
	return ok
}

// misfit reports a unit that the role cannot have.
func misfit(m Meaning) bool {
	d := m.Unit.Dimension()
	return d != units.Any && len(roles[m.Role].takes) > 0 && !m.Role.Takes(d)
}

// groups are the parts of a header between its " / ", none of which is inside brackets.
func groups(header string) []string {
	parts := strings.Split(header, " / ")
	for i := 0; i < len(parts); {
		if i+1 < len(parts) && strings.Count(parts[i], "(") > strings.Count(parts[i], ")") {
			parts[i] += " / " + parts[i+1]
			parts = slices.Delete(parts, i+1, i+2)
			continue
		}
		i++
	}
	return parts
}

// reader takes a header apart: core is what is left to name the column.
type reader struct {
	header    string
	v         *vocabulary
	core      []token
	extra     [][]token // bracketed texts that are not all unit, basis, minute, scale or modifier
	loose     []token   // a bracketed basis without %: "(oil)"
	mods      []modifier
	whole     []token // core and number of modifiers before words were peeled off
	wholeMods int
	could     []entry
	m         Meaning
}

// readPart reads a header without group.
func readPart(header string) Meaning {
	r := &reader{header: header, v: vocab()}
	r.brackets(tokens(header))
	r.joinBrackets()
	r.strip()
	if len(r.could) == 0 && r.m.Role == None && len(r.core) > 0 {
		r.search()
	}
	r.m.Words, r.m.typed = r.words(), strings.TrimSpace(header)
	r.m.empty = len(r.core) == 0 && len(r.extra) == 0
	if len(r.could) > 0 && !r.weighed() {
		r.choose()
	}
	r.bracketsLeft()
	r.unknownName()
	r.m = r.m.share()
	r.m.beside = r.mods
	return r.m
}

// weighed takes a word of no use to a log for the ingredient that goes by it in another tongue, where
// a unit of mass stands beside: nobody weighs a room, but room.
func (r *reader) weighed() bool {
	if r.m.Unit.Dimension() != units.Mass || slices.ContainsFunc(r.could, func(e entry) bool { return e.role != Unused }) || !r.ingredient() {
		return false
	}
	r.could = nil
	return true
}

// joinBrackets puts the words of brackets behind the core where they make one
// header text together: "hold (fridge)".
func (r *reader) joinBrackets() {
	if len(r.extra) == 0 {
		return
	}
	behind := 0 // what of the core stands behind the brackets: "emulsifier (low + high) g"
	for behind < len(r.core) && r.core[behind].from < r.extra[0][0].from {
		behind++
	}
	with := r.core[:behind:behind]
	for _, g := range r.extra {
		with = append(with, g...)
	}
	lettered := len(with) == behind+1 && isLetter(r.header, with[behind]) && behind > 0 && r.v.namesEmulsifier(r.header[r.core[0].from:r.core[behind-1].to]) // "emulsifier (B)"
	if lettered || r.v.exact(append(with, r.core[behind:]...)) != nil || r.v.exact(with) != nil {
		r.core, r.extra = append(with, r.core[behind:]...), nil
	}
}

// isLetter reports a capital letter alone.
func isLetter(header string, t token) bool {
	text := header[t.from:t.to]
	return len(text) == 1 && text >= "A" && text <= "Z"
}

// words are the header's words without unit, basis and minute, and without
// those that change nothing.
func (r *reader) words() string {
	ts := r.core[:len(r.core):len(r.core)]
	for _, b := range r.mods {
		if len(r.core) == 0 || b.sense&(meant|another|perhaps|reversing|summing|joint) != 0 {
			ts = append(ts, b.tokens...)
		}
	}
	return raw(r.header, ts)
}

// choose keeps of the meanings of the words those that fit the unit, a scale,
// an offered yes or no, and a "not".
func (r *reader) choose() {
	all := r.could
	r.m.could = fitting(spelt(all, raw(r.header, r.core)), r.m.Unit.Dimension())
	if r.m.OutOf > 0 && r.m.Can(Score) {
		r.m.could = []entry{{role: Score, lang: all[0].lang}}
	}
	turned := func(e entry) bool { return e.reversed }
	if r.m.YesNo || slices.ContainsFunc(r.mods, func(b modifier) bool { return b.sense&reversing != 0 }) {
		if own := only(r.m.could, turned); len(own) > 0 {
			r.m.could = own
		}
	} else if own := only(r.m.could, func(e entry) bool { return !turned(e) }); len(own) > 0 {
		r.m.could = own
	}
	r.m.sure = !r.m.Fuzzy
	for _, e := range r.m.could {
		r.m.lang |= e.lang
	}
	r.m = r.m.as(r.m.could[0])
}

func only[T any](es []T, keep func(T) bool) []T {
	var out []T
	for _, e := range es {
		if keep(e) {
			out = append(out, e)
		}
	}
	return out
}

// brackets takes out bracketed texts that say unit, basis, minute, scale or
// modifier; the words of others are extra.
func (r *reader) brackets(ts []token) {
	for i := 0; i < len(ts); i++ {
		if !strings.Contains("([{", ts[i].text) {
			if !strings.Contains(")]},", ts[i].text) || ts[i].text == "," && i+1 < len(ts) {
				r.core = append(r.core, ts[i])
			}
			continue
		}
		end := i + 1
		for end < len(ts) && !strings.Contains(")]}", ts[end].text) {
			end++
		}
		if inside := ts[i+1 : end]; !r.aside(inside) {
			r.extra = append(r.extra, inside)
		}
		i = end
	}
}

// aside reads a bracketed text: a unit, a basis, a minute, a scale, yes/no, a
// modifier, or several of these.
func (r *reader) aside(ts []token) bool {
	if len(ts) > 3 && saysByMass(ts) && strings.Contains(r.header, "%") { // "% (m/m of mix)"
		ts = ts[3:]
	}
	if len(ts) == 0 || r.unit(ts) || r.scale(ts) || r.yesNo(ts) || r.offered(ts) {
		return true
	}
	if b, ok := r.v.basisOf(ts); ok {
		if r.m.Unit.Dimension() != units.Percent {
			r.loose = ts
		}
		r.m.Basis = b
		return true
	}
	return r.asidePieces(ts)
}

// asidePieces reads a bracketed text piece by piece from both ends; nothing of it
// counts where a piece is left.
func (r *reader) asidePieces(ts []token) bool {
	save, mods := r.m, r.mods
	for len(ts) > 0 {
		if n := r.tail(ts, true); n > 0 {
			ts = ts[:len(ts)-n]
		} else if b, ok := r.modifierAt(ts, len(ts)-1, true); ok {
			r.mods, ts = append(r.mods, b), ts[:len(ts)-len(b.tokens)]
		} else if b, ok := r.modifierAt(ts, 0, false); ok {
			r.mods, ts = append(r.mods, b), ts[len(b.tokens):]
		} else if r.unit(ts[:1]) || removable(ts[0]) {
			ts = ts[1:]
		} else {
			r.m, r.mods = save, mods
			return false
		}
	}
	return true
}

// strip takes units, bases, minutes and modifiers off the ends of the core until
// what is left is in the table of words or of ingredients.
func (r *reader) strip() {
	r.whole, r.wholeMods = r.core, len(r.mods)
	for len(r.core) > 0 {
		if p := r.exact(r.core); p != nil {
			r.could = p.entries
			return
		}
		if len(r.core) > 1 && r.unit(r.core) { // the group "g per kg"
			r.core, r.whole, r.wholeMods = nil, nil, len(r.mods)
			break
		}
		if n := r.tail(r.core, false); n > 0 {
			r.core = r.core[:len(r.core)-n]
			r.whole, r.wholeMods = r.core, len(r.mods)
			continue
		}
		if n := r.head(r.core); n > 0 {
			r.core = r.core[n:]
			r.whole, r.wholeMods = r.core, len(r.mods)
			continue
		}
		r.looseBasis()
		if r.minutesOf() {
			return
		}
		if r.peel(nothing | another) {
			continue
		}
		if r.ingredient() || !r.peel(anything) {
			return
		}
	}
	r.looseBasis()
	// All were modifiers: one of them may be the name, as in "planned rest".
	r.core = r.whole
	if best := r.cover(); best.found() && len(best.left) == 0 {
		r.mods = r.mods[:r.wholeMods]
		r.take(best)
		return
	}
	r.core = nil
}

// minutesOf reads "minutes until it fell": a unit before a name that could as well
// stand beside one.
func (r *reader) minutesOf() bool {
	if len(r.core) < 2 || r.m.Unit != units.NoUnit {
		return false
	}
	u, ok := units.Parse(raw(r.header, r.core[:1]))
	if !ok || u.Dimension() != units.Minutes || len(r.core[0].text) < 3 {
		return false
	}
	rest := r.core[1:]
	for len(rest) > 1 && r.v.modifiers[rest[0].text]&nothing != 0 && r.exact(rest) == nil {
		rest = rest[1:]
	}
	p := r.exact(rest)
	if p == nil || p.entries[0].role != Hold {
		return false
	}
	r.setUnit(u)
	r.core, r.could = rest, p.entries
	return true
}

// exact finds a run of tokens in the table of words, if its unit lets it be that.
func (r *reader) exact(ts []token) *phrase {
	p := r.v.exact(ts)
	if p != nil && p.entries[0].role == Valid && r.m.Unit != units.NoUnit {
		return nil // "discarded g"
	}
	if p != nil && r.m.Unit.Dimension() == units.Mass && r.isIngredient(ts) && !slices.ContainsFunc(p.entries, func(e entry) bool { return e.role.Takes(units.Mass) }) {
		return nil // "sale (g)" is salt, which is weighed
	}
	return p
}

// looseBasis takes a bracketed basis back as words where no percent makes it one:
// "oil (butter) g" is no percent of butter.
func (r *reader) looseBasis() {
	if r.loose == nil || r.m.Unit.Dimension() == units.Percent {
		return
	}
	r.m.Basis, r.extra, r.loose = NoBasis, append(r.extra, r.loose), nil
}

// as gives the meaning an entry's role, moved by the unit where words alone mislead.
func (m Meaning) as(e entry) Meaning {
	d := m.Unit.Dimension()
	m.Role, m.Ingredient, m.turned = e.role, e.ingredient, e.reversed
	if e.basis != NoBasis {
		m.Basis = e.basis
	}
	if m.clock && (e.role == StartedAt || e.role == FellAt || e.role == Time) {
		m.Unit = units.NoUnit
	} else {
		m.Role = e.role.shifted(d)
	}
	switch {
	case m.Role == FatPercent && (d == units.Mass || d == units.Volume):
		m.Role, m.Ingredient = IngredientAmount, fatNamed(m.Words)
	case m.Role == IngredientFat || m.Role == IngredientType:
		if m.Ingredient = m.subject; m.Ingredient == "" {
			m.Ingredient = subjectOf(m.Words)
		}
	}
	if m.Role == IngredientType && d != units.Any {
		m = m.amountOfType()
	}
	return m
}

// amountOfType reads "oil used (g)".
func (m Meaning) amountOfType() Meaning {
	switch {
	case isEmulsifier(m.Ingredient):
		m.Role, m.Ingredient = EmulsifierAmount, ""
	case m.Ingredient != "":
		m.Role = IngredientAmount
	}
	return m
}

// fatNamed is the ingredient that a word for fat stands for beside grams. The
// percent of "butterfat" is the mix's, its grams are an ingredient's.
func fatNamed(words string) string {
	if i, ok := ingredient.Lookup(words); ok && i.Kind == ingredient.Fat && i.Name != "fat" {
		return words
	}
	return "fat"
}

// subjectOf is the ingredient that a header such as "cream fat" or "oil type" is
// about, as typed, where it can be named without the words for all fat; "" if
// none is in it.
func subjectOf(words string) string {
	ts := tokens(words)
	best, plainFat := "", ""
	for i := range ts {
		for j := len(ts); j > i; j-- {
			name := raw(words, ts[i:j])
			if _, known := ingredient.Lookup(name); !known && !isEmulsifier(name) || vocab().modifiers[ts[i].text]&nothing != 0 {
				continue
			}
			if into := &best; len(name) > len(*into) && !vocab().saysFat(name) {
				*into = name
			} else if plainFat == "" {
				plainFat = name
			}
		}
	}
	if best == "" {
		return plainFat
	}
	return best
}

// isEmulsifier reports whether words stand for all emulsifiers.
func isEmulsifier(words string) bool {
	p := vocab().exact(tokens(words))
	return p != nil && p.entries[0].role == EmulsifierAmount
}
