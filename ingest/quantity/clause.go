package quantity

import (
	"cmp"
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
	"math"
	"strconv"
	"strings"
)

// measure is a number with the unit written after it.
type measure struct {
	n       lexis.Number
	unit    units.Unit
	settled bool // value already in the base unit of unit
}

// span is a clause as it is typed: one measure, or two, with what hangs on them.
type span struct {
	low, high measure
	spread    *measure // after ±
	scale     float64
	comma     bool
}

func (s *span) only(m measure) { s.low, s.high = m, m }

// shareUnit: 10-15 min are both minutes.
func (s *span) shareUnit() {
	s.low.unit = cmp.Or(s.low.unit, s.high.unit)
	s.high.unit = cmp.Or(s.high.unit, s.low.unit)
}

// readClause reads a number and what hangs on it.
func (p *reader) readClause() error {
	m, err := p.measure()
	s := span{low: m, high: m, comma: m.n.Comma}
	for more := true; more && err == nil; {
		more, err = p.extend(&s)
	}
	if err != nil {
		return err
	}
	err = p.settle(s)
	if err != nil && p.foreign == nil && !(p.belongs(s.low.unit) && p.belongs(s.high.unit)) { // 5 mL @ 10 min, 2.1 g (1 tsp)
		p.foreign, p.bound, p.approx, p.between = err, noMeaning, false, false
		return nil
	}
	return err
}

// extend reads the next thing that hangs on a number: a fraction, a range, ±, a
// scale, a sum, a product. It is false when nothing does.
func (p *reader) extend(s *span) (more bool, err error) {
	single := s.low == s.high
	switch {
	case single && s.low.unit == units.NoUnit && p.want != units.Score && p.operator("/"):
		err = p.slash(s)
	case p.rangeFollows():
		err = p.upTo(s)
	case p.spreadFollows() && s.spread == nil:
		s.spread = new(measure)
		*s.spread, err = p.measure()
	case s.scale == 0 && p.want == units.Score && p.scaleFollows():
		var m measure
		m, err = p.measure()
		s.scale = m.n.Value
	case single && p.operator("+"):
		err = p.sum(s)
	case single && p.operator("x"):
		err = p.product(s)
	default:
		return false, nil
	}
	return true, err
}

// settle brings a span's numbers to one base unit and keeps the clause.
func (p *reader) settle(s span) error {
	s.shareUnit()
	c, err := p.ends(s)
	if err != nil {
		return err
	}
	if s.spread != nil {
		if s.low.unit == units.NoUnit && s.spread.unit != units.NoUnit { // 12 ± 2 g
			s.low.unit, s.high.unit = s.spread.unit, s.spread.unit
			if c, err = p.ends(s); err != nil {
				return err
			}
		}
		if err = p.widen(&c, *s.spread); err != nil {
			return err
		}
	}
	if c.scale == 0 && p.want == units.Score && c.written == units.PercentUnit {
		c.scale = 100
	}
	p.add(c)
	return nil
}

// ends is a span without its ±, its two ends in one base unit.
func (p *reader) ends(s span) (c clause, err error) {
	c = clause{written: s.low.unit, scale: s.scale, comma: s.comma}
	if c.low, c.in, err = p.base(s.low); err != nil {
		return c, err
	}
	high, in, err := p.base(s.high)
	if err == nil && in != c.in {
		err = p.fail("has two numbers in different kinds of unit", expected[p.want].type_)
	}
	c.high = high
	return c, err
}

// widen gives a clause its half width after ±.
func (p *reader) widen(c *clause, m measure) error {
	m.unit = cmp.Or(m.unit, c.written)
	v, in, err := p.base(m)
	switch {
	case err != nil:
		return err
	case in != c.in:
		return p.fail("has a ± in another unit than its number", expected[p.want].type_)
	case c.low != c.high:
		return p.fail("has both a range and a ±", expected[p.want].type_)
	case m.unit == units.Fahrenheit, m.unit == units.NoUnit && p.column == units.Fahrenheit:
		v = m.n.Value * 5 / 9 // a difference, not a temperature
	}
	c.plusMinus = math.Abs(v)
	return nil
}

// belongs reports whether a unit written in the cell is one of those expected.
func (p *reader) belongs(u units.Unit) bool {
	return u == units.NoUnit || u.Sized() && (p.want == units.Any || u.Dimension() == p.want)
}

