package statistic

import (
	"fmt"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

var (
	meanWord = pattern.Of(`(?i)(\bmean\b|\baverage[ds]?\b|\bavg\b\.?|\bmoyenne?\b|\bmoy\b\.?|\bmedia\b|\bpromedio\b|mittel(wert)?|\bdurchschnitt\w*|ø|x̄)`)
	diffWord = pattern.Of(`(?i)(\bdiff(erence)?\b\.?|\bdelta\b|Δ|\bunterschied\w*|\bécart\b|\bdifférence\b|\bdiferencia\b|\bdifferenza\b|\bgain\b|\bchange\b|\bvs\b|\blonger than\b|\bcompared\b)`)
)

// means holds columns of means against the columns that they are of.
func (j *results) means() {
	for _, col := range j.Table.Columns {
		if !meanWord.MatchString(col.Header) || col.Known() == 0 {
			continue
		}
		sources := j.sourcesOf(col)
		if len(sources) >= 2 {
			j.Column(col, criteria.Means, func(i int) (verdict.Expected, bool) { return j.mean(col, sources, i) })
		} else if len(sources) <= 1 {
			j.meansOfRepeats(col, sources)
		}
	}
}

// sourcesOf are the columns that a column of means is of: those whose headers are its
// own but for numbers and the word for mean.
func (j *results) sourcesOf(col *handin.Column) (out []*handin.Column) {
	stem := stemOf(col.Header)
	for _, c := range j.Table.Columns {
		if c != col && c.Known() > 0 && !meanWord.MatchString(c.Header) && !diffWord.MatchString(c.Header) && stemOf(c.Header) == stem {
			out = append(out, c)
		}
	}
	return out
}

// stemOf is a header without numbers, the word for mean, units and signs.
func stemOf(header string) string {
	header = meanWord.ReplaceAllString(header, " ")
	words := strings.FieldsFunc(say.Fold(header), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r > 127 || r == '%')
	})
	words = slices.DeleteFunc(words, func(w string) bool {
		return len(w) == 1 && w != "%" && w != "g" || slices.Contains([]string{"of", "the", "min", "minutes", "squirt", "rep", "repeat", "reading", "st", "nd", "rd", "first", "second", "third", "value", "di", "de", "der"}, w)
	})
	slices.Sort(words)
	return strings.Join(words, " ")
}

// mean is the mean of some columns in one row.
func (j *results) mean(col *handin.Column, sources []*handin.Column, i int) (e verdict.Expected, ok bool) {
	var xs []float64
	bound := false
	for _, s := range sources {
		c := s.Cells[i]
		switch {
		case c.Known:
			xs = append(xs, c.Value)
		case !math.IsInf(c.Low, 0):
			xs, bound = append(xs, c.Low), true
		}
	}
	if len(xs) < 2 {
		return e, false
	}
	e = meanOf(xs, len(sources))
	e.Within = halfOf(col)
	if m := j.meanMeant(i, j.meant); col.Role == column.Hold && !math.IsNaN(m) {
		e.Rights = append(e.Rights, verdict.Exactly(m)) // by hand, as it was meant
	}
	if bound {
		// What still stood is at least so long: no number is its mean.
		m := e.Rights[0].Value
		e.Rights, e.Guess, e.Within = []verdict.Accepted{verdict.Between(m+1e-3, m, math.Inf(1))}, true, 0
		e.Ways = append([]verdict.Way{verdict.By(m, "what follows if a foam that still stood is counted as if it had fallen then; the mean is at least this", "bound counted")}, e.Ways...)
	}
	return e, true
}

// halfOf is half of the last digit that a column is typed with.
func halfOf(col *handin.Column) float64 {
	half := math.Inf(1)
	for _, c := range col.Cells {
		if c.Known && c.Half > 0 {
			half = min(half, c.Half)
		}
	}
	if math.IsInf(half, 1) {
		return 0.001
	}
	return half
}

