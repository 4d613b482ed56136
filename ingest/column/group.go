package column

import (
	"fmt"
	"foamfield/ingest/pattern"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/units"
)

// under reads a header below a group header: what the header leaves open comes
// from the group.
func (m Meaning) under(g Meaning, group string) Meaning {
	key := joined(tokens(group))
	titled := vocab().group[key]
	if t, ok := g.asTitle(); ok && !titled {
		g, titled = t, true
	}
	switch {
	case vocab().process[key] && m.Can(Hold) && m.Unit.Dimension() != units.Temperature:
		words := m.Words
		m = m.take(Rest)
		m.Doubt = fmt.Sprintf("%q stands under %q and was read as rest in the fridge; if it is how long the foam stood, type \"foam hold\"", words, group)
	case m.Can(TrialID) && g.Can(TrialID): // "Foam card / trial"
		return m
	case titled:
	case (g.Role == IngredientAmount || g.Role == EmulsifierAmount) && isAimWord(m.typed): // "GMS / recipe", "GMS / put in"
		m = Meaning{typed: m.typed, beside: []modifier{{sense: vocab().modifiers[joined(tokens(m.typed))], text: m.typed}}}.named(g)
	case m.empty && (g.Role != None || amountUnit(m.Unit, m.Basis) && hasWord(tokens(g.Words))):
		m = m.named(g)
	default:
		m = m.below(g)
	}
	m = m.qualified(g)
	if titled && m.Basis == NoBasis && m.Unit.Dimension() == units.Percent && vocab().basis[key] == OfMix && (m.Role == FatPercent || m.Role == EmulsifierAmount || m.Role == IngredientAmount) {
		m.Basis = OfMix // "Mix / lecithin %"
	}
	if !titled && g.Role == None {
		m.beside = append(slices.Clone(m.beside), only(g.beside, func(b modifier) bool { return b.sense&(meant|weighed|another|perhaps) != 0 })...)
	}
	return m
}

// asTitle is what a title says with its unit of the columns below it: "Mix (% by weight)".
func (g Meaning) asTitle() (title Meaning, ok bool) {
	words := joined(tokens(g.Words))
	if !vocab().group[words] || g.Unit == units.NoUnit || kindOf(g) != "" || saysWhose(g.beside) {
		return title, false
	}
	title = Meaning{Unit: g.Unit, Basis: g.Basis}
	if g.Unit.Dimension() == units.Percent && g.Basis == NoBasis && (vocab().basis[words] == OfMix || percentByMass.MatchString(g.typed)) {
		title.Basis = OfMix
	}
	return title, true
}

// saysWhose reports words that make a number another than what went in and came out.
func saysWhose(beside []modifier) bool {
	return slices.ContainsFunc(beside, func(b modifier) bool { return b.sense&(meant|another|perhaps|reversing|rate|byVolume) != 0 })
}

// below gives a header the meaning it has below a group that is a column itself:
// "Drained / oil", "GMS / HLB".
func (m Meaning) below(g Meaning) Meaning {
	if kind := kindOf(g); kind != "" && m.mayBeNamed(g) {
		m = m.take(IngredientAmount)
		m.Ingredient, m.Unknown, m.Within, m.Bare, m.left = m.Words, true, kind, false, nil
		return m
	}
	switch key := joined(tokens(m.Words)); {
	case m.Role == IngredientHLB && kindOf(g) == "emulsifier" && amountUnit(g.Unit, g.Basis) && (OnlyByPhase(m.Ingredient) || aloneHLB(tokens(m.Ingredient))): // "Emulsifiers (g) / low HLB"
		m = m.ofGrade()
	case m.Role == BatchMass && kindOf(g) != "" && m.Unit == units.NoUnit: // the total of the group
		total := m.Words
		m = Meaning{typed: m.typed, beside: []modifier{{sense: perhaps, text: total}}}.named(g)
	case m.Can(ReadingMinute) || m.Can(Time):
		switch g.Role {
		case Hold, Rest, HotHold, Shakes:
			return m.take(g.Role)
		case DrainedAmount, OilAmount:
			return m.take(DrainedAt)
		}
	case g.Role == Rest && m.Can(Hold):
		return m.take(Rest)
	case g.Role == DrainedAmount && m.Role == IngredientAmount && vocab().basis[key] == OfFat:
		return m.take(OilAmount)
	case g.Role == DrainedAmount && m.Role == IngredientAmount:
		return m.take(DrainedAmount)
	case g.Role == EmulsifierAmount && m.Role == FatPercent && m.Unit.Dimension() == units.Percent:
		m = m.take(EmulsifierAmount)
		m.Basis = OfFat // "emulsifier / fat (%)"
	case g.Role == IngredientAmount && (m.Role == BlendHLB || m.Role == FatPercent):
		m = m.take(map[Role]Role{BlendHLB: IngredientHLB, FatPercent: IngredientFat}[m.Role])
		m.Ingredient = g.Ingredient
	}
	return m
}

