package sheet

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// Numbers are read to the same bits as by strconv, however they are written.
func TestDecimalAgainstStrconv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		if rapid.Bool().Draw(t, "everyday") {
			x = math.Mod(x, 1e7)
		}
		verb := rapid.SampledFrom([]byte("efg")).Draw(t, "verb")
		text := strconv.FormatFloat(x, verb, rapid.IntRange(-1, 20).Draw(t, "digits"), 64)
		want, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Skip()
		}
		if got, ok := decimal([]byte(text)); !ok || math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%s reads %v, %v; want %v", text, got, ok, want)
		}
	})
}

func TestDecimalRefuses(t *testing.T) {
	for _, text := range []string{"", ".", "-", "1.2.3", "1,5", "NaN", "Inf", "0x10", "1_000", "1e999", "1e", "--1", "1-", "१"} {
		if x, ok := decimal([]byte(text)); ok {
			t.Errorf("%q reads as %v", text, x)
		}
	}
}

func TestUnescape(t *testing.T) {
	for _, c := range []struct{ raw, want string }{
		{"plain", "plain"},
		{"_x0041_", "A"},
		{"a_x000a_b", "a\nb"},
		{"_x005F_x0041_", "_x0041_"},
		{"_x005f_", "_"},
		{"_x41_", "_x41_"},
		{"_xZZZZ_", "_xZZZZ_"},
		{"_x0041", "_x0041"},
		{"_X0041_", "_X0041_"},
		{"_xD83C__xDF68_", "🍨"},
		{"_xD83C_ alone", "\uFFFD alone"},
		{"__x0041__", "_A_"},
	} {
		if got := string(unescape([]byte(c.raw))); got != c.want {
			t.Errorf("%q is %q, want %q", c.raw, got, c.want)
		}
	}
}
