package pdf

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"foamfield/ingest/thorough"
	"foamfield/reports/document"
)

var (
	red   = color.NRGBA{R: 200, A: 255}
	green = color.NRGBA{G: 160, A: 255}
	blue  = color.NRGBA{B: 220, A: 255}
)

func box(x, y, w, h vg.Length) vg.Path {
	var p vg.Path
	p.Move(vg.Point{X: x, Y: y})
	p.Line(vg.Point{X: x + w, Y: y})
	p.Line(vg.Point{X: x + w, Y: y + h})
	p.Line(vg.Point{X: x, Y: y + h})
	p.Close()
	return p
}

// painted draws on a page at (100, 100) in a box of 200 by 200.
func painted(t *testing.T, paint func(c vg.CanvasSizer)) []byte {
	t.Helper()
	p := newPress(document.Document{}, A4)
	p.doc.SetCompression(false)
	p.newPage()
	if err := drawInto(p.doc, &p.fonts, &p.images, 100, 100, 200, 200, 1, func(c vg.CanvasSizer) error { paint(c); return nil }); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := p.doc.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Another program draws the page; the colours are looked up on it, in points
// from the lower left corner of the figure's box.
func TestCanvasAsAnotherProgramDrawsIt(t *testing.T) {
	tool := thorough.Program(t, "pdftoppm", "figures on pages are not drawn by another program here")
	type spot struct {
		x, y int
		want color.Color
	}
	white := color.White
	for _, c := range []struct {
		name  string
		paint func(c vg.CanvasSizer)
		spots []spot
	}{
		{"fill", func(c vg.CanvasSizer) { c.SetColor(red); c.Fill(box(20, 30, 40, 50)) },
			[]spot{{40, 50, red}, {22, 32, red}, {58, 78, red}, {18, 50, white}, {40, 84, white}}},
		{"clipped to the box", func(c vg.CanvasSizer) { c.SetColor(red); c.Fill(box(-90, -90, 400, 400)) },
			[]spot{{2, 2, red}, {198, 198, red}, {-4, 100, white}, {100, -4, white}, {204, 100, white}, {100, 204, white}}},
		{"half see-through on white", func(c vg.CanvasSizer) {
			c.SetColor(color.NRGBA{R: 200, A: 128})
			c.Fill(box(0, 0, 50, 50))
			c.SetColor(color.NRGBA{})
			c.Fill(box(0, 0, 50, 50))
		}, []spot{{25, 25, color.NRGBA{R: 227, G: 127, B: 127, A: 255}}}},
		{"moved, turned, scaled and back", func(c vg.CanvasSizer) {
			c.SetColor(red)
			c.Push()
			c.Translate(vg.Point{X: 100, Y: 0})
			c.Rotate(1.5707963267948966)
			c.Scale(2, 1)
			c.SetColor(blue)
			c.Fill(box(10, 10, 40, 20)) // x 70..90, y 20..100
			c.Pop()
			c.Fill(box(150, 150, 20, 20))
		}, []spot{{80, 25, blue}, {80, 95, blue}, {80, 105, white}, {95, 60, white}, {65, 60, white}, {160, 160, red}}},
		{"disc of one arc", func(c vg.CanvasSizer) {
			var p vg.Path
			p.Move(vg.Point{X: 140, Y: 100})
			p.Arc(vg.Point{X: 100, Y: 100}, 40, 0, 6.283185307179586)
			p.Close()
			c.SetColor(green)
			c.Fill(p)
		}, []spot{{100, 100, green}, {100, 137, green}, {63, 100, green}, {127, 127, green}, {131, 131, white}, {100, 143, white}}},
		{"curves", func(c vg.CanvasSizer) {
			var p vg.Path
			p.Move(vg.Point{X: 0, Y: 0})
			p.QuadTo(vg.Point{X: 100, Y: 200}, vg.Point{X: 200, Y: 0}) // its top is at (100, 100)
			p.Close()
			c.SetColor(blue)
			c.Fill(p)
			var q vg.Path
			q.Move(vg.Point{X: 0, Y: 200})
			q.CubeTo(vg.Point{X: 0, Y: 120}, vg.Point{X: 200, Y: 120}, vg.Point{X: 200, Y: 200}) // lowest at (100, 140)
			q.Close()
			c.SetColor(red)
			c.Fill(q)
		}, []spot{{100, 96, blue}, {100, 104, white}, {100, 145, red}, {100, 136, white}, {20, 80, white}}},
		{"line and dashes", func(c vg.CanvasSizer) {
			c.SetColor(green)
			c.SetLineWidth(10)
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 0, Y: 150}}, {Type: vg.LineComp, Pos: vg.Point{X: 200, Y: 150}}})
			c.SetLineDash([]vg.Length{20, 20}, 0)
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 0, Y: 50}}, {Type: vg.LineComp, Pos: vg.Point{X: 200, Y: 50}}})
			c.SetLineWidth(0)
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 0, Y: 100}}, {Type: vg.LineComp, Pos: vg.Point{X: 200, Y: 100}}})
		}, []spot{{100, 150, green}, {100, 153, green}, {100, 158, white}, {10, 50, green}, {30, 50, white}, {50, 50, green}, {100, 100, white}}},
		{"picture, the right way up", func(c vg.CanvasSizer) {
			img := image.NewNRGBA(image.Rect(0, 0, 2, 2))
			img.Set(0, 0, red)
			img.Set(1, 0, green)
			img.Set(0, 1, blue)
			img.Set(1, 1, color.White)
			c.DrawImage(vg.Rectangle{Min: vg.Point{X: 40, Y: 40}, Max: vg.Point{X: 160, Y: 160}}, img)
		}, []spot{{60, 140, red}, {140, 140, green}, {60, 60, blue}, {140, 60, white}, {30, 100, white}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			if err := os.WriteFile(filepath.Join(dir, "x.pdf"), painted(t, c.paint), 0o644); err != nil {
				t.Fatal(err)
			}
			if out, err := exec.Command(tool, "-r", "72", "-png", "-singlefile", filepath.Join(dir, "x.pdf"), filepath.Join(dir, "x")).CombinedOutput(); err != nil || len(out) > 0 {
				t.Fatalf("pdftoppm: %v: %s", err, out)
			}
			file, err := os.Open(filepath.Join(dir, "x.png"))
			if err != nil {
				t.Fatal(err)
			}
			defer file.Close()
			img, err := png.Decode(file)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range c.spots {
				r, g, b, _ := img.At(100+s.x, 299-s.y).RGBA()
				x, y, z, _ := s.want.RGBA()
				for _, d := range []int{int(r) - int(x), int(g) - int(y), int(b) - int(z)} {
					if d < -0x300 || d > 0x300 {
						t.Errorf("(%d, %d) is %02x%02x%02x, want %v", s.x, s.y, r>>8, g>>8, b>>8, s.want)
						break
					}
				}
			}
		})
	}
}

