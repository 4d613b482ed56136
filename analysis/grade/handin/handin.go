// Package handin is a student's work as cells that know what they are: tables of
// trials with their columns, and the words beside them. It judges nothing.
package handin

import (
	"math"
	"slices"

	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Work is what one student, or a declared pair, handed in.
type Work struct {
	Student  string
	ByFile   bool     // the name is the file's
	Partners []string // names the work gives beside its own
	Files    []string
	Paths    []string
	Sheets   []trial.Place // of each sheet it stands on
	Tables   []*Table
	Sums     []*Table // that sum the trials up
	Words    []Phrase
	Rest     []Row                     // rows that are no trials, with all their cells
	Formulas map[string]sheet.Formulas // by file
	Shared   bool                      // its files are of other students as well
	Log      []*ingest.HandIn
}

// Table is a table of trials with its columns.
type Table struct {
	At       trial.Place // file and sheet
	Task     string
	Noun     string // what the student calls a trial: "pot"; "" = nothing of its own
	Prose    bool   // its trials are told in sentences: all cells of one stand in one
	Across   bool   // a card: trials stand side by side
	Columns  []*Column
	Trials   []*Trial
	Averages []Row // rows that sum the trials up
}

// Column is one column of a table: a header with a cell for each trial.
type Column struct {
	Header    string // without the group above it
	Whole     string // with it
	Heading   trial.Place
	Field     *scheme.Field // nil where the reader has none
	Role      column.Role
	UnitBelow string  // from a row of units, or beside the values of a card
	Cells     []Cell  // by trial
	Other     *Column // the same in another unit; nil without one
	PerOther  float64 // grams of one such unit
	// SampleGrams is the foam that every trial of the table put to drain, as a line beside it
	// says; 0 = none does.
	SampleGrams float64
}

// Row is a row of sums or means, by its label.
type Row struct {
	Label string
	At    trial.Place
	Cells []Cell // by column
}

// Trial is one trial with its place in the table.
type Trial struct {
	*trial.Trial
	Index int
	Table *Table
}

// Holds reports a place in the trial's own row or column.
func (x *Trial) Holds(at trial.Place) bool {
	for _, c := range x.Table.Columns {
		if c.Cells[x.Index].At == at {
			return true
		}
	}
	return false
}

// Cell is what stands in one cell.
type Cell struct {
	At      trial.Place
	Text    string // as shown
	Kind    sheet.Kind
	Value   float64 // in the base unit of its column, if Known
	Known   bool    // it is one number
	Low     float64 // what is known of it: a bound leaves an end open
	High    float64
	Half    float64 // half of its last digit, in the base unit; 0 = a formula's result
	Scale   float64 // base units of one typed unit
	Formula string  // the student's own
	Repeats bool    // it is empty, and stands for what is above it
}

// Blank reports an empty cell.
func (c Cell) Blank() bool { return c.Kind == sheet.Blank && c.Formula == "" }

// Number reports a cell with a number or a bound.
func (c Cell) Number() bool { return c.Known || !math.IsInf(c.Low, 0) || !math.IsInf(c.High, 0) }

// Phrase is words that stand in a cell outside the trials, or in a note of one.
type Phrase struct {
	At      trial.Place
	Text    string
	Note    *Trial // the trial whose note it is
	Answer  bool   // it stands in a column of conclusions
	Right   string // the next cell of its row
	RightAt trial.Place
}

// Find is the first column of a role with a cell filled, nil without one.
func (t *Table) Find(r column.Role) *Column {
	for _, c := range t.Columns {
		if c.Role == r && c.Filled() {
			return c
		}
	}
	return nil
}

// All are the columns of a role.
func (t *Table) All(r column.Role) (out []*Column) {
	for _, c := range t.Columns {
		if c.Role == r && c.Filled() {
			out = append(out, c)
		}
	}
	return out
}

// Filled reports whether any cell is.
func (c *Column) Filled() bool {
	for i := range c.Cells {
		if !c.Cells[i].Blank() {
			return true
		}
	}
	return false
}

// Known counts the cells that are one number.
func (c *Column) Known() (n int) {
	for i := range c.Cells {
		if c.Cells[i].Known {
			n++
		}
	}
	return n
}

// Weighed are the columns of ingredients in grams.
func (t *Table) Weighed() (out []*Column) {
	for _, c := range t.Columns {
		if c.Field != nil && c.Role == column.IngredientAmount && c.Field.InGrams {
			out = append(out, c)
		}
	}
	return out
}

// Results are the columns of what was measured of the foam, as numbers.
func (t *Table) Results() (out []*Column) {
	for _, c := range t.Columns {
		switch c.Role {
		case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.SampleMass, column.Overrun,
			column.CupLiquid, column.CupFoam, column.DispensedMass, column.LeftInside, column.Spread, column.Score, column.Measure:
			if c.Known() > 0 {
				out = append(out, c)
			}
		}
	}
	return out
}

// Trials are all trials of the work.
func (w *Work) Trials() (out []*Trial) {
	for _, t := range w.Tables {
		out = append(out, t.Trials...)
	}
	return out
}

// At is the cell of the work's trials at a place, with its column; nil where none stands.
func (w *Work) At(at trial.Place) (*Column, *Trial) {
	for _, t := range w.Tables {
		for _, c := range t.Columns {
			for i := range c.Cells {
				if c.Cells[i].At == at {
					return c, t.Trials[i]
				}
			}
		}
	}
	return nil, nil
}

// First is where the work begins.
func (w *Work) First() trial.Place {
	if len(w.Tables) > 0 && len(w.Tables[0].Columns) > 0 {
		return w.Tables[0].Columns[0].Heading
	}
	return trial.Place{File: w.Files[0], Row: 1, Col: 1}
}

// Unclear reports grams of something that nobody knows, in a trial.
func (t *Table) Unclear(i int) bool {
	return slices.ContainsFunc(t.Weighed(), func(c *Column) bool {
		return c.Field.Kindless && (c.Cells[i].Value > 0 || !c.Cells[i].Known && !c.Cells[i].Blank())
	})
}
