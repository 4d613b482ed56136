package quantity

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// measure is a number with the unit written after it.
type measure struct {
	n       number
	unit    Unit
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
	s := span{low: m, high: m, comma: m.n.comma}
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
	case single && s.low.unit == NoUnit && p.want != Score && p.operator("/"):
		err = p.slash(s)
	case p.rangeFollows():
		err = p.upTo(s)
	case p.spreadFollows() && s.spread == nil:
		s.spread = new(measure)
		*s.spread, err = p.measure()
	case s.scale == 0 && p.want == Score && p.scaleFollows():
		var m measure
		m, err = p.measure()
		s.scale = m.n.value
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
		if s.low.unit == NoUnit && s.spread.unit != NoUnit { // 12 ± 2 g
			s.low.unit, s.high.unit = s.spread.unit, s.spread.unit
			if c, err = p.ends(s); err != nil {
				return err
			}
		}
		if err = p.widen(&c, *s.spread); err != nil {
			return err
		}
	}
	if c.scale == 0 && p.want == Score && c.written == PercentUnit {
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
	case m.unit == Fahrenheit, m.unit == NoUnit && p.column == Fahrenheit:
		v = m.n.value * 5 / 9 // a difference, not a temperature
	}
	c.plusMinus = math.Abs(v)
	return nil
}

// belongs reports whether a unit written in the cell is one of those expected.
func (p *reader) belongs(u Unit) bool {
	return u == NoUnit || u.sized() && (p.want == Any || u.Dimension() == p.want)
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
	return p.at(n).kind == aNumber || p.isMark(n, "-") && p.at(n+1).kind == aNumber && p.at(n+1).glued
}

