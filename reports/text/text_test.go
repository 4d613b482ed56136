package text

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"

	"foamfield/reports/document"
)

func say(s string) document.Text { return document.Text{{Text: s}} }

func TestSummary(t *testing.T) {
	d := document.Document{Brief: []document.Block{
		document.Paragraph{Text: say("week.xlsx: 28 trials, 14 worked.")},
		document.Formula{Lines: []document.FormulaLine{{Name: say("clarified butter"), Grams: say("107.1 g")}, {Name: say("GMS"), Grams: say("3.9 g")}},
			Total: say("111.0 g"), Note: say("35.5 % fat. " + strings.Repeat("word ", 16))},
		document.Formula{Note: say("45 % fat.")},
	}}
	want := `week.xlsx: 28 trials, 14 worked.
     107.1 g  clarified butter
       3.9 g  GMS
     111.0 g  in all
35.5 % fat. word word word word word word word word word word word word word
word word word
45 % fat.
`
	if got := Summary(d); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := Summary(document.Document{}); got != "" {
		t.Errorf("nothing is said as %q", got)
	}
}

// Whatever a log holds, a summary fits a terminal and does not command it.
func TestFitsAndIsQuiet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		texts := rapid.OneOf(rapid.String(), rapid.StringMatching(`([a-z]{1,30} ){0,30}[a-z]*`), rapid.SampledFrom([]string{strings.Repeat("w", 200), "\x1b[2Jgone", "a\r\nb", "\u202Eabc", "\x00"}))
		var d document.Document
		for range rapid.IntRange(0, 12).Draw(t, "blocks") {
			if rapid.Bool().Draw(t, "paragraph") {
				d.Brief = append(d.Brief, document.Paragraph{Text: say(texts.Draw(t, "text"))})
				continue
			}
			f := document.Formula{Note: say(texts.Draw(t, "note"))}
			for range rapid.IntRange(0, 30).Draw(t, "lines") {
				f.Lines = append(f.Lines, document.FormulaLine{Name: say(texts.Draw(t, "name")), Grams: say(texts.Draw(t, "grams"))})
			}
			d.Brief = append(d.Brief, f)
		}
		got := Summary(d)
		lines := strings.Split(strings.TrimSuffix(got, "\n"), "\n")
		if len(lines) > most {
			t.Fatalf("%d lines", len(lines))
		}
		for _, l := range lines {
			if utf8.RuneCountInString(l) > width {
				t.Fatalf("%d letters: %q", utf8.RuneCountInString(l), l)
			}
			for _, r := range l {
				if !unicode.IsPrint(r) {
					t.Fatalf("%q in %q", r, l)
				}
			}
		}
	})
}

func TestWhatDoesNotFitIsNamed(t *testing.T) {
	var d document.Document
	for range 40 {
		d.Brief = append(d.Brief, document.Paragraph{Text: say("one line")})
	}
	lines := strings.Split(strings.TrimSuffix(Summary(d), "\n"), "\n")
	if len(lines) != most || lines[most-1] != "The rest is in the report." {
		t.Errorf("%d lines, the last %q", len(lines), lines[len(lines)-1])
	}
}

// What does not fit is left out by whole sentences.
func TestCutBetweenSentences(t *testing.T) {
	long := strings.Repeat("word ", 30) + "end."
	for _, c := range []struct{ text, last string }{
		{"Short. " + long + " " + long, "Short."},               // one line is left
		{long + " " + long, "one line"},                         // not one sentence fits
		{"Of 0.5 it is 3.2 %. Is it? " + long, "3.2 %. Is it?"}, // a point in a number ends nothing
	} {
		var d document.Document
		for range most - 2 {
			d.Brief = append(d.Brief, document.Paragraph{Text: say("one line")})
		}
		d.Brief = append(d.Brief, document.Paragraph{Text: say(c.text)})
		note := document.Document{Brief: append(slices.Clone(d.Brief[:most-2]), document.Formula{Note: say(c.text)})}
		if Summary(d) != Summary(note) {
			t.Errorf("%q: a note is cut otherwise: %s", c.text, Summary(note))
		}
		followed := d // a paragraph that just fits, and one that does not
		followed.Brief = append(slices.Clone(d.Brief[:most-2]), document.Paragraph{Text: say("First. " + strings.Repeat("word ", 18) + "end.")}, document.Paragraph{Text: say("More.")})
		if got := Summary(followed); !strings.HasSuffix(got, "one line\nFirst.\nThe rest is in the report.\n") {
			t.Errorf("cut within a sentence: %s", got)
		}
		lines := strings.Split(strings.TrimSuffix(Summary(d), "\n"), "\n")
		if n := len(lines); lines[n-1] != "The rest is in the report." || !strings.HasSuffix(lines[n-2], c.last) {
			t.Errorf("%q: %q", c.text, lines[n-2:])
		}
	}
}
