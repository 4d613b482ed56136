package whose

import (
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
)

// A file is called after its student more or less: "hanneke siphon", "Oskar T", "Oldfield_Maren_foam".
// The whole name mostly stands somewhere in it, in a title or at the end of a line: the words
// beside each other that look like a name, of which one is a word of the file's name too.

// aboutWork are words of titles, sheets and files that are no part of a name.
var aboutWork = pattern.Of(`(?i)^(foams?|siphon|lab|labs|log|logs|trials?|tests?|runs?|kitchen|bench|group|table|class|course|food|science|year|report|final|late|sorry|project|practical|pair|pairwork|together|work|file|sheet|sheet\d+|data|raw|summary|discussion|conclusions?|results?|method|info|intro|ingredients?|means|rich|series|student|name|task|team|week|day|version|copy|new|espuma|mousse|schaum|recipe|recipes|cards?|carton|plan|notes?|batch|hand|handin|of|the|and|for|with|in|from|by|my|our|all|to|i|a|an|on|at|is|monday|tuesday|wednesday|thursday|friday|saturday|sunday|january|february|march|april|may|june|july|august|september|october|november|december|gms|hlb|se|fat|safety|rule|best|winner|how|date|late|protocol|text|logbook|lab|schuim|butterschaum|schäume|schiuma|proeven|proef|essais?|pruebas?|ensayos?|prova|prove|versuche?|protokoll|practica|práctica|pratique|prac|experiments?|sifón|sifon|sifone|oz|wk|book|fs\d|v\d+)$`)

// particle are small words within a name.
var particle = pattern.Of(`^(?:de|del|della|da|di|du|van|von|der|den|zu|al|el|bin|ben|ibn|la|le|af|av|y|e|ter|ten)$`)

// nameParts are the stretches of a text that no sign parts.
var nameParts = pattern.Of(`\s+[-–—/|]\s+|[,;:()/|!?*"“”]+|\.\s+|\s{2,}`)

// likeName reports a word that may be part of a person's name; any writes it without a
// capital too.
func likeName(word string, any bool) bool {
	letters := 0
	for i, r := range word {
		switch {
		case unicode.IsLetter(r):
			if letters++; letters == 1 && i == 0 && !unicode.IsUpper(r) && !any {
				return false
			}
		case r != '-' && r != '\'' && r != '’' && r != '.':
			return false
		}
	}
	if letters == 0 || aboutWork.MatchString(word) {
		return false
	}
	if letters > 2 {
		if what, known := ingredient.Lookup(word); known && strings.EqualFold(what.Name, word) {
			return false
		}
	}
	return true
}

// personsIn are the names that a text may hold: two to four words beside each other, each
// with a capital. A text of nothing else may do without them.
func personsIn(text string) (out []string) {
	for _, part := range nameParts.Split(text, -1) {
		words := strings.Fields(part)
		any := len(words) >= 2 && len(words) <= 3 && part == strings.ToLower(part)
		for from := 0; from < len(words); {
			to := from
			for to < len(words) && (likeName(words[to], any) || to > from && particle.MatchString(words[to])) {
				to++
			}
			for to > from && particle.MatchString(words[to-1]) {
				to--
			}
			if n := to - from; n >= 2 && n <= 4 && (!any || n == len(words)) {
				out = append(out, strings.Join(words[from:to], " "))
			}
			from = max(to, from) + 1
		}
	}
	return out
}

// calledIn is the whole name of whom a file or sheet is called after, "" where its words do not
// say it.
func calledIn(words []handin.Phrase, called string) string {
	keys := slices.DeleteFunc(nameWords(called), func(k string) bool { return len([]rune(k)) < 3 || !likeName(k, true) })
	if len(keys) == 0 {
		return ""
	}
	for _, p := range words {
		if p.Note != nil {
			continue
		}
		for _, name := range personsIn(p.Text) {
			in := nameWords(name)
			if slices.ContainsFunc(keys, func(k string) bool { return slices.Contains(in, k) }) {
				if name == strings.ToLower(name) || name == strings.ToUpper(name) {
					return NameOfFile(strings.ToLower(name))
				}
				return name
			}
		}
	}
	return ""
}

// signed is the name that a file begins with whose own name says nothing of whom it is: the
// whole of a line, or of its part behind "by".
func signed(words []handin.Phrase) string {
	for _, p := range words {
		if p.Note != nil || p.At.Row > 3 {
			continue
		}
		for _, part := range nameParts.Split(p.Text, -1) {
			if m := behindBy.FindStringSubmatch(part); m != nil {
				part = m[1]
			}
			if names := personsIn(part); len(names) == 1 && names[0] == strings.TrimSpace(part) && part != strings.ToLower(part) && !isFood(part) {
				return names[0]
			}
		}
	}
	return ""
}

