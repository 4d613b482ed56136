package reclaim

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// A unit may stand beside the numbers of a card or below the heads, and an amount may be per
// kilo of the mix: both say how a column is to be read.

var (
	percentUnit = pattern.Of(`(?i)^\s*(?:%|percent|per ?cent|prozent)`)
	gramUnit    = pattern.Of(`(?i)^\s*(?:g|gr|grams?|gramm)\b`)
	volumeUnit  = pattern.Of(`(?i)^\s*(?:ml|millilit(?:re|er)s?|cc|cm³)\b`)
	ofFatUnit   = pattern.Of(`(?i)\bof (?:the )?(?:fat|butter|oil|ghee|lard)\b`)
)

// unitsBeside lets the unit that stands beside or below win where the head has none, and the
// column was taken for another.
func unitsBeside(t *handin.Table) {
	for _, c := range t.Columns {
		if c.Field != nil && !c.Field.InGrams && (c.Role == column.FatPercent || c.Role == column.EmulsifierAmount || c.Role == column.DrainedAmount) && strings.Contains(c.Header, "%") && (notAmount(c.Field.Want) || c.Role == column.DrainedAmount && c.Field.Want != units.Percent) {
			f := *c.Field // "fat % in total" has no inch, "wet % of cup" is by no cup
			f.Want, f.Bare = units.Percent, units.PercentUnit
			c.Field = &f
			asTyped(c)
		}
		if c.Field == nil || c.UnitBelow == "" {
			continue
		}
		f := *c.Field
		percent := percentUnit.MatchString(c.UnitBelow)
		switch grams := gramUnit.MatchString(c.UnitBelow); {
		case c.Role == column.EmulsifierAmount && f.InGrams && percent:
			f.InGrams, f.Want, f.Bare, f.Basis = false, units.Percent, units.PercentUnit, column.OfMix
			if ofFatUnit.MatchString(c.UnitBelow) {
				f.Basis = column.OfFat
			}
		case c.Role == column.FatPercent && !f.InGrams && grams:
			f.InGrams, f.Want, f.Bare = true, units.Mass, units.Gram
		case c.Role == column.DrainedAmount && f.Want == units.Percent && volumeUnit.MatchString(c.UnitBelow):
			f.Want, f.Bare = units.Volume, units.Millilitre
		case c.Role == column.DrainedAmount && f.Want == units.Percent && grams:
			f.Want, f.Bare = units.Mass, units.Gram
		default:
			continue
		}
		c.Field = &f
	}
}

// notAmount reports a unit that no share and no amount has.
func notAmount(d units.Dimension) bool {
	return d != units.Percent && d != units.Mass && d != units.Volume && d != units.Any && d != units.Plain
}

// perKilo takes a mix in g per kilo, or in percent of the mix, as grams of so much of it: what
// is worked out of it is the same.
func perKilo(t *handin.Table) {
	if len(t.Weighed()) > 0 {
		return
	}
	var of []*handin.Column
	for _, c := range t.All(column.IngredientAmount) {
		if c.Field == nil || c.Field.InGrams || c.Field.Want != units.Percent || c.Known() == 0 || c.Field.Basis != column.OfMix && c.Field.Basis != column.NoBasis {
			return
		}
		of = append(of, c)
	}
	if len(of) < 3 || !wholeMix(of) {
		return
	}
	for _, c := range of {
		f := *c.Field
		f.InGrams, f.Want = true, units.Mass
		c.Field = &f
		asTyped(c)
	}
	for _, c := range t.Columns {
		if c.Field != nil && (c.Role == column.Unused || c.Role == column.None) && c.Field.Want == units.Percent && c.Field.Bare == of[0].Field.Bare {
			asTyped(c)
		}
	}
}

// wholeMix reports amounts that come to all of the mix in most rows.
func wholeMix(of []*handin.Column) bool {
	whole, n := 0, 0
	for i := range of[0].Cells {
		sum := 0.0
		for _, c := range of {
			if c.Cells[i].Known {
				sum += c.Cells[i].Value
			}
		}
		if n++; math.Abs(sum-100) <= 8 {
			whole++
		}
	}
	return 2*whole > n
}

// asTyped takes the numbers of a column in the unit that they were typed in.
func asTyped(c *handin.Column) {
	for i := range c.Cells {
		x := &c.Cells[i]
		if x.Scale > 0 && x.Scale != 1 {
			x.Value, x.Low, x.High, x.Half, x.Scale = x.Value/x.Scale, x.Low/x.Scale, x.High/x.Scale, x.Half/x.Scale, 1
		}
	}
}

var fatGramHead = pattern.Of(`(?i)^\s*(?:(?:total|all|pure|real|of which) )?(?:fat|fett|gras|grasa|grassi)\b(?: content| in all| total| in (?:the )?mix)?\s*[,:]?\s*[(\[]?\s*(?:g|grams?)\b|^\s*(?:g|grams?) (?:of )?(?:pure |total )?fat\b`)

// reclaimFat finds the grams of fat that a student works out on the way to a percent, and
// which no ingredient is.
func reclaimFat(t *handin.Table) {
	if len(t.Weighed()) < 2 || slices.ContainsFunc(t.All(column.FatPercent), func(c *handin.Column) bool { return c.Field != nil && c.Field.InGrams }) {
		return
	}
	for _, c := range t.Columns {
		if c.Role != column.None && c.Role != column.Unused && c.Role != column.Declared || c.Known() < 2 {
			continue
		}
		head := c.Header
		if c.UnitBelow != "" {
			head += " " + c.UnitBelow
		}
		if fatGramHead.MatchString(head) && !strings.Contains(head, "%") {
			c.Role, c.Field = column.FatPercent, &scheme.Field{Header: c.Header, Want: units.Mass, Bare: units.Gram, InGrams: true}
			return
		}
	}
}
