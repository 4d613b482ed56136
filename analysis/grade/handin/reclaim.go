package handin

import (
	"math"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// A log is built on no column that says less than all; a checker can still hold it against
// the others. What it is, its header says with most of its words and its numbers bear out.

var (
	hlbHeader  = pattern.Of(`(?i)^\s*(?:(?:blend|mix|mean|calc(?:ulated)?|weighted|resulting|total|overall|final)\s+)*hlb\b(?:\s+(?:of (?:the )?(?:blend|mix|mixture|emulsifiers?)|value|blend|mix))*\s*(?:[(\[,].*)?$`)
	inGramHead = pattern.Of(`(?i)(\bg\b|\bgrams?\b|\bgramm\b)`)
)

// reclaim gives columns that the reader left out the role that their header has.
func (t *Table) reclaim() {
	for _, c := range t.Columns {
		if c.Role != column.None && c.Role != column.Unused || c.Known() < 2 {
			continue
		}
		switch {
		case hlbHeader.MatchString(c.Header) && t.Find(column.BlendHLB) == nil:
			c.Role = column.BlendHLB
		default:
			t.reclaimGrams(c)
		}
	}
	t.reclaimTotal()
}

// reclaimGrams makes the grams of an ingredient of the one column in grams, where another
// gives the same in another unit and the two do not agree.
func (t *Table) reclaimGrams(c *Column) {
	m := column.Read(c.Header)
	what, known := ingredient.Lookup(m.Ingredient)
	if m.Role != column.IngredientAmount || !known || perGram(m.Unit) != 1 || slices.ContainsFunc(t.Weighed(), func(o *Column) bool { return o.Field.What.Name == what.Name }) {
		return
	}
	for _, o := range t.Columns {
		if n := column.Read(o.Header); o != c && n.Role == m.Role && n.Unit != m.Unit && n.Unit.Dimension() == units.Mass && n.Ingredient == m.Ingredient {
			c.Role = column.IngredientAmount
			c.Field = &scheme.Field{Meaning: m, Header: c.Header, Want: units.Mass, Bare: m.Unit, InGrams: true, What: what}
			c.Other, c.PerOther = o, perGram(n.Unit)
		}
	}
}

// perGram are the grams of one unit of mass; 0 for what is none.
func perGram(u units.Unit) float64 {
	one, err := quantity.Parse("1", units.Mass, u)
	if err != nil || one.Low != one.High || u.Dimension() != units.Mass {
		return 0
	}
	return one.Low
}

// reclaimTotal makes the total of a column in grams that is the sum of the others in most
// rows, whatever it is called.
func (t *Table) reclaimTotal() {
	weighed := t.Weighed()
	if t.Find(column.BatchMass) != nil || len(weighed) < 3 {
		return
	}
	for _, c := range t.Columns {
		if c.Role != column.None && c.Role != column.Unused || c.Known() < 3 || !inGramHead.MatchString(c.Whole) && c.UnitBelow != "g" {
			continue
		}
		near := 0
		for i, x := range c.Cells {
			sum := 0.0
			for _, o := range weighed {
				if o.Cells[i].Known {
					sum += o.Cells[i].Value
				}
			}
			if x.Known && math.Abs(x.Value-sum) <= max(0.02*sum, 2) {
				near++
			}
		}
		if 2*near > len(c.Cells) {
			c.Role = column.BatchMass
			return
		}
	}
}
