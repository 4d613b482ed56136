package layout

import (
	"fmt"
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// summaryWords name a statistic, in five languages.
var summaryWords = wordsOf(map[statistic]string{
	mean: `avg avg. average averages mean means moyenne moyennes moy moy. media medias promedio promedios prom prom. medie
		mittelwert mittelwerte mittel mw durchschnitt schnitt ø x̄`,
	median:        `median medians médiane mediana mediane`,
	total:         `total totals sum sums somme totaux suma totales somma totale totali summe gesamt σ`,
	least:         `min min. minimum mínimo minimo`,
	most:          `max max. maximum máximo massimo`,
	deviation:     `sd s.d s.d. std std. stdev st.dev st.dev. stdev. deviation écart ecart écart-type ecart-type e.t. et et. desviación desv desv. desvest ds ds. dev dev. deviazione standardabweichung stabw stabw.`,
	variation:     `rsd cv %cv cv% var`,
	standardError: `sem`,
	breadth:       `range spread`,
	count:         `n count`,
})

// wholeOnly are summary words that also start other texts, or are names.
var wholeOnly = setOf(`min min. max max. n count ds ds. et et. sem var %cv cv% dev dev. spread mittel schnitt std sd media`)

// besideSummary are words that change nothing beside a summary word.
var besideSummary = setOf(`of all the value values grand overall row rows column columns total type dev dev. standard estándar std st st. s d ± + & and und et y e trials tests test trial class classe clase klasse group groups week`)

var (
	goalWords = setOf(`goal goals aim aims target targets wanted required desired spec specs specification specifications requirement requirements
		ziel ziele zielwert zielwerte soll sollwert sollwerte vorgabe vorgaben cible cibles objectif objectifs visé requis
		objetivo objetivos meta metas deseado requerido obiettivo obiettivi richiesto desiderato`)
	bestWords = setOf(`best winner winners top champion favourite favorite meilleur meilleure meilleurs meilleures gagnant
		mejor mejores ganador migliore migliori vincitore beste bester bestes besten sieger`)
	besideGoal = setOf(`our the a value values of for hold foam we want is at least`)
)

func wordsOf(lists map[statistic]string) map[string]statistic {
	words := map[string]statistic{}
	for s, list := range lists {
		for _, w := range strings.Fields(list) {
			words[w] = s
		}
	}
	return words
}

// labelWords are the words of a label, in lower case.
func labelWords(label string) []string {
	label = strings.ToLower(strings.Trim(strings.TrimSpace(label), ":= "))
	if len(label) > 40 || strings.ContainsAny(label, "0123456789") && !strings.ContainsAny(label, " (:=/,") {
		return nil // an id, most often
	}
	return strings.FieldsFunc(label, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("(:=/,)", r) })
}

// summary is the statistic a label names; whole: it says nothing else.
func summary(label string) (s statistic, whole bool) {
	words := labelWords(label)
	whole = true
	for i, w := range words {
		named := summaryWords[w]
		if named == noStatistic {
			named = summaryWords[strings.Trim(w, ".")]
		}
		switch {
		case named != noStatistic && s == noStatistic:
			s = named
			if i > 0 && !whole {
				return noStatistic, false // it starts with something else
			}
		case named == noStatistic && !besideSummary[w]:
			whole = false
		}
	}
	if s != noStatistic && !whole && wholeOnly[words[0]] {
		return noStatistic, false
	}
	return s, whole && s != noStatistic
}

// isGoal reports whether a label starts with a word for a goal, and whether it
// says nothing else.
func isGoal(label string) (starts, whole bool) {
	words := labelWords(label)
	whole = true
	for i, w := range words {
		w = strings.Trim(w, ".")
		starts = starts || goalWords[w] && (i == 0 || whole)
		whole = whole && (goalWords[w] || besideGoal[w])
	}
	return starts, starts && whole
}

// isBest reports whether a text speaks of the best.
func isBest(text string) bool {
	for _, w := range labelWords(text) {
		if bestWords[strings.Trim(w, ".")] {
			return true
		}
	}
	return false
}

