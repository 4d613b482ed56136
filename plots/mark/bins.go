package mark

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/plots/drawing"
)

// Where there are more trials than can be told apart, those of one kind that fall
// into one cell of an even grid are drawn as one mark, the larger the more of them
// there are. No trial is left out.

// Most is how many trials a figure draws one by one.
const Most = 700

// cellSize is about the side of a cell: two marks of the middle size.
const cellSize = 12 * vg.Length(1)

// swelling is how much larger than the smallest a mark is drawn, by how many
// trials it stands for.
var swelling = []struct {
	most  int
	words string
	times vg.Length
}{
	{3, "up to 3 trials", 1},
	{15, "up to 15", 1.4},
	{math.MaxInt, "more", 1.7},
}

// swollen is the step of the mark of n trials.
func swollen(n int) (step int) {
	for n > swelling[step].most {
		step++
	}
	return step
}

// SeveralSizes says whether marks of up to so many trials differ in size.
func SeveralSizes(most int) bool { return most > swelling[0].most }

// SeveralWords is what a caption says of marks that are several trials.
const SeveralWords = "A larger mark is several trials that went alike: up to 3, up to 15, more."

// SeveralKey explains the sizes that marks of up to so many trials can have.
func SeveralKey(most int) []drawing.Entry {
	var key []drawing.Entry
	for _, s := range swelling[:swollen(most)+1] {
		key = append(key, drawing.Entry{Sign: func(c draw.Canvas, at vg.Point) {
			var p vg.Path
			Worked.outline(&p, at, crowdRadius*s.times)
			c.SetColor(drawing.Colour(drawing.Quiet))
			c.Fill(p)
		}, Words: s.words})
	}
	return key
}

// bin is how many things of one kind share a cell, and where their mark stands.
type bin[K comparable] struct {
	kind   K
	at     vg.Point
	trials int
	far    bool // all of them are
}

// gather puts things of one kind that lie in one cell together. The frames are
// cut into even cells each; a thing belongs to the first frame that holds it, or
// to the nearest cell of the last. The kinds of one cell share it out among them,
// the commonest first.
func gather[K comparable](things []bin[K], frames ...vg.Rectangle) []bin[K] {
	type cell struct{ frame, column, row int }
	var cells []cell
	shared := map[cell][]bin[K]{}
	for _, t := range things {
		var in cell
		for in.frame < len(frames)-1 && !drawing.Inside(frames[in.frame], t.at, 0) {
			in.frame++
		}
		f := frames[in.frame]
		in.column = place(t.at.X, f.Min.X, f.Max.X)
		in.row = place(t.at.Y, f.Min.Y, f.Max.Y)
		kinds := shared[in]
		if kinds == nil {
			cells = append(cells, in)
		}
		i := slices.IndexFunc(kinds, func(b bin[K]) bool { return b.kind == t.kind })
		if i < 0 {
			i, kinds = len(kinds), append(kinds, bin[K]{kind: t.kind, far: t.far})
		}
		kinds[i].trials++
		kinds[i].far = kinds[i].far && t.far
		shared[in] = kinds
	}
	var out []bin[K]
	for _, in := range cells {
		kinds := shared[in]
		slices.SortStableFunc(kinds, func(a, b bin[K]) int { return b.trials - a.trials })
		f := frames[in.frame]
		size := f.Size()
		w, h := size.X/vg.Length(parts(size.X)), size.Y/vg.Length(parts(size.Y))
		across := int(math.Ceil(math.Sqrt(float64(len(kinds)) * float64(w/h))))
		up := (len(kinds) + across - 1) / across
		across = (len(kinds) + up - 1) / up
		for i := range kinds {
			kinds[i].at = vg.Point{
				X: f.Min.X + w*(vg.Length(in.column)+(vg.Length(i%across)+0.5)/vg.Length(across)),
				Y: f.Min.Y + h*(vg.Length(in.row)+(vg.Length(i/across)+0.5)/vg.Length(up)),
			}
		}
		out = append(out, kinds...)
	}
	return out
}

// parts is into how many cells a length is cut; a strip is one cell high.
func parts(length vg.Length) int {
	n := int(math.Round(float64(length / cellSize)))
	if n < 4 {
		return 1
	}
	return n
}

// place is the cell of a length in which v lies.
func place(v, from, to vg.Length) int {
	n := parts(to - from)
	return min(max(int(float64((v-from)/(to-from))*float64(n)), 0), n-1)
}

// Gather is gather for the marks of fates.
func Gather(marks []Mark, frames ...vg.Rectangle) []Mark {
	var things []bin[Fate]
	for _, m := range marks {
		things = append(things, bin[Fate]{kind: m.Fate, at: m.At, far: m.Far})
	}
	marks = nil
	for _, b := range gather(things, frames...) {
		marks = append(marks, Mark{At: b.at, Fate: b.kind, Far: b.far, Trials: b.trials})
	}
	return marks
}

// disc appends a disc of two curves, round to 2 in 100, which takes half of what
// four take in a drawing.
func disc(p *vg.Path, c vg.Point, r vg.Length) {
	p.Move(vg.Point{X: c.X + r, Y: c.Y})
	for _, d := range []vg.Length{r, -r} {
		p.CubeTo(vg.Point{X: c.X + d, Y: c.Y + d*4/3}, vg.Point{X: c.X - d, Y: c.Y + d*4/3}, vg.Point{X: c.X - d, Y: c.Y})
	}
	p.Close()
}
