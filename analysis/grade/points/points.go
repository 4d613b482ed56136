// Package points turns findings into points, only by the teacher's own weights. What
// is not certain costs nothing, and so does everything that is luck.
package points

import (
	"slices"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
)

// Of takes each criterion's points off for its certain findings, writes into each what
// it costs, and adds up.
func Of(found []finding.Found, c *criteria.Criteria) (out []graded.Points, total *float64) {
	if c == nil || len(c.Rows) == 0 || c.OutOf == 0 {
		return nil, nil
	}
	sum := 0.0
	off := make([]float64, len(c.Rows))
	why := make([][]string, len(c.Rows))
	for i := range found {
		f := &found[i]
		k := criterionOf(f, c.Rows)
		if k < 0 || !f.Certain || c.Rows[k].Teacher {
			continue
		}
		f.Off = min(c.Rows[k].OffEach, c.Rows[k].AtMost-off[k])
		off[k] += f.Off
		why[k] = append(why[k], f.Words)
	}
	for k, row := range c.Rows {
		p := graded.Points{Criterion: row.Name, OutOf: row.Points, Off: off[k], Why: why[k]}
		if !row.Teacher {
			left := row.Points - off[k]
			p.Proposed = &left
			sum += left
		}
		if p.Why == nil {
			p.Why = []string{}
		}
		out = append(out, p)
	}
	return out, &sum
}

// criterionOf is the criterion that looks at a finding: at its very kind, or else at
// its part of the work; -1 for none.
func criterionOf(f *finding.Found, rows []criteria.Row) int {
	for _, look := range []criteria.Look{f.Look, criteria.Look(f.About)} {
		if i := slices.IndexFunc(rows, func(r criteria.Row) bool { return slices.Contains(r.LooksAt, look) }); i >= 0 {
			return i
		}
	}
	return -1
}
