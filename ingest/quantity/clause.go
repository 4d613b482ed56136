package quantity

import (
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

// readClause reads a number and what hangs on it: a range, ±, a fraction, a
// scale, a product, a sum.
func (p *reader) readClause() error {
	a, err := p.measure()
	if err != nil {
		return err
	}
	b := a // the upper end
	c := clause{comma: a.n.comma}
	var spread *measure
	for more := true; more; {
		more = false
		switch {
		case p.isMark(0, "/") && p.at(1).kind == aNumber && a == b && a.unit == NoUnit && p.want != Score:
			p.i++
			if a, b, err = p.slash(a); err != nil {
				return err
			}
			if p.isMark(0, "/") {
				return p.fail("looks like a date", expected[p.want].type_)
			}
			more = true
		case p.rangeFollows():
			if a != b {
				return p.fail("looks like a date or has three numbers", expected[p.want].type_)
			}
			if b, err = p.measure(); err != nil {
				return err
			}
			c.comma = c.comma || b.n.comma
			more = true
		case p.marked("±", plusMinus) && spread == nil:
			m, err := p.measure()
			if err != nil {
				return err
			}
			spread, more = &m, true
		case c.scale == 0 && p.want == Score && p.scaleFollows():
			m, err := p.measure()
			if err != nil {
				return err
			}
			c.scale, more = m.n.value, true
		case a == b && p.isMark(0, "+") && p.at(1).kind == aNumber:
			p.i++
			if a, err = p.sum(a); err != nil {
				return err
			}
			b, more = a, true
		case a == b && p.at(0).kind == aWord && p.at(0).text == "x" && p.at(1).kind == aNumber:
			p.i++
			if a, err = p.product(a); err != nil {
				return err
			}
			b, more = a, true
		}
	}
	err = p.settle(c, a, b, spread)
	if err != nil && p.foreign == nil && !(p.belongs(a.unit) && p.belongs(b.unit)) { // 5 mL @ 10 min, 2.1 g (1 tsp)
		p.foreign, p.bound, p.approx, p.between = err, noMeaning, false, false
		return nil
	}
	return err
}

// settle brings a clause's numbers to one base unit and keeps it.
func (p *reader) settle(c clause, a, b measure, spread *measure) error {
	switch { // 10-15 min: the unit is of both
	case a.unit == NoUnit:
		a.unit = b.unit
	case b.unit == NoUnit:
		b.unit = a.unit
	}
	c.written = a.unit
	var err error
	if c.low, c.in, err = p.base(a); err != nil {
		return err
	}
	high, in, err := p.base(b)
	if err != nil {
		return err
	}
	if c.high = high; in != c.in {
		return p.fail("has two numbers in different kinds of unit", expected[p.want].type_)
	}
	if spread != nil {
		m := *spread
		switch {
		case m.unit == NoUnit:
			m.unit = a.unit
		case a.unit == NoUnit && c.written == NoUnit: // 12 ± 2 g
			c.written, a.unit, b.unit = m.unit, m.unit, m.unit
			if c.low, c.in, err = p.base(a); err != nil {
				return err
			}
			if c.high, _, err = p.base(b); err != nil {
				return err
			}
		}
		if c.plusMinus, in, err = p.base(m); err != nil {
			return err
		}
		if in != c.in {
			return p.fail("has a ± in another unit than its number", expected[p.want].type_)
		}
		if m.unit == Fahrenheit || m.unit == NoUnit && p.column == Fahrenheit {
			c.plusMinus = m.n.value * 5 / 9 // a difference, not a temperature
		}
		c.plusMinus = math.Abs(c.plusMinus)
		if c.low != c.high {
			return p.fail("has both a range and a ±", expected[p.want].type_)
		}
	}
	if c.scale == 0 && p.want == Score && c.written == PercentUnit {
		c.scale = 100
	}
	p.add(c)
	return nil
}

// belongs reports whether a unit written in the cell is one of those expected.
func (p *reader) belongs(u Unit) bool {
	return u == NoUnit || u.sized() && (p.want == Any || u.Dimension() == p.want)
}

// marked steps over a mark, or a phrase of that meaning, if a number follows.
func (p *reader) marked(mark string, m meaning) bool {
	n := 0
	if p.isMark(0, mark) {
		n = 1
	} else if got, k := matchPhrase(p.tokens, p.i); got == m {
		n = k
	} else if p.isMark(0, "(") && p.isMark(1, mark) {
		n = 2
	}
	if n > 0 && p.numberAt(n) {
		p.i += n
		return true
	}
	return false
}

// numberAt reports a number, possibly with its minus sign, n places on.
func (p *reader) numberAt(n int) bool {
	return p.at(n).kind == aNumber || p.isMark(n, "-") && p.at(n+1).kind == aNumber && p.at(n+1).glued
}

// rangeFollows steps over "-", "to", "bis" … before a second number.
func (p *reader) rangeFollows() bool {
	n := 0
	switch {
	case p.isMark(0, "-"), p.isMark(0, ".."):
		n = 1
	default:
		m, k := matchPhrase(p.tokens, p.i)
		if m == to || m == and && p.between {
			n = k
		}
	}
	if n == 0 {
		return false
	}
	if p.isMark(n, "~") { // 10-~15
		n++
	}
	if !p.numberAt(n) {
		return false
	}
	p.i += n
	return true
}

// scaleFollows steps over "/" or "out of" before the scale of a score.
func (p *reader) scaleFollows() bool {
	n := 0
	if p.isMark(0, "/") {
		n = 1
	} else if m, k := matchPhrase(p.tokens, p.i); m == outOf || k == 1 && (p.at(0).text == "de" || p.at(0).text == "of") {
		n = k
	}
	if n == 0 || p.at(n).kind != aNumber {
		return false
	}
	p.i += n
	return true
}

// measure reads a signed number, mixed fraction or clock time, and its unit.
func (p *reader) measure() (measure, error) {
	negative := false
	if p.isMark(0, "-") {
		negative = true
		p.i++
	}
	m := measure{n: p.at(0).num}
	written := p.at(0).text
	p.i++
	switch {
	case m.n.integer && p.at(0).kind == aNumber && p.at(0).num.integer && (p.isMark(1, "/") || p.isMark(1, "⁄")) && p.at(2).kind == aNumber:
		f, ok := ratio(p.at(0).num, p.at(2).num)
		if !ok {
			return m, p.fail("has a fraction that makes no sense", expected[p.want].type_)
		}
		m.n = computed(m.n.value + f)
		p.i += 3
	case p.isMark(0, "⁄") && p.at(1).kind == aNumber:
		f, ok := ratio(m.n, p.at(1).num)
		if !ok {
			return m, p.fail("has a fraction that makes no sense", expected[p.want].type_)
		}
		m.n = computed(f)
		p.i += 2
		if p.want == Percent && !p.unitFollows() && p.column != PercentUnit {
			m.unit = Fraction
		}
	case p.isMark(0, ":") && p.at(0).glued && p.at(1).kind == aNumber && p.at(1).glued && (p.want == Minutes || p.want == Any):
		var err error
		if m, err = p.clock(m.n); err != nil {
			return m, err
		}
	}
	if !m.settled && m.unit == NoUnit {
		if err := p.readUnit(&m); err != nil {
			return m, err
		}
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

func computed(v float64) number { return number{value: v} }

// ratio is a/b for whole numbers with 0 < b <= 100 and a < b.
func ratio(a, b number) (float64, bool) {
	if !a.integer || !b.integer || b.value <= 0 || b.value > 100 || a.value >= b.value {
		return 0, false
	}
	return a.value / b.value, true
}

// thousands settles 1.250 and 1,250. The point is read as a decimal mark, the
// comma as one for thousands, with a doubt; where a number over a thousand is
// not to be expected both are decimal marks.
func (p *reader) thousands(n number, unit Unit, written string) number {
	if unit == NoUnit {
		unit = p.column
	}
	small := false
	switch unit {
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

// slash decides what a/b is: a half, a third or a quarter of a spoon, a range of
// times; anything else is two numbers, never their quotient.
func (p *reader) slash(a measure) (measure, measure, error) {
	b, err := p.measure()
	if err != nil {
		return a, b, err
	}
	f, ok := ratio(a.n, b.n)
	switch {
	case ok && b.n.value <= 4 && p.want != Plain && p.want != Temperature && (b.unit != NoUnit || p.want == Count || p.want == Chargers || p.want == Volume):
		m := measure{n: computed(f), unit: b.unit}
		if b.unit == NoUnit {
			p.doubt("%g/%g was read as a fraction, %.3g; it may be a range", a.n.value, b.n.value, f)
		}
		return m, m, nil
	case a.n.value < b.n.value && (p.want == Minutes && !(ok && b.n.value <= 4) || p.want == Temperature):
		p.doubt("%g/%g was read as a range, %g to %g", a.n.value, b.n.value, a.n.value, b.n.value)
		return a, b, nil
	}
	if p.isMark(0, "/") {
		return a, b, p.fail("looks like a date", expected[p.want].type_)
	}
	return a, b, p.fail("has two numbers", expected[p.want].type_+", the one that is meant")
}

// sum adds amounts written with a plus: 1+1 chargers, 200+50 g.
func (p *reader) sum(a measure) (measure, error) {
	b, err := p.measure()
	if err != nil {
		return a, err
	}
	switch p.want {
	case Mass, Volume, Count, Chargers:
	default:
		return a, p.fail("is a sum", expected[p.want].type_)
	}
	if a.unit == NoUnit {
		a.unit = b.unit
	}
	if b.unit == NoUnit {
		b.unit = a.unit
	}
	x, in, err := p.base(a)
	if err != nil {
		return a, err
	}
	y, _, err := p.base(b)
	if err != nil {
		return a, err
	}
	if p.want != Chargers {
		p.doubt("a sum was read as %s", format(x+y))
	}
	if in == NoUnit {
		return measure{n: computed(x + y)}, nil
	}
	return measure{n: computed(x + y), unit: in, settled: true}, nil
}

// product reads 2 x 8 g: so many chargers of a size, or an amount so many times.
func (p *reader) product(a measure) (measure, error) {
	b, err := p.measure()
	if err != nil {
		return a, err
	}
	switch {
	case p.want == Chargers:
		size := func(m measure) bool { return m.unit == Gram || m.unit == NoUnit && m.n.value >= 7 && m.n.value <= 17 }
		switch {
		case size(b) && !size(a):
			return measure{n: a.n}, nil
		case size(a) && !size(b):
			return measure{n: b.n}, nil
		}
	case (p.want == Mass || p.want == Volume || p.want == Minutes) && a.unit == NoUnit && a.n.value > 0:
		p.doubt("a product was read as %g times %g", a.n.value, b.n.value)
		return measure{n: computed(a.n.value * b.n.value), unit: b.unit}, nil
	}
	return a, p.fail("is a product", expected[p.want].type_)
}
