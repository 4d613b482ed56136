package kitchen

import (
	"strings"
	"testing"
)

// TestDrainedAt: the minute at which lines say that drainage was read; 0 is none.
func TestDrainedAt(t *testing.T) {
	for _, c := range []struct {
		lines string
		want  float64
	}{
		{"Weeping: % of the foam in the funnel, after 12 min.", 12},
		{"Drip: a 50 g dollop on a sieve, grams underneath after 15 min", 15},
		{"Each mix 300 g. Drainage % of the foam by 10 min.", 10},
		{"Drained = liquid in the cup at 20 minutes", 20},
		{"Ablauf: Gramm unter dem Sieb nach 10 Minuten", 10},
		{"Hold: minutes until it slumps, looked at after 5 min", 0},
		{"Trial 7: drained after 30 min", 0},
		{"Drained: less than 10 % at 20 min", 0},
		{"Drip: grams under the sieve after 10 min", 10},
		{"Drained: under 5 g after 10 min", 0},
		{"Target: drained at 15 min", 0},
		{"Drained: grams after 10 min and after 20 min", 0},
		{"Drained: after 10 min, 5 min for the last two", 0},
		{"Drained: after 10 min, except trial 4", 0},
		{"Drainage: 45 g foam, 1 mm sieve, 25 min", 25},
		{"Ablauf: Schaum 45 g, 25 min, Trichter", 25},
		{"Drainage : mousse 45 g, 25 min", 25},
		{"Drainage: 45 g foam, rested 25 min in the fridge", 0},
		{"Hold: 45 g foam, 25 min at most", 0},
		{"Drainage: 45 g foam, 25 min, 40 min for the last", 0},
		{"Weeping: after 10 min\nDrained: after 15 min", 0},
		{"Rest in the fridge, drained butter used after 10 min", 0},
	} {
		s := &Sheets{}
		for _, text := range strings.Split(c.lines, "\n") {
			s.Lines = append(s.Lines, Line{Text: text})
		}
		if got, _, _ := s.DrainedAt(); got != c.want {
			t.Errorf("%q: minute %g, want %g", c.lines, got, c.want)
		}
	}
}

// TestDrainedSample: how much foam lines on drainage say was put to drain; 0 is none.
func TestDrainedSample(t *testing.T) {
	for _, c := range []struct {
		lines string
		want  float64
	}{
		{"Drainage: 45 g foam, 1 mm sieve, 25 min", 45},
		{"Drainage : mousse 45 g, 25 min, entonnoir", 45},
		{"Ablauf: 45 g Schaum auf dem Sieb, 25 min", 45},
		{"Drip: 45 g of foam in a funnel, read after 25 min", 45},
		{"Sgocciolamento: schiuma 45 g, 25 min", 45},
		{"Uitlek: 45 g schuim, 25 min", 45},
		{"Drainage: 45 g mix, 25 min", 0},
		{"Each siphon: 45 g foam", 0},
		{"Drainage: 45 g foam\nDrip: 50 g foam", 0},
		{"Drainage: foam, 25 min, 45 g of liquid at most", 0},
	} {
		s := &Sheets{}
		for _, text := range strings.Split(c.lines, "\n") {
			s.Lines = append(s.Lines, Line{Text: text})
		}
		if got, _ := s.Sample(); got.Value != c.want {
			t.Errorf("%q: %g g, want %g", c.lines, got.Value, c.want)
		}
	}
}
