package recalc

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// What a work writes of an ingredient, on a sheet or in a line, is held against what is
// known of it, and against what its own cells reckon with.

// statedOf is what a work writes of the ingredient of a column, and where.
func statedOf(w *handin.Work, col *handin.Column) (st kitchen.Statement, ok bool) {
	for _, h := range w.Log {
		if d, found := h.Own.Ingredient(col.Field.Called(), col.Header, col.Field.What.Name); found {
			st.At = d.At
			if d.HLB != nil && d.HLB.Low == d.HLB.High {
				st.HLB, st.At = &d.HLB.Value, d.HLBAt
			}
			if d.FatPercent != nil && d.FatPercent.Low == d.FatPercent.High {
				st.Fat = &d.FatPercent.Value
				if st.HLB == nil {
					st.At = d.FatAt
				}
			}
			return st, true
		}
		for _, name := range []string{col.Field.Called(), col.Field.What.Name} {
			if st, found := h.Own.Stated(name); found && !st.Disputed && (st.Fat != nil || st.HLB != nil) && strings.Contains(col.Field.What.From, st.At.String()) {
				return st, true
			}
		}
	}
	return st, false
}

// otherHLBs finds HLBs that are written for an ingredient and that nobody publishes of it, or
// that the blends of the work do not reckon with.
func (j *job) otherHLBs(w *handin.Work) {
	for k, col := range j.Table.Weighed() {
		st, ok := statedOf(w, col)
		if !ok || st.HLB == nil || j.asked[st.At] || !col.Field.What.WeighedAsEmulsifier() || j.ownColumn(col) {
			continue
		}
		usual, known := usualOf(col)
		known = known && usual.HLB != nil
		with, used := j.reckonedWith(k, *st.HLB, usual)
		switch {
		case used:
			slip := known && foreignTo(*st.HLB, usual.HLB) || !known && *st.HLB < least || slipOf(*st.HLB, with)
			if col := j.blendsOf(k, with); !slip && col != nil {
				// The list may well be true: then it is the sums that take another value.
				j.asked[st.At] = true
				j.otherThanListed(col, k, *st.HLB, with, st.At)
				j.setHLB(k, with)
				continue
			}
			j.setHLB(k, with)
			f := j.constant(st.At, *st.HLB, fmt.Sprintf("HLB %s is written for %s, and your blends are those of %s. Which is it?", verdict.Num(*st.HLB), col.Header, verdict.Num(with)), with)
			f.Certain = known && slipOf(*st.HLB, with) && foreignTo(*st.HLB, usual.HLB)
			j.Out = append(j.Out, f)
		case !known && *st.HLB < least:
			j.Out = append(j.Out, j.constant(st.At, *st.HLB, fmt.Sprintf("HLB %s is written for %s: hardly any emulsifier has so little. Was it %s?", verdict.Num(*st.HLB), col.Header, verdict.Num(10**st.HLB)), 10**st.HLB))
		case known && foreignTo(*st.HLB, usual.HLB):
			j.Out = append(j.Out, j.constant(st.At, *st.HLB, fmt.Sprintf("HLB %s is written for %s, where %s is usual. Whose value is it, or did a finger slip?", verdict.Num(*st.HLB), col.Header, verdict.Num(usual.HLB.Value)), usual.HLB.Value))
		}
	}
}

// ownColumn reports an emulsifier whose HLB stands in a column of its own, trial by trial.
func (j *job) ownColumn(of *handin.Column) bool {
	return slices.ContainsFunc(j.Table.All(column.IngredientHLB), func(c *handin.Column) bool {
		return c.Field != nil && c.Field.Ingredient == of.Field.Called()
	})
}

// blendsOf is the column of blends that agree with an emulsifier's HLB.
func (j *job) blendsOf(k int, hlb float64) *handin.Column {
	for _, col := range j.Table.All(column.BlendHLB) {
		if j.blendsWith(col, k, hlb) >= 2 {
			return col
		}
	}
	return nil
}

