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
	own   bool     // the student's own sheet or header says its values
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

func mixOf(t *handin.Table, i int, rules criteria.Rules, meant Meant) mixture {
	m := mixture{total: math.NaN(), partial: true}
	for _, col := range t.Weighed() {
		c := col.Cells[i]
		p := part{name: col.Field.Called(), what: &col.Field.What, cell: c, grams: c.Value}
		if v, ok := meant[c.At]; ok {
			p.grams = v
		} else if !c.Known {
			m.open = m.open || !c.Blank() && c.Text != "-" && c.Text != "–"
			p.grams = 0
		}
		if p.name == "" {
			p.name = col.Header
		}
		p.values(rules)
		m.parts = append(m.parts, p)
		m.sum += p.grams
		if p.what.Kind == ingredient.Water || p.what.Kind == ingredient.Other {
			m.partial = false
		}
	}
	for _, a := range []struct {
		role column.Role
		set  func(p *part, v float64)
	}{{column.IngredientFat, func(p *part, v float64) { p.fat, p.own = exactly(v), true }},
		{column.IngredientHLB, func(p *part, v float64) { a := exactly(v); p.hlb, p.own = &a, true }}} {
		for _, col := range t.All(a.role) {
			if c := col.Cells[i]; c.Known && col.Field != nil {
				for k := range m.parts {
					if found, ok := ingredient.Lookup(col.Field.Ingredient); ok && found.Name == m.parts[k].what.Name || col.Field.Ingredient == m.parts[k].name {
						a.set(&m.parts[k], c.Value)
					}
				}
			}
		}
	}
	if col := t.Find(column.BatchMass); col != nil && col.Cells[i].Known {
		m.total = col.Cells[i].Value
		if v, ok := meant[col.Cells[i].At]; ok {
			m.total = v
		}
	}
	return m
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
