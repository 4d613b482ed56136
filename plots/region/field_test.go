package region

import (
	"math"
	"testing"

	"gonum.org/v1/plot/vg"

	"foamfield/plots/drawing"
)

// hill is a field over the unit square of n nodes a side, scaled to 100 points.
func hill(n int, chance func(x, y float64) float64, tested func(x, y float64) bool) field {
	var f field
	for i := range n {
		f.x = append(f.x, vg.Length(100*float64(i)/float64(n-1)))
		f.y = append(f.y, vg.Length(100*float64(i)/float64(n-1)))
	}
	for j := range n {
		var p []float64
		var t []bool
		for i := range n {
			x, y := float64(f.x[i])/100, float64(f.y[j])/100
			p, t = append(p, chance(x, y)), append(t, tested(x, y))
		}
		f.chance, f.tested = append(f.chance, p), append(f.tested, t)
	}
	return f
}

// area is the signed area of the closed outlines of a path.
func area(p vg.Path) float64 {
	sum := 0.0
	var first, last vg.Point
	for _, c := range p {
		switch c.Type {
		case vg.MoveComp:
			first, last = c.Pos, c.Pos
		case vg.LineComp:
			sum += float64(last.X*c.Pos.Y - c.Pos.X*last.Y)
			last = c.Pos
		case vg.CloseComp:
			sum += float64(last.X*first.Y - first.X*last.Y)
		}
	}
	return sum / 2
}

func TestRegionArea(t *testing.T) {
	everywhere := func(float64, float64) bool { return true }
	round := func(x, y float64) float64 { return 1 - math.Hypot(x-0.5, y-0.5) }
	tests := []struct {
		name   string
		chance func(x, y float64) float64
		tested func(x, y float64) bool
		level  float64
		want   float64 // by geometry
		within float64
	}{
		{"a slope, half of it", func(x, y float64) float64 { return x }, everywhere, 0.5, 5000, 1e-6},
		{"all of it", func(x, y float64) float64 { return x }, everywhere, math.Inf(-1), 10000, 1e-6},
		{"none of it", func(x, y float64) float64 { return x }, everywhere, 2, 0, 1e-6},
		{"a circle of radius 30", round, everywhere, 0.7, math.Pi * 900, 15},
		{"a ring has a hole", func(x, y float64) float64 { return 1 - math.Abs(math.Hypot(x-0.5, y-0.5)-0.3) }, everywhere, 0.9, math.Pi * (1600 - 400), 20},
		{"untested half cut off between nodes", func(x, y float64) float64 { return 1 }, func(x, y float64) bool { return x < 0.5 }, 0, 4900, 101},
		{"a saddle joins its high corners", func(x, y float64) float64 { return 0.5 + (x-0.5)*(y-0.5) }, everywhere, 0.5, 5000, 30},
	}
	for _, tt := range tests {
		f := hill(51, tt.chance, tt.tested)
		if got := area(f.above(tt.level)); math.Abs(got-tt.want) > tt.within {
			t.Errorf("%s: area %.2f, want %.2f", tt.name, got, tt.want)
		}
	}
}

func TestContourIsOneClosedLine(t *testing.T) {
	f := hill(51, func(x, y float64) float64 { return 1 - math.Hypot(x-0.5, y-0.5) }, func(x, y float64) bool { return true })
	lines := f.contour(0.7)
	if len(lines) != 1 {
		t.Fatalf("%d lines", len(lines))
	}
	l := lines[0]
	if l[0] != l[len(l)-1] {
		t.Errorf("the line ends at %v, not where it began, %v", l[len(l)-1], l[0])
	}
	for _, p := range l {
		if r := math.Hypot(float64(p.X-50), float64(p.Y-50)); math.Abs(r-30) > 0.1 {
			t.Fatalf("%v is %.3f from the middle, want 30", p, r)
		}
	}
}

func TestContourStopsWhereNothingWasTried(t *testing.T) {
	f := hill(51, func(x, y float64) float64 { return x }, func(x, y float64) bool { return y < 0.5 })
	lines := f.contour(0.51)
	if len(lines) != 1 {
		t.Fatalf("%d lines", len(lines))
	}
	for _, p := range lines[0] {
		if p.Y > 50 || math.Abs(float64(p.X)-51) > 1e-9 {
			t.Errorf("the line passes %v", p)
		}
	}
}

func TestHatchStaysInside(t *testing.T) {
	for _, r := range []vg.Rectangle{
		{Min: vg.Point{X: 3, Y: 5}, Max: vg.Point{X: 90, Y: 40}},
		{Min: vg.Point{X: 3, Y: 5}, Max: vg.Point{X: 20, Y: 80}},
	} {
		for _, p := range hatch(r) {
			for _, c := range p {
				if !drawing.Inside(r, c.Pos, 1e-9) {
					t.Errorf("%v is outside %v", c.Pos, r)
				}
			}
		}
	}
}
