// Package say is how a message writes what stood in a cell: numbers, masses and
// quoted text.
package say

import (
	"math"
	"strconv"
	"strings"
)

// Number writes a number for a message: four figures are enough to find it.
func Number(v float64) string {
	if a := math.Abs(v); a >= 1000 && a < 1e9 {
		return strconv.FormatFloat(math.Round(v), 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', 4, 64)
}

// Exact writes a number in full, so that no reader takes its point for a mark of
// thousands.
func Exact(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if i := strings.IndexByte(s, '.'); i >= 0 && len(s)-i == 4 {
		s += "0"
	}
	return s
}

// Grams writes a mass.
func Grams(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) + " g"
}

// Quoted puts what stood in a cell into a message, shortened.
func Quoted(text string) string {
	runes := []rune(strings.Join(strings.Fields(text), " "))
	if len(runes) > 60 {
		runes = append(runes[:59], '…')
	}
	return "“" + string(runes) + "”"
}

// Fold makes two spellings of a header or a name comparable.
func Fold(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// Times says how often: once, twice, 3 times.
func Times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// List joins names: a, b and c.
func List(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
