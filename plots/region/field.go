package region

import (
	"math"

	"gonum.org/v1/plot/vg"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// field is a grid of chances laid out on the canvas. Outside the tested part it
// has no value: polygons and lines end half way to the first untested node.
type field struct {
	x, y   []vg.Length
	chance [][]float64
	tested [][]bool
}

// goodGrid says whether a grid is whole enough to draw, with a tested part.
func goodGrid(g result.Grid) bool {
	if !drawing.Rising(g.X.Values) || !drawing.Rising(g.Y.Values) {
		return false
	}
	if len(g.Chance) < len(g.Y.Values) || len(g.Tested) < len(g.Y.Values) {
		return false
	}
	some := false
	for j := range g.Y.Values {
		if len(g.Chance[j]) < len(g.X.Values) || len(g.Tested[j]) < len(g.X.Values) {
			return false
		}
		for i := range g.X.Values {
			some = some || g.Tested[j][i]
			if g.Tested[j][i] && !wording.Finite(g.Chance[j][i]) {
				return false
			}
		}
	}
	return some
}

// corner is a corner of a cell's polygon: its place, its chance, and how far it
// is within the tested part (1 = tested, 0 = not). cut marks a corner that a
// clip made.
type corner struct {
	at             vg.Point
	chance, tested float64
	cut            bool
}

func (f field) corner(i, j int) corner {
	c := corner{at: vg.Point{X: f.x[i], Y: f.y[j]}, chance: f.chance[j][i]}
	if f.tested[j][i] {
		c.tested = 1
	}
	return c
}

func (f field) cell(i, j int) []corner {
	return []corner{f.corner(i, j), f.corner(i+1, j), f.corner(i+1, j+1), f.corner(i, j+1)}
}

// clip keeps the part of a polygon where the value is at least the level.
func clip(poly []corner, value func(corner) float64, level float64) []corner {
	var out []corner
	for k, a := range poly {
		b := poly[(k+1)%len(poly)]
		va, vb := value(a)-level, value(b)-level
		a.cut = false
		if va >= 0 {
			out = append(out, a)
		}
		if (va >= 0) != (vb >= 0) {
			out = append(out, crossing(a, b, va, vb))
		}
	}
	return out
}

// crossing is the point of an edge where the value crosses the level, worked out
// from the same end whichever way the edge is walked, so that the two cells that
// share it get the very same point.
func crossing(a, b corner, va, vb float64) corner {
	if b.at.X < a.at.X || (b.at.X == a.at.X && b.at.Y < a.at.Y) {
		a, b, va, vb = b, a, vb, va
	}
	s := va / (va - vb)
	return corner{
		at:     vg.Point{X: a.at.X + vg.Length(s)*(b.at.X-a.at.X), Y: a.at.Y + vg.Length(s)*(b.at.Y-a.at.Y)},
		chance: a.chance + s*(b.chance-a.chance),
		tested: a.tested + s*(b.tested-a.tested),
		cut:    true,
	}
}

func byChance(c corner) float64 { return c.chance }
func byTested(c corner) float64 { return c.tested }

// above is the region whose chance is at least level, as closed outlines. The
// cells' polygons all turn the same way, so an edge inside the region is walked
// once each way and drops out; what is left is the outline.
func (f field) above(level float64) vg.Path {
	type edge [2]vg.Point
	var edges []edge
	var below []int        // the edge of the same ends under each, or -1
	open := map[edge]int{} // the topmost of the edges not yet met from the other side
	for j := 0; j+1 < len(f.y); j++ {
		for i := 0; i+1 < len(f.x); i++ {
			// Between two whole cells there is nothing to meet.
			var shut [4]bool
			if f.whole(i, j, level) {
				shut = [4]bool{f.whole(i, j-1, level), f.whole(i+1, j, level), f.whole(i, j+1, level), f.whole(i-1, j, level)}
			}
			if shut == [4]bool{true, true, true, true} {
				continue
			}
			poly := f.region(i, j, level)
			for k, a := range poly {
				if shut[k%4] {
					continue
				}
				e := edge{a.at, poly[(k+1)%len(poly)].at}
				if e[0] == e[1] {
					continue
				}
				back := edge{e[1], e[0]}
				if n, met := open[back]; met {
					if open[back] = below[n]; below[n] < 0 {
						delete(open, back)
					}
					below[n] = closed
					continue
				}
				under := -1
				if n, more := open[e]; more {
					under = n
				}
				open[e] = len(edges)
				edges, below = append(edges, e), append(below, under)
			}
		}
	}
	from := map[vg.Point][]int{}
	for n, e := range edges {
		if below[n] != closed {
			from[e[0]] = append(from[e[0]], n)
		}
	}
	var p vg.Path
	for _, e := range edges {
		loop := []vg.Point{}
		for at := e[0]; len(from[at]) > 0; {
			n := from[at][0]
			from[at] = from[at][1:]
			loop = append(loop, at)
			at = edges[n][1]
		}
		closeLoop(&p, loop)
	}
	return p
}

// closed marks an edge that was walked both ways.
const closed = -2

// region is the part of a cell that was tested and whose chance is at least level.
func (f field) region(i, j int, level float64) []corner {
	if f.whole(i, j, level) {
		return f.cell(i, j)
	}
	if t := f.tested; !t[j][i] && !t[j][i+1] && !t[j+1][i] && !t[j+1][i+1] {
		return nil
	}
	if c := f.chance; c[j][i] < level && c[j][i+1] < level && c[j+1][i] < level && c[j+1][i+1] < level {
		return nil
	}
	return clip(clip(f.cell(i, j), byTested, 0.5), byChance, level)
}

// whole says whether a cell lies in the region with all its corners.
func (f field) whole(i, j int, level float64) bool {
	if i < 0 || j < 0 || i+1 >= len(f.x) || j+1 >= len(f.y) {
		return false
	}
	for _, n := range [4][2]int{{i, j}, {i + 1, j}, {i + 1, j + 1}, {i, j + 1}} {
		if !f.tested[n[1]][n[0]] || f.chance[n[1]][n[0]] < level {
			return false
		}
	}
	return true
}

// closeLoop adds a closed outline without the points that lie on a straight run.
func closeLoop(p *vg.Path, loop []vg.Point) {
	open := false
	for k, b := range loop {
		a, c := loop[(k+len(loop)-1)%len(loop)], loop[(k+1)%len(loop)]
		if turn := (b.X-a.X)*(c.Y-b.Y) - (b.Y-a.Y)*(c.X-b.X); math.Abs(float64(turn)) < 1e-6 {
			continue
		}
		if open {
			p.Line(b)
		} else {
			p.Move(b)
		}
		open = true
	}
	if open {
		p.Close()
	}
}

// contour is the line where the chance equals level, in chains of points.
func (f field) contour(level float64) [][]vg.Point {
	var segments [][2]vg.Point
	for j := 0; j+1 < len(f.y); j++ {
		for i := 0; i+1 < len(f.x); i++ {
			poly := f.region(i, j, level)
			// The line runs between each cut where the polygon's edge leaves the
			// region and the next, where it comes back.
			for k, a := range poly {
				b := poly[(k+1)%len(poly)]
				if a.cut && b.cut && a.at != b.at {
					segments = append(segments, [2]vg.Point{a.at, b.at})
				}
			}
		}
	}
	return chain(segments)
}

// chain joins segments that share an end into lines.
func chain(segments [][2]vg.Point) [][]vg.Point {
	ends := map[vg.Point][]int{}
	for n, s := range segments {
		ends[s[0]] = append(ends[s[0]], n)
		ends[s[1]] = append(ends[s[1]], n)
	}
	used := make([]bool, len(segments))
	// grow follows unused segments from the end of a line.
	grow := func(l []vg.Point) []vg.Point {
		for {
			tip, found := l[len(l)-1], false
			for _, n := range ends[tip] {
				if used[n] {
					continue
				}
				used[n], found = true, true
				next := segments[n][0]
				if next == tip {
					next = segments[n][1]
				}
				l = append(l, next)
				break
			}
			if !found {
				return l
			}
		}
	}
	var lines [][]vg.Point
	for n, s := range segments {
		if used[n] {
			continue
		}
		used[n] = true
		l := grow([]vg.Point{s[1], s[0]})
		for a, b := 0, len(l)-1; a < b; a, b = a+1, b-1 {
			l[a], l[b] = l[b], l[a]
		}
		lines = append(lines, grow(l))
	}
	return lines
}

// hatchGap is how far apart the lines of a hatching are.
const hatchGap = 6

// hatchLines is how many lines of a hatching make one path: the rasteriser's time
// grows with the square of what a path has on one row of dots.
const hatchLines = 10

// hatch is a field of slanted lines over a rectangle, in a few paths.
func hatch(r vg.Rectangle) []vg.Path {
	var paths []vg.Path
	w, h := r.Max.X-r.Min.X, r.Max.Y-r.Min.Y
	for n, s := 0, vg.Length(hatchGap)/2; s < w+h; n, s = n+1, s+hatchGap {
		if n%hatchLines == 0 {
			paths = append(paths, nil)
		}
		p := &paths[len(paths)-1]
		// The line x - y = s - h, from the bottom or left to the top or right.
		x0, y0 := s-h, vg.Length(0)
		if x0 < 0 {
			x0, y0 = 0, h-s
		}
		x1, y1 := s, h
		if x1 > w {
			x1, y1 = w, h-(s-w)
		}
		p.Move(vg.Point{X: r.Min.X + x0, Y: r.Min.Y + y0})
		p.Line(vg.Point{X: r.Min.X + x1, Y: r.Min.Y + y1})
	}
	return paths
}
