// Package reclaim gives a table what the reader leaves out: columns of free headers, ingredients of a
// student's own names, and numbers of trials, by what the numbers beside them bear out.
package reclaim

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// A log is built on no column that says less than all; a checker can still hold it against
// the others. What it is, its header says with most of its words and its numbers bear out.

var (
	hlbHeader = pattern.Of(`(?i)^\s*(?:(?:the|their|our|my|blend|mix|mixed|mean|calc(?:ulated)?|weighted|resulting|total|overall|final)\s+)*hlb\b(?:\s+(?:of (?:the )?(?:blend|mix|mixture|emulsifiers?|two|both|pair|powders?)|value|blend|mix|together|in all|of both|` +
		`(?:der|des|du|de la|de l[’']|de los|del|della|degli|dell[’']|van de|van het) ?(?:\pL*mischung|\pL*gemisch\pL*|emulgator\pL*|mélange|émulsifiants?|mezcla|emulsionantes?|miscela|emulsionant[ei]|\pL*mengsel|emulgatoren)))*\s*(?:[(\[,].*)?$`)
	hlbOfAll   = pattern.Of(`(?i)^[^%]*\bhlb\b[^%]*$`) // that names the emulsifiers too: "HLB de los emulsionantes"
	inGramHead = pattern.Of(`(?i)(\bg\b|\bgrams?\b|\bgramm\b|\bg ?/ ?kg\b)`)
	ofFoamHead = pattern.Of(`(?i)\b(foam|dollop|scoop|heap|cupful|spoonful|funnel|sieve|gauze|cloth|filter|portion|mesh|strainer|sample|blob|mousse|schaum)`)
	drainHead  = pattern.Of(`(?i)\b(drain\w*|drip\w*|wept|weeps?|weep\w*|dew|tears|run[- ]?(?:off|out)|ran (?:off|out)|lost|loss|leak\w*|filtrate|liquid|puddle|through|ooz\w*|seep\w*|serum|whey|watered|out of the foam|fell out)\b`)
)

// Columns gives columns that the reader left out, or took for an ingredient that nobody
// knows, the role that their header and their numbers have.
func Columns(t *handin.Table) {
	for _, c := range t.Columns {
		shareOfMass(c)
		if c.Role == column.IngredientAmount && c.Known() == 0 && distinct(c, func(x handin.Cell) bool { return x.Kind == sheet.Text && len(x.Text) <= 8 }) {
			c.Role, c.Field = column.None, nil // names of the trials, "pot | A"
		}
		switch {
		case c.Role == column.EmulsifierAmount && c.Known() >= 2 && hlbOfAll.MatchString(c.Header) && t.Find(column.BlendHLB) == nil:
			c.Role, c.Field = column.BlendHLB, &scheme.Field{Header: c.Header, Want: units.Plain, Bare: units.NoUnit}
		case c.Known() < 2 || !hlbHeader.MatchString(c.Header) || t.Find(column.BlendHLB) != nil:
			if (c.Role == column.None || c.Role == column.Unused) && c.Known() >= 2 {
				reclaimGrams(t, c)
			}
		case c.Role == column.None, c.Role == column.Unused, c.Role == column.IngredientHLB:
			c.Role = column.BlendHLB
		}
	}
	ofTheMix(t)
	unitsBeside(t)
	namesInCells(t)
	perKilo(t)
	ownHLB(t)
	reclaimTotal(t)
	reclaimCups(t)
	reclaimDrained(t)
	reclaimRunOff(t)
	reclaimShare(t)
	reclaimFat(t)
}

// shareOfMass takes a percent of so many grams, "emulsifier % of the 350 g mix", for the percent it is.
func shareOfMass(c *handin.Column) {
	if c.Role != column.IngredientAmount || c.Field == nil || !c.Field.InGrams {
		return
	}
	m := percentOfMass.FindStringSubmatch(c.Header)
	if m == nil {
		return
	}
	switch read := column.Read(m[1] + " %"); read.Role {
	case column.EmulsifierAmount, column.FatPercent:
		c.Role, c.Field = read.Role, &scheme.Field{Header: c.Header, Want: units.Percent, Bare: units.PercentUnit}
		c.Field.Basis = column.OfMix
	default:
		c.Role, c.Field = column.None, nil
	}
}

var percentOfMass = pattern.Of(`(?i)^(.+?)\s*[,(]?\s*(?:%|per ?cent)\s*(?:of|in|on|de|di|du|von|van)\b.*\d\s*g\b`)

