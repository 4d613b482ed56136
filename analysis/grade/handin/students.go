package handin

import (
	"foamfield/ingest/pattern"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// WorksOf tells whose work a file is: one student's, or that of several, a sheet or
// the rows of a column each. class are the names of the class, if they are known.
func WorksOf(h *ingest.HandIn, class []string) []*Work {
	formulas := sheet.FormulasOf(h.Path, h.Book)
	tables := tablesOf(h, formulas)
	words := wordsOf(h.Book, tables, h)
	if len(tables) == 0 {
		if t := proseOf(words, h.Book.File); t != nil {
			tables = append(tables, t)
		}
	}
	for _, t := range tables {
		t.resolve(words, h.Own)
	}
	rest := restOf(h.Book, tables, h, formulas)
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
	w := &Work{Student: name, byFile: byFile, Files: []string{h.Book.File}, Paths: []string{h.Path}, Tables: tables, Words: words, Log: []*ingest.HandIn{h},
		Rest: rest, Formulas: map[string]sheet.Formulas{h.Book.File: formulas}}
	w.settle()
	return []*Work{w}
}

// withRest gives each of several works of one file what else stands on its own sheets.
func withRest(all []*Work, rest []Row, file string, formulas sheet.Formulas) []*Work {
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
func (w *Work) settle() {
	w.Tables, w.Sums = parted(w.Tables)
	w.Tables = joined(w.Tables)
	for _, t := range w.Tables {
		t.reclaim() // of cards together more is borne out than of each
		t.name(w.bookOf(t))
	}
	for _, t := range w.Tables {
		w.Sheets = append(w.Sheets, t.At)
		t.Task = taskOf(t)
	}
	w.Partners = partnersIn(w.Words)
}

// bookOf is the file that a table stands in.
func (w *Work) bookOf(t *Table) *sheet.Book {
	for _, h := range w.Log {
		if h.Book.File == t.At.File {
			return h.Book
		}
	}
	return nil
}

// severalBy are the students that a column of the tables names, nil for fewer than
// two.
func severalBy(tables []*Table) (names []string) {
	for _, t := range tables {
		if !slices.ContainsFunc(t.Columns, func(c *Column) bool { return c.Role == column.Student }) {
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

// byColumn parts the trials by the student that their row names.
func byColumn(h *ingest.HandIn, tables []*Table, words []Phrase) (out []*Work) {
	all := severalBy(tables)
	for _, name := range all {
		w := &Work{Student: name, Files: []string{h.Book.File}, Paths: []string{h.Path}, Log: []*ingest.HandIn{h}}
		for _, t := range tables {
			if part := t.only(func(x *Trial) bool { return x.Student == name }); len(part.Trials) > 0 {
				w.Tables = append(w.Tables, part)
			}
		}
		for _, p := range words {
			if p.Note != nil && p.Note.Student == name || p.Note == nil && (hasWords(p.Text, name) || !slices.ContainsFunc(all, func(o string) bool { return hasWords(p.Text, o) })) {
				w.Words = append(w.Words, p)
			}
		}
		w.settle()
		out = append(out, w)
	}
	return out
}

// only is a table with some of its trials.
func (t *Table) only(keep func(*Trial) bool) *Table {
	out := &Table{At: t.At, Task: t.Task, Across: t.Across}
	for _, c := range t.Columns {
		part := *c
		part.Cells, part.table = nil, out
		out.Columns = append(out.Columns, &part)
	}
	for i, x := range t.Trials {
		if !keep(x) {
			continue
		}
		out.Trials = append(out.Trials, &Trial{Trial: x.Trial, Index: len(out.Trials), Table: out})
		for k, c := range t.Columns {
			out.Columns[k].Cells = append(out.Columns[k].Cells, c.Cells[i])
		}
	}
	return out
}

// noName are words by which sheets are called that name no person.
var noName = pattern.Of(`(?i)^(log|logs|sheet|tabelle|feuille|hoja|foglio|data|trial|trials|week|day|task|foam|foams|results?|mix|mixes|test|tests|run|part|batch|sauce|dessert|main|notes?|versuche?|essais?|prueba|prove?|protokoll|table|series|experiments?|lab|practical|raw|calc|calculations?|summary|conclusion|method|safety)s?$`)

// sheetsAreStudents reports that each sheet of a file is another student's: they go by
// names of the class, or of the file's own name, or look like nothing but names.
func sheetsAreStudents(tables []*Table, stem string, class []string) bool {
	var names []string
	for _, t := range tables {
		if t.At.Sheet == "" {
			return false
		}
		if !slices.Contains(names, t.At.Sheet) {
			names = append(names, t.At.Sheet)
		}
	}
	if len(names) < 2 {
		return false
	}
	listed, inFile := 0, 0
	for _, n := range names {
		if slices.ContainsFunc(class, func(c string) bool { return SameName(c, n) }) {
			listed++
		}
		if hasWords(stem, n) {
			inFile++
		}
		if scheme.LooksLikeDay(n) {
			return false
		}
	}
	switch {
	case listed == len(names), inFile == len(names):
		return true
	case len(class) > 0 && listed == 0:
		return false
	}
	return len(names) >= 3 && !slices.ContainsFunc(names, func(n string) bool { return !likeAName(n) })
}

// sheetsSaySo reports that the first lines of each sheet name a person by the sheet's own
// name: "Ada Moss, 6 March" on a sheet called Ada, "Ben Orr" on a sheet called Ben.
func sheetsSaySo(tables []*Table, words []Phrase) bool {
	sheets := map[string]bool{}
	for _, t := range tables {
		sheets[t.At.Sheet] = false
	}
	for _, p := range words {
		said, ok := sheets[p.At.Sheet]
		if !ok || said || p.At.Row > 3 || p.Note != nil || !likeAName(p.At.Sheet) {
			continue
		}
		names := aName.FindAllString(p.Text, 2)
		sheets[p.At.Sheet] = len(names) == 2 && strings.HasPrefix(p.Text, names[0]+" "+names[1]) && (hasWords(names[0], p.At.Sheet) || hasWords(names[1], p.At.Sheet))
	}
	for _, said := range sheets {
		if !said {
			return false
		}
	}
	return len(sheets) > 1
}

// likeAName reports one to three capitalised words of letters that are no other word
// for a sheet.
func likeAName(s string) bool {
	words := strings.Fields(s)
	for _, w := range words {
		r := []rune(w)
		if !unicode.IsUpper(r[0]) || noName.MatchString(w) || strings.ContainsAny(w, "0123456789") {
			return false
		}
	}
	return len(words) >= 1 && len(words) <= 3
}

// bySheet parts a file by its sheets; words on other sheets go to whom they name.
func bySheet(h *ingest.HandIn, tables []*Table, words []Phrase) (out []*Work) {
	byName := map[string]*Work{}
	for _, t := range tables {
		w := byName[t.At.Sheet]
		if w == nil {
			w = &Work{Student: t.At.Sheet, Files: []string{h.Book.File}, Paths: []string{h.Path}, Log: []*ingest.HandIn{h}}
			byName[t.At.Sheet] = w
			out = append(out, w)
		}
		w.Tables = append(w.Tables, t)
	}
	for _, p := range words {
		for _, w := range out {
			if p.At.Sheet == w.Student || byName[p.At.Sheet] == nil && (hasWords(p.At.Sheet+" "+p.Text, w.Student) || !slices.ContainsFunc(out, func(o *Work) bool { return hasWords(p.At.Sheet+" "+p.Text, o.Student) })) {
				w.Words = append(w.Words, p)
			}
		}
	}
	for _, w := range out {
		w.settle()
	}
	return out
}

var (
	saysName  = pattern.Of(`(?i)^\s*(?:student|name|by|pupil|author|learner|schüler(?:in)?|élève|nom|alumno|alumna|nombre|studente|nome)\s*[:=]\s*(.+)$`)
	nameLabel = pattern.Of(`(?i)^\s*(?:student|name|student name|pupil|author|schüler(?:in)?|élève|nom|alumno|alumna|nombre|studente|nome)\s*:?\s*$`)
)

// nameOf is the student's name: in a column, in words, or else by the file.
func nameOf(words []Phrase, tables []*Table, stem string) (name string, byFile bool) {
	for _, t := range tables {
		for _, x := range t.Trials {
			if t.Find(column.Student) != nil && x.Student != "" {
				return x.Student, false
			}
		}
	}
	for i, p := range words {
		if m := saysName.FindStringSubmatch(p.Text); m != nil && len(strings.Fields(m[1])) <= 5 {
			return strings.TrimSpace(m[1]), false
		}
		if nameLabel.MatchString(p.Text) && !headsRow(words, i) && i+1 < len(words) && words[i+1].At.Row == p.At.Row && len(strings.Fields(words[i+1].Text)) <= 4 {
			return strings.TrimSpace(words[i+1].Text), false
		}
	}
	return NameOfFile(stem), true
}

// headsRow reports a label that is one of several headers in a row, and so no label of a
// value: "Name | Kind | HLB".
func headsRow(words []Phrase, i int) bool {
	n := 0
	for _, p := range words {
		if p.At.File == words[i].At.File && p.At.Sheet == words[i].At.Sheet && p.At.Row == words[i].At.Row {
			n++
		}
	}
	return n > 2
}

// NameOfFile is a person's name out of a file's.
func NameOfFile(stem string) string {
	words := strings.FieldsFunc(stem, func(r rune) bool { return r == '_' || r == '-' || r == ' ' || r == '.' || r == '+' })
	for i, w := range words {
		r := []rune(w)
		if len(r) > 1 && w != "and" {
			r[0] = unicode.ToUpper(r[0])
		}
		words[i] = string(r)
	}
	return strings.Join(words, " ")
}

var (
	pairWord = pattern.Of(`(?i)\b(pair|pairs|partner|partners|together with|worked together|worked with|team|teamed|bench mate|shared|joint|jointly|binôme|pareja|coppia|zu zweit|gemeinsam|partnerin)\b`)
	aName    = pattern.Of(`\p{Lu}[\p{L}'’-]+`)
)

// partnersIn are the names in words that declare a pair.
func partnersIn(words []Phrase) (out []string) {
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
func taskOf(t *Table) string {
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

// SameName reports that two texts name one person: all words of the shorter are in
// the longer.
func SameName(a, b string) bool {
	x, y := nameWords(a), nameWords(b)
	if len(x) == 0 || len(y) == 0 {
		return false
	}
	if len(x) > len(y) {
		x, y = y, x
	}
	for _, w := range x {
		if !slices.Contains(y, w) {
			return false
		}
	}
	return true
}

// hasWords reports whether all words of a name stand in a text.
func hasWords(text, name string) bool {
	in := nameWords(text)
	for _, w := range nameWords(name) {
		if !slices.Contains(in, w) {
			return false
		}
	}
	return len(nameWords(name)) > 0
}

func nameWords(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) })
}

// bookNumber is what tells two books of one student apart in their names.
var bookNumber = pattern.Of(`(?i)[\s_.-]*(?:\(?\d+\)?|v\d+|part[\s_-]*\d+|book[\s_-]*\d+|week[\s_-]*\d+|second|first|final|new|again|continued)$`)

// Merged joins the works of one student, who may hand in two books.
func Merged(works []*Work) (out []*Work) {
	byKey := map[string]*Work{}
	for _, w := range works {
		key := w.key()
		first := byKey[key]
		if first == nil {
			byKey[key] = w
			out = append(out, w)
			continue
		}
		first.join(w)
		if first.byFile {
			first.Student = strings.TrimSpace(bookNumber.ReplaceAllString(first.Student, ""))
		}
	}
	return out
}

// genericName are words by which files are called whose number tells students apart.
var genericName = pattern.Of(`(?i)^(students?|groups?|teams?|bench|table|pupils?|hand|in|handin|log|logs|lab|labs|class|foams?|s|g|no|nr|schüler|gruppe|élève|groupe|alumno|grupo|studente|gruppo|trials?|book|week|day|file|sheet|copy|report|exercise|assignment|task)$`)

// key is what the books of one student have in common: the name, and of a file's name
// what is left without the number of the book.
func (w *Work) key() string {
	full := keyWords(w.Student)
	if !w.byFile {
		return strings.Join(full, " ")
	}
	short := keyWords(bookNumber.ReplaceAllString(w.Student, ""))
	if !slices.ContainsFunc(short, func(s string) bool { return !genericName.MatchString(s) && strings.ContainsFunc(s, unicode.IsLetter) }) {
		return strings.Join(full, " ")
	}
	return strings.Join(short, " ")
}

func keyWords(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

func (w *Work) join(o *Work) {
	if len(o.Student) < len(w.Student) {
		w.Student = o.Student
	}
	for i, f := range o.Files {
		if !slices.Contains(w.Files, f) {
			w.Files, w.Paths = append(w.Files, f), append(w.Paths, o.Paths[i])
		}
	}
	w.Tables, w.Sums, w.Words, w.Log, w.Sheets = append(w.Tables, o.Tables...), append(w.Sums, o.Sums...), append(w.Words, o.Words...), append(w.Log, o.Log...), append(w.Sheets, o.Sheets...)
	w.Rest, w.Shared = append(w.Rest, o.Rest...), w.Shared || o.Shared
	for f, formulas := range o.Formulas {
		w.Formulas[f] = formulas
	}
	for _, p := range o.Partners {
		if !slices.Contains(w.Partners, p) {
			w.Partners = append(w.Partners, p)
		}
	}
}

// First is where the work begins.
func (w *Work) First() trial.Place {
	if len(w.Tables) > 0 && len(w.Tables[0].Columns) > 0 {
		return w.Tables[0].Columns[0].Heading
	}
	return trial.Place{File: w.Files[0], Row: 1, Col: 1}
}
