package scheme

import (
	"strings"

	"foamfield/ingest/pattern"
)

// Some kitchens write a whole mix into one cell: "butter 200 g, water 294 g, GMS 4 g".

// Part is an amount with its name.
type Part struct{ Name, Amount, Unit string }

var (
	amountThenName = pattern.Of(`^\s*([0-9][0-9.,]*)\s*(mg|kg|g|gr|oz|%)?\s+(?:of |de |d'|di |von |van )?(\pL.*?)\s*$`)
	nameThenAmount = pattern.Of(`^\s*(\pL.*?)\s*[:=]?\s*([0-9][0-9.,]*)\s*(mg|kg|g|gr|oz|%)\.?\s*$`)
	betweenParts   = pattern.Of(`[+;&/\n]|,(?:\s|$)`)
)

var noBrackets = strings.NewReplacer("(", " ", ")", " ")

// PartsOf are the amounts with their names that a text is made of; none where it has anything else.
func PartsOf(text string) (parts []Part) {
	for _, part := range betweenParts.Split(text, -1) {
		if strings.TrimSpace(part) == "" {
			continue
		}
		part = noBrackets.Replace(part)
		if m := amountThenName.FindStringSubmatch(part); m != nil {
			parts = append(parts, Part{Name: m[3], Amount: m[1], Unit: m[2]})
		} else if m := nameThenAmount.FindStringSubmatch(part); m != nil {
			parts = append(parts, Part{Name: m[1], Amount: m[2], Unit: m[3]})
		} else {
			return nil
		}
	}
	return parts
}

// Recipes stands for what a column of whole mixes names.
const Recipes = "what the cells name"
