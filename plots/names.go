package plots

import (
	"math"
	"slices"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

// What a figure shows is named in the picture, beside the thing itself, where there
// is clear room; only the rest goes into the key below.

// names are the entries of a key that may be written in the picture.
type names struct{ open []keyEntry }

// beside writes an entry at the first of the spots that hides nothing. It does
// nothing for one that has its name already.
func (n *names) beside(c draw.Canvas, room *placer, sty text.Style, words string, spots []spot) {
	at := slices.IndexFunc(n.open, func(e keyEntry) bool { return e.words == words })
	if at >= 0 && room.label(c, sty, words, spots) {
		n.open = slices.Delete(n.open, at, at+1)
	}
}

// lay draws the figure with a key of some entries below, and returns those that
// have no name at all then.
func (f Figure) lay(c draw.Canvas, below []keyEntry) (nameless []keyEntry) {
	n := names{open: f.without(below)}
	f.paint(sheet(c, f.Title, below), &n)
	return n.open
}

// without is the key less some of its entries.
func (f Figure) without(some []keyEntry) (rest []keyEntry) {
	for _, e := range f.key {
		if !slices.ContainsFunc(some, func(s keyEntry) bool { return s.words == e.words }) {
			rest = append(rest, e)
		}
	}
	return rest
}

// try draws the figure on nothing and returns what has no name then.
func (f Figure) try(size vg.Point, below []keyEntry) (nameless []keyEntry) {
	defer func() {
		if recover() != nil { // what fails here fails again, with its message, when it is drawn
			nameless = f.without(below)
		}
	}()
	return f.lay(draw.NewCanvas(new(recorder.Canvas), size.X, size.Y), below)
}

// settle finds what has to stand below on a sheet of a given size: the key takes
// room from the picture, which may then lose more names to it.
func (f Figure) settle(size vg.Point) (below []keyEntry) {
	for {
		nameless := f.try(size, below)
		if len(nameless) == 0 {
			return below
		}
		named := f.without(append(slices.Clone(below), nameless...))
		below = f.without(named)
	}
}

// compass gives the eight places beside a point, the level ones first.
func compass(at vg.Point, gap vg.Length) (spots []spot) {
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 0.8}, {-1, 0.8}, {1, -0.8}, {-1, -0.8}} {
		spots = append(spots, spot{at, d[0], d[1], gap})
	}
	return spots
}

// nearestIs says whether the mark next to a box is of a kind, and clearly so.
func nearestIs(b vg.Rectangle, k fate, marks []mark) bool {
	own, other := math.Inf(1), math.Inf(1)
	for _, m := range marks {
		x, y := min(max(m.at.X, b.Min.X), b.Max.X), min(max(m.at.Y, b.Min.Y), b.Max.Y)
		d := math.Hypot(float64(m.at.X-x), float64(m.at.Y-y))
		if m.fate == k {
			own = math.Min(own, d)
		} else {
			other = math.Min(other, d)
		}
	}
	return own+3 < other
}

// nameFates names each kind of mark beside one of that kind, the rarest first: it
// has the fewest places.
func nameFates(c draw.Canvas, n *names, room *placer, word func(fate) string, marks []mark) {
	of := map[fate][]mark{}
	for _, m := range marks {
		of[m.fate] = append(of[m.fate], m)
	}
	var order []fate
	for k := range fates {
		if len(of[k]) > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b fate) int { return len(of[a]) - len(of[b]) })
	sty := textStyle(tickSize, false, Ink)
	refused := room.refuse
	defer func() { room.refuse = refused }()
	for _, k := range order {
		room.refuse = func(b vg.Rectangle) bool {
			return refused != nil && refused(b) || !nearestIs(b, k, marks)
		}
		var spots []spot
		for _, m := range of[k] {
			if !m.far { // which are pale
				spots = append(spots, compass(m.at, markRadius+1.5)...)
			}
		}
		n.beside(c, room, sty, word(k), spots)
	}
}
