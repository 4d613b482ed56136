package reclaim

import (
	"math"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// Overrun is worked out from one vessel weighed twice, full of the mix and full of its foam.
// Students call the vessel what they like, and the mix is no ingredient of itself.

var (
	vessel      = pattern.Of(`(?i)(\b(?:cups?|glass(?:es)?|beakers?|pots?|jars?|tubs?|tins?|mugs?|ramekins?|vessels?|moulds?|bowls?|tassen?|schalen?|gläse?r?|gobelets?|verres?|bols?|coupes?|vasos?|copas?|tazas?|bicchier[ei]|coppe?|tazz[ae]|ciotol[ae]|becher|bekers?|glazen|kommen|kom|kopjes?)\b|\b\d+\s*(?:ml|cl|cc)\b|\bsame volume\b)`)
	ofTheLiquid = pattern.Of(`(?i)\b(?:mix|mixture|liquid|fluid|unwhipped|unfoamed|before|base|mélange|liquide|mezcla|líquido|miscela|liquido|mischung|flüssig\w*|mengsel|vloeistof)\b`)
	ofTheFoam   = pattern.Of(`(?i)\b(?:foam|foamed|whipped|mousse|espuma|schiuma|spuma|schaum|schuim)\b`)
)

// leavesIt is what went out of a vessel, and is no vessel full.
var leavesIt = pattern.Of(`(?i)(drain|drip|leak|weep|run[- ]?off|ran (?:out|off)|liquid (?:from|out)|lost|left|égoutt|écoul|drenad|escurrid|drenat|gocciol|abgelaufen|abgetropft|ablauf|uitgelekt)`)

// reclaimCups finds the two weights of a vessel beside an overrun: of the two that are headed so, the
// foam weighs less in most rows.
func reclaimCups(t *handin.Table) {
	if t.Find(column.Overrun) == nil || t.Find(column.CupLiquid) != nil && t.Find(column.CupFoam) != nil {
		return
	}
	var liquid, foam *handin.Column
	for _, c := range t.Columns {
		if !mayBeCup(c) {
			continue
		}
		of := &liquid
		if ofTheFoam.MatchString(c.Header) {
			of = &foam
		} else if !ofTheLiquid.MatchString(c.Header) {
			continue
		}
		if *of != nil {
			return
		}
		*of = c
	}
	if liquid == nil || foam == nil {
		return
	}
	overrun := t.Find(column.Overrun)
	borneOut, turned, heavier, n := 0, 0, 0, 0
	for i, l := range liquid.Cells {
		f := foam.Cells[i]
		if !l.Known || !f.Known || f.Value <= 0 || l.Value <= 0 {
			continue
		}
		n++
		full, whipped := typed(l), typed(f) // "cup" may have been read as a measure
		switch {
		case isOverrun(overrun.Cells[i], full, whipped):
			borneOut++
		case whipped > full && isOverrun(overrun.Cells[i], whipped, full):
			turned++
		case whipped > full:
			heavier++
		}
	}
	if 3*(turned+heavier) > n || 2*borneOut <= n && !(inGrams(liquid) && inGrams(foam)) {
		return
	}
	asTyped(liquid)
	asTyped(foam)
	liquid.Role, liquid.Field = column.CupLiquid, &scheme.Field{Header: liquid.Header, Want: units.Mass, Bare: units.Gram}
	foam.Role, foam.Field = column.CupFoam, &scheme.Field{Header: foam.Header, Want: units.Mass, Bare: units.Gram}
	reclaimSample(t)
}

// reclaimSample takes the one column headed as the foam that was put to drain for that, where the cup of
// foam was its rival.
func reclaimSample(t *handin.Table) {
	if t.Find(column.SampleMass) != nil {
		return
	}
	var found *handin.Column
	for _, c := range t.Columns {
		if (c.Role == column.Unused || c.Role == column.None) && c.Known() >= 2 && inGrams(c) && column.Read(c.Header).Role == column.SampleMass {
			if found != nil {
				return
			}
			found = c
		}
	}
	if found != nil {
		found.Role, found.Field = column.SampleMass, &scheme.Field{Header: found.Header, Want: units.Mass, Bare: units.Gram}
	}
}

// typed is a number in the unit it was typed in.
func typed(c handin.Cell) float64 {
	if c.Scale > 0 {
		return c.Value / c.Scale
	}
	return c.Value
}

// isOverrun reports an overrun that is of two weights, to what is written of it.
func isOverrun(c handin.Cell, liquid, foam float64) bool {
	return c.Known && math.Abs(c.Value-100*(liquid-foam)/foam) <= max(1, c.Half)
}

// inGrams reports a head or a row of units that says grams.
func inGrams(c *handin.Column) bool { return inGramHead.MatchString(c.Whole) || c.UnitBelow == "g" }

// mayBeCup reports a column that names a vessel and nothing that is known to go into a mix.
func mayBeCup(c *handin.Column) bool {
	free := c.Role == column.None || c.Role == column.Unused || c.Role == column.CupLiquid || c.Role == column.CupFoam || c.Role == column.SampleMass ||
		c.Role == column.IngredientAmount && !namesIngredient(c)
	return free && c.Known() >= 2 && vessel.MatchString(c.Header) && !leavesIt.MatchString(c.Header)
}
