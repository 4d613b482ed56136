package plots

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

// fatFigure is the best chance to be had at each fat percent.
type fatFigure struct {
	r       *result.Results
	steps   []result.FatLimit
	wanted  float64
	x       axisRange
	shown   []shownTrial
	unknown bool
	several bool // a mark may be several trials
}

// Shares of the upward axis: a lane of words, two lines high, and a strip of trials
// above the chances, one or two strips of trials below.
const (
	laneShare  = 0.105
	trialShare = 0.11
)

func fatLimit(r *result.Results) (Figure, bool) {
	f := fatFigure{r: r, steps: r.FatLimit, x: newRange(false)}
	var fats []float64
	for _, s := range f.steps {
		if !finite(s.Chance.Mean) || !finite(s.Chance.Low) || !finite(s.Chance.High) {
			return Figure{}, false
		}
		fats = append(fats, s.FatPercent)
		f.x.take(s.FatPercent)
	}
	if !rising(fats) {
		return Figure{}, false
	}
	if w := r.Targets.WantedChance.Value; w > 0 && w < 1 {
		f.wanted = w
	}
	absent := 0
	for _, t := range usedTrials(r) {
		fat, ok := trialValue(t, fatPercent)
		if !ok {
			absent++
			continue
		}
		s := shownTrial{x: fat, fate: fateOf(t)}
		f.x.take(fat)
		f.unknown = f.unknown || s.fate == unknown
		f.shown = append(f.shown, s)
	}
	f.x = f.x.padded(air)
	f.several = len(f.shown) > mostMarks
	return Figure{
		Name: "fat-limit", Title: f.finding(), plain: "Best chance of working at each fat percent",
		Caption: f.caption(absent),
		Alt: fmt.Sprintf("Line of the best chance of working against fat percent with its band and %s drawn.",
			plural(len(f.shown), "trial", "trials")),
		key: f.key(), several: f.several, panel: panelHeight + 25, paint: f.paint,
	}.sized(figureWidth), true
}

func (f *fatFigure) key() []keyEntry {
	var failed []shownTrial // the strips of the others have their names beside the axis
	for _, s := range f.shown {
		if s.fate != worked && s.fate != unknown {
			failed = append(failed, s)
		}
	}
	key := append([]keyEntry{{keyBanded, bestWords, 0}}, fateKey(f.r, failed)...)
	if f.wanted > 0 {
		key = append(key, keyEntry{keyLine(Ink, 1.1, 5, 3), f.wantedWords(), 0})
	}
	if f.several {
		key = append(key, severalKey(math.MaxInt)...)
	}
	return key
}

func (f *fatFigure) caption(absent int) string {
	s := []string{
		"At each fat percent the other numbers are set as well as these trials know how.",
		f.bandWords(),
		"Beyond the band's ends there are too few trials to say. The words along the top name what most often goes wrong first.",
		tallied(f.r, fatesOf(f.shown)),
	}
	switch {
	case f.several:
		s = append(s, severalWords)
	case len(f.shown) > 1:
		s = append(s, apartWords)
	}
	return strings.Join(append(s, leftOut(absent)...), " ")
}

