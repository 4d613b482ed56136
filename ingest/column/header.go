package column

import (
	"fmt"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
)

// Read reads one header. A group header above it is joined in front by the
// caller with " / ", a units row behind it in brackets. What the header alone
// leaves open (French "note" or Italian "note") is in Doubt; ReadAll settles it
// by the other headers.
func Read(header string) Meaning {
	if len(header) > maxHeader {
		return Meaning{Words: header}
	}
	parts := strings.Split(header, " / ")
	if len(parts) > 1 {
		if whole := readPart(header); whole.sure && len(whole.could) > 0 {
			return whole.settled(0)
		}
	}
	m := readPart(parts[len(parts)-1])
	for i := len(parts) - 2; i >= 0; i-- {
		m = m.under(readPart(parts[i]), parts[i])
	}
	return m.settled(0)
}

// readPart reads a header without group. Several meanings are left in could.
func readPart(header string) Meaning {
	r := reader{header: header, v: vocab()}
	r.core, r.extra = r.brackets(tokens(header))
	with := append(append([]token{}, r.core...), r.extra...)
	if len(r.extra) > 0 && r.v.exact(with) != nil {
		r.core, r.extra = with, nil
	}
	p := r.strip()
	r.m.Words = raw(header, r.core)
	if p == nil && r.ofLots() {
		p = r.v.exact(tokens(IngredientLot.Plain()))
	}
	if p == nil && len(r.core) > 0 {
		p = r.guess()
	}
	if p != nil {
		r.m.could = fitting(spelt(p.entries, r.m.Words), r.m.Unit.Dimension())
		if r.m.OutOf > 0 && r.m.Can(Score) {
			r.m.could = []entry{{role: Score, lang: p.entries[0].lang}}
		}
		r.m.sure = !r.m.Fuzzy
		for _, e := range r.m.could {
			r.m.lang |= e.lang
		}
		return r.m.as(r.m.could[0])
	}
	return r.m
}

// ofLots says whether a header names the lots of something: "butter lot",
// "lot of cream", which would else be read as an amount of it.
func (r *reader) ofLots() bool {
	n := len(r.core)
	return n > 1 && (lotWords[r.core[0].text] || lotWords[r.core[n-1].text])
}

var lotWords = map[string]bool{"lot": true, "lots": true, "lote": true, "lotto": true, "los": true}

// reader takes a header apart: core is what is left to name the column.
type reader struct {
	header      string
	v           *vocabulary
	core, extra []token
	m           Meaning
}

// brackets takes out bracketed texts that say unit, basis, minute or scale;
// the words of others are extra.
func (r *reader) brackets(ts []token) (core, extra []token) {
	for i := 0; i < len(ts); i++ {
		if !strings.Contains("([{", ts[i].text) {
			if !strings.Contains(")]},", ts[i].text) || ts[i].text == "," && i+1 < len(ts) {
				core = append(core, ts[i])
			}
			continue
		}
		end := i + 1
		for end < len(ts) && !strings.Contains(")]}", ts[end].text) {
			end++
		}
		if inside := ts[i+1 : end]; !r.aside(inside) {
			extra = append(extra, inside...)
		}
		i = end
	}
	return core, extra
}

// aside reads a bracketed text: a unit, a basis, a minute, a scale, yes/no, or
// several of these.
func (r *reader) aside(ts []token) bool {
	if len(ts) == 0 || r.unit(ts) || r.scale(ts) || r.v.yesNo[joined(ts)] {
		return true
	}
	if b, ok := r.v.basis[joined(ts)]; ok {
		r.m.Basis = b
		return true
	}
	save := r.m
	for len(ts) > 0 {
		n := r.tail(ts, true)
		if n == 0 {
			if ts[0].text != "%" && !r.unit(ts[:1]) {
				r.m = save
				return false
			}
			r.percent(ts[:1])
			ts = ts[1:]
			continue
		}
		ts = ts[:len(ts)-n]
	}
	return true
}

