package belief

import "math/rand/v2"

// Stream is an own random stream for one purpose, so that a change in one place
// moves no other number.
func Stream(seed, purpose uint64) *rand.Rand {
	return rand.New(rand.NewPCG(seed, purpose))
}

// The purposes.
const (
	streamModel  = 1 << 8 // plus the outcome's place in the chain
	StreamDraws  = 2 << 8
	streamPrior  = 3 << 8
	streamWidths = 4 << 8
	StreamLimits = 5 << 8
	streamFiner  = 6 << 8
)