// meanOf is a mean, and the ways it goes wrong; places is how many there could be.
func meanOf(xs []float64, places int) (e verdict.Expected) {
	sum := 0.0
	var list []string
	for _, x := range xs {
		sum += x
		list = append(list, verdict.Num(x))
	}
	n := float64(len(xs))
	e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(sum / n)}, Digits: 2, How: fmt.Sprintf("(%s) / %d", strings.Join(list, " + "), len(xs))}
	e.Ways = append(e.Ways, verdict.By(sum, "the sum, not the mean", "sum"), verdict.Weakly(middle(xs), "the middle one, not the mean", "middle"),
		verdict.Weakly((slices.Max(xs)+slices.Min(xs))/2, "half way between the lowest and the highest", "half way"))
	for d := 1; d <= max(len(xs), places)+1; d++ {
		if d != len(xs) {
			e.Ways = append(e.Ways, verdict.By(sum/float64(d), fmt.Sprintf("the sum divided by %d, not by %d", d, len(xs)), "divided wrongly"))
		}
	}
	for k, x := range xs {
		if len(xs) > 2 {
			e.Ways = append(e.Ways, verdict.By((sum-x)/(n-1), fmt.Sprintf("the mean without the %s (%s)", ordinal(k), verdict.Num(x)), "one left out"))
		}
		e.Ways = append(e.Ways, verdict.Weakly(x, "one of the values, not their mean", "one"))
	}
	if len(xs) > 3 {
		for a := range xs {
			for b := range a {
				e.Ways = append(e.Ways, verdict.Weakly((sum-xs[a]-xs[b])/(n-2), fmt.Sprintf("the mean without two of the values (%s and %s)", verdict.Num(xs[b]), verdict.Num(xs[a])), "two left out"))
			}
		}
	}
	return e
}

func ordinal(k int) string {
	if k < 3 {
		return []string{"first", "second", "third"}[k]
	}
	return fmt.Sprintf("%dth", k+1)
}

func middle(xs []float64) float64 {
	s := slices.Sorted(slices.Values(xs))
	if n := len(s); n%2 == 0 {
		return (s[n/2-1] + s[n/2]) / 2
	}
	return s[len(s)/2]
}

// meansOfRepeats holds means of the repeats of a formula against its rows.
func (j *results) meansOfRepeats(col *handin.Column, sources []*handin.Column) {
	var source *handin.Column
	if len(sources) == 1 {
		source = sources[0]
	}
	if source == nil || source.Known() < 2 {
		return
	}
	j.Column(col, criteria.Means, func(i int) (e verdict.Expected, ok bool) {
		var xs []float64
		for k, c := range source.Cells {
			if c.Known && j.sameFormula(i, k) {
				xs = append(xs, c.Value)
			}
		}
		if len(xs) < 2 {
			return e, false
		}
		e = meanOf(xs, len(xs))
		e.Within, e.Guess = halfOf(col), true // of which rows is a guess
		return e, true
	})
}

// sameFormula reports two trials of the same grams, or nearly.
func (j *results) sameFormula(a, b int) bool {
	x, y := &j.mixes[a][0], &j.mixes[b][0]
	for k := range x.Parts {
		if math.Abs(x.Parts[k].Grams-y.Parts[k].Grams) > max(0.15, 0.02*x.Parts[k].Grams) {
			return false
		}
	}
	return len(x.Parts) > 0 && !x.Open && !y.Open
}

// differences holds columns of differences to a control, or to the row above, against
// the column that they are of.
func (j *results) differences() {
	for _, col := range j.Table.Columns {
		if !diffWord.MatchString(col.Header) || meanWord.MatchString(col.Header) && stemOf(col.Header) == "" || col.Known() < 2 || numericRole(col) {
			continue
		}
		source, to, hits := j.sourceOfDifference(col)
		if source == nil {
			continue
		}
		j.Column(col, criteria.Means, func(i int) (verdict.Expected, bool) {
			e, ok := j.difference(col, source, to, i)
			e.Guess = hits < 4 // fewer than two cells show of what it is
			return e, ok
		})
	}
}

// numericRole reports a column that the reader knows to be measured or weighed.
func numericRole(col *handin.Column) bool {
	switch col.Role {
	case column.IngredientAmount, column.BatchMass, column.FatPercent, column.EmulsifierAmount, column.BlendHLB:
		return true
	}
	return false
}

// reference row of a difference.
type against uint8

const (
	control against = iota
	above
)

// sourceOfDifference finds the column and the row that most cells are the difference
// to; means come before what they are of.
func (j *results) sourceOfDifference(col *handin.Column) (best *handin.Column, to against, most int) {
	for _, s := range j.Table.Columns {
		if s == col || s.Known() < 2 || diffWord.MatchString(s.Header) || s.Role == column.TrialID || s.Role == column.Order {
			continue
		}
		for _, a := range []against{control, above} {
			if hits := j.hits(col, s, a); hits > most {
				best, to, most = s, a, hits
			}
		}
	}
	return best, to, most
}

