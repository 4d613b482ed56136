package ingest

import (
	"fmt"
	"math"
	"strings"

	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// Overrun is how much gas a foam took up, in percent of its liquid. By mass, one
// cup is filled level with the mix and then with the foam: (mix − foam)/foam. By
// volume, the same liquid is measured before and after: (foam − mix)/mix. The
// two differ once liquid drains, so it is said which one it is.

// cup is one of the two measures of an overrun; a column of 0 = not logged.
type cup struct {
	known
	volume bool
}

func (b *row) cup(t *trial.Trial, f *field) cup {
	k, _ := b.single(t, f, 0, mostGrams, "a cup")
	return cup{k, f.want == quantity.Volume}
}

var (
	overrunByMass   = trial.Variable{Name: "overrun_percent", Label: "overrun by mass", Unit: "%", Result: true}
	overrunByVolume = trial.Variable{Name: "overrun_percent", Label: "overrun by volume", Unit: "%", Result: true}
)

// overrun works the overrun out from two cups and compares it with a logged one.
func (b *row) overrun(s *seen) {
	mix, foam := s.liquidCup, s.foamCup
	if !mix.ok() || !foam.ok() {
		return
	}
	if mix.volume != foam.volume {
		b.book.once("cups differ", trial.PleaseLook, b.table.heading(foam.col), "one cup is a mass and the other a volume, so the overrun cannot be worked out",
			"weigh the same cup full of mix and full of foam, and write g in both headers")
		return
	}
	v, how, less, more := overrunByMass, "(mix - foam)/foam", foam, mix
	if mix.volume {
		v, how, less, more = overrunByVolume, "(foam - mix)/mix", mix, foam
	}
	if less.value <= 0 || less.value > more.value {
		b.problem("cups do not fit", trial.PleaseLook, foam.col,
			fmt.Sprintf("%s of mix and %s of foam give no overrun", number(mix.value), number(foam.value)),
			"check the two columns: a cup of foam weighs less than the same cup of mix, and foam takes more room than its liquid")
		return
	}
	percent := 100 * (more.value - less.value) / less.value
	for i := range b.book.extras {
		if p := &b.book.extras[i]; p.name == v.Name {
			if math.Abs(p.value-percent) > max(5, 0.05*percent) {
				b.problem("overrun differs", trial.PleaseLook, foam.col, fmt.Sprintf("%s %% logged, %s %% by the two cups", number(p.value), number(percent)),
					"correct the overrun or the cups; the logged overrun is used")
			}
			return
		}
	}
	b.book.extra(v)
	b.book.told("overrun from two cups", b.at(foam.col), v.Label+" is worked out as "+how,
		"nothing to do: it is listed with the trial")
	b.book.extras = append(b.book.extras, pair{name: v.Name, value: percent})
}

// overrunAsLogged says of a column of overrun whether it is by mass or volume,
// and is false when its numbers are no percent.
func (r *reader) overrunAsLogged(t *table, f *field) bool {
	at := t.heading(f.col)
	if f.want != quantity.Percent {
		r.problem("overrun not a percent", trial.PleaseLook, at, quoted(f.header)+" is no percent, and is not used",
			"type the overrun in percent, or the grams of the same cup full of mix and full of foam under \"cup liquid g\" and \"cup foam g\"")
		return false
	}
	header := strings.ToLower(f.header)
	for _, how := range [...]struct{ word, by string }{{"vol", "by volume"}, {"aufschlag", "by volume"}, {"mass", "by mass"}, {"weight", "by mass"}, {"wt", "by mass"}} {
		if strings.Contains(header, how.word) {
			r.told("overrun as logged", at, quoted(f.header)+" is taken as overrun "+how.by, "write \"overrun by mass %\" or \"overrun by volume %\" to be sure")
			return true
		}
	}
	r.told("overrun as logged", at, quoted(f.header)+" does not say whether it is by mass or by volume, which differ once liquid drains",
		"write \"overrun by mass %\" or \"overrun by volume %\"")
	return true
}
