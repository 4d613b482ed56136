package method

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// TestAimOf: an aim stands behind its label or beside it, and asks of one thing first.
func TestAimOf(t *testing.T) {
	for _, c := range []struct {
		text, right string
		asks        Factor
	}{
		{"Aim", "To see how the HLB of the pair decides how long a nut foam stands", HLB},
		{"Aim: which blend HLB holds a foam best, 5 g emulsifier each time", "", HLB},
		{"Question", "How much emulsifier does a foam with olive oil need?", Emulsifier},
		{"My aim", "How much olive oil can go in with 1 % emulsifier?", Fat},
		{"Goal: find the best fat content at HLB 10", "", Fat},
		{"Aim", "the effect of the emulsifier dose", Emulsifier},
		{"Aim", "Which emulsifier holds a foam longer?", NoFactor},
		{"Aim", "What the amount of emulsifier does to a foam", Emulsifier},
		{"Aim", "Which oil makes the better foam?", NoFactor},
		{"Aim", "Does it matter whether the emulsifiers are 3 + 3 g or 4 + 2 g?", NoFactor},
		{"Method", "how the HLB is worked out", NoFactor},
		{"The HLB of which was known", "", NoFactor},
	} {
		text, _ := aimOf(handin.Phrase{Text: c.text, Right: c.right, At: trial.Place{Row: 1, Col: 1}})
		if got := askedFirst(text); got != c.asks {
			t.Errorf("%q %q asks of %q, want %q", c.text, c.right, got, c.asks)
		}
	}
}

// TestShownIn: what all the trials are to show may be said in a sentence of any text.
func TestShownIn(t *testing.T) {
	for text, asks := range map[string]Factor{
		"Mixed warm, left overnight. With these trials we test how the emulsifier dose moves the drainage.": Emulsifier,
		"My series shows how the HLB changes a foam.":                                                       HLB,
		"In this experiment I studied the influence of the fat content.":                                    Fat,
		"Here I want to find out how much emulsifier a foam needs.":                                         Emulsifier,
		"These tests do not show how much emulsifier is needed.":                                            NoFactor,
		"With this series I cannot show how the HLB changes a foam.":                                        NoFactor,
		"Next month I will test how the HLB changes a foam.":                                                NoFactor,
		"With these trials we test which oil is better.":                                                    NoFactor,
		"I looked up how the HLB is worked out.":                                                            NoFactor,
	} {
		if got := askedFirst(shownIn(&handin.Work{}, text)); got != asks {
			t.Errorf("%q asks of %q, want %q", text, got, asks)
		}
	}
}
