package layout

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// A card is small: sheets with more rows are not looked at as cards.
const (
	cardRows   = 400
	cardLabels = 4 // the label column is one of the first few
)

// block is the columns of a card or of several below each other: labels, units
// perhaps, then values.
type block struct {
	from, to      int // the columns it owns, both ends included
	labels, units int // units is 0 without a column of units beside the labels
}

func (b block) values() int { return max(b.labels, b.units) + 1 }

// cards reads a sheet whose variables run down and whose trials run across.
// ok is false when the sheet is no card.
func (f *finder) cards() (tables []Table, outside []Furniture, ok bool) {
	if len(f.s.Rows) > cardRows {
		return nil, nil, false
	}
	labels, down := 0, 0
	for col := 1; col <= cardLabels; col++ {
		if n := len(f.labelled(col)); n > down {
			labels, down = col, n
		}
	}
	if down < 4 || down <= f.across() {
		return nil, nil, false
	}
	blocks := f.blocks(labels)
	if len(blocks) == 1 {
		if tables, outside = f.deal(blocks[0]); tables == nil {
			return nil, nil, false
		}
	} else if tables, outside = f.dealSideBySide(blocks); tables == nil {
		return nil, nil, false
	}
	for i := range tables {
		tables[i].readHeads()
		tables[i].fillDown(f)
		tables[i].readings()
	}
	return tables, outside, true
}

// labelled is the different header words in a column whose rows have something
// to the right; nil when other texts are more or nothing is a number.
func (f *finder) labelled(col int) map[string]bool {
	seen := map[string]bool{}
	all, labels, numbers := 0, 0, 0
	for i := range f.s.Rows {
		c := cellAt(&f.s.Rows[i], col)
		if empty(&c) {
			continue
		}
		all++
		if c.Kind != sheet.Text {
			continue
		}
		right := between(f.s.Rows[i].Cells, col+1, lastColumn)
		if m := f.read(c.Text); m.Role != column.None && filledCells(right) > 0 {
			labels++
			seen[fmt.Sprint(m.Role, m.Ingredient, m.AtMinute, m.Unit, m.Else)] = true
			if takesNumbers(m.Role) && f.look(right).values > 0 {
				numbers++
			}
		}
	}
	if labels*2 < all || numbers < 2 {
		return nil
	}
	return seen
}

