package plots

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// seen is how a hold is known: its place, or the bounds on it.
type seen int

const (
	exact seen = iota
	atLeast
	atMost
	between
)

// holdSeen reads an observed hold; ok is false where nothing bounds it.
func holdSeen(h *result.Interval) (kind seen, low, high float64, ok bool) {
	if h == nil {
		return 0, 0, 0, false
	}
	low, okLow := deref(h.Low)
	high, okHigh := deref(h.High)
	switch {
	case okLow && okHigh && low == high:
		return exact, low, high, true
	case okLow && okHigh:
		return between, low, high, true
	case okLow:
		return atLeast, low, low, true
	case okHigh:
		return atMost, high, high, true
	}
	return 0, 0, 0, false
}

// holdSign is how a hold is drawn; the rise is from one look to the next.
type holdSign struct {
	kind seen
	rise vg.Length
}

// holdMarks are the signs of observed holds, each of one trial or of several.
type holdMarks []bin[holdSign]

// boundLength is how far the arrow of a bound reaches.
const boundLength = 11

// add places one observed hold; low and high are equal except between two looks.
func (m *holdMarks) add(kind seen, x, low, high vg.Length) {
	*m = append(*m, bin[holdSign]{kind: holdSign{kind, high - low}, at: vg.Point{X: x, Y: low}})
}

// gathered are the signs of the trials of each cell together.
func (m holdMarks) gathered(frame vg.Rectangle) holdMarks {
	whole := make(holdMarks, len(m))
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

// places are what labels should keep off.
func (m holdMarks) places() []vg.Point {
	var out []vg.Point
	for _, s := range m {
		out = append(out, s.at)
		switch up := boundLength * boundSize(s.trials); s.kind.kind {
		case atLeast:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y + up})
		case atMost:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y - up})
		case between:
			out = append(out, vg.Point{X: s.at.X, Y: s.at.Y + s.kind.rise})
		}
	}
	return out
}

// draw draws the bounds, those of one size in one path.
func (m holdMarks) draw(c draw.Canvas, colour string) {
	for step := len(swelling) - 1; step >= 0; step-- {
		var p vg.Path
		size := vg.Length(1)
		for _, s := range m {
			if s.kind.kind != exact && swollen(s.trials) == step {
				size = boundSize(s.trials)
				s.kind.outline(&p, s.at, size)
			}
		}
		if len(p) > 0 {
			c.SetLineStyle(line(colour, 1.3*size))
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
	if s.kind == between {
		high := vg.Point{X: at.X, Y: at.Y + s.rise}
		cap(high)
		p.Move(at)
		p.Line(high)
		return
	}
	d := size // a stem with a head, up or down
	if s.kind == atMost {
		d = -size
	}
	tip := vg.Point{X: at.X, Y: at.Y + boundLength*d}
	p.Move(at)
	p.Line(tip)
	p.Move(vg.Point{X: tip.X - 3*size, Y: tip.Y - 3.5*d})
	p.Line(tip)
	p.Line(vg.Point{X: tip.X + 3*size, Y: tip.Y - 3.5*d})
}

// dots draws the holds that are known, those of single trials with radius r,
// small ones without a rim.
func (m holdMarks) dots(c draw.Canvas, r vg.Length) {
	for step := len(swelling) - 1; step >= 0; step-- {
		var at []vg.Point
		radius, outline := r, worked.outline
		for _, s := range m {
			if s.kind.kind == exact && swollen(s.trials) == step {
				at = append(at, s.at)
				if s.trials > 0 {
					radius, outline = crowdDot*swelling[step].times, disc
				}
			}
		}
		for _, coat := range []struct {
			colour string
			r      vg.Length
		}{{Paper, radius + 0.6}, {Ink, radius}} {
			if coat.colour == Paper && r < dotRadius {
				continue
			}
			var p vg.Path
			for _, q := range at {
				outline(&p, q, coat.r)
			}
			if len(p) > 0 {
				c.SetColor(hex(coat.colour))
				c.Fill(p)
			}
		}
	}
}

// wantedHold words the hold a mix has to reach.
func wantedHold(target float64) string { return "wanted: " + number(target, 1) + " minutes" }

// holdWords name the signs of holds.
var holdWords = [4]string{exact: "held so long", atLeast: "still standing then", atMost: "gone by then", between: "between two looks"}

// name names each kind of sign beside one of that kind, the arrows and stems above
// or beside their middle.
func (m holdMarks) name(c draw.Canvas, n *names, room *placer) {
	for kind, words := range holdWords {
		var spots []spot
		for _, s := range m {
			if s.kind.kind == seen(kind) {
				low, high := s.kind.reach(s.at)
				spots = append(spots, compass(vg.Point{X: s.at.X, Y: (low + high) / 2}, (high-low)/2+1)...)
				spots = append(spots, spot{vg.Point{X: s.at.X, Y: (low + high) / 2}, 1, 0, 5}, spot{vg.Point{X: s.at.X, Y: (low + high) / 2}, -1, 0, 5})
			}
		}
		n.beside(c, room, textStyle(tickSize, false, Ink), words, spots)
	}
}

// stems are the lines of the signs.
func (m holdMarks) stems() (lines [][]vg.Point) {
	for _, s := range m {
		if s.kind.kind != exact {
			low, high := s.kind.reach(s.at)
			for _, off := range []vg.Length{-3, 0, 3} {
				lines = append(lines, []vg.Point{{X: s.at.X + off, Y: low}, {X: s.at.X + off, Y: high}})
			}
		}
	}
	return lines
}

// holdKey explains the signs that occur, dots only where a figure draws them,
// and the line of the wanted hold.
func holdKey(kinds [4]int, withDots bool, target float64) []keyEntry {
	var key []keyEntry
	if finite(target) && target > 0 {
		key = append(key, keyEntry{keyLine(Ink, 1.1, 5, 3), wantedHold(target), 0})
	}
	for kind, words := range holdWords {
		if kinds[kind] == 0 || (seen(kind) == exact && !withDots) {
			continue
		}
		sign := func(c draw.Canvas, at vg.Point) {
			var m holdMarks
			y := [4][2]vg.Length{exact: {0, 0}, atLeast: {-5, -5}, atMost: {5, 5}, between: {-5, 5}}[kind]
			m.add(seen(kind), at.X, at.Y+y[0], at.Y+y[1])
			m.draw(c, Ink)
			m.dots(c, dotRadius)
		}
		key = append(key, keyEntry{sign, words, 0})
	}
	return key
}

// takeHold widens an axis to hold an observed hold.
func takeHold(a *axisRange, h *result.Interval) {
	if _, low, high, ok := holdSeen(h); ok {
		a.take(low)
		a.take(high)
	}
}
