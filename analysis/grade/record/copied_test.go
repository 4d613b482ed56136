package record

import (
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestCopied: rows that are alike to the last digit, and repeats that came out alike. Three rows of others
// stand before the two: day, cup of foam, hold, drained, and where they are typed lard and GMS.
func TestCopied(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"9 Apr 10:00|38.9|17|3.7", "9 Apr 10:00|38.9|17|3.7", true},
		{"9 Apr|38.9|17.5|3.7", "9 Apr|38.9|17.5|3.7", true},
		{"9 Apr|38.9|17|3.7", "10 Apr|38.9|17|3.7", false},
		{"9 Apr|38|16|4", "9 Apr|38|16|4", false},
		{"9 Apr 10:00|38.9|17|3.7", "9 Apr 10:40|38.9|17|3.8", false},
		{"9 Apr 10:00|38.9|17|3.7", "9 Apr 10:00|38.8|17|3.7", false},
		{"9 Apr|||3.7", "9 Apr|||3.7", false},
		{"9 Apr|71|14|9|120.3|3.02", "9 Apr|71|14|9|120.3|3.02", true},
		{"9 Apr|71|14|9|120.3|3.02", "9 Apr|71|14|9|120.4|3.01", false},
		{"9 Apr|71|14|9|120|3", "9 Apr|71|14|9|120|3", false},         // whole grams of a coarse balance
		{"9 Apr|71|14|9|118.5|2.4", "9 Apr|71|14|9|118.5|2.4", false}, // as planned in other rows too
	} {
		rows := []string{"9 Apr 9:00|61.2|2|20.4|118.5|2.4", "9 Apr 9:10|44.8|10|8.9|118.5|2.4", "9 Apr 9:20|41.5|7|10.3|99|2", c.a, c.b}
		table := &handin.Table{}
		for k, head := range []string{"day", "cup of foam g", "hold min", "drained g", "lard g", "GMS g"} {
			col := &handin.Column{Header: head, Role: []column.Role{column.Day, column.CupFoam, column.Hold, column.DrainedAmount, column.IngredientAmount, column.IngredientAmount}[k], Field: &scheme.Field{InGrams: true}}
			for i, row := range rows {
				text := strings.Split(row+"||", "|")[k]
				cell := handin.Cell{At: trial.Place{File: "a.xlsx", Row: i + 2, Col: k + 2}, Text: text, Scale: 1}
				if v, err := strconv.ParseFloat(text, 64); err == nil {
					cell.Kind, cell.Value, cell.Known = sheet.Number, v, true
				} else if text != "" {
					cell.Kind = sheet.Text
				}
				col.Cells = append(col.Cells, cell)
			}
			table.Columns = append(table.Columns, col)
		}
		for i := range rows {
			table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{ID: strconv.Itoa(i + 1)}, Index: i, Table: table})
		}
		r := &reader{meant: map[trial.Place]float64{}, said: map[trial.Place]bool{}}
		r.copied(table)
		if got := len(r.out) > 0; got != c.want {
			t.Errorf("%q and %q: %v", c.a, c.b, r.out)
		}
	}
}
