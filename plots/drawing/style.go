package drawing

import (
	"fmt"
	"image/color"
	"sync"

	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Colours of every figure and of the pages around them. The chance bands are one
// hue that darkens as the chance rises, so that they survive grey print; the
// darkest is still light enough for ink on it.
const (
	Paper     = "#FFFFFF"
	Ink       = "#1C2628"
	Quiet     = "#566366" // axes, notes
	Faint     = "#B4BEC0" // hatching, guides
	Accent    = "#0B5A52" // the wanted line, the middle line, the starts
	Uncertain = "#CFE0DB" // the band where a number may well be
	Pale      = "#E9EFED" // the same outside the tested part
)

// Bands are the chance bands from "works 0 to 2 times in 10" to "8 to 10".
var Bands = [5]string{"#FAFAF3", "#E4EEDF", "#C5DFCF", "#9CCBBD", "#6DB2A7"}

// Colours of the marks; each mark also has a shape of its own.
const (
	WorkedColour  = "#0B4A44"
	CloggedColour = "#A3152F"
	PartlyColour  = "#7A4A10"
	SplitColour   = "#C2571A"
	FellColour    = "#57338A"
	WeepsColour   = "#1B5E9E"
	MissedColour  = "#8A2460"
	UnknownColour = "#5D686B"
)

// FontFamily is the family named in SVG and CSS: the font the figures are
// measured with, then fonts of the same widths, then whatever there is.
const FontFamily = "'Liberation Sans',Arimo,Arial,Helvetica,sans-serif"

// Sizes. Figures are narrow with large type so that they can be read at the
// width of a telephone.
const (
	FigureWidth = 400 * vg.Length(1)
	narrowWidth = 290 * vg.Length(1) // about what a telephone shows at full size
	PanelHeight = 250 * vg.Length(1) // of the picture without its title and key

	titleSize = 12.5
	LabelSize = 10
	TickSize  = 9.5

	MarkRadius = 3.6 // of a mark among few

	LineWidth   = 1.8
	WantedWidth = 2.2
	ThinWidth   = 0.6
)

var sans = font.Font{Typeface: "Liberation", Variant: "Sans"}

func init() { plot.DefaultFont = sans }

// Colour reads a colour constant of this file.
func Colour(s string) color.RGBA {
	var r, g, b uint8
	if _, err := fmt.Sscanf(s, "#%02X%02X%02X", &r, &g, &b); err != nil {
		panic("plots: " + s + " is not a colour")
	}
	return color.RGBA{R: r, G: g, B: b, A: 255}
}

// Lighter mixes a colour with paper; share 1 is paper. Figures use no
// transparency, which not every canvas has.
func Lighter(c color.RGBA, share float64) color.RGBA {
	mix := func(v uint8) uint8 { return uint8(float64(v)*(1-share) + 255*share) }
	return color.RGBA{R: mix(c.R), G: mix(c.G), B: mix(c.B), A: 255}
}

// Line is a line of a colour, dashed where dashes are given.
func Line(colour string, width vg.Length, dashes ...vg.Length) draw.LineStyle {
	return draw.LineStyle{Color: Colour(colour), Width: width, Dashes: dashes}
}

// TextStyle is the one font of figures.
func TextStyle(size vg.Length, bold bool, colour string) text.Style {
	f := font.From(sans, size)
	if bold {
		f.Weight = stdfont.WeightBold
	}
	return text.Style{Color: Colour(colour), Font: f, Handler: plot.DefaultTextHandler}
}

// Write puts one line of text with its box's lower left corner at p.
func Write(c draw.Canvas, sty text.Style, p vg.Point, s string) {
	face := sty.Handler.Cache().Lookup(sty.Font, sty.Font.Size)
	c.SetColor(sty.Color)
	c.FillString(face, vg.Point{X: p.X, Y: p.Y + face.Extents().Descent}, s)
}

// Size is the box a line of text takes.
func Size(sty text.Style, s string) vg.Point {
	of := line{sty.Font, s}
	if size, known := sizes.Load(of); known {
		return size.(vg.Point)
	}
	face := sty.Handler.Cache().Lookup(sty.Font, sty.Font.Size)
	e := face.Extents()
	size := vg.Point{X: face.Width(s), Y: e.Ascent + e.Descent}
	sizes.Store(of, size)
	return size
}

type line struct {
	font font.Font
	text string
}

// sizes of lines that were measured: a figure is laid out many times, in widths of its own,
// and its words stay the same.
var sizes sync.Map
