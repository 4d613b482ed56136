package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

// What a second charger and ten minutes of rest do to ln hold in the logs below.
const (
	trueCharger = -0.5
	trueRest    = 0.15 // ten minutes
)

// setting is how a simulated kitchen worked.
type setting struct {
	canister string
	of       func(i int) (chargers, rest string) // as typed
}

// varied is 1 or 2 chargers and 5 to 30 minutes of rest.
func varied(i int) (string, string) {
	return fmt.Sprint(1 + i*3%5%2), fmt.Sprint(5 + i*11%6*5)
}

// settingLog is n scattered mixes that all come out.
func settingLog(seed uint64, n int, s setting) string {
	rng := rand.New(rand.NewPCG(seed, 9))
	var b strings.Builder
	b.WriteString("no,canister,oil g,water g,GMS g,sucrose ester 15 g,chargers,rest (min),came out,hold min,split\n")
	for i := range n {
		fat, e, high := 32+20*rng.Float64(), 1.2+1.8*rng.Float64(), 0.3+0.3*rng.Float64()
		chargers, rest := s.of(i)
		number := func(text string, otherwise float64) float64 {
			if _, err := fmt.Sscan(text, &otherwise); err != nil && text != "" {
				panic(err)
			}
			return otherwise
		}
		ln := 3.1 + 0.25*(e-2) - 0.02*(fat-42) + trueCharger*(number(chargers, 1)-1) + trueRest*(number(rest, 15)-15)/10 + 0.2*rng.NormFloat64()
		tenth := func(v float64) float64 { return math.Round(10*v) / 10 }
		oil, low, sugar := tenth(2*fat), tenth(2*e*(1-high)), tenth(2*e*high)
		fmt.Fprintf(&b, "%d,%s,%.1f,%.1f,%.1f,%.1f,%s,%s,y,%.1f,n\n", i+1, s.canister,
			oil, 200-oil-low-sugar, low, sugar, chargers, rest, math.Exp(ln))
	}
	return b.String()
}

// The effect of an extra that was varied is found, with the right sign, and its 90 %
// limits cover the truth about as often as they should.
func TestExtrasAreLearnt(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	covered, all := 0, 0
	for seed := range uint64(thorough.Of(t, 3, 12)) {
		r := run(t, written(t, settingLog(seed, 40, setting{"0.5 L", varied})), Settings{})
		truth := map[string]float64{"chargers": trueCharger, "rest_minutes": 2.5 * trueRest}
		found := 0
		for _, e := range r.Effects {
			want, ok := truth[e.Variable]
			if !ok {
				continue
			}
			found++
			if e.Verdict == result.CannotTell || (e.Change.Mid > 1) != (want > 0) {
				t.Errorf("log %d: %s changes the hold by %.2f (%s), truly %.2f", seed, e.Variable, e.Change.Mid, e.Verdict, math.Exp(want))
			}
			all++
			if w := math.Exp(want); e.Change.Low <= w && w <= e.Change.High {
				covered++
			}
		}
		if found != 2 {
			t.Fatalf("log %d: %d effects of extras; set aside %+v", seed, found, r.SetAside)
		}
		checkStarts(t, r)
		for _, s := range r.Starts {
			if c := s.Mix.Extras["chargers"]; c != 1 && c != 2 {
				t.Errorf("start with %v chargers", c)
			}
			if m := s.Mix.Extras["rest_minutes"]; m < 5 || m > 30 || math.Mod(m, 5) != 0 {
				t.Errorf("start with %v minutes of rest: nobody rested that", m)
			}
		}
	}
	t.Logf("%d of %d limits cover", covered, all)
	if covered < fewest(all) {
		t.Errorf("%d of %d limits cover", covered, all)
	}
}

// Learning what an extra does takes its scatter out of what the mix does.
func TestExtrasSharpenTheHold(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	text := settingLog(3, 40, setting{"0.5 L", varied})
	with, without := run(t, written(t, text), Settings{}), run(t, written(t, dropped(text, "chargers", "rest (min)")), Settings{})
	scatter := func(r *result.Results) float64 {
		for _, m := range r.Model {
			if m.Outcome == result.HoldMinutes {
				return math.Exp(m.Sigma[len(m.Sigma)/2].LnSigma)
			}
		}
		return math.NaN()
	}
	if a, b := scatter(with), scatter(without); !(a < 0.8*b) {
		t.Errorf("scatter %.3f with the extras, %.3f without", a, b)
	}
}

// dropped is a log without some of its columns.
func dropped(text string, columns ...string) string {
	var out []string
	var gone []int
	for i, line := range strings.Split(strings.TrimSpace(text), "\n") {
		cells := strings.Split(line, ",")
		if i == 0 {
			for _, c := range columns {
				gone = append(gone, slices.Index(cells, c))
			}
			slices.Sort(gone)
			slices.Reverse(gone)
		}
		for _, c := range gone {
			cells = slices.Delete(cells, c, c+1)
		}
		out = append(out, strings.Join(cells, ","))
	}
	return strings.Join(out, "\n") + "\n"
}

