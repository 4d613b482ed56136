package drawing

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sign draws a sample of a mark, line or colour around a point.
type Sign func(c draw.Canvas, at vg.Point)

// Entry is one sign of a figure's key with its words.
type Entry struct {
	Sign  Sign
	Words string
	Wide  vg.Length // of the sign, where it is wider than most
	Set   string    // its entries stand together: all in the picture, or all below
}

const signWidth = 20 // room for a key's sign

func (e Entry) signWidth() vg.Length { return max(signWidth, e.Wide) }

// KeyBanded is a line on its band.
func KeyBanded(c draw.Canvas, at vg.Point) {
	c.SetColor(Colour(Uncertain))
	c.Fill(SwatchBox(at).Path())
	c.StrokeLine2(Line(Accent, LineWidth), at.X-7, at.Y, at.X+7, at.Y)
}

// KeyLine is a line.
func KeyLine(colour string, width vg.Length, dashes ...vg.Length) Sign {
	return func(c draw.Canvas, at vg.Point) {
		c.StrokeLine2(Line(colour, width, dashes...), at.X-8, at.Y, at.X+8, at.Y)
	}
}

// KeyStrip is a strip under the rest of a picture.
func KeyStrip(c draw.Canvas, at vg.Point) {
	box := SwatchBox(at)
	c.SetLineStyle(Line(Quiet, ThinWidth))
	c.Stroke(box.Path())
	c.StrokeLine2(Line(Quiet, ThinWidth), box.Min.X, at.Y-1.5, box.Max.X, at.Y-1.5)
}

// SwatchBox is the box of a sign that is a colour or a pattern.
func SwatchBox(at vg.Point) vg.Rectangle {
	return vg.Rectangle{Min: vg.Point{X: at.X - 7, Y: at.Y - 5}, Max: vg.Point{X: at.X + 7, Y: at.Y + 5}}
}
