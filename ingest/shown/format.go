package shown

import (
	"strings"
	"unicode/utf8"
)

// As is what a format shows a number as.
type As uint8

// What a number can be shown as; the general format is none's own.
const (
	General As = iota
	Number
	Day   // a serial day, perhaps with its time
	Clock // only a time of day, or an elapsed time
)

// Format is what a number format code says that a reader needs: whether the
// number is a day or a time, and the literal text around its digits.
type Format struct {
	Code string
	As   As

	timed     bool // a Day that shows its time of day
	elapsed   bool // a Clock that counts past its largest unit: [h]:mm
	noHours   bool // a Clock of minutes and seconds only
	fractions bool // seconds with decimals
	sections  []formatPart
}

// formatPart is one of a code's parts, for positive, negative and zero numbers.
type formatPart struct {
	prefix, suffix string
	digits         bool // it shows the number at all
	percent        int  // how many times the number is shown as per cent
	compare        string
	limit          float64
}

// Parse reads a number format code. Codes are made by programs and
// people; whatever is not understood is a plain number.
func Parse(code string) Format {
	f := Format{Code: code, As: Number}
	if code == "" || strings.EqualFold(code, "General") {
		return Format{}
	}
	parts := splitSections(code)
	f.readDate(parts[0])
	if f.As != Number {
		return f
	}
	for i, p := range parts {
		if i == 3 {
			break // the fourth is for text
		}
		f.sections = append(f.sections, readSection(p))
	}
	return f
}

// splitSections cuts a code at the semicolons that are not literal.
func splitSections(code string) []string {
	var parts []string
	start := 0
	for i := 0; i < len(code); {
		kind, n := formatItem(code[i:])
		if kind == itemPlain && code[i] == ';' {
			parts = append(parts, code[start:i])
			start = i + 1
		}
		i += n
	}
	return append(parts, code[start:])
}

type itemKind uint8

const (
	itemPlain   itemKind = iota // one byte of the code
	itemLiteral                 // "text" or \c
	itemSpace                   // _c or *c: spacing and filling
	itemBracket                 // [Red], [h], [$kr-41D], [<5]
)

// formatItem measures the item a code begins with.
func formatItem(code string) (itemKind, int) {
	switch code[0] {
	case '"':
		if j := strings.IndexByte(code[1:], '"'); j >= 0 {
			return itemLiteral, j + 2
		}
		return itemLiteral, len(code)
	case '\\':
		return itemLiteral, 1 + runeLength(code[1:])
	case '_', '*':
		return itemSpace, 1 + runeLength(code[1:])
	case '[':
		if j := strings.IndexByte(code, ']'); j >= 0 {
			return itemBracket, j + 1
		}
	}
	return itemPlain, 1
}

func runeLength(s string) int {
	for i := range s {
		if i > 0 {
			return i
		}
	}
	return len(s)
}

// dateParts are the parts of a day or time that a code shows.
type dateParts struct {
	day, hour, minute, second bool
	short                     bool // m or mm: a month, or minutes beside another time
}

func (d *dateParts) timed() bool { return d.hour || d.minute || d.second }

// readDate finds the date and time letters of a section. A code with a digit
// placeholder before its first such letter is a number with a unit that
// somebody forgot to quote.
func (f *Format) readDate(part string) {
	var shown dateParts
	for i := 0; i < len(part); {
		kind, n := formatItem(part[i:])
		switch {
		case kind == itemBracket:
			f.elapsed = shown.elapsed(part[i:i+n]) || f.elapsed
		case kind == itemPlain && part[i] < utf8.RuneSelf: // beyond, a text that nobody quoted
			var letter byte
			letter, n = dateItem(strings.ToLower(part[i:]))
			fraction := letter == '0' && shown.second
			if !fraction && strings.IndexByte("0#?%", letter) >= 0 {
				return
			}
			f.fractions = f.fractions || fraction
			shown.add(letter, n)
		}
		i += n
	}
	switch timed := shown.timed(); {
	case shown.day || shown.short && !timed:
		f.As, f.timed = Day, timed
	case timed:
		f.As, f.noHours = Clock, !shown.hour
	}
}

// dateItem measures the run of one letter that a lower-case code begins with.
// The halves of the day stand for an hour, General for digits.
func dateItem(code string) (letter byte, length int) {
	switch {
	case strings.HasPrefix(code, "am/pm"):
		return 'h', len("am/pm")
	case strings.HasPrefix(code, "a/p"):
		return 'h', len("a/p")
	case strings.HasPrefix(code, "general"):
		return '#', len("general")
	}
	return code[0], len(code) - len(strings.TrimLeft(code, code[:1]))
}

