// Package say puts numbers, chances and names of the results into the words of a
// document, each number with its path in results.json.
package say

import (
	"fmt"
	"strings"

	"foamfield/plots/wording"
	"foamfield/reports/document"
)

// Week is a week's label in a sentence.
func Week(label string) string {
	if strings.HasPrefix(label, "week ") {
		return "the " + label
	}
	return label
}

// Text joins words, numbers and texts.
func Text(parts ...any) document.Text {
	var t document.Text
	for _, p := range parts {
		switch p := p.(type) {
		case string:
			if p != "" {
				t = append(t, document.Span{Text: p})
			}
		case document.Span:
			t = append(t, p)
		case document.Text:
			t = append(t, p...)
		default:
			panic(fmt.Sprintf("say: a %T is not said", p))
		}
	}
	return t
}

// Listed joins texts: "a", "a and b", "a, b and c".
func Listed(items []document.Text) document.Text {
	var t document.Text
	for i, item := range items {
		switch {
		case i == 0:
		case i == len(items)-1:
			t = append(t, document.Span{Text: " and "})
		default:
			t = append(t, document.Span{Text: ", "})
		}
		t = append(t, item...)
	}
	return t
}

// Either joins texts of which one is meant: "a, b or c".
func Either(items []document.Text) document.Text {
	t := Listed(items)
	for i := range t {
		if t[i].Num == nil && t[i].Text == " and " {
			t[i].Text = " or "
		}
	}
	return t
}

// Capital begins a text with a capital.
func Capital(t document.Text) document.Text {
	if len(t) == 0 || t[0].Text == "" {
		return t
	}
	out := append(document.Text(nil), t...)
	out[0].Text = wording.Capital(out[0].Text)
	return out
}

// Sentence is a whole one, with its capital and its stop.
func Sentence(s string) document.Text { return Text(wording.Sentence(s)) }

// Ended ends a sentence with a stop.
func Ended(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}

// Plural is the word for so many.
func Plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}