// finding says how far the fat goes: to the richest start where there is one,
// else to the end of the workable steps around the best one.
func (f *fatFigure) finding() string {
	r := f.r
	best := 0 // of those that may be named, where there are any
	for i, s := range f.steps {
		if b := f.steps[best]; s.Workable == b.Workable && s.Chance.Mean > b.Chance.Mean || s.Workable && !b.Workable {
			best = i
		}
	}
	at := f.steps[best]
	if f.wanted == 0 || !at.Workable {
		goal := ""
		if f.wanted > 0 && at.Chance.Mean < f.wanted {
			goal = "No fat percent reaches " + wantedInTen(f.wanted) + ": "
		}
		if fat, chance, ok := surest(r, fatPercent); ok { // which lies near what worked, rarely at the very top
			return Capital(fmt.Sprintf("%sthe surest start works %s, at %s %% fat", goal, ChanceAgainst(chance, f.wanted), number(fat, 0))) + unproven(r)
		}
		return Capital(fmt.Sprintf("%sthe best is %s, at %s %% fat", goal, ChanceAgainst(at.Chance.Mean, f.wanted), number(at.FatPercent, 0))) + unproven(r)
	}
	end := best
	for end+1 < len(f.steps) && f.steps[end+1].Workable {
		end++
	}
	rich := f.steps[end].FatPercent
	for _, s := range r.Starts {
		if v, ok := deref(s.Mix.FatPercent); ok && s.Aim == result.Richest && s.Status == result.Recommended {
			rich = v
		}
	}
	switch but := unproven(r); {
	case but != "":
		return fmt.Sprintf("Up to about %s %% fat the best mix may work %s%s", number(rich, 0), wantedTimes(f.wanted), but)
	case end == len(f.steps)-1:
		return fmt.Sprintf("Even at %s %% fat, the most tried, the best mix works at least %s", number(f.steps[end].FatPercent, 0), wantedTimes(f.wanted))
	}
	title := fmt.Sprintf("Fat can go to about %s %% and still work %s", number(rich, 0), wantedTimes(f.wanted))
	if w := limitWord(r, f.steps[end+1].LimitedBy); w != "" {
		title += "; beyond that the foam " + w
	}
	return title
}

const bestWords = "best mix at each fat percent, and its band"

// bandWords say how sure the band is.
func (f fatFigure) bandWords() string {
	for _, s := range f.steps {
		if l := s.Chance.Level; l > 0 && l < 1 {
			return fmt.Sprintf("How many in 10 such mixes work in the long run lies within the band %d times in 100.", int(math.Round(100*l)))
		}
	}
	return "The band is where it may well be."
}

func (f fatFigure) wantedWords() string { return "wanted: " + wantedInTen(f.wanted) }

// keyBanded is a line on its band.
func keyBanded(c draw.Canvas, at vg.Point) {
	c.SetColor(hex(Uncertain))
	c.Fill(swatchBox(at).Path())
	c.StrokeLine2(line(Accent, lineWidth), at.X-7, at.Y, at.X+7, at.Y)
}

func keyLine(colour string, width vg.Length, dashes ...vg.Length) keySign {
	return func(c draw.Canvas, at vg.Point) {
		c.StrokeLine2(line(colour, width, dashes...), at.X-8, at.Y, at.X+8, at.Y)
	}
}

func (f fatFigure) paint(c draw.Canvas, n *names) {
	below := trialShare
	if f.unknown {
		below *= 2
	}
	p := newPanel(c, f.x, axisRange{hi: 1}, axisLabel(nil, fatPercent), "works, times in 10")
	up := scale{below: below, above: laneShare + trialShare}
	p.Y.Scale = up
	// The strips are named beside the axis, at the values that would lie there.
	at := func(share float64) float64 { return (share - up.below) / (1 - up.below - up.above) }
	ticks := append(timesInTen(),
		plot.Tick{Value: at(1 - laneShare/2), Label: "limit"},
		plot.Tick{Value: at(1 - laneShare - trialShare/2), Label: "worked"},
		plot.Tick{Value: at(below - trialShare/2), Label: "failed"})
	if f.unknown {
		ticks = append(ticks, plot.Tick{Value: at(trialShare / 2), Label: "unclear"})
	}
	p.Y.Tick.Marker = ticks
	p.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.chances(c, n, x, y) }))
	p.Draw(c)
}

// timesInTen are the ticks of an axis of chances.
func timesInTen() plot.ConstantTicks {
	var marks []plot.Tick
	for i := 0; i <= 10; i += 2 {
		marks = append(marks, plot.Tick{Value: float64(i) / 10, Label: number(float64(i), 0)})
	}
	return marks
}

