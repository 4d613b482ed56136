package whose

import (
	"strings"
	"testing"
)

// Sheets that are numbered are a student's own, a card each; names of persons are not numbered.
func TestNumberedSheets(t *testing.T) {
	for names, want := range map[string]bool{
		"Card A, Card B, Card C":       true,
		"Fiche 1, Fiche 2, Fiche 10":   true,
		"Mix-1, Mix-2":                 true,
		"Ada Moss, Ben Orr, Cleo Park": false,
		"Ada, Ben, Cleo":               false,
		"Ada M, Ben O, Cleo P":         false,
		"Ada 1, Ben 2":                 false,
		"Group A, Group B, Group C":    false,
		"Gruppe 1, Gruppe 2":           false,
		"Student A, Student B":         false,
	} {
		if got := numbered(strings.Split(names, ", ")); got != want {
			t.Errorf("%s: %v", names, got)
		}
	}
}
