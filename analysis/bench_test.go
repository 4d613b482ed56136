package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/trial"
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
		s := &study{out: &result.Results{}}
		var said []string
		total := 0
		for _, p := range s.parts(c.lines) {
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

// Weighed anywhere within what the card allows, all ingredients off at once, a mix
// loses no more than the 0.05 it may and clogs no more often than a start may. The
// directions tried are few; a thousand random misweighings and every corner know
// nothing of them.
func TestWithinKeepsTheChance(t *testing.T) {
	exact, loose := 0, 0
	logs := []*trial.Log{}
	week, err := ingest.Read([]string{demo}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	thick, err := ingest.Read([]string{thickenedLog(t, 0.2, 0.3, 0.3, 0.4)}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	logs = append(logs, week, thick)
	for seed := range uint64(6) {
		k := kitchen.New([]kitchen.Family{kitchen.Easy, kitchen.Hard}[seed%2], 4400+seed)
		var b strings.Builder
		if err := kitchen.WriteCSV(&b, k.Log(kitchen.Scattered, 24, kitchen.Stream(seed, "within"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, b.String())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		logs = append(logs, log)
	}
	for k, log := range logs {
		s := studied(t, log, Settings{})
		s.findStarts()
		for _, start := range s.out.Starts {
			values := s.Values(start.Mix)
			f, _, note := s.grams(values)
			if f == nil || len(start.Ingredients) != len(f.Lines) {
				t.Fatalf("log %d: %s", k, note)
			}
			for i, l := range start.Ingredients {
				f.Lines[i].Grams = l.Grams
				steps := *l.WithinGrams / s.out.Batch.ScaleStepGrams
				if *l.WithinGrams < 0 || *l.WithinGrams > withinMost*l.Grams || math.Abs(steps-math.Round(steps)) > 1e-6 {
					t.Errorf("log %d, %s: %v g of %v g", k, l.Name, *l.WithinGrams, l.Grams)
				}
				if *l.WithinGrams == 0 {
					exact++
				} else {
					loose++
				}
			}
			rng := rand.New(rand.NewPCG(uint64(k), 7))
			worst := 0.0
			n := len(f.Lines)
			for try := range 1000 + 1<<n {
				by := make([]float64, n)
				for i := range by {
					by[i] = *start.Ingredients[i].WithinGrams
					if try < 1<<n {
						by[i] *= float64(2*(try>>i&1) - 1)
					} else {
						by[i] *= 2*rng.Float64() - 1
					}
				}
				chance, c := s.misweighed(f, by)
				worst = max(worst, start.Chance.Mean-chance)
				if c != nil && *c > clogLimitStart+0.001 {
					t.Errorf("log %d, %s: clogs %.4f", k, start.Aim, *c)
				}
			}
			if worst > slackDrop+0.002 {
				t.Errorf("log %d, %s: %.4f lost", k, start.Aim, worst)
			}
		}
	}
	if exact == 0 || loose < 10 {
		t.Errorf("%d weights are exact, %d are not: the test sees one side only", exact, loose)
	}
}

// An ounce is a sixteenth of 453.59237 g; without the flag there are none.
func TestOunces(t *testing.T) {
	with, without := run(t, demo, Settings{Ounces: true}), run(t, demo, Settings{})
	seen := 0
	same := func(what string, grams float64, oz *float64) {
		seen++
		if oz == nil || math.Abs(*oz*453.59237/16-grams) > 1e-9 {
			t.Errorf("%s: %v g, %v oz", what, grams, oz)
		}
	}
	lines := func(what string, all []result.FormulaLine, parts []result.Part) {
		for _, l := range all {
			same(what+", "+l.Name, l.Grams, l.Ounces)
		}
		for _, p := range parts {
			same(what+", the "+p.Part+" part", p.Grams, p.Ounces)
		}
	}
	same("the batch", with.Batch.Grams, with.Batch.Ounces)
	for _, s := range with.Starts {
		lines(string(s.Aim), s.Ingredients, s.Parts)
	}
	for i, n := range with.NextTrials {
		lines(fmt.Sprint("next trial ", i+1), n.Ingredients, n.Parts)
	}
	lines("the best seen", with.BestSeen.Ingredients, nil)
	if seen < 30 {
		t.Errorf("only %d weights were looked at", seen)
	}
	if b := without.Batch.Ounces; b != nil {
		t.Errorf("%v oz that nobody asked for", *b)
	}
	for _, s := range without.Starts {
		if slices.ContainsFunc(s.Ingredients, func(l result.FormulaLine) bool { return l.Ounces != nil }) {
			t.Errorf("ounces that nobody asked for: %+v", s.Ingredients)
		}
	}
}

func TestMethodIsCarried(t *testing.T) {
	log, err := ingest.Read([]string{demo}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	log.Method = []trial.Step{{Text: "melt"}, {Text: "chill", Critical: true, Limit: "4 h at least"}}
	r, err := Run(log, Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if want := []result.MethodStep{{Step: "melt"}, {Step: "chill", Critical: true, Limit: "4 h at least"}}; !slices.Equal(r.Method, want) {
		t.Errorf("%+v", r.Method)
	}
}
