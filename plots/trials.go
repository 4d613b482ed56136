package plots

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// trialsFigure is what was made and what became of it; it needs no model.
type trialsFigure struct {
	r       *result.Results
	up      string // the variable drawn upward over fat, or ""
	made    []shownTrial
	held    []heldTrial
	xm, ym  axisRange
	xh, yh  axisRange
	several bool // a mark may be several trials
	nothing bool // some trials have no hold: a strip below
}

// heldTrial is a trial in the order of the log with its hold.
type heldTrial struct {
	order     float64
	fate      fate
	kind      seen
	low, high float64
	none      bool
}

func trials(r *result.Results) (Figure, bool) {
	all := usedTrials(r)
	if len(all) == 0 {
		return Figure{}, false
	}
	f := trialsFigure{r: r, xm: newRange(false), ym: newRange(false), xh: newRange(false), yh: newRange(true)}
	f.several = len(all) > mostMarks*2/3 // each is drawn twice
	f.compose(all)
	f.inOrder(all)
	if len(f.made) == 0 && len(f.held) == 0 {
		return Figure{}, false
	}
	shown := f.made
	if len(f.held) > len(shown) {
		shown = nil
		for _, h := range f.held {
			shown = append(shown, shownTrial{fate: h.fate})
		}
	}
	key := fateKey(r, shown)
	var kinds [4]int
	for _, h := range f.held {
		if !h.none {
			kinds[h.kind]++
		}
	}
	if len(f.held) > 0 {
		key = append(key, holdKey(kinds, false, r.Targets.HoldMinutes.Value)...)
	}
	if f.nothing && len(f.held) > 0 {
		key = append(key, keyEntry{keyStrip, noHold, 0})
	}
	if f.several {
		key = append(key, severalKey(math.MaxInt)...)
	}
	return Figure{
		Name: "trials", Title: tally(r, all), plain: "The trials as made", Caption: f.caption(len(all)),
		Alt: f.alt(len(all)),
		key: key, several: f.several, panel: vg.Length(f.panels()) * 190, paint: f.paint,
	}.sized(figureWidth), true
}

// noHold names the strip of the trials without a hold.
const noHold = "no hold"

// tally words what became of the trials, the commonest failures first.
func tally(r *result.Results, ts []*result.Trial) string {
	var n [fates]int
	for _, t := range ts {
		n[fateOf(t)]++
	}
	order := []fate{clogged, partly, split, fell, weeps, missed}
	sort.SliceStable(order, func(i, j int) bool { return n[order[i]] > n[order[j]] })
	var words []string
	for _, k := range order {
		if n[k] > 0 {
			words = append(words, fmt.Sprintf("%d %s", n[k], fateWord(r, k)))
		}
	}
	s := fmt.Sprintf("%d of %s worked", n[worked], plural(len(ts), "trial", "trials"))
	switch {
	case len(ts) == 1 && n[worked] == 1:
		return "The one trial worked"
	case len(ts) == 1:
		return "The one trial did not work"
	case n[worked] == 0:
		s = fmt.Sprintf("None of %d trials worked", len(ts))
	case n[worked] == len(ts):
		s = fmt.Sprintf("All %d trials worked", len(ts))
	}
	if len(words) > 0 {
		s += "; " + list(words)
	}
	if n[unknown] > 0 {
		s += fmt.Sprintf("; %d unclear", n[unknown])
	}
	return s
}

// compose places the trials over fat and whichever other variable most of them
// have.
func (f *trialsFigure) compose(ts []*result.Trial) {
	most := 0
	for _, name := range []string{emulsifierPercent, emulsifierGrams, blendHLB} {
		n := 0
		for _, t := range ts {
			_, okX := trialValue(t, fatPercent)
			_, okY := trialValue(t, name)
			if okX && okY {
				n++
			}
		}
		if n > most {
			most, f.up = n, name
		}
	}
	for _, t := range ts {
		x, okX := trialValue(t, fatPercent)
		y, okY := trialValue(t, f.up)
		if okX && okY {
			f.xm.take(x)
			f.ym.take(y)
			f.made = append(f.made, shownTrial{x: x, y: y, fate: fateOf(t)})
		}
	}
	f.xm, f.ym = f.xm.padded(air), f.ym.padded(air)
}

// inOrder places the trials by their order in the log; those without a hold go
// to a strip. Without any hold there is no such panel.
func (f *trialsFigure) inOrder(ts []*result.Trial) {
	some := false
	for i, t := range ts {
		h := heldTrial{order: float64(t.Order), fate: fateOf(t)}
		if t.Order <= 0 {
			h.order = float64(i + 1)
		}
		kind, low, high, ok := holdSeen(t.HoldMinutes)
		h.kind, h.low, h.high, h.none = kind, low, high, !ok
		some = some || ok
		f.nothing = f.nothing || h.none
		f.xh.take(h.order)
		takeHold(&f.yh, t.HoldMinutes)
		f.held = append(f.held, h)
	}
	if !some {
		f.held = nil
	}
	f.yh.take(f.r.Targets.HoldMinutes.Value)
	f.xh, f.yh = f.xh.padded(air), f.yh.padded(holdAir)
	f.xh.lo, f.xh.whole = math.Max(f.xh.lo, 0.5), true
}

