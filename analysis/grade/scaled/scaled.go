// Package scaled holds a recipe for more siphons, or fewer, against that for one: every weight is
// so many times the one beside it, but for its last digit.
package scaled

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Check finds weights that are another number of times their own than those above and below them.
func Check(w *handin.Work) (out []finding.Found) {
	for _, l := range listsOf(w) {
		for k := 1; k < len(l.rows[0].grams); k++ {
			out = append(out, l.off(k)...)
		}
	}
	return out
}

// list is a list of ingredients with two columns of weights and more.
type list struct {
	heads []string // of the columns of weights, with the titles right above them
	rows  []row
}

// row is one ingredient.
type row struct {
	name  string
	grams []handin.Cell
}

var total = pattern.Of(`(?i)^\s*(total|sum|altogether|together|all (?:in|together)|whole (?:mix|batch)|summe|gesamt|somme|suma|somma|totale|totaal|som)\b`)

// listsOf are the lists among what is no trial: rows below each other with one name and as many
// numbers in the same columns, most of the names known.
func listsOf(w *handin.Work) (out []list) {
	var l list
	title, last := "", trial.Place{}
	flush := func() {
		known := 0
		for _, r := range l.rows {
			if _, ok := ingredient.Lookup(r.name); ok {
				known++
			}
		}
		if len(l.rows) >= 4 && 2*known >= len(l.rows) {
			out = append(out, l)
		}
		l = list{}
	}
	for _, r := range w.Rest {
		if r.At.File != last.File || r.At.Sheet != last.Sheet || r.At.Row > last.Row+1 {
			flush()
			if r.At.File != last.File || r.At.Sheet != last.Sheet {
				title = ""
			}
		}
		last = r.At
		var texts, numbers []handin.Cell
		for _, c := range r.Cells {
			if c.Known {
				numbers = append(numbers, c)
			} else if c.Kind == sheet.Text {
				texts = append(texts, c)
			}
		}
		switch {
		case len(numbers) == 0:
			flush()
			if len(texts) == 1 {
				title = texts[0].Text
			}
			for _, c := range texts[min(1, len(texts)):] {
				l.heads = append(l.heads, title+" "+c.Text)
			}
		case len(texts) != 1 || len(numbers) < 2 || len(l.rows) > 0 && !slices.EqualFunc(numbers, l.rows[0].grams, func(a, b handin.Cell) bool { return a.At.Col == b.At.Col }):
			flush()
		case !total.MatchString(texts[0].Text):
			l.rows = append(l.rows, row{texts[0].Text, numbers})
		}
	}
	flush()
	return out
}

// off are the weights of a column that are not as many times those of the first as most are.
func (l *list) off(k int) (out []finding.Found) {
	times, n := 0.0, 0
	for _, r := range l.rows {
		if r.grams[0].Value <= 0 {
			continue
		}
		t := r.grams[k].Value / r.grams[0].Value
		if near := math.Round(t); near > 0 && math.Abs(t-near) < 0.02*near { // 677 of 169.2 is four times
			t = near
		}
		if agree := l.agree(k, t); agree > n {
			times, n = t, agree
		}
	}
	if n < 3 || n == len(l.rows) || 3*(len(l.rows)-n) > n || math.Abs(times-1) < 0.02 {
		return nil
	}
	for _, r := range l.rows {
		if !isTimes(r, k, times) {
			out = append(out, l.found(r, k, times))
		}
	}
	return out
}

// agree counts the rows of which a column is so many times the first.
func (l *list) agree(k int, times float64) (n int) {
	for _, r := range l.rows {
		if isTimes(r, k, times) {
			n++
		}
	}
	return n
}

// isTimes reports a weight that is so many times its own, as closely as both are written.
func isTimes(r row, k int, times float64) bool {
	one, all := r.grams[0], r.grams[k]
	return math.Abs(all.Value-times*one.Value) <= all.Half+times*one.Half+1e-6+0.002*all.Value
}

// found is a weight that is off; it is certain where the heads say how many times, and another whole
// number of times is what was typed.
func (l *list) found(r row, k int, times float64) finding.Found {
	one, c := r.grams[0], r.grams[k]
	right := times * one.Value
	sum := fmt.Sprintf("the other rows are %s times: %s × %s = %s", verdict.DigitsOf(times, 2), verdict.DigitsOf(times, 2), verdict.Num(one.Value), verdict.DigitsOf(right, 1))
	words, other := fmt.Sprintf("%s was typed, and %s. How did you get %s?", c.Text, sum, c.Text), math.Round(c.Value/one.Value)
	whole := other > 0 && isTimes(r, k, other)
	if whole {
		words = fmt.Sprintf("%s is %s times %s; %s", c.Text, verdict.Num(other), verdict.Num(one.Value), sum)
	}
	f := finding.Of(criteria.Means, graded.Calculation, words, c).ShouldBe(right)
	f.Certain = whole && l.says(k, times)
	if whole && !f.Certain {
		f.Words += ". Which did you mean?"
	}
	return f
}

var number = pattern.Of(`\d+(?:[.,]\d+)?`)

// says reports a number of times in the head of a column, or in the title above it.
func (l *list) says(k int, times float64) bool {
	if k >= len(l.heads) {
		return false
	}
	return slices.ContainsFunc(number.FindAllString(l.heads[k], -1), func(text string) bool {
		v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		return err == nil && v == times
	})
}
