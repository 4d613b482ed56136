package whose

import (
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A file is called after its student in part; the whole name is found where its words say it.
func TestWholeName(t *testing.T) {
	for _, c := range []struct{ stem, line, name string }{
		{"hanneke siphon", "Hanneke Prill, 2nd year pastry", "Hanneke Prill"},
		{"amelie foam", "Raspberry foam :)  by Amelie Broxton", "Amelie Broxton"},
		{"Rolf T", "Rolf Tilling", "Rolf Tilling"},
		{"Moss_Ada_lab4", "Lab 4 - foam with hazelnut oil (Ada Moss)", "Ada Moss"},
		{"urs_late", "sorry, this is LATE, I was ill - Urs Marchetti", "Urs Marchetti"},
		{"ILVA", "ILVA MAVROU   LEMON OLIVE OIL FOAM", "Ilva Mavrou"},
		{"benno_siphon", "benno kell", "Benno Kell"},
		{"bench 3", "Carrot foam, Joris Verhagen", "Joris Verhagen"},
		{"final v2", "Siphon lab, by Tove van der Glimme", "Tove van der Glimme"},
		{"rhubarb foam", "Rhubarb Foam", "Rhubarb"},       // a dish is no person, but all that the file says
		{"K Trewin", "Kate Sol, group C", "K Trewin"},     // somebody else
		{"foam log", "Butter Cream Foam", "Foam Log"},     // nobody
		{"wyllie_oskar", "made by Oskar", "Wyllie Oskar"}, // no more than the file says
		{"anna_ruiz", "Anna Ruiz Ortega, 3 May", "Anna Ruiz Ortega"},
	} {
		words := []handin.Phrase{{At: trial.Place{Row: 1, Col: 1}, Text: c.line}}
		if got, _ := nameOf(words, nil, c.stem); got != c.name {
			t.Errorf("%q, %q: %q, not %q", c.stem, c.line, got, c.name)
		}
	}
}

// TestMixesNotStudents: groups of a plan are no students; groups of a class are.
func TestMixesNotStudents(t *testing.T) {
	for _, c := range []struct {
		head, groups string
		students     bool
	}{
		{"Group", "control low low high high", false},
		{"Gruppe", "Kontrolle niedrig hoch hoch", false},
		{"series", "base A A B B", false},
		{"group", "low fat;low fat;high fat", false},
		{"Group", "1 1 2 2", true},
		{"Group", "Ana Ana Bo Bo", true},
		{"Group", "A A B B", true},
		{"Student", "control low high", true},
		{"Group", "control red red blue", true}, // colours may be tables of a class
	} {
		names := strings.Fields(c.groups)
		if strings.Contains(c.groups, ";") {
			names = strings.Split(c.groups, ";")
		}
		table := &handin.Table{}
		col := &handin.Column{Header: c.head, Role: column.Student}
		for i, name := range names {
			col.Cells = append(col.Cells, handin.Cell{Kind: sheet.Text, Text: name})
			table.Trials = append(table.Trials, &handin.Trial{Trial: &trial.Trial{Student: name}, Index: i, Table: table})
		}
		table.Columns = []*handin.Column{col}
		if mixesNotStudents(table); (table.Find(column.Student) != nil) != c.students {
			t.Errorf("%s: %s: %v", c.head, c.groups, !c.students)
		}
	}
}
