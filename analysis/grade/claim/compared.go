package claim

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
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
