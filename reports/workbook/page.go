package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// page is one sheet. Its rows are gathered and written together, after all that
// is said of the sheet as a whole.
type page struct {
	*book
	name   string
	widths []float64 // of the columns, in characters
	rows   [][]cell
	merged map[int]int // number of a row whose first cell covers so many columns

	headRows, headColumns int         // that stay in sight, and are printed on every page
	pick                  int         // how many rows below the heads can be picked
	frozen, filtered      bool        // the heads stay in sight; the rows below can be picked
	table                 bool        // one table: a column that says nothing is dropped
	upright, middle       bool        // paper on end; cells set in the middle of their height
	decimals              map[int]int // of the columns of aligned numbers
	down                  int         // pages of print, 0 = as many as it takes; across it is always one
}

// cell is a value in its dress: text, a number, a count, yes or no, or nothing.
// formula is ours, never from the log; the value beside it is the one it gives.
type cell struct {
	value   any
	look    look
	formula string
}

// leadsTo is a text that leads to another sheet.
type leadsTo struct{ text, sheet string }

func text(s string) cell    { return cell{value: s, look: wrapped} }
func count(n int) cell      { return cell{value: n, look: whole} }
func in(l look, v any) cell { return cell{value: v, look: l} }

// number is empty where the number does not exist.
func number(v *float64, l look) cell {
	if v == nil {
		return cell{}
	}
	return cell{value: *v, look: l}
}

// sheet starts a sheet with columns of these widths, in characters.
func (b *book) sheet(name string, widths ...float64) *page {
	if b.sheets == 0 {
		b.do(b.f.SetSheetName("Sheet1", name))
	} else {
		_, err := b.f.NewSheet(name)
		b.do(err)
	}
	b.sheets++
	b.do(b.f.SetSheetView(name, 0, &excelize.ViewOptions{ShowGridLines: no()}))
	return &page{book: b, name: name, widths: widths, merged: map[int]int{}}
}

// next is the number of the next row.
func (p *page) next() int { return len(p.rows) + 1 }

func (p *page) add(cells ...cell) { p.rows = append(p.rows, cells) }

// heads adds a row of headers.
func (p *page) heads(names ...string) {
	var row []cell
	for _, n := range names {
		row = append(row, in(head, n))
	}
	p.add(row...)
}

// wide adds a row of one text over so many columns.
func (p *page) wide(columns int, c cell) {
	p.add(c)
	p.merged[len(p.rows)] = columns
}

// height is what the wrapped texts of a row need, 0 for the usual: not every
// spreadsheet works it out when it opens a file.
func (p *page) height(i int) float64 {
	lines, each := 1, 15.0
	for k, c := range p.rows[i] {
		if c.look == tofill || c.look == weigh {
			each = max(each, 28)
		}
		s, ok := c.value.(string)
		if !ok || k >= len(p.widths) || c.look == ordinary {
			continue
		}
		room := p.widths[k] * 1.1 // most letters are narrower than a digit
		if c.look == wrapped {
			room-- // what it is set in by
		}
		if k == 0 && p.merged[i+1] > 0 {
			room = 0
			for _, w := range p.widths[:p.merged[i+1]] {
				room += w * 1.1
			}
		}
		switch c.look {
		case title:
			each, room = 22, room*0.65
		case quiet:
			room *= 1.2
		case lead:
			each, room = 17, room*0.8
		case head, headRight:
			room *= 0.85
		}
		lines = max(lines, linesOf(s, int(room)))
	}
	if lines == 1 && each == 15 {
		return 0
	}
	return min(float64(lines)*each, 400)
}

// linesOf counts the lines of a text broken between words.
func linesOf(s string, room int) int {
	lines := 0
	for _, part := range strings.Split(s, "\n") {
		used := 0
		lines++
		for _, w := range strings.Fields(part) {
			n := utf8.RuneCountInString(w)
			if used > 0 && used+1+n > room {
				lines++
				used = 0
			}
			lines += max(n-1, 0) / max(room, 1)
			used += n + 1
		}
	}
	return lines
}