// tellsFat says whether a header ends with how fat something is: "36 % fat".
func tellsFat(v *vocabulary, ts []token) bool {
	n := len(ts)
	return n > 2 && v.basis[ts[n-1].text] == OfFat && ts[n-2].text == "%" && ts[n-3].kind == number
}

func (r *reader) percent(ts []token) {
	if ts[0].text == "%" {
		r.setUnit(quantity.PercentUnit)
	}
}

// unit reads tokens that are a unit as a whole.
func (r *reader) unit(ts []token) bool {
	text := raw(r.header, ts)
	if strings.EqualFold(text, "gms") && (text == "GMS" || r.m.Unit != quantity.NoUnit) {
		return false // glycerol monostearate, not grams
	}
	if text == "MG" && r.m.Unit != quantity.NoUnit {
		return false // matière grasse, not milligrams
	}
	u, ok := quantity.ParseUnit(text)
	if ok {
		r.setUnit(u)
	}
	return ok
}

// setUnit keeps the first unit said; another one is a doubt.
func (r *reader) setUnit(u quantity.Unit) {
	switch {
	case r.m.Unit == quantity.NoUnit || r.m.Unit == u:
		r.m.Unit = u
	case r.m.Doubt == "":
		r.m.Doubt = fmt.Sprintf("two units in one header, %s and %s: read as %s; keep one of them", r.m.Unit, u, r.m.Unit)
	}
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
		r.m.OutOf = ts[n-1].number
		return true
	}
	return false
}

// strip takes units, bases, minutes and quiet words off the ends of the core
// until what is left is in the table.
func (r *reader) strip() *phrase {
	for {
		if p := r.v.exact(r.core); p != nil {
			return p
		}
		if len(r.core) == 0 {
			return nil
		}
		if n := r.tail(r.core, false); n > 0 {
			r.core = r.core[:len(r.core)-n]
			continue
		}
		if n := r.head(r.core); n > 0 {
			r.core = r.core[n:]
			continue
		}
		return nil
	}
}

var atWords = map[string]bool{"@": true, "at": true, "a": true, "after": true, "nach": true, "bei": true, "dopo": true, "apres": true,
	"los": true, "t": true, "tras": true, "=": true, "min": true, "por": true, "zu": true, "les": true}

// tail says how many tokens at the end are a modifier, and reads it. alone:
// the tokens stand in brackets, with nothing before them to name.
func (r *reader) tail(ts []token, alone bool) int {
	n := len(ts)
	last := ts[n-1]
	// "@ 20 min", "at 20", "20 min", "20'".
	for k := min(3, n); k >= 1; k-- {
		rest := ts[n-k:]
		if rest[0].kind != number {
			continue
		}
		dim, u := quantity.Any, quantity.NoUnit
		if k > 1 {
			var ok bool
			if u, ok = quantity.ParseUnit(raw(r.header, rest[1:])); !ok {
				if rest[1].text != "'" || k > 2 {
					continue
				}
				u = quantity.Minute
			}
			dim = u.Dimension()
		}
		lead := 0
		for lead < 2 && n-k-lead > 0 && atWords[ts[n-k-lead-1].text] {
			lead++
		}
		switch {
		case dim == quantity.Minutes || dim == quantity.Any && lead > 0:
			r.m.AtMinute = minutes(rest[0].number, u)
			return k + lead
		case dim == quantity.Temperature && n > k:
			return k + lead
		case dim == quantity.Any && k == 1 && n > 1:
			if r.scale(ts[n-2:]) {
				return 2
			}
			if n > 2 && r.scale(ts[n-3:]) {
				return 3
			}
			if p := r.v.exact(ts[:n-1]); p != nil && (p.entries[0].role == DrainedAmount || p.entries[0].role == OilAmount || p.entries[0].role == Overrun) {
				r.m.AtMinute = rest[0].number
				return 1
			}
		}
	}
	if tellsFat(r.v, ts) && !alone {
		return 0 // "cream 36 % fat" is a name
	}
	// "% of fat", "% fat", "of water %".
	for k := min(4, n); k >= 1; k-- {
		if b, ok := r.v.basis[joined(ts[n-k:])]; ok && (alone || n > k) && r.m.Basis == NoBasis {
			percentBefore := n > k && ts[n-k-1].text == "%"
			if percentBefore && !alone && r.m.Unit.Dimension() == quantity.Mass && n > k+1 && ts[n-k-2].kind == number {
				continue // "crème 35 % MG (g)" is a name
			}
			preposition := k > 1 && r.v.quiet[ts[n-k].text]
			if (percentBefore && (n > k+1 || preposition || alone)) || preposition && r.m.Unit.Dimension() == quantity.Percent {
				r.m.Basis = b
				return k
			}
		}
	}
	if last.text == "%" && n > 1 && ts[n-2].kind == number && !alone {
		if p := r.v.exact(ts[:n-2]); p == nil && !r.doseInPercent(ts[:n-1]) {
			return 0 // "cream 35 %" is a name
		}
	}
	for k := min(4, n); k >= 1; k-- {
		if !alone && k == n && n > 1 && ts[0].text != "°" {
			continue
		}
		if u, ok := quantity.ParseUnit(raw(r.header, ts[n-k:])); ok && u == quantity.Charger && !alone {
			continue // "# chargers" names the column
		}
		if r.unit(ts[n-k:]) {
			return k
		}
	}
	for k := min(2, n); k >= 1; k-- {
		if (alone || n > k) && r.v.yesNo[joined(ts[n-k:])] && joined(ts[n-k:]) != "" {
			return k
		}
	}
	if strings.Contains("/@=',", last.text) || !alone && n > 1 && last.kind == word && r.v.quiet[last.text] {
		return 1
	}
	return 0
}

