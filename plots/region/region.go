// Package region maps the chance of working over two variables, with the trials.
package region

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/mark"
	"foamfield/plots/wording"
)

// ByEmulsifier is the map over fat and emulsifier.
func ByEmulsifier(r *result.Results) (drawing.Figure, bool) {
	return over(r, "fat_by_emulsifier", "region-emulsifier")
}

// ByHLB is the map over fat and blend HLB.
func ByHLB(r *result.Results) (drawing.Figure, bool) {
	return over(r, "fat_by_hlb", "region-hlb")
}

// figure is the chance of working over two variables, with the trials.
type figure struct {
	r        *result.Results
	grid     result.Grid
	wanted   float64 // 0 = none
	x, y     drawing.Range
	several  bool // a mark may be several trials
	strip    bool // trials without emulsifier lie in a strip below
	shown    []mark.Shown
	key      []drawing.Entry
	workable bool
}

func over(r *result.Results, gridName, name string) (drawing.Figure, bool) {
	f := figure{r: r}
	for _, g := range r.Grid {
		if g.Name == gridName {
			f.grid = g
		}
	}
	if !goodGrid(f.grid) {
		return drawing.Figure{}, false
	}
	if w := r.Targets.WantedChance.Value; w > 0 && w < 1 {
		f.wanted = w
	}
	f.x, f.y = f.axis(f.grid.X), f.axis(f.grid.Y)
	absent := f.show(mark.Used(r))
	f.several = len(f.shown) > mark.Most
	f.x, f.y = f.x.Padded(drawing.Air), f.y.Padded(drawing.Air)
	title := f.finding()
	f.makeKey()
	return drawing.Figure{
		Name: name, Title: title, Subject: f.plain(), Caption: f.caption(absent), Alt: f.alt(),
		Key: f.key, Several: f.several, Panel: drawing.PanelHeight + 12, Paint: f.paint,
	}.Sized(drawing.FigureWidth), true
}

// axis is the range of one side of the grid.
func (f *figure) axis(a result.Axis) drawing.Range {
	v, _ := wording.Variable(f.r, a.Variable)
	is := drawing.NewRange(v.Log && a.Values[0] > 0)
	for _, x := range a.Values {
		is.Take(x)
	}
	return is
}

// show places the trials, widening the axes to hold them, and counts those that
// have no place.
func (f *figure) show(ts []*result.Trial) (absent int) {
	xName, yName := f.grid.X.Variable, f.grid.Y.Variable
	for _, t := range ts {
		s := mark.Shown{Fate: mark.FateOf(t), Far: f.far(t)}
		var okX, okY bool
		s.X, okX = wording.TrialValue(t, xName)
		s.Y, okY = wording.TrialValue(t, yName)
		if okX && f.x.Log && s.X <= 0 {
			okX = false
		}
		if xName == wording.FatPercent && withoutEmulsifier(t) {
			s.Strip, s.Far = true, false
			okY, f.strip = true, f.strip || okX
		} else if okY && f.y.Log && s.Y <= 0 {
			okY = false
		}
		if !okX || !okY {
			absent++
			continue
		}
		f.x.Take(s.X)
		if !s.Strip {
			f.y.Take(s.Y)
		}
		f.shown = append(f.shown, s)
	}
	return absent
}

func withoutEmulsifier(t *result.Trial) bool {
	p, okP := wording.Told(t.EmulsifierPercent)
	g, okG := wording.Told(t.EmulsifierGrams)
	return (okP && p == 0) || (!okP && okG && g == 0)
}

// farShare is the part of a variable's tested range beyond which a trial counts
// as far from the plane shown.
const farShare = 0.2

// far says whether a trial lies well off the plane of the grid.
func (f *figure) far(t *result.Trial) bool {
	m := wording.MixOf(t)
	for _, name := range f.fixed() {
		if _, ok := wording.MixValue(m, name); !ok {
			return true
		}
	}
	name, _ := f.offPlane(m)
	return name != ""
}