// add notes a run of a letter.
func (d *dateParts) add(letter byte, length int) {
	switch letter {
	case 'y', 'd':
		d.day = true
	case 'h':
		d.hour = true
	case 's':
		d.second = true
	case 'm':
		d.day = d.day || length > 2
		d.short = d.short || length <= 2
	}
}

// elapsed notes the time that a bracket counts past its largest unit, if it
// does.
func (d *dateParts) elapsed(bracket string) bool {
	switch strings.ToLower(bracket) {
	case "[h]", "[hh]":
		d.hour = true
	case "[m]", "[mm]":
		d.minute = true
	case "[s]", "[ss]":
		d.second = true
	default:
		return false
	}
	return true
}

// readSection finds the literal text around a number's digits.
func readSection(part string) formatPart {
	var s formatPart
	var before, after strings.Builder
	for i := 0; i < len(part); {
		kind, n := formatItem(part[i:])
		item, literal := part[i:i+n], ""
		switch {
		case kind == itemLiteral && item[0] == '\\':
			literal = item[1:]
		case kind == itemLiteral:
			literal = strings.Trim(item, `"`)
		case kind == itemBracket && strings.HasPrefix(item, "[$"): // a currency sign with its language
			literal, _, _ = strings.Cut(item[2:n-1], "-")
		case kind == itemBracket:
			s.readCondition(item[1 : n-1])
		case kind == itemPlain:
			literal, n = s.readPlain(part[i:], &after)
		}
		if s.digits {
			after.WriteString(literal)
		} else {
			before.WriteString(literal)
		}
		i += n
	}
	s.prefix, s.suffix = before.String(), after.String()
	return s
}

// readPlain reads the sign that a code begins with: one that shapes the number,
// or else a literal. After is what stands behind the digits so far.
func (s *formatPart) readPlain(code string, after *strings.Builder) (literal string, length int) {
	const general = "General"
	switch c := code[0]; {
	case len(code) >= len(general) && strings.EqualFold(code[:len(general)], general):
		s.digits = true
		return "", len(general)
	case c == '0', c == '#', c == '?':
		s.digits = true
		after.Reset() // what stood between digits belongs to the number
	case c == '%':
		s.percent++
	case len(code) > 1 && c|0x20 == 'e' && (code[1] == '+' || code[1] == '-'):
		return "", 2
	case strings.IndexByte(".,@", c) >= 0, c == '/' && s.digits: // a fraction's bar
	default:
		return code[:1], 1
	}
	return "", 1
}

// Builtin are the codes of the format numbers that files use without
// spelling them out (ECMA-376 part 1, 18.8.30).
var Builtin = map[int]string{
	1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%", 11: "0.00E+00",
	12: "# ?/?", 13: "# ??/??",
	14: "mm-dd-yy", 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy",
	18: "h:mm AM/PM", 19: "h:mm:ss AM/PM", 20: "h:mm", 21: "h:mm:ss", 22: "m/d/yy h:mm",
	37: "#,##0 ;(#,##0)", 38: "#,##0 ;[Red](#,##0)",
	39: "#,##0.00;(#,##0.00)", 40: "#,##0.00;[Red](#,##0.00)",
	41: `_(* #,##0_);_(* \(#,##0\);_(* "-"_);_(@_)`, 42: `_("$"* #,##0_);_("$"* \(#,##0\);_("$"* "-"_);_(@_)`,
	43: `_(* #,##0.00_);_(* \(#,##0.00\);_(* "-"??_);_(@_)`, 44: `_("$"* #,##0.00_);_("$"* \(#,##0.00\);_("$"* "-"??_);_(@_)`,
	45: "mm:ss", 46: "[h]:mm:ss", 47: "mmss.0", 48: "##0.0E+0", 49: "@",
	// East Asian calendars: which code depends on the language of the
	// program, that it is a date or a time does not.
	27: "yyyy/m/d", 28: "yyyy/m/d", 29: "yyyy/m/d", 30: "yyyy/m/d", 31: "yyyy/m/d",
	32: "h:mm", 33: "h:mm:ss", 34: "yyyy/m/d", 35: "yyyy/m/d", 36: "yyyy/m/d",
	50: "yyyy/m/d", 51: "yyyy/m/d", 52: "yyyy/m/d", 53: "yyyy/m/d", 54: "yyyy/m/d",
	55: "yyyy/m/d", 56: "yyyy/m/d", 57: "yyyy/m/d", 58: "yyyy/m/d",
}
