package sheet

import (
	"fmt"
	"slices"
	"sort"

	"foamfield/ingest/cellname"
)

// settle puts what was read into its promised form: rows and cells in order,
// each address once, nothing under a merged cell.
func (p *partReader) settle() {
	if p.unsorted {
		p.sheet.Rows = sortRows(p.sheet.Rows)
		for i := range p.sheet.Rows {
			p.sheet.Rows[i].Cells = p.sortCells(&p.sheet.Rows[i])
		}
	}
	p.clearCovered()
	if p.struck {
		p.sheet.strikeRows()
	}
}

// strikeRows marks the rows of which every cell is struck out.
func (s *Sheet) strikeRows() {
	for i := range s.Rows {
		r := &s.Rows[i]
		r.Struck = !slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Flags&Struck == 0 })
	}
}

// sortRows orders the rows and joins those of one number.
func sortRows(rows []Row) []Row {
	slices.SortStableFunc(rows, func(a, b Row) int { return a.Number - b.Number })
	kept := rows[:0]
	for _, r := range rows {
		if n := len(kept); n > 0 && kept[n-1].Number == r.Number {
			kept[n-1].Cells = append(slices.Clip(kept[n-1].Cells), r.Cells...)
			kept[n-1].Hidden = kept[n-1].Hidden && r.Hidden
			continue
		}
		kept = append(kept, r)
	}
	return kept
}

// sortCells orders a row's cells; of an address written twice the first stays.
func (p *partReader) sortCells(r *Row) []Cell {
	slices.SortStableFunc(r.Cells, func(a, b Cell) int { return int(a.Col - b.Col) })
	kept := r.Cells[:0]
	for _, c := range r.Cells {
		if n := len(kept); n > 0 && kept[n-1].Col == c.Col {
			p.sheet.damaged(r.Number, int(c.Col), fmt.Sprintf("%s is written twice in the file, as %q and %q; the first is kept",
				cellname.Of(r.Number, int(c.Col)), p.sheet.Display(kept[n-1]), p.sheet.Display(c)))
			continue
		}
		kept = append(kept, c)
	}
	return kept
}

func (p *partReader) readColumns() {
	var from, to int
	var hidden, custom, flat bool
	for _, a := range p.Attrs {
		v := p.Value(a)
		switch string(a.Name) {
		case "min":
			from, _ = wholeNumber(v)
		case "max":
			to, _ = wholeNumber(v)
		case "hidden":
			hidden = isTrue(v)
		case "width":
			flat = isZero(v)
		case "customWidth":
			custom = isTrue(v)
		}
	}
	to = min(to, p.book.limit.cols)
	if (hidden || custom && flat) && from >= 1 && from <= to && len(p.sheet.HiddenCols) < p.book.limit.cols {
		p.sheet.HiddenCols = append(p.sheet.HiddenCols, Span{from, to})
		for c := from; c <= to; c++ {
			p.hidden[c] = true
		}
	}
}

func (p *partReader) readMerge() {
	for _, a := range p.Attrs {
		if string(a.Name) != "ref" {
			continue
		}
		v := p.Value(a)
		r, ok := parseRange(v)
		if !ok {
			p.sheet.damaged(0, 0, fmt.Sprintf("the merged range %q cannot be read", shorten(v)))
			return
		}
		if r.FromRow == r.ToRow && r.FromCol == r.ToCol {
			return
		}
		if len(p.sheet.Merged) == maxMerged {
			p.sheet.damaged(0, 0, fmt.Sprintf("of the merged cells only the first %d are read", maxMerged))
			p.block = otherBlock
			return
		}
		p.sheet.Merged = append(p.sheet.Merged, r)
	}
}

// parseRange reads A1:C2, or A1 alone.
func parseRange(b []byte) (Range, bool) {
	first, last := b, b
	for i, c := range b {
		if c == ':' {
			first, last = b[:i], b[i+1:]
			break
		}
	}
	r1, c1, ok1 := address(first)
	r2, c2, ok2 := address(last)
	return Range{min(r1, r2), min(c1, c2), max(r1, r2), max(c1, c2)}, ok1 && ok2
}

// clearCovered drops values left under merged cells: nobody sees them. A
// file's merged ranges may not overlap; the work is bounded for one where they
// do.
func (p *partReader) clearCovered() {
	rows := p.sheet.Rows
	work := 4*len(rows) + 16*maxMerged
	for _, m := range p.sheet.Merged {
		i := sort.Search(len(rows), func(i int) bool { return rows[i].Number >= m.FromRow })
		for ; i < len(rows) && rows[i].Number <= m.ToRow; i++ {
			if work--; work < 0 {
				p.sheet.damaged(0, 0, "its merged cells overlap; values under the last of them may still be read")
				return
			}
			p.clearRow(&rows[i], m)
		}
	}
	p.sheet.Rows = slices.DeleteFunc(rows, func(r Row) bool { return len(r.Cells) == 0 })
}

func (p *partReader) clearRow(r *Row, m Range) {
	r.Cells = slices.DeleteFunc(r.Cells, func(c Cell) bool {
		col := int(c.Col)
		covered := m.FromCol <= col && col <= m.ToCol && (r.Number != m.FromRow || col != m.FromCol)
		if covered {
			p.sheet.damaged(r.Number, col, fmt.Sprintf("%s holds %q out of sight under the merged cell %s; it is not read",
				cellname.Of(r.Number, col), p.sheet.Display(c), cellname.Of(m.FromRow, m.FromCol)))
		}
		return covered
	})
}
