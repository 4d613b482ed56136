// Package plots turns results into figures. A Figure is a value that knows its
// words and draws itself, when asked, on any canvas of gonum/plot: a page of the
// report, an SVG or a PNG. Nothing is computed here but positions: every number
// that is shown or worded is read from the results.
package plots

import (
	"bytes"
	"fmt"
	"image"
	"image/png"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"

	"foamfield/analysis/result"
)

// Figure is one picture, not yet drawn.
type Figure struct {
	Name    string // file name without ending: "region-emulsifier"
	Title   string // the finding, one sentence; drawn above the picture
	Caption string // how to read it, and what was left out; not drawn
	Alt     string // what is to be seen, for those who cannot; the finding is the title's
	Width   vg.Length
	Height  vg.Length

	plain   string     // what is shown, without the finding
	key     []keyEntry // of everything that needs a name
	below   []keyEntry // of it, what is named in the key and not in the picture
	several bool       // a mark may be several trials
	panel   vg.Length  // height without title and key
	paint   func(draw.Canvas, *names)
}

// sized gives the figure a width and the height that goes with it: the picture is
// as high as ever, whatever the key below it takes.
func (f Figure) sized(width vg.Length) Figure {
	f.below = f.try(vg.Point{X: width, Y: height(width, f.Title, nil, f.panel)}, nil)
	f.Width, f.Height = width, height(width, f.Title, f.below, f.panel)
	return f
}

// Narrow is the same figure for a telephone: its type is larger on the screen.
func (f Figure) Narrow() Figure { return f.sized(narrowWidth) }

// Plain is the same figure for a publication: its title says what is shown, and
// leaves the finding to the text around it.
func (f Figure) Plain() Figure {
	f.Title = f.plain
	return f.sized(f.Width)
}

// All returns the figures that the results can carry, in the order of the
// report. It accepts any results, however little they hold.
func All(r *result.Results) []Figure {
	if r == nil {
		return nil
	}
	var figures []Figure
	for _, build := range []func(*result.Results) (Figure, bool){
		regionByEmulsifier, regionByHLB, fatLimit, effects, trials, foreseen, residuals,
	} {
		if f, ok := build(r); ok {
			figures = append(figures, f)
		}
	}
	return figures
}

// Draw lays the figure out within the canvas's rectangle, whatever its size.
// A failure inside the plotting library comes back as an error; the canvas may
// then hold half a figure.
func (f Figure) Draw(c draw.Canvas) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("figure %s: %v", f.Name, p)
		}
	}()
	if f.paint == nil {
		return fmt.Errorf("figure %s: nothing to draw", f.Name)
	}
	below := f.below
	if size := c.Rectangle.Size(); size != (vg.Point{X: f.Width, Y: f.Height}) {
		below = f.settle(size)
	}
	f.lay(c, below)
	return nil
}

// PNG returns the figure as a picture of dots.
func (f Figure) PNG(dpi int) ([]byte, error) {
	if dpi <= 0 {
		return nil, fmt.Errorf("figure %s: %d dots per inch is not a picture", f.Name, dpi)
	}
	canvas := vgimg.NewWith(vgimg.UseWH(f.Width, f.Height), vgimg.UseDPI(dpi))
	if err := f.Draw(draw.New(canvas)); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	picture := canvas.Image()
	if drawn, ok := picture.(*image.RGBA); ok {
		picture = paletted(drawn)
	}
	// Flat colours pack well at any effort.
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&b, picture); err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	return b.Bytes(), nil
}
