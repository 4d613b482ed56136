// Package trend draws many weeks: the hold of one mix, where hold peaks, and single
// trials in the order of time.
package trend

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

const (
	weeksHeight  = 220
	courseHeight = 150
	mostWeeks    = 60 // ticks of an axis name no more of them
)

// banded is a value of one week with its limits.
type banded struct{ mid, low, high float64 }

// weekTicks name the weeks as far as there is room.
func weekTicks(labels []string, width vg.Length) plot.ConstantTicks {
	sty := drawing.TextStyle(drawing.TickSize, false, drawing.Ink)
	widest := vg.Length(0)
	for i, l := range labels {
		labels[i] = strings.TrimPrefix(l, "week of ")
		widest = max(widest, min(drawing.Size(sty, labels[i]).X, 80))
	}
	every := max(1, int(math.Ceil(float64(widest+8)*float64(len(labels))/float64(max(width, 1)))))
	var ticks plot.ConstantTicks
	last := -every
	for i, label := range labels {
		if i < last+every || i > 0 && label == labels[i-1] { // trials of one week have its name once
			continue
		}
		last = i
		ticks = append(ticks, plot.Tick{Value: float64(i), Label: drawing.Fit(sty, label, 80)})
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
func weeklyPanel(c draw.Canvas, labels []string, values []*banded, y drawing.Range, label string, reference *float64) {
	x := drawing.Range{Lo: -0.5, Hi: float64(len(values)) - 0.5}
	panel := drawing.NewPanel(c, x, y, "week", label)
	panel.X.Tick.Marker = weekTicks(labels, c.Max.X-c.Min.X-60)
	panel.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		if reference != nil {
			c.StrokeLine2(drawing.Line(drawing.Quiet, 1.1, 5, 3), c.Min.X, y(*reference), c.Max.X, y(*reference))
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
			c.FillPolygon(drawing.Colour(drawing.Uncertain), []vg.Point{{X: left, Y: y(v.low)}, {X: right, Y: y(v.low)}, {X: right, Y: y(v.high)}, {X: left, Y: y(v.high)}})
			c.StrokeLine2(drawing.Line(drawing.Accent, drawing.WantedWidth), left, y(v.mid), right, y(v.mid))
		}
	}))
	panel.Draw(c)
}

// Weeks is the hold of one mix, week by week.
func Weeks(t *result.Trend) (drawing.Figure, bool) {
	y := drawing.NewRange(true)
	values := make([]*banded, len(t.Periods))
	n := 0
	for i, p := range t.Periods {
		if b := p.HoldMinutes; b != nil && wording.Finite(b.Low) && wording.Finite(b.High) && b.Low > 0 {
			values[i] = &banded{b.Mid, b.Low, b.High}
			y.Take(b.Low)
			y.Take(b.High)
			n++
		}
	}
	if n < 2 {
		return drawing.Figure{}, false
	}
	y = y.Padded(drawing.Air)
	title := "What one mix would have held, week by week"
	key := []drawing.Entry{{Sign: drawing.KeyBanded, Words: "most likely hold, and where it may well be"}}
	labels := periodLabels(t)
	return drawing.Figure{Name: "weeks", Title: title,
		Caption: "The hold of " + t.ReferenceFrom + ", as each week would have given it, with 90 % limits. Weeks with few trials are drawn towards the others.",
		Alt:     fmt.Sprintf("Hold in minutes with limits for %d weeks.", n),
		Key:     key, Subject: title, Panel: weeksHeight, Paint: func(c draw.Canvas, _ *drawing.Names) {
			weeklyPanel(c, labels, values, y, "hold, minutes", nil)
		}}.Sized(drawing.FigureWidth), true
}

// Optima is where hold peaks over each variable, week by week; only those that peak within
// what was tried.
func Optima(t *result.Trend) (drawing.Figure, bool) {
	type panel struct {
		label  string
		values []*banded
		y      drawing.Range
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
		p := panel{y: drawing.NewRange(false)}
		inside := 0.0
		for _, o := range by[name] {
			p.label = strings.TrimSuffix("best "+o.Label+", "+o.Unit, ", ")
			p.values = append(p.values, &banded{o.At, o.Low, o.High})
			p.y.Take(o.Low)
			p.y.Take(o.High)
			inside += o.Inside
		}
		if inside >= 0.8*float64(len(by[name])) && len(by[name]) > 1 {
			p.y = p.y.Padded(drawing.Air)
			panels = append(panels, p)
		}
	}
	if len(panels) == 0 {
		return drawing.Figure{}, false
	}
	title := optimumFinding(t)
	key := []drawing.Entry{{Sign: drawing.KeyBanded, Words: "where hold peaks, and where that may well be"}}
	labels := periodLabels(t)
	return drawing.Figure{Name: "optimum", Title: title, Caption: "Where hold peaks over each variable of the mix, with 90 % limits, the others in the middle of what was tried. Variables that do not peak within what was tried are left out.",
		Alt: fmt.Sprintf("%s of where hold peaks by week.", wording.Plural(len(panels), "panel", "panels")), Key: key, Panel: vg.Length(courseHeight * len(panels)),
		Subject: "Where hold peaks, week by week",
		Paint: func(c draw.Canvas, _ *drawing.Names) {
			h := (c.Max.Y - c.Min.Y) / vg.Length(len(panels))
			for i, p := range panels {
				tile := c
				tile.Max.Y = c.Max.Y - vg.Length(i)*h
				tile.Min.Y = tile.Max.Y - h + 6
				weeklyPanel(tile, append([]string(nil), labels...), p.values, p.y, p.label, nil)
			}
		}}.Sized(drawing.FigureWidth), true
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
