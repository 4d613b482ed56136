package reclaim

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
)

// TestMayBeRunOff: heads of what left the foam, whatever the reader took them for, and heads of
// something else.
func TestMayBeRunOff(t *testing.T) {
	for _, c := range []struct {
		head string
		role column.Role
		want bool
	}{
		{"ml at bottom @ 20 min", column.Unused, true},
		{"ml out (20 min)", column.CameOut, true},
		{"out ml", column.Unused, true},
		{"perte (20 min) ml", column.Unused, true},
		{"liquid under sieve, g", column.None, true},
		{"ml after 15 min", column.None, true},
		{"wet_20min_pct", column.None, true},
		{"siphon volume ml", column.None, false},
		{"fat out of butter %", column.None, false},
		{"out", column.CameOut, false},
		{"water g", column.IngredientAmount, false},
		{"hold after 20 min", column.Hold, false},
	} {
		if got := mayBeRunOff(&handin.Column{Header: c.head, Role: c.role}); got != c.want {
			t.Errorf("%q: %v", c.head, got)
		}
	}
}
