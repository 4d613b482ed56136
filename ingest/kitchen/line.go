package kitchen

import (
	"cmp"
	"foamfield/ingest/pattern"
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Kitchens write what an ingredient is above or below their table, or on a sheet of
// abbreviations: "fat = ghee, 100 % fat. HLB: GMS 3.8, PS80 15".

// Line is a text of the log that stands in no table of trials.
type Line struct {
	Text  string
	At    trial.Place
	Of    string // the name, folded, that an entry of a list is of; "" = a line of prose
	Above int    // header row of the next table of trials below it on its sheet; 0 = none
	Fill  string // the colour behind it, or of the empty cell to its left
}

// mostLines bounds what is kept of a sheet that is all prose.
const mostLines = 400

const fatWord = `(?:fat|fett|mg|gras|grasa|grassi|grasso|vet|matière grasse|matières grasses|materia grasa|materia grassa)`

var fatHead = pattern.Of(`^(?:` + fatWord + `(?: ?content|gehalt)?[ ,/:_]*(?:in )?(?:[(\[]?(?:in )?%[)\]]?|percent|` + in100 + `)(?:,? \(?(?:label|packet|pack|w/w|m/m|by weight|by mass|by the packet)\)?)?|(?:fat|fett|vet) ?(?:content|gehalt)|fat (?:in|per) 100|(?:%|percent) ?(?:of )?` + fatWord + `|g (?:of )?` + fatWord + `,? ?` + in100 + `)$`)

var hlbHead = pattern.Of(`^(?:hlb|bhl|ehl)(?:[- ]?(?:value|values|wert|werte|number|no\.?|nr\.?|waarde|valeur|valor|valore))?$`)

// in100 is how a list says that its grams are of 100.
const in100 = `\(?(?:g ?(?:/|per|in|pro|je|pour|sur|su|por|auf)|per|in|pro|je|pour|sur|su|por|/) ?100 ?g\)?`

// LinesOf are the texts of a sheet that stand in none of its tables of trials.
func LinesOf(at trial.Place, s *sheet.Sheet, tables []grid.Table, outside []grid.Furniture) []Line {
	inTable := rowsOfTrials(tables, outside)
	l := lister{sheet: s, at: at, tables: tables}
	last := lastHeaded(tables)
	for i := range s.Rows {
		if row := &s.Rows[i]; !inTable(row.Number) {
			l.row(row)
		} else if last > 0 && s.Coloured() {
			l.legend(row, last)
		}
		if len(l.lines) > mostLines {
			break
		}
	}
	for i := range tables {
		l.about(&tables[i])
	}
	return slices.Concat(l.lines, listsBeside(at, s, tables, inTable), textsBeside(at, s, tables, inTable))
}

// textsBeside are the lines that stand right of all heads in the rows of trials, a column away:
// "GMS HLB 3.8" beside the fourth of them.
func textsBeside(at trial.Place, s *sheet.Sheet, tables []grid.Table, inTable func(row int) bool) []Line {
	last := 0
	for k := range tables {
		t := &tables[k]
		if t.Places != nil {
			return nil
		}
		for _, h := range t.Heads {
			if h.Text != "" { // without a header it may be a list of its own
				last = max(last, h.Col)
			}
		}
		if t.Transposed {
			for i := range t.Rows {
				last = max(last, t.Rows[i].Number, t.UnitCols[i])
			}
		}
	}
	l := lister{sheet: s, at: at, tables: tables}
	for i := range s.Rows {
		row := s.Rows[i]
		if last == 0 || !inTable(row.Number) || len(l.lines) > mostLines {
			continue
		}
		row.Cells = slices.DeleteFunc(slices.Clone(row.Cells), func(c sheet.Cell) bool { return int(c.Col) < last+2 })
		if len(row.Cells) > 0 {
			l.row(&row)
		}
	}
	return l.lines
}

// listsBeside are the lines of lists that stand right of the trials, in the very rows of them:
// "what | fat % | HLB".
func listsBeside(at trial.Place, s *sheet.Sheet, tables []grid.Table, inTable func(row int) bool) []Line {
	l := lister{sheet: s, at: at, tables: tables}
	for k := range tables {
		t := &tables[k]
		if _, results := t.Looks(); t.Transposed || t.Places != nil || results > 0 || len(t.Heads) < 2 || len(t.Heads) > 5 || !inTable(t.HeaderRow) {
			continue
		}
		l.hlb, l.fat = 0, 0
		for i := range s.Rows {
			row := &s.Rows[i]
			if row.Number < t.HeaderRow || len(l.lines) > mostLines {
				continue
			}
			own := *row
			own.Cells = slices.DeleteFunc(slices.Clone(row.Cells), func(c sheet.Cell) bool {
				return int(c.Col) < t.Heads[0].Col || int(c.Col) > t.Heads[len(t.Heads)-1].Col
			})
			if len(own.Cells) == 0 {
				break
			}
			l.row(&own)
		}
	}
	return l.lines
}

// about writes out what a row below the header says of each column: "GMS HLB 3.8".
func (l *lister) about(t *grid.Table) {
	for i := range t.Heads {
		if h := &t.Heads[i]; h.About != "" {
			l.at.Row, l.at.Col = h.Row, h.Col+1
			l.ofHead(h, h.About)
		}
	}
	for _, fu := range t.Furniture {
		i := slices.IndexFunc(l.sheet.Rows, func(r sheet.Row) bool { return r.Number == fu.Row })
		if fu.Kind != grid.About || i < 0 {
			continue
		}
		of := ""
		for k := range l.sheet.Rows[i].Cells {
			c := &l.sheet.Rows[i].Cells[k]
			text, h := strings.TrimSpace(l.sheet.Display(*c)), t.HeadAt(int(c.Col))
			_, said, _ := look.Described(text)
			switch label := look.LabelOfNumbers(text); {
			case c.Kind == sheet.Text && label != "" && of == "":
				of = label
			case c.Kind == sheet.Number && of != "":
				said = strings.TrimSpace(strings.Replace(of+" "+say.Exact(c.Number), "% fat "+say.Exact(c.Number), say.Exact(c.Number)+" % fat", 1))
			}
			if h < 0 || said == "" {
				continue
			}
			l.at.Row, l.at.Col = fu.Row, int(c.Col)
			l.ofHead(&t.Heads[h], said)
		}
	}
}

// ofHead adds what is said of a head's ingredient; of what is known its kind is no news.
func (l *lister) ofHead(h *grid.Head, said string) {
	name := cmp.Or(h.Meaning.Ingredient, h.Meaning.Words)
	if _, is := ingredient.Lookup(name); name != "" && !(is && strings.HasPrefix(said, "=")) {
		l.entry(name, said)
	}
}

// lastHeaded is the last column of the tables of a sheet that has a header, 0 where
// they are no plain ones.
func lastHeaded(tables []grid.Table) (last int) {
	for i := range tables {
		if tables[i].Transposed {
			return 0
		}
		for _, h := range tables[i].Heads {
			if h.Row > 0 {
				last = max(last, h.Col)
			}
		}
	}
	return last
}

// legend takes the texts of a legend of colours that stands to the right of a row.
func (l *lister) legend(row *sheet.Row, last int) {
	for k := range row.Cells {
		if c := &row.Cells[k]; look.InLegend(l.sheet, row.Number, c, last) {
			l.at.Row, l.at.Col = row.Number, int(c.Col)
			l.add(strings.TrimSpace(c.Text))
		}
	}
}

// rowsOfTrials tells the rows of a sheet that belong to a table of trials. A table
// without results, a list of what is used, is none.
func rowsOfTrials(tables []grid.Table, outside []grid.Furniture) func(row int) bool {
	if !slices.ContainsFunc(tables, func(t grid.Table) bool { _, results := t.Looks(); return results > 0 }) {
		return func(int) bool { return false }
	}
	beside := map[int]bool{}
	for _, f := range outside {
		beside[f.Row] = true
	}
	for i := range tables {
		for _, f := range tables[i].Furniture {
			beside[f.Row] = f.Kind == grid.Title || f.Kind == grid.Legend
		}
	}
	return func(row int) bool { return !beside[row] }
}

// lister makes lines of the rows of a sheet. In a list of what is used it writes out
// what the columns headed HLB and fat say.
type lister struct {
	sheet    *sheet.Sheet
	at       trial.Place
	tables   []grid.Table
	hlb, fat int // columns; 0 = no such header yet
	lines    []Line
	names    *sheet.Row // the last row of words alone
	namesRow int
}

func (l *lister) add(text string) {
	fill, _ := look.Swatch(l.sheet, l.at.Row, l.at.Col)
	l.lines = append(l.lines, Line{Text: text, At: l.at, Above: l.above(), Fill: fill})
}

// above is the header row of the next table below the row at hand.
func (l *lister) above() (header int) {
	for i := range l.tables {
		if h := l.tables[i].HeaderRow; h > l.at.Row && (header == 0 || h < header) {
			header = h
		}
	}
	return header
}

// entry adds what a list says of a name.
func (l *lister) entry(name, says string) {
	l.lines = append(l.lines, Line{Text: name + " " + says, At: l.at, Of: InFull(say.Fold(name)), Above: l.above()})
}

func (l *lister) row(row *sheet.Row) {
	if l.across(row) {
		return
	}
	var names []string
	for k := range row.Cells {
		c := &row.Cells[k]
		l.at.Row, l.at.Col = row.Number, int(c.Col)
		if text := strings.TrimSpace(l.sheet.Display(*c)); c.Kind == sheet.Text && !l.heads(say.Fold(text), int(c.Col)) {
			l.add(text)
			if strings.ContainsFunc(text, unicode.IsLetter) {
				names = append(names, text)
			}
		}
	}
	if len(names) > 1 && look.AreShares(row.Cells) {
		l.at.Col = int(row.Cells[0].Col)
		l.add(strings.Join(names, ", ")) // what is said of one of them tells what the others are
	}
	l.remember(row)
	if len(names) == 0 {
		return
	}
	l.beside(row)
	l.pairs(row)
	if numbersIn(row) > mostNumbers {
		return // a trial, and no ingredient of a list
	}
	if v := l.numberIn(row, l.hlb); v != nil {
		for _, name := range names {
			l.entry(name, "HLB "+say.Exact(*v))
		}
	}
	if v := l.numberIn(row, l.fat); v != nil {
		l.entry(names[0], "= "+say.Exact(*v)+" % fat")
	}
	if l.hlb > 0 && len(names) >= 2 {
		l.add(names[0] + " = " + names[1])
	}
}

// numberIn is the number of a row in a column of a list, typed as one or as a text: 80, "80 %".
func (l *lister) numberIn(row *sheet.Row, col int) *float64 {
	c := look.CellAt(row, col)
	switch {
	case col == 0:
		return nil
	case c.Kind == sheet.Number && strings.HasSuffix(strings.TrimSpace(l.sheet.Display(c)), "%"):
		v := 100 * c.Number
		return &v
	case c.Kind == sheet.Number:
		return &c.Number
	case c.Kind == sheet.Text:
		return value(strings.TrimSpace(strings.TrimRight(strings.TrimSpace(c.Text), "%")))
	}
	return nil
}

// remember keeps the names of a row for what is said of them in rows below.
func (l *lister) remember(row *sheet.Row) {
	if numbersIn(row) > 0 || look.Filled(row.Cells) == 0 {
		return
	}
	l.names, l.namesRow = row, row.Number
}

// across writes out a list whose names run across: "HLB | | 3.8 | 15" below the names of what
// is used.
func (l *lister) across(row *sheet.Row) bool {
	first := look.FirstFilled(row.Cells)
	of := ""
	switch text := say.Fold(strings.TrimSpace(first.Text)); {
	case first.Kind != sheet.Text || l.names == nil || row.Number > l.namesRow+3:
		return false
	case hlbHead.MatchString(text):
		of = "HLB "
	case fatHead.MatchString(text):
		of = "= "
	default:
		return false
	}
	var found []func()
	for k := range row.Cells {
		c := &row.Cells[k]
		if look.Empty(c) || c.Col == first.Col {
			continue
		}
		v, name := l.numberIn(row, int(c.Col)), look.CellAt(l.names, int(c.Col))
		if v == nil || name.Kind != sheet.Text {
			return false
		}
		says := of + say.Exact(*v)
		if of == "= " {
			says += " % fat"
		}
		at := int(c.Col)
		found = append(found, func() {
			l.at.Row, l.at.Col = row.Number, at
			l.entry(strings.TrimSpace(name.Text), says)
		})
	}
	for _, add := range found {
		add()
	}
	return len(found) > 0
}

// mostNumbers are the numbers that a list of what is used gives of one ingredient, and more.
const mostNumbers = 4

func numbersIn(row *sheet.Row) (n int) {
	for k := range row.Cells {
		if row.Cells[k].Kind == sheet.Number {
			n++
		}
	}
	return n
}

var isYear = look.SetOf("year jahr année annee anno año")

var onlyHLB = pattern.Of(`^hlb\b\s*[=:]?\s*(?:` + number + `)?$`)

// beside writes out what a list without headers says of a name in the cells to its right:
// "GMS | HLB 3.8" and "GMS | HLB | 3.8".
func (l *lister) beside(row *sheet.Row) {
	if len(row.Cells) < 2 || row.Cells[0].Kind != sheet.Text {
		return
	}
	text := func(k int) string { return strings.TrimSpace(l.sheet.Display(row.Cells[k])) }
	name, says := text(0), text(1)
	if isYear[say.Fold(name)] && row.Cells[1].Kind == sheet.Number {
		l.add(name + " " + says)
	}
	m := onlyHLB.FindStringSubmatch(say.Fold(says))
	l.at.Row, l.at.Col = row.Number, int(row.Cells[0].Col)
	switch {
	case m == nil || row.Cells[1].Kind != sheet.Text:
	case m[1] != "" && len(row.Cells) == 2:
		l.add(name + " " + says)
	case m[1] == "" && len(row.Cells) == 3 && row.Cells[2].Kind == sheet.Number:
		l.add(name + " HLB " + say.Exact(row.Cells[2].Number))
	case m[1] == "" && len(row.Cells) == 3 && value(text(2)) != nil:
		l.add(name + " HLB " + text(2))
	}
}

// heads reports whether a text is a header of HLB or fat, and keeps its column.
func (l *lister) heads(text string, col int) bool {
	switch {
	case hlbHead.MatchString(text):
		l.hlb = col
	case fatHead.MatchString(text):
		l.fat = col
	default:
		return false
	}
	return true
}

// Statement is what a line says of an ingredient; what it does not say is nil.
type Statement struct {
	HLB, Fat *float64
	Is       *ingredient.Ingredient // "SMS = sorbitan monostearate"
	At       trial.Place
	Disputed bool // lines say two things of it: none is taken
}

// Stated is what the lines say of an ingredient by its name in the log.
func (s *Sheets) Stated(name string) (found Statement, ok bool) {
	folded := InFull(say.Fold(name))
	listed := slices.ContainsFunc(s.Lines, func(l Line) bool { return l.Of == folded })
	for _, line := range s.Lines {
		if line.Of != "" && line.Of != folded && (listed || otherThan(line.Of, name)) {
			continue // brown butter is no butter
		}
		for _, sentence := range line.sentences() {
			for before, after := range occurrences(InFull(say.Fold(sentence)), folded) {
				st, says := stated(before, after)
				if v := listedFat(sentence, after, name); v != nil && st.Fat == nil {
					st.Fat, says = v, true
				}
				if !says {
					continue
				}
				found.Disputed = found.Disputed || differ(found.HLB, st.HLB) || differ(found.Fat, st.Fat) ||
					found.Is != nil && st.Is != nil && found.Is.Name != st.Is.Name
				found.HLB, found.Fat, found.Is = cmp.Or(found.HLB, st.HLB), cmp.Or(found.Fat, st.Fat), cmp.Or(found.Is, st.Is)
				if !ok {
					found.At, ok = line.At, true
				}
			}
		}
	}
	return found, ok
}

// sentences are those of a line of prose; an entry of a list is one, "Em. A" and all.
func (l *Line) sentences() []string {
	if l.Of != "" {
		return []string{l.Text}
	}
	return sentences(l.Text)
}

// otherThan reports whether two names are of two known ingredients.
func otherThan(a, b string) bool {
	x, known := ingredient.Lookup(a)
	y, too := ingredient.Lookup(b)
	return known && too && x.Name != y.Name
}

// NameHeads makes amounts of the heads that say nothing by themselves and that lines
// name, or give an HLB: the F of "F = coconut oil", the A of "A = HLB 4".
func (s *Sheets) NameHeads(heads []grid.Head) {
	for i := range heads {
		h := &heads[i]
		name := cmp.Or(h.Meaning.Words, h.Text)
		unit := h.Meaning.Unit
		if letter, rest, two := strings.Cut(strings.TrimSpace(h.Text), " "); two && len(letter) == 1 && h.Meaning.Role == column.None { // the C of "C g" is no temperature
			if u, ok := units.Parse(rest); ok && u.Dimension() == units.Mass {
				name, unit = letter, u
			}
		}
		if name == "" || h.Meaning.Role == column.IngredientAmount || h.Meaning.Role != column.None && len(name) > 2 { // F is no temperature where it is the fat
			continue
		}
		if st, ok := s.Stated(name); ok && !st.Disputed && (st.Is != nil || st.HLB != nil && h.Meaning.Role == column.None && len(h.Meaning.Left) == 0) { // only an emulsifier has an HLB
			m := column.Meaning{Role: column.IngredientAmount, Ingredient: name, Words: name}
			if unit.Dimension() == units.Mass || unit.Dimension() == units.Percent {
				m.Unit, m.Basis = unit, h.Meaning.Basis
			}
			h.Meaning = m
		}
	}
}

// About are the lines that speak of one trial, "T9: leave out", by its folded number. A
// ratio of 1:1 and the clock at 9:30 speak of none.
func (s *Sheets) About() map[string][]Line {
	about := map[string][]Line{}
	for _, line := range s.Lines {
		for _, sentence := range sentences(line.Text) {
			head, said, ok := strings.Cut(sentence, ":")
			if id := trialNamed(head); ok && id != "" && strings.HasPrefix(said, " ") {
				about[id] = append(about[id], Line{Text: strings.TrimSpace(said), At: line.At})
			}
		}
	}
	return about
}

// trialNamed is the number of "trial 9", folded.
func trialNamed(head string) string {
	name := say.Fold(head)
	for _, before := range []string{"trial ", "run ", "test ", "no. ", "no ", "nr. ", "versuch ", "essai "} {
		name = strings.TrimPrefix(name, before)
	}
	return name
}

// Grams is a mass that a line says of every trial.
type Grams struct {
	Value float64
	At    trial.Place
}

var (
	madeUp = pattern.Of(`(?:(?:made|make|topped|brought|filled) up(?: with water)?(?: to| to make)|(?:aufgefüllt|ergänzt)(?: mit wasser)? auf|(?:complétée?|rapportée?)(?: avec de l'eau)? à|(?:completado|completata|portato)(?: con (?:agua|acqua))? (?:a|hasta))\s+` + number + `\s*(?:g|grams|gramm|grammes)\b`)
	ofFoam = pattern.Of(`(?:of|from|out of|is|are|was|=|aus|von|ist|sur|de|su|est|van|uit)\s+(?:a|an|the|each|every|about|ca\.?|einer|eine|une|un|een)?\s*` + number + `\s*(?:g|gr|grams|gramm|grammes|gram)\s+(?:of\s+|de\s+|d'|di\s+)?` + foams + `|prise(?: d'essai)? de\s+` + number + `\s*g\b|(?:^|[^-–\d.,])` + number + `\s*g of (?:the )?foam`)
)

// MadeUpTo is the mass to which every mix was made up with water.
func (s *Sheets) MadeUpTo() (Grams, bool) {
	return s.grams(func(l *Line) [][]string { return madeUp.FindAllStringSubmatch(say.Fold(l.Text), -1) })
}

// Sample is the mass of foam that was always put to drain.
func (s *Sheets) Sample() (Grams, bool) {
	if said, ok := s.grams(func(l *Line) [][]string {
		return append(ofFoam.FindAllStringSubmatch(say.Fold(l.Text), -1), l.drainedOf()...)
	}); ok {
		return said, true
	}
	return s.drainedFrom()
}

var (
	minSec  = pattern.Of(`(?i)\b(?:min(?:utes?|uten)?:s(?:ec|ek)?(?:onds?|unden)?|mm?:ss)\b`)
	hourMin = pattern.Of(`(?i)\b(?:hh?:mm|h(?:ours?)?\s?:\s?m(?:in)?(?:utes)?)\b`)
)

// MinSec reports that a line says that times are written as minutes and seconds, and none
// that they are hours and minutes.
func (s *Sheets) MinSec() (says bool) {
	for _, line := range s.Lines {
		if hourMin.MatchString(line.Text) {
			return false
		}
		says = says || minSec.MatchString(line.Text)
	}
	return says
}

// grams is the one mass that the lines say; what each says is in its matches.
func (s *Sheets) grams(says func(*Line) [][]string) (said Grams, ok bool) {
	for i := range s.Lines {
		line := &s.Lines[i]
		for _, m := range says(line) {
			v := value(cmp.Or(m[1:]...))
			if v == nil || *v <= 0 || ok && said.Value != *v {
				return Grams{}, false
			}
			said, ok = Grams{*v, line.At}, true
		}
	}
	return said, ok
}

func differ(a, b *float64) bool { return a != nil && b != nil && *a != *b }

// sentences cuts a line at its semicolons and full stops; the point of 3.8 is none.
func sentences(text string) []string {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "; ", ";\n"), "    ", "\n") + "\n"
	text = strings.ReplaceAll(text, ". ", ".\n")
	out := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == ';' })
	for i := 1; i < len(out); i++ {
		// "HLB: GMS 3,8 ; polysorbate 60 14,9" is one list.
		if head, _, list := strings.Cut(out[i-1], ":"); list && hlbAhead.MatchString(say.Fold(head)) && !strings.Contains(out[i], ":") {
			out[i] = "HLB: " + out[i]
		}
	}
	return out
}

