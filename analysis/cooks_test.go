package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/thorough"
)

// cooked is a log of two cooks. A foam holds 30 minutes at HLB 8 and 1.2 times as long
// for each unit more; Bo's hold 0.6 of Ana's, and Bo made three in four of those above 8.
func cooked(t *testing.T, seed uint64, told bool) *result.Results {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 4))
	var b strings.Builder
	b.WriteString("trial,fat %,emulsifier % of mix,blend HLB,cook,came out,hold min\n")
	for i := range 32 {
		hlb := 5.5 + 5*rng.Float64()
		bo := rng.Float64() < 0.25
		if hlb > 8 {
			bo = !bo
		}
		cook, factor := "Ana", 1.0
		if bo {
			cook, factor = "Bo", 0.6
		}
		if !told {
			cook = ""
		}
		fmt.Fprintf(&b, "%d,%.1f,%.2f,%.2f,%s,yes,%.1f\n", i+1, 35+15*rng.Float64(), 1.5+rng.Float64(), hlb, cook,
			30*factor*math.Pow(1.2, hlb-8)*math.Exp(0.15*rng.NormFloat64()))
	}
	return run(t, written(t, b.String()), Settings{Hold: ptr(20.0)})
}

// Who made a trial is told from what was in it, as far as the trials can; every chance
// is of a mix by either.
func TestCooksAreAveragedOver(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	off, logs := map[bool]float64{}, thorough.Of(t, 2, 5)
	for seed := range uint64(logs) {
		for _, told := range []bool{true, false} {
			r := cooked(t, seed, told)
			for _, e := range r.Effects {
				for _, v := range r.Variables {
					if v.Name == e.Variable && v.Name == surface.BlendHLB {
						off[told] += math.Abs(math.Log(e.Change.Mid)-(e.X[len(e.X)-1]-e.X[0])*math.Log(1.2)) / float64(logs)
					}
				}
			}
			if !told {
				if len(r.Averaged) > 0 {
					t.Fatalf("averaged over %+v, whom nobody named", r.Averaged)
				}
				continue
			}
			if len(r.Averaged) != 1 || len(r.Averaged[0].Levels) != 2 {
				t.Fatalf("averaged over %+v", r.Averaged)
			}
			var factor [2]float64
			for _, l := range r.Averaged[0].Levels {
				factor[map[string]int{"Ana": 0, "Bo": 1}[l.Name]] = l.HoldFactor.Mid
			}
			if got := factor[1] / factor[0]; got < 0.5 || got > 0.85 {
				t.Errorf("seed %d: Bo's foams hold %.2f of Ana's, put in as 0.6", seed, got)
			}
			if math.Abs(factor[0]*factor[1]-1) > 1e-9 {
				t.Errorf("seed %d: %v are not about their average", seed, factor)
			}
		}
	}
	t.Logf("the change with HLB, in ln: off by %.3f where the cooks are named, by %.3f where not", off[true], off[false])
	if off[true] > 0.6*off[false] {
		t.Errorf("off by %.3f where the cooks are named, by %.3f where not", off[true], off[false])
	}
}

// Two trials of one formula are repeats whoever made them.
func TestRepeatsByTwoCooks(t *testing.T) {
	var b strings.Builder
	b.WriteString("trial,fat %,emulsifier % of mix,blend HLB,cook,came out,hold min\n")
	for i := range 16 {
		fmt.Fprintf(&b, "%d,%d,2,%d,%s,yes,%d\n", i+1, 35+2*(i/4), 7+i/4, []string{"Ana", "Bo"}[i%2], 20+i%5)
	}
	r := run(t, written(t, b.String()), Settings{})
	if len(r.Averaged) != 1 {
		t.Fatalf("averaged over %+v", r.Averaged)
	}
	for _, rep := range r.Repeatability {
		if rep.Result == string(result.HoldMinutes) && (rep.Groups != 4 || rep.DF != 12) {
			t.Errorf("%d groups of repeats with %g df, 4 and 12 were made", rep.Groups, rep.DF)
		}
	}
}