// ofTheMix takes a fat percent for that of the mix where the head itself names no ingredient: the
// title above a card, "cherry butter foam", made it one.
func ofTheMix(t *handin.Table) {
	if len(t.All(column.FatPercent)) > 0 {
		return
	}
	var found *handin.Column
	for _, c := range t.All(column.IngredientFat) {
		if m := column.Read(c.Header); c.Header == c.Whole || c.Field == nil || m.Role != column.FatPercent {
			continue
		}
		if found != nil {
			return
		}
		found = c
	}
	if found != nil {
		found.Role = column.FatPercent
		found.Field = &scheme.Field{Header: found.Header, Want: units.Percent, Bare: units.PercentUnit}
		found.Field.Basis = column.OfMix
	}
}

var hlbOf = pattern.Of(`(?i)^\s*(?:hlb\b\s*(?:of |\()?(?:the )?(.+?)\)?|(.+?)\W+\(?hlb\)?)\s*$`)

// ownHLB finds a column of the HLB of one emulsifier, trial by trial: "SE HLB".
func ownHLB(t *handin.Table) {
	for _, c := range t.Columns {
		m := hlbOf.FindStringSubmatch(c.Header)
		if c.Role != column.None && c.Role != column.Unused || c.Known() < 2 || m == nil {
			continue
		}
		name := say.Fold(strings.TrimSpace(m[1] + m[2]))
		for _, o := range t.Weighed() {
			if o.Field.What.WeighedAsEmulsifier() && (say.Fold(o.Field.Called()) == name || say.Fold(o.Field.What.Name) == name) {
				c.Role, c.Field = column.IngredientHLB, &scheme.Field{Header: c.Header, Want: units.Plain, Bare: units.NoUnit}
				c.Field.Ingredient = o.Field.Called()
			}
		}
	}
}

// reclaimShare finds the percents of all emulsifiers, whatever they are called: in most
// rows they are what the grams of these come to.
func reclaimShare(t *handin.Table) {
	total := t.Find(column.BatchMass)
	if total == nil || len(t.All(column.EmulsifierAmount)) > 0 {
		return
	}
	for _, c := range t.Columns {
		free := c.Role == column.None || c.Role == column.Unused || c.Role == column.IngredientAmount && c.Field != nil && !c.Field.InGrams && c.Field.What.Kind == ingredient.Other
		if !free || !strings.Contains(c.Whole, "%") && !strings.HasPrefix(c.UnitBelow, "%") {
			continue
		}
		agree, n := 0, 0
		for i, x := range c.Cells {
			g := 0.0
			for _, o := range t.Weighed() {
				if o.Field.What.WeighedAsEmulsifier() && o.Cells[i].Known {
					g += o.Cells[i].Value
				}
			}
			if !x.Known || g == 0 || !total.Cells[i].Known || total.Cells[i].Value <= 0 {
				continue
			}
			if n++; math.Abs(100*g/total.Cells[i].Value-x.Value) <= max(1.05*x.Half, 0.02) {
				agree++
			}
		}
		if agree >= 3 && 2*agree > n {
			c.Role, c.Field = column.EmulsifierAmount, &scheme.Field{Header: c.Header, Want: units.Percent, Bare: units.PercentUnit}
			return
		}
	}
}

