package formal

import (
	"fmt"
	"foamfield/ingest/pattern"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/trial"
)

// line is a day that stands beside a label above the trials: "Date | 12 November 2026".
type line struct {
	at   trial.Place
	text string
}

var (
	dayLabel = pattern.Of(`(?i)^\s*(?:(?:trial|test|lab|experiment|kitchen|bench|class|practical|lesson|cooking|working) )?(?:date(?:\(s\))?|day(?:\(s\))?|dates|days|datum|tag|fecha|data|giorno|jour|when|done on|made on|tested on|(?:date|day)s? of (?:the )?(?:trials?|tests?|experiments?|work|practical|lab))\s*:?\s*$`)
	dayInOne = pattern.Of(`(?i)^\s*(?:date|datum|fecha|data|jour|made on|tested on)\s*:\s*(\S.*)$`)
)

// linesOf are the days beside labels, or after them in one cell.
func linesOf(w *handin.Work) (out []line) {
	for _, p := range w.Words {
		switch m := dayInOne.FindStringSubmatch(p.Text); {
		case p.Note != nil:
		case dayLabel.MatchString(p.Text) && tellsDay(p.Right):
			out = append(out, line{p.RightAt, p.Right})
		case m != nil && strings.ContainsAny(m[1], "0123456789"):
			out = append(out, line{p.At, m[1]})
		}
	}
	return out
}

// tellsDay reports figures that may be of a day: "Data" stands before constants as well.
func tellsDay(text string) bool {
	_, ok, cannot := parse(text)
	return ok || cannot || datedLine.MatchString(text) || mayBeDay.MatchString(text) || bareDay.MatchString(text)
}

var bareDay = pattern.Of(`^\D{0,12}\d{1,4}(?:st|nd|rd|th)?\D{0,12}$`)

// emptyLine is the cell beside a label that was left empty, or else where anything missing
// is said.
func emptyLine(w *handin.Work, label *pattern.Pattern, or []trial.Place) []trial.Place {
	for _, p := range w.Words {
		if p.Note == nil && p.Right == "" && label.MatchString(p.Text) {
			beside := p.At
			beside.Col++
			return append([]trial.Place{beside, p.At}, or...)
		}
	}
	return or
}

// lateLines finds days beside labels that are none, or after the last day.
func lateLines(lines []line, rules criteria.Rules) (out []finding.Found, late bool) {
	for _, l := range lines {
		d, ok, cannot := parse(l.text)
		switch {
		case cannot:
			out = append(out, finding.New(criteria.Dates, graded.Formal, fmt.Sprintf("There is no such day as %s.", l.text), l.at).Surely())
		case ok && !rules.Deadline.IsZero() && d.After(rules.Deadline):
			f := finding.New(criteria.Deadline, graded.Formal, fmt.Sprintf("The trials are dated %s, after the last day (%s).", d.Format("2 January 2006"), rules.Deadline.Format("2 January 2006")), l.at).Kinds("late")
			f.Certain = !ambiguous(l.text)
			out, late = append(out, f), true
		}
	}
	return out, late
}

// dayInText is a day with its month as a word, among other words.
var dayInText = pattern.Of(`\b(?:[12]\d|3[01]|0?[1-9])(?:st|nd|rd|th)?\.? \p{L}{3,} \d{4}\b`)

// noSuchDays finds days among words above and below the trials that no calendar has: "Ann Lee,
// 30 February 2026". Beside a label they are lines.
func noSuchDays(w *handin.Work) (out []finding.Found) {
	for _, p := range w.Words {
		if p.Note != nil || dayInOne.MatchString(p.Text) {
			continue
		}
		for _, text := range dayInText.FindAllString(p.Text, -1) {
			if _, _, cannot := parse(text); cannot {
				out = append(out, finding.New(criteria.Dates, graded.Formal, fmt.Sprintf("There is no such day as %s.", text), p.At).Surely())
			}
		}
	}
	return out
}

// wordDay is a day whose month is a word: "12 November 2026", "Nov 12, 2026", "12. März 2026".
var wordDay = pattern.Of(`^(?:\p{L}+,?\s+)?(?:(\d{1,2})(?:st|nd|rd|th)?\.?\s*(?:de\s+)?(\p{L}{3,})\.?,?\s*(?:de\s+)?(\d{4})|(\p{L}{3,})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4}))$`)

// months are the first letters of the months, in five languages.
var months = [12][]string{{"jan", "ene", "gen"}, {"feb", "fév", "fev"}, {"mar", "mär", "mrz"}, {"apr", "avr", "abr"}, {"may", "mai", "mag"}, {"jun", "juin", "giu"}, {"jul", "juil", "lug"},
	{"aug", "aoû", "aou", "ago"}, {"sep", "set"}, {"oct", "okt", "ott"}, {"nov"}, {"dec", "dez", "déc", "dic"}}

// wordsOfDay are the year, month and day of a match of wordDay; month 0 for a word that is no
// month.
func wordsOfDay(p []string) (y, m, n int) {
	word := p[2]
	y, n = whole(p[3]), whole(p[1])
	if word == "" {
		word, y, n = p[4], whole(p[6]), whole(p[5])
	}
	word = strings.ToLower(word)
	for k, begins := range months {
		for _, b := range begins {
			if strings.HasPrefix(word, b) {
				return y, k + 1, n
			}
		}
	}
	return y, 0, n
}
