package cells

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestWorkings: sheets of what follows of a log, and sheets that are of something else; what the log
// has of them.
func TestWorkings(t *testing.T) {
	for _, c := range []struct{ sheet, rows, heads string }{
		{"sums", "foam|total g|fat % of mix|blend HLB;F1|400|21.5|;F2|400|21.5|8.2;F3|400|21.5|9.4;F4|400|21.5|9.4", "total g,fat % of mix,blend HLB"},
		{"sums", "foam|F1|F2|F3|F4;blend HLB|6.1|8.2|9.4|10.3;overrun %|60|110|120|115", "blend HLB,overrun %"},
		{"sums", "workings, by hand;foam|blend HLB;F1|6.1;F2|8.2;F3|9.4", "blend HLB"},
		{"sums", "trial|blend HLB;1|6.1;2|8.2;3|9.4", ""}, // no such trials
		{"sums", "foam|blend HLB;F1|6.1;F2|8.2", ""},      // too few
		{"plan", "foam|blend HLB;F1|6;F2|8;F3|10", ""},
		{"sums", "foam|planned HLB;F1|6;F2|8;F3|10", ""},
		{"sums", "foam|mean hold min;F1|6;F2|8;F3|10", ""},
		{"sums", "foam|water g;F1|260;F2|258;F3|256", ""}, // the log has what was weighed
		{"sums", "butter|F1 and F2|F3;82|6|8", ""},
	} {
		log := &handin.Table{At: trial.Place{Sheet: "log"}}
		for _, head := range []string{"foam", "butter g", "water g"} {
			col := &handin.Column{Header: head, Whole: head, Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true}}
			if head == "foam" {
				col.Role = column.TrialID
			}
			log.Columns = append(log.Columns, col)
		}
		for i := range 4 {
			id := "F" + strconv.Itoa(i+1)
			log.Trials = append(log.Trials, &handin.Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: log})
			for k, col := range log.Columns {
				col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Sheet: "log", Row: i + 2, Col: k + 1}, Text: "100", Value: 100, Known: true, Kind: sheet.Number, Scale: 1})
			}
		}
		w := &handin.Work{Tables: []*handin.Table{log}}
		for i, line := range strings.Split(c.rows, ";") {
			r := handin.Row{At: trial.Place{Sheet: c.sheet, Row: i + 1}}
			for k, text := range strings.Split(line, "|") {
				cell := handin.Cell{At: trial.Place{Sheet: c.sheet, Row: i + 1, Col: k + 1}, Text: text, Kind: sheet.Text, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
				if v, err := strconv.ParseFloat(text, 64); err == nil {
					cell.Kind, cell.Value, cell.Known = sheet.Number, v, true
				}
				if text != "" {
					r.Cells = append(r.Cells, cell)
				}
			}
			w.Rest = append(w.Rest, r)
		}
		Workings(w)
		var got []string
		for _, col := range log.Columns[3:] {
			got = append(got, col.Header)
		}
		if strings.Join(got, ",") != c.heads {
			t.Errorf("%s: %s: %v, want %q", c.sheet, c.rows, got, c.heads)
		}
	}
}

// TestTakenUp: a sheet of percents that was read as trials of its own is the log's; one on which a foam
// was seen is not.
func TestTakenUp(t *testing.T) {
	for _, c := range []struct {
		role column.Role
		ids  string
		want bool
	}{
		{column.BlendHLB, "F1 F2 F3", true},
		{column.Overrun, "F1 F2 F3", true},
		{column.Hold, "F1 F2 F3", false},
		{column.BlendHLB, "F1 F2 F9", false},
		{column.BlendHLB, "F1 F2", false},
	} {
		table := func(on string, heads map[string]column.Role, ids ...string) *handin.Table {
			t := &handin.Table{At: trial.Place{Sheet: on}}
			for head, role := range heads {
				t.Columns = append(t.Columns, &handin.Column{Header: head, Whole: head, Role: role, Field: &scheme.Field{InGrams: role == column.IngredientAmount}})
			}
			for i, id := range ids {
				t.Trials = append(t.Trials, &handin.Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: t})
				for _, col := range t.Columns {
					col.Cells = append(col.Cells, handin.Cell{Text: "9", Value: 9, Known: true, Kind: sheet.Number, Scale: 1})
				}
			}
			return t
		}
		log := table("log", map[string]column.Role{"lard g": column.IngredientAmount, "water g": column.IngredientAmount}, "F1", "F2", "F3", "F4")
		sums := table("sums", map[string]column.Role{"blend HLB": c.role}, strings.Fields(c.ids)...)
		w := &handin.Work{Tables: []*handin.Table{log, sums}}
		if Workings(w); (len(w.Tables) == 1) != c.want {
			t.Errorf("%v of %s: %v", c.role, c.ids, !c.want)
		}
	}
}
