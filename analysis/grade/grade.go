// Package grade checks a class of hand-ins fairly: what was found, at its cell, with how
// it came about; and points only by the teacher's own weights. Run is its only door.
//
// The way of one hand-in is: what its cells are (cells, reclaim) and whose it is (whose),
// which make it a work (handin); slips of the record, and what was meant (record); what
// was worked out, from the student's own earlier cells (recalc); how the trials were
// planned (method); what is concluded, against the student's own trials (claim); dates,
// units, safety (formal). Then rows alike between students (alike), and points (points).
package grade

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"foamfield/analysis/grade/alike"
	"foamfield/analysis/grade/claim"
	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/formal"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/points"
	"foamfield/analysis/grade/quote"
	"foamfield/analysis/grade/recalc"
	"foamfield/analysis/grade/record"
	"foamfield/analysis/grade/repeat"
	"foamfield/analysis/grade/row"
	"foamfield/analysis/grade/scaled"
	"foamfield/analysis/grade/taken"
	"foamfield/analysis/grade/together"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/grade/whose"
	"foamfield/analysis/grade/working"
	"foamfield/analysis/result/graded"
	"foamfield/ingest"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
)

// Graded is a class checked, with the works behind it for whoever writes on them.
type Graded struct {
	Class *graded.Class
	Works []*handin.Work // beside Class.Students
	Pools []*trial.Log   // beside Class.Tasks
}

// Run checks a class. c is nil without a criteria workbook; refused are the files that
// nobody could read.
func Run(handIns []*ingest.HandIn, refused []graded.NotRead, c *criteria.Criteria, version string) Graded {
	out := &graded.Class{Schema: graded.Schema, Version: version, Criteria: []graded.Criterion{}, Rules: []graded.Rule{}, Students: []graded.Student{}, SameData: []graded.SameData{},
		NotRead: refused, Problems: []string{}, Changed: []graded.Change{}, Tasks: []graded.Task{}, Commonest: []graded.Common{}}
	if out.NotRead == nil {
		out.NotRead = []graded.NotRead{}
	}
	rules := criteria.Usual()
	var members []criteria.Member
	if c != nil {
		rules, members = c.Rules, c.Class
		out.Problems = append(out.Problems, c.Problems...)
		out.OutOf = c.OutOf
		for _, r := range c.Rows {
			out.Criteria = append(out.Criteria, graded.Criterion{Name: r.Name, Points: r.Points, LooksAt: r.Looks, OffEach: r.OffEach, AtMost: r.AtMost, Teacher: r.Teacher, Feedback: r.Feedback})
		}
	}
	out.Rules = rulesInForce(rules)
	works := worksOf(handIns, members, out)
	same, second := alike.Of(works, declaredPair(members))
	out.SameData = append(out.SameData, same...)
	beside := usualOf(works)
	var all []checked
	for _, w := range works {
		all = append(all, check(w, rules, beside))
	}
	out.Problems = append(out.Problems, notAsked(all)...)
	out.Problems = append(out.Problems, askedOnce(all)...)
	notAskedFor(all)
	if rules.Deadline.IsZero() {
		laterThanAll(all)
	}
	for _, k := range all {
		out.Students = append(out.Students, k.student(c))
	}
	missing(works, members, out)
	doubtful := doubtfulIn(all)
	out.Tasks = tasks(works, second, doubtful)
	var names []string
	for _, t := range out.Tasks {
		names = append(names, t.Task)
	}
	out.Commonest = commonest(out.Students)
	return Graded{out, works, pools(names, works, second, doubtful)}
}

// worksOf tells whose the hand-ins are, in the order of the names.
func worksOf(handIns []*ingest.HandIn, members []criteria.Member, out *graded.Class) []*handin.Work {
	var names []string
	for _, m := range members {
		names = append(names, m.Name)
	}
	var works []*handin.Work
	for _, h := range handIns {
		own := whose.Of(h, names)
		if !slices.ContainsFunc(own, func(w *handin.Work) bool { return len(w.Trials()) > 0 }) {
			out.NotRead = append(out.NotRead, graded.NotRead{File: h.Book.File, Student: nameIn(own, members), Reason: blankReason(h)})
			continue
		}
		for _, w := range own {
			if len(w.Trials()) > 0 {
				w.Student = called(w, members)
				works = append(works, w)
			}
		}
	}
	works = whose.Merged(works)
	slices.SortStableFunc(works, func(a, b *handin.Work) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Student), strings.ToLower(b.Student)), cmp.Compare(a.Files[0], b.Files[0]))
	})
	return works
}

