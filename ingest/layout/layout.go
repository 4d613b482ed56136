// Package layout finds the tables of a log in a sheet: the header under its
// title rows, group headers and a row of units, the rows that are trials, and
// what every other row is. It knows what a header looks like from package
// column and nothing of what the values mean.
//
// Every row of the sheet with something in it is accounted for: it is a row of
// a table, furniture of a table, or furniture outside any table. Cells are not
// copied: a Table points into its Sheet, which must not change meanwhile.
package layout

import (
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// Head is one column of a table; of a card, one row of the sheet.
type Head struct {
	Col, Row int            // where its text stands; Row 0: a column with data and no header
	Text     string         // group and header joined with " / "
	Unit     string         // from the row of units, as typed
	UnitCol  int            // sheet column whose cells give each value's unit: "0.17 | kg"; 0 = none
	Remarks  bool           // a column without header that holds prose
	Hidden   bool           // the column is hidden in the sheet
	Meaning  column.Meaning // by column.ReadAll over the table
}

// Row is one row of a table; of a card, one column of the sheet.
type Row struct {
	Number  int // of the sheet's row, or column for a card, 1-based
	Hidden  bool
	Struck  bool   // every filled cell of it is struck out
	Section string // the last title above it within the table: "Monday 3 June"
	at      int32  // index into Sheet.Rows; not used in a card
}

// Kind says what a row that is no trial is.
type Kind string

// The kinds of furniture.
const (
	Title   Kind = "title"
	Blank   Kind = "blank"
	Group   Kind = "group header"
	Header  Kind = "header"
	Units   Kind = "units"
	Average Kind = "average or total"
	Legend  Kind = "legend"
	Goal    Kind = "goal"
	Best    Kind = "best repeated"
	Part    Kind = "part of a trial" // a further row of a trial in a long sheet
)

// Furniture is a sheet row that is no row of a table.
type Furniture struct {
	Row  int
	Kind Kind
	Note string // what a person should be told of it, "" = nothing
}

// Table is a header with its rows.
type Table struct {
	Sheet      *sheet.Sheet
	HeaderRow  int  // sheet row; of a card, the first row with a label
	Transposed bool // a card: heads run down, trials across
	Heads      []Head
	Rows       []Row
	Furniture  []Furniture // in row order

	// Long: the sheet has a row for each quantity of a trial; a Row is a trial.
	Long bool

	// PerReading: a trial has several rows, each with its own minute; rows
	// with equal Key cells are one trial.
	PerReading bool
	Key        []int // indices of the heads that tell trials apart

	fromCol, toCol int       // the columns it owns, both ends included
	labels         int       // column of the row labels: the first, of a card its own
	fills          [][]int32 // by head and row; nil for a head whose cells are all their own
	merges         merges
	places         [][]place // by head and row, where cells lie in no grid; else nil
	unitCols       []int     // of a card: by row, the column of its units, 0 without

	// While rows are read.
	used        map[int]bool // columns with data
	texts       map[int]string
	section     string // the last title
	bestBelow   bool   // which speaks of the best
	interrupted bool   // furniture stands after the last row
	tally       tally
	mixes       mixIndex
}

// place is where a cell stands; at is 1 + the index into Sheet.Rows, 0 where
// there is none.
type place struct{ at, col int32 }

// Cell returns the cell of a row under a head, Blank where nothing is, and
// whether it was taken from a row above: a merged cell, an id or day written
// once for several rows, or ditto marks. A ditto mark with nothing above it is
// Blank; Fill tells.
func (t *Table) Cell(row, head int) (c sheet.Cell, filled bool) {
	switch v := t.fillOf(row, head); {
	case v > 0:
		return t.own(int(v>>2), head), true
	case v == unresolved:
		_, col := t.PlaceOf(row, head)
		return sheet.Cell{Col: int32(col)}, false
	}
	return t.own(row, head), false
}

// Typed is the cell as it stands in the sheet, ditto marks and all.
func (t *Table) Typed(row, head int) sheet.Cell { return t.own(row, head) }

func (t *Table) own(row, head int) sheet.Cell {
	if t.places != nil {
		p := t.places[head][row]
		if p.at == 0 {
			return sheet.Cell{Col: int32(t.Heads[head].Col)}
		}
		return cellAt(&t.Sheet.Rows[p.at-1], int(p.col))
	}
	if t.Transposed {
		return t.Sheet.At(t.Heads[head].Row, t.Rows[row].Number)
	}
	return cellAt(&t.Sheet.Rows[t.Rows[row].at], t.Heads[head].Col)
}

// PlaceOf is where the cell of a row under a head stands in the sheet.
func (t *Table) PlaceOf(row, head int) (sheetRow, sheetCol int) {
	if t.places != nil && t.places[head][row].at > 0 {
		p := t.places[head][row]
		return t.Sheet.Rows[p.at-1].Number, int(p.col)
	}
	if t.Transposed {
		return t.Heads[head].Row, t.Rows[row].Number
	}
	return t.Rows[row].Number, t.Heads[head].Col
}

// Find returns the index of the head with a role, -1 without one.
func (t *Table) Find(role column.Role) int {
	for i := range t.Heads {
		if t.Heads[i].Meaning.Role == role {
			return i
		}
	}
	return -1
}

func cellAt(r *sheet.Row, col int) sheet.Cell {
	if len(r.Cells) > 0 { // most rows are without gaps
		if i := col - int(r.Cells[0].Col); i >= 0 && i < len(r.Cells) && int(r.Cells[i].Col) == col {
			return r.Cells[i]
		}
	}
	lo, hi := 0, len(r.Cells)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if int(r.Cells[mid].Col) < col {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(r.Cells) && int(r.Cells[lo].Col) == col {
		return r.Cells[lo]
	}
	return sheet.Cell{Col: int32(col)}
}

// Find finds the tables of a sheet, and says what the rows outside of them
// are. A sheet that is no log has no tables. The work grows with the number of
// cells, not with its square.
func Find(s *sheet.Sheet) (tables []Table, outside []Furniture) {
	f := finder{s: s, known: map[string]column.Meaning{}, dittos: map[string]bool{}}
	f.merges = indexMerges(s)
	if tables, rest, ok := f.long(); ok {
		return tables, rest
	}
	if tables, rest, ok := f.alternating(); ok {
		return tables, rest
	}
	if cards, rest, ok := f.cards(); ok {
		return cards, rest
	}
	f.run()
	for _, t := range f.done {
		t.finish(&f)
		tables = append(tables, *t)
	}
	return tables, f.outside
}
