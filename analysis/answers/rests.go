package answers

import (
	"cmp"
	"math"
	"slices"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

const (
	restDraws     = 800
	mostForgotten = 300 // trials; of a longer log no single one moves anything
	mostNamed     = 3
	// What a trial must move to be named: a chance, and fat in points.
	movesChance, movesFat = 0.05, 1.0
)

// rests says of each headline how it moves when one trial is left out, and which trials it
// rests on. The draws are weighed anew, so that nothing is fitted.
func (s *Ground) rests(starts []result.Start) []result.Rest {
	trials := s.OnSurface()
	fat := s.Place(surface.FatPercent)
	if len(starts) == 0 || len(trials) > mostForgotten {
		return []result.Rest{}
	}
	first := starts[0]
	tops := s.Views(append(s.Contenders(first.Chance.Mean-Contending), s.Values(first.Mix)), fat, restDraws)
	var levels []View
	if fat >= 0 {
		levels = s.Views(s.Frontier(fat), fat, restDraws)
	}
	wanted := s.want.WantedChance.Value
	look := func(weights []float64) (h headlines) {
		h.chance, h.fat = Surest(tops, weights)
		h.rich, h.reaches = Richest(levels, wanted, weights)
		return h
	}
	all := look(nil)
	without := make([]headlines, len(trials))
	region.Parallel(len(trials), func(i int) { without[i] = look(s.forget(trials[i])) })

	// What the draws say with every trial is brought to what was named.
	chance := rest(result.Rest{Headline: "surest_chance", Value: first.Chance.Mean}, trials, movesChance, func(i int) *float64 {
		c := math.Min(math.Max(first.Chance.Mean+without[i].chance-all.chance, 0), 1)
		return &c
	})
	for i, t := range trials {
		if c := first.Chance.Mean + without[i].chance - all.chance; (c >= wanted) != (first.Chance.Mean >= wanted) {
			chance.Flips = append(chance.Flips, t.At.String())
		}
	}
	out := []result.Rest{chance}
	if fat < 0 {
		return out
	}
	out = append(out, rest(result.Rest{Headline: "surest_fat_percent", Value: *first.Mix.FatPercent}, trials, movesFat, func(i int) *float64 {
		f := *first.Mix.FatPercent + without[i].fat - all.fat
		return &f
	}))
	if len(starts) > 1 && all.reaches {
		rich := *starts[1].Mix.FatPercent
		out = append(out, rest(result.Rest{Headline: "richest_fat_percent", Value: rich}, trials, movesFat, func(i int) *float64 {
			if !without[i].reaches {
				return nil
			}
			f := rich + without[i].rich - all.rich
			return &f
		}))
	}
	return out
}

// headlines is what is named, as some weights of the draws have it.
type headlines struct {
	chance, fat, rich float64
	reaches           bool // some mix has the wanted chance
}

// forget is the weights of the draws without a trial.
func (s *Ground) forget(t *surface.Placed) []float64 {
	f := s.Basis.With(t.Beside).Features(t.Mix)
	var links []int
	place := map[int]int{}
	for i := range s.Links {
		if k := slices.Index(s.Links[i].Trials, t); k >= 0 {
			links = append(links, i)
			place[i] = k
		}
	}
	return s.Draws.Without(links, func(link int, draw []float64) float64 { return s.Links[link].LogLik(place[link], f, draw) })[:restDraws]
}

// rest fills in how a headline moves over the trials left out, and the few that move it
// most. A trial without which there is nothing to name moves it more than any other.
func rest(r result.Rest, trials []*surface.Placed, moves float64, without func(i int) *float64) result.Rest {
	r.Low, r.High = r.Value, r.Value
	r.Trials, r.Flips = []result.Influence{}, []string{}
	by := func(v *float64) float64 {
		if v == nil {
			return math.Inf(1)
		}
		return math.Abs(*v - r.Value)
	}
	for i, t := range trials {
		v := without(i)
		if v == nil {
			r.Flips = append(r.Flips, t.At.String())
		} else {
			r.Low, r.High = math.Min(r.Low, *v), math.Max(r.High, *v)
		}
		if by(v) >= moves {
			r.Trials = append(r.Trials, result.Influence{At: t.At.String(), ID: t.ID, Without: v})
		}
	}
	slices.SortStableFunc(r.Trials, func(a, b result.Influence) int { return cmp.Compare(by(b.Without), by(a.Without)) })
	r.Trials = r.Trials[:min(len(r.Trials), mostNamed)]
	return r
}
