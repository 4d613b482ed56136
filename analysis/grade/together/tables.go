package together

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
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	rangeHead = pattern.Of(`(?i)\b(range|spread|from[- –]to|min\W{0,3}max|lowest\W{0,3}highest)\b`)
	lowHead   = pattern.Of(`(?i)\b(lowest|shortest|min(?:imum)? (?:stand|held|hold|stood|drain)\w*|least|smallest)\b`)
	highHead  = pattern.Of(`(?i)\b(highest|longest|max(?:imum)?|most|largest)\b`)
	twoEnds   = pattern.Of(`^\s*(\d+(?:[.,]\d+)?)\s*(?:min|%)?\s*(?:–|-|—|to|bis|\.\.)\s*(\d+(?:[.,]\d+)?)\s*(?:min|%)?\s*$`)
	drainHead = pattern.Of(`(?i)(drain|drip|weep|leak|liquid|loss|lost)`)
	bareList  = pattern.Of(`(?i)^\s*(?:` + noun + `)?(` + oneID + `(?:` + joined + oneID + `)*)\s*$`)
)

// tables holds the ranges of a small table beside the trials, a row a group, against the trials that
// its rows name: "HLB 9.4 (nr 2 to 6) | 17 – 28".
func (j *reader) tables() (out []finding.Found) {
	type column struct {
		row  int
		text string
	}
	heads := map[trial.Place]column{} // by sheet and column
	for _, r := range j.Work.Rest {
		head := 0
		for _, c := range r.Cells {
			if rangeHead.MatchString(c.Text) || lowHead.MatchString(c.Text) || highHead.MatchString(c.Text) {
				head++
			}
		}
		if head > 0 && len(r.Cells) >= 3 && !slices.ContainsFunc(r.Cells, func(c handin.Cell) bool { return c.Known }) {
			for _, c := range r.Cells {
				heads[trial.Place{File: c.At.File, Sheet: c.At.Sheet, Col: c.At.Col}] = column{c.At.Row, c.Text}
			}
			continue
		}
		named := j.namedBy(r)
		if len(named) < 1 {
			continue
		}
		for _, c := range r.Cells {
			h, ok := heads[trial.Place{File: c.At.File, Sheet: c.At.Sheet, Col: c.At.Col}]
			if !ok || c.At.Row > h.row+20 || c.Formula != "" {
				continue
			}
			if f, found := j.cell(c, h.text, named); found {
				out = append(out, f)
			}
		}
	}
	return out
}

// cell holds one cell of such a table against the trials of its row.
func (j *reader) cell(c handin.Cell, head string, named []*handin.Trial) (f finding.Found, found bool) {
	m, unit := evidence.Hold, "min"
	if drainHead.MatchString(head) {
		m, unit = evidence.Drained, "%"
	}
	_, list := j.meanOf(named, m, unit)
	if len(list) < len(named) {
		return f, false
	}
	low, high := slices.Min(list), slices.Max(list)
	ends := twoEnds.FindStringSubmatch(c.Text)
	switch {
	case rangeHead.MatchString(head) && ends != nil:
		a, half := value(ends[1])
		b, _ := value(ends[2])
		if borne(list, min(a, b), max(a, b), half) {
			return f, false
		}
	case c.Known && lowHead.MatchString(head) && !highHead.MatchString(head) && len(list) > 1:
		if math.Abs(c.Value-low) <= max(c.Half, 0.01) {
			return f, false
		}
	case c.Known && highHead.MatchString(head) && !lowHead.MatchString(head) && len(list) > 1:
		if math.Abs(c.Value-high) <= max(c.Half, 0.01) {
			return f, false
		}
	default:
		return f, false
	}
	var ids []string
	for _, x := range named {
		ids = append(ids, handin.ShortID(x.ID))
	}
	f = finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("%s: %s have from %s to %s %s.", c.Text, say.List(ids), say.Number(low), say.Number(high), unit), c).Kinds("value quoted")
	return f, true
}

// namedBy are the trials that a row names, in one of its cells of words.
func (j *reader) namedBy(r handin.Row) []*handin.Trial {
	for _, c := range r.Cells {
		if c.Known || strings.TrimSpace(c.Text) == "" || twoEnds.MatchString(c.Text) {
			continue
		}
		s := sentence.Plainly(j.Work, c.Text)
		if m := bareList.FindStringSubmatch(s.Text); m != nil {
			if all := trialsOf(j.Work, s, joining.Split(m[1], -1), joining.FindAllString(m[1], -1)); len(all) > 0 {
				return all
			}
		}
		if g := Groups(j.Work, s); len(g) == 1 {
			return g[0].Trials
		}
	}
	return nil
}