const number = `(\d+(?:[.,]\d+)?)`

var (
	hlbAhead    = pattern.Of(`\bhlb[^\d]*$`)
	bareValue   = pattern.Of(`^[\s=:(]*` + number + `\s*(?:[,);]|\.?$| [^%\d])`)
	hlbValue    = pattern.Of(`^([^;]*?)\(?\s*\bhlb\s*(?:value|wert)?\s*(?:=|:|of|is|de|von)?\s*` + number)
	fatValue    = pattern.Of(`^([^\d;]*?)` + number + `\s*%\s*(?:fat|mg|m\.g\.|fett|gras|grasa|grassi|matière grasse|butterfat|milkfat)\b`)
	fatPer100   = pattern.Of(`^([^\d;]*?)` + number + `\s*g\s*(?:of\s+)?(?:fat|fett|mg|gras)\s*(?:per|in|/|pro|je|pour)\s*100\s*g`)
	barePercent = pattern.Of(`^[^\d;]*?` + number + `\s*%\s*(?:[,;.)]|$)`)
	hasValue    = pattern.Of(`^\s*(?:is|has|ist|hat|est|a|tiene|ha)\s+` + number + `\s*(?:[,);.]|$)`)
	equals      = pattern.Of(`^\s*(?:=|:|\bis\b|\bist\b|\best\b|stands for|means)\s*(.+)$`)
	joinOnly    = pattern.Of(`^\)?(?: \d{1,2}\b)?(?: \([\p{L} -]+\))?[\s,=:(]*(?:is|has|with|of|ist|mit|hat|est|avec)?[\s,=:(]*$`)
	// wholes are what a percent of fat may be of other than an ingredient: "a butter foam with 32 % fat".
	wholes = pattern.Of(`\b(?:foams?|mix|mixes|mixtures?|emulsions?|recipes?|mousses?|mélanges?|espumas?|mezclas?|schaum|schäume|mischung\w*|schium[ae]|miscel[ae]|schuim\w*|mengsels?)\b`)
)