var behindBy = pattern.Of(`(?i)(?:^|\s)(?:by|from|of|von|par|de|student|name)\s+(.+)$`)

// isFood reports a text of which a word or the whole is an ingredient.
func isFood(text string) bool {
	if _, known := ingredient.Lookup(text); known {
		return true
	}
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool {
		_, known := ingredient.Lookup(w)
		return known && len(w) > 2
	})
}

// speaksOf reports for each of several students whether a text names him or her: by a word of
// the name that no other has.
func speaksOf(text string, names []string) []bool {
	in := nameWords(text)
	out := make([]bool, len(names))
	for i, name := range names {
		out[i] = slices.ContainsFunc(nameWords(name), func(word string) bool {
			return len([]rune(word)) > 2 && slices.Contains(in, word) && !slices.ContainsFunc(names, func(o string) bool { return o != name && slices.Contains(nameWords(o), word) })
		})
	}
	return out
}

// parted gives each of several students the words that are theirs: what stands in a row that
// begins with a name, what names them, and what names nobody.
func parted(words []handin.Phrase, names []string) [][]handin.Phrase {
	type row struct {
		sheet string
		row   int
	}
	of := map[row][]bool{} // what the first words of a row say
	out := make([][]handin.Phrase, len(names))
	for _, p := range words {
		at := row{p.At.Sheet, p.At.Row}
		own := speaksOf(p.Text, names)
		if first, again := of[at]; again && slices.Contains(first, true) {
			own = first
		} else if !again && p.Note == nil {
			of[at] = own
			if len(strings.Fields(p.Text)) > 5 {
				of[at] = nil // a sentence names nobody for what stands beside it
			}
		}
		if !slices.Contains(own, true) {
			own = speaksOf(p.At.Sheet, names)
		}
		for i := range names {
			if own[i] || !slices.Contains(own, true) {
				out[i] = append(out[i], p)
			}
		}
	}
	return out
}

// mark takes a column of few names for that of the students where the numbers of the trials
// begin anew for each: rows of "Samir 1, Tove 1, Samir 2".
func mark(t *handin.Table) {
	id := t.Find(column.TrialID)
	if id == nil || t.Find(column.Student) != nil || t.Across {
		return
	}
	for _, c := range t.Columns {
		if c.Role != column.Cook && c.Role != column.None && c.Role != column.Unused {
			continue
		}
		rows, numbers, fits := map[string]int{}, map[string]bool{}, true
		for i, cell := range c.Cells {
			name := strings.TrimSpace(cell.Text)
			fits = fits && !cell.Known && len(strings.Fields(name)) <= 3 && likeNames(name)
			key := name + "\x00" + id.Cells[i].Text
			fits = fits && !numbers[key]
			numbers[key] = true
			rows[name]++
		}
		ids := map[string]bool{}
		for _, cell := range id.Cells {
			ids[cell.Text] = true
		}
		if !fits || len(rows) < 2 || len(c.Cells) < 4*len(rows) || len(ids) == len(id.Cells) {
			continue
		}
		c.Role = column.Student
		for i, x := range t.Trials {
			x.Student = strings.TrimSpace(c.Cells[i].Text)
		}
		return
	}
}

var groupHead = pattern.Of(`(?i)^\s*(?:groups?|groep|gruppe|groupe|grupo|gruppo|series|set|class|team)\s*$`)

// levelName are what groups of a plan are called, and no students.
var levelName = pattern.Of(`(?i)^(?:(?:very )?(?:low|high|med|medium|mid|middle|lean|rich|little|much|more|less|none|zero|half|full|double|lower|higher)|niedrig|mittel|hoch|wenig|viel|ohne|mit|bas|basse|moyen|moyenne|haut|haute|bajo|baja|medio|media|alto|alta|basso|bassa|laag|midden|hoog|[+0−-])(?: (?:fat|dose|hlb|fett|gras|grasa|grassi|vet|emulsifier))?$`)

// mixesNotStudents leaves a column of groups unused where they are those of the plan: the control and
// levels of what was changed.
func mixesNotStudents(t *handin.Table) {
	c := t.Find(column.Student)
	if c == nil || !groupHead.MatchString(c.Header) {
		return
	}
	planned := 0
	for _, cell := range c.Cells {
		switch name := strings.TrimSpace(cell.Text); {
		case len(name) > 2 && handin.NamesControl(name), levelName.MatchString(name):
			planned++
		case len(name) > 1: // "A" may be a mix and a table of the class
			return
		}
	}
	if planned == 0 {
		return
	}
	c.Role = column.Unused
	for _, x := range t.Trials {
		x.Student = ""
	}
}

// likeNames reports words each of which may be part of a name.
func likeNames(text string) bool {
	words := strings.Fields(text)
	return len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool { return !likeName(w, true) })
}
