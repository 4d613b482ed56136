package say

import (
	"math"
	"testing"

	"foamfield/plots/wording"
)

func TestChance(t *testing.T) {
	for _, c := range []struct {
		mean, low  float64
		want, also string
	}{
		{0.86, 0.62, "about 86 in 100", "perhaps only 62"},
		{0.97, 0.85, "about 97 in 100", "perhaps only 85"},
		{0.97, 0.966, "about 97 in 100", ""},
		{0.97, 0.964, "about 97 in 100", "perhaps only 96"},
		{0.04, 0.01, "about 4 in 100", "perhaps only 1"},
		{0.048, 0.002, "about 5 in 100", "perhaps hardly any"},
		{0.995, 0.9, "nearly always", "perhaps only 90 in 100"},
		{0.991, 0.99, "nearly always", "perhaps only 99 in 100"},
		{1, 1, "nearly always", ""},
		{0.9901, 0.9901, "nearly always", ""},
		{0.99, 0.99, "about 99 in 100", ""},
		{0.0099, 0, "fewer than 1 in 100", ""},
		{0, 0, "fewer than 1 in 100", ""},
		{0.9, 0.95, "about 90 in 100", ""}, // a limit above the mean is no limit
		{math.NaN(), 0, "not known", ""},
		{1.2, 0.5, "not known", ""},
		{-0.1, -0.2, "not known", ""},
	} {
		if got := wording.Chance(c.mean); got != c.want {
			t.Errorf("Chance(%v) = %q, want %q", c.mean, got, c.want)
		}
		if got := AtLeast(c.mean, c.low); got != c.also {
			t.Errorf("AtLeast(%v, %v) = %q, want %q", c.mean, c.low, got, c.also)
		}
	}
}

// A chance below the wanted one is never said in the words of the wanted one.
func TestJustUnderTheWanted(t *testing.T) {
	for _, c := range []struct {
		mean float64
		want string
	}{
		{0.799, "a little under 80 in 100"}, {0.796, "a little under 80 in 100"}, {0.8, "about 80 in 100"}, {0.83, "about 83 in 100"}, {0.7, "about 70 in 100"},
	} {
		if got := ChanceAndLimit("x", c.mean, c.mean, 0.8).String(); got != c.want {
			t.Errorf("%v: %q, want %q", c.mean, got, c.want)
		}
	}
}

// A sentence counts foams: never a share of a share, never one of which fewer than none work.
func TestWorksAsPeopleCount(t *testing.T) {
	for _, c := range []struct {
		mean, low float64
		want      string
	}{
		{0.94, 0.77, "Of 100 such foams about 94 work, perhaps only 77"},
		{0.797, 0.5, "Of 100 such foams a little under 80 work, perhaps only 50"},
		{0.012, 0.001, "Of 100 such foams about 1 works, perhaps hardly any"},
		{0.001, 0, "Of 100 such foams fewer than 1 works"},
		{0.21, 0.2, "Of 100 such foams about 21 work, perhaps only 20"},
		{0.995, 0.9, "Such foams nearly always work, perhaps only 90 in 100"},
		{math.NaN(), 0, "How often such foams work is not known"},
	} {
		if got := WorksAndLimit("x", c.mean, c.low, 0.8).String(); got != c.want {
			t.Errorf("%v, %v: %q, want %q", c.mean, c.low, got, c.want)
		}
	}
}
