package sheet

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"

	"foamfield/ingest/shown"
)

// cellType is a cell's t attribute: how its content is written.
type cellType uint8

const (
	numberType cellType = iota
	sharedType
	stringType
	inlineType
	boolType
	faultType
	dateType
)

var cellTypes = map[string]cellType{
	"n": numberType, "s": sharedType, "str": stringType, "inlineStr": inlineType,
	"b": boolType, "e": faultType, "d": dateType,
}

// evaluate turns the content just read into the cell's kind and value. A cell
// without content stays Blank; found is false if it has not even an empty text.
func (p *partReader) evaluate(c *Cell) (found bool) {
	if p.inline || p.cellType == stringType || p.cellType == inlineType {
		said, flags := p.runs.resolve(p.content, c.Flags&Struck != 0)
		c.Flags = c.Flags&^Struck | flags
		p.setText(c, said)
		return p.hasValue
	}
	v := bytes.Trim(p.content, " \n\t\r")
	if len(v) == 0 {
		return false
	}
	switch p.cellType {
	case sharedType:
		p.setShared(c, v)
	case boolType:
		if !isTrue(v) && !isFalse(v) {
			p.unreadable(c, v, "a yes/no value")
			return true
		}
		c.Kind = Bool
		if isTrue(v) {
			c.Number = 1
		}
	case faultType:
		c.Kind, c.Text = Fault, p.word(v)
	case dateType:
		serial, as, ok := shown.ReadISO(string(v), p.book.date1904)
		if !ok {
			p.unreadable(c, v, "a date")
			return true
		}
		c.Kind, c.Number = kindOf(as), serial
	default:
		x, ok := decimal(v)
		if !ok {
			p.unreadable(c, v, "a number")
			return true
		}
		c.Kind, c.Number = kindOf(p.book.formats[c.Style].Of(x, p.book.date1904)), x
	}
	return true
}

// kindOf is what a cell with a number holds.
func kindOf(as shown.As) Kind {
	switch as {
	case shown.Day:
		return Date
	case shown.Clock:
		return Clock
	}
	return Number
}

func (p *partReader) unreadable(c *Cell, v []byte, wanted string) {
	p.sheet.damaged(p.row.Number, int(c.Col), fmt.Sprintf("the cell is marked as %s but holds %q; it is read as text", wanted, shorten(v)))
	c.Kind, c.Text = Text, p.word(v)
}

func shorten(b []byte) string {
	const most = 40
	if len(b) > most {
		return string(bytes.ToValidUTF8(b[:most], nil)) + "..."
	}
	return string(b)
}

func (p *partReader) setText(c *Cell, raw []byte) {
	if t := unescape(raw); len(t) > 0 {
		c.Kind, c.Text = Text, p.word(t)
	}
}

// setShared gives a cell the shared text of a number.
func (p *partReader) setShared(c *Cell, number []byte) {
	n, ok := wholeNumber(number)
	if !ok || n >= len(p.book.shared) {
		p.sheet.damaged(p.row.Number, int(c.Col), "the cell's text is missing from the file")
		c.Kind, c.Text = Fault, "(text missing)"
		return
	}
	said := p.book.sharedText(n, c.Flags&Struck != 0)
	c.Flags = c.Flags&^Struck | said.flags
	if said.text != "" {
		c.Kind, c.Text = Text, said.text
	}
}

// word returns a text as a string, one string for all cells with the same
// short text: logs repeat a few words many times.
func (p *partReader) word(b []byte) string {
	const longest, most = 40, 4096
	if len(b) > longest {
		return string(b)
	}
	if s, ok := p.words[string(b)]; ok {
		return s
	}
	s := string(b)
	if len(p.words) < most {
		p.words[s] = s
	}
	return s
}

// unescape resolves _xHHHH_, the way a workbook writes characters that XML
// cannot hold. The result may share b's memory.
func unescape(b []byte) []byte {
	i := bytes.Index(b, []byte("_x"))
	if i < 0 {
		return b
	}
	out := append([]byte(nil), b[:i]...)
	for i < len(b) {
		r, n := escapedUnit(b[i:])
		if n == 0 {
			out = append(out, b[i])
			i++
			continue
		}
		i += n
		if utf16.IsSurrogate(r) {
			low, m := escapedUnit(b[i:])
			if pair := utf16.DecodeRune(r, low); m > 0 && pair != utf8.RuneError {
				r = pair
				i += m
			}
		}
		out = utf8.AppendRune(out, r)
	}
	return out
}

func escapedUnit(b []byte) (rune, int) {
	const length = len("_xHHHH_")
	if len(b) < length || b[0] != '_' || b[1] != 'x' || b[length-1] != '_' {
		return 0, 0
	}
	var r rune
	for _, d := range b[2 : length-1] {
		switch {
		case d >= '0' && d <= '9':
			r = r<<4 | rune(d-'0')
		case d|0x20 >= 'a' && d|0x20 <= 'f':
			r = r<<4 | rune(d|0x20-'a'+10)
		default:
			return 0, 0
		}
	}
	return r, length
}

// address reads a cell's address such as C6.
func address(b []byte) (row, col int, ok bool) {
	i := 0
	for i < len(b) && i < 4 && b[i]|0x20 >= 'a' && b[i]|0x20 <= 'z' {
		col = col*26 + int(b[i]|0x20-'a') + 1
		i++
	}
	row, ok = wholeNumber(b[i:])
	return row, col, ok && i > 0 && row > 0
}

// wholeNumber reads a number of at most nine digits.
func wholeNumber(b []byte) (int, bool) {
	if len(b) == 0 || len(b) > 9 {
		return 0, false
	}
	n := 0
	for _, d := range b {
		if d < '0' || d > '9' {
			return 0, false
		}
		n = n*10 + int(d-'0')
	}
	return n, true
}

func isTrue(b []byte) bool  { return string(b) == "1" || string(b) == "true" }
func isFalse(b []byte) bool { return string(b) == "0" || string(b) == "false" }

func isZero(b []byte) bool {
	x, ok := decimal(b)
	return ok && x == 0
}

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// decimal reads a finite decimal number. Up to 15 digits and small powers of
// ten the quotient or product of two exact floats is correctly rounded; the
// rest goes the long way.
func decimal(b []byte) (float64, bool) {
	var mantissa uint64
	digits, decimals, i := 0, 0, 0
	negative := len(b) > 0 && b[0] == '-'
	if negative {
		i++
	}
	point := false
	for ; i < len(b); i++ {
		d := b[i]
		if d == '.' && !point {
			point = true
			continue
		}
		if d < '0' || d > '9' || digits == 15 {
			return slowDecimal(b)
		}
		mantissa = mantissa*10 + uint64(d-'0')
		digits++
		if point {
			decimals++
		}
	}
	if digits == 0 {
		return 0, false
	}
	x := float64(mantissa) / tens[decimals]
	if negative {
		x = -x
	}
	return x, true
}

func slowDecimal(b []byte) (float64, bool) {
	for _, c := range b {
		if (c < '0' || c > '9') && c != '.' && c != 'e' && c != 'E' && c != '+' && c != '-' {
			return 0, false
		}
	}
	x, err := strconv.ParseFloat(string(b), 64)
	return x, err == nil && !math.IsInf(x, 0)
}
