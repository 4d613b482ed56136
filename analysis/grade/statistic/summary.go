package statistic

import (
	"fmt"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// Summaries holds tables that sum the trials up against the trials that their rows name:
// "12.2 | 23.7 | W2, W3, W4".
func Summaries(w *handin.Work, meant mixture.Meant) (out []finding.Found) {
	for _, t := range w.Sums {
		for _, col := range t.Columns {
			if unknownRole(col) {
				continue // a longest or a range is looked at with the rows that are no trials
			}
			var off []finding.Found
			agree := 0
			for i := range t.Trials {
				switch f, found := summary(w, col, col.Cells[i], namedIn(w, t, i), meant); found {
				case agrees:
					agree++
				case differs:
					off = append(off, f)
				}
			}
			if len(off) < 2 || agree >= len(off) { // else it is of something else than the trials' own column
				out = append(out, off...)
			}
		}
	}
	return out
}

// held is what came of holding a cell against trials.
type held uint8

const (
	nothing held = iota // to hold it against
	agrees
	differs
)

// namedIn are the trials that the words of a row name, nil where one of them is none.
func namedIn(w *handin.Work, t *handin.Table, i int) (named []*handin.Trial) {
	for _, col := range t.Columns {
		c := col.Cells[i]
		if c.Kind != sheet.Text { // "3, 3" is no number
			continue
		}
		words := strings.FieldsFunc(c.Text, func(r rune) bool { return strings.ContainsRune(" ,;&+/", r) })
		var here []*handin.Trial
		for _, word := range words {
			found := w.ByID(word)
			if len(found) == 0 {
				found = w.Level(word)
			}
			if word == "and" {
				continue
			}
			if len(found) == 0 {
				here = nil
				break
			}
			for _, x := range found { // "3, 3" are the two of that number
				if !slices.Contains(here, x) {
					here = append(here, x)
				}
			}
		}
		if len(here) > len(named) {
			named = here
		}
	}
	return named
}

// summary holds one cell against the mean of the trials that its row names.
func summary(w *handin.Work, col *handin.Column, c handin.Cell, named []*handin.Trial, meant mixture.Meant) (f finding.Found, found held) {
	if !c.Known || len(named) == 0 {
		return f, nothing
	}
	sum, by, n := 0.0, 0.0, 0 // as typed, and as it was meant
	var list, ids []string
	for _, x := range named {
		of := slices.IndexFunc(x.Table.Columns, func(o *handin.Column) bool { return o.Role == col.Role && o.Cells[x.Index].Known && !numericRole(o) })
		if of < 0 {
			return f, nothing
		}
		v := x.Table.Columns[of].Cells[x.Index].Value
		sum, n = sum+v, n+1
		if m, ok := meant[x.Table.Columns[of].Cells[x.Index].At]; ok {
			by += m
		} else {
			by += v
		}
		list, ids = append(list, verdict.Num(v)), append(ids, handin.ShortID(x.ID))
	}
	mean := sum / float64(n)
	if math.Abs(mean-c.Value) <= max(c.Half, 0.051) || math.Abs(by/float64(n)-c.Value) <= max(c.Half, 0.051) {
		return f, agrees
	}
	words := fmt.Sprintf("%s was typed, and the mean of %s is (%s) / %d = %s", verdict.DigitsOf(c.Value, 2), strings.Join(ids, ", "), strings.Join(list, " + "), n, verdict.DigitsOf(mean, 2))
	if of := reckonsWith(w, c); len(of) > 0 {
		words = fmt.Sprintf("%s is the mean of %s, and the row names %s: (%s) / %d = %s", verdict.DigitsOf(c.Value, 2), strings.Join(of, ", "), strings.Join(ids, ", "), strings.Join(list, " + "), n, verdict.DigitsOf(mean, 2))
	}
	f = finding.Of(criteria.Means, graded.Calculation, words, c).ShouldBe(mean)
	f.Certain = c.Formula != ""
	return f, differs
}

var ofSheet = pattern.Of(`(?:'([^']+)'|([A-Za-z0-9_]+))!\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?`)

// reckonsWith are the trials whose cells a formula takes from other sheets.
func reckonsWith(w *handin.Work, c handin.Cell) (ids []string) {
	for _, m := range ofSheet.FindAllStringSubmatch(c.Formula, -1) {
		col, err := excelize.ColumnNameToNumber(m[3])
		from, err2 := strconv.Atoi(m[4])
		to := from
		if m[6] != "" && m[5] == m[3] {
			to, _ = strconv.Atoi(m[6])
		}
		if err != nil || err2 != nil || to-from > 200 {
			return nil
		}
		for row := from; row <= to; row++ {
			if _, x := w.At(trial.Place{File: c.At.File, Sheet: m[1] + m[2], Row: row, Col: col}); x != nil {
				ids = append(ids, handin.ShortID(x.ID))
			}
		}
	}
	return ids
}
