package plots

import "testing"

func BenchmarkSVG(b *testing.B) {
	for _, f := range All(kitchen(60, 1)) {
		b.Run(f.Name, func(b *testing.B) {
			size := 0
			for b.Loop() {
				svg, err := f.SVG()
				if err != nil {
					b.Fatal(err)
				}
				size = len(svg)
			}
			b.ReportMetric(float64(size), "bytes")
		})
	}
}

func BenchmarkPNG(b *testing.B) {
	for _, f := range All(kitchen(60, 1)) {
		b.Run(f.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := f.PNG(144); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkEverything is what a report asks for: every figure as SVG and PNG.
func BenchmarkEverything(b *testing.B) {
	r := kitchen(60, 1)
	for b.Loop() {
		for _, f := range All(r) {
			if _, err := f.SVG(); err != nil {
				b.Fatal(err)
			}
			if _, err := f.PNG(144); err != nil {
				b.Fatal(err)
			}
		}
	}
}
