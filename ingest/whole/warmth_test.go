package whole

import (
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

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
		got := Warmth(trials)
		if (c.says == "") != (len(got) == 0) || c.says != "" && (len(got) != 1 || !strings.Contains(got[0].Read, c.says)) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}
