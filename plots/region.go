package plots

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/analysis/result"
)

func regionByEmulsifier(r *result.Results) (Figure, bool) {
	return region(r, "fat_by_emulsifier", "region-emulsifier")
}

func regionByHLB(r *result.Results) (Figure, bool) {
	return region(r, "fat_by_hlb", "region-hlb")
}

// regionFigure is the chance of working over two variables, with the trials.
type regionFigure struct {
	r        *result.Results
	grid     result.Grid
	wanted   float64 // 0 = none
	x, y     axisRange
	several  bool // a mark may be several trials
	strip    bool // trials without emulsifier lie in a strip below
	shown    []shownTrial
	key      []keyEntry
	workable bool
}

// shownTrial is a trial at its place in the variables of the axes.
type shownTrial struct {
	x, y  float64
	strip bool
	fate  fate
	far   bool
}

func region(r *result.Results, gridName, name string) (Figure, bool) {
	f := regionFigure{r: r}
	for _, g := range r.Grid {
		if g.Name == gridName {
			f.grid = g
		}
	}
	if !goodGrid(f.grid) {
		return Figure{}, false
	}
	if w := r.Targets.WantedChance.Value; w > 0 && w < 1 {
		f.wanted = w
	}
	f.x, f.y = f.axis(f.grid.X), f.axis(f.grid.Y)
	absent := f.show(usedTrials(r))
	f.several = len(f.shown) > mostMarks
	f.x, f.y = f.x.padded(air), f.y.padded(air)
	title := f.finding()
	f.makeKey()
	return Figure{
		Name: name, Title: title, plain: f.plain(), Caption: f.caption(absent), Alt: f.alt(),
		key: f.key, several: f.several, panel: panelHeight + 30, paint: f.paint,
	}.sized(figureWidth), true
}

// axis is the range of one side of the grid.
func (f *regionFigure) axis(a result.Axis) axisRange {
	v, _ := variable(f.r, a.Variable)
	is := newRange(v.Log && a.Values[0] > 0)
	for _, x := range a.Values {
		is.take(x)
	}
	return is
}

// show places the trials, widening the axes to hold them, and counts those that
// have no place.
func (f *regionFigure) show(ts []*result.Trial) (absent int) {
	xName, yName := f.grid.X.Variable, f.grid.Y.Variable
	for _, t := range ts {
		s := shownTrial{fate: fateOf(t), far: f.far(t)}
		var okX, okY bool
		s.x, okX = trialValue(t, xName)
		s.y, okY = trialValue(t, yName)
		if okX && f.x.log && s.x <= 0 {
			okX = false
		}
		if xName == fatPercent && withoutEmulsifier(t) {
			s.strip, s.far = true, false
			okY, f.strip = true, f.strip || okX
		} else if okY && f.y.log && s.y <= 0 {
			okY = false
		}
		if !okX || !okY {
			absent++
			continue
		}
		f.x.take(s.x)
		if !s.strip {
			f.y.take(s.y)
		}
		f.shown = append(f.shown, s)
	}
	return absent
}

func withoutEmulsifier(t *result.Trial) bool {
	p, okP := deref(t.EmulsifierPercent)
	g, okG := deref(t.EmulsifierGrams)
	return (okP && p == 0) || (!okP && okG && g == 0)
}

// farShare is the part of a variable's tested range beyond which a trial counts
// as far from the plane shown.
const farShare = 0.2

// far says whether a trial lies well off the plane of the grid.
func (f *regionFigure) far(t *result.Trial) bool {
	m := mixOf(t)
	for _, name := range f.fixed() {
		if _, ok := mixValue(m, name); !ok {
			return true
		}
	}
	name, _ := f.offPlane(m)
	return name != ""
}

