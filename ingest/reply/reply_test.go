package reply

import (
	"foamfield/ingest/lexis"
	"foamfield/ingest/quantity"
	"strings"
	"testing"
)

var answerNames = map[Answer]string{Yes: "yes", Partly: "partly", No: "no"}

// written writes a reply in one line: how it answers, then what happened.
func written(r Reply, err error) string {
	var parts []string
	sense := [...]string{"", "", "value ", "mark ", "strength ", "nearly "}[r.Sense]
	switch {
	case err != nil:
		return "?"
	case r.Sense == Marks:
		parts = append(parts, sense+r.Mark)
	case r.Sense != NoSense:
		parts = append(parts, sense+answerNames[r.Answer])
	case r.Word != quantity.NoWord:
		parts = append(parts, r.Word.String())
	}
	for _, e := range r.Events {
		parts = append(parts, e.String())
	}
	return strings.Join(parts, "; ")
}

// TestParse has a reading a line, with the texts that have it.
func TestParse(t *testing.T) {
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
			if got := written(Parse(text)); got != c.want {
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
			if r, err := Parse(with); err == nil {
				t.Errorf("%q: %q", with, written(r, err))
			}
		}
	}
}

func TestReplyTextsHaveOneSense(t *testing.T) {
	owner := map[string]string{}
	check := func(kind, texts string) {
		for _, text := range lexis.Listed(texts) {
			k := lexis.CellKey(text)
			if other, taken := owner[k]; taken && other != kind {
				t.Errorf("%q is both %v and %v", text, other, kind)
			}
			owner[k] = kind
		}
	}
	for _, a := range []Answer{Yes, Partly, No} {
		check("affirms "+answerNames[a], affirmTexts[a])
		check("values "+answerNames[a], valueTexts[a])
	}
	check("strength", strengthTexts)
	check("nearly", nearlyTexts)
	check("unmade", unmade)
}
