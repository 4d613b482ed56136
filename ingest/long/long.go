// Package long reads sheets whose rows are no trials: a row for each quantity
// of a trial, or a row of labels each followed by its value.
package long

import (
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// A long sheet has a row for each quantity of a trial: trial | what | value |
// unit. What is said of the whole trial, results too, may stand beside one of its
// rows or all, and what an ingredient is beside that. It is turned into a table only
// if that can be told surely.
const (
	longSample = 300 // rows judged by
	longHeads  = 200 // different quantities, at most
	longCells  = 1 << 22
)

// longColumns are the columns of a long sheet; 0 = none.
type longColumns struct {
	header                        int // index of the header row, -1 without
	id, what, value, unit, minute int
	others                        []int // what is said of the trial as a whole
	own                           []int // the fat and the HLB of the ingredient in the row
	again                         []int // its amount once more, in percent
}

// columnLooks counts what stands in a column.
type columnLooks struct {
	filled, texts, words, numbers, units int
	what                                 map[string]bool // different header words
	within                               bool            // differs within a trial
}

// Find reads a sheet that has a row for each quantity. ok is false when it is
// none, or when that is not sure.
func Find(f *look.Reader) (tables []grid.Table, outside []grid.Furniture, ok bool) {
	rows := f.Sheet.Rows
	for h := 0; h < len(rows) && h < look.HuntRows; h++ {
		if n := look.Filled(rows[h].Cells); n < 3 || n > 12 {
			continue
		}
		if c, ok := longAt(f, h); ok {
			p := pivot{Reader: f, longColumns: c}
			if t, ok := p.table(); ok {
				return []grid.Table{*t}, p.outside, true
			}
			return nil, nil, false
		}
	}
	return nil, nil, false
}

// longAt judges the columns below a row that may be the header of a long sheet.
func longAt(f *look.Reader, h int) (c longColumns, ok bool) {
	c.header = h
	heads := c.readHeader(f)
	below := slices.DeleteFunc(slices.Clone(f.Sheet.Rows[h+1:min(len(f.Sheet.Rows), h+1+longSample)]), func(r sheet.Row) bool { return look.Filled(r.Cells) == 0 })
	if c.id == 0 || len(below) < 6 {
		return c, false
	}
	looks := map[int]*columnLooks{}
	for i := range below {
		for k := range below[i].Cells {
			lookDown(f, looks, &below[i].Cells[k])
		}
	}
	for _, cell := range heads {
		l := looks[int(cell.Col)]
		if l == nil || int(cell.Col) == c.id || !l.names(cell.Text, len(below)) {
			continue
		}
		if c.what > 0 {
			return c, false
		}
		c.what = int(cell.Col)
	}
	if c.what == 0 {
		return c, false
	}
	c.lookWithin(f, looks, below)
	for _, cell := range heads {
		l := looks[int(cell.Col)]
		if l == nil || int(cell.Col) == c.id || int(cell.Col) == c.what {
			continue
		}
		if !c.take(f.Read(cell.Text), int(cell.Col), l, len(below)) {
			return c, false
		}
	}
	for col := range looks {
		if !slices.ContainsFunc(heads, func(h sheet.Cell) bool { return int(h.Col) == col }) {
			return c, false
		}
	}
	return c, c.value > c.what && c.repeatedIDs(f, below)
}

// names reports a column that says in nearly every row what the row is of.
func (l *columnLooks) names(header string, rows int) bool {
	return l.words*10 >= l.filled*8 && (len(l.what) >= 4 || len(l.what) == 3 && look.HeadsList(header)) && l.full(rows)
}

func (l *columnLooks) full(rows int) bool { return l.filled*10 >= rows*8 }

// lookWithin finds the columns that say several things of one trial.
func (c *longColumns) lookWithin(f *look.Reader, looks map[int]*columnLooks, rows []sheet.Row) {
	id, had := sheet.Cell{}, map[int]sheet.Cell{}
	for i := range rows {
		if own := look.CellAt(&rows[i], c.id); !look.Empty(&own) && !f.Ditto(&own, column.TrialID) && !look.SameCell(&own, &id) {
			id, had = own, map[int]sheet.Cell{}
		}
		for k := range rows[i].Cells {
			cell := &rows[i].Cells[k]
			if look.Empty(cell) || f.Ditto(cell, column.None) {
				continue
			}
			if before, ok := had[int(cell.Col)]; ok && !look.SameCell(cell, &before) {
				looks[int(cell.Col)].within = true
			}
			had[int(cell.Col)] = *cell
		}
	}
}

// readHeader is the filled cells of the header, if all are words; it finds the
// column of ids.
func (c *longColumns) readHeader(f *look.Reader) (heads []sheet.Cell) {
	for _, cell := range f.Sheet.Rows[c.header].Cells {
		if look.Empty(&cell) {
			continue
		}
		if cell.Kind != sheet.Text {
			c.id = 0
			return nil
		}
		heads = append(heads, cell)
		if m := f.Read(cell.Text); m.Role == column.TrialID && m.Sure() && c.id == 0 {
			c.id = int(cell.Col)
		}
	}
	return heads
}

func lookDown(f *look.Reader, looks map[int]*columnLooks, c *sheet.Cell) {
	if look.Empty(c) {
		return
	}
	l := looks[int(c.Col)]
	if l == nil {
		l = &columnLooks{what: map[string]bool{}}
		looks[int(c.Col)] = l
	}
	l.filled++
	if _, number := look.Number(c); number || c.Kind != sheet.Text {
		l.numbers++
		return
	}
	l.texts++
	if look.IsUnit(c.Text) {
		l.units++
		return
	}
	if m := f.Read(c.Text); m.Role != column.None && m.Role != column.Unused {
		l.words++
		l.what[m.Role.String()+" "+strings.ToLower(m.Ingredient)] = true
	}
}

// take gives a column its part in a long sheet; false when it can have none.
func (c *longColumns) take(m column.Meaning, col int, l *columnLooks, rows int) bool {
	numbers := l.numbers*2 >= l.filled
	whole := !l.within && (l.filled < rows || grid.IsResult(m.Role)) // said once of a trial
	switch {
	case m.Can(column.ReadingMinute) && l.numbers*10 >= l.filled*8:
		c.minute = col
	case l.units*10 >= l.filled*7 && l.filled*10 >= rows*3:
		c.unit = col
	case m.Role == column.IngredientFat, l.within && (m.Role == column.FatPercent && m.Basis == column.NoBasis || m.Role == column.BlendHLB):
		c.own = append(c.own, col)
	case carried(m.Role) || !numbers, whole && m.Role != column.None && m.Sure():
		c.others = append(c.others, col)
	case c.value == 0 && l.full(rows):
		c.value = col
	case c.value > 0 && m.Role == column.None && m.Unit.Dimension() == units.Percent && l.filled*10 >= rows*6:
		c.again = append(c.again, col)
	default:
		return false // another column of numbers that nobody explains
	}
	return true
}

// carried reports whether a column of a long sheet says something of the trial
// as a whole.
func carried(r column.Role) bool {
	switch r {
	case column.Day, column.Order, column.Repeat, column.Cook, column.Student, column.Dish, column.Canister, column.CanisterID, column.ChargerLot, column.IngredientLot, column.Supplier, column.Week, column.Note:
		return true
	}
	return false
}

// repeatedIDs reports whether the ids come in several rows each.
func (c *longColumns) repeatedIDs(f *look.Reader, rows []sheet.Row) bool {
	seen, above := map[string]bool{}, map[int]string{}
	for i := range rows {
		if id := look.CellAt(&rows[i], c.id); !look.Empty(&id) {
			seen[c.trialKey(f, &rows[i], above)] = true
		}
	}
	return len(seen) >= 2 && len(rows)*2 >= len(seen)*5
}

// trialKey is what tells a trial from others: its id with the day, the student
// and the repeat that stand beside it, or in above where they are written once.
func (c *longColumns) trialKey(f *look.Reader, row *sheet.Row, above map[int]string) string {
	key := strings.TrimSpace(f.Sheet.Display(look.CellAt(row, c.id)))
	for _, col := range c.others {
		switch f.Read(f.Sheet.Display(look.CellAt(&f.Sheet.Rows[c.header], col))).Role {
		case column.Day, column.Student, column.Repeat:
			if text := f.Sheet.Display(look.CellAt(row, col)); text != "" {
				above[col] = text
			}
			key += "\x00" + above[col]
		}
	}
	return key
}

// pivot turns a long sheet into a table.
type pivot struct {
	*look.Reader
	longColumns
	t       *grid.Table
	outside []grid.Furniture
	rows    map[string]int // by key of the trial and minute
	heads   map[string]int // by what
	trials  map[string]int // rows of each trial
	above   map[int]string // what was last written of the day and the like
}

func (p *pivot) table() (*grid.Table, bool) {
	s := p.Sheet
	h := s.Rows[p.header]
	p.t = &grid.Table{Sheet: s, HeaderRow: h.Number, Long: true}
	p.rows, p.heads, p.trials, p.above = map[string]int{}, map[string]int{}, map[string]int{}, map[int]string{}
	for i := range p.header {
		p.outside = append(p.outside, grid.Furniture{Row: s.Rows[i].Number, Kind: grid.Title})
	}
	p.t.Furniture = []grid.Furniture{{Row: h.Number, Kind: grid.Header}}
	given := append([]int{p.id}, p.others...)
	if p.minute > 0 {
		given = append(given, p.minute)
	}
	for _, col := range given {
		c := look.CellAt(&h, col)
		p.t.Heads = append(p.t.Heads, grid.Head{Col: col, Row: h.Number, Text: strings.TrimSpace(s.Display(c)), Hidden: s.ColHidden(col)})
	}
	p.t.Places = make([][]grid.Place, len(p.t.Heads))
	id := ""
	for i := p.header + 1; i < len(s.Rows); i++ {
		if id = p.row(i, id); len(p.t.Heads) > longHeads || len(p.t.Heads)*len(p.t.Rows) > longCells {
			return nil, false
		}
	}
	return p.t, p.finish()
}

// row puts a row of the sheet into the table; id is that of the trial above,
// and of this one when it says none.
func (p *pivot) row(i int, id string) string {
	row := &p.Sheet.Rows[i]
	idCell, what, value := look.CellAt(row, p.id), look.CellAt(row, p.what), look.CellAt(row, p.value)
	if look.Empty(&what) && look.Empty(&value) {
		kind := grid.Legend
		if look.Filled(row.Cells) == 0 {
			kind = grid.Blank
		}
		p.t.Furniture = append(p.t.Furniture, grid.Furniture{Row: row.Number, Kind: kind})
		return id
	}
	if !look.Empty(&idCell) && !p.Ditto(&idCell, column.TrialID) {
		id = p.trialKey(p.Reader, row, p.above)
	}
	key := id
	if p.minute > 0 {
		key += "\x00\x00" + p.Sheet.Display(look.CellAt(row, p.minute))
	}
	r, known := p.rows[key]
	if !known {
		r = len(p.t.Rows)
		p.rows[key] = r
		p.trials[id]++
		p.t.Rows = append(p.t.Rows, grid.Row{Number: row.Number, Hidden: row.Hidden, Struck: true, At: int32(i)})
	}
	p.t.Rows[r].Struck = p.t.Rows[r].Struck && (row.Struck || look.AllStruck(row.Cells))
	note := p.fill(i, r, &what)
	if known {
		p.t.Furniture = append(p.t.Furniture, grid.Furniture{Row: row.Number, Kind: grid.Part, Note: note})
	}
	return id
}

// fill puts what stands in row i of the sheet under the heads of row r of the
// table, and says what could not be put there.
func (p *pivot) fill(i, r int, what *sheet.Cell) (note string) {
	row := &p.Sheet.Rows[i]
	for h := range p.t.Heads[:1+len(p.others)+min(p.minute, 1)] {
		c := look.CellAt(row, p.t.Heads[h].Col)
		if at := p.at(h, r); !look.Empty(&c) && at.At == 0 {
			*at = grid.At(i, int(c.Col))
		} else if had := look.CellAt(&p.Sheet.Rows[max(at.At, 1)-1], int(c.Col)); !look.Empty(&c) && !look.SameCell(&c, &had) {
			note = quoted(p.Sheet.Display(c)) + " is not read: of the trial it says another thing than " + quoted(p.Sheet.Display(had)) + " above"
		}
	}
	text := strings.TrimSpace(p.Sheet.Display(*what))
	for _, col := range p.again {
		c := look.CellAt(row, col)
		if h := p.headOf(row, text, col); p.at(h, r).At == 0 && !look.Empty(&c) {
			*p.at(h, r) = grid.At(i, col)
		}
	}
	h := p.headOf(row, text, p.value)
	if p.at(h, r).At > 0 {
		return "the trial has " + quoted(p.t.Heads[h].Text) + " a second time here; the first is read"
	}
	*p.at(h, r) = grid.At(i, p.value)
	return note
}

// headOf is the head of what a row is of, for the values in a column. The same name with
// another fat or HLB of its own is another ingredient.
func (p *pivot) headOf(row *sheet.Row, what string, col int) int {
	key := func() string { return strings.ToLower(what) + "\x00" + strconv.Itoa(col) }
	said := p.saidOf(row, what)
	h, known := p.heads[key()]
	if known && said != "" && p.t.Heads[h].About != said {
		if p.t.Heads[h].About == "" {
			p.t.Heads[h].About = said
			return h
		}
		what += ", " + said
		h, known = p.heads[key()]
	}
	if known {
		return h
	}
	h = len(p.t.Heads)
	p.heads[key()] = h
	head := grid.Head{Col: col, Row: row.Number, Text: what, About: said}
	if in := p.unitOf(col); col != p.value {
		head.Unit = in
	} else if c := look.CellAt(row, p.unit); p.unit > 0 {
		if head.UnitCol = p.unit; c.Kind == sheet.Text {
			head.Unit = strings.TrimSpace(c.Text)
		}
	} else if p.weighs(what, in) {
		head.Unit = in
	}
	p.t.Heads = append(p.t.Heads, head)
	p.t.Places = append(p.t.Places, nil)
	return h
}

// unitOf is the unit that the header of a column of values gives.
func (p *pivot) unitOf(col int) string {
	m := p.Read(p.Sheet.Display(look.CellAt(&p.Sheet.Rows[p.header], col)))
	if m.Unit == units.NoUnit {
		return ""
	}
	return strings.TrimSpace(m.Unit.String() + " " + m.Basis.String())
}

// weighs reports whether the unit above the values can be that of a quantity: hold is in no grams.
func (p *pivot) weighs(what, unit string) bool {
	switch p.Read(what + " (" + unit + ")").Role {
	case column.IngredientAmount, column.EmulsifierAmount, column.BatchMass:
		return true
	}
	return false
}

// saidOf is what stands beside an ingredient of its own: "HLB 4", "82 % fat".
func (p *pivot) saidOf(row *sheet.Row, what string) (said string) {
	for _, col := range p.own {
		c, m := look.CellAt(row, col), p.Read(p.Sheet.Display(look.CellAt(&p.Sheet.Rows[p.header], col)))
		v, ok := look.Number(&c)
		if !ok {
			continue
		}
		if m.Role == column.BlendHLB {
			return "HLB " + say.Exact(v)
		}
		if m.Unit == units.Fraction || c.Kind == sheet.Number && strings.Contains(p.Sheet.Display(c), "%") {
			v *= 100
		}
		if _, known := ingredient.Lookup(what); v > 0 || !known {
			said = say.Exact(v) + " % fat"
		}
	}
	return said
}

func quoted(text string) string { return "\"" + text + "\"" }

// at is where the cell of a row under a head stands.
func (p *pivot) at(h, r int) *grid.Place {
	for len(p.t.Places[h]) <= r {
		p.t.Places[h] = append(p.t.Places[h], grid.Place{})
	}
	return &p.t.Places[h][r]
}

// finish reads the heads; false when they are not those of a log.
func (p *pivot) finish() bool {
	t := p.t
	for h := range t.Places {
		if len(t.Rows) > 0 {
			p.at(h, len(t.Rows)-1)
		}
	}
	t.ReadHeads()
	for i, h := range t.Heads {
		if r := h.Meaning.Role; r == column.TrialID || r == column.Repeat || r == column.Day || r == column.Student {
			t.Key = append(t.Key, i)
		}
	}
	t.FillDown(p.Reader)
	for _, n := range p.trials {
		t.PerReading = t.PerReading || n > 1
	}
	slices.SortStableFunc(t.Furniture, func(a, b grid.Furniture) int { return a.Row - b.Row })
	mix, results := t.Looks()
	return len(t.Rows) >= 2 && mix+results >= 2
}
