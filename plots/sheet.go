package plots

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// keySign draws a sample of a mark, line or colour around a point.
type keySign func(c draw.Canvas, at vg.Point)

// keyEntry is one sign of a figure's key with its words.
type keyEntry struct {
	sign  keySign
	words string
	wide  vg.Length // of the sign, where it is wider than most
}

func (e keyEntry) signWidth() vg.Length { return max(signWidth, e.wide) }

const (
	signWidth = 20 // room for a key's sign
	keyRow    = 14
	edge      = 6 // paper around everything
)

// sheet paints the paper, the title above and the key below, and returns the
// canvas left between them for the panels.
func sheet(c draw.Canvas, title string, key []keyEntry) draw.Canvas {
	c.SetColor(hex(Paper))
	c.Fill(c.Rectangle.Path())
	c = draw.Crop(c, edge, -edge, edge, -edge)

	sty := textStyle(titleSize, true, Ink)
	for _, l := range wrap(sty, title, c.Max.X-c.Min.X) {
		dim := size(sty, l)
		c.Max.Y -= dim.Y + 1
		write(c, sty, vg.Point{X: c.Min.X, Y: c.Max.Y}, fit(sty, l, c.Max.X-c.Min.X))
	}
	c.Max.Y -= 8

	small := textStyle(tickSize, false, Ink)
	rows := flow(small, key, c.Max.X-c.Min.X)
	for i, row := range rows {
		x, y := c.Min.X, c.Min.Y+vg.Length(len(rows)-1-i)*keyRow
		for _, e := range row {
			w := e.signWidth()
			e.sign(c, vg.Point{X: x + w/2, Y: y + keyRow/2})
			words := fit(small, e.words, c.Max.X-x-w)
			write(c, small, vg.Point{X: x + w, Y: y + (keyRow-size(small, words).Y)/2}, words)
			x += keyWidth(small, e)
		}
	}
	c.Min.Y += vg.Length(len(rows))*keyRow + 4
	return c
}

func keyWidth(sty text.Style, e keyEntry) vg.Length { return e.signWidth() + size(sty, e.words).X + 8 }

// flow breaks a key into rows no wider than width.
func flow(sty text.Style, key []keyEntry, width vg.Length) [][]keyEntry {
	var rows [][]keyEntry
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

// wrap breaks a text into lines no wider than width, as even as they can be.
func wrap(sty text.Style, s string, width vg.Length) []string {
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
		worse := max(size(sty, first).X, size(sty, second).X)
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

// fit cuts a text that is wider than width.
func fit(sty text.Style, s string, width vg.Length) string {
	letters := []rune(s)
	for n := len(letters); n > 0; n-- {
		cut := strings.TrimSpace(string(letters[:n]))
		if n < len(letters) {
			cut += "…"
		}
		if size(sty, cut).X <= width {
			return cut
		}
	}
	return ""
}

func greedy(sty text.Style, s string, width vg.Length) []string {
	var lines []string
	for _, phrase := range phrases(s) {
		if n := len(lines); n > 0 && size(sty, lines[n-1]+" "+phrase).X <= width {
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
func height(width vg.Length, title string, key []keyEntry, panel vg.Length) vg.Length {
	inner := width - 2*edge
	sty := textStyle(titleSize, true, Ink)
	lines := vg.Length(len(wrap(sty, title, inner)))
	rows := vg.Length(len(flow(textStyle(tickSize, false, Ink), key, inner)))
	return 2*edge + lines*(size(sty, "x").Y+1) + 8 + rows*keyRow + 4 + panel
}

// paint lets a function be drawn between a plot's axes.
type paint func(c draw.Canvas, x, y func(float64) vg.Length)

// Plot implements plot.Plotter.
func (f paint) Plot(c draw.Canvas, p *plot.Plot) {
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
	sty := textStyle(labelSize, false, Ink)
	if p.up != "" {
		whole := c
		c = draw.Crop(c, size(sty, p.up).Y+4, 0, 0, 0)
		sty.Rotation, sty.XAlign, sty.YAlign = math.Pi/2, text.XCenter, text.YTop
		within := p.DataCanvas(c)
		whole.FillText(sty, vg.Point{X: whole.Min.X, Y: within.Center().Y}, p.up)
	}
	p.Plot.Draw(c)
}

// newPanel is an empty plot with our axes, to be drawn on a canvas of c's size.
func newPanel(c draw.Canvas, x, y axisRange, xLabel, yLabel string) panel {
	p := panel{Plot: plot.New()}
	p.BackgroundColor = nil
	tick := textStyle(tickSize, false, Ink)
	for _, a := range []struct {
		axis  *plot.Axis
		is    axisRange
		label string
		// The length is about what the axis has for its values.
		length vg.Length
		room   func(string) vg.Length
	}{
		{&p.X, x, xLabel, (c.Max.X - c.Min.X - 50) * 0.9, func(s string) vg.Length { return size(tick, s).X + 8 }},
		{&p.Y, y, yLabel, (c.Max.Y - c.Min.Y - 45) * 0.9, func(string) vg.Length { return 1.3 * tickSize }},
	} {
		a.axis.Min, a.axis.Max = a.is.lo, a.is.hi
		a.axis.Scale = scale{log: a.is.log}
		a.axis.Padding = 0
		a.axis.LineStyle = line(Quiet, thinWidth)
		label := fit(textStyle(labelSize, false, Ink), a.label, a.length/0.9)
		if a.axis == &p.Y {
			p.up = label
		} else {
			a.axis.Label.Text = label
		}
		a.axis.Label.Padding = 2
		a.axis.Label.TextStyle.Font.Size = labelSize
		a.axis.Label.TextStyle.Color = hex(Ink)
		a.axis.Tick.Label.Font.Size = tickSize
		a.axis.Tick.Label.Color = hex(Ink)
		a.axis.Tick.LineStyle = line(Quiet, thinWidth)
		a.axis.Tick.Length = 4
		a.axis.Tick.Marker = a.is.ticks(a.length, a.room)
	}
	return p
}
