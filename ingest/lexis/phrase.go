package lexis

import "strings"

// LongestPhrase is the most words a phrase has.
const LongestPhrase = 5

// PhraseKey is a phrase as Lex would cut it: its words with single spaces.
func PhraseKey(text string) string {
	var words []string
	for _, t := range Lex(Fold(text), false) {
		words = append(words, t.Text)
	}
	return strings.Join(words, " ")
}

// Match looks for the longest phrase that starts at token i among those find
// knows, and returns how many tokens it takes.
func Match[T any](tokens []Token, i int, find func(string) (T, bool)) (T, int) {
	var buf [80]byte
	var none T
	longest := 0
	var found T
	text := buf[:0]
	for n := 0; n < LongestPhrase && i+n < len(tokens); n++ {
		t := &tokens[i+n]
		if t.Kind == ANumber || t.Kind == ABadNumber {
			break
		}
		if n > 0 {
			text = append(text, ' ')
		}
		text = append(text, t.Text...)
		if v, ok := find(string(text)); ok {
			found, longest = v, n+1
		}
	}
	if longest == 0 {
		return none, 0
	}
	return found, longest
}

// CellKey is the form under which the text of a whole cell is looked up.
func CellKey(text string) string { return KeyFolded(Unwrap(Fold(text))) }

// Cells is the set of whole cells that a list of texts names.
func Cells(texts string) map[string]bool {
	set := map[string]bool{}
	for _, text := range Listed(texts) {
		set[CellKey(text)] = true
	}
	return set
}
