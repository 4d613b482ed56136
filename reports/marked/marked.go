// Package marked writes a copy of a log in which every cell with a problem is
// coloured and says what was read and what to do, and every header what it was
// read as. Each cell stays where it was, so that a place in a message is a place
// in the copy. It holds values only: text from the log is text, never a formula.
package marked

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/plots/wording"
	"foamfield/reports/steady"
)

// MostCells is the largest log that is copied: beyond it a workbook takes longer
// to open than a list takes to read.
const MostCells = 200_000

// mostRemarks bounds the comments in a copy, for the same reason; a cell beyond
// it is coloured, and its problem stands in the list.
const mostRemarks = 4000

// mostListed bounds the list of problems.
const mostListed = 10_000

// Severity grades a problem; the worst is 0.
type Severity uint8

// The three grades.
const (
	MustFix Severity = iota
	PleaseLook
	ForInformation
)

// Log is what is copied.
type Log struct {
	File     string
	Sheets   []Sheet
	Problems []Problem
	Columns  []Column
	Date1904 bool // days are counted from 1904
}

// Sheet is one sheet of the log.
type Sheet struct {
	Name  string
	Cells []Cell
}

// Kind says what a cell holds.
type Kind uint8

// What a cell can hold.
const (
	Text Kind = iota
	Number
	Bool
)

// Cell is one cell with content.
type Cell struct {
	Row, Col int
	Kind     Kind
	Text     string
	Number   float64 // a Bool is 0 or 1
	Format   string  // of the number
}

// Place is where something stands: Row and Col are 0 for a whole column, row or
// sheet, Sheet -1 for the whole file.
type Place struct{ Sheet, Row, Col int }

// Problem is something a person should know of.
type Problem struct {
	Severity Severity
	At       Place
	Where    string // the place in words
	Count    int
	Read, Do string
}

// Column is what a column was read as.
type Column struct {
	At           Place // of its header
	Header, Read string
}

// Cells is how many cells there are.
func (l *Log) Cells() int {
	n := 0
	for i := range l.Sheets {
		n += len(l.Sheets[i].Cells)
	}
	return n
}

// Write is the marked copy, and how many cells are marked in it.
func Write(l *Log) (content []byte, marked int, err error) {
	b := &book{f: excelize.NewFile(), log: l, styles: map[dress]int{}, names: names(l.Sheets), marks: map[Place]*mark{}, remarks: map[Place]string{}}
	b.do(b.f.SetDefaultFont(font))
	b.do(b.f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &l.Date1904}))
	b.gather()
	b.problems()
	b.columns()
	for i := range l.Sheets {
		b.sheet(i)
	}
	if b.err != nil {
		return nil, 0, b.err
	}
	content, err = steady.Bytes(b.f)
	return content, b.marked, err
}

// book is the copy being written; the first failure is kept.
type book struct {
	f       *excelize.File
	log     *Log
	styles  map[dress]int
	names   []string // of the two sheets of ours, then of the log's
	marks   map[Place]*mark
	remarks map[Place]string // what headers were read as
	said    int
	marked  int
	err     error
}