func nameIn(works []*handin.Work, members []criteria.Member) string {
	if len(works) == 0 {
		return ""
	}
	return called(works[0], members)
}

// blankReason says why a file that can be opened gives no trial.
func blankReason(h *ingest.HandIn) string {
	filled := 0
	for _, s := range h.Book.Sheets {
		for _, r := range s.Rows {
			filled += len(r.Cells)
		}
	}
	if filled == 0 {
		return "the file is blank: nothing is typed in it"
	}
	if len(h.Log.Columns) > 0 {
		return "there is a header and no trial below it: the log is blank"
	}
	return "no table of trials was found: no row of headers says what was in the mix and what happened"
}

// called is the name that the class list has for the student of a work.
func called(w *handin.Work, members []criteria.Member) string {
	for _, m := range members {
		if m.File != "" && slices.ContainsFunc(w.Files, func(f string) bool {
			return strings.EqualFold(f, m.File) || strings.EqualFold(strings.TrimSuffix(f, ext(f)), m.File)
		}) && len(members) > 0 && (len(w.Files) == 1) && !several(members, m.File) {
			return m.Name
		}
	}
	var fits []string
	for _, m := range members {
		if whose.SameName(m.Name, w.Student) && !slices.Contains(fits, m.Name) {
			fits = append(fits, m.Name)
		}
	}
	if len(fits) == 1 {
		return fits[0]
	}
	return w.Student
}

func ext(f string) string {
	if i := strings.LastIndex(f, "."); i >= 0 {
		return f[i:]
	}
	return ""
}

// several reports a file that the class list gives more than one student.
func several(members []criteria.Member, file string) bool {
	n := 0
	for _, m := range members {
		if strings.EqualFold(m.File, file) {
			n++
		}
	}
	return n > 1
}

// missing gives a row to everybody of the class list who handed nothing in.
func missing(works []*handin.Work, members []criteria.Member, out *graded.Class) {
	for _, m := range members {
		has := slices.ContainsFunc(works, func(w *handin.Work) bool {
			return whose.SameName(w.Student, m.Name) || slices.ContainsFunc(w.Partners, func(p string) bool { return whose.SameName(p, m.Name) }) ||
				m.File != "" && slices.Contains(w.Files, m.File) || m.Partner != "" && whose.SameName(w.Student, m.Partner)
		})
		has = has || slices.ContainsFunc(out.NotRead, func(n graded.NotRead) bool {
			return n.Student != "" && whose.SameName(n.Student, m.Name) || whose.SameName(whose.NameOfFile(strings.TrimSuffix(n.File, ext(n.File))), m.Name)
		})
		if !has {
			out.NotRead = append(out.NotRead, graded.NotRead{Student: m.Name, Reason: "nothing was handed in under this name"})
		}
	}
}

// declaredPair reports two works whose students said that they worked together: in
// their words, or in the class list.
func declaredPair(members []criteria.Member) func(a, b *handin.Work) bool {
	return func(a, b *handin.Work) bool {
		for _, x := range [...][2]*handin.Work{{a, b}, {b, a}} {
			if slices.ContainsFunc(x[0].Partners, func(p string) bool { return whose.SameName(p, x[1].Student) }) {
				return true
			}
			for _, m := range members {
				if m.Partner != "" && whose.SameName(m.Name, x[0].Student) && whose.SameName(m.Partner, x[1].Student) {
					return true
				}
			}
		}
		return false
	}
}

// mostTrials bounds the works whose plan and claims are looked at: no student makes
// more, and every trial is held against every other.
const mostTrials = 400

// checked is one work with what was found in it.
type checked struct {
	work  *handin.Work
	found []finding.Found
	tally map[criteria.Look]verdict.Tally
	late  bool
	slips record.Slips
	open  bool // whether any formula was made twice is asked of the teacher
}

