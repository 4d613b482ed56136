// Package row holds a formula against those beside it: down a column, along a row, or under
// one label on every card. It knows nothing of foams, so it needs no header that is
// understood; and so it only asks.
package row

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// least are the formulas that make a pattern.
const least = 3

// mostCells bounds the sheets that are looked at: no student works out more.
const mostCells = 20000

// odd is a cell that leaves the pattern of the cells beside it.
type odd struct {
	cell  handin.Cell
	donor handin.Cell // one that keeps it
	n     int         // how many do
}

// Check finds cells that leave the formulas beside them and hold another number than these
// would give. said are the cells of which something was found already.
func Check(w *handin.Work, said func(trial.Place) bool) (out []finding.Found) {
	for k, h := range w.Log {
		var odds []odd
		for _, s := range h.Book.Sheets {
			if w.Shared && !slices.ContainsFunc(w.Sheets, func(at trial.Place) bool { return at.Sheet == s.Name }) {
				continue
			}
			odds = append(odds, oddsOf(h.Book.File, s, w.Formulas[h.Book.File])...)
		}
		odds = slices.DeleteFunc(odds, func(o odd) bool { return said(o.cell.At) })
		if len(odds) == 0 {
			continue
		}
		var found []finding.Found
		if sheet.WithLibrary(w.Paths[min(k, len(w.Paths)-1)], func(file *excelize.File) { found = judged(file, odds) }) {
			out = append(out, found...)
		}
	}
	return out
}

// judged works out what the formulas beside odd cells would give there.
func judged(file *excelize.File, odds []odd) (out []finding.Found) {
	for _, o := range odds {
		formula := moved(o.donor.Formula, o.cell.At.Row-o.donor.At.Row, o.cell.At.Col-o.donor.At.Col)
		name := cellname.Of(o.cell.At.Row, o.cell.At.Col)
		if formula == "" || file.SetCellFormula(o.cell.At.Sheet, name, formula) != nil {
			continue
		}
		text, err := file.CalcCellValue(o.cell.At.Sheet, name, excelize.Options{RawCellValue: true})
		restored := file.SetCellFormula(o.cell.At.Sheet, name, o.cell.Formula)
		right, notNumber := strconv.ParseFloat(text, 64)
		if err != nil || notNumber != nil || restored != nil || math.Abs(right-o.cell.Value) <= max(1.02*o.cell.Half, 0.004*math.Abs(right), 1e-6) {
			continue
		}
		words := fmt.Sprintf("%s is typed where %d cells beside it are worked out; their formula would give %s here. Which is right?", say.Quoted(o.cell.Text), o.n, verdict.DigitsOf(right, 2))
		if o.cell.Formula != "" {
			words = fmt.Sprintf("The formula =%s is not that of the %d cells beside it: it gives %s, and theirs would give %s (=%s). Which is right?", o.cell.Formula, o.n, verdict.DigitsOf(o.cell.Value, 2), verdict.DigitsOf(right, 2), formula)
		}
		out = append(out, finding.Of(criteria.Means, graded.Calculation, words, o.cell).ShouldBe(right).Kinds("formula unlike the others"))
	}
	return out
}

// line is cells that should have one formula.
type line []handin.Cell

