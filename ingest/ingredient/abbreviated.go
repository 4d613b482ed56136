package ingredient

import (
	"strings"
	"unicode/utf8"
)

// leastLetters of a word tell it apart: "sorb. monost.".
const leastLetters = 3

// abbreviated reads a name whose words are cut short with a point, "sorb. monost.", where all words of
// exactly one ingredient begin so.
func abbreviated(name string) (Ingredient, bool) {
	short := strings.Fields(fold(strings.TrimSpace(name)))
	points := 0
	for i, w := range short {
		cut, pointed := strings.CutSuffix(w, ".")
		if utf8.RuneCountInString(cut) < leastLetters {
			return Ingredient{}, false
		}
		if short[i] = cut; pointed {
			points++
		}
	}
	if points == 0 || len(short) < 2 {
		return Ingredient{}, false
	}
	var found *entry
	for _, all := range aliases() {
		for _, a := range all {
			if a.beginsWith(short) {
				if found != nil && found != a.entry {
					return Ingredient{}, false
				}
				found = a.entry
			}
		}
	}
	if found == nil {
		return Ingredient{}, false
	}
	return found.copied(), true
}

// beginsWith reports whether the words of a name begin as those given, in their order.
func (a alias) beginsWith(short []string) bool {
	if len(a.words) != len(short) {
		return false
	}
	for i, w := range a.words {
		if !strings.HasPrefix(w, short[i]) {
			return false
		}
	}
	return true
}
