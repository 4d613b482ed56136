// Package sheet reads a spreadsheet or a delimited text file into cells that
// know their position, their type and how their number was meant to look.
//
// It decides nothing about meaning: which row is a header, what a text says or
// whether a number is sensible is for the packages that read after it. Damage
// found in a file is kept beside the cells; a file that cannot be read at all
// is a *Refusal with its cure.
package sheet

import (
	"strconv"

	"foamfield/ingest/shown"
)

// Kind says what a cell holds.
type Kind uint8

const (
	Blank  Kind = iota // nothing; kept only for a formula without a result
	Number             // a plain number
	Text               // words, and everything in a delimited text file
	Bool               // true or false, as Number 1 or 0
	Date               // a serial day whose format shows a date
	Clock              // a serial day whose format shows only a time or an elapsed time
	Fault              // an error value such as #DIV/0!
)

var kindNames = [...]string{"blank", "number", "text", "bool", "date", "clock", "fault"}

func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return "kind " + strconv.Itoa(int(k))
}

// What Cell.Flags can carry.
const (
	FromFormula   uint8 = 1 << iota // the value is a formula's result
	NoCachedValue                   // the file holds a formula but not its result
	Computed                        // the result was worked out here, not by the program that saved the file
	Hidden                          // the cell's row or column is hidden
	Struck                          // all of it is struck out, by its style or by all its runs; kept as typed
	Revised                         // runs of its text are struck out or raised and left out of Text
)

// Cell is one cell with content. It is kept small: a log may have millions.
type Cell struct {
	Col    int32 // 1-based
	Kind   Kind
	Flags  uint8   // FromFormula, NoCachedValue, Computed, Hidden, Struck, Revised
	Style  uint16  // which number format; see Sheet.Format
	Number float64 // Number; Bool as 0 or 1; Date and Clock as serial days
	Text   string  // Text and Fault; "" for everything else
}

// Row is one row that has at least one cell.
type Row struct {
	Number int // 1-based, as the spreadsheet numbers it
	Hidden bool
	Struck bool   // every cell with content is struck out
	Cells  []Cell // in column order, without blanks
}

// Range is a block of cells, both corners included, 1-based.
type Range struct{ FromRow, FromCol, ToRow, ToCol int }

// Span is a run of columns, both ends included, 1-based.
type Span struct{ From, To int }

// Damage is something wrong with the file itself, not with what was typed.
type Damage struct {
	Row, Col int // 0 where the damage has no row or column
	What     string
}

// Comment is what somebody wrote beside a cell, without the line that names who.
type Comment struct {
	Row, Col int
	Text     string
}

// Sheet is one sheet's content.
type Sheet struct {
	Name       string
	Hidden     bool
	Rows       []Row // in row order, without empty rows
	Merged     []Range
	HiddenCols []Span
	Faults     []Damage
	Truncated  bool      // the sheet ends early or is not well formed; the damage says where
	Comments   []Comment // in row order
	Boxes      []Comment // texts in boxes that lie over the cells
	Pictures   int

	formats  []shown.Format // indexed by Cell.Style; shared by the book's sheets
	date1904 bool
	fills    map[[2]int32]uint16 // by row and column, an index of colours
	colours  []string            // shared by the book's sheets; the first is none
}

// Book is a file's sheets in the order of their tabs. A delimited text file is
// a book of one sheet.
type Book struct {
	File     string // base name
	SHA256   string // of the file's bytes, in lower-case hexadecimal
	Sheets   []*Sheet
	Date1904 bool
}

// At returns the cell at a position, Blank where nothing is. Of merged cells
// only the top left one holds a value.
func (s *Sheet) At(row, col int) Cell {
	lo, hi := 0, len(s.Rows)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if s.Rows[mid].Number < row {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(s.Rows) && s.Rows[lo].Number == row {
		if c, ok := cellIn(s.Rows[lo].Cells, col); ok {
			return c
		}
	}
	return Cell{Col: int32(col)}
}

func cellIn(cells []Cell, col int) (Cell, bool) {
	lo, hi := 0, len(cells)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if int(cells[mid].Col) < col {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(cells) && int(cells[lo].Col) == col {
		return cells[lo], true
	}
	return Cell{}, false
}

// ColHidden reports whether a column is hidden.
func (s *Sheet) ColHidden(col int) bool {
	for _, h := range s.HiddenCols {
		if h.From <= col && col <= h.To {
			return true
		}
	}
	return false
}

// Format returns the number format code of a cell, "" for the general one.
func (s *Sheet) Format(c Cell) string { return s.format(c).Code }

func (s *Sheet) format(c Cell) shown.Format {
	if int(c.Style) < len(s.formats) {
		return s.formats[c.Style]
	}
	return shown.Format{}
}

// Display returns a cell as a person would type it. A number is given with up
// to the 15 digits a spreadsheet shows, never rounded to its format, but with
// the signs and units that only the format holds ("<5", "12 g", "45%"). A Date
// is 2006-01-02, with 15:04 where the format shows a time; a Clock is 15:04 or
// 15:04:05.
func (s *Sheet) Display(c Cell) string {
	f := s.format(c)
	switch c.Kind {
	case Blank:
		return ""
	case Number:
		return f.Text(c.Number)
	case Bool:
		if c.Number != 0 {
			return "TRUE"
		}
		return "FALSE"
	case Date:
		return f.Date(c.Number, s.date1904)
	case Clock:
		return f.Clock(c.Number)
	}
	return c.Text
}

// maxFaults bounds the damage to cells that is kept for one sheet: a broken
// file can break in every cell, and nobody reads past the first few. Damage to
// the whole sheet has some room beyond.
const (
	maxFaults      = 200
	maxSheetFaults = maxFaults + 50
)

func (s *Sheet) damaged(row, col int, what string) {
	n := len(s.Faults)
	switch {
	case n < maxFaults || row == 0 && n < maxSheetFaults:
		s.Faults = append(s.Faults, Damage{row, col, what})
	case n == maxFaults:
		s.Faults = append(s.Faults, Damage{0, 0, "the sheet has more damage than is listed here"})
	}
}
