package workbook

import "testing"

func BenchmarkReport10000(b *testing.B) {
	r := kitchen()
	one := r.Trials
	r.Trials = nil
	for len(r.Trials) < 10000 {
		r.Trials = append(r.Trials, one...)
	}
	d := everyBlock()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Report(r, d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReport(b *testing.B) {
	r, d := kitchen(), everyBlock()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Report(r, d); err != nil {
			b.Fatal(err)
		}
	}
}
