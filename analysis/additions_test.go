package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

// thickened is a log whose foams hold e^(4·(xanthan % - 0.3)) times 30 minutes, give or
// take a tenth; xanthan of the mix is one of the given percents, in turn.
func thickened(t *testing.T, percents ...float64) *result.Results {
	t.Helper()
	return run(t, thickenedLog(t, percents...), Settings{})
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

// A thickener that the log varied is a setting: its effect comes out as it was put in,
// and the grams of a start hold the percent that its chance is for.
func TestAdditions(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	r := thickened(t, 0.2, 0.3, 0.3, 0.4)
	var v *result.Variable
	for i := range r.Variables {
		if r.Variables[i].Name == "xanthan_percent" {
			v = &r.Variables[i]
		}
	}
	if v == nil || v.Role != result.Held || v.FixedAt == nil {
		t.Fatalf("xanthan is not a setting: %+v, aside %+v", r.Variables, r.SetAside)
	}
	if math.Abs(*v.FixedAt-0.3) > 0.011 {
		t.Errorf("held at %v %%", *v.FixedAt)
	}
	shown := false
	for _, e := range r.Effects {
		shown = shown || e.Variable == v.Name
		if want := math.Exp(4 * (v.High - v.Low)); e.Variable == v.Name && math.Abs(math.Log(e.Change.Mid/want)) > 0.25 {
			t.Errorf("from end to end it multiplies hold by %.2f, put in as %.2f", e.Change.Mid, want)
		}
	}
	if !shown || len(r.Starts) == 0 {
		t.Fatalf("no effect of xanthan, or no start: %s", r.StatusReason)
	}
	for _, s := range r.Starts {
		found := false
		for _, l := range s.Ingredients {
			if l.Name == "xanthan" {
				found = true
				// half a step of the scale, and what rounding made of the trial it is taken from
				if off := math.Abs(l.Grams - *v.FixedAt/100*r.Batch.Grams); off > 0.1 {
					t.Errorf("%s start: %.2f g of xanthan for %.2f %% of %.0f g", s.Aim, l.Grams, *v.FixedAt, r.Batch.Grams)
				}
			}
		}
		if !found {
			t.Errorf("%s start: no xanthan among %v", s.Aim, s.Ingredients)
		}
	}
	for _, one := range r.Trials {
		if _, ok := one.Extras["xanthan_percent"]; !ok {
			t.Fatalf("trial %s does not show its percent", one.ID)
		}
	}
}

// One that hardly changed is no setting, and no word is lost over it.
func TestAdditionThatNeverChanged(t *testing.T) {
	thorough.NotShort(t, "analyses another log")
	r := thickened(t, 0.3)
	for _, v := range r.Variables {
		if strings.Contains(v.Name, "xanthan") {
			t.Errorf("%+v", v)
		}
	}
	for _, v := range r.SetAside {
		if strings.Contains(v.Name, "xanthan") {
			t.Errorf("set aside: %s", v.Reason)
		}
	}
}
