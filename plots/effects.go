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

const (
	effectHeight = 156
	mostEffects  = 6 // panels; a page has no room for more
)

// effectsFigure is how hold follows each variable, one panel above the other.
type effectsFigure struct {
	r       *result.Results
	panels  []result.Effect
	trials  []*result.Trial
	y       axisRange
	dots    vg.Length
	perhaps bool // some part is untested
	several bool // a mark may be several trials
}

func effects(r *result.Results) (Figure, bool) {
	f := effectsFigure{r: r, y: newRange(true)}
	left := 0
	for _, e := range r.Effects {
		switch {
		case !goodEffect(e):
		case len(f.panels) == mostEffects:
			left++
		default:
			f.panels = append(f.panels, e)
		}
	}
	if len(f.panels) == 0 {
		return Figure{}, false
	}
	for _, e := range f.panels {
		for i, b := range e.Hold {
			f.perhaps = f.perhaps || !e.Tested[i]
			if e.Tested[i] {
				f.y.take(b.Mid)
				f.y.take(b.Low)
				f.y.take(b.High)
			}
		}
	}
	var kinds [4]int
	for _, t := range usedTrials(r) {
		if kind, _, _, ok := holdSeen(t.HoldMinutes); ok {
			f.trials = append(f.trials, t)
			takeHold(&f.y, t.HoldMinutes)
			kinds[kind]++
		}
	}
	f.y.take(r.Targets.HoldMinutes.Value)
	// A band that runs over several powers of ten would flatten everything else.
	if !f.y.empty() && f.y.hi/f.y.lo > 1e4 {
		f.y.lo, f.y.hi = math.Max(f.y.lo, 0.1), math.Min(f.y.hi, 1e3)
	}
	f.y = f.y.padded(holdAir)
	f.dots = dotRadius
	if len(f.trials)*len(f.panels) > crowd*2 {
		f.dots = crowdDot
	}
	f.several = len(f.trials) > mostMarks/len(f.panels)
	return Figure{
		Name: "effects", Title: f.finding(), plain: "Usual hold over " + list(f.names(nil)), Caption: f.caption(left),
		Alt: fmt.Sprintf("%s of hold in minutes against %s.", plural(len(f.panels), "panel", "panels"), list(f.names(nil))),
		key: f.makeKey(kinds), several: f.several, panel: vg.Length(effectHeight * len(f.panels)), paint: f.paint,
	}.sized(figureWidth), true
}

func (f *effectsFigure) caption(left int) string {
	s := []string{"Each panel changes one thing and holds the others" + f.held() + ". The usual hold lies within the band " + bandTimes +
		". The dots are the trials as made, with all their other differences."}
	if f.perhaps {
		s = append(s, "Pale and dashed: not tried.")
	}
	if left > 0 {
		s = append(s, plural(left, "more variable is", "more variables are")+" in the tables only.")
	}
	switch {
	case f.several:
		s = append(s, severalWords)
	case len(f.trials) > 1:
		s = append(s, apartWords)
	}
	return strings.Join(s, " ")
}

func goodEffect(e result.Effect) bool {
	if !rising(e.X) || len(e.Hold) < len(e.X) || len(e.Tested) < len(e.X) {
		return false
	}
	for i := range e.X {
		b := e.Hold[i]
		if !(finite(b.Low) && finite(b.Mid) && finite(b.High)) || b.Mid <= 0 {
			return false
		}
	}
	return true
}

// names are the variables of the panels, those with the verdict if one is given.
func (f *effectsFigure) names(keep func(result.Effect) bool) []string {
	var out []string
	for _, e := range f.panels {
		if keep == nil || keep(e) {
			out = append(out, shortName(f.r, e.Variable))
		}
	}
	return out
}

// finding says what lengthens and what shortens the hold.
func (f *effectsFigure) finding() string {
	say := func(up bool, words string) (out []string) {
		for _, e := range f.panels {
			if e.Shape == result.Peaks || e.Verdict != result.Clear || !(e.Change.Mid > 0) || !finite(e.Change.Mid) || (e.Change.Mid > 1) != up {
				continue
			}
			is := newRange(false)
			for i, x := range e.X {
				if e.Tested[i] {
					is.take(x)
				}
			}
			if !is.empty() {
				out = append(out, fmt.Sprintf("%s %s: %s as long from %s", words, more(f.r, e.Variable),
					times(e.Change.Mid), span(f.r, e.Variable, is.lo, is.hi)))
			}
		}
		return out
	}
	if parts := append(say(true, "the foam holds longer with"), say(false, "the foam holds less long with")...); len(parts) > 0 {
		return Capital(strings.Join(parts[:min(2, len(parts))], "; "))
	}
	for _, e := range f.panels {
		if e.Shape == result.Peaks && e.Verdict == result.Clear && e.Peak != nil && *e.Peak < len(e.X) {
			return fmt.Sprintf("The foam holds longest near %s", amount(f.r, e.Variable, e.X[*e.Peak]))
		}
	}
	likely := func(e result.Effect) bool { return e.Verdict == result.Likely }
	if names := f.names(likely); len(names) > 0 {
		return Capital("hold likely follows " + list(names) + "; these trials do not make it certain")
	}
	return "These trials do not show what lengthens the hold"
}

// changeWords says what a panel shows, in its corner.
func changeWords(e result.Effect) string {
	if e.Verdict == result.CannotTell || !(e.Change.Mid > 0) || !finite(e.Change.Mid) {
		return "unclear"
	}
	lead := ""
	if e.Verdict == result.Likely {
		lead = "likely "
	}
	if e.Shape == result.Peaks && e.Peak != nil && *e.Peak < len(e.X) {
		return lead + "longest near " + number(e.X[*e.Peak], 1)
	}
	return lead + times(e.Change.Mid) + " as long from left to right"
}

