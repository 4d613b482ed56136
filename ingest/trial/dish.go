package trial

import (
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
)

// Dish is what a trial is of, by its fats and waters: "butter, cider"; "" where no
// grams say it.
func (t *Trial) Dish() string {
	var names []string
	for _, p := range t.Parts {
		if p.What == nil || p.Grams <= 0 || p.What.Kind != ingredient.Fat && p.What.Kind != ingredient.Water {
			continue
		}
		if !slices.Contains(names, p.What.Name) {
			names = append(names, p.What.Name)
		}
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}
