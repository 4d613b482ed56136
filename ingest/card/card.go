// Package card finds cards: sheets whose variables run down and whose trials
// run across, also several below or beside each other.
package card

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
)

// A card is small: sheets with more rows are not looked at as cards.
const (
	CardRows   = 400
	cardLabels = 4 // the label column is one of the first few
)

// block is the columns of a card or of several below each other: labels, units
// perhaps, then values.
type block struct {
	from, to      int // the columns it owns, both ends included
	labels, units int // units is 0 without a column of units beside the labels
}

func (b block) values() int { return max(b.labels, b.units) + 1 }

// cards finds the cards of a sheet.
type cards struct {
	*look.Reader
	lists map[int]bool // places of rows that list what was used
}

// card is one while it is read.
type card struct{ grid.Table }

// Find reads a sheet whose variables run down and whose trials run across.
// ok is false when the sheet is no card.
func Find(r *look.Reader) (tables []grid.Table, outside []grid.Furniture, ok bool) {
	f := cards{r, listsIn(r)}
	if len(f.Sheet.Rows) > CardRows {
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
	var dealt []card
	if len(blocks) == 1 {
		dealt, outside = f.deal(blocks[0])
		f.ownRows(dealt, blocks[0])
	} else {
		dealt, outside = f.dealSideBySide(blocks)
	}
	for i := range dealt {
		t := &dealt[i].Table
		t.ReadHeads()
		t.FillDown(r)
		t.Readings()
		tables = append(tables, *t)
	}
	return tables, outside, len(tables) > 0
}

// labelled is the different header words in a column whose rows have something
// to the right; nil when other texts are more or nothing is a number.
func (f cards) labelled(col int) map[string]bool {
	seen := map[string]bool{}
	all, labels, numbers := 0, 0, 0
	for i := range f.Sheet.Rows {
		c := look.CellAt(&f.Sheet.Rows[i], col)
		if look.Empty(&c) || f.lists[i] {
			continue
		}
		right := look.Between(f.Sheet.Rows[i].Cells, col+1, look.LastColumn)
		if c.Kind == sheet.Text && look.Filled(right) == 0 && len(strings.Fields(c.Text)) > 3 {
			continue // a title or a sentence is no label
		}
		all++
		if c.Kind != sheet.Text {
			continue
		}
		if m := f.Read(c.Text); m.Role != column.None && look.Filled(right) > 0 {
			labels++
			seen[fmt.Sprint(m.Role, m.Ingredient, m.AtMinute, m.Unit, m.Else)] = true
			if look.TakesNumbers(m.Role) && f.Look(right).Values > 0 {
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
func (f cards) across() int {
	most := 0
	for i := 0; i < len(f.Sheet.Rows) && i < look.HuntRows; i++ {
		cells := f.Sheet.Rows[i].Cells
		if !f.Look(cells).Header() {
			continue
		}
		n := 0
		for k := range cells {
			if c := &cells[k]; c.Kind == sheet.Text && f.Read(c.Text).Role != column.None {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// blocks cuts the sheet's columns into cards side by side: one more begins at
// each column that has most of the first one's labels again.
func (f cards) blocks(labels int) []block {
	last := 0
	for i := range f.Sheet.Rows {
		if cells := f.Sheet.Rows[i].Cells; len(cells) > 0 {
			last = max(last, int(cells[len(cells)-1].Col))
		}
	}
	first := f.labelled(labels)
	blocks := []block{{from: 1, labels: labels}}
	for col := labels + 2; col < min(last, labels+look.MaxMerged); col++ {
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
	blocks[len(blocks)-1].to = f.besides(blocks[len(blocks)-1].labels, last)
	for i := range blocks {
		blocks[i].units = f.unitColumn(blocks[i])
	}
	return blocks
}

// besides is the last column of the cards whose labels stand in a column: right of an empty one may begin
// a list or lines of the whole work, "my list | fat % | HLB", whose first column is words.
func (f cards) besides(labels, last int) int {
	filled := func(col int) (n, words int) {
		for i := range f.Sheet.Rows {
			c := look.CellAt(&f.Sheet.Rows[i], col)
			if look.Empty(&c) {
				continue
			}
			n++
			if r := []rune(strings.TrimSpace(c.Text)); c.Kind == sheet.Text && len(r) > 2 && unicode.IsLetter(r[0]) {
				words++
			}
		}
		return n, words
	}
	for col := labels + 3; col < last; col++ {
		if before, _ := filled(col - 1); before > 0 {
			continue
		}
		if n, words := filled(col); words >= 4 && words == n {
			return col - 1
		}
	}
	return look.LastColumn
}

// dealer deals the cards of one block, walking down its rows.
type dealer struct {
	cards
	block
	dealt      []card
	outside    []grid.Furniture
	section    []grid.Furniture // titles met before the first label of a card
	group      string           // what stands above or left of several labels
	firstLabel string
	opens      string // the label with which every card begins, "" where none comes again
	pending    int    // index of the row of trials above a card, -1 = none
}

// deal reads the cards of a block; a new one starts where the first label
// comes again.
func (f cards) deal(b block) (dealt []card, outside []grid.Furniture) {
	d := dealer{cards: f, block: b, pending: -1, opens: f.opening(b)}
	for i := range f.Sheet.Rows {
		d.row(i)
	}
	if len(d.dealt) == 0 {
		return nil, nil
	}
	last := &d.dealt[len(d.dealt)-1]
	last.Furniture = append(last.Furniture, d.section...)
	for i := range d.dealt {
		lines := d.dealt[i].setApart(f, b)
		if i == 0 {
			above := func(l grid.Furniture) bool { return l.Row < d.dealt[i].HeaderRow }
			for _, l := range lines {
				if above(l) {
					d.outside = append(d.outside, l)
				}
			}
			lines = slices.DeleteFunc(lines, above)
		}
		d.dealt[i].Furniture = append(d.dealt[i].Furniture, lines...)
		d.dealt[i].acrossRows(f.Reader, b)
	}
	f.nameByTitles(d.dealt, b)
	return d.dealt, d.outside
}

// opening is the first label that comes again, where most labels below it do: what stands
// above it, a name and a day, is of all cards.
func (f cards) opening(b block) string {
	var order []string
	count := map[string]int{}
	for i := range f.Sheet.Rows {
		c := look.CellAt(&f.Sheet.Rows[i], b.labels)
		if text := strings.ToLower(strings.TrimSpace(c.Text)); c.Kind == sheet.Text && f.Read(c.Text).Role != column.None {
			if count[text]++; count[text] == 1 {
				order = append(order, text)
			}
		}
	}
	again := 0
	for _, text := range order {
		if count[text] > 1 {
			again++
		}
	}
	if again < 4 || 2*again < len(order) {
		return ""
	}
	return order[slices.IndexFunc(order, func(text string) bool { return count[text] > 1 })]
}

func (d *dealer) row(i int) {
	row := &d.Sheet.Rows[i]
	cells := look.Between(row.Cells, d.from, d.to)
	label := look.CellAt(row, d.labels)
	right := look.Between(cells, d.values(), d.to)
	text := strings.TrimSpace(d.Sheet.Display(label))
	known := label.Kind == sheet.Text && d.Read(text).Role != column.None
	begun := len(d.dealt) > 0
	labelled := known && begun && !column.IsGroup(text)
	if look.Filled(cells) == 0 {
		d.section = append(d.section, grid.Furniture{Row: row.Number, Kind: grid.Blank})
		return
	}
	switch {
	case d.lists[i]:
		d.section = append(d.section, grid.Furniture{Row: row.Number, Kind: grid.Title})
	case d.opens != "" && !begun && !strings.EqualFold(text, d.opens):
		d.section = append(d.section, grid.Furniture{Row: row.Number, Kind: grid.Title})
	case look.Filled(right) == 0 && !(labelled && d.inCard(i)):
		d.section = append(d.section, grid.Furniture{Row: row.Number, Kind: grid.Title})
		if d.group = text; strings.HasSuffix(text, ".") || len(strings.Fields(text)) > 8 || saysWhen(text) {
			d.group = "" // a sentence is no title of what follows, nor who did it when
		}
	case !known && !begun && d.nextIsLabel(i) && (text == "" || d.numberTrials(right)):
		d.trialsIn(i)
	case !known && !begun:
		d.section = append(d.section, grid.Furniture{Row: row.Number, Kind: grid.Title})
	default:
		d.line(row, text, cells, known)
	}
}

// line puts a row into the open card, or into a new one at the first label.
func (d *dealer) line(row *sheet.Row, text string, cells []sheet.Cell, known bool) {
	if len(d.dealt) == 0 || known && strings.EqualFold(text, d.firstLabel) {
		d.begin(row.Number, text)
	}
	d.head(row, text, cells)
}

// numberTrials reports cells right of a title that number the trials below it: "Butter foam |
// T1 | T2 | T3 | average".
func (d *dealer) numberTrials(cells []sheet.Cell) bool {
	seen := map[string]bool{}
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) {
			continue
		}
		text := strings.ToLower(strings.TrimSpace(d.Sheet.Display(*c)))
		_, goal := look.IsGoal(text)
		if _, sums := look.Summary(text); sums || goal {
			continue
		}
		if seen[text] || len(text) > 6 || !look.IsShortID(text) || look.IsUnit(text) || c.Kind == sheet.Number && c.Number != float64(len(seen)+1) || c.Kind != sheet.Number && c.Kind != sheet.Text {
			return false
		}
		seen[text] = true
	}
	return len(seen) >= 2
}

// trialsIn notes that row i names the trials of a card that begins below it.
func (d *dealer) trialsIn(i int) {
	if d.pending >= 0 { // the label it stood above came to nothing
		d.section = append(d.section, grid.Furniture{Row: d.Sheet.Rows[d.pending].Number, Kind: grid.Title})
		slices.SortFunc(d.section, func(a, b grid.Furniture) int { return a.Row - b.Row })
	}
	d.pending = i
}

// begin opens a card whose first label stands in a row.
func (d *dealer) begin(number int, label string) {
	if len(d.dealt) > 0 {
		d.group = ""
	} else {
		d.outside, d.section = append(d.outside, d.section...), nil
	}
	t := card{grid.Table{Sheet: d.Sheet, HeaderRow: number, Transposed: true}}
	d.firstLabel = label
	if d.pending >= 0 {
		above := d.Sheet.Rows[d.pending].Number
		t.Heads = append(t.Heads, grid.Head{Col: d.labels, Row: above, Text: "trial"})
		t.HeaderRow = above
	}
	d.pending = -1
	d.dealt = append(d.dealt, t)
}

// head adds a row of the sheet to the open card.
func (d *dealer) head(row *sheet.Row, text string, cells []sheet.Cell) {
	t := &d.dealt[len(d.dealt)-1]
	t.Furniture, d.section = append(t.Furniture, d.section...), nil
	head := grid.Head{Col: d.labels, Row: row.Number, Text: text, Hidden: row.Hidden}
	for k := range cells { // a group may stand left of the labels
		if c := &cells[k]; int(c.Col) < d.labels && c.Kind == sheet.Text && !look.Empty(c) {
			d.group = strings.TrimSpace(c.Text)
			break
		}
	}
	if d.group != "" && text != "" {
		head.Text = d.group + " / " + text
	}
	if d.units > 0 {
		if u := look.CellAt(row, d.units); u.Kind == sheet.Text {
			head.Unit = strings.TrimSpace(u.Text)
		}
	}
	t.Heads = append(t.Heads, head)
}

// inCard reports whether a label without values stands among labels with some.
func (d *dealer) inCard(i int) bool {
	for _, j := range []int{i - 1, i + 1} {
		if j < 0 || j >= len(d.Sheet.Rows) {
			continue
		}
		if look.Filled(look.Between(d.Sheet.Rows[j].Cells, d.labels+1, d.to)) > 0 {
			return true
		}
	}
	return false
}

func (d *dealer) nextIsLabel(i int) bool {
	if i+1 >= len(d.Sheet.Rows) {
		return false
	}
	c := look.CellAt(&d.Sheet.Rows[i+1], d.labels)
	return c.Kind == sheet.Text && d.Read(c.Text).Role != column.None
}

// unitColumn is the column right of the labels if it holds units, else 0.
func (f cards) unitColumn(b block) int {
	cells := make([]sheet.Cell, len(f.Sheet.Rows))
	for i := range cells {
		cells[i] = look.CellAt(&f.Sheet.Rows[i], b.labels+1)
	}
	if b.labels < b.to && look.AreUnits(cells) {
		return b.labels + 1
	}
	return 0
}

// saysWhen reports a title of several words with a year: "Foam practical, A. Lee, 3 May 2026".
func saysWhen(text string) bool {
	return len(strings.Fields(text)) > 3 && aYear.MatchString(text)
}

var aYear = pattern.Of(`\b20\d\d\b`)
