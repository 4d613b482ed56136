package sheet

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/ingest/markup"
)

// runs are the pieces of one text that look different. Two looks change what
// is said: a run struck out is not said any more, and a raised one after a
// number is the mark of a footnote.
type runs struct {
	list []run
	odd  bool // some run is struck out or raised
}

type run struct {
	from   int  // where it begins in the text
	own    bool // it has a look of its own, else it has its cell's
	struck bool
	raised bool
}

func (r *runs) reset() { r.list, r.odd = r.list[:0], false }

// start notes the element just started below the string element at a depth,
// when so much of the text is read, and reports whether it holds visible text.
func (r *runs) start(m *markup.Reader, depth, read int) (inText bool) {
	switch below := m.Depth() - depth; {
	case below == 1 && string(m.Local) == "r", below == 1 && len(r.list) > 0:
		if len(r.list) == 0 && read > 0 {
			r.list = append(r.list, run{})
		}
		r.list = append(r.list, run{from: read})
	case below < 2 || len(r.list) == 0 || !m.IsOpen(depth+1, "r"):
	case below == 2 && string(m.Local) == "rPr":
		r.list[len(r.list)-1].own = true
	case below == 3 && m.IsOpen(depth+2, "rPr"):
		r.look(m)
	}
	return isVisibleText(m, depth)
}

// isVisibleText reports whether the element just started holds text that is shown: t below
// the string element at a depth, directly or in a run r, but not in the reading aid rPh.
func isVisibleText(m *markup.Reader, depth int) bool {
	if string(m.Local) != "t" {
		return false
	}
	return m.Depth() == depth+1 || m.Depth() == depth+2 && m.IsOpen(depth+1, "r")
}

// look notes what a property says of the run.
func (r *runs) look(m *markup.Reader) {
	last := &r.list[len(r.list)-1]
	value := ""
	for _, a := range m.Attrs {
		if string(a.Name) == "val" {
			value = string(m.Value(a))
		}
	}
	switch string(m.Local) {
	case "strike":
		last.struck = !isFalse([]byte(value))
	case "vertAlign":
		last.raised = value == "superscript"
	}
	r.odd = r.odd || last.struck || last.raised
}

// resolve gives what of a text is said, in a cell that is struck out as a
// whole or not, and Struck or Revised.
func (r *runs) resolve(text []byte, struckCell bool) ([]byte, uint8) {
	switch {
	case struckCell && len(r.list) == 0:
		return text, Struck
	case !struckCell && !r.odd:
		return text, 0
	}
	var kept []byte
	dropped := false
	for i, run := range r.list {
		part, after := text[run.from:], []byte(nil)
		if i+1 < len(r.list) {
			part, after = text[run.from:r.list[i+1].from], text[r.list[i+1].from:]
		}
		blank := len(bytes.TrimSpace(part)) == 0
		switch {
		case !blank && run.dropped(struckCell, kept, part, after):
			dropped = true
		case !blank && run.raised:
			kept = raise(kept, part, after)
		default:
			kept = append(kept, part...)
		}
	}
	if !dropped {
		return kept, 0
	}
	if kept = bytes.TrimSpace(kept); len(kept) == 0 {
		return text, Struck
	}
	return kept, Revised
}

// dropped reports whether a run between two texts is not said.
func (r run) dropped(struckCell bool, before, text, after []byte) bool {
	return r.struck || !r.own && struckCell || r.raised && isFootnote(before, text, after)
}

// raisedUnits are letters raised after a number that belong to it: "1ʰ30".
var raisedUnits = map[string]bool{"h": true, "min": true, "mn": true, "m": true, "s": true, "sec": true,
	"g": true, "gr": true, "mg": true, "kg": true, "l": true, "ml": true, "cl": true, "dl": true}

// isFootnote reports whether a raised text between two others marks a
// footnote: letters, digits or signs after a number that are no unit, no power
// of ten and no part of the number.
func isFootnote(before, raised, after []byte) bool {
	mark := strings.TrimSpace(string(raised))
	if !endsInNumber(before) || utf8.RuneCountInString(mark) > 4 || raisedUnits[strings.ToLower(mark)] || isPower(before) {
		return false
	}
	next, _ := utf8.DecodeRune(bytes.TrimSpace(after))
	if unicode.IsDigit(next) || next == '/' || next == '\u2044' {
		return false // "1ʰ30", or the top of a fraction
	}
	return strings.IndexFunc(mark, func(c rune) bool {
		return !unicode.IsLetter(c) && !unicode.IsDigit(c) && !strings.ContainsRune("*†‡§#,() ", c)
	}) < 0
}

func endsInNumber(text []byte) bool {
	last, _ := utf8.DecodeLastRune(bytes.TrimSpace(text))
	return last == '%' || unicode.IsNumber(last)
}

// isPower reports whether a text ends in "× 10", ready for an exponent.
func isPower(text []byte) bool {
	t := bytes.TrimSpace(text)
	if !bytes.HasSuffix(t, []byte("10")) {
		return false
	}
	last, _ := utf8.DecodeLastRune(bytes.TrimSpace(t[:len(t)-2]))
	return strings.ContainsRune("×xX*·", last)
}

var superscripts = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹",
	"+", "⁺", "-", "⁻", "−", "⁻")

// raise keeps a raised text. Digits after a number are written raised, so that
// nobody takes 10³ for 103; the top of a fraction stands apart: 1 1/2.
func raise(kept, raised, after []byte) []byte {
	digits := strings.Trim(string(raised), "0123456789+-− ") == "" && strings.ContainsAny(string(raised), "0123456789")
	switch next, _ := utf8.DecodeRune(bytes.TrimSpace(after)); {
	case !digits || !endsInNumber(kept):
		return append(kept, raised...)
	case next == '/' || next == '\u2044':
		return append(append(kept, ' '), raised...)
	}
	return append(kept, superscripts.Replace(string(raised))...)
}

// richText is how a shared text in runs is read: in a plain cell, and in one
// that is struck out as a whole.
type richText struct{ plain, struck reading }

type reading struct {
	text  string
	flags uint8 // Struck or Revised
}

// remember keeps how the next shared text is read, if it has runs.
func (b *bookReader) remember(r *runs, text []byte) {
	if len(r.list) == 0 {
		return
	}
	in := func(struckCell bool) reading {
		said, flags := r.resolve(text, struckCell)
		return reading{string(unescape(said)), flags}
	}
	b.rich[len(b.shared)] = richText{in(false), in(true)}
}

// sharedText is how a shared text is read in a cell.
func (b *bookReader) sharedText(n int, struckCell bool) reading {
	rich, ok := b.rich[n]
	switch {
	case ok && struckCell:
		return rich.struck
	case ok:
		return rich.plain
	case struckCell:
		return reading{b.shared[n], Struck}
	}
	return reading{b.shared[n], 0}
}
