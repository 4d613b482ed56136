package sheet

import (
	"errors"
	"fmt"

	"foamfield/ingest/cellname"
	"foamfield/ingest/markup"
)

// partReader fills a Sheet from the XML of its part, one token at a time.
//
// Elements are known by local name and depth (worksheet, sheetData, row, c,
// then v, f or is), whatever namespace prefix or variant the file uses.
type partReader struct {
	*markup.Reader
	book  *bookReader
	sheet *Sheet

	block    block
	row      Row // Number is 0 between rows
	cells    arena
	unsorted bool // rows or cells came out of order or twice
	cut      bool // cells beyond the last column were met
	lastRow  int
	lastCol  int
	hidden   []bool // by column

	cell     Cell // Col is 0 between cells
	cellType cellType
	inline   bool   // the content stands in is, not in v
	hasValue bool   // v or is was there at all
	inText   bool   // text now read is content
	content  []byte // of the cell
	runs     runs   // of an inline text
	struck   bool   // some cell is struck out
	fill     uint16 // of the cell, an index of the book's colours

	words map[string]string
}

// block is the child of worksheet being read.
type block uint8

const (
	otherBlock block = iota
	dataBlock
	colsBlock
	mergeBlock
)

var blocks = map[string]block{"sheetData": dataBlock, "cols": colsBlock, "mergeCells": mergeBlock}

// Depths at which a sheet part's elements stand.
const (
	blockDepth = 2
	rowDepth   = 3
	cellDepth  = 4
	fieldDepth = 5
)

// maxMerged bounds the merged ranges kept.
const maxMerged = 100_000

func newPartReader(m *markup.Reader, book *bookReader, s *Sheet) *partReader {
	return &partReader{
		Reader: m, book: book, sheet: s,
		hidden: make([]bool, book.limit.cols+1),
		words:  map[string]string{},
	}
}

// read fills the sheet. Damage goes to its Faults and what was read before it
// stays; the only error is a *Refusal.
func (p *partReader) read() error {
	err := p.tokens()
	var refusal *Refusal
	if errors.As(err, &refusal) {
		return refusal
	}
	if err != nil {
		p.endRow() // with the cells that were complete
	}
	p.settle()
	if err != nil {
		p.sheet.Truncated = true
		p.sheet.damaged(0, 0, fmt.Sprintf("the sheet ends early: it cannot be read past row %d because %s", p.lastRow, brokenBecause(err)))
	}
	return nil
}

// brokenBecause words what stopped the reading of a part.
func brokenBecause(err error) string {
	var m markup.Malformed
	if errors.As(err, &m) {
		return string(m)
	}
	return "the file is damaged there"
}

func (p *partReader) tokens() error {
	for {
		t, err := p.Next()
		if err != nil {
			return err
		}
		switch t {
		case markup.Text:
			if p.inText {
				p.content = append(p.content, p.Text...)
			}
		case markup.Start:
			if err := p.start(); err != nil {
				return err
			}
		case markup.End:
			if err := p.end(); err != nil {
				return err
			}
		case markup.Done:
			return nil
		}
	}
}

func (p *partReader) start() error {
	p.inText = false
	switch p.Depth() {
	case blockDepth:
		p.block = blocks[string(p.Local)]
	case rowDepth:
		return p.startEntry()
	case cellDepth:
		if p.row.Number > 0 && string(p.Local) == "c" {
			p.startCell()
		}
	case fieldDepth:
		if p.cell.Col > 0 {
			p.startField()
		}
	default:
		p.inText = p.cell.Col > 0 && p.IsOpen(fieldDepth, "is") && p.runs.start(p.Reader, fieldDepth, len(p.content))
	}
	return nil
}

// startEntry begins what a block is a list of.
func (p *partReader) startEntry() error {
	switch {
	case p.block == dataBlock && string(p.Local) == "row":
		return p.startRow()
	case p.block == colsBlock && string(p.Local) == "col":
		p.readColumns()
	case p.block == mergeBlock && string(p.Local) == "mergeCell":
		p.readMerge()
	}
	return nil
}

func (p *partReader) end() error {
	p.inText = false
	switch p.Depth() + 1 { // of the element that ended
	case rowDepth:
		p.endRow()
	case cellDepth:
		if p.cell.Col > 0 {
			return p.endCell()
		}
	}
	return nil
}

