// Package mixture is a trial of a student as a mix in grams: its parts, its fat, its blend HLB,
// and the ways in which these go wrong.
package mixture

import (
	"fmt"
	"foamfield/analysis/grade/verdict"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// Meant are cells that the record shows to be slips, with what was meant.
type Meant map[trial.Place]float64

// Part is one ingredient of a trial.
type Part struct {
	Name  string
	What  *ingredient.Ingredient
	Grams float64
	Cell  handin.Cell
	Fat   verdict.Accepted // percent; all NaN where nobody knows
	HLB   *verdict.Accepted
}

// Said is the name within a sentence: "Butter" of a header is butter there, where that is a common
// word and no name of a maker's.
func (p *Part) Said() string {
	words := strings.Fields(p.Name)
	for i, w := range words {
		if low := strings.ToLower(w); slices.Contains(strings.Fields(p.What.Name), low) {
			words[i] = low
		}
	}
	return strings.Join(words, " ")
}

// Mixture is a trial's mix in grams.
type Mixture struct {
	Parts   []Part
	Sum     float64
	total   float64 // the student's own; NaN without one
	partial bool    // no water stands among the parts: only the total knows the rest
	Open    bool    // some part is not known
	blind   bool    // of the emulsifiers one is not known
}

// MixesOf are the readings of a trial's mix: as typed, and with what was meant.
func MixesOf(t *handin.Table, i int, rules criteria.Rules, meant Meant) []Mixture {
	typed := MixOf(t, i, rules, nil)
	for _, p := range typed.Parts {
		if _, ok := meant[p.Cell.At]; ok {
			return []Mixture{typed, MixOf(t, i, rules, meant)}
		}
	}
	return []Mixture{typed}
}

// MixOf is a trial's mix in grams.
func MixOf(t *handin.Table, i int, rules criteria.Rules, meant Meant) Mixture {
	m := Mixture{total: math.NaN(), partial: true}
	var fill []int // water of which only the mark is said to which it was filled up
	for _, col := range t.Weighed() {
		p, known := partOf(col, i, rules, meant)
		if !known && col.Field.What.Kind == ingredient.Water && filledUp.MatchString(col.Cells[i].Text) {
			fill = append(fill, len(m.Parts))
			known = true
		}
		m.Open = m.Open || !known
		m.blind = m.blind || !known && IsEmulsifier(&p)
		m.Parts = append(m.Parts, p)
		m.Sum += p.Grams
		m.partial = m.partial && p.What.Kind != ingredient.Water && p.What.Kind != ingredient.Other
	}
	m.partedOut(t.Weighed())
	m.own(t, i)
	if col := t.Find(column.BatchMass); col != nil && col.Cells[i].Known {
		m.total = col.Cells[i].Value
		if v, ok := meant[col.Cells[i].At]; ok {
			m.total = v
		}
	}
	if rest := m.total - m.Sum; len(fill) == 1 && rest > 0 {
		m.Parts[fill[0]].Grams, m.Sum = rest, m.total
	} else if len(fill) > 0 {
		m.Open = true
	}
	return m
}

// partedOut takes what one column holds of the one before it, "polysorbate solution (g)" and "of
// which polysorbate (g)", out of that: the rest of a solution is its water.
func (m *Mixture) partedOut(weighed []*handin.Column) {
	for k := 1; k < len(weighed); k++ {
		whole, part := &m.Parts[k-1], &m.Parts[k]
		if !ofWhich.MatchString(weighed[k].Header) || part.Grams > whole.Grams+1e-9 {
			continue
		}
		m.Sum -= part.Grams
		whole.Grams -= part.Grams
		if whole.What.WeighedAsEmulsifier() && part.What.WeighedAsEmulsifier() || IsFat(whole) && IsFat(part) {
			water, _ := ingredient.Lookup("water")
			whole.What, whole.Fat, whole.HLB = &water, verdict.Exactly(0), nil
		}
	}
}

// ofWhich begins a head that is of a part of what stands before it.
var ofWhich = pattern.Of(`(?i)^\s*[(–-]?\s*(?:of which|thereof|of (?:that|it|this)\b|davon|hiervon|dont|de (?:los|las) cuales|de (?:lo|la) cual|di cui|waarvan|daarvan)\b`)

// filledUp is water that was added up to a mark: "ad 500 g", "to 500", "q.s.", "the rest".
var filledUp = pattern.Of(`(?i)^\s*(?:(?:ad|to|up to|fill(?:ed)? (?:up )?to|made? up to|auf|bis|aufgefüllt auf|à|jusqu[’']à|hasta|a|fino a|tot|aan(?:ge)?vul(?:len|d) tot)\s+\d+(?:[.,]\d+)?\s*g?|q\.?\s?s\.?(?:\s?p\.?)?(?:\s*(?:ad\s*)?\d+\s*g?)?|(?:the )?(?:rest|remainder)|rest|reste|resto)\s*$`)

// partOf is one ingredient of a trial; known is false for a cell that nobody can read.
func partOf(col *handin.Column, i int, rules criteria.Rules, meant Meant) (p Part, known bool) {
	c := col.Cells[i]
	p = Part{Name: col.Field.Called(), What: &col.Field.What, Cell: c}
	if p.Name == "" {
		p.Name = col.Header
	}
	p.values(rules)
	if v, ok := meant[c.At]; ok {
		p.Grams = v
		return p, true
	}
	if c.Known {
		p.Grams = c.Value
	}
	return p, c.Known || c.Blank() || c.Text == "-" || c.Text == "–"
}

// own gives the parts the values that the trial's own columns have for them: the fat of
// today's cream, the HLB of this bag.
func (m *Mixture) own(t *handin.Table, i int) {
	for _, role := range []column.Role{column.IngredientFat, column.IngredientHLB} {
		for _, col := range t.All(role) {
			c := col.Cells[i]
			if !c.Known || col.Field == nil {
				continue
			}
			found, known := ingredient.Lookup(col.Field.Ingredient)
			for k := range m.Parts {
				p, a := &m.Parts[k], verdict.Exactly(c.Value)
				switch {
				case !(known && found.Name == p.What.Name) && col.Field.Ingredient != p.Name:
				case role == column.IngredientFat:
					p.Fat = a
				default:
					p.HLB = &a
				}
			}
		}
	}
}

// values gives a part the fat percents and HLBs that count as right.
func (p *Part) values(rules criteria.Rules) {
	known := p.What.Known
	if known == "" {
		known = p.What.Name
	}
	nan := math.NaN()
	p.Fat = verdict.Between(nan, nan, nan)
	switch r := p.What.FatPercent; {
	case r != nil:
		p.Fat = verdict.Between(r.Low, r.Value, r.High)
	case p.What.Kind != ingredient.Fat && !p.What.Whole:
		p.Fat = verdict.Exactly(0)
	}
	if r, ok := rules.Fats[known]; ok && p.What.Kind == ingredient.Fat {
		p.Fat = hull(p.Fat, r)
	}
	if r := p.What.HLB; r != nil && p.What.Kind == ingredient.Emulsifier {
		a := verdict.Between(r.Low, r.Value, r.High)
		if more, ok := rules.HLBs[known]; ok {
			a = hull(a, more)
		}
		p.HLB = &a
	}
}

// hull widens a range by another.
func hull(a verdict.Accepted, r ingredient.Range) verdict.Accepted {
	if math.IsNaN(a.Value) {
		return verdict.Between(r.Low, r.Value, r.High)
	}
	return verdict.Between(min(a.Low, r.Low), a.Value, max(a.High, r.High))
}

// Denominators are what percents of the mix may be of: the sum, and the student's own
// total.
func (m *Mixture) Denominators() (out []float64) {
	if !m.partial && m.Sum > 0 {
		out = append(out, m.Sum)
	}
	if !math.IsNaN(m.total) && m.total > 0 {
		out = append(out, m.total)
	}
	return out
}

// Of sums the grams of some parts.
func (m *Mixture) Of(which func(*Part) bool) (g float64) {
	for i := range m.Parts {
		if which(&m.Parts[i]) {
			g += m.Parts[i].Grams
		}
	}
	return g
}

func IsFat(p *Part) bool        { return p.What.Kind == ingredient.Fat }
func IsWater(p *Part) bool      { return p.What.Kind == ingredient.Water }
func IsEmulsifier(p *Part) bool { return p.What.WeighedAsEmulsifier() }

// FatGrams is the fat of a mix with the range its ingredients leave.
func (m *Mixture) FatGrams() (a verdict.Accepted, ok bool) {
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Grams == 0 {
			continue
		}
		if math.IsNaN(p.Fat.Value) {
			return a, false
		}
		a.Low, a.Value, a.High = a.Low+p.Grams*p.Fat.Low/100, a.Value+p.Grams*p.Fat.Value/100, a.High+p.Grams*p.Fat.High/100
	}
	return a, true
}