// stated reads what a sentence says of a name in it, by what stands before and after.
func stated(before, after string) (st Statement, ok bool) {
	is := identity(after)
	switch m := hlbValue.FindStringSubmatch(after); {
	case m != nil && (joinOnly.MatchString(m[1]) || is != nil):
		st.HLB = value(m[2])
	case m == nil && strings.Contains(before, "hlb"):
		if m := bareValue.FindStringSubmatch(after); m != nil {
			st.HLB = value(m[1])
		} else if m := hasValue.FindStringSubmatch(after); m != nil { // "GMS has HLB 3.8, PS80 has 15"
			st.HLB = value(m[1])
		}
	}
	for _, says := range []*pattern.Pattern{fatValue, fatPer100} {
		if m := says.FindStringSubmatch(after); m != nil && len(strings.Fields(m[1])) <= 6 && !wholes.MatchString(m[1]) && !namesNext(m[1]) {
			st.Fat = value(m[2])
		}
	}
	if m := barePercent.FindStringSubmatch(after); m != nil && st.Fat == nil && is != nil && is.Kind == ingredient.Fat && is.FatPercent != nil {
		if v := value(m[1]); v != nil && *v >= 0.9*is.FatPercent.Low && *v <= 100 { // "fat = ghee, 99 %"
			st.Fat = v
		}
	}
	if st.HLB != nil && *st.HLB > 20 {
		st.HLB = nil
	}
	st.Is = is
	return st, st.HLB != nil || st.Fat != nil || st.Is != nil
}

