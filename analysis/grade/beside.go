package grade

import (
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/record"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/units"
)

// usual is what holds and drainages lie around in a class: the middle of the students'
// middles. It only ever raises a question.
type usual struct {
	hold, drained float64
	works         int
}

func usualOf(works []*handin.Work) usual {
	var holds, drains []float64
	for _, w := range works {
		for _, t := range w.Tables {
			if h, d, ok := middles(t); ok {
				holds, drains = append(holds, h), append(drains, d)
			}
		}
	}
	if len(holds) < 5 {
		return usual{}
	}
	return usual{middle(holds), middle(drains), len(holds)}
}

// middles are a table's middle hold and drained percent.
func middles(t *handin.Table) (hold, drained float64, ok bool) {
	h, d := pair(t)
	if h == nil || d == nil {
		return 0, 0, false
	}
	return middleOf(h), middleOf(d), h.Known() >= 3 && d.Known() >= 3
}

// pair are the column of a table's holds and its only drained percent.
func pair(t *handin.Table) (hold, drained *handin.Column) {
	hold, drains := t.Hold(), t.All(column.DrainedAmount)
	if hold == nil || len(drains) != 1 || drains[0].Field == nil || drains[0].Field.Want != units.Percent {
		return nil, nil
	}
	return hold, drains[0]
}

func middleOf(c *handin.Column) float64 {
	var xs []float64
	for _, cell := range c.Cells {
		if cell.Known && cell.Value > 0 {
			xs = append(xs, cell.Value)
		}
	}
	return middle(xs)
}

func middle(xs []float64) float64 {
	if len(xs) == 0 {
		return math.NaN()
	}
	xs = slices.Sorted(slices.Values(xs))
	return xs[len(xs)/2]
}

// exchangedResults asks of a work whose hold and drainage look exchanged beside the
// class, and notes what was meant.
func (u usual) exchangedResults(w *handin.Work, slips record.Slips) (out []finding.Found) {
	if u.works == 0 || u.hold < 1.6*u.drained {
		return nil
	}
	for _, t := range w.Tables {
		h, d, ok := middles(t)
		if !ok {
			continue
		}
		far := func(x, y float64) float64 { return math.Abs(math.Log(x / y)) }
		if far(h, u.drained)+far(d, u.hold)+0.9 > far(h, u.hold)+far(d, u.drained) {
			continue
		}
		hold, drained := pair(t)
		f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("Beside the class your “%s” and “%s” look exchanged. Which column is which?", hold.Header, drained.Header), hold.Heading, drained.Heading).Kinds("exchanged columns")
		for i := range t.Trials {
			a, b := hold.Cells[i], drained.Cells[i]
			f = f.And(a.At, b.At)
			if a.Known && b.Known {
				slips.Meant[a.At], slips.Meant[b.At] = b.Value, a.Value
			}
		}
		out = append(out, f)
	}
	return out
}