// dress is the look of a cell; a head stands over numbers as they do.
func (p *page) dress(i, k int) int {
	l := p.rows[i][k].look
	if l == head && p.rows[i][k].value != nil && p.numeric(i+1, k) {
		l = headRight
	}
	if l == aligned {
		l = aligned0 + look(p.decimals[k])
	}
	return p.style(l, p.middle)
}

// numeric says whether the first thing below a head is a number.
func (p *page) numeric(from, k int) bool {
	for _, row := range p.rows[min(from, len(p.rows)):] {
		if k >= len(row) || row[k].value == nil {
			continue
		}
		switch row[k].value.(type) {
		case float64, int:
			return row[k].look != head
		}
		return row[k].look == right
	}
	return false
}

// align counts the decimals that the numbers of each column need, so that their points
// stand under each other.
func (p *page) align() {
	p.decimals = map[int]int{}
	for _, row := range p.rows {
		for k, c := range row {
			v, ok := c.value.(float64)
			if c.look != aligned || !ok || !exists(v) {
				continue
			}
			for p.decimals[k] < 3 && math.Abs(v-math.Round(v*math.Pow10(p.decimals[k]))/math.Pow10(p.decimals[k])) > 1e-9 {
				p.decimals[k]++
			}
		}
	}
}

// freeze keeps the rows so far, and the first columns, in sight.
func (p *page) freeze(columns int) {
	p.headRows, p.headColumns, p.frozen = len(p.rows), columns, true
}

// filter lets so many rows below the last one be sorted and picked; call it when
// the last row is the heads.
func (p *page) filter(rows int) { p.filtered, p.pick = true, rows }

// settle is done when all rows are there: columns that say nothing are dropped, the heads
// stay in sight, the rows can be picked.
func (p *page) settle() {
	if p.table {
		p.dropEmpty()
	}
	p.align()
	if p.frozen {
		pane := "bottomLeft"
		if p.headColumns > 0 {
			pane = "bottomRight"
		}
		p.do(p.f.SetPanes(p.name, &excelize.Panes{Freeze: true, XSplit: p.headColumns, YSplit: p.headRows,
			TopLeftCell: place(p.headColumns, p.headRows+1), ActivePane: pane}))
	}
	if p.filtered {
		p.do(p.f.AutoFilter(p.name, place(0, p.headRows)+":"+place(len(p.rows[p.headRows-1])-1, p.headRows+max(p.pick, 1)), nil))
	}
}

// dropEmpty takes out the columns that no row below the heads fills.
func (p *page) dropEmpty() {
	if len(p.rows) == p.headRows {
		return
	}
	for k := len(p.rows[p.headRows-1]) - 1; k > 0; k-- {
		if slices.ContainsFunc(p.rows[p.headRows:], func(row []cell) bool { return k < len(row) && row[k].value != nil && row[k].value != "" }) {
			continue
		}
		for i := range p.rows {
			if k < len(p.rows[i]) {
				p.rows[i] = slices.Delete(p.rows[i], k, k+1)
			}
		}
		if k < len(p.widths) {
			p.widths = slices.Delete(p.widths, k, k+1)
		}
		if k < p.headColumns {
			p.headColumns--
		}
	}
}

// widen gives every column its width, or what its longest number, or text on one line,
// takes if that is more.
func (p *page) widen() {
	const usual, most, number = 9, 44, 18
	for i, row := range p.rows {
		for k, c := range row {
			for len(p.widths) <= k {
				p.widths = append(p.widths, usual)
			}
			need := 0
			switch v := c.value.(type) {
			case string:
				if c.look == ordinary && len(row) > 1 && p.merged[i+1] == 0 { // a row of one text may run on
					need = utf8.RuneCountInString(v) + 2
				}
			case float64:
				if c.look == precise && exists(v) {
					need = min(len(strconv.FormatFloat(v, 'f', 6, 64))+2, number)
				}
			}
			p.widths[k] = max(p.widths[k], min(float64(need), most))
		}
	}
	for k, w := range p.widths {
		p.do(p.f.SetColWidth(p.name, column(k), column(k), w))
	}
}

