package mark

import (
	"math"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"

	"foamfield/plots/drawing"
)

// A name beside a mark is nearer to a mark of its kind than to any other.
func TestNamesStandByTheirMarks(t *testing.T) {
	marks := []Mark{{At: vg.Point{X: 50, Y: 50}, Fate: Split}, {At: vg.Point{X: 50, Y: 40}, Fate: Clogged}, {At: vg.Point{X: 90, Y: 90}, Fate: Worked}}
	room := drawing.Placer{Frame: vg.Rectangle{Max: vg.Point{X: 200, Y: 100}}}
	for _, m := range marks {
		room.Avoid = append(room.Avoid, m.At)
	}
	n := drawing.Names{}
	for _, m := range marks {
		n.Open = append(n.Open, drawing.Entry{Words: m.Fate.word()})
	}
	c := new(recorder.Canvas)
	NameFates(draw.NewCanvas(c, 200, 100), &n, &room, Fate.word, marks)
	var texts []string
	for _, a := range c.Actions {
		if x, ok := a.(*recorder.FillString); ok {
			texts = append(texts, x.String)
		}
	}
	if len(texts) != len(marks) || len(room.Taken) != len(marks) || len(n.Open) != 0 {
		t.Fatalf("%d names, %d open", len(texts), len(n.Open))
	}
	for i, words := range texts {
		box := room.Taken[i]
		nearest, kind := math.Inf(1), Fate(0)
		for _, m := range marks {
			at := vg.Point{X: min(max(m.At.X, box.Min.X), box.Max.X), Y: min(max(m.At.Y, box.Min.Y), box.Max.Y)}
			if d := math.Hypot(float64(m.At.X-at.X), float64(m.At.Y-at.Y)); d < nearest {
				nearest, kind = d, m.Fate
			}
		}
		if kind.word() != words {
			t.Errorf("%q stands by a mark of %q", words, kind.word())
		}
	}
}