// check looks at one work.
func check(w *handin.Work, rules criteria.Rules, beside usual) checked {
	logged, slips := record.Of(w)
	logged = append(logged, beside.exchangedResults(w, slips)...)
	if len(w.Trials()) <= mostTrials {
		logged = append(logged, working.Turned(&evidence.Trials{Work: w, Slips: slips}, rules)...)
	}
	sums, tally := recalc.Of(w, rules, slips.Meant, slips.Not)
	designs := method.Of(w, slips)
	places := claim.Places(w)
	var plan, claims []finding.Found
	if len(w.Trials()) <= mostTrials {
		plan, claims = method.Check(w, designs, rules), claim.Check(w, designs, slips)
		shown := &evidence.Trials{Work: w, Designs: designs, Slips: slips}
		sums = append(sums, besideThese(working.Check(shown, rules), sums)...)
		sums = append(sums, besideThese(scaled.Check(w), sums)...)
		formulas := taken.Check(w)
		sums = unlessShown(sums, formulas)
		sums = append(sums, besideThese(formulas, sums)...)
		plan = append(plan, repeat.Check(shown)...)
		claims = append(claims, besideThese(together.Check(shown), claims)...)
		claims = append(claims, besideThese(quote.Check(shown, sums), claims)...)
	}
	doubted := doubtedWeights(w, logged)
	plan = onceOfRepeats(plan, doubted)
	unlike := slices.DeleteFunc(slices.Clone(plan), func(f finding.Found) bool { return f.Kind != repeat.Unlike && f.Kind != repeat.Exchanged })
	doubted = append(doubted, doubtedWeights(w, unlike)...)
	for i, f := range sums {
		_, x := w.At(f.At)
		sums[i].Certain = f.Certain && !slices.ContainsFunc(doubted, func(at trial.Place) bool { _, y := w.At(at); return x != nil && x == y })
	}
	everything := slices.Concat(logged, sums, claims)
	sums = append(sums, row.Check(w, func(at trial.Place) bool {
		return slices.ContainsFunc(everything, func(f finding.Found) bool { return f.Has(at) })
	})...)
	forms, late := formal.Check(w, rules, places)
	return checked{work: w, found: settle(slices.Concat(logged, sums, plan, claims, forms)), tally: tally, late: late, slips: slips}
}

// doubtedWeights are the weights of which the record is in doubt: a sum of their row may be right of what
// was weighed.
func doubtedWeights(w *handin.Work, logged []finding.Found) (out []trial.Place) {
	for _, t := range w.Tables {
		for _, c := range t.Weighed() {
			for _, x := range c.Cells {
				if slices.ContainsFunc(logged, func(f finding.Found) bool { return !f.Certain && f.Has(x.At) }) {
					out = append(out, x.At)
				}
			}
		}
	}
	return out
}

// onceOfRepeats leaves out what is asked of repeats where its cause is asked already: a weight that is in
// doubt makes two makings differ, and one that differs is why no formula was made twice.
func onceOfRepeats(plan []finding.Found, doubted []trial.Place) []finding.Found {
	plan = slices.DeleteFunc(plan, func(f finding.Found) bool {
		return f.Kind == repeat.Unlike && slices.ContainsFunc(doubted, f.Has)
	})
	unlike := slices.ContainsFunc(plan, func(f finding.Found) bool { return f.Kind == repeat.Unlike || f.Kind == repeat.Exchanged })
	return slices.DeleteFunc(plan, func(f finding.Found) bool {
		return f.Kind == method.NoneMadeTwice && (len(doubted) > 0 || unlike)
	})
}

// besideThese are the findings at cells of which nothing was found yet.
func besideThese(more, found []finding.Found) []finding.Found {
	return slices.DeleteFunc(more, func(f finding.Found) bool {
		return slices.ContainsFunc(found, func(o finding.Found) bool { return o.At == f.At })
	})
}