func (p *partReader) startRow() error {
	number := p.lastRow + 1
	var hidden, flat, custom bool
	for _, a := range p.Attrs {
		switch string(a.Name) {
		case "r":
			if n, ok := wholeNumber(p.Value(a)); ok && n > 0 {
				number = n
			} else {
				p.sheet.damaged(number, 0, "a row's number cannot be read; it is taken for the one after the row before")
			}
		case "hidden":
			hidden = isTrue(p.Value(a))
		case "ht":
			flat = isZero(p.Value(a))
		case "customHeight":
			custom = isTrue(p.Value(a))
		}
	}
	if number > p.book.limit.rows {
		return tooManyRows(p.book.limit)
	}
	if number <= p.lastRow {
		p.unsorted = true
		p.sheet.damaged(number, 0, fmt.Sprintf("row %d stands after row %d in the file", number, p.lastRow))
	}
	p.row = Row{Number: number, Hidden: hidden || flat && custom}
	p.lastRow, p.lastCol = number, 0
	return nil
}

func (p *partReader) endRow() {
	if p.row.Cells = p.cells.take(); len(p.row.Cells) > 0 {
		p.sheet.Rows = append(p.sheet.Rows, p.row)
	}
	p.row = Row{}
}

func (p *partReader) startCell() {
	col := p.lastCol + 1
	p.cell = Cell{}
	p.cellType = numberType
	p.inline, p.hasValue = false, false
	p.content = p.content[:0]
	p.runs.reset()
	for _, a := range p.Attrs {
		switch string(a.Name) {
		case "r":
			v := p.Value(a)
			row, c, ok := address(v)
			switch {
			case !ok:
				p.sheet.damaged(p.row.Number, col, "a cell's address cannot be read; it is taken for the cell after the one before")
			case row != p.row.Number:
				p.sheet.damaged(p.row.Number, c, fmt.Sprintf("a cell calls itself %s but stands in row %d", v, p.row.Number))
				col = c
			default:
				col = c
			}
		case "s":
			n, ok := wholeNumber(p.Value(a))
			if !ok || n >= len(p.book.styles) && n > 0 {
				p.book.strayStyle(p.sheet, p.row.Number, col)
				break
			}
			if n < len(p.book.styles) {
				p.cell.Style = p.book.styles[n]
				if p.book.struck[n] {
					p.cell.Flags |= Struck
				}
				if n < len(p.book.fills) {
					p.fill = p.book.fills[n]
				}
			}
		case "t":
			var ok bool
			if p.cellType, ok = cellTypes[string(p.Value(a))]; !ok {
				p.sheet.damaged(p.row.Number, col, "a cell is of no known type; it is read as text")
				p.cellType = stringType
			}
		}
	}
	if col < p.lastCol {
		p.sheet.damaged(p.row.Number, col, fmt.Sprintf("%s stands after %s in the file", cellname.Of(p.row.Number, col), cellname.Of(p.row.Number, p.lastCol)))
	}
	p.unsorted = p.unsorted || col <= p.lastCol
	p.lastCol = col
	p.cell.Col = int32(col)
}

func (p *partReader) startField() {
	switch string(p.Local) {
	case "v":
		p.hasValue = true
		p.inText = !p.inline
	case "f":
		p.cell.Flags |= FromFormula
	case "is":
		p.hasValue = true
		if !p.inline {
			p.inline = true
			p.content = p.content[:0]
		}
	}
}

// endCell keeps the cell if it has content.
func (p *partReader) endCell() error {
	c := p.cell
	p.cell = Cell{}
	if p.fill > 0 && int(c.Col) <= p.book.limit.cols {
		p.sheet.fill(p.row.Number, int(c.Col), p.fill)
	}
	p.fill = 0
	if int(c.Col) > p.book.limit.cols {
		if p.hasValue && len(p.content) > 0 && !p.cut {
			p.cut = true
			p.sheet.damaged(p.row.Number, int(c.Col), fmt.Sprintf("cells beyond %s are not read", cellname.Of(0, p.book.limit.cols)))
		}
		return nil
	}
	if found := p.evaluate(&c); c.Kind == Blank {
		if found || c.Flags&FromFormula == 0 {
			return nil
		}
		c.Flags |= NoCachedValue
		p.book.uncached++
	}
	if c.Flags&FromFormula != 0 {
		p.book.formulas++
	}
	if p.row.Hidden || p.hidden[c.Col] {
		c.Flags |= Hidden
	}
	p.struck = p.struck || c.Flags&Struck != 0
	if p.book.cells++; p.book.cells > p.book.limit.cells {
		return tooManyCells(p.book.limit)
	}
	p.cells.add(c)
	return nil
}
