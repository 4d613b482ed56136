package quantity

import (
	"slices"
	"strings"
	"testing"
)

var answerNames = map[Answer]string{Yes: "yes", Partly: "partly", No: "no"}

// reply writes a reply in one line: how it answers, then what happened.
func reply(r Reply, err error) string {
	var parts []string
	sense := [...]string{"", "", "value ", "mark ", "strength ", "nearly "}[r.Sense]
	switch {
	case err != nil:
		return "?"
	case r.Sense == Marks:
		parts = append(parts, sense+r.Mark)
	case r.Sense != NoSense:
		parts = append(parts, sense+answerNames[r.Answer])
	case r.Word != NoWord:
		parts = append(parts, r.Word.String())
	}
	for _, e := range r.Events {
		parts = append(parts, e.String())
	}
	return strings.Join(parts, "; ")
}

// TestParseReply has a reading a line, with the texts that have it.
func TestParseReply(t *testing.T) {
	for _, c := range []struct{ want, texts string }{
		{"yes", "y|Y|yes|Yes.|YES!|oui|Oui|sí|si|sì|SI|ja|j|vero|TRUE|VRAI|VERDADERO|WAHR|fully|completely|komplett"},
		{"no", "n|no|No.|non|nein|FALSE|FAUX|FALSO|FALSCH|none|nil|never|pas du tout|not at all|not really"},
		{"partly", "partly|a bit|bit|un peu|light|leicht|poco|un poco|un po'|en partie|teilweise|in parte|yes, a bit|oui (un peu)|yes - slightly|sí, un poco|spits|crache|spritzt|escupe|trace|few drops|quelques gouttes|+/-|slightly"},
		{"strength yes", "+++|++|heavy|a lot|beaucoup|viel|mucho|molto|stark|badly|very|sehr"},
		{"yes", "yes, after straining|ja (nach Sieben)|yes; second try"},
		{"no", "no, fine|no, all still in the siphon"},
		{"no; came out", "nein, sauber"},
		{"value yes", "ok|OK|fine|good|Perfect|no problem|no issues|👍|gut|sehr gut|bien|parfait|bueno|bene|totally fine|very good|pass"},
		{"value no", "bad|fail|failed|poor|👎|schlecht|raté|malo|very bad"},
		{"value partly", "so-so|meh|okay-ish|not great|mittel"},
		{"mark ✓", "✓|✔|✅|√"},
		{"mark ✗", "✗|✘|❌"},
		{"mark x", "x|X|×"},
		{"mark o", "o|O"},
		{"mark +", "+"},
		{"mark 1", "1|1.0"},
		{"mark 0", "0"},
		{"mark 3", "3|3.0"},
		{"mark -", "-|–|—"},
		{"nearly no", "almost|nearly|not quite|presque|casi|hardly"},
		{"not measured", "|n/a|?|nd|lost|o/n|y/n"},
		{"not measured; was not made", "not checked|not made|no gas|nicht probiert|non testé|no siphon left|not sure|ran out of gas"},
		{"did not come out", "bouché|clogged|verstopft|DNF"},
		{"no foam", "no foam"},
		{"same as above", "idem|\"|wie oben"},
		{"did not split", "stable|very stable|completely stable|sehr stabil|très stable|always stable|intact|smooth|whole|strong emulsion|didn't split|no split"},
		{"split", "badly split|split|totally split"},
		{"came out", "no clog|didn't clog|came out"},
		{"partly came out", "clogged a bit|almost clogged|slightly clogged"},
		{"?", "12 g|hmm|>0|-1|maybe|quux|stable quux|no -> yes|yes? no|yes / no|split quux|perfectly quux|12 34|fast|almost split|nearly curdled|not stable|not void|yes 2|not much|no more cream"},
	} {
		for _, text := range strings.Split(c.texts, "|") {
			if got := reply(ParseReply(text)); got != c.want {
				t.Errorf("%q: %q, want %q", text, got, c.want)
			}
		}
	}
}

// TestEveryWordOfAReply: a word that nobody knows makes a cell unreadable, wherever it
// stands.
func TestEveryWordOfAReply(t *testing.T) {
	for _, text := range []string{"yes", "no", "partly", "good", "stable", "clogged", "came out", "not made", "almost", "badly split"} {
		for _, with := range []string{text + " quux", "quux " + text, text + ", quux"} {
			if r, err := ParseReply(with); err == nil {
				t.Errorf("%q: %q", with, reply(r, err))
			}
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
