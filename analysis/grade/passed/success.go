package passed

import (
	"fmt"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

var (
	worked = pattern.Of(`(?i)\b(works|worked|succeeded|succeeds|is a success|was a success|was successful|meets|met|fulfils|fulfilled|passed|passes|good by (?:my|our|the) rule)\b`)
	failed = pattern.Of(`(?i)\b(failed|fails|did not work|didn't work|does not work|missed the target|misses the target)\b`)
)

// Success holds "trial 4 works" against the student's own rule.
func Success(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || sentence.Narrowed.MatchString(s.Low) {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	yes, no := worked.MatchString(s.Low) && !sentence.Denied.MatchString(s.Low), failed.MatchString(s.Low)
	if yes == no {
		return f, false
	}
	for _, m := range named {
		if m.Missing || len(m.Trials) != 1 {
			continue
		}
		x := m.Trials[0]
		if why := j.Fails(x, r); yes && why != "" {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.Said, r.Words(), m.ID, why), s, "own rule").Unless(j.doubted(r)), true
		}
		if no && j.Passes(x, r) && !strings.Contains(s.Low, "clog") && !strings.Contains(s.Low, "split") {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes. What failed?", s.Said, r.Words(), m.ID), s, "own rule"), true
		}
	}
	return f, false
}

var (
	successHeader = pattern.Of(`(?i)^\s*(works|worked|success|successful|met( my| the)? (rule|target)|(?:my |the )?rule (?:met|kept|ok|passed|fulfilled)|pass(ed)?|pass (?:or|/) fail|ok|good)\s*\??\s*$`)
	saysYes       = pattern.Of(`(?i)^\s*(yes|y|ja|oui|sí|si|x|✓|1|true)\s*$`)
	saysNo        = pattern.Of(`(?i)^\s*(no|n|nein|non|0|false)\s*$`)
)

// Verdicts holds a column of yes and no, in which students judge their trials, against
// their own rule.
func Verdicts(g *ground.Judge, r ground.OwnRule) (out []finding.Found) {
	j := &judge{g}
	if !r.Set() {
		return nil
	}
	for _, t := range j.Work.Tables {
		for _, col := range t.Columns {
			if !successHeader.MatchString(strings.ReplaceAll(col.Header, "_", " ")) {
				continue
			}
			for i, c := range col.Cells {
				x := t.Trials[i]
				switch why := j.Fails(x, r); {
				case saysYes.MatchString(c.Text) && why != "":
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", c.Text, r.Words(), x.ID, why), c).Kinds("own rule").Unless(j.doubted(r)))
				case saysNo.MatchString(c.Text) && j.Passes(x, r):
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes.", c.Text, r.Words(), x.ID), c).Kinds("own rule").Unless(j.doubted(r) || r.Hold == nil || r.Drained == nil))
				}
			}
		}
	}
	return out
}
