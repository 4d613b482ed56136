package drawing

import (
	"slices"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

// What a figure shows is named in the picture, beside the thing itself, where there
// is clear room; only the rest goes into the key below.

// Names are the entries of a key that may be written in the picture.
type Names struct{ Open []Entry }

// Beside writes an entry at the first of the spots that hides nothing. It does
// nothing for one that has its name already.
func (n *Names) Beside(c draw.Canvas, room *Placer, sty text.Style, words string, spots []Spot) {
	at := slices.IndexFunc(n.Open, func(e Entry) bool { return e.Words == words })
	if at >= 0 && room.Label(c, sty, words, spots) {
		n.Open = slices.Delete(n.Open, at, at+1)
	}
}

// lay draws the figure with a key of some entries below, and returns those that
// have no name at all then.
func (f Figure) lay(c draw.Canvas, below []Entry) (nameless []Entry) {
	n := Names{Open: f.without(below)}
	f.Paint(sheet(c, f.Title, below), &n)
	return n.Open
}

// without is the key less some of its entries.
func (f Figure) without(some []Entry) (rest []Entry) {
	for _, e := range f.Key {
		if !slices.ContainsFunc(some, func(s Entry) bool { return s.Words == e.Words }) {
			rest = append(rest, e)
		}
	}
	return rest
}

// withSets is some entries with the others of their sets: half a set below is no key.
func (f Figure) withSets(some []Entry) (all []Entry) {
	for _, e := range f.Key {
		if slices.ContainsFunc(some, func(s Entry) bool { return s.Words == e.Words || s.Set != "" && s.Set == e.Set }) {
			all = append(all, e)
		}
	}
	return all
}

// try draws the figure on nothing and returns what has no name then.
func (f Figure) try(size vg.Point, below []Entry) (nameless []Entry) {
	defer func() {
		if recover() != nil { // what fails here fails again, with its message, when it is drawn
			nameless = f.without(below)
		}
	}()
	return f.withSets(f.lay(draw.NewCanvas(new(recorder.Canvas), size.X, size.Y), below))
}

// settle finds what has to stand below on a sheet of a given size: the key takes
// room from the picture, which may then lose more names to it.
func (f Figure) settle(size vg.Point) (below []Entry) {
	for {
		nameless := f.try(size, below)
		if len(nameless) == 0 {
			return below
		}
		named := f.without(append(slices.Clone(below), nameless...))
		below = f.without(named)
	}
}

// Compass gives the eight places beside a point, the level ones first.
func Compass(at vg.Point, gap vg.Length) (spots []Spot) {
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 0.8}, {-1, 0.8}, {1, -0.8}, {-1, -0.8}} {
		spots = append(spots, Spot{at, d[0], d[1], gap})
	}
	return spots
}
