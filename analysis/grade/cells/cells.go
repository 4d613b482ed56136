// Package cells is what stands in the cells of a file: tables of trials with their columns, the
// words beside them, and the rows that are no trials. It takes columns as the reader did.
package cells

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// halves are the schemes of a table: of its mixes and of its results, which are one
// and the same where all stands in one table.
type halves struct{ mix, results *scheme.Scheme }

// Tables lays the trials of a file out by table, as the reader took its columns.
func Tables(h *ingest.HandIn, formulas sheet.Formulas) (out []*handin.Table) {
	byScheme := map[halves]*handin.Table{}
	for i := range h.Log.Trials {
		x := &h.Log.Trials[i]
		src := h.Sources[i]
		key := halves{src.Mix, src.Results}
		t := byScheme[key]
		if t == nil {
			t = &handin.Table{At: trial.Place{File: src.Mix.File, Sheet: src.Mix.Sheet}, Across: src.Mix.Found.Transposed}
			heads(t, src.Mix)
			if src.Results != src.Mix {
				heads(t, src.Results)
			}
			byScheme[key] = t
			out = append(out, t)
		}
		if sumsUp(x) || labelsMean(src) {
			average(t, ingest.Average{Scheme: src.Mix, Row: x.At.Row}, formulas)
			continue
		}
		take(t, x, src, formulas)
		if saysNothing(t) || isLine(t) || ofAll(t) || beside(t) {
			drop(t)
		}
	}
	out = slices.DeleteFunc(out, func(t *handin.Table) bool { return len(t.Trials) == 0 })
	for _, a := range h.Averages {
		for key, t := range byScheme {
			if a.Scheme == key.mix {
				average(t, a, formulas)
			}
		}
	}
	return out
}

// sumsUp reports a row that was read as a trial and is called a mean or a sum: "mean of
// 1a and 1b".
func sumsUp(x *trial.Trial) bool {
	kind, _ := look.Summary(x.ID)
	return (kind != look.None || handin.MeanWord.MatchString(x.ID)) && len(x.Parts) == 0 && x.At.Col == 0
}

// labelsMean reports a row whose first cell calls it a mean, and that weighs nothing: its
// trials are numbered in a column that the reader does not know.
func labelsMean(src ingest.Source) bool {
	f := src.Mix.Found
	if f.Transposed || len(f.Heads) == 0 {
		return false
	}
	first := f.Typed(src.MixRow, 0)
	return first.Kind == sheet.Text && opensMean.MatchString(first.Text) && (len(f.Heads) < 2 || f.Typed(src.MixRow, 1).Kind == sheet.Blank)
}

var opensMean = pattern.Of(`(?i)^\s*(mean|average|avg|sum|total|difference|ø|mittel\w*|moyenne|media|promedio)\b.*\b(of|and|von|de|di)\b`)

// heads adds the columns of a scheme.
func heads(t *handin.Table, s *scheme.Scheme) {
	for i := range s.Found.Heads {
		h := &s.Found.Heads[i]
		c := &handin.Column{Header: h.Text, Whole: h.Text, Heading: s.Heading(i + 1), Field: s.Field(i + 1), UnitBelow: h.Unit, SampleGrams: s.SampleGrams}
		c.Header = withoutGroup(h.Text)
		c.Role = h.Meaning.Role
		if c.Field != nil {
			c.Role = c.Field.Role
		}
		t.Columns = append(t.Columns, c)
	}
}

// withoutGroup is a header without the title above it; the unit of "Butter / g" has none.
func withoutGroup(header string) string {
	cut := strings.LastIndex(header, " / ")
	if cut < 0 {
		return header
	}
	own := strings.TrimSpace(header[cut+3:])
	if _, unit := units.Parse(own); unit || strings.HasPrefix(own, "%") {
		return header
	}
	return own
}

// take adds a trial with its cells.
func take(t *handin.Table, x *trial.Trial, src ingest.Source, formulas sheet.Formulas) {
	t.Trials = append(t.Trials, &handin.Trial{Trial: x, Index: len(t.Trials), Table: t})
	n := len(src.Mix.Found.Heads)
	for i, c := range t.Columns {
		s, row, col := src.Mix, src.MixRow, i
		if i >= n {
			s, row, col = src.Results, src.ResultRow, i-n
		}
		c.Cells = append(c.Cells, cellOf(s, row, col, c, formulas))
		if unit := s.Found.UnitOf(row, col); unit != "" && c.UnitBelow == "" {
			c.UnitBelow = unit
		}
	}
}

