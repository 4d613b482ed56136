package kitchen

import "testing"

func BenchmarkChance(b *testing.B) {
	k := New(Hard, 1)
	m := near(k, 0.2)
	for b.Loop() {
		k.Chance(m, Usual)
	}
}

func BenchmarkBest(b *testing.B) {
	k := New(Hard, 1)
	for b.Loop() {
		k.Best(k.Tries, Usual)
	}
}