// print lays the sheet out for paper: on the width of a page, the heads on each. It comes
// after the filter, which drops what is said of a sheet.
func (p *page) print() {
	across := 1
	way, fit := "landscape", true
	if p.upright {
		way = "portrait"
	}
	p.do(p.f.SetPageLayout(p.name, &excelize.PageLayoutOptions{Orientation: &way, FitToWidth: &across, FitToHeight: &p.down}))
	p.do(p.f.SetSheetProps(p.name, &excelize.SheetPropsOptions{FitToPage: &fit}))
	side, top, foot := 0.4, 0.5, 0.3 // inches
	p.do(p.f.SetPageMargins(p.name, &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side, Top: &top, Bottom: &top, Header: &foot, Footer: &foot}))
	p.do(p.f.SetHeaderFooter(p.name, &excelize.HeaderFooterOptions{OddFooter: "&L&A&Rpage &P of &N"}))
	var heads []string
	if n := p.headRows; n > 0 {
		heads = append(heads, fmt.Sprintf("'%s'!$1:$%d", p.name, n))
	}
	if len(heads) > 0 {
		p.do(p.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: strings.Join(heads, ","), Scope: p.name}))
	}
}

// write puts the rows on the sheet with every digit of their numbers.
func (p *page) write() {
	p.settle()
	p.widen()
	p.print()
	for i, row := range p.rows {
		for k, c := range row {
			at := place(k, i+1)
			switch v := c.value.(type) {
			case nil:
			case string:
				p.do(p.f.SetCellStr(p.name, at, plain(v)))
			case leadsTo:
				p.do(p.f.SetCellStr(p.name, at, plain(v.text)))
				p.do(p.f.SetCellHyperLink(p.name, at, "'"+v.sheet+"'!A1", "Location"))
			case float64:
				if exists(v) {
					p.do(p.f.SetCellDefault(p.name, at, strconv.FormatFloat(clean(v), 'g', -1, 64)))
				}
			case int:
				p.do(p.f.SetCellInt(p.name, at, int64(v)))
			case bool:
				p.do(p.f.SetCellStr(p.name, at, yesNo(v)))
			default:
				panic(fmt.Sprintf("workbook: a cell of %T", v))
			}
			p.do(p.f.SetCellStyle(p.name, at, at, p.dress(i, k)))
		}
		if n := p.merged[i+1]; n > 1 {
			p.do(p.f.MergeCell(p.name, place(0, i+1), place(n-1, i+1)))
		}
		if h := p.height(i); h > 0 {
			p.do(p.f.SetRowHeight(p.name, i+1, h))
		}
	}
}

// stream writes the rows as one stream: quick for many of them, and the only way
// to give a formula a number as its value. The library keeps 15 digits of a
// number here.
func (p *page) stream() {
	p.settle()
	p.widen()
	p.print()
	w, err := p.f.NewStreamWriter(p.name)
	if err != nil {
		p.do(err)
		return
	}
	for i, row := range p.rows {
		out := make([]any, len(row))
		for k, c := range row {
			v := c.value
			switch t := v.(type) {
			case string:
				v = plain(t)
			case float64:
				if v = clean(t); !exists(t) {
					v = nil
				}
			case bool:
				v = yesNo(t)
			}
			out[k] = excelize.Cell{StyleID: p.dress(i, k), Formula: c.formula, Value: v}
		}
		if err := w.SetRow(place(0, i+1), out, excelize.RowOpts{Height: p.height(i)}); err != nil {
			p.do(err)
			return
		}
	}
	for i := range p.rows {
		if n := p.merged[i+1]; n > 1 {
			p.do(w.MergeCell(place(0, i+1), place(n-1, i+1)))
		}
	}
	p.do(w.Flush())
}

// exists is false for what no cell can hold: it stays empty.
// clean drops what arithmetic leaves behind the last digit that counts: 299.999999999999 is 300.
func clean(v float64) float64 {
	whole, short := strconv.FormatFloat(v, 'g', -1, 64), strconv.FormatFloat(v, 'g', 12, 64)
	if c, err := strconv.ParseFloat(short, 64); err == nil && len(strconv.FormatFloat(c, 'g', -1, 64))+noise <= len(whole) {
		return c
	}
	return v
}

// noise is so many digits that a number loses when it is cut to twelve of them, that they
// were none of its own.
const noise = 6

func exists(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
