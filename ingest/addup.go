package ingest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Masses that do not add up to their batch are most often one slip of the
// finger: a figure too many, two figures swapped, a cell of the row above. Which
// cell it is shows in what would mend the sum, held against the other trials.

// contradictory is how far off, as a share of the batch, masses may be before
// nothing is built on them.
const contradictory = 0.2

// usual is where the other trials of a column lie; enough of them are needed to
// say so.
type usual struct {
	low, high float64
	known     bool
	filled    float64 // share of the trials that have a value above nought
}

const usualOf = 5 // values

// usual looks down a column, the ends left out: they may be slips themselves.
func (t *table) usual(col int) usual {
	if u, ok := t.usuals[col]; ok {
		return u
	}
	f := t.fieldOf(col)
	var values []float64
	for n := range t.found.Rows {
		if v, ok := t.exactly(t.cell(n, col), f); ok && v > 0 {
			values = append(values, v)
		}
	}
	var u usual
	if n := len(values); n >= usualOf {
		slices.Sort(values)
		u = usual{values[n/12], values[n-1-n/12], true, float64(n) / float64(len(t.found.Rows))}
	}
	if t.usuals == nil {
		t.usuals = map[int]usual{}
	}
	t.usuals[col] = u
	return u
}

// nearlyAlways is how often an emulsifier is typed where a blank looks forgotten; two
// pairs that take turns are each blank in half the trials.
const nearlyAlways = 0.8

// forgotten asks for emulsifiers left blank that nearly every other trial has: a blank
// is read as none, and would move the blend HLB without a word.
func (b *row) forgotten(r *recipe, p sums) {
	for _, col := range r.blankEmulsifiers {
		u := b.table.usual(col)
		if !u.known || u.filled < nearlyAlways {
			continue
		}
		r.explained = true
		short := ""
		if missing := r.batch.value - p.grams; r.batch.ok() && p.share == 0 && u.holds(missing, 2*b.book.scaleStep()) {
			short = fmt.Sprintf(", and the ingredients are %s short of the batch", grams(missing))
		}
		b.problem("emulsifier left empty", trial.PleaseLook, col, fmt.Sprintf("nothing is typed here, where most trials have %s to %s%s",
			numberText(u.low), grams(u.high), short), "type the grams, or 0 if there was none; until then it is read as none")
	}
}

// holds reports a value like the others, within a margin.
func (u usual) holds(v, margin float64) bool {
	margin += (u.high - u.low) / 10
	return u.known && u.low-margin <= v && v <= u.high+margin
}

func (t *table) fieldOf(col int) *field {
	i := slices.IndexFunc(t.fields, func(f field) bool { return f.col == col })
	return &t.fields[i]
}

// suspect is a cell that would mend the sum if it said something else.
type suspect struct {
	col         int
	says, needs float64
}

// slipped reports whether one slip of the finger turns what was needed into
// what is said: a decimal point moved, or two figures swapped.
func (s suspect) slipped(slack float64) (meant float64, ok bool) {
	for _, factor := range [...]float64{10, 0.1, 100, 0.01} {
		if v := s.says * factor; s.says > 0 && math.Abs(v-s.needs) <= min(slack, s.needs/10) {
			return v, true
		}
	}
	digits := []byte(numberText(s.says))
	for i := range len(digits) - 1 {
		a, b := digits[i], digits[i+1]
		if a == b || a == '.' || b == '.' {
			continue
		}
		digits[i], digits[i+1] = b, a
		v, ok := parsedNumber(string(digits))
		digits[i], digits[i+1] = a, b
		if ok && math.Abs(v-s.needs) <= slack/4 {
			return v, true
		}
	}
	return 0, false
}

