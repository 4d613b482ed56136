package statistic

import (
	"fmt"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
)

var (
	bestMinus = pattern.Of(`(?i)\b(best|longest|winner|top|highest)\b.{0,24}(\bminus\b|\bless\b|\bagainst\b|\bvs\b|\bversus\b|\bover\b|[-−–]).{0,12}\b(control|ctrl)\b|\bdifference\b.{0,24}\b(best|longest)\b.{0,24}\b(control|ctrl)\b`)
	ofDrain   = pattern.Of(`(?i)(drain|weep|%|fat|hlb)`)
	bestTrial = pattern.Of(`(?i)^\s*(?:our |my |the )?(?:best|winner|winning|chosen)\b.{0,12}$`)
	aNumber   = pattern.Of(`^\s*([-−]?\d+(?:[.,]\d+)?)\s*(?:min|minutes)?\s*$`)
	anID      = pattern.Of(`[\p{L}\p{N}-]+`)
)

// lines holds "best minus control | 22.0" below a table against its holds. It may be of
// the trial that the student calls best, whether or not it is: that is asked elsewhere.
func (j *results) lines(w *handin.Work, meant mixture.Meant) {
	col := j.Table.Hold()
	if col == nil {
		return
	}
	controls := j.controls()
	if len(controls) == 0 || len(controls) == len(col.Cells) {
		return
	}
	for _, p := range w.Words {
		m := aNumber.FindStringSubmatch(p.Right)
		if p.Note != nil || p.At.Sheet != j.Table.At.Sheet || p.At.File != j.Table.At.File || m == nil || !bestMinus.MatchString(p.Text) || ofDrain.MatchString(p.Text) {
			continue
		}
		text := strings.NewReplacer(",", ".", "−", "-").Replace(m[1])
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			continue
		}
		half := 0.5
		if i := strings.Index(text, "."); i >= 0 {
			half *= math.Pow(10, -float64(len(text)-i-1))
		}
		c := handin.Cell{At: p.RightAt, Text: p.Right, Value: v, Known: true, Half: half, Scale: 1}
		j.line(w, col, controls, c, meant)
	}
}

// controls are the rows of the control: as it is called, or else the only ones without
// emulsifier.
func (j *results) controls() (out []int) {
	for i, x := range j.Table.Trials {
		if x.IsControl() {
			out = append(out, i)
		}
	}
	if len(out) > 0 {
		return out
	}
	for i := range j.mixes {
		m := &j.mixes[i][0]
		none := len(m.Parts) > 1 && !m.Open
		for k := range m.Parts {
			none = none && !(mixture.IsEmulsifier(&m.Parts[k]) && m.Parts[k].Grams > 0)
		}
		if none {
			out = append(out, i)
		}
	}
	return out
}

// line judges one such number.
func (j *results) line(w *handin.Work, col *handin.Column, controls []int, c handin.Cell, meant mixture.Meant) {
	e, ok := j.bestLess(w, col, controls, meant)
	if !ok {
		return
	}
	e.Within = max(c.Half, 0.051)
	v, wrong := verdict.Judge(c, e)
	if !wrong {
		return
	}
	v.Cell = c
	j.Out = append(j.Out, j.Finding(criteria.Means, v))
	j.Out[len(j.Out)-1].Kind = "best minus control"
}

// bestLess is the longest hold less the control's, in every way that is right, and the
// ways it goes wrong.
func (j *results) bestLess(w *handin.Work, col *handin.Column, controls []int, meant mixture.Meant) (e verdict.Expected, ok bool) {
	best, base := -1, col.Cells[controls[0]]
	for i, c := range col.Cells {
		if c.Known && !slices.Contains(controls, i) && j.Table.Trials[i].CameOut != trial.No && (best < 0 || c.Value > col.Cells[best].Value) {
			best = i
		}
	}
	if best < 0 || !base.Known {
		return e, false
	}
	top := col.Cells[best].Value
	e = verdict.Expected{Digits: 2, How: fmt.Sprintf("%s − %s", verdict.Num(top), verdict.Num(base.Value)), Rights: []verdict.Accepted{verdict.Exactly(top - base.Value)}}
	columns := append([]*handin.Column{col}, j.Table.Twins()...)
	for _, from := range columns {
		for _, b := range columns {
			e.Rights = append(e.Rights, j.differencesOf(from, b, w, controls, meant)...)
		}
	}
	for k, o := range col.Cells {
		if k != best && o.Known && !slices.Contains(controls, k) {
			e.Ways = append(e.Ways, verdict.By(top-o.Value, fmt.Sprintf("the difference to trial %s, not to the control", j.Name(k)), "to "+j.Name(k)))
		}
	}
	e.Ways = append(e.Ways, verdict.Weakly(base.Value-top, "the difference with its sign turned", "sign"), verdict.By(top+base.Value, "the sum, not the difference", "sum"), verdict.Weakly(top, "the best hold itself", "best"))
	return e, true
}

// differencesOf are the differences that a student may well give: of the longest, of each
// trial called best and of their mean, to each control and to their mean; as typed, and
// with what was meant.
func (j *results) differencesOf(from, base *handin.Column, w *handin.Work, controls []int, meant mixture.Meant) (out []verdict.Accepted) {
	for _, intended := range []bool{false, true} {
		var tops, bases []float64
		longest := math.NaN()
		for i := range from.Cells {
			if v := j.held(from, i, meant, intended); !slices.Contains(controls, i) && !(v <= longest) && !math.IsNaN(v) {
				longest = v
			}
		}
		for _, i := range j.calledBest(w) {
			tops = append(tops, j.held(from, i, meant, intended))
		}
		for _, i := range controls {
			bases = append(bases, j.held(base, i, meant, intended))
		}
		tops, bases = append(tops, average(tops), longest), append(bases, average(bases))
		for _, a := range tops {
			for _, b := range bases {
				if !math.IsNaN(a - b) {
					out = append(out, verdict.Exactly(a-b))
				}
			}
		}
	}
	return out
}

// held is a hold as typed, or as it was meant; NaN where none is known.
func (j *results) held(col *handin.Column, i int, meant mixture.Meant, intended bool) float64 {
	c := col.Cells[i]
	if v, ok := meant[c.At]; ok && intended {
		return v
	}
	if intended && col.Mean() {
		if m := j.meanMeant(i, meant); !math.IsNaN(m) {
			return m
		}
	}
	if !c.Known {
		return math.NaN()
	}
	return c.Value
}

// meanMeant is the mean of a trial's holds, each as it was meant; NaN for one without two.
func (j *results) meanMeant(i int, meant mixture.Meant) float64 {
	var xs []float64
	for _, t := range j.Table.Twins() {
		if v, ok := meant[t.Cells[i].At]; ok {
			xs = append(xs, v)
		} else if t.Cells[i].Known {
			xs = append(xs, t.Cells[i].Value)
		}
	}
	if len(xs) < 2 {
		return math.NaN()
	}
	return average(xs)
}

func average(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

// calledBest are the trials that a line "best trial | T4 and T5" names.
func (j *results) calledBest(w *handin.Work) (out []int) {
	for _, p := range w.Words {
		if p.Note != nil || !bestTrial.MatchString(p.Text) || len(strings.Fields(p.Right)) > 6 {
			continue
		}
		for _, id := range anID.FindAllString(p.Right, -1) {
			for _, x := range w.ByID(id) {
				if x.Table == j.Table && !slices.Contains(out, x.Index) {
					out = append(out, x.Index)
				}
			}
		}
	}
	return out
}
