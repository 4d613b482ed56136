package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"slices"
	"strconv"

	"codeberg.org/go-pdf/fpdf"
	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// canvas draws a figure on a page as paths and text. It holds its own
// transformation and writes points already transformed, so that nothing the
// page does later depends on it. Both the page and the canvas count upwards
// from the lower left corner, in points.
type canvas struct {
	doc    *fpdf.Fpdf
	fonts  *fonts
	images *int // drawn so far in the document
	state
	stack []state
	// pen is what the page was last told, to say each thing once.
	pen struct {
		known        bool
		width, phase float64
		dashes       []float64
	}
}

// state is what Push keeps and Pop brings back.
type state struct {
	to     affine
	width  vg.Length
	dashes []vg.Length
	phase  vg.Length
	colour color.NRGBA
}

// affine maps (x, y) to (a·x + c·y + e, b·x + d·y + f).
type affine struct{ a, b, c, d, e, f float64 }

func (m affine) point(p vg.Point) (x, y float64) {
	return m.a*float64(p.X) + m.c*float64(p.Y) + m.e, m.b*float64(p.X) + m.d*float64(p.Y) + m.f
}

// after is m applied to what n gives.
func (m affine) after(n affine) affine {
	return affine{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

// scale is how much m enlarges a length, on average over the directions.
func (m affine) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

func (m affine) finite() bool { return finite(m.a, m.b, m.c, m.d, m.e, m.f) }

func finite(vs ...float64) bool {
	return !slices.ContainsFunc(vs, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) })
}

// drawInto runs paint on a canvas of w by h whose picture fills the box with
// the upper left corner at (x, y), enlarged by scale, and is clipped to it.
func drawInto(doc *fpdf.Fpdf, fs *fonts, images *int, x, y, w, h, scale float64, paint func(vg.CanvasSizer) error) error {
	_, pageHeight := doc.GetPageSize()
	c := &canvas{doc: doc, fonts: fs, images: images}
	vg.Initialize(c)
	c.to = affine{scale, 0, 0, scale, x, pageHeight - y - h*scale}
	doc.ClipRect(x, y, w*scale, h*scale, false)
	defer doc.ClipEnd()
	return paint(sized{c, vg.Length(w), vg.Length(h)})
}

// sized is a canvas that knows its size.
type sized struct {
	*canvas
	w, h vg.Length
}

func (s sized) Size() (w, h vg.Length) { return s.w, s.h }

func (c *canvas) SetLineWidth(w vg.Length) { c.state.width = w }

func (c *canvas) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.dashes, c.phase = slices.Clone(pattern), offset
}

func (c *canvas) SetColor(clr color.Color) {
	if clr == nil {
		clr = color.Black
	}
	c.colour = color.NRGBAModel.Convert(clr).(color.NRGBA)
}

func (c *canvas) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	c.to = c.to.after(affine{cos, sin, -sin, cos, 0, 0})
}

func (c *canvas) Translate(p vg.Point) {
	c.to = c.to.after(affine{1, 0, 0, 1, float64(p.X), float64(p.Y)})
}

func (c *canvas) Scale(x, y float64) { c.to = c.to.after(affine{x, 0, 0, y, 0, 0}) }

func (c *canvas) Push() { c.stack = append(c.stack, c.state) }

func (c *canvas) Pop() {
	c.state = c.stack[len(c.stack)-1]
	c.stack = c.stack[:len(c.stack)-1]
}

// ink is the colour on white paper: PDF pages hold no transparency here.
func (c *canvas) ink() (r, g, b int) {
	share := float64(c.colour.A) / 255
	on := func(v uint8) int { return int(math.Round(float64(v)*share + 255*(1-share))) }
	return on(c.colour.R), on(c.colour.G), on(c.colour.B)
}

func (c *canvas) invisible() bool { return c.colour.A == 0 }

func (c *canvas) Stroke(p vg.Path) {
	if c.state.width <= 0 || c.invisible() || len(p) == 0 {
		return
	}
	var b []byte
	scale := c.to.scale()
	width, phase := float64(c.state.width)*scale, float64(c.phase)*scale
	var dashes []float64
	for _, d := range c.dashes {
		dashes = append(dashes, float64(d)*scale)
	}
	if !c.pen.known || c.pen.width != width {
		b = append(number(b, width), "w\n"...)
	}
	if !c.pen.known || c.pen.phase != phase || !slices.Equal(c.pen.dashes, dashes) {
		b = append(b, '[')
		for _, d := range dashes {
			b = number(b, d)
		}
		b = append(b, "] "...)
		b = append(number(b, phase), "d\n"...)
	}
	c.pen.known, c.pen.width, c.pen.phase, c.pen.dashes = true, width, phase, dashes
	c.paint(p, b, "RG", "S")
}

func (c *canvas) Fill(p vg.Path) {
	if c.invisible() || len(p) == 0 {
		return
	}
	c.paint(p, nil, "rg", "f")
}

