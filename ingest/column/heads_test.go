package column

import (
	_ "embed"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/units"
	"strings"
	"testing"
)

//go:embed testdata/heads.txt
var headsText string

// TestHeads reads heads as kitchens word them.
func TestHeads(t *testing.T) {
	heads, missed := 0, 0
	for line := range strings.Lines(headsText) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		want, rest, ok := strings.Cut(line, ": ")
		if !ok {
			t.Fatalf("%q says nothing", line)
		}
		for _, pattern := range strings.Split(rest, ";") {
			for _, head := range wordings(strings.TrimSpace(pattern)) {
				heads++
				if got := shortNamed(Read(head)); got != want {
					missed++
					t.Errorf("%q: %s, want %s; %s", head, got, want, Read(head).Doubt)
				}
			}
		}
	}
	t.Logf("%d heads, %d read otherwise", heads, missed)
}

// wordings are all that a pattern such as "Hold{ (min)|, min}" stands for.
func wordings(pattern string) []string {
	before, rest, ok := strings.Cut(pattern, "{")
	if !ok {
		return []string{pattern}
	}
	inner, after, _ := strings.Cut(rest, "}")
	var all []string
	for _, w := range strings.Split(inner, "|") {
		for _, tail := range wordings(after) {
			all = append(all, before+w+tail)
		}
	}
	return all
}

// shortNamed is a meaning in one line, with an ingredient by the name it is known by.
func shortNamed(m Meaning) string {
	if i, ok := ingredient.Lookup(m.Ingredient); ok && i.Name != "emulsifier" && m.Role == IngredientAmount {
		m.Ingredient = i.Name
	}
	said := short(m)
	if m.IfPercent != NoBasis && m.Basis == NoBasis && m.Unit == units.NoUnit {
		said += ", if percent " + m.IfPercent.String()
	}
	return said
}
