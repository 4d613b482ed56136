package whose

import (
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
)

var (
	saysName  = pattern.Of(`(?i)^\s*(?:student|name|by|pupil|author|learner|schüler(?:in)?|élève|nom|alumno|alumna|nombre|studente|nome)\s*[:=]\s*(.+)$`)
	nameLabel = pattern.Of(`(?i)^\s*(?:student|name|student name|pupil|author|schüler(?:in)?|élève|nom|alumno|alumna|nombre|studente|nome)\s*:?\s*$`)
)

// nameOf is the student's name: in a column, in words, or else by the file.
func nameOf(words []handin.Phrase, tables []*handin.Table, stem string) (name string, byFile bool) {
	for _, t := range tables {
		for _, x := range t.Trials {
			if t.Find(column.Student) != nil && x.Student != "" {
				return x.Student, false
			}
		}
	}
	for i, p := range words {
		if m := saysName.FindStringSubmatch(p.Text); m != nil && len(strings.Fields(m[1])) <= 5 {
			return strings.TrimSpace(m[1]), false
		}
		if nameLabel.MatchString(p.Text) && !headsRow(words, i) && i+1 < len(words) && words[i+1].At.Row == p.At.Row && len(strings.Fields(words[i+1].Text)) <= 4 {
			return strings.TrimSpace(words[i+1].Text), false
		}
	}
	if name := calledIn(words, stem); name != "" {
		return name, false
	}
	if !slices.ContainsFunc(nameWords(stem), func(k string) bool { return len([]rune(k)) > 2 && likeName(k, true) && !isFood(k) }) {
		if name := signed(words); name != "" {
			return name, false
		}
	}
	return NameOfFile(stem), true
}

// headsRow reports a label that is one of several headers in a row, and so no label of a
// value: "Name | Kind | HLB".
func headsRow(words []handin.Phrase, i int) bool {
	n := 0
	for _, p := range words {
		if p.At.File == words[i].At.File && p.At.Sheet == words[i].At.Sheet && p.At.Row == words[i].At.Row {
			n++
		}
	}
	return n > 2
}

// Of a file's name, numbers and codes say which work it is; a group's number says whose.
var (
	workNumber = pattern.Of(`(?i)^(?:\d{1,4}|[pvl]\d{1,2}|[a-z]{2,4}\d{1,4})$`) // S001 is a student
	sharedName = pattern.Of(`(?i)^(and|group|groupe|gruppe|grupo|gruppo|bench|table|team|class|pair)$`)
)

// ofWork reports a word of a file's name that says what the work is, not whose.
func ofWork(w string) bool {
	return workNumber.MatchString(w) || aboutWork.MatchString(w) && !sharedName.MatchString(w)
}

// NameOfFile is a person's name out of a file's.
func NameOfFile(stem string) string {
	words := strings.FieldsFunc(stem, func(r rune) bool { return strings.ContainsRune("_- .+()[],", r) })
	shared := slices.ContainsFunc(words, func(w string) bool { return sharedName.MatchString(w) && w != "and" })
	if own := slices.DeleteFunc(slices.Clone(words), ofWork); !shared && slices.ContainsFunc(own, func(w string) bool { return len([]rune(w)) > 2 && likeName(w, true) && !isFood(w) }) {
		words = own
	}
	for i, w := range words {
		r := []rune(w)
		if len(r) > 1 && w != "and" {
			r[0] = unicode.ToUpper(r[0])
		}
		words[i] = string(r)
	}
	return strings.Join(words, " ")
}

// SameName reports that two texts name one person: all words of the shorter are in
// the longer.
func SameName(a, b string) bool {
	x, y := nameWords(a), nameWords(b)
	if len(x) == 0 || len(y) == 0 {
		return false
	}
	if len(x) > len(y) {
		x, y = y, x
	}
	for _, w := range x {
		if !slices.Contains(y, w) {
			return false
		}
	}
	return true
}

// hasWords reports whether all words of a name stand in a text.
func hasWords(text, name string) bool {
	in := nameWords(text)
	for _, w := range nameWords(name) {
		if !slices.Contains(in, w) {
			return false
		}
	}
	return len(nameWords(name)) > 0
}

func nameWords(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) })
}
