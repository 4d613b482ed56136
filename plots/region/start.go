package region

import (
	"math"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// drawStart draws the sign of a recommended start: a star, or for the richest a
// flag of the same size; both are white with a strong rim.
func drawStart(c draw.Canvas, at vg.Point, aim result.Aim, times vg.Length) {
	var p vg.Path
	if aim == result.Richest {
		for i, xy := range [][2]float64{{-6, -5}, {6, -5}, {6, 1}, {0, 7.5}, {-6, 1}} {
			q := vg.Point{X: at.X + times*vg.Length(xy[0]), Y: at.Y + times*vg.Length(xy[1])}
			if i == 0 {
				p.Move(q)
			} else {
				p.Line(q)
			}
		}
	} else {
		for i := range 10 {
			r, a := 8.0, math.Pi/2+float64(i)*math.Pi/5
			if i%2 == 1 {
				r = 3.7
			}
			q := vg.Point{X: at.X + times*vg.Length(r*math.Cos(a)), Y: at.Y + times*vg.Length(r*math.Sin(a))}
			if i == 0 {
				p.Move(q)
			} else {
				p.Line(q)
			}
		}
	}
	p.Close()
	c.SetLineDash(nil, 0)
	c.SetLineStyle(draw.LineStyle{Color: drawing.Colour(drawing.Paper), Width: 4})
	c.Stroke(p)
	c.SetColor(drawing.Colour(drawing.Paper))
	c.Fill(p)
	c.SetLineStyle(draw.LineStyle{Color: drawing.Colour(drawing.Ink), Width: 1.7})
	c.Stroke(p)
}

// startSign is a recommended start that lies on this plane, or two at one place.
type startSign struct {
	x, y  float64
	aim   result.Aim
	words string
}

// starts are the recommended starts that lie on this plane.
func (f figure) starts() (signs []startSign) {
	for _, s := range f.r.Starts {
		if s.Status != result.Recommended && s.Status != result.BestAvailable {
			continue
		}
		if off, _ := f.offPlane(s.Mix); off != "" {
			continue // the map beneath the mark would not be its own
		}
		x, okX := wording.MixValue(s.Mix, f.grid.X.Variable)
		y, okY := wording.MixValue(s.Mix, f.grid.Y.Variable)
		if !okX || !okY || x < f.x.Lo || x > f.x.Hi || y < f.y.Lo || y > f.y.Hi {
			continue
		}
		words := string(s.Aim)
		if s.Aim == result.Surest && s.Status != result.Recommended {
			words = "best so far"
			if wording.Fails(s) {
				words = "to learn from"
			}
		}
		at := func(v float64, is drawing.Range) float64 {
			return drawing.Scale{Log: is.Log}.Normalize(is.Lo, is.Hi, v)
		}
		if n := len(signs); n > 0 && math.Hypot(at(x, f.x)-at(signs[n-1].x, f.x), at(y, f.y)-at(signs[n-1].y, f.y)) < 0.045 {
			signs[n-1].words = strings.Replace(signs[n-1].words, ",", " and "+words+",", 1)
			continue
		}
		signs = append(signs, startSign{x, y, s.Aim, words + ", " + wording.ChanceAgainst(s.Chance.Mean, f.wanted)})
	}
	return signs
}

// drawStarts draws them, and names each beside it or at the end of a thread.
func (f figure) drawStarts(c draw.Canvas, n *drawing.Names, x, y func(float64) vg.Length, room *drawing.Placer) {
	signs := f.starts()
	for _, s := range signs {
		room.Reserve(vg.Point{X: x(s.x), Y: y(s.y)}, 8)
	}
	room.Refuse = nil
	for _, s := range signs {
		at := vg.Point{X: x(s.x), Y: y(s.y)}
		taken := len(room.Taken)
		var places []drawing.Spot
		for _, gap := range []vg.Length{9, 20, 32, 46, 62} {
			places = append(places, drawing.Compass(at, gap)...)
		}
		n.Beside(c, room, drawing.TextStyle(drawing.LabelSize, true, drawing.Ink), s.words, places)
		if len(room.Taken) > taken { // what stands too far off is understood by its thread
			box := room.Taken[taken]
			end := vg.Point{X: min(max(at.X, box.Min.X), box.Max.X), Y: min(max(at.Y, box.Min.Y), box.Max.Y)}
			if !drawing.Near(at, end, 13) {
				thread := []vg.Point{at, end}
				c.StrokeLines(drawing.Line(drawing.Ink, 1), thread)
				room.Lines = append(room.Lines, thread)
			}
		}
	}
	for _, s := range signs {
		drawStart(c, vg.Point{X: x(s.x), Y: y(s.y)}, s.aim, 1)
	}
}
