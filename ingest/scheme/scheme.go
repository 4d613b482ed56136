// Package scheme decides what each column of a table is: once, from the headers,
// the kitchen's own sheets and what stands in the column. A Scheme does not change
// when rows are read under it.
package scheme

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/layout"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Field is a column of a table and how its cells are to be read.
type Field struct {
	column.Meaning
	Col        int    // 1 + its place among the table's heads
	Header     string // as typed
	Want       quantity.Dimension
	Bare       quantity.Unit // of a bare number
	Raw        string        // key of Trial.Raw
	Extra      string        // key of Trial.Extras, "" = none
	GramsPerML float64       // declared density, 0 = none
	Told       bool          // the kitchen itself says what it is
	Result     bool          // and that it is measured on the foam

	// Of an amount.
	InGrams  bool
	What     ingredient.Ingredient
	Stock    *ingredient.Solution // it is a stock of something in something
	Open     string               // why its amounts cannot be reckoned with, "" = they can
	Kindless bool                 // its grams are known, what it is is not
	TypeCol  int                  // the column whose text names the ingredient of each row

	// Of what stands in it.
	Limit     Limit   // of a drainage column
	Small     float64 // a bare percent of emulsifier below this may be a fraction; 0 = none
	Fractions bool    // its bare numbers are fractions: 0.45 is 45 %
	Mixed     bool    // it has both 0.45 and 45
	Pointed   bool    // it has numbers of the spreadsheet's own with decimals
	Near      float64 // what settles whether 1,200 is 1200 or 1.2 here; 0 = nothing does
	BlankIsNo bool    // nothing but yes is ever typed in it
	Marks     map[string]trial.Answer
	EndCol    int // of a clock of dispensing: the column of the clock at which it fell

	asks   *trial.Question // what is asked of its header
	parsed map[string]parsed
}

// Scheme is a table with its columns understood. Columns are numbered from 1 in
// the order of the table's heads; a column of 0 is none.
type Scheme struct {
	File, Sheet string
	Found       *layout.Table
	Fields      []Field

	NamesEmulsifiers bool // emulsifiers have columns of their own
	EmulsifierColumn int  // of one of them, or of all together
	FatColumn        int
	Fats             int // columns of fats
	WaterColumn      int
	SampleColumn     int
	OutColumn        int     // says whether it came out
	FirstLook        float64 // minutes; a hold of 0 ended before it
	TypesBreaks      bool    // "split" is typed in place of a hold
	Outcomes         bool    // some column says what happened
	Comma            bool    // numbers are typed with a decimal comma

	Columns     []trial.Column
	Variables   []trial.Variable
	Labels      []string
	Ingredients []ingredient.Ingredient // by the log's names for them

	byCol  []int // index among Fields, -1 = none
	usuals map[int]Usual
	replies
}

// maker makes a scheme.
type maker struct {
	Scheme
	kitchen *kitchen.Sheets
	found   []trial.Finding
}

func (m *maker) say(f trial.Finding) { m.found = append(m.found, f) }

// Of understands the columns of a table, and says what it noticed.
func Of(file, sheetName string, found *layout.Table, k *kitchen.Sheets) (*Scheme, []trial.Finding) {
	m := &maker{Scheme: Scheme{File: file, Sheet: sheetName, Found: found}, kitchen: k}
	m.columns()
	m.units()
	m.amounts()
	m.unnamed()
	m.massesOfFat()
	m.outcomes()
	m.survey()
	m.record()
	return &m.Scheme, m.found
}

