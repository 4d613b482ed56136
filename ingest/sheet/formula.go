package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/cellname"
	"foamfield/ingest/pattern"
)

// Some programs save formulas without their results, or with results they
// never worked out. In small workbooks the simple ones are worked out here.
const (
	maxComputedCells    = 200_000
	maxComputedFormulas = 20_000
)

// plainFunctions are those a formula may use to be worked out: they give the
// same result on any day and cannot be made to run long.
var plainFunctions = func() map[string]bool {
	m := map[string]bool{}
	for _, name := range strings.Fields(`ABS AND AVERAGE COUNT COUNTA EXP FALSE IF IFERROR INT LN LOG LOG10 MAX MEDIAN MIN MOD
		NOT OR POWER PRODUCT ROUND ROUNDDOWN ROUNDUP SQRT STDEV STDEV.S SUM SUMPRODUCT TRUE`) {
		m[name] = true
	}
	return m
}()

var (
	quotedPart   = pattern.Of(`"[^"]*"`)
	functionCall = pattern.Of(`([A-Za-z_][A-Za-z0-9_.]*)\(`)
	boundedRange = pattern.Of(`\$?[A-Z]{1,3}\$?[0-9]{1,7}:\$?[A-Z]{1,3}\$?[0-9]{1,7}`)
)

// isPlain reports whether a formula is one to work out: known functions, no
// joining of texts, no names, no whole columns.
func isPlain(formula string) bool {
	formula = quotedPart.ReplaceAllString(formula, `""`)
	for _, call := range functionCall.FindAllStringSubmatch(formula, -1) {
		if !plainFunctions[strings.ToUpper(call[1])] {
			return false
		}
	}
	for _, r := range boundedRange.FindAllString(formula, -1) {
		b, ok := parseRange([]byte(strings.ReplaceAll(r, "$", "")))
		if !ok || (b.ToRow-b.FromRow+1)*(b.ToCol-b.FromCol+1) > maxComputedCells {
			return false
		}
	}
	rest := boundedRange.ReplaceAllString(formula, "")
	return formula != "" && len(formula) < 1000 && !strings.ContainsAny(rest, ":&{}[]#@") // [ and # stand in references to other files and tables
}

// computer works out formulas of one book.
type computer struct {
	file   *excelize.File
	opaque bool // some formulas are not plain; what depends on them is #N/A
}

// compute fills in missing results. Whatever it cannot do stays as it was
// read.
func (b *bookReader) compute(f io.ReaderAt, size int64, book *Book) {
	if b.uncached == 0 && !b.recalc || b.formulas == 0 || b.cells > maxComputedCells || b.formulas > maxComputedFormulas {
		return
	}
	defer func() { _ = recover() }() // the library meets files it did not foresee
	file, err := excelize.OpenReader(io.NewSectionReader(f, 0, size), excelize.Options{
		RawCellValue: true, UnzipSizeLimit: b.limit.unzippedBytes, UnzipXMLSizeLimit: min(16<<20, b.limit.unzippedBytes),
	})
	if err != nil {
		return
	}
	defer file.Close()
	c := &computer{file: file}
	wanted := map[*Sheet]bool{}
	for _, s := range book.Sheets {
		wanted[s] = c.screen(s)
	}
	for _, s := range book.Sheets {
		if wanted[s] {
			c.fill(s, b.recalc)
		}
	}
}

// formulaCells calls visit with each formula cell.
func (s *Sheet) formulaCells(visit func(row int, c *Cell)) {
	for i := range s.Rows {
		for j := range s.Rows[i].Cells {
			if c := &s.Rows[i].Cells[j]; c.Flags&FromFormula != 0 {
				visit(s.Rows[i].Number, c)
			}
		}
	}
}

// screen replaces, in the library's copy, each formula that is not plain by
// its stored result, or by #N/A without one. It reports whether the sheet has
// formulas left.
func (c *computer) screen(s *Sheet) (some bool) {
	s.formulaCells(func(row int, cell *Cell) {
		name := cellname.Of(row, int(cell.Col))
		formula, err := c.file.GetCellFormula(s.Name, name)
		if err == nil && isPlain(formula) {
			some = true
			return
		}
		switch {
		case cell.Kind == Blank || cell.Kind == Fault:
			c.opaque = true
			_ = c.file.SetCellFormula(s.Name, name, "NA()")
		case cell.Kind == Text:
			_ = c.file.SetCellValue(s.Name, name, cell.Text)
		default:
			_ = c.file.SetCellValue(s.Name, name, cell.Number)
		}
	})
	return some
}

func (c *computer) fill(s *Sheet, recalc bool) {
	s.formulaCells(func(row int, cell *Cell) {
		missing := cell.Flags&NoCachedValue != 0
		if !missing && !(recalc && cell.Kind != Text && cell.Kind != Fault) {
			return
		}
		name := cellname.Of(row, int(cell.Col))
		worked, ok := c.workOut(s, name, *cell)
		switch {
		case !ok || !missing && sameResult(worked, *cell):
			return
		case !missing:
			s.damaged(row, int(cell.Col), fmt.Sprintf("the file stores %q for the formula in %s, which gives %q; the latter is read",
				s.Display(*cell), name, s.Display(worked)))
		}
		worked.Flags |= Computed
		*cell = worked
	})
}

// workOut gives a cell the result of its formula; false without one.
func (c *computer) workOut(s *Sheet, name string, cell Cell) (Cell, bool) {
	if formula, err := c.file.GetCellFormula(s.Name, name); err != nil || !isPlain(formula) {
		return cell, false
	}
	text, err := c.file.CalcCellValue(s.Name, name, excelize.Options{RawCellValue: true})
	if err != nil && (text == "" || err.Error() != text) || c.opaque && text == "#N/A" {
		return cell, false
	}
	c.set(s, &cell, text, err != nil)
	return cell, cell.Kind != Blank
}

func sameResult(a, b Cell) bool {
	return a.Kind == b.Kind && math.Abs(a.Number-b.Number) <= 1e-9*math.Max(math.Abs(a.Number), math.Abs(b.Number)) && a.Text == b.Text
}

// set gives a cell the value that the library writes as text.
func (c *computer) set(s *Sheet, cell *Cell, text string, fault bool) {
	x, ok := decimal([]byte(text))
	cell.Kind, cell.Number, cell.Text = Text, 0, text
	switch {
	case fault:
		cell.Kind = Fault
	case text == "":
		cell.Kind = Blank
	case ok:
		cell.Kind, cell.Number, cell.Text = kindOf(s.format(*cell).Of(x, s.date1904)), x, ""
	case text == "TRUE":
		cell.Kind, cell.Number, cell.Text = Bool, 1, ""
	case text == "FALSE":
		cell.Kind, cell.Text = Bool, ""
	}
}
