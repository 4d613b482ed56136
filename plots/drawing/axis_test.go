package drawing

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
)

func TestCountsHaveWholeTicks(t *testing.T) {
	for _, hi := range []float64{1.5, 2.2, 3.5, 6, 30, 210} {
		is := Range{Lo: 0.5, Hi: hi, Whole: true}
		marks := is.ticks(300, func(string) vg.Length { return 20 })
		for _, m := range marks {
			if m.Value != math.Trunc(m.Value) {
				t.Errorf("up to %v: a tick at %v", hi, m.Value)
			}
		}
		if len(marks) == 0 {
			t.Errorf("up to %v: no tick", hi)
		}
	}
}

func TestTicks(t *testing.T) {
	wide := func(string) vg.Length { return 20 }
	for _, tt := range []struct {
		is     Range
		length vg.Length
		want   string
	}{
		{Range{Lo: 30, Hi: 58, Log: false}, 300, "30 35 40 45 50 55"},
		{Range{Lo: 30, Hi: 58, Log: false}, 60, "30 40 50"},
		{Range{Lo: 0.8, Hi: 3.5, Log: true}, 300, "0.8 1 1.5 2 2.5 3"},
		{Range{Lo: 1, Hi: 200, Log: true}, 200, "1 2 5 10 20 50 100 200"},
		{Range{Lo: 1, Hi: 200, Log: true}, 100, "1 3 10 30 100"},
		{Range{Lo: 2, Hi: 2.04, Log: true}, 300, "2 2.01 2.02 2.03 2.04"},
		{Range{Lo: -5, Hi: 5, Log: false}, 300, "-4 -2 0 2 4"},
	} {
		var got []string
		for _, k := range tt.is.ticks(tt.length, wide) {
			got = append(got, k.Label)
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%v on %v: %q, want %q", tt.is, tt.length, s, tt.want)
		}
	}
}
