package outcome

import (
	"fmt"
	"math"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Overrun is how much gas a foam took up, in percent of its liquid. By mass, one
// cup is filled level with the mix and then with the foam: (mix − foam)/foam. By
// volume, the same liquid is measured before and after: (foam − mix)/mix. The two
// differ once liquid drains, so it is said which one it is.

// overrun works the overrun out from two cups and compares it with a logged one.
func (j *judge) overrun() {
	mix, foam := j.seen.LiquidCup, j.seen.FoamCup
	if !mix.OK() || !foam.OK() {
		return
	}
	if mix.Volume != foam.Volume {
		j.say(trial.Check("cups differ", j.s.Heading(foam.Col), "one cup is a mass and the other a volume, so the overrun cannot be worked out",
			"weigh the same cup full of mix and full of foam, and write g in both headers").Once())
		return
	}
	v := trial.Variable{Name: "overrun_percent", Label: "overrun by mass", Unit: "%", Result: true}
	how, less, more := "(mix - foam)/foam", foam, mix
	if mix.Volume {
		v.Label, how, less, more = "overrun by volume", "(foam - mix)/mix", mix, foam
	}
	if less.Grams <= 0 || less.Grams > more.Grams {
		j.say(trial.Check("cups do not fit", j.at(foam.Cell), fmt.Sprintf("%s of mix and %s of foam give no overrun", say.Number(mix.Grams), say.Number(foam.Grams)),
			"check the two columns: a cup of foam weighs less than the same cup of mix, and foam takes more room than its liquid"))
		return
	}
	percent := 100 * (more.Grams - less.Grams) / less.Grams
	if logged := j.seen.Overrun; logged != nil {
		if math.Abs(*logged-percent) > max(5, 0.05*percent) {
			j.say(trial.Check("overrun differs", j.at(foam.Cell), fmt.Sprintf("%s %% logged, %s %% by the two cups", say.Number(*logged), say.Number(percent)),
				"correct the overrun or the cups; the logged overrun is used"))
		}
		return
	}
	j.say(trial.Note("overrun from two cups", j.at(foam.Cell), v.Label+" is worked out as "+how, "nothing to do: it is listed with the trial").Once())
	j.Values = append(j.Values, Value{v, percent})
}
