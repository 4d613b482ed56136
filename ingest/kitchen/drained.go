package kitchen

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	atMinute = pattern.Of(`\b(?:after|at|by|nach|bei|après|à|tras|después de|a los|dopo|na)\s+(\d+(?:[.,]\d+)?)\s?(?:min|mins|minutes|minuten|minuti|minutos)\b\.?`)
	// aimed are words of what is wanted, not of what was done.
	aimed     = pattern.Of(`[<>≤≥]|\d\s?%|\b(?:target|aim|goal|want|wanted|must|should|max|most|less|good|ziel|soll|höchstens|weniger|cible|objectif|moins|objetivo|menos|obiettivo|meno|doel|(?:below|under|unter) \d)\b`)
	anyMinute = pattern.Of(`\d\s?(?:min|mins|minutes|minuten|minuti|minutos)\b`)
)

// DrainedAt is the one minute at which lines say that drainage was read: "Drip: grams under the
// sieve after 10 min". Two minutes are none.
func (s *Sheets) DrainedAt() (minute float64, at trial.Place, ok bool) {
	for _, line := range s.Lines {
		if line.Of != "" {
			continue
		}
		text := say.Fold(line.Text)
		for _, sentence := range sentences(text) {
			if !ofDrainage(sentence) {
				continue
			}
			found := atMinute.FindAllStringSubmatch(sentence, -1)
			if len(found) == 0 {
				found = inPieces(sentence, minuteAlone)
			}
			if len(found) == 0 {
				continue
			}
			v := value(found[0][1])
			if v == nil || *v <= 0 || len(anyMinute.FindAllString(sentence, -1)) != 1 || exceptHere.MatchString(text) || ok && *v != minute {
				return 0, trial.Place{}, false
			}
			minute, at, ok = *v, line.At, true
		}
	}
	return minute, at, ok
}

// How drainage was measured is often a list behind its label: "Drainage: 40 g foam, sieve, 25 min".
const foams = `(?:foam|sample|dollop|portion|schaum|probe|mousse|échantillon|prise|espuma|muestra|schiuma|campione|schuim|monster)`

var (
	minuteAlone = pattern.Of(`^(\d+(?:[.,]\d+)?)\s?(?:min|mins|minutes|minuten|minuti|minutos)\.?$`)
	foamAlone   = pattern.Of(`^` + foams + `\s*[:=]?\s*` + number + `\s*(?:g|gr|grams|gramm|grammes|gramos|grammi|gram)$|^(?:a |einer |une |un |una |een )?` + number + `\s*(?:g|gr|grams|gramm|grammes|gramos|grammi|gram)\s+(?:of\s+|de\s+|d'|di\s+)?` + foams + `(?:\s+\D*)?$`)
)

// inPieces finds a pattern in the pieces of what stands behind the label of a sentence.
func inPieces(sentence string, wanted *pattern.Pattern) (found [][]string) {
	_, list, _ := strings.Cut(strings.ReplaceAll(sentence, "=", ":"), ":")
	for piece := range strings.SplitSeq(list, ", ") {
		if m := wanted.FindStringSubmatch(strings.TrimSpace(piece)); m != nil {
			found = append(found, m)
		}
	}
	return found
}

// drainedOf are the masses of foam that sentences on drainage list.
func (l *Line) drainedOf() (found [][]string) {
	for _, sentence := range sentences(say.Fold(l.Text)) {
		if l.Of == "" && ofDrainage(sentence) {
			found = append(found, inPieces(sentence, foamAlone)...)
		}
	}
	return found
}

// drainedFrom is the one mass that explanations of drainage in grams name: "drip = g from 50 g".
func (s *Sheets) drainedFrom() (said Grams, ok bool) {
	for _, line := range s.Lines {
		for _, sentence := range sentences(say.Fold(line.Text)) {
			v, of := column.SampleOf(sentence)
			switch {
			case !of || line.Of != "" || strings.Contains(sentence, "%") || !ofDrainage(sentence):
			case ok && v != said.Value:
				return Grams{}, false
			default:
				said, ok = Grams{v, line.At}, true
			}
		}
	}
	return said, ok
}

// ofDrainage reports a sentence that explains drainage: a label of it, or nothing but a header
// with its minute.
func ofDrainage(sentence string) bool {
	if aimed.MatchString(sentence) {
		return false
	}
	head, _, label := strings.Cut(strings.ReplaceAll(sentence, "=", ":"), ":")
	if !label {
		loc := atMinute.FindAllStringIndex(sentence, -1)
		if len(loc) != 1 || strings.TrimSpace(sentence[loc[0][1]:]) != "" {
			return false
		}
		head = sentence[:loc[0][0]]
	}
	m := column.Read(strings.TrimSpace(head))
	return m.Role == column.DrainedAmount && m.Doubt == "" && !strings.ContainsFunc(head, unicode.IsDigit)
}

// GiveMinute gives heads of drainage that say no minute the one that lines say, where it is the
// only such head and no column says when it was read.
func (s *Sheets) GiveMinute(heads []grid.Head) (f trial.Finding, given bool) {
	minute, at, ok := s.DrainedAt()
	if !ok {
		return f, false
	}
	var drained *grid.Head
	for i := range heads {
		switch m := &heads[i].Meaning; {
		case m.Role == column.DrainedAt || m.Role == column.ReadingMinute || m.Role == column.DrainedAmount && (m.AtMinute > 0 || drained != nil):
			return f, false
		case m.Role == column.DrainedAmount:
			drained = &heads[i]
		}
	}
	if drained == nil {
		return f, false
	}
	drained.Meaning.AtMinute = minute
	return trial.Note("said beside the table", at, "drainage is taken as read at "+say.Number(minute)+" min, as this line says",
		"nothing to do; a minute in the header wins over it").OnceOf("minute"), true
}
