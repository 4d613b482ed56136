package plots

import (
	"image"
	"image/color"
	"math"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// trace is a canvas that draws nothing and remembers where texts and paths
// would land, through every shift and turn.
type trace struct {
	now   frame
	stack []frame
	texts []traced
	paths vg.Rectangle // around every point of every path
}

type traced struct {
	words string
	box   vg.Rectangle
}

// frame is an affine map: columns (a, b) and (c, d), then a shift.
type frame struct{ a, b, c, d, x, y float64 }

func newTrace() *trace {
	inf := vg.Length(math.Inf(1))
	return &trace{now: frame{a: 1, d: 1}, paths: vg.Rectangle{Min: vg.Point{X: inf, Y: inf}, Max: vg.Point{X: -inf, Y: -inf}}}
}

func (f frame) at(p vg.Point) vg.Point {
	x, y := float64(p.X), float64(p.Y)
	return vg.Point{X: vg.Length(f.a*x + f.c*y + f.x), Y: vg.Length(f.b*x + f.d*y + f.y)}
}

func (t *trace) SetLineWidth(vg.Length)             {}
func (t *trace) SetLineDash([]vg.Length, vg.Length) {}
func (t *trace) SetColor(color.Color)               {}
func (t *trace) Push()                              { t.stack = append(t.stack, t.now) }
func (t *trace) Pop()                               { t.now, t.stack = t.stack[len(t.stack)-1], t.stack[:len(t.stack)-1] }
func (t *trace) DrawImage(vg.Rectangle, image.Image) {
}

func (t *trace) Rotate(r float64) {
	s, c := math.Sincos(r)
	f := t.now
	t.now.a, t.now.b = f.a*c+f.c*s, f.b*c+f.d*s
	t.now.c, t.now.d = f.c*c-f.a*s, f.d*c-f.b*s
}

func (t *trace) Translate(p vg.Point) {
	q := t.now.at(p)
	t.now.x, t.now.y = float64(q.X), float64(q.Y)
}

func (t *trace) Scale(x, y float64) {
	t.now.a, t.now.b, t.now.c, t.now.d = t.now.a*x, t.now.b*x, t.now.c*y, t.now.d*y
}

func (t *trace) Stroke(p vg.Path) { t.path(p) }
func (t *trace) Fill(p vg.Path)   { t.path(p) }

func (t *trace) path(p vg.Path) {
	for _, c := range p {
		switch c.Type {
		case vg.ArcComp:
			r := vg.Point{X: c.Radius, Y: c.Radius}
			t.paths = grow(t.paths, t.now.at(c.Pos.Add(r)), t.now.at(c.Pos.Sub(r)))
		case vg.CloseComp:
		default:
			t.paths = grow(t.paths, t.now.at(c.Pos))
		}
	}
}

func grow(r vg.Rectangle, ps ...vg.Point) vg.Rectangle {
	for _, p := range ps {
		r.Min.X, r.Min.Y = min(r.Min.X, p.X), min(r.Min.Y, p.Y)
		r.Max.X, r.Max.Y = max(r.Max.X, p.X), max(r.Max.Y, p.Y)
	}
	return r
}

// FillString remembers the box of the letters: from the descent to the height
// of a capital, as wide as the font says.
func (t *trace) FillString(f font.Face, p vg.Point, s string) {
	e := f.Extents()
	w, up := f.Width(s), e.Ascent*0.78
	a, b := t.now.at(vg.Point{X: p.X, Y: p.Y - e.Descent}), t.now.at(vg.Point{X: p.X + w, Y: p.Y + up})
	t.texts = append(t.texts, traced{s, grow(vg.Rectangle{Min: a, Max: a}, b)})
}