// Names joins the names of some parts.
func (m *Mixture) Names(which func(*Part) bool) string {
	var out []string
	for i := range m.Parts {
		if p := &m.Parts[i]; which(p) && p.Grams > 0 {
			out = append(out, p.Said())
		}
	}
	return strings.Join(out, " and ")
}

// Listed writes grams to be added: "120 + 174 + 4".
func (m *Mixture) Listed(which func(*Part) bool) string {
	var out []string
	for i := range m.Parts {
		if p := &m.Parts[i]; which(p) && p.Grams != 0 {
			out = append(out, verdict.Num(p.Grams))
		}
	}
	if len(out) == 0 {
		return "0"
	}
	return strings.Join(out, " + ")
}

func AnyPart(*Part) bool { return true }

// FatWritten writes the fat out: "120 × 0.82 + 40 × 0.35".
func (m *Mixture) FatWritten() string {
	var out []string
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Fat.Value > 0 && p.Grams > 0 {
			out = append(out, fmt.Sprintf("%s × %s", verdict.Num(p.Grams), verdict.Num(p.Fat.Value/100)))
		}
	}
	if len(out) == 0 {
		return "0"
	}
	return strings.Join(out, " + ")
}

// Exact is a mix whose fats have one value each: with the range of a packet nearly any
// percent is right.
func (m Mixture) Exact() Mixture {
	m.Parts = append([]Part(nil), m.Parts...)
	for k := range m.Parts {
		m.Parts[k].Fat = verdict.Exactly(m.Parts[k].Fat.Value)
	}
	return m
}

// Reduced is a mix of which so many grams were left: percents are of these.
func (m Mixture) Reduced(left float64) Mixture {
	m.total, m.partial = left, true
	return m
}

// Having is a mix with one weight changed.
func (m Mixture) Having(k int, grams float64) Mixture {
	parts := append([]Part(nil), m.Parts...)
	m.Sum += grams - parts[k].Grams
	parts[k].Grams = grams
	m.Parts = parts
	return m
}
