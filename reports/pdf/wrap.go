package pdf

import (
	"strings"
	"unicode"

	"foamfield/reports/document"
)

// run is clean text in one face; a line is runs side by side.
type (
	run struct {
		face face
		text string
	}
	line struct{ runs []run }
)

func plain(s string) document.Text  { return document.Text{{Text: s}} }
func strong(s string) document.Text { return document.Text{{Text: s, Strong: true}} }

// word is what is not broken unless it is wider than a whole line: pieces of
// text with no space between them at which a line may end.
type word struct {
	runs  []run
	width float64 // at size 1
}

// mayEnd makes any space at which a line may end the plain one.
func mayEnd(r rune) rune {
	if unicode.IsSpace(r) && r != document.Tie {
		return ' '
	}
	return r
}

// words cuts a text at its spaces; a word may change face within.
func (p *press) words(t document.Text) []word {
	var out []word
	open := false // the last word still grows
	for _, span := range t.Together() {
		f := regular
		if span.Strong {
			f = bold
		}
		for i, piece := range strings.Split(strings.Map(mayEnd, span.Text), " ") {
			if i > 0 {
				open = false
			}
			if piece = p.fonts.clean(f, piece); piece == "" {
				continue
			}
			if !open {
				out = append(out, word{})
			}
			w := &out[len(out)-1]
			w.runs = append(w.runs, run{f, piece})
			w.width += p.fonts.width(f, 1, piece)
			open = true
		}
	}
	return out
}

// broken is the text in lines no wider than width; at least one line.
func (p *press) broken(t document.Text, size, width float64) []line {
	width /= size
	var out []line
	var now line
	used := 0.0
	end := func() {
		out = append(out, now)
		now, used = line{}, 0
	}
	for _, w := range p.words(t) {
		space := 0.0
		if used > 0 {
			space = p.fonts.width(regular, 1, " ")
		}
		if used > 0 && used+space+w.width > width {
			end()
			space = 0
		}
		if w.width > width { // a path, a link, a hostile note: cut it
			for _, r := range w.runs {
				for _, c := range r.text {
					one := p.fonts.width(r.face, 1, string(c))
					if used > 0 && used+one > width {
						end()
					}
					now.add(run{r.face, string(c)})
					used += one
				}
			}
			continue
		}
		if space > 0 {
			now.add(run{regular, " "})
		}
		for _, r := range w.runs {
			now.add(r)
		}
		used += space + w.width
	}
	if len(now.runs) > 0 || len(out) == 0 {
		end()
	}
	return out
}

// add joins a run to the last one where the face is the same.
func (l *line) add(r run) {
	if n := len(l.runs); n > 0 && l.runs[n-1].face == r.face {
		l.runs[n-1].text += r.text
		return
	}
	l.runs = append(l.runs, r)
}