// otherThanListed asks of blends that reckon with another HLB than the student's own list has.
func (j *job) otherThanListed(col *handin.Column, k int, listed, with float64, at trial.Place) {
	var off []handin.Cell
	right := math.NaN()
	for i, c := range col.Cells {
		m := &j.mixes[i][0]
		name := m.Parts[k].Name
		own, ok := mixture.BlendOf(m, map[string]float64{name: with})
		if !ok || !c.Known || m.Parts[k].Grams <= 0 || math.Abs(own-c.Value) > max(c.Half, 0.011)+1e-6 {
			continue
		}
		by, _ := mixture.BlendOf(m, map[string]float64{name: listed})
		if math.Abs(by-c.Value) <= max(c.Half, j.rules.HLBWithin)+1e-6 {
			continue
		}
		if off = append(off, c); len(off) == 1 {
			right = by
		}
	}
	if len(off) == 0 {
		return
	}
	f := finding.Of(criteria.HLB, graded.Calculation, fmt.Sprintf("%s is what follows with an HLB of %s for %s, and your own list (%s) says %s: then it is %s. Which is it?", off[0].Text, verdict.Num(with), j.Table.Weighed()[k].Header, at.String(), verdict.Num(listed), verdict.DigitsOf(right, 2)), off[0]).ShouldBe(right).Kinds("another constant")
	for _, c := range off[1:] {
		f = f.And(c.At)
	}
	j.Out = append(j.Out, f)
}

// least is the lowest HLB that an emulsifier of a kitchen is likely to have.
const least = 2

// otherRows asks of constants that stand in rows of the work's own, whether or not a column
// is named so: "mono | glycerol monostearate, HLB by the handbook | 8.3".
func otherRows(w *handin.Work, asked map[trial.Place]bool) (out []finding.Found) {
	type row struct {
		file, sheet string
		number      int
	}
	texts := map[row]string{}
	for _, p := range w.Words {
		if k := (row{p.At.File, p.At.Sheet, p.At.Row}); p.Note == nil {
			texts[k] += p.Text + " | "
		}
	}
	j := &job{Bench: &verdict.Bench{}, asked: asked}
	for _, p := range w.Words {
		v, err := strconv.ParseFloat(strings.Replace(strings.TrimRight(p.Right, " %"), ",", ".", 1), 64)
		if p.Note != nil || err != nil || asked[p.RightAt] || !anyLetter.MatchString(p.Text) { // beside a number stands its unit
			continue
		}
		text := texts[row{p.At.File, p.At.Sheet, p.At.Row}]
		switch own := p.Text; {
		case rowHLB.MatchString(text), !otherMeasure.MatchString(text) && !rowFat.MatchString(text) && onOwnSheet(w, p.At) && len(numbersBeside(w, p)) == 1:
			if i, ok := namedIn(own, text, ingredient.Emulsifier); ok && i.HLB != nil && foreignTo(v, i.HLB) && v > 0 {
				j.Out = append(j.Out, j.constant(p.RightAt, v, fmt.Sprintf("HLB %s is written for %s, where %s is usual. Whose value is it, or did a finger slip?", verdict.Num(v), i.Name, verdict.Num(i.HLB.Value)), i.HLB.Value))
			}
		case ownPercent.MatchString(own): // "butter (82 % fat) | 35": its share of a recipe
		case rowFat.MatchString(text):
			if i, ok := namedIn(own, text, ingredient.Fat); ok && i.FatPercent != nil && v > 1 && v <= 100 && (v < i.FatPercent.Low-far || v > i.FatPercent.High+far) {
				j.Out = append(j.Out, j.constant(p.RightAt, v, fmt.Sprintf("%s %% fat is written for %s, where %s %% is usual. Is it by the packet, or did a finger slip?", verdict.Num(v), i.Name, verdict.Num(i.FatPercent.Value)), i.FatPercent.Value))
			}
		}
	}
	return j.Out
}

