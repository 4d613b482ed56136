package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"

	"foamfield/reports/steady"

	"github.com/xuri/excelize/v2"

	"foamfield/plots/drawing"
)

// book is a workbook being written. The first failure is kept and ends it.
type book struct {
	f      *excelize.File
	looks  map[dress]int
	sheets int
	err    error
}

// look is how a cell is dressed.
type look uint8

const (
	ordinary look = iota
	title
	head
	headRight  // over numbers
	headNumber // a number as a head
	wrapped    // text over several lines
	quiet
	lead
	caution
	input // a cell to type in
	amount
	tenths
	hundredths
	chance  // a fraction shown as percent
	precise // six decimals
	whole
	ounce
	weigh   // grams to read across a bench
	tofill  // a box to write in
	band    // a sum in the head of a part
	share   // its percent of the mix
	within  // how much a weight may be off by; nothing is said as on a card
	linked  // a text that leads to another sheet
	right   // words of a number
	aligned // a number with as many decimals as its column needs
	aligned0
	aligned1
	aligned2
	aligned3
)

func newBook() *book {
	b := &book{f: excelize.NewFile(), looks: map[dress]int{}}
	b.do(b.f.SetDefaultFont("Liberation Sans"))
	return b
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

func (b *book) bytes() ([]byte, error) {
	if b.err != nil {
		b.f.Close() // drops what streams left on disk
		return nil, fmt.Errorf("the workbook could not be written: %w", b.err)
	}
	return steady.Bytes(b.f)
}

// dress is a look, in the middle of its cell's height or as the look has it.
type dress struct {
	look   look
	middle bool
}

// style makes the style of a look when it is first used.
func (b *book) style(l look, middle bool) int {
	if id, ok := b.looks[dress{l, middle}]; ok {
		return id
	}
	font := func(size float64, bold bool, colour string) *excelize.Font {
		return &excelize.Font{Family: "Liberation Sans", Size: size, Bold: bold, Color: colour}
	}
	tint := func(colour string) excelize.Fill {
		return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	}
	numbers := func(format string) *excelize.Style {
		return &excelize.Style{CustomNumFmt: &format, Alignment: &excelize.Alignment{Vertical: "top"}}
	}
	short := "0.0#"
	sum := func(format string) *excelize.Style {
		return &excelize.Style{Font: font(11, true, drawing.Ink), Fill: tint(drawing.Pale), CustomNumFmt: &format, Alignment: &excelize.Alignment{Vertical: "center"},
			Border: []excelize.Border{{Type: "bottom", Color: drawing.Accent, Style: 2}}}
	}
	s := map[look]*excelize.Style{
		ordinary: {Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top"}},
		title:    {Font: font(15, true, drawing.Accent), Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "center"}},
		head: {Font: font(10, true, drawing.Ink), Fill: tint(drawing.Pale), Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "center", WrapText: true},
			Border: []excelize.Border{{Type: "bottom", Color: drawing.Accent, Style: 2}}},
		headRight: {Font: font(10, true, drawing.Ink), Fill: tint(drawing.Pale), Alignment: &excelize.Alignment{Horizontal: "right", Vertical: "center", WrapText: true},
			Border: []excelize.Border{{Type: "bottom", Color: drawing.Accent, Style: 2}}},
		headNumber: {Font: font(10, true, drawing.Ink), Fill: tint(drawing.Pale), CustomNumFmt: &short},
		wrapped:    {Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top", WrapText: true}},
		quiet:      {Font: font(9, false, drawing.Quiet), Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top", WrapText: true}},
		lead:       {Font: font(12, true, drawing.Ink), Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top", WrapText: true}},
		caution:    {Font: font(11, false, drawing.CloggedColour), Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top", WrapText: true}},
		input: {Font: font(12, true, drawing.Ink), Fill: tint("#FFF6D6"),
			Border: []excelize.Border{{Type: "bottom", Color: drawing.Accent, Style: 1}, {Type: "top", Color: drawing.Accent, Style: 1}, {Type: "left", Color: drawing.Accent, Style: 1}, {Type: "right", Color: drawing.Accent, Style: 1}}},
		amount:     numbers("0.0##"),
		tenths:     numbers("0.0"),
		hundredths: numbers("0.00"),
		chance:     numbers("0 %"),
		precise:    numbers("0.000000"),
		whole:      numbers("0"),
		ounce:      numbers("0.00"),
		weigh:      {Font: font(18, true, drawing.Ink), CustomNumFmt: &short, Alignment: &excelize.Alignment{Vertical: "top"}},
		band:       sum(short),
		share:      sum("0.0"),
		within:     numbers(`0.0##;-0.0##;"exactly"`),
		right:      {Alignment: &excelize.Alignment{Horizontal: "right", Vertical: "top"}},
		linked:     {Font: &excelize.Font{Family: "Liberation Sans", Size: 11, Underline: "single", Color: drawing.Accent}, Alignment: &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "top"}},
		aligned0:   numbers("0"),
		aligned1:   numbers("0.0"),
		aligned2:   numbers("0.00"),
		aligned3:   numbers("0.000"),
		tofill: {Border: []excelize.Border{{Type: "bottom", Color: drawing.Quiet, Style: 1}, {Type: "top", Color: drawing.Quiet, Style: 1},
			{Type: "left", Color: drawing.Quiet, Style: 1}, {Type: "right", Color: drawing.Quiet, Style: 1}}},
	}[l]
	if middle {
		at := excelize.Alignment{}
		if s.Alignment != nil {
			at = *s.Alignment
		}
		at.Vertical = "center"
		s.Alignment = &at
	}
	id, err := b.f.NewStyle(s)
	b.do(err)
	b.looks[dress{l, middle}] = id
	return id
}

func no() *bool { v := false; return &v }

// column is the letters of a column counted from 0.
func column(i int) string {
	s, err := excelize.ColumnNumberToName(i + 1)
	if err != nil {
		panic("workbook: " + err.Error()) // counted by the program
	}
	return s
}

func place(col, row int) string { return column(col) + strconv.Itoa(row) }

func yesNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

// plain is text as a cell can hold it: no control characters, and cut with a
// word about it where a cell ends. It is never read as a formula: cells of text
// are written as such.
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		if r != '\n' && (unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF) {
			return '\uFFFD'
		}
		return r
	}, strings.ReplaceAll(strings.ToValidUTF8(s, "\uFFFD"), "\r\n", "\n"))
	const most, mark = 32767, " … (cut here: too long for a cell)"
	if len(s) <= most {
		return s
	}
	units := utf16.Encode([]rune(s))
	if len(units) <= most {
		return s
	}
	room := most - len(utf16.Encode([]rune(mark)))
	if utf16.IsSurrogate(rune(units[room-1])) && units[room-1] < 0xDC00 {
		room-- // do not halve a pair
	}
	return string(utf16.Decode(units[:room])) + mark
}

// tenth is a number as a sentence says it.
func tenth(v float64) string { return exact(math.Round(v*10) / 10) }

// exact is a number as a formula holds it, with every digit.
func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
