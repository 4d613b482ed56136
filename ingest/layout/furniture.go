package layout

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// kind says what furniture row i of the sheet is below a table's header, with
// what a person should be told of it; "" when it is a row of the table.
func (f *finder) kind(t *open, i int, cells []sheet.Cell) (k grid.Kind, note string) {
	l := f.Look(cells)
	if l.Values*2 <= l.Cells && t.repeats(cells) {
		return grid.Header, ""
	}
	if l.UnitsOnly() && l.Cells >= 2 && l.Values == 0 {
		return grid.Units, ""
	}
	if k, note := t.sumsUp(cells); k != "" {
		return k, note
	}
	if l.Cells > 1 {
		if l.Values == 0 && t.prose(cells) || t.listed(cells) || t.labelled(cells) || look.AreShares(cells) {
			return grid.Legend, ""
		}
		return "", ""
	}
	for k := range cells {
		if c := &cells[k]; !look.Empty(c) {
			return f.aloneInRow(t, i, c), ""
		}
	}
	return grid.Legend, ""
}

// aloneInRow says what a cell is that has its row for itself.
func (f *finder) aloneInRow(t *open, i int, c *sheet.Cell) grid.Kind {
	h := t.HeadAt(int(c.Col))
	switch {
	case t.isTitle(f, i, c):
		return grid.Title
	case c.Kind != sheet.Text:
		return ""
	case h < 0:
		return grid.Legend
	case t.Heads[h].Meaning.Role == column.TrialID && short(c.Text):
		return "" // a trial without results: said, not dropped
	case look.TakesNumbers(t.Heads[h].Meaning.Role) && short(c.Text):
		return ""
	}
	return grid.Legend
}

// short reports whether a text can be an id rather than a sentence: "GMS: HLB 4" says
// something of another thing.
func short(text string) bool {
	text = strings.TrimSpace(text)
	return !strings.Contains(text, "=") && !strings.Contains(text, ": ") && len(text) <= 16 && strings.IndexFunc(text, unicode.IsDigit) >= 0 && !strings.HasSuffix(text, ":") && strings.Count(text, " ") <= 2
}

// prose reports whether a row of words alone says nothing of a trial: no cell
// stands under a head that trials fill.
func (t *open) prose(cells []sheet.Cell) bool {
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) {
			continue
		}
		h := t.HeadAt(int(c.Col))
		if h < 0 {
			continue
		}
		if len(c.Text) > 60 && t.Heads[h].Meaning.Role != column.Note {
			return true
		}
		switch t.Heads[h].Meaning.Role {
		case column.None, column.Note:
		default:
			if len(c.Text) <= 40 && !(look.IsLabel(t.Heads[h].Meaning.Role) && isSentence(c.Text)) {
				return false
			}
		}
	}
	return true
}

// listed reports words behind a label, "to buy: | cream | chargers", of which none answers a
// question of the table.
func (t *open) listed(cells []sheet.Cell) bool {
	label := strings.TrimSpace(look.FirstFilled(cells).Text)
	if !strings.HasSuffix(label, ":") || len(label) < 4 || strings.ContainsFunc(label, unicode.IsDigit) {
		return false
	}
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) || t.HeadAt(int(c.Col)) < 0 {
			continue
		}
		if role := t.Heads[t.HeadAt(int(c.Col))].Meaning.Role; c.Kind != sheet.Text || c.Text[0] <= '9' || grid.IsResult(role) || role == column.Note {
			return false
		}
	}
	return true
}

// labelled reports a day or a sentence alone behind a label, "When | 20 November 2025", where trials have a number.
func (t *open) labelled(cells []sheet.Cell) bool {
	var c [2]*sheet.Cell
	n := 0
	for k := range cells {
		if look.Empty(&cells[k]) {
			continue
		}
		if n == 2 {
			return false
		}
		c[n], n = &cells[k], n+1
	}
	if n < 2 || c[0].Kind != sheet.Text || c[1].Kind != sheet.Text || strings.ContainsFunc(c[0].Text, unicode.IsDigit) {
		return false
	}
	h := t.HeadAt(int(c[1].Col))
	if h < 0 {
		return false
	}
	sentence := len(strings.Fields(c[1].Text)) > 5
	switch role := t.Heads[h].Meaning.Role; {
	case grid.IsResult(role), role == column.Note:
		return false
	case role == column.Day:
		return sentence || !strings.ContainsFunc(c[1].Text, unicode.IsDigit)
	case look.TakesNumbers(role):
		return sentence || look.IsDay(c[1].Text)
	}
	return sentence
}

// isSentence reports a text of words that is no name of a trial: four and more of them.
func isSentence(text string) bool { return len(strings.Fields(text)) > 3 }