// spreadFollows steps over ± before its number.
func (p *reader) spreadFollows() bool {
	m, n := matchPhrase(p.tokens, p.i)
	switch {
	case p.isMark(0, "±"):
		n = 1
	case p.isMark(0, "(") && p.isMark(1, "±"):
		n = 2
	case m != plusMinus:
		return false
	}
	return p.stepOver(n)
}

// stepOver steps over n tokens if a number stands behind them.
func (p *reader) stepOver(n int) bool {
	follows := p.numberAt(n)
	if follows {
		p.i += n
	}
	return follows
}

// numberAt reports a number, possibly with its minus sign, n places on.
func (p *reader) numberAt(n int) bool {
	return p.at(n).Kind == lexis.ANumber || p.isMark(n, "-") && p.at(n+1).Kind == lexis.ANumber && p.at(n+1).Glued
}

// operator steps over a sign that stands before a number.
func (p *reader) operator(sign string) bool {
	if p.at(0).Text != sign || p.at(1).Kind != lexis.ANumber {
		return false
	}
	p.i++
	return true
}

// rangeFollows steps over "-", "to", "bis" … before a second number.
func (p *reader) rangeFollows() bool {
	m, n := matchPhrase(p.tokens, p.i)
	switch {
	case p.isMark(0, "-"), p.isMark(0, ".."):
		n = 1
	case m != to && !(m == and && p.between):
		return false
	}
	if p.isMark(n, "~") { // 10-~15
		n++
	}
	return p.stepOver(n)
}

// scaleFollows steps over "/" or "out of" before the scale of a score.
func (p *reader) scaleFollows() bool {
	m, n := matchPhrase(p.tokens, p.i)
	switch first := p.at(0).Text; {
	case first == "/":
		n = 1
	case m != outOf && !(n == 1 && (first == "de" || first == "of")):
		return false
	}
	return p.at(n).Kind == lexis.ANumber && p.stepOver(n)
}

// measure reads a signed number, mixed fraction or clock time, and its unit.
func (p *reader) measure() (measure, error) {
	negative := p.isMark(0, "-")
	if negative {
		p.i++
	}
	written := p.at(0).Text
	m, err := p.magnitude()
	if err == nil && m.unit == units.NoUnit {
		err = p.readUnit(&m)
	}
	if err != nil {
		return m, err
	}
	if m.n.Other != "" {
		m.n = p.thousands(m.n, m.unit, written)
	}
	if negative {
		m.n.Value = -m.n.Value
		if m.n.Digits != "" {
			m.n.Digits = "-" + m.n.Digits
		}
		p.other = -p.other
	}
	p.footnote()
	return m, nil
}

// magnitude reads a number, mixed fraction or clock time without its unit.
func (p *reader) magnitude() (measure, error) {
	n := p.at(0).Num
	p.i++
	switch {
	case n.Integer && p.wholeAt(0) && (p.isMark(1, "/") || p.isMark(1, "⁄")) && p.at(2).Kind == lexis.ANumber:
		f, err := p.fraction(p.at(0).Num, p.at(2).Num)
		p.i += 3
		return measure{n: computed(n.Value + f)}, err
	case p.isMark(0, "⁄") && p.at(1).Kind == lexis.ANumber:
		f, err := p.fraction(n, p.at(1).Num)
		p.i += 2
		m := measure{n: computed(f)}
		if p.want == units.Percent && !p.unitFollows() && p.column != units.PercentUnit {
			m.unit = units.Fraction
		}
		return m, err
	case p.at(0).Glued && p.colonFollows() && (p.want == units.Minutes || p.want == units.Any):
		return p.clock(n)
	}
	return measure{n: n}, nil
}

// wholeAt reports a whole number n places on.
func (p *reader) wholeAt(n int) bool { return p.at(n).Kind == lexis.ANumber && p.at(n).Num.Integer }

func computed(v float64) lexis.Number { return lexis.Number{Value: v} }

// ratio is a/b for whole numbers with 0 < b <= 100 and a < b.
func ratio(a, b lexis.Number) (float64, bool) {
	if !a.Integer || !b.Integer || b.Value <= 0 || b.Value > 100 || a.Value >= b.Value {
		return 0, false
	}
	return a.Value / b.Value, true
}

// fraction is the ratio of a fraction typed as one.
func (p *reader) fraction(a, b lexis.Number) (float64, error) {
	f, ok := ratio(a, b)
	if !ok {
		return 0, p.fail("has a fraction that makes no sense", expected[p.want].type_)
	}
	return f, nil
}

