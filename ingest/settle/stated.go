package settle

import (
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// What a line beside the table says of an ingredient is believed and said, unless lines differ.

// asStated is an ingredient as a line beside the table says of it, where its header
// gives no number of its own.
func (m *maker) asStated(f *scheme.Field, i ingredient.Ingredient) ingredient.Ingredient {
	return m.stated(f.Header, f.Called(), i)
}

// stated is asStated of an ingredient by its header and its name.
func (m *maker) stated(header, name string, i ingredient.Ingredient) ingredient.Ingredient {
	if own, ok := byItsNumber(header); ok && own.HLB != nil && i.Kind == ingredient.Emulsifier && i.HLB == nil {
		i.HLB, i.From = own.HLB, own.From
		return i
	}
	if i.Kind == ingredient.Water && saysFatFree(header) {
		i.FatPercent, i.From = &ingredient.Range{}, "the header says that it is free of fat"
		return i
	}
	st, ok := m.kitchen.Stated(name)
	which := st.Is != nil && !st.Disputed && i.Kind == st.Is.Kind
	if which && i.HLB == nil && i.FatPercent == nil { // "emulsifier A"
		i = *st.Is
	} else if which && generic[i.Name] && i.Name != st.Is.Name { // "fat = butter"
		i = *st.Is
		m.takenAs(st.At, name, i.Name, "what is "+name)
	}
	if !ok {
		st, ok = m.kitchen.Stated(i.Name) // P80 in the header, polysorbate 80 in the line
	}
	if !ok || strings.HasPrefix(i.From, "the name says") {
		return i
	}
	if st.Disputed {
		m.notTaken(st.At, name, name)
		return i
	}
	said := ""
	switch {
	case st.HLB != nil && i.Kind == ingredient.Emulsifier:
		i.HLB, said = exactly(*st.HLB), "HLB "+say.Number(*st.HLB)
	case st.Fat != nil && *st.Fat > 100:
		m.say(trial.Fix("impossible value", st.At, say.Quoted(name)+" cannot be "+say.Number(*st.Fat)+" % fat, so that is not taken",
			"type its fat percent again, between 0 and 100").OnceOf(name))
		return i
	case st.Fat != nil && (i.Kind == ingredient.Fat || i.Kind == ingredient.Water):
		i.FatPercent, said = exactly(*st.Fat), say.Number(*st.Fat)+" % fat"
	default:
		return i
	}
	i.From = st.At.String()
	m.takenAs(st.At, name, said, name)
	return i
}

// byItsHLB is an ingredient nobody knows whose HLB stands below its header or in a line
// beside the table: only an emulsifier has one.
func (m *maker) byItsHLB(name string) (i ingredient.Ingredient, ok bool) {
	st, ok := m.kitchen.Stated(name)
	if !ok || st.HLB == nil || st.Disputed || *st.HLB <= 0 || *st.HLB > ingredient.MostHLB {
		return i, false
	}
	m.takenAs(st.At, name, "an emulsifier of HLB "+say.Number(*st.HLB), name)
	return ingredient.Ingredient{Kind: ingredient.Emulsifier, From: st.At.String(), HLB: exactly(*st.HLB)}, true
}

// takenAs says that a line is believed of what the log calls an ingredient; once of the same.
func (m *maker) takenAs(at trial.Place, called, as, once string) {
	m.say(trial.Note("said beside the table", at, say.Quoted(called)+" is taken as "+as+", as this line says",
		"nothing to do; a sheet Ingredients wins over it").OnceOf(once))
}

// notTaken says that lines differ on an ingredient, so that none is believed.
func (m *maker) notTaken(at trial.Place, called, once string) {
	m.say(trial.Check("said beside the table", at, "lines beside the table say two things of "+say.Quoted(called)+", so none is taken",
		"leave the one that is true, or type it in a sheet Ingredients").OnceOf(once))
}
