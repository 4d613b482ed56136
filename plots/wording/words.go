// Package wording words what results hold as figures, and the text around them, say it:
// numbers, chances, variables and what ends the workable region.
package wording

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Number writes v with at most the given decimals and no idle zeros.
func Number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Cut shortens a name that somebody typed.
func Cut(s string) string {
	const most = 30
	letters := []rune(strings.Join(strings.Fields(s), " "))
	if len(letters) <= most {
		return string(letters)
	}
	return string(letters[:most-1]) + "…"
}

// List joins words: "a", "a and b", "a, b and c".
func List(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// Either joins words: "a or b", "a, b or c".
func Either(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

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

// Plural counts: "1 trial", "2 trials".
func Plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Capital begins a text with a capital.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// Sentence begins a text with a capital and ends it with a stop.
func Sentence(s string) string {
	s = Capital(strings.TrimSpace(s))
	if s != "" && !strings.ContainsAny(s[len(s)-1:], ".?!") {
		s += "."
	}
	return s
}
