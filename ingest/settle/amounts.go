package settle

import (
	"fmt"
	"foamfield/ingest/pattern"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// amounts settles what each column of amounts is of, and in what its numbers are.
func (m *maker) amounts() {
	m.together()
	for i := range m.Fields {
		f := &m.Fields[i]
		m.leftovers(f)
		if f.Role == column.EmulsifierRatio {
			m.ratio(f)
		}
		if f.Role == column.PhaseRatio {
			m.phases(f)
		}
		if f.Role == column.IngredientHLB {
			f.What = m.emulsifier(f.Ingredient)
		}
		if !f.IsAmount() {
			continue
		}
		if f.What.Name == scheme.Recipes {
			m.partsOf(f)
			continue
		}
		switch f.Role {
		case column.FatPercent:
			f.What = scheme.FatAsLogged
			if f.Want == units.Percent && f.Basis == column.NoBasis {
				f.Basis = column.OfMix
			}
		case column.EmulsifierAmount:
			f.What = scheme.TotalEmulsifier
		case column.IngredientAmount:
			m.ingredient(f)
		}
		m.reckon(f)
		m.note(f)
	}
	m.share()
	m.types()
	m.plans()
	m.askHLBs()
}

// plans finds beside each amount the column of what was meant to go in.
func (m *maker) plans() {
	for i := range m.Fields {
		p := &m.Fields[i]
		if p.Role != column.Unused || p.Aim != column.Planned || p.Almost != column.IngredientAmount && p.Almost != column.EmulsifierAmount {
			continue
		}
		for k := range m.Fields {
			if f := &m.Fields[k]; f.Role == p.Almost && f.PlanCol == 0 && say.Fold(f.Ingredient) == say.Fold(p.Ingredient) {
				f.PlanCol = p.Col
				break
			}
		}
	}
}

// askHLBs asks for the HLB of every emulsifier, where no column gives the blend's.
func (m *maker) askHLBs() {
	if m.Find(column.BlendHLB) != nil || m.Find(column.IngredientHLB) != nil {
		return
	}
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role == column.IngredientAmount && f.What.Kind == ingredient.Emulsifier && f.What.HLB == nil && f.TypeCol == 0 && !generic[f.What.Name] {
			m.say(scheme.NoHLB(f.Called(), m.Heading(f.Col), true))
		}
	}
}

// note remembers which columns give the parts of the mix.
func (m *maker) note(f *scheme.Field) {
	switch {
	case f.Role == column.EmulsifierAmount:
		m.EmulsifierColumn = f.Col
	case f.Role == column.FatPercent:
		m.FatColumn = f.Col
	case f.What.WeighedAsEmulsifier():
		m.NamesEmulsifiers, m.EmulsifierColumn = true, f.Col
	case f.What.Kind == ingredient.Fat:
		m.FatColumn = f.Col
		m.Fats++
	case f.What.Kind == ingredient.Water:
		m.WaterColumn = f.Col
	}
}

// leftovers asks about a header of which some words are not accounted for, where
// an amount of the mix may rest on it.
func (m *maker) leftovers(f *scheme.Field) {
	if f.Role != column.None || f.Almost == column.None || f.Told {
		return
	}
	amount := f.Almost == column.IngredientAmount || f.Almost == column.EmulsifierAmount || f.Almost == column.FatPercent || f.Almost == column.BlendHLB
	if amount && f.Apart != "" && m.besideWhole(f) {
		m.say(trial.Check("header in doubt", m.Heading(f.Col), say.Quoted(f.Header)+" is not counted in the mix: another column says how much went in",
			"rename it if it went into the canister as well"))
		f.Role, f.Doubt = column.Unused, ""
		return
	}
	if mean := m.meanOf(f); mean != nil {
		m.say(trial.Note("column twice", m.Heading(f.Col), say.Quoted(f.Header)+" is not used, as "+say.Quoted(mean.Header)+" is the mean of it and others", "nothing to do"))
		f.Role, f.Doubt = column.Unused, ""
		return
	}
	if wordsOnly(f.Almost) {
		return // said, and not worth a question
	}
	m.askColumn(f, amount)
	if amount && f.Almost != column.BlendHLB {
		f.Role, f.Open = f.Almost, say.Quoted(f.Header)+" is not understood"
	}
}