// hits counts the cells that are differences within a column, twice each and one more for
// a column of means.
func (j *results) hits(col, s *handin.Column, a against) (n int) {
	for i, c := range col.Cells {
		if x, ok := j.differenceOf(s, a, i); ok && c.Known && x != 0 && matches(c, x, percentHeader(col), s, a, j, i) {
			n += 2
		}
	}
	if n > 0 && meanWord.MatchString(s.Header) {
		n++
	}
	return n
}

func percentHeader(col *handin.Column) bool { return strings.Contains(col.Header, "%") }

func matches(c handin.Cell, x float64, percent bool, s *handin.Column, a against, j *results, i int) bool {
	if percent {
		if base, ok := j.baseOf(s, a, i); ok && base != 0 {
			x = 100 * x / base
		}
	}
	return math.Abs(math.Abs(c.Value)-math.Abs(x)) <= max(c.Half, 1e-6)+verdict.Slack(x)
}

// baseOf is the value that a difference is taken to.
func (j *results) baseOf(s *handin.Column, a against, i int) (float64, bool) {
	k := i - 1
	if a == control {
		k = j.controlRow()
	}
	if k < 0 || !s.Cells[k].Known {
		return 0, false
	}
	return s.Cells[k].Value, true
}

func (j *results) differenceOf(s *handin.Column, a against, i int) (float64, bool) {
	base, ok := j.baseOf(s, a, i)
	if !ok || !s.Cells[i].Known {
		return 0, false
	}
	return s.Cells[i].Value - base, true
}

// controlRow is the row of the control: as it is called, or the first.
func (j *results) controlRow() int {
	for i, x := range j.Table.Trials {
		if x.IsControl() {
			return i
		}
	}
	return 0
}

// difference is one cell of a column of differences.
func (j *results) difference(col, s *handin.Column, to against, i int) (e verdict.Expected, ok bool) {
	right, ok := j.differenceOf(s, to, i)
	base, _ := j.baseOf(s, to, i)
	if !ok {
		return e, false
	}
	e = verdict.Expected{Within: halfOf(col), Digits: 2, How: fmt.Sprintf("%s − %s", verdict.Num(s.Cells[i].Value), verdict.Num(base))}
	if percentHeader(col) && base != 0 {
		right = 100 * right / base
		e.How = fmt.Sprintf("(%s) / %s × 100", e.How, verdict.Num(base))
	}
	e.Rights = []verdict.Accepted{verdict.Exactly(right)}
	if right > 0 == (col.Cells[i].Value > 0) || !signedBoth(col) {
		e.Rights = append(e.Rights, verdict.Exactly(math.Abs(right)))
	}
	e.Ways = append(j.otherDifferences(s, to, i), verdict.By(-right, "the difference with its sign turned", "sign"), verdict.By(s.Cells[i].Value+base, "the sum, not the difference", "sum"))
	for _, o := range j.Table.Columns {
		if o != s && o != col && o.Known() > 1 && stemOf(o.Header) == stemOf(s.Header) {
			if x, ok := j.differenceOf(o, to, i); ok {
				e.Ways = append(e.Ways, verdict.By(x, "the difference in “"+o.Header+"”", "of "+o.Header))
			}
		}
	}
	return e, true
}

// otherDifferences are the differences to other rows, and those of other rows.
func (j *results) otherDifferences(s *handin.Column, to against, i int) (out []verdict.Way) {
	for k := range s.Cells {
		if k == i || !s.Cells[k].Known {
			continue
		}
		class, words := "to row", fmt.Sprintf("the difference to trial %s", j.Name(k))
		if k == i-1 {
			class, words = "to the row above", "the difference to the row above"
		}
		x := s.Cells[i].Value - s.Cells[k].Value
		out = append(out, verdict.Either(x, words, class, k != i-1), verdict.Weakly(-x, words+", with the sign turned", class))
		if x, ok := j.differenceOf(s, to, k); ok {
			out = append(out, verdict.Weakly(x, "what trial "+j.Name(k)+" has", "row of "+j.Name(k)))
		}
	}
	return out
}

// signedBoth reports a column that has numbers below 0, so that its signs mean
// something.
func signedBoth(col *handin.Column) bool {
	return slices.ContainsFunc(col.Cells, func(c handin.Cell) bool { return c.Known && c.Value < 0 })
}

