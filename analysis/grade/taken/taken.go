// Package taken looks at which cells a formula takes: the constant of another ingredient, the
// rows of another trial, a mean among the values that it is of, a range that stops before the
// last of cells with one head, x where y belongs. It works nothing out that the workbook does
// not: what the labels beside the cells say is held against what is taken.
package taken

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// mostFormulas bounds the sheets that are looked at: no student works out more.
const mostFormulas = 5000

// book is a workbook whose formulas are looked at.
type book struct {
	work  *handin.Work
	pages map[string]*page
	cells []handin.Cell // with a formula, sheet by sheet and row by row
	of    map[trial.Place]*handin.Trial
}

// page is a sheet by its places.
type page struct {
	sheet *sheet.Sheet
	cells map[[2]int]sheet.Cell
	first map[int]int // the first filled column of a row
}

// Check finds formulas that take other cells than those that belong to them.
func Check(w *handin.Work) (out []finding.Found) {
	for _, h := range w.Log {
		b := &book{work: w, pages: map[string]*page{}, of: map[trial.Place]*handin.Trial{}}
		for _, x := range w.Trials() {
			for _, c := range x.Table.Columns {
				b.of[c.Cells[x.Index].At] = x
			}
		}
		for _, s := range h.Book.Sheets {
			b.add(h.Book.File, s, w.Formulas[h.Book.File])
		}
		if len(b.cells) == 0 || len(b.cells) > mostFormulas {
			continue
		}
		out = slices.Concat(out, b.constants(), b.ownMeans(), b.lines(), b.otherRows(), b.shortRanges(), b.otherTrials(), b.squaredOrNot())
	}
	return out
}

func (b *book) add(file string, s *sheet.Sheet, formulas sheet.Formulas) {
	p := &page{sheet: s, cells: map[[2]int]sheet.Cell{}, first: map[int]int{}}
	b.pages[s.Name] = p
	ours := !b.work.Shared || slices.ContainsFunc(b.work.Sheets, func(at trial.Place) bool { return at.Sheet == s.Name })
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			at := [2]int{r.Number, int(c.Col)}
			if formula := formulas.At(s.Name, at[0], at[1]); formula != "" && ours {
				b.cells = append(b.cells, handin.Cell{At: trial.Place{File: file, Sheet: s.Name, Row: at[0], Col: at[1]}, Text: strings.TrimSpace(s.Display(c)), Value: c.Number, Known: c.Kind == sheet.Number, Formula: strings.TrimPrefix(formula, "="), Scale: 1})
			}
			if c.Kind == sheet.Blank {
				continue
			}
			p.cells[at] = c
			if first, ok := p.first[r.Number]; !ok || at[1] < first {
				p.first[r.Number] = at[1]
			}
		}
	}
}

// formulaAt is the cell with a formula at a place, nil without one.
func (b *book) formulaAt(on string, row, col int) *handin.Cell {
	for i := range b.cells {
		if c := &b.cells[i]; c.At.Sheet == on && c.At.Row == row && c.At.Col == col {
			return c
		}
	}
	return nil
}

// text is what a cell shows.
func (p *page) text(row, col int) string {
	return strings.TrimSpace(p.sheet.Display(p.cells[[2]int{row, col}]))
}

// number is the number of a cell.
func (p *page) number(row, col int) (float64, bool) {
	c, ok := p.cells[[2]int{row, col}]
	return c.Number, ok && c.Kind == sheet.Number
}

// word reports a cell of words, and no dash or ditto.
func (p *page) word(row, col int) bool {
	c, ok := p.cells[[2]int{row, col}]
	return ok && c.Kind == sheet.Text && strings.ContainsFunc(c.Text, unicode.IsLetter)
}

// headRow is the row of the heads above a cell: the next words up its column.
func (p *page) headRow(row, col int) int {
	for up := row - 1; up > 0 && up > row-200; up-- {
		if p.word(up, col) {
			return up
		}
	}
	return 0
}

// labelCol is the column of the labels left of a cell: the next words along its row.
func (p *page) labelCol(row, col int) int {
	for left := col - 1; left > 0; left-- {
		if p.word(row, left) {
			return left
		}
	}
	return 0
}

// key is what a row is of: its first cell.
func (p *page) key(row int) string {
	col, ok := p.first[row]
	if !ok {
		return ""
	}
	return say.Fold(p.text(row, col))
}

