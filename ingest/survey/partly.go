package survey

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// Beside Y and N a third letter says that it came out in part: P in most languages, T in a
// German column of J and N, D in a Dutch one. T beside F is true, and P beside F has passed.

var partLetters = map[string]string{"p": "y n j o s", "t": "j", "d": "j"}

// letterOfPart finds the letter of a foam that came out in part in a column of single letters.
func (m *surveyor) letterOfPart(f *scheme.Field) {
	if f.Role != column.CameOut || f.Reversed {
		return
	}
	typed := map[string]bool{}
	for n := range m.Rows() {
		if text := strings.TrimRight(say.Fold(m.Text(n, f.Col)), "."); text != "" {
			typed[text] = true
		}
	}
	found := ""
	for letter, beside := range partLetters {
		for _, yes := range strings.Fields(beside) {
			if typed[letter] && typed[yes] && !typed["f"] {
				if found != "" && found != letter {
					return
				}
				found = letter
			}
		}
	}
	for text := range typed {
		if len(text) != 1 {
			return // words: a letter among them is a slip
		}
	}
	if found == "" {
		return
	}
	f.Legend = map[string]trial.Answer{found: trial.Partly, found + ".": trial.Partly}
	m.say(trial.Note("marks read", m.Heading(f.Col), "in "+say.Quoted(f.Header)+" "+say.Quoted(strings.ToUpper(found))+" is read as partly, as it stands beside yes and no",
		"nothing to do, or type partly"))
}
