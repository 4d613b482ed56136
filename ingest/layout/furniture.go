package layout

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// kind says what furniture row i of the sheet is below a table's header, with
// what a person should be told of it; "" when it is a row of the table.
func (f *finder) kind(t *Table, i int, cells []sheet.Cell) (k Kind, note string) {
	l := f.look(cells)
	if l.values*2 <= l.cells && t.repeats(cells) {
		return Header, ""
	}
	if l.unitsOnly() && l.cells >= 2 && l.values == 0 {
		return Units, ""
	}
	if k, note := t.sumsUp(cells); k != "" {
		return k, note
	}
	if l.cells > 1 {
		if l.values == 0 && t.prose(cells) {
			return Legend, ""
		}
		return "", ""
	}
	for k := range cells {
		if c := &cells[k]; !empty(c) {
			return f.aloneInRow(t, i, c), ""
		}
	}
	return Legend, ""
}

// aloneInRow says what a cell is that has its row for itself.
func (f *finder) aloneInRow(t *Table, i int, c *sheet.Cell) Kind {
	h := t.headAt(int(c.Col))
	switch {
	case t.isTitle(f, i, c):
		return Title
	case c.Kind != sheet.Text:
		return ""
	case h < 0:
		return Legend
	case t.Heads[h].Meaning.Role == column.TrialID && short(c.Text):
		return "" // a trial without results: said, not dropped
	case takesNumbers(t.Heads[h].Meaning.Role) && short(c.Text):
		return ""
	}
	return Legend
}

// short reports whether a text can be an id rather than a sentence.
func short(text string) bool {
	text = strings.TrimSpace(text)
	return len(text) <= 16 && strings.IndexFunc(text, unicode.IsDigit) >= 0 && !strings.HasSuffix(text, ":") && strings.Count(text, " ") <= 2
}

// prose reports whether a row of words alone says nothing of a trial: no cell
// stands under a head that trials fill.
func (t *Table) prose(cells []sheet.Cell) bool {
	for k := range cells {
		c := &cells[k]
		if empty(c) {
			continue
		}
		h := t.headAt(int(c.Col))
		if h < 0 {
			continue
		}
		if len(c.Text) > 60 && t.Heads[h].Meaning.Role != column.Note {
			return true
		}
		switch t.Heads[h].Meaning.Role {
		case column.None, column.Note:
		default:
			if len(c.Text) <= 40 {
				return false
			}
		}
	}
	return true
}
