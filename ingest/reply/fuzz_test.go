package reply

import (
	"foamfield/ingest/event"
	"foamfield/ingest/quantity"
	"strings"
	"testing"
)

func FuzzWords(f *testing.F) {
	for _, text := range []string{"yes, a bit", "pas bouché", "clogged: no", "n'est pas sorti", "0", "o/n", "+++", "nicht mehr verstopft"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := Parse(text)
		says := r.Answer != NoAnswer || r.Sense == Marks && r.Mark != "" || r.Word != quantity.NoWord || len(r.Events) > 0
		if err != nil && says || err == nil && !says && strings.TrimSpace(text) != "" && len(event.Of(text)) > 0 {
			t.Fatalf("Parse(%q) = %+v, %v", text, r, err)
		}
		// A word nobody knows makes any of it unreadable.
		if _, err := Parse(text + " quux"); err == nil && len(text) < quantity.LongestCell-6 {
			t.Fatalf("Parse(%q) is read", text+" quux")
		}
		seen := map[event.Event]bool{}
		for _, e := range event.Of(text) {
			if e == event.NoEvent || seen[e] {
				t.Fatalf("event.Of(%q) = %v", text, event.Of(text))
			}
			seen[e] = true
		}
	})
}