// kindOf is the kind of ingredient that a group's title names: fat, water part, emulsifier;
// "" where it names another thing or one ingredient.
func kindOf(g Meaning) string {
	what, _ := ingredient.Lookup(g.Ingredient)
	switch {
	case g.Role == EmulsifierAmount:
		return "emulsifier"
	case g.Role == FatPercent, g.Role == IngredientAmount && what.Name == "fat":
		return "fat"
	case g.Role == IngredientAmount && what.Name == "water part":
		return "water part"
	}
	return ""
}

// isPhase reports a title of the fats that went in, not of how fat they are: "Fat phase (% of mix)".
func isPhase(group string) bool {
	for _, t := range tokens(group) {
		switch strings.TrimPrefix(strings.TrimPrefix(t.text, "fett"), "vet") {
		case "phase", "fase", "part", "parts", "partie", "parte", "deel", "fats", "fettanteil":
			return true
		}
	}
	return false
}

// mayBeNamed reports whether the words of a header below a group of amounts may be the name
// of one: they say nothing else here, or are an ingredient's beside a unit of mass.
func (m Meaning) mayBeNamed(g Meaning) bool {
	unit := m.Unit
	if unit == units.NoUnit {
		unit = g.Unit
	}
	if unit.Dimension() != units.Mass && unit.Dimension() != units.Percent || !hasWord(tokens(m.Words)) {
		return false
	}
	if len(m.left) > 0 { // "fond nach Art des Hauses" is no minute in grams
		return m.Role != None && !m.Role.Takes(unit.Dimension()) && m.Unit == units.NoUnit
	}
	_, known := ingredient.Lookup(m.Words)
	return m.Role == None || m.Role == IngredientAmount && m.Unknown || known && m.Role == DrainedAmount && unit.Dimension() == units.Mass
}

// qualified gives a header the unit, basis, minute and scale of its group where
// it has none.
func (m Meaning) qualified(g Meaning) Meaning {
	if m.Unit == units.NoUnit && g.Unit != units.NoUnit && m.Role.Takes(g.Unit.Dimension()) && m.Role != BlendHLB {
		m.Unit = g.Unit
		if len(m.could) > 1 {
			m.could = fitting(m.could, m.Unit.Dimension())
			m = m.as(m.could[0])
		}
	}
	if m.Basis == NoBasis {
		m.Basis, m.BasisName = g.Basis, g.BasisName
	}
	if m.IfPercent == NoBasis {
		m.IfPercent = g.IfPercent
	}
	if m.AtMinute == 0 {
		m.AtMinute, m.minute = g.AtMinute, g.minute
	}
	if m.OutOf == 0 {
		m.OutOf, m.scale = g.OutOf, g.scale
	}
	return m
}

// named gives a header that is only a unit, a basis, a minute or a modifier the
// name of its group: "Butter / g", "Drained / 20 min", "GMS / plan".
func (m Meaning) named(g Meaning) Meaning {
	if g.Role == None {
		g.Role, g.Ingredient, g.Unknown = IngredientAmount, strings.TrimSpace(g.Words), true
	}
	named := g
	named.typed += " / " + m.typed
	named.Words = strings.TrimSpace(strings.TrimSpace(g.Words) + " " + m.Words)
	named.beside = append(slices.Clone(g.beside), m.beside...)
	named.left = append(slices.Clone(g.left), m.left...)
	named.Unit, named.Basis, named.BasisName, named.Doubt = m.Unit, m.Basis, m.BasisName, m.Doubt
	named.AtMinute, named.minute, named.OutOf, named.scale = m.AtMinute, m.minute, m.OutOf, m.scale
	named.YesNo, named.clock, named.Bare = g.YesNo || m.YesNo, g.clock || m.clock, false
	named = named.qualified(g)
	if len(named.could) > 0 {
		named.could = fitting(named.could, named.Unit.Dimension())
		return named.as(named.could[0])
	}
	named.Role = named.Role.shifted(named.Unit.Dimension())
	return named
}

// Can reports whether the header's words can have the role.
func (m Meaning) Can(r Role) bool {
	for _, e := range m.could {
		if e.role == r {
			return true
		}
	}
	return m.Role == r
}