// times words a factor.
func times(v float64) string {
	switch {
	case v >= 9.95:
		return number(v, 0) + " times"
	case v >= 0.95:
		return number(v, 1) + " times"
	case v >= 0.005:
		return number(v, 2) + " times"
	}
	return "under 0.01 times"
}

// held words what the others are held at. Each panel holds all but its own, at
// one mix; two panels tell the whole of it.
func (f *effectsFigure) held() string {
	var words []string
	for _, v := range f.r.Variables {
		if x, ok := mixValue(f.panels[0].Fixed, v.Name); ok {
			words = append(words, amount(f.r, v.Name, x))
		} else if len(f.panels) > 1 {
			if x, ok := mixValue(f.panels[1].Fixed, v.Name); ok {
				words = append(words, amount(f.r, v.Name, x))
			}
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " at " + list(words)
}

// bandTimes is how often what a band is of lies within it: the analysis gives 90 %
// limits wherever it does not say another level.
const bandTimes = "90 times in 100"

func (f *effectsFigure) makeKey(kinds [4]int) []keyEntry {
	key := []keyEntry{{keyBanded, "usual hold, and its band", 0}}
	key = append(key, holdKey(kinds, true, f.r.Targets.HoldMinutes.Value)...)
	if f.several {
		key = append(key, severalKey(math.MaxInt)...)
	}
	return key
}

func (f effectsFigure) paint(c draw.Canvas, n *names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(len(f.panels))
	for i, e := range f.panels {
		v, _ := variable(f.r, e.Variable)
		x := newRange(v.Log && e.X[0] > 0)
		x.take(e.X[0])
		x.take(e.X[len(e.X)-1])
		x.whole = !x.log
		for _, t := range f.trials {
			if tv, ok := trialValue(t, e.Variable); ok {
				x.take(tv)
				x.whole = x.whole && tv == math.Trunc(tv)
			}
		}
		x = x.padded(air)
		tile := c
		tile.Max.Y = c.Max.Y - vg.Length(i)*h
		tile.Min.Y = tile.Max.Y - h + 6
		sty := textStyle(tickSize, true, Ink)
		head := fit(sty, shortName(f.r, e.Variable)+": "+changeWords(e), tile.Max.X-tile.Min.X)
		tile.Max.Y -= size(sty, head).Y
		write(tile, sty, vg.Point{X: tile.Min.X, Y: tile.Max.Y}, head)
		tile.Max.Y -= 6 // the topmost tick's label needs half its height
		p := newPanel(tile, x, f.y, axisLabel(f.r, e.Variable), "hold, minutes")
		p.Add(effectPanel(f, n, e, x))
		p.Draw(tile)
	}
}

// effectPanel draws one variable's panel.
func effectPanel(f effectsFigure, n *names, e result.Effect, is axisRange) plot.Plotter {
	return paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		level := func(v float64) vg.Length { return y(math.Min(math.Max(v, f.y.lo), f.y.hi)) }
		room := placer{frame: c.Rectangle}
		for i := 0; i+1 < len(e.X); i++ {
			colour := Pale
			if e.Tested[i] && e.Tested[i+1] {
				colour = Uncertain
			}
			// Pieces of one kind are drawn as one polygon.
			j := i
			for j+2 < len(e.X) && (e.Tested[j+1] && e.Tested[j+2]) == (e.Tested[i] && e.Tested[i+1]) {
				j++
			}
			var mid, upper, lower []vg.Point
			for k := i; k <= j+1; k++ {
				mid = append(mid, vg.Point{X: x(e.X[k]), Y: level(e.Hold[k].Mid)})
				upper = append(upper, vg.Point{X: x(e.X[k]), Y: level(e.Hold[k].High)})
				lower = append([]vg.Point{{X: x(e.X[k]), Y: level(e.Hold[k].Low)}}, lower...)
			}
			c.FillPolygon(hex(colour), append(upper, lower...))
			sty := line(Accent, lineWidth)
			if colour == Pale {
				sty = line(Accent, 1, 3, 3)
			}
			c.StrokeLines(sty, mid)
			room.lines = append(room.lines, mid)
			i = j
		}
		target := f.r.Targets.HoldMinutes.Value
		wanted := finite(target) && target > 0
		if wanted {
			across := []vg.Point{{X: c.Min.X, Y: level(target)}, {X: c.Max.X, Y: level(target)}}
			c.StrokeLines(line(Ink, 1.1, 5, 3), across)
			room.lines = append(room.lines, across)
		}
		holds := f.holds(c, e.Variable, is, x, level, &room)
		if wanted {
			n.beside(c, &room, textStyle(tickSize, true, Ink), wantedHold(target), along(c, level(target)))
		}
		holds.name(c, n, &room)
	})
}

// holds draws the observed holds of the trials that have the panel's variable.
func (f effectsFigure) holds(c draw.Canvas, name string, is axisRange, x, level func(float64) vg.Length, room *placer) holdMarks {
	var holds holdMarks
	for _, t := range f.trials {
		v, ok := trialValue(t, name)
		kind, low, high, _ := holdSeen(t.HoldMinutes)
		if !ok || (is.log && v <= 0) {
			continue
		}
		holds.add(kind, x(v), level(low), level(high))
	}
	if f.several {
		holds = holds.gathered(c.Rectangle)
	} else {
		holds = holds.apart(c.Rectangle)
	}
	room.avoid, room.lines = append(room.avoid, holds.places()...), append(room.lines, holds.stems()...)
	holds.draw(c, Ink)
	holds.dots(c, f.dots)
	return holds
}
