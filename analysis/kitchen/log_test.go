package kitchen

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

// everyLog is one log of each layout at the sizes kitchens log, for some kitchens.
func everyLog(t *testing.T, each int, do func(k *Kitchen, layout Layout, log []Logged)) {
	t.Helper()
	for seed := range uint64(each) {
		for _, family := range Families {
			k := New(family, 9000+seed)
			for _, layout := range Layouts {
				for _, n := range []int{8, 24, 80} {
					log := k.Log(layout, n, Stream(k.Seed, layout.String()+strconv.Itoa(n)))
					if len(log) != n {
						t.Fatalf("%v %d, %v: %d trials logged of %d", family, k.Seed, layout, len(log), n)
					}
					do(k, layout, log)
				}
			}
		}
	}
}

// What is logged never contradicts what happened, to half a minute and half a reading.
func TestLogsAreTrueButForSlips(t *testing.T) {
	everyLog(t, 15, func(k *Kitchen, layout Layout, log []Logged) {
		slips := 0
		for _, l := range log {
			if l.CameOut != l.Truth.CameOut || l.Partly != l.Truth.Partly || l.Broke != l.Truth.Broke {
				t.Fatalf("%v %d, %v, trial %d: logged %+v, truly %+v", k.Family, k.Seed, layout, l.No, l, l.Truth)
			}
			if thrown := !l.CameOut || l.Broke; thrown != (l.Hold == nil) || (thrown && l.Drained != nil) {
				t.Fatalf("trial %d: %+v has the wrong results", l.No, l)
			}
			if b := l.Hold; b != nil && l.Slip != HoldSlip && !(l.Truth.HoldMinutes >= b.Low-0.5 && l.Truth.HoldMinutes <= b.High+0.5) {
				t.Errorf("trial %d: held %v, logged %v", l.No, l.Truth.HoldMinutes, *b)
			}
			if b := l.Drained; b != nil && !(l.Truth.DrainedPercent >= b.Low-k.watches.readLimit/2 && l.Truth.DrainedPercent <= b.High+k.watches.readLimit/2) {
				t.Errorf("trial %d: drained %v, logged %v", l.No, l.Truth.DrainedPercent, *b)
			}
			if l.Slip != NoSlip {
				slips++
			}
			// 0.1 g on the smallest share of the smallest batch is a tenth of a unit of HLB.
			if m := l.Mix(); l.Slip < FatSlip && (math.Abs(m.FatPercent-l.Made.FatPercent) > 0.1 || math.Abs(m.BlendHLB-l.Made.BlendHLB) > 0.7) {
				t.Errorf("trial %d: logged as %+v, made %+v", l.No, m, l.Made)
			}
		}
		if want := k.watches.slips; (slips == 1) != want || slips > 1 {
			t.Errorf("%v %d, %v: %d slips, kitchen slips: %v", k.Family, k.Seed, layout, slips, want)
		}
	})
}

func TestLayouts(t *testing.T) {
	everyLog(t, 5, func(k *Kitchen, layout Layout, log []Logged) {
		last, repeats, changes := log[len(log)-1], 0, 0
		made := map[Mix]bool{}
		for i, l := range log {
			if made[l.aimed] {
				repeats++
			}
			made[l.aimed] = true
			if i > 0 {
				changes += differences(log[i-1].aimed, l.aimed)
			}
			if l.aimed != k.Tries.clamp(l.aimed) {
				t.Errorf("%v: aimed at %+v outside %+v", layout, l.aimed, k.Tries)
			}
		}
		if (layout == OneDay) != (last.Day == 1) {
			t.Errorf("%v, %d trials: last day %d", layout, len(log), last.Day)
		}
		if planned := layout == OneAtATime || layout == Factorial; planned && len(log) >= 24 && repeats == 0 {
			t.Errorf("%v: no repeat in %d trials", layout, len(log))
		}
		// The start of each thing may also go back to another best.
		if perStep := float64(changes) / float64(len(log)-1); layout == OneAtATime && perStep > 1.5 {
			t.Errorf("one at a time changes %.1f things a trial", perStep)
		}
	})
}

func differences(a, b Mix) (n int) {
	for _, same := range []bool{a.FatPercent == b.FatPercent, a.EmulsifierPercent == b.EmulsifierPercent, a.BlendHLB == b.BlendHLB} {
		if !same {
			n++
		}
	}
	return n
}

