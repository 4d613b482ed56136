package kitchen

import (
	"slices"
	"strings"

	"foamfield/ingest/pattern"
)

// A star behind a number points to a line below the table: "14*", "* stopwatch started
// late".

var (
	footnoteLine = pattern.Of(`^\s*(\*{1,5}|[†‡§#]{1,3}|[¹²³⁴⁵⁶⁷⁸⁹]|\(?[a-h1-9]\)|[a-h]\s?[:=])\s*[:=–-]?\s*(\pL.*\S)\s*$`)
	footnoteMark = pattern.Of(`^(.*[\pL\d%')])\s*(\*{1,5}|[†‡§#]{1,3}|[¹²³⁴⁵⁶⁷⁸⁹]|\([a-h1-9*]\))$`)
	gluedLetter  = pattern.Of(`^(.*\d)([a-h])$`)
)

// Footnotes are what the lines of a sheet say below its tables, by their mark; a mark that
// says two things says nothing.
func (s *Sheets) Footnotes(sheet string) map[string]Line {
	var notes map[string]Line
	for _, line := range s.Lines {
		if line.At.Sheet != sheet {
			continue
		}
		for part := range strings.SplitSeq(footnotesApart(line.Text), "\n") {
			m := footnoteLine.FindStringSubmatch(part)
			if m == nil {
				continue
			}
			if notes == nil {
				notes = map[string]Line{}
			}
			mark := footnoteKey(m[1])
			said := Line{Text: m[2], At: line.At}
			if had, twice := notes[mark]; twice && had.Text != said.Text {
				said.Text = ""
			}
			notes[mark] = said
		}
	}
	return notes
}

var nextFootnote = pattern.Of(`[;,.]?\s+(\*{1,5}|[†‡§]{1,3}|[¹²³⁴⁵⁶⁷⁸⁹]|\([a-h1-9]\))\s*[:=]?\s*\pL`)

// footnotesApart writes several footnotes of one line on a line each.
func footnotesApart(text string) string {
	for _, at := range slices.Backward(nextFootnote.FindAllStringSubmatchIndex(text, -1)) {
		text = text[:at[0]] + "\n" + text[at[2]:]
	}
	return text
}

// raised gives the marks that are figures one form.
var raised = strings.NewReplacer("¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")

func footnoteKey(mark string) string { return strings.Trim(raised.Replace(mark), "() :=") }

// Footnote parts the text of a cell from the mark behind it, where a footnote explains that
// mark.
func Footnote(notes map[string]Line, text string) (plain string, note Line, ok bool) {
	if len(notes) == 0 {
		return text, Line{}, false
	}
	for _, form := range []*pattern.Pattern{footnoteMark, gluedLetter} {
		if m := form.FindStringSubmatch(strings.TrimSpace(text)); m != nil {
			if note, ok = notes[footnoteKey(m[2])]; ok && note.Text != "" {
				return strings.TrimSpace(m[1]), note, true
			}
		}
	}
	return text, Line{}, false
}
