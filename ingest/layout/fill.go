package layout

import (
	"slices"
	"sort"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// maxMerged bounds the columns one merged range is followed over.
const maxMerged = 512

// merges indexes merged ranges by column, each column's by its first row.
type merges map[int][]sheet.Range

func indexMerges(s *sheet.Sheet) merges {
	m := merges{}
	for _, r := range s.Merged {
		for c := r.FromCol; c <= r.ToCol && c < r.FromCol+maxMerged; c++ {
			m[c] = append(m[c], r)
		}
	}
	for _, rs := range m {
		slices.SortStableFunc(rs, func(a, b sheet.Range) int { return a.FromRow - b.FromRow })
	}
	return m
}

// at is the merged range that covers a cell.
func (m merges) at(row, col int) (sheet.Range, bool) {
	rs := m[col]
	i := sort.Search(len(rs), func(i int) bool { return rs[i].FromRow > row }) - 1
	if i >= 0 && rs[i].ToRow >= row {
		return rs[i], true
	}
	return sheet.Range{}, false
}

func (f *finder) merged(row, col int) (sheet.Range, bool) {
	return f.merges.at(row, col)
}

// dittoMarks stand for the value above.
var dittoMarks = map[string]bool{}

func init() {
	for _, m := range strings.Split("\"|“|”|„|''|’’|″|〃|,,|,|-\"-|- \" -|–\"–|do|idem|id|ídem|dito|ditto|dto|wie oben|s.o|same|same as above|as above|↓|"+
		"comme ci-dessus|come sopra|c.s|igual|lo mismo|como arriba|gleich", "|") {
		dittoMarks[m] = true
	}
}

// isDitto reports whether a cell is a ditto mark. In a column of days "Do." is
// Thursday.
func isDitto(c *sheet.Cell, r column.Role) bool {
	if c.Kind != sheet.Text || len(c.Text) > 24 {
		return false
	}
	text := strings.ToLower(strings.TrimSpace(c.Text))
	if text != "." {
		text = strings.TrimRight(text, ". ")
	}
	if text == "do" && r == column.Day {
		return false
	}
	if r == column.Note && (text == "," || text == "id") {
		return false
	}
	return dittoMarks[text]
}

// writtenOnce are roles that kitchens write in the first of several rows only.
func writtenOnce(r column.Role) bool {
	switch r {
	case column.TrialID, column.Day, column.Dish, column.Cook, column.Student:
		return true
	}
	return false
}

// fillDown works out which cells stand for one above: ditto marks, merged
// cells, and ids and days written once. What is written once stops at a title
// between the rows, and is not carried into rows of another merged cell.
func (t *Table) fillDown(m merges) {
	stops := map[int]bool{} // rows of the table before which a title stands
	next := 0
	for _, fu := range t.Furniture {
		for next < len(t.Rows) && t.Rows[next].Number < fu.Row {
			next++
		}
		if fu.Kind == Title || fu.Kind == Legend {
			stops[next] = true
		}
	}
	t.source = make([][]int32, len(t.Heads))
	for h := range t.Heads {
		role, col := t.Heads[h].Meaning.Role, t.Heads[h].Col
		merged := len(m[col]) > 0
		once := writtenOnce(role)
		from := int32(-1) // the row whose cell holds for the next ones
		var source []int32
		for r := range t.Rows {
			c := t.own(r, h)
			take := int32(-1)
			switch {
			case isDitto(&c, role):
				take = from
			case !empty(&c):
				from = int32(r)
				continue
			case merged:
				if span, ok := m.at(t.Rows[r].Number, col); ok {
					if from >= 0 && t.Rows[from].Number >= span.FromRow && t.Rows[from].Number <= span.ToRow {
						take = from
					}
					break
				}
				fallthrough
			default:
				if stops[r] {
					from = -1
				}
				if once {
					take = from
				}
			}
			if take >= 0 {
				if source == nil {
					source = make([]int32, len(t.Rows))
				}
				source[r] = take + 1
			} else if !once {
				from = -1
			}
		}
		t.source[h] = source
	}
}
