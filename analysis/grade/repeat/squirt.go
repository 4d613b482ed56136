package repeat

import (
	"fmt"
	"slices"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var sameCharge = pattern.Of(`(?i)\b(?:same|one) (?:siphon|charge|canister|filling|batch|bottle|load)\b|\b(?:second|third|2nd|3rd|another|next) (?:squirt|shot|portion|spray|serving|dollop|press|pull)\b`)

// squirts asks of rows that are squirts of one siphon, where no formula was made again otherwise and no
// sentence was asked of it (method).
func squirts(tr *evidence.Trials) (out []finding.Found) {
	if method.CallsSquirtsRepeats(tr.Work) {
		return nil
	}
	if out := calledRepeats(tr); out != nil {
		return out
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

// calledRepeats asks of sentences that call repeated what notes say are squirts of one siphon: "5 was
// repeated (5a, 5b)", where 5b is the second squirt of 5a.
func calledRepeats(tr *evidence.Trials) (out []finding.Found) {
	for _, p := range tr.Work.Words {
		if p.Note != nil {
			continue
		}
		for _, text := range sentence.Split(p.Text) {
			s := sentence.Plainly(tr.Work, text)
			if !method.SaysRepeated(text) || sentence.Unsure.MatchString(s.Low) {
				continue
			}
			var named []*handin.Trial
			for _, m := range sentence.Mentions(tr.Work, s) {
				named = append(named, m.Trials...)
			}
			if notes := ofOneCharge(tr, named); len(notes) > 0 {
				f := finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: by your notes these are squirts of one siphon, which are readings of one foam. A repeat is a new mix in a new charge; only that shows what two makings differ by.", say.Quoted(text)), p.At).Kinds(method.SquirtsAsRepeats)
				out = append(out, f.And(notes...))
				break
			}
		}
	}
	return out
}

// ofOneCharge is where notes say that some trials are squirts of one siphon; nothing where one of them may be
// of another: its formula was made more than once, or it is another's.
func ofOneCharge(tr *evidence.Trials, named []*handin.Trial) (notes []trial.Place) {
	if len(named) < 2 {
		return nil
	}
	d := tr.Design(named[0].Table)
	first := slices.Index(d.Trials, named[0])
	if first < 0 {
		return nil
	}
	charges := 0
	for i, x := range d.Trials {
		if !d.Same(first, i) && i != first {
			continue
		}
		if !sameCharge.MatchString(x.Note) {
			charges++
		}
	}
	for _, x := range named {
		i := slices.Index(d.Trials, x)
		if i < 0 || i != first && !d.Same(first, i) || method.NoRepeats(x.Note) {
			return nil
		}
		if sameCharge.MatchString(x.Note) {
			notes = append(notes, noteOf(x))
		}
	}
	if charges > 1 {
		return nil
	}
	return notes
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
