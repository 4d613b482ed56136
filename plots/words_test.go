package plots

import (
	"image/color"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"

	"foamfield/analysis/result"
)

func TestWords(t *testing.T) {
	r := kitchen(3, 1)
	for _, tt := range []struct{ got, want string }{
		{number(1.50, 2), "1.5"}, {number(100, 0), "100"}, {number(-0.001, 1), "0"}, {number(12, 1), "12"},
		{Chance(0.86), "about 86 in 100"}, {Chance(0.02), "about 2 in 100"}, {Chance(0.96), "about 96 in 100"}, {Chance(math.NaN()), "not known"},
		{ChanceAgainst(0.79, 0.8), "about 79 in 100"}, {ChanceAgainst(0.797, 0.8), "a little under 80 in 100"}, {ChanceAgainst(0.8, 0.8), "about 80 in 100"}, {ChanceAgainst(0.995, 0.999), "nearly always"},
		{wantedInTen(0.8), "8 in 10"}, {wantedInTen(0.95), "19 in 20"}, {wantedInTen(0.87), "87 in 100"}, {wantedInTen(0.875), "875 in 1000"},
		{span(r, fatPercent, 41.2, 50), "41 to 50 % fat"}, {span(r, fatPercent, 41.2, 41.3), "41 % fat"},
		{span(r, blendHLB, 6, 9.5), "HLB 6 to 9.5"}, {span(r, "salt", 1, 2), "salt 1 to salt 2"},
		{Capital(""), ""}, {Capital("öl"), "Öl"}, {Sentence(" "), ""}, {Sentence(" it holds "), "It holds."}, {Sentence("why?"), "Why?"},
		{list([]string{"a"}), "a"}, {list([]string{"a", "b", "c"}), "a, b and c"}, {plural(1, "trial", "trials"), "1 trial"},
		{axisLabel(r, "gum_percent"), "gum percent"}, {more(r, blendHLB), "a higher HLB"},
		{times(2.34), "2.3 times"}, {times(1), "1 times"}, {times(0.42), "0.42 times"}, {times(37.4), "37 times"}, {times(1e-5), "under 0.01 times"},
	} {
		if tt.got != tt.want {
			t.Errorf("%q, want %q", tt.got, tt.want)
		}
	}
}

func TestFate(t *testing.T) {
	yes, no, partly_, works := result.Yes, result.No, result.Partly, true
	for _, tt := range []struct {
		name  string
		trial result.Trial
		want  fate
	}{
		{"worked", result.Trial{CameOut: &yes, Works: &works}, worked},
		{"a kitchen that counts partly as out", result.Trial{CameOut: &partly_, Works: &works}, worked},
		{"clogged", result.Trial{CameOut: &no, FailedBy: []result.Outcome{result.CameOut}}, clogged},
		{"partly", result.Trial{CameOut: &partly_, FailedBy: []result.Outcome{result.CameOut}}, partly},
		{"partly counted as out, then fell", result.Trial{CameOut: &partly_, FailedBy: []result.Outcome{result.HoldMinutes}}, fell},
		{"the first failure decides", result.Trial{CameOut: &yes, FailedBy: []result.Outcome{result.Broke, result.DrainedPercent}}, split},
		{"wept", result.Trial{FailedBy: []result.Outcome{result.DrainedPercent}}, weeps},
		{"nothing known", result.Trial{}, unknown},
	} {
		if got := fateOf(&tt.trial); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got.word(), tt.want.word())
		}
	}
}

// luminance and contrast are those of WCAG 2.2, "relative luminance" and
// "contrast ratio".
func luminance(c color.RGBA) float64 {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

func contrast(a, b string) float64 {
	x, y := luminance(hex(a)), luminance(hex(b))
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func TestColoursReadInGrey(t *testing.T) {
	for _, tt := range []struct {
		on, ink string
		least   float64
	}{
		{Paper, Ink, 7}, {Paper, Quiet, 4.5}, {Paper, Accent, 4.5}, {Bands[4], Ink, 4.5}, {Uncertain, Ink, 7},
		{Paper, WorkedColour, 4.5}, {Paper, CloggedColour, 4.5}, {Paper, PartlyColour, 4.5}, {Paper, FellColour, 4.5},
		{Paper, WeepsColour, 4.5}, {Paper, UnknownColour, 4.5}, {Paper, SplitColour, 3}, {Bands[4], Accent, 3},
	} {
		if got := contrast(tt.on, tt.ink); got < tt.least {
			t.Errorf("%s on %s: contrast %.2f, want %.1f", tt.ink, tt.on, got, tt.least)
		}
	}
	for i := 1; i < len(Bands); i++ {
		if got := contrast(Bands[i-1], Bands[i]); got < 1.12 {
			t.Errorf("bands %d and %d: contrast %.2f in grey", i-1, i, got)
		}
	}
}

func TestTicks(t *testing.T) {
	wide := func(string) vg.Length { return 20 }
	for _, tt := range []struct {
		is     axisRange
		length vg.Length
		want   string
	}{
		{axisRange{lo: 30, hi: 58, log: false}, 300, "30 35 40 45 50 55"},
		{axisRange{lo: 30, hi: 58, log: false}, 60, "30 40 50"},
		{axisRange{lo: 0.8, hi: 3.5, log: true}, 300, "0.8 1 1.5 2 2.5 3"},
		{axisRange{lo: 1, hi: 200, log: true}, 200, "1 2 5 10 20 50 100 200"},
		{axisRange{lo: 1, hi: 200, log: true}, 100, "1 3 10 30 100"},
		{axisRange{lo: 2, hi: 2.04, log: true}, 300, "2 2.01 2.02 2.03 2.04"},
		{axisRange{lo: -5, hi: 5, log: false}, 300, "-4 -2 0 2 4"},
	} {
		var got []string
		for _, k := range tt.is.ticks(tt.length, wide) {
			got = append(got, k.Label)
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%v on %v: %q, want %q", tt.is, tt.length, s, tt.want)
		}
	}
}
