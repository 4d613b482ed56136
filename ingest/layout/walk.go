package layout

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// finder walks down a sheet.
type finder struct {
	*look.Reader
	open    []*open // side by side; all have the same header row
	done    []*open
	outside []grid.Furniture
	hunted  int // rows looked at since the last table or gap
	last    int // number of the row before
}

// open is a table whose rows are being read.
type open struct {
	*grid.Table
	from, to    int          // the columns it owns, both ends included
	labels      int          // column of the row labels
	used        map[int]bool // columns with data and no header
	texts       map[int]string
	section     string // the last title
	bestBelow   bool   // which speaks of the best
	interrupted bool   // furniture stands after the last row
	tally       tally
	mixes       mixIndex
}

// run walks down the sheet once.
func (f *finder) run() {
	for i := range f.Sheet.Rows {
		row := &f.Sheet.Rows[i]
		if row.Number > f.last+1 {
			f.hunted = 0
		}
		f.last = row.Number
		switch {
		case look.Filled(row.Cells) == 0:
			f.furnish(row, grid.Blank)
		case f.claimed(row.Number):
			// a lower header or units row its header has already taken
		case len(f.open) > 0 && (f.newHeader(i) || f.smallHeader(i)):
			f.close()
			f.start(i)
		case len(f.open) > 0:
			f.place(i)
		case f.hunted < look.HuntRows && f.Look(row.Cells).Header() && !f.betterBelow(i):
			f.start(i)
		default:
			f.hunted++
			f.outside = append(f.outside, grid.Furniture{Row: row.Number, Kind: grid.Title})
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
func (f *finder) furnish(row *sheet.Row, k grid.Kind) {
	if len(f.open) > 0 {
		f.open[0].Furniture = append(f.open[0].Furniture, grid.Furniture{Row: row.Number, Kind: k})
		return
	}
	f.outside = append(f.outside, grid.Furniture{Row: row.Number, Kind: k})
}

// betterBelow reports whether one of the next rows is much more of a header,
// so that this one is a line of particulars ("Chef: … Date: …") above it.
func (f *finder) betterBelow(i int) bool {
	here := f.Look(f.Sheet.Rows[i].Cells)
	for j := i + 1; j < len(f.Sheet.Rows) && j <= i+6; j++ {
		below := f.Look(f.Sheet.Rows[j].Cells)
		if below.Values*2 > below.Cells {
			return false // data already: this row is the header
		}
		if j > i+1 && below.Header() && below.Words >= 1.5*here.Words {
			return true
		}
		if j == i+1 && below.Header() && below.Words >= 1.5*here.Words && !f.lowerHeader(i) {
			return true
		}
	}
	return false
}

// newHeader reports whether a row below an open table is the header of another
// table and not a row of words: it names things in columns that hold numbers.
func (f *finder) newHeader(i int) bool {
	cells := f.Sheet.Rows[i].Cells
	if look.Filled(cells) < 2 || !numbersAsInHeader(cells) {
		return false
	}
	l := f.Look(cells)
	if l.Words < 2 || !l.Header() || l.Values*4 > l.Cells {
		return false
	}
	for _, t := range f.open {
		if t.repeats(look.Between(cells, t.from, t.to)) {
			return false
		}
	}
	return f.namesThings(cells)
}

// numbersAsInHeader reports whether a row's numbers can be those of a header:
// minutes, say, but not first of all, and no formula.
func numbersAsInHeader(cells []sheet.Cell) bool {
	for k := range cells {
		if c := &cells[k]; c.Kind != sheet.Text && !look.Empty(c) && (k == 0 || c.Flags&sheet.FromFormula != 0) {
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
		if c.Kind != sheet.Text || look.Empty(c) {
			continue
		}
		m := f.Read(c.Text)
		r, head := f.roleAt(int(c.Col))
		switch {
		case head && r == column.TrialID && look.HeadsList(c.Text):
		case head && r == column.TrialID && m.Role == column.None && m.Unit == units.NoUnit:
			return false // something stands for an id: a trial told in words
		case m.Role != column.None && !look.Happened(m.Role) && (!head || look.TakesNumbers(r)):
			named++
		}
	}
	return named >= 2
}

// roleAt is the role of the open table's head in a column, before neighbours
// are asked.
func (f *finder) roleAt(col int) (r column.Role, head bool) {
	for _, t := range f.open {
		if col < t.from || col > t.to {
			continue
		}
		if h := t.HeadAt(col); h >= 0 {
			return t.Heads[h].Meaning.Role, true
		}
	}
	return column.None, false
}

// place puts a row into the open tables.
func (f *finder) place(i int) {
	row := &f.Sheet.Rows[i]
	if f.aboveHeader(i) {
		f.outside = append(f.outside, grid.Furniture{Row: row.Number, Kind: grid.Title})
		return
	}
	for _, t := range f.open {
		cells := look.Between(row.Cells, t.from, t.to)
		if look.Filled(cells) == 0 {
			continue
		}
		if k, note := f.kind(t, i, cells); k != "" {
			t.Furniture = append(t.Furniture, grid.Furniture{Row: row.Number, Kind: k, Note: note})
			t.interrupted = true
			if k == grid.Title {
				t.section = strings.TrimSpace(f.Sheet.Display(look.FirstFilled(cells)))
				t.bestBelow = look.IsBest(t.section)
			}
			continue
		}
		if t.interrupted {
			t.interrupted, t.tally.blockFrom = false, len(t.Rows)
		}
		t.Rows = append(t.Rows, grid.Row{Number: row.Number, Hidden: row.Hidden, Struck: look.AllStruck(cells), Section: t.section, At: int32(i)})
		for k := range cells {
			if c := &cells[k]; !look.Empty(c) && t.HeadAt(int(c.Col)) < 0 {
				t.used[int(c.Col)] = true
			}
		}
	}
}

// aboveHeader reports whether a row of words stands just above a new header:
// its title or its group header.
func (f *finder) aboveHeader(i int) bool {
	for j := i; j < len(f.Sheet.Rows) && j <= i+2; j++ {
		if j > i && f.newHeader(j) {
			return true
		}
		cells := f.Sheet.Rows[j].Cells
		if l := f.Look(cells); l.Values > 0 || l.UnitsOnly() && j == i {
			return false
		}
		if j > i && look.Filled(cells) > 1 && j == i+2 {
			return false
		}
	}
	return false
}

// repeats reports whether the cells are the table's header once more. A header that
// says otherwise of a column is that of another table.
func (t *open) repeats(cells []sheet.Cell) bool {
	same, other, all := 0, 0, 0
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) {
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
