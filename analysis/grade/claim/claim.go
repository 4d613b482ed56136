package claim

import (
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/record"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Places are where a work draws its conclusion.
func Places(w *handin.Work) []trial.Place {
	_, places := sentencesOf(w)
	return places
}

// Check finds what a work's conclusion claims against its own trials.
func Check(w *handin.Work, designs []method.Design, slips record.Slips) (out []finding.Found) {
	if len(designs) == 0 || len(w.Trials()) == 0 {
		return nil
	}
	j := &judge{w, designs, slips}
	sentences, _ := sentencesOf(w)
	rule := ruleOf(w)
	reason := noMeasure
	for _, s := range sentences {
		reason = reasonOf(s, reason)
		for _, f := range []func(sentence, ownRule, measure) (finding.Found, bool){j.superlative, j.quoted, j.compared, j.quotedPercent, j.alike, j.optimum, j.direction, j.credited, j.outside, j.tooStrong, j.success, j.counted} {
			if found, ok := f(s, rule, reason); ok {
				out = append(out, found)
			}
		}
	}
	return dedupe(slices.Concat(out, j.verdicts(rule), j.means()))
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

func about(words string, s sentence, kind string) finding.Found {
	f := finding.New(criteria.Conclusion, graded.Conclusion, words, s.at).Kinds(kind)
	f.Typed = graded.Txt(s.text)
	return f
}

var (
	longest  = pattern.Of(`(?i)(\b(held|hold|holds|lasted|lasts|stood|stands|standing|stayed|kept)\b[^.]{0,24}\blong(est)\b|\blongest (hold|time|standing|lasting)|\bhighest hold|\bmost stable\b|\blängste|\bam längsten|\ble plus longtemps|\bmás tiempo\b|\bpiù a lungo\b|\bhold was (the )?longest)`)
	shortest = pattern.Of(`(?i)(\b(held|lasted|stood)\b[^.]{0,24}\bshortest\b|\bshortest (hold|time)|\bleast stable\b|\bcollapsed first\b)`)
	least    = pattern.Of(`(?i)(\b(drained|drains|wept|leaked|dripped)\b[^.]{0,16}\bleast\b|\bleast (drain|liquid|weep|drip)|\blowest drain)`)
	most     = pattern.Of(`(?i)(\b(drained|drains|wept|leaked|dripped)\b[^.]{0,16}\bmost\b|\bmost (drainage|liquid|weep)|\bhighest drain)`)
	bestWord = pattern.Of(`(?i)\b(best|winner|winning|optimum|optimal|meilleure?|mejor|migliore|beste[rn]?)\b`)
	// otherwise are grounds on which a trial may be best that are not looked at here.
	otherwise = pattern.Of(`(?i)(\btaste|\btexture|\bmouth|\bflavou?r|\bcheap|\bcost|\blook|\bcolou?r|\bsmooth|\bsilky|\bshine|\bscore|\bthick|\bbalance|\bcompromise|\boverall|\bby \w+ )`)
	because   = pattern.Of(`(?i)\b(because|as it|since it|as its|since its|which)\b`)
)

// reasonOf is the measure that a sentence, or else the one before it, speaks of.
func reasonOf(s sentence, before measure) measure {
	switch {
	case longest.MatchString(s.low):
		return hold
	case least.MatchString(s.low):
		return drained
	}
	return before
}

// end is which end of a measure a sentence claims for a trial.
type end struct {
	m    measure
	most bool
	says string
}

// endsOf are the superlatives of a sentence.
func endsOf(s sentence) (out []end) {
	for _, one := range []struct {
		re *pattern.Pattern
		e  end
	}{{longest, end{hold, true, "held longest"}}, {shortest, end{hold, false, "held shortest"}}, {least, end{drained, false, "drained least"}}, {most, end{drained, true, "drained most"}}} {
		if one.re.MatchString(s.low) {
			out = append(out, one.e)
		}
	}
	return out
}

// notClaimed reports a sentence that claims nothing of its own trials: a guess, a
// denial, a statement on part of them.
func (s sentence) notClaimed() bool {
	return unsure.MatchString(s.low) || denied.MatchString(s.low) || narrowed.MatchString(s.low)
}

// superlative holds "trial 4 held longest" against the trials; "trial 4 is best" by
// the reason given, or by the student's own rule.
func (j *judge) superlative(s sentence, r ownRule, _ measure) (f finding.Found, ok bool) {
	ends := endsOf(s)
	if len(ends) == 0 && !bestWord.MatchString(s.low) || s.notClaimed() {
		return f, false
	}
	named := j.subjects(s)
	for _, m := range named {
		if m.missing {
			return about(fmt.Sprintf("“%s”: there is no trial %s in the log. Which one is meant?", s.text, m.id), s, "no such trial"), true
		}
	}
	d := j.oneDesign(named)
	if d == nil {
		return f, false
	}
	if f, ok := j.neverOut(s, named, ends); ok {
		return f, true
	}
	for _, e := range ends {
		if f, ok := j.topOf(s, named, d, e); ok {
			return f, true
		}
	}
	if len(ends) == 0 {
		return j.best(s, named, r)
	}
	return f, false
}

// besides opens what trials are compared with: "more than the control".
var besides = pattern.Of(`(?i)\b(than|against|compared (?:to|with)|versus|vs\.?|instead of|minus)\b`)

// subjects are the trials of which a sentence says something, without those that it
// compares them with.
func (j *judge) subjects(s sentence) []mention {
	at := besides.FindStringIndex(s.text)
	if at == nil {
		return mentions(j.work, s)
	}
	if before := mentions(j.work, sentence{at: s.at, text: s.text[:at[0]], low: s.low}); len(before) > 0 {
		return before
	}
	return slices.DeleteFunc(mentions(j.work, s), func(m mention) bool {
		return len(m.trials) == 1 && m.trials[0].IsControl()
	})
}

// oneDesign is the design that all trials named belong to, nil where none or several do.
func (j *judge) oneDesign(named []mention) (d *method.Design) {
	for _, m := range named {
		if len(m.trials) != 1 || d != nil && !d.Has(m.trials[0].Table) {
			return nil
		}
		d = j.design(m.trials[0].Table)
	}
	return d
}

// neverOut finds a foam that is praised and did not come out.
func (j *judge) neverOut(s sentence, named []mention, ends []end) (f finding.Found, ok bool) {
	praised := bestWord.MatchString(s.low)
	for _, e := range ends {
		praised = praised || e.most == (e.m == hold)
	}
	for _, m := range named {
		if m.trials[0].CameOut == trial.No && praised {
			return about(fmt.Sprintf("“%s”: trial %s did not come out.", s.text, m.id), s, "another trial did better").Surely(), true
		}
	}
	return f, false
}

// topOf holds the trials named against all others of their design. Without any formula
// made twice nobody knows what makings differ by: a small difference is asked.
func (j *judge) topOf(s sentence, named []mention, d *method.Design, e end) (f finding.Found, ok bool) {
	worst, known := j.worstOf(named, e)
	if !known {
		return f, false
	}
	is := map[*handin.Trial]bool{}
	for _, m := range named {
		is[m.trials[0]] = true
	}
	margin := j.margin(d, e.m)
	var beats *handin.Trial
	by := 0.0
	for at, o := range d.Trials {
		low, high, known := j.seen(o, e.m)
		another := !is[o] && !slices.ContainsFunc(named, func(m mention) bool { return d.Same(at, slices.Index(d.Trials, m.trials[0])) })
		if v := e.least(low, high); known && another && v-worst > by+1e-9 {
			beats, by = o, v-worst
		}
	}
	alone := !j.repeats(d, e.m)
	if beats == nil || by <= margin && !(alone && by > 0.04*math.Abs(worst)) {
		return f, false
	}
	low, _, _ := j.seen(beats, e.m)
	mine, _, _ := j.seen(named[0].trials[0], e.m)
	words := fmt.Sprintf("“%s”: in your log trial %s has %s %s and trial %s %s %s", s.text, named[0].id, say.Number(mine), e.m.unit(), beats.ID, say.Number(low), e.m.unit())
	switch {
	case by <= margin:
		so := "Nothing was made twice"
		if len(named[0].trials[0].Table.Twins()) > 0 {
			so = "No formula stands in two rows"
		}
		return about(words+". "+so+", so who can tell them apart?", s, "another trial did better"), true
	case !alone:
		words += fmt.Sprintf(", more than makings of one formula differ by (%s)", say.Number(margin))
	}
	return about(words+".", s, "another trial did better").Surely(), true
}

// least is what a result surely reaches in the direction of an end.
func (e end) least(low, high float64) float64 {
	if e.most {
		return low
	}
	return -high
}

// worstOf is the least of the trials named, each at its best: as it may have been, or
// as its formula did.
func (j *judge) worstOf(named []mention, e end) (worst float64, known bool) {
	worst = math.Inf(1)
	for _, m := range named {
		x := m.trials[0]
		low, high, ok := j.seen(x, e.m)
		if !ok {
			return 0, false
		}
		v, sign := high, 1.0
		if !e.most {
			v, sign = -low, -1
		}
		if mean, n := j.ofFormula(x, e.m); n >= 2 {
			v = max(v, sign*mean)
		}
		worst = min(worst, v)
	}
	return worst, true
}

// best holds "trial 4 is best" without a reason against the student's own rule.
func (j *judge) best(s sentence, named []mention, r ownRule) (f finding.Found, ok bool) {
	x := named[0].trials[0]
	if len(named) > 1 {
		return f, false
	}
	if why := j.fails(x, r); why != "" {
		return about(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.text, r.words, named[0].id, why), s, "own rule").Surely(), true
	}
	if r.by != nil && !because.MatchString(s.low) && !otherwise.MatchString(strings.Replace(s.low, "by our rule", "", 1)) {
		if d := j.oneDesign(named); d != nil {
			return j.topOf(s, named, d, *r.by)
		}
	}
	if r.set() || because.MatchString(s.low) || otherwise.MatchString(s.low) {
		return f, false
	}
	// Without a rule or a reason, a trial that another beats in all that was measured is
	// worth a question.
	for _, o := range j.design(x.Table).Trials {
		if o != x && o.CameOut != trial.No && o.Broke != trial.Yes && j.beatsInAll(o, x) {
			return about(fmt.Sprintf("“%s”: trial %s did better in all that was measured. Best by what?", s.text, o.ID), s, "another trial did better"), true
		}
	}
	return f, false
}

// beatsInAll reports a trial that is better than another by more than the scatter in
// something, and worse in nothing.
func (j *judge) beatsInAll(o, x *handin.Trial) bool {
	better := false
	for _, m := range []measure{hold, drained} {
		a, _, ok1 := j.seen(x, m)
		b, _, ok2 := j.seen(o, m)
		if !ok1 || !ok2 {
			continue
		}
		diff := b - a
		if m == drained {
			diff = -diff
		}
		if diff < 0 {
			return false
		}
		better = better || diff > j.margin(j.design(x.Table), m)
	}
	return better
}

var (
	roughly = pattern.Of(`(?i)(longer|more than|less than|at least|\bover\b|under|shorter|\bthan\b|differ|about|around|roughly|nearly|after|at minute|until|target|rule|aim|success|mean|average)`)
)

// tiedToHold is a number of minutes that can be of nothing but the hold.
var tiedToHold = pattern.Of(`(?i)(\b(held|holds|hold|lasted|stood|standing|kept|longest|best)\b[^.;]{0,28}?\(?\d+(?:[.,]\d+)?\s*(min|minutes|h|hours)|\(\d+(?:[.,]\d+)?\s*min)`)

var minutesSaid = pattern.Of(`(?i)(?:\d+(?:[.,]\d+)?\s*(?:,|and|&|/|or|und|et|y|e)\s*)*(\d+(?:[.,]\d+)?)\s*(min\b|mins\b|minutes\b|minuten\b|minuti\b|minutos\b|h\b|hours?\b)`)

// quoted holds minutes that a sentence gives for a trial against its log.
func (j *judge) quoted(s sentence, _ ownRule, _ measure) (f finding.Found, ok bool) {
	v, half, said := minutesOf(s)
	x := j.only(s, s.text)
	if !said || x == nil || unsure.MatchString(s.low) || denied.MatchString(s.low) || roughly.MatchString(s.low) || !tiedToHold.MatchString(s.low) {
		return f, false
	}
	low, high, known := j.seen(x, hold)
	if !known || v >= low-half-1e-9 && (v <= high+half+1e-9 && !math.IsInf(high, 1) || v <= low+half) || j.elsewhere(x, v, half) {
		return f, false
	}
	f = about(fmt.Sprintf("“%s”: your log has %s min for trial %s.", s.text, say.Number(low), x.ID), s, "value quoted")
	f.Certain = low == high && !j.ofSlips(x)
	f.Right = graded.Num(low)
	return f, true
}

// minutesOf is the one number of minutes in a sentence, with half of its last digit;
// false for none or several.
func minutesOf(s sentence) (v, half float64, ok bool) {
	said := minutesSaid.FindAllStringSubmatch(s.low, -1)
	if len(said) != 1 {
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
	if mean, n := j.ofFormula(x, hold); n >= 2 && math.Abs(mean-v) <= half+0.05 {
		return true
	}
	d := j.design(x.Table)
	for i, at := 0, slices.Index(d.Trials, x); i < len(d.Trials); i++ { // another making of it
		if l, h, ok := j.seen(d.Trials[i], hold); ok && (i == at || d.Same(i, at)) && v >= l-half-1e-9 && v <= h+half+1e-9 {
			return true
		}
	}
	if twins := j.twinsIn(x); len(twins) > 1 {
		if l, h, ok := j.bounds(twins); ok && l == h && math.Abs(l-v) <= half+0.05 {
			return true
		}
	}
	return slices.ContainsFunc(x.Table.Columns, func(c *handin.Column) bool {
		cell := c.Cells[x.Index]
		return cell.Known && math.Abs(cell.Value-v) <= 1e-9
	})
}
