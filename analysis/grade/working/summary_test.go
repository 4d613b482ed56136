package working

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestStatisticOf: what heads say of numbers; "min" behind a word is the unit.
func TestStatisticOf(t *testing.T) {
	for head, want := range map[string]statistic{
		"Mean stand (min)": theMean, "mean stays min": theMean, "Ø Haltezeit": theMean, "average of both": theMean,
		"Shortest (min)": theLeast, "Min held (min)": theLeast, "lowest drained %": theLeast,
		"Longest (min)": theMost, "max held": theMost, "Range stand (min)": theRange, "spread (min)": theRange, "min-max": theRange, "mean_stand_min": theMean, "longest_min": theMost,
		"median (min)": theMiddle, "hold, median": theMiddle, "médiane (min)": theMiddle,
		"Spanne (min)": theRange, "étendue (min)": theRange, "Écart (min)": theRange, "intervallo (min)": theRange, "rango (min)": theRange, "spreiding (min)": theRange, "von - bis": theRange,
		"kürzeste (min)": theLeast, "plus courte tenue": theLeast, "mínimo (min)": theLeast, "kortste (min)": theLeast, "längste (min)": theMost, "la più lunga (min)": theMost, "máximo (min)": theMost,
		"Anzahl": theCount, "nombre d'essais": theCount, "aantal proeven": theCount, "mediaan (min)": theMiddle, "durchschnittliche Standzeit": theMean, "gemiddelde (min)": theMean, "mittlere Tenue": theMean,
		"Mindestalter": noStatistic, "Maxima": noStatistic, "Nummer": noStatistic, "Intervention": noStatistic,
		"n": theCount, "runs": theCount, "how many": theCount,
		"Stand (min)": noStatistic, "Fat (%)": noStatistic, "Mix": noStatistic, "trials": noStatistic,
	} {
		if got, _ := statisticOf(head); got != want {
			t.Errorf("%q: %v, want %v", head, got, want)
		}
	}
}

// TestRowOf: how rows of a summary name trials.
func TestRowOf(t *testing.T) {
	table := &handin.Table{}
	id := &handin.Column{Header: "nr", Role: column.TrialID}
	fat := &handin.Column{Header: "fat %", Role: column.FatPercent}
	for i, name := range []string{"1", "2", "3", "4", "B1"} {
		table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{ID: name}, Index: i, Table: table})
		id.Cells = append(id.Cells, handin.Cell{Text: name, Kind: sheet.Text})
		fat.Cells = append(fat.Cells, handin.Cell{Text: "40", Kind: sheet.Number, Value: []float64{40, 50.2, 50.2, 60, 60}[i], Known: true})
	}
	table.Columns = []*handin.Column{id, fat}
	d := &desk{Trials: &evidence.Trials{Work: &handin.Work{Tables: []*handin.Table{table}}}}
	for _, c := range []struct{ text, want string }{
		{"2, 3", "2 3"}, {"2 and 4", "2 4"}, {"50 % fat (2, 3)", ""}, {"nr 2 to 4", "2 3 4"}, {"1-3", "1 2 3"}, {"trials 1 + 4", "1 4"},
		{"B1", "B1"}, {"2", ""}, {"2, 9", ""}, {"60 % fat", ""}, {"", ""},
	} {
		var got []string
		for _, x := range d.listed(c.text) {
			got = append(got, x.ID)
		}
		if !slices.Equal(got, strings.Fields(c.want)) {
			t.Errorf("%q: %v, want %q", c.text, got, c.want)
		}
	}
}

// TestFamily: the trials that share a name with a number or a letter behind it, and names that are none
// of a family.
func TestFamily(t *testing.T) {
	table := &handin.Table{}
	for i, name := range []string{"01", "02", "A1", "A2", "A3", "B1", "B2", "C1", "C2", "W4", "W4b", "W41"} {
		x := &handin.Trial{Trial: &trial.Trial{ID: name}, Index: i, Table: table}
		if i < 2 {
			x.Note = "control, split"
		}
		table.Trials = append(table.Trials, x)
	}
	d := &desk{Trials: &evidence.Trials{Work: &handin.Work{Tables: []*handin.Table{table}}}}
	for _, c := range []struct{ label, want string }{
		{"A", "A1 A2 A3"}, {"mix B", "B1 B2"}, {"c", "C1 C2"}, {"A (5 + 1 g)", "A1 A2 A3"}, {"W4", "W4 W4b"}, {"0 (control)", "01 02"}, {"control", "01 02"},
		{"A1", ""}, {"D", ""}, {"", ""}, {"what A did", ""}, {"total", ""},
	} {
		var got []string
		for _, x := range d.family(c.label) {
			got = append(got, x.ID)
		}
		if !slices.Equal(got, strings.Fields(c.want)) {
			t.Errorf("%q: %v, want %q", c.label, got, c.want)
		}
	}
}

