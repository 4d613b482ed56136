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
	weeksHeight  = 220
	courseHeight = 150
	mostWeeks    = 60 // ticks of an axis name no more of them
)

// Trends returns the figures of many weeks, in the order of the report.
func Trends(t *result.Trend) (figures []Figure) {
	if t == nil {
		return nil
	}
	if f, ok := weeks(t); ok {
		figures = append(figures, f)
	}
	if f, ok := optima(t); ok {
		figures = append(figures, f)
	}
	for i := range t.Control {
		if f, ok := control(t, &t.Control[i]); ok {
			figures = append(figures, f)
		}
	}
	return figures
}

// banded is a value of one week with its limits.
type banded struct{ mid, low, high float64 }

// weekTicks name the weeks as far as there is room.
func weekTicks(labels []string, width vg.Length) plot.ConstantTicks {
	sty := textStyle(tickSize, false, Ink)
	widest := vg.Length(0)
	for i, l := range labels {
		labels[i] = strings.TrimPrefix(l, "week of ")
		widest = max(widest, min(size(sty, labels[i]).X, 80))
	}
	every := max(1, int(math.Ceil(float64(widest+8)*float64(len(labels))/float64(max(width, 1)))))
	var ticks plot.ConstantTicks
	for i := 0; i < len(labels); i += every {
		ticks = append(ticks, plot.Tick{Value: float64(i), Label: fit(sty, labels[i], 80)})
	}
	return ticks
}

func periodLabels(t *result.Trend) (labels []string) {
	for _, p := range t.Periods {
		labels = append(labels, p.Label)
	}
	return labels
}

// weeklyPanel draws a panel of one value a week.
func weeklyPanel(c draw.Canvas, labels []string, values []*banded, y axisRange, label string, reference *float64) {
	x := axisRange{lo: -0.5, hi: float64(len(values)) - 0.5}
	panel := newPanel(c, x, y, "week", label)
	panel.X.Tick.Marker = weekTicks(labels, c.Max.X-c.Min.X-60)
	panel.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		if reference != nil {
			c.StrokeLine2(line(Quiet, 1.1, 5, 3), c.Min.X, y(*reference), c.Max.X, y(*reference))
		}
		half := 0.3
		if len(values) > mostWeeks {
			half = 0.5
		}
		for i, v := range values {
			if v == nil {
				continue
			}
			left, right := x(float64(i)-half), x(float64(i)+half)
			c.FillPolygon(hex(Uncertain), []vg.Point{{X: left, Y: y(v.low)}, {X: right, Y: y(v.low)}, {X: right, Y: y(v.high)}, {X: left, Y: y(v.high)}})
			c.StrokeLine2(line(Accent, wantedWidth), left, y(v.mid), right, y(v.mid))
		}
	}))
	panel.Draw(c)
}

// weeks is the hold of one mix, week by week.
func weeks(t *result.Trend) (Figure, bool) {
	y := newRange(true)
	values := make([]*banded, len(t.Periods))
	n := 0
	for i, p := range t.Periods {
		if b := p.HoldMinutes; b != nil && finite(b.Low) && finite(b.High) && b.Low > 0 {
			values[i] = &banded{b.Mid, b.Low, b.High}
			y.take(b.Low)
			y.take(b.High)
			n++
		}
	}
	if n < 2 {
		return Figure{}, false
	}
	y = y.padded(air)
	title := "What one mix would have held, week by week"
	key := []keyEntry{{keyBanded, "most likely hold, and where it may well be", 0}}
	labels := periodLabels(t)
	return Figure{Name: "weeks", Title: title,
		Caption: "The hold of " + t.ReferenceFrom + ", as each week would have given it, with 90 % limits. Weeks with few trials are drawn towards the others.",
		Alt:     fmt.Sprintf("Hold in minutes with limits for %d weeks.", n),
		key:     key, plain: title, panel: weeksHeight, paint: func(c draw.Canvas, _ *names) {
			weeklyPanel(c, labels, values, y, "hold, minutes", nil)
		}}.sized(figureWidth), true
}

// optima is where hold peaks over each variable, week by week; only those that peak within
// what was tried.
func optima(t *result.Trend) (Figure, bool) {
	type panel struct {
		label  string
		values []*banded
		y      axisRange
	}
	var panels []panel
	var variables []string
	by := map[string][]result.Optimum{}
	for _, o := range t.Optimum {
		if by[o.Variable] == nil {
			variables = append(variables, o.Variable)
		}
		by[o.Variable] = append(by[o.Variable], o)
	}
	for _, name := range variables {
		p := panel{y: newRange(false)}
		inside := 0.0
		for _, o := range by[name] {
			p.label = strings.TrimSuffix("best "+o.Label+", "+o.Unit, ", ")
			p.values = append(p.values, &banded{o.At, o.Low, o.High})
			p.y.take(o.Low)
			p.y.take(o.High)
			inside += o.Inside
		}
		if inside >= 0.8*float64(len(by[name])) && len(by[name]) > 1 {
			p.y = p.y.padded(air)
			panels = append(panels, p)
		}
	}
	if len(panels) == 0 {
		return Figure{}, false
	}
	title := optimumFinding(t)
	key := []keyEntry{{keyBanded, "where hold peaks, and where that may well be", 0}}
	labels := periodLabels(t)
	return Figure{Name: "optimum", Title: title, Caption: "Where hold peaks over each variable of the mix, with 90 % limits, the others held. Variables that do not peak within what was tried are left out.",
		Alt: fmt.Sprintf("%s of where hold peaks by week.", plural(len(panels), "panel", "panels")), key: key, panel: vg.Length(courseHeight * len(panels)),
		plain: "Where hold peaks, week by week",
		paint: func(c draw.Canvas, _ *names) {
			h := (c.Max.Y - c.Min.Y) / vg.Length(len(panels))
			for i, p := range panels {
				tile := c
				tile.Max.Y = c.Max.Y - vg.Length(i)*h
				tile.Min.Y = tile.Max.Y - h + 6
				weeklyPanel(tile, append([]string(nil), labels...), p.values, p.y, p.label, nil)
			}
		}}.sized(figureWidth), true
}

