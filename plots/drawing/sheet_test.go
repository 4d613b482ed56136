package drawing

import (
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
)

func TestPhrases(t *testing.T) {
	tests := []struct{ text, want string }{
		{"work at least 8 times in 10", "work|at|least|8 times in 10"},
		{"mixes of 32 to 52 % fat work", "mixes|of|32 to 52 % fat|work"},
		{"With HLB 8.7 and", "With|HLB 8.7|and"},
		{"works about 19 in 20, at 43 % fat", "works|about 19 in 20,|at|43 % fat"},
		{"2 of 6 trials worked; 2 drained too much", "2 of|6 trials|worked;|2 drained|too|much"},
		{"", ""},
	}
	for _, tt := range tests {
		got := strings.Join(phrases(tt.text), "|")
		if got != tt.want {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
	}
	sty := TextStyle(titleSize, true, Ink)
	for _, tt := range []struct {
		text, want string
		width      vg.Length
	}{
		{"2 of 6 trials worked; 2 drained too much, 1 clogged and 1 fell too soon", "2 of 6 trials worked; 2 drained too much,|1 clogged and 1 fell too soon", 388},
		{"Fat can go to about 51 % and still work 8 times in 10; beyond that the foam clogs", "Fat can go to about 51 % and still work|8 times in 10; beyond that the foam clogs", 388},
	} {
		if got := strings.Join(Wrap(sty, tt.text, tt.width), "|"); got != tt.want {
			t.Errorf("%q", got)
		}
	}
}
