package plots

import (
	"math"
	"sort"
	"strings"

	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// stripShare is the part of the upward axis kept for trials without emulsifier.
const stripShare = 0.09

func (f regionFigure) paint(c draw.Canvas, n *names) {
	p := newPanel(c, f.x, f.y, axisLabel(f.r, f.grid.X.Variable), axisLabel(f.r, f.grid.Y.Variable))
	if f.strip {
		p.Y.Scale = scale{log: f.y.log, below: stripShare}
	}
	p.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.surface(c, n, x, y) }))
	p.Draw(c)
}

// surface draws everything between the axes.
func (f regionFigure) surface(c draw.Canvas, n *names, x, y func(float64) vg.Length) {
	ground := c.Rectangle // the part above the strip
	if f.strip {
		ground.Min.Y = c.Y(stripShare)
	}
	c.SetLineStyle(line(Faint, thinWidth))
	for _, p := range hatch(ground) {
		c.Stroke(p)
	}

	grid := field{chance: f.grid.Chance, tested: f.grid.Tested}
	for _, v := range f.grid.X.Values {
		grid.x = append(grid.x, x(v))
	}
	for _, v := range f.grid.Y.Values {
		grid.y = append(grid.y, y(v))
	}
	fillBands(c, grid)
	room := placer{frame: ground}
	var wanted [][]vg.Point
	if f.wanted > 0 {
		wanted = grid.contour(f.wanted)
		c.StrokeLines(line(Paper, wantedWidth+2), wanted...)
		c.StrokeLines(line(Accent, wantedWidth), wanted...)
	}
	room.lines = wanted

	marks := f.marks(c, ground, x, y)
	room.keepOff(marks)
	if f.strip {
		c.StrokeLine2(line(Quiet, thinWidth), c.Min.X, ground.Min.Y, c.Max.X, ground.Min.Y)
		f.stripName(c, n, marks)
	}
	drawMarks(c, marks)
	f.drawStarts(c, n, x, y, &room)
	f.nameWanted(c, n, grid, wanted, &room)
	f.nameEdges(c, grid, &room)
	room.refuse = func(b vg.Rectangle) bool { return !f.tried(grid, b) }
	nameFates(c, n, &room, func(k fate) string { return fateWord(f.r, k) }, marks)
}

// marks are the trials at their places, those without emulsifier in their strip.
func (f regionFigure) marks(c draw.Canvas, ground vg.Rectangle, x, y func(float64) vg.Length) []mark {
	strip := c.Rectangle
	strip.Max.Y = ground.Min.Y
	var above, below []mark
	for _, s := range f.shown {
		m := mark{at: vg.Point{X: x(s.x), Y: y(s.y)}, fate: s.fate, far: s.far}
		if s.strip {
			m.at.Y = c.Y(stripShare / 2)
			below = append(below, m)
		} else {
			above = append(above, m)
		}
	}
	if f.several {
		return gatherMarks(append(above, below...), ground, strip)
	}
	return append(apart(above, ground), apart(below, strip)...)
}

// fillBands fills the map with the colours of its chances.
func fillBands(c draw.Canvas, grid field) {
	for i, colour := range Bands {
		level := 0.2 * float64(i)
		if i == 0 {
			level = math.Inf(-1)
		}
		if region := grid.above(level); len(region) > 0 {
			c.SetColor(hex(colour))
			c.Fill(region)
		}
	}
}

// tried says whether all of a box lies where trials are near: on the hatching
// nothing can be read.
func (f regionFigure) tried(grid field, b vg.Rectangle) bool {
	for _, x := range []vg.Length{b.Min.X, (b.Min.X + b.Max.X) / 2, b.Max.X} {
		for _, y := range []vg.Length{b.Min.Y, b.Max.Y} {
			i, j := closest(grid.x, x), closest(grid.y, y)
			if i < 0 || j < 0 || !f.grid.Tested[j][i] {
				return false
			}
		}
	}
	return true
}

const stripWords = "no emulsifier"

// stripName writes what the strip is at the end that has more room.
func (f regionFigure) stripName(c draw.Canvas, n *names, marks []mark) {
	strip := placer{frame: vg.Rectangle{Min: c.Min, Max: vg.Point{X: c.Max.X, Y: c.Y(stripShare)}}}
	strip.keepOff(marks)
	sty := textStyle(tickSize, false, Quiet)
	w := size(sty, stripWords).X/2 + 4
	var spots []spot
	for s := vg.Length(0); s <= 1; s += 0.05 {
		spots = append(spots, spot{at: vg.Point{X: c.Max.X - w - s*(c.Max.X-c.Min.X-2*w), Y: c.Y(stripShare / 2)}})
	}
	n.beside(c, &strip, sty, stripWords, spots)
}

// startSign is a recommended start that lies on this plane, or two at one place.
type startSign struct {
	x, y  float64
	aim   result.Aim
	words string
}