// IsGroup reports whether a text is a title that stands above several columns
// or, in a card, above several rows: "RESULTS", "Rezeptur".
func IsGroup(text string) bool {
	return len(text) <= maxHeader && vocab().group[joined(tokens(text))]
}

// IsAim reports whether a text says only whose number it is: "plan", "weighed", "soll".
func IsAim(text string) bool {
	if len(text) > maxHeader || isAimWord(text) {
		return len(text) <= maxHeader
	}
	m := readPart(text) // "plan g"
	return m.empty && m.Unit != units.NoUnit && len(m.left) == 0 && len(m.beside) > 0 && !slices.ContainsFunc(m.beside, func(b modifier) bool { return b.sense&aims == 0 })
}

// aims are the words that say whose number it is.
const aims = meant | weighed | computed | nothingOfAmount

func isAimWord(text string) bool { return vocab().modifiers[joined(tokens(text))]&aims != 0 }

// IsYesNo reports whether a text offers two answers, as a row of units does:
// "y/n", "(o/n)", "ja/nein".
func IsYesNo(text string) bool {
	ts := slices.DeleteFunc(tokens(text), func(t token) bool { return t.kind == sign })
	return len(text) <= maxHeader && len(ts) == 2 && ts[0].kind == word && ts[1].kind == word && vocab().yesNo[joined(ts)]
}

// take fixes the role.
func (m Meaning) take(r Role) Meaning {
	m.Role, m.could, m.Else, m.Ingredient, m.sure = r, nil, None, "", true
	return m
}

// settled chooses among several meanings: by language if one is known, else
// the English one, else the first; and says what it chose.
func (m Meaning) settled(lang languages) Meaning {
	if len(m.could) > 1 {
		all := m.could
		choice := all
		if lang != 0 {
			choice = speaking(choice, lang)
		} else {
			choice = speaking(choice, english)
		}
		m = m.as(choice[0])
		m.Else = None
		rest := all
		if lang != 0 {
			rest = choice
		}
		for _, e := range rest {
			if e.role != choice[0].role {
				m.Else = e.role
				break
			}
		}
		if m.Else != None && m.Doubt == "" {
			m.Doubt = fmt.Sprintf("%q was read as %s; if it is %s, type %q", m.Words, choice[0].role, m.Else, plain[m.Else])
		}
	}
	return m.finished(lang)
}

// finished lets the words beside the name have their say and drops what does not
// belong to the role.
func (m Meaning) finished(lang languages) Meaning {
	d := m.Unit.Dimension()
	if m.Role == None && m.Words == "" && d == units.Temperature {
		m.Role, m.sure = Temperature, true
	}
	if d == units.Temperature && amountOfMix[m.Role] && degrees.MatchString(m.typed) {
		m.Role, m.Else, m.Ingredient, m.Doubt = Temperature, None, "", "" // "oil °C": how warm it was
	}
	m = m.weigh()
	switch m.Role {
	case EmulsifierAmount, IngredientAmount:
		if m.Basis == NoBasis && d == units.Percent && percentByMass.MatchString(m.typed) {
			m.Basis = OfMix
		}
		if d == units.Mass || d == units.Volume {
			m.Basis = NoBasis // "emulsifier (total) g"
		}
	case None, FatPercent, IngredientFat:
	default:
		m.Basis = NoBasis
	}
	m = m.fatOrAmount()
	if m.Doubt == "" && m.Role != None {
		m = m.doubted(lang)
	}
	return m
}

var amountOfMix = map[Role]bool{IngredientAmount: true, EmulsifierAmount: true, FatPercent: true}

// degrees tells °C from the letter of "oil C", the third of three oils.
var degrees = pattern.Of(`(?i)[°º˚]|\b(?:deg|degrees|celsius|fahrenheit|grad|gradi|grados|degrés)\b`)

// percentByMass is how a percent of the whole is written: grams in 100 g.
var percentByMass = pattern.Of(`(?i)%\s*[(,]*\s*(w/w|m/m|p/p)|\b(?:wt|gew|ma)\.?\s*-?\s*%|(w/w|m/m|p/p)\s*%|\(?(w/w|m/m|p/p)\)?\s*$|mass fraction|weight fraction|fraction massique|Massenanteil|massafractie`)

