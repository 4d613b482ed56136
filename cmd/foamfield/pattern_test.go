package main

import (
	"testing"

	"foamfield/ingest/pattern"
)

// Every pattern of the program is valid: it is made only when it is first used.
func TestPatternsAreValid(t *testing.T) {
	if n := pattern.MakeAll(); n < 100 {
		t.Errorf("only %d patterns", n)
	}
}
