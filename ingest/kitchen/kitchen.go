// Package kitchen reads what a kitchen sets in its own spreadsheet: Targets,
// Ingredients, Columns, Method, Try and Plan, on sheets with our names and our headers.
// Both have to be there: a kitchen may well have a sheet called Ingredients that
// is something else. A list of emulsifiers under heads of its own is one of ours all the
// same (own.go).
package kitchen

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Sheets is what the kitchen sheets of one workbook, or of several, say.
type Sheets struct {
	Targets     trial.Targets
	Wanted      []Wanted            // targets that are none of ours
	Ingredients map[string]Declared // by folded name in the log
	Columns     map[string]Meaning  // by folded header in the log
	Method      []trial.Step
	Tries       []trial.Try
	Plan        []Setting              // what a plan is to be like
	Story       Story                  // of a plan that we wrote
	Lines       []Line                 // of one log, beside its tables
	Marks       map[string][]Explained // of one log, what its list of codes says of a column, by folded header
}

// kind is one kind of kitchen sheet; the first must of its headers have to be
// there, in any order.
type kind struct {
	name    string
	headers []string
	must    int
	take    func(*taker, table)
}

var kinds = []kind{
	{"Targets", []string{"Target", "Value", "Unit"}, 2, (*taker).targets},
	{"Ingredients", trial.Headers["Ingredients"], 2, (*taker).ingredients},
	{"Columns", trial.Headers["Columns"], 2, (*taker).columns},
	{"Method", []string{"Step", "Critical"}, 2, (*taker).method},
	{"Try", tryColumns, 1, (*taker).tries},
	{"Plan", []string{"Setting", "Value"}, 2, (*taker).plan},
}

// taker takes one workbook's kitchen sheets.
type taker struct {
	Sheets
	found []trial.Finding
}

func (k *taker) say(f trial.Finding) { k.found = append(k.found, f) }

// Read takes the kitchen sheets out of a book and returns the other sheets.
func Read(book *sheet.Book) (s *Sheets, rest []*sheet.Sheet, found []trial.Finding) {
	k := &taker{}
	var lists []table
	for _, s := range book.Sheets {
		kind, t, named := recognise(book.File, s)
		switch {
		case t.row > 0 && !named:
			lists = append(lists, t)
			continue
		case t.row > 0:
			kind.take(k, t)
			continue
		case named && len(s.Rows) > 0:
			k.say(trial.Note("kitchen sheet not taken", trial.Place{File: book.File, Sheet: s.Name}, "the sheet has our name but not our header",
				fmt.Sprintf("to set something there, type the header %s", strings.Join(kind.headers, " | "))))
		}
		rest = append(rest, s)
	}
	for _, t := range lists { // what the sheet Ingredients says stands
		k.ingredients(t)
	}
	return &k.Sheets, rest, k.found
}

// table is a kitchen sheet with its columns found.
type table struct {
	file  string
	sheet *sheet.Sheet
	row   int   // of the header
	cols  []int // column of each of the kind's headers, 0 = not there
	own   bool  // the header is the kitchen's own, in its words
}

// at is the place of a cell of the table; column is an index of its headers.
func (t table) at(row, column int) trial.Place {
	return trial.Place{File: t.file, Sheet: t.sheet.Name, Row: row, Col: t.cols[column]}
}

// text is a cell of the table as typed, "" where its column is missing.
func (t table) text(row, column int) string {
	if t.cols[column] == 0 {
		return ""
	}
	return strings.TrimSpace(t.sheet.Display(t.sheet.At(row, t.cols[column])))
}

// rows yields the numbers of the rows below the header that have content.
func (t table) rows(yield func(int) bool) {
	for _, r := range t.sheet.Rows {
		if r.Number > t.row && len(r.Cells) > 0 && !yield(r.Number) {
			return
		}
	}
}

// headerWithin is how far down a kitchen sheet its header may stand.
const headerWithin = 12

