package ingest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// finish settles what only the whole log shows.
func (r *reader) finish() {
	copies, found := whole.Copies(r.log.Trials, r.complaints, r.tables)
	r.said.add(found...)
	r.remove(copies)
	if v, curves := whole.Drainage(r.log.Trials, r.drainedAt()); v != nil {
		r.variable(*v)
		r.said.add(curves...)
	}
	targets, told := kitchen.Settle(r.inForce.Wanted, r.log.Columns, r.log.Extras)
	r.log.Targets.Results = targets
	r.said.add(told...)
	r.said.add(kitchen.Offer(targets, r.log.Columns, r.log.Extras)...)
	whole.SetAside(r.log.Trials, r.badCells)
	if r.several || slices.Contains(r.log.Labels, "week") {
		whole.Weekdays(r.log.Trials, scheme.LooksLikeDay)
	}
	r.giveLots()
	r.said.add(whole.Warmth(r.log.Trials)...)
	r.said.add(r.holds.Capped()...)
	aside, leading := whole.Aside(r.log.Trials, r.starts)
	r.said.add(aside...)
	for _, f := range leading {
		r.said.first(f.Problem)
	}
	r.log.Problems, r.log.Questions = r.said.list, r.said.questions
	for i := range r.log.Trials {
		r.log.Trials[i].Order = i + 1
	}
}

// remove takes trials out of the log; their rows are furniture.
func (r *reader) remove(drop map[int]bool) {
	if len(drop) == 0 {
		return
	}
	moved := make([]int, len(r.log.Trials)+1)
	kept := r.log.Trials[:0]
	for i, x := range r.log.Trials {
		moved[i] = len(kept)
		if drop[i] {
			if r.log.Rows.Furniture += len(x.Rows); x.At.Row > 0 && x.At.Col > 0 {
				r.log.Rows.Furniture -= len(x.Rows) - 1 // a card below another is one line of its table
			}
			continue
		}
		kept = append(kept, x)
	}
	moved[len(moved)-1] = len(kept)
	r.log.Trials = kept
	r.forgetSources(drop)
	for i := range r.starts {
		r.starts[i] = moved[r.starts[i]]
	}
	r.badCells = slices.DeleteFunc(r.badCells, func(c whole.BadCell) bool { return drop[c.Trial] })
	for i := range r.badCells {
		r.badCells[i].Trial = moved[r.badCells[i].Trial]
	}
}

// nothing is the refusal when there is nothing to analyse. A log whose questions are
// open is not refused: the questions are the answer.
func (r *reader) nothing(files []string) error {
	where := "the log"
	if len(files) == 1 {
		where = filepath.Base(files[0])
	} else if len(files) > 1 {
		where = fmt.Sprintf("none of the %d files", len(files))
	}
	const example = "for example: trial | butter g | cider g | GMS g | sucrose ester 15 g | came out | hold min | drained %"
	trials := r.log.Trials
	asked := slices.ContainsFunc(r.log.Questions, func(q trial.Question) bool { return q.Blocks })
	switch {
	case len(r.log.Inputs) == 0:
		return &trial.Refusal{Found: "no file could be read", Do: r.log.Problems[0].Read + "; " + r.log.Problems[0].Do}
	case !r.hadHeader:
		return &trial.Refusal{
			Found: notIn(where, "has a row of column headers that speaks of what was in the mix and what happened to the foam"),
			Do:    "type one above the first trial, " + example,
		}
	case r.filtered > 0 && len(trials) == 0:
		return &trial.Refusal{
			Found: fmt.Sprintf("no trial's dish, sheet or file name contains %s", say.Quoted(r.opt.Only)),
			Do:    "check the spelling, or leave --only away to read all trials",
		}
	case !r.hadOutcome && !r.asksColumn():
		return r.noOutcome(where)
	case slices.ContainsFunc(trials, func(t trial.Trial) bool { return t.Used() }):
		return nil
	case len(trials) == 0:
		return &trial.Refusal{Found: notIn(where, "has a trial below its header"), Do: "type one trial a row, right below the header"}
	case asked && slices.ContainsFunc(trials, func(t trial.Trial) bool { return t.Aside != whole.NothingRead }):
		return nil
	case len(files) == 1 && whole.NotFilledIn(trials):
		return &trial.Refusal{Found: where + " is not filled in yet", Do: whole.HowToFillIn}
	}
	return &trial.Refusal{
		Found: noneUsed(trials),
		Do:    "fill in what was in the mix and what happened to it, and look at what check says of the cells",
	}
}

// noneUsed says that no trial can be used and why the first cannot. A reason may be
// a sentence of its own, so none follows a verb.
func noneUsed(trials []trial.Trial) string {
	t := &trials[0]
	if len(trials) == 1 {
		return fmt.Sprintf("the one trial, at %s, cannot be used (%s)", t.At, t.Aside)
	}
	return fmt.Sprintf("none of the %d trials can be used (the first, at %s: %s)", len(trials), t.At, t.Aside)
}

// asksColumn reports whether a column is asked about on which a start would rest.
func (r *reader) asksColumn() bool {
	return slices.ContainsFunc(r.log.Questions, func(q trial.Question) bool { return q.Blocks && q.Cure.Sheet == "Columns" })
}

// noOutcome refuses a log none of whose columns is known to say what happened; in a
// language that is not known here, one of them does.
func (r *reader) noOutcome(where string) error {
	do := "add at least one of: came out (yes, partly, no), hold min, drained %, split (yes, no)"
	var unknown []string
	for _, c := range r.log.Columns {
		if c.ReadAs == "" && len(unknown) < 5 {
			unknown = append(unknown, say.Quoted(c.Header))
		}
	}
	if len(unknown) > 0 {
		do += fmt.Sprintf("; if one of %s says it, type on a sheet Columns of the log, under the header “Header in the log | Meaning”, its header and came out, hold, drained or split",
			strings.Join(unknown, ", "))
	}
	return &trial.Refusal{Found: notIn(where, "has a column that says what happened to the foam"), Do: do}
}

// notIn says that something is missing, of one file or of all.
func notIn(where, what string) string {
	if strings.HasPrefix(where, "none") {
		return where + " " + what
	}
	return where + strings.Replace(" "+what, " has a", " has no", 1)
}
