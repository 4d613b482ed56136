package recalc

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
)

// part is one ingredient of a trial.
type part struct {
	name  string
	what  *ingredient.Ingredient
	grams float64
	cell  handin.Cell
	fat   accepted // percent; all NaN where nobody knows
	hlb   *accepted
}

// mixture is a trial's mix in grams.
type mixture struct {
	parts   []part
	sum     float64
	total   float64 // the student's own; NaN without one
	partial bool    // no water stands among the parts: only the total knows the rest
	open    bool    // some part is not known
}

// mixesOf are the readings of a trial's mix: as typed, and with what was meant.
func mixesOf(t *handin.Table, i int, rules criteria.Rules, meant Meant) []mixture {
	typed := mixOf(t, i, rules, nil)
	for _, p := range typed.parts {
		if _, ok := meant[p.cell.At]; ok {
			return []mixture{typed, mixOf(t, i, rules, meant)}
		}
	}
	return []mixture{typed}
}

// mixOf is a trial's mix in grams.
func mixOf(t *handin.Table, i int, rules criteria.Rules, meant Meant) mixture {
	m := mixture{total: math.NaN(), partial: true}
	for _, col := range t.Weighed() {
		p, known := partOf(col, i, rules, meant)
		m.open = m.open || !known
		m.parts = append(m.parts, p)
		m.sum += p.grams
		m.partial = m.partial && p.what.Kind != ingredient.Water && p.what.Kind != ingredient.Other
	}
	m.own(t, i)
	if col := t.Find(column.BatchMass); col != nil && col.Cells[i].Known {
		m.total = col.Cells[i].Value
		if v, ok := meant[col.Cells[i].At]; ok {
			m.total = v
		}
	}
	return m
}

// partOf is one ingredient of a trial; known is false for a cell that nobody can read.
func partOf(col *handin.Column, i int, rules criteria.Rules, meant Meant) (p part, known bool) {
	c := col.Cells[i]
	p = part{name: col.Field.Called(), what: &col.Field.What, cell: c}
	if p.name == "" {
		p.name = col.Header
	}
	p.values(rules)
	if v, ok := meant[c.At]; ok {
		p.grams = v
		return p, true
	}
	if c.Known {
		p.grams = c.Value
	}
	return p, c.Known || c.Blank() || c.Text == "-" || c.Text == "–"
}

// own gives the parts the values that the trial's own columns have for them: the fat of
// today's cream, the HLB of this bag.
func (m *mixture) own(t *handin.Table, i int) {
	for _, role := range []column.Role{column.IngredientFat, column.IngredientHLB} {
		for _, col := range t.All(role) {
			c := col.Cells[i]
			if !c.Known || col.Field == nil {
				continue
			}
			found, known := ingredient.Lookup(col.Field.Ingredient)
			for k := range m.parts {
				p, a := &m.parts[k], exactly(c.Value)
				switch {
				case !(known && found.Name == p.what.Name) && col.Field.Ingredient != p.name:
				case role == column.IngredientFat:
					p.fat = a
				default:
					p.hlb = &a
				}
			}
		}
	}
}

// values gives a part the fat percents and HLBs that count as right.
func (p *part) values(rules criteria.Rules) {
	known := p.what.Known
	if known == "" {
		known = p.what.Name
	}
	nan := math.NaN()
	p.fat = accepted{nan, nan, nan}
	switch r := p.what.FatPercent; {
	case r != nil:
		p.fat = accepted{r.Low, r.Value, r.High}
	case p.what.Kind != ingredient.Fat && !p.what.Whole:
		p.fat = exactly(0)
	}
	if r, ok := rules.Fats[known]; ok && p.what.Kind == ingredient.Fat {
		p.fat = hull(p.fat, r)
	}
	if r := p.what.HLB; r != nil && p.what.Kind == ingredient.Emulsifier {
		a := accepted{r.Low, r.Value, r.High}
		if more, ok := rules.HLBs[known]; ok {
			a = hull(a, more)
		}
		p.hlb = &a
	}
}

// hull widens a range by another.
func hull(a accepted, r ingredient.Range) accepted {
	if math.IsNaN(a.value) {
		return accepted{r.Low, r.Value, r.High}
	}
	return accepted{min(a.low, r.Low), a.value, max(a.high, r.High)}
}

// denominators are what percents of the mix may be of: the sum, and the student's own
// total.
func (m *mixture) denominators() (out []float64) {
	if !m.partial && m.sum > 0 {
		out = append(out, m.sum)
	}
	if !math.IsNaN(m.total) && m.total > 0 {
		out = append(out, m.total)
	}
	return out
}

// of sums the grams of some parts.
func (m *mixture) of(which func(*part) bool) (g float64) {
	for i := range m.parts {
		if which(&m.parts[i]) {
			g += m.parts[i].grams
		}
	}
	return g
}

func isFat(p *part) bool        { return p.what.Kind == ingredient.Fat }
func isWater(p *part) bool      { return p.what.Kind == ingredient.Water }
func isEmulsifier(p *part) bool { return p.what.WeighedAsEmulsifier() }

// fatGrams is the fat of a mix with the range its ingredients leave.
func (m *mixture) fatGrams() (a accepted, ok bool) {
	for i := range m.parts {
		p := &m.parts[i]
		if p.grams == 0 {
			continue
		}
		if math.IsNaN(p.fat.value) {
			return a, false
		}
		a.low, a.value, a.high = a.low+p.grams*p.fat.low/100, a.value+p.grams*p.fat.value/100, a.high+p.grams*p.fat.high/100
	}
	return a, true
}

// names joins the names of some parts.
func (m *mixture) names(which func(*part) bool) string {
	var out []string
	for i := range m.parts {
		if p := &m.parts[i]; which(p) && p.grams > 0 {
			out = append(out, p.name)
		}
	}
	return strings.Join(out, " and ")
}

// listed writes grams to be added: "120 + 174 + 4".
func (m *mixture) listed(which func(*part) bool) string {
	var out []string
	for i := range m.parts {
		if p := &m.parts[i]; which(p) && p.grams != 0 {
			out = append(out, num(p.grams))
		}
	}
	if len(out) == 0 {
		return "0"
	}
	return strings.Join(out, " + ")
}

func anyPart(*part) bool { return true }

// fatWritten writes the fat out: "120 × 0.82 + 40 × 0.35".
func (m *mixture) fatWritten() string {
	var out []string
	for i := range m.parts {
		if p := &m.parts[i]; p.fat.value > 0 && p.grams > 0 {
			out = append(out, fmt.Sprintf("%s × %s", num(p.grams), num(p.fat.value/100)))
		}
	}
	if len(out) == 0 {
		return "0"
	}
	return strings.Join(out, " + ")
}
