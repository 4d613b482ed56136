package taken

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
)

// fetched is a cell with the rows of another sheet that its formula takes.
type fetched struct {
	cell handin.Cell
	own  string // what its own row is called
	from *page
	rows []int
}

// otherRows finds formulas that fetch the rows of another sheet which are called otherwise than
// their own row, or not all that are called so, where the other formulas of the column do.
func (b *book) otherRows() (out []finding.Found) {
	type column struct {
		on  string
		col int
	}
	columns := map[column][]fetched{}
	var order []column
	for _, c := range b.cells {
		f, ok := b.fetch(c)
		if !ok {
			continue
		}
		k := column{c.At.Sheet, c.At.Col}
		if columns[k] == nil {
			order = append(order, k)
		}
		columns[k] = append(columns[k], f)
	}
	for _, k := range order {
		out = append(out, b.judged(columns[k])...)
	}
	return out
}

// fetch is what a formula takes from one other sheet.
func (b *book) fetch(c handin.Cell) (f fetched, ok bool) {
	home := b.pages[c.At.Sheet]
	f = fetched{cell: c, own: home.key(c.At.Row)}
	for _, s := range spansOf(c.Formula, c.At.Sheet) {
		p := b.pages[s.on]
		if s.on == c.At.Sheet || s.fixed || p == nil {
			continue
		}
		if f.from != nil && f.from != p {
			return f, false
		}
		f.from = p
		for row := s.row; row <= s.row2; row++ {
			f.rows = append(f.rows, row)
		}
	}
	return f, len(f.rows) > 0 && f.own != "" && home.first[c.At.Row] != c.At.Col
}

// called are the rows of a page that have one name.
func (p *page) called(name string) (out []int) {
	for row := range p.first {
		if p.key(row) == name {
			out = append(out, row)
		}
	}
	slices.Sort(out)
	return out
}

// judged holds the formulas of one column against each other.
func (b *book) judged(column []fetched) (out []finding.Found) {
	right, all := 0, 0 // with a row of their own name; and with every one of several
	var off []fetched
	for _, f := range column {
		named := f.from.called(f.own)
		switch {
		case len(named) == 0:
		case !slices.ContainsFunc(f.rows, func(row int) bool { return slices.Contains(named, row) }):
			off = append(off, f)
		case len(named) > 1 && slices.Equal(f.rows, named):
			right, all = right+1, all+1
		default:
			right++
		}
	}
	if right >= 2 && 2*len(off) < right {
		for _, f := range off {
			names := strings.Join(f.names(), ", ")
			words := fmt.Sprintf("The formula =%s takes the row of %s, and its own row is of %s.", f.cell.Formula, names, say.Quoted(f.own))
			out = append(out, b.fetchedOf(f, words).Unless(right < 3))
		}
	}
	if all < 2 || all < right-1 {
		return out
	}
	for _, f := range column {
		named := f.from.called(f.own)
		if len(named) < 2 || slices.Equal(f.rows, named) || slices.ContainsFunc(off, func(o fetched) bool { return o.cell.At == f.cell.At }) {
			continue
		}
		words := fmt.Sprintf("The formula =%s takes %d rows, and %d are of %s: %d to %d.", f.cell.Formula, len(f.rows), len(named), say.Quoted(f.own), named[0], named[len(named)-1])
		out = append(out, b.fetchedOf(f, words).Surely())
	}
	return out
}

// names are what the rows are called that a formula fetches.
func (f fetched) names() (out []string) {
	for _, row := range f.rows {
		if name := say.Quoted(f.from.key(row)); !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// fetchedOf is such a finding, with what the right rows give where that is one function of them.
func (b *book) fetchedOf(f fetched, words string) finding.Found {
	found := finding.Of(criteria.Means, graded.Calculation, words, f.cell).Kinds("rows of another")
	_, of, args := statisticOf(f.cell.Formula)
	spans := spansOf(args, f.cell.At.Sheet)
	if of == nil || len(spans) != 1 {
		return found
	}
	var xs []float64
	for _, row := range f.from.called(f.own) {
		if v, ok := f.from.number(row, spans[0].col); ok {
			xs = append(xs, v)
		}
	}
	if len(xs) == 0 {
		return found
	}
	found.Words += fmt.Sprintf(" These give %s.", verdict.DigitsOf(of(xs), 2))
	return found.ShouldBe(of(xs))
}
