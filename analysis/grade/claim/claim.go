// Package claim holds what a student concludes against the student's own trials, by the
// student's own rule of success. A claim of which a word that matters is not understood is
// not judged.
package claim

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/moves"
	"foamfield/analysis/grade/overall"
	"foamfield/analysis/grade/passed"
	"foamfield/analysis/grade/record"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// judge holds claims against trials.
type judge struct{ *ground.Judge }

// Places are where a work draws its conclusion.
func Places(w *handin.Work) []trial.Place {
	_, places := sentence.SentencesOf(w)
	return places
}

// checks are what is asked of a sentence, in order.
var checks = []ground.Check{own((*judge).superlative), own((*judge).quoted), own((*judge).compared), own((*judge).quotedPercent), own((*judge).alike), own((*judge).optimum), moves.Direction, moves.Levels, moves.Trend, moves.Steady, moves.Ingredient, moves.Without, moves.Setting, moves.Results,
	own((*judge).credited), own((*judge).outside), own((*judge).beyond), own((*judge).tooMuch), own((*judge).byItself), own((*judge).tooStrong), passed.Success, passed.Recommended, passed.Bare, passed.Only, passed.OnlyFailed, passed.Counted, passed.Fattest, passed.Became, own((*judge).credits), own((*judge).against), own((*judge).allTwice), own((*judge).ranked), own((*judge).compares), own((*judge).choosing), own((*judge).clearly), overall.Many, overall.Level, overall.Named, overall.End}

// own is a check of this room.
func own(check func(*judge, sentence.Sentence, ground.OwnRule, evidence.Measure) (finding.Found, bool)) ground.Check {
	return func(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, m evidence.Measure) (finding.Found, bool) {
		return check(&judge{g}, s, r, m)
	}
}

// Check finds what a work's conclusion claims against its own trials.
func Check(w *handin.Work, designs []method.Design, slips record.Slips) (out []finding.Found) {
	if len(designs) == 0 || len(w.Trials()) == 0 {
		return nil
	}
	j := &judge{&ground.Judge{Trials: &evidence.Trials{Work: w, Designs: designs, Slips: slips}}}
	typed := &judge{&ground.Judge{Trials: &evidence.Trials{Work: w, Designs: designs, Slips: record.Slips{Not: slips.Not}}}}
	sentences, _ := sentence.SentencesOf(w)
	rule := ground.RuleOf(w)
	reason := evidence.NoMeasure
	before := sentence.Sentence{}
	for _, s := range sentences {
		if found, ok := j.pairCredited(s, before); ok {
			found.Certain = found.Certain && !s.Reworded
			out = append(out, found)
		}
		before = s
		reason = reasonOf(s, reason)
		for _, check := range checks {
			found, ok := check(j.Judge, s, rule, reason)
			if !ok {
				continue
			}
			found.Certain = found.Certain && !s.Reworded
			if len(slips.Meant) > 0 { // what is true of the numbers as typed is no lie
				_, lies := check(typed.Judge, s, rule, reason)
				found.Certain = found.Certain && lies
				if !lies && (found.Kind == "miscounted" || found.Kind == "own rule") {
					continue
				}
			}
			out = append(out, found)
		}
	}
	return dedupe(slices.Concat(out, passed.Verdicts(j.Judge, rule)))
}

// dedupe keeps one finding of a kind at a cell, and of one reason: the trial that is called
// the best in one cell is called so again in the next.
func dedupe(all []finding.Found) (out []finding.Found) {
	for _, f := range all {
		if slices.ContainsFunc(out, func(o finding.Found) bool { return o.At == f.At && o.Kind == f.Kind }) {
			continue
		}
		if k := slices.IndexFunc(out, func(o finding.Found) bool {
			return o.Kind == f.Kind && o.Certain == f.Certain && reasonIn(o.Words) == reasonIn(f.Words)
		}); k >= 0 {
			out[k] = out[k].And(f.At)
			continue
		}
		out = append(out, f)
	}
	return out
}

