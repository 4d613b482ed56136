package recalc

import (
	"fmt"
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
)

var (
	meanWord = pattern.Of(`(?i)(\bmean\b|\baverage[ds]?\b|\bavg\b\.?|\bmoyenne?\b|\bmoy\b\.?|\bmedia\b|\bpromedio\b|mittel(wert)?|\bdurchschnitt\w*|ø|x̄)`)
	diffWord = pattern.Of(`(?i)(\bdiff(erence)?\b\.?|\bdelta\b|Δ|\bunterschied\w*|\bécart\b|\bdifférence\b|\bdiferencia\b|\bdifferenza\b|\bgain\b|\bchange\b|\bvs\b|\blonger than\b|\bcompared\b)`)
)

// means holds columns of means against the columns that they are of.
func (j *job) means() {
	for _, col := range j.table.Columns {
		if !meanWord.MatchString(col.Header) || col.Known() == 0 {
			continue
		}
		sources := j.sourcesOf(col)
		if len(sources) >= 2 {
			j.column(col, criteria.Means, func(i int) (expected, bool) { return j.mean(col, sources, i) })
		} else if len(sources) <= 1 {
			j.meansOfRepeats(col, sources)
		}
	}
}

// sourcesOf are the columns that a column of means is of: those whose headers are its
// own but for numbers and the word for mean.
func (j *job) sourcesOf(col *handin.Column) (out []*handin.Column) {
	stem := stemOf(col.Header)
	for _, c := range j.table.Columns {
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
func (j *job) mean(col *handin.Column, sources []*handin.Column, i int) (e expected, ok bool) {
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
	e.within = halfOf(col)
	if m := j.meanMeant(i, j.meant); col.Role == column.Hold && !math.IsNaN(m) {
		e.rights = append(e.rights, exactly(m)) // by hand, as it was meant
	}
	if bound {
		// What still stood is at least so long: no number is its mean.
		m := e.rights[0].value
		e.rights, e.guess, e.within = []accepted{{m + 1e-3, m, math.Inf(1)}}, true, 0
		e.ways = append([]way{{m, "what follows if a foam that still stood is counted as if it had fallen then; the mean is at least this", "bound counted", false}}, e.ways...)
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
func meanOf(xs []float64, places int) (e expected) {
	sum := 0.0
	var list []string
	for _, x := range xs {
		sum += x
		list = append(list, num(x))
	}
	n := float64(len(xs))
	e = expected{rights: []accepted{exactly(sum / n)}, digits: 2, how: fmt.Sprintf("(%s) / %d", strings.Join(list, " + "), len(xs))}
	e.ways = append(e.ways, way{sum, "the sum, not the mean", "sum", false}, way{middle(xs), "the middle one, not the mean", "middle", true},
		way{(slices.Max(xs) + slices.Min(xs)) / 2, "half way between the lowest and the highest", "half way", true})
	for d := 1; d <= max(len(xs), places)+1; d++ {
		if d != len(xs) {
			e.ways = append(e.ways, way{sum / float64(d), fmt.Sprintf("the sum divided by %d, not by %d", d, len(xs)), "divided wrongly", false})
		}
	}
	for k, x := range xs {
		if len(xs) > 2 {
			e.ways = append(e.ways, way{(sum - x) / (n - 1), fmt.Sprintf("the mean without the %s (%s)", ordinal(k), num(x)), "one left out", false})
		}
		e.ways = append(e.ways, way{x, "one of the values, not their mean", "one", true})
	}
	if len(xs) > 3 {
		for a := range xs {
			for b := range a {
				e.ways = append(e.ways, way{(sum - xs[a] - xs[b]) / (n - 2), fmt.Sprintf("the mean without two of the values (%s and %s)", num(xs[b]), num(xs[a])), "two left out", true})
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
func (j *job) meansOfRepeats(col *handin.Column, sources []*handin.Column) {
	var source *handin.Column
	if len(sources) == 1 {
		source = sources[0]
	}
	if source == nil || source.Known() < 2 {
		return
	}
	j.column(col, criteria.Means, func(i int) (e expected, ok bool) {
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
		e.within, e.guess = halfOf(col), true // of which rows is a guess
		return e, true
	})
}

// sameFormula reports two trials of the same grams, or nearly.
func (j *job) sameFormula(a, b int) bool {
	x, y := &j.mixes[a][0], &j.mixes[b][0]
	for k := range x.parts {
		if math.Abs(x.parts[k].grams-y.parts[k].grams) > max(0.15, 0.02*x.parts[k].grams) {
			return false
		}
	}
	return len(x.parts) > 0 && !x.open && !y.open
}

// differences holds columns of differences to a control, or to the row above, against
// the column that they are of.
func (j *job) differences() {
	for _, col := range j.table.Columns {
		if !diffWord.MatchString(col.Header) || meanWord.MatchString(col.Header) && stemOf(col.Header) == "" || col.Known() < 2 || numericRole(col) {
			continue
		}
		source, to, hits := j.sourceOfDifference(col)
		if source == nil {
			continue
		}
		j.column(col, criteria.Means, func(i int) (expected, bool) {
			e, ok := j.difference(col, source, to, i)
			e.guess = hits < 4 // fewer than two cells show of what it is
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
func (j *job) sourceOfDifference(col *handin.Column) (best *handin.Column, to against, most int) {
	for _, s := range j.table.Columns {
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
func (j *job) hits(col, s *handin.Column, a against) (n int) {
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

func matches(c handin.Cell, x float64, percent bool, s *handin.Column, a against, j *job, i int) bool {
	if percent {
		if base, ok := j.baseOf(s, a, i); ok && base != 0 {
			x = 100 * x / base
		}
	}
	return math.Abs(math.Abs(c.Value)-math.Abs(x)) <= max(c.Half, 1e-6)+slack(x)
}

// baseOf is the value that a difference is taken to.
func (j *job) baseOf(s *handin.Column, a against, i int) (float64, bool) {
	k := i - 1
	if a == control {
		k = j.controlRow()
	}
	if k < 0 || !s.Cells[k].Known {
		return 0, false
	}
	return s.Cells[k].Value, true
}

func (j *job) differenceOf(s *handin.Column, a against, i int) (float64, bool) {
	base, ok := j.baseOf(s, a, i)
	if !ok || !s.Cells[i].Known {
		return 0, false
	}
	return s.Cells[i].Value - base, true
}

// controlRow is the row of the control: as it is called, or the first.
func (j *job) controlRow() int {
	for i, x := range j.table.Trials {
		if x.IsControl() {
			return i
		}
	}
	return 0
}

// difference is one cell of a column of differences.
func (j *job) difference(col, s *handin.Column, to against, i int) (e expected, ok bool) {
	right, ok := j.differenceOf(s, to, i)
	base, _ := j.baseOf(s, to, i)
	if !ok {
		return e, false
	}
	e = expected{within: halfOf(col), digits: 2, how: fmt.Sprintf("%s − %s", num(s.Cells[i].Value), num(base))}
	if percentHeader(col) && base != 0 {
		right = 100 * right / base
		e.how = fmt.Sprintf("(%s) / %s × 100", e.how, num(base))
	}
	e.rights = []accepted{exactly(right)}
	if right > 0 == (col.Cells[i].Value > 0) || !signedBoth(col) {
		e.rights = append(e.rights, exactly(math.Abs(right)))
	}
	e.ways = append(j.otherDifferences(s, to, i), way{-right, "the difference with its sign turned", "sign", false}, way{s.Cells[i].Value + base, "the sum, not the difference", "sum", false})
	for _, o := range j.table.Columns {
		if o != s && o != col && o.Known() > 1 && stemOf(o.Header) == stemOf(s.Header) {
			if x, ok := j.differenceOf(o, to, i); ok {
				e.ways = append(e.ways, way{x, "the difference in " + o.Header, "of " + o.Header, false})
			}
		}
	}
	return e, true
}

// otherDifferences are the differences to other rows, and those of other rows.
func (j *job) otherDifferences(s *handin.Column, to against, i int) (out []way) {
	for k := range s.Cells {
		if k == i || !s.Cells[k].Known {
			continue
		}
		class, words := "to row", fmt.Sprintf("the difference to trial %s", j.name(k))
		if k == i-1 {
			class, words = "to the row above", "the difference to the row above"
		}
		x := s.Cells[i].Value - s.Cells[k].Value
		out = append(out, way{x, words, class, k != i-1}, way{-x, words + ", with the sign turned", class, true})
		if x, ok := j.differenceOf(s, to, k); ok {
			out = append(out, way{x, "what trial " + j.name(k) + " has", "row of " + j.name(k), true})
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
func (j *job) averages() {
	from := 0
	for _, row := range j.table.Averages {
		kind, _ := look.Summary(row.Label)
		if kind != look.Mean && kind != look.Total {
			continue
		}
		to := from
		for to < len(j.table.Trials) && j.table.Trials[to].At.Row < row.At.Row {
			to++
		}
		of := j.namedBy(row.Label)
		for k, c := range row.Cells {
			if k < len(j.table.Columns) && c.Known && j.table.Columns[k].Role != column.TrialID {
				j.average(j.table.Columns[k], c, from, to, kind, of)
			}
		}
	}
}

var withoutWord = pattern.Of(`(?i)\b(without|excl\w*|except|not|ohne|sans|sin|senza)\b`)

// namedBy are the trials that a row's label speaks of: "mean of 1" is of 1, 1a and 1b;
// nil where it names none.
func (j *job) namedBy(label string) (of map[int]bool) {
	if withoutWord.MatchString(label) {
		return nil
	}
	for _, word := range strings.FieldsFunc(label, func(r rune) bool { return strings.ContainsRune(" ,;:()+&/", r) }) {
		key := handin.IDKey(word)
		for i, x := range j.table.Trials {
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

// average holds one cell of such a row against its column.
func (j *job) average(col *handin.Column, c handin.Cell, from, to int, kind look.Statistic, of map[int]bool) {
	xs, bounds := valuesOf(col, from, to, of)
	if len(xs) < 2 {
		return
	}
	e := meanOf(xs, to-from)
	if kind == look.Total {
		e.rights, e.ways = []accepted{exactly(e.rights[0].value * float64(len(xs)))}, nil
	}
	e.within = max(c.Half, 1e-6)
	// A mean may well leave out a control, or what did not come out, or be of the last
	// block alone.
	plain := e.rights[0].value
	if of == nil {
		e.rights = append(e.rights, j.otherMeans(col, from, to)...)
	}
	v, wrong := judge(c, e)
	switch {
	case wrong:
		v.cell = c
		f := j.finding(criteria.Means, v)
		if v.way == nil || c.Formula == "" && (v.way.weak || strings.HasSuffix(v.way.class, "left out")) {
			f.Certain = false // it may be left out for a reason
		}
		j.out = append(j.out, f)
	case bounds && math.Abs(c.Value-plain) <= e.within+slack(c.Value):
		words := fmt.Sprintf("%s counts a foam that still stood as if it had ended then: it lasted longer, so the mean is at least this. Did you mean “at least”?", finding.Typed(c).String())
		j.out = append(j.out, finding.Of(criteria.Means, graded.Calculation, words, c))
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
func (j *job) otherMeans(col *handin.Column, from, to int) (out []accepted) {
	mean := func(keep func(i int) bool) {
		sum, n := 0.0, 0
		for i := from; i < to; i++ {
			if col.Cells[i].Known && keep(i) {
				sum, n = sum+col.Cells[i].Value, n+1
			}
		}
		if n >= 2 {
			out = append(out, exactly(sum/float64(n)))
		}
	}
	control := j.controlRow()
	mean(func(i int) bool { return j.table.Trials[i].CameOut.String() != "no" })
	mean(func(i int) bool {
		return !j.table.Trials[i].IsControl()
	})
	mean(func(i int) bool { return i != control && j.table.Trials[i].CameOut.String() != "no" })
	for k := from + 1; k < to-1; k++ {
		mean(func(i int) bool { return i >= k })
	}
	return out
}