// isShortID reports whether a text is an id and no name: it has a digit, or a
// letter or two.
func isShortID(text string) bool {
	text = strings.TrimSpace(text)
	return len(text) <= 2 || strings.IndexFunc(text, unicode.IsDigit) >= 0
}

// labelled is what a row below a header looks like beside its label.
type labelled struct {
	label    string
	col      int  // of the label
	other    bool // another cell is the trial's id
	numbers  int  // and texts that start with one
	formulas int  // numbers that a formula gives where the row above is typed
	texts    int  // other texts, but for marks of nothing
	mix      int  // numbers of the mix
	bounds   int  // results given as bounds
}

// labelCol is the column of a table whose cells tell its rows apart.
func (t *Table) labelCol() int {
	if h := t.Find(column.TrialID); h >= 0 {
		return t.Heads[h].Col
	}
	return t.labels
}

// labelOf finds a row's label: what stands for its id, or else the first text
// before any number.
func (t *Table) labelOf(cells []sheet.Cell) (l labelled) {
	id := t.labelCol()
	begun := false
	for k := range cells {
		c := &cells[k]
		switch {
		case empty(c):
		case int(c.Col) == id && (c.Kind != sheet.Text || l.label != "" && !isNoTrial(c.Text)):
			l.other = true
		case int(c.Col) == id, c.Kind == sheet.Text && l.label == "" && !begun && leadingDigits(c.Text) == "":
			l.label, l.col = c.Text, int(c.Col)
		default:
			begun = true
		}
		if begun && int(c.Col) >= id {
			return l
		}
	}
	return l
}

// isNoTrial reports whether a text starts as the label of a row that is no
// trial does.
func isNoTrial(text string) bool {
	s, _ := summary(text)
	goal, _ := isGoal(text)
	return s != noStatistic || goal || isBest(text)
}

// lookBeside looks at the cells beside a row's label.
func (t *Table) lookBeside(l *labelled, cells []sheet.Cell) {
	for k := range cells {
		c := &cells[k]
		if empty(c) || int(c.Col) == t.labelCol() || int(c.Col) == l.col {
			continue
		}
		_, number := numberIn(c)
		role := column.None
		if h := t.headAt(int(c.Col)); h >= 0 {
			role = t.Heads[h].Meaning.Role
		}
		switch {
		case number:
			l.numbers++
			if c.Flags&sheet.FromFormula != 0 && !t.formulaAbove(int(c.Col)) {
				l.formulas++
			}
			if isOfMix(role) {
				l.mix++
			} else if isBound(c) {
				l.bounds++
			}
		case c.Kind != sheet.Text || !meansNothing(c.Text):
			l.texts++
		}
	}
}

// formulaAbove reports whether the last row of the table has a formula in a
// column.
func (t *Table) formulaAbove(col int) bool {
	if len(t.Rows) == 0 {
		return false
	}
	c := cellAt(&t.Sheet.Rows[t.Rows[len(t.Rows)-1].at], col)
	return c.Flags&sheet.FromFormula != 0
}

func isOfMix(r column.Role) bool {
	switch r {
	case column.IngredientAmount, column.EmulsifierAmount, column.FatPercent, column.BlendHLB:
		return true
	}
	return false
}

func isBound(c *sheet.Cell) bool {
	text := strings.TrimSpace(c.Text)
	return strings.IndexAny(text, "<>≥≤") == 0 || strings.HasSuffix(text, "+")
}

func meansNothing(text string) bool {
	switch strings.Trim(text, " \u00a0") {
	case "", "-", "–", "—", "/", "±":
		return true
	}
	return false
}

