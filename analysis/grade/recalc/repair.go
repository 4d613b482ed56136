package recalc

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Where several numbers of a trial are wrong by its grams, and one slip of one weight makes
// all of them right, it is the weight that is asked of, and not the numbers.

// sum is a worked-out column with what its cells should hold.
type sum struct {
	col    *handin.Column
	expect func(i int) (expected, bool)
}

// worked gathers the columns that are worked out from the grams.
func (j *job) worked() []sum {
	g := *j
	g.gather = &[]sum{}
	g.totals()
	g.fats()
	g.emulsifiers()
	for _, col := range j.table.All(column.BlendHLB) {
		if with := j.constants(col); with.sure {
			*g.gather = append(*g.gather, sum{col, func(i int) (expected, bool) { return g.blend(i, with) }})
		}
	}
	return *g.gather
}

// tally counts the worked-out cells of a trial that its grams make right, and the wrong.
func (j *job) tallyOf(i int, all []sum, m mixture) (right, wrong int, of []trial.Place, names []string) {
	kept := j.mixes[i]
	defer func() { j.mixes[i] = kept }()
	j.mixes[i] = []mixture{m}
	for _, s := range all {
		c := s.col.Cells[i]
		e, ok := s.expect(i)
		if !c.Known || !ok || len(e.rights) == 0 {
			continue
		}
		e.within = max(1.02*c.Half, 1e-6)
		if s.col.Role != column.BatchMass && c.Half == 0 {
			e.within = 0.02
		}
		if closeToRight(c.Value, e) {
			right++
			of, names = append(of, c.At), append(names, say.Quoted(s.col.Header))
		} else {
			wrong++
		}
	}
	return right, wrong, of, names
}

// repairs asks of the weights that one slip explains, and hands on what was meant.
func (j *job) repairs() {
	all := j.worked()
	if len(all) < 2 {
		return
	}
	for i := range j.table.Trials {
		typed := mixOf(j.table, i, j.rules, nil).exact()
		_, wrong, _, _ := j.tallyOf(i, all, typed)
		if wrong < 2 || len(j.mixes[i]) > 1 {
			continue
		}
		if !j.exchangedRows(i, all) {
			j.slipped(i, all, typed)
		}
	}
}

// slipped finds the one weight of a trial that a slip of the finger explains.
func (j *job) slipped(i int, all []sum, typed mixture) {
	found, at, with, places, names := 0, 0, 0.0, []trial.Place(nil), []string(nil)
	for k := range typed.parts {
		p := &typed.parts[k]
		if p.grams <= 0 || p.cell.Formula != "" {
			continue
		}
		for _, g := range slipsOfWeight(p.cell, j.table.Weighed()[k], i) {
			right, wrong, of, called := j.tallyOf(i, all, typed.having(k, g))
			if wrong == 0 && right >= 2 {
				if found++; found > 1 && (at != k || math.Abs(g-with) > 1e-9) {
					return // either would do
				}
				at, with, places, names = k, g, of, called
			}
		}
	}
	if found == 0 {
		return
	}
	c := typed.parts[at].cell
	f := finding.Of(criteria.Record, graded.Record, fmt.Sprintf("%s g of %s: your %s of this trial are those of %s g. Did a finger slip?", c.Text, typed.parts[at].name, say.List(names), num(with)), c).
		Kinds("slip of the finger").ShouldBe(with / nonZero(c.Scale)).And(places...)
	j.meant[c.At] = with
	j.mixes[i] = mixesOf(j.table, i, j.rules, j.meant)
	j.out = append(j.out, f)
}

// exact is a mix whose fats have one value each: with the range of a packet nearly any
// percent is right.
func (m mixture) exact() mixture {
	m.parts = append([]part(nil), m.parts...)
	for k := range m.parts {
		m.parts[k].fat = exactly(m.parts[k].fat.value)
	}
	return m
}

// having is a mix with one weight changed.
func (m mixture) having(k int, grams float64) mixture {
	parts := append([]part(nil), m.parts...)
	m.sum += grams - parts[k].grams
	parts[k].grams = grams
	m.parts = parts
	return m
}

// slipsOfWeight are what may have been meant by a weight: another place of the point, two
// figures exchanged, what another trial has.
func slipsOfWeight(c handin.Cell, col *handin.Column, i int) (out []float64) {
	for _, f := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		out = append(out, c.Value*f)
	}
	text := num(c.Value)
	for k := 0; k+1 < len(text); k++ {
		if text[k] == '.' || text[k+1] == '.' || text[k] == text[k+1] {
			continue
		}
		turned := text[:k] + string(text[k+1]) + string(text[k]) + text[k+2:]
		var v float64
		if _, err := fmt.Sscan(turned, &v); err == nil && v > 0 {
			out = append(out, v)
		}
	}
	for k, o := range col.Cells {
		if k != i && o.Known && o.Value > 0 && o.Value != c.Value && !has(out, o.Value) {
			out = append(out, o.Value)
		}
	}
	return out
}

