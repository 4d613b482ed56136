package ingest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/trial"
)

// coloured writes a log of six trials without a column on coming out, each coloured as asked:
// its number, or all of its row. A legend is cells by name, "A10": colour and text.
func coloured(t *testing.T, whole bool, colours []string, legend map[string][2]string) *trial.Log {
	t.Helper()
	f := excelize.NewFile()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	paint := func(from, to, colour string) {
		if colour == "" {
			return
		}
		style, err := f.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}})
		must(err)
		must(f.SetCellStyle("Sheet1", from, to, style))
	}
	row := []any{"trial", "oil % of mix", "emulsifier % of mix", "HLB", "hold min", "drained % at 10 min"}
	must(f.SetSheetRow("Sheet1", "A3", &row))
	for i, colour := range colours {
		n := i + 4
		row := []any{i + 1, 45 + 5*(i%4), 2.5, 8, 15 + i, 12 - i}
		if i == 1 {
			row = row[:4]
		}
		must(f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", n), &row))
		to := "A"
		if whole {
			to = "F"
		}
		paint(fmt.Sprintf("A%d", n), fmt.Sprintf("%s%d", to, n), colour)
	}
	for cell, says := range legend {
		paint(cell, cell, says[0])
		if says[1] != "" {
			must(f.SetCellStr("Sheet1", cell, says[1]))
		}
	}
	path := filepath.Join(t.TempDir(), "log.xlsx")
	must(f.SaveAs(path))
	log, err := Read([]string{path}, Options{})
	must(err)
	accounts(t, log)
	return log
}

// TestColours: results that only the colour of a trial tells, as a legend on the sheet
// explains it.
func TestColours(t *testing.T) {
	const green, yellow, red, orange, grey, blue = "C6EFCE", "FFFF00", "FFC7CE", "F4B084", "D9D9D9", "BDD7EE"
	colours := []string{green, red, yellow, orange, grey, blue}
	const read = "yes no partly yes/split aside yes/over"
	for _, c := range []struct {
		name   string
		whole  bool
		legend map[string][2]string
		want   string
	}{
		{"cells of the colour, below", true, map[string][2]string{"A12": {green, "came out"}, "A13": {red, "clogged"}, "A14": {yellow, "came out partly"}, "A15": {orange, "split"}, "A16": {grey, "do not count"}, "A17": {blue, "still standing"}}, read},
		{"swatches to the right", true, map[string][2]string{"I4": {green, ""}, "J4": {"", "came out"}, "I5": {red, ""}, "J5": {"", "clogged"}, "I6": {yellow, ""}, "J6": {"", "partly"}, "I7": {orange, ""}, "J7": {"", "split"}, "I8": {grey, ""}, "J8": {"", "void"}, "I9": {blue, ""}, "J9": {"", "still standing when we stopped"}}, read},
		{"in words, above", false, map[string][2]string{"A1": {"", "Green = came out, red = clogged, yellow = partly, orange = split; grey: does not count; blue = still standing"}}, read},
		{"in German", false, map[string][2]string{"A1": {"", "Farben: grün = kam raus, rot = verstopft, gelb = teilweise, orange = getrennt, grau = nicht werten, blau = stand noch"}}, read},
		{"with a reason", true, map[string][2]string{"A12": {green, "came out"}, "A13": {red, "clogged"}, "A14": {yellow, "came out partly"}, "A15": {orange, "split"}, "A16": {grey, "does not count: leaking head or wrong weights"}, "A17": {blue, "still standing"}}, read},
		{"the reason first", true, map[string][2]string{"A12": {green, "came out"}, "A13": {red, "clogged"}, "A14": {yellow, "came out partly"}, "A15": {orange, "split"}, "A16": {grey, "scale was wrong – do not count"}, "A17": {blue, "still standing"}}, read},
		{"a verb without its part", false, map[string][2]string{"A1": {"", "green = came out, red = clogged, yellow = came in part, orange = split; grey: does not count; blue = still standing"}}, read},
		{"no legend", true, nil, "yes none yes yes yes yes"},
		{"a legend of something else", false, map[string][2]string{"A1": {"", "green = Bo, red = Cleo, yellow = Tom"}}, "yes none yes yes yes yes"},
		{"one not understood", false, map[string][2]string{"A1": {"", "red = clogged, yellow = check again"}}, "yes no yes yes yes yes"},
		{"a word too many", false, map[string][2]string{"A1": {"", "red = clogged or burnt, yellow = partly"}}, "yes none partly yes yes yes"},
	} {
		log := coloured(t, c.whole, colours, c.legend)
		var got []string
		for i := range log.Trials {
			x := &log.Trials[i]
			one := map[trial.Answer]string{trial.Unknown: "none", trial.Yes: "yes", trial.Partly: "partly", trial.No: "no"}[x.CameOut]
			if x.Broke == trial.Yes {
				one += "/split"
			}
			if x.Hold != nil && x.Hold.High > x.Hold.Low {
				one += "/over"
			}
			if strings.Contains(x.Aside, "colour") {
				one = "aside"
			}
			got = append(got, one)
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
		i, _ := findKind(log, "colours read")
		if (i >= 0) != strings.ContainsAny(strings.Join(got, ""), "/") && (i >= 0) != (c.name == "one not understood" || c.name == "a word too many") {
			t.Errorf("%s: what was read of colours is said: %v", c.name, i >= 0)
		}
	}
}

// TestColoursAnswer: empty cells below a question, of which a legend says which colour is yes.
func TestColoursAnswer(t *testing.T) {
	const green, yellow, red = "C6EFCE", "FFEB9C", "FFC7CE"
	for legend, want := range map[string]string{
		"green = yes, yellow = partly, red = no": "yes partly no", "grün ja, rot nein": "yes yes no", "green: came out; yellow: came out in part; red: clogged": "yes partly no",
		"green = good day, red = bad day": "yes yes none",
	} {
		f := excelize.NewFile()
		for r, row := range [][]any{{legend}, {}, {"trial", "oil % of mix", "emulsifier % of mix", "HLB", "came out", "hold min"}, {1, 45, 2.5, 8, nil, 20}, {2, 45, 2, 8, nil, 17}, {3, 50, 2.5, 8, nil, nil}} {
			if err := f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", r+1), &row); err != nil {
				t.Fatal(err)
			}
		}
		for i, colour := range []string{green, yellow, red} {
			style, err := f.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}})
			if err == nil {
				err = f.SetCellStyle("Sheet1", fmt.Sprintf("E%d", i+4), fmt.Sprintf("E%d", i+4), style)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		path := filepath.Join(t.TempDir(), "log.xlsx")
		if err := f.SaveAs(path); err != nil {
			t.Fatal(err)
		}
		log, err := Read([]string{path}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for i := range log.Trials {
			got = append(got, map[trial.Answer]string{trial.Unknown: "none", trial.Yes: "yes", trial.Partly: "partly", trial.No: "no"}[log.Trials[i].CameOut])
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%q: %s, want %s", legend, s, want)
		}
	}
}
