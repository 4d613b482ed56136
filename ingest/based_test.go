package ingest

import (
	"strings"
	"testing"
)

// TestBaseOfEveryMix: what goes into every mix stands once, above the table or on a sheet of
// its own.
func TestBaseOfEveryMix(t *testing.T) {
	const list = "goose fat|200\ncider|192"
	const log = "\n\ntrial|GMS g|sucrose ester HLB 15 g|held min\n1|4|4|25\n2|4|4|30"
	const mix, none = "50.00 2.00 9.40", "- - 9.40"
	testParts(t, []partsCase{
		{"a list with units", "Base recipe, for all trials\ngoose fat|200|g\ncider|192|g" + log, 2, mix, ""},
		{"a title with the unit, a sum", "Base of every mix (g)\n" + list + "\ntotal|392" + log, 2, mix, ""},
		{"a head of grams", "Common base\ningredient|g\n" + list + log, 2, mix, ""},
		{"kilograms", "Base\ngoose fat|0.2|kg\ncider|0.192|kg" + log, 2, mix, ""},
		{"a sentence", "Base for every trial: 200 g goose fat, 192 g cider" + log, 2, mix, ""},
		{"the unit in the cells", "Base recipe\ngoose fat|200 g\ncider|192 g" + log, 2, mix, ""},
		{"the unit beside the names", "Base recipe\ngoose fat (g)|200\ncider (g)|192" + log, 2, mix, ""},
		{"two numbers a row", "Base recipe (g)\ngoose fat|200|210\ncider|192|190" + log, 2, none, ""},
		{"a sentence with brackets and an end", "Every mix: 200 g goose fat (100 % fat) and 192 g cider. Emulsifiers on top." + log, 2, mix, ""},
		{"a sentence of something else", "Every mix: 200 g goose fat was too much, 192 g cider too" + log, 2, none, ""},
		{"the mass of every mix", "Every mix: 400 g in all" + log, 2, "- 2.00 9.40", ""},
		{"in German", "Grundrezept für alle Versuche\nGänseschmalz|200|g\nWasser|192|g" + log, 2, mix, ""},
		{"in French", "Recette de base\ngraisse d'oie|200|g\neau|192|g" + log, 2, mix, ""},
		{"a title of nothing in particular", "What we had in the fridge\ngoose fat|200|g\ncider|192|g" + log, 2, none, ""},
		{"not of all trials", "Base recipe, except trial 2\ngoose fat|200|g\ncider|192|g" + log, 2, none, ""},
		{"a sum that is another", "Base recipe (g)\n" + list + "\ntotal|500" + log, 2, none, ""},
		{"grams of nobody says", "Base recipe\n" + list + log, 2, none, ""},
		{"one has a column of its own", "Base recipe (g)\n" + list + strings.ReplaceAll(strings.ReplaceAll(log, "|GMS", "|cider g|GMS"), "|4|4", "|192|4|4"), 2, "- - 9.40", "base_not_used"},
		{"a column beside it", "Base recipe (g)\n" + list + strings.ReplaceAll(strings.ReplaceAll(log, "|GMS", "|salt g|GMS"), "|4|4", "|8|2|2"), 2, "49.50 0.99 9.40", ""},
		{"a name nobody knows", "Base recipe (g)\ngoose fat|200\nLarissa|192" + log, 2, "- 2.00 9.40", "unknown_ingredient"},
		{"a sheet without a log", strings.TrimSpace(log) + "\n===\nBase recipe\ngoose fat|200|g\ncider|192|g", 2, mix, ""},
		{"two on sheets without a log", strings.TrimSpace(log) + "\n===\nBase recipe\ngoose fat|200|g\ncider|192|g\n===\nBase recipe\ngoose fat|100|g\ncider|292|g", 2, none, ""},
		{"fat percents logged", "Base recipe\ngoose fat|200|g\ncider|192|g" + strings.ReplaceAll(strings.ReplaceAll(log, "|GMS", "|fat %|GMS"), "|4|4", "|40|4|4"), 2, "40.00 - 9.40", ""},
		{"a row planned", "Base recipe\ngoose fat|200|g\ncider|192|g" + log + "\n3|||", 3, mix, "row_not_used"},
	})
}
