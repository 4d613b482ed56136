// Package text is what a terminal prints: a Document's brief, tables, and lines that
// nothing in other people's files can break.
package text

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"foamfield/reports/document"
)

// A terminal's summary is never wider nor longer than this.
const (
	width = 80
	most  = 25
)

// Summary is the report in at most 25 lines of at most 80 letters, with a line
// feed at the end of each. What does not fit is left to the report.
func Summary(d document.Document) string {
	lines, all := fit(d.Brief, most)
	if !all {
		lines, _ = fit(d.Brief, most-1)
		lines = append(lines, "The rest is in the report.")
	}
	if len(lines) == 0 {
		return ""
	}
	return strings.Join(lines, "\n") + "\n"
}

// fit is as many blocks as so many lines hold, the last by whole sentences; all is whether
// that is every one.
func fit(blocks []document.Block, room int) (lines []string, all bool) {
	for _, b := range blocks {
		next := block(b)
		if left := room - len(lines); len(next) > left {
			switch b := b.(type) {
			case document.Paragraph:
				next = whole(plain(b.Text), left)
			case document.Formula:
				grams := next[:len(next)-len(wrap(plain(b.Note)))]
				next = append(slices.Clone(grams), whole(plain(b.Note), max(left-len(grams), 0))...)
			}
			return append(lines, next[:min(left, len(next))]...), false
		}
		lines = append(lines, next...)
	}
	return lines, true
}

// whole is as many whole sentences from the first as so many lines hold.
func whole(s string, room int) (lines []string) {
	words := strings.Fields(s)
	for i, w := range words {
		if !strings.HasSuffix(w, ".") && !strings.HasSuffix(w, "?") && i < len(words)-1 {
			continue
		}
		to := wrap(strings.Join(words[:i+1], " "))
		if len(to) > room {
			return lines
		}
		lines = to
	}
	return lines
}

func block(b document.Block) []string {
	switch b := b.(type) {
	case document.Paragraph:
		return wrap(plain(b.Text))
	case document.Formula:
		var lines []string
		for _, l := range b.Lines {
			lines = append(lines, row(plain(l.Grams), plain(l.Ounces), plain(l.Name)))
		}
		if len(b.Total) > 0 {
			lines = append(lines, row(plain(b.Total), plain(b.TotalOunces), "in all"))
		}
		return append(lines, wrap(plain(b.Note))...)
	}
	return nil
}

// row sets grams right, so that the points stand under each other, and ounces too
// where there are any.
func row(grams, ounces, name string) string {
	const column = 12
	right := func(s string) string { return strings.Repeat(" ", max(column-utf8.RuneCountInString(s), 0)) + s }
	if ounces != "" {
		ounces = right(ounces)
	}
	return clip(right(grams) + ounces + "  " + name)
}

func clip(s string) string {
	if letters := []rune(s); len(letters) > width {
		return string(letters[:width-1]) + "…"
	}
	return s
}

// plain drops what a terminal would obey: text comes from other people's files.
func plain(t document.Text) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r):
			return -1
		}
		return r
	}, t.String())), " ")
}

// Wrap breaks a sentence into lines that a terminal shows.
func Wrap(s string) string { return strings.Join(wrap(s), "\n") }

func wrap(s string) []string {
	var lines []string
	for _, word := range strings.Fields(s) {
		word = clip(word)
		if n := len(lines); n > 0 && utf8.RuneCountInString(lines[n-1])+1+utf8.RuneCountInString(word) <= width {
			lines[n-1] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}
