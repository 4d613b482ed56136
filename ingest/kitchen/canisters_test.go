package kitchen

import (
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
