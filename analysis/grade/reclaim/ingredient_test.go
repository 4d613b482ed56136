package reclaim

import (
	"testing"

	"foamfield/ingest/ingredient"
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