// averages holds rows of means and sums against the trials above them.
func (j *results) averages(w *handin.Work) {
	from := 0
	for _, row := range j.Table.Averages {
		kind, _ := look.Summary(look.Named(row.Label))
		if kind != look.Mean && kind != look.Total {
			continue
		}
		to := from
		for to < len(j.Table.Trials) && j.Table.Trials[to].At.Row < row.At.Row {
			to++
		}
		of := j.namedBy(row.Label)
		if role, alone, ok := j.elsewhere(row); ok {
			// One number beside "mean held, min" is of the holds, whatever column it stands in.
			if of == nil {
				of = j.namedAbove(w, row.At)
			}
			if col := j.Table.Find(role); col != nil && of != nil && col.Field != nil {
				alone.Scale = 1
				j.average(col, alone, from, to, kind, of)
			}
			continue
		}
		for k, c := range row.Cells {
			if k >= len(j.Table.Columns) || !c.Known || j.Table.Columns[k].Role == column.TrialID {
				continue
			}
			col := j.Table.Columns[k]
			if other := takenFrom(w, c); other != nil && other != col {
				if of == nil {
					continue // it stands beside its label, and its formula says of what it is
				}
				col = other
			}
			j.average(col, c, from, to, kind, of)
		}
	}
}

// takenFrom is the column of trials that a formula reckons with, nil where it does so with none.
func takenFrom(w *handin.Work, c handin.Cell) *handin.Column {
	ref := reference.FindString(strings.ReplaceAll(strings.ToUpper(c.Formula), "$", ""))
	col, row, err := excelize.CellNameToCoordinates(ref)
	if err != nil || strings.Contains(c.Formula, "!") {
		return nil
	}
	of, _ := w.At(trial.Place{File: c.At.File, Sheet: c.At.Sheet, Row: row, Col: col})
	return of
}

// elsewhere is the one number of a row whose label names a result, where it does not stand in
// the column of that result.
func (j *results) elsewhere(row handin.Row) (role column.Role, alone handin.Cell, ok bool) {
	_, rest, _ := strings.Cut(strings.TrimSpace(look.Named(row.Label)), " ")
	if role = column.Read(rest).Role; role == column.None || role == column.Unused {
		role = column.Read(whichMix.ReplaceAllString(whereMade.ReplaceAllString(rest, ""), "")).Role // "mean hold at 9 % (B3, B4)"
	}
	if role != column.Hold && role != column.DrainedAmount {
		return role, alone, false
	}
	for k, c := range row.Cells {
		if !c.Known {
			continue
		}
		if ok || k >= len(j.Table.Columns) || j.Table.Columns[k].Role == role {
			return role, alone, false
		}
		if alone, ok = c, true; c.Scale != 1 && c.Scale != 0 {
			alone.Value, alone.Half = c.Value/c.Scale, c.Half/c.Scale
		}
	}
	return role, alone, ok
}

// whereMade is what a label says behind the name of a result.
var whereMade = pattern.Of(`(?i)\s*(?:[(,;:]|\b(?:at|of|for|with|bei|für|von|à|pour|de|a|per|di|bij|voor|van)\b).*$`)

// whichMix is the mix that such a label ends on: "mean hold B".
var whichMix = pattern.Of(`(?i)\s+(?:(?:mix|blend|recipe|series|group)\s+)?(?:[A-K]|\pL?\d{1,2})\s*$`)

// namedAbove are the trials that a title right above a row names: "means of the repeats (6, 7)".
func (j *results) namedAbove(w *handin.Work, at trial.Place) (of map[int]bool) {
	for _, p := range w.Words {
		if up := at.Row - p.At.Row; p.Note != nil || p.At.File != at.File || p.At.Sheet != at.Sheet || up < 1 || up > 3 {
			continue
		}
		if s, _ := look.Summary(p.Text); s == look.Mean {
			of = j.namedBy(p.Text)
		}
	}
	return of
}

var withoutWord = pattern.Of(`(?i)\b(without|excl\w*|except|not|ohne|sans|sin|senza)\b`)

