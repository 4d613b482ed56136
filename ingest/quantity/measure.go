package quantity

import (
	"cmp"
	"slices"
	"unicode/utf8"
)

// unitFollows reports a unit at the next token.
func (p *reader) unitFollows() bool {
	_, n := p.unitHere()
	return n > 0
}

// otherwise are texts that are more often something else than a unit where another
// dimension is expected; those with true also where any is.
var otherwise = map[string]bool{"c": false, "f": false, "pt": false, "d": true, "j": true, "in": true}

// unitHere is the unit that starts at the next token and how many tokens it
// takes.
func (p *reader) unitHere() (Unit, int) {
	u, n := matchUnit(p.tokens, p.i)
	if n == 0 {
		return NoUnit, 0
	}
	t := p.at(0)
	wrong := p.want != Any && u.Dimension() != p.want
	evenInAny, doubtful := otherwise[t.text]
	switch {
	case t.text == `"` && p.want == Length:
		return Inch, 1
	case wrong && (t.kind == aMark || n == 1 && doubtful), p.want == Any && n == 1 && evenInAny:
		return NoUnit, 0
	}
	return u, n
}

// readUnit reads the unit after a number, and for times the smaller units that
// follow: 1 h 05, 2 min 30, 1'30".
func (p *reader) readUnit(m *measure) error {
	u, n := p.unitHere()
	if n == 0 {
		p.unitAfterMark(m)
		return nil
	}
	p.i += n
	m.unit = u
	switch u {
	case Hour, Minute:
		return p.smallerUnits(m)
	case Gram, Millilitre:
		if p.want == Percent && p.isMark(0, "/") && p.at(1).kind == aNumber && p.at(1).num.value == 100 { // 5 g/100 g
			p.i += 2
			m.unit = PercentUnit
			p.skipUnit(u)
		}
	}
	if p.want == Chargers && (u == Charger || u == Gram) { // 8 g N2O chargers
		for p.skipUnit(Charger) {
		}
	}
	return nil
}

// skipUnit steps over a unit if it comes next.
func (p *reader) skipUnit(u Unit) bool {
	next, n := p.unitHere()
	if next != u {
		return false
	}
	p.i += n
	return true
}

// unitAfterMark reads the unit of 20+ min, 12? min and 12ish min.
func (p *reader) unitAfterMark(m *measure) {
	t := p.at(0)
	if t.text != "+" && t.text != "?" && t.text != "ish" {
		return
	}
	p.i++
	u, n := p.unitHere()
	if n == 0 {
		p.i--
		return
	}
	p.i += n
	m.unit = u
	if t.text != "+" {
		p.approx = true
	} else if p.bound == noMeaning {
		p.bound = atLeast
	}
}

// smallerUnits adds the minutes after hours and the seconds after minutes.
func (p *reader) smallerUnits(m *measure) error {
	if p.want != Minutes && p.want != Any || !m.n.integer {
		return nil
	}
	total := m.unit.toBase(m.n)
	for in := m.unit; in != Second && p.wholeAt(0); {
		part := p.at(0).num
		if in = p.smallerUnit(in); in == NoUnit {
			break
		}
		if part.value >= 60 {
			return p.fail("has 60 or more in the smaller unit of a time", expected[Minutes].type_)
		}
		total += in.toBase(part)
		m.n, m.settled = computed(total), true
	}
	return nil
}

// smallerUnit steps over a number after hours or minutes and returns its unit,
// NoUnit if it is a number of its own.
func (p *reader) smallerUnit(in Unit) Unit {
	start := p.i
	p.i++
	u, n := p.unitHere()
	switch {
	case u == Second, u == Minute && in == Hour:
		p.i += n
		return u
	case n > 0, p.isMark(0, "/"), p.isMark(0, ":"), p.isMark(0, "⁄"):
		p.i = start
		return NoUnit
	case in == Hour:
		return Minute
	}
	return Second
}

