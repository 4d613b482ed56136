// Package curve draws what follows one variable: the best chance to be had at each fat
// percent, and the hold over each variable of the mix.
package curve

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// fatFigure is the best chance to be had at each fat percent.
type fatFigure struct {
	r       *result.Results
	steps   []result.FatLimit
	wanted  float64
	x       drawing.Range
	shown   []mark.Shown
	unknown bool
	several bool // a mark may be several trials
}

// Shares of the upward axis: a lane of words, two lines high, and a strip of trials
// above the chances, one or two strips of trials below.
const (
	laneShare  = 0.105
	trialShare = 0.11
)

// FatLimit is the best chance to be had at each fat percent.
func FatLimit(r *result.Results) (drawing.Figure, bool) {
	f := fatFigure{r: r, steps: r.FatLimit, x: drawing.NewRange(false)}
	var fats []float64
	for _, s := range f.steps {
		if !wording.Finite(s.Chance.Mean) || !wording.Finite(s.Chance.Low) || !wording.Finite(s.Chance.High) {
			return drawing.Figure{}, false
		}
		fats = append(fats, s.FatPercent)
		f.x.Take(s.FatPercent)
	}
	if !drawing.Rising(fats) {
		return drawing.Figure{}, false
	}
	if w := r.Targets.WantedChance.Value; w > 0 && w < 1 {
		f.wanted = w
	}
	absent := 0
	for _, t := range mark.Used(r) {
		fat, ok := wording.TrialValue(t, wording.FatPercent)
		if !ok {
			absent++
			continue
		}
		s := mark.Shown{X: fat, Fate: mark.FateOf(t)}
		f.x.Take(fat)
		f.unknown = f.unknown || s.Fate == mark.Unknown
		f.shown = append(f.shown, s)
	}
	f.x = f.x.Padded(drawing.Air)
	f.several = len(f.shown) > mark.Most
	return drawing.Figure{
		Name: "fat-limit", Title: f.finding(), Subject: "Best chance of working at each fat percent",
		Caption: f.caption(absent),
		Alt: fmt.Sprintf("Line of the best chance of working against fat percent with its band and %s drawn.",
			wording.Plural(len(f.shown), "trial", "trials")),
		Key: f.key(), Several: f.several, Panel: drawing.PanelHeight + 25, Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

func (f *fatFigure) key() []drawing.Entry {
	var failed []mark.Shown // the strips of the others have their names beside the axis
	for _, s := range f.shown {
		if s.Fate != mark.Worked && s.Fate != mark.Unknown {
			failed = append(failed, s)
		}
	}
	key := append([]drawing.Entry{{Sign: drawing.KeyBanded, Words: bestWords}}, mark.Key(f.r, failed)...)
	if f.wanted > 0 {
		key = append(key, drawing.Entry{Sign: drawing.KeyLine(drawing.Ink, 1.1, 5, 3), Words: f.wantedWords()})
	}
	if f.several {
		key = append(key, mark.SeveralKey(math.MaxInt)...)
	}
	return key
}

func (f *fatFigure) caption(absent int) string {
	s := []string{
		"At each fat percent the other numbers are set as well as these trials know how.",
		f.bandWords(),
		"Beyond the band's ends there are too few trials to say. The words along the top name what most often goes wrong first with the best mix there.",
		mark.Tallied(f.r, mark.FatesOf(f.shown)),
	}
	switch {
	case f.several:
		s = append(s, mark.SeveralWords)
	case len(f.shown) > 1:
		s = append(s, mark.ApartWords)
	}
	return strings.Join(append(s, wording.LeftOut(absent)...), " ")
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
			goal = "No fat percent reaches " + wording.WantedInTen(f.wanted) + "; "
		}
		if fat, chance, ok := wording.Surest(r, wording.FatPercent); ok { // which lies near what worked, rarely at the very top
			return wording.Capital(fmt.Sprintf("%sthe start, %s %% fat: %s", goal, wording.Number(fat, 0), wording.Work(wording.ChanceAgainst(chance, f.wanted)))) + wording.Unproven(r)
		}
		return wording.Capital(fmt.Sprintf("%sthe best, %s %% fat: %s", goal, wording.Number(at.FatPercent, 0), wording.Work(wording.ChanceAgainst(at.Chance.Mean, f.wanted)))) + wording.Unproven(r)
	}
	end := best
	for end+1 < len(f.steps) && f.steps[end+1].Workable {
		end++
	}
	rich, by := f.steps[end].FatPercent, result.Outcome("")
	if end+1 < len(f.steps) {
		by = f.steps[end+1].LimitedBy
	}
	if r.FatEnd != nil {
		rich = r.FatEnd.FatPercent
		if r.FatEnd.FailsFirstBy != "" {
			by = r.FatEnd.FailsFirstBy
		}
	}
	switch but := wording.Unproven(r); {
	case but != "":
		return fmt.Sprintf("Up to about %s %% fat the best mix may work %s%s", wording.Number(rich, 0), wording.WantedTimes(f.wanted), but)
	case end == len(f.steps)-1:
		return fmt.Sprintf("Even at %s %% fat, the most tried, the best mix works at least %s", wording.Number(f.steps[end].FatPercent, 0), wording.WantedTimes(f.wanted))
	}
	title := fmt.Sprintf("Fat can go to about %s %% and still work %s", wording.Number(rich, 0), wording.WantedTimes(f.wanted))
	if w := wording.LimitWord(r, by); w != "" {
		title += "; a richer foam most often " + w + " first"
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

func (f fatFigure) wantedWords() string { return "wanted: " + wording.WantedInTen(f.wanted) }

func (f fatFigure) paint(c draw.Canvas, n *drawing.Names) {
	below := trialShare
	if f.unknown {
		below *= 2
	}
	p := drawing.NewPanel(c, f.x, drawing.Range{Hi: 1}, wording.AxisLabel(nil, wording.FatPercent), "works, times in 10")
	up := drawing.Scale{Below: below, Above: laneShare + trialShare}
	p.Y.Scale = up
	// The strips are named beside the axis, at the values that would lie there.
	at := func(share float64) float64 { return (share - up.Below) / (1 - up.Below - up.Above) }
	ticks := append(drawing.TimesInTen(),
		plot.Tick{Value: at(1 - laneShare/2), Label: "fails by"},
		plot.Tick{Value: at(1 - laneShare - trialShare/2), Label: "worked"},
		plot.Tick{Value: at(below - trialShare/2), Label: "failed"})
	if f.unknown {
		ticks = append(ticks, plot.Tick{Value: at(trialShare / 2), Label: "unclear"})
	}
	p.Y.Tick.Marker = ticks
	p.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.chances(c, n, x, y) }))
	p.Draw(c)
}

