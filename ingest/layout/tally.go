package layout

import (
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/sheet"
)

// statistic is what a row may say of the rows above it.
type statistic uint8

const (
	noStatistic statistic = iota
	mean
	median
	total
	least
	most
	deviation
	variation
	standardError
	breadth
	count
)

// moments sum up the numbers of one column.
type moments struct {
	n                          int
	mean, m2, sum, least, most float64
}

func (m *moments) add(x float64) {
	if m.n == 0 || x < m.least {
		m.least = x
	}
	if m.n == 0 || x > m.most {
		m.most = x
	}
	m.n++
	m.sum += x
	d := x - m.mean
	m.mean += d / float64(m.n)
	m.m2 += d * (x - m.mean)
}

// told reports whether the numbers differ, so that agreeing with a statistic
// of them says something.
func (m *moments) told(s statistic) bool {
	return m.n >= 2 && (m.most > m.least || s == total)
}

// values are what the statistic may be given as.
func (m *moments) values(s statistic) []float64 {
	sd := math.Sqrt(m.m2 / max(1, float64(m.n-1)))
	switch s {
	case mean:
		return []float64{m.mean}
	case total:
		return []float64{m.sum}
	case least:
		return []float64{m.least}
	case most:
		return []float64{m.most}
	case deviation:
		return []float64{sd, math.Sqrt(m.m2 / float64(m.n))}
	case variation:
		return []float64{sd / m.mean, 100 * sd / m.mean}
	case standardError:
		return []float64{sd / math.Sqrt(float64(m.n))}
	case breadth:
		return []float64{m.most - m.least}
	case count:
		return []float64{float64(m.n)}
	}
	return nil
}

// tally keeps the moments of a table's columns: of all rows, and of those
// since the last furniture. It is brought up to date only when somebody asks,
// as most tables have no row that sums up others.
type tally struct {
	whole, block []moments // by head
	next         int       // the first row not counted yet
	blockFrom    int       // the first row of the block
	ids, digits  int       // filled label cells, and those with a digit
	medians      int       // worked out so far
}

// maxMedians bounds how often columns are sorted.
const maxMedians = 20

// counted brings the tally up to date.
func (t *Table) counted() *tally {
	c := &t.tally
	if c.whole == nil {
		c.whole, c.block = make([]moments, len(t.Heads)), make([]moments, len(t.Heads))
	}
	label := t.labelCol()
	for ; c.next < len(t.Rows); c.next++ {
		if c.next == c.blockFrom {
			clear(c.block)
		}
		cells := t.Sheet.Rows[t.Rows[c.next].at].Cells
		for k := range cells {
			cell := &cells[k]
			if int(cell.Col) == label && !empty(cell) {
				c.ids++
				if cell.Kind != sheet.Text || isShortID(cell.Text) {
					c.digits++
				}
			}
			h := t.headAt(int(cell.Col))
			if x, ok := numberIn(cell); h >= 0 && ok {
				c.whole[h].add(x)
				c.block[h].add(x)
			}
		}
	}
	return c
}

// agreement counts the numbers of a row that are the statistic of those above,
// and those that are not; a column of equal numbers can only speak against it.
func (t *Table) agreement(s statistic, cells []sheet.Cell) (agree, differ int) {
	c := t.counted()
	if s == median {
		if c.medians++; c.medians > maxMedians {
			return 0, 0
		}
		return t.medianAgreement(cells)
	}
	a, d := t.agreesWith(c.whole, s, cells)
	if x, y := t.agreesWith(c.block, s, cells); x-y > a-d {
		return x, y
	}
	return a, d
}

func (t *Table) agreesWith(above []moments, s statistic, cells []sheet.Cell) (agree, differ int) {
	for k := range cells {
		h := t.headAt(int(cells[k].Col))
		x, ok := numberIn(&cells[k])
		if h < 0 || !ok || int(cells[k].Col) == t.labelCol() || above[h].n == 0 {
			continue
		}
		switch same := isOneOf(x, stepIn(&cells[k]), above[h].values(s)); {
		case !same:
			differ++
		case above[h].told(s):
			agree++
		}
	}
	return agree, differ
}

// isOneOf reports whether a number is one of others, rounded to its step.
func isOneOf(x, step float64, others []float64) bool {
	for _, o := range others {
		if math.Abs(x-o) <= 0.5*step+1e-9*math.Abs(o) {
			return true
		}
	}
	return false
}

// numberIn is the number a cell starts with.
func numberIn(c *sheet.Cell) (x float64, ok bool) {
	switch c.Kind {
	case sheet.Number, sheet.Clock:
		return c.Number, true
	case sheet.Text:
		if digits := leadingDigits(c.Text); digits != "" {
			x, err := strconv.ParseFloat(digits, 64)
			return x, err == nil
		}
	}
	return 0, false
}

// stepIn is the step of the last digit of a cell's number.
func stepIn(c *sheet.Cell) float64 {
	digits := leadingDigits(c.Text)
	if c.Kind != sheet.Text {
		digits = strconv.FormatFloat(c.Number, 'f', -1, 64)
	}
	_, decimals, _ := strings.Cut(digits, ".")
	return math.Pow10(-len(decimals))
}

// leadingDigits is the number a text starts with, past signs of a bound, with
// a decimal point.
func leadingDigits(text string) string {
	text = strings.TrimLeft(text, "<>=≥≤~≈ \u00a0")
	end := 0
	for end < len(text) && end < 18 && (text[end] >= '0' && text[end] <= '9' || text[end] == '.' || text[end] == ',' || end == 0 && text[end] == '-') {
		end++
	}
	return strings.TrimRight(strings.Replace(text[:end], ",", ".", 1), ".-")
}