// What is not a number draws nothing and breaks nothing.
func TestCanvasNotANumber(t *testing.T) {
	nan := vg.Length(0)
	nan /= nan
	b := painted(t, func(c vg.CanvasSizer) {
		c.SetColor(red)
		c.Fill(box(nan, 0, 10, nan))
		c.Stroke(vg.Path{{Type: vg.CloseComp}})
		c.Fill(nil)
		c.FillString(plot.DefaultTextHandler.Cache().Lookup(plot.DefaultFont, 10), vg.Point{X: nan}, "lost")
		c.Scale(float64(nan), 1)
		c.DrawImage(vg.Rectangle{Max: vg.Point{X: 1, Y: 1}}, image.NewNRGBA(image.Rect(0, 0, 1, 1)))
	})
	if bytes.Contains(b, []byte("NaN")) || bytes.Contains(b, []byte("Inf ")) {
		t.Error("the page holds what is not a number")
	}
}

func TestFaceOf(t *testing.T) {
	for _, c := range []struct {
		f    font.Font
		want face
	}{
		{font.Font{Typeface: "Liberation", Variant: "Sans"}, face{"Sans", ""}},
		{font.Font{Variant: "Sans", Weight: stdfont.WeightBold}, face{"Sans", "B"}},
		{font.Font{Variant: "Serif", Style: stdfont.StyleItalic}, face{"Serif", "I"}},
		{font.Font{Variant: "Mono", Style: stdfont.StyleOblique, Weight: stdfont.WeightBlack}, face{"Mono", "BI"}},
		{font.Font{Variant: "Handwriting"}, face{"Sans", ""}},
	} {
		if got := faceOf(c.f); got != c.want {
			t.Errorf("%+v is set in %v, want %v", c.f, got, c.want)
		}
	}
}

// Every cut is there, and measured as the plotting library measures it.
func TestWidthsAgree(t *testing.T) {
	p := newPress(document.Document{}, A4)
	cache := plot.DefaultTextHandler.Cache()
	for f := range cuts {
		want := font.Font{Typeface: "Liberation", Variant: font.Variant(f.family)}
		if f.style == "B" || f.style == "BI" {
			want.Weight = stdfont.WeightBold
		}
		if f.style == "I" || f.style == "BI" {
			want.Style = stdfont.StyleItalic
		}
		const s = "emulsifier, % of mix 0.8"
		drawn := cache.Lookup(want, 10)
		theirs := float64(drawn.Width(s))
		if ours := p.fonts.width(f, 10, s); ours < theirs*0.985 || ours > theirs*1.015 {
			t.Errorf("%v: %v points wide, the plotting library says %v", f, ours, theirs)
		}
	}
}
