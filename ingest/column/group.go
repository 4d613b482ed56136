package column

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/quantity"
)

// under reads a header below a group header: what the header leaves open comes
// from the group.
func (m Meaning) under(g Meaning, group string) Meaning {
	key := joined(tokens(group))
	titled := vocab().group[key]
	words := m.Words
	switch {
	case vocab().process[key] && m.Can(Hold) && m.Unit.Dimension() != quantity.Temperature:
		m = m.take(Rest)
		m.Doubt = fmt.Sprintf("%q stands under %q and was read as rest in the fridge; if it is how long the foam stood, type \"foam hold\"", words, group)
	case g.Role == None || titled:
	case m.Role == None && m.Words == "":
		// Only a unit, a basis or a minute: "Butter / g", "Drained / 20 min".
		g.Words = strings.TrimSpace(g.Words)
		m.Role, m.Ingredient, m.Words, m.could, m.lang, m.sure, m.Fuzzy = g.Role, g.Ingredient, g.Words, g.could, g.lang, g.sure, g.Fuzzy
		if len(m.could) > 0 {
			m.could = fitting(m.could, m.Unit.Dimension())
			m = m.as(m.could[0])
		} else if moved := m.Role.shifted(m.Unit.Dimension()); moved != m.Role {
			m.Role = moved
		}
	case m.Can(ReadingMinute) || m.Can(Time):
		switch g.Role {
		case Hold:
			m = m.take(Hold)
		case DrainedAmount, OilAmount:
			m = m.take(DrainedAt)
		case Rest, HotHold, Shakes:
			m = m.take(g.Role)
		}
	case g.Role == Rest && m.Can(Hold):
		m = m.take(Rest)
	case g.Role == DrainedAmount && m.Role == IngredientAmount:
		m = m.take(DrainedAmount)
		if strings.Contains(" oil fat huile aceite olio ol grasa gras grasso fett ", " "+joined(tokens(words))+" ") {
			m = m.take(OilAmount)
		}
	case g.Role == IngredientAmount && m.Role == BlendHLB:
		m = m.take(IngredientHLB)
		m.Ingredient = g.Ingredient
	case g.Role == IngredientAmount && m.Role == FatPercent:
		m = m.take(IngredientFat)
		m.Ingredient = g.Ingredient
	}
	if m.Unit == quantity.NoUnit && g.Unit != quantity.NoUnit && m.Role.Takes(g.Unit.Dimension()) {
		m.Unit = g.Unit
		if len(m.could) > 1 {
			m.could = fitting(m.could, m.Unit.Dimension())
			m = m.as(m.could[0])
		}
	}
	if m.Basis == NoBasis {
		m.Basis = g.Basis
	}
	if m.AtMinute == 0 {
		m.AtMinute = g.AtMinute
	}
	if m.OutOf == 0 {
		m.OutOf = g.OutOf
	}
	return m
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

// finished drops what does not belong to the role and adds the doubts that
// hold whatever the other headers say.
func (m Meaning) finished(lang languages) Meaning {
	d := m.Unit.Dimension()
	if m.Role == None && m.Words == "" && d == quantity.Temperature {
		m.Role, m.sure = Temperature, true
	}
	switch m.Role {
	case IngredientAmount, EmulsifierAmount, FatPercent, IngredientFat:
	default:
		if m.Role != None {
			m.Basis = NoBasis
		}
	}
	if m.Role != Score && m.Role != Mouthfeel && m.Role != Grainy && m.Role != None {
		m.OutOf = 0
	}
	if m.Doubt != "" || m.Role == None {
		return m
	}
	key := joined(tokens(m.Words))
	switch {
	case m.Role == Hold && (d == quantity.Minutes && (m.Unit == quantity.Hour || m.Unit == quantity.Day)) && strings.HasPrefix(key, "hold"):
		m.Else = Rest
		m.Doubt = fmt.Sprintf("%q in hours was read as how long the foam stood; if it is the rest in the fridge, type \"rest (h)\"", m.Words)
	case m.Role == Score && schoolMarks[key] && (lang == german || m.lang == german || m.OutOf == 6):
		m.Doubt = "German school marks run the other way, 1 is best; if these do, type 7 minus the mark under the header Punkte"
	case m.Role == Chargers && d == quantity.Mass: // grams of gas
	case d != quantity.Any && len(roles[m.Role].takes) > 0 && !m.Role.Takes(d):
		m.Doubt = fmt.Sprintf("%s does not fit %s; type the unit of %q", m.Unit, m.Role, m.Words)
	}
	return m
}

// schoolMarks are the words for German school marks, which no other scale has.
var schoolMarks = map[string]bool{"note": true, "noten": true, "gesamtnote": true, "schulnote": true, "schulnoten": true, "geschmacksnote": true}

// plain is a header text that is read as the role without doubt.
var plain = map[Role]string{
	TrialID: "trial", Repeat: "repeat", Order: "run order", Day: "date", Time: "time of day", Cook: "cook", Student: "student",
	Dish: "dish", Canister: "canister (L)", CanisterID: "canister no", Fill: "fill level", Chargers: "chargers", Shakes: "shakes",
	Rest: "rest (h)", HotHold: "hot hold (min)", Temperature: "temperature (°C)", BatchMass: "batch weight (g)", FatPercent: "fat %",
	IngredientAmount: "monoglyceride (g)", EmulsifierAmount: "total emulsifier (g)", BlendHLB: "blend HLB", Hold: "foam hold (min)",
	HoldOver: "last look standing (min)", GoneBy: "first gone (min)", DrainedAmount: "drained (%)", OilAmount: "oil drained (mL)",
	SampleMass: "foam sample (g)", DrainedAt: "drained at (min)", ReadingMinute: "reading (min)", CameOut: "came out", Clogged: "clogged",
	Broke: "broke", OilLeak: "oil leak", Overrun: "overrun (%)", DispensedMass: "grams out", Spread: "spread (mm)", Grainy: "grainy",
	Score: "score", Mouthfeel: "mouthfeel", Result: "result", Note: "notes", Shear: "whisk", Unused: "photo", Strained: "strained",
	LeftInside: "left inside (g)", CupLiquid: "cup liquid (g)", CupFoam: "cup foam (g)", ChargerLot: "charger lot", IngredientLot: "lot no", Spits: "spits",
	Nozzle: "nozzle", Squirt: "squirt", IngredientFat: "cream fat (%)", IngredientHLB: "HLB GMS",
}

// Plain is a header text that is read as the role without doubt, to tell
// people what to type; "" if there is none.
func (r Role) Plain() string { return plain[r] }