// offPlane names the variable by which a mix lies well off the plane of the
// grid, and its value there; "" if it lies on it.
func (f *regionFigure) offPlane(m result.Mix) (name string, got float64) {
	for _, name := range f.fixed() {
		want, _ := mixValue(f.grid.Fixed, name)
		got, ok := mixValue(m, name)
		v, known := variable(f.r, name)
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
func (f *regionFigure) fixed() []string {
	var names []string
	for _, v := range f.r.Variables {
		if _, ok := mixValue(f.grid.Fixed, v.Name); ok && v.Name != f.grid.X.Variable && v.Name != f.grid.Y.Variable {
			names = append(names, v.Name)
		}
	}
	return names
}

func (f *regionFigure) fixedWords() string {
	var words []string
	for _, name := range f.fixed() {
		v, _ := mixValue(f.grid.Fixed, name)
		words = append(words, amount(f.r, name, v))
	}
	return list(words)
}

// finding reads the workable part, or the best there is, off the grid.
func (f *regionFigure) finding() string {
	g := f.grid
	x := newRange(false)
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
				x.take(g.X.Values[i])
			}
		}
	}
	where := f.fixedWords()
	best := list([]string{amount(f.r, g.X.Variable, g.X.Values[bi]), amount(f.r, g.Y.Variable, g.Y.Values[bj])})
	chance := ChanceAgainst(g.Chance[bj][bi], f.wanted) + unproven(f.r)
	if f.wanted == 0 || x.empty() {
		if where != "" {
			where = "with " + where + ", "
		}
		sx, p, okX := surest(f.r, g.X.Variable)
		sy, _, okY := surest(f.r, g.Y.Variable)
		name := "the best"
		if okX && okY { // which lies near what worked, rarely at the very top
			name, chance = "the surest start", ChanceAgainst(p, f.wanted)+unproven(f.r)
			best = list([]string{amount(f.r, g.X.Variable, sx), amount(f.r, g.Y.Variable, sy)})
		}
		if f.wanted == 0 {
			return Capital(where + best + " works best, " + chance)
		}
		return Capital(fmt.Sprintf("%sno mix within what was tried works %s; %s, %s, works %s",
			where, wantedTimes(f.wanted), name, best, chance))
	}
	f.workable = true
	if where != "" {
		where += " and "
	}
	mixes := fmt.Sprintf("With %sthe right %s, mixes of %s ", where, rightName(f.r, g.Y.Variable), span(f.r, g.X.Variable, x.lo, x.hi))
	if but := unproven(f.r); but != "" {
		return mixes + "may work " + wantedTimes(f.wanted) + but
	}
	return mixes + "work at least " + wantedTimes(f.wanted)
}

// rightName is a variable after "the right".
func rightName(r *result.Results, name string) string {
	if name == emulsifierPercent || name == emulsifierGrams {
		return "amount of emulsifier"
	}
	return shortName(r, name)
}

func (f *regionFigure) makeKey() {
	f.key = []keyEntry{{keyBands, "works, times in 10", bandWide*vg.Length(len(Bands)) + 6}, {keyHatch, "not tried", 0}}
	if f.workable {
		f.key = append(f.key, keyEntry{keyLine(Accent, wantedWidth), f.wantedWords(), 0})
	}
	for _, s := range f.starts() {
		f.key = append(f.key, keyEntry{func(c draw.Canvas, at vg.Point) { drawStart(c, at, s.aim, 0.75) }, s.words, 0})
	}
	f.key = append(f.key, fateKey(f.r, f.shown)...)
	if f.strip {
		f.key = append(f.key, keyEntry{keyStrip, stripWords, 0})
	}
	if f.several {
		f.key = append(f.key, severalKey(math.MaxInt)...)
	}
	pale := "pale: far from "
	if f.several {
		pale = "pale: all far from "
	}
	for _, s := range f.shown {
		if s.far {
			f.key = append(f.key, keyEntry{func(c draw.Canvas, at vg.Point) {
				drawMarks(c, []mark{{at: at, fate: worked, far: true}})
			}, pale + f.fixedWords(), 0})
			break
		}
	}
}

// fateKey lists the marks that a figure shows.
func fateKey(r *result.Results, shown []shownTrial) []keyEntry {
	var n [fates]int
	for _, s := range shown {
		n[s.fate]++
	}
	var key []keyEntry
	for k := range fates {
		if n[k] > 0 {
			key = append(key, keyEntry{keyMark(k), fateWord(r, k), 0})
		}
	}
	return key
}

// bandWide is the width of a band's colour in the key.
const bandWide = 27 * vg.Length(1)