// reclaimGrams makes the grams of an ingredient of the one column in grams, where another
// gives the same in another unit and the two do not agree.
func reclaimGrams(t *handin.Table, c *handin.Column) {
	m := column.Read(c.Header)
	what, known := ingredient.Lookup(m.Ingredient)
	if m.Role != column.IngredientAmount || !known || perGram(m.Unit) != 1 || slices.ContainsFunc(t.Weighed(), func(o *handin.Column) bool { return o.Field.What.Name == what.Name }) {
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

// reclaimTotal finds the column that is the sum of those beside it in most rows, whatever it
// is called. What nobody knows as an ingredient and stands beyond it is none.
func reclaimTotal(t *handin.Table) {
	for at, c := range t.Columns {
		if !mayBeTotal(t, c) {
			continue
		}
		for _, step := range []int{-1, 1} {
			run := runTo(t, at, step)
			if len(run) < 3 {
				continue
			}
			if c.Role != column.BatchMass {
				c.Role, c.Field = column.BatchMass, &scheme.Field{Header: c.Header, Want: units.Mass, Bare: units.Gram, InGrams: true}
			}
			for _, o := range t.Columns {
				if o.Role == column.IngredientAmount && o.Field != nil && o.Field.What.Kind == ingredient.Other && !slices.Contains(run, o) && o != c && !namesIngredient(o) {
					o.Role, o.Field = column.Unused, nil
				}
			}
			return
		}
	}
}

// mayBeTotal reports a column of grams that nobody knows as an ingredient, or the total itself.
func mayBeTotal(t *handin.Table, c *handin.Column) bool {
	switch {
	case c.Known() < 3 || c.Other != nil:
		return false
	case c.Role == column.BatchMass:
		return true
	case c.Role == column.IngredientAmount:
		return c.Field != nil && !namesIngredient(c)
	}
	return (c.Role == column.None || c.Role == column.Unused || c.Role == column.Declared) && t.Find(column.BatchMass) == nil && (inGramHead.MatchString(c.Whole) || inGramHead.MatchString(c.UnitBelow))
}

// namesIngredient reports a header that is an ingredient known here.
func namesIngredient(c *handin.Column) bool {
	_, ok := ingredient.Lookup(column.Read(c.Header).Ingredient)
	return ok
}

// runTo are the columns of grams next to a total, in one direction, that add up to it in
// most rows.
func runTo(t *handin.Table, at, step int) (run []*handin.Column) {
	total := t.Columns[at]
	sums := make([]float64, len(total.Cells))
	var best []*handin.Column
	for k := at + step; k >= 0 && k < len(t.Columns); k += step {
		c := t.Columns[k]
		if c.Role == column.IngredientHLB || c.Role == column.IngredientFat || c.Role == column.None && c.Known() == 0 {
			continue // what stands beside an ingredient of it
		}
		if c.Role != column.IngredientAmount || c.Field == nil || !c.Field.InGrams {
			break
		}
		run = append(run, c)
		agree := 0
		for i, x := range c.Cells {
			if x.Known {
				sums[i] += x.Value
			}
			if total.Cells[i].Known && sums[i] > 0 && math.Abs(sums[i]-total.Cells[i].Value) <= max(0.006*sums[i], total.Cells[i].Half, 0.3) {
				agree++
			}
		}
		if 2*agree > len(total.Cells) {
			best = slices.Clone(run)
		}
	}
	return best
}

// reclaimDrained finds the foam that was put to drain and what ran out of it: grams of the
// one that nearly every trial has alike, and a percent beside them that is headed so.
func reclaimDrained(t *handin.Table) {
	free := func(c *handin.Column) bool {
		return (c.Role == column.None || c.Role == column.Unused) && c.Known() >= 2
	}
	grams := func(c *handin.Column) bool { return inGramHead.MatchString(c.Whole) || c.UnitBelow == "g" }
	for _, c := range t.Columns {
		if free(c) && t.Find(column.SampleMass) == nil && grams(c) && ofFoamHead.MatchString(c.Header) && !drainHead.MatchString(c.Header) && !strings.Contains(c.Header, "%") {
			c.Role, c.Field = column.SampleMass, &scheme.Field{Header: c.Header, Want: units.Mass, Bare: units.Gram, InGrams: true}
		}
	}
	sample := 0.0
	for _, c := range t.Columns {
		if m := ofGrams.FindStringSubmatch(c.Header); m != nil && drainHead.MatchString(c.Header) {
			sample, _ = strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		}
	}
	has := func(want units.Dimension) bool {
		return slices.ContainsFunc(t.All(column.DrainedAmount), func(c *handin.Column) bool { return c.Field != nil && c.Field.Want == want })
	}
	for _, c := range t.Columns {
		percent := strings.Contains(c.Whole, "%") || c.UnitBelow == "%"
		switch {
		case !free(c) || !drainHead.MatchString(c.Header) || t.Find(column.SampleMass) == nil && sample == 0:
		case percent && !has(units.Percent):
			c.Role, c.Field = column.DrainedAmount, &scheme.Field{Header: c.Header, Want: units.Percent, Bare: units.PercentUnit}
		case !percent && grams(c) && !has(units.Mass):
			c.Role, c.Field = column.DrainedAmount, &scheme.Field{Header: c.Header, Want: units.Mass, Bare: units.Gram}
		}
	}
	for _, c := range t.All(column.DrainedAmount) {
		if c.SampleGrams == 0 {
			c.SampleGrams = sample
		}
	}
}

// ofGrams is the foam that a header says all drainage is of: "ran off (g of 50 g)".
var ofGrams = pattern.Of(`(?i)\b(?:of|from|out of)\s+(?:the\s+)?(\d+(?:[.,]\d+)?)\s*g\b`)
