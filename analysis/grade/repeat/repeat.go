// Package repeat holds what a work calls a repeat, and what it calls its control, against the
// grams of the trials: whether the one is like for like, and the other of the same mix.
package repeat

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Check finds repeats that are none, and controls of another mix. All of it is asked.
func Check(tr *evidence.Trials) (out []finding.Found) {
	for _, x := range tr.Work.Trials() {
		if y, at, text := declared(tr, x); y != nil {
			if f, ok := held(tr, x, y, at, text); ok {
				out = append(out, f)
			}
		}
	}
	for _, t := range tr.Work.Tables {
		if f, ok := otherControl(t); ok {
			out = append(out, f)
		}
	}
	return slices.Concat(out, squirts(tr), nowhere(tr))
}

// called are labels that name a control or a repeat beside them.
var called = pattern.Of(`(?i)^\s*(?:my |our |the )?(?:controls?|repeats?|repetitions?|replicates?|kontrolle|wiederholung(?:en)?|témoin|répétitions?|testigo|control|repetici(?:ón|ones)|controllo|ripetizion[ei]|controle|herhaling(?:en)?)\s*:?\s*$`)

// nowhere asks of a control or a repeat that a line names and the log does not have.
func nowhere(tr *evidence.Trials) (out []finding.Found) {
	for _, t := range tr.Work.Tables {
		if c := t.Find(column.TrialID); c == nil || !c.Filled() {
			return nil // what its trials are called is not known
		}
	}
	for _, p := range tr.Work.Words {
		if p.Note != nil || p.Right == "" || !called.MatchString(p.Text) {
			continue
		}
		for _, m := range sentence.Mentions(tr.Work, sentence.Plainly(tr.Work, p.Right)) {
			if m.Missing {
				out = append(out, finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: there is no trial %s in the log. Which one is meant?", say.Quoted(p.Right), m.ID), p.RightAt).Kinds("no such trial"))
				break
			}
		}
	}
	return out
}

var (
	repeats = pattern.Of(`(?i)(\brepeat\w*|\breplicat\w*|\bagain\b|\bonce more\b|\bover again\b|\btwice over\b|\bsame (as|mix|weights|again)\b|\bidentical\b|\bduplicate|\bcopy of\b|\b(second|third|2nd|3rd) (time|go|making)\b|^\s*(as|like) \S+\s*$|\bwie\b|\bidem\b|\bnochmal|\bdealt again\b)`)
	varied  = pattern.Of(`(?i)(\bbut (with|without|at|in|out)\b|\bexcept|\binstead\b|\bthis time with\b|\bonly with\b|\bapart from\b)`)
	bareID  = pattern.Of(`\b(\d{1,2}[a-z]?|[A-Z]\d{0,2})\b`)
)

// declared is the trial that another is said to repeat, with where and how.
func declared(tr *evidence.Trials, x *handin.Trial) (of *handin.Trial, at handin.Cell, text string) {
	for _, c := range x.Table.Columns {
		cell := c.Cells[x.Index]
		if cell.Blank() || cell.At == x.Table.Columns[0].Cells[x.Index].At && !repeats.MatchString(cell.Text) {
			continue
		}
		called := c.Role == column.RepeatOf
		if !called && (cell.Known || len(cell.Text) > 120 || !repeats.MatchString(cell.Text)) {
			continue
		}
		if y := named(tr, x, cell.Text); y != nil {
			return y, cell, cell.Text
		}
	}
	return nil, at, ""
}

// named is the one other trial of the same table that a text names.
func named(tr *evidence.Trials, x *handin.Trial, text string) *handin.Trial {
	s := sentence.Plainly(tr.Work, text)
	var found []*handin.Trial
	add := func(all []*handin.Trial) {
		for _, y := range all {
			if y != x && y.Table == x.Table && !slices.Contains(found, y) {
				found = append(found, y)
			}
		}
	}
	for _, m := range sentence.Mentions(tr.Work, s) {
		add(m.Trials)
	}
	if len(found) == 0 && len(strings.Fields(text)) <= 8 {
		for _, m := range bareID.FindAllString(text, -1) {
			add(tr.Work.ByID(m))
		}
	}
	if len(found) != 1 {
		return nil
	}
	return found[0]
}

// Unlike is the kind of what is called a repeat and differs from what it repeats.
const Unlike = "repeat that is not like for like"

// Exchanged is the kind of two cells of a repeat that stand in each other's place.
const Exchanged = "exchanged cells"

// held holds a repeat against what it repeats.
func held(tr *evidence.Trials, x, y *handin.Trial, at handin.Cell, text string) (f finding.Found, ok bool) {
	if varied.MatchString(text) {
		f = finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: what else was changed? Only a trial that is like for like shows what two makings of one formula differ by.", say.Quoted(text)), at.At, x.Table.Columns[0].Cells[x.Index].At)
		return f.Kinds(Unlike), true
	}
	d := tr.Design(x.Table)
	a, b := slices.Index(d.Trials, x), slices.Index(d.Trials, y)
	if a < 0 || b < 0 || d.Same(a, b) {
		return f, false
	}
	var off []*handin.Column
	for _, c := range x.Table.Weighed() {
		p, q := c.Cells[x.Index], c.Cells[y.Index]
		if (p.Known || p.Blank()) && (q.Known || q.Blank()) && math.Abs(p.Value-q.Value) > max(0.35, 0.025*max(p.Value, q.Value)) {
			off = append(off, c)
		}
	}
	if len(off) == 2 && exchanged(off, x, y) {
		p, q := off[0].Cells[x.Index], off[1].Cells[x.Index]
		words := fmt.Sprintf("%s and %s look exchanged: %s, and trial %s has %s and %s. Which is which?", p.Text, q.Text, say.Quoted(text), y.ID, off[0].Cells[y.Index].Text, off[1].Cells[y.Index].Text)
		return finding.Of(criteria.Record, graded.Record, words, p).Kinds(Exchanged).And(q.At, off[0].Cells[y.Index].At, off[1].Cells[y.Index].At, at.At), true
	}
	if len(off) == 0 {
		return f, false
	}
	var list []string
	for _, c := range off {
		list = append(list, fmt.Sprintf("%s (%s and %s)", c.Header, orNone(c.Cells[y.Index]), orNone(c.Cells[x.Index])))
	}
	f = finding.New(criteria.Repeats, graded.Method, fmt.Sprintf("%s: trials %s and %s differ in %s. A repeat is like for like.", say.Quoted(text), y.ID, x.ID, say.List(list)), at.At, x.Table.Columns[0].Cells[x.Index].At).Kinds(Unlike)
	for _, c := range off {
		f = f.And(c.Cells[x.Index].At, c.Cells[y.Index].At)
	}
	return f, true
}

func orNone(c handin.Cell) string {
	if c.Text == "" {
		return "none"
	}
	return c.Text
}

// exchanged reports two ingredients that one trial has as the other has them in each other's
// place.
func exchanged(off []*handin.Column, x, y *handin.Trial) bool {
	alike := func(a, b handin.Cell) bool { return math.Abs(a.Value-b.Value) <= max(0.2, 0.02*b.Value) }
	return alike(off[0].Cells[x.Index], off[1].Cells[y.Index]) && alike(off[1].Cells[x.Index], off[0].Cells[y.Index])
}

// otherControl asks of a control that has another fat or another water than all other trials,
// or as much less or more fat where these all have the same.
func otherControl(t *handin.Table) (f finding.Found, ok bool) {
	var control *handin.Trial
	for _, x := range t.Trials {
		if x.IsControl() {
			if control != nil {
				return f, false
			}
			control = x
		}
	}
	if control == nil || len(t.Trials) < 3 {
		return f, false
	}
	var off []*handin.Column
	for _, c := range t.Weighed() {
		what := &c.Field.What
		if what.WeighedAsEmulsifier() || c.Field.Kindless {
			continue
		}
		mine := c.Cells[control.Index]
		low, high := math.Inf(1), 0.0
		for _, x := range t.Trials {
			if v := c.Cells[x.Index].Value; x != control && x.CameOut != trial.No {
				low, high = min(low, v), max(high, v)
			}
		}
		main := what.Kind == ingredient.Fat || what.Kind == ingredient.Water
		switch {
		case !mine.Known && !mine.Blank():
		case main && (mine.Value == 0) != (high == 0) && (mine.Value == 0 && low > 0 || high == 0), what.Kind == ingredient.Fat && low == high && low > 0 && math.Abs(mine.Value-low) > 0.08*low:
			off = append(off, c)
		}
	}
	if len(off) == 0 {
		return f, false
	}
	var list []string
	for _, c := range off {
		list = append(list, fmt.Sprintf("%s (%s g)", c.Field.Called(), orNone(c.Cells[control.Index])))
	}
	f = finding.New(criteria.Control, graded.Method, fmt.Sprintf("Your control differs from all other trials in %s. Then it does not show what was changed among these: make one of the same mix.", say.List(list)), t.Columns[0].Cells[control.Index].At).Kinds("control of another mix")
	for _, c := range off {
		f = f.And(c.Cells[control.Index].At)
	}
	return f, true
}