// Extras that never or hardly changed, or that changed with another variable, leave
// every number as it is in the log without them.
func TestExtrasThatTellNothing(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	cases := map[string]struct {
		of     func(i int) (string, string)
		named  map[string]float64
		reason string
	}{
		"constant":   {func(int) (string, string) { return "1", "10" }, map[string]float64{"chargers": 1, "rest_minutes": 10}, "the same"},
		"two odd":    {func(i int) (string, string) { return fmt.Sprint(1 + i/38), "10" }, map[string]float64{"chargers": 1, "rest_minutes": 10}, "too few trials"},
		"mostly not": {func(i int) (string, string) { return "1", []string{"", "", "5", "25"}[i%4] }, map[string]float64{"chargers": 1}, "of 40 trials only"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			text := settingLog(5, 40, setting{"0.5 L", c.of})
			r, bare := run(t, written(t, text), Settings{}), run(t, written(t, dropped(text, "chargers", "rest (min)")), Settings{})
			if len(r.Variables) != 3 || len(r.Starts) == 0 || len(r.Starts) != len(bare.Starts) {
				t.Fatalf("%d variables, %d starts, %d without the extras", len(r.Variables), len(r.Starts), len(bare.Starts))
			}
			for i := range r.Starts {
				if r.Starts[i].Chance != bare.Starts[i].Chance {
					t.Errorf("chance %+v, without the extras %+v", r.Starts[i].Chance, bare.Starts[i].Chance)
				}
				if got := fmt.Sprint(r.Starts[i].Mix.Extras); got != fmt.Sprint(c.named) {
					t.Errorf("start with %s, want %v", got, c.named)
				}
			}
			if !slices.ContainsFunc(r.SetAside, func(v result.SetVariable) bool { return strings.Contains(v.Reason, c.reason) }) {
				t.Errorf("reasons %+v", r.SetAside)
			}
		})
	}
}

// Rest that followed the fat cannot be told from it, and is not named.
func TestExtraThatIsACopy(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	lines := strings.Split(strings.TrimSpace(settingLog(6, 40, setting{"0.5 L", func(int) (string, string) { return "1", "10" }})), "\n")
	for i := range lines[1:] {
		cells := strings.Split(lines[i+1], ",")
		var oil float64
		fmt.Sscan(cells[2], &oil)
		cells[7] = fmt.Sprint(math.Round(oil/4 + float64(i%3)))
		lines[i+1] = strings.Join(cells, ",")
	}
	r := run(t, written(t, strings.Join(lines, "\n")), Settings{})
	if len(r.Variables) != 3 || len(r.Confounded) != 1 || r.Confounded[0].A != "rest" || r.Confounded[0].B != "fat" {
		t.Errorf("%d variables, confounded %+v, set aside %+v", len(r.Variables), r.Confounded, r.SetAside)
	}
	for _, s := range r.Starts {
		if _, named := s.Mix.Extras["rest_minutes"]; named {
			t.Errorf("a start names a rest: %+v", s.Mix.Extras)
		}
	}
}

// Of a canister whose size nobody wrote down, how many chargers it takes is learnt from
// but not named; of several sizes, not even learnt from.
func TestChargersNeedACanister(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	for _, canister := range []string{"", "several"} {
		text := settingLog(7, 40, setting{canister, varied})
		if canister == "several" {
			for i, size := range []string{"0.5 L", "1 L"} {
				for k := range 20 {
					text = strings.Replace(text, fmt.Sprintf("\n%d,several,", 2*k+i+1), fmt.Sprintf("\n%d,%s,", 2*k+i+1, size), 1)
				}
			}
		}
		r := run(t, written(t, text), Settings{})
		learnt := slices.ContainsFunc(r.Variables, func(v result.Variable) bool { return v.Name == "chargers" })
		if learnt != (canister == "") {
			t.Errorf("canister %q: chargers learnt from: %v; %+v", canister, learnt, r.SetAside)
		}
		mixes := []result.Mix{r.BestSeen.Mix}
		for _, s := range r.Starts {
			mixes = append(mixes, s.Mix)
			if learnt && !slices.ContainsFunc(s.Notes, func(n string) bool { return strings.Contains(n, "how big the canister is") }) {
				t.Errorf("notes %q", s.Notes)
			}
		}
		for _, n := range r.NextTrials {
			mixes = append(mixes, n.Mix)
		}
		for _, m := range mixes {
			if _, named := m.Extras["chargers"]; named {
				t.Errorf("canister %q: a mix with %v chargers is named", canister, m.Extras["chargers"])
			}
		}
	}
}

// A trial that does not say a setting keeps its place, and that is said.
func TestExtraNotSaid(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	r := run(t, written(t, settingLog(8, 40, setting{"0.5 L", func(i int) (string, string) {
		c, rest := varied(i)
		if i%8 == 0 {
			rest = ""
		}
		return c, rest
	}})), Settings{})
	for _, v := range r.Variables {
		if v.Name == "rest_minutes" && v.Assumed != 5 {
			t.Errorf("%+v", v)
		}
	}
	if r.Model[0].N != 40 {
		t.Errorf("%d trials", r.Model[0].N)
	}
	for i, tr := range r.Trials {
		if _, known := tr.Extras["rest_minutes"]; known == (i%8 == 0) {
			t.Errorf("trial %d: rest known %v", i, known)
		}
	}
}
