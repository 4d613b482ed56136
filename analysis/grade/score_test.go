package grade

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Who says that the highest score is best has named the best by the scores of what passes.
func TestBestByScore(t *testing.T) {
	const rule = "Rule: stands 20 min or more. Of those that pass, the one with the highest score wins."
	total := map[string][]float64{"total points": {3, 9, 13, 12, 8, 9, 15, 5, 6, 12}}
	two := map[string][]float64{"taste": total["total points"], "look": {3, 3, 3, 3, 3, 3, 3, 3, 3, 3}}
	both := map[string][]float64{"total points": total["total points"], "look": two["look"]}
	for _, c := range []struct {
		said, rule string
		scores     map[string][]float64
		wrong      bool
	}{
		{"The best is trial 5.", rule, total, true},
		{"The winner is trial 2.", rule, both, true},
		{"The best is trial 3.", rule, total, false},
		{"The best is trial 4.", rule, total, false},  // trial 3 again
		{"The best is trial 10.", rule, total, false}, // makings of one formula differ by as much
		{"The best is trial 7.", rule, total, true},   // it has the highest score, and does not pass
		{"The best is trial 5.", rule, two, false},    // which score ranks is not said
		{"The best is trial 5.", rule, nil, false},
		{"The best is trial 5.", "Rule: stands 20 min or more.", total, false},
		{"The best is trial 5 for its taste.", rule, total, false},
	} {
		table := tableOf(fortnight)
		for header, values := range c.scores {
			col := &handin.Column{Header: header, Whole: header, Role: column.Score}
			for i, v := range values {
				col.Cells = append(col.Cells, handin.Cell{At: trial.Place{File: "a.xlsx", Sheet: "Log", Row: i + 1, Col: 20 + len(header)}, Kind: sheet.Number, Value: v, Known: true})
			}
			table.Columns = append(table.Columns, col)
		}
		if found := concludedOver(table, c.rule, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q, %q: %q", c.said, c.rule, found)
		}
	}
}