// operator steps over a sign that stands before a number.
func (p *reader) operator(sign string) bool {
	if p.at(0).text != sign || p.at(1).kind != aNumber {
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
	switch first := p.at(0).text; {
	case first == "/":
		n = 1
	case m != outOf && !(n == 1 && (first == "de" || first == "of")):
		return false
	}
	return p.at(n).kind == aNumber && p.stepOver(n)
}

// measure reads a signed number, mixed fraction or clock time, and its unit.
func (p *reader) measure() (measure, error) {
	negative := p.isMark(0, "-")
	if negative {
		p.i++
	}
	written := p.at(0).text
	m, err := p.magnitude()
	if err == nil && m.unit == NoUnit {
		err = p.readUnit(&m)
	}
	if err != nil {
		return m, err
	}
	if m.n.other != "" {
		m.n = p.thousands(m.n, m.unit, written)
	}
	if negative {
		m.n.value = -m.n.value
		if m.n.digits != "" {
			m.n.digits = "-" + m.n.digits
		}
		p.other = -p.other
	}
	p.footnote()
	return m, nil
}

// magnitude reads a number, mixed fraction or clock time without its unit.
func (p *reader) magnitude() (measure, error) {
	n := p.at(0).num
	p.i++
	switch {
	case n.integer && p.wholeAt(0) && (p.isMark(1, "/") || p.isMark(1, "⁄")) && p.at(2).kind == aNumber:
		f, err := p.fraction(p.at(0).num, p.at(2).num)
		p.i += 3
		return measure{n: computed(n.value + f)}, err
	case p.isMark(0, "⁄") && p.at(1).kind == aNumber:
		f, err := p.fraction(n, p.at(1).num)
		p.i += 2
		m := measure{n: computed(f)}
		if p.want == Percent && !p.unitFollows() && p.column != PercentUnit {
			m.unit = Fraction
		}
		return m, err
	case p.at(0).glued && p.colonFollows() && (p.want == Minutes || p.want == Any):
		return p.clock(n)
	}
	return measure{n: n}, nil
}

// wholeAt reports a whole number n places on.
func (p *reader) wholeAt(n int) bool { return p.at(n).kind == aNumber && p.at(n).num.integer }

func computed(v float64) number { return number{value: v} }

// ratio is a/b for whole numbers with 0 < b <= 100 and a < b.
func ratio(a, b number) (float64, bool) {
	if !a.integer || !b.integer || b.value <= 0 || b.value > 100 || a.value >= b.value {
		return 0, false
	}
	return a.value / b.value, true
}

// fraction is the ratio of a fraction typed as one.
func (p *reader) fraction(a, b number) (float64, error) {
	f, ok := ratio(a, b)
	if !ok {
		return 0, p.fail("has a fraction that makes no sense", expected[p.want].type_)
	}
	return f, nil
}

// thousands settles 1.250 and 1,250. The point is read as a decimal mark, the
// comma as one for thousands, with a doubt; where a number over a thousand is
// not to be expected both are decimal marks.
func (p *reader) thousands(n number, unit Unit, written string) number {
	small := false
	switch cmp.Or(unit, p.column) {
	case Kilogram, Pound, Ounce, Litre, Decilitre, Hour, Day:
		small = true
	}
	switch p.want {
	case Percent, Plain, Temperature, Score, Minutes, Chargers:
		small = true
	}
	if small && !strings.Contains(n.digits, ".") {
		n.digits, n.other, n.comma = n.other, n.digits, true
		n.value, _ = strconv.ParseFloat(n.digits, 64)
	}
	if v, err := strconv.ParseFloat(n.other, 64); err == nil && !small {
		p.other = v
	}
	if !small || p.want == Minutes && n.comma {
		p.doubt("%s may also be %s: read as %s", written, n.other, format(n.value))
	}
	return n
}

// upTo reads the upper end of a range.
func (p *reader) upTo(s *span) (err error) {
	if s.low != s.high {
		return p.fail("looks like a date or has three numbers", expected[p.want].type_)
	}
	s.high, err = p.measure()
	s.comma = s.comma || s.high.n.comma
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
	part := ok && b.n.value <= 4 // a half, a third, a quarter
	switch {
	case part && p.comesInParts(b.unit):
		if b.unit == NoUnit {
			p.doubt("%g/%g was read as a fraction, %.3g; it may be a range", a.value, b.n.value, f)
		}
		s.only(measure{n: computed(f), unit: b.unit})
	case a.value < b.n.value && (p.want == Minutes && !part || p.want == Temperature):
		p.doubt("%g/%g was read as a range, %g to %g", a.value, b.n.value, a.value, b.n.value)
		s.high = b
	default:
		return p.fail("has two numbers", expected[p.want].type_+", the one that is meant")
	}
	return nil
}

// comesInParts reports what is measured in halves and quarters.
func (p *reader) comesInParts(unit Unit) bool {
	switch p.want {
	case Plain, Temperature:
		return false
	case Count, Chargers, Volume:
		return true
	}
	return unit != NoUnit
}

// sum adds amounts written with a plus: 1+1 chargers, 200+50 g.
func (p *reader) sum(s *span) error {
	b, err := p.measure()
	if err != nil {
		return err
	}
	switch p.want {
	case Mass, Volume, Count, Chargers:
	default:
		return p.fail("is a sum", expected[p.want].type_)
	}
	both := span{low: s.low, high: b}
	both.shareUnit()
	c, err := p.ends(both)
	if err != nil {
		return err
	}
	if p.want != Chargers {
		p.doubt("a sum was read as %s", format(c.low+c.high))
	}
	s.only(measure{n: computed(c.low + c.high), unit: c.in, settled: c.in != NoUnit})
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
	case p.want == Chargers && isChargerSize(b) && !isChargerSize(a):
		s.only(measure{n: a.n})
	case p.want == Chargers && isChargerSize(a) && !isChargerSize(b):
		s.only(measure{n: b.n})
	case (p.want == Mass || p.want == Volume || p.want == Minutes) && a.unit == NoUnit && a.n.value > 0:
		p.doubt("a product was read as %g times %g", a.n.value, b.n.value)
		s.only(measure{n: computed(a.n.value * b.n.value), unit: b.unit})
	default:
		return p.fail("is a product", expected[p.want].type_)
	}
	return nil
}

// isChargerSize reports what one charger may hold.
func isChargerSize(m measure) bool {
	return m.unit == Gram || m.unit == NoUnit && m.n.value >= 7 && m.n.value <= 17
}
