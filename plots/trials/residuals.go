package trials

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
	residualHeight = 130
	mostGroups     = 12 // days or cooks side by side; a page has no room for more
)

// residualsFigure is each result over what its mix makes one expect, in the
// order of the log and by day and cook, one panel above the other.
type residualsFigure struct {
	trials []result.Residual
	panels []residualPanel
	y      drawing.Range
	dots   vg.Length
	// several says that a mark may be several trials.
	several bool
}

// residualPanel is one way to lay the trials out; without groups it is the order.
type residualPanel struct {
	label  string
	groups []string
	of     func(result.Residual) string
	levels map[string]result.Band
}

// Residuals is each hold, or what drained, over what its mix makes one expect.
func Residuals(r *result.Results) (drawing.Figure, bool) {
	if f, ok := residualsOf(r, string(result.HoldMinutes), "hold"); ok {
		return f, true
	}
	return residualsOf(r, string(result.DrainedPercent), "what drains")
}

func residualsOf(r *result.Results, of, name string) (drawing.Figure, bool) {
	f := residualsFigure{y: drawing.NewRange(true)}
	for _, t := range r.Residuals {
		if t.Result == of && t.Ratio != nil {
			if _, _, _, ok := mark.HoldSeen(t.Ratio); ok {
				f.trials = append(f.trials, t)
			}
		}
	}
	if len(f.trials) < 3 {
		return drawing.Figure{}, false
	}
	f.several = len(f.trials) > mark.Most/3
	var kinds [4]int
	for _, t := range f.trials {
		kind, _, _, _ := mark.HoldSeen(t.Ratio)
		kinds[kind]++
		mark.TakeHold(&f.y, t.Ratio)
	}
	f.y.Take(1)
	f.panels = []residualPanel{{label: "order of the trials"}}
	banded := false
	for _, p := range []residualPanel{
		{label: "day", of: func(t result.Residual) string { return t.Day }},
		{label: "cook", of: func(t result.Residual) string { return t.Cook }},
	} {
		p.groups, p.levels = groupsOf(f.trials, p.of), levelsOf(r, of, p.label)
		if n := len(p.groups); n < 2 || n > mostGroups || 2*n > len(f.trials) {
			continue
		}
		for _, b := range p.levels {
			f.y.Take(b.Mid)
			banded = true
		}
		f.panels = append(f.panels, p)
	}
	// One wild trial would flatten the rest.
	if f.y.Hi/f.y.Lo > 1e3 {
		f.y.Lo, f.y.Hi = max(f.y.Lo, 1.0/30), min(f.y.Hi, 30)
	}
	f.y = f.y.Padded(2 * drawing.HoldAir) // a low panel, and arrows as long as ever
	f.dots = mark.DotsOf(len(f.trials) * len(f.panels))
	caption := []string{"Each trial's " + name + " over what the judged fit gives for its mix: 2 is twice as much, 0.5 half."}
	if banded {
		caption = append(caption, "Levels are from a fit that has the day or the cook beside the mix; each lies within its band "+wording.BandTimes+", and a band that ends at the edge goes on beyond it.")
	}
	if f.several {
		caption = append(caption, mark.SeveralWords)
	}
	return drawing.Figure{
		Name: "residuals", Title: residualFinding(r, of, name), Subject: wording.Capital(name) + " beside what each mix makes one expect", Caption: strings.Join(caption, " "),
		Alt: fmt.Sprintf("%s of %s over what each mix makes one expect, by %s.", wording.Plural(len(f.panels), "panel", "panels"), name, wording.List(f.labels())),
		Key: f.key(kinds, banded), Several: f.several, Panel: vg.Length(residualHeight * len(f.panels)), Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

func (f residualsFigure) key(kinds [4]int, banded bool) []drawing.Entry {
	key := []drawing.Entry{{Sign: drawing.KeyLine(drawing.Quiet, 1.1, 5, 3), Words: expectedWords}}
	if banded {
		key = append(key, drawing.Entry{Sign: drawing.KeyBanded, Words: "level of a day or cook, and its band"})
	}
	key = append(key, mark.HoldKey(kinds, true, 0)...)
	if f.several {
		key = append(key, mark.SeveralKey(math.MaxInt)...)
	}
	return key
}

// levelsOf are the levels of the days or cooks, where they can be told.
func levelsOf(r *result.Results, of, by string) map[string]result.Band {
	levels := map[string]result.Band{}
	for _, e := range r.GroupEffects {
		if e.Result != of || e.By != by || len(e.NotToldFrom) > 0 {
			continue
		}
		for _, l := range e.Levels {
			if b := l.Factor; b != nil && wording.Finite(b.Low) && wording.Finite(b.High) && wording.Finite(b.Mid) && b.Low > drawing.LeastOnLog {
				levels[l.Name] = *b
			}
		}
	}
	return levels
}

func groupsOf(trials []result.Residual, of func(result.Residual) string) (names []string) {
	seen := map[string]bool{}
	for _, t := range trials {
		if n := of(t); n != "" && !seen[n] {
			seen[n] = true
			names = append(names, n)
		}
	}
	return names
}

func (f residualsFigure) labels() (out []string) {
	for _, p := range f.panels {
		out = append(out, p.label)
	}
	return out
}

// residualFinding says whether days, cooks or the order show, of those that could
// be compared.
func residualFinding(r *result.Results, of, name string) string {
	var shown, between []string
	drift, hidden, hint := false, "", ""
	for _, e := range r.GroupEffects {
		if e.Result != of || e.By != "day" && e.By != "cook" && e.By != "order" {
			continue
		}
		if len(e.NotToldFrom) > 0 {
			hidden = e.Sentence
		}
		is := wording.Compared(e)
		if is == result.NotTested {
			continue
		}
		words := "differs from one " + e.By + " to another"
		if e.By == "order" {
			words, drift = "drifts along the log", true
			if e.OrderBy == result.ByDate {
				words = "drifts from the first date to the last"
			}
		} else {
			between = append(between, e.By+"s")
		}
		switch is {
		case result.Shown:
			shown = append(shown, words)
		case result.Suggested:
			hint = "; one is suggested"
		}
	}
	switch {
	case len(shown) > 0:
		return "Shown: " + name + " " + wording.List(shown)
	case len(between) > 0 && drift:
		return "No difference between " + strings.Join(between, " or ") + ", and no drift, is shown in " + name + hint
	case len(between) > 0:
		return "No difference between " + strings.Join(between, " or ") + " is shown in " + name + hint
	case drift:
		return "No drift from first to last is shown in " + name + hint
	case hidden != "":
		return wording.Capital(hidden)
	}
	return wording.Capital(name) + " beside what each mix makes one expect"
}

const expectedWords = "as its mix makes one expect"

func (f residualsFigure) paint(c draw.Canvas, n *drawing.Names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(len(f.panels))
	for i, p := range f.panels {
		x := drawing.NewRange(false)
		if p.of == nil {
			for _, t := range f.trials {
				x.Take(float64(t.Order))
			}
			x = x.Padded(drawing.Air)
			x.Lo, x.Whole = math.Max(x.Lo, 0.5), true
		} else {
			x = drawing.Range{Lo: -0.6, Hi: float64(len(p.groups)) - 0.4}
		}
		tile := c
		tile.Max.Y = c.Max.Y - vg.Length(i)*h
		tile.Min.Y = tile.Max.Y - h + 6
		panel := drawing.NewPanel(tile, x, f.y, p.label, "times the usual")
		if p.of != nil {
			room := (tile.Max.X-tile.Min.X-50)/vg.Length(len(p.groups)) - 4
			var ticks plot.ConstantTicks
			for k, name := range p.groups {
				ticks = append(ticks, plot.Tick{Value: float64(k), Label: drawing.Fit(drawing.TextStyle(drawing.TickSize, false, drawing.Ink), wording.Cut(name), room)})
			}
			panel.X.Tick.Marker = ticks
		}
		panel.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.spread(c, n, p, x, y) }))
		panel.Draw(tile)
	}
}

