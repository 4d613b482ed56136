package handin

import (
	"path/filepath"
	"slices"
	"strings"

	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
)

// What is not found may still be there, in words that are not understood, on a sheet that
// is not read, in a picture. That something is missing is certain only of a work of which
// nothing is left over.

// Everything are all texts of a work: its words and notes, the names of its files and
// sheets, its headers, and what stands in columns of words.
func (w *Work) Everything() (out []string) {
	for _, p := range w.Words {
		out = append(out, p.Text)
	}
	for i, f := range w.Files {
		out = append(out, strings.TrimSuffix(f, filepath.Ext(f)), filepath.Base(filepath.Dir(w.Paths[i])))
	}
	for _, h := range w.Log {
		for _, s := range h.Book.Sheets {
			out = append(out, s.Name)
		}
		for _, m := range h.Log.Method {
			out = append(out, m.Text, m.Limit)
		}
	}
	for _, t := range slices.Concat(w.Tables, w.Sums) {
		for _, c := range t.Columns {
			if !c.Filled() {
				continue // what is headed and left empty holds nothing
			}
			out = append(out, c.Whole)
			for i := range c.Cells {
				if c.Cells[i].Kind == sheet.Text {
					out = append(out, c.Cells[i].Text)
				}
			}
		}
	}
	return out
}

// May reports that some text of a work, or a part of it that nobody here can read, may hold
// what hint looks for. A label that was left empty holds nothing.
func (w *Work) May(hint, label *pattern.Pattern) bool {
	return slices.ContainsFunc(w.Everything(), func(text string) bool {
		return hint.MatchString(text) && !(label != nil && label.MatchString(text))
	}) || w.unread()
}

// unread reports a part of a work that is not understood: words of no tongue known here, a
// picture, a table that gave no trial, a sheet of words and numbers that is no log.
func (w *Work) unread() bool {
	for _, h := range w.Log {
		if slices.ContainsFunc(h.Book.Sheets, func(s *sheet.Sheet) bool { return s.Pictures > 0 || s.Truncated }) {
			return true
		}
		for _, s := range h.Book.Sheets {
			if !h.Taken[s.Name] && numbersOn(s) >= 4 {
				return true
			}
		}
	}
	return slices.ContainsFunc(w.Words, func(p Phrase) bool { return foreign(p.Text) })
}

// numbersOn counts the numbers of a sheet.
func numbersOn(s *sheet.Sheet) (n int) {
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			if c.Kind == sheet.Number {
				n++
			}
		}
	}
	return n
}

// plainWords are words that hardly any English sentence of some length is without.
var plainWords = pattern.Of(`(?i)\b(the|a|an|of|to|in|is|are|was|were|and|with|for|on|it|at|by|than|we|i|my|our|no|not|from|as|that|this|but|more|less|after|before|so|one|both|all|into|out|up|then|only|again|too|same|each|if|be|what|its|until|when|off|or|had|held|best|over)\b`)

// foreign reports a sentence in a tongue that is not looked through for everything.
func foreign(text string) bool {
	words := strings.FieldsFunc(text, func(r rune) bool { return !(r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r > 127) })
	long := 0
	for _, x := range words {
		if len(x) > 2 {
			long++
		}
	}
	return long >= 5 && !plainWords.MatchString(text)
}
