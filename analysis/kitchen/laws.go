package kitchen

import "math/rand/v2"

// laws is what is true in a kitchen, whoever thought of it.
type laws interface {
	outcome(m Mix, day Day, rng *rand.Rand) Outcome
	chance(m Mix, targets Targets) float64 // over days
	cameOut(m Mix) float64                 // over days
}

// Day draws a day.
func (k *Kitchen) Day(rng *rand.Rand) Day { return Day(rng.NormFloat64()) }

// Outcome makes the mix once on the given day.
func (k *Kitchen) Outcome(m Mix, day Day, rng *rand.Rand) Outcome { return k.laws.outcome(m, day, rng) }

// Chance is the true chance that the next mix of m, on another day, works.
func (k *Kitchen) Chance(m Mix, targets Targets) float64 { return k.laws.chance(m, targets) }

// CameOut is the true chance that the next mix of m, on another day, comes out.
func (k *Kitchen) CameOut(m Mix) float64 { return k.laws.cameOut(m) }