// spread draws one panel: the levels behind, then the trials of each side by side.
func (f residualsFigure) spread(c draw.Canvas, n *drawing.Names, p residualPanel, x, y func(float64) vg.Length) {
	level := func(v float64) vg.Length { return y(min(max(v, f.y.Lo), f.y.Hi)) }
	place := map[string]int{}
	for k, name := range p.groups {
		place[name] = k
		if b, ok := p.levels[name]; ok {
			left, right := x(float64(k)-0.32), x(float64(k)+0.32)
			c.FillPolygon(drawing.Colour(drawing.Uncertain), []vg.Point{{X: left, Y: level(b.Low)}, {X: right, Y: level(b.Low)}, {X: right, Y: level(b.High)}, {X: left, Y: level(b.High)}})
			c.StrokeLine2(drawing.Line(drawing.Accent, drawing.LineWidth), left, level(b.Mid), right, level(b.Mid))
		}
	}
	c.StrokeLine2(drawing.Line(drawing.Quiet, 1.1, 5, 3), c.Min.X, level(1), c.Max.X, level(1))
	each, drawn := map[string]int{}, map[string]int{}
	if p.of != nil {
		for _, t := range f.trials {
			each[p.of(t)]++
		}
	}
	var marks mark.Holds
	for _, t := range f.trials {
		at := float64(t.Order)
		if p.of != nil {
			name := p.of(t)
			k, known := place[name]
			if !known {
				continue
			}
			drawn[name]++
			at = float64(k) + 0.5*((float64(drawn[name])-0.5)/float64(each[name])-0.5)
		}
		kind, low, high, _ := mark.HoldSeen(t.Ratio)
		marks.Add(kind, x(at), level(low), level(high))
	}
	if f.several {
		marks = marks.Gathered(c.Rectangle)
	}
	marks.Draw(c, drawing.Ink)
	marks.Dots(c, f.dots)
	if p.of == nil { // the others have their levels in the way
		expected := []vg.Point{{X: c.Min.X, Y: level(1)}, {X: c.Max.X, Y: level(1)}}
		room := drawing.Placer{Frame: c.Rectangle, Avoid: marks.Places(), Lines: append(marks.Stems(), expected)}
		n.Beside(c, &room, drawing.TextStyle(drawing.TickSize, false, drawing.Ink), expectedWords, drawing.Along(c, level(1)))
		marks.Name(c, n, &room)
	}
}
