// Package scheme is what each column of a table is and how its cells are read. A
// Scheme is settled once and does not change when rows are read under it.
package scheme

import (
	"slices"
	"strings"

	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/reply"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// What stands for parts of a mix that have no column of their own.
var (
	// TotalEmulsifier stands for emulsifiers that are only logged together.
	TotalEmulsifier = ingredient.Ingredient{Name: "emulsifiers together", Kind: ingredient.Emulsifier}
	// FatAsLogged stands for the fat of a mix that is logged as a percent only.
	FatAsLogged = ingredient.Ingredient{Name: "fat", Kind: ingredient.Fat, FatPercent: &ingredient.Range{Low: 100, Value: 100, High: 100}}
)

// DosesEmulsifier reports a column of emulsifier in percent.
func (f *Field) DosesEmulsifier() bool {
	amount := f.Role == column.EmulsifierAmount || f.Role == column.IngredientAmount && f.What.WeighedAsEmulsifier()
	return amount && f.Want == units.Percent && f.Unit != units.Fraction
}

// Field is a column of a table and how its cells are to be read.
type Field struct {
	column.Meaning
	Col        int    // 1 + its place among the table's heads
	Header     string // as typed
	Want       units.Dimension
	Bare       units.Unit // of a bare number
	Raw        string     // key of Trial.Raw
	Extra      string     // key of Trial.Extras, "" = none
	GramsPerML float64    // declared density, 0 = none
	Seconds    bool       // a line or its header says that 21:40 is minutes and seconds
	Told       bool       // the kitchen itself says what it is
	Result     bool       // and that it is measured on the foam
	DayFirst   bool       // of a date: the kitchen says that 3/4 is 3 April
	MonthFirst bool       // of a date: the kitchen says that 3/4 is 4 March

	// Of an amount.
	InGrams    bool
	What       ingredient.Ingredient
	Stock      *ingredient.Solution             // it is a stock of something in something
	Open       string                           // why its amounts cannot be reckoned with, "" = they can
	SecondWhat ingredient.Ingredient            // of a ratio or a single share, the other emulsifier
	Kindless   bool                             // its grams are known, what it is is not
	TypeCol    int                              // the column whose text names the ingredient of each row
	Types      map[string]ingredient.Ingredient // what each text of that column names, folded
	PlanCol    int                              // the column that says how much of it was meant to go in

	// Of what stands in it.
	Limit     Limit   // of a drainage column
	Small     float64 // a bare percent of emulsifier below this may be a fraction; 0 = none
	Fractions bool    // its bare numbers are fractions: 0.45 is 45 %
	Mixed     bool    // it has both 0.45 and 45
	Pointed   bool    // it has numbers of the spreadsheet's own with decimals
	Near      float64 // what settles whether 1,200 is 1200 or 1.2 here; 0 = nothing does
	BlankIsNo bool    // nothing but yes is ever typed in it
	Marks     map[string]trial.Answer
	Ticked    trial.Answer            // what a tick or a cross in it answers; an empty cell answers nothing then
	Legend    map[string]trial.Answer // by folded text, as a line beside the table explains it
	Letters   map[string]string       // what the letters of its header stand for, by folded text: c is clogged
	StoodTo   map[string]float64      // of a clock at which it fell: the clock to which it stood at least, by folded text
	EndCol    int                     // of a clock of dispensing: the column of the clock at which it fell

	parsed map[string]parsed
}

// Scheme is a table with its columns understood. Columns are numbered from 1 in
// the order of the table's heads; a column of 0 is none.
type Scheme struct {
	File, Sheet string
	Found       *grid.Table
	Fields      []Field

	NamesEmulsifiers bool // emulsifiers have columns of their own
	EmulsifierColumn int  // of one of them, or of all together
	FatColumn        int
	Fats             int // columns of fats
	WaterColumn      int
	SampleColumn     int
	SampleGrams      float64 // of every trial, as a line beside the table says; 0 = none does
	BatchGrams       float64 // of every mix, as a line beside the table says; 0 = none does
	BatchSaid        trial.Place
	RestUnlogged     bool    // the batches weigh more than all that has a column: a water part has none
	WholeGrams       float64 // to which every mix was made up with water; 0 = nothing says so
	OutColumn        int     // says whether it came out
	FirstLook        float64 // minutes; a hold of 0 ended before it
	TypesBreaks      bool    // "split" is typed in place of a hold, or in the only column of results
	Outcomes         bool    // some column says what happened
	Comma            bool    // numbers are typed with a decimal comma

	Columns     []trial.Column
	Variables   []trial.Variable
	Labels      []string
	Ingredients []ingredient.Ingredient // by the log's names for them

	Trials    map[string]bool         // the folded numbers of the table's trials
	Colours   map[string]Colour       // what a legend says of the colour behind a cell
	Corrected map[[2]int]string       // numbers that a comment beside their cell corrects, as they would be typed with it, by row and column of the sheet
	Footnotes map[string]kitchen.Line // what lines below the table say of a mark behind a cell

	ByCol []int         // index among Fields, -1 = none
	Usual map[int]Usual // where the values of a column lie, the ends left out: they may be slips themselves
	replies
}

// Colour is what a colour says of a trial whose cells have it.
type Colour struct {
	Text   string // of the legend
	Events []event.Event
	Answer reply.Answer // of an empty cell that answers a question: yes, partly or no
	Stood  bool         // it was watched no longer than its hold
}

// AnswerAt is what the colour of an empty cell answers to the question of its column.
func (s *Scheme) AnswerAt(row, col int) reply.Answer {
	if len(s.Colours) == 0 {
		return reply.NoAnswer
	}
	r, c := s.Found.PlaceOf(row, col-1)
	return s.Colours[s.Found.Sheet.Colour(r, c)].Answer
}

// ColoursOf are the colours of a row that a legend explains, each with the first column it
// stands in, in their order.
func (s *Scheme) ColoursOf(row int) (colours []Colour, cols []int) {
	if len(s.Colours) == 0 {
		return nil, nil
	}
	seen := ""
	for h := range s.Found.Heads {
		r, c := s.Found.PlaceOf(row, h)
		hex := s.Found.Sheet.Colour(r, c)
		if colour, ok := s.Colours[hex]; ok && s.Found.Heads[h].Always == nil && !strings.Contains(seen, hex) {
			colours, cols, seen = append(colours, colour), append(cols, h+1), seen+hex+" "
		}
	}
	return colours, cols
}

// At is where the cell of a row and column stands; a column of 0 is the row,
// of a card its column, or where that is not its own the cell it begins with.
func (s *Scheme) At(row, col int) trial.Place {
	r, c := s.Found.PlaceOf(row, max(col-1, 0))
	switch {
	case col > 0:
	case s.Found.From > 0:
		r = s.Found.HeaderRow
	case s.Found.Transposed:
		r = 0
	default:
		c = 0
	}
	return trial.Place{File: s.File, Sheet: s.Sheet, Row: r, Col: c}
}

// Heading is where a column's header stands.
func (s *Scheme) Heading(col int) trial.Place {
	h := &s.Found.Heads[col-1]
	return trial.Place{File: s.File, Sheet: s.Sheet, Row: h.Row, Col: h.Col}
}

// Cell is the cell of a row and column, taken from above where the log says so, with what a
// comment corrects of it.
func (s *Scheme) Cell(row, col int) sheet.Cell {
	c, filled := s.Found.Cell(row, col-1)
	if len(s.Corrected) > 0 && !filled {
		if at := s.At(row, col); s.Corrected[[2]int{at.Row, at.Col}] != "" {
			c.Kind, c.Text = sheet.Text, s.Corrected[[2]int{at.Row, at.Col}]
		}
	}
	return c
}

// Text is a cell as it is shown, without the mark of a footnote.
func (s *Scheme) Text(row, col int) string {
	plain, _, _ := kitchen.Footnote(s.Footnotes, strings.TrimSpace(s.Found.Sheet.Display(s.Cell(row, col))))
	return plain
}

// Name is how a message names a column.
func (s *Scheme) Name(col int) string {
	if col == 0 {
		return "this row"
	}
	h := &s.Found.Heads[col-1]
	if h.Always != nil {
		return cellname.Of(h.Row, h.Col) + " (" + h.Text + ")"
	}
	if s.Found.Transposed {
		return cellname.Of(h.Row, 0) + " (" + h.Text + ")"
	}
	return cellname.Of(0, h.Col) + " (" + h.Text + ")"
}

// Field is the field of a column, nil if the scheme has none for it.
func (s *Scheme) Field(col int) *Field {
	if col < 1 || col > len(s.ByCol) || s.ByCol[col-1] < 0 {
		return nil
	}
	return &s.Fields[s.ByCol[col-1]]
}

// Find is the first field of a role, nil if there is none.
func (s *Scheme) Find(r column.Role) *Field {
	if i := slices.IndexFunc(s.Fields, func(f Field) bool { return f.Role == r }); i >= 0 {
		return &s.Fields[i]
	}
	return nil
}

// Rows is how many rows the table has.
func (s *Scheme) Rows() int { return len(s.Found.Rows) }

// Called is what to call an ingredient: its words in the header.
func (f *Field) Called() string {
	if f.Ingredient != "" {
		return f.Ingredient
	}
	return f.Words
}

// Answers reports whether the column answers what happened with yes or no.
func (f *Field) Answers() bool {
	switch f.Role {
	case column.CameOut, column.Clogged, column.Spits, column.Broke, column.OilLeak:
		return true
	}
	return false
}

// IsAmount reports whether the column says how much of something is in the mix.
func (f *Field) IsAmount() bool {
	return f.Role == column.IngredientAmount || f.Role == column.EmulsifierAmount || f.Role == column.FatPercent
}
