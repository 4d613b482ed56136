package analysis

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// An ounce is a sixteenth of 453.59237 g; without the flag there are none.
func TestOunces(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	with, without := run(t, demo, Settings{Ounces: true}), plain()
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
	thorough.NotShort(t, "analyses a log again")
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
