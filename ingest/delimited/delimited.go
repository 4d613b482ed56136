// Package delimited reads the fields of a text file such as .csv, whatever it is encoded in
// and delimited by.
package delimited

import "strings"

// Reader reads delimited text as spreadsheets do, more kindly than
// RFC 4180: rows may differ in length, quotation marks may stand anywhere, and
// lines may end in any of the three ways.
type Reader struct {
	text      string
	pos       int
	delimiter byte
	strays    int // quotation marks opened and never closed
}

const (
	// MaxQuoted bounds a quoted cell; no spreadsheet holds a longer text. A
	// quotation mark whose partner is farther off stands alone.
	MaxQuoted = 32 << 10
	// maxStrays bounds the searches for a missing partner; after as many the
	// file is taken not to use quotation marks as brackets at all.
	maxStrays = 100
)

// New is at the first field of a text, whose delimiter it finds.
func New(text string) *Reader {
	delimiter, start, declared := declaredDelimiter(text)
	if !declared {
		delimiter = findDelimiter(text)
	}
	return &Reader{text: text, pos: start, delimiter: delimiter}
}

// More reports whether another record begins.
func (r *Reader) More() bool { return r.pos < len(r.text) }

// Field reads the next field; fault is what is odd about it, and last is true when its
// record ends with it.
func (r *Reader) Field() (text, fault string, last bool) {
	i := r.pos
	for i < len(r.text) && (r.text[i] == ' ' || r.text[i] == '\t' && r.delimiter != '\t') {
		i++
	}
	if strings.HasPrefix(r.text[i:], `="`) {
		if text, last, ok := r.textFormula(i + 1); ok {
			return text, "", last
		}
	}
	if i < len(r.text) && r.text[i] == '"' && r.strays < maxStrays {
		inner, end, ok := quoted(r.text, i)
		if ok {
			r.pos = end
			rest, last := r.bare()
			if strings.TrimSpace(rest) != "" {
				inner += rest
				fault = "something follows a closing quotation mark; both are kept"
			}
			return shownText(inner), fault, last
		}
		r.strays++
	}
	text, last = r.bare()
	if strings.IndexByte(text, '"') >= 0 {
		fault = "a quotation mark stands alone in the cell; it is kept as typed"
	}
	return text, fault, last
}

// textFormula reads the rest of ="150", the way some programs keep a
// spreadsheet from changing a text; i is at its quotation mark.
func (r *Reader) textFormula(i int) (text string, last, ok bool) {
	inner, end, ok := quoted(r.text, i)
	if !ok {
		return "", false, false
	}
	start := r.pos
	r.pos = end
	rest, last := r.bare()
	if strings.TrimSpace(rest) != "" {
		r.pos = start
		return "", false, false
	}
	return inner, last, true
}

// shownText is the text that a field ="150", quoted once more, shows.
func shownText(field string) string {
	field = strings.TrimSpace(field)
	if len(field) < 4 || !strings.HasPrefix(field, `="`) || !strings.HasSuffix(field, `"`) {
		return field
	}
	inner := strings.ReplaceAll(field[2:len(field)-1], `""`, "\x00")
	if strings.Contains(inner, `"`) {
		return field // a formula that joins texts
	}
	return strings.ReplaceAll(inner, "\x00", `"`)
}

// bare reads up to the next delimiter or line end and moves past it.
func (r *Reader) bare() (text string, last bool) {
	start := r.pos
	for i := start; i < len(r.text); i++ {
		switch r.text[i] {
		case r.delimiter:
			r.pos = i + 1
			return r.text[start:i], false
		case '\r', '\n':
			r.pos = pastLineEnd(r.text, i)
			return r.text[start:i], true
		}
	}
	r.pos = len(r.text)
	return r.text[start:], true
}

func pastLineEnd(text string, i int) int {
	if strings.HasPrefix(text[i:], "\r\n") {
		return i + 2
	}
	return i + 1
}

// quoted reads the quoted text that begins at i; end is past its closing mark.
func quoted(text string, i int) (inner string, end int, ok bool) {
	window := text[i+1 : min(len(text), i+1+MaxQuoted)]
	doubled := false
	for j := 0; ; {
		k := strings.IndexByte(window[j:], '"')
		if k < 0 {
			return "", 0, false
		}
		j += k
		if next := i + 1 + j + 1; next < len(text) && text[next] == '"' {
			doubled = true
			if j += 2; j > len(window) {
				return "", 0, false
			}
			continue
		}
		inner, end = window[:j], i+1+j+1
		break
	}
	if doubled {
		inner = strings.ReplaceAll(inner, `""`, `"`)
	}
	return strings.ReplaceAll(inner, "\r\n", "\n"), end, true
}