// At is where the cell of a row and column stands; a column of 0 is the row.
func (s *Scheme) At(row, col int) trial.Place {
	r, c := s.Found.PlaceOf(row, max(col-1, 0))
	switch {
	case col > 0:
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

// Cell is the cell of a row and column, taken from above where the log says so.
func (s *Scheme) Cell(row, col int) sheet.Cell {
	c, _ := s.Found.Cell(row, col-1)
	return c
}

// Text is a cell as it is shown.
func (s *Scheme) Text(row, col int) string {
	return strings.TrimSpace(s.Found.Sheet.Display(s.Cell(row, col)))
}

// Name is how a message names a column.
func (s *Scheme) Name(col int) string {
	if col == 0 {
		return "this row"
	}
	h := &s.Found.Heads[col-1]
	if s.Found.Transposed {
		return sheet.CellName(h.Row, 0) + " (" + h.Text + ")"
	}
	return sheet.CellName(0, h.Col) + " (" + h.Text + ")"
}

// Field is the field of a column, nil if the scheme has none for it.
func (s *Scheme) Field(col int) *Field {
	if col < 1 || col > len(s.byCol) || s.byCol[col-1] < 0 {
		return nil
	}
	return &s.Fields[s.byCol[col-1]]
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

// IsAmount reports whether the column says how much of something is in the mix.
func (f *Field) IsAmount() bool {
	return f.Role == column.IngredientAmount || f.Role == column.EmulsifierAmount || f.Role == column.FatPercent
}

// columns reads the headers, each as the kitchen's own sheets say or by its words.
func (m *maker) columns() {
	rivals := m.settleRivals()
	m.byCol = make([]int, len(m.Found.Heads))
	for i := range m.Found.Heads {
		h := &m.Found.Heads[i]
		f := Field{Meaning: h.Meaning, Col: i + 1, Header: h.Text}
		switch rivals[i] {
		case speaksForAll:
			f.Meaning = h.Meaning.WithoutRivals()
		case sameAgain:
			f.Meaning = column.Meaning{Role: column.Unused, Words: h.Meaning.Words}
		}
		if h.Remarks && f.Role == column.None && f.Header == "" {
			f.Role = column.Note
		}
		m.declare(&f)
		if f.Unit == quantity.NoUnit {
			f.Unit, _ = quantity.ParseUnit(h.Unit)
		}
		m.byCol[i] = -1
		if f.Role == column.None && f.Header == "" && f.Doubt == "" && !m.holdsNumbers(i+1) {
			continue
		}
		m.byCol[i] = len(m.Fields)
		m.Fields = append(m.Fields, f)
	}
}

// declare applies the kitchen's Columns and Ingredients sheets to a header.
func (m *maker) declare(f *Field) {
	d, ok := m.kitchen.Column(f.Header, f.Words)
	if !ok {
		if i, named := m.kitchen.Ingredient(f.Header, f.Ingredient, f.Words); named && !f.IsAmount() {
			// Naming it makes it an amount, whatever its header looks like.
			f.Meaning = column.Meaning{Role: column.IngredientAmount, Ingredient: f.Words, Words: f.Words, Unit: f.Unit, Basis: f.Basis}
			f.Told, f.What = true, i.Ingredient
			if f.Ingredient == "" {
				f.Ingredient = f.Header
			}
		}
		return
	}
	unit, basis, minute, words := f.Unit, f.Basis, f.AtMinute, f.Words
	switch {
	case d.Ignore:
		f.Meaning = column.Meaning{Role: column.Unused, Words: words}
	case d.Variable:
		if words == "" {
			words = f.Header
		}
		f.Meaning = column.Meaning{Role: column.Declared, Words: words}
		name := trial.VariableName(words)
		if slices.Contains(ourNames, name) {
			name += "_declared"
		}
		f.Extra, f.Raw, f.Result = name, name, d.Result
	case d.Words != "":
		if f.Meaning = column.Read(d.Words); f.Role == column.None {
			f.Role, f.Ingredient, f.Left = column.IngredientAmount, d.Words, nil
		}
	}
	f.Doubt, f.Fuzzy = "", false
	if f.Unit == quantity.NoUnit {
		f.Unit = unit
	}
	if d.Unit != quantity.NoUnit {
		f.Unit = d.Unit
	}
	if f.Basis == column.NoBasis {
		f.Basis = basis
	}
	if d.Basis != column.NoBasis {
		f.Basis = d.Basis
	}
	if f.AtMinute == 0 {
		f.AtMinute = minute
	}
	f.GramsPerML, f.Told = d.GramsPerML, true
	for mark, yes := range d.Marks {
		if f.Marks == nil {
			f.Marks = map[string]trial.Answer{}
		}
		f.Marks[mark] = trial.No
		if yes {
			f.Marks[mark] = trial.Yes
		}
	}
}

// ourNames are variables and outcomes of every log; a column that is declared under
// one of them is something else.
var ourNames = []string{"came_out", "broke", "hold_minutes", "drained_percent", "fat_percent", "emulsifier_percent", "emulsifier_grams",
	"ln_emulsifier_percent", "ln_emulsifier_grams", "blend_hlb"}

// record lists what every column was read as, and says what was not understood.
func (m *maker) record() {
	for i := range m.Fields {
		f := &m.Fields[i]
		c := trial.Column{At: m.Heading(f.Col), Header: f.Header, ReadAs: f.Role.String(), Unit: f.Bare.String()}
		switch {
		case f.Role == column.None:
			c.ReadAs = ""
		case f.Open != "":
			c.ReadAs, c.Unit = "to be settled", ""
		case f.Role == column.IngredientAmount:
			c.ReadAs = f.What.Name
			if !f.InGrams {
				c.Unit = strings.TrimSpace("% " + f.Basis.String())
			}
		case f.AtMinute > 0:
			c.ReadAs += " at " + say.Number(f.AtMinute) + " min"
		}
		m.Columns = append(m.Columns, c)
		m.sayHeader(f, c)
	}
}

// sayHeader says what is doubtful of a header that nothing else was said of.
func (m *maker) sayHeader(f *Field, c trial.Column) {
	switch {
	case len(f.Rivals) > 0: // said once for all of them
	case f.Role == column.None && f.Doubt == "" && f.Open == "":
		m.say(trial.Check("unknown column", c.At, say.Quoted(f.Header)+" is not understood and not used",
			"change the header, or say what it is in a sheet Columns with the header \"Header in the log | Meaning | Unit | Basis\""))
	case f.Doubt != "" && (f.Role == column.None || f.Open != ""):
		doubt := trial.Fix("header in doubt", c.At, say.Quoted(f.Header), f.Doubt)
		if f.asks != nil {
			doubt = doubt.Asking(*f.asks)
		}
		m.say(doubt)
	case f.Doubt != "":
		m.say(trial.Check("header in doubt", c.At, say.Quoted(f.Header), f.Doubt))
	case f.Fuzzy:
		m.say(trial.Note("header read as", c.At, say.Quoted(f.Header)+" is read as "+c.ReadAs, "change the header if that is wrong"))
	}
}
