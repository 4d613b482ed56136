package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// A log with a value a row says in it, too, what is of all trials: who wrote it, the rule, the
// safety, the conclusion.
func TestAValueARow(t *testing.T) {
	lines := []string{"trial;day;what;value;unit", "about;2026-03-02;student;Ida Fen;", "about;2026-03-02;hlb_gms;3.8;1", "about;2026-03-02;safety;vented before it was opened; goggles on;",
		"about;2026-03-02;success_rule;holds at least 20 min and drains at most 8 %;"}
	for i, mix := range [][]float64{{90, 210, 0, 0, 3, 40}, {90, 205, 3, 2, 22, 7}, {100, 195, 3, 2, 24, 6}, {100, 195, 3, 2, 23, 6}, {110, 185, 3, 2, 15, 11}} {
		for k, what := range []string{"butter;%v;g", "stock;%v;g", "gms;%v;g", "sucrose ester;%v;g", "hold;%v;min", "drained;%v;%%", "came out;yes;"} {
			value := fmt.Sprintf("pot_%d;2026-03-02;", i+1)
			if strings.Contains(what, "%v") {
				value += fmt.Sprintf(what, mix[k])
			} else {
				value += what
			}
			lines = append(lines, value)
		}
	}
	lines = append(lines, "about;2026-03-02;conclusion;pot_3 is the best with 24 min;")
	for i, l := range lines {
		if cells := strings.SplitN(l, ";", 4); i > 0 && i < 5 || i == len(lines)-1 { // the text may have a ; in it
			lines[i] = strings.Join(cells[:3], ",") + ",\"" + strings.TrimSuffix(cells[3], ";") + "\","
		} else {
			lines[i] = strings.ReplaceAll(l, ";", ",")
		}
	}
	lines[2] = "about,2026-03-02,hlb_gms,3.8,1"
	c := &classroom{dir: t.TempDir()}
	c.handIn(t, "values.csv", lines)
	got := gradeOf(t, c)
	if len(got.Students) != 1 || got.Students[0].Trials != 5 {
		t.Fatalf("%+v", got.Students)
	}
	for _, f := range got.Students[0].Findings {
		if f.Certain || slices.Contains([]string{"formal", "calculation"}, string(f.About)) || strings.Contains(f.Words, "HLB") {
			t.Errorf("%v %v: %s", f.About, f.Cells, f.Words)
		}
	}
}
