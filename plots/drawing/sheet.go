package drawing

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

const (
	keyRow = 14
	edge   = 6 // paper around everything
)

// sheet paints the paper, the title above and the key below, and returns the
// canvas left between them for the panels.
func sheet(c draw.Canvas, title string, key []Entry) draw.Canvas {
	c.SetColor(Colour(Paper))
	c.Fill(c.Rectangle.Path())
	c = draw.Crop(c, edge, -edge, edge, -edge)

	sty := TextStyle(titleSize, true, Ink)
	for _, l := range Wrap(sty, title, c.Max.X-c.Min.X) {
		dim := Size(sty, l)
		c.Max.Y -= dim.Y + 1
		Write(c, sty, vg.Point{X: c.Min.X, Y: c.Max.Y}, Fit(sty, l, c.Max.X-c.Min.X))
	}
	c.Max.Y -= 8

	small := TextStyle(TickSize, false, Ink)
	rows := flow(small, key, c.Max.X-c.Min.X)
	for i, row := range rows {
		x, y := c.Min.X, c.Min.Y+vg.Length(len(rows)-1-i)*keyRow
		for _, e := range row {
			w := e.signWidth()
			e.Sign(c, vg.Point{X: x + w/2, Y: y + keyRow/2})
			words := Fit(small, e.Words, c.Max.X-x-w)
			Write(c, small, vg.Point{X: x + w, Y: y + (keyRow-Size(small, words).Y)/2}, words)
			x += keyWidth(small, e)
		}
	}
	c.Min.Y += vg.Length(len(rows))*keyRow + 4
	return c
}

func keyWidth(sty text.Style, e Entry) vg.Length { return e.signWidth() + Size(sty, e.Words).X + 8 }

// flow breaks a key into rows no wider than width.
func flow(sty text.Style, key []Entry, width vg.Length) [][]Entry {
	var rows [][]Entry
	var x vg.Length
	for _, e := range key {
		w := keyWidth(sty, e)
		if len(rows) == 0 || x+w-8 > width {
			rows = append(rows, nil)
			x = 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], e)
		x += w
	}
	return rows
}

// Wrap breaks a text into lines no wider than width, as even as they can be.
func Wrap(sty text.Style, s string, width vg.Length) []string {
	lines := greedy(sty, s, width)
	switch len(lines) {
	case 0, 1:
		return lines
	case 2:
		return balanced(sty, s, width, lines)
	}
	for w := width * 0.95; w > width/3; w -= width * 0.05 {
		if tighter := greedy(sty, s, w); len(tighter) == len(lines) {
			lines = tighter
		}
	}
	return lines
}

// balanced breaks a text into two lines as even as they can be, rather where the
// sentence has a pause.
func balanced(sty text.Style, s string, width vg.Length, lines []string) []string {
	const pause = 0.8 // how much more uneven a break at a pause may be
	parts, best := phrases(s), vg.Length(math.Inf(1))
	for k := 1; k < len(parts); k++ {
		first, second := strings.Join(parts[:k], " "), strings.Join(parts[k:], " ")
		worse := max(Size(sty, first).X, Size(sty, second).X)
		if worse > width {
			continue
		}
		if strings.ContainsAny(first[len(first)-1:], ",;:") {
			worse *= pause
		}
		if worse < best {
			best, lines = worse, []string{first, second}
		}
	}
	return lines
}

// Fit cuts a text that is wider than width.
func Fit(sty text.Style, s string, width vg.Length) string {
	letters := []rune(s)
	for n := len(letters); n > 0; n-- {
		cut := strings.TrimSpace(string(letters[:n]))
		if n < len(letters) {
			cut += "…"
		}
		if Size(sty, cut).X <= width {
			return cut
		}
	}
	return ""
}

func greedy(sty text.Style, s string, width vg.Length) []string {
	var lines []string
	for _, phrase := range phrases(s) {
		if n := len(lines); n > 0 && Size(sty, lines[n-1]+" "+phrase).X <= width {
			lines[n-1] += " " + phrase
			continue
		}
		lines = append(lines, phrase)
	}
	return lines
}

