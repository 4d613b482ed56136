package record

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// What a row says of itself in two places, or a row and the method, may not go together.

// cupsTurned asks of a vessel that weighs more full of foam than full of the mix, which it does in no other row.
func (r *reader) cupsTurned(t *handin.Table) {
	liquid, foam := t.Find(column.CupLiquid), t.Find(column.CupFoam)
	if liquid == nil || foam == nil {
		return
	}
	var odd []int
	n := 0
	for i := range t.Trials {
		if l, f := liquid.Cells[i], foam.Cells[i]; l.Known && f.Known {
			n++
			if f.Value > l.Value {
				odd = append(odd, i)
			}
		}
	}
	if n < 3 || 3*len(odd) > n {
		return
	}
	for _, i := range odd {
		l, f := liquid.Cells[i], foam.Cells[i]
		if r.fresh(l) && r.fresh(f) {
			r.add(about(fmt.Sprintf("%s of mix and %s of foam in one vessel: foam weighs less than its mix. Are the two exchanged?", l.Text, f.Text), l, "exchanged cells").And(f.At), l.At, f.At)
			r.meant[l.At], r.meant[f.At] = f.Value, l.Value
		}
	}
}

var (
	saysSplit = pattern.Of(`(?i)\b(?:split|separated|broke|broken|curdled|getrennt|geronnen|tranchée?|cortad[ao]|separat[ao]|impazzit[ao]|geschift)\b`)
	notSplit  = pattern.Of(`(?i)\b(?:not|no|never|nearly|almost|didn't|did not|without|nicht|kein|pas|non|niet|bijna|fast|before|until|than|if)\b`)
)

// splitOrNot asks of a foam that is logged as whole, and whose note says that it split.
func (r *reader) splitOrNot(t *handin.Table) {
	col := t.Find(column.Broke)
	if col == nil {
		return
	}
	for i, x := range t.Trials {
		c := col.Cells[i]
		if x.Broke != trial.No && !plainNo.MatchString(c.Text) || r.said[c.At] {
			continue
		}
		for _, text := range textsOf(t, x) {
			if m := saysSplit.FindStringIndex(text); m != nil && text != c.Text && !notSplit.MatchString(text) {
				r.add(about(fmt.Sprintf("%s is typed, and the note says %s. Which of the two is right?", say.Quoted(c.Text), say.Quoted(text)), c, "note speaks against it"), c.At)
				break
			}
		}
	}
}

var plainNo = pattern.Of(`(?i)^\s*(?:no|n|nein|non|nee|0)\s*$`)

// watchedFor is how long foams were watched, as the method says.
var watchedFor = pattern.Of(`(?i)\b(?:watch(?:ed|ing)?|observ(?:ed|ing)|timed|look(?:ed|ing)|stopped|beobachtet|observé\w*|observad\w*|osservat\w*)\b[^.;\d]{0,40}?(?:for|after|at|until|up to|only|at most|während|nach|pendant|durante|per)\s*(?:at most |only |exactly |about )?(\d+)\s*min\w*(?:\s+at most)?`)

// longerThanWatched asks of holds that are longer than anybody watched, by the student's own method.
func (r *reader) longerThanWatched(w *handin.Work, t *handin.Table) {
	hold := t.Hold()
	if hold == nil {
		return
	}
	for _, p := range w.Words {
		m := watchedFor.FindStringSubmatch(p.Text)
		if p.Note != nil || m == nil || len(watchedFor.FindAllString(p.Text, -1)) > 1 {
			continue
		}
		most, _ := strconv.ParseFloat(m[1], 64)
		var over []handin.Cell
		for _, c := range hold.Cells {
			if c.Number() && c.Low > most+0.01 && !r.said[c.At] && !math.IsInf(c.Low, 0) {
				over = append(over, c)
			}
		}
		if most < 5 || len(over) == 0 || 3*len(over) > hold.Known() {
			continue // it is of something else
		}
		f := finding.Of(criteria.Record, graded.Record, fmt.Sprintf("%s is longer than you watched: %s. How was it timed?", over[0].Text, say.Quoted(strings.TrimSpace(m[0]))), over[0]).Kinds("longer than watched")
		for _, c := range over[1:] {
			f = f.And(c.At)
		}
		r.add(f, over[0].At)
		return
	}
}
