package formal

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
)

var safetyWords = pattern.Of(`(?i)(safe|\bgas (was )?(out|off|away|inside|first|in it)\b|\blet (the|all|any) (the )?(gas|pressure)|before (you |we )?(open|unscrew|taking|the head)|never unscrew|no opening|open(ed)? only|goggle|eye ?protect|eyewear|(?:safety|wear|wore|with|protective) glasses|glasses on|\bvent(ed|ing|s)?\b|depressuri|gloves|do not open|don't open|never open|never inhale|hazard|risk|caution|strain(ed)? (every|all)|sicher|schutzbrille|entlüft|druck|vorsicht|sécurité|securite|lunettes|purg|dégaz|pression|prudence|seguridad|gafas|presión|precauci|sicurezza|occhiali|sfiat|pressione|attenzione|protección|protezione|veilig\w*|leegblazen|ontlucht\w*|veiligheidsbril|handschoenen|charger count|chargers counted|\bwore\b|\bppe\b)`)

// pressure is a word on safety only beside what is done about it: a siphon has some in any method.
var (
	pressure = pattern.Of(`(?i)\bpressur\w*`)
	against  = pattern.Of(`(?i)(\b(never|not|no|don't|off|out|releas\w*|before|vent\w*|away|careful\w*|care|watch|mind|danger\w*|hot|burn\w*|let|without|only|point|explo\w*|hand|hands|face|faces|opens?|opened|opening|under|has|gone|check\w*)\b|!|=)`)
)

// speaksOfSafety reports a text with a word on safety.
func speaksOfSafety(text string) bool {
	if safetyWords.MatchString(text) {
		return true
	}
	if !pressure.MatchString(text) {
		return false
	}
	for _, part := range sentence.Split(text) {
		if pressure.MatchString(part) && against.MatchString(part) && !methodOnly.MatchString(part) {
			return true
		}
	}
	return false
}

// methodOnly is pressure as a setting: "pressure 8 bar", "homogenised at high pressure".
var methodOnly = pattern.Of(`(?i)(pressure (?:of |at |was |is )?(?:about )?\d|\bhigh[- ]pressure\b|\bpressure (?:homogeni|cook)|\d ?bar\b)`)

// byItself are words on safety in the note of one trial that are meant for all.
var byItself = pattern.Of(`(?i)(safe|goggle|glove|never open|eye ?protect|\bppe\b|gas out|vent)`)

// safetyLabel is a label beside which a word on safety is to stand.
var safetyLabel = pattern.Of(`(?i)^\s*(?:safety(?: (?:line|notes?|rules?|first))?|careful|caution|hazards?|risks?|hygiene|sicherheit|sécurité|seguridad|sicurezza|veiligheid)\s*[:?]?\s*$`)

// below reports words of a line's length in the cell under a heading, which may be any: a heading
// says what they are about.
func below(w *handin.Work, heading handin.Phrase) bool {
	under := heading.At
	under.Row++
	return slices.ContainsFunc(w.Words, func(p handin.Phrase) bool { return p.At == under && len(strings.Fields(p.Text)) > 2 })
}

// saysSafety reports a word on safety anywhere, or a critical step of a method.
func saysSafety(w *handin.Work) bool {
	for _, p := range w.Words {
		label := safetyLabel.MatchString(p.Text)
		if label && (len(strings.Fields(p.Right)) > 1 || p.Note == nil && below(w, p)) || !label && speaksOfSafety(p.Text) && (p.Note == nil || byItself.MatchString(p.Text)) {
			return true
		}
	}
	for _, h := range w.Log {
		for _, s := range h.Log.Method {
			if speaksOfSafety(s.Text + " " + s.Limit) {
				return true
			}
		}
	}
	return false
}

// safetyHints are words that may be meant as a word on safety.
var safetyHints = pattern.Of(`(?i)(unscrew|accident|injur|\beyes?\b|\bhands?\b|\bmask|\bhair\b|(house|lab|kitchen|school) rules|as instructed|instructions|supervis|teacher|let .{0,12}out\b|releas|\bgas\b|burn|careful|care\b|inhal|hygien|washed|apron|allerg|fridge|°c|recall|first aid|danger|protect|glove|heiß|chaud|calien|caldo|gaz)`)