// paint writes the path after b, with the operators of its colour and its end.
func (c *canvas) paint(p vg.Path, b []byte, colour, end string) {
	b = c.colourOperator(b, colour)
	var at vg.Point // the current point
	open := false   // there is one
	to := func(q vg.Point, op string) {
		x, y := c.to.point(q)
		b = append(number(number(b, x), y), op...)
	}
	curve := func(p1, p2, q vg.Point) {
		to(p1, "")
		to(p2, "")
		to(q, "c\n")
	}
	var start vg.Point
	for _, comp := range p {
		switch comp.Type {
		case vg.MoveComp:
			to(comp.Pos, "m\n")
			at, start = comp.Pos, comp.Pos
		case vg.LineComp:
			op := "l\n"
			if !open {
				op, start = "m\n", comp.Pos
			}
			to(comp.Pos, op)
			at = comp.Pos
		case vg.ArcComp:
			first, pieces := arc(comp)
			op := "l\n"
			if !open {
				op, start = "m\n", first
			}
			to(first, op)
			at = first
			for _, q := range pieces {
				curve(q[0], q[1], q[2])
				at = q[2]
			}
		case vg.CurveComp:
			if !open {
				to(comp.Pos, "m\n")
				at, start = comp.Pos, comp.Pos
				break
			}
			switch len(comp.Control) {
			case 1: // a quadratic raised to a cubic
				q := comp.Control[0]
				third := func(p vg.Point) vg.Point {
					return vg.Point{X: p.X + (q.X-p.X)*2/3, Y: p.Y + (q.Y-p.Y)*2/3}
				}
				curve(third(at), third(comp.Pos), comp.Pos)
			case 2:
				curve(comp.Control[0], comp.Control[1], comp.Pos)
			default:
				panic(fmt.Sprintf("pdf: a curve with %d control points", len(comp.Control)))
			}
			at = comp.Pos
		case vg.CloseComp:
			if open {
				b = append(b, "h\n"...)
				at = start
			}
		default:
			panic(fmt.Sprintf("pdf: unknown part of a path: %d", comp.Type))
		}
		open = open || comp.Type != vg.CloseComp
	}
	if open {
		c.doc.RawWriteStr(string(append(b, end...)))
	}
}

// arc is a circle's arc as cubics of a quarter turn at most, and where it begins.
func arc(comp vg.PathComp) (first vg.Point, pieces [][3]vg.Point) {
	on := func(angle float64) (p, tangent vg.Point) {
		sin, cos := math.Sincos(angle)
		r := comp.Radius
		return vg.Point{X: comp.Pos.X + r*vg.Length(cos), Y: comp.Pos.Y + r*vg.Length(sin)},
			vg.Point{X: -r * vg.Length(sin), Y: r * vg.Length(cos)}
	}
	first, _ = on(comp.Start)
	n := max(1, int(math.Ceil(math.Abs(comp.Angle)/(math.Pi/2)-1e-9)))
	step := comp.Angle / float64(n)
	reach := vg.Length(4.0 / 3 * math.Tan(step/4))
	for i := range n {
		p, u := on(comp.Start + float64(i)*step)
		q, v := on(comp.Start + float64(i+1)*step)
		pieces = append(pieces, [3]vg.Point{
			{X: p.X + reach*u.X, Y: p.Y + reach*u.Y}, {X: q.X - reach*v.X, Y: q.Y - reach*v.Y}, q})
	}
	return first, pieces
}

func (c *canvas) colourOperator(b []byte, op string) []byte {
	red, green, blue := c.ink()
	for _, v := range []int{red, green, blue} {
		b = strconv.AppendFloat(b, float64(v)/255, 'f', 3, 64)
		b = append(b, ' ')
	}
	return append(append(b, op...), '\n')
}

func (c *canvas) FillString(f font.Face, at vg.Point, text string) {
	size := float64(f.Font.Size)
	if size == 0 || c.invisible() || text == "" || !c.to.finite() || !finite(float64(at.X), float64(at.Y)) {
		return
	}
	cut := faceOf(f.Font)
	text = c.fonts.clean(cut, text)
	_, pageHeight := c.doc.GetPageSize()
	m := c.to.after(affine{1, 0, 0, 1, float64(at.X), float64(at.Y)})
	c.doc.TransformBegin()
	c.doc.Transform(fpdf.TransformMatrix{A: m.a, B: m.b, C: m.c, D: m.d, E: m.e, F: m.f})
	// The library leaves the colour of text out where it thinks it is set.
	c.doc.RawWriteStr(string(c.colourOperator(nil, "rg")))
	c.doc.SetTextColor(c.ink())
	c.doc.SetFont(cut.family, cut.style, size)
	c.doc.Text(0, pageHeight, text)
	c.doc.TransformEnd()
}

// faceOf is the embedded face for a font of the plotting library.
func faceOf(f font.Font) face {
	cut := face{family: "Sans"}
	switch f.Variant {
	case "Serif", "Mono":
		cut.family = string(f.Variant)
	}
	if f.Weight >= stdfont.WeightSemiBold {
		cut.style = "B"
	}
	if f.Style != stdfont.StyleNormal {
		cut.style += "I"
	}
	return cut
}

func (c *canvas) DrawImage(rect vg.Rectangle, img image.Image) {
	if !c.to.finite() {
		return
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		c.doc.SetError(fmt.Errorf("a picture in a figure: %w", err))
		return
	}
	*c.images++
	name := "picture " + strconv.Itoa(*c.images)
	kind := fpdf.ImageOptions{ImageType: "PNG"}
	c.doc.RegisterImageOptionsReader(name, kind, &b)
	_, pageHeight := c.doc.GetPageSize()
	size := rect.Size()
	m := c.to
	c.doc.TransformBegin()
	c.doc.Transform(fpdf.TransformMatrix{A: m.a, B: m.b, C: m.c, D: m.d, E: m.e, F: m.f})
	c.doc.ImageOptions(name, float64(rect.Min.X), pageHeight-float64(rect.Max.Y),
		float64(size.X), float64(size.Y), false, kind, 0, "")
	c.doc.TransformEnd()
}

// number appends v to a hundredth of a point and a space. What is not a number
// cannot be written; it is put far off the page, where the clip hides it.
func number(b []byte, v float64) []byte {
	const far = 1e5
	if math.IsNaN(v) {
		v = -far
	}
	v = min(max(v, -far), far)
	b = strconv.AppendFloat(b, math.Round(v*100)/100, 'f', -1, 64)
	return append(b, ' ')
}
