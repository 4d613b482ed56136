package say

import (
	"fmt"

	"foamfield/reports/document"
)

// Head is the heading of a part within a section.
func Head(title string) document.Paragraph { return document.Paragraph{Head: true, Text: Text(title)} }

// Cut keeps the first most rows of a table and says how many are not shown.
func Cut(t document.Table, most int, where string) document.Table {
	if n := len(t.Rows); n > most {
		t.Rows = t.Rows[:most]
		t.Cut = fmt.Sprintf("%d more rows are not shown here: see %s.", n-most, where)
	}
	return t
}
