package column

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/reply"
	"foamfield/ingest/units"
)

// tellsFat says whether a header ends with how fat something is: "36 % fat".
func tellsFat(v *vocabulary, ts []token) bool {
	n := len(ts)
	return n > 2 && v.basis[ts[n-1].text] == OfFat && ts[n-2].text == "%" && ts[n-3].kind == number
}

// unit reads tokens that are a unit as a whole.
func (r *reader) unit(ts []token) bool {
	u, ok := units.Parse(raw(r.header, ts))
	if !ok || r.noUnit(ts) {
		return false
	}
	if n := len(ts); n >= 3 && saysByMass(ts[n-3:]) && (strings.Contains(r.header, "%") || strings.Contains(r.header, "100")) { // "%, w/w", "g/100 g, w/w"
		rest := ts[:n-3]
		for len(rest) > 0 && removable(rest[len(rest)-1]) {
			rest = rest[:len(rest)-1]
		}
		return len(rest) == 0 || r.unit(rest)
	}
	r.setUnit(u)
	r.m.clock = r.m.clock || strings.Contains(raw(r.header, ts), ":")
	return true
}

// besideHLB is the HLB of a letter: "HLB F".
var besideHLB = pattern.Of(`(?i)^\W*(?:hlb(?: of)? \pL|\pL:? hlb)\W*$`)

// nameBegins is what stands before a name that is one letter.
var nameBegins = pattern.Of(`^[ %]*$|[+&] *$`)

// noUnit reports whether tokens that look like a unit are none.
func (r *reader) noUnit(ts []token) bool {
	text, second := raw(r.header, ts), r.m.Unit != units.NoUnit
	alone := strings.TrimSpace(r.header) == text
	switch {
	case text == "GMS", (second || alone) && strings.EqualFold(text, "gms"): // glycerol monostearate
		return true
	case text == "MG" && (second || strings.Contains(r.header, "%")): // matière grasse
		return true
	case (text == "C" || text == "F") && (besideHLB.MatchString(r.header) || (second || strings.Contains(r.header, "%")) && nameBegins.MatchString(r.header[:ts[0].from])): // one of emulsifiers A to F
		return true
	case strings.Contains(joined(ts), "v v"): // no percent of mass
		return true
	case isLetter(r.header, ts[0]) && len(ts) == 1 && (second || text != "G" && r.v.namesEmulsifier(r.header[:ts[0].from])): // "Emulsifier H, g"
		return true
	}
	if from := r.header[:ts[0].from]; text == "drops" && (strings.HasSuffix(from, "it ") || strings.HasSuffix(from, "foam ")) {
		return true // "minutes before it drops"
	}
	return slices.ContainsFunc(ts, func(t token) bool {
		s := r.v.modifiers[t.text]
		return s&byVolume != 0 || s != 0 && second || // "vol %"; "weight in g" has no inches
			len(t.text) == 1 && t.kind == word && strings.IndexAny(r.header[t.to:], "'’") == 0 // "d'huile"
	})
}

// namesEmulsifier reports a text that ends with a word for an emulsifier, which a letter behind
// it tells from another.
func (v *vocabulary) namesEmulsifier(text string) bool {
	ts := tokens(text)
	p := v.exact(ts)
	return len(ts) > 0 && p != nil && p.entries[0].role == EmulsifierAmount
}

// setUnit keeps the first unit said; another one is a doubt.
func (r *reader) setUnit(u units.Unit) {
	switch {
	case r.m.Unit == units.NoUnit || r.m.Unit == u:
		r.m.Unit = u
	case r.m.Unit == units.Fraction && u == units.PercentUnit: // "fraction (%)"
		r.m.Unit = u
	case r.m.Unit == units.PercentUnit && u == units.Fraction:
	case r.m.Unit == units.Charger && u == units.Gram || r.m.Unit == units.Gram && u == units.Charger: // "g N2O"
		r.m.Unit = units.Gram
	case r.m.Doubt == "":
		r.m.Doubt = fmt.Sprintf("two units in one header, %s and %s: read as %s; keep one of them", r.m.Unit, u, r.m.Unit)
	}
}

