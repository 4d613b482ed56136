package sheet

import (
	"fmt"
	"strings"

	"foamfield/ingest/cellname"
	"foamfield/ingest/delimited"
)

// readText is the sheet of a delimited text.
func readText(text string, l limits) (*Sheet, error) {
	r, s, row := delimited.New(text), &Sheet{}, 0
	var cells arena
	kept, cut := 0, false
	for r.More() {
		if row++; row > l.rows {
			return nil, tooManyRows(l)
		}
		for col, last := 1, false; !last; col++ {
			var text, fault string
			text, fault, last = r.Field()
			if fault != "" {
				s.damaged(row, col, fault)
			}
			text = strings.TrimSpace(text)
			switch {
			case text == "":
			case col > l.cols:
				if !cut {
					cut = true
					s.damaged(row, col, fmt.Sprintf("cells beyond %s are not read", cellname.Of(0, l.cols)))
				}
			default:
				if kept++; kept > l.cells {
					return nil, tooManyCells(l)
				}
				cells.add(Cell{Col: int32(col), Kind: Text, Text: text})
			}
		}
		if filled := cells.take(); len(filled) > 0 {
			s.Rows = append(s.Rows, Row{Number: row, Cells: filled})
		}
	}
	return s, nil
}
