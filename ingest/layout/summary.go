package layout

import (
	"fmt"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
)

// labelled is what a row below a header looks like beside its label.
type labelled struct {
	label    string
	col      int  // of the label
	other    bool // another cell is the trial's id
	numbers  int  // and texts that start with one
	formulas int  // numbers that a formula gives where the row above is typed
	texts    int  // other texts, but for marks of nothing
	mix      int  // numbers of the mix
	bounds   int  // results given as bounds
}

// labelCol is the column of a table whose cells tell its rows apart.
func (t *open) labelCol() int {
	if h := t.Find(column.TrialID); h >= 0 {
		return t.Heads[h].Col
	}
	return t.labels
}

// labelOf finds a row's label: what stands for its id, or else the first text
// before any number.
func (t *open) labelOf(cells []sheet.Cell) (l labelled) {
	id := t.labelCol()
	begun := false
	for k := range cells {
		c := &cells[k]
		switch {
		case look.Empty(c):
		case int(c.Col) == id && (c.Kind != sheet.Text || l.label != "" && !isNoTrial(c.Text)):
			l.other = true
		case int(c.Col) == id, c.Kind == sheet.Text && l.label == "" && !begun && look.LeadingDigits(c.Text) == "":
			l.label, l.col = c.Text, int(c.Col)
		default:
			begun = true
		}
		if begun && int(c.Col) >= id {
			return l
		}
	}
	return l
}

// isNoTrial reports whether a text starts as the label of a row that is no
// trial does.
func isNoTrial(text string) bool {
	s, _ := look.Summary(text)
	goal, _ := look.IsGoal(text)
	return s != look.None || goal || look.IsBest(text)
}

// lookBeside looks at the cells beside a row's label.
func (t *open) lookBeside(l *labelled, cells []sheet.Cell) {
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) || int(c.Col) == t.labelCol() || int(c.Col) == l.col {
			continue
		}
		_, number := look.Number(c)
		role := column.None
		if h := t.HeadAt(int(c.Col)); h >= 0 {
			role = t.Heads[h].Meaning.Role
		}
		switch {
		case number:
			l.numbers++
			if c.Flags&sheet.FromFormula != 0 && !t.formulaAbove(int(c.Col)) {
				l.formulas++
			}
			if look.IsOfMix(role) {
				l.mix++
			} else if isBound(c) {
				l.bounds++
			}
		case c.Kind != sheet.Text || !meansNothing(c.Text):
			l.texts++
		}
	}
}

// formulaAbove reports whether the last row of the table has a formula in a
// column.
func (t *open) formulaAbove(col int) bool {
	if len(t.Rows) == 0 {
		return false
	}
	c := look.CellAt(&t.Sheet.Rows[t.Rows[len(t.Rows)-1].At], col)
	return c.Flags&sheet.FromFormula != 0
}

func isBound(c *sheet.Cell) bool {
	text := strings.TrimSpace(c.Text)
	return strings.IndexAny(text, "<>≥≤") == 0 || strings.HasSuffix(text, "+")
}

func meansNothing(text string) bool {
	switch strings.Trim(text, " \u00a0") {
	case "", "-", "–", "—", "/", "±":
		return true
	}
	return false
}

// sumsUp says whether a row is an average, a goal or the best of the rows
// above once more, "" for a trial; and what a person should be told of it.
func (t *open) sumsUp(cells []sheet.Cell) (grid.Kind, string) {
	l := t.labelOf(cells)
	l.label = look.Named(l.label)
	if look.IsExample(l.label) {
		return grid.Legend, fmt.Sprintf("%q was read as an example and not as a trial; if it was made, give it a trial's name", strings.TrimSpace(l.label))
	}
	if (look.IsBest(l.label) || t.bestBelow) && t.repeatsRow(cells) {
		return grid.Best, ""
	}
	s, whole := look.Summary(l.label)
	goal, wholeGoal := look.IsGoal(l.label)
	if s == look.None && !goal && l.label != "" && look.IsShortID(l.label) {
		return "", ""
	}
	t.lookBeside(&l, cells)
	if look.IsDifference(l.label) && !l.other && l.texts == 0 && l.numbers <= 2 {
		return grid.Legend, "" // it says something of two trials, and is none
	}
	if s != look.None && !l.other && l.numbers == 1 && l.texts <= 1 && ofAResult(l.label) {
		return grid.Average, ""
	}
	switch {
	case l.label == "" && t.Find(column.TrialID) >= 0 && l.onlyFormulas():
		return grid.Average, ""
	case l.label == "":
		return "", ""
	case goal:
		return t.goal(&l, wholeGoal)
	case s == look.None:
		return t.averageUnnamed(&l, cells)
	}
	return t.average(&l, s, whole, cells)
}

// ofAResult reports a label that says of which result a mean is: "mean hold at 9 % (B3, B4)", with
// one number beside it, wherever that stands.
func ofAResult(label string) bool {
	_, rest, _ := strings.Cut(strings.TrimSpace(label), " ")
	rest = whichMix.ReplaceAllString(whereMade.ReplaceAllString(rest, ""), "")
	role := column.Read(rest).Role
	return role == column.Hold || role == column.DrainedAmount || role == column.Overrun
}