// meanOf is the column of the mean of what a column has one of: "hold mean" beside "hold A".
func (m *maker) meanOf(f *scheme.Field) *scheme.Field {
	if len(f.Left) != 1 || len(f.Left[0]) > 2 {
		return nil
	}
	for i := range m.Fields {
		if o := &m.Fields[i]; o.Role == f.Almost && o.AtMinute == f.AtMinute && saysMean(o.Header) {
			return o
		}
	}
	return nil
}

// besideWhole reports whether another column has the amount of the same thing
// without the words that set this one apart.
func (m *maker) besideWhole(f *scheme.Field) bool {
	same := func(a, b string) bool {
		x, known := ingredient.Lookup(a)
		y, alike := ingredient.Lookup(b)
		return say.Fold(a) == say.Fold(b) || known && alike && (x.Name == y.Name || x.Kind == y.Kind && (x.Name == "oil" || x.Name == "fat" || y.Name == "oil" || y.Name == "fat"))
	}
	return slices.ContainsFunc(m.Fields, func(o scheme.Field) bool {
		return o.Col != f.Col && o.Role == column.IngredientAmount && len(o.Left) == 0 && same(o.Ingredient, f.Ingredient)
	})
}

// askColumn asks what a column is.
func (m *maker) askColumn(f *scheme.Field, blocks bool) {
	choices := []string{"ignore"}
	if plain := f.Almost.Plain(); plain != "" {
		choices = append([]string{plain}, choices...)
	}
	if f.Almost == column.IngredientAmount && f.Ingredient != "" {
		choices[0] = f.Ingredient
	}
	if f.Almost == column.EmulsifierAmount && f.Unit == units.NoUnit {
		choices = slices.Insert(choices, 1, "emulsifier % of mix")
	}
	asked := fmt.Sprintf("What is the column %s?", say.Quoted(f.Header))
	if len(f.Left) > 0 {
		asked = fmt.Sprintf("What is the column %s, as %s may change what it is?", say.Quoted(f.Header), say.Quoted(strings.Join(f.Left, " ")))
	}
	m.asks[f.Col] = &trial.Question{Asked: asked, Choices: choices, Blocks: blocks,
		Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, f.Unit.String()}}}
	if f.Doubt == "" {
		f.Doubt = asked
	}
}