// span is a cell or a range that a formula takes.
type span struct {
	on                 string
	row, col, row2, to int
	fixed              bool // its row does not move with the formula
}

func (s span) single() bool { return s.row == s.row2 && s.col == s.to }

// each goes through the cells of a span.
func (s span) each(visit func(row, col int)) {
	for row := s.row; row <= s.row2; row++ {
		for col := s.col; col <= s.to; col++ {
			visit(row, col)
		}
	}
}

func (s span) has(row, col int) bool {
	return row >= s.row && row <= s.row2 && col >= s.col && col <= s.to
}

const aReference = `(?:(?:'([^']+)'|([\p{L}\d_.]+))!)?(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?::(\$?)([A-Z]{1,3})(\$?)(\d{1,7}))?`

var reference = pattern.Of(aReference)

// spansOf are the cells that a formula takes; nil where one is too large to look at.
func spansOf(formula, on string) (out []span) {
	for _, m := range reference.FindAllStringSubmatch(formula, -1) {
		s, ok := spanOf(m, on)
		if !ok {
			return nil
		}
		out = append(out, s)
	}
	return out
}

func spanOf(m []string, on string) (s span, ok bool) {
	s.on = m[1] + m[2]
	if s.on == "" {
		s.on = on
	}
	col, err := excelize.ColumnNameToNumber(m[4])
	row, err2 := strconv.Atoi(m[6])
	if err != nil || err2 != nil {
		return s, false
	}
	s.row, s.col, s.row2, s.to, s.fixed = row, col, row, col, m[5] != ""
	if m[10] != "" {
		s.row2, _ = strconv.Atoi(m[10])
		s.to, _ = excelize.ColumnNameToNumber(m[8])
	}
	return s, s.row2 >= s.row && s.to >= s.col && (s.row2-s.row+1)*(s.to-s.col+1) <= 2000
}

// statistics are functions of some values, in the six languages of the logs.
var statistics = map[string]func(xs []float64) float64{
	"SUM": sum, "SUMME": sum, "SOMME": sum, "SUMA": sum, "SOMMA": sum, "SOM": sum,
	"AVERAGE": mean, "MITTELWERT": mean, "MOYENNE": mean, "PROMEDIO": mean, "MEDIA": mean, "GEMIDDELDE": mean,
	"MEDIAN": middle, "MEDIANE": middle, "MEDIANA": middle, "MEDIAAN": middle,
	"STDEV": deviation, "STDEV.S": deviation, "STABW": deviation, "STABW.S": deviation, "ECARTYPE": deviation, "DESVEST": deviation, "DEV.ST": deviation, "STDEVP": whole, "STDEV.P": whole, "STABWN": whole,
}

func sum(xs []float64) (s float64) {
	for _, x := range xs {
		s += x
	}
	return s
}

func mean(xs []float64) float64 { return sum(xs) / float64(len(xs)) }

func middle(xs []float64) float64 {
	s := slices.Sorted(slices.Values(xs))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

func squares(xs []float64) (s float64) {
	m := mean(xs)
	for _, x := range xs {
		s += (x - m) * (x - m)
	}
	return s
}

func deviation(xs []float64) float64 { return math.Sqrt(squares(xs) / float64(len(xs)-1)) }
func whole(xs []float64) float64     { return math.Sqrt(squares(xs) / float64(len(xs))) }

var aCall = pattern.Of(`(?i)^\s*([A-Z.]+)\(([^()]*)\)\s*$`)

// statisticOf is the one function of some cells that a formula is, and nothing else.
func statisticOf(formula string) (name string, of func([]float64) float64, args string) {
	m := aCall.FindStringSubmatch(formula)
	if m == nil {
		return "", nil, ""
	}
	name = strings.ToUpper(m[1])
	return name, statistics[name], m[2]
}

// valuesOf are the numbers of some spans, but for some cells.
func (b *book) valuesOf(spans []span, but func(on string, row, col int) bool) (out []float64) {
	for _, s := range spans {
		p := b.pages[s.on]
		if p == nil {
			return nil
		}
		s.each(func(row, col int) {
			if v, ok := p.number(row, col); ok && !but(s.on, row, col) {
				out = append(out, v)
			}
		})
	}
	return out
}

func differs(a, b float64) bool { return math.Abs(a-b) > max(1e-6, 0.002*math.Abs(b)) }
