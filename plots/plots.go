// Package plots turns results into figures. A Figure is a value that knows its
// words and draws itself, when asked, on any canvas of gonum/plot: a page of the
// report, an SVG or a PNG. Nothing is computed here but positions: every number
// that is shown or worded is read from the results.
package plots

import (
	"bytes"
	"fmt"
	"html"
	"image/png"
	"regexp"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

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

	key     []keyEntry
	several bool      // a mark may be several trials
	panel   vg.Length // height without title and key
	paint   func(draw.Canvas)
}

// sized gives the figure a width and the height that goes with it.
func (f Figure) sized(width vg.Length) Figure {
	f.Width, f.Height = width, height(width, f.Title, f.key, f.panel)
	return f
}

// Narrow is the same figure for a telephone: its type is larger on the screen.
func (f Figure) Narrow() Figure { return f.sized(narrowWidth) }

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
	f.paint(c)
	return nil
}

// svgHead is what the library writes before the drawing: its own remark and a
// size without any words for those who cannot see the picture.
var svgHead = regexp.MustCompile(`(?s)^<\?xml.*?<svg width="([^"]*)pt" height="([^"]*)pt" viewBox="([^"]*)".*?>\n`)

// SVG returns the figure as one SVG document; its text stays text. The same
// figure gives the same bytes.
func (f Figure) SVG() ([]byte, error) {
	canvas := vgsvg.New(f.Width, f.Height)
	if err := f.Draw(draw.New(canvas)); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	size := svgHead.FindSubmatch(b.Bytes())
	if size == nil {
		return nil, fmt.Errorf("figure %s: the drawing has no SVG head", f.Name)
	}
	head := fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%spt\" height=\"%spt\" viewBox=\"%s\" role=\"img\""+
		" aria-labelledby=\"%s-title %s-desc\">\n<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n",
		size[1], size[2], size[3], f.Name, f.Name,
		f.Name, html.EscapeString(f.Title), f.Name, html.EscapeString(f.Alt))
	body := strings.NewReplacer(
		"font-family:Liberation Sans;", "font-family:"+FontFamily+";",
		"font-variant:normal;", "", "font-variant:none;", "",
		"font-weight:normal;", "", "font-style:normal;", "",
	).Replace(b.String()[len(size[0]):])
	if f.several {
		return inTenths([]byte(head + body)), nil
	}
	return []byte(head + body), nil
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
	// Flat colours pack well at any effort.
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&b, canvas.Image()); err != nil {
		return nil, fmt.Errorf("figure %s: %w", f.Name, err)
	}
	return b.Bytes(), nil
}