// recognise finds a kitchen sheet's kind and header; of a list of ingredients on a sheet of another name only
// the header. named is true when the name is ours.
func recognise(file string, s *sheet.Sheet) (k *kind, t table, named bool) {
	i := slices.IndexFunc(kinds, func(k kind) bool { return say.Fold(s.Name) == say.Fold(k.name) })
	if i < 0 {
		if t, ok := ownHeads(file, s); ok && (t.cols[3] > 0 && t.isAll() || listNames[say.Fold(s.Name)]) {
			return nil, t, false
		}
		return nil, table{}, false
	}
	k = &kinds[i]
	for _, r := range s.Rows[:min(len(s.Rows), headerWithin)] {
		cols := make([]int, len(k.headers))
		for _, c := range r.Cells {
			h := slices.IndexFunc(k.headers, func(header string) bool { return c.Kind == sheet.Text && say.Fold(c.Text) == say.Fold(header) })
			if h >= 0 && cols[h] == 0 {
				cols[h] = int(c.Col)
			}
		}
		if !slices.Contains(cols[:k.must], 0) {
			return k, table{file, s, r.Number, cols, false}, true
		}
	}
	if k.name == "Ingredients" {
		if t, ok := ownHeads(file, s); ok {
			return k, t, true
		}
	}
	return k, table{}, true
}

// alone reports a row that has nothing beside its name.
func (t table) alone(row int) bool {
	for h, col := range t.cols {
		if h > 0 && col > 0 && t.text(row, h) != "" {
			return false
		}
	}
	return true
}

func (k *taker) method(t table) {
	for row := range t.rows {
		step := trial.Step{Text: t.text(row, 0)}
		if step.Text == "" {
			continue
		}
		switch critical := t.text(row, 1); say.Fold(critical) {
		case "", "no", "n", "-", "0", "false":
		case "yes", "y", "x", "1", "true", "✓":
			step.Critical = true
		default:
			step.Critical, step.Limit = true, critical
		}
		k.Method = append(k.Method, step)
	}
}

// Empty says whether no kitchen sheet set anything.
func (s *Sheets) Empty() bool {
	return s.noTargets() && s.Ingredients == nil && s.Columns == nil && len(s.Method) == 0 && len(s.Tries) == 0 && len(s.Plan) == 0
}

// Under fills what s leaves open from other: s's own values win.
func (s *Sheets) Under(other *Sheets) *Sheets {
	if other == nil {
		return s
	}
	out := &Sheets{Targets: s.Targets, Wanted: overWanted(s.Wanted, other.Wanted), Method: s.Method, Tries: s.Tries}
	for _, r := range targetRows {
		if f := r.field(&out.Targets); *f == nil {
			*f = *r.field(&other.Targets)
		}
	}
	if out.Targets.Canisters == nil {
		out.Targets.Canisters = other.Targets.Canisters
	}
	out.Ingredients = overlaid(s.Ingredients, other.Ingredients)
	out.Columns = overlaid(s.Columns, other.Columns)
	if len(out.Method) == 0 {
		out.Method = other.Method
	}
	return out
}

func overlaid[V any](over, under map[string]V) map[string]V {
	out := make(map[string]V, len(over)+len(under))
	for name, v := range under {
		out[name] = v
	}
	for name, v := range over {
		out[name] = v
	}
	return out
}

// Together is what several workbooks say that no other of them contradicts: it
// holds for all of them, whatever the order of the files.
func Together(all []*Sheets) *Sheets {
	out := &Sheets{}
	ingredients, columns := agreed[Declared]{}, agreed[Meaning]{}
	for _, s := range all {
		out = out.Under(&Sheets{Targets: s.Targets, Wanted: s.Wanted, Method: s.Method})
		ingredients.take(s.Ingredients, Declared.same)
		columns.take(s.Columns, Meaning.same)
	}
	out.Ingredients, out.Columns = ingredients.kept, columns.kept
	return out
}

// agreed keeps the entries of several maps that do not contradict each other.
type agreed[V any] struct {
	kept     map[string]V
	disputed map[string]bool
}

func (a *agreed[V]) take(more map[string]V, same func(a, b V) bool) {
	if a.kept == nil {
		a.kept, a.disputed = map[string]V{}, map[string]bool{}
	}
	for name, v := range more {
		if first, again := a.kept[name]; again && !same(first, v) {
			delete(a.kept, name)
			a.disputed[name] = true
		} else if !a.disputed[name] && !again {
			a.kept[name] = v
		}
	}
}
