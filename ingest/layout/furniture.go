package layout

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// averageWords start the label of a row that sums up others, in five languages.
var averageWords = setOf(`avg avg. average averages mean means median total totals sum sd s.d. s.d std std. stdev st.dev st.dev. stdev. rsd cv range
	target targets goal spec minimum maximum
	moyenne moyennes moy moy. médiane somme totaux écart cible objectif écart-type ecart ecart-type e.t.
	media medias mediana suma totales desviación desv desv. desvest objetivo promedio prom prom.
	medie somma totale totali deviazione dev. obiettivo
	mittelwert mittelwerte mittel mw durchschnitt summe gesamt standardabweichung stabw stabw. ziel zielwert sollwert median
	ø x̄ σ`)

// lone average words count only when they are all of the label: they start other texts too.
var loneAverageWords = setOf(`min max n count ds et sem var %cv cv% et. ds. dev min. max.`)

// isAverage reports whether a label is that of an average, a total, a spread
// or a target.
func isAverage(label string) bool {
	label = strings.ToLower(strings.Trim(strings.TrimSpace(label), ":=. "))
	if label == "" || len(label) > 40 {
		return false
	}
	first := label
	if i := strings.IndexFunc(label, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("(:=/,±", r) }); i > 0 {
		first = label[:i]
	}
	return averageWords[first] || averageWords[strings.Trim(first, ".")] || loneAverageWords[label]
}

// kind says what furniture a row below a table's header is, "" when it is a
// row of the table.
func (f *finder) kind(t *Table, row *sheet.Row, cells []sheet.Cell) Kind {
	l := f.look(cells)
	if l.values*2 <= l.cells && t.repeats(cells) {
		return Header
	}
	if l.unitsOnly() && l.cells >= 2 && l.values == 0 {
		return Units
	}
	if t.sumsUp(cells) {
		return Average
	}
	if l.cells > 1 {
		if l.values == 0 && t.prose(cells) {
			return Legend
		}
		return ""
	}
	for k := range cells {
		c := &cells[k]
		if empty(c) {
			continue
		}
		if c.Kind != sheet.Text {
			return ""
		}
		h := t.headAt(int(c.Col))
		switch {
		case h < 0:
			return Legend
		case t.Heads[h].Meaning.Role == column.TrialID && short(c.Text):
			return "" // a trial without results: said, not dropped
		case takesNumbers(t.Heads[h].Meaning.Role) && short(c.Text):
			return ""
		}
	}
	return Legend
}

// short reports whether a text can be an id rather than a sentence.
func short(text string) bool {
	text = strings.TrimSpace(text)
	return len(text) <= 16 && strings.IndexFunc(text, unicode.IsDigit) >= 0 && !strings.HasSuffix(text, ":") && strings.Count(text, " ") <= 2
}

// prose reports whether a row of words alone says nothing of a trial: no cell
// stands under a head that trials fill.
func (t *Table) prose(cells []sheet.Cell) bool {
	for k := range cells {
		c := &cells[k]
		if empty(c) {
			continue
		}
		h := t.headAt(int(c.Col))
		if h < 0 {
			continue
		}
		if len(c.Text) > 60 && t.Heads[h].Meaning.Role != column.Note {
			return true
		}
		switch t.Heads[h].Meaning.Role {
		case column.None, column.Note:
		default:
			if len(c.Text) <= 40 {
				return false
			}
		}
	}
	return true
}

// sumsUp reports whether a row is an average, a total, a spread or a target:
// its label says so, or all of it is formulas below columns that are typed.
func (t *Table) sumsUp(cells []sheet.Cell) bool {
	numbers, formulas, texts := 0, 0, 0
	label := ""
	for k := range cells {
		c := &cells[k]
		switch {
		case empty(c):
		case c.Kind == sheet.Text:
			if texts++; label == "" && (numbers == 0 || t.labels == int(c.Col)) {
				label = c.Text
			}
		default:
			numbers++
			if c.Flags&sheet.FromFormula != 0 {
				formulas++
			}
		}
	}
	if label != "" && isAverage(label) {
		return true
	}
	// An average's label may stand in the id column behind others.
	if h := t.Find(column.TrialID); h >= 0 {
		for k := range cells {
			if int(cells[k].Col) == t.Heads[h].Col && !empty(&cells[k]) {
				return cells[k].Kind == sheet.Text && isAverage(cells[k].Text)
			}
		}
		return texts == 0 && formulas >= 2 && formulas == numbers
	}
	return false
}
