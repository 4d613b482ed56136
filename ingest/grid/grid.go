// Package grid is a table found in a sheet: its heads, the rows that are its
// trials, and which cell of the sheet stands under a head in a row. Cells are
// not copied: a Table points into its Sheet, which must not change meanwhile.
package grid

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Full is the text for package column: group, header and unit.
func (h Head) Full() string {
	if h.Unit == "" || strings.Contains(strings.ToLower(h.Text), "("+strings.ToLower(h.Unit)+")") {
		return h.Text
	}
	return h.Text + " (" + strings.Trim(h.Unit, "()[] ") + ")"
}

// Head is one column of a table; of a card, one row of the sheet.
type Head struct {
	Col, Row int            // where its text stands; Row 0: a column with data and no header
	Text     string         // group and header joined with " / "
	Unit     string         // from the row of units, as typed
	UnitCol  int            // sheet column whose cells give each value's unit: "0.17 | kg"; 0 = none
	About    string         // of a card, what a cell beside its label says of it: "HLB 3.8"
	Remarks  bool           // a column without header that holds prose
	Hidden   bool           // the column is hidden in the sheet
	Always   *sheet.Cell    // the one cell that says it of every row, beside the table at Row and Col: what goes into all mixes; nil = it is a column
	Meaning  column.Meaning // by column.ReadAll over the table
}

// Row is one row of a table; of a card, one column of the sheet.
type Row struct {
	Number  int // of the sheet's row, or column for a card, 1-based
	Hidden  bool
	Struck  bool   // every filled cell of it is struck out
	Section string // the last title above it within the table: "Monday 3 June"
	At      int32  // index into Sheet.Rows; not used in a card
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
	About   Kind = "what the columns are" // "HLB 3.8" below GMS
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
	From, To   int  // of a card of one trial among others above or below it: its sheet rows, its title's too; else 0
	Heads      []Head
	Rows       []Row
	Furniture  []Furniture // in row order

	// Long: the sheet has a row for each quantity of a trial; a Row is a trial.
	Long bool

	// PerReading: a trial has several rows, each with its own minute; rows
	// with equal Key cells are one trial.
	PerReading bool
	Key        []int // indices of the heads that tell trials apart

	Again   []int // rows that are further makings of the mix above them
	AsNamed []int // rows whose mix is that of a trial they name

	Places   [][]Place // by head and row, where cells lie in no grid; else nil
	UnitCols []int     // of a card: by row, the column of its units, 0 without

	fills  [][]int32 // by head and row; nil for a head whose cells are all their own
	merges look.Merges
}

// Place is where a cell stands; At is 1 + the index into Sheet.Rows, 0 where
// there is none.
type Place struct{ At, Col int32 }

// At is the place in a column of the row with an index into Sheet.Rows.
func At(index, col int) Place { return Place{At: int32(index) + 1, Col: int32(col)} }

// Cell returns the cell of a row under a head, Blank where nothing is, and
// whether it was taken from a row above: a merged cell, an id or day written
// once for several rows, or ditto marks. A ditto mark with nothing above it is
// Blank; Fill tells.
func (t *Table) Cell(row, head int) (c sheet.Cell, filled bool) {
	switch v := t.fillOf(row, head); {
	case v > 0:
		return t.Typed(int(v>>2), head), true
	case v == unresolved:
		_, col := t.PlaceOf(row, head)
		return sheet.Cell{Col: int32(col)}, false
	}
	return t.Typed(row, head), false
}

// Typed is the cell as it stands in the sheet, ditto marks and all.
func (t *Table) Typed(row, head int) sheet.Cell {
	if c := t.Heads[head].Always; c != nil {
		return *c
	}
	if t.Places != nil {
		p := t.Places[head][row]
		if p.At == 0 {
			return sheet.Cell{Col: int32(t.Heads[head].Col)}
		}
		return look.CellAt(&t.Sheet.Rows[p.At-1], int(p.Col))
	}
	if t.Transposed {
		return t.Sheet.At(t.Heads[head].Row, t.Rows[row].Number)
	}
	return look.CellAt(&t.Sheet.Rows[t.Rows[row].At], t.Heads[head].Col)
}

// PlaceOf is where the cell of a row under a head stands in the sheet.
func (t *Table) PlaceOf(row, head int) (sheetRow, sheetCol int) {
	if h := &t.Heads[head]; h.Always != nil {
		return h.Row, int(h.Always.Col)
	}
	if t.Places != nil && t.Places[head][row].At > 0 {
		p := t.Places[head][row]
		return t.Sheet.Rows[p.At-1].Number, int(p.Col)
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

// OnlyNamed reports a row that has nothing of its own but the name of its trial.
func (t *Table) OnlyNamed(row int) bool {
	for h := range t.Heads {
		head := &t.Heads[h]
		if c := t.Typed(row, h); head.Always == nil && !writtenOnce(head.Meaning.Role) && !look.Empty(&c) {
			return false
		}
	}
	return true
}

// Looks counts the heads that speak of the mix and of its results. A sheet with
// neither is hardly a log; the caller decides.
func (t *Table) Looks() (mix, results int) {
	for i := range t.Heads {
		switch role := t.Heads[i].Meaning.Role; {
		case role == column.IngredientAmount, role == column.PhaseRatio, role == column.EmulsifierAmount, role == column.FatPercent, role == column.BlendHLB:
			mix++
		case IsResult(role):
			results++
		}
	}
	return mix, results
}

// IsResult reports the roles of what happened to a foam.
func IsResult(r column.Role) bool {
	switch r {
	case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.CameOut, column.Clogged, column.Broke, column.Result, column.OilLeak:
		return true
	}
	return false
}

func (t *Table) HeadAt(col int) int {
	lo, hi := 0, len(t.Heads)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if t.Heads[mid].Col < col {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(t.Heads) && t.Heads[lo].Col == col {
		return lo
	}
	return -1
}
