package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
)

// pairLog is n mixes with one of two pairs of emulsifiers of the same HLB, the second
// of which multiplies the hold by e^change; every third trial is made with it. Of the
// trials in odd, a third kind is used.
func pairLog(seed uint64, n int, change float64, odd ...int) string {
	rng := rand.New(rand.NewPCG(seed, 11))
	var b strings.Builder
	b.WriteString("no,oil g,water g,GMS g,sucrose ester 15 g,polysorbate 80 g,polysorbate 20 g,came out,hold min,split\n")
	tenth := func(v float64) float64 { return math.Round(10*v) / 10 }
	for i := range n {
		fat, e, high := 32+20*rng.Float64(), 1.2+1.8*rng.Float64(), 0.3+0.3*rng.Float64()
		ln := 3.3 + 0.25*(e-2) - 0.02*(fat-42) + 0.2*rng.NormFloat64()
		oil, low, rest := tenth(2*fat), tenth(2*e*(1-high)), tenth(2*e*high)
		var of [3]float64
		switch {
		case slices.Contains(odd, i):
			of[2] = rest
		case i%3 == 2:
			of[1] = rest
			ln += change
		default:
			of[0] = rest
		}
		fmt.Fprintf(&b, "%d,%.1f,%.1f,%.1f,%.1f,%.1f,%.1f,y,%.1f,n\n", i+1, oil, 200-oil-low-rest, low, of[0], of[1], of[2], math.Exp(ln))
	}
	return b.String()
}

const (
	sucrosePair     = "GMS and sucrose ester 15"
	polysorbatePair = "GMS and polysorbate 80"
)

// Two pairs of one HLB are told apart, and a start is made with one of them only: the
// better one where there is a better one.
func TestPairsAreNotPooled(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	covered, all := 0, 0
	for seed := range uint64(thorough.Of(t, 1, 6)) {
		for _, change := range []float64{-0.6, 0, 0.6} {
			r := run(t, written(t, pairLog(seed, 36, change)), Settings{})
			if len(r.Choices) != 1 || len(r.Choices[0].Levels) != 2 || len(r.Starts) == 0 {
				t.Fatalf("%+v; %d starts", r.Choices, len(r.Starts))
			}
			c := r.Choices[0]
			better := map[bool]string{true: polysorbatePair, false: sucrosePair}[change > 0]
			if change != 0 && c.Held != better {
				t.Errorf("log %d, change %v: made with %s", seed, change, c.Held)
			}
			for _, s := range r.Starts {
				for _, l := range s.Ingredients {
					if l.Grams > 0 && (l.Name == "sucrose ester 15" && c.Held != sucrosePair || l.Name == "polysorbate 80" && c.Held != polysorbatePair) {
						t.Errorf("log %d, change %v: a start with %s has %v g of %s", seed, change, c.Held, l.Grams, l.Name)
					}
				}
			}
			for _, l := range c.Levels {
				if l.HoldFactor == nil {
					continue
				}
				want := math.Exp(change)
				if c.Held == polysorbatePair {
					want = 1 / want
				}
				all++
				if l.HoldFactor.Low <= want && want <= l.HoldFactor.High {
					covered++
				}
				if change != 0 && l.Verdict != result.Clear {
					t.Errorf("log %d: a change of %v is %s", seed, change, l.Verdict)
				}
			}
			checkStarts(t, r)
		}
	}
	t.Logf("%d of %d limits cover", covered, all)
	if covered < fewest(all) {
		t.Errorf("%d of %d limits cover", covered, all)
	}
}

// A kind used once or twice gets no start, and no say in the others.
func TestRareKinds(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	r := run(t, written(t, pairLog(1, 36, 0, 4, 9)), Settings{})
	c := r.Choices[0]
	if len(c.Levels) != 3 || c.Levels[2].Name != "others" || c.Levels[2].Trials != 2 {
		t.Errorf("%+v", c.Levels)
	}
	for _, s := range r.Starts {
		for _, l := range s.Ingredients {
			if l.Name == "polysorbate 20" && l.Grams > 0 {
				t.Errorf("a start with %v g of what was tried twice", l.Grams)
			}
		}
	}
}

// A mix with one emulsifier of a pair only is the end of the pair's range, not another kind.
func TestPartOfAPair(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	lines := strings.Split(strings.TrimSpace(pairLog(2, 24, 0)), "\n")
	for i := range lines[1:] {
		cells := strings.Split(lines[i+1], ",")
		cells[4], cells[5] = "2.0", "0"
		if i < 4 {
			cells[4] = "0"
		}
		lines[i+1] = strings.Join(cells, ",")
	}
	if r := run(t, written(t, strings.Join(lines, "\n")), Settings{}); len(r.Choices) != 0 {
		t.Errorf("%+v", r.Choices)
	}
}

// Two fats are told apart like two pairs of emulsifiers.
func TestFatsAreNotPooled(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	lines := strings.Split(strings.TrimSpace(pairLog(3, 30, 0)), "\n")
	lines[0] = strings.Replace(lines[0], "oil g,", "olive oil g,cocoa butter g,", 1)
	for i := range lines[1:] {
		cells := strings.Split(lines[i+1], ",")
		cells[4], cells[5] = "2.0", "0"
		if i%2 == 0 {
			cells[1] += ",0"
		} else {
			cells[1] = "0," + cells[1]
			cells[7] = "4"
		}
		lines[i+1] = strings.Join(cells, ",")
	}
	r := run(t, written(t, strings.Join(lines, "\n")), Settings{})
	if len(r.Choices) != 1 || r.Choices[0].By != "fat" || r.Choices[0].Held != "olive oil" {
		t.Fatalf("%+v", r.Choices)
	}
	for _, s := range r.Starts {
		for _, l := range s.Ingredients {
			if l.Name == "cocoa butter" && l.Grams > 0 {
				t.Errorf("a start with %v g of the fat that falls", l.Grams)
			}
		}
	}
}

// Emulsifiers that were never blended have one HLB each: the way that starts are made in
// has one value of it, which moves nothing.
func TestAWayOfOneHLB(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	log := sheetOf("trial|butter g|cider g|GMS g|lecithin g|came out|hold min", func(m smoked) string {
		low, high := "", fmt.Sprintf("%.1f", 3*m.high)
		if m.no%2 == 0 {
			low, high = high, low
		}
		return fmt.Sprintf("%.0f|%.0f|%s|%s|%s|%s", 3.6*m.fat, 290-3.6*m.fat, low, high, m.came(), m.held())
	})
	r := studied(t, saved(t, log, ""))
	if bad := unfinished(reflect.ValueOf(r), "results"); bad != "" || len(r.Effects) != 3 {
		t.Errorf("%s is no number; %d effects", bad, len(r.Effects))
	}
}
