package settle

import (
	"math"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Some columns add others up: a phase beside its ingredients, or ounces beside grams. They are no
// part of the mix of their own, and unless they add up all of it not its mass either.

// saysTotal are words of a header that adds others up.
var saysTotal = pattern.Of(`(?i)(?:^|[^\pL])(?:sub-?total|total|totals|tot|sum|summe|gesamt|zusammen|insgesamt|zwischensumme|somme|sous-total|suma|totale|subtotale|somma|totaal|subtotaal|som)(?:[^\pL]|$)`)

// leastSummed is the rows in which a sum must be one.
const leastSummed = 3

// subtotals leaves out the columns that add up a part of the mix which stands beside them ingredient
// by ingredient, "oil phase total (g)": counting them would weigh these twice.
func (m *maker) subtotals(settled map[int]rivalry) {
	for k := range m.Found.Heads {
		h := &m.Found.Heads[k]
		if h.Meaning.Role != column.IngredientAmount || !saysTotal.MatchString(h.Text) || m.declaredByKitchen(k) {
			continue
		}
		var parts []int
		for from := k - 1; from >= 0 && m.isPart(from) && settled[from] != sameAgain; from-- {
			parts = append(parts, from)
			if fits, rows := m.sums(k, parts); rows >= leastSummed && fits == rows && m.partsBesides(from, k) {
				settled[k] = sameAgain
				m.say(trial.Note("column twice", m.Heading(k+1), m.named([]int{k})+" adds up columns beside it, so it is not counted again", "nothing to do"))
				break
			}
		}
	}
}

// isPart reports a column of one ingredient, or of emulsifiers, by mass.
func (m *maker) isPart(k int) bool {
	n := m.Found.Heads[k].Meaning
	return (n.Role == column.IngredientAmount || n.Role == column.EmulsifierAmount) && (n.Unit == units.NoUnit || n.Unit.Dimension() == units.Mass)
}

// partsBesides reports an ingredient outside the columns from up to k: else these are all the mix.
func (m *maker) partsBesides(from, k int) bool {
	for i := range m.Found.Heads {
		if (i < from || i > k) && m.isPart(i) {
			return true
		}
	}
	return false
}

// partSums leaves out the sums of a part of the mix beside that of all of it: ounces of cream and
// water added up, where emulsifiers stand in grams.
func (m *maker) partSums(settled map[int]rivalry, rivals []int) []int {
	if len(rivals) != 2 {
		return rivals
	}
	return slices.DeleteFunc(rivals, func(k int) bool {
		h := &m.Found.Heads[k]
		if h.Meaning.Else != column.BatchMass || !m.sumsItsUnit(k) {
			return false
		}
		settled[k] = sameAgain
		m.say(trial.Note("column twice", m.Heading(k+1), m.named([]int{k})+" adds up only what is in its own unit, so it is not the mass of the whole mix", "nothing to do"))
		return true
	})
}

// sumsItsUnit reports a column that is the sum of the ingredients in its unit, where others are in another.
func (m *maker) sumsItsUnit(k int) bool {
	unit := m.Found.Heads[k].Meaning.Unit
	var parts []int
	others := false
	for i := range m.Found.Heads {
		if n := m.Found.Heads[i].Meaning; n.Role == column.IngredientAmount && n.Unit == unit {
			parts = append(parts, i)
		} else if n.Role == column.IngredientAmount && n.Unit.Dimension() == units.Mass {
			others = true
		}
	}
	if len(parts) < 2 || !others || unit.Dimension() != units.Mass {
		return false
	}
	fits, rows := m.sums(k, parts)
	return rows >= leastSummed && nearlyAll(fits, rows)
}

// sums counts the rows in which a column and its parts are masses, and those of them in which it
// is their sum. A part that is left empty is none.
func (m *maker) sums(total int, parts []int) (fits, rows int) {
	for n := range m.Rows() {
		said, known := m.weighable(m.Cell(n, total+1))
		sum := 0.0
		for _, k := range parts {
			v, ok := m.weighable(m.Cell(n, k+1))
			known = known && (ok || m.Text(n, k+1) == "")
			sum += v
		}
		if !known || said <= 0 {
			continue
		}
		if rows++; math.Abs(sum-said) <= 0.005*said {
			fits++
		}
	}
	return fits, rows
}
