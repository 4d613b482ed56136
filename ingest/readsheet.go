package ingest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/layout"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// readSheet reads the log tables of a sheet.
func (r *reader) readSheet(book *sheet.Book, s *sheet.Sheet) {
	at := trial.Place{File: book.File, Sheet: sheetName(book, s)}
	for _, d := range s.Faults {
		r.problem("damage in the file", trial.MustFix, trial.Place{File: at.File, Sheet: at.Sheet, Row: d.Row, Col: d.Col}, d.What,
			"open the file in a spreadsheet program, check this place and save it again")
	}
	tables, outside := layout.Find(s)
	if len(tables) == 0 {
		if len(s.Rows) > 0 && !explains(s) {
			r.problem("no log on the sheet", trial.ForInformation, at, "no row of column headers was found, so the sheet is not read as a log",
				"nothing to do, unless trials are logged there: then type a header above them")
		}
		return
	}
	r.hadHeader = true
	r.log.Rows.Furniture += len(outside)
	r.log.Rows.Read += len(outside)
	if s.Hidden {
		r.problem("hidden sheet", trial.ForInformation, at, "the sheet is hidden and was read", "delete it if it is not part of the log")
	}
	for i := range tables {
		r.readTable(at, &tables[i])
	}
}

// explains reports our own sheet of explanations, as a blank log has it: it bears
// its name as its title.
func explains(s *sheet.Sheet) bool {
	const title = "How to fill this in"
	return s.Name == title && s.At(1, 2).Text == title
}

// readTable reads the trials of one table.
func (r *reader) readTable(at trial.Place, found *layout.Table) {
	t := &table{file: at.File, name: at.Sheet, sheet: found.Sheet, found: found}
	r.partSets, r.whats = map[string][]trial.Amount{}, map[string]*ingredient.Ingredient{}
	r.plan(t)
	r.survey(t)
	r.hadOutcome = r.hadOutcome || t.outcomes
	r.log.Rows.Furniture += len(found.Furniture)
	r.log.Rows.Read += len(found.Furniture) + len(found.Rows)
	r.hiddenParts(t)
	if !found.PerReading {
		r.log.Trials = slices.Grow(r.log.Trials, len(found.Rows))
	}
	names := namesFor(at, t, r.several)
	b := &row{book: r, table: t, sheet: found.Sheet}
	var own []numbered
	for rows := range trialRows(found) {
		b.rows, b.now = rows, 0
		if !r.wanted(at, b) {
			r.filtered++
			r.log.Rows.Read -= len(rows)
			continue
		}
		trial := b.trial()
		if trial.Day == "" {
			trial.Day = names.day
		}
		if trial.Student == "" {
			trial.Student = names.student
		}
		if b.ownNumber(&trial) {
			own = append(own, numbered{int32(len(r.log.Trials)), int32(rows[0])})
		}
		r.log.Trials = append(r.log.Trials, trial)
	}
	r.sayTwice(t, own)
}

// trialRows yields the rows of each trial: one, or all that share their key
// when there is a row for each reading or squirt.
func trialRows(t *layout.Table) func(yield func([]int) bool) {
	return func(yield func([]int) bool) {
		if squirt := t.Find(column.Squirt); !t.PerReading && squirt >= 0 && t.Find(column.TrialID) >= 0 {
			squirts(t, squirt, yield)
			return
		}
		if !t.PerReading {
			var one [1]int
			for n := range t.Rows {
				one[0] = n
				if !yield(one[:]) {
					return
				}
			}
			return
		}
		var keys []string
		rows := map[string][]int{}
		for n := range t.Rows {
			k := keyOf(t, n)
			if rows[k] == nil {
				keys = append(keys, k)
			}
			rows[k] = append(rows[k], n)
		}
		for _, k := range keys {
			if !yield(rows[k]) {
				return
			}
		}
	}
}

// keyOf is what tells a row's trial from the others.
func keyOf(t *layout.Table, n int) string {
	var key strings.Builder
	for _, h := range t.Key {
		c, _ := t.Cell(n, h)
		key.WriteString(t.Sheet.Display(c))
		key.WriteByte(0)
	}
	return key.String()
}

// hiddenParts says what hidden rows and columns were read.
func (r *reader) hiddenParts(t *table) {
	hidden, first := 0, 0
	for n := range t.found.Rows {
		if t.found.Rows[n].Hidden {
			if hidden == 0 {
				first = n
			}
			hidden++
		}
	}
	if hidden > 0 {
		r.problem("hidden rows", trial.ForInformation, t.at(first, 0), fmt.Sprintf("%d hidden rows were read", hidden), "delete them if they do not count")
	}
	for i := range t.fields {
		if f := &t.fields[i]; t.found.Heads[f.col-1].Hidden && f.Role != column.None {
			r.problem("hidden column", trial.ForInformation, t.heading(f.col), fmt.Sprintf("the hidden column %s was read", quoted(f.header)),
				"delete it if it does not count")
		}
	}
}

// wanted reports whether a trial belongs to the dish the call asks for.
func (r *reader) wanted(at trial.Place, b *row) bool {
	if r.opt.Only == "" {
		return true
	}
	texts := []string{at.File, at.Sheet}
	for i := range b.table.fields {
		if f := &b.table.fields[i]; f.Role == column.Dish {
			texts = append(texts, b.text(f.col))
		}
	}
	for _, text := range texts {
		if strings.Contains(fold(text), fold(r.opt.Only)) {
			return true
		}
	}
	return false
}

// sheetName is the name of a sheet as places give it: a text file has none.
func sheetName(book *sheet.Book, s *sheet.Sheet) string {
	switch strings.ToLower(filepath.Ext(book.File)) {
	case ".csv", ".tsv", ".txt":
		return ""
	}
	return s.Name
}

func baseName(path string) string { return filepath.Base(path) }
