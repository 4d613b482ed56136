package card

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// longestName is the most bytes of a title that is a name: "Card 12, Thursday".
const longestName = 24

// nameByTitles gives cards below each other, of one trial each, the titles right above them as
// the names of their trials, where these tell all of them apart: "Card 1", "Card 2".
func (f cards) nameByTitles(dealt []card, b block) {
	titles, met := make([]string, len(dealt)), map[string]bool{}
	for i := range dealt {
		t := &dealt[i]
		title := f.titleAbove(t.HeaderRow, b)
		if len(t.Rows) != 1 || title == "" || met[strings.ToLower(title)] || f.names(t) {
			return
		}
		titles[i], met[strings.ToLower(title)] = title, true
	}
	if len(dealt) < 2 {
		return
	}
	for i := range dealt {
		dealt[i].Rows[0].Section = titles[i]
	}
}

// ownRows gives cards of one trial each, below each other, the rows of their trials: they
// share a column, which tells none of them from another.
func (f cards) ownRows(dealt []card, b block) {
	if len(dealt) < 2 || slices.ContainsFunc(dealt, func(t card) bool { return len(t.Rows) != 1 }) {
		return
	}
	for i := range dealt {
		t := &dealt[i]
		t.From, t.To = t.HeaderRow, t.Heads[len(t.Heads)-1].Row
		if t.Rows[0].Section != "" && t.Rows[0].Section == f.titleAbove(t.HeaderRow, b) {
			t.From--
		}
	}
}

// names reports whether a card has a label of the trial's own number.
func (f cards) names(t *card) bool {
	for i := range t.Heads {
		if f.Read(t.Heads[i].Text).Role == column.TrialID {
			return true
		}
	}
	return false
}

// titleAbove is the short text with a number in it that stands alone in the row above another.
func (f cards) titleAbove(row int, b block) string {
	for i := range f.Sheet.Rows {
		if f.Sheet.Rows[i].Number != row-1 {
			continue
		}
		cells := look.Between(f.Sheet.Rows[i].Cells, b.from, b.to)
		c := look.FirstFilled(cells)
		text := strings.TrimSpace(c.Text)
		if look.Filled(cells) == 1 && c.Kind == sheet.Text && len(text) <= longestName && look.IsShortID(text) {
			return text
		}
	}
	return ""
}
