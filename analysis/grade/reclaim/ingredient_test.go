package reclaim

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/sheet"
)

// TestKindName: what a name of more words says that it is, whatever it is made of.
func TestKindName(t *testing.T) {
	for _, c := range []struct {
		name string
		kind ingredient.Kind
		ok   bool
	}{
		{"cupuaçu juice", ingredient.Water, true},
		{"jus de cassis", ingredient.Water, true},
		{"zumo de lulo", ingredient.Water, true},
		{"soya drink", ingredient.Water, true},
		{"perilla oil", ingredient.Fat, true},
		{"huile de cameline", ingredient.Fat, true},
		{"pea cooking water", ingredient.Water, true},
		{"powder b", 0, false},
		{"drink", 0, false},
		{"oil", 0, false},
	} {
		full, ok := kindName(c.name)
		if ok != c.ok {
			t.Errorf("%q: %q, %v", c.name, full, ok)
			continue
		}
		if what, known := ingredient.Lookup(full); ok && (!known || what.Kind != c.kind) {
			t.Errorf("%q: %q is %v, want %v", c.name, full, what.Kind, c.kind)
		}
	}
}

// TestWeighedByUnit: a head that is also a word for something else, by the unit beside its values.
func TestWeighedByUnit(t *testing.T) {
	for _, c := range []struct {
		head, unit, beside string
		want               bool
	}{
		{"Room", "g", "", true},
		{"Room", "(gram)", "", true},
		{"Room", "°C", "", false},
		{"Room", "", "", false},
		{"Room", "g/l", "", false},
		{"Photo", "g", "", false},
		{"Room", "g", "slagroom", false}, // the cream has its column
	} {
		col := &handin.Column{Header: c.head, Role: column.Unused, UnitBelow: c.unit, Cells: []handin.Cell{{Kind: sheet.Number, Value: 190, Known: true, Scale: 1}}}
		tab := &handin.Table{Columns: []*handin.Column{col}}
		if c.beside != "" {
			tab.Columns = append(tab.Columns, weighed(c.beside, 190))
		}
		weighedByUnit(tab, col)
		if got := col.Role == column.IngredientAmount; got != c.want {
			t.Errorf("%s %s beside %q: %v", c.head, c.unit, c.beside, got)
		}
	}
}

// TestFullName: a word of a header, and what words beside the table call by more than it.
func TestFullName(t *testing.T) {
	for _, c := range []struct{ head, beside, want string }{
		{"monooleate", "Sorbitan monooleate has an HLB of 4.3.", "sorbitan monooleate"},
		{"monooleato", "HLB: monooleato de sorbitán 4,3; polisorbato 15", "sorbitan monooleate"},
		{"monooléate", "le monooléate de sorbitane (HLB 4,3)", "sorbitan monooleate"},
		{"monooleato", "il monooleato di gliceria, e poi monooleato", ""},
		{"monooleato", "monooleato de sorbitán, monooleato de glicerilo", ""}, // which of the two?
	} {
		full, _ := fullName(c.head, []handin.Phrase{{Text: c.beside}})
		what, _ := ingredient.Lookup(full)
		if full == "" {
			what.Name = ""
		}
		if what.Name != c.want {
			t.Errorf("%s beside %q: %q", c.head, c.beside, full)
		}
	}
}

// TestHLBHeader: heads of a blend HLB that say of what it is, and heads of one emulsifier's.
func TestHLBHeader(t *testing.T) {
	for head, want := range map[string]bool{
		"HLB der Mischung (nach Masse)":          true,
		"HLB der Emulgatormischung, gewogen":     true,
		"HLB du mélange (pondéré)":               true,
		"HLB de los emulsionantes (por peso)":    true,
		"HLB della miscela (in peso)":            true,
		"HLB van het emulgatorenmengsel (massa)": true,
		"HLB des Esters":                         false,
		"HLB du polysorbate":                     false,
		"HLB Polysorbat 80":                      false,
	} {
		if hlbHeader.MatchString(head) != want {
			t.Errorf("%q: %v", head, !want)
		}
	}
}
