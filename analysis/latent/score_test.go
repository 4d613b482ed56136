package latent

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A score is where the normal has the same share, however far out.
func TestScoreKeepsTheShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := all[rapid.IntRange(0, 3).Draw(t, "family")]
		z := rapid.Float64Range(-300, 5).Draw(t, "z")
		s := fam.NormalScore(z, z)
		got, want := Normal.logBelow(s), fam.logBelow(z)
		if s > 0 {
			got, want = Normal.logAbove(s), fam.logAbove(z)
		}
		if math.Abs(got-want) > 1e-10*(1+math.Abs(want)) {
			t.Fatalf("%v %g: score %g has ln share %g, not %g", fam, z, s, got, want)
		}
	})
}
