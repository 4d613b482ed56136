package region

import (
	"math"
	"slices"
	"sort"

	stdfont "golang.org/x/image/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// edgeWords are what goes wrong in the parts of the map that get such a word.
func (f *figure) edgeWords() (words []string) {
	beyond := f.beyond()
	for _, group := range groups(beyond, f.grid.LimitedBy) {
		word := f.edgeWord(group, len(beyond))
		if word != "" && !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// edgeWord is what goes wrong in a part of the map, where that is not too small.
func (f *figure) edgeWord(group []node, all int) string {
	if len(group)*12 < all {
		return ""
	}
	return wording.LimitWord(f.r, f.grid.LimitedBy[group[0].j][group[0].i])
}

// node is a place of the grid.
type node struct{ i, j int }

// nameEdges writes what goes wrong beyond the strong line, once for each
// stretch of it; where there is no line, once for each large part of the map.
func (f figure) nameEdges(c draw.Canvas, grid field, room *drawing.Placer) {
	beyond := f.beyond()
	room.Refuse = func(b vg.Rectangle) bool { return !f.tried(grid, b) }
	if f.workable {
		room.Refuse = func(b vg.Rectangle) bool {
			return !f.tried(grid, b) || f.works(grid, b.Min.X, b.Min.Y) || f.works(grid, b.Max.X, b.Min.Y) ||
				f.works(grid, b.Min.X, b.Max.Y) || f.works(grid, b.Max.X, b.Max.Y)
		}
	}
	usual := room.Drawn
	room.Drawn += 6 // so far from a mark that it is not taken for its name
	defer func() { room.Drawn = usual }()
	sty := drawing.TextStyle(drawing.LabelSize, false, drawing.Ink)
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
		var spots []drawing.Spot
		for k := range min(24, len(group)) {
			n := group[k*len(group)/min(24, len(group))]
			at := vg.Point{X: grid.x[n.i], Y: grid.y[n.j]}
			dx, dy := f.downhill(grid, n)
			if !f.workable {
				dx, dy = 0, 0
			}
			for _, gap := range []vg.Length{5, 14, 24, 36, 50} {
				spots = append(spots, drawing.Spot{At: at, Dx: dx, Dy: dy, Gap: gap})
			}
			spots = append(spots, drawing.Around(at, 5)...)
		}
		room.Label(c, sty, word, spots)
	}
}

// beyond lists the tested nodes just past the wanted chance, or all that were
// tested when nothing reaches it.
func (f figure) beyond() []node {
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
func (f figure) downhill(grid field, n node) (dx, dy float64) {
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
