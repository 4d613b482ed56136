package plots

import (
	"fmt"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// foreseenFigure sets the chance of each trial, foreseen from the others,
// against what happened: trials that worked are piled up, the rest down.
type foreseenFigure struct {
	chances []float64
	fates   []fate
	// Each side of the middle has room for its tallest pile, and for its name.
	up, down float64
	title    string
	key      []keyEntry
}

const (
	foreseenPiles = 40
	pileStep      = vg.Length(9)
)

func foreseen(r *result.Results) (Figure, bool) {
	var f foreseenFigure
	wanted := r.Targets.WantedChance.Value
	if !(wanted > 0 && wanted < 1) || unproven(r) != "" { // no trial can be known to have worked
		return Figure{}, false
	}
	sure, sureWorked, all := 0, 0, 0
	var told []*result.Trial
	for _, t := range usedTrials(r) {
		p, ok := deref(t.ForeseenChance)
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
	kept, every := thin(told, mostMarks)
	for _, t := range kept {
		f.chances = append(f.chances, *t.ForeseenChance)
		f.fates = append(f.fates, fateOf(t))
	}
	if len(f.chances) < 2 {
		return Figure{}, false
	}
	f.up, f.down = 3, 3
	n := map[pile]float64{}
	for i := range f.chances {
		p := f.pile(i)
		n[p]++
		if p.up {
			f.up = math.Max(f.up, n[p]+1)
		} else {
			f.down = math.Max(f.down, n[p]+1)
		}
	}
	f.title = fmt.Sprintf("No trial was foreseen to work %s; %d of %d worked", wantedTimes(wanted), all, len(told))
	if sure > 0 {
		f.title = fmt.Sprintf("Of %s foreseen to work at least %s, %d did",
			plural(sure, "trial", "trials"), wantedTimes(wanted), sureWorked)
	}
	var shown []shownTrial
	for _, k := range f.fates {
		shown = append(shown, shownTrial{fate: k})
	}
	f.key = fateKey(r, shown, every)
	caption := "Each trial's chance is foreseen from all the other trials: piled up, those that worked; down, those that did not." +
		" Good foresight has the upper piles on the right and the lower ones on the left."
	for _, s := range leftOut(0, every) {
		caption += " " + s
	}
	return Figure{
		Name: "foreseen", Title: f.title, Caption: caption,
		Alt: fmt.Sprintf("Foreseen chance of working of %s against what happened.", plural(len(told), "trial", "trials")),
		key: f.key, panel: min(45+pileStep*vg.Length(f.up+f.down), 220), paint: f.paint,
	}.sized(figureWidth), true
}

// pile is where trials of about one chance are heaped.
type pile struct {
	at int
	up bool
}

func (f foreseenFigure) pile(i int) pile {
	return pile{int(math.Min(f.chances[i]*foreseenPiles, foreseenPiles-1)), f.fates[i] == worked}
}

func (f foreseenFigure) paint(c draw.Canvas) {
	c = sheet(c, f.title, f.key)
	p := newPanel(c, axisRange{-0.02, 1.02, false}, axisRange{-f.down, f.up, false}, "foreseen to work, times in 10", "")
	p.X.Tick.Marker = timesInTen()
	p.Y.Tick.Marker = plot.ConstantTicks{{Value: f.up / 2, Label: "worked"}, {Value: -f.down / 2, Label: "did not"}}
	p.Y.Tick.Length = 0
	p.Add(paint(f.piles))
	p.Draw(c)
}

func (f foreseenFigure) piles(c draw.Canvas, x, y func(float64) vg.Length) {
	c.StrokeLine2(line(Quiet, thinWidth), c.Min.X, y(0), c.Max.X, y(0))
	step := min(pileStep, y(1)-y(0))
	n := map[pile]int{}
	var marks []mark
	for i := range f.chances {
		p := f.pile(i)
		up := vg.Length(-1)
		if p.up {
			up = 1
		}
		at := vg.Point{X: x((float64(p.at) + 0.5) / foreseenPiles), Y: y(0) + up*step*vg.Length(0.7+float64(n[p]))}
		n[p]++
		marks = append(marks, mark{at: at, fate: f.fates[i]})
	}
	drawMarks(c, marks)
}