// starts are the recommended starts that lie on this plane.
func (f regionFigure) starts() (signs []startSign) {
	for _, s := range f.r.Starts {
		if s.Status != result.Recommended && s.Status != result.BestAvailable {
			continue
		}
		if off, _ := f.offPlane(s.Mix); off != "" {
			continue // the map beneath the mark would not be its own
		}
		x, okX := mixValue(s.Mix, f.grid.X.Variable)
		y, okY := mixValue(s.Mix, f.grid.Y.Variable)
		if !okX || !okY || x < f.x.lo || x > f.x.hi || y < f.y.lo || y > f.y.hi {
			continue
		}
		words := string(s.Aim)
		at := func(v float64, is axisRange) float64 { return scale{log: is.log}.Normalize(is.lo, is.hi, v) }
		if n := len(signs); n > 0 && math.Hypot(at(x, f.x)-at(signs[n-1].x, f.x), at(y, f.y)-at(signs[n-1].y, f.y)) < 0.045 {
			signs[n-1].words = strings.Replace(signs[n-1].words, ",", " and "+words+",", 1)
			continue
		}
		signs = append(signs, startSign{x, y, s.Aim, words + ", " + ChanceAgainst(s.Chance.Mean, f.wanted)})
	}
	return signs
}

// drawStarts draws them, and names each beside it or at the end of a thread.
func (f regionFigure) drawStarts(c draw.Canvas, n *names, x, y func(float64) vg.Length, room *placer) {
	signs := f.starts()
	for _, s := range signs {
		room.reserve(vg.Point{X: x(s.x), Y: y(s.y)}, 8)
	}
	room.refuse = nil
	for _, s := range signs {
		at := vg.Point{X: x(s.x), Y: y(s.y)}
		taken := len(room.taken)
		var places []spot
		for _, gap := range []vg.Length{9, 20, 32, 46, 62} {
			places = append(places, compass(at, gap)...)
		}
		n.beside(c, room, textStyle(labelSize, true, Ink), s.words, places)
		if len(room.taken) > taken { // what stands too far off is understood by its thread
			box := room.taken[taken]
			end := vg.Point{X: min(max(at.X, box.Min.X), box.Max.X), Y: min(max(at.Y, box.Min.Y), box.Max.Y)}
			if !near(at, end, 13) {
				thread := []vg.Point{at, end}
				c.StrokeLines(line(Ink, 1), thread)
				room.lines = append(room.lines, thread)
			}
		}
	}
	for _, s := range signs {
		drawStart(c, vg.Point{X: x(s.x), Y: y(s.y)}, s.aim, 1)
	}
}

func near(a, b vg.Point, d vg.Length) bool {
	return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) < float64(d)
}

func (f regionFigure) wantedWords() string {
	if unproven(f.r) != "" {
		return "may work " + wantedInTen(f.wanted)
	}
	return "works " + wantedInTen(f.wanted)
}

