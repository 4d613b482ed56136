package settle

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// Two emulsifiers, or fat and water, may be logged as the ratio in which they share what both weigh.

// ratio settles which two emulsifiers share the grams that a column gives of both together;
// beside columns of their own it says nothing new.
func (m *maker) ratio(f *scheme.Field) {
	if own := m.weighedApart(f); own != "" {
		f.Role = column.Unused
		m.say(trial.Note("ratio beside its parts", m.Heading(f.Col), say.Quoted(f.Header)+" is not used, as "+say.Quoted(own)+" has a column of its own", "nothing to do"))
		return
	}
	if m.Find(column.EmulsifierAmount) == nil {
		f.Role = column.Unused
		m.say(trial.Check("ratio without a total", m.Heading(f.Col), say.Quoted(f.Header)+" is not used: no column gives the emulsifiers together",
			"add a column \"total emulsifier g\", or give each its own grams"))
		return
	}
	f.What, f.SecondWhat = m.byName(f.Ingredient), m.byName(f.Second)
	m.NamesEmulsifiers = true
	if m.Find(column.BlendHLB) != nil || m.Find(column.IngredientHLB) != nil {
		return
	}
	if f.What.Kind == ingredient.Emulsifier && f.What.HLB == nil {
		m.say(scheme.NoHLB(f.Ingredient, m.Heading(f.Col), true))
	}
	if f.SecondWhat.Kind == ingredient.Emulsifier && f.SecondWhat.HLB == nil {
		m.say(scheme.NoHLB(f.Second, m.Heading(f.Col), true))
	}
}

// weighedApart is which of the two emulsifiers of a ratio has a column of its own.
func (m *maker) weighedApart(f *scheme.Field) string {
	for i := range m.Fields {
		o, known := ingredient.Lookup(m.Fields[i].Ingredient)
		for _, name := range [...]string{f.Ingredient, f.Second} {
			if is, _ := ingredient.Lookup(name); m.Fields[i].Role == column.IngredientAmount && known && is.Name == o.Name {
				return m.Fields[i].Header
			}
		}
	}
	return ""
}

// ratioBeside names the parts of a bare "ratio" as a line beside the table does.
func (m *maker) ratioBeside(f *scheme.Field) {
	if f.Role != column.None || f.Told || !column.SaysRatio(f.Header) {
		return
	}
	for _, line := range m.kitchen.Lines {
		for _, part := range strings.FieldsFunc(line.Text, func(r rune) bool { return strings.ContainsRune(",;.", r) }) {
			if r := column.Read(part); r.Role == column.EmulsifierRatio {
				f.Meaning = r
				m.say(trial.Note("said beside the table", line.At, say.Quoted(f.Header)+" is read as "+say.Quoted(r.Ingredient+":"+r.Second)+", as this line says",
					"nothing to do; a header that says it is surer").OnceOf(f.Header))
				return
			}
		}
	}
}

// phases settles what the two parts of a mix are that share it by a ratio; beside parts that were
// weighed it says nothing new.
func (m *maker) phases(f *scheme.Field) {
	for i := range m.Fields {
		o := &m.Fields[i]
		if what, _ := ingredient.Lookup(o.Ingredient); o.Role == column.FatPercent || o.Role == column.IngredientAmount && (what.Kind == ingredient.Fat || what.Kind == ingredient.Water) {
			f.Role = column.Unused
			m.say(trial.Note("ratio beside its parts", m.Heading(f.Col), say.Quoted(f.Header)+" is not used, as "+say.Quoted(o.Header)+" has a column of its own", "nothing to do"))
			return
		}
	}
	f.What, f.SecondWhat = m.byName(f.Ingredient), m.byName(f.Second)
	m.FatColumn, m.WaterColumn = f.Col, f.Col
	m.Fats++
	m.say(trial.Note("ratio of fat and water", m.Heading(f.Col), say.Quoted(f.Header)+" is read as how the fat and the water part share the mix", "nothing to do; columns of both, in grams or % of mix, are surer"))
}
