package column

import (
	"fmt"
	"foamfield/ingest/units"
	"strings"
)

// unexplained sets a column aside for words that nothing accounts for.
func (m Meaning) unexplained() Meaning {
	are := "is"
	if len(m.Left) > 1 {
		are = "are"
	}
	m.Doubt = fmt.Sprintf("%s in %q %s not understood, so the column was not used%s", quotedList(m.Left), m.typed, are,
		m.cure("if that changes nothing"))
	m.sure, m.Aim, m.Apart, m.Reversed = false, Actual, "", false
	return m.aside(None)
}

// quotedList is words in quotes, joined by "and".
func quotedList(list []string) string {
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = fmt.Sprintf("%q", w)
	}
	return strings.Join(words, " and ")
}

// askedApart sets a column aside that may be no amount of this mix.
func (m Meaning) askedApart() Meaning {
	m.Doubt = fmt.Sprintf("%q may not be what went into its mix (%q), so the column was not used%s", m.typed, m.Apart, m.cure("if it is"))
	if m.Role == None && amountUnit(m.Unit, m.Basis) {
		m.Role, m.Ingredient, m.Unknown = IngredientAmount, m.Words, true // "both together g"
	}
	return m.aside(None)
}

// elsewhere leaves a column unused that is surely something else.
func (m Meaning) elsewhere() Meaning {
	m.Doubt = fmt.Sprintf("%q was not used (%q)%s", m.typed, m.Apart, m.cure("if it went into the mix"))
	m.Unknown = false
	return m.aside(Unused)
}

// planned keeps what was meant as what went in, for want of better, but never
// takes a wish for a result.
func (m Meaning) planned() Meaning {
	switch {
	case seen(m.Role):
		m.Doubt = fmt.Sprintf("%q is what was wanted, not what was seen, so no result was read from it; a target belongs in the Targets sheet%s",
			m.typed, m.cure("if it was measured"))
		return m.aside(Unused)
	case m.Doubt == "" && m.Role != BlendHLB && m.Role != Unused && m.Role != Note:
		m.Doubt = fmt.Sprintf("%q was read as what went in, as no other column says it%s", m.typed, m.cure("if that is right"))
	}
	return m
}

// aside takes the column's role away and remembers it.
func (m Meaning) aside(as Role) Meaning {
	m.Almost, m.Role, m.could, m.Else = m.Role, as, nil, None
	return m
}

// cure says what to type if the words in the way change nothing.
func (m Meaning) cure(condition string) string {
	text := m.plainly()
	if text == "" {
		return ""
	}
	return fmt.Sprintf("; %s, type %q", condition, text)
}

// plainly is a header that says the column's role in its own unit and no more,
// "" if there is nothing to say.
func (m Meaning) plainly() string {
	text, unit, _ := strings.Cut(strings.TrimSuffix(plain[m.Role], ")"), " (")
	switch m.Role {
	case None, Unused:
		return ""
	case IngredientAmount:
		text, unit = m.Ingredient, "g"
	case IngredientHLB:
		text = "HLB " + m.Ingredient
	case IngredientFat:
		text = m.Ingredient + " fat"
	}
	if m.Unit != units.NoUnit && m.Role.Takes(m.Unit.Dimension()) {
		unit = m.Unit.String()
		if b := m.Basis.String(); b != "" && m.Unit.Dimension() == units.Percent {
			unit += " " + b
		}
	}
	if unit != "" {
		text += " (" + unit + ")"
	}
	if m.AtMinute > 0 && readAtMinute(m.Role) {
		text += fmt.Sprintf(" at %g min", m.AtMinute)
	}
	return text
}
