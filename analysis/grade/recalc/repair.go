package recalc

import (
	"fmt"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
	"math"

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

// worked gathers the columns that are worked out from the grams.
func (j *job) worked() []verdict.Sum {
	g, quiet := *j, *j.Bench
	g.Bench, quiet.Gather = &quiet, &[]verdict.Sum{}
	g.totals()
	g.fats()
	g.emulsifiers()
	for _, col := range j.Table.All(column.BlendHLB) {
		if with := j.constants(col); with.sure {
			*g.Gather = append(*g.Gather, verdict.Sum{Col: col, Expect: func(i int) (verdict.Expected, bool) { return g.blend(i, with) }})
		}
	}
	return *g.Gather
}

// tally counts the worked-out cells of a trial that its grams make right, and the wrong.
func (j *job) tallyOf(i int, all []verdict.Sum, m mixture.Mixture) (right, wrong int, of []trial.Place, names []string) {
	kept := j.mixes[i]
	defer func() { j.mixes[i] = kept }()
	j.mixes[i] = []mixture.Mixture{m}
	for _, s := range all {
		c := s.Col.Cells[i]
		e, ok := s.Expect(i)
		if !c.Known || !ok || len(e.Rights) == 0 {
			continue
		}
		e.Within = max(1.02*c.Half, 1e-6)
		if s.Col.Role != column.BatchMass && c.Half == 0 {
			e.Within = 0.02
		}
		if verdict.CloseToRight(c.Value, e) {
			right++
			of, names = append(of, c.At), append(names, say.Quoted(s.Col.Header))
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
	for i := range j.Table.Trials {
		typed := mixture.MixOf(j.Table, i, j.rules, nil).Exact()
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
func (j *job) slipped(i int, all []verdict.Sum, typed mixture.Mixture) {
	found, at, with, places, names := 0, 0, 0.0, []trial.Place(nil), []string(nil)
	for k := range typed.Parts {
		p := &typed.Parts[k]
		if p.Grams <= 0 || p.Cell.Formula != "" {
			continue
		}
		for _, g := range slipsOfWeight(p.Cell, j.Table.Weighed()[k], i) {
			right, wrong, of, called := j.tallyOf(i, all, typed.Having(k, g))
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
	c := typed.Parts[at].Cell
	f := finding.Of(criteria.Record, graded.Record, fmt.Sprintf("%s g of %s: your %s of this trial are those of %s g. Did a finger slip?", c.Text, typed.Parts[at].Name, say.List(names), verdict.Num(with)), c).
		Kinds("slip of the finger").ShouldBe(with / verdict.NonZero(c.Scale)).And(places...)
	j.meant[c.At] = with
	j.mixes[i] = mixture.MixesOf(j.Table, i, j.rules, j.meant)
	j.Out = append(j.Out, f)
}

// slipsOfWeight are what may have been meant by a weight: another place of the point, two
// figures exchanged, what another trial has.
func slipsOfWeight(c handin.Cell, col *handin.Column, i int) (out []float64) {
	for _, f := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		out = append(out, c.Value*f)
	}
	text := verdict.Num(c.Value)
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
func (j *job) exchangedRows(i int, all []verdict.Sum) bool {
	mine := mixture.MixOf(j.Table, i, j.rules, nil).Exact()
	for k := range j.Table.Trials {
		if k == i {
			continue
		}
		other := mixture.MixOf(j.Table, k, j.rules, nil).Exact()
		if _, wrong, _, _ := j.tallyOf(k, all, other); wrong == 0 || len(j.mixes[k]) > 1 {
			continue
		}
		for n := range mine.Parts {
			p, q := &mine.Parts[n], &other.Parts[n]
			if p.Grams == q.Grams || p.Cell.Formula != "" || q.Cell.Formula != "" {
				continue
			}
			r1, w1, of1, _ := j.tallyOf(i, all, mine.Having(n, q.Grams))
			r2, w2, of2, _ := j.tallyOf(k, all, other.Having(n, p.Grams))
			if w1 > 0 || w2 > 0 || r1 < 2 || r2 < 2 {
				continue
			}
			words := fmt.Sprintf("%s and %s g of %s look exchanged between trials %s and %s: what you worked out of both agrees with the grams only if they are. Which is which?", p.Cell.Text, q.Cell.Text, p.Said(), j.Name(i), j.Name(k))
			j.Out = append(j.Out, finding.Of(criteria.Record, graded.Record, words, p.Cell).Kinds("exchanged cells").And(q.Cell.At).And(append(of1, of2...)...))
			j.meant[p.Cell.At], j.meant[q.Cell.At] = q.Grams, p.Grams
			j.mixes[i], j.mixes[k] = mixture.MixesOf(j.Table, i, j.rules, j.meant), mixture.MixesOf(j.Table, k, j.rules, j.meant)
			return true
		}
	}
	return false
}
