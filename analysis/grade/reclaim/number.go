package reclaim

import (
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
)

// Numbers gives the trials of a table that have no number what stands for one, and keeps what
// the student calls a trial: "go", "pot", "card".
func Numbers(t *handin.Table, book *sheet.Book) {
	if slices.ContainsFunc(t.Trials, func(x *handin.Trial) bool { return x.ID != "" }) {
		if c := t.Find(column.TrialID); c != nil {
			t.Noun = called(c.Header)
		}
		return
	}
	if len(t.Columns) == 0 || fromTitles(t, book) {
		return
	}
	for _, c := range []*handin.Column{t.Columns[0], t.Columns[min(1, len(t.Columns)-1)], t.Columns[len(t.Columns)-1]} {
		if mayNumber(c) {
			t.Noun = called(c.Header)
			renumber(t, func(i int) string { return c.Cells[i].Text })
			return
		}
	}
	if first := t.Columns[0]; handin.Wordy(first.Role) && distinct(first, func(x handin.Cell) bool { return x.Kind == sheet.Text && len(strings.Fields(x.Text)) <= 8 }) {
		renumber(t, func(i int) string { return first.Cells[i].Text })
	}
}

// renumber gives each trial its number; the log keeps its own.
func renumber(t *handin.Table, id func(i int) string) {
	for i, x := range t.Trials {
		named := *x.Trial
		named.ID = id(i)
		x.Trial = &named
	}
}

// distinct reports a column of which every cell is filled as asked, and no two alike.
func distinct(c *handin.Column, ok func(handin.Cell) bool) bool {
	seen := map[string]bool{}
	for _, x := range c.Cells {
		if x.Text == "" || seen[x.Text] || !ok(x) {
			return false
		}
		seen[x.Text] = true
	}
	return len(c.Cells) > 1
}

// mayNumber reports a column that can be nothing but the numbers of the trials: 1, 2, 3, or
// short names of which no two are alike.
func mayNumber(c *handin.Column) bool {
	if distinct(c, func(x handin.Cell) bool { return labelled.MatchString(x.Text) }) {
		return true // "C" above C1, C2 is no temperature
	}
	if handin.Numeric(c.Role) || c.Role == column.Day {
		return false
	}
	last := 0
	return distinct(c, func(x handin.Cell) bool {
		n, err := strconv.Atoi(x.Text)
		ok := err == nil && n == last+1
		last = n
		return ok
	}) || distinct(c, func(x handin.Cell) bool {
		return x.Kind == sheet.Text && !x.Known && len(x.Text) <= 8 && len(strings.Fields(x.Text)) == 1
	})
}

// labelled is a number behind letters.
var labelled = pattern.Of(`^\s*\p{Lu}{1,2}-?\d{1,2}[a-z]?\s*$`)

// cardTitle is a title that numbers what stands below it: "CARD 2", "Squirt no. 3".
var cardTitle = pattern.Of(`^\s*(\p{L}+)\s*(?:no\.?|nr\.?|number|#)?\s*(\d{1,3}|[A-Z])\s*[:.]?\s*$`)

// fromTitles numbers trials on cards by the titles above them.
func fromTitles(t *handin.Table, book *sheet.Book) bool {
	if !t.Across || book == nil {
		return false
	}
	ids, seen, noun := make([]string, len(t.Trials)), map[string]bool{}, ""
	for i := range t.Trials {
		at := t.Columns[0].Cells[i].At
		k := slices.IndexFunc(book.Sheets, func(s *sheet.Sheet) bool { return s.Name == at.Sheet })
		if k < 0 {
			return false
		}
		for _, r := range book.Sheets[k].Rows {
			if r.Number >= at.Row || r.Number < at.Row-3 {
				continue
			}
			for _, c := range r.Cells {
				if int(c.Col) > at.Col {
					break // the title of a card further right
				}
				if m := cardTitle.FindStringSubmatch(c.Text); m != nil && c.Kind == sheet.Text {
					ids[i], noun = m[2], say.Fold(m[1])
				}
			}
		}
		if ids[i] == "" || seen[ids[i]] {
			return false
		}
		seen[ids[i]] = true
	}
	renumber(t, func(i int) string { return ids[i] })
	t.Noun = noun
	return true
}

var numberWords = []string{"no", "nr", "number", "num", "id", "#", "n"}

// called is what the trials of a table are called by its column of numbers: "go", "pot";
// "" where that is no word of its own.
func called(header string) string {
	words := strings.FieldsFunc(say.Fold(header), func(r rune) bool { return !(r >= 'a' && r <= 'z' || r > 127) })
	words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(numberWords, w) })
	if len(words) != 1 || len(words[0]) < 2 {
		return ""
	}
	return words[0]
}
