package scaled

import (
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestCheck: recipes with one weight that is another number of times its own, and recipes that are right.
func TestCheck(t *testing.T) {
	for _, c := range []struct {
		rows, want string // the text of what is off, "!" behind it where it is certain
	}{
		{"for 3 tables | | ;what | one | 3 tables;lard | 120.4 | 361;water | 280.2 | 560;GMS | 3.2 | 10;sucrose ester | 1.6 | 5", "560!"},
		{"what | one | party;lard | 120.4 | 361;whole milk | 280.2 | 560;GMS | 3.2 | 10;sucrose ester | 1.6 | 5", "560"},
		{"what | one | 3 tables;lard | 120.4 | 361;water | 280.2 | 855;GMS | 3.2 | 10;sucrose ester | 1.6 | 5", "855"},
		{"what | one | 3 tables;lard | 120.4 | 361;water | 280.2 | 841;GMS | 3.2 | 10;sucrose ester | 1.6 | 5", ""},
		{"what | 500 g | 250 g;lard | 120.4 | 60.2;water | 280.2 | 140.1;GMS | 3.2 | 1.6;sucrose ester | 1.6 | 1.6", "1.6"},
		{"what | one | 3 tables;lard | 120.4 | 361;water | 280.2 | 841;GMS | 3.2 | 10;sucrose ester | 1.6 | 5;total | 405.4 | 1000", ""},
		{"what | fat % | HLB;lard | 99 | 0;water | 0 | 0;GMS | 1 | 3.8;sucrose ester | 1 | 15", ""},
		{"what | T1 | T2;lard | 120.4 | 140;water | 280.2 | 260;GMS | 3.2 | 3.3;sucrose ester | 1.6 | 1.7", ""},
	} {
		w := &handin.Work{}
		for i, line := range strings.Split(c.rows, ";") {
			r := handin.Row{At: trial.Place{Row: i + 1}}
			for k, text := range strings.Split(line, "|") {
				text = strings.TrimSpace(text)
				cell := handin.Cell{At: trial.Place{Row: i + 1, Col: k + 1}, Text: text, Kind: sheet.Text}
				if v, err := strconv.ParseFloat(text, 64); err == nil {
					cell.Kind, cell.Value, cell.Known, cell.Half = sheet.Number, v, true, 0.5
					if strings.Contains(text, ".") {
						cell.Half = 0.05
					}
				}
				if text != "" {
					r.Cells = append(r.Cells, cell)
				}
			}
			w.Rest = append(w.Rest, r)
		}
		got := ""
		for _, f := range Check(w) {
			got += f.Typed.String()
			if f.Certain {
				got += "!"
			}
		}
		for i := range w.Rest { // by formulas of any wording it is the same
			for k := range w.Rest[i].Cells {
				if x := &w.Rest[i].Cells[k]; x.Known && k == 2 {
					x.Formula = "$B$4*$B$1"
				}
			}
		}
		if again := Check(w); len(again) > 0 != (c.want != "") {
			t.Errorf("%s by formulas: %v", c.rows, again)
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.rows, got, c.want)
		}
	}
}
