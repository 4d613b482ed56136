package handin

import (
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest"
	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// halves are the schemes of a table: of its mixes and of its results, which are one
// and the same where all stands in one table.
type halves struct{ mix, results *scheme.Scheme }

// tablesOf lays the trials of a file out by table.
func tablesOf(h *ingest.HandIn, formulas sheet.Formulas) (out []*Table) {
	byScheme := map[halves]*Table{}
	for i := range h.Log.Trials {
		x := &h.Log.Trials[i]
		src := h.Sources[i]
		key := halves{src.Mix, src.Results}
		t := byScheme[key]
		if t == nil {
			t = &Table{At: trial.Place{File: src.Mix.File, Sheet: src.Mix.Sheet}, Across: src.Mix.Found.Transposed}
			t.heads(src.Mix)
			if src.Results != src.Mix {
				t.heads(src.Results)
			}
			byScheme[key] = t
			out = append(out, t)
		}
		if sumsUp(x) || labelsMean(src) {
			t.average(ingest.Average{Scheme: src.Mix, Row: x.At.Row}, formulas)
			continue
		}
		t.take(x, src, formulas)
		if t.saysNothing() || t.isLine() {
			t.drop()
		}
	}
	out = slices.DeleteFunc(out, func(t *Table) bool { return len(t.Trials) == 0 })
	for _, a := range h.Averages {
		for key, t := range byScheme {
			if a.Scheme == key.mix {
				t.average(a, formulas)
			}
		}
	}
	for _, t := range out {
		t.readings()
		t.reclaim()
	}
	return out
}

// sumsUp reports a row that was read as a trial and is called a mean or a sum: "mean of
// 1a and 1b".
func sumsUp(x *trial.Trial) bool {
	kind, _ := look.Summary(x.ID)
	return (kind != look.None || meanWord.MatchString(x.ID)) && len(x.Parts) == 0 && x.At.Row > 0
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
func (t *Table) heads(s *scheme.Scheme) {
	for i := range s.Found.Heads {
		h := &s.Found.Heads[i]
		c := &Column{Header: h.Text, Whole: h.Text, Heading: s.Heading(i + 1), Field: s.Field(i + 1), UnitBelow: h.Unit, sample: s.SampleGrams, table: t}
		if cut := strings.LastIndex(h.Text, " / "); cut >= 0 {
			c.Header = h.Text[cut+3:]
		}
		c.Role = h.Meaning.Role
		if c.Field != nil {
			c.Role = c.Field.Role
		}
		t.Columns = append(t.Columns, c)
	}
}

// take adds a trial with its cells.
func (t *Table) take(x *trial.Trial, src ingest.Source, formulas sheet.Formulas) {
	t.Trials = append(t.Trials, &Trial{Trial: x, Index: len(t.Trials), Table: t})
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
func (t *Table) saysNothing() bool {
	last := len(t.Trials) - 1
	return !slices.ContainsFunc(t.Columns, func(c *Column) bool {
		return c.Cells[last].Number() && c.Role != column.TrialID && c.Role != column.Order
	}) && t.Trials[last].CameOut == trial.Unknown
}

// isLine reports a last row that is no trial: nothing stands in it but a label of several
// words and a number beside it, "best minus control".
func (t *Table) isLine() bool {
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
func (t *Table) drop() {
	last := len(t.Trials) - 1
	t.Trials = t.Trials[:last]
	for _, c := range t.Columns {
		c.Cells = c.Cells[:last]
	}
}

// cellOf reads one cell of a trial.
func cellOf(s *scheme.Scheme, row, head int, of *Column, formulas sheet.Formulas) Cell {
	r, col := s.Found.PlaceOf(row, head)
	raw, filled := s.Found.Cell(row, head)
	c := Cell{Repeats: filled && s.Found.Typed(row, head).Kind == sheet.Blank, At: trial.Place{File: s.File, Sheet: s.Sheet, Row: r, Col: col}, Kind: raw.Kind, Low: math.Inf(-1), High: math.Inf(1), Scale: 1,
		Text: strings.TrimSpace(s.Found.Sheet.Display(raw)), Formula: formulas.At(s.Found.Sheet.Name, r, col)}
	c.read(s, row, raw, of)
	return c
}

// read gives a cell its number.
func (c *Cell) read(s *scheme.Scheme, row int, raw sheet.Cell, of *Column) {
	switch raw.Kind {
	case sheet.Blank, sheet.Fault, sheet.Date:
		return
	case sheet.Clock:
		if of.Field == nil || of.Field.Want != units.Minutes {
			return
		}
	}
	typed, digits, bare := plainNumber(s.Found.Sheet, raw)
	var ok bool
	if c.Low, c.High, ok = c.bounds(s, row, raw, of, typed, bare); !ok {
		c.Low, c.High = math.Inf(-1), math.Inf(1)
		return
	}
	c.Known = c.Low == c.High && !math.IsInf(c.Low, 0)
	c.Value = c.Low
	c.Scale = scaleOf(c, of, typed, bare)
	if c.Formula == "" {
		c.Half = 0.5 * math.Pow(10, -float64(digits)) * math.Abs(c.Scale)
	}
}

// bounds are what a cell's text says of its number, as its column is read.
func (c *Cell) bounds(s *scheme.Scheme, row int, raw sheet.Cell, of *Column, typed float64, bare bool) (low, high float64, ok bool) {
	switch {
	case of.Field != nil && numeric(of.Role):
		m, err := s.Parse(row, scheme.CellText(s.Found.Sheet, raw), raw.Kind, of.Field)
		return m.Low, m.High, err == nil && (m.Word == quantity.NoWord || m.Word == quantity.Zero)
	case bare:
		return typed, typed, true
	}
	// ">20" in a column of nobody knows what
	m, err := quantity.Parse(c.Text, units.Any, units.NoUnit)
	return m.Low, m.High, err == nil && m.Word == quantity.NoWord && m.Said == "" && m.Unit == units.NoUnit
}

// scaleOf is how many base units one typed unit is.
func scaleOf(c *Cell, of *Column, typed float64, bare bool) float64 {
	if bare && typed != 0 && c.Known {
		return c.Value / typed
	}
	if of.Field != nil && of.Field.Bare != units.NoUnit {
		if one, err := quantity.Parse("1", of.Field.Want, of.Field.Bare); err == nil && one.Low > 0 && one.Low == one.High {
			return one.Low
		}
	}
	return 1
}

// numeric reports the roles whose cells are numbers.
func numeric(r column.Role) bool {
	switch r {
	case column.BatchMass, column.FatPercent, column.IngredientFat, column.IngredientAmount, column.EmulsifierAmount, column.BlendHLB, column.IngredientHLB,
		column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.SampleMass, column.DrainedAt, column.Overrun,
		column.CupLiquid, column.CupFoam, column.DispensedMass, column.LeftInside, column.Spread, column.Score, column.Fill, column.Rest, column.Temperature:
		return true
	}
	return false
}

// plainNumber is a cell's number as typed, with how many decimals it has.
func plainNumber(s *sheet.Sheet, c sheet.Cell) (v float64, digits int, ok bool) {
	text := strings.TrimSpace(s.Display(c))
	if c.Kind == sheet.Number {
		shortest := strconv.FormatFloat(c.Number, 'f', -1, 64)
		if v, err := strconv.ParseFloat(strings.TrimRight(text, " %gminhlL"), 64); err == nil && strings.HasSuffix(text, "%") {
			return v, decimals(text), true
		}
		return c.Number, min(decimals(shortest), 9), true
	}
	if c.Kind != sheet.Text {
		return 0, 0, false
	}
	text = strings.TrimRight(strings.TrimSuffix(strings.ReplaceAll(text, "\u00a0", " "), "%"), " ")
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v, decimals(text), err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func decimals(text string) int {
	i := strings.IndexAny(text, ".,")
	if i < 0 {
		return 0
	}
	n := 0
	for _, r := range text[i+1:] {
		if r < '0' || r > '9' {
			break
		}
		n++
	}
	return n
}

// average adds a row of sums or means.
func (t *Table) average(a ingest.Average, formulas sheet.Formulas) {
	s := a.Scheme
	i := slices.IndexFunc(s.Found.Sheet.Rows, func(r sheet.Row) bool { return r.Number == a.Row })
	if i < 0 {
		return
	}
	row := Row{At: trial.Place{File: s.File, Sheet: s.Sheet, Row: a.Row}}
	for _, c := range s.Found.Sheet.Rows[i].Cells {
		if c.Kind == sheet.Text && row.Label == "" {
			row.Label = c.Text
		}
	}
	for k := range s.Found.Heads {
		h := &s.Found.Heads[k]
		raw := s.Found.Sheet.At(a.Row, h.Col)
		c := Cell{At: trial.Place{File: s.File, Sheet: s.Sheet, Row: a.Row, Col: h.Col}, Kind: raw.Kind, Low: math.Inf(-1), High: math.Inf(1), Scale: 1,
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

// wordsOf are the texts of a file that are no part of its trials, and the notes that
// are.
func wordsOf(book *sheet.Book, tables []*Table, h *ingest.HandIn) (out []Phrase) {
	for _, s := range book.Sheets {
		at := trial.Place{File: book.File, Sheet: placeName(book, s)}
		kitchens := h.Taken[s.Name] && !isLog(at, tables) && s.Name != "Method"
		if kitchens || s.Name == "How to fill this in" {
			continue
		}
		busy := busyRows(s, at, tables, h)
		for _, r := range s.Rows {
			if !busy[r.Number] {
				out = append(out, phrasesOf(s, r, at)...)
			}
		}
		for _, c := range slices.Concat(s.Comments, s.Boxes) {
			out = append(out, Phrase{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: c.Row, Col: c.Col}, Text: c.Text})
		}
	}
	for _, t := range tables {
		out = append(out, t.notes()...)
	}
	return out
}

// phrasesOf are the texts of a row, each with what stands to its right.
func phrasesOf(s *sheet.Sheet, r sheet.Row, at trial.Place) (out []Phrase) {
	for i, c := range r.Cells {
		text := strings.TrimSpace(c.Text)
		if c.Kind != sheet.Text || text == "" {
			continue
		}
		p := Phrase{At: trial.Place{File: at.File, Sheet: at.Sheet, Row: r.Number, Col: int(c.Col)}, Text: text}
		if i+1 < len(r.Cells) && r.Cells[i+1].Col <= c.Col+2 { // further off is another label
			p.Right, p.RightAt = strings.TrimSpace(s.Display(r.Cells[i+1])), p.At
			p.RightAt.Col = int(r.Cells[i+1].Col)
		}
		out = append(out, p)
	}
	return out
}

// notes are the texts in columns of words.
func (t *Table) notes() (out []Phrase) {
	for _, c := range t.Columns {
		if c.Role != column.Note && c.Role != column.Result && c.Role != column.None && c.Role != column.Unused {
			continue
		}
		for i := range c.Cells {
			if c.Cells[i].Kind != sheet.Text || strings.TrimSpace(c.Cells[i].Text) == "" {
				continue
			}
			p := Phrase{At: c.Cells[i].At, Text: c.Cells[i].Text, Note: t.Trials[i], Answer: answers.MatchString(c.Header)}
			if p.Answer && t.Across { // below the last card, and of all
				p.Note = nil
			}
			out = append(out, p)
		}
	}
	return out
}

// answers are headers of columns in which students conclude.
var answers = pattern.Of(`(?i)(conclu|fazit|schluss|conclusión|answer|finding|what (i|we) (think|take home|learnt|learned|found))`)

func isLog(at trial.Place, tables []*Table) bool {
	return slices.ContainsFunc(tables, func(t *Table) bool { return t.At.Sheet == at.Sheet })
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
func busyRows(s *sheet.Sheet, at trial.Place, tables []*Table, h *ingest.HandIn) map[int]bool {
	busy := map[int]bool{}
	for _, t := range tables {
		if t.At.Sheet != at.Sheet {
			continue
		}
		for _, c := range t.Columns {
			busy[c.Heading.Row] = true
			for i := range c.Cells {
				busy[c.Cells[i].At.Row] = true
			}
		}
		for _, a := range t.Averages {
			busy[a.At.Row] = true
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
