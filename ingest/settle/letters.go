package settle

import (
	"fmt"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// happened is what a letter of a header such as C/S stands for, where it says what happened.
var happened = map[string]string{"c": "clogged", "s": "split", "b": "broken"}

// lettered is what the letters of a header stand for in its cells; nil if it is no such header.
func lettered(header string) map[string]string {
	one, two, both := strings.Cut(strings.ReplaceAll(say.Fold(header), " ", ""), "/")
	first, second := happened[one], happened[two]
	if !both || first == "" || second == "" || (one == "c") == (two == "c") {
		return nil
	}
	all := first + " and " + second
	return map[string]string{one: first, two: second, one + two: all, two + one: all, one + "/" + two: all, two + "/" + one: all}
}

// letters asks what a header of two letters stands for, since C/S may as well be cook and
// sous-chef; where the kitchen says that it is what happened, its cells are heard in full.
func (m *maker) letters(f *scheme.Field) {
	words := lettered(f.Header)
	if words == nil {
		return
	}
	f.Unit, f.Bare = units.NoUnit, units.NoUnit // C is no degree here
	switch {
	case f.Role == column.Result:
		f.Letters = words
	case f.Role == column.None && !f.Told:
		first, second, _ := strings.Cut(f.Header, "/")
		first, second = strings.TrimSpace(first), strings.TrimSpace(second)
		choice := words[say.Fold(first)] + " or " + words[say.Fold(second)]
		f.Doubt = fmt.Sprintf("say what it is: %s for %s and %s for %s, who cooked, or something else", say.Quoted(first), words[say.Fold(first)], say.Quoted(second), words[say.Fold(second)])
		m.asks[f.Col] = &trial.Question{Asked: "What is the column " + say.Quoted(f.Header) + "?", Choices: []string{choice, "cook", "ignore"}, Blocks: true,
			Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open}}}
	}
}
