package cells

import (
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/sheet"
)

// Asides takes columns without a head that stand apart from a table away from it: what is written
// there, "GMS HLB 3.8", "safety: hot oil", is of the whole work and no note of the trial whose row it
// happens to be in.
func Asides(t *handin.Table) (words []handin.Phrase, lines []kitchen.Line) {
	if t.Across || t.Prose {
		return nil, nil
	}
	last := 0
	for _, c := range t.Columns {
		if c.Header != "" {
			last = max(last, c.Heading.Col)
		}
	}
	var kept []*handin.Column
	for _, c := range t.Columns {
		if c.Header != "" || c.Heading.Col < last+2 || handin.Numeric(c.Role) {
			kept = append(kept, c)
			continue
		}
		for _, x := range c.Cells {
			if x.Kind == sheet.Text && x.Text != "" {
				words = append(words, handin.Phrase{At: x.At, Text: x.Text})
				lines = append(lines, kitchen.Line{Text: x.Text, At: x.At})
			}
		}
	}
	if len(words) < 2 {
		return nil, nil
	}
	t.Columns = kept
	for i, x := range t.Trials {
		var notes []string
		for _, c := range t.All(column.Note) {
			if text := c.Cells[i].Text; text != "" {
				notes = append(notes, text)
			}
		}
		own := *x.Trial
		own.Note = strings.Join(notes, "; ")
		x.Trial = &own
	}
	return words, lines
}
