// Package units is the units of measure as kitchens write them, in six languages, and
// what each measures.
package units

import (
	"foamfield/ingest/lexis"
	"math"
	"strconv"
	"strings"
	"sync"
)

// Unit is a unit of measure as kitchens write it.
type Unit uint8

// The units. Spoons, cups, pinches, drops and sheets are known so that they can
// be refused by name: they have no fixed size.
const (
	NoUnit Unit = iota
	Gram
	Kilogram
	Milligram
	Decagram
	Ounce
	Pound
	Millilitre
	Centilitre
	Decilitre
	Litre
	FluidOunce
	Pint
	PercentUnit
	Fraction // 0 to 1
	PerMille
	VolumePercent
	Minute
	Second
	Hour
	Day
	Celsius
	Fahrenheit
	Millimetre
	Centimetre
	Inch
	Charger
	Teaspoon
	Tablespoon
	Cup
	Pinch
	Drop
	Sheet // of gelatine
	lastUnit
)

// all gives for each unit its name, dimension, texts, and how it becomes the
// base unit: value × 10^shift × factor. factor 0 means it has no fixed size.
//
// Factors: avoirdupois pound 0.45359237 kg, inch 25.4 mm (international yard
// and pound agreement, 1959); US fluid ounce and pint from the 231 cubic inch
// gallon. From memory.
var all = [lastUnit]struct {
	name   string
	dim    Dimension
	shift  int
	factor float64
	texts  string
}{
	NoUnit:    {name: ""},
	Gram:      {"g", Mass, 0, 1, `g|gr|grs|gm|gms|gram|grams|gramme|grammes|gramos|gramo|grammo|grammi|Gramm|grams weight`},
	Kilogram:  {"kg", Mass, 3, 1, `kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes|kilogramos|chilo|chili|chilogrammi|Kilogramm|kilogram`},
	Milligram: {"mg", Mass, -3, 1, `mg|mgs|milligram|milligrams|milligramme|milligrammes|miligramos|milligrammi|Milligramm`},
	Decagram:  {"dag", Mass, 1, 1, `dag|dkg|deka|decagram|decagrams|Dekagramm`},
	Ounce:     {"oz", Mass, 0, 28.349523125, `oz|ozs|ounce|ounces|once|onces|onza|onzas|oncia|Unze|Unzen|oz wt`},
	Pound:     {"lb", Mass, 0, 453.59237, `lb|lbs|pound|pounds`},
	Millilitre: {"mL", Volume, 0, 1, `ml|mls|cc|cm3|cm^|millilitre|millilitres|milliliter|milliliters|mililitro|mililitros|
		millilitri|Milliliter`},
	Centilitre:    {"cL", Volume, 1, 1, `cl|centilitre|centilitres|centiliter|centilitros|centilitri|Zentiliter`},
	Decilitre:     {"dL", Volume, 2, 1, `dl|decilitre|decilitres|deciliter|decilitros|decilitri|Deziliter|décilitre`},
	Litre:         {"L", Volume, 3, 1, `l|lt|ltr|litre|litres|liter|liters|litro|litros|litri`},
	FluidOunce:    {"fl oz", Volume, 0, 29.5735295625, `fl oz|floz|fluid ounce|fluid ounces`},
	Pint:          {"pint", Volume, 0, 0, `pint|pints|pt`},
	PercentUnit:   {"%", Percent, 0, 1, `%|pct|percent|per cent|pourcent|pour cent|por ciento|Prozent|proz|per cento|percento|wt %|% wt|% w/w|w/w %|% m/m|m/m %|% p/p|g/100g|g/100 g|g per 100 g|%w/w|%m/m|%p/p|wt%|g pro 100 g|g pour 100 g|procent|g op 100 g|g/100 gram`},
	Fraction:      {"fraction", Percent, 2, 1, `fraction|frac|mass fraction|weight fraction|0-1|0..1|0 to 1|fracción|frazione|Anteil|w/w|m/m|g/g`},
	PerMille:      {"‰", Percent, -1, 1, `‰|per mille|g/kg|g per kg|g pro kg|g par kg|g por kg|promille|pour mille|g op 1 kg|gram per kg|g/kilo|g per kilo|g/1000 g|g/1000g|g per 1000 g|g pro 1000 g`},
	VolumePercent: {"% by volume", Percent, 0, 0, `% v/v|v/v %|v/v|%v/v|vol %|vol%|% vol|vol.-%|% by volume|volume %|% en volume|Vol.%`},
	Minute:        {"min", Minutes, 0, 1, `min|mins|minute|minutes|mn|mns|m|minuto|minutos|minuti|Minuten|min:s|min:sec|mm:ss|m:ss|minuts|'|minuut|minuten`},
	Second:        {"s", Minutes, 0, 1. / 60, `s|sec|secs|second|seconds|seconde|secondes|segundo|segundos|seg|segs|secondi|secondo|Sek|Sekunde|Sekunden|"|''|seconde|seconden`},
	Hour:          {"h", Minutes, 0, 60, `h|hr|hrs|hour|hours|heure|heures|hora|horas|ora|ore|Std|Stunde|Stunden|h:min|hh:mm|h:mm|h:m|uur|uren`},
	Day:           {"day", Minutes, 0, 1440, `day|days|d|jour|jours|j|día|días|giorno|giorni|gg|Tag|Tage|Tagen|dagen`},
	Celsius: {"°C", Temperature, 0, 1, `°c|c|deg c|degc|degrees c|degree c|celsius|degrees celsius|grados c|grados|grados celsius|
		gradi|gradi c|Grad|Grad c|Grad Celsius|degrés|degrés c|degrés Celsius|°|graden|graden c|graden celsius`},
	Fahrenheit: {"°F", Temperature, 0, 1, `°f|f|deg f|degf|degrees f|degree f|fahrenheit|degrees fahrenheit|Grad f|degrés f|grados f|gradi f`},
	Millimetre: {"mm", Length, 0, 1, `mm|millimetre|millimetres|millimeter|millimeters|milímetro|milímetros|millimetri|Millimeter`},
	Centimetre: {"cm", Length, 1, 1, `cm|cms|centimetre|centimetres|centimeter|centimeters|centímetro|centímetros|centimetri|Zentimeter`},
	Inch:       {"in", Length, 0, 25.4, `in|inch|inches|pouce|pouces|pulgada|pulgadas|pollice|pollici|Zoll`},
	Charger: {"chargers", Chargers, 0, 1, `charger|chargers|charge|charges|cartridge|cartridges|cart|carts|cap|caps|capsule|capsules|bulb|bulbs|
		cartouche|cartouches|carga|cargas|cápsula|cápsulas|cartucho|cartuchos|carica|cariche|cartuccia|cartucce|bomboletta|bombolette|capsula|
		Kapsel|Kapseln|Patrone|Patronen|n2o|n20|no2|n2o chargers|n2o caps|N2O Kapseln|patroon|patronen|gaspatroon|gaspatronen`},
	Teaspoon: {"tsp", Volume, 0, 0, `tsp|tsps|teaspoon|teaspoons|t spoon|càc|c à c|c à café|c café|c à thé|cuillère à café|cuillères à café|cuillerée à café|cuillerées à café|
		cuill à café|cuil à café|cuillère à thé|cuillères à thé|cuill à c|cuil à c|cucharilla|cucharillas|cdita|cditas|cucch|Teel|Kaffeelöffel|KL|
		cucharadita|cucharaditas|cdta|cdtas|cucchiaino|cucchiaini|TL|Teelöffel|theelepel|theelepels`},
	Tablespoon: {"tbsp", Volume, 0, 0, `tbsp|tbsps|tbs|tablespoon|tablespoons|spoon|spoons|càs|c à s|c à soupe|c soupe|cuillère à soupe|cuillères à soupe|cuillerée à soupe|
		cuillerées à soupe|cuill à soupe|cuil à soupe|cuill à s|cuil à s|cuillerée|cuillerées|Essl|cuillère|cuillères|
		cucharada|cucharadas|cda|cdas|cucchiaio|cucchiai|EL|Esslöffel|Löffel|eetlepel|eetlepels`},
	Cup:   {"cup", Volume, 0, 0, `cup|cups|tasse|tasses|taza|tazas|tazza|tazze|Tasse|Tassen`},
	Pinch: {"pinch", Count, 0, 0, `pinch|pinches|pincée|pincées|pizca|pizcas|pizzico|pizzichi|Prise|Prisen|knob|dash|handful|Messerspitze|MSP|snufje|snuf`},
	Drop:  {"drops", Count, 0, 0, `drop|drops|goutte|gouttes|gota|gotas|goccia|gocce|Tropfen|druppel|druppels`},
	Sheet: {"sheets", Count, 0, 0, `sheet|sheets|leaf|leaves|feuille|feuilles|hoja|hojas|foglio|fogli|Blatt|Blätter`},
}

