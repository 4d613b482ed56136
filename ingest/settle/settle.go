// Package settle decides what each column of a table is: once, from the headers,
// the kitchen's own sheets and what stands in the column. What it cannot decide
// it asks.
package settle

import (
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
	settled := m.settleRivals(ticked)
	m.subtotals(settled)
	m.ByCol = make([]int, len(m.Found.Heads))
	for i := range m.Found.Heads {
		h := &m.Found.Heads[i]
		f := scheme.Field{Meaning: h.Meaning, Col: i + 1, Header: h.Text}
		switch settled[i] {
		case speaksForAll:
			f.Meaning = h.Meaning.WithoutRivals()
		case sameAgain:
			f.Meaning = column.Meaning{Role: column.Unused, Words: h.Meaning.Words}
		case aLot:
			f.Meaning = column.Meaning{Role: column.IngredientLot, Words: "lot"}
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
		if !m.declare(&f) && settled[i] != setAside && settled[i] != sameAgain {
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
