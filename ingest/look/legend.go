package look

import "foamfield/ingest/sheet"

// Swatch is the colour that explains a text: behind it, or behind the empty cell to its
// left; and the column where that stands.
func Swatch(s *sheet.Sheet, row, col int) (colour string, at int) {
	if !s.Coloured() {
		return "", 0
	}
	if c := s.Colour(row, col); c != "" || col < 2 || s.At(row, col-1).Kind != sheet.Blank {
		return c, col
	}
	return s.Colour(row, col-1), col - 1
}

// InLegend reports a text to the right of a table's last column that belongs to a legend of
// colours: a cell without colour parts its swatch from the row.
func InLegend(s *sheet.Sheet, row int, c *sheet.Cell, last int) bool {
	if c.Kind != sheet.Text || int(c.Col) <= last+1 {
		return false
	}
	colour, at := Swatch(s, row, int(c.Col))
	if colour == "" {
		return false
	}
	for col := last + 1; col < at; col++ {
		if s.Colour(row, col) == "" {
			return true
		}
	}
	return false
}
