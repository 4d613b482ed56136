package look

import (
	"strings"
	"unicode"
)

// summaryWords name a statistic, in six languages.
var summaryWords = wordsOf(map[Statistic]string{
	Mean: `avg avg. average averages mean means moyenne moyennes moy moy. media medias promedio promedios prom prom. medie
		mittelwert mittelwerte mittel mw durchschnitt schnitt ø x̄ gemiddelde gemiddeld gemiddelden gem gem.`,
	Median:        `median medians médiane mediana mediane mediaan`,
	Total:         `total totals sum sums somme totaux suma totales somma totale totali summe gesamt σ totaal totalen som`,
	least:         `min min. minimum mínimo minimo`,
	most:          `max max. maximum máximo massimo`,
	Deviation:     `sd s.d s.d. std std. stdev st.dev st.dev. stdev. deviation écart ecart écart-type ecart-type e.t. et et. desviación desv desv. desvest ds ds. dev dev. deviazione standardabweichung stabw stabw. standaardafwijking afwijking`,
	variation:     `rsd cv %cv cv% var`,
	standardError: `sem`,
	breadth:       `range spread`,
	count:         `n count`,
})

// WholeOnly are summary words that also start other texts, or are names.
var WholeOnly = SetOf(`min min. max max. n count ds ds. et et. sem var %cv cv% dev dev. spread mittel schnitt std sd media`)

// besideSummary are words that change nothing beside a summary word.
var besideSummary = SetOf(`van alle of all the value values grand overall row rows column columns total type dev dev. standard estándar std st st. s d ± + & and und et y e trials tests test trial class classe clase klasse group groups week`)

var (
	goalWords = SetOf(`goal goals aim aims target targets wanted required desired spec specs specification specifications requirement requirements
		ziel ziele zielwert zielwerte soll sollwert sollwerte vorgabe vorgaben cible cibles objectif objectifs visé requis
		doel doelen streefwaarde gewenst objetivo objetivos meta metas deseado requerido obiettivo obiettivi richiesto desiderato`)
	bestWords = SetOf(`best winner winners top champion favourite favorite meilleur meilleure meilleurs meilleures gagnant
		mejor mejores ganador migliore migliori vincitore beste bester bestes besten sieger winnaar
		worst weakest poorest longest shortest highest lowest richest leanest schlechteste schlechtester schlechtestes längste kürzeste pire meilleure peor peggiore`)
	besideGoal = SetOf(`our the a value values of for hold foam we want is at least`)
)

func wordsOf(lists map[Statistic]string) map[string]Statistic {
	words := map[string]Statistic{}
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

// Named is the part of a label that names a statistic: of what it is may stand before it,
// "1.5 % lecithin: mean hold (min)". A label without such a part is whole.
func Named(label string) string {
	if of, named, ok := strings.Cut(label, ": "); ok && len(labelWords(of)) > 1 {
		if s, _ := Summary(named); s != None {
			return named
		}
	}
	return label
}

// Summary is the statistic a label names; whole: it says nothing else.
func Summary(label string) (s Statistic, whole bool) {
	words := labelWords(label)
	whole = true
	for i, w := range words {
		named := summaryWords[w]
		if named == None {
			named = summaryWords[strings.Trim(w, ".")]
		}
		switch {
		case named != None && s == None:
			s = named
			if i > 0 && !whole {
				return None, false // it starts with something else
			}
		case named == None && !besideSummary[w]:
			whole = false
		}
	}
	if s != None && !whole && WholeOnly[words[0]] {
		return None, false
	}
	return s, whole && s != None
}

var (
	counted   = SetOf(`trials tests runs mixes foams batches makings versuche essais ensayos pruebas prove proeven n count anzahl nombre número numero aantal how many no number of`)
	countable = SetOf(`trials tests runs mixes foams batches makings versuche essais ensayos pruebas prove proeven n count anzahl many`)
	extremes  = SetOf(`best worst longest shortest highest lowest range spread avg average averages mean means median mittel mittelwert schnitt durchschnitt moyenne moy media promedio gemiddelde max min ø sd`)
)

// IsCount reports a head that is a number of trials: "trials", "no. of runs", "n".
func IsCount(head string) bool {
	words := labelWords(head)
	some := false
	for _, w := range words {
		w = strings.Trim(w, ".")
		some = some || countable[w]
		if !counted[w] {
			return false
		}
	}
	return some
}

// NamesStatistic reports a head that is of a statistic: "mean hold", "best hold (min)".
func NamesStatistic(head string) bool {
	words := labelWords(head)
	return len(words) > 1 && (extremes[strings.Trim(words[0], ".")] || extremes[strings.Trim(words[1], ".")])
}

var differences = SetOf(`minus difference differences diff diff. differenz unterschied différence diferencia differenza moins weniger`)

// IsDifference reports a label that names a difference between two of the rows above: "best
// minus control".
func IsDifference(label string) bool {
	words := labelWords(label)
	for i, w := range words {
		if differences[w] && (i > 0 || len(words) > 1) {
			return true
		}
	}
	return false
}

// bounds are labels of what is asked for: "stands, min | at least | at most".
var bounds = map[string]bool{"at least": true, "at most": true, "no less than": true, "not less than": true, "no more than": true, "not more than": true, "or more": true, "or less": true,
	"mindestens": true, "höchstens": true, "au moins": true, "au plus": true, "al menos": true, "como mucho": true, "como máximo": true, "almeno": true, "al massimo": true,
	"minstens": true, "hoogstens": true, "lower limit": true, "upper limit": true}

// IsGoal reports whether a label starts with a word for a goal, and whether it
// says nothing else.
func IsGoal(label string) (starts, whole bool) {
	words := labelWords(label)
	if bounds[strings.Join(words, " ")] {
		return true, true
	}
	whole = true
	for i, w := range words {
		w = strings.Trim(w, ".")
		starts = starts || goalWords[w] && (i == 0 || whole)
		whole = whole && (goalWords[w] || besideGoal[w])
	}
	return starts, starts && whole
}

// IsBest reports whether a text speaks of the best of some rows, or of the worst.
func IsBest(text string) bool {
	for _, w := range labelWords(text) {
		if bestWords[strings.Trim(w, ".")] {
			return true
		}
	}
	return false
}

// IsExample reports whether a label says that its row is an example.
func IsExample(label string) bool {
	return exampleWords[strings.Trim(strings.ToLower(strings.Join(strings.Fields(label), "")), ".:() ")]
}

// exampleWords are written without blanks and the last full stop.
var exampleWords = SetOf(`bv bijv voorbeeld e.g eg example exampletrial examplerow forexample sample-row z.b zb beispiel bsp beispielzeile exemple ex p.ex pex parexemple ejemplo p.ej esempio es`)

// IsShortID reports whether a text is an id and no name: it has a digit, or a
// letter or two.
func IsShortID(text string) bool {
	text = strings.TrimSpace(text)
	return len(text) <= 2 || strings.IndexFunc(text, unicode.IsDigit) >= 0
}

var listHeads = SetOf(`ingredient ingredients what name names product products item items material materials abbreviation abbr short code stuff
	ingrédient ingrédients nom produit ingrediente ingredientes nombre producto nome prodotto zutat zutaten name stoff rohstoff abkürzung kürzel
	ingrediënt ingrediënten naam grondstof afkorting`)

// HeadsList reports a text that heads a list of what is used: "Ingredient", "what".
func HeadsList(text string) bool {
	return listHeads[strings.ToLower(strings.Trim(strings.TrimSpace(text), ":."))]
}
