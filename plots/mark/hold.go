package mark

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// Seen is how a hold is known: its place, or the bounds on it.
type Seen int

const (
	Exact Seen = iota
	AtLeast
	AtMost
	Between
)

// HoldSeen reads an observed hold; ok is false where nothing bounds it.
func HoldSeen(h *result.Interval) (kind Seen, low, high float64, ok bool) {
	if h == nil {
		return 0, 0, 0, false
	}
	low, okLow := wording.Told(h.Low)
	high, okHigh := wording.Told(h.High)
	switch {
	case okLow && okHigh && low == high:
		return Exact, low, high, true
	case okLow && okHigh:
		return Between, low, high, true
	case okLow:
		return AtLeast, low, low, true
	case okHigh:
		return AtMost, high, high, true
	}
	return 0, 0, 0, false
}

// holdSign is how a hold is drawn; the rise is from one look to the next.
type holdSign struct {
	kind Seen
	rise vg.Length
}

// Holds are the signs of observed holds, each of one trial or of several.
type Holds []bin[holdSign]

// boundLength is how far the arrow of a bound reaches.
const boundLength = 11

// Add places one observed hold; low and high are equal except between two looks.
func (m *Holds) Add(kind Seen, x, low, high vg.Length) {
	*m = append(*m, bin[holdSign]{kind: holdSign{kind, high - low}, at: vg.Point{X: x, Y: low}})
}

// Gathered are the signs of the trials of each cell together.
func (m Holds) Gathered(frame vg.Rectangle) Holds {
	whole := make(Holds, len(m))
	for i, s := range m {
		s.kind.rise = cellSize * vg.Length(math.Round(float64(s.kind.rise/cellSize)))
		whole[i] = s
	}
	whole = gather(whole, frame)
	for i, s := range whole { // a cell's share lies above where the trial does
		whole[i].kind.rise = min(s.kind.rise, frame.Max.Y-s.at.Y)
	}
	return whole
}

// Places are what labels should keep off.
func (m Holds) Places() []vg.Point {
	var out []vg.Point
	for _, s := range m {
		out = append(out, s.at)
		switch up := boundLength * boundSize(s.trials); s.kind.kind {
		case AtLeast:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y + up})
		case AtMost:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y - up})
		case Between:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y + s.kind.rise})
		}
	}
	return out
}

// Draw draws the bounds, those of one size in one path.
func (m Holds) Draw(c draw.Canvas, colour string) {
	for step := len(swelling) - 1; step >= 0; step-- {
		var p vg.Path
		size := vg.Length(1)
		for _, s := range m {
			if s.kind.kind != Exact && swollen(s.trials) == step {
				size = boundSize(s.trials)
				s.kind.outline(&p, s.at, size)
			}
		}
		if len(p) > 0 {
			c.SetLineStyle(drawing.Line(colour, 1.3*size))
			c.Stroke(p)
		}
	}
}

// boundSize is the size of the sign of n trials; 0 is one drawn by itself.
func boundSize(n int) vg.Length {
	if n == 0 {
		return 1
	}
	return 0.6 * swelling[swollen(n)].times
}

// outline appends a bound to a path.
func (s holdSign) outline(p *vg.Path, at vg.Point, size vg.Length) {
	cap := func(at vg.Point) {
		p.Move(vg.Point{X: at.X - 3*size, Y: at.Y})
		p.Line(vg.Point{X: at.X + 3*size, Y: at.Y})
	}
	cap(at)
	if s.kind == Between {
		high := vg.Point{X: at.X, Y: at.Y + s.rise}
		cap(high)
		p.Move(at)
		p.Line(high)
		return
	}
	d := size // a stem with a head, up or down
	if s.kind == AtMost {
		d = -size
	}
	tip := vg.Point{X: at.X, Y: at.Y + boundLength*d}
	p.Move(at)
	p.Line(tip)
	p.Move(vg.Point{X: tip.X - 3*size, Y: tip.Y - 3.5*d})
	p.Line(tip)
	p.Line(vg.Point{X: tip.X + 3*size, Y: tip.Y - 3.5*d})
}

const (
	dotRadius = 2.4 // an observed hold
	crowdDot  = 1.5
)

// DotsOf is the radius of the dots of a picture of so many.
func DotsOf(n int) vg.Length {
	if n > crowd*2 {
		return crowdDot
	}
	return dotRadius
}