// offPlane names the variable by which a mix lies well off the plane of the
// grid, and its value there; "" if it lies on it.
func (f *figure) offPlane(m result.Mix) (name string, got float64) {
	for _, name := range f.fixed() {
		want, _ := wording.MixValue(f.grid.Fixed, name)
		got, ok := wording.MixValue(m, name)
		v, known := wording.Variable(f.r, name)
		if !ok || !known || !(v.High > v.Low) {
			continue
		}
		off, whole := math.Abs(got-want), v.High-v.Low
		if v.Log && got > 0 && want > 0 && v.Low > 0 {
			off, whole = math.Abs(math.Log(got/want)), math.Log(v.High/v.Low)
		}
		if off > farShare*whole {
			return name, got
		}
	}
	return "", 0
}

// fixed names the variables held, in the order of the model.
func (f *figure) fixed() []string {
	var names []string
	for _, v := range f.r.Variables {
		if _, ok := wording.MixValue(f.grid.Fixed, v.Name); ok && v.Name != f.grid.X.Variable && v.Name != f.grid.Y.Variable {
			names = append(names, v.Name)
		}
	}
	return names
}

func (f *figure) fixedWords() string {
	var words []string
	for _, name := range f.fixed() {
		v, _ := wording.MixValue(f.grid.Fixed, name)
		words = append(words, wording.Amount(f.r, name, v))
	}
	return wording.List(words)
}

// finding reads the workable part, or the best there is, off the grid.
func (f *figure) finding() string {
	g := f.grid
	x := drawing.NewRange(false)
	bi, bj := -1, -1
	for j := range g.Y.Values {
		for i := range g.X.Values {
			if !g.Tested[j][i] {
				continue
			}
			if bi < 0 || g.Chance[j][i] > g.Chance[bj][bi] {
				bi, bj = i, j
			}
			if g.Chance[j][i] >= f.wanted {
				x.Take(g.X.Values[i])
			}
		}
	}
	where := f.fixedWords()
	best := wording.List([]string{wording.Amount(f.r, g.X.Variable, g.X.Values[bi]), wording.Amount(f.r, g.Y.Variable, g.Y.Values[bj])})
	chance := wording.ChanceAgainst(g.Chance[bj][bi], f.wanted)
	if f.wanted == 0 || x.Empty() {
		if where != "" {
			where = "with " + where + ", "
		}
		sx, p, okX := wording.Surest(f.r, g.X.Variable)
		sy, _, okY := wording.Surest(f.r, g.Y.Variable)
		name := "the best"
		if okX && okY { // which lies near what worked, rarely at the very top
			name, chance = "the start", wording.ChanceAgainst(p, f.wanted)
			best = wording.List([]string{wording.Amount(f.r, g.X.Variable, sx), wording.Amount(f.r, g.Y.Variable, sy)})
		}
		if f.wanted == 0 {
			return wording.Capital(where + best + " works best, " + chance + wording.Unproven(f.r))
		}
		return wording.Capital(fmt.Sprintf("%sno mix within what was tried works %s; %s, %s: %s",
			where, wording.WantedTimes(f.wanted), name, best, wording.Work(chance)+wording.Unproven(f.r)))
	}
	f.workable = true
	if where != "" {
		where += " and "
	}
	mixes := fmt.Sprintf("With %sthe right %s, mixes of %s ", where, rightName(f.r, g.Y.Variable), wording.Span(f.r, g.X.Variable, x.Lo, x.Hi))
	if but := wording.Unproven(f.r); but != "" {
		return mixes + "may work " + wording.WantedTimes(f.wanted) + but
	}
	return mixes + "work at least " + wording.WantedTimes(f.wanted)
}

// rightName is a variable after "the right".
func rightName(r *result.Results, name string) string {
	if name == wording.EmulsifierPercent || name == wording.EmulsifierGrams {
		return "amount of emulsifier"
	}
	return wording.ShortName(r, name)
}