// thousands settles 1.250 and 1,250. The point is read as a decimal mark, the
// comma as one for thousands, with a doubt; where a number over a thousand is
// not to be expected both are decimal marks.
func (p *reader) thousands(n lexis.Number, unit units.Unit, written string) lexis.Number {
	small := false
	switch cmp.Or(unit, p.column) {
	case units.Kilogram, units.Pound, units.Ounce, units.Litre, units.Decilitre, units.Hour, units.Day:
		small = true
	}
	switch p.want {
	case units.Percent, units.Plain, units.Temperature, units.Score, units.Minutes, units.Chargers:
		small = true
	}
	if small && !strings.Contains(n.Digits, ".") {
		n.Digits, n.Other, n.Comma = n.Other, n.Digits, true
		n.Value, _ = strconv.ParseFloat(n.Digits, 64)
	}
	if v, err := strconv.ParseFloat(n.Other, 64); err == nil && !small {
		p.other = v
	}
	if !small || p.want == units.Minutes && n.Comma {
		p.doubt("%s may also be %s: read as %s", written, n.Other, format(n.Value))
	}
	return n
}

// upTo reads the upper end of a range.
func (p *reader) upTo(s *span) (err error) {
	if s.low != s.high {
		return p.fail("looks like a date or has three numbers", expected[p.want].type_)
	}
	s.high, err = p.measure()
	s.comma = s.comma || s.high.n.Comma
	return err
}

// slash decides what a/b is: a half, a third or a quarter of a spoon, a range of
// times; anything else is two numbers, never their quotient.
func (p *reader) slash(s *span) error {
	a := s.low.n
	b, err := p.measure()
	if err != nil {
		return err
	}
	if p.isMark(0, "/") {
		return p.fail("looks like a date", expected[p.want].type_)
	}
	f, ok := ratio(a, b.n)
	part := ok && b.n.Value <= 4 // a half, a third, a quarter
	switch {
	case part && p.comesInParts(b.unit):
		if b.unit == units.NoUnit {
			p.doubt("%g/%g was read as a fraction, %.3g; it may be a range", a.Value, b.n.Value, f)
		}
		s.only(measure{n: computed(f), unit: b.unit})
	case a.Value < b.n.Value && (p.want == units.Minutes && !part || p.want == units.Temperature):
		p.doubt("%g/%g was read as a range, %g to %g", a.Value, b.n.Value, a.Value, b.n.Value)
		s.high = b
	default:
		return p.fail("has two numbers", expected[p.want].type_+", the one that is meant")
	}
	return nil
}

// comesInParts reports what is measured in halves and quarters.
func (p *reader) comesInParts(unit units.Unit) bool {
	switch p.want {
	case units.Plain, units.Temperature:
		return false
	case units.Count, units.Chargers, units.Volume:
		return true
	}
	return unit != units.NoUnit
}

// sum adds amounts written with a plus: 1+1 chargers, 200+50 g.
func (p *reader) sum(s *span) error {
	b, err := p.measure()
	if err != nil {
		return err
	}
	switch p.want {
	case units.Mass, units.Volume, units.Count, units.Chargers:
	default:
		return p.fail("is a sum", expected[p.want].type_)
	}
	both := span{low: s.low, high: b}
	both.shareUnit()
	c, err := p.ends(both)
	if err != nil {
		return err
	}
	if p.want != units.Chargers {
		p.doubt("a sum was read as %s", format(c.low+c.high))
	}
	s.only(measure{n: computed(c.low + c.high), unit: c.in, settled: c.in != units.NoUnit})
	return nil
}

// product reads 2 x 8 g: so many chargers of a size, or an amount so many times.
func (p *reader) product(s *span) error {
	a := s.low
	b, err := p.measure()
	if err != nil {
		return err
	}
	switch {
	case p.want == units.Chargers && isChargerSize(b) && !isChargerSize(a):
		s.only(measure{n: a.n})
	case p.want == units.Chargers && isChargerSize(a) && !isChargerSize(b):
		s.only(measure{n: b.n})
	case (p.want == units.Mass || p.want == units.Volume || p.want == units.Minutes) && a.unit == units.NoUnit && a.n.Value > 0:
		p.doubt("a product was read as %g times %g", a.n.Value, b.n.Value)
		s.only(measure{n: computed(a.n.Value * b.n.Value), unit: b.unit})
	default:
		return p.fail("is a product", expected[p.want].type_)
	}
	return nil
}

// isChargerSize reports what one charger may hold.
func isChargerSize(m measure) bool {
	return m.unit == units.Gram || m.unit == units.NoUnit && m.n.Value >= 7 && m.n.Value <= 17
}
