package claim

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

var (
	// ranks opens trials in the order of their hold.
	ranks = pattern.Of(`(?i)\b(?:ranking|ranked|rank order|order|from (?:the )?longest to (?:the )?shortest|longest first)\b([^:;.]{0,40}):\s*(.+)$`)
	// byOther are orders that go by something else, or the other way.
	byOther  = pattern.Of(`(?i)\b(?:taste|texture|drain\w*|drip\w*|fat|overrun|hlb|worst|shortest first|shortest to|rising|increasing|ascending|made|trials were|date|time of)\b`)
	byHold   = pattern.Of(`(?i)\b(?:hold\w*|held|stand\w*|stood|stability|longest|minutes)\b`)
	place    = pattern.Of(`(?i)\b(second|third)[- ](?:longest|most stable|best hold)\b`)
	aside    = pattern.Of(`\([^)]*\)`)
	listStep = pattern.Of(`(?i)\s*(?:>|→|,|;|\bthen\b|\bbefore\b)\s*(?:and |then )?`)
)

// ranked holds an order of trials by their hold against their holds: none may come before one that held
// longer by more than makings of one formula differ by.
func (j *judge) ranked(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if f, ok := j.placed(s); ok {
		return f, true
	}
	m := ranks.FindStringSubmatch(aside.ReplaceAllString(s.Text, ""))
	if m == nil || !byHold.MatchString(s.Low) || byOther.MatchString(m[1]) || byOther.MatchString(m[0][:len(m[0])-len(m[2])]) || sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	var order []*handin.Trial
	for _, part := range listStep.Split(strings.TrimRight(m[2], ". "), -1) {
		x := j.Only(s, "trial "+strings.TrimSpace(strings.TrimPrefix(strings.ToLower(part), "trial")))
		if x == nil {
			x = j.Only(s, part)
		}
		if x == nil {
			return f, false
		}
		order = append(order, x)
	}
	if len(order) < 3 {
		return f, false
	}
	for k, x := range order {
		for _, y := range order[k+1:] {
			_, high, ok1 := j.Seen(x, evidence.Hold)
			low, _, ok2 := j.Seen(y, evidence.Hold)
			if d := j.Design(x.Table); !ok1 || !ok2 || !d.Has(y.Table) {
				return f, false
			} else if low-high > j.Margin(d, evidence.Hold)+1e-9 {
				return ground.About(fmt.Sprintf("“%s”: trial %s has %s min and stands before trial %s with %s.", s.Said, x.ID, say.Number(high), y.ID, say.Number(low)), s, "another trial did better"), true
			}
		}
	}
	return f, false
}

// placed holds "trial 4 held second longest" against how many mixes surely held longer.
func (j *judge) placed(s sentence.Sentence) (f finding.Found, ok bool) {
	m := place.FindStringSubmatch(s.Low)
	x := j.Only(s, s.Text)
	if m == nil || x == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	d := j.Design(x.Table)
	_, mine, known := j.Seen(x, evidence.Hold)
	if mean, n := j.OfFormula(x, evidence.Hold); n > 0 {
		mine = max(mine, mean)
	}
	most := map[string]int{"second": 1, "third": 2}[strings.ToLower(m[1])]
	at := slices.Index(d.Trials, x)
	var before []string
	for _, g := range d.Groups() {
		if at < 0 || slices.Contains(g, at) {
			continue
		}
		for _, i := range g {
			if low, _, ok := j.Seen(d.Trials[i], evidence.Hold); ok && low-mine > j.Margin(d, evidence.Hold)+1e-9 {
				before = append(before, fmt.Sprintf("trial %s with %s", d.Trials[i].ID, say.Number(low)))
				break
			}
		}
	}
	if !known || len(before) <= most {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: it has %s min, and before it come %s.", s.Said, say.Number(mine), say.List(before)), s, "another trial did better"), true
}
