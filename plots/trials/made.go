// Package trials draws the trials themselves: as they were made, beside what was
// predicted of them, and over what their mixes make one expect.
package trials

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// madeFigure is what was made and what became of it; it needs no model.
type madeFigure struct {
	r       *result.Results
	up      string // the variable drawn upward over fat, or ""
	made    []mark.Shown
	held    []heldTrial
	xm, ym  drawing.Range
	xh, yh  drawing.Range
	several bool // a mark may be several trials
	nothing bool // some trials have no hold: a strip below
}

// heldTrial is a trial in the order of the log with its hold.
type heldTrial struct {
	order     float64
	fate      mark.Fate
	kind      mark.Seen
	low, high float64
	none      bool
}

// Made is the trials as made, and what became of them.
func Made(r *result.Results) (drawing.Figure, bool) {
	all := mark.Used(r)
	if len(all) == 0 {
		return drawing.Figure{}, false
	}
	f := madeFigure{r: r, xm: drawing.NewRange(false), ym: drawing.NewRange(false), xh: drawing.NewRange(false), yh: drawing.NewRange(true)}
	f.several = len(all) > mark.Most*2/3 // each is drawn twice
	f.compose(all)
	f.inOrder(all)
	if len(f.made) == 0 && len(f.held) == 0 {
		return drawing.Figure{}, false
	}
	shown := f.made
	if len(f.held) > len(shown) {
		shown = nil
		for _, h := range f.held {
			shown = append(shown, mark.Shown{Fate: h.fate})
		}
	}
	key := mark.Key(r, shown)
	var kinds [4]int
	for _, h := range f.held {
		if !h.none {
			kinds[h.kind]++
		}
	}
	if len(f.held) > 0 {
		key = append(key, mark.HoldKey(kinds, false, r.Targets.HoldMinutes.Value)...)
	}
	if f.nothing && len(f.held) > 0 {
		key = append(key, drawing.Entry{Sign: drawing.KeyStrip, Words: noHold})
	}
	if f.several {
		key = append(key, mark.SeveralKey(math.MaxInt)...)
	}
	return drawing.Figure{
		Name: "trials", Title: tally(r, all), Subject: "The trials as made", Caption: f.caption(len(all)),
		Alt: f.alt(len(all)),
		Key: key, Several: f.several, Panel: vg.Length(f.panels()) * 190, Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

// noHold names the strip of the trials without a hold.
const noHold = "no hold"

// tally words what became of the trials, the commonest failures first.
func tally(r *result.Results, ts []*result.Trial) string {
	var n [mark.Fates]int
	for _, t := range ts {
		n[mark.FateOf(t)]++
	}
	order := []mark.Fate{mark.Clogged, mark.Partly, mark.Split, mark.Fell, mark.Weeps, mark.Missed}
	sort.SliceStable(order, func(i, j int) bool { return n[order[i]] > n[order[j]] })
	var words []string
	for _, k := range order {
		if n[k] > 0 {
			words = append(words, fmt.Sprintf("%d %s", n[k], mark.FateWord(r, k)))
		}
	}
	s := fmt.Sprintf("%d of %s worked", n[mark.Worked], wording.Plural(len(ts), "trial", "trials"))
	switch {
	case len(ts) == 1 && n[mark.Worked] == 1:
		return "The one trial worked"
	case len(ts) == 1:
		return "The one trial did not work"
	case n[mark.Worked] == 0:
		s = fmt.Sprintf("None of %d trials worked", len(ts))
	case n[mark.Worked] == len(ts):
		s = fmt.Sprintf("All %d trials worked", len(ts))
	}
	if len(words) > 0 {
		s += "; " + wording.List(words)
	}
	if n[mark.Unknown] > 0 {
		s += fmt.Sprintf("; %d unclear", n[mark.Unknown])
	}
	return s
}

// compose places the trials over fat and whichever other variable most of them
// have.
func (f *madeFigure) compose(ts []*result.Trial) {
	most := 0
	for _, name := range []string{wording.EmulsifierPercent, wording.EmulsifierGrams, wording.BlendHLB} {
		n := 0
		for _, t := range ts {
			_, okX := wording.TrialValue(t, wording.FatPercent)
			_, okY := wording.TrialValue(t, name)
			if okX && okY {
				n++
			}
		}
		if n > most {
			most, f.up = n, name
		}
	}
	for _, t := range ts {
		x, okX := wording.TrialValue(t, wording.FatPercent)
		y, okY := wording.TrialValue(t, f.up)
		if okX && okY {
			f.xm.Take(x)
			f.ym.Take(y)
			f.made = append(f.made, mark.Shown{X: x, Y: y, Fate: mark.FateOf(t)})
		}
	}
	f.xm, f.ym = f.xm.Padded(drawing.Air), f.ym.Padded(drawing.Air)
}

// inOrder places the trials by their order in the log; those without a hold go
// to a strip. Without any hold there is no such panel.
func (f *madeFigure) inOrder(ts []*result.Trial) {
	some := false
	for i, t := range ts {
		h := heldTrial{order: float64(t.Order), fate: mark.FateOf(t)}
		if t.Order <= 0 {
			h.order = float64(i + 1)
		}
		kind, low, high, ok := mark.HoldSeen(t.HoldMinutes)
		h.kind, h.low, h.high, h.none = kind, low, high, !ok
		some = some || ok
		f.nothing = f.nothing || h.none
		f.xh.Take(h.order)
		mark.TakeHold(&f.yh, t.HoldMinutes)
		f.held = append(f.held, h)
	}
	if !some {
		f.held = nil
	}
	f.yh.Take(f.r.Targets.HoldMinutes.Value)
	f.xh, f.yh = f.xh.Padded(drawing.Air), f.yh.Padded(drawing.HoldAir)
	f.xh.Lo, f.xh.Whole = math.Max(f.xh.Lo, 0.5), true
}

func (f madeFigure) panels() int {
	n := 0
	if len(f.made) > 0 {
		n++
	}
	if len(f.held) > 0 {
		n++
	}
	return n
}

func (f *madeFigure) caption(all int) string {
	var s []string
	if len(f.made) > 0 {
		of := "Each mark is one trial at its"
		if f.several {
			of = "Each mark is one trial or several at about their"
		}
		s = append(s, of+" fat and "+wording.ShortName(f.r, f.up)+".")
	}
	if len(f.held) > 0 {
		s = append(s, "Holds stand in the order of the log.")
	}
	if !f.several && len(f.made) > 1 {
		s = append(s, mark.ApartWords)
	}
	if f.several {
		s = append(s, mark.SeveralWords)
		if f.nothing && len(f.held) > 0 {
			s = append(s, "The strip along the bottom is the trials without a hold.")
		}
	}
	absent := 0
	if len(f.made) > 0 {
		absent = all - len(f.made)
	}
	return strings.Join(append(s, wording.LeftOut(absent)...), " ")
}

func (f *madeFigure) alt(n int) string {
	var where []string
	if len(f.made) > 0 {
		where = append(where, "over fat and "+wording.ShortName(f.r, f.up))
	}
	if len(f.held) > 0 {
		where = append(where, "by how long each held in the order of the log")
	}
	return wording.Plural(n, "trial", "trials") + " as made, " + wording.List(where) + "."
}

func (f madeFigure) paint(c draw.Canvas, n *drawing.Names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(f.panels())
	tile := c
	tile.Min.Y = c.Max.Y - h
	if len(f.made) > 0 {
		top := tile
		if f.panels() == 2 {
			top.Min.Y += 8
		}
		p := drawing.NewPanel(top, f.xm, f.ym, wording.AxisLabel(f.r, wording.FatPercent), wording.AxisLabel(f.r, f.up))
		p.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.madeMarks(c, n, x, y) }))
		p.Draw(top)
		tile.Max.Y, tile.Min.Y = tile.Min.Y, c.Min.Y
	}
	if len(f.held) > 0 {
		p := drawing.NewPanel(tile, f.xh, f.yh, "trial, in the order of the log", "hold, minutes")
		if f.nothing {
			p.Y.Scale = drawing.Scale{Log: true, Below: 0.12}
		}
		p.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.holdPanel(c, n, x, y) }))
		p.Draw(tile)
	}
}

