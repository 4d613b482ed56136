package repeat

import (
	"slices"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

var sameCharge = pattern.Of(`(?i)\b(?:same|one) (?:siphon|charge|canister|filling|batch|bottle|load)\b|\b(?:second|third|2nd|3rd|another|next) (?:squirt|shot|portion|spray|serving|dollop|press|pull)\b`)

// squirts asks of rows that are squirts of one siphon, where no formula was made again otherwise and no
// sentence was asked of it (method).
func squirts(tr *evidence.Trials) (out []finding.Found) {
	if method.CallsSquirtsRepeats(tr.Work) {
		return nil
	}
	var at []trial.Place
	for i := range tr.Designs {
		d := &tr.Designs[i]
		for _, g := range d.Groups() {
			of := map[bool][]*handin.Trial{}
			for _, k := range g {
				x := d.Trials[k]
				of[sameCharge.MatchString(x.Note)] = append(of[sameCharge.MatchString(x.Note)], x)
			}
			if len(of[false]) > 1 {
				return nil // made again all the same
			}
			for _, x := range of[true] {
				if c := noteOf(x); len(of[false]) == 1 && !method.NoRepeats(x.Note) {
					at = append(at, c)
				}
			}
		}
	}
	if len(at) == 0 || slices.ContainsFunc(tr.Work.Words, func(p handin.Phrase) bool { return method.NoRepeats(p.Text) && method.OfSquirts(p.Text) }) {
		return nil
	}
	return append(out, finding.New(criteria.Repeats, graded.Method, "These are squirts of one siphon: readings of one foam. No formula was made again in a new charge, so nobody can tell a difference from what two makings differ by.", at...).Kinds(method.SquirtsAsRepeats))
}

// noteOf is where a trial's note stands.
func noteOf(x *handin.Trial) trial.Place {
	for _, c := range x.Table.Columns {
		if cell := c.Cells[x.Index]; sameCharge.MatchString(cell.Text) {
			return cell.At
		}
	}
	return x.Table.Columns[0].Cells[x.Index].At
}
