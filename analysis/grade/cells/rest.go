package cells

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Rest are the rows of a file that are no trials of it, with their cells: a student's own
// workings, means below a table, pairs that are compared.
func Rest(h *ingest.HandIn, tables []*handin.Table, formulas sheet.Formulas) (out []handin.Row) {
	for _, s := range h.Book.Sheets {
		at := trial.Place{File: h.Book.File, Sheet: placeName(h.Book, s)}
		busy := busyRows(s, at, tables, h)
		for _, t := range tables {
			if len(t.Weighed()) == 0 && t.At.Sheet == at.Sheet { // it may be no table of trials at all
				busy = map[int]bool{}
			}
			for _, a := range t.Averages {
				delete(busy, a.At.Row)
			}
		}
		for _, r := range s.Rows {
			if busy[r.Number] {
				continue
			}
			row := handin.Row{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: r.Number}}
			for _, c := range r.Cells {
				cell := handin.Cell{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: r.Number, Col: int(c.Col)}, Kind: c.Kind, Low: math.Inf(-1), High: math.Inf(1), Scale: 1,
					Text: strings.TrimSpace(s.Display(c)), Formula: formulas.At(s.Name, r.Number, int(c.Col))}
				if v, digits, ok := plainNumber(s, c); ok {
					cell.Value, cell.Low, cell.High, cell.Known = v, v, v, true
					if cell.Formula == "" {
						cell.Half = 0.5 * math.Pow(10, -float64(digits))
					}
				} else if row.Label == "" {
					row.Label = cell.Text
				}
				if !cell.Blank() {
					row.Cells = append(row.Cells, cell)
				}
			}
			if len(row.Cells) > 0 {
				out = append(out, row)
			}
		}
	}
	return slices.Clip(out)
}