// sumsUp says whether a row is an average, a goal or the best of the rows
// above once more, "" for a trial; and what a person should be told of it.
func (t *Table) sumsUp(cells []sheet.Cell) (Kind, string) {
	l := t.labelOf(cells)
	if (isBest(l.label) || t.bestBelow) && t.repeatsRow(cells) {
		return Best, ""
	}
	s, whole := summary(l.label)
	goal, wholeGoal := isGoal(l.label)
	if s == noStatistic && !goal && l.label != "" && isShortID(l.label) {
		return "", ""
	}
	t.lookBeside(&l, cells)
	switch {
	case l.label == "" && t.Find(column.TrialID) >= 0 && l.onlyFormulas():
		return Average, ""
	case l.label == "":
		return "", ""
	case goal:
		return t.goal(&l, wholeGoal)
	case s == noStatistic:
		return t.averageUnnamed(&l, cells)
	}
	return t.average(&l, s, whole, cells)
}

// onlyFormulas reports whether all of a row is formulas below typed columns.
func (l *labelled) onlyFormulas() bool {
	return !l.other && l.texts == 0 && l.formulas >= 2 && l.formulas == l.numbers
}

// goal reports whether a row that starts with a word for a goal is one: it has
// no mix, or bounds for results, or stands among numbered trials.
func (t *Table) goal(l *labelled, whole bool) (Kind, string) {
	switch {
	case l.other:
	case l.mix == 0 && (whole || l.numbers > 0), whole && l.bounds > 0:
		return Goal, ""
	case whole && t.standsForID(l):
		return Goal, fmt.Sprintf("%q was read as a goal and not as a trial; if it was made, give it a trial's name", strings.TrimSpace(l.label))
	}
	return "", ""
}

// average reports whether a row whose label names a statistic is one. A word
// alone may be a name: the numbers must agree, or be formulas over the column,
// or stand under a word that is no id in a column of ids.
func (t *Table) average(l *labelled, s statistic, whole bool, cells []sheet.Cell) (Kind, string) {
	names := t.holdsNames(l.col)
	switch {
	case l.other:
		return "", ""
	case l.formulas > 0 && l.formulas*2 >= l.numbers:
		return Average, ""
	case names && wholeOnly[strings.ToLower(strings.TrimSpace(l.label))]:
		return "", "" // a cook called Max
	}
	agree, differ := t.agreement(s, cells)
	need := 1
	if !whole || names {
		need = 2
	}
	if agree >= need && agree > differ {
		return Average, ""
	}
	if !whole || l.texts > 0 || l.numbers > 0 && !names && !t.standsForID(l) {
		return "", ""
	}
	return Average, l.doubted()
}

// doubted is what to say of an average whose numbers are not those of the rows
// above: nothing where it has no mix, so that it cannot be a trial.
func (l *labelled) doubted() string {
	if l.mix == 0 {
		return ""
	}
	return fmt.Sprintf("%q was read as an average or total, though its numbers are not those of the rows above; if it is a trial, give it a trial's name", strings.TrimSpace(l.label))
}

// averageUnnamed finds the averages whose word nobody listed by their numbers.
func (t *Table) averageUnnamed(l *labelled, cells []sheet.Cell) (Kind, string) {
	if l.other || l.texts > 0 || l.numbers < 3 || isShortID(l.label) || !t.standsForID(l) {
		return "", ""
	}
	for _, s := range []statistic{mean, total, deviation} {
		if agree, differ := t.agreement(s, cells); agree >= 3 && differ == 0 {
			return Average, fmt.Sprintf("%q was read as an average or total, as its numbers are those of the rows above", strings.TrimSpace(l.label))
		}
	}
	return "", ""
}

// standsForID reports whether a label stands where the rows above have ids of
// numbers or letters, as no trial of theirs would be called.
func (t *Table) standsForID(l *labelled) bool {
	if l.col != t.labelCol() {
		return !t.holdsNames(l.col)
	}
	c := t.counted()
	return !t.holdsNames(l.col) && c.digits*4 >= c.ids*3
}

// holdsNames reports whether a column is one of names.
func (t *Table) holdsNames(col int) bool {
	h := t.headAt(col)
	if h < 0 {
		return false
	}
	return isName(t.Heads[h].Meaning.Role)
}

func isName(r column.Role) bool {
	switch r {
	case column.Cook, column.Student, column.Dish, column.CanisterID, column.Note, column.Result:
		return true
	}
	return false
}