// saysNothing reports a last row without any number but its trial's: a remark below the
// table, or a trial that was not made.
func saysNothing(t *handin.Table) bool {
	last := len(t.Trials) - 1
	return !slices.ContainsFunc(t.Columns, func(c *handin.Column) bool {
		return c.Cells[last].Number() && c.Role != column.TrialID && c.Role != column.Order
	}) && t.Trials[last].CameOut == trial.Unknown
}

// beside reports a last trial on a card that is but one number next to those of the trial before it: a
// correction, "204 | 240", or a second reading.
func beside(t *handin.Table) bool {
	last := len(t.Trials) - 1
	if !t.Across || last < 1 || strings.TrimSpace(t.Trials[last].ID) != "" && t.Trials[last].ID != "2" {
		return false
	}
	mine, before := 0, 0
	for _, c := range t.Columns {
		if !c.Cells[last].Blank() {
			mine++
		}
		if !c.Cells[last-1].Blank() {
			before++
		}
	}
	return mine == 1 && before >= 4
}

// ofAll reports a last trial that is called by a word for what is said of all, and weighs nothing:
// "meta | conclusion | run 5 is best" in a log with a value a row.
func ofAll(t *handin.Table) bool {
	last := len(t.Trials) - 1
	return aboutAll.MatchString(t.Trials[last].ID) && !slices.ContainsFunc(t.Columns, func(c *handin.Column) bool {
		return c.Cells[last].Number() && (c.Role == column.IngredientAmount || c.Role == column.Hold || c.Role == column.DrainedAmount)
	})
}

var aboutAll = pattern.Of(`(?i)^\s*(?:meta(?:data)?|info|about|general|study|project|report|header|all)\s*$`)

// isLine reports a last row that is no trial: nothing stands in it but a label of several
// words and a number beside it, "best minus control".
func isLine(t *handin.Table) bool {
	last := len(t.Trials) - 1
	if t.Across || len(t.Columns) < 5 || t.Trials[last].CameOut != trial.Unknown || len(strings.Fields(t.Columns[0].Cells[last].Text)) < 2 || t.Columns[0].Cells[last].Number() {
		return false
	}
	for i, c := range t.Columns[1:] {
		if (i == 0) == c.Cells[last].Blank() {
			return false
		}
	}
	return true
}

// drop takes the last trial away again.
func drop(t *handin.Table) {
	last := len(t.Trials) - 1
	t.Trials = t.Trials[:last]
	for _, c := range t.Columns {
		c.Cells = c.Cells[:last]
	}
}

// average adds a row of sums or means.
func average(t *handin.Table, a ingest.Average, formulas sheet.Formulas) {
	s := a.Scheme
	i := slices.IndexFunc(s.Found.Sheet.Rows, func(r sheet.Row) bool { return r.Number == a.Row })
	if i < 0 {
		return
	}
	row := handin.Row{At: trial.Place{File: s.File, Sheet: s.Sheet, Row: a.Row}}
	for _, c := range s.Found.Sheet.Rows[i].Cells {
		if c.Kind == sheet.Text && row.Label == "" {
			row.Label = c.Text
		}
	}
	for k := range s.Found.Heads {
		h := &s.Found.Heads[k]
		raw := s.Found.Sheet.At(a.Row, h.Col)
		c := handin.Cell{At: trial.Place{File: s.File, Sheet: s.Sheet, Row: a.Row, Col: h.Col}, Kind: raw.Kind, Low: math.Inf(-1), High: math.Inf(1), Scale: 1,
			Text: strings.TrimSpace(s.Found.Sheet.Display(raw)), Formula: formulas.At(s.Found.Sheet.Name, a.Row, h.Col)}
		if v, digits, ok := plainNumber(s.Found.Sheet, raw); ok {
			for _, o := range t.Columns[k].Cells {
				if o.Scale != 0 && o.Known {
					c.Scale = o.Scale
					break
				}
			}
			c.Value, c.Known = v*c.Scale, true
			c.Low, c.High = c.Value, c.Value
			if c.Formula == "" {
				c.Half = 0.5 * math.Pow(10, -float64(digits)) * math.Abs(c.Scale)
			}
		}
		row.Cells = append(row.Cells, c)
	}
	t.Averages = append(t.Averages, row)
}
