package settle

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// What a column's ingredient is stands in the kitchen's own sheet, is known by its whole name, or is
// said by a line, by a number or by where the column stands; else it is asked.

// ingredient finds what a column's ingredient is: in the kitchen's own sheet, else
// among what is known by its whole name, else it is asked.
func (m *maker) ingredient(f *scheme.Field) {
	name := f.Called()
	if f.Told && f.What.Name != "" {
		f.What = m.met(name, f.What)
		return
	}
	if d, ok := m.kitchen.Amount(f.Header, name, f.Words); ok {
		f.What = m.met(name, d.Ingredient)
		return
	}
	if stock, at, ok := m.kitchen.StockSaid(name); ok {
		m.dissolve(f, name, stock, at)
		return
	}
	for _, text := range []string{name, f.Words, f.Header, kitchen.InFull(say.Fold(name))} {
		if stock, ok := ingredient.Stock(text); ok {
			said, at, strong := m.kitchen.StrengthSaid(stock.Of)
			switch {
			case stock.Percent > 0:
				m.stock(f, name, stock)
			case strong && (!stock.HasCarrier || !said.HasCarrier || stock.Carrier.Name == said.Carrier.Name):
				stock.Percent = said.Percent
				if !stock.HasCarrier {
					stock.Carrier, stock.HasCarrier = said.Carrier, said.HasCarrier
				}
				m.dissolve(f, name, stock, at)
			default:
				m.stock(f, name, stock)
				m.askStrength(f, stock)
			}
			return
		}
		if i, ok := ingredient.Lookup(text); ok {
			if p, phase := m.phaseEmulsifier(f); generic[i.Name] && phase {
				f.What = m.met(name, p)
				return
			}
			m.askNameHLB(f, i, text)
			f.What = m.met(name, m.asStated(f, i))
			return
		}
	}
	if st, ok := m.kitchen.Stated(name); ok && st.Is != nil && !st.Disputed {
		m.takenAs(st.At, name, st.Is.Name, "what is "+name)
		f.What = m.met(name, m.asStated(f, *st.Is))
		return
	}
	if i, ok := byItsNumber(f.Header); ok {
		f.What = m.met(name, i)
		return
	}
	if i, ok := m.byItsHLB(name); ok {
		f.What = m.met(name, i)
		return
	}
	if i, ok := m.phaseEmulsifier(f); ok {
		f.What = m.met(name, i)
		return
	}
	if m.hasHLBColumn(name) { // only an emulsifier has one
		f.What = m.met(name, m.emulsifier(name))
		return
	}
	if m.byItsGroup(f, name) {
		return
	}
	f.What = m.met(name, ingredient.Ingredient{Name: name, Kind: ingredient.Other, From: "not known"})
	f.Kindless = true
	m.askKind(f)
}

// byName is an emulsifier by its name alone.
func (m *maker) byName(name string) ingredient.Ingredient {
	if d, ok := m.kitchen.Ingredient(name); ok {
		return m.met(name, d.Ingredient)
	}
	if i, ok := m.phase(name, name, ""); ok {
		return m.met(name, i)
	}
	i, _ := ingredient.Lookup(name)
	return m.met(name, m.stated(name, name, i))
}

// stock takes a column as a stock, of an emulsifier with the HLB that its header or lines say.
func (m *maker) stock(f *scheme.Field, name string, s ingredient.Solution) {
	of := m.stated("", s.Of.Name, s.Of)
	if own := hlbIn(ownHLB, f.Header); own != nil && of.Kind == ingredient.Emulsifier {
		of.HLB, of.From = own, fromHeader
	}
	f.What, f.Stock = m.met(name, of), &s
}

// dissolve takes a column as a stock that a line beside the table explains, and says so.
func (m *maker) dissolve(f *scheme.Field, name string, s ingredient.Solution, at trial.Place) {
	m.stock(f, name, s)
	m.say(trial.Note("said beside the table", at, fmt.Sprintf("%s is taken as %s %% %s, as this line says", say.Quoted(f.Header), say.Number(s.Percent), s.Of.Name),
		"nothing to do; the strength in the header wins over it").OnceOf("stock " + name))
}

