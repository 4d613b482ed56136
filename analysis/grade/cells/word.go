package cells

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Words are the texts of a file that are no part of its trials, and the notes that
// are.
func Words(h *ingest.HandIn, tables []*handin.Table) (out []handin.Phrase) {
	for _, s := range h.Book.Sheets {
		at := trial.Place{File: h.Book.File, Sheet: placeName(h.Book, s)}
		kitchens := h.Taken[s.Name] && !isLog(at, tables) && s.Name != "Method"
		if kitchens || s.Name == "How to fill this in" {
			continue
		}
		busy := busyRows(s, at, tables, h)
		for _, r := range s.Rows {
			if !busy[r.Number] {
				out = append(out, phrasesOf(s, r, at)...)
			} else if last := lastHead(at, tables); last > 0 { // words a column right of all heads
				r.Cells = slices.DeleteFunc(slices.Clone(r.Cells), func(c sheet.Cell) bool { return int(c.Col) < last+2 })
				out = append(out, phrasesOf(s, r, at)...)
			}
		}
		for _, c := range slices.Concat(s.Comments, s.Boxes) {
			out = append(out, handin.Phrase{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: c.Row, Col: c.Col}, Text: c.Text})
		}
	}
	for _, t := range tables {
		out = append(out, notes(t)...)
	}
	return out
}

// lastHead is the last column of the trials on a sheet and of their heads.
func lastHead(at trial.Place, tables []*handin.Table) (last int) {
	for _, t := range tables {
		if t.At.Sheet != at.Sheet {
			continue
		}
		for _, c := range t.Columns {
			last = max(last, c.Heading.Col)
			for i := range c.Cells {
				if t.Across && c.Cells[i].At.Sheet == at.Sheet {
					last = max(last, c.Cells[i].At.Col)
				}
			}
		}
	}
	return last
}

// phrasesOf are the texts of a row, each with what stands to its right.
func phrasesOf(s *sheet.Sheet, r sheet.Row, at trial.Place) (out []handin.Phrase) {
	for i, c := range r.Cells {
		text := strings.TrimSpace(c.Text)
		if c.Kind != sheet.Text || text == "" {
			continue
		}
		if underscored.MatchString(text) {
			text = strings.ReplaceAll(text, "_", " ")
		}
		p := handin.Phrase{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: r.Number, Col: int(c.Col)}, Text: text}
		if i+1 < len(r.Cells) && r.Cells[i+1].Col <= c.Col+2 { // further off is another label
			p.Right, p.RightAt = strings.TrimSpace(s.Display(r.Cells[i+1])), p.At
			p.RightAt.Col = int(r.Cells[i+1].Col)
		}
		out = append(out, p)
	}
	return out
}

// underscored are words that are joined as a program wants them: "success_rule".
var underscored = pattern.Of(`^\pL+(?:_\pL+)+$`)

// notes are the texts in columns of words.
func notes(t *handin.Table) (out []handin.Phrase) {
	for _, c := range t.Columns {
		if c.Role != column.Note && c.Role != column.Result && c.Role != column.None && c.Role != column.Unused {
			continue
		}
		for i := range c.Cells {
			if c.Cells[i].Kind != sheet.Text || strings.TrimSpace(c.Cells[i].Text) == "" {
				continue
			}
			p := handin.Phrase{At: c.Cells[i].At, Text: c.Cells[i].Text, Note: t.Trials[i], Answer: answers.MatchString(c.Header)}
			if p.Answer && t.Across || standsApart(t, c) { // below the last card, and of all
				p.Note = nil
			}
			out = append(out, p)
		}
	}
	return out
}

// standsApart reports a column without any header that an empty one parts from the table: what is
// written there stands beside the trials, and is of none of them.
func standsApart(t *handin.Table, c *handin.Column) bool {
	if t.Across || strings.TrimSpace(c.Header) != "" {
		return false
	}
	return !slices.ContainsFunc(t.Columns, func(o *handin.Column) bool { return o.Filled() && o.Cells[0].At.Col == c.Cells[0].At.Col-1 })
}

// answers are headers of columns in which students conclude.
var answers = pattern.Of(`(?i)(conclu|fazit|schluss|conclusión|answer|finding|what (i|we) (think|take home|learnt|learned|found))`)

func isLog(at trial.Place, tables []*handin.Table) bool {
	return slices.ContainsFunc(tables, func(t *handin.Table) bool { return t.At.Sheet == at.Sheet })
}

// placeName is the name of a sheet as places give it.
func placeName(book *sheet.Book, s *sheet.Sheet) string {
	for _, end := range []string{".csv", ".tsv", ".txt"} {
		if strings.HasSuffix(strings.ToLower(book.File), end) {
			return ""
		}
	}
	return s.Name
}

// busyRows are the rows of a sheet that are trials, headers, units or means.
func busyRows(s *sheet.Sheet, at trial.Place, tables []*handin.Table, h *ingest.HandIn) map[int]bool {
	busy := map[int]bool{}
	for _, t := range tables { // the results of a mix may stand on another sheet
		for _, c := range t.Columns {
			if c.Filled() && c.Heading.Sheet == at.Sheet { // in a log with a value a row, what is said of all heads nothing
				busy[c.Heading.Row] = true
			}
			for i := range c.Cells {
				if c.Cells[i].At.Sheet == at.Sheet {
					busy[c.Cells[i].At.Row] = true
				}
			}
		}
		for _, a := range t.Averages {
			if a.At.Sheet == at.Sheet {
				busy[a.At.Row] = true
			}
		}
	}
	for _, src := range h.Sources {
		for _, f := range src.Mix.Found.Furniture {
			if src.Mix.Sheet == at.Sheet && (f.Kind == grid.Units || f.Kind == grid.Header || f.Kind == grid.Average) {
				busy[f.Row] = true
			}
		}
	}
	return busy
}
