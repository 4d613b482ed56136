package answers

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// Weighed anywhere within what the card allows, all ingredients off at once, a mix
// loses no more than the 0.05 it may and clogs no more often than a start may. The
// directions tried are few; random misweighings and every corner know
// nothing of them.
func TestWithinKeepsTheChance(t *testing.T) {
	thorough.NotShort(t, "studies many logs")
	exact, loose, tries := 0, 0, thorough.Of(t, 100, 1000)
	logs := []*trial.Log{}
	week, err := ingest.Read([]string{"../../testdata/demo/week.xlsx"}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	thick, err := ingest.Read([]string{thickenedLog(t, 0.2, 0.3, 0.3, 0.4)}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	logs = append(logs, week, thick)
	for seed := range uint64(thorough.Of(t, 2, 6)) {
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
		s := grounded(t, log)
		for _, start := range s.findStarts().starts {
			values := s.Values(start.Mix)
			f, _, note := s.Scale.Grams(values)
			if f == nil || len(start.Ingredients) != len(f.Lines) {
				t.Fatalf("log %d: %s", k, note)
			}
			for i, l := range start.Ingredients {
				f.Lines[i].Grams = l.Grams
				steps := *l.WithinGrams / asked.Batch.ScaleStepGrams
				if *l.WithinGrams < 0 || *l.WithinGrams > 0.05*l.Grams || math.Abs(steps-math.Round(steps)) > 1e-6 {
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
			for try := range tries + 1<<n {
				by := make([]float64, n)
				for i := range by {
					by[i] = *start.Ingredients[i].WithinGrams
					if try < 1<<n {
						by[i] *= float64(2*(try>>i&1) - 1)
					} else {
						by[i] *= 2*rng.Float64() - 1
					}
				}
				chance, c := s.misweighed(s.Scale.Point(f, by))
				worst = max(worst, start.Chance.Mean-chance)
				if c != nil && *c > ClogLimitStart+0.001 {
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

func thickenedLog(t *testing.T, percents ...float64) string {
	t.Helper()
	rng := rand.New(rand.NewPCG(3, 9))
	var b strings.Builder
	b.WriteString("trial,butter g,cider g,GMS g,sucrose ester 15 g,xanthan g,came out,hold min\n")
	for i := range 30 {
		p := percents[i%len(percents)]
		gums := math.Round(10*p/100*300) / 10
		butter, gms, ester := math.Round(100+80*rng.Float64()), math.Round(10*(2+3*rng.Float64()))/10, math.Round(10*(2+3*rng.Float64()))/10
		fmt.Fprintf(&b, "%d,%.0f,%.1f,%.1f,%.1f,%.1f,yes,%.0f\n", i+1, butter, 300-butter-gms-ester-gums, gms, ester, gums,
			30*math.Exp(4*(100*gums/300-0.3)+0.1*rng.NormFloat64()))
	}
	return written(t, b.String())
}
