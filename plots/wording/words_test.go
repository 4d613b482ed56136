package wording

import (
	"math"
	"testing"

	"foamfield/analysis/result"
)

func TestWords(t *testing.T) {
	r := &result.Results{}
	for _, tt := range []struct{ got, want string }{
		{Number(1.50, 2), "1.5"}, {Number(100, 0), "100"}, {Number(-0.001, 1), "0"}, {Number(12, 1), "12"},
		{Chance(0.86), "about 86 in 100"}, {Chance(0.02), "about 2 in 100"}, {Chance(0.96), "about 96 in 100"}, {Chance(math.NaN()), "not known"},
		{ChanceAgainst(0.79, 0.8), "about 79 in 100"}, {ChanceAgainst(0.797, 0.8), "a little under 80 in 100"}, {ChanceAgainst(0.8, 0.8), "about 80 in 100"}, {ChanceAgainst(0.995, 0.999), "nearly always"},
		{WantedTimes(0.8), "8 times in 10"}, {WantedTimes(0.2), "twice in 10"}, {WantedInTen(0.8), "8 in 10"}, {WantedInTen(0.95), "19 in 20"}, {WantedInTen(0.87), "87 in 100"}, {WantedInTen(0.875), "875 in 1000"},
		{Span(r, FatPercent, 41.2, 50), "41 to 50 % fat"}, {Span(r, FatPercent, 41.2, 41.3), "41 % fat"},
		{Span(r, BlendHLB, 6, 9.5), "HLB 6 to 9.5"}, {Span(r, "salt", 1, 2), "salt 1 to salt 2"},
		{Capital(""), ""}, {Capital("öl"), "Öl"}, {Sentence(" "), ""}, {Sentence(" it holds "), "It holds."}, {Sentence("why?"), "Why?"},
		{List([]string{"a"}), "a"}, {List([]string{"a", "b", "c"}), "a, b and c"}, {Plural(1, "trial", "trials"), "1 trial"}, {Times(1), "once"}, {Times(2), "twice"}, {Times(11), "11 times"},
		{AxisLabel(r, "gum_percent"), "gum percent"}, {More(r, BlendHLB), "a higher HLB"},
	} {
		if tt.got != tt.want {
			t.Errorf("%q, want %q", tt.got, tt.want)
		}
	}
}