func optimumFinding(t *result.Trend) string {
	for _, x := range t.Tests {
		if strings.HasPrefix(x.What, "optimum:") && x.Verdict == result.Shown {
			for _, o := range t.Optimum {
				if o.Variable == strings.TrimPrefix(x.What, "optimum:") {
					return "The best " + o.Label + " moves from week to week"
				}
			}
		}
	}
	return "No move of the best mix is shown"
}

// control is a chart of single trials in the order of time.
func control(t *result.Trend, k *result.Control) (Figure, bool) {
	y := newRange(true)
	var kinds [4]int
	for i := range k.Points {
		if kind, _, _, ok := holdSeen(&k.Points[i].Value); ok {
			kinds[kind]++
			takeHold(&y, &k.Points[i].Value)
		}
	}
	if len(k.Points) < 3 || y.empty() {
		return Figure{}, false
	}
	for _, v := range []*float64{k.Low, k.High} {
		if v != nil {
			y.take(*v)
		}
	}
	y = y.padded(holdAir)
	name, unit := "hold", "hold, minutes"
	if k.Outcome == result.DrainedPercent {
		name, unit = "drained", "drained, %"
	}
	if k.Unit == "ratio" {
		unit = name + ", times the usual"
	}
	title := controlFinding(k)
	var key []keyEntry
	if k.Centre != nil {
		key = append(key, keyEntry{keyLine(Accent, lineWidth), "middle", 0}, keyEntry{keyLine(Quiet, 1.1, 5, 3), "limits of single trials", 0})
	}
	several := len(k.Points) > mostMarks
	key = append(key, holdKey(kinds, true, 0)...)
	if several {
		key = append(key, severalKey(math.MaxInt)...)
	}
	what := "Each trial's " + name + " over what its mix makes one expect"
	if k.Unit != "ratio" {
		what = "Each trial of the one formula that was made again and again"
	}
	caption := what + ", in the order of time. Limits are three standard deviations, from the mean move from one trial to the next; bounds are drawn as bounds and set no limit."
	f := controlFigure{k: k, y: y, unit: unit, several: several}
	return Figure{Name: "control-" + name, Title: title, Caption: caption, Alt: fmt.Sprintf("%d trials in the order of time between limits.", len(k.Points)),
		plain: Capital(name) + " of single trials, in the order of time",
		key:   key, several: several, panel: weeksHeight, paint: f.paint}.sized(figureWidth), true
}

func controlFinding(k *result.Control) string {
	out := 0
	for _, p := range k.Points {
		if p.Out != "" {
			out++
		}
	}
	name := "hold"
	if k.Outcome == result.DrainedPercent {
		name = "drainage"
	}
	switch {
	case k.Centre == nil:
		return Capital(name) + " of single trials in the order of time"
	case out == 0:
		return "No trial lies outside what " + name + " of single trials usually does"
	}
	return plural(out, "trial lies", "trials lie") + " outside what " + name + " of single trials usually does"
}

type controlFigure struct {
	k       *result.Control
	y       axisRange
	unit    string
	several bool
}

func (f controlFigure) paint(c draw.Canvas, _ *names) {
	x := axisRange{lo: 0.5, hi: float64(len(f.k.Points)) + 0.5}
	panel := newPanel(c, x, f.y, "trials in the order of time, named by the date of the first", f.unit)
	var labels []string
	for _, p := range f.k.Points {
		label := p.Date
		if label == "" {
			label = p.Period
		}
		labels = append(labels, label)
	}
	ticks := weekTicks(labels, c.Max.X-c.Min.X-60)
	for i := range ticks {
		ticks[i].Value++
	}
	panel.X.Tick.Marker = ticks
	panel.Add(paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		if f.k.Centre != nil {
			c.StrokeLine2(line(Accent, lineWidth), c.Min.X, y(*f.k.Centre), c.Max.X, y(*f.k.Centre))
			for _, v := range []*float64{f.k.Low, f.k.High} {
				if v != nil && *v >= leastOnLog {
					c.StrokeLine2(line(Quiet, 1.1, 5, 3), c.Min.X, y(*v), c.Max.X, y(*v))
				}
			}
		}
		var marks holdMarks
		for i := range f.k.Points {
			if kind, low, high, ok := holdSeen(&f.k.Points[i].Value); ok && low >= leastOnLog {
				marks.add(kind, x(float64(i+1)), y(low), y(high))
			}
		}
		if f.several {
			marks = marks.gathered(c.Rectangle)
		}
		marks.draw(c, Ink)
		marks.dots(c, dotRadius)
	}))
	panel.Draw(c)
}
