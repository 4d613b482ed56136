package reclaim

import (
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

var (
	atAMinute  = pattern.Of(`(?i)(?:@|\b(?:after|at|in|within|nach|après|dopo|tras|a los))\s*\d+\s*min|\(\s*\d+\s*min`)
	inVolume   = pattern.Of(`(?i)\b(?:ml|millilit(?:re|er)s?|cc)\b`)
	inPercent  = pattern.Of(`(?i)%|\bpercent\b|\bpct\b`)
	leavesFoam = pattern.Of(`(?i)\b(?:drain\w*|drip\w*|drop\w*|we(?:pt|ep\w*)|wet|run[- ]?(?:off|out)|ran (?:off|out)|out|lost|loss|leak\w*|liquid|puddle|bottom|below|under|sieve|cylinder|glass|cup|seep\w*|serum|perte\w*|écoul\w*|liquide|abtropf\w*|abgelaufen\w*|flüssig\w*|perdid\w*|líquido|persa|perdita|sgocciol\w*)\b`)
	surelyLeft = pattern.Of(`(?i)\b(?:drained|dripped|we(?:pt|eps?)|leaked|lost|ran (?:off|out)|run[- ]?(?:off|out)|left the foam|separated|perdue?|verloren|abgetropft|perdido|perso)\b`)
	otherTalk  = pattern.Of(`(?i)\b(?:fat|hlb|emuls\w*|charg\w*|siphon|volume of|overrun|batch|total|rest(?:ed|ing)?|temp\w*|stood|stand\w*|held|holds?)\b`)
)

// reclaimRunOff finds the one column of what left the foam by a minute, where the reader has
// none: "ml at bottom @ 20 min", "out ml", "perte (20 min)".
func reclaimRunOff(t *handin.Table) {
	if len(t.All(column.DrainedAmount)) > 0 || len(t.Weighed()) < 2 {
		return
	}
	var found *handin.Column
	for _, c := range t.Columns {
		if c.Known() < 3 || !mayBeRunOff(c) {
			continue
		}
		if found != nil {
			return
		}
		found = c
	}
	if found == nil {
		return
	}
	f := &scheme.Field{Header: found.Header, Want: units.Percent, Bare: units.PercentUnit}
	switch head := found.Header + " " + found.UnitBelow; {
	case inVolume.MatchString(head):
		f.Want, f.Bare = units.Volume, units.Millilitre
	case !inPercent.MatchString(head):
		f.Want, f.Bare = units.Mass, units.Gram
	}
	found.Role, found.Field = column.DrainedAmount, f
}

// mayBeRunOff reports a column of numbers in a unit of what drains, at a minute or by a word of
// what leaves a foam.
func mayBeRunOff(c *handin.Column) bool {
	head := strings.ReplaceAll(c.Header+" "+c.UnitBelow, "_", " ")
	switch c.Role {
	case column.None, column.Unused, column.Declared, column.Measure:
	case column.CameOut: // "ml out": numbers, and no yes or no
	case column.IngredientAmount:
		if c.Field == nil || !c.Field.Kindless && (c.Field.InGrams || !surelyLeft.MatchString(head)) {
			return false
		}
	default:
		return false
	}
	if m := column.Read(c.Header); m.Role == column.IngredientAmount && !surelyLeft.MatchString(head) {
		if _, known := ingredient.Lookup(m.Ingredient); known {
			return false
		}
	}
	unit := inVolume.MatchString(head) || inPercent.MatchString(head) || inGramHead.MatchString(head)
	return unit && !otherTalk.MatchString(head) && (leavesFoam.MatchString(head) || inVolume.MatchString(head) && atAMinute.MatchString(head))
}
