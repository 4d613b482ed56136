package formal

import (
	"fmt"
	"slices"
	"time"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// Without a last day among the criteria a work may name it itself, and the class shows when all
// others were done.

var (
	lastDay  = pattern.Of(`(?i)\b(deadline|due|last day|hand[- ]?in (?:by|until|date|day)|to be handed in|trials until|finish(?:ed)? by)\b`)
	handedIn = pattern.Of(`(?i)\b(handed in|submitted|delivered|handed over|abgegeben|rendu|entregado|consegnato)\b`)
	dayWords = pattern.Of(`(?i)\b\d{4}-\d{1,2}-\d{1,2}\b|\b\d{1,2}[./]\d{1,2}[./]\d{2,4}\b|\b\d{1,2}(?:st|nd|rd|th)?\.? (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\p{L}*\.?,? \d{4}\b`)
)

// ownDeadline is the last day that a work names, or the day on which it says that it was handed in.
func ownDeadline(w *handin.Work) (day time.Time, words string, ok bool) {
	for _, one := range []struct {
		re    *pattern.Pattern
		words string
	}{{lastDay, "the last day that you name"}, {handedIn, "the day on which you handed it in"}} {
		for _, p := range w.Words {
			at := one.re.FindStringIndex(p.Text)
			if at == nil || p.Note != nil {
				continue
			}
			for _, text := range dayWords.FindAllString(p.Text[at[0]:]+" "+p.Right, 1) {
				if day, fine, _ := parse(text); fine {
					return day, one.words, true
				}
			}
		}
	}
	return day, "", false
}

// Made is a trial's day with where it stands.
type Made struct {
	Day time.Time
	At  handin.Cell
}

// Days are the days of all trials of a work that can be read.
func Days(w *handin.Work) (out []Made) {
	for _, t := range w.Tables {
		if col := dayColumn(t); col != nil {
			for _, c := range col.Cells {
				if d, ok := ParseDay(c); ok {
					out = append(out, Made{d, c})
				}
			}
		}
	}
	return out
}

// afterOwn asks of trials made after the last day that the work itself names.
func afterOwn(w *handin.Work, rules criteria.Rules) (out []finding.Found) {
	if !rules.Deadline.IsZero() {
		return nil
	}
	last, words, ok := ownDeadline(w)
	if !ok {
		return nil
	}
	return After(w, last, words)
}

// After asks of trials made after a day, which words name.
func After(w *handin.Work, last time.Time, words string) (out []finding.Found) {
	var late []Made
	days := Days(w)
	for _, m := range days {
		if m.Day.After(last) {
			late = append(late, m)
		}
	}
	if len(late) == 0 || 2*len(late) > len(days) {
		return nil
	}
	f := finding.Of(criteria.Dates, graded.Formal, fmt.Sprintf("This trial is dated %s, after %s (%s). Is the day right, and was it allowed?", late[0].Day.Format("2 January 2006"), words, last.Format("2 January 2006")), late[0].At).Kinds("late")
	var more []trial.Place
	for _, m := range late[1:] {
		more = append(more, m.At.At)
	}
	return append(out, f.And(more...))
}

// Latest is the last day of a work; false where none can be read.
func Latest(w *handin.Work) (time.Time, bool) {
	days := Days(w)
	if len(days) == 0 {
		return time.Time{}, false
	}
	return slices.MaxFunc(days, func(a, b Made) int { return a.Day.Compare(b.Day) }).Day, true
}
