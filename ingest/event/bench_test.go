package event

import "testing"

func BenchmarkEvents(b *testing.B) {
	for b.Loop() {
		Of("clogged 2nd squirt, strained → fine, no oil")
	}
}
