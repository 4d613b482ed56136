package ingest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// Mixes in one table, what happened in another.
func TestHalvesAreJoined(t *testing.T) {
	const recipes = "%s,butter oil g,cider g,GMS HLB 3.8 g,sucrose ester HLB 15 g\nA1,120,174,4,2\nA2,140,154,4,2\nA3,130,164,3,3\n"
	for _, c := range []struct {
		name, log string
		trials    string // number, fat percent and hold of each
		said      string // kinds of what is said, but for information
	}{
		{"by number", fmt.Sprintf(recipes, "trial") + "\n\ntrial,came out,hold min\nA1,yes,12\nA3,yes,14\nA2,yes,13\n", "A1 39.8 12; A2 46.4 13; A3 43.1 14", ""},
		{"tests of a recipe", fmt.Sprintf(recipes, "recipe") + "\n\ntest,recipe,came out,hold min\n1,A1,yes,12\n2,A1,yes,15\n3,A3,yes,14\n4,A2,yes,13\n", "1 39.8 12; 2 39.8 15; 4 46.4 13; 3 43.1 14", ""},
		{"under the same head", fmt.Sprintf(recipes, "mix no") + "\n\ntest,mix no,came out,hold min\n1,A2,yes,12\n2,A1,yes,15\n3,A1,yes,14\n", "A1 39.8 15; A1 39.8 14; A2 46.4 12; A3 43.1 -", ""},
		{"repeats without a number", fmt.Sprintf(recipes, "trial") + "\n\ntrial,came out,hold min\nA1,yes,12\nA1,yes,13\nA2,yes,14\nA3,yes,15\n", "A1 39.8 12; A1 39.8 13; A2 46.4 14; A3 43.1 15", ""},
		{"a plan of the same numbers", "trial,planned emulsifier g\nA1,5\nA2,6\nA3,6\n\n\n" + fmt.Sprintf(recipes, "trial") + "\n\ntrial,came out,hold min\nA1,yes,12\nA2,yes,13\nA3,yes,14\n", "A1 39.8 12; A2 46.4 13; A3 43.1 14", ""},
		{"results of another mix", fmt.Sprintf(recipes, "recipe") + "\n\ntest,recipe,came out,hold min\n1,A1,yes,12\n2,A2,yes,15\n3,A3,yes,14\n4,A1,yes,13\n5,B7,yes,13\n", "1 39.8 12; 4 39.8 13; 2 46.4 15; 3 43.1 14", "results without a mix"},
		{"scores are no numbers of mixes", strings.ReplaceAll(fmt.Sprintf(recipes, "trial"), "A", "") + "\n\njar,score,came out,hold min\nx,1,yes,12\ny,2,yes,13\n", "", ""},
	} {
		var sheets []sheetText
		for i, text := range strings.Split(c.log, "\n\n\n") {
			sheets = append(sheets, sheetText{fmt.Sprint("Sheet", i+1), strings.ReplaceAll(strings.TrimSpace(text), ",", "|")})
		}
		path := writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...)
		if c.trials == "" {
			if _, err := Read([]string{path}, Options{}); err == nil || !strings.Contains(err.Error(), "no result") {
				t.Errorf("%s: %v, want no trial with a result", c.name, err)
			}
			continue
		}
		log := mustReadPath(t, path)
		var got []string
		for _, x := range log.Trials {
			if x.FatPercent == nil {
				continue
			}
			hold := "-"
			if x.Hold != nil {
				hold = fmt.Sprint(x.Hold.Low)
			}
			got = append(got, fmt.Sprintf("%s %.1f %s", x.ID, *x.FatPercent, hold))
		}
		if s := strings.Join(got, "; "); s != c.trials {
			t.Errorf("%s: %s, want %s", c.name, s, c.trials)
		}
		said := ""
		for _, p := range log.Problems {
			if p.Kind == "results without a mix" || p.Kind == "planned beside what was weighed" {
				said += p.Kind
			}
		}
		if !strings.Contains(said, c.said) {
			t.Errorf("%s: said %q, want %q", c.name, said, c.said)
		}
	}
}

// TestFullerMixHasTheResults: of a plan and a table of what was weighed, both of the same trials, the
// results are joined to what was weighed, whichever sheet comes first.
func TestFullerMixHasTheResults(t *testing.T) {
	plan := sheetText{"Outline", "trial | meant GMS (g)\nP1 | 3\nP2 | 4\nP3 | 5"}
	mix := sheetText{"Scale", "trial | butter (g) | cider (g) | GMS (g) | sucrose ester (g)\nP1 | 120 | 174 | 3 | 3\nP2 | 120 | 174 | 4 | 2\nP3 | 120 | 174 | 5 | 1"}
	seen := sheetText{"What came of it", "trial | hold (min) | split\nP1 | 12 | no\nP2 | 17 | no\nP3 | 9 | yes"}
	for name, sheets := range map[string][]sheetText{"plan first": {plan, mix, seen}, "plan last": {mix, seen, plan}} {
		h, refused := ReadHandIn(writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...), nil)
		if refused != nil {
			t.Fatal(refused)
		}
		n := 0
		for i, src := range h.Sources {
			if x := &h.Log.Trials[i]; src.Mix.Sheet == mix.name && src.Results.Sheet == seen.name && x.Hold != nil {
				n++
			}
		}
		if n != 3 {
			t.Errorf("%s: %d trials have a mix and a result", name, n)
		}
	}
}
