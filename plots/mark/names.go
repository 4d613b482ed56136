package mark

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/plots/drawing"
)

// KeepOff keeps labels off marks as large as they are drawn.
func KeepOff(room *drawing.Placer, marks []Mark) {
	room.Drawn = radiusOf(len(marks))
	for _, m := range marks {
		room.Avoid = append(room.Avoid, m.At)
	}
}

// nearestIs says whether the mark next to a box is of a kind, and clearly so.
func nearestIs(b vg.Rectangle, k Fate, marks []Mark) bool {
	own, other := math.Inf(1), math.Inf(1)
	for _, m := range marks {
		x, y := min(max(m.At.X, b.Min.X), b.Max.X), min(max(m.At.Y, b.Min.Y), b.Max.Y)
		d := math.Hypot(float64(m.At.X-x), float64(m.At.Y-y))
		if m.Fate == k {
			own = math.Min(own, d)
		} else {
			other = math.Min(other, d)
		}
	}
	return own+3 < other
}

// NameFates names each kind of mark beside one of that kind, the rarest first: it
// has the fewest places.
func NameFates(c draw.Canvas, n *drawing.Names, room *drawing.Placer, word func(Fate) string, marks []Mark) {
	of := map[Fate][]Mark{}
	for _, m := range marks {
		of[m.Fate] = append(of[m.Fate], m)
	}
	var order []Fate
	for k := range Fates {
		if len(of[k]) > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b Fate) int { return len(of[a]) - len(of[b]) })
	sty := drawing.TextStyle(drawing.TickSize, false, drawing.Ink)
	refused := room.Refuse
	defer func() { room.Refuse = refused }()
	for _, k := range order {
		room.Refuse = func(b vg.Rectangle) bool {
			return refused != nil && refused(b) || !nearestIs(b, k, marks)
		}
		var spots []drawing.Spot
		for _, m := range of[k] {
			if !m.Far { // which are pale
				spots = append(spots, drawing.Compass(m.At, drawing.MarkRadius+1.5)...)
			}
		}
		n.Beside(c, room, sty, word(k), spots)
	}
}