func (f fatFigure) chances(c draw.Canvas, n *drawing.Names, x, y func(float64) vg.Length) {
	var band, mean []vg.Point
	for _, s := range f.steps {
		mean = append(mean, vg.Point{X: x(s.FatPercent), Y: y(s.Chance.Mean)})
		band = append(band, vg.Point{X: x(s.FatPercent), Y: y(s.Chance.High)})
	}
	for i := len(f.steps) - 1; i >= 0; i-- {
		band = append(band, vg.Point{X: x(f.steps[i].FatPercent), Y: y(f.steps[i].Chance.Low)})
	}
	c.FillPolygon(drawing.Colour(drawing.Uncertain), band)
	for _, v := range []float64{0, 1} {
		c.StrokeLine2(drawing.Line(drawing.Faint, drawing.ThinWidth), c.Min.X, y(v), c.Max.X, y(v))
	}

	room := drawing.Placer{Frame: vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: y(0)}, Max: vg.Point{X: c.Max.X, Y: y(1)}}}
	room.Lines = append(room.Lines, mean)
	if f.wanted > 0 {
		room.Lines = append(room.Lines, []vg.Point{{X: c.Min.X, Y: y(f.wanted)}, {X: c.Max.X, Y: y(f.wanted)}})
		c.StrokeLine2(drawing.Line(drawing.Ink, 1.1, 5, 3), c.Min.X, y(f.wanted), c.Max.X, y(f.wanted))
	}
	c.StrokeLines(drawing.Line(drawing.Accent, drawing.LineWidth+0.6), mean)
	if f.wanted > 0 {
		n.Beside(c, &room, drawing.TextStyle(drawing.LabelSize, true, drawing.Ink), f.wantedWords(), drawing.Along(c, y(f.wanted)))
	}
	marks := f.trialStrips(c, x, y)
	for _, strip := range []vg.Rectangle{
		{Min: vg.Point{X: c.Min.X, Y: y(1)}, Max: vg.Point{X: c.Max.X, Y: c.Y(1 - laneShare)}},
		{Min: c.Min, Max: vg.Point{X: c.Max.X, Y: y(0)}},
	} {
		beside := drawing.Placer{Frame: strip}
		mark.KeepOff(&beside, marks)
		mark.NameFates(c, n, &beside, func(k mark.Fate) string { return mark.FateWord(f.r, k) }, marks)
	}
	f.limits(c, x)
}

// trialStrips draws the trials above and below the chances.
func (f fatFigure) trialStrips(c draw.Canvas, x, y func(float64) vg.Length) []mark.Mark {
	h := (c.Max.Y - c.Min.Y) * trialShare
	middle := map[bool]vg.Length{true: y(1) + h/2, false: y(0) - h/2}
	var marks []mark.Mark
	for _, s := range f.shown {
		at := vg.Point{X: x(s.X), Y: middle[s.Fate == mark.Worked]}
		if s.Fate == mark.Unknown {
			at.Y -= h
		}
		marks = append(marks, mark.Mark{At: at, Fate: s.Fate})
	}
	var strips []vg.Rectangle
	for _, up := range []vg.Length{y(1), y(0) - h, y(0) - 2*h} {
		strips = append(strips, vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: up}, Max: vg.Point{X: c.Max.X, Y: up + h}})
	}
	if f.several {
		marks = mark.Gather(marks, strips...)
	} else {
		var moved []mark.Mark
		for _, strip := range strips {
			var within []mark.Mark
			for _, m := range marks {
				if drawing.Inside(strip, m.At, 0) {
					within = append(within, m)
				}
			}
			moved = append(moved, mark.Apart(within, strip)...)
		}
		marks = moved
	}
	mark.Draw(c, marks)
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
			c.StrokeLine2(drawing.Line(drawing.Quiet, drawing.ThinWidth), from, lane.Min.Y, from, lane.Max.Y)
		}
		if j+1 < len(f.steps) {
			to = (to + x(f.steps[j+1].FatPercent)) / 2
		}
		sty := drawing.TextStyle(drawing.TickSize, false, drawing.Ink)
		lines := drawing.Wrap(sty, wording.LimitWord(f.r, f.steps[i].LimitedBy), to-from-4)
		fits := len(lines) <= 2
		for _, l := range lines {
			fits = fits && drawing.Size(sty, l).X+4 <= to-from
		}
		for k, l := range lines {
			if dim := drawing.Size(sty, l); fits {
				drawing.Write(c, sty, vg.Point{X: (from + to - dim.X) / 2, Y: middle - dim.Y/2 + vg.Length(len(lines)-1-2*k)*dim.Y*0.58}, l)
			}
		}
		i = j + 1
	}
}
