package ingest

import (
	"math"
	"strings"
	"testing"
)

// TestRestUnlogged: batches that weigh more, row after row, than all that has a column have a
// part that has none; it is no fat. One that falls short alone is a slip, and masses that are
// a whole need no rest.
func TestRestUnlogged(t *testing.T) {
	for _, c := range []struct {
		name, log string
		fat       float64 // percent of the first mix
		said      bool
	}{
		{"cream beside its batch", `no,whole mix g,double cream 48 % g,glycerol monostearate g,came out,hold min
1,300,200,3,yes,12
2,300,220,3,yes,13
3,300,240,4,yes,15
4,300,260,4,no,`, 32, true},
		{"emulsifier by the kilo", `no,batch g,cream 36 % g,melted butter 82 % g,emulsifiers in all g per kg of mix,HLB,came out,hold min
1,250,100,50,8,7,yes,12
2,250,110,55,8,7,yes,13
3,250,120,60,9,7,yes,15
4,250,130,65,9,7,no,`, 30.8, true},
		{"the water has a column", `no,batch g,double cream 48 % g,tea g,glycerol monostearate g,came out,hold min
1,300,200,97,3,yes,12
2,300,220,77,3,yes,13
3,300,240,56,4,yes,15
4,300,260,36,4,no,`, 32, false},
		{"a whole of cream", `no,batch g,double cream 48 % g,glycerol monostearate g,came out,hold min
1,203,200,3,yes,12
2,223,220,3,yes,13
3,244,240,4,yes,15
4,264,260,4,no,`, 9600.0 / 203, false},
		{"one batch alone is short", `no,batch g,double cream 48 % g,glycerol monostearate g,came out,hold min
1,203,200,3,yes,12
2,263,220,3,yes,13
3,244,240,4,yes,15
4,264,260,4,no,`, 9600.0 / 203, false},
		{"what else was in it is not known", `no,batch g,double cream 48 % g,blue stuff g,glycerol monostearate g,came out,hold min
1,300,200,20,3,yes,12
2,300,220,20,3,yes,13
3,300,240,20,4,yes,15
4,300,260,20,4,no,`, math.NaN(), false},
	} {
		log := mustRead(t, c.log)
		fat := math.NaN()
		if v := log.Trials[0].FatPercent; v != nil {
			fat = *v
		}
		if !(math.Abs(fat-c.fat) < 1e-6 || math.IsNaN(fat) && math.IsNaN(c.fat)) {
			t.Errorf("%s: fat %g %%, want %g", c.name, fat, c.fat)
		}
		said := 0
		for _, p := range log.Problems {
			if strings.Contains(p.Read, "weigh more than the ingredients") {
				said++
			}
		}
		if said > 1 || (said == 1) != c.said {
			t.Errorf("%s: said %d times", c.name, said)
		}
	}
}
