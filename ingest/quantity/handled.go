package quantity

import (
	"slices"
	"strings"
)

// Beside an amount cooks write where it came from and how it went in: "2.4 % (old jar)",
// "0.6 % dissolved hot". That changes no amount, as long as every word of it says no more.

// setOf is the words of a list.
func setOf(words string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		set[w] = true
	}
	return set
}

var (
	// treated are what is done to an ingredient whose amount stays what it is.
	treated = setOf(`dissolved melted dispersed soaked bloomed sprinkled whisked stirred blended sieved sifted ground powdered heated warmed cooled tempered softened hydrated
		gelost aufgelost geschmolzen eingeruhrt gequollen gesiebt fondu dissous tamise disuelto fundido tamizado sciolto fuso setacciato`)
	// treating are words on how that is done.
	treating = setOf(`hot cold warm cool lukewarm well slowly quickly carefully first last separately beforehand in the and then heiss kalt warm gut langsam zuerst chaud froid tiede bien caliente frio tibio caldo freddo`)
	// packed are what an ingredient comes in.
	packed = setOf(`jar tin tub pack packet bag bottle box carton pot bucket tube sachet batch lot delivery brand
		glas dose beutel packung flasche tute charge lieferung pot sachet bouteille boite lot bote bolsa botella lote barattolo busta bottiglia lotto`)
	// which are words on one of those.
	which = setOf(`old new fresh opened open unopened same other another different second last next of the from a our big small good
		alt alte altes neu neue neues frisch offen offene selbe aus der dem von vieux vieille nouveau nouvelle nouvel autre meme du de la viejo vieja nuevo nueva otro otra mismo misma del vecchio vecchia nuovo nuova altro altra stesso stessa`)
	checked = setOf(`corrected checked rechecked confirmed weighed measured twice again remeasured reweighed exact exactly korrigiert gepruft nachgewogen corrige verifie corregido comprobado corretto verificato`)
)

// handled reports words beside an amount that say only how it was handled, what it was
// taken from, or that it was checked.
func handled(words []string) bool {
	all := func(a, b map[string]bool) bool {
		return slices.ContainsFunc(words, func(w string) bool { return a[w] }) && !slices.ContainsFunc(words, func(w string) bool { return !a[w] && !b[w] })
	}
	return all(treated, treating) || all(packed, which) || all(checked, nil)
}