// reasonIn is what a finding says after the words that it is about.
func reasonIn(words string) string {
	if _, reason, ok := strings.Cut(words, "”: "); ok {
		return reason
	}
	return words
}

var (
	shortest = pattern.Of(`(?i)(\b(held|lasted|stood)\b[^.]{0,24}\bshortest\b|\bshortest (hold|time)|\bleast stable\b|\bcollapsed first\b)`)
	least    = pattern.Of(`(?i)(\b(drained|drains|wept|leaked|dripped)\b[^.]{0,16}\bleast\b|\bleast (drain|liquid|weep|drip)|\blowest drain)`)
	airiest  = pattern.Of(`(?i)(\b(?:highest|largest|greatest|biggest|most|best) (?:overrun|volume gain|foam volume)\b|\boverrun (?:is|was) (?:the )?highest\b|\bmost air(?:y)?\b)`)
	densest  = pattern.Of(`(?i)(\b(?:lowest|smallest|least) (?:overrun|volume gain|foam volume)\b|\boverrun (?:is|was) (?:the )?lowest\b|\bleast air(?:y)?\b)`)
	most     = pattern.Of(`(?i)(\b(drained|drains|wept|leaked|dripped)\b[^.]{0,16}\bmost\b|\bmost (drainage|liquid|weep)|\bhighest drain)`)
)

// reasonOf is the measure that a sentence, or else the one before it, speaks of.
func reasonOf(s sentence.Sentence, before evidence.Measure) evidence.Measure {
	switch {
	case sentence.Longest.MatchString(s.Low):
		return evidence.Hold
	case least.MatchString(s.Low):
		return evidence.Drained
	}
	return before
}

// endsOf are the superlatives of a sentence.
func endsOf(s sentence.Sentence) (out []ground.End) {
	for _, one := range []struct {
		re *pattern.Pattern
		e  ground.End
	}{{sentence.Longest, ground.End{Of: evidence.Hold, Most: true, Says: "held longest"}}, {shortest, ground.End{Of: evidence.Hold, Most: false, Says: "held shortest"}}, {least, ground.End{Of: evidence.Drained, Most: false, Says: "drained least"}}, {most, ground.End{Of: evidence.Drained, Most: true, Says: "drained most"}}, {airiest, ground.End{Of: evidence.Overrun, Most: true, Says: "has the highest overrun"}}, {densest, ground.End{Of: evidence.Overrun, Says: "has the lowest overrun"}}} {
		if one.re.MatchString(s.Low) {
			out = append(out, one.e)
		}
	}
	return out
}

// superlative holds "trial 4 held longest" against the trials; "trial 4 is best" by
// the reason given, or by the student's own rule.
func (j *judge) superlative(s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	in, s := j.Field(s, r)
	ends := endsOf(s)
	if bothEnds.MatchString(s.Low) {
		return f, false // which trial is which is not understood
	}
	if len(ends) == 0 && !sentence.BestWord.MatchString(s.Low) || s.NotClaimed() {
		return f, false
	}
	named := j.Subjects(s)
	if onlyControl(named) && !controlFirst.MatchString(s.Low) {
		return f, false // of what it is said is not understood
	}
	for _, m := range named {
		if m.Missing {
			return ground.About(fmt.Sprintf("“%s”: there is no trial %s in the log. Which one is meant?", s.Said, m.ID), s, "no such trial"), true
		}
	}
	d := j.OneDesign(named)
	if d == nil {
		return f, false
	}
	if f, ok := j.neverOut(s, named, ends); ok {
		return f, true
	}
	for _, e := range ends {
		if f, ok := j.topOf(s, named, d, e, in); ok {
			return f, true
		}
	}
	if len(ends) == 0 || sentence.BestWord.MatchString(s.Low) && ground.Because.MatchString(s.Low) {
		return j.best(s, named, r)
	}
	if isBest.MatchString(s.Low) && !ground.Otherwise.MatchString(passed.ByRule.ReplaceAllString(s.Low, "")) && len(named) == 1 {
		return j.notPassing(s, named[0], r) // it held longest, and is no success all the same
	}
	return f, false
}

