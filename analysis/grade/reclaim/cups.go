package reclaim

import (
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// Overrun is worked out from one vessel weighed twice, full of the mix and full of its foam.
// Students call the vessel what they like, and the mix is no ingredient of itself.

var (
	vessel      = pattern.Of(`(?i)(\b(?:cups?|glass(?:es)?|beakers?|pots?|jars?|tubs?|tins?|mugs?|ramekins?|vessels?|moulds?|tassen?|gobelets?|verres?|vasos?|bicchier[ei]|becher|bekers?)\b|\b\d+\s*(?:ml|cl|cc)\b|\bsame volume\b)`)
	ofTheLiquid = pattern.Of(`(?i)\b(?:mix|mixture|liquid|fluid|unwhipped|unfoamed|before|base|mélange|liquide|mezcla|líquido|miscela|liquido|mischung|flüssig\w*|mengsel|vloeistof)\b`)
	ofTheFoam   = pattern.Of(`(?i)\b(?:foam|foamed|whipped|mousse|espuma|schiuma|spuma|schaum|schuim)\b`)
)

// reclaimCups finds the two weights of a vessel beside an overrun: of the two that are headed so, in
// most rows the foam weighs less.
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
	lighter, heavier := 0, 0
	for i, l := range liquid.Cells {
		switch f := foam.Cells[i]; {
		case !l.Known || !f.Known:
		case f.Value > l.Value:
			heavier++
		default:
			lighter++
		}
	}
	if 2*heavier >= lighter {
		return
	}
	liquid.Role, liquid.Field = column.CupLiquid, &scheme.Field{Header: liquid.Header, Want: units.Mass, Bare: units.Gram}
	foam.Role, foam.Field = column.CupFoam, &scheme.Field{Header: foam.Header, Want: units.Mass, Bare: units.Gram}
}

// mayBeCup reports a column of grams that names a vessel and nothing that is known to go into a mix.
func mayBeCup(c *handin.Column) bool {
	free := c.Role == column.None || c.Role == column.Unused || c.Role == column.CupLiquid || c.Role == column.CupFoam || c.Role == column.SampleMass ||
		c.Role == column.IngredientAmount && !namesIngredient(c)
	return free && c.Known() >= 2 && vessel.MatchString(c.Header) && (inGramHead.MatchString(c.Whole) || c.UnitBelow == "g")
}