func has(all []float64, v float64) bool {
	for _, o := range all {
		if math.Abs(o-v) <= 1e-9*max(1, math.Abs(v)) {
			return true
		}
	}
	return false
}

// exchangedRows finds a weight that two trials have in each other's place.
func (j *job) exchangedRows(i int, all []sum) bool {
	mine := mixOf(j.table, i, j.rules, nil).exact()
	for k := range j.table.Trials {
		if k == i {
			continue
		}
		other := mixOf(j.table, k, j.rules, nil).exact()
		if _, wrong, _, _ := j.tallyOf(k, all, other); wrong == 0 || len(j.mixes[k]) > 1 {
			continue
		}
		for n := range mine.parts {
			p, q := &mine.parts[n], &other.parts[n]
			if p.grams == q.grams || p.cell.Formula != "" || q.cell.Formula != "" {
				continue
			}
			r1, w1, of1, _ := j.tallyOf(i, all, mine.having(n, q.grams))
			r2, w2, of2, _ := j.tallyOf(k, all, other.having(n, p.grams))
			if w1 > 0 || w2 > 0 || r1 < 2 || r2 < 2 {
				continue
			}
			words := fmt.Sprintf("%s and %s g of %s look exchanged between trials %s and %s: what you worked out of both agrees with the grams only if they are. Which is which?", p.cell.Text, q.cell.Text, p.name, j.name(i), j.name(k))
			j.out = append(j.out, finding.Of(criteria.Record, graded.Record, words, p.cell).Kinds("exchanged cells").And(q.cell.At).And(append(of1, of2...)...))
			j.meant[p.cell.At], j.meant[q.cell.At] = q.grams, p.grams
			j.mixes[i], j.mixes[k] = mixesOf(j.table, i, j.rules, j.meant), mixesOf(j.table, k, j.rules, j.meant)
			return true
		}
	}
	return false
}

// otherFat asks of a fat percent that a line gives for an ingredient, where the fat percents
// of nearly all trials are those of another.
func (j *job) otherFat(w *handin.Work) {
	for _, s := range j.worked() {
		if s.col.Role != column.FatPercent || len(j.mixes) < 3 {
			continue
		}
		for k, col := range j.table.Weighed() {
			at, stated := statedAt(w, col)
			if !stated || j.fits(s, k, j.mixes[0][0].parts[k].fat.value) > 0 {
				continue
			}
			if with, ok := j.solvedFat(s, k); ok {
				was := j.mixes[0][0].parts[k].fat.value
				f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("%s %% fat is written for %s, and your fat percents are those of %s %%. Which is it?", num(was), col.Header, num(with)), at).Kinds("another constant").ShouldBe(with)
				f.Typed = graded.Num(was)
				j.out = append(j.out, f)
				j.setFat(k, with)
				return
			}
		}
	}
}

// statedAt is where a line beside the table says of an ingredient what it is taken as.
func statedAt(w *handin.Work, col *handin.Column) (at trial.Place, ok bool) {
	for _, h := range w.Log {
		if st, found := h.Own.Stated(col.Field.Called()); found && st.Fat != nil && !st.Disputed && strings.Contains(col.Field.What.From, st.At.String()) {
			return st.At, true
		}
	}
	return at, false
}

// fits counts the trials whose fat percent is right with one ingredient's fat as given.
func (j *job) fits(s sum, k int, fat float64) (n int) {
	for i, c := range s.col.Cells {
		m := j.mixes[i][0].having(k, j.mixes[i][0].parts[k].grams)
		m.parts[k].fat = exactly(fat)
		kept := j.mixes[i]
		j.mixes[i] = []mixture{m}
		if e, ok := s.expect(i); ok && c.Known && m.parts[k].grams > 0 {
			e.within = max(1.05*c.Half, 0.05)
			if closeToRight(c.Value, e) {
				n++
			}
		}
		j.mixes[i] = kept
	}
	return n
}

// solvedFat is the fat percent of one ingredient that makes nearly all cells right.
func (j *job) solvedFat(s sum, k int) (fat float64, ok bool) {
	known := s.col.Known()
	best := 0
	for half := 2; half <= 200; half++ {
		if n := j.fits(s, k, float64(half)/2); n > best {
			best, fat = n, float64(half)/2
		}
	}
	return fat, best >= 3 && best >= known-1
}

// setFat takes an ingredient's fat as the student did, in all trials.
func (j *job) setFat(k int, fat float64) {
	for i := range j.mixes {
		for n := range j.mixes[i] {
			j.mixes[i][n].parts[k].fat = exactly(fat)
		}
	}
}
