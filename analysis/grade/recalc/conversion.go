package recalc

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/criteria"
)

// conversions holds grams against the same in ounces or pounds beside them. What is worked
// out from them is held against the grams that were meant.
func (j *job) conversions() {
	for _, col := range j.Table.Columns {
		if col.Other == nil {
			continue
		}
		from := len(j.Out)
		j.Column(col, criteria.Units, func(i int) (e verdict.Expected, ok bool) {
			o := col.Other.Cells[i]
			if !o.Known {
				return e, false
			}
			right := o.Value * col.PerOther
			e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right)}, Within: max(0.006*right, 0.15), Digits: 1, How: fmt.Sprintf("%s × %s", verdict.Num(o.Value), verdict.Num(col.PerOther))}
			e.Ways = append(verdict.Slips(right), verdict.By(o.Value, "what stands beside it, not turned into grams", "not turned"), verdict.By(o.Value/col.PerOther, "divided, not multiplied", "divided"))
			return e, true
		})
		if len(j.Out) == from {
			continue
		}
		for i, c := range col.Cells {
			if o := col.Other.Cells[i]; c.Known && o.Known && math.Abs(c.Value-o.Value*col.PerOther) > max(0.01*c.Value, 0.2) {
				j.meant[c.At] = o.Value * col.PerOther
			}
		}
	}
}
