package mark

import (
	"image/color"

	"gonum.org/v1/plot/vg"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// Fate is what became of a trial, as far as a mark can tell.
type Fate int

const (
	Worked Fate = iota
	Clogged
	Partly
	Split
	Fell
	Weeps
	Missed // a target of a result beside hold and drainage
	Unknown
	Fates
)

// FateOf reads what the results say became of a trial.
func FateOf(t *result.Trial) Fate {
	if t.Works != nil && *t.Works {
		return Worked
	}
	first := result.Outcome("")
	if len(t.FailedBy) > 0 {
		first = t.FailedBy[0]
	}
	switch {
	case t.CameOut != nil && *t.CameOut == result.No:
		return Clogged
	case t.CameOut != nil && *t.CameOut == result.Partly && (first == result.CameOut || first == ""):
		return Partly
	case first == result.CameOut:
		return Clogged
	case first == result.Broke:
		return Split
	case first == result.HoldMinutes:
		return Fell
	case first == result.DrainedPercent:
		return Weeps
	case first != "":
		return Missed
	}
	return Unknown
}

func (f Fate) word() string {
	return [Fates]string{"worked", "clogged", "came out partly", "split", "fell too soon", "drained too much", "missed another target", "unclear"}[f]
}

func (f Fate) colour() color.RGBA {
	return drawing.Colour([Fates]string{drawing.WorkedColour, drawing.CloggedColour, drawing.PartlyColour, drawing.SplitColour, drawing.FellColour, drawing.WeepsColour, drawing.MissedColour, drawing.UnknownColour}[f])
}

// hollow marks are stroked, the others filled.
func (f Fate) hollow() bool { return f == Clogged || f == Unknown }

// outline appends the shape of a mark to a path: worked a disc, clogged a cross,
// partly half a disc, split a diamond, fell a triangle on its tip, weeps a drop,
// missed a square, unknown a ring.
func (f Fate) outline(p *vg.Path, c vg.Point, r vg.Length) {
	at := func(x, y float64) vg.Point { return vg.Point{X: c.X + r*vg.Length(x), Y: c.Y + r*vg.Length(y)} }
	corners := func(xy ...float64) {
		p.Move(at(xy[0], xy[1]))
		for i := 2; i+1 < len(xy); i += 2 {
			p.Line(at(xy[i], xy[i+1]))
		}
		p.Close()
	}
	switch f {
	case Worked:
		quarters(p, c, r, 4)
		p.Close()
	case Clogged:
		p.Move(at(-0.85, -0.85))
		p.Line(at(0.85, 0.85))
		p.Move(at(-0.85, 0.85))
		p.Line(at(0.85, -0.85))
	case Partly:
		quarters(p, at(0, -0.6), 1.3*r, 2)
		p.Close()
	case Split:
		corners(0, 1.25, 1.05, 0, 0, -1.25, -1.05, 0)
	case Fell:
		corners(-1.15, 0.85, 1.15, 0.85, 0, -1.15)
	case Weeps:
		p.Move(at(0, 1.5))
		p.CubeTo(at(-0.45, 0.75), at(-0.85, 0.35), at(-0.85, -0.2))
		p.CubeTo(at(-0.85, -1.33), at(0.85, -1.33), at(0.85, -0.2))
		p.CubeTo(at(0.85, 0.35), at(0.45, 0.75), at(0, 1.5))
		p.Close()
	case Missed:
		corners(-0.9, 0.9, 0.9, 0.9, 0.9, -0.9, -0.9, -0.9)
	case Unknown:
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

// FateWord names a kind of mark; which target was missed, where only one can be.
func FateWord(r *result.Results, f Fate) string {
	if asked := r.Targets.Results; f == Missed && len(asked) == 1 {
		return "missed the " + wording.Cut(asked[0].Label)
	}
	return f.word()
}
