// Package blank writes a log with nothing in it: headers our own reader knows,
// lists to choose from, checks of what is typed, the kitchen sheets, and how to
// fill it all in. Nothing on it is a trial and nothing is set until someone
// types it.
package blank

import (
	"strconv"

	"github.com/xuri/excelize/v2"

	"foamfield/plots/drawing"
	"foamfield/reports/steady"
)

// Log is the workbook.
func Log() ([]byte, error) {
	b := &book{f: excelize.NewFile(), looks: map[look]int{}}
	b.do(b.f.SetDefaultFont(font))
	b.log()
	b.howTo()
	for _, k := range kitchenSheets {
		b.kitchen(k)
	}
	if b.err != nil {
		return nil, b.err
	}
	return steady.Bytes(b.f)
}

// book is the workbook being written; the first failure is kept.
type book struct {
	f      *excelize.File
	sheets int
	looks  map[look]int
	err    error
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

// sheet adds a sheet with columns as wide as given, in characters.
func (b *book) sheet(name string, widths ...float64) {
	if b.sheets == 0 {
		b.do(b.f.SetSheetName("Sheet1", name))
	} else {
		_, err := b.f.NewSheet(name)
		b.do(err)
	}
	b.sheets++
	for i, w := range widths {
		b.do(b.f.SetColWidth(name, letters(i+1), letters(i+1), w))
	}
	off, wide, tall := false, 1, 0
	landscape := "landscape"
	b.do(b.f.SetSheetView(name, 0, &excelize.ViewOptions{ShowGridLines: &off}))
	b.do(b.f.SetPageLayout(name, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &wide, FitToHeight: &tall}))
	fit := true
	b.do(b.f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}))
}

// put writes text into a cell; "" leaves it empty and dresses it.
func (b *book) put(sheet string, col, row int, text string, l look) {
	at := cell(col, row)
	if text != "" {
		b.do(b.f.SetCellStr(sheet, at, text))
	}
	b.do(b.f.SetCellStyle(sheet, at, at, b.style(l)))
}

// remark hangs a comment on a cell.
func (b *book) remark(sheet string, col, row int, text string) {
	lines := len(text)/42 + 2
	b.do(b.f.AddComment(sheet, excelize.Comment{Cell: cell(col, row), Author: "foamfield", Width: 300, Height: uint(18 * lines),
		Paragraph: []excelize.RichTextRun{{Text: text, Font: &excelize.Font{Family: font, Size: 9, Color: drawing.Ink}}}}))
}

// freeze keeps the rows above and the columns left of a cell in view.
func (b *book) freeze(sheet string, cols, rows int) {
	b.do(b.f.SetPanes(sheet, &excelize.Panes{Freeze: true, XSplit: cols, YSplit: rows, TopLeftCell: cell(cols+1, rows+1), ActivePane: "bottomRight"}))
}

// look is how a cell is dressed.
type look uint8

const (
	title look = iota
	hint
	head
	unit
	entry // to be typed in
	fixed // given, on a row to be typed in
	words
	strong
	example
)

const font = "Liberation Sans"

func (b *book) style(l look) int {
	if id, ok := b.looks[l]; ok {
		return id
	}
	in := func(size float64, bold, italic bool, colour string) *excelize.Font {
		return &excelize.Font{Family: font, Size: size, Bold: bold, Italic: italic, Color: colour}
	}
	fill := func(colour string) excelize.Fill {
		return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	}
	lines := []excelize.Border{{Type: "bottom", Color: drawing.Faint, Style: 1}, {Type: "right", Color: drawing.Faint, Style: 1}}
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	s := map[look]*excelize.Style{
		title:   {Font: in(16, true, false, drawing.Accent)},
		hint:    {Font: in(10, false, false, drawing.Quiet)},
		head:    {Font: in(10, true, false, drawing.Paper), Fill: fill(drawing.Accent), Alignment: &excelize.Alignment{Vertical: "center", WrapText: true}},
		unit:    {Font: in(9, false, true, drawing.Quiet), Fill: fill(drawing.Pale)},
		entry:   {Font: in(11, false, false, drawing.Ink), Border: lines},
		fixed:   {Font: in(11, false, false, drawing.Ink), Fill: fill(drawing.Pale), Border: lines},
		words:   {Font: in(11, false, false, drawing.Ink), Alignment: top},
		strong:  {Font: in(12, true, false, drawing.Accent), Alignment: top},
		example: {Font: in(10, false, true, drawing.Quiet), Alignment: top},
	}[l]
	id, err := b.f.NewStyle(s)
	b.do(err)
	b.looks[l] = id
	return id
}

func letters(col int) string {
	s, err := excelize.ColumnNumberToName(col)
	if err != nil {
		panic("blank: " + err.Error()) // columns are counted by the program
	}
	return s
}

func cell(col, row int) string { return letters(col) + strconv.Itoa(row) }
