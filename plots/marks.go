package plots

import (
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// fate is what became of a trial, as far as a mark can tell.
type fate int

const (
	worked fate = iota
	clogged
	partly
	split
	fell
	weeps
	missed // a target of a result beside hold and drainage
	unknown
	fates
)

// fateOf reads what the results say became of a trial.
func fateOf(t *result.Trial) fate {
	if t.Works != nil && *t.Works {
		return worked
	}
	first := result.Outcome("")
	if len(t.FailedBy) > 0 {
		first = t.FailedBy[0]
	}
	switch {
	case t.CameOut != nil && *t.CameOut == result.No:
		return clogged
	case t.CameOut != nil && *t.CameOut == result.Partly && (first == result.CameOut || first == ""):
		return partly
	case first == result.CameOut:
		return clogged
	case first == result.Broke:
		return split
	case first == result.HoldMinutes:
		return fell
	case first == result.DrainedPercent:
		return weeps
	case first != "":
		return missed
	}
	return unknown
}

func (f fate) word() string {
	return [fates]string{"worked", "clogged", "came out partly", "split", "fell too soon", "drained too much", "missed another target", "unclear"}[f]
}

func (f fate) colour() color.RGBA {
	return hex([fates]string{WorkedColour, CloggedColour, PartlyColour, SplitColour, FellColour, WeepsColour, MissedColour, UnknownColour}[f])
}

// hollow marks are stroked, the others filled.
func (f fate) hollow() bool { return f == clogged || f == unknown }

// outline appends the shape of a mark to a path: worked a disc, clogged a cross,
// partly half a disc, split a diamond, fell a triangle on its tip, weeps a drop,
// missed a square, unknown a ring.
func (f fate) outline(p *vg.Path, c vg.Point, r vg.Length) {
	at := func(x, y float64) vg.Point { return vg.Point{X: c.X + r*vg.Length(x), Y: c.Y + r*vg.Length(y)} }
	corners := func(xy ...float64) {
		p.Move(at(xy[0], xy[1]))
		for i := 2; i+1 < len(xy); i += 2 {
			p.Line(at(xy[i], xy[i+1]))
		}
		p.Close()
	}
	switch f {
	case worked:
		quarters(p, c, r, 4)
		p.Close()
	case clogged:
		p.Move(at(-0.85, -0.85))
		p.Line(at(0.85, 0.85))
		p.Move(at(-0.85, 0.85))
		p.Line(at(0.85, -0.85))
	case partly:
		quarters(p, at(0, -0.6), 1.3*r, 2)
		p.Close()
	case split:
		corners(0, 1.25, 1.05, 0, 0, -1.25, -1.05, 0)
	case fell:
		corners(-1.15, 0.85, 1.15, 0.85, 0, -1.15)
	case weeps:
		p.Move(at(0, 1.5))
		p.CubeTo(at(-0.45, 0.75), at(-0.85, 0.35), at(-0.85, -0.2))
		p.CubeTo(at(-0.85, -1.33), at(0.85, -1.33), at(0.85, -0.2))
		p.CubeTo(at(0.85, 0.35), at(0.45, 0.75), at(0, 1.5))
		p.Close()
	case missed:
		corners(-0.9, 0.9, 0.9, 0.9, 0.9, -0.9, -0.9, -0.9)
	case unknown:
		quarters(p, c, 0.9*r, 4)
		p.Close()
	}
}

// quarters appends quarter circles, from the right and upward. They are curves
// and not arcs, which canvases draw unlike each other.
func quarters(p *vg.Path, c vg.Point, r vg.Length, n int) {
	// Where the control points of a quarter circle lie: a circle to 3 in 10 000.
	const k = 0.5523
	at := func(x, y float64) vg.Point { return vg.Point{X: c.X + r*vg.Length(x), Y: c.Y + r*vg.Length(y)} }
	p.Move(at(1, 0))
	x, y := 1.0, 0.0
	for range n {
		p.CubeTo(at(x-k*y, y+k*x), at(-y+k*x, x+k*y), at(-y, x))
		x, y = -y, x
	}
}

// mark is one trial at its place on the canvas, or the number of trials that a
// cell holds; far marks are drawn smaller and paler.
type mark struct {
	at     vg.Point
	fate   fate
	far    bool
	trials int // 0 where each trial has a mark of its own
}

// radiusOf is the radius of the marks of a picture of so many.
func radiusOf(marks int) vg.Length {
	switch {
	case marks > crowd:
		return crowdRadius
	case marks > busy:
		return busyRadius
	}
	return markRadius
}

// drawMarks draws all marks, the far ones first, then the larger, then the
// commoner; one path for each kind so that a drawing of many trials stays small.
func drawMarks(c draw.Canvas, marks []mark) {
	r := radiusOf(len(marks))
	type kind struct {
		far  bool
		step int
		fate fate
	}
	kinds := map[kind][]mark{}
	var total [fates]int
	for _, m := range marks {
		k := kind{m.far, swollen(m.trials), m.fate}
		kinds[k] = append(kinds[k], m)
		total[m.fate] += m.trials
	}
	var order []fate
	for f := fates - 1; f >= 0; f-- {
		order = append(order, f)
	}
	slices.SortStableFunc(order, func(a, b fate) int { return total[b] - total[a] })
	for _, far := range []bool{true, false} {
		for step := len(swelling) - 1; step >= 0; step-- {
			for _, f := range order {
				radius, colour := r, f.colour()
				if total[f] > 0 {
					radius = crowdRadius * swelling[step].times
				}
				if far {
					radius, colour = radius*farMarkScale, lighter(colour, 0.45)
				}
				var p, rim vg.Path
				for _, m := range kinds[kind{far, step, f}] {
					if m.trials > 0 && f == worked {
						disc(&p, m.at, radius)
						disc(&rim, m.at, radius+rimWidth)
						continue
					}
					f.outline(&p, m.at, radius)
					f.outline(&rim, m.at, radius+rimWidth)
				}
				if len(marks) > crowd {
					rim = nil
				}
				if len(p) > 0 {
					paintMark(c, f, p, rim, colour, radius*0.5)
				}
			}
		}
	}
}

// paintMark draws the path of one kind of mark over a rim of paper that keeps
// neighbours apart.
func paintMark(c draw.Canvas, f fate, p, rim vg.Path, colour color.RGBA, width vg.Length) {
	c.SetLineDash(nil, 0)
	switch {
	case f.hollow() && rim != nil:
		c.SetLineStyle(draw.LineStyle{Color: hex(Paper), Width: width + 2*rimWidth})
		c.Stroke(p)
	case rim != nil:
		c.SetColor(hex(Paper))
		c.Fill(rim)
	}
	if f == unknown {
		c.SetColor(hex(Paper))
		c.Fill(p)
	}
	if f.hollow() {
		c.SetLineStyle(draw.LineStyle{Color: colour, Width: width})
		c.Stroke(p)
		return
	}
	c.SetColor(colour)
	c.Fill(p)
}

// keyMark is one mark of a key.
func keyMark(f fate) keySign {
	return func(c draw.Canvas, at vg.Point) { drawMarks(c, []mark{{at: at, fate: f}}) }
}

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
	c.SetLineStyle(draw.LineStyle{Color: hex(Paper), Width: 4})
	c.Stroke(p)
	c.SetColor(hex(Paper))
	c.Fill(p)
	c.SetLineStyle(draw.LineStyle{Color: hex(Ink), Width: 1.7})
	c.Stroke(p)
}

// usedTrials are the trials a figure may show.
func usedTrials(r *result.Results) []*result.Trial {
	var ts []*result.Trial
	for i := range r.Trials {
		if t := &r.Trials[i]; t.Used {
			ts = append(ts, t)
		}
	}
	return ts
}