// doubted adds what is in doubt by the header's words and unit alone.
func (m Meaning) doubted(lang languages) Meaning {
	d, key := m.Unit.Dimension(), joined(tokens(m.Words))
	long := (m.Unit == units.Hour || m.Unit == units.Day) && !m.clock
	switch {
	case m.Role == Hold && long && strings.HasPrefix(key, "hold"):
		m.Else = Rest
		m.Doubt = fmt.Sprintf("%q in hours was read as how long the foam stood; if it is the rest in the fridge, type \"rest (h)\"", m.Words)
	case m.Role == Score && schoolMarks[key] && m.german(lang):
		m.Doubt = "German school marks run the other way, 1 is best; if these do, type 7 minus the mark under the header Punkte"
	case m.Role == Chargers && d == units.Mass: // grams of gas
	case d != units.Any && len(roles[m.Role].takes) > 0 && !m.Role.Takes(d):
		m.Doubt = fmt.Sprintf("%s does not fit %s; type the unit of %q", m.Unit, m.Role, m.Words)
	}
	return m
}

// german reports whether a word for marks is the German one.
func (m Meaning) german(lang languages) bool {
	return lang == german && m.OutOf == 0 || m.lang == german || m.OutOf == 6
}

// fatOrAmount notes that a bare word for fat may be percents or grams, which its
// numbers tell.
func (m Meaning) fatOrAmount() Meaning {
	if m.Unit != units.NoUnit || m.Basis != NoBasis || m.Else != None || m.Fuzzy {
		return m
	}
	i, known := ingredient.Lookup(m.Words)
	switch {
	case m.Role == FatPercent && (known || strings.Contains(" "+joined(tokens(m.Words))+" ", " total ")):
		m.Else = IngredientAmount
	case m.Role == IngredientAmount && known && i.Kind == ingredient.Fat && vocab().saysFat(m.Words):
		m.Else = FatPercent
	}
	return m
}

// saysFat reports whether one of some words is a word for all fat, or all are a
// word for oil: "duck fat", "oil".
func (v *vocabulary) saysFat(words string) bool {
	ts := tokens(words)
	for _, t := range ts {
		if p := v.phrases[t.text]; p != nil && p.entries[0].role == FatPercent {
			return true
		}
	}
	return len(ts) == 1 && v.basis[ts[0].text] == OfFat && general(words)
}

// schoolMarks are the words for German school marks, which no other scale has.
var schoolMarks = map[string]bool{"note": true, "noten": true, "gesamtnote": true, "schulnote": true, "schulnoten": true, "geschmacksnote": true}

// plain is a header text that is read as the role without doubt.
var plain = map[Role]string{
	TrialID: "trial", Repeat: "repeat", Order: "run order", Day: "date", Time: "time of day", Cook: "cook", Student: "student",
	Dish: "dish", Canister: "canister (L)", CanisterID: "canister no", Fill: "fill level", Chargers: "chargers", Shakes: "shakes",
	Rest: "rest (h)", HotHold: "hot hold (min)", Temperature: "temperature (°C)", BatchMass: "batch weight (g)", FatPercent: "fat (%)",
	IngredientAmount: "monoglyceride (g)", EmulsifierAmount: "total emulsifier (g)", BlendHLB: "blend HLB", Hold: "foam hold (min)",
	HoldOver: "last look standing (min)", GoneBy: "first gone (min)", DrainedAmount: "drained (%)", OilAmount: "oil drained (mL)",
	SampleMass: "foam sample (g)", DrainedAt: "drained at (min)", ReadingMinute: "reading (min)", CameOut: "came out", Clogged: "clogged",
	Broke: "broke", OilLeak: "oil leak", Overrun: "overrun (%)", DispensedMass: "grams out", Spread: "spread (mm)", Grainy: "grainy",
	Score: "score", Mouthfeel: "mouthfeel", Result: "result", Note: "notes", Shear: "whisk", Unused: "photo", Strained: "strained",
	LeftInside: "left inside (g)", CupLiquid: "cup liquid (g)", CupFoam: "cup foam (g)", ChargerLot: "charger lot", IngredientLot: "lot no", Supplier: "supplier", Week: "week no", Spits: "spits",
	Nozzle: "nozzle", Squirt: "squirt", IngredientFat: "cream fat (%)", IngredientHLB: "HLB GMS",
	EmulsifierRatio: "ratio GMS:polysorbate 80", PhaseRatio: "ratio oil:water", IngredientType: "oil type", StartedAt: "dispensed at", FellAt: "fell at", Measure: "pH", Valid: "valid", RepeatOf: "repeat of",
}

// Plain is a header text that is read as the role without doubt, to tell
// people what to type; "" if there is none.
func (r Role) Plain() string { return plain[r] }