// culprit finds the one cell that explains a sum that is not its batch; a column
// of 0 = none alone does, or more than one could.
func (b *row) culprit(suspects []suspect, slack float64) suspect {
	var slips, odd []suspect
	for _, s := range suspects {
		u := b.table.usual(s.col)
		if meant, ok := s.slipped(slack); ok && u.holds(meant, slack) {
			slips = append(slips, suspect{s.col, s.says, meant})
		}
		if u.holds(s.needs, slack) && !u.holds(s.says, 0) {
			odd = append(odd, s)
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
// off. what: the basis in which the cells' numbers stand.
func (b *row) suspects(r *recipe, off float64, what basis) []suspect {
	var out []suspect
	for _, d := range r.doses {
		if d.basis != what {
			continue
		}
		if needs := d.amount - off; needs > 0 {
			out = append(out, suspect{d.col, d.amount, needs})
		}
	}
	for i := range b.table.fields {
		f := &b.table.fields[i]
		if off < 0 && f.Role == column.IngredientAmount && f.basis == what && b.cellAt(f.col).Kind == sheet.Blank {
			out = append(out, suspect{f.col, 0, -off})
		}
	}
	return out
}

// notAddedUp says that the ingredients do not weigh what the batch says, and
// which cell explains it. It is true when they are so far off that nothing can
// be built on them, and settled when the cell was found.
func (b *row) notAddedUp(r *recipe, sum, batch float64, nominal bool) (apart, settled bool) {
	off := sum - batch
	slack := b.slack(batch)
	what, unit := inGrams, " g"
	at, total := r.batch.col, "the batch says "+grams(batch)
	if nominal {
		what, unit, slack = ofMix, " %", 1
		at, total = r.doses[0].col, "not 100 %"
	}
	write := func(v float64) string { return number(math.Round(v*1000)/1000) + unit }
	suspects := b.suspects(r, off, what)
	if r.batch.ok() && !nominal {
		suspects = append(suspects, suspect{r.batch.col, batch, sum})
	}
	found := b.culprit(suspects, slack)
	// One mass that is less than half or more than twice what it should be makes
	// another mix, even where the sum hardly shows it.
	apart = found.col == 0 && math.Abs(off) > contradictory*batch ||
		found.col > 0 && found.col != r.batch.col && (math.Abs(off) > contradictory*batch || found.says > 2*found.needs || found.needs > 2*found.says)
	severity, used := trial.PleaseLook, "the sum is used"
	if nominal {
		used = "shares of their sum are used"
	}
	if apart {
		severity, used = trial.MustFix, noFormula
		r.contradicts = fmt.Sprintf("masses that contradict each other (the ingredients add up to %s, %s): %s", write(sum), total, noFormula)
	}
	read := fmt.Sprintf("the ingredients add up to %s, %s", write(sum), total)
	switch {
	case found.col == 0:
		b.problem("does not add up", severity, at, read+"; no single cell explains it",
			"compare "+b.cellsOf(r, what)+" with your notes and type what was weighed, or log the ingredient that is missing; "+used)
	case found.col == r.batch.col:
		b.problem("does not add up", severity, at, read+"; the ingredients are like those of the other trials, the batch is the odd one",
			fmt.Sprintf("type %s here if that was the batch; %s", number(sum), used))
	case found.says == 0:
		b.problem("does not add up", severity, found.col, fmt.Sprintf("nothing is typed here, and %s; with %s here it would add up", read, write(found.needs)),
			fmt.Sprintf("type %s here if that was weighed; %s", number(found.needs), used))
	default:
		b.problem("does not add up", severity, found.col,
			fmt.Sprintf("%s here does not fit: %s; with %s here it would add up", write(found.says), read, write(found.needs)),
			fmt.Sprintf("type %s here if that was weighed; %s", number(found.needs), used))
	}
	return apart, found.col > 0
}

// askTenfold asks about amounts ten times those of the other trials, where no
// sum of masses would show them.
func (b *row) askTenfold(r *recipe) {
	for _, d := range r.doses {
		if meant, ok := b.pointMissed(b.table.fieldOf(d.col), d.amount); ok && d.amount > 4*b.table.usual(d.col).high {
			b.problem("far above the others", trial.PleaseLook, d.col, fmt.Sprintf("%s is far above the other trials", quoted(b.text(d.col))),
				fmt.Sprintf("type %s if the point was missed; it is used as it stands", number(meant)))
		}
	}
}

// cellsOf names the cells of a recipe.
func (b *row) cellsOf(r *recipe, what basis) string {
	var names []string
	for _, d := range r.doses {
		if d.basis == what {
			at := b.at(d.col)
			names = append(names, sheet.CellName(at.Row, at.Col))
		}
	}
	if r.batch.ok() {
		at := b.at(r.batch.col)
		names = append(names, sheet.CellName(at.Row, at.Col))
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// noFormula is what every message says of a trial that no start is built on.
const noFormula = "no formula is built on this trial"
