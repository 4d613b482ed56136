package kitchen

import (
	"math"
	"math/rand/v2"
)

// slip types one value of the log wrong. A hold is only mistyped where a number
// stands, else it is the fat.
func slip(log []Logged, rng *rand.Rand) {
	l := &log[rng.IntN(len(log))]
	l.Slip = Slip(1 + rng.IntN(3))
	if l.Slip == HoldSlip && (l.Hold == nil || l.Hold.Low != l.Hold.High) {
		l.Slip = FatSlip
	}
	switch l.Slip {
	case HoldSlip:
		wrong := mistype(l.Hold.Low)
		l.Hold = &Bounds{wrong, wrong}
	case FatSlip:
		l.OilGrams = mistype(l.OilGrams)
	case EmulsifierSlip:
		l.LipophilicGrams = mistype(l.LipophilicGrams)
	}
}

// mistype swaps the two leading digits (126.4 becomes 216.4, 3.4 becomes 4.3).
// Where that changes nothing or loses a digit the key beside the first is hit
// (22 becomes 32, 105.3 becomes 205.3); a lone digit is typed twice (7 becomes
// 77) or loses its point (0.8 becomes 8).
func mistype(x float64) float64 {
	tenths := math.Round(10 * x)
	if tenths < 10 {
		return tenths
	}
	if tenths < 100 && math.Mod(tenths, 10) == 0 {
		return 11 * tenths / 10
	}
	place := math.Pow(10, math.Floor(math.Log10(tenths)))
	first := math.Floor(tenths / place)
	second := math.Floor(math.Mod(tenths, place) / (place / 10))
	switch {
	case second != 0 && second != first:
		tenths += (second-first)*place - (second-first)*place/10
	case first == 9:
		tenths -= place
	default:
		tenths += place
	}
	return tenths / 10
}