// namesNext reports words that go on to another ingredient, of which what follows is said: "broth, add butter (99.5 % fat)".
// One in brackets, or that the first is made of, tells what the first is: "ghee (butter oil, 99 % fat)".
func namesNext(between string) bool {
	before, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(between), "("), "(")
	if strings.HasPrefix(strings.TrimSpace(between), "(") && !strings.Contains(before, ")") {
		return false
	}
	on := false
	for w := range strings.FieldsFuncSeq(before, func(r rune) bool { return !wordRune(r) && r != ',' }) {
		what, known := ingredient.Lookup(strings.Trim(w, ","))
		if on = on || goesOn[strings.Trim(w, ",")] || strings.HasPrefix(w, ","); on && known && (what.Kind == ingredient.Fat || what.Kind == ingredient.Water) {
			return true
		}
		on = on || strings.HasSuffix(w, ",")
	}
	return false
}

// goesOn are words by which a recipe goes on to its next part.
var goesOn = map[string]bool{"and": true, "add": true, "plus": true, "then": true, "und": true, "dann": true, "et": true, "puis": true, "y": true, "e": true, "en": true, "dazu": true, "added": true, "into": true}

// occurrences yields what stands before and after each place where a name stands in a
// text as whole words.
func occurrences(text, name string) iter.Seq2[string, string] {
	return func(yield func(before, after string) bool) {
		for from := 0; name != ""; {
			i := strings.Index(text[from:], name)
			if i < 0 {
				return
			}
			start, end := from+i, from+i+len(name)
			left, _ := utf8.DecodeLastRuneInString(text[:start])
			right, _ := utf8.DecodeRuneInString(text[end:])
			if !wordRune(left) && !wordRune(right) && !yield(text[:start], text[end:]) {
				return
			}
			from = end
		}
	}
}

func wordRune(r rune) bool { return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r)) }

// identity reads the ingredient of "= sorbitan monostearate, HLB 4.7".
func identity(tail string) *ingredient.Ingredient {
	m := equals.FindStringSubmatch(tail)
	if m == nil {
		return nil
	}
	what := m[1]
	for _, cut := range []string{",", "(", " hlb"} {
		if head, _, found := strings.Cut(what, cut); found {
			what = head
		}
	}
	known, ok := ingredient.Lookup(strings.TrimSpace(what))
	if !ok {
		return nil
	}
	return &known
}

func value(text string) *float64 {
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil {
		return nil
	}
	return &v
}
