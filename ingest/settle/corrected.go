package settle

import (
	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
)

// corrected are the cells of numbers beside which a comment says what was meant there, as they
// would be typed with it: "72, should read 27".
func corrected(s *sheet.Sheet) map[[2]int]string {
	var out map[[2]int]string
	for _, c := range s.Comments {
		cell := s.At(c.Row, c.Col)
		if cell.Kind != sheet.Number {
			continue
		}
		typed := scheme.CellText(s, cell)
		v, ok := scheme.BareNumber(s, cell)
		if !ok {
			continue
		}
		if meant := quantity.Meant(c.Text, v); meant != "" {
			if out == nil {
				out = map[[2]int]string{}
			}
			out[[2]int{c.Row, c.Col}] = typed + ", should read " + meant
		}
	}
	return out
}
