package shown

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// What a number displays as gives the number back to 15 digits.
func TestPlainNumberReadsBack(t *testing.T) {
	// Half a unit of the fifteenth digit, and half a unit of the last bit for reading
	// it back.
	const off = 5e-15 + 0x1p-53
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		text := plain(x)
		back, err := strconv.ParseFloat(text, 64)
		if math.Abs(x) > 1.79e308 {
			return // may round up past the last float
		}
		if err != nil || math.Abs(back-x) > off*math.Abs(x) && math.Abs(x) > 1e-300 {
			t.Fatalf("%v is written %q and reads %v, %v", x, text, back, err)
		}
	})
}