// phrases are what of a text is not parted from line to line: a number and what it
// counts, "8 times in 10", "HLB 8.7", "32 to 52 %".
func phrases(s string) []string {
	var out []string
	words := strings.Fields(s)
	for i, word := range words {
		if i > 0 && together(words, i) {
			out[len(out)-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

// together says whether a word belongs to the one before it.
func together(words []string, i int) bool {
	before, word := words[i-1], strings.TrimRight(words[i], ",;:")
	switch {
	case word == "%" || before == "%":
		return true
	case isNumber(before): // but that of an HLB counts nothing
		return i < 2 || words[i-2] != "HLB"
	case word == "in":
		return before == "times" && i > 1 && isNumber(words[i-2])
	case isNumber(word):
		linked := before == "in" || before == "to" && i > 1 && isNumber(words[i-2])
		return linked || before == "HLB" || before == "about"
	}
	return false
}

func isNumber(s string) bool {
	_, err := strconv.ParseFloat(s, 64)
	return err == nil
}

// height is what a figure with a panel of the given height needs at a width.
func height(width vg.Length, title string, key []Entry, panel vg.Length) vg.Length {
	inner := width - 2*edge
	sty := TextStyle(titleSize, true, Ink)
	lines := vg.Length(len(Wrap(sty, title, inner)))
	rows := vg.Length(len(flow(TextStyle(TickSize, false, Ink), key, inner)))
	return 2*edge + lines*(Size(sty, "x").Y+1) + 8 + rows*keyRow + 4 + panel
}

// Paint lets a function be drawn between a plot's axes.
type Paint func(c draw.Canvas, x, y func(float64) vg.Length)

// Plot implements plot.Plotter.
func (f Paint) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	f(c, x, y)
}

// panel is a plot with the words of its upward axis, which the library would place
// as if every axis were even, leaving a gap above one that is not.
type panel struct {
	*plot.Plot
	up string
}

// Draw draws the panel.
func (p panel) Draw(c draw.Canvas) {
	sty := TextStyle(LabelSize, false, Ink)
	if p.up != "" {
		whole := c
		c = draw.Crop(c, Size(sty, p.up).Y+4, 0, 0, 0)
		sty.Rotation, sty.XAlign, sty.YAlign = math.Pi/2, text.XCenter, text.YTop
		within := p.DataCanvas(c)
		whole.FillText(sty, vg.Point{X: whole.Min.X, Y: within.Center().Y}, p.up)
	}
	p.Plot.Draw(c)
}

// NewPanel is an empty plot with our axes, to be drawn on a canvas of c's size.
func NewPanel(c draw.Canvas, x, y Range, xLabel, yLabel string) panel {
	p := panel{Plot: plot.New()}
	p.BackgroundColor = nil
	tick := TextStyle(TickSize, false, Ink)
	for _, a := range []struct {
		axis  *plot.Axis
		is    Range
		label string
		// The length is about what the axis has for its values.
		length vg.Length
		room   func(string) vg.Length
	}{
		{&p.X, x, xLabel, (c.Max.X - c.Min.X - 50) * 0.9, func(s string) vg.Length { return Size(tick, s).X + 8 }},
		{&p.Y, y, yLabel, (c.Max.Y - c.Min.Y - 45) * 0.9, func(string) vg.Length { return 1.3 * TickSize }},
	} {
		a.axis.Min, a.axis.Max = a.is.Lo, a.is.Hi
		a.axis.Scale = Scale{Log: a.is.Log}
		a.axis.Padding = 0
		a.axis.LineStyle = Line(Quiet, ThinWidth)
		label := Fit(TextStyle(LabelSize, false, Ink), a.label, a.length/0.9)
		if a.axis == &p.Y {
			p.up = label
		} else {
			a.axis.Label.Text = label
		}
		a.axis.Label.Padding = 2
		a.axis.Label.TextStyle.Font.Size = LabelSize
		a.axis.Label.TextStyle.Color = Colour(Ink)
		a.axis.Tick.Label.Font.Size = TickSize
		a.axis.Tick.Label.Color = Colour(Ink)
		a.axis.Tick.LineStyle = Line(Quiet, ThinWidth)
		a.axis.Tick.Length = 4
		a.axis.Tick.Marker = a.is.ticks(a.length, a.room)
	}
	return p
}
