package layout

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
)

// run walks down the sheet once.
func (f *finder) run() {
	for i := range f.s.Rows {
		row := &f.s.Rows[i]
		if row.Number > f.last+1 {
			f.hunted = 0
		}
		f.last = row.Number
		switch {
		case filledCells(row.Cells) == 0:
			f.furnish(row, Blank)
		case f.claimed(row.Number):
			// a lower header or units row its header has already taken
		case len(f.open) > 0 && f.newHeader(i):
			f.close()
			f.start(i)
		case len(f.open) > 0:
			f.place(i)
		case f.hunted < huntRows && f.look(row.Cells).header() && !f.betterBelow(i):
			f.start(i)
		default:
			f.hunted++
			f.outside = append(f.outside, Furniture{Row: row.Number, Kind: Title})
		}
	}
	f.close()
}

func (f *finder) close() {
	f.done = append(f.done, f.open...)
	f.open = nil
	f.hunted = 0
}

// claimed reports whether a row just met is already furniture of an open table.
func (f *finder) claimed(number int) bool {
	for _, t := range f.open {
		if n := len(t.Furniture); n > 0 && len(t.Rows) == 0 {
			for _, have := range t.Furniture {
				if have.Row == number {
					return true
				}
			}
		}
	}
	return false
}

// furnish puts a row to the first open table's furniture, or outside.
func (f *finder) furnish(row *sheet.Row, k Kind) {
	if len(f.open) > 0 {
		f.open[0].Furniture = append(f.open[0].Furniture, Furniture{Row: row.Number, Kind: k})
		return
	}
	f.outside = append(f.outside, Furniture{Row: row.Number, Kind: k})
}

// betterBelow reports whether one of the next rows is much more of a header,
// so that this one is a line of particulars ("Chef: … Date: …") above it.
func (f *finder) betterBelow(i int) bool {
	here := f.look(f.s.Rows[i].Cells)
	for j := i + 1; j < len(f.s.Rows) && j <= i+6; j++ {
		below := f.look(f.s.Rows[j].Cells)
		if below.values*2 > below.cells {
			return false // data already: this row is the header
		}
		if j > i+1 && below.header() && below.words >= 1.5*here.words {
			return true
		}
		if j == i+1 && below.header() && below.words >= 1.5*here.words && !f.lowerHeader(i) {
			return true
		}
	}
	return false
}

// newHeader reports whether a row below an open table is the header of another
// table and not a row of words: it names things in columns that hold numbers.
func (f *finder) newHeader(i int) bool {
	cells := f.s.Rows[i].Cells
	if filledCells(cells) < 2 || !numbersAsInHeader(cells) {
		return false
	}
	l := f.look(cells)
	if l.words < 2 || !l.header() || l.values*4 > l.cells {
		return false
	}
	for _, t := range f.open {
		if t.repeats(between(cells, t.fromCol, t.toCol)) {
			return false
		}
	}
	return f.namesThings(cells)
}

// numbersAsInHeader reports whether a row's numbers can be those of a header:
// minutes, say, but not first of all, and no formula.
func numbersAsInHeader(cells []sheet.Cell) bool {
	for k := range cells {
		if c := &cells[k]; c.Kind != sheet.Text && !empty(c) && (k == 0 || c.Flags&sheet.FromFormula != 0) {
			return false
		}
	}
	return true
}

// namesThings reports whether a row of words names things in columns of the
// open tables that hold numbers, or beside them.
func (f *finder) namesThings(cells []sheet.Cell) bool {
	named := 0
	for k := range cells {
		c := &cells[k]
		if c.Kind != sheet.Text || empty(c) {
			continue
		}
		m := f.read(c.Text)
		r, head := f.roleAt(int(c.Col))
		switch {
		case head && r == column.TrialID && m.Role == column.None && m.Unit == quantity.NoUnit:
			return false // something stands for an id: a trial told in words
		case m.Role != column.None && !happened(m.Role) && (!head || takesNumbers(r)):
			named++
		}
	}
	return named >= 2
}

