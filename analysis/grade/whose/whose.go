// Package whose tells whose work a file is: one student's, or that of several, a sheet or the rows
// of a column each; and joins what one student handed in.
package whose

import (
	"path/filepath"
	"slices"
	"strings"

	"foamfield/analysis/grade/cells"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/reclaim"
	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Of tells whose work a file is: one student's, or that of several, a sheet or
// the rows of a column each. class are the names of the class, if they are known.
func Of(h *ingest.HandIn, class []string) []*handin.Work {
	formulas := sheet.FormulasOf(h.Path, h.Book)
	tables := cells.Tables(h, formulas)
	for _, t := range tables {
		reclaim.Holds(t)
		reclaim.Columns(t)
	}
	for _, t := range tables {
		mixesNotStudents(t)
		mark(t)
	}
	own := h.Own
	var aside []handin.Phrase
	for _, t := range tables {
		if said, lines := cells.Asides(t); len(said) > 0 {
			more := *own
			more.Lines = slices.Concat(own.Lines, lines)
			own, aside = &more, append(aside, said...)
			reclaim.OwnLines(t, &more, func(at trial.Place) bool {
				return slices.ContainsFunc(lines, func(l kitchen.Line) bool { return l.At == at })
			})
		}
	}
	words := append(cells.Words(h, tables), aside...)
	if len(tables) == 0 {
		if t := cells.Told(words, h.Book.File); t != nil {
			tables = append(tables, t)
			words = slices.DeleteFunc(words, func(p handin.Phrase) bool { return cells.IsNote(t, p) })
		}
	}
	for _, t := range tables {
		reclaim.Ingredients(t, words, own)
	}
	rest := cells.Rest(h, tables, formulas)
	stem := strings.TrimSuffix(h.Book.File, filepath.Ext(h.Book.File))
	if h.Folder != "" && !slices.ContainsFunc(keyWords(stem), func(w string) bool { return !genericName.MatchString(w) }) {
		stem = h.Folder // a folder a student, with a file called log
	}
	switch {
	case severalBy(tables) != nil:
		return withRest(byColumn(h, tables, words), rest, h.Book.File, formulas)
	case sheetsAreStudents(tables, stem, class) || sheetsSaySo(tables, words):
		return withRest(bySheet(h, tables, words), rest, h.Book.File, formulas)
	}
	name, byFile := nameOf(words, tables, stem)
	w := &handin.Work{Student: name, ByFile: byFile, Files: []string{h.Book.File}, Paths: []string{h.Path}, Tables: tables, Words: words, Log: []*ingest.HandIn{h},
		Rest: rest, Formulas: map[string]sheet.Formulas{h.Book.File: formulas}}
	settle(w)
	return []*handin.Work{w}
}

// withRest gives each of several works of one file what else stands on its own sheets.
func withRest(all []*handin.Work, rest []handin.Row, file string, formulas sheet.Formulas) []*handin.Work {
	for _, w := range all {
		w.Shared, w.Formulas = true, map[string]sheet.Formulas{file: formulas}
		for _, r := range rest {
			if slices.ContainsFunc(w.Sheets, func(at trial.Place) bool { return at.Sheet == r.At.Sheet }) {
				w.Rest = append(w.Rest, r)
			}
		}
	}
	return all
}

// settle fills in what follows from the parts of a work.
func settle(w *handin.Work) {
	w.Tables, w.Sums = cells.Parted(w.Tables)
	w.Tables = cells.Joined(w.Tables)
	cells.Workings(w)
	for _, t := range w.Tables {
		reclaim.Columns(t) // of cards together more is borne out than of each
		reclaim.Numbers(t, bookOf(w, t))
	}
	for _, t := range w.Tables {
		w.Sheets = append(w.Sheets, t.At)
		t.Task = taskOf(t)
	}
	w.Partners = partnersIn(w.Words)
}

// bookOf is the file that a table stands in.
func bookOf(w *handin.Work, t *handin.Table) *sheet.Book {
	for _, h := range w.Log {
		if h.Book.File == t.At.File {
			return h.Book
		}
	}
	return nil
}

// severalBy are the students that a column of the tables names, nil for fewer than
// two.
func severalBy(tables []*handin.Table) (names []string) {
	for _, t := range tables {
		if !slices.ContainsFunc(t.Columns, func(c *handin.Column) bool { return c.Role == column.Student }) {
			continue
		}
		for _, x := range t.Trials {
			if x.Student != "" && !slices.Contains(names, x.Student) {
				names = append(names, x.Student)
			}
		}
	}
	if len(names) < 2 {
		return nil
	}
	return names
}

// of reports a row whose words are the kth student's alone.
func of(at trial.Place, k int, said [][]handin.Phrase) bool {
	for i, words := range said {
		there := slices.ContainsFunc(words, func(p handin.Phrase) bool {
			return p.At.File == at.File && p.At.Sheet == at.Sheet && p.At.Row == at.Row
		})
		if there != (i == k) {
			return false
		}
	}
	return true
}

// byColumn parts the trials by the student that their row names.
func byColumn(h *ingest.HandIn, tables []*handin.Table, words []handin.Phrase) (out []*handin.Work) {
	all := severalBy(tables)
	said := parted(words, all)
	for k, name := range all {
		w := &handin.Work{Student: name, Files: []string{h.Book.File}, Paths: []string{h.Path}, Log: []*ingest.HandIn{h}}
		for _, t := range tables {
			if part := only(t, func(x *handin.Trial) bool { return x.Student == name }); len(part.Trials) > 0 {
				reclaim.OwnLines(part, h.Own, func(at trial.Place) bool { return of(at, k, said) })
				w.Tables = append(w.Tables, part)
			}
		}
		w.Words = slices.DeleteFunc(said[k], func(p handin.Phrase) bool { return p.Note != nil })
		for _, p := range words {
			if p.Note != nil && p.Note.Student == name {
				w.Words = append(w.Words, p)
			}
		}
		if whole := calledIn(w.Words, name); whole != "" {
			w.Student = whole
		}
		settle(w)
		out = append(out, w)
	}
	return out
}

// only is a table with some of its trials.
func only(t *handin.Table, keep func(*handin.Trial) bool) *handin.Table {
	out := &handin.Table{At: t.At, Task: t.Task, Across: t.Across}
	for _, c := range t.Columns {
		part := *c
		part.Cells = nil
		out.Columns = append(out.Columns, &part)
	}
	for i, x := range t.Trials {
		if !keep(x) {
			continue
		}
		out.Trials = append(out.Trials, &handin.Trial{Trial: x.Trial, Index: len(out.Trials), Table: out})
		for k, c := range t.Columns {
			out.Columns[k].Cells = append(out.Columns[k].Cells, c.Cells[i])
		}
	}
	return out
}

var (
	pairWord = pattern.Of(`(?i)\b(pair|pairs|partner|partners|together with|worked together|worked with|team|teamed|bench mate|shared|joint|jointly|binôme|pareja|coppia|zu zweit|gemeinsam|partnerin)\b`)
	aName    = pattern.Of(`\p{Lu}[\p{L}'’-]+`)
)

// partnersIn are the names in words that declare a pair.
func partnersIn(words []handin.Phrase) (out []string) {
	for _, p := range words {
		if !pairWord.MatchString(p.Text) {
			continue
		}
		for _, n := range aName.FindAllString(p.Text, -1) {
			if !pairWord.MatchString(n) && !slices.Contains(out, n) {
				out = append(out, n)
			}
		}
	}
	return out
}

// taskOf is the dish that a table's trials are of: as its sheet says, if that says
// something, or its fats and waters.
func taskOf(t *handin.Table) string {
	var parts []string
	for _, c := range t.Weighed() {
		if c.Known() > 0 && !c.Field.What.WeighedAsEmulsifier() {
			name := c.Field.What.Name
			if !slices.Contains(parts, name) {
				parts = append(parts, name)
			}
		}
	}
	slices.Sort(parts) // the order of columns makes no other dish
	return strings.Join(parts, ", ")
}
