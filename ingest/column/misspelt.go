package column

import (
	"strings"
	"sync"
	"unicode"

	"foamfield/ingest/ingredient"
)

// allowed is how many slips a word of n letters may have: none in short words,
// where a slip makes another word.
func allowed(n int) int {
	switch {
	case n < 6:
		return 0
	case n < 9:
		return 1
	case n < 14:
		return 2
	}
	return 3
}

// misspelt is the phrase the key is a misspelling of, nil if none or if two
// phrases of different roles are equally near.
func (v *vocabulary) misspelt(key string) *phrase {
	if p := v.bare[consonants(key)]; p != nil && key == consonants(key) {
		return p // "hld"
	}
	squashed := strings.ReplaceAll(key, " ", "")
	limit := allowed(len(squashed))
	if limit == 0 || len(squashed) > 40 {
		return nil
	}
	set := letterSet(squashed)
	var best *phrase
	near, tied := limit+1, false
	for _, p := range v.ordered {
		if len(p.squashed) < 5 || farApart(p.letters, set) > 2*limit {
			continue
		}
		switch d := slipsIn(key, p.key, limit); {
		case d < near:
			best, near, tied = p, d, false
		case d == near && best != nil && p.entries[0].role != best.entries[0].role:
			tied = true
		}
	}
	if near > limit || tied || near > allowed(len(best.squashed)) {
		return nil
	}
	return best
}

// slipsIn is how many slips make the words of a of those of b, limit+1 if more
// than limit. A word too many is no slip, only a space left out or put in is.
func slipsIn(a, b string, limit int) int {
	x, y := strings.Fields(a), strings.Fields(b)
	if len(x) != len(y) || len(x) == 1 {
		a, b = strings.Join(x, ""), strings.Join(y, "")
		if len(x) > 1 && (len(y) > 1 || strings.ContainsFunc(a, notLetter)) || longer(a, b) || abs(len(a)-len(b)) > limit {
			return limit + 1
		}
		return distance(a, b, limit)
	}
	sum := 0
	for i := range x {
		if x[i] == y[i] {
			continue
		}
		most := allowed(len(y[i]))
		d := distance(x[i], y[i], most)
		if d > most || longer(x[i], y[i]) {
			return limit + 1
		}
		sum += d
	}
	return min(sum, limit+1)
}

func notLetter(r rune) bool { return !unicode.IsLetter(r) }

// longer reports whether a is b with letters before or behind it, which makes
// another word ("unclogged") and no misspelling.
func longer(a, b string) bool {
	return len(a) >= len(b)+2 && (strings.HasSuffix(a, b) || strings.HasPrefix(a, b))
}

// consonants are the letters of a key that people keep when they leave vowels
// out, "" if fewer than three.
func consonants(key string) string {
	s := strings.Map(func(r rune) rune {
		if strings.ContainsRune("aeiou ", r) {
			return -1
		}
		return r
	}, key)
	if len(s) < 3 {
		return ""
	}
	return s
}

// ingredientKeys are the names of the shipped ingredients by their keys.
var ingredientKeys = sync.OnceValue(func() map[string]string {
	keys := map[string]string{}
	for _, i := range ingredient.All() {
		if k := joined(tokens(i.Name)); len(k) >= 5 {
			keys[k] = i.Name
		}
	}
	return keys
})

// misspeltIngredient is the one shipped ingredient the key is a misspelling of.
func misspeltIngredient(key string) string {
	limit := allowed(len(strings.ReplaceAll(key, " ", "")))
	if limit == 0 || len(key) > 40 {
		return ""
	}
	best, near, tied := "", limit+1, false
	for k, name := range ingredientKeys() {
		if abs(len(k)-len(key)) > limit+2 {
			continue
		}
		switch d := slipsIn(key, k, limit); {
		case d < near:
			best, near, tied = name, d, false
		case d == near && d <= limit:
			tied = true
		}
	}
	if tied {
		return ""
	}
	return best
}

// distance is the number of letters added, left out, changed or swapped with a
// neighbour, that make a of b; limit+1 if more than limit.
func distance(a, b string, limit int) int {
	if abs(len(a)-len(b)) > limit {
		return limit + 1
	}
	const most = 64
	var rows [3][most]uint8
	if len(a) >= most || len(b) >= most {
		return limit + 1
	}
	before, last, row := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = uint8(j)
	}
	far := uint8(limit + 1)
	for i := 1; i <= len(a); i++ {
		// Only the band within limit of the diagonal can count.
		from, to := max(1, i-limit), min(len(b), i+limit)
		row[from-1] = far
		if from == 1 {
			row[0] = uint8(i)
		}
		least := row[from-1]
		for j := from; j <= to; j++ {
			d := last[j-1]
			if a[i-1] != b[j-1] {
				d++
			}
			if j < i+limit {
				d = min(d, last[j]+1)
			}
			d = min(d, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			row[j] = d
			least = min(least, d)
		}
		if least >= far {
			return limit + 1
		}
		before, last, row = last, row, before
	}
	return min(int(last[len(b)]), limit+1)
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