// oddsOf are the cells of a sheet that leave the pattern of their line.
func oddsOf(file string, s *sheet.Sheet, formulas sheet.Formulas) (out []odd) {
	down, along, under := map[int]line{}, map[int]line{}, map[string]line{}
	n := 0
	for _, r := range s.Rows {
		label := ""
		for _, c := range r.Cells {
			if n++; n > mostCells {
				return nil
			}
			if c.Kind == sheet.Text && label == "" {
				label = say.Fold(c.Text)
			}
			cell := handin.Cell{At: trial.Place{File: file, Sheet: s.Name, Row: r.Number, Col: int(c.Col)}, Text: strings.TrimSpace(s.Display(c)), Formula: formulas.At(s.Name, r.Number, int(c.Col)), Scale: 1}
			if c.Kind != sheet.Number && cell.Formula == "" {
				continue
			}
			cell.Value, cell.Known = c.Number, c.Kind == sheet.Number
			if cell.Formula == "" {
				cell.Half = 0.5 * math.Pow(10, -float64(decimals(cell.Text)))
			}
			down[cell.At.Col] = append(down[cell.At.Col], cell)
			along[cell.At.Row] = append(along[cell.At.Row], cell)
			if label != "" {
				key := fmt.Sprint(cell.At.Col, " ", label)
				under[key] = append(under[key], cell)
			}
		}
	}
	best := map[trial.Place]odd{}
	keep := func(o odd) {
		if was, ok := best[o.cell.At]; !ok || o.n > was.n {
			best[o.cell.At] = o
		}
	}
	for _, l := range down {
		l.odds(func(c handin.Cell) int { return c.At.Row }, keep)
	}
	for _, l := range along {
		l.odds(func(c handin.Cell) int { return c.At.Col }, keep)
	}
	for _, l := range under {
		if len(l) > least && l[1].At.Row-l[0].At.Row > 3 { // cards below each other
			l.odds(func(c handin.Cell) int { return slices.IndexFunc(l, func(o handin.Cell) bool { return o.At == c.At }) }, keep)
		}
	}
	for _, o := range best {
		if o.cell.Known {
			out = append(out, o)
		}
	}
	slices.SortFunc(out, func(a, b odd) int { return (a.cell.At.Row-b.cell.At.Row)*1000 + a.cell.At.Col - b.cell.At.Col })
	return out
}

// odds finds what leaves the most frequent formula of a line, between its first and last
// cell with that formula or right beside these.
func (l line) odds(place func(handin.Cell) int, keep func(odd)) {
	count, donor := map[string]int{}, map[string]handin.Cell{}
	usual := ""
	for _, c := range l {
		if c.Formula == "" {
			continue
		}
		p := verdict.Relative(c.Formula, c)
		if count[p]++; count[p] == 1 {
			donor[p] = c
		}
		if count[p] > count[usual] {
			usual = p
		}
	}
	if count[usual] < least {
		return
	}
	first, last := math.MaxInt, math.MinInt
	for _, c := range l {
		if c.Formula != "" && verdict.Relative(c.Formula, c) == usual {
			first, last = min(first, place(c)), max(last, place(c))
		}
	}
	var found []odd
	for _, c := range l {
		at := place(c)
		if c.Formula != "" && verdict.Relative(c.Formula, c) == usual || at < first-1 || at > last+1 {
			continue
		}
		if (at < first || at > last) && sumsUp.MatchString(c.Formula) {
			continue // a row of means below them
		}
		found = append(found, odd{c, donor[usual], count[usual]})
	}
	if len(found) < count[usual] && 2*len(found) <= count[usual]+1 { // else it is no pattern
		for _, o := range found {
			keep(o)
		}
	}
}

var (
	sumsUp    = pattern.Of(`(?i)\b(sum|average|mean|max|min|count|counta|median|stdev\w*|mittelwert|summe|moyenne|somme|media|promedio|suma|somma)\s*\(`)
	reference = pattern.Of(`('[^']*'!|[\p{L}_][\p{L}\d_.]*!)?(\$?)([A-Z]{1,3})(\$?)([0-9]{1,7})\b`)
)

// moved is a formula as another cell would have it; "" where it would leave the sheet.
func moved(formula string, rows, cols int) string {
	gone := false
	out := reference.ReplaceAllStringFunc(formula, func(ref string) string {
		m := reference.FindStringSubmatch(ref)
		col, err := excelize.ColumnNameToNumber(m[3])
		row, err2 := strconv.Atoi(m[5])
		if err != nil || err2 != nil {
			return ref
		}
		if m[2] == "" {
			col += cols
		}
		if m[4] == "" {
			row += rows
		}
		name, err := excelize.ColumnNumberToName(col)
		if err != nil || row < 1 {
			gone = true
			return ref
		}
		return m[1] + m[2] + name + m[4] + strconv.Itoa(row)
	})
	if gone {
		return ""
	}
	return out
}

func decimals(text string) int {
	i := strings.IndexAny(text, ".,")
	if i < 0 {
		return 0
	}
	return len(strings.TrimRight(text[i+1:], " %"))
}