func TestFactorialIsBalanced(t *testing.T) {
	centres, sum := 0, [3]float64{}
	for _, s := range factorial {
		if s == [3]float64{0.5, 0.5, 0.5} {
			centres++
		}
		for i := range s {
			sum[i] += s[i] - 0.5
		}
	}
	if centres < 5 {
		t.Errorf("%d centre repeats", centres)
	}
	for i, x := range sum {
		if math.Abs(x) > 1e-12 {
			t.Errorf("thing %d leans by %v", i, x)
		}
	}
}

// What is written is what was logged, number by number.
func TestWriteCSV(t *testing.T) {
	everyLog(t, 4, func(k *Kitchen, layout Layout, log []Logged) {
		var b bytes.Buffer
		if err := WriteCSV(&b, log); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&b).ReadAll()
		if err != nil || len(rows) != len(log)+1 {
			t.Fatalf("%d rows for %d trials, %v", len(rows), len(log), err)
		}
		for i, l := range log {
			row := rows[i+1]
			for c, want := range []float64{l.OilGrams, l.WaterGrams, l.LipophilicGrams, l.HydrophilicGrams} {
				if got, err := strconv.ParseFloat(row[2+c], 64); err != nil || got != want || len(row[2+c]) > 6 {
					t.Errorf("trial %d, %s: wrote %q for %v", l.No, rows[0][2+c], row[2+c], want)
				}
			}
			if clogged := !l.CameOut && !l.Partly; clogged != (row[6] == "n") || clogged != (row[8] == "n/a") {
				t.Errorf("trial %d: %+v written as %q", l.No, l, row)
			}
			if l.StillStanding() != strings.HasSuffix(row[8], "+") {
				t.Errorf("trial %d: hold %v written as %q", l.No, l.Hold, row[8])
			}
		}
	})
}

func TestBoundsText(t *testing.T) {
	for want, b := range map[string]*Bounds{
		"":      nil,
		"14":    {14, 14},
		"20+":   {20, math.Inf(1)},
		"10-15": {10, 15},
		"<5":    {0, 5},
		"<0.5":  {0, 0.5},
	} {
		if got := b.text(); got != want {
			t.Errorf("%v written %q, want %q", b, got, want)
		}
	}
}

func TestMistype(t *testing.T) {
	for x, want := range map[float64]float64{
		126.4: 216.4, 3.4: 4.3, 14: 41, 22: 32, 20: 30, 105.3: 205.3, 99: 89, 7: 77, 0.8: 8, 1.1: 2.1, 10: 20,
	} {
		if got := mistype(x); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v mistyped as %v, want %v", x, got, want)
		}
	}
}

func TestHabit(t *testing.T) {
	trial := func(no int, oil float64, cameOut, broke bool, hold, drained float64) Logged {
		l := Logged{No: no, OilGrams: oil, WaterGrams: 100, LipophilicGrams: 2, HydrophilicGrams: 2, CameOut: cameOut, Broke: broke}
		if cameOut && !broke {
			l.Hold, l.Drained = &Bounds{hold, hold}, &Bounds{drained, drained}
		}
		return l
	}
	standing := trial(9, 90, true, false, 20, 3)
	standing.Hold.High = math.Inf(1)
	for _, c := range []struct {
		what string
		log  []Logged
		want int
	}{
		{"longest", []Logged{trial(1, 80, true, false, 12, 3), trial(2, 70, true, false, 15, 3)}, 2},
		{"weeping does not count", []Logged{trial(1, 80, true, false, 12, 3), trial(2, 70, true, false, 15, 13)}, 1},
		{"ties by fat", []Logged{trial(1, 80, true, false, 12, 3), trial(2, 85, true, false, 12, 3)}, 2},
		{"a bound counts as what was seen", []Logged{trial(1, 80, true, false, 22, 3), standing}, 1},
		{"weeping before broken", []Logged{trial(1, 80, true, true, 0, 0), trial(2, 70, true, false, 5, 30)}, 2},
		{"all clogged: the thinnest", []Logged{trial(1, 80, false, false, 0, 0), trial(2, 70, false, false, 0, 0)}, 2},
		{"broken before clogged", []Logged{trial(1, 80, false, false, 0, 0), trial(2, 70, true, true, 0, 0)}, 2},
	} {
		if got := bestOf(c.log, Usual); got.No != c.want {
			t.Errorf("%s: trial %d, want %d", c.what, got.No, c.want)
		}
	}
}

func TestTested(t *testing.T) {
	log := []Logged{{Made: Mix{40, 2, 9}}, {Made: Mix{50, 1, 8}}, {Made: Mix{45, 3, 7}}}
	if got, want := Tested(log), (Box{Span{40, 50}, Span{1, 3}, Span{7, 9}}); got != want {
		t.Errorf("tested %v, want %v", got, want)
	}
}
