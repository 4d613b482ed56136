package analysis

import (
	"math"
	"strings"
	"testing"
)

func TestParseCanisters(t *testing.T) {
	for text, want := range map[string][]float64{"1 L x 2, 0.5 L": {1, 1, 0.5}, "0,5 L": {0.5}, "500 ml × 3; 1L": {0.5, 0.5, 0.5, 1}, "1 litre + 0.25 l": {1, 0.25}} {
		got, err := ParseCanisters(text)
		if err != nil || len(got) != len(want) {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
			continue
		}
		for i := range want {
			if got[i].Litres != want[i] {
				t.Errorf("%q: %v, want %v", text, got, want)
			}
		}
	}
	for _, text := range []string{"", "big", "1 L x 0", "0 L", "3 kg", "1 L x 1000"} {
		if got, err := ParseCanisters(text); err == nil || !strings.Contains(err.Error(), "type for example") {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}

// A service is the start's mix in more grams, split by size; trials keep their batch; no
// fill is suggested for a size that no trial had.
func TestService(t *testing.T) {
	asked := 1000.0
	mixed := []Canister{{Text: "1 L", Litres: 1}, {Text: "1 L", Litres: 1}, {Text: "0.5 L", Litres: 0.5}}
	r := run(t, demo, Settings{Service: mixed, ServiceBatch: &asked})
	s, start := r.Service, r.Starts[0]
	sum := 0.0
	for i, l := range s.Ingredients {
		sum += l.Grams
		if share := l.Grams / 1000; math.Abs(share-start.Ingredients[i].Grams/r.Batch.Grams) > 2e-4 {
			t.Errorf("%s is %v of the service, %v of the start", l.Name, share, start.Ingredients[i].Grams/r.Batch.Grams)
		}
	}
	if math.Abs(sum-1000) > 0.3 || s.Fills[0].Grams != 400 || s.Fills[2].Grams != 200 || !s.Fills[0].Beyond || s.Fills[2].Beyond {
		t.Errorf("%v g, fills %+v", sum, s.Fills)
	}
	if r.Batch.Grams != 300 || len(r.NextTrials) == 0 {
		t.Errorf("trials have a batch of %v", r.Batch.Grams)
	}
	if s := service(r, mixed, nil); s.Note == "" || len(s.Fills) > 0 {
		t.Errorf("a fill for a size that nobody logged: %+v", s)
	}
	if s := service(r, mixed[2:], nil); s.Note != "" || s.Grams != *r.Batch.LargestFillGrams {
		t.Errorf("the logged size: %+v", s)
	}
}
