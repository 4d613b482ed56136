package event

import (
	"foamfield/ingest/lexis"
	"slices"
	"testing"
)

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
		{"clogged a bit", []Event{PartlyOut}},
		{"almost split", nil},
		{"not stable", nil},
		{"not void", nil},
		{"discard first squirt", nil},
		{"discard", []Event{Void}},
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
		// In part is no other thing than coming out.
		{"partly came out", []Event{PartlyOut}},
		{"sorti en partie seulement", []Event{PartlyOut}},
		{"uscito solo in parte", []Event{PartlyOut}},
		{"came out at first, then partly", []Event{CameOut, PartlyOut}},
		{"not completely dispensed", []Event{PartlyOut}},
		{"did not come out entirely", []Event{PartlyOut}},
		{"pas tout à fait", nil},
		{"pas complètement sorti", []Event{PartlyOut}},
		{"pas du tout sorti", []Event{Clogged}},
		{"rien sorti", []Event{Clogged}},
		{"completely clogged", []Event{Clogged}},
		{"nicht ganz stabil", nil},
		// Words between a verb and its part.
		{"kam gut heraus", []Event{CameOut, Fine}},
		{"kam nur zum Teil heraus", []Event{PartlyOut}},
		{"kam nicht ganz heraus", []Event{PartlyOut}},
		{"kam gar nicht heraus", []Event{Clogged}},
		{"kam vollständig raus", []Event{CameOut}},
		{"came only partly out", []Event{PartlyOut}},
		{"kwam helemaal eruit", []Event{CameOut}},
		{"kam vollständig aus dem Siphon", []Event{CameOut}},
		{"kam nur teilweise aus dem Siphon", []Event{PartlyOut}},
		{"kam nicht aus dem Siphon", []Event{Clogged}},
		{"kwam deels uit de sifon", []Event{PartlyOut}},
		{"kwam er maar half uit", []Event{PartlyOut}},
		{"n'est sorti qu'en partie", []Event{PartlyOut}},
		{"sorti par à-coups", []Event{PartlyOut}},
		{"salió solo una parte", []Event{PartlyOut}},
		{"nothing dispensed", []Event{Clogged}},
		{"bloccato, niente uscito", []Event{Clogged}},
		{"came out, no problem", []Event{CameOut, Fine}},
		{"did not break", []Event{Whole}},
		{"after the coffee break", nil},
		{"ein Teil der Sahne war warm", nil},
		{"Sahne kam aus dem Kühlschrank", nil},
		{"kam kaum heraus", nil},
		{"kam mit dem Löffel heraus", nil},
		{"sin atasco ni aceite", []Event{CameOut, NoOil}},
		{"no clog or split", []Event{CameOut, Whole}},
		// Whole words only.
		{"splitter banana", []Event{}},
		{"olive oils", []Event{}},
		{"fridge was 9C", []Event{}},
		{"", []Event{}},
	} {
		if got := Of(c.text); !slices.Equal(got, c.is) {
			t.Errorf("Of(%q) = %v; want %v", c.text, got, c.is)
		}
	}
}

// TestSure: every word is accounted for, or the text is not.
func TestSure(t *testing.T) {
	for _, c := range []struct {
		text string
		sure bool
	}{
		{"kam nur teilweise heraus", true},
		{"came out completely", true},
		{"komplett verstopft", true},
		{"sorti seulement en partie", true},
		{"not completely", false},
		{"nicht ganz gut", false},
		{"not entirely split", false},
		{"kam kaum heraus", false},
		{"kam gar kaum heraus", false},
		{"came partly", true},
		{"came only in part", true},
		{"kam teilweise", true},
		{"in part came", true},
		{"came late, partly", false},
		{"came", false},
		{"partly came apart", false},
	} {
		if _, sure := Sure(c.text); sure != c.sure {
			t.Errorf("Sure(%q) = %v; want %v", c.text, sure, c.sure)
		}
	}
}

func TestEventTextsAreOfOneEvent(t *testing.T) {
	owner := map[string]Event{}
	for e, texts := range eventTexts {
		for _, text := range lexis.Listed(texts) {
			k := lexis.PhraseKey(text)
			if other, taken := owner[k]; taken && other != e {
				t.Errorf("%q is both %v and %v", text, other, e)
			}
			owner[k] = e
		}
	}
}

// TestPhraseLength: no phrase is longer than the matcher looks.
func TestPhraseLength(t *testing.T) {
	for _, texts := range eventTexts {
		for _, text := range lexis.Listed(texts) {
			if n := len(lexis.Lex(lexis.Fold(text), false)); n > lexis.LongestPhrase {
				t.Errorf("%q has %d tokens, more than LongestPhrase", text, n)
			}
		}
	}
}
