package weigh

import (
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
)

func TestOrderOfAddition(t *testing.T) {
	line := func(name, kind, part string) result.FormulaLine {
		return result.FormulaLine{Name: name, Kind: kind, Part: part, Grams: 1, PercentOfMix: 10}
	}
	fat, water, mono, ester := line("butter", "fat", "fat"), line("cider", "water part", "water"), line("mono", "emulsifier", "fat"), line("ester", "emulsifier", "water")
	for _, c := range []struct {
		name  string
		lines []result.FormulaLine
		want  string
	}{
		{"two parts, weighed in the log's order", []result.FormulaLine{mono, ester, fat, water}, "fat: butter, mono; water: cider, ester"},
		{"water first in the log", []result.FormulaLine{water, fat, ester, mono}, "fat: butter, mono; water: cider, ester"},
		{"what thickens comes last", []result.FormulaLine{line("xanthan", "thickener", ""), line("yolk", "emulsifier without HLB", ""), ester, water}, "water: cider, ester, yolk, xanthan"},
		{"what no kind tells", []result.FormulaLine{fat, line("salt", "other", ""), line("new", "emulsifier", "")}, "fat: butter; : new, salt"},
		{"several fats keep their order", []result.FormulaLine{line("oil", "fat", "fat"), fat}, "fat: oil, butter"},
		{"no grams", nil, ""},
	} {
		var said []string
		total := 0
		for _, p := range Parts(c.lines, result.Batch{}) {
			var names []string
			for _, i := range p.Lines {
				names = append(names, c.lines[i].Name)
			}
			if n := float64(len(p.Lines)); p.Grams != n || math.Abs(p.PercentOfMix-10*n) > 1e-9 || p.Ounces != nil {
				t.Errorf("%s: %+v", c.name, p)
			}
			total += len(p.Lines)
			said = append(said, p.Part+": "+strings.Join(names, ", "))
		}
		if got := strings.Join(said, "; "); got != c.want || total != len(c.lines) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
