package look

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// dittoMarks stand for the value above.
var dittoMarks = map[string]bool{}

func init() {
	for _, m := range strings.Split("\"|“|”|„|''|’’|″|〃|,,|,|-\"-|- \" -|–\"–|do|idem|id|ídem|dito|ditto|dto|wie oben|s.o|same|same as above|as above|↓|"+
		"comme ci-dessus|come sopra|c.s|igual|lo mismo|como arriba|gleich", "|") {
		dittoMarks[m] = true
	}
}

// Ditto reports whether a cell is a ditto mark, by the words and marks that
// package quantity knows. In a column of days "Do." is Thursday, in a column of
// names ID and DO are somebody's initials, and remarks have their own words.
func (r *Reader) Ditto(c *sheet.Cell, role column.Role) bool {
	if c.Kind != sheet.Text || len(c.Text) > 24 || c.Text == "" {
		return false
	}
	text := strings.TrimSpace(c.Text)
	is, known := r.dittos[text]
	if !known {
		if strings.ContainsAny(text, "0123456789") {
			return false
		}
		is = isDitto(text)
		if len(r.dittos) >= knownTexts {
			clear(r.dittos)
		}
		r.dittos[text] = is
	}
	switch {
	case !is:
	case role == column.Day:
		return !strings.EqualFold(strings.Trim(text, ". "), "do")
	case role == column.Note:
		return text != "," && !strings.EqualFold(text, "id")
	case role == column.Cook || role == column.Student || role == column.TrialID:
		return text != "ID" && text != "DO"
	}
	return is
}

// isDitto reports whether a text stands for the value above.
func isDitto(text string) bool {
	if dittoMarks[strings.TrimRight(strings.ToLower(text), ". ")] {
		return true
	}
	read, err := quantity.Parse(text, units.Any, units.NoUnit)
	return err == nil && read.Word == quantity.Ditto
}
