package compose

import (
	"fmt"
	"math"
	"strconv"

	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// Masses that do not add up to their batch are most often one slip of the finger: a
// figure too many, two figures swapped, a cell of the row above. Which cell it is
// shows in what would mend the sum, held against the other trials.

// suspect is a cell that would mend the sum if it said something else.
type suspect struct {
	col         int
	says, needs float64
}

// slipped reports whether one slip of the finger turns what was needed into what
// is said: a decimal point moved, or two figures swapped.
func (s suspect) slipped(slack float64) (meant float64, ok bool) {
	for _, factor := range [...]float64{10, 0.1, 100, 0.01} {
		if v := s.says * factor; s.says > 0 && math.Abs(v-s.needs) <= min(slack, s.needs/10) {
			return v, true
		}
	}
	digits := []byte(say.Exact(s.says))
	for i := range len(digits) - 1 {
		a, b := digits[i], digits[i+1]
		if a == b || a == '.' || b == '.' {
			continue
		}
		digits[i], digits[i+1] = b, a
		v, err := strconv.ParseFloat(string(digits), 64)
		digits[i], digits[i+1] = a, b
		if err == nil && math.Abs(v-s.needs) <= slack/4 {
			return v, true
		}
	}
	return 0, false
}

// culprit finds the one cell that explains a sum that is not its batch; a column
// of 0 = none alone does, or more than one could.
func culprit(s *scheme.Scheme, suspects []suspect, slack float64) suspect {
	var slips, odd []suspect
	for _, one := range suspects {
		u := s.Usual[one.col]
		if meant, ok := one.slipped(slack); ok && u.Holds(meant, slack) {
			slips = append(slips, suspect{one.col, one.says, meant})
		}
		if u.Holds(one.needs, slack) && !u.Holds(one.says, 0) {
			odd = append(odd, one)
		}
	}
	for _, found := range [...][]suspect{slips, odd} {
		if len(found) == 1 {
			return found[0]
		}
		if len(found) > 1 {
			break
		}
	}
	return suspect{}
}

// suspects are the cells of a recipe that could each explain a sum too large by
// off; shares: the cells' numbers are percents of the mix, not grams.
func (w *work) suspects(off float64, shares bool) (out []suspect) {
	alike := func(inGrams bool, basis column.Basis) bool {
		return inGrams != shares && (!shares || basis == column.OfMix)
	}
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		if needs := d.Amount - off; alike(d.InGrams, d.Basis) && needs > 0 {
			out = append(out, suspect{d.Col, d.Amount, needs})
		}
	}
	for _, col := range w.r.Blank {
		if f := w.s.Field(col); off < 0 && alike(f.InGrams, f.Basis) {
			out = append(out, suspect{col, 0, -off})
		}
	}
	return out
}

// notAddedUp says that the ingredients do not weigh what the batch says, and which
// cell explains it. It is true when they are so far off that nothing can be built
// on them.
func (w *work) notAddedUp(sum, batch float64, nominal bool) (apart bool) {
	off, slack := sum-batch, w.slack(batch)
	unit, at, tally := " g", w.r.Batch.Col, "the batch says "+say.Grams(batch)
	suspects := w.suspects(off, nominal)
	if nominal {
		unit, at, tally, slack = " %", w.r.Doses[0].Col, "not 100 %", 1
	} else if w.r.Batch.OK() && !w.beside {
		suspects = append(suspects, suspect{w.r.Batch.Col, batch, sum})
	}
	write := func(v float64) string { return say.Number(math.Round(v*1000)/1000) + unit }
	found := culprit(w.s, suspects, slack)
	w.explained = w.explained || found.col > 0
	// One mass that is less than half or more than twice what it should be makes
	// another mix, even where the sum hardly shows it.
	far := math.Abs(off) > contradictory*batch
	apart = found.col == 0 && far || found.col > 0 && (found.col != w.r.Batch.Col || w.beside) && (far || found.says > 2*found.needs || found.needs > 2*found.says)
	used := "the sum is used"
	if nominal {
		used = "shares of their sum are used"
	}
	finding := trial.Check
	if apart {
		finding, used = trial.Fix, NoFormula
		w.Contradicts = fmt.Sprintf("masses that contradict each other (the ingredients add up to %s, %s): %s", write(sum), tally, NoFormula)
	}
	read := fmt.Sprintf("the ingredients add up to %s, %s", write(sum), tally)
	meant := fmt.Sprintf("type %s here if that was weighed; %s", say.Number(found.needs), used)
	switch {
	case found.col == 0:
		w.say(finding("does not add up", w.at(at), read+"; no single cell explains it",
			"compare "+w.cellsOf(nominal)+" with your notes and type what was weighed, or log the ingredient that is missing; "+used))
	case found.col == w.r.Batch.Col && !w.beside:
		w.say(finding("does not add up", w.at(found.col), read+"; the ingredients are like those of the other trials, the batch is the odd one",
			fmt.Sprintf("type %s here if that was the batch; %s", say.Number(sum), used)))
	case found.says == 0:
		w.say(finding("does not add up", w.at(found.col), fmt.Sprintf("nothing is typed here, and %s; with %s here it would add up", read, write(found.needs)), meant))
	default:
		w.say(finding("does not add up", w.at(found.col),
			fmt.Sprintf("%s here does not fit: %s; with %s here it would add up", write(found.says), read, write(found.needs)), meant))
	}
	return apart
}

// askTenfold asks about amounts ten times those of the other trials, where no sum
// of masses would show them.
func (w *work) askTenfold() {
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		u := w.s.Usual[d.Col]
		if meant, ok := u.PointMissed(d.Amount); ok && d.Amount > 4*u.High {
			w.say(trial.Check("far above the others", w.at(d.Col), fmt.Sprintf("%s is far above the other trials", say.Quoted(w.text(d.Col))),
				fmt.Sprintf("type %s if the point was missed; it is used as it stands", say.Number(meant))))
		}
	}
}

// cellsOf names the cells of a recipe.
func (w *work) cellsOf(shares bool) string {
	var names []string
	name := func(col int) {
		at := w.at(col)
		names = append(names, cellname.Of(at.Row, at.Col))
	}
	for i := range w.r.Doses {
		if w.r.Doses[i].InGrams != shares {
			name(w.r.Doses[i].Col)
		}
	}
	if w.r.Batch.OK() && !w.beside {
		name(w.r.Batch.Col)
	}
	return say.List(names)
}