// across is the most header words in one row that can be a header.
func (f *finder) across() int {
	most := 0
	for i := 0; i < len(f.s.Rows) && i < huntRows; i++ {
		cells := f.s.Rows[i].Cells
		if !f.look(cells).header() {
			continue
		}
		n := 0
		for k := range cells {
			if c := &cells[k]; c.Kind == sheet.Text && f.read(c.Text).Role != column.None {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// blocks cuts the sheet's columns into cards side by side: one more begins at
// each column that has most of the first one's labels again.
func (f *finder) blocks(labels int) []block {
	last := 0
	for i := range f.s.Rows {
		if cells := f.s.Rows[i].Cells; len(cells) > 0 {
			last = max(last, int(cells[len(cells)-1].Col))
		}
	}
	first := f.labelled(labels)
	blocks := []block{{from: 1, labels: labels}}
	for col := labels + 2; col < min(last, labels+maxMerged); col++ {
		same := 0
		for what := range f.labelled(col) {
			if first[what] {
				same++
			}
		}
		if same >= 3 && same*2 >= len(first) {
			blocks[len(blocks)-1].to = col - 1
			blocks = append(blocks, block{from: col, labels: col})
			col++
		}
	}
	blocks[len(blocks)-1].to = lastColumn
	for i := range blocks {
		blocks[i].units = f.unitColumn(blocks[i])
	}
	return blocks
}

// dealer deals the cards of one block, walking down its rows.
type dealer struct {
	*finder
	block
	cards      []Table
	outside    []Furniture
	section    []Furniture // titles met before the first label of a card
	group      string      // what stands above or left of several labels
	firstLabel string
	pending    int // index of the row of trials above a card, -1 = none
}

// deal reads the cards of a block; a new one starts where the first label
// comes again.
func (f *finder) deal(b block) (tables []Table, outside []Furniture) {
	d := dealer{finder: f, block: b, pending: -1}
	for i := range f.s.Rows {
		d.row(i)
	}
	if len(d.cards) == 0 {
		return nil, nil
	}
	last := &d.cards[len(d.cards)-1]
	last.Furniture = append(last.Furniture, d.section...)
	for i := range d.cards {
		d.cards[i].acrossRows(f, b)
	}
	return d.cards, d.outside
}

func (d *dealer) row(i int) {
	row := &d.s.Rows[i]
	cells := between(row.Cells, d.from, d.to)
	label := cellAt(row, d.labels)
	right := between(cells, d.values(), d.to)
	text := strings.TrimSpace(d.s.Display(label))
	known := label.Kind == sheet.Text && d.read(text).Role != column.None
	begun := len(d.cards) > 0
	labelled := known && begun && !column.IsGroup(text)
	if filledCells(cells) == 0 {
		d.section = append(d.section, Furniture{Row: row.Number, Kind: Blank})
		return
	}
	switch {
	case filledCells(right) == 0 && !(labelled && d.inCard(i)):
		d.section = append(d.section, Furniture{Row: row.Number, Kind: Title})
		d.group = text
	case text == "" && !begun && d.nextIsLabel(i):
		d.trialsIn(i)
	case !known && !begun:
		d.section = append(d.section, Furniture{Row: row.Number, Kind: Title})
	default:
		d.line(row, text, cells, known)
	}
}

// line puts a row into the open card, or into a new one at the first label.
func (d *dealer) line(row *sheet.Row, text string, cells []sheet.Cell, known bool) {
	if len(d.cards) == 0 || known && strings.EqualFold(text, d.firstLabel) {
		d.begin(row.Number, text)
	}
	d.head(row, text, cells)
}

// trialsIn notes that row i names the trials of a card that begins below it.
func (d *dealer) trialsIn(i int) {
	if d.pending >= 0 { // the label it stood above came to nothing
		d.section = append(d.section, Furniture{Row: d.s.Rows[d.pending].Number, Kind: Title})
		slices.SortFunc(d.section, func(a, b Furniture) int { return a.Row - b.Row })
	}
	d.pending = i
}

// begin opens a card whose first label stands in a row.
func (d *dealer) begin(number int, label string) {
	if len(d.cards) > 0 {
		d.group = ""
	} else {
		d.outside, d.section = append(d.outside, d.section...), nil
	}
	t := Table{Sheet: d.s, HeaderRow: number, Transposed: true, labels: d.labels}
	d.firstLabel = label
	if d.pending >= 0 {
		above := d.s.Rows[d.pending].Number
		t.Heads = append(t.Heads, Head{Col: d.labels, Row: above, Text: "trial"})
		t.HeaderRow = above
	}
	d.pending = -1
	d.cards = append(d.cards, t)
}

// head adds a row of the sheet to the open card.
func (d *dealer) head(row *sheet.Row, text string, cells []sheet.Cell) {
	t := &d.cards[len(d.cards)-1]
	t.Furniture, d.section = append(t.Furniture, d.section...), nil
	head := Head{Col: d.labels, Row: row.Number, Text: text, Hidden: row.Hidden}
	for k := range cells { // a group may stand left of the labels
		if c := &cells[k]; int(c.Col) < d.labels && c.Kind == sheet.Text && !empty(c) {
			d.group = strings.TrimSpace(c.Text)
			break
		}
	}
	if d.group != "" && text != "" {
		head.Text = d.group + " / " + text
	}
	if d.units > 0 {
		if u := cellAt(row, d.units); u.Kind == sheet.Text {
			head.Unit = strings.TrimSpace(u.Text)
		}
	}
	t.Heads = append(t.Heads, head)
}

// inCard reports whether a label without values stands among labels with some.
func (d *dealer) inCard(i int) bool {
	for _, j := range []int{i - 1, i + 1} {
		if j < 0 || j >= len(d.s.Rows) {
			continue
		}
		if filledCells(between(d.s.Rows[j].Cells, d.labels+1, d.to)) > 0 {
			return true
		}
	}
	return false
}

func (d *dealer) nextIsLabel(i int) bool {
	if i+1 >= len(d.s.Rows) {
		return false
	}
	c := cellAt(&d.s.Rows[i+1], d.labels)
	return c.Kind == sheet.Text && d.read(c.Text).Role != column.None
}

// unitColumn is the column right of the labels if it holds units, else 0.
func (f *finder) unitColumn(b block) int {
	cells := make([]sheet.Cell, len(f.s.Rows))
	for i := range cells {
		cells[i] = cellAt(&f.s.Rows[i], b.labels+1)
	}
	if b.labels < b.to && areUnits(cells) {
		return b.labels + 1
	}
	return 0
}

// areUnits reports whether most filled cells are units.
func areUnits(cells []sheet.Cell) bool {
	units, all := 0, 0
	for i := range cells {
		if c := &cells[i]; !empty(c) {
			all++
			if c.Kind == sheet.Text && isUnit(c.Text) {
				units++
			}
		}
	}
	return units >= 2 && units*10 >= all*6
}
