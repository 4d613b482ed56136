package scheme

import (
	"foamfield/ingest/pattern"
	"path/filepath"
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A day or a student may be written nowhere but on the sheet's tab or in the
// file's name: a sheet a day, a file a student.

var dayWords = wordSet(`mon tue tues wed weds thu thur thurs fri sat sun monday tuesday wednesday thursday friday saturday sunday
	lundi mardi mercredi jeudi vendredi samedi dimanche lun mar mer jeu ven sam dim
	lunes martes miercoles miércoles jueves viernes sabado sábado domingo mie jue vie sab dom
	lunedi lunedì martedi martedì mercoledi mercoledì giovedi giovedì venerdi venerdì gio
	maandag dinsdag woensdag donderdag vrijdag zaterdag zondag dag maart mei
	montag dienstag mittwoch donnerstag freitag samstag sonntag mo di mi do fr sa so
	day jour dia día giorno tag week wk semaine semana settimana woche kw date am pm
	jan feb mar apr may jun jul aug sep sept oct nov dec january february march april june july august september october november december`)

var studentWords = wordSet(`student group bench team table pupil class élève eleve étudiant etudiant groupe équipe equipe paillasse binôme
	alumno alumna estudiante grupo equipo mesa studente gruppo banco squadra schüler schueler schuler gruppe platz`)

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

func wordsOf(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
}

// hasWord reports whether one of the name's words is in the set.
func hasWord(name string, set map[string]bool) bool {
	for _, w := range wordsOf(name) {
		if set[w] {
			return true
		}
	}
	return false
}

// LooksLikeDay reports a day or date: "Tue", "Day 2 PM", "12-3", "2024-10-07".
func LooksLikeDay(name string) bool {
	if hasWord(name, dayWords) {
		return true
	}
	digits, others := 0, 0
	for _, r := range name {
		switch {
		case unicode.IsDigit(r):
			digits++
		case !strings.ContainsRune("-./_ ", r):
			others++
		}
	}
	return digits >= 2 && others == 0
}

var weekWords = wordSet("week wk semaine semana settimana woche kw")

// LooksLikeWeek reports the number or the date of a week: "week 3", "KW 31".
func LooksLikeWeek(name string) bool {
	return hasWord(name, weekWords) && strings.ContainsFunc(name, unicode.IsDigit)
}

// Names gives what a table's rows do not say.
type Names struct {
	Day, Student string
	Lot          string // "B" of "week 3, lot B"
	Supplier     string // "Brook Farm" of "week 3 supplier Brook Farm"
	Canister     string // its number or letter, "2" of "canister 2"
	Cook         string
}

var (
	namedLot      = pattern.Of(`(?i)(?:^|[^\pL])lot(?:[ _\-]+(?:no\.?[ _\-]*)?([\pL\d]+)|(\d+))`)
	namedSupplier = pattern.Of(`(?:^|[^\pL])(?i:supplier)[ _\-]+([\pL\d]+(?:[ _]\p{Lu}[\pL\d]*)*)`)
	namedCanister = pattern.Of(`(?:^|[^\pL])(?i:canister)[ _\-]+(?i:no\.?[ _\-]*|#)?(\d{1,3}|\p{Lu})(?:$|[_,;) \-]+(?:$|[^lmLM\d]))`)
	namedCook     = pattern.Of(`(?i)(?:^|[^\pL])cook[ _\-]+([\pL\d]+)`)
)

// said is what a pattern finds in the sheet's name, else in the file's.
func said(pattern *pattern.Pattern, names ...string) string {
	for _, n := range names {
		if m := pattern.FindStringSubmatch(n); m != nil {
			return strings.Join(m[1:], "") // one of the ways to write it
		}
	}
	return ""
}

// proper is a name if it is written as one: "supplier meeting" names none.
func proper(name string) string {
	if len(name) <= 2 || strings.ContainsFunc(name, func(r rune) bool { return unicode.IsDigit(r) || unicode.IsUpper(r) }) {
		return name
	}
	return ""
}

// besideNames are words that begin what stands beside a name, and are no part of it.
var besideNames = wordSet("week wk woche semaine semana settimana kw lot cook canister supplier")

// alone is a name of several words as far as the next thing that is named: "Brook Farm" of "Brook
// Farm Week 2".
func alone(name string) string {
	words := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '_' })
	for i, w := range words {
		if i > 0 && hasWord(w, besideNames) {
			words = words[:i]
			break
		}
	}
	return strings.Join(words, " ")
}

// NamesOf reads the sheet's and the file's name. several: the call named more
// than one file.
func NamesOf(at trial.Place, t *grid.Table, several bool) Names {
	var n Names
	has := func(role column.Role) bool { return t.Find(role) >= 0 }
	stem := strings.TrimSuffix(at.File, filepath.Ext(at.File))
	if !has(column.Day) && at.Sheet != "" && LooksLikeDay(at.Sheet) {
		n.Day = at.Sheet
	}
	if !has(column.IngredientLot) {
		n.Lot = proper(said(namedLot, at.Sheet, stem))
	}
	if !has(column.Supplier) {
		n.Supplier = proper(alone(said(namedSupplier, at.Sheet, stem)))
	}
	if !has(column.CanisterID) {
		n.Canister = strings.ToUpper(said(namedCanister, at.Sheet, stem))
	}
	if !has(column.Cook) {
		n.Cook = said(namedCook, at.Sheet, stem)
	}
	if h := t.Find(column.Student); h < 0 || !filled(t, h) {
		switch {
		case at.Sheet != "" && hasWord(at.Sheet, studentWords):
			n.Student = at.Sheet
		case hasWord(stem, studentWords), several && !LooksLikeDay(stem) && (!has(column.Cook) || has(column.Student)):
			n.Student = stem
		}
	}
	return n
}

// filled reports whether any row has something under a head.
func filled(t *grid.Table, head int) bool {
	for n := range t.Rows {
		if c, _ := t.Cell(n, head); c.Kind != sheet.Blank {
			return true
		}
	}
	return false
}
