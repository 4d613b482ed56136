package ingest

import (
	"fmt"
	"strings"
	"testing"

	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// TestTenfold: where no sum of masses shows a slip, the other trials do.
func TestTenfold(t *testing.T) {
	for _, c := range []struct{ name, column, slip, at, do string }{
		{"percent of fat", "GMS % of fat", "25", "B5", "type 2.5 if the point was missed"},
		{"a fat percent", "fat %", "480", "A5", "type 48 if the point was missed, else a fat percent between 0 and 100"},
		{"within the design", "GMS % of fat", "6", "", ""},
	} {
		log := "fat %,GMS % of fat,batch g,came out,hold min,foam g,drained at 20 min g\n"
		for n := range 20 {
			fat, gms := fmt.Sprint(40+n%4*4), fmt.Sprint(2+0.5*float64(n%3))
			if n == 3 && c.column == "fat %" {
				fat = c.slip
			} else if n == 3 {
				gms = c.slip
			}
			log += fmt.Sprintf("%s,%s,300,yes,%d,40,%g\n", fat, gms, 10+n%5, 1+0.2*float64(n%5))
		}
		var said []string
		for _, p := range mustRead(t, log).Problems {
			if p.Severity != trial.ForInformation {
				_, cell, _ := strings.Cut(p.At.String(), "cell ")
				said = append(said, cell+": "+p.Do)
			}
		}
		if len(said) > 1 || (c.at == "") != (len(said) == 0) || c.at != "" && (!strings.HasPrefix(said[0], c.at+": ") || !strings.Contains(said[0], c.do)) {
			t.Errorf("%s: %q, want %s %q", c.name, said, c.at, c.do)
		}
	}
}

// TestWarmth: a temperature typed in the other unit is told by the other trials.
func TestWarmth(t *testing.T) {
	for _, c := range []struct {
		name string
		of   []float64 // °C
		says string    // "" = nothing
	}{
		{"55 typed in a column of °F", []float64{55, 55, 12.7777778, 55, 55, 56}, "55 °F is far from the temperatures of the other trials; 55 °C would be like them"},
		{"131 typed in a column of °C", []float64{55, 55, 131, 55, 55}, "131 °C is far from the temperatures of the other trials; 131 °F would be like them"},
		{"cold on purpose", []float64{55, 55, 4, 55, 55}, ""},
		{"a range that holds it", []float64{10, 55, 12.8, 60, 20}, ""},
		{"too few to be odd", []float64{55, 12.8, 55}, ""},
	} {
		var trials []trial.Trial
		for _, v := range c.of {
			trials = append(trials, trial.Trial{Extras: map[string]float64{"temperature_c": v}})
		}
		got := whole.Warmth(trials)
		if (c.says == "") != (len(got) == 0) || c.says != "" && (len(got) != 1 || !strings.Contains(got[0].Read, c.says)) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}
