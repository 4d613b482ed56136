package answers

import (
	"math"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/stat"
)

// What the draws weighed anew say of a log without one of its trials, against the log
// truly studied without it: of how the chance of the same mix moves, in squares, they
// must miss less than half; the study also centres and scales its variables anew, which no
// draw knows of. Short logs are where single trials move most.
func TestRestsAgreeWithRefits(t *testing.T) {
	thorough.NotShort(t, "studies many logs")
	missed, moved := 0.0, 0.0
	for seed := range uint64(thorough.Of(t, 2, 16)) {
		k := kitchen.New(kitchen.Easy, 4600+seed)
		var b strings.Builder
		if err := kitchen.WriteCSV(&b, k.Log(kitchen.Scattered, 12, kitchen.Stream(seed, "rests"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, b.String())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		g := grounded(t, log)
		starts := g.findStarts().starts
		if len(starts) == 0 {
			continue
		}
		mix := g.Values(starts[0].Mix)
		views := g.Views([][]float64{mix}, g.Place(surface.FatPercent), restDraws)
		all := stat.Mean(views[0].Works, nil)
		for _, left := range g.OnSurface() {
			without := *log
			without.Trials = slices.DeleteFunc(slices.Clone(log.Trials), func(o trial.Trial) bool { return o.At == left.At })
			b := believed(t, &without) // of which the kitchen has one way
			move := b.Chain.With(b.Ways()[0].Beside).Chance(mix) - g.Chain.Chance(mix)
			weighed := stat.Mean(views[0].Works, g.forget(left)) - all
			missed += (weighed - move) * (weighed - move)
			moved += move * move
		}
	}
	t.Logf("the chance moves by %.3f (root of the sum of squares); the weighed draws miss %.3f of it", math.Sqrt(moved), math.Sqrt(missed))
	if missed > moved/2 {
		t.Errorf("missed %.4f of %.4f", missed, moved)
	}
}

// Every headline lies between what it comes to without single trials, and no trial is
// named that hardly moves it.
func TestRests(t *testing.T) {
	rests := ofDemo(t).RestsOn
	if len(rests) != 3 {
		t.Fatalf("%d headlines", len(rests))
	}
	for _, r := range rests {
		if !(r.Low <= r.Value && r.Value <= r.High) || r.Low == r.High {
			t.Errorf("%s: %v not between %v and %v", r.Headline, r.Value, r.Low, r.High)
		}
		least := map[bool]float64{true: movesChance, false: movesFat}[r.Headline == "surest_chance"]
		for _, i := range r.Trials {
			if i.Without != nil && math.Abs(*i.Without-r.Value) < least {
				t.Errorf("%s: %s is named and moves it to %v only", r.Headline, i.At, *i.Without)
			}
		}
	}
}
