package drawing

import (
	"image"
	"image/color"
	"testing"
)

// The colours of a figure stay what they are; of more than 256 the rarest come near.
func TestPaletted(t *testing.T) {
	im := image.NewRGBA(image.Rect(0, 0, 40, 30))
	at := func(x, y int) color.RGBA {
		if y < 20 {
			return Colour(Bands[x%len(Bands)])
		}
		return color.RGBA{R: uint8(6 * x), G: uint8(20 * (y - 20)), B: 90, A: 255} // 400 shades, each once
	}
	for y := range 30 {
		for x := range 40 {
			im.SetRGBA(x, y, at(x, y))
		}
	}
	out := paletted(im)
	if len(out.Palette) != 256 || out.Bounds() != im.Bounds() {
		t.Fatalf("%d colours, %v", len(out.Palette), out.Bounds())
	}
	for y := range 30 {
		for x := range 40 {
			want, got := at(x, y), color.RGBAModel.Convert(out.At(x, y)).(color.RGBA)
			if near := color.RGBAModel.Convert(out.Palette.Convert(want)); got != near || y < 20 && got != want {
				t.Fatalf("%d, %d is %v, not %v", x, y, got, want)
			}
		}
	}
}