// Base is the unit readings of a dimension come in.
var Base = [...]Unit{Any: NoUnit, Mass: Gram, Minutes: Minute, Percent: PercentUnit, Temperature: Celsius, Count: NoUnit,
	Plain: NoUnit, Volume: Millilitre, Score: NoUnit, Chargers: Charger, Length: Millimetre}

// Dimension is what the unit measures; Any for NoUnit.
func (u Unit) Dimension() Dimension { return all[u].dim }

// String is the unit's short name, "" for NoUnit.
func (u Unit) String() string { return all[u].name }

// Sized reports whether the unit has a fixed size.
func (u Unit) Sized() bool { return all[u].factor != 0 }

var unitOf = sync.OnceValue(func() map[string]Unit {
	m := make(map[string]Unit)
	for u := range all {
		for _, text := range lexis.Listed(all[u].texts) {
			m[lexis.Key(text)] = Unit(u)
			m[lexis.PhraseKey(text)] = Unit(u)
		}
	}
	return m
})

// Parse reads a unit as it stands in a header or a row of units: "g",
// "gr.", "(min)", "ºC", "% w/w". A text with anything else in it is no unit.
func Parse(text string) (Unit, bool) {
	if len(text) > 40 {
		return NoUnit, false
	}
	k := strings.ReplaceAll(lexis.Key(lexis.Unwrap(lexis.Fold(text))), "° ", "°")
	if k == "" || k == "°" {
		return NoUnit, false
	}
	u, ok := unitOf()[k]
	return u, ok
}

