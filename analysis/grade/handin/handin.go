// Package handin is a student's work as cells that know what they are: tables of
// trials with their columns, and the words beside them. It judges nothing.
package handin

import (
	"math"
	"slices"
	"strings"

	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Work is what one student, or a declared pair, handed in.
type Work struct {
	Student  string
	byFile   bool     // the name is the file's
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
	sample    float64
	table     *Table
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

// IsControl reports a trial that is called the control: by its number, in its note, or
// in any other column of words.
func (x *Trial) IsControl() bool {
	if NamesControl(x.ID) || NamesControl(x.Note) || NamesControl(x.Raw["repeat"]) {
		return true
	}
	return slices.ContainsFunc(x.Table.Columns, func(c *Column) bool {
		cell := c.Cells[x.Index]
		return cell.Kind == sheet.Text && !cell.Known && wordy(c.Role) && len(strings.Fields(cell.Text)) <= 5 && len(cell.Text) > 2 && NamesControl(cell.Text)
	})
}

// Bare reports a mix without any emulsifier, in a table that has some.
func (x *Trial) Bare() bool {
	has := false
	for _, c := range x.Table.Weighed() {
		if c.Field.What.WeighedAsEmulsifier() {
			if has = true; c.Cells[x.Index].Value > 0 || !c.Cells[x.Index].Known && !c.Cells[x.Index].Blank() {
				return false
			}
		}
	}
	return has
}

// wordy reports the roles of columns in which students write what they like.
func wordy(r column.Role) bool {
	switch r {
	case column.None, column.Unused, column.Dish, column.Result, column.Note, column.Repeat, column.RepeatOf, column.Declared:
		return true
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

// ByID finds a trial by its number or name, folded: "3", "t3", "trial 3".
func (w *Work) ByID(id string) (found []*Trial) {
	key := IDKey(id)
	for _, t := range w.Tables {
		for _, x := range t.Trials {
			if k := IDKey(x.ID); k != "" && k == key {
				found = append(found, x)
			}
		}
	}
	return found
}

// IDKey folds a trial's number: a leading word for trial and leading zeros do not
// tell trials apart.
func IDKey(id string) string {
	id, _, _ = strings.Cut(strings.ToLower(strings.TrimSpace(id)), " (") // "T1 (control)"
	for _, word := range []string{"trial", "test", "run", "batch", "sample", "versuch", "essai", "prueba", "prova", "ensayo", "no.", "nr.", "n°", "#", "t", "no", "nr"} {
		if rest, ok := strings.CutPrefix(id, word); ok {
			rest = strings.Trim(rest, " .-_#°")
			if rest != "" && rest[0] >= '0' && rest[0] <= '9' {
				id = rest
				break
			}
		}
	}
	id = strings.Trim(id, " .)")
	if bare := strings.TrimLeft(id, "0"); bare != "" {
		return bare
	}
	return id // trial 0
}

// ShortID is a trial's number without what is said of it in brackets.
func ShortID(id string) string {
	short, _, _ := strings.Cut(id, " (")
	return short
}

// Trials are all trials of the work.
func (w *Work) Trials() (out []*Trial) {
	for _, t := range w.Tables {
		out = append(out, t.Trials...)
	}
	return out
}

// SampleGrams is the foam that every trial of a column's table put to drain, as a line
// beside the table says; 0 = none does.
func (c *Column) SampleGrams() float64 { return c.sample }

// controlWords are what kitchens call a control by, in five languages.
var controlWords = []string{"control", "ctrl", "contr", "kontrolle", "kontroll", "témoin", "temoin", "testigo", "controllo", "base", "baseline", "reference", "referenz", "référence", "referencia",
	"standard", "blank", "blindprobe", "blanc", "blanco", "original", "ref", "std", "start", "house recipe", "starting formula", "starting recipe", "basis"}

// NamesControl reports a trial's number or note that calls it the control, not a
// repeat "of" something else.
func NamesControl(text string) bool {
	text = strings.ToLower(text)
	if slices.Contains([]string{"c", "k", "c1", "c2", "0", "ctl"}, strings.Trim(text, " .:()")) {
		return true
	}
	return slices.ContainsFunc(controlWords, func(w string) bool {
		at := strings.Index(text, w)
		return at >= 0 && standsAlone(text[:at], text[at+len(w):]) && !denies(text[:at])
	})
}

// standsAlone reports that what stands around a word does not make it part of another.
func standsAlone(before, after string) bool {
	letter := func(r byte) bool { return r >= 'a' && r <= 'z' }
	return (before == "" || !letter(before[len(before)-1])) && (after == "" || !letter(after[0]) || after[0] == 's')
}

// denies reports words that take back what follows them.
func denies(before string) bool {
	before = strings.TrimSpace(before)
	return strings.HasSuffix(before, "than") || strings.HasSuffix(before, "no") || strings.Contains(before, "without") || strings.Contains(before, "not a")
}