// byItsGroup takes an ingredient nobody knows as one of the kind that its group names, and
// says so: "reduction" below "Water phase (g)".
func (m *maker) byItsGroup(f *scheme.Field, name string) bool {
	kind, ok := ingredient.Lookup(f.Within)
	if !ok {
		return false
	}
	kind.From = "the group of its header"
	f.What = m.met(name, kind)
	if kind.Kind != ingredient.Emulsifier { // its HLB is asked
		m.say(trial.Check("ingredient by its group", m.Heading(f.Col), fmt.Sprintf("%s is not known here, and is taken as %s, as its group says", say.Quoted(name), kind.Name),
			"type its common name, or its row in a sheet Ingredients, if it is more than that"))
	}
	return true
}

// askKind asks what an ingredient is that nobody can name.
func (m *maker) askKind(f *scheme.Field) {
	name := f.What.Name
	like := ""
	if near := ingredient.Suggest(name); len(near) > 0 {
		like = "; like in spelling: " + strings.Join(near, ", ")
	}
	m.say(trial.Fix("unknown ingredient", m.Heading(f.Col), say.Quoted(name)+" is not an ingredient known here, so nobody can tell the fat and the emulsifier of the mix",
		fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is\" and the row \"%s | fat\", or water, emulsifier, thickener, other, or its common name%s", name, like)).
		Asking(whatIs(say.Quoted(name), name)))
}

// whatIs asks what an ingredient is, by what it is called in the question and in the log.
func whatIs(asked, name string) trial.Question {
	return trial.Question{Asked: "What is " + asked + "?", Blocks: true,
		Choices: []string{"fat", "water", "emulsifier", "emulsifier without HLB", "thickener", "other"},
		Cure:    trial.Cure{Sheet: "Ingredients", Row: []string{name, trial.Open}}}
}

// askStrength asks how strong a stock is.
func (m *maker) askStrength(f *scheme.Field, s ingredient.Solution) {
	f.Open = say.Quoted(f.Header) + " does not say how strong it is"
	m.say(trial.Fix("strength not said", m.Heading(f.Col), say.Quoted(f.Header)+" is a stock of "+s.Of.Name+" whose strength is not said",
		fmt.Sprintf("write the strength in the header, such as \"%s 10 %% solution g\"", s.Of.Name)).Asking(trial.Question{Asked: "How strong is " + say.Quoted(f.Header) + "?", Blocks: true,
		Choices: []string{s.Of.Name + " 10 % solution", s.Of.Name + " 20 % solution"},
		Cure:    trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, "g"}}}))
}

// askNameHLB asks about a number in the name of an emulsifier that is most likely
// its HLB and cannot be: "sucrose ester 51".
func (m *maker) askNameHLB(f *scheme.Field, i ingredient.Ingredient, name string) {
	beforePercent, _, _ := strings.Cut(name, "%")
	text := anyNumber.FindString(beforePercent)
	v, said := numberIn(anyNumber, text)
	if !said || i.Kind != ingredient.Emulsifier || i.HLB != nil || v <= ingredient.MostHLB {
		return
	}
	example := i.Name + " 15"
	digits := []byte(text)
	slices.Reverse(digits)
	if back := string(digits); back != text {
		if w, err := strconv.ParseFloat(back, 64); err == nil && w > 0 && w <= ingredient.MostHLB {
			example = i.Name + " " + back
		}
	}
	m.say(trial.Fix("no HLB", m.Heading(f.Col), fmt.Sprintf("the %s in %s cannot be an HLB: it goes from 0 to 20", text, say.Quoted(f.Header)),
		fmt.Sprintf("type the HLB on your supplier's sheet in the header, such as “%s g”; until then the blend HLB cannot be worked out", example)).OnceOf(f.Called()))
}

var anyNumber = pattern.Of(`(\d+(?:[.,]\d+)?)`)

// met notes an ingredient in the log's list, once, by the name the log has for it,
// as the Amounts of trials do.
func (m *maker) met(name string, i ingredient.Ingredient) ingredient.Ingredient {
	if i.Name == "" {
		i.Name = name
	}
	listed := i
	if name != "" && name != i.Name {
		listed.Name, listed.Known = name, i.Name
	}
	if !slices.ContainsFunc(m.Ingredients, func(o ingredient.Ingredient) bool { return o.Name == listed.Name && o.From == listed.From }) {
		m.Ingredients = append(m.Ingredients, listed)
	}
	return i
}