// ingredient finds what a column's ingredient is: in the kitchen's own sheet, else
// among what is known by its whole name, else it is asked.
func (m *maker) ingredient(f *scheme.Field) {
	name := f.Called()
	if f.Told && f.What.Name != "" {
		f.What = m.met(name, f.What)
		return
	}
	if d, ok := m.kitchen.Ingredient(f.Header, name, f.Words); ok {
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
		m.say(trial.Note("said beside the table", st.At, fmt.Sprintf("%s is taken as %s, as this line says", say.Quoted(name), st.Is.Name),
			"nothing to do; a sheet Ingredients wins over it").OnceOf("what is " + name))
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

// stock takes a column as a stock, of an emulsifier with the HLB that its header or lines say.
func (m *maker) stock(f *scheme.Field, name string, s ingredient.Solution) {
	of := m.stated("", s.Of.Name, s.Of)
	if h := ownHLB.FindStringSubmatch(f.Header); h != nil && of.Kind == ingredient.Emulsifier {
		if v, err := strconv.ParseFloat(strings.Replace(h[1], ",", ".", 1), 64); err == nil && 0 < v && v <= ingredient.MostHLB {
			of.HLB, of.From = &ingredient.Range{Low: v, Value: v, High: v}, "the header says so"
		}
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

// saysFatFree reports a header that says of an ingredient that it has no fat; what is skimmed in part has.
func saysFatFree(header string) bool {
	return fatFree.MatchString(partSkimmed.ReplaceAllString(header, ""))
}

var partSkimmed = pattern.Of(`(?i)\b(?:semi|half|part|partly|partially)[ -]?skimmed\b`)

var fatFree = pattern.Of(`(?i)\b(?:fat[ -]?free|non[ -]?fat|(?:no|without|free of) fat|defatted|skimmed|fettfrei|entfettet|ohne fett|sans (?:gras|matière grasse)|sin grasa|desgrasad[oa]|senza grassi|sgrassat[oa]|vetvrij|ontvet|zonder vet)\b|\bdégraissée?(?:[^\pL]|$)|(?:^|[^\d.,])0(?:[.,]0+)? ?% ?(?:fat|mg|fett|vet|gras|grasa|grassi)\b`)

var (
	ownHLB = pattern.Of(`(?i)\bhlb[ =:]*(\d+(?:[.,]\d+)?)`)
	ownFat = pattern.Of(`(?i)(\d+(?:[.,]\d+)?) ?% ?(?:fat|fett|mg|gras)\b`)
)

// byItsNumber is an ingredient nobody knows whose header says what counts here: only
// an emulsifier has an HLB, and a fat percent is all of the mix that a food changes.
func byItsNumber(header string) (i ingredient.Ingredient, ok bool) {
	exact := func(text string) *ingredient.Range {
		v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil {
			return nil
		}
		return &ingredient.Range{Low: v, Value: v, High: v}
	}
	i.From = "the header says so"
	if m := ownHLB.FindStringSubmatch(header); m != nil {
		i.Kind, i.HLB = ingredient.Emulsifier, exact(m[1])
		return i, i.HLB != nil && i.HLB.Value > 0 && i.HLB.Value <= ingredient.MostHLB
	}
	if saysFatFree(header) {
		i.Kind, i.FatPercent = ingredient.Water, &ingredient.Range{}
		return i, true
	}
	if m := ownFat.FindStringSubmatch(header); m != nil {
		i.Kind, i.FatPercent = ingredient.Water, exact(m[1])
		if i.FatPercent != nil && i.FatPercent.Value >= leastFatOfFat {
			i.Kind = ingredient.Fat
		}
		return i, i.FatPercent != nil && i.FatPercent.Value <= 100
	}
	return i, false
}

// byItsHLB is an ingredient nobody knows whose HLB stands below its header or in a line
// beside the table: only an emulsifier has one.
func (m *maker) byItsHLB(name string) (i ingredient.Ingredient, ok bool) {
	st, ok := m.kitchen.Stated(name)
	if !ok || st.HLB == nil || st.Disputed || *st.HLB <= 0 || *st.HLB > ingredient.MostHLB {
		return i, false
	}
	m.say(trial.Note("said beside the table", st.At, fmt.Sprintf("%s is taken as an emulsifier of HLB %s, as this line says", say.Quoted(name), say.Number(*st.HLB)),
		"nothing to do; a sheet Ingredients wins over it").OnceOf(name))
	return ingredient.Ingredient{Kind: ingredient.Emulsifier, From: st.At.String(), HLB: &ingredient.Range{Low: *st.HLB, Value: *st.HLB, High: *st.HLB}}, true
}

// leastFatOfFat parts a food that brings the fat from one that has some.
const leastFatOfFat = 10

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
		m.say(trial.Note("said beside the table", st.At, fmt.Sprintf("%s is taken as %s, as this line says", say.Quoted(name), i.Name),
			"nothing to do; a sheet Ingredients wins over it").OnceOf("what is " + name))
	}
	if !ok {
		st, ok = m.kitchen.Stated(i.Name) // P80 in the header, polysorbate 80 in the line
	}
	if !ok || strings.HasPrefix(i.From, "the name says") {
		return i
	}
	if st.Disputed {
		m.say(trial.Check("said beside the table", st.At, "lines beside the table say two things of "+say.Quoted(name)+", so none is taken",
			"leave the one that is true, or type it in a sheet Ingredients").OnceOf(name))
		return i
	}
	exact := func(v *float64) *ingredient.Range { return &ingredient.Range{Low: *v, Value: *v, High: *v} }
	said := ""
	switch {
	case st.HLB != nil && i.Kind == ingredient.Emulsifier:
		i.HLB, said = exact(st.HLB), "HLB "+say.Number(*st.HLB)
	case st.Fat != nil && (i.Kind == ingredient.Fat || i.Kind == ingredient.Water):
		i.FatPercent, said = exact(st.Fat), say.Number(*st.Fat)+" % fat"
	default:
		return i
	}
	i.From = st.At.String()
	m.say(trial.Note("said beside the table", st.At, fmt.Sprintf("%s is taken as %s, as this line says", say.Quoted(name), said),
		"nothing to do; a sheet Ingredients wins over it").OnceOf(name))
	return i
}

// askKind asks what an ingredient is that nobody can name.
func (m *maker) askKind(f *scheme.Field) {
	name := f.What.Name
	like := ""
	if near := ingredient.Suggest(name); len(near) > 0 {
		like = "; like in spelling: " + strings.Join(near, ", ")
	}
	m.say(trial.Fix("unknown ingredient", m.Heading(f.Col), say.Quoted(name)+" is not an ingredient known here, so nobody can tell the fat and the emulsifier of the mix",
		fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is\" and the row \"%s | fat\", or water, emulsifier, thickener, other, or its common name%s", name, like)).Asking(trial.Question{Asked: "What is " + say.Quoted(name) + "?", Blocks: true,
		Choices: []string{"fat", "water", "emulsifier", "emulsifier without HLB", "thickener", "other"},
		Cure:    trial.Cure{Sheet: "Ingredients", Row: []string{name, trial.Open}}}))
}

// askStrength asks how strong a stock is.
func (m *maker) askStrength(f *scheme.Field, s ingredient.Solution) {
	f.Open = say.Quoted(f.Header) + " does not say how strong it is"
	m.say(trial.Fix("strength not said", m.Heading(f.Col), say.Quoted(f.Header)+" is a stock of "+s.Of.Name+" whose strength is not said",
		fmt.Sprintf("write the strength in the header, such as \"%s 10 %% solution g\"", s.Of.Name)).Asking(trial.Question{Asked: "How strong is " + say.Quoted(f.Header) + "?", Blocks: true,
		Choices: []string{s.Of.Name + " 10 % solution", s.Of.Name + " 20 % solution"},
		Cure:    trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, "g"}}}))
}