var (
	ownPercent   = pattern.Of(`(?i)\d\s*(?:%|per ?cent)\s*(?:of )?fat\b`)
	rowHLB       = pattern.Of(`(?i)\bhlb\b`)
	otherMeasure = pattern.Of(`(?i)(\d\s*(g|mg|kg|ml|min|%)\b|\b(g|grams?|mg|kg|ml|min|minutes|hold|held|stood|price|cost|dose|per|%|percent|limit|max|total|sum|chargers?|°c|temp\w*|pack|bag)\b|[%€$£])`)
	rowFat       = pattern.Of(`(?i)\bfat\b.*(%|per ?cent|100)|(%|per ?cent|100).*\bfat\b|\bfat (in|of)\b`)
	anyWord      = pattern.Of(`[\p{L}\d]+`)
	anyLetter    = pattern.Of(`\pL`)
)

// onOwnSheet reports a place on a sheet without trials.
func onOwnSheet(w *handin.Work, at trial.Place) bool {
	return at.Sheet != "" && !slices.ContainsFunc(w.Tables, func(t *handin.Table) bool { return t.At.Sheet == at.Sheet })
}

// numbersBeside are the numbers of a phrase's own row.
func numbersBeside(w *handin.Work, p handin.Phrase) (out []handin.Cell) {
	for _, r := range w.Rest {
		if r.At.File == p.At.File && r.At.Sheet == p.At.Sheet && r.At.Row == p.At.Row {
			for _, c := range r.Cells {
				if c.Known {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// namedIn is the ingredient of a kind that a label, or else its row, names by most words.
func namedIn(label, row string, kind ingredient.Kind) (found ingredient.Ingredient, ok bool) {
	for _, text := range []string{label, row} {
		words := anyWord.FindAllString(text, -1)
		for n := 3; n >= 1; n-- {
			for k := 0; k+n <= len(words); k++ {
				if i, known := ingredient.Lookup(strings.Join(words[k:k+n], " ")); known && i.Kind == kind && !strings.EqualFold(words[k], "fat") && !strings.EqualFold(words[k], "hlb") {
					return i, true
				}
			}
		}
	}
	return found, false
}

// far is how far a fat percent may be from what is known and still be a packet's.
const far = 8.0

// otherFats asks of fat percents that are far from what is known of an ingredient.
func (j *job) otherFats(w *handin.Work) {
	for _, col := range j.Table.Weighed() {
		st, ok := statedOf(w, col)
		usual, known := usualOf(col)
		if !ok || st.Fat == nil || j.asked[st.At] || !known || usual.FatPercent == nil || usual.Kind != ingredient.Fat {
			continue
		}
		if r := usual.FatPercent; *st.Fat < r.Low-far || *st.Fat > r.High+far {
			j.Out = append(j.Out, j.constant(st.At, *st.Fat, fmt.Sprintf("%s %% fat is written for %s, where %s %% is usual. Is it by the packet, or did a finger slip?", verdict.Num(*st.Fat), col.Header, verdict.Num(r.Value)), r.Value))
		}
	}
}

// constant is a finding on a value that is written for an ingredient.
func (j *job) constant(at trial.Place, typed float64, words string, right float64) finding.Found {
	j.asked[at] = true
	f := finding.New(criteria.Record, graded.Record, words, at).Kinds("another constant").ShouldBe(right)
	f.Typed = graded.Num(typed)
	return f
}

// usualOf is what is known here of the ingredient of a column, whatever the work says.
func usualOf(col *handin.Column) (i ingredient.Ingredient, ok bool) {
	what := &col.Field.What
	for _, name := range []string{what.Known, what.Name, col.Field.Called()} {
		if i, ok := ingredient.Lookup(name); ok && name != "" && i.Kind == what.Kind {
			return i, true
		}
	}
	return i, false
}

func foreignTo(hlb float64, r *ingredient.Range) bool {
	return hlb < r.Low-foreign || hlb > r.High+foreign
}

// slipOf reports two numbers of which one is the other with two figures exchanged, or with
// its point moved.
func slipOf(typed, meant float64) bool {
	for _, f := range []float64{10, 0.1, 100, 0.01} {
		if math.Abs(typed*f-meant) < 1e-9 {
			return true
		}
	}
	a, b := verdict.Num(typed), verdict.Num(meant)
	if len(a) != len(b) || a == b {
		return false
	}
	for i := range a {
		for k := i + 1; k < len(a); k++ {
			if a[i] == b[k] && a[k] == b[i] && a[:i]+a[i+1:k]+a[k+1:] == b[:i]+b[i+1:k]+b[k+1:] {
				return true
			}
		}
	}
	return false
}

// reckonedWith is the HLB of one emulsifier that the blends of a table agree with, where it
// is not the one that is written: usual, or the written one with a slip of the finger.
func (j *job) reckonedWith(k int, written float64, usual ingredient.Ingredient) (with float64, ok bool) {
	tries := []float64{10 * written, written / 10}
	if usual.HLB != nil {
		tries = append([]float64{usual.HLB.Value, usual.HLB.Low, usual.HLB.High}, tries...)
	}
	for _, col := range j.Table.All(column.BlendHLB) {
		asWritten := j.blendsWith(col, k, written)
		for _, v := range append(tries, j.literals(col, k, usual.HLB == nil)...) {
			if n := j.blendsWith(col, k, v); n >= 2 && n > 2*asWritten && 2*n > col.Known() && v <= ingredient.MostHLB {
				return v, true
			}
		}
	}
	return 0, false
}

var literal = pattern.Of(`(?:^|[*(+,; ])(\d{1,2}(?:\.\d+)?)(?:[*)+,; ]|$)`)

// literals are HLBs that the blends may reckon with for one emulsifier: the numbers of their
// formulas and, where nothing is known of its grade, what the typed blends come to.
func (j *job) literals(col *handin.Column, k int, anyGrade bool) (out []float64) {
	for i, c := range col.Cells {
		if c.Formula != "" {
			for _, m := range literal.FindAllStringSubmatch(strings.ReplaceAll(c.Formula, "*", " * "), -1) {
				if v, err := strconv.ParseFloat(m[1], 64); err == nil && v > 0 && v <= ingredient.MostHLB && !has(out, v) {
					out = append(out, v)
				}
			}
			continue
		}
		m := &j.mixes[i][0]
		if !anyGrade || !c.Known || m.Parts[k].Grams <= 0 {
			continue
		}
		sum, rest, known := 0.0, 0.0, true
		for n := range m.Parts {
			p := &m.Parts[n]
			if p.Grams <= 0 || !mixture.IsEmulsifier(p) {
				continue
			}
			sum += p.Grams
			if n != k && p.HLB != nil {
				rest += p.Grams * p.HLB.Value
			} else if n != k {
				known = false
			}
		}
		if v := math.Round((c.Value*sum - rest) / m.Parts[k].Grams); known && v > 0 && v <= ingredient.MostHLB && !has(out, v) && len(out) < 6 {
			out = append(out, v)
		}
	}
	return out
}

// blendsWith counts the blends that are right with one emulsifier's HLB as given.
func (j *job) blendsWith(col *handin.Column, k int, hlb float64) (n int) {
	for i, c := range col.Cells {
		m := &j.mixes[i][0]
		if h, ok := mixture.BlendOf(m, map[string]float64{m.Parts[k].Name: hlb}); ok && c.Known && math.Abs(h-c.Value) <= max(c.Half, 0.011)+1e-6 && m.Parts[k].Grams > 0 {
			n++
		}
	}
	return n
}

// setHLB takes an emulsifier's HLB as the work's blends do, in all trials.
func (j *job) setHLB(k int, hlb float64) {
	for i := range j.mixes {
		for n := range j.mixes[i] {
			a := verdict.Exactly(hlb)
			j.mixes[i][n].Parts[k].HLB = &a
		}
	}
}

// otherFat asks of a fat percent that a line gives for an ingredient, where the fat percents
// of nearly all trials are those of another.
func (j *job) otherFat(w *handin.Work) {
	for _, s := range j.worked() {
		if s.Col.Role != column.FatPercent || len(j.mixes) < 3 {
			continue
		}
		for k, col := range j.Table.Weighed() {
			st, stated := statedOf(w, col)
			if at := st.At; !stated || st.Fat == nil || j.asked[at] || j.fits(s, k, j.mixes[0][0].Parts[k].Fat.Value) > 0 {
				continue
			}
			if with, ok := j.solvedFat(s, k); ok {
				was := j.mixes[0][0].Parts[k].Fat.Value
				if with > 99.5 && was < 97 || j.otherPart(k, with) {
					return // no other constant: all of it was taken for fat, or it was counted like another part
				}
				f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("%s %% fat is written for %s, and your fat percents are those of %s %%. Which is it?", verdict.Num(was), col.Header, verdict.Num(with)), st.At).Kinds("another constant").ShouldBe(with)
				f.Typed = graded.Num(was)
				j.Out = append(j.Out, f)
				j.asked[st.At] = true
				j.setFat(k, with)
				return
			}
		}
	}
}

// unsaidFat takes the fat of the one ingredient of which nobody says it from the fat percents of the
// table, where nearly all of them agree on one: what does not is asked.
func (j *job) unsaidFat() {
	unsaid := -1
	for k := range j.Table.Weighed() {
		if len(j.mixes) < 4 || !math.IsNaN(j.mixes[0][0].Parts[k].Fat.Value) {
			continue
		}
		if unsaid >= 0 {
			return
		}
		unsaid = k
	}
	cols := slices.DeleteFunc(j.Table.All(column.FatPercent), func(c *handin.Column) bool { return c.Field == nil || c.Field.InGrams })
	if unsaid < 0 || len(cols) != 1 {
		return
	}
	s := verdict.Sum{Col: cols[0], Expect: func(i int) (verdict.Expected, bool) { return j.fat(i, false) }}
	if with, ok := j.solvedFat(s, unsaid); ok && s.Col.Known() >= 4 {
		j.setFat(unsaid, with)
		j.unsaid = true
	}
}

// otherPart reports a fat percent that is another ingredient's, nearly.
func (j *job) otherPart(k int, fat float64) bool {
	for n := range j.mixes[0][0].Parts {
		p := &j.mixes[0][0].Parts[n]
		if n != k && !mixture.IsEmulsifier(p) && p.Fat.Value > 0 && math.Abs(p.Fat.Value-fat) <= 1 {
			return true
		}
	}
	return false
}

// fits counts the trials whose fat percent is right with one ingredient's fat as given.
func (j *job) fits(s verdict.Sum, k int, fat float64) (n int) {
	for i, c := range s.Col.Cells {
		m := j.mixes[i][0].Having(k, j.mixes[i][0].Parts[k].Grams)
		m.Parts[k].Fat = verdict.Exactly(fat)
		kept := j.mixes[i]
		j.mixes[i] = []mixture.Mixture{m}
		if e, ok := s.Expect(i); ok && c.Known && m.Parts[k].Grams > 0 {
			e.Within = max(1.05*c.Half, c.Rounded(), 0.05)
			if verdict.CloseToRight(c.Value, e) {
				n++
			}
		}
		j.mixes[i] = kept
	}
	return n
}

// solvedFat is the fat percent of one ingredient that makes nearly all cells right.
func (j *job) solvedFat(s verdict.Sum, k int) (fat float64, ok bool) {
	known := s.Col.Known()
	best := 0
	for half := 2; half <= 200; half++ {
		if n := j.fits(s, k, float64(half)/2); n > best {
			best, fat = n, float64(half)/2
		}
	}
	if j.fits(s, k, 100) == best { // of values that do alike, all of it taken for fat is the likely one
		fat = 100
	}
	return fat, best >= 3 && best >= known-1
}

// setFat takes an ingredient's fat as the student did, in all trials.
func (j *job) setFat(k int, fat float64) {
	for i := range j.mixes {
		for n := range j.mixes[i] {
			j.mixes[i][n].Parts[k].Fat = verdict.Exactly(fat)
		}
	}
}
