package quantity

import "unicode/utf8"

// unitFollows reports a unit at the next token.
func (p *reader) unitFollows() bool {
	_, n := p.unitHere()
	return n > 0
}

// unitHere is the unit that starts at the next token and how many tokens it
// takes. Letters that are more often something else are units only where their
// dimension is expected.
func (p *reader) unitHere() (Unit, int) {
	u, n := matchUnit(p.tokens, p.i)
	if n == 0 {
		return NoUnit, 0
	}
	t := p.at(0)
	wrong := p.want != Any && u.Dimension() != p.want
	switch {
	case t.kind == aMark && t.text == `"` && p.want == Length:
		return Inch, 1
	case t.kind == aMark && wrong:
		return NoUnit, 0
	case n == 1 && wrong && (t.text == "c" || t.text == "f" || t.text == "d" || t.text == "j" || t.text == "in" || t.text == "pt"):
		return NoUnit, 0
	case n == 1 && p.want == Any && (t.text == "in" || t.text == "d" || t.text == "j"):
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
	if mean, k := matchPhrase(p.tokens, p.i); k > n && mean != aside { // "min or more" is a unit, "d'ici" is not
		return nil
	}
	p.i += n
	m.unit = u
	if p.want == Percent && (u == Gram || u == Millilitre) && p.isMark(0, "/") && p.at(1).kind == aNumber && p.at(1).num.value == 100 {
		p.i += 2 // 5 g/100 g
		m.unit = PercentUnit
		if v, n := p.unitHere(); v == u {
			p.i += n
		}
		return nil
	}
	switch u {
	case Hour, Minute:
		return p.smallerUnits(m)
	case Charger, Gram:
		for p.want == Chargers { // 8 g N2O chargers
			v, n := p.unitHere()
			if n == 0 || v != Charger {
				break
			}
			p.i += n
		}
	}
	return nil
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
	if p.want != Minutes && p.want != Any {
		return nil
	}
	total, in := m.unit.toBase(m.n), m.unit
	compound := false
	for in != Second && p.at(0).kind == aNumber && p.at(0).num.integer && m.n.integer {
		part := p.at(0).num
		var next Unit
		start := p.i
		p.i++
		u, n := p.unitHere()
		switch {
		case n > 0 && (u == Minute && in == Hour || u == Second):
			next = u
			p.i += n
		case n == 0 && in == Hour && !p.isMark(0, "/") && !p.isMark(0, ":") && !p.isMark(0, "⁄"):
			next = Minute
		case n == 0 && in == Minute && !p.isMark(0, "/") && !p.isMark(0, ":") && !p.isMark(0, "⁄"):
			next = Second
		default:
			p.i = start
			in = Second
			continue
		}
		if part.value >= 60 {
			return p.fail("has 60 or more in the smaller unit of a time", expected[Minutes].type_)
		}
		total += next.toBase(part)
		compound = true
		in = next
	}
	if compound {
		m.n, m.settled = computed(total), true
		if m.unit == Hour || m.unit == Second {
			m.unit = Hour
		}
	}
	return nil
}

// clock reads the rest of 1:30 or 1:30:00. Two parts are minutes and seconds
// unless the column is in hours.
func (p *reader) clock(first number) (measure, error) {
	parts := []number{first}
	for p.isMark(0, ":") && p.at(1).kind == aNumber && p.at(1).glued {
		parts = append(parts, p.at(1).num)
		p.i += 2
	}
	for i, n := range parts {
		if i > 0 && n.value >= 60 || !n.integer && i < len(parts)-1 {
			return measure{}, p.fail("is no clock time", expected[Minutes].type_)
		}
	}
	m := measure{unit: Minute, settled: true}
	switch {
	case len(parts) == 3:
		m.n = computed(first.value*60 + parts[1].value + parts[2].value/60)
		if parts[2].value == 0 {
			p.doubtClock(first.value, parts[1].value, m.n.value)
		}
	case len(parts) > 3:
		return measure{}, p.fail("is no clock time", expected[Minutes].type_)
	case p.column == Hour:
		m.n = computed(first.value*60 + parts[1].value)
	default:
		m.n = computed(first.value + parts[1].value/60)
		if p.column != Second && first.value < 24 {
			p.doubtClock(first.value, parts[1].value, m.n.value)
		}
	}
	if w := p.at(0); w.kind == aWord && (w.text == "am" || w.text == "min" || w.text == "h" || w.text == "mins") {
		p.i++
	}
	return m, nil
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
	u := m.unit
	if u == NoUnit {
		u = p.column
	}
	if u == NoUnit {
		u = baseUnit[p.want]
	}
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
