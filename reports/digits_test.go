package reports

import (
	"regexp"
	"testing"

	"foamfield/analysis"
	"foamfield/ingest"
	"foamfield/reports/document"
	"foamfield/reports/weeks"
)

// tail is what follows the point of a cell's last number.
var tail = regexp.MustCompile(`\d(\.\d+)?(\D*)$`)

// Columns of numbers are set right, so their digits stand under each other where each
// cell ends on as many decimals and in the same unit.
func TestDigitsStandUnderDigits(t *testing.T) {
	documents := map[string]document.Document{"weeks": weeks.Build(threeWeeks())}
	for name, r := range runs() {
		documents[name] = Build(r)
	}
	files := []string{"demo/week.xlsx", "demo/five-columns.csv", "logs/readings.csv", "logs/french.csv"}
	if testing.Short() {
		files = nil // the invented runs alone
	}
	for _, file := range files {
		log, err := ingest.Read([]string{"../testdata/" + file}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := analysis.Run(log, analysis.Settings{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		documents[file] = Build(r)
	}
	columns := 0
	for name, d := range documents {
		for _, s := range d.Sections {
			for _, b := range s.Blocks {
				table, ok := b.(document.Table)
				for c := range table.Head {
					if !ok || !table.Numeric[c] {
						continue
					}
					first, said := "", ""
					for _, row := range table.Rows {
						m := tail.FindStringSubmatch(row[c].String())
						if m == nil { // in words, or nothing
							continue
						}
						shape := regexp.MustCompile(`\d`).ReplaceAllString(m[1], "0") + m[2]
						if said == "" {
							first, said = shape, row[c].String()
							columns++
						}
						if shape != first {
							t.Errorf("%s, %s, %q: %q stands over %q", name, s.Title, table.Head[c], said, row[c])
							break
						}
					}
				}
			}
		}
	}
	if columns < 100 {
		t.Errorf("only %d columns were looked at", columns)
	}
}
