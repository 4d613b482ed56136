// Package settle decides what each column of a table is: once, from the headers,
// the kitchen's own sheets and what stands in the column. What it cannot decide
// it asks.
package settle

import (
	"cmp"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/survey"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// maker makes a scheme.
type maker struct {
	scheme.Scheme
	kitchen *kitchen.Sheets
	found   []trial.Finding
	asks    map[int]*trial.Question // of a column's header
}

func (m *maker) say(f trial.Finding) { m.found = append(m.found, f) }

// Of understands the columns of a table, and says what it noticed.
func Of(file, sheetName string, found *grid.Table, k *kitchen.Sheets) (*scheme.Scheme, []trial.Finding) {
	m := &maker{Scheme: scheme.Scheme{File: file, Sheet: sheetName, Found: found, Corrected: corrected(found.Sheet)}, kitchen: k, asks: map[int]*trial.Question{}}
	m.columns()
	m.units()
	m.amounts()
	m.unnamed()
	m.massesOfFat()
	m.basis()
	m.beside()
	m.outcomes()
	m.found = append(m.found, survey.Of(&m.Scheme, k)...)
	m.record()
	return &m.Scheme, m.found
}

// beside takes what lines beside the table say of all its trials: the mass of every mix, or to
// which it was made up, and the foam that was put to drain.
func (m *maker) beside() {
	m.Footnotes = m.kitchen.Footnotes(m.Sheet)
	if g, ok := m.kitchen.MadeUpTo(); ok && m.Find(column.BatchMass) == nil && !m.logsWater() {
		m.WholeGrams, m.BatchGrams, m.BatchSaid = g.Value, g.Value, g.At
		m.say(trial.Note("said beside the table", g.At, "every mix is taken as "+say.Grams(g.Value)+", the rest of it water, as this line says",
			"nothing to do; a column \"Batch g\" wins over it").OnceOf("batch"))
	} else if g, ok := m.kitchen.Batch(m.Sheet, m.Found.HeaderRow); ok && m.Find(column.BatchMass) == nil {
		m.BatchGrams, m.BatchSaid = g.Value, g.At
	}
	if g := m.sampleInHead(); g > 0 && m.SampleColumn == 0 {
		m.SampleGrams = g
	} else if g, ok := m.kitchen.Sample(); ok && m.SampleColumn == 0 {
		m.SampleGrams = g.Value
		m.say(trial.Note("said beside the table", g.At, "drained grams are of "+say.Grams(g.Value)+" of foam, as this line says",
			"nothing to do; a column \"Sample g\" wins over it").OnceOf("sample"))
	}
}

// sampleInHead is the foam that the headers of what drained say it is of; 0 where none
// does, or they differ.
func (m *maker) sampleInHead() (grams float64) {
	for i := range m.Fields {
		switch g := m.Fields[i].Meaning.Sample; {
		case g > 0 && grams > 0 && g != grams:
			return 0
		case g > 0:
			grams = g
		}
	}
	return grams
}

// logsWater reports a column of plain water.
func (m *maker) logsWater() bool {
	return slices.ContainsFunc(m.Fields, func(f scheme.Field) bool { return f.Role == column.IngredientAmount && f.What.Name == "water" })
}

// columns reads the headers, each as the kitchen's own sheets say or by its words.
func (m *maker) columns() {
	ticked := m.ticked()
	rivals := m.settleRivals(ticked)
	subtotals := m.subtotals()
	m.ByCol = make([]int, len(m.Found.Heads))
	for i := range m.Found.Heads {
		h := &m.Found.Heads[i]
		f := scheme.Field{Meaning: h.Meaning, Col: i + 1, Header: h.Text}
		switch rivals[i] {
		case speaksForAll:
			f.Meaning = h.Meaning.WithoutRivals()
		case sameAgain:
			f.Meaning = column.Meaning{Role: column.Unused, Words: h.Meaning.Words}
		case aLot:
			f.Meaning = column.Meaning{Role: column.IngredientLot, Words: "lot"}
		}
		if subtotals[i] {
			f.Meaning = column.Meaning{Role: column.Unused, Words: h.Meaning.Words}
		}
		if t, ok := ticked[i]; ok {
			f.Meaning, f.Ticked = column.Meaning{Role: t.question, Words: h.Meaning.Words}, t.answer
		}
		if f.Role == column.TrialID && m.bareLot(i) && m.saysFew(i) {
			f.Meaning = column.Meaning{Role: column.IngredientLot, Words: "lot"}
		}
		if h.Remarks && f.Role == column.None && f.Header == "" {
			f.Role = column.Note
		}
		if !m.declare(&f) && rivals[i] != setAside && rivals[i] != sameAgain && !subtotals[i] {
			m.nameIngredient(&f)
		}
		if !f.Told && m.holdsRecipes(i) {
			m.recipes(&f)
		}
		if f.Unit == units.NoUnit {
			f.Unit, _ = units.Parse(h.Unit)
		}
		m.ByCol[i] = -1
		if f.Role == column.None && f.Header == "" && f.Doubt == "" && !m.holdsNumbers(i+1) {
			continue
		}
		m.ByCol[i] = len(m.Fields)
		m.Fields = append(m.Fields, f)
	}
	for i := range m.Fields {
		m.byContent(&m.Fields[i])
		stockByWords(&m.Fields[i])
		m.ratioBeside(&m.Fields[i])
		m.letters(&m.Fields[i])
	}
}

// stockByWords makes an amount of a weighed column whose words are those of a stock.
func stockByWords(f *scheme.Field) {
	if _, stock := ingredient.Stock(f.Words); stock && f.Role == column.None && f.Unit.Dimension() == units.Mass {
		f.Role, f.Ingredient = column.IngredientAmount, f.Words
	}
}

// declare applies the kitchen's Columns sheet to a header; it wins over Ingredients.
func (m *maker) declare(f *scheme.Field) bool {
	d, ok := m.kitchen.Column(f.Header, f.Words)
	if ok {
		declareColumn(f, d)
	}
	return ok
}

// nameIngredient applies the kitchen's Ingredients sheet to a header.
func (m *maker) nameIngredient(f *scheme.Field) {
	if i, named := m.kitchen.Ingredient(f.Header, f.Ingredient, f.Words); named && !f.IsAmount() {
		// Naming it makes it an amount, whatever its header looks like.
		f.Meaning = column.Meaning{Role: column.IngredientAmount, Ingredient: f.Words, Words: f.Words, Unit: f.Unit, Basis: f.Basis}
		f.Told, f.What = true, i.Ingredient
		if f.Ingredient == "" {
			f.Ingredient = f.Header
		}
	}
}

// declareColumn applies a row of the Columns sheet: its own unit and basis win over
// those of the meaning it gives, and what both leave open stays as the header has it.
func declareColumn(f *scheme.Field, d kitchen.Meaning) {
	header := f.Meaning
	switch {
	case d.Ignore:
		f.Meaning = column.Meaning{Role: column.Unused, Words: header.Words}
	case d.Variable:
		declareVariable(f, d.Result)
	case d.Words != "":
		if f.Meaning = column.Read(d.Words); f.Role == column.None {
			f.Role, f.Ingredient, f.Left = column.IngredientAmount, d.Words, nil
		}
	}
	f.Doubt, f.Fuzzy = "", false
	f.Unit = cmp.Or(d.Unit, f.Unit, header.Unit)
	f.Basis = cmp.Or(d.Basis, f.Basis, header.Basis)
	f.AtMinute = cmp.Or(f.AtMinute, header.AtMinute)
	f.GramsPerML, f.Told = d.GramsPerML, true
	f.DayFirst, f.MonthFirst = d.DayFirst, d.MonthFirst
	declareMarks(f, d.Marks)
}

// declareVariable makes a column a number to carry along under its header's name.
func declareVariable(f *scheme.Field, result bool) {
	words := cmp.Or(f.Words, f.Header)
	name := trial.VariableName(words)
	if slices.Contains(ourNames, name) {
		name += "_declared"
	}
	f.Meaning = column.Meaning{Role: column.Declared, Words: words}
	f.Extra, f.Raw, f.Result = name, name, result
}

// declareMarks takes what each mark answers. A column without declared marks keeps
// none at all: then its cells decide.
func declareMarks(f *scheme.Field, marks map[string]bool) {
	for mark, yes := range marks {
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
		c := trial.Column{At: m.Heading(f.Col), Header: f.Header, ReadAs: f.Role.String(), Unit: f.Bare.String(), Rests: m.rests(f)}
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
func (m *maker) sayHeader(f *scheme.Field, c trial.Column) {
	switch {
	case len(f.Rivals) > 0: // said once for all of them
	case f.Role == column.None && f.Doubt == "" && f.Open == "":
		m.say(trial.Check("unknown column", c.At, say.Quoted(f.Header)+" is not understood and not used",
			"change the header, or say what it is in a sheet Columns with the header \"Header in the log | Meaning | Unit | Basis\""))
	case f.Doubt != "" && (f.Role == column.None || f.Open != ""):
		doubt := trial.Fix("header in doubt", c.At, say.Quoted(f.Header), f.Doubt)
		if asks := m.asks[f.Col]; asks != nil {
			doubt = doubt.Asking(*asks)
		}
		m.say(doubt)
	case f.Doubt != "":
		m.say(trial.Check("header in doubt", c.At, say.Quoted(f.Header), f.Doubt))
	case f.Fuzzy:
		m.say(trial.Note("header read as", c.At, say.Quoted(f.Header)+" is read as "+c.ReadAs, "change the header if that is wrong"))
	}
}