// unlessShown drops what is asked at a cell whose formula shows for certain how it came about.
func unlessShown(asked, formulas []finding.Found) []finding.Found {
	return slices.DeleteFunc(asked, func(f finding.Found) bool {
		return !f.Certain && slices.ContainsFunc(formulas, func(o finding.Found) bool { return o.Certain && o.Has(f.At) })
	})
}

// laterThanAll asks of trials that are dated days after the last of everybody else.
func laterThanAll(all []checked) {
	var last []time.Time
	for _, k := range all {
		if d, ok := formal.Latest(k.work); ok {
			last = append(last, d)
		}
	}
	if len(last) < 8 {
		return
	}
	slices.SortFunc(last, func(a, b time.Time) int { return b.Compare(a) })
	if last[0].Sub(last[1]) < 2*24*time.Hour {
		return
	}
	for i := range all {
		if d, ok := formal.Latest(all[i].work); ok && d.Equal(last[0]) && !slices.ContainsFunc(all[i].found, func(f finding.Found) bool { return f.Kind == "late" }) {
			all[i].found = append(all[i].found, formal.After(all[i].work, last[1], "the last trial of everybody else")...)
		}
	}
}

// notAskedFor drops the questions for a rule of success, and for an aim, where no more than half of the
// works have one: the class was not asked for it. Of one or two works nobody can tell.
func notAskedFor(all []checked) {
	for _, kind := range []string{formal.NoRule, formal.NoAim} {
		lacks := func(f finding.Found) bool { return f.Kind == kind }
		n := 0
		for _, k := range all {
			if slices.ContainsFunc(k.found, lacks) {
				n++
			}
		}
		if len(all) >= 3 && 2*n < len(all) {
			continue
		}
		for i := range all {
			all[i].found = slices.DeleteFunc(all[i].found, lacks)
		}
	}
}

// student is the row of one work.
func (k checked) student(c *criteria.Criteria) graded.Student {
	w := k.work
	s := graded.Student{Student: w.Student, Files: w.Files, Partners: w.Partners, Trials: len(w.Trials()), Late: k.late, Findings: []graded.Finding{}, Points: []graded.Points{}, Tasks: []string{}}
	if s.Partners == nil {
		s.Partners = []string{}
	}
	for _, t := range w.Tables {
		if !slices.Contains(s.Tasks, t.Task) {
			s.Tasks = append(s.Tasks, t.Task)
		}
	}
	s.Task = strings.Join(s.Tasks, "; ")
	if p, total := points.Of(k.found, c); p != nil {
		s.Points, s.Total = p, total
	}
	for _, f := range k.found {
		s.Findings = append(s.Findings, f.Finding)
	}
	s.Good = k.good()
	s.Next = next(k.found)
	return s
}

// maybeNotAsked are the things that a class may simply not have been asked for.
var maybeNotAsked = []criteria.Look{criteria.Safety, criteria.Dates, criteria.Parts, criteria.Units, criteria.Control, criteria.Repeats, criteria.LeastTrials}

// notAsked turns what most of a class lacks into a question: it was not asked for, or is
// written in a way that is not understood; either way nobody is to pay for it. It says
// so to the teacher.
func notAsked(all []checked) (said []string) {
	for _, look := range maybeNotAsked {
		lacks := 0
		for _, k := range all {
			if slices.ContainsFunc(k.found, func(f finding.Found) bool { return f.Look == look && f.Certain }) {
				lacks++
			}
		}
		if len(all) < 4 || 2*lacks <= len(all) {
			continue
		}
		for _, k := range all {
			for i := range k.found {
				if k.found[i].Look == look {
					k.found[i].Certain = false
				}
			}
		}
		said = append(said, fmt.Sprintf("%d of %d hand-ins lack what is looked at as “%s”: was it asked for? It is a question to each, and costs nothing.", lacks, len(all), look))
	}
	return said
}

// askedOnce asks the teacher once, and no student, what the form of a whole class leaves
// open: whether two holds of a trial are two makings.
func askedOnce(all []checked) (said []string) {
	open := func(f finding.Found) bool { return f.Kind == method.TwiceInARow && !f.Certain }
	n := 0
	for _, k := range all {
		if slices.ContainsFunc(k.found, open) {
			n++
		}
	}
	if len(all) < 4 || 2*n <= len(all) {
		return nil
	}
	for i := range all {
		n := len(all[i].found)
		all[i].found = slices.DeleteFunc(all[i].found, open)
		all[i].open = len(all[i].found) < n
	}
	return []string{fmt.Sprintf("%d of %d hand-ins have each hold more than once in a row: are these new mixes of the formula, or readings of one? Only new mixes are repeats. No student is asked.", n, len(all))}
}

