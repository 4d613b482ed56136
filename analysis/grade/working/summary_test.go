package working

import (
	"slices"
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