// rate says how many tokens at the end are one unit for each of another, such as
// "g/kg" or "per litre", that no amount of a mix comes in.
func (r *reader) rate(ts []token) int {
	n := len(ts)
	for k := 2; k <= min(3, n); k++ {
		over := ts[n-k].text
		if over != "/" && over != "per" || k == 3 && ts[n-2].kind != number {
			continue
		}
		if _, ok := units.Parse(ts[n-1].text); !ok || ts[n-1].kind != word {
			continue
		}
		long := k
		if n > k {
			if _, known := units.Parse(raw(r.header, ts[n-k-1:])); known {
				return 0 // "g/100 g"
			}
			upper, ok := units.Parse(raw(r.header, ts[n-k-1:n-k]))
			switch ok = ok && !r.noUnit(ts[n-k-1:n-k]); {
			case ok:
				r.setUnit(upper)
				long++
			case over == "/" && ts[n-k-1].kind != sign: // but "€/kg"
				continue
			}
		}
		r.mods = append(r.mods, modifier{rate, raw(r.header, ts[n-long:]), ts[n-long:]})
		return long
	}
	return 0
}

// yesNo reads an offered yes or no: "y/n", "1 = yes".
func (r *reader) yesNo(ts []token) bool {
	key := joined(ts)
	if key == "" || !r.v.yesNo[key] {
		return false
	}
	r.m.YesNo = true
	return true
}

// offered reads a list of the answers a column takes: "fine / split / clogged".
func (r *reader) offered(ts []token) bool {
	options := strings.FieldsFunc(raw(r.header, ts), func(c rune) bool { return c == '/' || c == ',' || c == '|' })
	for _, o := range options {
		answer, err := reply.Parse(strings.TrimSpace(o))
		if err != nil || answer.Answer == reply.NoAnswer && len(answer.Events) == 0 && answer.Word == quantity.NoWord {
			return false
		}
	}
	return len(options) > 1
}

// scale reads "/9", "0-10", "1 to 5", "out of 9".
func (r *reader) scale(ts []token) bool {
	n := len(ts)
	if n == 0 || ts[n-1].kind != number || ts[n-1].number < 2 || ts[n-1].number > 100 {
		return false
	}
	switch before := joined(ts[:n-1]); {
	case n >= 2 && ts[n-2].text == "/" && n == 2,
		before == "out of", before == "sur", before == "von", before == "su", before == "sobre", before == "of",
		n >= 2 && ts[0].kind == number && (ts[0].number == 0 || ts[0].number == 1) && ts[0].number < ts[n-1].number &&
			(n == 2 || n == 3 && strings.Contains(" to a bis - ", " "+ts[1].text+" ")):
		r.m.OutOf, r.m.scale = ts[n-1].number, r.header[ts[0].from:ts[n-1].to]
		return true
	}
	return false
}

var atWords = map[string]bool{"@": true, "at": true, "a": true, "after": true, "nach": true, "na": true, "bei": true, "dopo": true, "apres": true,
	"los": true, "t": true, "tras": true, "=": true, "min": true, "por": true, "zu": true, "les": true, "by": true, "within": true, "in": true, "until": true, "till": true, "up": true, "to": true, "upto": true,
	"minute": true, "minuto": true, "minuti": true, "jusqu": true, "bis": true, "binnen": true, "innerhalb": true, "entro": true, "fino": true, "hasta": true, "en": true}

// afterWords stand only before a number with its minutes: "au bout de 10 min".
var afterWords = map[string]bool{"de": true, "di": true, "au": true, "bout": true, withoutUmlauts("despues"): true, "trascorsi": true, "von": true, "the": true, "first": true, "los": true}