// colonFollows reports a colon with a number right after it.
func (p *reader) colonFollows() bool {
	return p.isMark(0, ":") && p.at(1).kind == aNumber && p.at(1).glued
}

// clock reads the rest of 1:30 or 1:30:00. Two parts are minutes and seconds
// unless the column is in hours.
func (p *reader) clock(first number) (measure, error) {
	parts := []number{first}
	for p.colonFollows() {
		parts = append(parts, p.at(1).num)
		p.i += 2
	}
	if !isClock(parts) {
		return measure{}, p.fail("is no clock time", expected[Minutes].type_)
	}
	a, b, read, doubtful := first.value, parts[1].value, 0.0, false
	switch {
	case len(parts) == 3:
		read, doubtful = a*60+b+parts[2].value/60, parts[2].value == 0
	case p.column == Hour:
		read = a*60 + b
	default:
		read, doubtful = a+b/60, p.column != Second && a < 24
	}
	if doubtful {
		p.doubtClock(a, b, read)
	}
	if slices.Contains([]string{"am", "min", "h", "mins"}, p.at(0).text) {
		p.i++
	}
	return measure{n: computed(read), unit: Minute, settled: true}, nil
}

// isClock reports two or three whole numbers, the last with decimals at most, and
// all but the first below 60.
func isClock(parts []number) bool {
	for i, n := range parts {
		if i > 0 && n.value >= 60 || i < len(parts)-1 && !n.integer {
			return false
		}
	}
	return len(parts) <= 3
}

// doubtClock says how else a:b may be meant, and what to type for either.
func (p *reader) doubtClock(a, b, read float64) {
	p.doubt("read as %.4g min, but it may be %g min %g s or %g h %g min; type %.4g min for the first, %g min for the second",
		read, a, b, a, b, a+b/60, 60*a+b)
}

// footnote steps over one letter, raised figure or star glued to a number.
func (p *reader) footnote() {
	t := p.at(0)
	if !t.glued {
		return
	}
	switch {
	case t.kind == aMark && (t.text == "^" || t.text == "*"):
	case t.kind == aWord && utf8.RuneCountInString(t.text) == 1 && t.text != "x" && p.at(1).kind != aNumber && !p.unitFollows():
	default:
		return
	}
	p.i++
	p.doubt("the mark “%s” after the number was taken for a footnote", t.text)
}

// base is a measure in its base unit. A bare number is in the column's unit,
// else in the base unit of the dimension expected.
func (p *reader) base(m measure) (float64, Unit, error) {
	u := cmp.Or(m.unit, p.column, baseUnit[p.want])
	dim := u.Dimension()
	switch {
	case u == NoUnit:
		return m.n.value, NoUnit, nil
	case p.want == Score && u == PercentUnit, p.want == Count && dim == Count:
		return m.n.value, NoUnit, nil
	case p.want == Chargers && dim == Mass:
		p.doubt("%s g was read as chargers of 8 g", format(u.toBase(m.n)))
		return u.toBase(m.n) / 8, Charger, nil
	case !u.sized():
		return 0, u, p.unsized(u)
	case p.want != Any && dim != p.want:
		return 0, u, p.mismatch(m, u)
	case m.settled:
		return m.n.value, baseUnit[dim], nil
	}
	return u.toBase(m.n), baseUnit[dim], nil
}

// mismatch is the error of a unit of another dimension than expected.
func (p *reader) mismatch(m measure, u Unit) error {
	is := "is in " + u.String()
	if m.unit == NoUnit {
		is = "stands in a column of " + u.String()
	}
	cure := expected[p.want].type_
	switch {
	case p.want == Mass && u.Dimension() == Volume:
		cure = "type grams, or give the ingredient's density"
	case p.want == Mass && u == PercentUnit:
		cure = "type grams, or head the column with the basis of the percentage"
	case p.want == Volume && u.Dimension() == Mass:
		cure = "type millilitres, or head the column as a weight"
	}
	return p.fail(is+" where "+expected[p.want].what+" is expected", cure)
}
