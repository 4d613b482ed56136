// Package look tells what cells, rows and labels look like before it is known
// what table they belong to: a header, a unit, a value, an average, a goal, a
// day, a ditto mark.
package look

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// Row counts what the cells of a row look like.
type Row struct {
	Cells   int
	Words   float64 // different header words; misspelt ones count half
	Values  int     // numbers, and texts that read like values
	units   int     // cells that are a unit and nothing else
	minutes int     // "5 min", a header only below a group
	dashes  int     // of the values: a dash, which in a row of units is no unit
}

// Look looks at the cells of a row.
func (r *Reader) Look(cells []sheet.Cell) Row {
	var l Row
	// Most rows are data. They are known by their numbers, before any word is
	// looked up.
	for i := range cells {
		if c := &cells[i]; c.Kind != sheet.Blank {
			l.Cells++
			if c.Kind != sheet.Text || ValueLike(c.Text) && !minuteLike(c.Text) && !isDash(c.Text) && !offersDigits(c.Text) {
				l.Values++
			}
		}
	}
	if l.Values*5 > l.Cells*2 {
		return l
	}
	l = Row{}
	var seen []column.Meaning
	for i := range cells {
		c := &cells[i]
		switch {
		case c.Kind == sheet.Blank:
			continue
		case c.Kind != sheet.Text:
			l.Values++
		case IsUnit(c.Text):
			l.units++
			if m := r.Read(c.Text); m.Role != column.None {
				l.Words += 0.5
			}
		default:
			seen = l.count(c.Text, r.Read(c.Text), seen)
		}
		l.Cells++
	}
	return l
}

// count counts a text that is no unit, which means m as a header; seen are the
// headers met before it in the row.
func (l *Row) count(text string, m column.Meaning, seen []column.Meaning) []column.Meaning {
	switch {
	case m.Role == column.None && m.AtMinute > 0:
		l.minutes++
		return seen
	case ValueLike(text):
		l.Values++
		if isDash(text) {
			l.dashes++
		}
		return seen
	case m.Role == column.None || slices.ContainsFunc(seen, func(o column.Meaning) bool { return sameHeader(o, m) }):
		return seen
	case m.Fuzzy:
		l.Words += 0.5
	default:
		l.Words++
	}
	return append(seen, m)
}

// offersDigits reports a "0/1" that offers an answer in a row of units.
func offersDigits(text string) bool { return text == "0/1" || text == "1/0" }

func isDash(text string) bool { return strings.Trim(text, " -–—/") == "" }

// sameHeader reports whether two texts of a row are no two headers: they mean
// the same, or are remarks, which are like headers by chance.
func sameHeader(o, m column.Meaning) bool {
	if o.Role != m.Role {
		return false
	}
	return m.Fuzzy && o.Fuzzy || o.Ingredient == m.Ingredient && o.AtMinute == m.AtMinute && o.Unit == m.Unit && o.Words == m.Words
}

// Header reports whether a row of these looks can be a header.
func (l Row) Header() bool {
	if l.Words < 1.5 || l.UnitsOnly() {
		return false
	}
	return float64(l.Values) <= 0.25*float64(l.Cells) && l.Words >= 0.3*float64(l.Cells-l.minutes)
}

// UnitsOnly reports whether a row is units.
func (l Row) UnitsOnly() bool { return l.units > 0 && float64(l.units) >= 0.6*float64(l.Cells) }

// UnitsRow reports whether a row just below a header is its row of units:
// minutes there ("20 min") say when a result was read.
func (l Row) UnitsRow() bool {
	return l.units > 0 && l.Values == l.dashes && float64(l.units+l.minutes) >= 0.6*float64(l.Cells-l.dashes)
}
