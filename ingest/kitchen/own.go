package kitchen

import (
	"slices"
	"strings"

	"foamfield/ingest/look"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A kitchen that keeps a sheet Ingredients without knowing of ours heads it in its own words:
// "name | HLB | type". It is taken as ours where every head is accounted for and one of them is
// HLB, which nothing but a list of ingredients has; else it may be a log or a shopping list. With
// HLB and fat and nothing else on it, its sheet may have any name.

// ownWords are what kitchens call the columns of our header, in its order.
var ownWords = [][]string{
	{"name", "ingredient", "ingredients", "emulsifier", "emulsifiers", "material", "name in log", "stuff", "item", "product", "component", "substance", "raw material",
		"zutat", "zutaten", "rohstoff", "ingrédient", "ingrédients", "matière première", "ingrediente", "ingredientes", "ingredienti", "materia prima", "ingrediënt", "ingrediënten", "grondstof"},
	{"type", "kind", "what", "class", "category"},
	{"hlb", "hlb value", "hlb no", "hlb number"},
	{"fat", "% fat", "fat percent", "fat content", "fat (%)", "fat content %", "fat content (%)", "fat % of it", "fat fraction", "fat part", "fat share"},
	{},
	{"allergen"},
	{"notes", "remark", "remarks", "comment", "comments"},
	{},
}

// listNames are what kitchens call the sheet, in their words.
var listNames = look.SetOf("ing ingr ingredient ingrédients ingredientes ingredienti ingrediënten zutaten rohstoffe materials grondstoffen")

// besideOwn are heads of such a list that change nothing.
var besideOwn = []string{"supplier", "brand", "code", "source", "origin", "no", "#"}

// ownHeads finds a header in a kitchen's own words.
func ownHeads(file string, s *sheet.Sheet) (table, bool) {
	headers := trial.Headers["Ingredients"]
rows:
	for _, r := range s.Rows[:min(len(s.Rows), headerWithin)] {
		cols := make([]int, len(headers))
		for _, c := range r.Cells {
			text := say.Fold(strings.TrimRight(c.Text, " :"))
			h := slices.IndexFunc(headers, func(header string) bool { return say.Fold(header) == text })
			if h < 0 {
				h = ownWord(text)
			}
			switch {
			case c.Kind != sheet.Text, h < 0 && !slices.Contains(besideOwn, text), h >= 0 && cols[h] != 0:
				continue rows
			case h >= 0:
				cols[h] = int(c.Col)
			}
		}
		if cols[0] == 0 && cols[1] > 0 && cols[1] == int(look.FirstFilled(r.Cells).Col) { // "what | fat % | HLB"
			cols[0], cols[1] = cols[1], 0
		}
		if cols[0] > 0 && cols[2] > 0 {
			return table{file, s, r.Number, cols, true}, true
		}
	}
	return table{}, false
}

// isAll reports a list beside which nothing stands on its sheet but titles: no trials, no "Name | Ada", no prose.
func (t table) isAll() bool {
	for _, r := range t.sheet.Rows {
		if r.Number == t.row || look.Filled(r.Cells) == 0 || look.Filled(r.Cells) == 1 && len(strings.Fields(look.FirstFilled(r.Cells).Text)) <= titleWords {
			continue
		}
		if r.Number < t.row || value(t.text(r.Number, 2)) == nil && value(t.text(r.Number, 3)) == nil {
			return false
		}
	}
	return true
}

// titleWords bounds a title.
const titleWords = 8

// ownWord is the column of our header that a kitchen's own head means, -1 if none.
func ownWord(text string) int {
	plain := strings.TrimSpace(aside.ReplaceAllString(text, ""))
	switch {
	case hlbHead.MatchString(plain):
		return 2
	case fatHead.MatchString(text), fatHead.MatchString(plain):
		return 3
	}
	return slices.IndexFunc(ownWords, func(words []string) bool { return slices.Contains(words, text) })
}