// doseInPercent reports whether a % behind a name that ends in a number is the
// unit: of "sucrose ester 15 % of water" and of any emulsifier, whose numbers are
// its grade.
func (r *reader) doseInPercent(name []token) bool {
	if r.m.Unit != quantity.NoUnit {
		return false
	}
	i, ok := ingredient.Lookup(raw(r.header, name))
	return r.m.Basis != NoBasis || ok && i.WeighedAsEmulsifier()
}

// head says how many tokens at the start are a modifier, and reads it.
func (r *reader) head(ts []token) int {
	if len(ts) < 2 {
		return 0
	}
	for k := min(2, len(ts)-1); k >= 1; k-- {
		if ts[0].kind == number {
			break
		}
		if r.unit(ts[:k]) {
			return k
		}
	}
	if ts[0].kind == sign && ts[0].text != "°" || ts[0].kind == word && r.v.quiet[ts[0].text] && ts[1].kind != number {
		return 1
	}
	return 0
}

func minutes(n float64, u quantity.Unit) float64 {
	switch u {
	case quantity.Second:
		return n / 60
	case quantity.Hour:
		return n * 60
	case quantity.Day:
		return n * 1440
	}
	return n
}

// as gives the meaning an entry's role, moved by the unit where words alone mislead.
func (m Meaning) as(e entry) Meaning {
	d := m.Unit.Dimension()
	m.Role, m.Ingredient = e.role, e.ingredient
	if moved := e.role.shifted(d); moved != e.role {
		m.Role = moved
	}
	switch {
	case m.Role == FatPercent && (d == quantity.Mass || d == quantity.Volume):
		m.Role, m.Ingredient = IngredientAmount, "fat"
		// The percent of "butterfat" is the mix's, its grams are an ingredient's.
		if i, ok := ingredient.Lookup(m.Words); ok && i.Kind == ingredient.Fat && i.Name != "fat" {
			m.Ingredient = m.Words
		}
	case m.Role == IngredientFat:
		m.Ingredient = ingredientIn(m.Words)
	}
	return m
}

// ingredientIn is the ingredient a header such as "cream fat" is about.
func ingredientIn(words string) string {
	ts := tokens(words)
	for _, t := range ts {
		if i, ok := ingredient.Lookup(words[t.from:t.to]); ok && i.Name != "fat" {
			return words[t.from:t.to]
		}
	}
	return ""
}
