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

const (
	effectHeight = 156
	mostEffects  = 6 // panels; a page has no room for more
)

// effectsFigure is how hold follows each variable, one panel above the other.
type effectsFigure struct {
	r       *result.Results
	panels  []result.Effect
	trials  []*result.Trial
	y       drawing.Range
	dots    vg.Length
	perhaps bool // some part is untested
	several bool // a mark may be several trials
}

// Effects is how hold follows each variable.
func Effects(r *result.Results) (drawing.Figure, bool) {
	f := effectsFigure{r: r, y: drawing.NewRange(true)}
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
		return drawing.Figure{}, false
	}
	for _, e := range f.panels {
		for i, b := range e.Hold {
			f.perhaps = f.perhaps || !e.Tested[i]
			if e.Tested[i] {
				f.y.Take(b.Mid)
				f.y.Take(b.Low)
				f.y.Take(b.High)
			}
		}
	}
	var kinds [4]int
	for _, t := range mark.Used(r) {
		if kind, _, _, ok := mark.HoldSeen(t.HoldMinutes); ok {
			f.trials = append(f.trials, t)
			mark.TakeHold(&f.y, t.HoldMinutes)
			kinds[kind]++
		}
	}
	f.y.Take(r.Targets.HoldMinutes.Value)
	// A band that runs over several powers of ten would flatten everything else.
	if !f.y.Empty() && f.y.Hi/f.y.Lo > 1e4 {
		f.y.Lo, f.y.Hi = math.Max(f.y.Lo, 0.1), math.Min(f.y.Hi, 1e3)
	}
	f.y = f.y.Padded(drawing.HoldAir)
	f.dots = mark.DotsOf(len(f.trials) * len(f.panels))
	f.several = len(f.trials) > mark.Most/len(f.panels)
	return drawing.Figure{
		Name: "effects", Title: f.finding(), Subject: "Usual hold over " + wording.List(f.names(nil)), Caption: f.caption(left),
		Alt: fmt.Sprintf("%s of hold in minutes against %s.", wording.Plural(len(f.panels), "panel", "panels"), wording.List(f.names(nil))),
		Key: f.makeKey(kinds), Several: f.several, Panel: vg.Length(effectHeight * len(f.panels)), Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

func (f *effectsFigure) caption(left int) string {
	s := []string{"Each panel changes one thing and holds the others" + f.held() + ". The usual hold lies within the band " + wording.BandTimes +
		". The dots are the trials as made, with all their other differences."}
	if f.perhaps {
		s = append(s, "Pale and dashed: not tried.")
	}
	if left > 0 {
		s = append(s, wording.Plural(left, "more variable is", "more variables are")+" in the tables only.")
	}
	switch {
	case f.several:
		s = append(s, mark.SeveralWords)
	case len(f.trials) > 1:
		s = append(s, mark.ApartWords)
	}
	return strings.Join(s, " ")
}

func goodEffect(e result.Effect) bool {
	if !drawing.Rising(e.X) || len(e.Hold) < len(e.X) || len(e.Tested) < len(e.X) {
		return false
	}
	for i := range e.X {
		b := e.Hold[i]
		if !(wording.Finite(b.Low) && wording.Finite(b.Mid) && wording.Finite(b.High)) || b.Mid <= 0 {
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
			out = append(out, wording.ShortName(f.r, e.Variable))
		}
	}
	return out
}

// finding says what lengthens and what shortens the hold.
func (f *effectsFigure) finding() string {
	say := func(up bool, words string) (out []string) {
		for _, e := range f.panels {
			if e.Shape == result.Peaks || e.Verdict != result.Clear || !(e.Change.Mid > 0) || !wording.Finite(e.Change.Mid) || (e.Change.Mid > 1) != up {
				continue
			}
			is := drawing.NewRange(false)
			for i, x := range e.X {
				if e.Tested[i] {
					is.Take(x)
				}
			}
			if !is.Empty() {
				out = append(out, fmt.Sprintf("%s %s: %s as long from %s", words, wording.More(f.r, e.Variable),
					times(e.Change.Mid), wording.Span(f.r, e.Variable, is.Lo, is.Hi)))
			}
		}
		return out
	}
	longer, less := say(true, "with"), say(false, "with")
	if len(longer) > 0 {
		longer[0] = "the foam holds longer " + longer[0]
	}
	if len(less) > 0 {
		less[0] = "the foam holds less long " + less[0]
	}
	if parts := append(longer, less...); len(parts) > 0 {
		return wording.Capital(strings.Join(parts[:min(2, len(parts))], "; "))
	}
	for _, e := range f.panels {
		if e.Shape == result.Peaks && e.Verdict == result.Clear && e.Peak != nil && *e.Peak < len(e.X) {
			return fmt.Sprintf("The foam holds longest near %s", wording.Amount(f.r, e.Variable, e.X[*e.Peak]))
		}
	}
	likely := func(e result.Effect) bool { return e.Verdict == result.Likely }
	if names := f.names(likely); len(names) > 0 {
		return "Suggested, not shown: hold follows " + wording.List(names)
	}
	return "These trials do not show what lengthens the hold"
}

// changeWords says what a panel shows, in its corner.
func changeWords(e result.Effect) string {
	if e.Verdict == result.CannotTell || !(e.Change.Mid > 0) || !wording.Finite(e.Change.Mid) {
		return "not shown to matter"
	}
	lead := ""
	if e.Verdict == result.Likely {
		lead = string(result.Suggested) + ": "
	}
	if e.Shape == result.Peaks && e.Peak != nil && *e.Peak < len(e.X) {
		return lead + "longest near " + wording.Number(e.X[*e.Peak], 1)
	}
	return lead + times(e.Change.Mid) + " as long from left to right"
}

// times words a factor.
func times(v float64) string {
	switch {
	case v >= 9.95:
		return wording.Number(v, 0) + " times"
	case v >= 0.95:
		return wording.Number(v, 1) + " times"
	case v >= 0.005:
		return wording.Number(v, 2) + " times"
	}
	return "under 0.01 times"
}

// held words what the others are held at. Each panel holds all but its own, at
// one mix; two panels tell the whole of it.
func (f *effectsFigure) held() string {
	var words []string
	for _, v := range f.r.Variables {
		if x, ok := wording.MixValue(f.panels[0].Fixed, v.Name); ok {
			words = append(words, wording.Amount(f.r, v.Name, x))
		} else if len(f.panels) > 1 {
			if x, ok := wording.MixValue(f.panels[1].Fixed, v.Name); ok {
				words = append(words, wording.Amount(f.r, v.Name, x))
			}
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " at " + wording.List(words)
}

func (f *effectsFigure) makeKey(kinds [4]int) []drawing.Entry {
	key := []drawing.Entry{{Sign: drawing.KeyBanded, Words: "usual hold, and its band"}}
	key = append(key, mark.HoldKey(kinds, true, f.r.Targets.HoldMinutes.Value)...)
	if f.several {
		key = append(key, mark.SeveralKey(math.MaxInt)...)
	}
	return key
}

func (f effectsFigure) paint(c draw.Canvas, n *drawing.Names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(len(f.panels))
	for i, e := range f.panels {
		v, _ := wording.Variable(f.r, e.Variable)
		x := drawing.NewRange(v.Log && e.X[0] > 0)
		x.Take(e.X[0])
		x.Take(e.X[len(e.X)-1])
		x.Whole = !x.Log
		for _, t := range f.trials {
			if tv, ok := wording.TrialValue(t, e.Variable); ok {
				x.Take(tv)
				x.Whole = x.Whole && tv == math.Trunc(tv)
			}
		}
		x = x.Padded(drawing.Air)
		tile := c
		tile.Max.Y = c.Max.Y - vg.Length(i)*h
		tile.Min.Y = tile.Max.Y - h + 6
		sty := drawing.TextStyle(drawing.TickSize, true, drawing.Ink)
		head := drawing.Fit(sty, wording.ShortName(f.r, e.Variable)+": "+changeWords(e), tile.Max.X-tile.Min.X)
		tile.Max.Y -= drawing.Size(sty, head).Y
		drawing.Write(tile, sty, vg.Point{X: tile.Min.X, Y: tile.Max.Y}, head)
		tile.Max.Y -= 6 // the topmost tick's label needs half its height
		p := drawing.NewPanel(tile, x, f.y, wording.AxisLabel(f.r, e.Variable), "hold, minutes")
		p.Add(effectPanel(f, n, e, x))
		p.Draw(tile)
	}
}

// effectPanel draws one variable's panel.
func effectPanel(f effectsFigure, n *drawing.Names, e result.Effect, is drawing.Range) plot.Plotter {
	return drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		level := func(v float64) vg.Length { return y(math.Min(math.Max(v, f.y.Lo), f.y.Hi)) }
		room := drawing.Placer{Frame: c.Rectangle}
		for i := 0; i+1 < len(e.X); i++ {
			colour := drawing.Pale
			if e.Tested[i] && e.Tested[i+1] {
				colour = drawing.Uncertain
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
			c.FillPolygon(drawing.Colour(colour), append(upper, lower...))
			sty := drawing.Line(drawing.Accent, drawing.LineWidth)
			if colour == drawing.Pale {
				sty = drawing.Line(drawing.Accent, 1, 3, 3)
			}
			c.StrokeLines(sty, mid)
			room.Lines = append(room.Lines, mid)
			i = j
		}
		target := f.r.Targets.HoldMinutes.Value
		wanted := wording.Finite(target) && target > 0
		if wanted {
			across := []vg.Point{{X: c.Min.X, Y: level(target)}, {X: c.Max.X, Y: level(target)}}
			c.StrokeLines(drawing.Line(drawing.Ink, 1.1, 5, 3), across)
			room.Lines = append(room.Lines, across)
		}
		holds := f.holds(c, e.Variable, is, x, level, &room)
		if wanted {
			n.Beside(c, &room, drawing.TextStyle(drawing.TickSize, true, drawing.Ink), wording.WantedHold(target), drawing.Along(c, level(target)))
		}
		holds.Name(c, n, &room)
	})
}

// holds draws the observed holds of the trials that have the panel's variable.
func (f effectsFigure) holds(c draw.Canvas, name string, is drawing.Range, x, level func(float64) vg.Length, room *drawing.Placer) mark.Holds {
	var holds mark.Holds
	for _, t := range f.trials {
		v, ok := wording.TrialValue(t, name)
		kind, low, high, _ := mark.HoldSeen(t.HoldMinutes)
		if !ok || (is.Log && v <= 0) {
			continue
		}
		holds.Add(kind, x(v), level(low), level(high))
	}
	if f.several {
		holds = holds.Gathered(c.Rectangle)
	} else {
		holds = holds.Apart(c.Rectangle)
	}
	room.Avoid, room.Lines = append(room.Avoid, holds.Places()...), append(room.Lines, holds.Stems()...)
	holds.Draw(c, drawing.Ink)
	holds.Dots(c, f.dots)
	return holds
}