// TestNumberOf: what a cell says as a number, and how far it is rounded.
func TestNumberOf(t *testing.T) {
	for _, c := range []struct {
		cell    handin.Cell
		v, half float64
		ok      bool
	}{
		{handin.Cell{Known: true, Value: 58, Formula: "ROUND(AVERAGE(B2:B4),0)"}, 58, 0.5, true},
		{handin.Cell{Known: true, Value: 57.7, Formula: "ROUND(AVERAGE(B2:B4),1)"}, 57.7, 0.05, true},
		{handin.Cell{Known: true, Value: 57.667, Formula: "AVERAGE(B2:B4)"}, 57.667, 0, true},
		{handin.Cell{Text: "19.3 min"}, 19.3, 0.05, true},
		{handin.Cell{Text: "ca. 19 min"}, 19, 0.5, true},
		{handin.Cell{Text: "18, 21, 19 min"}, 0, 0, false},
		{handin.Cell{Text: "no mean"}, 0, 0, false},
	} {
		if v, half, ok := numberOf(c.cell); v != c.v || math.Abs(half-c.half) > 1e-9 || ok != c.ok {
			t.Errorf("%+v: %v %v %v", c.cell, v, half, ok)
		}
	}
}

// TestSumUp: what is asked of means, medians and counts of trials of which some still stood.
func TestSumUp(t *testing.T) {
	cell := func(text string) handin.Cell {
		if v, half := numberIn(strings.TrimPrefix(text, ">")); strings.HasPrefix(text, ">") {
			return handin.Cell{Kind: sheet.Text, Text: text, Low: v, High: math.Inf(1)}
		} else if v > 0 {
			return handin.Cell{Kind: sheet.Number, Text: text, Value: v, Low: v, High: v, Half: half, Known: true, Scale: 1}
		}
		return handin.Cell{Kind: sheet.Text, Text: text, Low: math.Inf(-1), High: math.Inf(1)}
	}
	for _, c := range []struct {
		head, text, holds string
		asked             bool
	}{
		{"hold, mean (min)", "18.7", "17 19 >20", true},
		{"hold, mean (min)", "18", "17 19 >20", true},
		{"hold, mean (min)", "at least 18.7 min", "17 19 >20", false},
		{"hold, mean (min)", ">18.7", "17 19 >20", false},
		{"hold, mean (min)", "no mean", "17 19 >20", false},
		{"hold, median (min)", "19", "17 19 >20", false},
		{"hold, median (min)", "18", "17 19 >20", true},
		{"hold, mean (min)", "18", "17 19 18", false},
		{"hold, mean (min)", "18 min", "17 19 18", false},
		{"hold, mean (min)", "19 min", "17 19 18", true},
		{"median hold (min)", "18", "17 19 18", false},
		{"median hold (min)", "17", "17 19 18", true},
		{"longest hold (min)", "18", "17 19 18", true},
		{"runs", "3", "17 19 18", false},
		{"runs", "2", "17 19 18", true},
		{"runs", "2", "17 19 -", false},
	} {
		table := &handin.Table{}
		hold := &handin.Column{Header: "hold (min)", Role: column.Hold}
		for i, text := range strings.Fields(c.holds) {
			hold.Cells = append(hold.Cells, cell(text))
			table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{ID: "A" + strconv.Itoa(i+1)}, Index: i, Table: table})
		}
		table.Columns = []*handin.Column{hold}
		d := &desk{Trials: &evidence.Trials{Work: &handin.Work{Tables: []*handin.Table{table}}}}
		s, _ := statisticOf(c.head)
		d.sumUp(cell(c.text), s, c.head, table.Trials, true)
		if got := len(d.sums) > 0; got != c.asked {
			t.Errorf("%s %s of %s: %v", c.head, c.text, c.holds, got)
		}
	}
}
