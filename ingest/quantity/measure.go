package quantity

import (
	"cmp"
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
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
func (p *reader) unitHere() (units.Unit, int) {
	u, n := units.Match(p.tokens, p.i)
	if n == 0 {
		return units.NoUnit, 0
	}
	t := p.at(0)
	wrong := p.want != units.Any && u.Dimension() != p.want
	evenInAny, doubtful := otherwise[t.Text]
	switch {
	case t.Text == `"` && p.want == units.Length:
		return units.Inch, 1
	case wrong && (t.Kind == lexis.AMark || n == 1 && doubtful), p.want == units.Any && n == 1 && evenInAny:
		return units.NoUnit, 0
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
	case units.Hour, units.Minute:
		return p.smallerUnits(m)
	case units.Gram, units.Millilitre:
		if p.want == units.Percent && p.isMark(0, "/") && p.at(1).Kind == lexis.ANumber && p.at(1).Num.Value == 100 { // 5 g/100 g
			p.i += 2
			m.unit = units.PercentUnit
			p.skipUnit(u)
		}
	}
	if p.want == units.Chargers && (u == units.Charger || u == units.Gram) { // 8 g N2O chargers
		for p.skipUnit(units.Charger) {
		}
	}
	return nil
}

// skipUnit steps over a unit if it comes next.
func (p *reader) skipUnit(u units.Unit) bool {
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
	if t.Text != "+" && t.Text != "?" && t.Text != "ish" {
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
	if t.Text != "+" {
		p.approx = true
	} else if p.bound == noMeaning {
		p.bound = atLeast
	}
}

// smallerUnits adds the minutes after hours and the seconds after minutes.
func (p *reader) smallerUnits(m *measure) error {
	if p.want != units.Minutes && p.want != units.Any || !m.n.Integer {
		return nil
	}
	total := m.unit.ToBase(m.n)
	for in := m.unit; in != units.Second && p.wholeAt(0); {
		part := p.at(0).Num
		if in = p.smallerUnit(in); in == units.NoUnit {
			break
		}
		if part.Value >= 60 {
			return p.fail("has 60 or more in the smaller unit of a time", expected[units.Minutes].type_)
		}
		total += in.ToBase(part)
		m.n, m.settled = computed(total), true
	}
	return nil
}

// smallerUnit steps over a number after hours or minutes and returns its unit,
// NoUnit if it is a number of its own.
func (p *reader) smallerUnit(in units.Unit) units.Unit {
	start := p.i
	p.i++
	u, n := p.unitHere()
	switch {
	case u == units.Second, u == units.Minute && in == units.Hour:
		p.i += n
		return u
	case n > 0, p.isMark(0, "/"), p.isMark(0, ":"), p.isMark(0, "⁄"):
		p.i = start
		return units.NoUnit
	case in == units.Hour:
		return units.Minute
	}
	return units.Second
}

// colonFollows reports a colon with a number right after it.
func (p *reader) colonFollows() bool {
	return p.isMark(0, ":") && p.at(1).Kind == lexis.ANumber && p.at(1).Glued
}

// clock reads the rest of 1:30 or 1:30:00. Two parts are minutes and seconds
// unless the column is in hours.
func (p *reader) clock(first lexis.Number) (measure, error) {
	parts := []lexis.Number{first}
	for p.colonFollows() {
		parts = append(parts, p.at(1).Num)
		p.i += 2
	}
	if !isClock(parts) {
		return measure{}, p.fail("is no clock time", expected[units.Minutes].type_)
	}
	a, b, read, doubtful := first.Value, parts[1].Value, 0.0, false
	unit, n := p.unitHere()
	switch {
	case len(parts) == 2 && unit == units.Hour: // "1:30 h"
		read, p.i = a*60+b, p.i+n
	case len(parts) == 3:
		read, doubtful = a*60+b+parts[2].Value/60, parts[2].Value == 0
	case p.column == units.Hour:
		read = a*60 + b
	default:
		read, doubtful = a+b/60, p.column != units.Second && a < 24
	}
	if doubtful {
		p.doubtClock(a, b, read)
	}
	if slices.Contains([]string{"am", "min", "h", "mins"}, p.at(0).Text) {
		p.i++
	}
	return measure{n: computed(read), unit: units.Minute, settled: true}, nil
}

// isClock reports two or three whole numbers, the last with decimals at most, and
// all but the first below 60.
func isClock(parts []lexis.Number) bool {
	for i, n := range parts {
		if i > 0 && n.Value >= 60 || i < len(parts)-1 && !n.Integer {
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
	if !t.Glued {
		return
	}
	switch {
	case t.Kind == lexis.AMark && (t.Text == "^" || t.Text == "*"):
	case t.Kind == lexis.AWord && utf8.RuneCountInString(t.Text) == 1 && t.Text != "x" && p.at(1).Kind != lexis.ANumber && !p.unitFollows():
	default:
		return
	}
	p.i++
	p.doubt("the mark “%s” after the number was taken for a footnote", t.Text)
}

// base is a measure in its base unit. A bare number is in the column's unit,
// else in the base unit of the dimension expected.
func (p *reader) base(m measure) (float64, units.Unit, error) {
	u := cmp.Or(m.unit, p.column, units.Base[p.want])
	dim := u.Dimension()
	switch {
	case u == units.NoUnit:
		return m.n.Value, units.NoUnit, nil
	case p.want == units.Score && u == units.PercentUnit, p.want == units.Count && dim == units.Count:
		return m.n.Value, units.NoUnit, nil
	case p.want == units.Chargers && dim == units.Mass:
		p.doubt("%s g was read as chargers of 8 g", format(u.ToBase(m.n)))
		return u.ToBase(m.n) / 8, units.Charger, nil
	case !u.Sized():
		return 0, u, p.unsized(u)
	case p.want != units.Any && dim != p.want:
		return 0, u, p.mismatch(m, u)
	case m.settled:
		return m.n.Value, units.Base[dim], nil
	}
	return u.ToBase(m.n), units.Base[dim], nil
}

// mismatch is the error of a unit of another dimension than expected.
func (p *reader) mismatch(m measure, u units.Unit) error {
	is := "is in " + u.String()
	if m.unit == units.NoUnit {
		is = "stands in a column of " + u.String()
	}
	cure := expected[p.want].type_
	switch {
	case p.want == units.Mass && u.Dimension() == units.Volume:
		cure = "type grams, or give the ingredient's density"
	case p.want == units.Mass && u == units.PercentUnit:
		cure = "type grams, or head the column with the basis of the percentage"
	case p.want == units.Volume && u.Dimension() == units.Mass:
		cure = "type millilitres, or head the column as a weight"
	}
	return p.fail(is+" where "+expected[p.want].what+" is expected", cure)
}
