package sheet

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/cellname"
)

// Formulas are the formulas of a workbook as typed, by sheet and cell.
type Formulas map[string]map[[2]int]string

// At is the formula of a cell, "" without one.
func (f Formulas) At(sheet string, row, col int) string { return f[sheet][[2]int{row, col}] }

// FormulasOf reads the formulas behind the results of a workbook. Only cells known to
// have one are asked, so that a workbook without any is not opened again; one that the
// library cannot open gives none.
func FormulasOf(path string, book *Book) Formulas {
	if !book.hasFormulas() || !strings.HasSuffix(strings.ToLower(path), "x") && !strings.HasSuffix(strings.ToLower(path), "m") {
		return nil
	}
	out := Formulas{}
	if !WithLibrary(path, func(file *excelize.File) { out.read(file, book) }) {
		return nil
	}
	return out
}

// read asks the library for the formulas of a book.
func (f Formulas) read(file *excelize.File, book *Book) {
	for _, s := range book.Sheets {
		cells := map[[2]int]string{}
		s.formulaCells(func(row int, c *Cell) {
			if text, err := file.GetCellFormula(s.Name, cellname.Of(row, int(c.Col))); err == nil && text != "" {
				cells[[2]int{row, int(c.Col)}] = text
			}
		})
		f[s.Name] = cells
	}
}

func (b *Book) hasFormulas() bool {
	for _, s := range b.Sheets {
		some := false
		s.formulaCells(func(int, *Cell) { some = true })
		if some {
			return true
		}
	}
	return false
}
