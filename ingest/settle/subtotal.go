package settle

import (
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// saysTotal are words of a header that adds others up.
var saysTotal = pattern.Of(`(?i)(?:^|[^\pL])(?:sub-?total|total|totals|tot|sum|summe|gesamt|zusammen|insgesamt|zwischensumme|somme|sous-total|suma|totale|subtotale|somma|totaal|subtotaal|som)(?:[^\pL]|$)`)

// leastAdded is the rows in which a subtotal must be one.
const leastAdded = 3

// subtotals are the heads that add up a part of the mix which stands beside them ingredient by
// ingredient, "oil phase total (g)": counting them would weigh these twice.
func (m *maker) subtotals() map[int]bool {
	out := map[int]bool{}
	for k := range m.Found.Heads {
		h := &m.Found.Heads[k]
		if h.Meaning.Role != column.IngredientAmount || !saysTotal.MatchString(h.Text) {
			continue
		}
		for from := k - 1; from >= 0 && m.isPart(from) && !out[from]; from-- {
			if m.addsRun(k, from) && m.partsBesides(from, k) {
				out[k] = true
				m.say(trial.Note("column twice", m.Heading(k+1), m.named([]int{k})+" adds up columns beside it, so it is not counted again", "nothing to do"))
				break
			}
		}
	}
	return out
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

// addsRun reports a column that in each row is the sum of those from another up to it.
func (m *maker) addsRun(k, from int) bool {
	rows := 0
	for n := range m.Rows() {
		total, err := plainly(m.Text(n, k+1))
		if err != nil || !(total > 0) {
			continue
		}
		sum := 0.0
		for i := from; i < k; i++ {
			v, err := plainly(m.Text(n, i+1))
			if err != nil && m.Text(n, i+1) != "" {
				return false
			}
			sum += v
		}
		if math.Abs(sum-total) > 0.005*total {
			return false
		}
		rows++
	}
	return rows >= leastAdded
}
