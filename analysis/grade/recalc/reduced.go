package recalc

import (
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
)

// A mix that was weighed again after it was heated has lost water: percents may be of what was
// left, where a head or a line says so.

var reducedHead = pattern.Of(`(?i)(\bafter (?:heating|cooking|boiling|the hob|reducing|reduction|evaporation|warming|blending|straining|sieving)\b|\bweighed (?:again|after|out)\b|\breduced\b|\bheated\b|\bstrained\b|\bafter loss\b|\bnach dem (?:erhitzen|kochen|erwärmen)\b|\baprès (?:chauffage|cuisson)\b|\b(?:tras|después de) (?:calentar|cocer)\b|\bdopo (?:riscaldamento|cottura)\b|\bna (?:het )?(?:verwarmen|koken)\b)`)

// reduced is the column of what was left of each mix: in most rows at least seven tenths of the grams
// that went in, and never more; nil without one.
func (j *job) reduced() *handin.Column {
	for _, c := range j.Table.Columns {
		free := c.Role == column.None || c.Role == column.Unused || c.Role == column.BatchMass || c.Role == column.Measure
		if !free || c.Known() < 2 || !reducedHead.MatchString(c.Whole) {
			continue
		}
		near, n := 0, 0
		for i, x := range c.Cells {
			if sum := j.mixes[i][0].Sum; x.Known && sum > 0 {
				if n++; x.Value >= 0.7*sum && x.Value <= 1.005*sum {
					near++
				}
			}
		}
		if 2*near > n {
			return c
		}
	}
	return nil
}

// ofLeft is what percents of a column should be where they are of what was left: by its head, or, which is
// a guess, by the student's words on all percents.
func (j *job) ofLeft(col *handin.Column, expect func(i int) (verdict.Expected, bool)) func(i int) (verdict.Expected, bool) {
	says := reducedHead.MatchString(col.Whole)
	left := j.reduced()
	if left == nil || !says && !j.said.ofReduced {
		return expect
	}
	return func(i int) (verdict.Expected, bool) {
		whole, ok := expect(i)
		if c := left.Cells[i]; ok && c.Known {
			kept := j.mixes[i]
			defer func() { j.mixes[i] = kept }()
			j.mixes[i] = nil
			for _, m := range kept {
				j.mixes[i] = append(j.mixes[i], m.Reduced(c.Value))
			}
			e, ok := expect(i)
			e.Ways = append(e.Ways, verdict.By(whole.Rights[0].Value, "of the mix as it went in, not of what was left", "of the mix as it went in"))
			e.Guess = e.Guess || !says
			return e, ok
		}
		return whole, ok
	}
}

// ofReduced are words that say so of all percents.
var ofReduced = pattern.Of(`(?i)(?:%|\bper ?cents?\b|\bpercentages?\b)[^.;]{0,40}\b(?:of|on|from|refer\w* to)\b[^.;]{0,30}\b(?:after|reduced|left|heated|weighed again)\b`)