var numberInName = pattern.Of(`\d+(?:[.,]\d+)?`)

// askNameHLB asks about a number in the name of an emulsifier that is most likely
// its HLB and cannot be: "sucrose ester 51".
func (m *maker) askNameHLB(f *scheme.Field, i ingredient.Ingredient, name string) {
	head, _, _ := strings.Cut(name, "%")
	text := numberInName.FindString(head)
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || i.Kind != ingredient.Emulsifier || i.HLB != nil || v <= ingredient.MostHLB {
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

// reckon settles in what an amount's numbers are: grams, or a percent of a part of
// the mix. What they are of decides which basis can be meant where none is said.
func (m *maker) reckon(f *scheme.Field) {
	if f.Open != "" {
		return
	}
	switch f.Want {
	case units.Mass:
		if f.InGrams = true; f.What.Whole && f.Unit == units.NoUnit && !f.Told && m.fewPieces(f.Col) {
			f.Bare = units.NoUnit
			m.askWeight(f, "pieces")
		}
	case units.Volume:
		if f.GramsPerML == 0 && f.What.Name == "water" && f.Unit.Sized() {
			f.GramsPerML = waterGramsPerML
			m.say(trial.Note("water by volume", m.Heading(f.Col), say.Quoted(f.Header)+" is read as 1 g a millilitre", "nothing to do"))
		}
		if f.InGrams = f.GramsPerML > 0; !f.InGrams {
			m.askDensity(f)
		}
	case units.Percent:
		fatOrWater := f.What.Kind == ingredient.Fat || f.What.Kind == ingredient.Water
		if f.Basis == column.NoBasis && fatOrWater {
			f.Basis = column.OfMix // a fat or water part is a percent of nothing else
		}
		if f.Basis == column.OfDry {
			m.askDry(f)
		}
	default:
		m.askWeight(f, f.Bare.String())
	}
}

// waterGramsPerML is what water weighs: 0.998 g at 20 °C and 0.988 at 50 (from memory), within
// what a measuring jug tells.
const waterGramsPerML = 1

// askWeight asks what is in a column of pinches, drops or pieces.
func (m *maker) askWeight(f *scheme.Field, in string) {
	f.Open = say.Quoted(f.Header) + " is in " + in + ", which have no fixed weight"
	m.say(trial.Fix("no weight", m.Heading(f.Col), say.Quoted(f.Header)+" is in "+in+", which have no fixed weight",
		"weigh it and write g in the header; until then no formula is built on these trials").
		Asking(trial.Question{Asked: fmt.Sprintf("How many grams are in the column %s?", say.Quoted(f.Header)), Blocks: true,
			Choices: []string{"ignore"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, ""}}}))
}

func (m *maker) askDensity(f *scheme.Field) {
	f.Open = say.Quoted(f.Header) + " is a volume of unknown density"
	m.say(trial.Fix("volume", m.Heading(f.Col), say.Quoted(f.Header)+" is a volume, and its density is not known",
		"weigh it and write g in the header, or give \"0.92 g/mL\" (oil) or the like as the Basis in a sheet Columns").Asking(trial.Question{Asked: "What does a millilitre of " + say.Quoted(f.Called()) + " weigh?", Blocks: true,
		Choices: []string{"1.00 g/mL", "0.92 g/mL"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, f.Called(), "mL", trial.Open}}}))
}