// isBest calls a trial the best, and not what it has: "trial 4 is best: it held longest".
var isBest = pattern.Of(`(?i)\b(?:is|was|are|were) (?:clearly |by far |so |thus )?(?:my |our |the )?(?:best|winner)(?: (?:one|mix|blend|foam|recipe|trial|formula|of all))*\s*(?:[.,:;(]|$|\b(?:because|since|as|by|with|and)\b)`)

// notPassing holds a trial that is called the best against the student's own rule: of a level each making
// has to pass.
func (j *judge) notPassing(s sentence.Sentence, m sentence.Mention, r ground.OwnRule) (f finding.Found, ok bool) {
	for _, x := range m.Trials {
		if why := j.Fails(x, r); why != "" && ground.OneFormula(j.Design(x.Table), m.Trials) {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.Said, r.Words(), x.ID, why), s, "own rule"), true
		}
	}
	return f, false
}

// bothEnds are two ends in one sentence: "the highest has T5, the lowest T2".
var bothEnds = pattern.Of(`(?i)\b(?:highest|longest|most|largest|greatest)\b.*\b(?:lowest|shortest|least|smallest)\b|\b(?:lowest|shortest|least|smallest)\b.*\b(?:highest|longest|most|largest|greatest)\b`)

// controlFirst is a sentence that begins with the control.
var controlFirst = pattern.Of(`(?i)^\s*(so |and |but )?(the |my |our )?(control|ctrl|kontrolle|trial|test|run|base|reference|standard|plain|bare)`)

// onlyControl reports that nothing is named but controls.
func onlyControl(named []sentence.Mention) bool {
	return len(named) > 0 && !slices.ContainsFunc(named, func(m sentence.Mention) bool {
		return m.Missing || slices.ContainsFunc(m.Trials, func(x *handin.Trial) bool { return !x.IsControl() })
	})
}

// neverOut finds a foam that is praised and did not come out.
func (j *judge) neverOut(s sentence.Sentence, named []sentence.Mention, ends []ground.End) (f finding.Found, ok bool) {
	praised := sentence.BestWord.MatchString(s.Low)
	for _, e := range ends {
		praised = praised || e.Most == (e.Of == evidence.Hold)
	}
	for _, m := range named {
		if praised && !slices.ContainsFunc(m.Trials, func(x *handin.Trial) bool { return x.CameOut != trial.No }) {
			return ground.About(fmt.Sprintf("“%s”: trial %s did not come out.", s.Said, m.ID), s, "another trial did better").Surely(), true
		}
	}
	return f, false
}

// topOf holds the trials named against all others of their design that are in question. Without any formula
// made twice nobody knows what makings differ by: a small difference is asked.
func (j *judge) topOf(s sentence.Sentence, named []sentence.Mention, d *method.Design, e ground.End, in func(x *handin.Trial) bool) (f finding.Found, ok bool) {
	worst, known := j.worstOf(named, e)
	if !known {
		return f, false
	}
	is := map[*handin.Trial]bool{}
	for _, m := range named {
		for _, x := range m.Trials {
			is[x] = true
		}
	}
	margin := j.Margin(d, e.Of)
	var beats *handin.Trial
	by := 0.0
	for at, o := range d.Trials {
		low, high, known := j.Seen(o, e.Of)
		another := !is[o] && in(o) && !slices.ContainsFunc(named, func(m sentence.Mention) bool { return d.Same(at, slices.Index(d.Trials, m.Trials[0])) })
		if v := leastOf(e, low, high); known && another && v-worst > by+1e-9 {
			beats, by = o, v-worst
		}
	}
	alone := !j.Repeats(d, e.Of)
	if beats == nil || by <= margin && !(alone && by > 0.04*math.Abs(worst)) {
		return f, false
	}
	low, _, _ := j.Seen(beats, e.Of)
	mine := 0.0 // of a level the making that did best
	for i, x := range named[0].Trials {
		if low, _, _ := j.Seen(x, e.Of); i == 0 || (low > mine) == e.Most {
			mine = low
		}
	}
	words := fmt.Sprintf("“%s”: in your log trial %s has %s %s and trial %s %s %s", s.Said, named[0].ID, say.Number(mine), j.Unit(e.Of), beats.ID, say.Number(low), j.Unit(e.Of))
	switch {
	case by <= margin:
		so := "Nothing was made twice"
		if len(named[0].Trials[0].Table.Twins()) > 0 {
			so = "No formula stands in two rows"
		}
		return ground.About(words+". "+so+", so who can tell them apart?", s, "another trial did better"), true
	case !alone:
		words += fmt.Sprintf(", more than makings of one formula differ by (%s)", say.Number(margin))
	}
	return ground.About(words+".", s, "another trial did better").Surely(), true
}

