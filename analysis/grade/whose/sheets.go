package whose

import (
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/reclaim"
	"foamfield/ingest"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
)

// noName are words by which sheets are called that name no person.
var noName = pattern.Of(`(?i)^(log|logs|sheet|tabelle|feuille|hoja|foglio|data|trial|trials|week|day|task|foam|foams|results?|mix|mixes|test|tests|run|part|batch|sauce|dessert|main|notes?|versuche?|essais?|prueba|prove?|protokoll|table|series|experiments?|lab|practical|raw|calc|calculations?|summary|conclusion|method|safety)s?$`)

// sheetsAreStudents reports that each sheet of a file is another student's: they go by
// names of the class, or of the file's own name, or look like nothing but names.
func sheetsAreStudents(tables []*handin.Table, stem string, class []string) bool {
	var names []string
	for _, t := range tables {
		if t.At.Sheet == "" {
			return false
		}
		if !slices.Contains(names, t.At.Sheet) {
			names = append(names, t.At.Sheet)
		}
	}
	if len(names) < 2 {
		return false
	}
	listed, inFile := 0, 0
	for _, n := range names {
		if slices.ContainsFunc(class, func(c string) bool { return SameName(c, n) }) {
			listed++
		}
		if hasWords(stem, n) {
			inFile++
		}
		if scheme.LooksLikeDay(n) {
			return false
		}
	}
	switch {
	case listed == len(names), inFile == len(names):
		return true
	case len(class) > 0 && listed == 0, numbered(names):
		return false
	}
	return len(names) >= 3 && !slices.ContainsFunc(names, func(n string) bool { return !likeAName(n) })
}

// person are words that number people, not what they made.
var person = pattern.Of(`(?i)^(students?|pupils?|persons?|cooks?|groups?|teams?|pairs?|partners?|élèves?|groupes?|équipes?|binômes?|alumn[oa]s?|grupos?|equipos?|parejas?|studente|studenti|grupp[oi]|coppi[ae]|schüler(?:in)?|gruppen?|leerling(?:en)?|groep(?:en)?)$`)

// numbered reports names that are one word with a letter or number each: "Card A", "Card B".
func numbered(names []string) bool {
	word := ""
	for i, n := range names {
		parts := strings.FieldsFunc(n, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
		if len(parts) != 2 || person.MatchString(parts[0]) || len([]rune(parts[1])) > 2 || i > 0 && !strings.EqualFold(parts[0], word) {
			return false
		}
		word = parts[0]
	}
	return true
}

// sheetsSaySo reports that the first lines of each sheet name a person by the sheet's own
// name: "Ada Moss, 6 March" on a sheet called Ada, "Ben Orr" on a sheet called Ben.
func sheetsSaySo(tables []*handin.Table, words []handin.Phrase) bool {
	sheets := map[string]bool{}
	for _, t := range tables {
		sheets[t.At.Sheet] = false
	}
	for _, p := range words {
		said, ok := sheets[p.At.Sheet]
		if !ok || said || p.At.Row > 3 || p.Note != nil || !likeAName(p.At.Sheet) {
			continue
		}
		names := aName.FindAllString(p.Text, 2)
		sheets[p.At.Sheet] = len(names) == 2 && strings.HasPrefix(p.Text, names[0]+" "+names[1]) && (hasWords(names[0], p.At.Sheet) || hasWords(names[1], p.At.Sheet))
	}
	for _, said := range sheets {
		if !said {
			return false
		}
	}
	return len(sheets) > 1
}

// likeAName reports one to three capitalised words of letters that are no other word
// for a sheet.
func likeAName(s string) bool {
	words := strings.Fields(s)
	for _, w := range words {
		r := []rune(w)
		if !unicode.IsUpper(r[0]) || noName.MatchString(w) || strings.ContainsAny(w, "0123456789") {
			return false
		}
	}
	return len(words) >= 1 && len(words) <= 3
}

// bySheet parts a file by its sheets; words on other sheets go to whom they name.
func bySheet(h *ingest.HandIn, tables []*handin.Table, words []handin.Phrase) (out []*handin.Work) {
	byName := map[string]*handin.Work{}
	for _, t := range tables {
		reclaim.OwnSheet(t, h.Own)
		w := byName[t.At.Sheet]
		if w == nil {
			w = &handin.Work{Student: t.At.Sheet, Files: []string{h.Book.File}, Paths: []string{h.Path}, Log: []*ingest.HandIn{h}}
			byName[t.At.Sheet] = w
			out = append(out, w)
		}
		w.Tables = append(w.Tables, t)
	}
	var names []string
	for _, w := range out {
		names = append(names, w.Student)
	}
	beside := parted(slices.DeleteFunc(slices.Clone(words), func(p handin.Phrase) bool { return byName[p.At.Sheet] != nil }), names)
	for i, w := range out {
		w.Words = slices.DeleteFunc(slices.Clone(words), func(p handin.Phrase) bool { return p.At.Sheet != w.Student })
		if name := calledIn(w.Words, w.Student); name != "" {
			names[i] = name
		}
		w.Words = append(w.Words, beside[i]...)
		if name := calledIn(w.Words, w.Student); name != "" && names[i] == w.Student {
			names[i] = name
		}
	}
	for i, w := range out {
		w.Student = names[i]
		settle(w)
	}
	return out
}