// settle keeps one finding a cause: a number that cannot be is not worked out again, and
// what the record asks of a cell is not asked a second time.
func settle(all []finding.Found) (out []finding.Found) {
	said := map[trial.Place]int{}
	for _, f := range all {
		k, again := said[f.At]
		if again && f.About == graded.Calculation && len(f.Cells) == 1 && out[k].About == graded.Record {
			out[k] = joined(out[k], f)
			continue
		}
		if !again && (f.About == graded.Record || f.About == graded.Calculation) {
			said[f.At] = len(out)
		}
		out = append(out, f)
	}
	return out
}

// joined is what the record and the sums say of one cell: of a number that cannot be,
// how it came about says more.
func joined(logged, sum finding.Found) finding.Found {
	impossible := logged.Kind == "impossible value"
	switch {
	case impossible && (sum.Certain || sum.Formula != nil):
		return sum
	case impossible, sum.Certain && !logged.Certain:
		if _, how, ok := strings.Cut(sum.Words, " was typed, and "); ok {
			how, _, _ = strings.Cut(how, ". How did")
			logged.Words = strings.TrimRight(logged.Words, ".") + "; " + how + "."
		} else {
			logged.Words += " " + sum.Words
		}
		logged.Right = sum.Right
	}
	return logged
}

// good says what was done well, which comes first on a student's page.
func (k checked) good() (out []string) {
	w, found, tally, open := k.work, k.found, k.tally, k.open
	has := func(look criteria.Look) bool {
		return slices.ContainsFunc(found, func(f finding.Found) bool { return f.Look == look })
	}
	for _, k := range []struct {
		look criteria.Look
		name string
	}{{criteria.HLB, "blend HLB"}, {criteria.Fat, "fat percent"}, {criteria.Emulsifier, "emulsifier percent"}, {criteria.Total, "total"}, {criteria.Drained, "drained percent"}, {criteria.Means, "mean and difference"}} {
		switch n := tally[k.look]; {
		case n.Checked > 1 && n.Wrong == 0:
			out = append(out, fmt.Sprintf("Every %s is right (%d worked out again).", k.name, n.Checked))
		case n.Checked > 1 && n.Wrong < n.Checked:
			out = append(out, fmt.Sprintf("%d of %d cells with a %s are right.", n.Checked-n.Wrong, n.Checked, k.name))
		}
	}
	if !has(criteria.Control) {
		out = append(out, "There is a control to compare with.")
	}
	if !has(criteria.Repeats) && !open {
		out = append(out, "A formula was made again, so the scatter can be seen.")
	}
	if !has(criteria.Conclusion) && !has(criteria.Parts) {
		out = append(out, "Nothing that you conclude contradicts your trials.")
	}
	if !has(criteria.Safety) {
		out = append(out, "You wrote down how you worked safely.")
	}
	if len(out) == 0 {
		out = append(out, fmt.Sprintf("%d trials are logged so that they could be read.", len(w.Trials())))
	}
	return out
}

// next is the next step for a student.
func next(found []finding.Found) string {
	for _, k := range []struct {
		look criteria.Look
		step string
	}{{criteria.Control, "Make the recipe you began with once more and name it the control."},
		{criteria.Repeats, "Make your best trial again, on another day, before you believe it."},
		{criteria.OneChange, "Change one thing alone, with everything else as in the control, and compare."},
		{criteria.HLB, "Work out one blend HLB by hand as written out above, then the others."},
		{criteria.Conclusion, "Read your conclusion beside your table, and name the trials it rests on."}} {
		if slices.ContainsFunc(found, func(f finding.Found) bool { return f.Look == k.look }) {
			return k.step
		}
	}
	return "Make your best trial again and one step beyond it, changing one thing only."
}