// least is what a result surely reaches in the direction of an end.
func leastOf(e ground.End, low, high float64) float64 {
	if e.Most {
		return low
	}
	return -high
}

// worstOf is the least of the trials named, each at its best: as it may have been, or
// as its formula did.
func (j *judge) worstOf(named []sentence.Mention, e ground.End) (worst float64, known bool) {
	worst = math.Inf(1)
	for _, m := range named {
		best := math.Inf(-1) // of the makings of a level
		for _, x := range m.Trials {
			low, high, ok := j.Seen(x, e.Of)
			if !ok {
				return 0, false
			}
			v, sign := high, 1.0
			if !e.Most {
				v, sign = -low, -1
			}
			if mean, n := j.OfFormula(x, e.Of); n >= 2 {
				v = max(v, sign*mean)
			}
			best = max(best, v)
		}
		worst = min(worst, best)
	}
	return worst, true
}

// best holds "trial 4 is best" without a reason against the student's own rule.
func (j *judge) best(s sentence.Sentence, named []sentence.Mention, r ground.OwnRule) (f finding.Found, ok bool) {
	x := named[0].Trials[0]
	if f, ok := passed.Best(j.Judge, s, named, r); ok || len(named) > 1 {
		return f, ok
	}
	if f, ok := j.notPassing(s, named[0], r); ok {
		return f, ok
	}
	if r.By != nil && r.Best == rule.Unsaid && !ground.Because.MatchString(s.Low) && !ground.Otherwise.MatchString(passed.ByRule.ReplaceAllString(s.Low, "")) {
		if d := j.OneDesign(named); d != nil {
			return j.topOf(s, named, d, *r.By, func(*handin.Trial) bool { return true })
		}
	}
	if r.Set() || r.Best != rule.Unsaid || ground.Because.MatchString(s.Low) || ground.Otherwise.MatchString(s.Low) {
		return f, false
	}
	// Without a rule or a reason, a trial that another beats in all that was measured is
	// worth a question.
	for _, o := range j.Design(x.Table).Trials {
		if o != x && o.CameOut != trial.No && o.Broke != trial.Yes && j.beatsInAll(o, x) {
			return ground.About(fmt.Sprintf("“%s”: trial %s did better in all that was measured. Best by what?", s.Said, o.ID), s, "another trial did better"), true
		}
	}
	return f, false
}

// beatsInAll reports a trial that is better than another by more than the scatter in
// something, and worse in nothing.
func (j *judge) beatsInAll(o, x *handin.Trial) bool {
	better := false
	for _, m := range []evidence.Measure{evidence.Hold, evidence.Drained} {
		a, _, ok1 := j.Seen(x, m)
		b, _, ok2 := j.Seen(o, m)
		if !ok1 || !ok2 {
			continue
		}
		diff := b - a
		if m == evidence.Drained {
			diff = -diff
		}
		if diff < 0 {
			return false
		}
		better = better || diff > j.Margin(j.Design(x.Table), m)
	}
	return better
}

var (
	roughly = pattern.Of(`(?i)(longer|more than|less than|at least|\bover\b|under|shorter|\bthan\b|differ|about|around|roughly|nearly|after|at minute|until|target|rule|aim|success|mean|average)`)
)

