package claim

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	longerThan  = regexp.MustCompile(`(?i)\b(held|holds|lasted|lasts|stood|stands|kept|stayed)\b[^.]{0,24}\b(longer|shorter)( time)? than\b`)
	drainedThan = regexp.MustCompile(`(?i)\b(drained|drains|wept|leaked)\b[^.]{0,16}\b(less|more) than\b`)
	byMinutes   = regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)\s*(?:min|minutes)\s+(?:longer|shorter|more|less)`)
)

// compared holds "trial 3 held 5 min longer than the control" against the two.
func (j *judge) compared(s sentence, _ ownRule, _ measure) (f finding.Found, ok bool) {
	if unsure.MatchString(s.low) || denied.MatchString(s.low) || narrowed.MatchString(s.low) {
		return f, false
	}
	m, sign := noMeasure, 0.0
	for _, one := range []struct {
		re *regexp.Regexp
		m  measure
	}{{longerThan, hold}, {drainedThan, drained}} {
		if p := one.re.FindStringSubmatch(s.low); p != nil {
			m, sign = one.m, 1
			if w := strings.ToLower(p[2]); w == "shorter" || w == "less" {
				sign = -1
			}
		}
	}
	at := strings.Index(s.low, " than ")
	if m == noMeasure || at < 0 {
		return f, false
	}
	before, after := j.only(s, s.text[:min(at, len(s.text))]), j.only(s, s.text[min(at, len(s.text)):])
	if before == nil || after == nil || before == after {
		return f, false
	}
	a, aHigh, ok1 := j.seen(before, m)
	b, bHigh, ok2 := j.seen(after, m)
	if !ok1 || !ok2 {
		return f, false
	}
	margin := j.margin(j.design(before.Table), m)
	if low, high := sign*(a-bHigh), sign*(aHigh-b); max(low, high) < -margin {
		return about(fmt.Sprintf("“%s”: in your log trial %s has %s %s and trial %s %s %s.", s.text, before.ID, say.Number(a), m.unit(), after.ID, say.Number(b), m.unit()), s, "comparison").Surely(), true
	}
	if p := byMinutes.FindStringSubmatch(s.low); p != nil && m == hold && a == aHigh && b == bHigh {
		v, err := strconv.ParseFloat(strings.Replace(p[1], ",", ".", 1), 64)
		if err == nil && math.Abs(math.Abs(a-b)-v) > 0.51 && !j.meansDiffer(before, after, v) {
			return about(fmt.Sprintf("“%s”: by your log it is %s − %s = %s min.", s.text, say.Number(a), say.Number(b), say.Number(a-b)), s, "value quoted"), true
		}
	}
	return f, false
}

// meansDiffer reports that the means of the two formulas differ by so much.
func (j *judge) meansDiffer(x, y *handin.Trial, by float64) bool {
	a, n := j.ofFormula(x, hold)
	b, k := j.ofFormula(y, hold)
	return n > 0 && k > 0 && math.Abs(math.Abs(a-b)-by) <= 0.51
}

// only is the one trial that a part of a sentence names, nil for none or several.
func (j *judge) only(s sentence, part string) *handin.Trial {
	named := mentions(j.work, sentence{at: s.at, text: part, low: " " + strings.ToLower(part) + " "})
	if len(named) != 1 || named[0].missing || len(named[0].trials) != 1 {
		return nil
	}
	return named[0].trials[0]
}

var (
	nOfM     = regexp.MustCompile(`(?i)\b(\d+|one|two|three|four|five|six|seven|eight|nine|ten|none|all) (?:out )?of (?:the |my |our |all )?(?:\d+|two|three|four|five|six|seven|eight|nine|ten)? ?(?:trials|foams|mixes|runs|tests)[^.]{0,12}\b(worked|works|succeeded|were a success|met|passed)`)
	numerals = map[string]int{"none": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}
	noneSo   = regexp.MustCompile(`(?i)\b(none of (?:the|my|our) (?:trials|foams|mixes|runs)|no (?:trial|foam|mix|run))s? (clogged|split|broke)`)
	allOut   = regexp.MustCompile(`(?i)\ball (?:of )?(?:the |my |our )?(?:\d+ |four |five |six )?(?:trials|foams|mixes|runs)? ?(?:came out|were dispensed)`)
)

// counted holds "3 of 5 trials worked", "none clogged" against all trials.
func (j *judge) counted(s sentence, r ownRule, _ measure) (f finding.Found, ok bool) {
	all := j.work.Trials()
	if unsure.MatchString(s.low) {
		return f, false
	}
	if m := noneSo.FindStringSubmatch(s.low); m != nil {
		for _, x := range all {
			if m[2] == "clogged" && x.CameOut == trial.No || m[2] != "clogged" && x.Broke == trial.Yes {
				return about(fmt.Sprintf("“%s”: your log says that trial %s did.", s.text, x.ID), s, "count").Surely(), true
			}
		}
	}
	if allOut.MatchString(s.low) {
		for _, x := range all {
			if x.CameOut == trial.No {
				return about(fmt.Sprintf("“%s”: your log says that trial %s did not.", s.text, x.ID), s, "count").Surely(), true
			}
		}
	}
	m := nOfM.FindStringSubmatch(s.low)
	if m == nil || !r.set() {
		return f, false
	}
	n, said := numerals[m[1]]
	if !said {
		v, err := strconv.Atoi(m[1])
		if err != nil {
			return f, false
		}
		n = v
	}
	passed, failed := 0, 0
	for _, x := range all {
		switch {
		case j.passes(x, r):
			passed++
		case j.fails(x, r) != "":
			failed++
		}
	}
	if passed+failed == len(all) && n != passed {
		return about(fmt.Sprintf("“%s”: by your own rule (%s) it is %d of %d.", s.text, r.words, passed, len(all)), s, "count").Surely(), true
	}
	return f, false
}

var (
	drainedSaid = regexp.MustCompile(`(?i)\b(?:drained|drainage|wept|leaked)\b[^.;%]{0,20}?(\d+(?:[.,]\d+)?)\s*%|(\d+(?:[.,]\d+)?)\s*% (?:drained|drainage|drain)`)
	sameWords   = regexp.MustCompile(`(?i)(\balike\b|\bas long as\b|\bequally (long|well|good)\b|\bthe same (hold|time|length)\b|\bno difference\b|\bdid not differ\b|\bidentical\b)`)
)

// quotedPercent holds percents that a sentence gives for one trial against its log: what
// drained, and its fat.
func (j *judge) quotedPercent(s sentence, _ ownRule, _ measure) (f finding.Found, ok bool) {
	named := mentions(j.work, s)
	if len(named) != 1 || named[0].missing || len(named[0].trials) != 1 || unsure.MatchString(s.low) || denied.MatchString(s.low) || roughly.MatchString(s.low) {
		return f, false
	}
	x := named[0].trials[0]
	if m := drainedSaid.FindStringSubmatch(s.low); m != nil {
		v := firstNumber(m[1:])
		low, high, known := j.seen(x, drained)
		if known && (v < low-0.51 || v > high+0.51) && !inRow(x, v) {
			return about(fmt.Sprintf("“%s”: your log has %s %% for trial %s.", s.text, say.Number(low), named[0].id), s, "value quoted"), true
		}
	}
	if m := fatSaid.FindStringSubmatch(s.text); m != nil {
		v := firstNumber(m[1:])
		d := j.design(x.Table)
		at := slices.Index(d.Trials, x)
		fat := d.At(at, method.Fat)
		low, high := weighedFatOf(x)
		if !math.IsNaN(fat) && math.Abs(v-fat) > 2 && (v < low-2 || v > high+2) && !inRow(x, v) {
			return about(fmt.Sprintf("“%s”: by its grams trial %s has %s %% fat.", s.text, named[0].id, say.Number(math.Round(10*fat)/10)), s, "value quoted"), true
		}
	}
	return f, false
}

// inRow reports a percent that stands in a trial's own row.
func inRow(x *handin.Trial, v float64) bool {
	for _, c := range x.Table.Columns {
		if cell := c.Cells[x.Index]; cell.Known && strings.Contains(c.Whole, "%") && math.Abs(cell.Value-v) <= 0.51 {
			return true
		}
	}
	return false
}

// alike asks of trials that are called alike and differ by more than makings of one
// formula do.
func (j *judge) alike(s sentence, _ ownRule, _ measure) (f finding.Found, ok bool) {
	if !sameWords.MatchString(s.low) || unsure.MatchString(s.low) || strings.Contains(s.low, " not alike") {
		return f, false
	}
	named := mentions(j.work, s)
	if len(named) < 2 {
		return f, false
	}
	low, high := math.Inf(1), math.Inf(-1)
	var d *method.Design
	for _, m := range named {
		if m.missing || len(m.trials) != 1 {
			return f, false
		}
		d = j.design(m.trials[0].Table)
		l, h, known := j.seen(m.trials[0], hold)
		if !known {
			return f, false
		}
		low, high = min(low, h), max(high, l)
	}
	if margin := j.margin(d, hold); high-low > 1.5*margin+0.5 {
		return about(fmt.Sprintf("“%s”: they held from %s to %s min, and makings of one formula differ by %s. Alike in what?", s.text, say.Number(low), say.Number(high), say.Number(margin)), s, "alike"), true
	}
	return f, false
}

// optimum asks of a level that is called the best although another level held longer.
func (j *judge) optimum(s sentence, _ ownRule, _ measure) (f finding.Found, ok bool) {
	if !longest.MatchString(s.low) && !(bestWord.MatchString(s.low) && !otherwise.MatchString(s.low)) || unsure.MatchString(s.low) || denied.MatchString(s.low) || planned.MatchString(s.low) || len(mentions(j.work, s)) > 0 {
		return f, false
	}
	d := j.designOf(s)
	if d == nil {
		return f, false
	}
	for _, one := range []struct {
		factor method.Factor
		re     *regexp.Regexp
		slack  float64
	}{{method.HLB, hlbSaid, 0.6}, {method.Fat, fatSaid, 2}} {
		m := one.re.FindStringSubmatch(s.text)
		if m == nil {
			continue
		}
		v := firstNumber(m[1:])
		here, best := math.Inf(-1), math.Inf(-1)
		for i, x := range d.Trials {
			l, h, known := j.seen(x, hold)
			if !known {
				continue
			}
			best = max(best, l)
			low, high := weighedFatOf(x)
			if math.Abs(d.At(i, one.factor)-v) <= one.slack || one.factor == method.Fat && v >= low-1 && v <= high+1 || inRow(x, v) && one.factor == method.Fat {
				here = max(here, h)
			}
		}
		if !math.IsInf(here, 0) && best-here > j.margin(d, hold) {
			return about(fmt.Sprintf("“%s”: there the longest hold is %s min, and you have %s min elsewhere. Best by what?", s.text, say.Number(here), say.Number(best)), s, "optimum"), true
		}
	}
	return f, false
}
