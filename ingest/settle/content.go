package settle

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Some headers say what a column is only together with what stands in it: "siphon"
// above 0.5 L is its size, above fine and blocked whether the foam came out.

// byContent takes a header of which its cells show that it says something else.
func (m *maker) byContent(f *scheme.Field) {
	if f.Told || f.Unit != units.NoUnit {
		return
	}
	free := func(r column.Role) bool { return m.Find(r) == nil }
	switch {
	case f.Role == column.Canister && free(column.CameOut) && m.mostly(f, m.answersOutlet):
		m.instead(f, column.CameOut)
	case f.Role == column.Temperature && free(column.TrialID) && m.mostly(f, isLabel):
		m.instead(f, column.TrialID)
	case f.Role == column.None && len(f.Left) == 0 && f.Header != "" && m.mostly(f, isSentence),
		(f.Role == column.Score || f.Role == column.Mouthfeel) && m.mostly(f, isProse):
		m.instead(f, column.Note)
	}
}

// instead gives a column another role than its header's first, and says so.
func (m *maker) instead(f *scheme.Field, r column.Role) {
	f.Role, f.Else, f.Doubt = r, column.None, ""
	m.say(trial.Note("column by its cells", m.Heading(f.Col), say.Quoted(f.Header)+" is read as "+r.String()+", by what stands in the column",
		"nothing to do; a header that says it is surer"))
}

// judgedBy is how many filled cells tell what a column is.
const judgedBy = 400

// mostly reports whether nearly all filled cells of a column are texts of a kind.
func (m *maker) mostly(f *scheme.Field, is func(text string) bool) bool {
	filled, of := 0, 0
	for n := range m.Rows() {
		if filled >= judgedBy {
			break
		}
		c := m.Cell(n, f.Col)
		if text := strings.TrimSpace(c.Text); c.Kind == sheet.Text && text != "" {
			filled++
			if is(text) {
				of++
			}
		} else if c.Kind != sheet.Text && c.Kind != sheet.Blank {
			filled++
		}
	}
	return filled >= 2 && of*5 >= filled*4
}

// answersOutlet reports a text that says how a foam came out: fine, blocked, yes.
func (m *maker) answersOutlet(text string) bool {
	if strings.ContainsFunc(text, unicode.IsDigit) {
		return false
	}
	answer, err := m.Reply(text)
	return err == nil && (answer.Answer != reply.NoAnswer || answer.Mark != "" || len(answer.Events) > 0) || len(m.Events(text)) > 0
}

// isLabel reports a text such as T1.
func isLabel(text string) bool {
	return len(text) <= 6 && unicode.IsLetter([]rune(text)[0]) && strings.ContainsFunc(text, unicode.IsDigit)
}

// isSentence reports a text of several words that starts with no number.
func isSentence(text string) bool {
	return strings.Contains(text, " ") && unicode.IsLetter([]rune(text)[0])
}

// isProse reports a text of words.
func isProse(text string) bool {
	return !strings.ContainsFunc(text, unicode.IsDigit) && strings.ContainsFunc(text, unicode.IsLetter)
}
