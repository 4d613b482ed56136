package region

import (
	"math/rand/v2"
	"testing"
)

// Reach is what the shares themselves say, mix by mix.
func TestReach(t *testing.T) {
	c, mixes := invented(t, 60, 3)
	d := c.Draw(200, rand.New(rand.NewPCG(3, 3)))
	few := mixes[:7]
	some := 0
	for _, least := range []float64{0, 0.3, 0.6, 0.9, 1} {
		want := make([]bool, 200)
		for _, mix := range few {
			for k, share := range d.Believed(mix, 200) {
				want[k] = want[k] || share >= least
			}
		}
		for k, reaches := range d.Reach(few, least) {
			if reaches != want[k] {
				t.Errorf("draw %d reaches %v: %v, want %v", k, least, reaches, want[k])
			}
			if reaches && least > 0 && least < 1 {
				some++
			}
		}
	}
	if some == 0 || some == 3*200 {
		t.Errorf("%d of 600 draws reach: this tests nothing", some)
	}
}