// Dots draws the holds that are known, those of single trials with radius r,
// small ones without a rim.
func (m Holds) Dots(c draw.Canvas, r vg.Length) {
	for step := len(swelling) - 1; step >= 0; step-- {
		var at []vg.Point
		radius, outline := r, Worked.outline
		for _, s := range m {
			if s.kind.kind == Exact && swollen(s.trials) == step {
				at = append(at, s.at)
				if s.trials > 0 {
					radius, outline = crowdDot*swelling[step].times, disc
				}
			}
		}
		for _, coat := range []struct {
			colour string
			r      vg.Length
		}{{drawing.Paper, radius + 0.6}, {drawing.Ink, radius}} {
			if coat.colour == drawing.Paper && r < dotRadius {
				continue
			}
			var p vg.Path
			for _, q := range at {
				outline(&p, q, coat.r)
			}
			if len(p) > 0 {
				c.SetColor(drawing.Colour(coat.colour))
				c.Fill(p)
			}
		}
	}
}

// holdWords name the signs of holds, drainedWords the same signs of what drained.
var (
	holdWords    = [4]string{Exact: "held so long", AtLeast: "still standing then", AtMost: "gone by then", Between: "between two looks"}
	drainedWords = [4]string{Exact: "drained so much", AtLeast: "at least so much", AtMost: "at most so much", Between: "between the two"}
)

// Name names each kind of sign beside one of that kind, the arrows and stems above
// or beside their middle.
func (m Holds) Name(c draw.Canvas, n *drawing.Names, room *drawing.Placer) {
	for kind, words := range holdWords {
		var spots []drawing.Spot
		for _, s := range m {
			if s.kind.kind == Seen(kind) {
				low, high := s.kind.reach(s.at)
				spots = append(spots, drawing.Compass(vg.Point{X: s.at.X, Y: (low + high) / 2}, (high-low)/2+1)...)
				spots = append(spots, drawing.Spot{At: vg.Point{X: s.at.X, Y: (low + high) / 2}, Dx: 1, Gap: 5}, drawing.Spot{At: vg.Point{X: s.at.X, Y: (low + high) / 2}, Dx: -1, Gap: 5})
			}
		}
		n.Beside(c, room, drawing.TextStyle(drawing.TickSize, false, drawing.Ink), words, spots)
	}
}

// Stems are the lines of the signs.
func (m Holds) Stems() (lines [][]vg.Point) {
	for _, s := range m {
		if s.kind.kind != Exact {
			low, high := s.kind.reach(s.at)
			for _, off := range []vg.Length{-3, 0, 3} {
				lines = append(lines, []vg.Point{{X: s.at.X + off, Y: low}, {X: s.at.X + off, Y: high}})
			}
		}
	}
	return lines
}

// HoldKey explains the signs that occur, dots only where a figure draws them,
// and the line of the wanted hold.
func HoldKey(kinds [4]int, withDots bool, target float64) []drawing.Entry {
	var key []drawing.Entry
	if wording.Finite(target) && target > 0 {
		key = append(key, drawing.Entry{Sign: drawing.KeyLine(drawing.Ink, 1.1, 5, 3), Words: wording.WantedHold(target)})
	}
	return append(key, signsKey(kinds, withDots, holdWords)...)
}

// DrainedKey explains the signs that occur where they are of what drained.
func DrainedKey(kinds [4]int) []drawing.Entry { return signsKey(kinds, true, drainedWords) }

func signsKey(kinds [4]int, withDots bool, said [4]string) (key []drawing.Entry) {
	for kind, words := range said {
		if kinds[kind] == 0 || (Seen(kind) == Exact && !withDots) {
			continue
		}
		sign := func(c draw.Canvas, at vg.Point) {
			var m Holds
			y := [4][2]vg.Length{Exact: {0, 0}, AtLeast: {-5, -5}, AtMost: {5, 5}, Between: {-5, 5}}[kind]
			m.Add(Seen(kind), at.X, at.Y+y[0], at.Y+y[1])
			m.Draw(c, drawing.Ink)
			m.Dots(c, dotRadius)
		}
		key = append(key, drawing.Entry{Sign: sign, Words: words})
	}
	return key
}

// TakeHold widens an axis to hold an observed hold.
func TakeHold(a *drawing.Range, h *result.Interval) {
	if _, low, high, ok := HoldSeen(h); ok {
		a.Take(low)
		a.Take(high)
	}
}
