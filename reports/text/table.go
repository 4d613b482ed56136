package text

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"
	"unicode"
)

// Table writes rows in columns.
func Table(out *strings.Builder, rows [][]string) {
	t := tabwriter.NewWriter(out, 0, 0, 3, ' ', 0)
	for _, r := range rows {
		cells := make([]string, len(r))
		for i := range r {
			cells[i] = OneLine(r[i])
		}
		fmt.Fprintln(t, "  "+strings.Join(cells, "\t"))
	}
	t.Flush() // into memory: it cannot fail
}

// OneLine makes text that may come from a file name or a cell safe to print:
// nothing in it breaks the line or steers the terminal.
func OneLine(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case !unicode.IsPrint(r):
			return '\uFFFD'
		}
		return r
	}, s)
}

// Short writes a number as people read one.
func Short(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

// Dash writes a number of so many digits behind the point, so that a column of them stands
// in line; or that there is none.
func Dash(v *float64, digits int) string {
	if v == nil {
		return "-"
	}
	return strconv.FormatFloat(*v, 'f', digits, 64)
}
