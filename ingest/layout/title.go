package layout

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// dayWords are words of the titles that say which day the rows below are of,
// in five languages.
var dayWords = setOf(`day days week weeks wk monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun
	january february march april may june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec
	jour jours semaine lundi mardi mercredi jeudi vendredi samedi dimanche lun mer jeu ven sam dim
	janvier février mars avril mai juin juillet août septembre octobre novembre décembre janv févr avr juil déc
	día días semana lunes martes miércoles jueves viernes sábado domingo mié jue vie sáb dom
	enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre diciembre ene abr ago dic
	giorno giorni settimana lunedì martedì mercoledì giovedì venerdì sabato domenica gio ven
	gennaio febbraio aprile maggio giugno luglio settembre ottobre dicembre gen mag giu lug set ott
	tag tage woche kw montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag
	januar jänner februar märz juni juli oktober dezember mär okt dez`)

// besideDay are words that stand beside a day.
var besideDay = setOf(`the of am pm morning afternoon evening service matin soir midi de le la mañana tarde noche del mattina sera der den vormittag nachmittag abend früh st nd rd th er`)

// isDay reports whether a text says a day and nothing else: "Monday 3 June".
func isDay(text string) bool {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",.:()/-–", r) })
	named := false
	numbers := 0
	for _, w := range words {
		digits := strings.TrimRight(w, "stndrhe")
		switch {
		case dayWords[w]:
			named = true
		case digits != "" && strings.Trim(digits, "0123456789") == "":
			numbers++
		case !besideDay[w]:
			return false
		}
	}
	return len(words) > 0 && (named || numbers == 3)
}

// isTitle reports whether a cell that has row i for itself is the title of the
// rows below it: a day or a date, a cell merged across the table, or words at
// its left with rows after them.
func (t *Table) isTitle(f *finder, i int, c *sheet.Cell) bool {
	h := t.headAt(int(c.Col))
	across, merged := f.merged(f.s.Rows[i].Number, int(c.Col))
	wide := merged && across.ToCol >= across.FromCol+2
	left := int(c.Col) <= t.Heads[0].Col || int(c.Col) == t.labelCol()
	if !left && !wide || !f.rowsFollow(t, i) {
		return false
	}
	switch {
	case c.Kind == sheet.Date:
		return true
	case c.Kind != sheet.Text || len(c.Text) > 80:
		return false
	case wide, isDay(c.Text):
		return true
	case h >= 0 && t.Heads[h].Meaning.Role == column.TrialID && short(c.Text):
		return false
	}
	return !strings.HasPrefix(c.Text, "*") && !strings.HasSuffix(strings.TrimSpace(c.Text), ".")
}

// rowsFollow reports whether the next filled row of the sheet has several
// cells of the table.
func (f *finder) rowsFollow(t *Table, i int) bool {
	for j := i + 1; j < len(f.s.Rows); j++ {
		if n := filledCells(f.s.Rows[j].Cells); n > 0 {
			return filledCells(between(f.s.Rows[j].Cells, t.fromCol, t.toCol)) >= 2
		}
	}
	return false
}

// firstFilled is the first cell with something in it.
func firstFilled(cells []sheet.Cell) sheet.Cell {
	for k := range cells {
		if !empty(&cells[k]) {
			return cells[k]
		}
	}
	return sheet.Cell{}
}

// struck reports whether all filled cells are struck out.
func struck(cells []sheet.Cell) bool {
	some := false
	for k := range cells {
		switch c := &cells[k]; {
		case empty(c):
		case c.Flags&sheet.Struck == 0:
			return false
		default:
			some = true
		}
	}
	return some
}
