package kitchen

import (
	"foamfield/ingest/pattern"
	"strconv"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A kitchen that writes the clock at which a foam fell writes something else where it
// still stood when they stopped looking, and says once when that was: "up: still up when
// we went home at 16:30".

var (
	stoodWords = pattern.Of(`\b(?:still|stood|standing|stands|up|alive|holding|held|not fallen|never fell|debout|tenait|tient|en pie|aguantaba|in piedi|teneva|stand|steht|stehen|hielt)\b`)
	leftWords  = pattern.Of(`\b(?:went home|going home|left|closed|closing|shut|stopped (?:watching|looking|timing)|end of (?:service|shift|the day|lesson)|last look|feierabend|schluss|fin du service|fermé|arrêté|parti|cierre|nos fuimos|fin del servicio|chiusura|fine servizio)\b`)
	aClock     = pattern.Of(`\b([01]?\d|2[0-3])[:h]([0-5]\d)\b`)
)

// Stood is the clock, in minutes of the day, to which foams stood that have a mark in
// place of the time they fell, as the lines say. Where the mark itself says that they
// stood, a line need not have it.
func (s *Sheets) Stood(mark string, says bool) (minutes float64, at trial.Place, ok bool) {
	for _, line := range s.Lines {
		text := say.Fold(line.Text)
		of := says && leftWords.MatchString(text)
		for range occurrences(text, say.Fold(mark)) {
			of = of || stoodWords.MatchString(text)
		}
		clocks := aClock.FindAllStringSubmatch(text, -1)
		if !of || len(clocks) != 1 {
			continue
		}
		v := clockOf(clocks[0])
		if ok && v != minutes {
			return 0, at, false // lines that say two things say nothing
		}
		minutes, at, ok = v, line.At, true
	}
	return minutes, at, ok
}

// StoodTo is the clock that a cell has itself: "still up at 16:30", "16:30+".
func StoodTo(cell string) (minutes float64, ok bool) {
	text := say.Fold(cell)
	clocks := aClock.FindAllStringSubmatch(text, -1)
	if len(clocks) != 1 || !stoodWords.MatchString(text) && !openEnded.MatchString(text) {
		return 0, false
	}
	return clockOf(clocks[0]), true
}

var openEnded = pattern.Of(`^\s*(?:>|≥|>=|after|past|later than|nach|après|después de|dopo)\s*\d{1,2}[:h]\d\d\s*$|^\s*\d{1,2}[:h]\d\d\s*(?:\+|or later|oder später|ou plus tard|o más tarde|o più tardi)\s*$`)

func clockOf(m []string) float64 {
	hour, _ := strconv.Atoi(m[1])
	minute, _ := strconv.Atoi(m[2])
	return float64(60*hour + minute)
}
