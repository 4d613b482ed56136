package trend

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// Control is a chart of single trials in the order of time.
func Control(t *result.Trend, k *result.Control) (drawing.Figure, bool) {
	y := drawing.NewRange(true)
	var kinds [4]int
	for i := range k.Points {
		if kind, _, _, ok := mark.HoldSeen(&k.Points[i].Value); ok {
			kinds[kind]++
			mark.TakeHold(&y, &k.Points[i].Value)
		}
	}
	if len(k.Points) < 3 || y.Empty() {
		return drawing.Figure{}, false
	}
	for _, v := range []*float64{k.Low, k.High} {
		if v != nil {
			y.Take(*v)
		}
	}
	y = y.Padded(drawing.HoldAir)
	name, unit := "hold", "hold, minutes"
	if k.Outcome == result.DrainedPercent {
		name, unit = "drained", "drained, %"
	}
	if k.Unit == "ratio" {
		unit = name + ", times the usual"
	}
	title := controlFinding(k)
	var key []drawing.Entry
	if k.Centre != nil {
		key = append(key, drawing.Entry{Sign: drawing.KeyLine(drawing.Accent, drawing.LineWidth), Words: "middle"}, drawing.Entry{Sign: drawing.KeyLine(drawing.Quiet, 1.1, 5, 3), Words: "limits of single trials"})
	}
	several := len(k.Points) > mark.Most
	seen := mark.HoldKey(kinds, true, 0)
	if k.Outcome == result.DrainedPercent {
		seen = mark.DrainedKey(kinds)
	}
	key = append(key, seen...)
	if several {
		key = append(key, mark.SeveralKey(math.MaxInt)...)
	}
	what := "Each trial's " + name + " over what its mix makes one expect"
	if k.Unit != "ratio" {
		what = "Each trial of the one formula that was made again and again"
	}
	caption := what + ", in the order of time. Limits are three standard deviations, from the mean move from one trial to the next; bounds are drawn as bounds and set no limit."
	f := controlFigure{k: k, y: y, unit: unit, several: several}
	return drawing.Figure{Name: "control-" + name, Title: title, Caption: caption, Alt: fmt.Sprintf("%d trials in the order of time between limits.", len(k.Points)),
		Subject: wording.Capital(name) + " of single trials, in the order of time",
		Key:     key, Several: several, Panel: weeksHeight, Paint: f.paint}.Sized(drawing.FigureWidth), true
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
		return wording.Capital(name) + " of single trials in the order of time"
	case out == 0 && len(k.Outside) > 0:
		return wording.Capital(name) + " of many trials in a row lies on one side of the middle"
	case out == 0:
		return wording.Capital(name) + ": no trial lies outside the usual limits"
	}
	return wording.Capital(name) + ": " + wording.Plural(out, "trial lies", "trials lie") + " outside the usual limits"
}

type controlFigure struct {
	k       *result.Control
	y       drawing.Range
	unit    string
	several bool
}

func (f controlFigure) paint(c draw.Canvas, _ *drawing.Names) {
	x := drawing.Range{Lo: 0.5, Hi: float64(len(f.k.Points)) + 0.5}
	panel := drawing.NewPanel(c, x, f.y, "trials in order of time", f.unit)
	var labels []string
	for _, p := range f.k.Points {
		label := wording.Day(p.Date)
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
	panel.Add(drawing.Paint(func(c draw.Canvas, x, y func(float64) vg.Length) {
		if f.k.Centre != nil {
			c.StrokeLine2(drawing.Line(drawing.Accent, drawing.LineWidth), c.Min.X, y(*f.k.Centre), c.Max.X, y(*f.k.Centre))
			for _, v := range []*float64{f.k.Low, f.k.High} {
				if v != nil && *v >= drawing.LeastOnLog {
					c.StrokeLine2(drawing.Line(drawing.Quiet, 1.1, 5, 3), c.Min.X, y(*v), c.Max.X, y(*v))
				}
			}
		}
		var marks mark.Holds
		for i := range f.k.Points {
			if kind, low, high, ok := mark.HoldSeen(&f.k.Points[i].Value); ok && low >= drawing.LeastOnLog {
				marks.Add(kind, x(float64(i+1)), y(low), y(high))
			}
		}
		if f.several {
			marks = marks.Gathered(c.Rectangle)
		}
		marks.Draw(c, drawing.Ink)
		marks.Dots(c, mark.DotsOf(1))
	}))
	panel.Draw(c)
}
