package main

import (
	"slices"
	"testing"

	"foamfield/ingest/trial"
)

// Every dish has a folder of its own, whatever it is called.
func TestDishFolders(t *testing.T) {
	var parts []trial.Part
	for _, dish := range []string{"butter, cider", "Squash 1", "squash-1", "../../etc", "!!", "??", "Kürbis", ""} {
		parts = append(parts, trial.Part{Log: &trial.Log{Dish: dish}})
	}
	want := []string{"butter-cider", "squash-1", "squash-1-2", "etc", "2", "3", "kürbis", "dish-not-said"}
	if got := dishFolders(parts); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
