package recalc

import (
	"math"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
)

// TestCountsAsFat: words that take a fat for pure, and words that only deny it of something.
func TestCountsAsFat(t *testing.T) {
	for text, want := range map[string]bool{
		"butter counted as all fat":                                  true,
		"i took the ghee as 100 % fat":                               true,
		"fat % means the butter as weighed":                          true,
		"fat as weighed, not without its water":                      true,
		"emulsifiers are not counted as fat":                         false,
		"emulsifiers do not count; only the oil is counted as fat":   true,
		"gms is counted as fat":                                      false,
		"the milk is never counted as fat":                           false,
		"cold at 8 °c. butter was counted as fat, esters were not":   true,
		"for both: emulsifiers are not counted as fat; siphon 0.5 l": false,
	} {
		if got := countsAsFat(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// TestOverMix: words that define an overrun as over the mix, and words that do not.
func TestOverMix(t *testing.T) {
	for text, want := range map[string]bool{
		"overrun = (mix - foam) / mix × 100":                             true,
		"Overrun in %: = 100 x (liquid cup - foam cup)/liquid cup":       true,
		"Overrun % = (cup of mix - cup of foam) / cup of foam x 100":     false,
		"overrun (%) = (mix-foam)/foam x 100":                            false,
		"Weigh a cup of mix and a cup of foam for the overrun":           false,
		"overrun = by eye. Drained = liquid / mix of the sieve × 100, g": false,
	} {
		if got := overMix.MatchString(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// TestEmptyCups: the cup that overruns were worked out without, of a column of its own or the same in all.
func TestEmptyCups(t *testing.T) {
	column := func(header string, values ...float64) *handin.Column {
		c := &handin.Column{Header: header}
		for _, v := range values {
			c.Cells = append(c.Cells, handin.Cell{Value: v, Known: true})
		}
		return c
	}
	liquid, foam := column("mix with cup", 212, 210, 211, 209), column("foam with cup", 112, 100, 95, 90)
	for _, c := range []struct {
		name    string
		overrun []float64
		empty   []float64
		want    []float64
	}{
		{"the same in all", []float64{100 * 100 / 100., 100 * 110 / 88., 100 * 116 / 83., 100 * 119 / 78.}, nil, []float64{12, 12, 12, 12}},
		{"one of four not taken off", []float64{100, 125, 139.8, 100 * 119 / 90.}, nil, []float64{12, 12, 12, 12}},
		{"each its own", []float64{100 * 100 / 102., 100 * 110 / 85., 100 * 116 / 83., 100 * 119 / 72.}, []float64{10, 15, 12, 18}, []float64{10, 15, 12, 18}},
		{"nothing taken off", []float64{89.3, 110, 122.1, 132.2}, nil, []float64{0, 0, 0, 0}},
		{"worked out in no one way", []float64{50, 130, 70, 300}, nil, []float64{0, 0, 0, 0}},
	} {
		tab := &handin.Table{Columns: []*handin.Column{liquid, foam}}
		if c.empty != nil {
			tab.Columns = append(tab.Columns, column("empty cup (g)", c.empty...))
		}
		j := &job{Bench: &verdict.Bench{Table: tab}}
		for i, got := range j.emptyCups(column("overrun %", c.overrun...), liquid, foam) {
			if math.Abs(got-c.want[i]) > 0.2 {
				t.Errorf("%s: trial %d: %g, not %g", c.name, i+1, got, c.want[i])
			}
		}
	}
}

// TestWentOff: notes that say why a mix weighs less than what went into it, and notes that do not.
func TestWentOff(t *testing.T) {
	for note, want := range map[string]bool{
		"12 g of water evaporated on the hob": true, "weighed after heating": true, "3 g boiled off": true, "beim Erhitzen verdampft": true, "a little spilt": true,
		"a bit gone as steam": true, "6 g lost on heating": true, "the siphon lost its gas": false, "steamed puddings beside it": false,
		"boiled first": false, "total by the big scale": false, "": false,
	} {
		if got := wentOff.MatchString(note); got != want {
			t.Errorf("%q: %v", note, got)
		}
	}
}

// TestFullCup: the weight of the mix that all overruns are worked out from and that has no column.
func TestFullCup(t *testing.T) {
	column := func(values ...float64) *handin.Column {
		c := &handin.Column{}
		for _, v := range values {
			c.Cells = append(c.Cells, handin.Cell{Value: v, Known: true})
		}
		return c
	}
	foam := column(125, 90, 74, 68, 80)
	for _, c := range []struct {
		overrun []float64
		want    float64
	}{
		{[]float64{60, 122, 170, 194, 150}, 200},
		{[]float64{60, 122, 170, 63, 150}, 200}, // one turned round
		{[]float64{37.5, 55, 63, 66, 60}, 200},  // all over the mix
		{[]float64{60, 100, 110, 260, 90}, 0},   // of no one cup
	} {
		got := 0.0
		if full := fullCup(column(c.overrun...), foam); full != nil {
			got = full.Cells[0].Value
		}
		if got != c.want {
			t.Errorf("%v: %g", c.overrun, got)
		}
	}
}
