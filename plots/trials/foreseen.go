package trials

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// foreseenFigure sets the chance of each trial, foreseen from the others,
// against what happened: trials that worked are piled up, the rest down.
type foreseenFigure struct {
	chances []float64
	fates   []mark.Fate
	full    int // trials of one fate that one mark of a pile may stand for
	// Each side of the middle has room for its tallest pile, and for its name.
	up, down float64
	word     func(mark.Fate) string
}

const (
	foreseenPiles = 40
	pileStep      = vg.Length(9)
	mostPiled     = 30 // marks above one another, up and down, before they touch
)

// Foreseen is each trial's chance, predicted from the others, and what happened.
func Foreseen(r *result.Results) (drawing.Figure, bool) {
	f := foreseenFigure{word: func(k mark.Fate) string { return mark.FateWord(r, k) }}
	wanted := r.Targets.WantedChance.Value
	if !(wanted > 0 && wanted < 1) || wording.Unproven(r) != "" { // no trial can be known to have worked
		return drawing.Figure{}, false
	}
	sure, sureWorked, all := 0, 0, 0
	var told []*result.Trial
	for _, t := range mark.Used(r) {
		p, ok := wording.Told(t.ForeseenChance)
		if !ok || p < 0 || p > 1 || t.Works == nil {
			continue
		}
		told = append(told, t)
		if *t.Works {
			all++
		}
		if p >= wanted {
			sure++
			if *t.Works {
				sureWorked++
			}
		}
	}
	for _, t := range told {
		f.chances = append(f.chances, *t.ForeseenChance)
		f.fates = append(f.fates, mark.FateOf(t))
	}
	if len(f.chances) < 2 {
		return drawing.Figure{}, false
	}
	f.heap()
	title := fmt.Sprintf("No trial was predicted to work %s; %d of %d worked", wording.WantedTimes(wanted), all, len(told))
	if sure > 0 {
		title = fmt.Sprintf("Of %s predicted to work at least %s, %d did",
			wording.Plural(sure, "trial", "trials"), wording.WantedTimes(wanted), sureWorked)
	}
	var shown []mark.Shown
	for _, k := range f.fates {
		if k != mark.Worked { // whose side has that name
			shown = append(shown, mark.Shown{Fate: k})
		}
	}
	key := mark.Key(r, shown)
	caption := "Each trial's chance is predicted from all the other trials: piled up, those that worked; down, those that did not." +
		" Good predictions have the upper piles on the right and the lower ones on the left."
	caption += " " + mark.Tallied(r, f.fates)
	if f.full > 1 {
		caption += fmt.Sprintf(" Each mark is up to %d trials that went alike.", f.full)
	}
	if mark.SeveralSizes(f.full) {
		key = append(key, mark.SeveralKey(f.full)...)
	}
	return drawing.Figure{
		Name: "foreseen", Title: title, Subject: "Predicted chance of working, and what happened", Caption: caption,
		Alt: fmt.Sprintf("Predicted chance of working of %s against what happened.", wording.Plural(len(told), "trial", "trials")),
		Key: key, Several: f.full > 1, Panel: min(45+pileStep*vg.Length(f.up+f.down), 220), Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

// heap settles how many trials a mark stands for, and the room for the tallest piles.
func (f *foreseenFigure) heap() {
	for _, f.full = range []int{1, 3, 5, 10, 15, 30, 50, 100, 200, 500, 1000, math.MaxInt} {
		f.up, f.down = 3, 3
		n := map[pile]float64{}
		for _, m := range f.heaped() {
			n[m.pile]++
			if m.up {
				f.up = math.Max(f.up, n[m.pile]+1)
			} else {
				f.down = math.Max(f.down, n[m.pile]+1)
			}
		}
		if f.up+f.down <= mostPiled || len(f.fates) <= mark.Busy {
			return
		}
	}
}

// pile is where trials of about one chance are heaped.
type pile struct {
	at int
	up bool
}

func (f foreseenFigure) pile(i int) pile {
	return pile{int(math.Min(f.chances[i]*foreseenPiles, foreseenPiles-1)), f.fates[i] == mark.Worked}
}

// heap is a mark of a pile.
type heap struct {
	pile
	fate   mark.Fate
	trials int // 0 where each trial has a mark of its own
}

// heaped are the marks of all piles, from the middle outward: of each trial in
// the order of the log, or of full marks, the commonest fate of a pile first.
func (f foreseenFigure) heaped() []heap {
	var out []heap
	if f.full == 1 {
		for i, k := range f.fates {
			out = append(out, heap{pile: f.pile(i), fate: k})
		}
		return out
	}
	var n [2][foreseenPiles][mark.Fates]int
	for i, k := range f.fates {
		p := f.pile(i)
		if p.up {
			n[1][p.at][k]++
		} else {
			n[0][p.at][k]++
		}
	}
	for side := range n {
		for at, each := range n[side] {
			var order []mark.Fate
			for k := range mark.Fates {
				if each[k] > 0 {
					order = append(order, k)
				}
			}
			slices.SortStableFunc(order, func(a, b mark.Fate) int { return each[b] - each[a] })
			for _, k := range order {
				for left := each[k]; left > 0; left -= f.full {
					out = append(out, heap{pile{at, side == 1}, k, min(left, f.full)})
				}
			}
		}
	}
	return out
}

func (f foreseenFigure) paint(c draw.Canvas, n *drawing.Names) {
	p := drawing.NewPanel(c, drawing.Range{Lo: -0.02, Hi: 1.02}, drawing.Range{Lo: -f.down, Hi: f.up}, "predicted to work, times in 10", "")
	p.X.Tick.Marker = drawing.TimesInTen()
	p.Y.Tick.Marker = plot.ConstantTicks{{Value: f.up / 2, Label: "worked"}, {Value: -f.down / 2, Label: "did not"}}
	p.Y.Tick.Length = 0
	p.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.piles(c, n, x, y) }))
	p.Draw(c)
}

func (f foreseenFigure) piles(c draw.Canvas, names *drawing.Names, x, y func(float64) vg.Length) {
	c.StrokeLine2(drawing.Line(drawing.Quiet, drawing.ThinWidth), c.Min.X, y(0), c.Max.X, y(0))
	step := min(pileStep, y(1)-y(0))
	n := map[pile]int{}
	var marks []mark.Mark
	for _, m := range f.heaped() {
		up, p := vg.Length(-1), m.pile
		if p.up {
			up = 1
		}
		at := vg.Point{X: x((float64(p.at) + 0.5) / foreseenPiles), Y: y(0) + up*step*vg.Length(0.7+float64(n[p]))}
		n[p]++
		marks = append(marks, mark.Mark{At: at, Fate: m.fate, Trials: m.trials})
	}
	mark.Draw(c, marks)
	room := drawing.Placer{Frame: c.Rectangle, Lines: [][]vg.Point{{{X: c.Min.X, Y: y(0)}, {X: c.Max.X, Y: y(0)}}}}
	mark.KeepOff(&room, marks)
	mark.NameFates(c, names, &room, f.word, marks)
}