// whereMade is what a label says behind the name of a result.
var whereMade = pattern.Of(`(?i)\s*(?:[(,;:]|\b(?:at|of|for|with|bei|für|von|à|pour|de|a|per|di|bij|voor|van)\b).*$`)

// whichMix is the mix that such a label ends on: "mean hold B", "mean hold mix 2".
var whichMix = pattern.Of(`(?i)\s+(?:(?:mix|blend|recipe|series|group)\s+)?(?:[A-K]|\pL?\d{1,2})\s*$`)

// onlyFormulas reports whether all of a row is formulas below typed columns.
func (l *labelled) onlyFormulas() bool {
	return !l.other && l.texts == 0 && l.formulas >= 2 && l.formulas == l.numbers
}

// goal reports whether a row that starts with a word for a goal is one: it has
// no mix, or bounds for results, or stands among numbered trials.
func (t *open) goal(l *labelled, whole bool) (grid.Kind, string) {
	switch {
	case l.other:
	case l.mix == 0 && (whole || l.numbers > 0), whole && l.bounds > 0:
		return grid.Goal, ""
	case whole && t.standsForID(l):
		return grid.Goal, fmt.Sprintf("%q was read as a goal and not as a trial; if it was made, give it a trial's name", strings.TrimSpace(l.label))
	}
	return "", ""
}

// average reports whether a row whose label names a statistic is one. A word
// alone may be a name: the numbers must agree, or be formulas over the column,
// or stand under a word that is no id in a column of ids.
func (t *open) average(l *labelled, s look.Statistic, whole bool, cells []sheet.Cell) (grid.Kind, string) {
	names := t.holdsNames(l.col)
	switch {
	case l.other:
		return "", ""
	case l.formulas > 0 && l.formulas*2 >= l.numbers:
		return grid.Average, ""
	case names && look.WholeOnly[strings.ToLower(strings.TrimSpace(l.label))]:
		return "", "" // a cook called Max
	}
	agree, differ := t.agreement(s, cells)
	need := 1
	if !whole || names {
		need = 2
	}
	if agree >= need && agree > differ {
		return grid.Average, ""
	}
	if whole && l.mix == 0 && l.texts+l.numbers > 0 && !names && t.standsForID(l) {
		return grid.Average, "" // "range | 15-22"
	}
	if l.ofResult(t) {
		return grid.Average, "" // "mean held, min | 21.3", wherever its number stands
	}
	if !whole || l.texts > 0 || l.numbers > 0 && !names && !t.standsForID(l) {
		return "", ""
	}
	return grid.Average, l.doubted()
}

// ofResult reports a label that begins with a statistic and goes on with something measured
// of the foam, beside one number: a line of results where trials are numbered.
func (l *labelled) ofResult(t *open) bool {
	_, rest, ok := strings.Cut(strings.TrimSpace(l.label), " ")
	if s, whole := look.Summary(strings.Fields(l.label)[0]); !ok || s == look.None || !whole || l.other || l.texts > 0 || l.numbers != 1 || l.col == t.labelCol() && !t.standsForID(l) {
		return false
	}
	role := column.Read(rest).Role
	return role == column.Hold || role == column.DrainedAmount
}

// doubted is what to say of an average whose numbers are not those of the rows
// above: nothing where it has no mix, so that it cannot be a trial.
func (l *labelled) doubted() string {
	if l.mix == 0 {
		return ""
	}
	return fmt.Sprintf("%q was read as an average or total, though its numbers are not those of the rows above; if it is a trial, give it a trial's name", strings.TrimSpace(l.label))
}

// averageUnnamed finds the averages whose word nobody listed by their numbers.
func (t *open) averageUnnamed(l *labelled, cells []sheet.Cell) (grid.Kind, string) {
	if l.other || l.texts > 0 || l.numbers < 3 || look.IsShortID(l.label) || !t.standsForID(l) {
		return "", ""
	}
	for _, s := range []look.Statistic{look.Mean, look.Total, look.Deviation} {
		if agree, differ := t.agreement(s, cells); agree >= 3 && differ == 0 {
			return grid.Average, fmt.Sprintf("%q was read as an average or total, as its numbers are those of the rows above", strings.TrimSpace(l.label))
		}
	}
	return "", ""
}

// standsForID reports whether a label stands where the rows above have ids of
// numbers or letters, as no trial of theirs would be called.
func (t *open) standsForID(l *labelled) bool {
	if l.col != t.labelCol() {
		return !t.holdsNames(l.col)
	}
	c := t.counted()
	return !t.holdsNames(l.col) && c.digits*4 >= c.ids*3
}

// holdsNames reports whether a column is one of names.
func (t *open) holdsNames(col int) bool {
	h := t.HeadAt(col)
	if h < 0 {
		return false
	}
	return look.IsName(t.Heads[h].Meaning.Role)
}
