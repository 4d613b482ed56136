package look

import (
	"strings"
	"unicode"
)

// dayWords are words of the titles that say which day the rows below are of,
// in six languages.
var dayWords = SetOf(`day days week weeks wk monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun
	january february march april may june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec
	jour jours semaine lundi mardi mercredi jeudi vendredi samedi dimanche lun mer jeu ven sam dim
	janvier février mars avril mai juin juillet août septembre octobre novembre décembre janv févr avr juil déc
	día días semana lunes martes miércoles jueves viernes sábado domingo mié jue vie sáb dom
	enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre diciembre ene abr ago dic
	giorno giorni settimana lunedì martedì mercoledì giovedì venerdì sabato domenica gio ven
	gennaio febbraio aprile maggio giugno luglio settembre ottobre dicembre gen mag giu lug set ott
	tag tage woche kw montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag
	januar jänner februar märz juni juli oktober dezember mär okt dez
	dag dagen maandag dinsdag woensdag donderdag vrijdag zaterdag zondag ma di wo vr za zo januari februari maart mei augustus mrt`)

// besideDay are words that stand beside a day.
var besideDay = SetOf(`the of am pm morning afternoon evening service matin soir midi de le la mañana tarde noche del mattina sera der den vormittag nachmittag abend früh de het ochtend middag avond st nd rd th er`)

// IsDay reports whether a text says a day and nothing else: "Monday 3 June".
func IsDay(text string) bool {
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
