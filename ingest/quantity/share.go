package quantity

import (
	"strconv"
	"strings"

	"foamfield/ingest/lexis"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// A percent may be written as what it was worked out from: "3 g of 40 g".

var massOfMass = pattern.Of(`^(\d+(?:[.,]\d+)?) ?(\pL+) ?(?:(?:out )?of|from|in|per|/|aus|von|auf|je|de|sur|pour|di|da|su|per|sobre|uit|van|op) ?(?:a )?(\d+(?:[.,]\d+)?) ?(\pL+)(?: (?:of )?(?:the )?(?:foam|mix|schaum|mousse|espuma|schiuma|schuim))?$`)

// shareOf reads a mass of a mass as a percent.
func shareOf(folded string) (Reading, bool) {
	m := massOfMass.FindStringSubmatch(folded)
	if m == nil {
		return Reading{}, false
	}
	part, ok := grams(m[1], m[2])
	whole, too := grams(m[3], m[4])
	if !ok || !too || whole <= 0 || part > whole {
		return Reading{}, false
	}
	v := 100 * part / whole
	return Reading{Low: v, High: v, In: units.PercentUnit, Unit: units.PercentUnit}, true
}

// grams is a mass in grams.
func grams(number, unit string) (float64, bool) {
	u, known := units.Of(unit)
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	return u.ToBase(lexis.Number{Value: v}), known && err == nil && u.Dimension() == units.Mass
}