// namedBy are the trials that a row's label speaks of: "mean of 1" is of 1, 1a and 1b;
// nil where it names none.
func (j *results) namedBy(label string) (of map[int]bool) {
	if withoutWord.MatchString(label) {
		return nil
	}
	if m := fromTo.FindStringSubmatch(label); m != nil {
		a, b := j.rowCalled(m[1]), j.rowCalled(m[2])
		if a >= 0 && b > a {
			of = map[int]bool{}
			for i := a; i <= b; i++ {
				of[i] = true
			}
			return of
		}
	}
	for _, word := range strings.FieldsFunc(label, func(r rune) bool { return strings.ContainsRune(" ,;:()+&/", r) }) {
		key := handin.IDKey(word)
		for i, x := range j.Table.Trials {
			id := handin.IDKey(x.ID)
			if key != "" && (id == key || strings.HasPrefix(id, key) && len(id) == len(key)+1 && id[len(id)-1] >= 'a') {
				if of == nil {
					of = map[int]bool{}
				}
				of[i] = true
			}
		}
	}
	return of
}

// fromTo are the first and the last of several trials: "H4-H6", "4 to 6".
var fromTo = pattern.Of(`(?i)(?:^|[\s(])(\pL{0,3}\d+)\s*(?:-|–|—|\bto\b|\bbis\b|\bà\b|\btot\b)\s*(\pL{0,3}\d+)(?:[\s),;:]|$)`)

// rowCalled is the row of the one trial of a name, -1 without one.
func (j *results) rowCalled(name string) int {
	at := -1
	for i, x := range j.Table.Trials {
		if handin.IDKey(x.ID) == handin.IDKey(name) {
			if at >= 0 {
				return -1
			}
			at = i
		}
	}
	return at
}

// average holds one cell of such a row against its column.
func (j *results) average(col *handin.Column, c handin.Cell, from, to int, kind look.Statistic, of map[int]bool) {
	xs, bounds := valuesOf(col, from, to, of)
	if len(xs) < 2 {
		return
	}
	e := meanOf(xs, to-from)
	if kind == look.Total {
		e.Rights, e.Ways = []verdict.Accepted{verdict.Exactly(e.Rights[0].Value * float64(len(xs)))}, nil
	}
	e.Within = max(c.Half, 1e-6)
	// A mean may well leave out a control, or what did not come out, or be of the last
	// block alone.
	plain := e.Rights[0].Value
	if of == nil {
		e.Rights = append(e.Rights, j.otherMeans(col, from, to)...)
	}
	v, wrong := verdict.Judge(c, e)
	switch {
	case wrong:
		v.Cell = c
		f := j.Finding(criteria.Means, v)
		if v.Way == nil || c.Formula == "" && (v.Way.Weak || strings.HasSuffix(v.Way.Class, "left out")) {
			f.Certain = false // it may be left out for a reason
		}
		j.Out = append(j.Out, f)
	case bounds && math.Abs(c.Value-plain) <= e.Within+verdict.Slack(c.Value):
		words := fmt.Sprintf("%s counts a foam that still stood as if it had ended then: it lasted longer, so the mean is at least this. Did you mean “at least”?", finding.Typed(c).String())
		j.Out = append(j.Out, finding.Of(criteria.Means, graded.Calculation, words, c))
	}
}

// valuesOf are the numbers of a column in some rows, or in those named; bounds is set
// where one of them is only a bound.
func valuesOf(col *handin.Column, from, to int, of map[int]bool) (xs []float64, bounds bool) {
	for i := from; i < to; i++ {
		o := col.Cells[i]
		if of != nil && !of[i] || math.IsInf(o.Low, 0) {
			continue
		}
		xs, bounds = append(xs, o.Low), bounds || !o.Known
	}
	return xs, bounds
}

// otherMeans are the means of parts of a column that a student may well mean: what
// came out, without the control, the last rows.
func (j *results) otherMeans(col *handin.Column, from, to int) (out []verdict.Accepted) {
	mean := func(keep func(i int) bool) {
		sum, n := 0.0, 0
		for i := from; i < to; i++ {
			if col.Cells[i].Known && keep(i) {
				sum, n = sum+col.Cells[i].Value, n+1
			}
		}
		if n >= 2 {
			out = append(out, verdict.Exactly(sum/float64(n)))
		}
	}
	control := j.controlRow()
	mean(func(i int) bool { return j.Table.Trials[i].CameOut.String() != "no" })
	mean(func(i int) bool {
		return !j.Table.Trials[i].IsControl()
	})
	mean(func(i int) bool { return i != control && j.Table.Trials[i].CameOut.String() != "no" })
	for k := from + 1; k < to-1; k++ {
		mean(func(i int) bool { return i >= k })
	}
	return out
}