// nameWanted names the strong line, on the side where it works if there is room.
func (f regionFigure) nameWanted(c draw.Canvas, n *names, grid field, lines [][]vg.Point, room *placer) {
	sort.SliceStable(lines, func(i, j int) bool { return len(lines[i]) > len(lines[j]) })
	var spots []spot
	for _, l := range lines {
		for k := range 24 {
			at := l[(2*k+1)*len(l)/48]
			for _, d := range [][2]float64{{1, 0.7}, {-1, 0.7}, {1, -0.7}, {-1, -0.7}, {0, 1}, {0, -1}} {
				spots = append(spots, spot{at, d[0], d[1], 4})
			}
		}
	}
	sty := textStyle(labelSize, true, Ink)
	for _, works := range []bool{true, false} {
		room.refuse = func(b vg.Rectangle) bool {
			return !f.tried(grid, b) || works != f.works(grid, (b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2)
		}
		n.beside(c, room, sty, f.wantedWords(), spots)
	}
}

// node is a place of the grid.
type node struct{ i, j int }

// nameEdges writes what goes wrong beyond the strong line, once for each
// stretch of it; where there is no line, once for each large part of the map.
func (f regionFigure) nameEdges(c draw.Canvas, grid field, room *placer) {
	beyond := f.beyond()
	room.refuse = func(b vg.Rectangle) bool { return !f.tried(grid, b) }
	if f.workable {
		room.refuse = func(b vg.Rectangle) bool {
			return !f.tried(grid, b) || f.works(grid, b.Min.X, b.Min.Y) || f.works(grid, b.Max.X, b.Min.Y) ||
				f.works(grid, b.Min.X, b.Max.Y) || f.works(grid, b.Max.X, b.Max.Y)
		}
	}
	usual := room.drawn
	room.drawn += 6 // so far from a mark that it is not taken for its name
	defer func() { room.drawn = usual }()
	sty := textStyle(labelSize, false, Ink)
	sty.Font.Style = stdfont.StyleItalic
	total := len(beyond)
	for _, group := range groups(beyond, f.grid.LimitedBy) {
		word := f.edgeWord(group, total)
		if word == "" {
			continue
		}
		var cx, cy vg.Length
		for _, n := range group {
			cx += grid.x[n.i] / vg.Length(len(group))
			cy += grid.y[n.j] / vg.Length(len(group))
		}
		sort.SliceStable(group, func(a, b int) bool {
			da := math.Hypot(float64(grid.x[group[a].i]-cx), float64(grid.y[group[a].j]-cy))
			db := math.Hypot(float64(grid.x[group[b].i]-cx), float64(grid.y[group[b].j]-cy))
			return da < db
		})
		var spots []spot
		for k := range min(24, len(group)) {
			n := group[k*len(group)/min(24, len(group))]
			at := vg.Point{X: grid.x[n.i], Y: grid.y[n.j]}
			dx, dy := f.downhill(grid, n)
			if !f.workable {
				dx, dy = 0, 0
			}
			for _, gap := range []vg.Length{5, 14, 24, 36, 50} {
				spots = append(spots, spot{at, dx, dy, gap})
			}
			spots = append(spots, around(at, 5)...)
		}
		room.label(c, sty, word, spots)
	}
}

// works says whether a place of the canvas lies in the workable part, by the
// node next to it.
func (f regionFigure) works(grid field, x, y vg.Length) bool {
	i, j := closest(grid.x, x), closest(grid.y, y)
	return i >= 0 && j >= 0 && f.grid.Tested[j][i] && f.grid.Chance[j][i] >= f.wanted
}

// closest is the index of the value next to v, or -1 when v is beyond the ends.
func closest(values []vg.Length, v vg.Length) int {
	if v < values[0] || v > values[len(values)-1] {
		return -1
	}
	i := sort.Search(len(values)-1, func(i int) bool { return values[i] >= v })
	if i > 0 && v-values[i-1] < values[i]-v {
		i--
	}
	return i
}

// beyond lists the tested nodes just past the wanted chance, or all that were
// tested when nothing reaches it.
func (f regionFigure) beyond() []node {
	g := f.grid
	if len(g.LimitedBy) < len(g.Y.Values) {
		return nil
	}
	ok := func(i, j int) bool {
		return i >= 0 && j >= 0 && i < len(g.X.Values) && j < len(g.Y.Values) && g.Tested[j][i] && g.Chance[j][i] >= f.wanted
	}
	var out []node
	for j := range g.Y.Values {
		if len(g.LimitedBy[j]) < len(g.X.Values) {
			return nil
		}
		for i := range g.X.Values {
			if !g.Tested[j][i] || ok(i, j) {
				continue
			}
			if !f.workable || ok(i-1, j) || ok(i+1, j) || ok(i, j-1) || ok(i, j+1) {
				out = append(out, node{i, j})
			}
		}
	}
	return out
}

// downhill is the direction on the canvas in which the chance falls at a node.
func (f regionFigure) downhill(grid field, n node) (dx, dy float64) {
	slope := func(a, b node, along []vg.Length, ia, ib int) float64 {
		if !f.grid.Tested[a.j][a.i] || !f.grid.Tested[b.j][b.i] || ia == ib {
			return 0
		}
		return (f.grid.Chance[a.j][a.i] - f.grid.Chance[b.j][b.i]) / float64(along[ib]-along[ia])
	}
	w, e := node{max(0, n.i-1), n.j}, node{min(len(grid.x)-1, n.i+1), n.j}
	s, t := node{n.i, max(0, n.j-1)}, node{n.i, min(len(grid.y)-1, n.j+1)}
	dx, dy = slope(w, e, grid.x, w.i, e.i), slope(s, t, grid.y, s.j, t.j)
	// Stretched so that the label's box clears the line on its longer side.
	if m := math.Max(math.Abs(dx), math.Abs(dy)); m > 0 {
		return dx / m, dy / m
	}
	return 0, 0
}

// groups joins nodes that lie within two steps of each other and are limited by
// the same outcome.
func groups(nodes []node, by [][]result.Outcome) [][]node {
	left := make(map[node]bool, len(nodes))
	for _, n := range nodes {
		left[n] = true
	}
	var out [][]node
	for _, first := range nodes {
		if !left[first] {
			continue
		}
		left[first] = false
		group := []node{first}
		for k := 0; k < len(group); k++ {
			n := group[k]
			for dj := -2; dj <= 2; dj++ {
				for di := -2; di <= 2; di++ {
					m := node{n.i + di, n.j + dj}
					if left[m] && by[m.j][m.i] == by[n.j][n.i] {
						left[m] = false
						group = append(group, m)
					}
				}
			}
		}
		out = append(out, group)
	}
	sort.SliceStable(out, func(a, b int) bool { return len(out[a]) > len(out[b]) })
	return out
}