// tail says how many tokens at the end are a unit, basis, minute, scale or an
// offered answer, and reads them. alone: the tokens stand in brackets, with
// nothing before them to name.
func (r *reader) tail(ts []token, alone bool) int {
	if k := r.tailNumber(ts); k > 0 {
		return k
	}
	if tellsFat(r.v, ts) && !alone {
		return 0 // "cream 36 % fat" is a name
	}
	if k := r.tailBasis(ts, alone); k > 0 {
		return k
	}
	if k := r.rate(ts); k > 0 {
		return k
	}
	if !alone && r.percentInName(ts) {
		return 0
	}
	if k := r.tailUnit(ts, alone); k > 0 {
		return k
	}
	return r.tailAnswer(ts, alone)
}

// percentInName reports whether a percent at the end is part of a name: "cream 35 %".
func (r *reader) percentInName(ts []token) bool {
	n := len(ts)
	if n > 2 && atWords[ts[n-3].text] && ts[n-3].text != "a" && ts[n-3].text != "t" {
		return false // "liquid after 20 %"
	}
	return n > 1 && ts[n-1].text == "%" && ts[n-2].kind == number && r.v.exact(ts[:n-2]) == nil && !r.doseInPercent(ts[:n-1])
}

// tailAnswer reads an offered yes or no at the end, and a sign that says nothing.
func (r *reader) tailAnswer(ts []token, alone bool) int {
	n := len(ts)
	for k := min(8, n); k >= 1; k-- {
		if (alone || n > k) && r.yesNo(ts[n-k:]) {
			return k
		}
	}
	if removable(ts[n-1]) && ts[n-1].text != "#" {
		return 1
	}
	return 0
}

// tailUnit reads a unit at the end.
func (r *reader) tailUnit(ts []token, alone bool) int {
	n := len(ts)
	for k := min(4, n); k >= 1; k-- {
		if !alone && k == n && n > 1 && ts[0].text != "°" {
			continue
		}
		if u, ok := units.Parse(raw(r.header, ts[n-k:])); ok && u == units.Charger && !alone {
			continue // "# chargers" names the column
		}
		if r.unit(ts[n-k:]) {
			return k
		}
	}
	return 0
}

// removable reports whether a sign says nothing.
func removable(t token) bool { return t.kind == sign && strings.Contains("#@/'=()[]{},", t.text) }

// tailNumber reads "@ 20 min", "at 20", "20 min", "20'", "at 60 °C", "1-5".
func (r *reader) tailNumber(ts []token) int {
	n := len(ts)
	for k := min(3, n); k >= 2; k-- {
		if ts[n-k].kind != number {
			continue
		}
		u, ok := r.unitBehind(ts[n-k+1:])
		lead := leadingTo(ts[:n-k], u)
		switch {
		case ok && u.Dimension() == units.Minutes:
			return r.atMinute(minutes(ts[n-k].number, u), ts[n-k-lead:])
		case ok && u.Dimension() == units.Temperature && n > k:
			return k + lead
		}
	}
	if ts[n-1].kind != number {
		return 0
	}
	return r.tailBare(ts)
}

// tailBare reads a number without unit at the end.
func (r *reader) tailBare(ts []token) int {
	n := len(ts)
	lead := leadingTo(ts[:n-1], units.NoUnit)
	switch {
	case lead > 0:
		return r.atMinute(ts[n-1].number, ts[n-1-lead:])
	case n > 1 && r.scale(ts[n-2:]):
		return 2
	case n > 2 && r.scale(ts[n-3:]):
		return 3
	}
	if p := r.v.exact(ts[:n-1]); p != nil && readAtMinute(p.entries[0].role) {
		return r.atMinute(ts[n-1].number, ts[n-1:])
	}
	return 0
}

// unitBehind is the unit behind a number, where ' is minutes.
func (r *reader) unitBehind(ts []token) (units.Unit, bool) {
	if len(ts) == 1 && ts[0].text == "'" {
		return units.Minute, true
	}
	return units.Parse(raw(r.header, ts))
}

