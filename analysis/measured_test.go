package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// tasted is a log whose foams all come out and hold; their taste, out of 9, is
// 5 + (HLB - 8) give or take half a point, so that best is in the middle or at an end
// as the target has it.
func tasted(t *testing.T, target string) *result.Results {
	t.Helper()
	rng := rand.New(rand.NewPCG(5, 8))
	var b strings.Builder
	b.WriteString("trial,fat %,emulsifier % of mix,blend HLB,came out,hold min,taste /9\n")
	for i := range 27 {
		hlb := 5 + 6*rng.Float64()
		taste := math.Round(min(max(5+hlb-8+0.5*rng.NormFloat64(), 1), 9))
		fmt.Fprintf(&b, "%d,%.1f,%.2f,%.2f,yes,%.0f,%.0f\n", i+1, 30+20*rng.Float64(), 1+2*rng.Float64(), hlb, 60*math.Exp(0.2*rng.NormFloat64()), taste)
	}
	log, err := ingest.Read([]string{written(t, b.String())}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if target != "" {
		low, high := math.Inf(-1), math.Inf(1)
		if _, err := fmt.Sscanf(target, "%g to %g", &low, &high); err != nil {
			t.Fatal(err)
		}
		for _, v := range log.Extras {
			if v.Result {
				log.Targets.Results = []trial.ResultTarget{{Result: v, Interval: trial.Interval{Low: low, High: high}}}
			}
		}
	}
	r, err := Run(log, Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestTasteIsATarget: by hand, a taste of 4 to 6 goes with an HLB of 7 to 9 and one of
// 7 to 9 with 10 and more; without a target the taste moves no chance.
func TestTasteIsATarget(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for _, c := range []struct {
		target    string
		low, high float64 // of the surest start's HLB
	}{{"4 to 6", 7, 9}, {"7 to 9", 9.7, 11.1}, {"2 to 3", 4.9, 6.4}} {
		r := tasted(t, c.target)
		if len(r.Starts) == 0 {
			t.Fatalf("%s: %s", c.target, r.StatusReason)
		}
		s := r.Starts[0]
		if hlb := *s.Mix.BlendHLB; hlb < c.low || hlb > c.high {
			t.Errorf("%s: the surest start has HLB %.1f", c.target, hlb)
		}
		// With a scatter of half a point and rounding, the middle of a range three wide is
		// hit nearly always.
		if s.Chance.Mean < 0.75 {
			t.Errorf("%s: the surest start works %.2f of the time", c.target, s.Chance.Mean)
		}
		low, high := *r.Targets.Results[0].Low, *r.Targets.Results[0].High
		if p := s.Predicted["score"]; p.Median < low-0.5 || p.Median > high+0.5 || p.Low >= p.High {
			t.Errorf("%s: foretold %+v", c.target, p)
		}
		missed := 0
		for _, one := range r.Trials {
			taste := one.Extras["score"]
			within := taste >= low && taste <= high
			if !within {
				missed++
			}
			if *one.Works != (within && *one.HoldMinutes.Low >= 20) {
				t.Errorf("%s: trial %s with taste %v works: %v", c.target, one.ID, taste, *one.Works)
			}
		}
		if r.Counts.Missed["score"] != missed {
			t.Errorf("%s: %d trials missed it, counted %d", c.target, missed, r.Counts.Missed["score"])
		}
		if fails := s.Fails["score"]; math.Abs(1-s.Chance.Mean-fails-s.Fails[result.CameOut]-s.Fails[result.HoldMinutes]) > 1e-9 {
			t.Errorf("%s: first failures %v do not add up with a chance of %v", c.target, s.Fails, s.Chance.Mean)
		}
	}
	if r := tasted(t, ""); len(r.Model) != 2 || len(r.Targets.Results) != 0 {
		t.Errorf("without a target there are %d models", len(r.Model))
	}
}

// A target nobody logged a result for leaves nothing recommended.
func TestTargetNobodyMeasured(t *testing.T) {
	thorough.NotShort(t, "analyses a log again")
	log := readDemo(t)
	log.Targets.Results = []trial.ResultTarget{{Result: trial.Variable{Name: "score", Label: "taste", Result: true}, Interval: trial.Interval{Low: 6, High: math.Inf(1)}}}
	r, err := Run(log, Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if r.Status == result.Recommended || r.Counts.Worked != 0 {
		t.Errorf("%s with %d worked", r.Status, r.Counts.Worked)
	}
}

func readDemo(t *testing.T) *trial.Log {
	t.Helper()
	log, err := ingest.Read([]string{demo}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return log
}
