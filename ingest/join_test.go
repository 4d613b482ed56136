package ingest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/cellname"
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

// TestWeighedBesideTheResults: a table of results that weighs a gum, or what nobody knows, belongs to
// the table of mixes all the same; with the stuff of a mix in it, it is a log of its own.
func TestWeighedBesideTheResults(t *testing.T) {
	mix := sheetText{"Weighing", "trial | butter oil (g) | cider (g) | GMS (g) | sucrose ester HLB 15 (g)\nM1 | 120 | 174 | 4 | 2\nM2 | 140 | 154 | 4 | 2\nM3 | 130 | 164 | 3 | 3"}
	asIs := sheetText{"Ingredients", "Name in the log | What it is\nspindrift | other"}
	fat := sheetText{"Ingredients", "Name in the log | What it is\nspindrift | cream"}
	paste := sheetText{"Ingredients", "Name in the log | What it is | HLB\nspindrift | emulsifier | 12"}
	for _, c := range []struct {
		name, results string
		own           *sheetText
		first, said   string // the first mix; a kind of what is said, at a place
	}{
		{"a gum", "trial | came out | hold (min) | xanthan (g)\nM1 | yes | 12 | 20\nM2 | yes | 13 | 20\nM3 | yes | 14 |", nil, "37.31 1.88 7.53", "weighed beside the results at D1"},
		{"what nobody knows", "trial | came out | hold (min) | spindrift (g)\nM1 | yes | 12 | 20\nM2 | yes | 13 | 20\nM3 | yes | 14 | 20", nil, "- 1.88 7.53", "unknown ingredient at D1"},
		{"the kitchen says it is no fat", "trial | came out | hold (min) | spindrift (g)\nM1 | yes | 12 | 20\nM2 | yes | 13 | 20\nM3 | yes | 14 | 20", &asIs, "37.31 1.88 7.53", "weighed beside the results at D1"},
		{"the kitchen says it is a fat, of nobody knows how much", "trial | came out | hold (min) | spindrift (g)\nM1 | yes | 12 | 20\nM2 | yes | 13 | 20\nM3 | yes | 14 | 20", &fat, "- - 7.53", "weighed beside the results at D1"},
		{"the kitchen says it is an emulsifier", "trial | came out | hold (min) | spindrift (g)\nM1 | yes | 12 | 1\nM2 | yes | 13 | 1\nM3 | yes | 14 | 1", &paste, "- - -", "weighed beside the results at D1"},
		{"a percent of it", "trial | came out | hold (min) | xanthan (% of mix)\nM1 | yes | 12 | 0.2\nM2 | yes | 13 | 0.2\nM3 | yes | 14 | 0.2", nil, "- - 7.53", "weighed beside the results at D1"},
		{"a fat is a mix of its own", "trial | came out | hold (min) | lard (g)\nM1 | yes | 12 | 20\nM2 | yes | 13 | 20\nM3 | yes | 14 | 20", nil, "- - -", "no log on the sheet at row 1"},
		{"no trial of the mixes", "trial | came out | hold (min) | xanthan (g)\nK1 | yes | 12 | 20\nK2 | yes | 13 | 20\nK3 | yes | 14 | 20", nil, "- - -", "no log on the sheet at row 1"},
	} {
		sheets := []sheetText{mix, {"Tasting", c.results}}
		if c.own != nil {
			sheets = append(sheets, *c.own)
		}
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...))
		if len(log.Trials) != 3 || log.Trials[0].Hold == nil {
			t.Errorf("%s: %d trials, want 3 with their holds", c.name, len(log.Trials))
			continue
		}
		if got := mixOf(log.Trials[0]); got != c.first {
			t.Errorf("%s: the first mix is %s, want %s", c.name, got, c.first)
		}
		said := ""
		for _, p := range log.Problems {
			said += p.Kind + " at " + cellname.Of(p.At.Row, p.At.Col) + "; "
		}
		if !strings.Contains(said, c.said+";") {
			t.Errorf("%s: said %s, want %s", c.name, said, c.said)
		}
	}
}
