package quantity

import (
	"errors"
	"slices"
	"testing"
)

func TestParseAnswer(t *testing.T) {
	for _, c := range []struct {
		texts []string
		is    Answer
		word  Word
	}{
		{[]string{"y", "Y", "yes", "Yes.", "YES!", "x", "X", "✓", "✔", "1", "1.0", "o", "oui", "Oui", "sí", "si", "sì", "SI", "ja", "j", "vero", "TRUE", "VRAI", "VERDADERO", "WAHR"}, Yes, NoWord},
		{[]string{"n", "no", "No.", "non", "nein", "0", "FALSE", "FAUX", "FALSO", "FALSCH", "✗", "none", "nil", "never", "pas du tout"}, No, NoWord},
		{[]string{"partly", "a bit", "bit", "+", "++", "un peu", "light", "leicht", "poco", "un poco", "un po'", "spits", "en partie", "teilweise", "in parte", "crache", "spritzt", "escupe"}, Partly, NoWord},
		{[]string{"+++", "heavy", "a lot", "beaucoup", "viel", "mucho", "molto", "stark", "badly"}, Yes, NoWord},
		{[]string{"yes, a bit", "oui (un peu)", "yes - slightly", "sí, un poco"}, Partly, NoWord},
		{[]string{"yes, after straining", "oui, au 2e coup", "ja (nach Sieben)"}, Yes, NoWord},
		{[]string{"no, fine", "non, rien", "nein, sauber"}, No, NoWord},
		{[]string{"trace", "few drops", "quelques gouttes"}, Partly, NoWord},
		{[]string{"", " ", "-", "–", "n/a", "?", "nd", "lost", "o/n"}, NoAnswer, NotMeasured},
		{[]string{"bouché", "clogged", "verstopft", "DNF"}, NoAnswer, DidNotComeOut},
		{[]string{"no foam"}, NoAnswer, NoFoam},
		{[]string{"idem", `"`, "wie oben"}, NoAnswer, Ditto},
	} {
		for _, text := range c.texts {
			if a, w, err := ParseAnswer(text); err != nil || a != c.is || w != c.word {
				t.Errorf("ParseAnswer(%q) = %q %q, %v; want %q %q", text, a, w, err, c.is, c.word)
			}
		}
	}
	for _, text := range []string{"12", "3", "no clog", "overnight", "12 g", "hmm", "still standing", "ok", ">0", "-1"} {
		a, w, err := ParseAnswer(text)
		if u := new(Unreadable); !errors.As(err, &u) || a != NoAnswer || w != NoWord {
			t.Errorf("ParseAnswer(%q) = %q %q, %v; want an error", text, a, w, err)
		}
	}
}

func TestEvents(t *testing.T) {
	for _, c := range []struct {
		text string
		is   []Event
	}{
		{"clogged", []Event{Clogged}},
		{"Clogged!", []Event{Clogged}},
		{"bouché", []Event{Clogged}},
		{"atascado", []Event{Clogged}},
		{"verstopft", []Event{Clogged}},
		{"intasato", []Event{Clogged}},
		{"gas only", []Event{Clogged}},
		{"split", []Event{Broke}},
		{"tranché", []Event{Broke}},
		{"cortado", []Event{Broke}},
		{"impazzito", []Event{Broke}},
		{"geronnen", []Event{Broke}},
		{"leaked oil", []Event{OilLeak}},
		{"oil leak after 5 min", []Event{OilLeak}},
		{"weeps", []Event{Weeps}},
		{"llora", []Event{Weeps}},
		{"spits", []Event{PartlyOut}},
		{"spits, then clogged", []Event{PartlyOut, Clogged}},
		{"half blocked", []Event{PartlyOut}},
		{"collapsed at once", []Event{CollapsedAtOnce}},
		{"sofort zusammengefallen", []Event{CollapsedAtOnce}},
		{"retombé tout de suite", []Event{CollapsedAtOnce}},
		{"came out liquid", []Event{CameOutLiquid}},
		{"kein Schaum", []Event{CameOutLiquid}},
		{"came out clean", []Event{CameOut}},
		{"clogged 2nd squirt, strained → fine", []Event{Clogged, Fine}},
		{"slightly clogged", []Event{PartlyOut}},
		{"leggermente intasato", []Event{PartlyOut}},
		{"leicht verstopft", []Event{PartlyOut}},
		{"a bit grainy, clogged", []Event{Clogged}},
		// Denied.
		{"didn't clog", []Event{CameOut}},
		{"didn’t clog", []Event{CameOut}},
		{"no clog", []Event{CameOut}},
		{"no split", []Event{Whole}},
		{"never split", []Event{Whole}},
		{"not clogged", []Event{CameOut}},
		{"pas bouché", []Event{CameOut}},
		{"n'est pas bouché", []Event{CameOut}},
		{"pas tranché, pas d'huile", []Event{Whole, NoOil}},
		{"nicht verstopft", []Event{CameOut}},
		{"nicht mehr verstopft", []Event{CameOut}},
		{"no atascado", []Event{CameOut}},
		{"non intasato", []Event{CameOut}},
		{"sin atasco", []Event{CameOut}},
		{"senza olio", []Event{NoOil}},
		{"no oil", []Event{NoOil}},
		{"clogged: no", []Event{CameOut}},
		{"split? no", []Event{Whole}},
		{"verstopft nicht", []Event{CameOut}},
		{"didn't come out", []Event{Clogged}},
		{"did not come out", []Event{Clogged}},
		{"wouldn't dispense", []Event{Clogged}},
		{"n'est pas sorti", []Event{Clogged}},
		{"no salió", []Event{Clogged}},
		{"non è uscito", []Event{Clogged}},
		{"kam nicht raus", []Event{Clogged}},
		{"kam nichts", []Event{Clogged}},
		{"no, clogged", []Event{Clogged}},
		{"no split but clogged", []Event{Whole, Clogged}},
		{"not good", []Event{}},
		{"ok", []Event{Fine}},
		{"sin atasco ni aceite", []Event{CameOut, NoOil}},
		{"no clog or split", []Event{CameOut, Whole}},
		// Whole words only.
		{"splitter banana", []Event{}},
		{"olive oils", []Event{}},
		{"fridge was 9C", []Event{}},
		{"", []Event{}},
	} {
		if got := Events(c.text); !slices.Equal(got, c.is) {
			t.Errorf("Events(%q) = %v; want %v", c.text, got, c.is)
		}
	}
}