// mark is what is said at one cell.
type mark struct {
	severity Severity
	lines    []string
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

// gather puts the problems and the headers where they are marked.
func (b *book) gather() {
	for _, c := range b.log.Columns {
		read := "not used"
		if c.Read != "" {
			read = c.Read
		}
		if c.At.Sheet >= 0 {
			b.remarks[c.At] = "Read as: " + read
		}
	}
	for _, p := range b.log.Problems {
		at, ok := b.cellOf(p.At)
		if !ok {
			continue
		}
		m := b.marks[at]
		if m == nil {
			m = &mark{severity: p.Severity}
			b.marks[at] = m
			b.marked++
		}
		m.severity = min(m.severity, p.Severity)
		line := wording.Sentence(p.Read) + " " + wording.Sentence(p.Do)
		if p.Count > 1 {
			line += fmt.Sprintf(" (%d times in this column.)", p.Count)
		}
		if !slices.Contains(m.lines, line) {
			m.lines = append(m.lines, line)
		}
	}
}

// cellOf is the cell that shows a problem: its own; of a row the first with
// content; of a column its header. A whole sheet has none.
func (b *book) cellOf(at Place) (Place, bool) {
	switch {
	case at.Sheet < 0 || at.Sheet >= len(b.log.Sheets) || at.Row > excelize.TotalRows || at.Col > excelize.MaxColumns:
		return at, false
	case at.Row > 0 && at.Col > 0:
		return at, true
	case at.Row > 0:
		at.Col = 1
		for _, c := range b.log.Sheets[at.Sheet].Cells {
			if c.Row == at.Row {
				at.Col = c.Col
				break
			}
		}
		return at, true
	case at.Col > 0:
		for _, c := range b.log.Columns {
			if c.At.Sheet == at.Sheet && c.At.Col == at.Col {
				return c.At, true
			}
		}
	}
	return at, false
}

// sheet copies one sheet of the log and marks it.
func (b *book) sheet(i int) {
	name := b.names[ours+i]
	_, err := b.f.NewSheet(name)
	b.do(err)
	at := func(row, col int) Place { return Place{i, row, col} }
	last := 1
	for _, c := range b.log.Sheets[i].Cells {
		last = max(last, c.Col)
	}
	b.do(b.f.SetColWidth(name, "A", strings.TrimRight(cellName(1, last), "1"), 13))
	for _, c := range b.log.Sheets[i].Cells {
		cell := cellName(c.Row, c.Col)
		switch c.Kind {
		case Number:
			// Every digit, which the library's own way to write a number cuts.
			b.do(b.f.SetCellDefault(name, cell, strconv.FormatFloat(c.Number, 'g', -1, 64)))
		case Bool:
			b.do(b.f.SetCellBool(name, cell, c.Number != 0))
		default:
			b.do(b.f.SetCellStr(name, cell, plain(c.Text)))
		}
		d := dress{format: c.Format}
		if b.marks[at(c.Row, c.Col)] == nil && b.remarks[at(c.Row, c.Col)] != "" {
			d.fill = header
		}
		if d != (dress{}) {
			b.dress(name, cell, d)
		}
	}
	// A cell with a problem may be empty, so marks are put on last.
	formats := map[Place]string{}
	for _, c := range b.log.Sheets[i].Cells {
		if c.Format != "" && b.marks[at(c.Row, c.Col)] != nil {
			formats[at(c.Row, c.Col)] = c.Format
		}
	}
	for _, p := range b.marksOf(i) {
		cell := cellName(p.Row, p.Col)
		lines := []string{}
		if h := b.remarks[p]; h != "" {
			lines = append(lines, h)
		}
		if m := b.marks[p]; m != nil {
			b.dress(name, cell, dress{fillOf(m.severity), formats[p]})
			lines = append(lines, m.lines...)
		}
		b.remark(name, cell, strings.Join(lines, "\n"))
	}
}

// marksOf lists what is said on a sheet: headers and the worst problems first,
// so that the bound on comments takes the least away.
func (b *book) marksOf(i int) []Place {
	var at []Place
	for p := range b.remarks {
		if p.Sheet == i {
			at = append(at, p)
		}
	}
	for p := range b.marks {
		if _, header := b.remarks[p]; p.Sheet == i && !header {
			at = append(at, p)
		}
	}
	rank := func(p Place) int {
		if _, header := b.remarks[p]; header {
			return -1
		}
		return int(b.marks[p].severity)
	}
	slices.SortFunc(at, func(x, y Place) int {
		return cmp.Or(rank(x)-rank(y), x.Row-y.Row, x.Col-y.Col)
	})
	return at
}

// remark hangs a comment on a cell.
func (b *book) remark(sheet, cell, text string) {
	if b.said++; b.said > mostRemarks {
		return
	}
	text = plain(text)
	lines := strings.Count(text, "\n") + len(text)/44 + 2
	b.do(b.f.AddComment(sheet, excelize.Comment{Cell: cell, Author: "foamfield", Width: 310, Height: uint(18 * min(lines, 30)),
		Paragraph: []excelize.RichTextRun{{Text: text, Font: &excelize.Font{Family: font, Size: 9}}}}))
}

func cellName(row, col int) string {
	s, err := excelize.ColumnNumberToName(max(col, 1))
	if err != nil {
		panic("marked: " + err.Error()) // no sheet has such a column
	}
	return s + strconv.Itoa(max(row, 1))
}