// keyBands are the colours of the chance as one scale, each with its numbers in it.
func keyBands(c draw.Canvas, at vg.Point) {
	sty := textStyle(8.5, false, Ink)
	x := at.X - bandWide*vg.Length(len(Bands))/2 - 3
	for i, colour := range Bands {
		box := vg.Rectangle{Min: vg.Point{X: x, Y: at.Y - 6}, Max: vg.Point{X: x + bandWide, Y: at.Y + 6}}
		c.SetColor(hex(colour))
		c.Fill(box.Path())
		c.SetLineStyle(line(Quiet, thinWidth))
		c.Stroke(box.Path())
		words := fmt.Sprintf("%d–%d", 2*i, 2*i+2)
		dim := size(sty, words)
		write(c, sty, vg.Point{X: x + (bandWide-dim.X)/2, Y: at.Y - dim.Y/2}, words)
		x += bandWide
	}
}

func keyHatch(c draw.Canvas, at vg.Point) {
	box := swatchBox(at)
	c.SetLineStyle(line(Quiet, thinWidth))
	for _, p := range hatch(box) {
		c.Stroke(p)
	}
	c.Stroke(box.Path())
}

// keyStrip is a strip under the rest of a picture.
func keyStrip(c draw.Canvas, at vg.Point) {
	box := swatchBox(at)
	c.SetLineStyle(line(Quiet, thinWidth))
	c.Stroke(box.Path())
	c.StrokeLine2(line(Quiet, thinWidth), box.Min.X, at.Y-1.5, box.Max.X, at.Y-1.5)
}

func swatchBox(at vg.Point) vg.Rectangle {
	return vg.Rectangle{Min: vg.Point{X: at.X - 7, Y: at.Y - 5}, Max: vg.Point{X: at.X + 7, Y: at.Y + 5}}
}

func (f *regionFigure) caption(absent int) string {
	var s []string
	s = append(s, "Each shade is how many times in 10 the next mix works.", tallied(f.r, fatesOf(f.shown)))
	if len(f.shown) > 1 && !f.several {
		s = append(s, apartWords)
	}
	if f.workable {
		s = append(s, fmt.Sprintf("The strong line is where it works %s%s.", wantedTimes(f.wanted), unproven(f.r)))
	}
	if words := f.edgeWords(); len(words) > 0 {
		where := "A foam"
		if f.workable {
			where = "Past it a foam"
		}
		s = append(s, where+" most often first "+either(words)+"; slanted words stand where.")
	}
	s = append(s, "Hatched: no trials near enough to say.")
	for _, start := range f.r.Starts {
		if name, v := f.offPlane(start.Mix); name != "" {
			s = append(s, fmt.Sprintf("The %s start is not marked: it has %s.", start.Aim, amount(f.r, name, v)))
		}
	}
	if f.several {
		s = append(s, severalWords)
		if f.strip {
			s = append(s, "The strip along the bottom is the trials without emulsifier.")
		}
	}
	s = append(s, leftOut(absent)...)
	return strings.Join(s, " ")
}

// leftOut says what a figure does not show.
func leftOut(absent int) []string {
	var s []string
	if absent > 0 {
		s = append(s, plural(absent, "trial has", "trials have")+" no place on these axes.")
	}
	return s
}

// edgeWords are what goes wrong in the parts of the map that get such a word.
func (f *regionFigure) edgeWords() (words []string) {
	beyond := f.beyond()
	for _, group := range groups(beyond, f.grid.LimitedBy) {
		word := f.edgeWord(group, len(beyond))
		if word != "" && !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// edgeWord is what goes wrong in a part of the map, where that is not too small.
func (f *regionFigure) edgeWord(group []node, all int) string {
	if len(group)*12 < all {
		return ""
	}
	return limitWord(f.r, f.grid.LimitedBy[group[0].j][group[0].i])
}

func fatesOf(shown []shownTrial) (out []fate) {
	for _, s := range shown {
		out = append(out, s.fate)
	}
	return out
}

// plain says what is shown.
func (f *regionFigure) plain() string {
	s := "Chance of working over " + shortName(f.r, f.grid.X.Variable) + " and " + shortName(f.r, f.grid.Y.Variable)
	if at := f.fixedWords(); at != "" {
		s += ", at " + at
	}
	return s
}

func (f *regionFigure) alt() string {
	return fmt.Sprintf("Map of the chance of working over %s (across) and %s (up), with %s drawn.",
		axisLabel(f.r, f.grid.X.Variable), axisLabel(f.r, f.grid.Y.Variable), plural(len(f.shown), "trial", "trials"))
}
