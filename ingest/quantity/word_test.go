package quantity

import (
	"foamfield/ingest/lexis"
	"foamfield/ingest/units"
	"testing"
)

// TestWordTextsAreOfOneWord likewise, and the words and phrases are reachable.
func TestWordTextsAreOfOneWord(t *testing.T) {
	owner := map[string]Word{}
	for w, texts := range wordTexts {
		for _, text := range lexis.Listed(texts) {
			k := lexis.Key(text)
			if other, taken := owner[k]; taken && other != w {
				t.Errorf("%q is both %v and %v", text, other, w)
			}
			owner[k] = w
			if r, err := Parse(text, units.Percent, units.NoUnit); err != nil || r.Word != w {
				t.Errorf("Parse(%q) = %v, %v; want %v", text, r, err, w)
			}
		}
	}
	for w := NotMeasured; w <= Ditto; w++ {
		for want := range units.Base {
			if r, err := Parse(w.String(), units.Dimension(want), units.NoUnit); err != nil || r.Word != w {
				t.Errorf("Parse(%q, %d) = %v, %v", w, want, r, err)
			}
		}
	}
}

// TestPhraseLength: no phrase is longer than the matcher looks.
func TestPhraseLength(t *testing.T) {
	check := func(table, text string) {
		if n := len(lexis.Lex(lexis.Fold(text), false)); n > lexis.LongestPhrase {
			t.Errorf("%s %q has %d tokens, more than lexis.LongestPhrase", table, text, n)
		}
	}
	for _, texts := range phraseTexts {
		for _, text := range lexis.Listed(texts) {
			check("phrase", text)
		}
	}
	for text := range durations {
		check("duration", text)
	}
}

// TestPhraseTextsHaveOneMeaning, but for the words two languages use apart:
// they are settled by the order in phraseOf.
func TestPhraseTextsHaveOneMeaning(t *testing.T) {
	known := map[string]bool{"von": true}
	owner := map[string]meaning{}
	for m, texts := range phraseTexts {
		for _, text := range lexis.Listed(texts) {
			k := lexis.PhraseKey(text)
			if other, taken := owner[k]; taken && other != m && !known[k] {
				t.Errorf("%q has meanings %d and %d", text, other, m)
			}
			owner[k] = m
		}
	}
}