func (f madeFigure) madeMarks(c draw.Canvas, n *drawing.Names, x, y func(float64) vg.Length) {
	var marks []mark.Mark
	for _, s := range f.made {
		marks = append(marks, mark.Mark{At: vg.Point{X: x(s.X), Y: y(s.Y)}, Fate: s.Fate})
	}
	if f.several {
		marks = mark.Gather(marks, c.Rectangle)
	} else {
		marks = mark.Apart(marks, c.Rectangle)
	}
	mark.Draw(c, marks)
	room := drawing.Placer{Frame: c.Rectangle}
	mark.KeepOff(&room, marks)
	mark.NameFates(c, n, &room, f.word, marks)
}

func (f madeFigure) word(k mark.Fate) string { return mark.FateWord(f.r, k) }

func (f madeFigure) holdPanel(c draw.Canvas, n *drawing.Names, x, y func(float64) vg.Length) {
	room := drawing.Placer{Frame: c.Rectangle}
	level := func(v float64) vg.Length { return y(max(v, f.yh.Lo)) }
	target := f.r.Targets.HoldMinutes.Value
	wanted := wording.Finite(target) && target > 0
	if wanted {
		level := []vg.Point{{X: c.Min.X, Y: y(target)}, {X: c.Max.X, Y: y(target)}}
		c.StrokeLines(drawing.Line(drawing.Ink, 1.1, 5, 3), level)
		room.Lines = append(room.Lines, level)
	}
	var marks []mark.Mark
	var holds mark.Holds
	for _, h := range f.held {
		at := vg.Point{X: x(h.order), Y: c.Y(0.06)}
		if !h.none {
			if h.kind != mark.Exact || !f.several { // one that is known is the mark itself
				holds.Add(h.kind, at.X, level(h.low), level(h.high))
			}
			at.Y = (level(h.low) + level(h.high)) / 2
		}
		marks = append(marks, mark.Mark{At: at, Fate: h.fate})
	}
	if f.several {
		above, below := c.Rectangle, c.Rectangle
		if f.nothing {
			above.Min.Y = c.Y(0.12)
		}
		below.Max.Y = above.Min.Y
		marks, holds = mark.Gather(marks, above, below), holds.Gathered(above)
	}
	mark.KeepOff(&room, marks)
	room.Avoid, room.Lines = append(room.Avoid, holds.Places()...), append(room.Lines, holds.Stems()...)
	if f.nothing {
		room.Lines = append(room.Lines, []vg.Point{{X: c.Min.X, Y: c.Y(0.12)}, {X: c.Max.X, Y: c.Y(0.12)}})
		c.StrokeLine2(drawing.Line(drawing.Quiet, drawing.ThinWidth), c.Min.X, c.Y(0.12), c.Max.X, c.Y(0.12))
	}
	holds.Draw(c, drawing.Quiet)
	mark.Draw(c, marks)
	if wanted {
		n.Beside(c, &room, drawing.TextStyle(drawing.TickSize, true, drawing.Ink), wording.WantedHold(target), drawing.Along(c, y(target)))
	}
	holds.Name(c, n, &room)
	if f.nothing {
		var spots []drawing.Spot
		for s := 0.0; s <= 1; s += 0.02 {
			spots = append(spots, drawing.Spot{At: vg.Point{X: c.X(1 - s), Y: c.Y(0.06)}})
		}
		n.Beside(c, &room, drawing.TextStyle(drawing.TickSize, false, drawing.Quiet), noHold, spots)
	}
	mark.NameFates(c, n, &room, f.word, marks)
}