func (f *figure) makeKey() {
	f.key = []drawing.Entry{{Sign: keyBands, Words: "works, times in 10", Wide: bandWide*vg.Length(len(drawing.Bands)) + 6}, {Sign: keyHatch, Words: "tried too little to say"}}
	if f.workable {
		f.key = append(f.key, drawing.Entry{Sign: drawing.KeyLine(drawing.Accent, drawing.WantedWidth), Words: f.wantedWords()})
	}
	for _, s := range f.starts() {
		f.key = append(f.key, drawing.Entry{Sign: func(c draw.Canvas, at vg.Point) { drawStart(c, at, s.aim, 0.75) }, Words: s.words})
	}
	f.key = append(f.key, mark.Key(f.r, f.shown)...)
	if f.strip {
		f.key = append(f.key, drawing.Entry{Sign: drawing.KeyStrip, Words: stripWords})
	}
	if f.several {
		f.key = append(f.key, mark.SeveralKey(math.MaxInt)...)
	}
	pale := "pale: far from "
	if f.several {
		pale = "pale: all far from "
	}
	for _, s := range f.shown {
		if s.Far {
			f.key = append(f.key, drawing.Entry{Sign: func(c draw.Canvas, at vg.Point) {
				mark.Draw(c, []mark.Mark{{At: at, Fate: mark.Worked, Far: true}})
			}, Words: pale + f.fixedWords()})
			break
		}
	}
}

// bandWide is the width of a band's colour in the key.
const bandWide = 27 * vg.Length(1)

// keyBands are the colours of the chance as one scale, each with its numbers in it.
func keyBands(c draw.Canvas, at vg.Point) {
	sty := drawing.TextStyle(8.5, false, drawing.Ink)
	x := at.X - bandWide*vg.Length(len(drawing.Bands))/2 - 3
	for i, colour := range drawing.Bands {
		box := vg.Rectangle{Min: vg.Point{X: x, Y: at.Y - 6}, Max: vg.Point{X: x + bandWide, Y: at.Y + 6}}
		c.SetColor(drawing.Colour(colour))
		c.Fill(box.Path())
		c.SetLineStyle(drawing.Line(drawing.Quiet, drawing.ThinWidth))
		c.Stroke(box.Path())
		words := fmt.Sprintf("%d–%d", 2*i, 2*i+2)
		dim := drawing.Size(sty, words)
		drawing.Write(c, sty, vg.Point{X: x + (bandWide-dim.X)/2, Y: at.Y - dim.Y/2}, words)
		x += bandWide
	}
}

func keyHatch(c draw.Canvas, at vg.Point) {
	box := drawing.SwatchBox(at)
	c.SetLineStyle(drawing.Line(drawing.Quiet, drawing.ThinWidth))
	for _, p := range hatch(box) {
		c.Stroke(p)
	}
	c.Stroke(box.Path())
}

func (f *figure) caption(absent int) string {
	var s []string
	s = append(s, "Each shade is how many times in 10 the next mix works.", mark.Tallied(f.r, mark.FatesOf(f.shown)))
	if len(f.shown) > 1 && !f.several {
		s = append(s, mark.ApartWords)
	}
	if f.workable {
		s = append(s, fmt.Sprintf("The strong line is where it works %s%s.", wording.WantedTimes(f.wanted), wording.Unproven(f.r)))
	}
	if words := f.edgeWords(); len(words) > 0 {
		where := "A foam"
		if f.workable {
			where = "Past it a foam"
		}
		s = append(s, where+" most often first "+wording.Either(words)+"; slanted words stand where.")
	}
	s = append(s, "Hatched: tried too little to say, even where a trial lies.")
	for _, start := range f.r.Starts {
		if name, v := f.offPlane(start.Mix); name != "" {
			s = append(s, fmt.Sprintf("The %s start is not marked: it has %s.", start.Aim, wording.Amount(f.r, name, v)))
		}
	}
	if f.several {
		s = append(s, mark.SeveralWords)
		if f.strip {
			s = append(s, "The strip along the bottom is the trials without emulsifier.")
		}
	}
	s = append(s, wording.LeftOut(absent)...)
	return strings.Join(s, " ")
}

// plain says what is shown.
func (f *figure) plain() string {
	s := "Chance of working over " + wording.ShortName(f.r, f.grid.X.Variable) + " and " + wording.ShortName(f.r, f.grid.Y.Variable)
	if at := f.fixedWords(); at != "" {
		s += ", at " + at
	}
	return s
}

func (f *figure) alt() string {
	return fmt.Sprintf("Map of the chance of working over %s (across) and %s (up), with %s drawn.",
		wording.AxisLabel(f.r, f.grid.X.Variable), wording.AxisLabel(f.r, f.grid.Y.Variable), wording.Plural(len(f.shown), "trial", "trials"))
}
