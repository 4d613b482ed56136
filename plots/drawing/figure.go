// Package drawing is how a thing is drawn: a Figure is a value that knows its words and
// draws itself, when asked, on any canvas of gonum/plot: a page of the report, an SVG or
// a PNG. Its title stands above, its axes and labels within, what has no name there in
// the key below. It knows colours and sizes, and nothing of trials.
package drawing

import (
	"fmt"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Figure is one picture, not yet drawn.
type Figure struct {
	Name    string // file name without ending: "region-emulsifier"
	Title   string // the finding, one sentence; drawn above the picture
	Caption string // how to read it, and what was left out; not drawn
	Alt     string // what is to be seen, for those who cannot; the finding is the title's
	Width   vg.Length
	Height  vg.Length

	Subject string    // what is shown, without the finding
	Key     []Entry   // of everything that needs a name
	Below   []Entry   // of it, what is named in the key and not in the picture
	Several bool      // a mark may be several trials
	Panel   vg.Length // height without title and key
	Paint   func(draw.Canvas, *Names)
}

// Sized gives the figure a width and the height that goes with it: the picture is
// as high as ever, whatever the key below it takes.
func (f Figure) Sized(width vg.Length) Figure {
	f.Below = f.try(vg.Point{X: width, Y: height(width, f.Title, nil, f.Panel)}, nil)
	f.Width, f.Height = width, height(width, f.Title, f.Below, f.Panel)
	return f
}

// Narrow is the same figure for a telephone: its type is larger on the screen.
func (f Figure) Narrow() Figure { return f.Sized(narrowWidth) }

// Plain is the same figure for a publication: its title says what is shown, and
// leaves the finding to the text around it.
func (f Figure) Plain() Figure {
	f.Title = f.Subject
	return f.Sized(f.Width)
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
	if f.Paint == nil {
		return fmt.Errorf("figure %s: nothing to draw", f.Name)
	}
	below := f.Below
	if size := c.Rectangle.Size(); size != (vg.Point{X: f.Width, Y: f.Height}) {
		below = f.settle(size)
	}
	f.lay(c, below)
	return nil
}
