package sheet

import (
	"strings"
	"unicode/utf8"
)

// format is what a number format code says that a reader needs: whether the
// number is a day or a time, and the literal text around its digits.
type format struct {
	code string
	kind Kind // Number, Date or Clock; Blank for the general format

	timed     bool // a Date that shows its time of day
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

// parseFormat reads a number format code. Codes are made by programs and
// people; whatever is not understood is a plain number.
func parseFormat(code string) format {
	f := format{code: code, kind: Number}
	if code == "" || strings.EqualFold(code, "General") {
		return format{}
	}
	parts := splitSections(code)
	f.readDate(parts[0])
	if f.kind != Number {
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

// readDate finds the date and time letters of a section. A code with a digit
// placeholder before its first such letter is a number with a unit that
// somebody forgot to quote.
func (f *format) readDate(part string) {
	var day, hour, second, months, minutes bool
	for i := 0; i < len(part); {
		kind, n := formatItem(part[i:])
		item := part[i : i+n]
		i += n
		switch kind {
		case itemBracket:
			switch strings.ToLower(item[1 : len(item)-1]) {
			case "h", "hh":
				f.elapsed, hour = true, true
			case "m", "mm":
				f.elapsed, minutes = true, true
			case "s", "ss":
				f.elapsed, second = true, true
			}
			continue
		case itemPlain:
			if item[0] >= utf8.RuneSelf {
				continue // a text that nobody quoted
			}
		default:
			continue
		}
		rest := strings.ToLower(part[i-1:])
		switch {
		case strings.HasPrefix(rest, "am/pm"):
			i += 4
			hour = true
			continue
		case strings.HasPrefix(rest, "a/p"):
			i += 2
			hour = true
			continue
		case strings.HasPrefix(rest, "general"):
			return
		}
		run := len(rest) - len(strings.TrimLeft(rest, rest[:1]))
		switch rest[0] {
		case 'y', 'd':
			day = true
		case 'h':
			hour = true
		case 's':
			second = true
		case 'm':
			if run > 2 {
				day = true
			} else {
				months = true
			}
		case '0', '#', '?', '%':
			if rest[0] != '0' || !second {
				return
			}
			f.fractions = true
		}
		i += run - 1
	}
	timed := hour || second || minutes
	switch {
	case day || months && !timed:
		f.kind, f.timed = Date, timed
	case timed:
		f.kind, f.noHours = Clock, !hour
	}
}

// readSection finds the literal text around a number's digits.
func readSection(part string) formatPart {
	var s formatPart
	var before, after strings.Builder
	for i := 0; i < len(part); {
		kind, n := formatItem(part[i:])
		item := part[i : i+n]
		i += n
		literal := ""
		switch kind {
		case itemLiteral:
			if item[0] == '\\' {
				literal = item[1:]
			} else {
				literal = strings.Trim(item, `"`)
			}
		case itemBracket:
			if strings.HasPrefix(item, "[$") { // a currency sign with its language
				literal, _, _ = strings.Cut(item[2:len(item)-1], "-")
			} else {
				s.readCondition(item[1 : len(item)-1])
			}
		case itemPlain:
			c := item[0]
			switch {
			case len(part)-i+1 >= 7 && strings.EqualFold(part[i-1:i+6], "general"):
				s.digits = true
				i += 6
			case c == '0' || c == '#' || c == '?':
				s.digits = true
				after.Reset() // what stood between digits belongs to the number
			case c == '%':
				s.percent++
			case (c == 'E' || c == 'e') && i < len(part) && (part[i] == '+' || part[i] == '-'):
				i++
			case c == '.' || c == ',' || c == '@':
			case c == '/' && s.digits: // a fraction's bar
			default:
				literal = item
			}
		}
		if s.digits {
			after.WriteString(literal)
		} else {
			before.WriteString(literal)
		}
	}
	s.prefix, s.suffix = before.String(), after.String()
	return s
}

// builtinFormats are the codes of the format numbers that files use without
// spelling them out (ECMA-376 part 1, 18.8.30).
var builtinFormats = map[int]string{
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
