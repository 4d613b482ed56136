package layout

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// Some kitchens write a card in one row, each value behind its label: butter |
// 150 | cider | 144. Several such rows are one table.

// pair is a label with its value's and its unit's place in a row; 0 = none.
type pair struct {
	label       sheet.Cell
	value, unit int
}

// pairsIn takes a row apart. ok is false unless all of it but a first cell is
// three pairs or more.
func (f *finder) pairsIn(row *sheet.Row) (id int, pairs []pair, ok bool) {
	cells := slices.DeleteFunc(slices.Clone(row.Cells), func(c sheet.Cell) bool { return empty(&c) })
	isLabel := func(k int) bool {
		return k < len(cells) && cells[k].Kind == sheet.Text && !isUnit(cells[k].Text) && f.read(cells[k].Text).Role != column.None
	}
	k := 0
	if len(cells) > 0 && !isLabel(0) {
		id, k = int(cells[0].Col), 1
	}
	for k < len(cells) {
		if !isLabel(k) {
			return 0, nil, false
		}
		p := pair{label: cells[k]}
		k++
		if k < len(cells) && cells[k].Col == p.label.Col+1 {
			p.value = int(cells[k].Col)
			k++
			if k < len(cells) && cells[k].Kind == sheet.Text && isUnit(cells[k].Text) && int(cells[k].Col) == p.value+1 {
				p.unit = int(cells[k].Col)
				k++
			}
		}
		pairs = append(pairs, p)
	}
	return id, pairs, len(pairs) >= 3
}

// alternating reads a sheet of cards in one row each.
func (f *finder) alternating() (tables []Table, outside []Furniture, ok bool) {
	if len(f.s.Rows) > cardRows {
		return nil, nil, false
	}
	t := &Table{Sheet: f.s, Heads: []Head{{Col: 1, Text: "trial"}}, places: [][]place{nil}, labels: 1, fromCol: 1, toCol: lastColumn}
	p := pivot{finder: f, t: t, heads: map[string]int{}}
	ids, values := 0, 0
	for i := range f.s.Rows {
		row := &f.s.Rows[i]
		id, pairs, is := f.pairsIn(row)
		if !is || len(pairs) > longHeads {
			kind := Title
			if filledCells(row.Cells) == 0 {
				kind = Blank
			}
			if f.look(row.Cells).header() && filledCells(row.Cells) > 2 {
				return nil, nil, false // an ordinary table
			}
			t.Furniture = append(t.Furniture, Furniture{Row: row.Number, Kind: kind})
			continue
		}
		r := len(t.Rows)
		t.Rows = append(t.Rows, Row{Number: row.Number, Hidden: row.Hidden, Struck: struck(row.Cells), at: int32(i)})
		if id > 0 {
			ids++
			t.Heads[0].Col = id
			*p.at(0, r) = place{int32(i) + 1, int32(id)}
		}
		for _, pair := range pairs {
			if !p.put(i, r, pair) {
				return nil, nil, false
			}
			c := cellAt(row, pair.value)
			if _, number := numberIn(&c); number {
				values++
			}
		}
	}
	if len(t.Rows) == 0 || len(t.Rows)+1 < len(t.Furniture) || values < 2*len(t.Rows) {
		return nil, nil, false
	}
	return p.alternate(ids)
}

// put gives the value of a pair in row i of the sheet its place in row r of the
// table; false when the label comes twice in the row.
func (p *pivot) put(i, r int, pair pair) bool {
	text := strings.TrimSpace(pair.label.Text)
	h, known := p.heads[strings.ToLower(text)]
	if !known {
		h = len(p.t.Heads)
		p.heads[strings.ToLower(text)] = h
		head := Head{Col: max(pair.value, int(pair.label.Col)), Row: p.s.Rows[i].Number, Text: text, UnitCol: pair.unit}
		if c := cellAt(&p.s.Rows[i], pair.unit); pair.unit > 0 {
			head.Unit = strings.TrimSpace(c.Text)
		}
		p.t.Heads = append(p.t.Heads, head)
		p.t.places = append(p.t.places, nil)
	}
	if p.at(h, r).at > 0 {
		return false
	}
	if pair.value > 0 {
		*p.at(h, r) = place{int32(i) + 1, int32(pair.value)}
	}
	return true
}

// alternate finishes the table; ids is how many rows have a first cell.
func (p *pivot) alternate(ids int) (tables []Table, outside []Furniture, ok bool) {
	t := p.t
	if ids == 0 {
		t.Heads, t.places = t.Heads[1:], t.places[1:]
	} else {
		t.Heads[0].Row = t.Rows[0].Number
	}
	for h := range t.places {
		p.at(h, len(t.Rows)-1)
	}
	t.HeaderRow = t.Rows[0].Number
	cut := 0
	for cut < len(t.Furniture) && t.Furniture[cut].Row < t.HeaderRow {
		cut++
	}
	outside, t.Furniture = t.Furniture[:cut:cut], t.Furniture[cut:]
	t.readHeads()
	t.fillDown(p.finder)
	t.readings()
	mix, results := t.Looks()
	return []Table{*t}, outside, mix+results >= 2
}
