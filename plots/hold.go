package plots

import (
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

// holdMarks gathers the signs of observed holds, so that each kind is one path.
type holdMarks struct {
	exact  []vg.Point
	places []vg.Point // what labels should keep off
	bounds vg.Path
}

// boundLength is how far the arrow of a bound reaches.
const boundLength = 11

// add places one observed hold; low and high are equal except between two looks.
func (m *holdMarks) add(kind seen, x, low, high vg.Length) {
	at := vg.Point{X: x, Y: low}
	m.places = append(m.places, at)
	switch kind {
	case exact:
		m.exact = append(m.exact, at)
	case atLeast:
		m.arrow(at, 1)
	case atMost:
		m.arrow(at, -1)
	case between:
		m.cap(at)
		m.cap(vg.Point{X: x, Y: high})
		m.bounds.Move(at)
		m.bounds.Line(vg.Point{X: x, Y: high})
		m.places = append(m.places, vg.Point{X: x, Y: high})
	}
}

// arrow is a stem from the point with a head, up or down.
func (m *holdMarks) arrow(at vg.Point, d vg.Length) {
	tip := vg.Point{X: at.X, Y: at.Y + boundLength*d}
	m.cap(at)
	m.bounds.Move(at)
	m.bounds.Line(tip)
	m.bounds.Move(vg.Point{X: tip.X - 3, Y: tip.Y - 3.5*d})
	m.bounds.Line(tip)
	m.bounds.Line(vg.Point{X: tip.X + 3, Y: tip.Y - 3.5*d})
	m.places = append(m.places, tip)
}

func (m *holdMarks) cap(at vg.Point) {
	m.bounds.Move(vg.Point{X: at.X - 3, Y: at.Y})
	m.bounds.Line(vg.Point{X: at.X + 3, Y: at.Y})
}

// draw draws the bounds.
func (m *holdMarks) draw(c draw.Canvas, colour string) {
	if len(m.bounds) > 0 {
		c.SetLineStyle(line(colour, 1.3))
		c.Stroke(m.bounds)
	}
}

// dots draws observed holds, small ones without a rim.
func dots(c draw.Canvas, at []vg.Point, r vg.Length) {
	for _, coat := range []struct {
		colour string
		r      vg.Length
	}{{Paper, r + 0.6}, {Ink, r}} {
		if coat.colour == Paper && r < dotRadius {
			continue
		}
		var p vg.Path
		for _, q := range at {
			worked.outline(&p, q, coat.r)
		}
		if len(p) > 0 {
			c.SetColor(hex(coat.colour))
			c.Fill(p)
		}
	}
}

// wantedHold words the hold a mix has to reach.
func wantedHold(target float64) string { return "wanted: " + number(target, 1) + " minutes" }

// holdKey explains the signs that occur, dots only where a figure draws them,
// and the line of the wanted hold, which has no label where there is no room.
func holdKey(kinds [4]int, withDots bool, target float64, every int) []keyEntry {
	var key []keyEntry
	if finite(target) && target > 0 {
		key = append(key, keyEntry{keyLine(Ink, 1.1, 5, 3), wantedHold(target)})
	}
	for kind, words := range []string{"held so long", "still standing then", "gone by then", "between two looks"} {
		if kinds[kind] == 0 || (seen(kind) == exact && !withDots) {
			continue
		}
		sign := func(c draw.Canvas, at vg.Point) {
			var m holdMarks
			y := [4][2]vg.Length{exact: {0, 0}, atLeast: {-5, -5}, atMost: {5, 5}, between: {-5, 5}}[kind]
			m.add(seen(kind), at.X, at.Y+y[0], at.Y+y[1])
			m.draw(c, Ink)
			dots(c, m.exact, dotRadius)
		}
		key = append(key, keyEntry{sign, counted(words, kinds[kind], every)})
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
