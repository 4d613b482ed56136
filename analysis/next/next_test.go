package next

import (
	"strings"
	"testing"

	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Emulsifier counts as percent, whether the log says percent or grams, and one that is not
// said as none that is known to be less.
func TestThinnest(t *testing.T) {
	one := func(fat, percent, grams float64) trial.Composition {
		var c trial.Composition
		for _, n := range []struct {
			to **float64
			v  float64
		}{{&c.FatPercent, fat}, {&c.EmulsifierPercent, percent}, {&c.EmulsifierGrams, grams}} {
			if n.v >= 0 {
				*n.to = &n.v
			}
		}
		return c
	}
	const unknown = -1
	for _, c := range []struct {
		name   string
		trials []trial.Composition
		want   int // -1 = none
	}{
		{"least fat", []trial.Composition{one(50, 2, unknown), one(40, 2, unknown)}, 1},
		{"least emulsifier", []trial.Composition{one(45, 1, unknown), one(45, 3, unknown)}, 0},
		{"3 g of 300 g are 1 %, less than 2 %", []trial.Composition{one(45, 2, unknown), one(45, unknown, 3)}, 1},
		{"9 g of 300 g are more", []trial.Composition{one(45, 2, unknown), one(45, unknown, 9)}, 0},
		{"what is not said is not none", []trial.Composition{one(45, unknown, unknown), one(48, 3, unknown)}, 1},
		{"none says it", []trial.Composition{one(45, unknown, unknown), one(40, unknown, unknown)}, 1},
		{"no fat is known", []trial.Composition{one(unknown, 2, unknown)}, -1},
	} {
		var trials []surface.Placed
		for i := range c.trials {
			trials = append(trials, surface.Placed{Trial: &trial.Trial{Composition: c.trials[i]}})
		}
		got := thinnest(trials, 300)
		if c.want < 0 && got != nil || c.want >= 0 && got != &trials[c.want] {
			t.Errorf("%s: not trial %d", c.name, c.want)
		}
	}
}

// Who reads why the best trial is made again reads how often it was made, as people say it.
func TestRepeatReason(t *testing.T) {
	placed := func(group int, w works.Tri) surface.Placed {
		return surface.Placed{Trial: &trial.Trial{ID: "7"}, Group: group, Works: w}
	}
	for _, c := range []struct {
		best works.Tri
		more int
		want string
	}{
		{works.Yes, 0, "once more: one good trial may be luck"},
		{works.Yes, 1, ", made twice) once more, on another day"},
		{works.Yes, 2, ", made 3 times) once more, on another day"},
		{works.No, 1, "came nearest ("},
	} {
		s := &surface.Surface{Trials: []surface.Placed{placed(0, c.best), placed(1, works.Yes)}}
		for range c.more {
			s.Trials = append(s.Trials, placed(0, works.Yes))
		}
		if got := repeatReason(s, &s.Trials[0]); !strings.Contains(got, c.want) {
			t.Errorf("made %d times more: %q, want %q in it", c.more, got, c.want)
		}
	}
}