func (m *maker) askDry(f *scheme.Field) {
	f.Open = say.Quoted(f.Header) + " is a percent of what is dry"
	f.Doubt = ""
	m.say(trial.Fix("percent of what", m.Heading(f.Col), say.Quoted(f.Header)+" is a percent of the dry matter, and how much of the mix is dry is not known",
		"type the percent of the whole mix under “fat %”").Asking(trial.Question{Asked: "Is " + say.Quoted(f.Header) + " a percent of the dry matter, or of the mix?", Blocks: true,
		Choices: []string{"of mix"}, Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, f.Role.Plain(), "%", trial.Open}}}))
}

// generic are amounts whose ingredient another column can name.
var generic = map[string]bool{"oil": true, "fat": true, "emulsifier": true, "emulsifiers together": true, "water part": true, "vegetable fat": true}

// types finds the columns that name the ingredient of each row's amount: "oil
// type" beside "oil g".
func (m *maker) types() {
	for i := range m.Fields {
		t := &m.Fields[i]
		if t.Role != column.IngredientType {
			continue
		}
		best := -1
		for k := range m.Fields {
			f := &m.Fields[k]
			if f.IsAmount() && (generic[f.What.Name] || onlyByPhase(f)) && f.TypeCol == 0 && kindOf(t.Words, t.Ingredient, f) &&
				(best < 0 || abs(f.Col-t.Col) < abs(m.Fields[best].Col-t.Col)) {
				best = k
			}
		}
		if best >= 0 {
			f := &m.Fields[best]
			f.TypeCol, f.Types = t.Col, m.typesIn(t.Col, f.What.Kind)
		}
	}
}

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

// typesIn is what the texts of a column of types name, as the kitchen's own sheets, what is
// known and the lines beside the table say.
func (m *maker) typesIn(col int, kind ingredient.Kind) map[string]ingredient.Ingredient {
	types := map[string]ingredient.Ingredient{}
	for n := range m.Rows() {
		text := m.Text(n, col)
		if _, seen := types[say.Fold(text)]; seen || text == "" || len(types) > mostTypes {
			continue
		}
		if d, ok := m.kitchen.Ingredient(text); ok {
			types[say.Fold(text)] = m.met(text, d.Ingredient)
		} else if i, ok := ingredient.Lookup(text); ok {
			types[say.Fold(text)] = m.met(text, m.stated(text, text, i))
		} else if st, ok := m.kitchen.Stated(text); ok && !st.Disputed {
			i := ingredient.Ingredient{Name: text, Kind: kind, From: "a line beside the table"}
			if st.Is != nil {
				i = *st.Is
			}
			types[say.Fold(text)] = m.met(text, m.stated(text, text, i))
		}
	}
	return types
}

// mostTypes bounds how many names of one column are remembered.
const mostTypes = 500

// kindOf reports whether a column of types speaks of an amount's kind.
func kindOf(words, named string, f *scheme.Field) bool {
	text := say.Fold(words + " " + named)
	switch {
	case strings.Contains(text, "emulsif") || strings.Contains(text, "emulg") || strings.Contains(text, "surfact"):
		return f.What.Kind == ingredient.Emulsifier
	case strings.Contains(text, "water") || strings.Contains(text, "liquid"):
		return f.What.Kind == ingredient.Water
	}
	return f.What.Kind == ingredient.Fat
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
