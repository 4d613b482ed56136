package kitchen

import (
	"strings"
	"testing"
)

// TestPhases: the HLB of low and high; 0 where lines do not say both, or say two things.
func TestPhases(t *testing.T) {
	for lines, want := range map[string][2]float64{
		"Low HLB = 3.6, High HLB = 14":                     {3.6, 14},
		"low-HLB emulsifier: 4; high-HLB emulsifier: 15":   {4, 15},
		"HLB low 4\nHLB high 15":                           {4, 15},
		"blend of low HLB 4.2 / high HLB 15.6":             {4.2, 15.6},
		"HLB bas = 4, HLB élevé = 15":                      {4, 15},
		"émulsifiant à bas HLB : 4 ; à haut HLB : 15":      {4, 15},
		"HLB bajo 4, HLB alto 15":                          {4, 15},
		"HLB basso: 4, HLB alto: 15":                       {4, 15},
		"niedriger HLB-Wert 4, hoher HLB-Wert 15":          {4, 15},
		"lage HLB 4, hoge HLB 15":                          {4, 15},
		"low HLB 4":                                        {},
		"low HLB 15, high HLB 4":                           {},
		"low HLB 4, high HLB 15\nlow HLB 5":                {},
		"the foam was low, HLB 4; the next high, HLB 15":   {},
		"low HLB trials: 4, high HLB trials: 15":           {},
		"low HLB 40, high HLB 150":                         {},
		"low HLB emulsifier 4 g, high HLB emulsifier 15 g": {},
	} {
		s := Sheets{}
		for line := range strings.SplitSeq(lines, "\n") {
			s.Lines = append(s.Lines, Line{Text: line})
		}
		if p, ok := s.Phases(); ok != (want != [2]float64{}) || ok && (p.Low != want[0] || p.High != want[1]) {
			t.Errorf("%q: %v %v, want %v", lines, p, ok, want)
		}
	}
}