// tiedToHold is a number of minutes that can be of nothing but the hold.
var tiedToHold = pattern.Of(`(?i)(\b(held|holds|hold|lasted|stood|standing|kept|longest|best)\b[^.;]{0,28}?\(?\d+(?:[.,]\d+)?\s*(min|minutes|h|hours)|\(\d+(?:[.,]\d+)?\s*min)`)

var minutesSaid = pattern.Of(`(?i)(?:\d+(?:[.,]\d+)?\s*(?:,|and|&|/|or|und|et|y|e)\s*)*(\d+(?:[.,]\d+)?)\s*(min\b|mins\b|minutes\b|minuten\b|minuti\b|minutos\b|h\b|hours?\b)`)

// spanSaid are minutes that go from one number to another: "from 27 to 17 min", "20-22 min".
// besideOthers are minutes of one trial beside those of others: "18 against 17 and 16 min".
var besideOthers = pattern.Of(`(?i)\d\s+(?:against|versus|vs\.?|compared (?:with|to)|gegen|contre|contra|contro|tegen)\s+\d`)

var spanSaid = pattern.Of(`(?i)\d\s*(?:min|mins|minutes|minuten|minuti|minutos)?(?:\s+(?:up to|down to|to|bis|auf|à|→)\s+|[-–−→])\d+(?:[.,]\d+)?\s*(?:min|h\b|hours?)`)

// quoted holds minutes that a sentence gives for a trial against its log.
func (j *judge) quoted(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	v, half, said := minutesOf(s)
	x := j.Only(s, s.Text)
	if !said || x == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || roughly.MatchString(s.Low) || !tiedToHold.MatchString(s.Low) {
		return f, false
	}
	low, high, known := j.Seen(x, evidence.Hold)
	if !known || v >= low-half-1e-9 && (v <= high+half+1e-9 && !math.IsInf(high, 1) || v <= low+half) || j.elsewhere(x, v, half) {
		return f, false
	}
	f = ground.About(fmt.Sprintf("“%s”: your log has %s min for trial %s.", s.Said, say.Number(low), x.ID), s, "value quoted")
	f.Certain = low == high && !j.OfSlips(x)
	f.Right = graded.Num(low)
	return f, true
}

// minutesOf is the one number of minutes in a sentence, with half of its last digit;
// false for none or several.
func minutesOf(s sentence.Sentence) (v, half float64, ok bool) {
	said := minutesSaid.FindAllStringSubmatch(s.Low, -1)
	if len(said) != 1 || spanSaid.MatchString(s.Low) || besideOthers.MatchString(s.Low) {
		return 0, 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(said[0][1], ",", ".", 1), 64)
	half = 0.5
	if i := strings.IndexAny(said[0][1], ".,"); i >= 0 {
		half = 0.5 * math.Pow(10, -float64(len(said[0][1])-i-1))
	}
	if strings.HasPrefix(said[0][2], "h") {
		v, half = 60*v, 60*half
	}
	return v, half, err == nil
}

// elsewhere reports a number that is the mean of a trial's formula, one of several
// readings, or stands elsewhere in its row.
func (j *judge) elsewhere(x *handin.Trial, v, half float64) bool {
	if mean, n := j.OfFormula(x, evidence.Hold); n >= 2 && math.Abs(mean-v) <= half+0.05 {
		return true
	}
	d := j.Design(x.Table)
	for i, at := 0, slices.Index(d.Trials, x); i < len(d.Trials); i++ { // another making of it
		if l, h, ok := j.Seen(d.Trials[i], evidence.Hold); ok && (i == at || d.Same(i, at)) && v >= l-half-1e-9 && v <= h+half+1e-9 {
			return true
		}
	}
	if twins := j.TwinsIn(x); len(twins) > 1 {
		if l, h, ok := j.Bounds(twins); ok && l == h && math.Abs(l-v) <= half+0.05 {
			return true
		}
	}
	return slices.ContainsFunc(x.Table.Columns, func(c *handin.Column) bool {
		cell := c.Cells[x.Index]
		return cell.Known && math.Abs(cell.Value-v) <= 1e-9
	})
}