func (f fatFigure) chances(c draw.Canvas, n *names, x, y func(float64) vg.Length) {
	var band, mean []vg.Point
	for _, s := range f.steps {
		mean = append(mean, vg.Point{X: x(s.FatPercent), Y: y(s.Chance.Mean)})
		band = append(band, vg.Point{X: x(s.FatPercent), Y: y(s.Chance.High)})
	}
	for i := len(f.steps) - 1; i >= 0; i-- {
		band = append(band, vg.Point{X: x(f.steps[i].FatPercent), Y: y(f.steps[i].Chance.Low)})
	}
	c.FillPolygon(hex(Uncertain), band)
	for _, v := range []float64{0, 1} {
		c.StrokeLine2(line(Faint, thinWidth), c.Min.X, y(v), c.Max.X, y(v))
	}

	room := placer{frame: vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: y(0)}, Max: vg.Point{X: c.Max.X, Y: y(1)}}}
	room.lines = append(room.lines, mean)
	if f.wanted > 0 {
		room.lines = append(room.lines, []vg.Point{{X: c.Min.X, Y: y(f.wanted)}, {X: c.Max.X, Y: y(f.wanted)}})
		c.StrokeLine2(line(Ink, 1.1, 5, 3), c.Min.X, y(f.wanted), c.Max.X, y(f.wanted))
	}
	c.StrokeLines(line(Accent, lineWidth+0.6), mean)
	if f.wanted > 0 {
		n.beside(c, &room, textStyle(labelSize, true, Ink), f.wantedWords(), along(c, y(f.wanted)))
	}
	marks := f.trialStrips(c, x, y)
	for _, strip := range []vg.Rectangle{
		{Min: vg.Point{X: c.Min.X, Y: y(1)}, Max: vg.Point{X: c.Max.X, Y: c.Y(1 - laneShare)}},
		{Min: c.Min, Max: vg.Point{X: c.Max.X, Y: y(0)}},
	} {
		beside := placer{frame: strip}
		beside.keepOff(marks)
		nameFates(c, n, &beside, func(k fate) string { return fateWord(f.r, k) }, marks)
	}
	f.limits(c, x)
}

// trialStrips draws the trials above and below the chances.
func (f fatFigure) trialStrips(c draw.Canvas, x, y func(float64) vg.Length) []mark {
	h := (c.Max.Y - c.Min.Y) * trialShare
	middle := map[bool]vg.Length{true: y(1) + h/2, false: y(0) - h/2}
	var marks []mark
	for _, s := range f.shown {
		at := vg.Point{X: x(s.x), Y: middle[s.fate == worked]}
		if s.fate == unknown {
			at.Y -= h
		}
		marks = append(marks, mark{at: at, fate: s.fate})
	}
	var strips []vg.Rectangle
	for _, up := range []vg.Length{y(1), y(0) - h, y(0) - 2*h} {
		strips = append(strips, vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: up}, Max: vg.Point{X: c.Max.X, Y: up + h}})
	}
	if f.several {
		marks = gatherMarks(marks, strips...)
	} else {
		var moved []mark
		for _, strip := range strips {
			var within []mark
			for _, m := range marks {
				if inside(strip, m.at, 0) {
					within = append(within, m)
				}
			}
			moved = append(moved, apart(within, strip)...)
		}
		marks = moved
	}
	drawMarks(c, marks)
	return marks
}

// limits writes along the top what limits each stretch of fat percent.
func (f fatFigure) limits(c draw.Canvas, x func(float64) vg.Length) {
	lane := vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: c.Y(1 - laneShare)}, Max: c.Max}
	middle := (lane.Min.Y + lane.Max.Y) / 2
	for i := 0; i < len(f.steps); {
		j := i
		for j+1 < len(f.steps) && f.steps[j+1].LimitedBy == f.steps[i].LimitedBy {
			j++
		}
		from, to := x(f.steps[i].FatPercent), x(f.steps[j].FatPercent)
		if i > 0 {
			from = (from + x(f.steps[i-1].FatPercent)) / 2
			c.StrokeLine2(line(Quiet, thinWidth), from, lane.Min.Y, from, lane.Max.Y)
		}
		if j+1 < len(f.steps) {
			to = (to + x(f.steps[j+1].FatPercent)) / 2
		}
		sty := textStyle(tickSize, false, Ink)
		lines := wrap(sty, limitWord(f.r, f.steps[i].LimitedBy), to-from-4)
		fits := len(lines) <= 2
		for _, l := range lines {
			fits = fits && size(sty, l).X+4 <= to-from
		}
		for k, l := range lines {
			if dim := size(sty, l); fits {
				write(c, sty, vg.Point{X: (from + to - dim.X) / 2, Y: middle - dim.Y/2 + vg.Length(len(lines)-1-2*k)*dim.Y*0.58}, l)
			}
		}
		i = j + 1
	}
}
