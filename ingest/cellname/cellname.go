// Package cellname names cells as spreadsheets show them, for whoever says where a
// thing stands without opening a spreadsheet.
package cellname

import "strconv"

// Of returns a cell's name as a spreadsheet shows it: "C6" for row 6,
// column 3. A column of 0 gives "row 6", a row of 0 "column C".
func Of(row, col int) string {
	switch {
	case col < 1:
		return "row " + strconv.Itoa(row)
	case row < 1:
		return "column " + letters(col)
	}
	return letters(col) + strconv.Itoa(row)
}

func letters(col int) string {
	var b [16]byte
	i := len(b)
	for ; col > 0; col = (col - 1) / 26 {
		i--
		b[i] = byte('A' + (col-1)%26)
	}
	return string(b[i:])
}
