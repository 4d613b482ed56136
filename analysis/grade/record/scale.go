package record

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// A score has a scale, which its head says, or one line of the work for all scores.

var (
	fromTo  = pattern.Of(`(?i)(?:^|[\s(\[,;:])([01])\s*(?:-|–|—|to|bis|à|a|tot|\.{2,3}|…)\s*(\d{1,3})(?:$|[\s)\],;.])`)
	outOf   = pattern.Of(`(?i)(?:\bout of|\bof|/|\bsur|\bvon|\bsu|\bsobre)\s*(\d{1,3})(?:$|[\s)\],;.])`)
	anchors = pattern.Of(`(\d{1,3})\s*=\s*\pL`)
	inUnit  = pattern.Of(`(?i)(%|°|\b(?:g|grams?|kg|mg|ml|l|oz|min|mins|minutes?|h|hours?|s|sec|percent|hlb|bar|mm|cm)\b)`)
	ofScore = pattern.Of(`(?i)\b(?:scores?|scored|points?|marks?|ratings?|rated|scale|stars?|noten?|punkte|puntos|punti|points|cijfers?)\b`)
)

// scaleIn is the least and the most of a scale that a text says; false where it says none.
func scaleIn(text string) (low, high float64, ok bool) {
	if inUnit.MatchString(text) {
		return 0, 0, false
	}
	text = strings.ReplaceAll(text, "_", " ")
	if m := fromTo.FindStringSubmatch(text); m != nil {
		low, _ = strconv.ParseFloat(m[1], 64)
		high, _ = strconv.ParseFloat(m[2], 64)
		return low, high, high >= 2
	}
	if all := anchors.FindAllStringSubmatch(text, -1); len(all) >= 2 {
		for i, m := range all {
			v, _ := strconv.ParseFloat(m[1], 64)
			if i == 0 {
				low, high = v, v
			}
			low, high = min(low, v), max(high, v)
		}
		return low, high, low <= 1 && high >= 2
	}
	if m := outOf.FindStringSubmatch(text); m != nil {
		high, _ = strconv.ParseFloat(m[1], 64)
		return 0, high, high >= 2
	}
	return 0, 0, false
}

// offScale asks of a score that its scale does not have.
func (r *reader) offScale(w *handin.Work, t *handin.Table) {
	for _, col := range t.Columns {
		scored := col.Role == column.Score || col.Role == column.Mouthfeel
		if !scored && col.Role != column.None && col.Role != column.Unused && col.Role != column.Result {
			continue
		}
		low, high, ok := scaleIn(col.Whole)
		if !ok && (scored || ofScore.MatchString(col.Whole)) && !inUnit.MatchString(col.Whole) {
			low, high, ok = scaleSaid(w)
		}
		if !ok {
			continue
		}
		within := 0
		for _, c := range col.Cells {
			if c.Known && c.Value >= low && c.Value <= high {
				within++
			}
		}
		for _, c := range col.Cells {
			if !c.Known || c.Value >= low && c.Value <= high || 3*within < 2*col.Known() || r.said[c.At] {
				continue
			}
			r.add(notOnScale(c, low, high), c.At)
		}
	}
}

func notOnScale(c handin.Cell, low, high float64) finding.Found {
	return about(fmt.Sprintf("%s is not on the scale, which goes from %s to %s. What was it?", num(c.Value), num(low), num(high)), c, "impossible value")
}

// offScaleOfMean asks of marks that the scale in the header of their mean, "mean of the tasters (1 to 9)", does
// not go to; the table of them is none of trials.
func (r *reader) offScaleOfMean(w *handin.Work) {
	var mean handin.Cell // the header
	var low, high float64
	var marks []handin.Cell
	judge := func() {
		within := 0
		for _, c := range marks {
			if c.Value >= low && c.Value <= high {
				within++
			}
		}
		for _, c := range marks {
			if (c.Value < low || c.Value > high) && 3*within >= 2*len(marks) && !r.said[c.At] {
				r.add(notOnScale(c, low, high), c.At)
			}
		}
		marks = nil
	}
	for _, row := range w.Rest {
		if row.At.File != mean.At.File || row.At.Sheet != mean.At.Sheet {
			judge()
			mean = handin.Cell{}
		}
		for _, c := range row.Cells {
			if l, h, said := scaleIn(c.Text); said && c.Kind == sheet.Text && saysMean.MatchString(c.Text) {
				judge()
				mean, low, high = c, l, h
			}
		}
		at := slices.IndexFunc(row.Cells, func(c handin.Cell) bool { return mean.At.Col > 0 && c.At.Col == mean.At.Col && c.Formula != "" })
		if at < 0 {
			continue
		}
		for _, c := range row.Cells {
			if c.Known && c.At != row.Cells[at].At && takesIn(row.Cells[at].Formula, c.At) {
				marks = append(marks, c)
			}
		}
	}
	judge()
}

// takesIn reports a formula over cells of one row, B4:F4, that a place is among.
func takesIn(formula string, at trial.Place) bool {
	m := rowRange.FindStringSubmatch(formula)
	if m == nil || m[2] != strconv.Itoa(at.Row) || m[4] != m[2] {
		return false
	}
	from, _ := excelize.ColumnNameToNumber(m[1])
	to, _ := excelize.ColumnNameToNumber(m[3])
	return from <= at.Col && at.Col <= to
}

var (
	saysMean = pattern.Of(`(?i)\b(?:mean|average|avg|moyenne|media|promedio|mittel(?:wert)?|schnitt|gemiddelde?)\b|ø`)
	rowRange = pattern.Of(`\b\$?([A-Z]{1,2})\$?(\d+):\$?([A-Z]{1,2})\$?(\d+)\b`)
)

// scaleSaid is the scale of the one line that says one of scores.
func scaleSaid(w *handin.Work) (low, high float64, ok bool) {
	n := 0
	for _, p := range w.Words {
		if p.Note != nil || !ofScore.MatchString(p.Text) {
			continue
		}
		if l, h, said := scaleIn(p.Text + " " + p.Right); said {
			low, high, n = l, h, n+1
		}
	}
	return low, high, n == 1
}
