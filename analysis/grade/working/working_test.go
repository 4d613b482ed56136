package working

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// logOf is a work of trials K1, K2 and so on with holds, and with blends where they are given.
func logOf(holds, blends string) *desk {
	table := &handin.Table{At: trial.Place{Sheet: "log"}}
	hold := &handin.Column{Header: "hold (min)", Role: column.Hold}
	hlb := &handin.Column{Header: "HLB", Role: column.BlendHLB}
	parts := []*handin.Column{{Header: "butter g", Role: column.IngredientAmount, Field: &scheme.Field{}}, {Header: "water g", Role: column.IngredientAmount, Field: &scheme.Field{}}}
	for _, p := range parts {
		p.Field.InGrams = true
	}
	of := strings.Fields(blends)
	for i, text := range strings.Fields(holds) {
		hold.Cells = append(hold.Cells, typedCell(text))
		table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{ID: "K" + strconv.Itoa(i+1)}, Index: i, Table: table})
		if len(of) > 0 {
			hlb.Cells = append(hlb.Cells, typedCell(of[i]))
		}
		for _, p := range parts {
			p.Cells = append(p.Cells, typedCell("100"))
		}
	}
	table.Columns = append(parts, hold)
	if len(of) > 0 {
		table.Columns = append(table.Columns, hlb)
	}
	return &desk{Trials: &evidence.Trials{Work: &handin.Work{Tables: []*handin.Table{table}}}}
}

// typedCell is a cell as it is typed: a number, or a hold that is only known to be longer.
func typedCell(text string) handin.Cell {
	v, half := numberIn(strings.TrimPrefix(text, ">"))
	switch {
	case strings.HasPrefix(text, ">"):
		return handin.Cell{Kind: sheet.Text, Text: text, Low: v, High: math.Inf(1)}
	case v > 0:
		return handin.Cell{Kind: sheet.Number, Text: text, Value: v, Low: v, High: v, Half: half, Known: true, Scale: 1}
	}
	return handin.Cell{Kind: sheet.Text, Text: text, Low: math.Inf(-1), High: math.Inf(1)}
}

// TestLabelledMeans: a mean beside a label that names its trials, with one of them still standing and
// without.
func TestLabelledMeans(t *testing.T) {
	for _, c := range []struct {
		label, typed, holds string
		asked               bool
	}{
		{"mean hold, K2-K4", "15", "3 14 15 16", false},
		{"mean hold, K2-K4", "12", "3 14 15 16", true}, // of all four
		{"mean of K2 to K4 (min)", "16", "3 14 15 16", true},
		{"Mittel K2, K3 und K4", "15", "3 14 15 16", false},
		{"average of trials 2-3-4", "15", "3 14 15 16", false},
		{"media, prove 2-3-4", "16", "3 14 15 16", true},
		{"moyenne essais 2, 3, 4", "15", "3 14 15 16", false},
		{"mean hold (K2, K3)", "19", "3 18 >20", true},
		{"mean hold (K2, K3), at least", "19", "3 18 >20", false},
		{"mean hold (K2, K3)", "17", "3 18 >20", false}, // nobody can say how
		{"mean hold at 2-4 % (K2, K3)", "14.5", "3 14 15 16", false},
	} {
		d := logOf(c.holds, "")
		for i, x := range d.Work.Trials() {
			if strings.Contains(c.label, "2-3-4") || strings.Contains(c.label, "2, 3, 4") {
				x.ID = strconv.Itoa(i + 1)
			}
		}
		if d.labelled(c.label, typedCell(c.typed)); len(d.out) > 0 != c.asked {
			t.Errorf("%s: %s of %s: %v", c.label, c.typed, c.holds, len(d.out) > 0)
		}
	}
}

// TestUnderTitle: means below a title of their own, beside what their trials have in common.
func TestUnderTitle(t *testing.T) {
	for _, c := range []struct {
		title, label, typed string
		asked               bool
	}{
		{"mean hold of the two makings, min", "HLB 8", "12", false},
		{"mean hold of the two makings, min", "HLB 8", "13", true},
		{"mean hold of the two makings, min", "HLB 10", "19", true}, // one still stood
		{"mean hold of the two makings, min", "K1, K2", "13", true},
		{"mean hold of the two makings, min", "HLB 9", "13", false}, // no such trials
		{"hold of the two makings, min", "HLB 8", "13", false},      // a mean is not said
	} {
		d := logOf("11 13 18 >20", "8 8 10 10")
		row := func(n int, cells ...handin.Cell) handin.Row {
			r := handin.Row{At: trial.Place{Sheet: "means", Row: n}, Label: cells[0].Text}
			for i, x := range cells {
				x.At = trial.Place{Sheet: "means", Row: n, Col: i + 1}
				r.Cells = append(r.Cells, x)
			}
			return r
		}
		d.Work.Rest = []handin.Row{row(4, handin.Cell{Kind: sheet.Text, Text: c.title}), row(5, handin.Cell{Kind: sheet.Text, Text: c.label}, typedCell(c.typed))}
		if got := Check(d.Trials, d.rules); len(got) > 0 != c.asked {
			t.Errorf("%s: %s: %s: %v", c.title, c.label, c.typed, got)
		}
	}
}