// leadingTo is how many tokens before a number belong to it: "at", "after", the 0
// of "0-20 min".
func leadingTo(ts []token, u units.Unit) int {
	n, lead := len(ts), 0
	if n > 0 && u.Dimension() == units.Minutes && ts[n-1].text == "0" {
		lead++
	}
	for lead < 3 && n > lead && (atWords[ts[n-lead-1].text] || u.Dimension() == units.Minutes && afterWords[ts[n-lead-1].text]) {
		lead++
	}
	return lead
}

// readAtMinute reports whether a role's number belongs to a minute.
func readAtMinute(r Role) bool { return r == DrainedAmount || r == OilAmount || r == Overrun }

// atMinute keeps the minute a header says; a second one is not accounted for.
func (r *reader) atMinute(v float64, ts []token) int {
	if r.m.AtMinute != 0 && r.m.AtMinute != v {
		r.m.left = append(r.m.left, raw(r.header, ts))
	} else {
		r.m.AtMinute, r.m.minute = v, raw(r.header, ts)
	}
	return len(ts)
}

// tailBasis reads "% of fat", "% fat", "of water %".
func (r *reader) tailBasis(ts []token, alone bool) int {
	n := len(ts)
	for k := min(4, n); k >= 1; k-- {
		b, ok := r.v.basisOf(ts[n-k:])
		if !ok || !alone && n == k || r.m.Basis != NoBasis {
			continue
		}
		if r.basisFollows(ts[:n-k], ts[n-k:], alone) {
			r.m.Basis = b
			return k + r.perHundredAlone(ts[:n-k])
		}
		if b == OfMix && r.m.Unit == units.NoUnit && r.v.preposed(ts[n-k:]) {
			r.m.IfPercent = b // "emulsifier in the whole mix"
			return k
		}
	}
	return r.tailBasisName(ts, alone)
}

// tailBasisName reads "% of cocoa butter", "% of the tea": the part of the mix that a fat or a
// water part is.
func (r *reader) tailBasisName(ts []token, alone bool) int {
	n := len(ts)
	if p := r.v.exact(namedBefore(r.header[:ts[n-1].from])); p != nil && p.entries[0].role != EmulsifierAmount {
		return 0 // "fat % of cream" is the cream's
	}
	for k := min(longestName, n); k >= 1 && r.m.Basis == NoBasis; k-- {
		name := r.withoutModifiers(ts[n-k:])
		preposition := len(name) < k && r.v.modifiers[ts[n-k].text]&nothing != 0
		if n == k && !preposition || len(name) == 0 || !preposition && !alone || !r.basisFollows(ts[:n-k], ts[n-k:], alone) {
			continue
		}
		if _, part := r.v.basisOf(name); part && n == k {
			continue // "fraction of fat" is the fat itself
		}
		what, ok := ingredient.Lookup(raw(r.header, name))
		if b := map[ingredient.Kind]Basis{ingredient.Fat: OfFat, ingredient.Water: OfWater}[what.Kind]; ok && b != NoBasis {
			r.m.Basis, r.m.BasisName = b, raw(r.header, name)
			return k
		}
	}
	return 0
}

// namedBefore is what the start of a header names, before its percent sign.
func namedBefore(header string) []token {
	ts := tokens(header)
	for i, t := range ts {
		if percentSigns[t.text] || strings.Contains("([", t.text) {
			return ts[:i]
		}
	}
	return ts
}

// basisFollows reports whether words for a basis stand where a basis does: behind
// a percent sign, or with a preposition where the unit is percent.
func (r *reader) basisFollows(before, basis []token, alone bool) bool {
	before = withoutByMass(before)
	n, d := len(before), r.m.Unit.Dimension()
	preposition := r.v.preposed(basis)
	if perHundred(before) {
		return true // "g per 100 g mix"
	}
	if n == 0 || !percentSigns[before[n-1].text] {
		return preposition && d == units.Percent
	}
	if n > 1 && before[n-2].kind == number && d == units.Mass && !alone {
		return false // "crème 35 % MG (g)" is a name
	}
	return n > 1 || preposition || alone
}

