package drawing

import (
	"image/color"
	"math"
	"testing"
)

// luminance and contrast are those of WCAG 2.2, "relative luminance" and
// "contrast ratio".
func luminance(c color.RGBA) float64 {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

func contrast(a, b string) float64 {
	x, y := luminance(Colour(a)), luminance(Colour(b))
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func TestColoursReadInGrey(t *testing.T) {
	for _, tt := range []struct {
		on, ink string
		least   float64
	}{
		{Paper, Ink, 7}, {Paper, Quiet, 4.5}, {Paper, Accent, 4.5}, {Bands[4], Ink, 4.5}, {Uncertain, Ink, 7},
		{Paper, WorkedColour, 4.5}, {Paper, CloggedColour, 4.5}, {Paper, PartlyColour, 4.5}, {Paper, FellColour, 4.5},
		{Paper, WeepsColour, 4.5}, {Paper, UnknownColour, 4.5}, {Paper, SplitColour, 3}, {Bands[4], Accent, 3},
	} {
		if got := contrast(tt.on, tt.ink); got < tt.least {
			t.Errorf("%s on %s: contrast %.2f, want %.1f", tt.ink, tt.on, got, tt.least)
		}
	}
	for i := 1; i < len(Bands); i++ {
		if got := contrast(Bands[i-1], Bands[i]); got < 1.12 {
			t.Errorf("bands %d and %d: contrast %.2f in grey", i-1, i, got)
		}
	}
}