// ToBase converts n from u to the base unit of its dimension. Powers of ten are
// taken on the decimal text, so 1.001 kg is exactly 1001 g.
func (u Unit) ToBase(n lexis.Number) float64 {
	def := all[u]
	switch {
	case u == Fahrenheit:
		return (n.Value - 32) * 5 / 9
	case u == Second:
		return n.Value / 60
	case def.shift != 0:
		return shifted(n, def.shift)
	}
	return n.Value * def.factor
}

// shifted is n × 10^shift, correctly rounded when n has its decimal text.
func shifted(n lexis.Number, shift int) float64 {
	if n.Digits == "" {
		return n.Value * math.Pow10(shift)
	}
	v, err := strconv.ParseFloat(n.Digits+"e"+strconv.Itoa(n.Exp+shift), 64)
	if err != nil {
		return n.Value * math.Pow10(shift)
	}
	return v
}

// Match looks for the longest unit that starts at token i, and returns how many tokens
// it takes.
func Match(tokens []lexis.Token, i int) (Unit, int) {
	return lexis.Match(tokens, i, func(s string) (Unit, bool) { u, ok := unitOf()[s]; return u, ok })
}

// Of is the unit that a word is.
func Of(word string) (Unit, bool) { u, ok := unitOf()[word]; return u, ok }