// perHundredAlone takes "per 100 g" that no unit stands before: "fat per 100 g mix".
func (r *reader) perHundredAlone(before []token) int {
	n := len(before)
	if n < 4 || !perHundred(before) || before[n-1].text == "kg" || r.m.Unit != units.NoUnit {
		return 0
	}
	if _, ok := units.Parse(raw(r.header, before[n-4:n-3])); ok {
		return 0
	}
	r.setUnit(units.PercentUnit)
	return 3
}

var prepositions = map[string]bool{"auf": true, "bezogen": true, "bez": true, "sur": true, "dans": true, "rapporte": true, "sobre": true, "respecto": true,
	"su": true, "sul": true, "sulla": true, "sull": true, "nel": true, "nella": true, "nell": true, "rispetto": true}

// preposed reports words for a basis behind their preposition: "in the mix",
// "relative to fat".
func (v *vocabulary) preposed(basis []token) bool {
	return len(basis) > 1 && (v.modifiers[basis[0].text]&nothing != 0 || prepositions[basis[0].text] || len(basis) > 2 && v.modifiers[basis[1].text]&nothing != 0)
}

var percentSigns = map[string]bool{"%": true, "pct": true, "percent": true, "prozent": true, "pourcent": true}

// perHundred reports tokens that end with "per 100 g" or "per kg".
func perHundred(ts []token) bool {
	n := len(ts)
	if n > 2 && ts[n-1].text == "kg" && (ts[n-2].text == "per" || ts[n-2].text == "/" || ts[n-2].text == "pro" || ts[n-2].text == "je") && ts[n-3].text == "g" {
		return true
	}
	return n > 3 && ts[n-1].text == "g" && ts[n-2].text == "100" && (ts[n-3].text == "per" || ts[n-3].text == "/")
}

// withoutByMass takes a "w/w" behind a percent sign off some tokens: it says what
// every percent here is, and the basis may follow it.
func withoutByMass(ts []token) []token {
	if n := len(ts); n > 3 && ts[n-4].text == "%" && saysByMass(ts[n-3:]) {
		return ts[:n-3]
	}
	return ts
}

// saysByMass reports a "w/w", "m/m" or "p/p".
func saysByMass(ts []token) bool { return ts[1].text == "/" && byMass[ts[0].text+ts[2].text] }

var byMass = map[string]bool{"ww": true, "mm": true, "pp": true}

// doseInPercent reports whether a % behind a name that ends in a number is the
// unit: of "sucrose ester 15 % of water" and of any emulsifier, whose numbers are
// its grade.
func (r *reader) doseInPercent(name []token) bool {
	if r.m.Unit != units.NoUnit {
		return false
	}
	i, ok := ingredient.Lookup(raw(r.header, name))
	return r.m.Basis != NoBasis || ok && i.WeighedAsEmulsifier()
}

// head says how many tokens at the start are a unit, and reads it.
func (r *reader) head(ts []token) int {
	if len(ts) < 2 {
		return 0
	}
	if removable(ts[0]) {
		return 1
	}
	if k := r.headMinute(ts); k > 0 {
		return k
	}
	for k := min(2, len(ts)-1); k >= 1; k-- {
		if ts[0].kind == number || k == 1 && r.v.exact(ts[:1]) != nil && len(ts[0].text) > 5 {
			break // "chargers used" names the column
		}
		if r.unit(ts[:k]) {
			return k
		}
	}
	return 0
}

// headMinute reads "20 min drainage", "20-min drain".
func (r *reader) headMinute(ts []token) int {
	at := 1
	if ts[1].text == "-" {
		at = 2
	}
	if ts[0].kind != number || at+1 >= len(ts) || ts[at].kind != word {
		return 0
	}
	u, ok := r.unitBehind(ts[at : at+1])
	if !ok || u.Dimension() != units.Minutes {
		return 0
	}
	return r.atMinute(minutes(ts[0].number, u), ts[:at+1])
}

func minutes(n float64, u units.Unit) float64 {
	switch u {
	case units.Second:
		return n / 60
	case units.Hour:
		return n * 60
	case units.Day:
		return n * 1440
	}
	return n
}
