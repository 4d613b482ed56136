package region

import (
	"math"
	"sort"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// stripShare is the part of the upward axis kept for trials without emulsifier.
const stripShare = 0.09

func (f figure) paint(c draw.Canvas, n *drawing.Names) {
	p := drawing.NewPanel(c, f.x, f.y, wording.AxisLabel(f.r, f.grid.X.Variable), wording.AxisLabel(f.r, f.grid.Y.Variable))
	if f.strip {
		p.Y.Scale = drawing.Scale{Log: f.y.Log, Below: stripShare}
	}
	p.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.surface(c, n, x, y) }))
	p.Draw(c)
}

// surface draws everything between the axes.
func (f figure) surface(c draw.Canvas, n *drawing.Names, x, y func(float64) vg.Length) {
	ground := c.Rectangle // the part above the strip
	if f.strip {
		ground.Min.Y = c.Y(stripShare)
	}
	c.SetLineStyle(drawing.Line(drawing.Faint, drawing.ThinWidth))
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
	room := drawing.Placer{Frame: ground}
	var wanted [][]vg.Point
	if f.wanted > 0 {
		wanted = grid.contour(f.wanted)
		c.StrokeLines(drawing.Line(drawing.Paper, drawing.WantedWidth+2), wanted...)
		c.StrokeLines(drawing.Line(drawing.Accent, drawing.WantedWidth), wanted...)
	}
	room.Lines = wanted

	marks := f.marks(c, ground, x, y)
	mark.KeepOff(&room, marks)
	if f.strip {
		c.StrokeLine2(drawing.Line(drawing.Quiet, drawing.ThinWidth), c.Min.X, ground.Min.Y, c.Max.X, ground.Min.Y)
		f.stripName(c, n, marks)
	}
	mark.Draw(c, marks)
	f.drawStarts(c, n, x, y, &room)
	f.nameWanted(c, n, grid, wanted, &room)
	f.nameEdges(c, grid, &room)
	room.Refuse = func(b vg.Rectangle) bool { return !f.tried(grid, b) }
	mark.NameFates(c, n, &room, func(k mark.Fate) string { return mark.FateWord(f.r, k) }, marks)
}

// marks are the trials at their places, those without emulsifier in their strip.
func (f figure) marks(c draw.Canvas, ground vg.Rectangle, x, y func(float64) vg.Length) []mark.Mark {
	strip := c.Rectangle
	strip.Max.Y = ground.Min.Y
	var above, below []mark.Mark
	for _, s := range f.shown {
		m := mark.Mark{At: vg.Point{X: x(s.X), Y: y(s.Y)}, Fate: s.Fate, Far: s.Far}
		if s.Strip {
			m.At.Y = c.Y(stripShare / 2)
			below = append(below, m)
		} else {
			above = append(above, m)
		}
	}
	if f.several {
		return mark.Gather(append(above, below...), ground, strip)
	}
	return append(mark.Apart(above, ground), mark.Apart(below, strip)...)
}

// fillBands fills the map with the colours of its chances.
func fillBands(c draw.Canvas, grid field) {
	for i, colour := range drawing.Bands {
		level := 0.2 * float64(i)
		if i == 0 {
			level = math.Inf(-1)
		}
		if region := grid.above(level); len(region) > 0 {
			c.SetColor(drawing.Colour(colour))
			c.Fill(region)
		}
	}
}

// tried says whether all of a box lies where trials are near: on the hatching
// nothing can be read.
func (f figure) tried(grid field, b vg.Rectangle) bool {
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
func (f figure) stripName(c draw.Canvas, n *drawing.Names, marks []mark.Mark) {
	strip := drawing.Placer{Frame: vg.Rectangle{Min: c.Min, Max: vg.Point{X: c.Max.X, Y: c.Y(stripShare)}}}
	mark.KeepOff(&strip, marks)
	sty := drawing.TextStyle(drawing.TickSize, false, drawing.Quiet)
	w := drawing.Size(sty, stripWords).X/2 + 4
	var spots []drawing.Spot
	for s := vg.Length(0); s <= 1; s += 0.05 {
		spots = append(spots, drawing.Spot{At: vg.Point{X: c.Max.X - w - s*(c.Max.X-c.Min.X-2*w), Y: c.Y(stripShare / 2)}})
	}
	n.Beside(c, &strip, sty, stripWords, spots)
}

func (f figure) wantedWords() string {
	if wording.Unproven(f.r) != "" {
		return "may work " + wording.WantedInTen(f.wanted)
	}
	return "works " + wording.WantedInTen(f.wanted)
}

// nameWanted names the strong line, on the side where it works if there is room.
func (f figure) nameWanted(c draw.Canvas, n *drawing.Names, grid field, lines [][]vg.Point, room *drawing.Placer) {
	sort.SliceStable(lines, func(i, j int) bool { return len(lines[i]) > len(lines[j]) })
	var spots []drawing.Spot
	for _, l := range lines {
		for k := range 24 {
			at := l[(2*k+1)*len(l)/48]
			for _, d := range [][2]float64{{1, 0.7}, {-1, 0.7}, {1, -0.7}, {-1, -0.7}, {0, 1}, {0, -1}} {
				spots = append(spots, drawing.Spot{At: at, Dx: d[0], Dy: d[1], Gap: 4})
			}
		}
	}
	sty := drawing.TextStyle(drawing.LabelSize, true, drawing.Ink)
	for _, works := range []bool{true, false} {
		room.Refuse = func(b vg.Rectangle) bool {
			return !f.tried(grid, b) || works != f.works(grid, (b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2)
		}
		n.Beside(c, room, sty, f.wantedWords(), spots)
	}
}

// works says whether a place of the canvas lies in the workable part, by the
// node next to it.
func (f figure) works(grid field, x, y vg.Length) bool {
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
