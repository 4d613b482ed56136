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
	residualHeight = 130
	mostGroups     = 12 // days or cooks side by side; a page has no room for more
)

// residualsFigure is each result over what its mix makes one expect, in the
// order of the log and by day and cook, one panel above the other.
type residualsFigure struct {
	trials []result.Residual
	panels []residualPanel
	y      axisRange
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

func residuals(r *result.Results) (Figure, bool) {
	if f, ok := residualsOf(r, string(result.HoldMinutes), "hold"); ok {
		return f, true
	}
	return residualsOf(r, string(result.DrainedPercent), "what drains")
}

func residualsOf(r *result.Results, of, name string) (Figure, bool) {
	f := residualsFigure{y: newRange(true)}
	for _, t := range r.Residuals {
		if t.Result == of && t.Ratio != nil {
			if _, _, _, ok := holdSeen(t.Ratio); ok {
				f.trials = append(f.trials, t)
			}
		}
	}
	if len(f.trials) < 3 {
		return Figure{}, false
	}
	f.several = len(f.trials) > mostMarks/3
	var kinds [4]int
	for _, t := range f.trials {
		kind, _, _, _ := holdSeen(t.Ratio)
		kinds[kind]++
		takeHold(&f.y, t.Ratio)
	}
	f.y.take(1)
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
			f.y.take(b.Mid)
			banded = true
		}
		f.panels = append(f.panels, p)
	}
	// One wild trial would flatten the rest.
	if f.y.hi/f.y.lo > 1e3 {
		f.y.lo, f.y.hi = max(f.y.lo, 1.0/30), min(f.y.hi, 30)
	}
	f.y = f.y.padded(2 * holdAir) // a low panel, and arrows as long as ever
	f.dots = dotRadius
	if len(f.trials)*len(f.panels) > crowd*2 {
		f.dots = crowdDot
	}
	caption := []string{"Each trial's " + name + " over what the judged fit gives for its mix: 2 is twice as much, 0.5 half."}
	if banded {
		caption = append(caption, "Levels are from a fit that has the day or the cook beside the mix; each lies within its band "+bandTimes+", and a band that ends at the edge goes on beyond it.")
	}
	if f.several {
		caption = append(caption, severalWords)
	}
	return Figure{
		Name: "residuals", Title: residualFinding(r, of, name), plain: Capital(name) + " beside what each mix makes one expect", Caption: strings.Join(caption, " "),
		Alt: fmt.Sprintf("%s of %s over what each mix makes one expect, by %s.", plural(len(f.panels), "panel", "panels"), name, list(f.labels())),
		key: f.key(kinds, banded), several: f.several, panel: vg.Length(residualHeight * len(f.panels)), paint: f.paint,
	}.sized(figureWidth), true
}

func (f residualsFigure) key(kinds [4]int, banded bool) []keyEntry {
	key := []keyEntry{{keyLine(Quiet, 1.1, 5, 3), expectedWords, 0}}
	if banded {
		key = append(key, keyEntry{keyBanded, "level of a day or cook, and its band", 0})
	}
	key = append(key, holdKey(kinds, true, 0)...)
	if f.several {
		key = append(key, severalKey(math.MaxInt)...)
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
			if b := l.Factor; b != nil && finite(b.Low) && finite(b.High) && finite(b.Mid) && b.Low > leastOnLog {
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
	found := map[result.Verdict][]string{}
	var between []string
	drift, hidden := false, ""
	for _, e := range r.GroupEffects {
		if e.Result != of || e.By != "day" && e.By != "cook" && e.By != "order" {
			continue
		}
		if len(e.NotToldFrom) > 0 {
			hidden = e.Sentence
		}
		if len(e.NotToldFrom) > 0 || e.Failure != "" {
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
		found[e.Verdict] = append(found[e.Verdict], words)
	}
	switch {
	case len(found[result.Clear]) > 0:
		return Capital(name + " clearly " + list(found[result.Clear]))
	case len(found[result.Likely]) > 0:
		return Capital(name + " likely " + list(found[result.Likely]) + "; these trials do not make it certain")
	case len(between) > 0 && drift:
		return "No difference between " + strings.Join(between, " or ") + ", and no drift, shows in " + name
	case len(between) > 0:
		return "No difference between " + strings.Join(between, " or ") + " shows in " + name
	case drift:
		return "No drift from first to last shows in " + name
	case hidden != "":
		return Capital(hidden)
	}
	return Capital(name) + " beside what each mix makes one expect"
}

const expectedWords = "as its mix makes one expect"

func (f residualsFigure) paint(c draw.Canvas, n *names) {
	h := (c.Max.Y - c.Min.Y) / vg.Length(len(f.panels))
	for i, p := range f.panels {
		x := newRange(false)
		if p.of == nil {
			for _, t := range f.trials {
				x.take(float64(t.Order))
			}
			x = x.padded(air)
			x.lo, x.whole = math.Max(x.lo, 0.5), true
		} else {
			x = axisRange{lo: -0.6, hi: float64(len(p.groups)) - 0.4}
		}
		tile := c
		tile.Max.Y = c.Max.Y - vg.Length(i)*h
		tile.Min.Y = tile.Max.Y - h + 6
		panel := newPanel(tile, x, f.y, p.label, "times the usual")
		if p.of != nil {
			room := (tile.Max.X-tile.Min.X-50)/vg.Length(len(p.groups)) - 4
			var ticks plot.ConstantTicks
			for k, name := range p.groups {
				ticks = append(ticks, plot.Tick{Value: float64(k), Label: fit(textStyle(tickSize, false, Ink), cut(name), room)})
			}
			panel.X.Tick.Marker = ticks
		}
		panel.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) { f.spread(c, n, p, x, y) }))
		panel.Draw(tile)
	}
}

// spread draws one panel: the levels behind, then the trials of each side by side.
func (f residualsFigure) spread(c draw.Canvas, n *names, p residualPanel, x, y func(float64) vg.Length) {
	level := func(v float64) vg.Length { return y(min(max(v, f.y.lo), f.y.hi)) }
	place := map[string]int{}
	for k, name := range p.groups {
		place[name] = k
		if b, ok := p.levels[name]; ok {
			left, right := x(float64(k)-0.32), x(float64(k)+0.32)
			c.FillPolygon(hex(Uncertain), []vg.Point{{X: left, Y: level(b.Low)}, {X: right, Y: level(b.Low)}, {X: right, Y: level(b.High)}, {X: left, Y: level(b.High)}})
			c.StrokeLine2(line(Accent, lineWidth), left, level(b.Mid), right, level(b.Mid))
		}
	}
	c.StrokeLine2(line(Quiet, 1.1, 5, 3), c.Min.X, level(1), c.Max.X, level(1))
	each, drawn := map[string]int{}, map[string]int{}
	if p.of != nil {
		for _, t := range f.trials {
			each[p.of(t)]++
		}
	}
	var marks holdMarks
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
		kind, low, high, _ := holdSeen(t.Ratio)
		marks.add(kind, x(at), level(low), level(high))
	}
	if f.several {
		marks = marks.gathered(c.Rectangle)
	}
	marks.draw(c, Ink)
	marks.dots(c, f.dots)
	if p.of == nil { // the others have their levels in the way
		expected := []vg.Point{{X: c.Min.X, Y: level(1)}, {X: c.Max.X, Y: level(1)}}
		room := placer{frame: c.Rectangle, avoid: marks.places(), lines: append(marks.stems(), expected)}
		n.beside(c, &room, textStyle(tickSize, false, Ink), expectedWords, along(c, level(1)))
		marks.name(c, n, &room)
	}
}