func (f trialsFigure) panels() int {
	n := 0
	if len(f.made) > 0 {
		n++
	}
	if len(f.held) > 0 {
		n++
	}
	return n
}

func (f *trialsFigure) caption(all int) string {
	var s []string
	if len(f.made) > 0 {
		of := "Each mark is one trial at its"
		if f.several {
			of = "Each mark is one trial or several at about their"
		}
		s = append(s, of+" fat and "+shortName(f.r, f.up)+".")
	}
	if len(f.held) > 0 {
		s = append(s, "Holds stand in the order of the log.")
	}
	if !f.several && len(f.made) > 1 {
		s = append(s, apartWords)
	}
	if f.several {
		s = append(s, severalWords)
		if f.nothing && len(f.held) > 0 {
			s = append(s, "The strip along the bottom is the trials without a hold.")
		}
	}
	absent := 0
	if len(f.made) > 0 {
		absent = all - len(f.made)
	}
	return strings.Join(append(s, leftOut(absent)...), " ")
}

func (f *trialsFigure) alt(n int) string {
	var where []string
	if len(f.made) > 0 {
		where = append(where, "over fat and "+shortName(f.r, f.up))
	}
	if len(f.held) > 0 {
		where = append(where, "by how long each held in the order of the log")
	}
	return plural(n, "trial", "trials") + " as made, " + list(where) + "."
}

func (f trialsFigure) paint(c draw.Canvas, n *names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(f.panels())
	tile := c
	tile.Min.Y = c.Max.Y - h
	if len(f.made) > 0 {
		top := tile
		if f.panels() == 2 {
			top.Min.Y += 8
		}
		p := newPanel(top, f.xm, f.ym, axisLabel(f.r, fatPercent), axisLabel(f.r, f.up))
		p.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.madeMarks(c, n, x, y) }))
		p.Draw(top)
		tile.Max.Y, tile.Min.Y = tile.Min.Y, c.Min.Y
	}
	if len(f.held) > 0 {
		p := newPanel(tile, f.xh, f.yh, "trial, in the order of the log", "hold, minutes")
		if f.nothing {
			p.Y.Scale = scale{log: true, below: 0.12}
		}
		p.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.holdPanel(c, n, x, y) }))
		p.Draw(tile)
	}
}

func (f trialsFigure) madeMarks(c draw.Canvas, n *names, x, y func(float64) vg.Length) {
	var marks []mark
	for _, s := range f.made {
		marks = append(marks, mark{at: vg.Point{X: x(s.x), Y: y(s.y)}, fate: s.fate})
	}
	if f.several {
		marks = gatherMarks(marks, c.Rectangle)
	} else {
		marks = apart(marks, c.Rectangle)
	}
	drawMarks(c, marks)
	room := placer{frame: c.Rectangle}
	room.keepOff(marks)
	nameFates(c, n, &room, f.word, marks)
}

func (f trialsFigure) word(k fate) string { return fateWord(f.r, k) }

func (f trialsFigure) holdPanel(c draw.Canvas, n *names, x, y func(float64) vg.Length) {
	room := placer{frame: c.Rectangle}
	level := func(v float64) vg.Length { return y(max(v, f.yh.lo)) }
	target := f.r.Targets.HoldMinutes.Value
	wanted := finite(target) && target > 0
	if wanted {
		level := []vg.Point{{X: c.Min.X, Y: y(target)}, {X: c.Max.X, Y: y(target)}}
		c.StrokeLines(line(Ink, 1.1, 5, 3), level)
		room.lines = append(room.lines, level)
	}
	var marks []mark
	var holds holdMarks
	for _, h := range f.held {
		at := vg.Point{X: x(h.order), Y: c.Y(0.06)}
		if !h.none {
			if h.kind != exact || !f.several { // one that is known is the mark itself
				holds.add(h.kind, at.X, level(h.low), level(h.high))
			}
			at.Y = (level(h.low) + level(h.high)) / 2
		}
		marks = append(marks, mark{at: at, fate: h.fate})
	}
	if f.several {
		above, below := c.Rectangle, c.Rectangle
		if f.nothing {
			above.Min.Y = c.Y(0.12)
		}
		below.Max.Y = above.Min.Y
		marks, holds = gatherMarks(marks, above, below), holds.gathered(above)
	}
	room.keepOff(marks)
	room.avoid, room.lines = append(room.avoid, holds.places()...), append(room.lines, holds.stems()...)
	if f.nothing {
		room.lines = append(room.lines, []vg.Point{{X: c.Min.X, Y: c.Y(0.12)}, {X: c.Max.X, Y: c.Y(0.12)}})
		c.StrokeLine2(line(Quiet, thinWidth), c.Min.X, c.Y(0.12), c.Max.X, c.Y(0.12))
	}
	holds.draw(c, Quiet)
	drawMarks(c, marks)
	if wanted {
		n.beside(c, &room, textStyle(tickSize, true, Ink), wantedHold(target), along(c, y(target)))
	}
	holds.name(c, n, &room)
	if f.nothing {
		var spots []spot
		for s := 0.0; s <= 1; s += 0.02 {
			spots = append(spots, spot{at: vg.Point{X: c.X(1 - s), Y: c.Y(0.06)}})
		}
		n.beside(c, &room, textStyle(tickSize, false, Quiet), noHold, spots)
	}
	nameFates(c, n, &room, f.word, marks)
}
