package reports

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foamfield/plots"
)

func TestChance(t *testing.T) {
	for _, c := range []struct {
		mean, low  float64
		want, also string
	}{
		{0.86, 0.62, "about 9 in 10", "perhaps as few as 6"},
		{0.97, 0.85, "about 19 in 20", "perhaps as few as 17"},
		{0.97, 0.969, "about 19 in 20", ""},
		{0.5, 0.3, "about 1 in 2", "perhaps as few as 3 in 10"},
		{0.5, 0.49, "about 1 in 2", ""},
		{0.04, 0.01, "about 1 in 25", "perhaps as few as 1 in 100"},
		{0.126, 0.126, "about 1 in 8", ""},
		{0.048, 0.002, "about 1 in 20", "perhaps as few as less than 1 in 100"},
		{0.33, 0.1, "about 1 in 3", "perhaps as few as 1 in 10"},
		{0.2, 0.2, "about 1 in 5", ""},
		{0.78, 0.04, "about 8 in 10", "perhaps as few as 1 in 25"},
		{0.995, 0.9, "nearly always", "perhaps as few as 9 in 10"},
		{1, 1, "nearly always", ""},
		{0.9901, 0.9901, "nearly always", ""},
		{0.99, 0.99, "about 19 in 20", ""},
		{0.0099, 0, "less than 1 in 100", ""},
		{0, 0, "less than 1 in 100", ""},
		{0.9, 0.95, "about 9 in 10", ""}, // a limit above the mean is no limit
		{math.NaN(), 0, "not known", ""},
		{1.2, 0.5, "not known", ""},
		{-0.1, -0.2, "not known", ""},
	} {
		if got := Chance(c.mean); got != c.want {
			t.Errorf("Chance(%v) = %q, want %q", c.mean, got, c.want)
		}
		if got := AtLeast(c.mean, c.low); got != c.also {
			t.Errorf("AtLeast(%v, %v) = %q, want %q", c.mean, c.low, got, c.also)
		}
	}
}

// A share that is said is never far from the chance, and a larger chance is
// never said to be smaller.
func TestShareIsNearAndRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := rapid.Float64Range(0.01, 0.99).Draw(t, "p"), rapid.Float64Range(0.01, 0.99).Draw(t, "q")
		if p > q {
			p, q = q, p
		}
		n, of := plots.Share(p)
		m, over := plots.Share(q)
		if d := math.Abs(float64(n)/float64(of) - p); d > 0.0501 {
			t.Errorf("%v is said as %d in %d", p, n, of)
		}
		if float64(n)/float64(of) > float64(m)/float64(over) {
			t.Errorf("%v is said as %d in %d, the larger %v as %d in %d", p, n, of, q, m, over)
		}
	})
}

// A chance below the wanted one is never said in the words of the wanted one.
func TestJustUnderTheWanted(t *testing.T) {
	for _, c := range []struct {
		mean float64
		want string
	}{
		{0.799, "a little under 8 in 10"}, {0.76, "a little under 8 in 10"}, {0.8, "about 8 in 10"}, {0.83, "about 8 in 10"}, {0.7, "about 7 in 10"},
	} {
		if got := chanceAndLimit("x", c.mean, c.mean, 0.8).String(); got != c.want || !strings.Contains(got, " in 10") {
			t.Errorf("%v: %q, want %q", c.mean, got, c.want)
		}
	}
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		step float64
		want int
	}{{0.1, 1}, {0.01, 2}, {0.5, 1}, {0.05, 2}, {1, 0}, {5, 0}, {0.25, 2}, {0.001, 3}, {0.0001, 3}, {0, 3}} {
		if got := decimals(c.step); got != c.want {
			t.Errorf("decimals(%v) = %d, want %d", c.step, got, c.want)
		}
	}
}

func TestNum(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{{107.1, 1, "107.1"}, {186, 1, "186.0"}, {-0.04, 1, "0.0"}, {-0.06, 1, "-0.1"}, {20, 0, "20"}, {0.25, 1, "0.2"}} {
		if got := num("x", c.v, c.digits).Text; got != c.want {
			t.Errorf("num(%v, %d) = %q, want %q", c.v, c.digits, got, c.want)
		}
	}
}