// happened reports whether words of the role also tell what happened to a
// trial, and then stand in any column: "clogged" where a hold should be.
func happened(r column.Role) bool {
	switch r {
	case column.Clogged, column.Broke, column.OilLeak, column.Spits, column.Grainy, column.CameOut, column.Result, column.GoneBy, column.Note, column.Unused:
		return true
	}
	return false
}

// roleAt is the role of the open table's head in a column, before neighbours
// are asked.
func (f *finder) roleAt(col int) (r column.Role, head bool) {
	for _, t := range f.open {
		if col < t.fromCol || col > t.toCol {
			continue
		}
		if h := t.headAt(col); h >= 0 {
			return t.Heads[h].Meaning.Role, true
		}
	}
	return column.None, false
}

func (t *Table) headAt(col int) int {
	lo, hi := 0, len(t.Heads)
	for lo < hi {
		mid := int(uint(lo+hi) >> 1)
		if t.Heads[mid].Col < col {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < len(t.Heads) && t.Heads[lo].Col == col {
		return lo
	}
	return -1
}

// takesNumbers reports whether a column of the role holds numbers, so that
// other words in it are not data.
func takesNumbers(r column.Role) bool {
	switch r {
	case column.Hold, column.BatchMass, column.FatPercent, column.IngredientAmount, column.EmulsifierAmount, column.BlendHLB,
		column.IngredientHLB, column.DrainedAmount, column.OilAmount, column.SampleMass, column.DrainedAt, column.ReadingMinute,
		column.Overrun, column.Temperature, column.Rest, column.Shakes, column.Chargers, column.HoldOver, column.GoneBy:
		return true
	}
	return false
}

// place puts a row into the open tables.
func (f *finder) place(i int) {
	row := &f.s.Rows[i]
	if f.aboveHeader(i) {
		f.outside = append(f.outside, Furniture{Row: row.Number, Kind: Title})
		return
	}
	for _, t := range f.open {
		cells := between(row.Cells, t.fromCol, t.toCol)
		if filledCells(cells) == 0 {
			continue
		}
		if k, note := f.kind(t, i, cells); k != "" {
			t.Furniture = append(t.Furniture, Furniture{Row: row.Number, Kind: k, Note: note})
			t.interrupted = true
			if k == Title {
				t.section = strings.TrimSpace(f.s.Display(firstFilled(cells)))
				t.bestBelow = isBest(t.section)
			}
			continue
		}
		if t.interrupted {
			t.interrupted, t.tally.blockFrom = false, len(t.Rows)
		}
		t.Rows = append(t.Rows, Row{Number: row.Number, Hidden: row.Hidden, Struck: struck(cells), Section: t.section, at: int32(i)})
		for k := range cells {
			if c := &cells[k]; !empty(c) && t.headAt(int(c.Col)) < 0 {
				t.used[int(c.Col)] = true
			}
		}
	}
}

// aboveHeader reports whether a row of words stands just above a new header:
// its title or its group header.
func (f *finder) aboveHeader(i int) bool {
	for j := i; j < len(f.s.Rows) && j <= i+2; j++ {
		if j > i && f.newHeader(j) {
			return true
		}
		cells := f.s.Rows[j].Cells
		if l := f.look(cells); l.values > 0 || l.unitsOnly() && j == i {
			return false
		}
		if j > i && filledCells(cells) > 1 && j == i+2 {
			return false
		}
	}
	return false
}

// repeats reports whether the cells are the table's header once more. A header that
// says otherwise of a column is that of another table.
func (t *Table) repeats(cells []sheet.Cell) bool {
	same, other, all := 0, 0, 0
	for k := range cells {
		c := &cells[k]
		if empty(c) {
			continue
		}
		all++
		switch head := t.texts[int(c.Col)]; {
		case c.Kind != sheet.Text || head == "":
		case strings.EqualFold(strings.TrimSpace(c.Text), head):
			same++
		default:
			other++
		}
	}
	return same >= 2 && other == 0 && same*10 >= all*6
}
