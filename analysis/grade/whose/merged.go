package whose

import (
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/pattern"
)

// bookNumber is what tells two books of one student apart in their names.
var bookNumber = pattern.Of(`(?i)[\s_.-]*(?:\(?\d+\)?|v\d+|part[\s_-]*\d+|book[\s_-]*\d+|week[\s_-]*\d+|second|first|final|new|again|continued)$`)

// Merged joins the works of one student, who may hand in two books.
func Merged(works []*handin.Work) (out []*handin.Work) {
	byKey := map[string]*handin.Work{}
	for _, w := range works {
		key := keyOf(w)
		first := byKey[key]
		if first == nil {
			byKey[key] = w
			out = append(out, w)
			continue
		}
		join(first, w)
		if first.ByFile {
			first.Student = strings.TrimSpace(bookNumber.ReplaceAllString(first.Student, ""))
		}
	}
	return out
}

// genericName are words by which files are called whose number tells students apart.
var genericName = pattern.Of(`(?i)^(students?|groups?|teams?|bench|table|pupils?|hand|in|handin|log|logs|lab|labs|class|foams?|s|g|no|nr|schüler|gruppe|élève|groupe|alumno|grupo|studente|gruppo|trials?|book|week|day|file|sheet|copy|report|exercise|assignment|task)$`)

// keyOf is what the books of one student have in common: the name, and of a file's name
// what is left without the number of the book.
func keyOf(w *handin.Work) string {
	full := keyWords(w.Student)
	if !w.ByFile {
		return strings.Join(full, " ")
	}
	short := keyWords(bookNumber.ReplaceAllString(w.Student, ""))
	if !slices.ContainsFunc(short, func(s string) bool { return !genericName.MatchString(s) && strings.ContainsFunc(s, unicode.IsLetter) }) {
		return strings.Join(full, " ")
	}
	return strings.Join(short, " ")
}

func keyWords(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

func join(w, o *handin.Work) {
	if len(o.Student) < len(w.Student) {
		w.Student = o.Student
	}
	for i, f := range o.Files {
		if !slices.Contains(w.Files, f) {
			w.Files, w.Paths = append(w.Files, f), append(w.Paths, o.Paths[i])
		}
	}
	w.Tables, w.Sums, w.Words, w.Log, w.Sheets = append(w.Tables, o.Tables...), append(w.Sums, o.Sums...), append(w.Words, o.Words...), append(w.Log, o.Log...), append(w.Sheets, o.Sheets...)
	w.Rest, w.Shared = append(w.Rest, o.Rest...), w.Shared || o.Shared
	for f, formulas := range o.Formulas {
		w.Formulas[f] = formulas
	}
	for _, p := range o.Partners {
		if !slices.Contains(w.Partners, p) {
			w.Partners = append(w.Partners, p)
		}
	}
}
