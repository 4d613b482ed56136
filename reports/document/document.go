// Package document is what every renderer lays out: sections of words, tables and
// figures with every number already rounded and worded. Types only.
package document

import (
	"slices"

	"foamfield/plots/drawing"
)

// Reader says whom a section is for; pages for cooks carry no word of statistics.
type Reader uint8

// The readers.
const (
	Cook Reader = iota
	Scientist
)

// Divider stands between the pages for cooks and the rest.
const Divider = "For the food scientist and the teacher"

// Document is the whole report.
type Document struct {
	Title    string // "Week of foam trials: week.xlsx"
	Subtitle string
	Sections []Section
	Brief    []Block                   // Paragraphs and Formulas for a terminal, most wanted first
	Figures  map[string]drawing.Figure // by name
	Live     *Live                     // nil where there is nothing to work out anew
	Foot     string                    // "" = where every number of a report stands
}

// Section is one part of the report; the first is the summary page.
type Section struct {
	ID     string // "start", "region", ...
	Title  string
	Reader Reader
	Alone  bool // has paper of its own
	Blocks []Block
}

// Block is one of Paragraph, List, Table, FigureRef, Formula, Card or Callout.
type Block interface{ block() }

// Paragraph is a run of text; Lead marks the sentence a hurried reader reads,
// Head the heading of a part within a section.
type Paragraph struct {
	Lead bool
	Head bool
	Text Text
}

// List is a bulleted list; Small is set small where paper is short.
type List struct {
	Items []Text
	Small bool
}

// Table has one head and rows of cells as wide as it.
type Table struct {
	Caption string
	Head    []string
	Numeric []bool // column is numbers: set right
	Rows    [][]Text
	Cards   bool   // on a telephone each row is a card, with its heads beside its cells
	OneLine bool   // a row a line: what is too long for it ends in dots
	Of      string // the head of a column: rows alike in it keep to a page where they can; "" = none do
	Cut     string // "" or how many rows are not shown and where they are
}

// FigureRef places a figure by name, beside what follows it or across the page.
type FigureRef struct {
	Name   string
	Beside bool
}

// Formula is a mix in grams, the heart of page one.
type Formula struct {
	Title              string
	Beside             string // the figure that shows where it lies, by name; "" = none
	Lines              []FormulaLine
	Total, TotalOunces Text
	Note               Text
}

// FormulaLine is one ingredient; Ounces are there only if asked for.
type FormulaLine struct{ Name, Grams, Ounces, OfMix, OfPart, Weigh Text }

// Card is what a cook lays beside the scale, works from and writes on.
type Card struct {
	Title              string // "surest start"
	Of                 string // where results.json holds the mix: "starts[0]"; "" = to be written in
	Log                string
	Aim, Made, Mix     Text
	Parts              []CardPart // in the order of addition
	Total, TotalOunces Text
	Note               Text       // on the weights
	NoGrams            Text       // why the weights are to be written in
	Steps              []CardStep // none: lines to write them on
	Mind               []Text     // what is critical
	Blanks             []Blank
}

// CardPart is what is put together before it meets the rest.
type CardPart struct {
	Title                string
	Lines                []CardLine
	Grams, Ounces, OfMix Text
}

// CardLine is one ingredient; without a name it is to be written in.
type CardLine struct{ Name, Grams, Ounces, Within, OfMix, OfPart Text }

// CardStep is a step of the method; Limit is what to keep to.
type CardStep struct {
	Text, Limit Text
	Critical    bool
}

// Blank is a result to be written in: on a line, in a unit, or one of the choices.
type Blank struct {
	Label   Text
	Line    bool
	Unit    string
	Choices []string
}

// Callout is set apart: a caution, or a note on certainty.
type Callout struct {
	Caution bool
	Title   string
	Text    Text
}

func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (FigureRef) block() {}
func (Formula) block()   {}
func (Card) block()      {}
func (Callout) block()   {}

// Together is how many rows from row i on are alike in the column Of.
func (t Table) Together(i int) int {
	of := slices.Index(t.Head, t.Of)
	n := 1
	for t.Of != "" && of >= 0 && i+n < len(t.Rows) && t.Rows[i+n][of].String() == t.Rows[i][of].String() {
		n++
	}
	return n
}

// Text is a sentence in pieces, so that each number keeps its origin.
type Text []Span

// Span is a piece of text; Num says where a number in it comes from. Text from
// the log is never markup: renderers escape every span.
type Span struct {
	Text   string
	Strong bool
	Num    *Num
}

// Num is a printed number: the path of its value in results.json and the value
// itself, held against each other by a test.
type Num struct {
	Path  string
	Value float64
}

// String is the text without its marks.
func (t Text) String() string {
	s := ""
	for _, p := range t {
		s += p.Text
	}
	return s
}
