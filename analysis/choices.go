package analysis

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/stat/distuv"
)

// A choice is what a trial had one of: which emulsifiers, which fat. Every level of it
// that was used often enough shifts each line by an offset of its own, pulled towards
// none, so that two pairs of emulsifiers are never taken for one because their HLB is
// the same. A start is made of one level and rests on where that level was tried.
const (
	// levelLeast is how many trials a level needs for an offset of its own; the rest
	// share one, and no start is made of them.
	levelLeast = 3
	mostKinds  = 4
	others     = "others"
)

// chooseChoices puts the choices that the trials differ in beside the mix.
func (s *study) chooseChoices() {
	trials := s.onSurface()
	if c := s.offsets("emulsifiers", emulsifierSets(trials), false); c != nil {
		s.out.Choices = append(s.out.Choices, *c)
	}
	if c := s.offsets("fat", mainFats(trials), false); c != nil {
		s.out.Choices = append(s.out.Choices, *c)
	}
	if c := s.offsets("cook", cooks(trials), true); c != nil {
		s.out.Averaged = append(s.out.Averaged, *c)
	}
}

// cooks names who made every trial. Nobody chooses a cook for a formula: chances are
// those of a mix made by any of them.
func cooks(trials []*placed) map[*placed]string {
	out := map[*placed]string{}
	for _, t := range trials {
		if t.Cook != "" {
			out[t] = t.Cook
		}
	}
	return out
}

// offsets puts the levels of one choice beside the mix, or of one thing to average over;
// of names each trial's level.
func (s *study) offsets(by string, of map[*placed]string, averaged bool) *result.Choice {
	times := map[string]int{}
	for _, name := range of {
		times[name]++
	}
	names := slices.SortedFunc(maps.Keys(times), func(a, b string) int {
		return cmp.Or(cmp.Compare(times[b], times[a]), cmp.Compare(a, b))
	})
	own := 0
	for own < min(len(names), mostKinds) && times[names[own]] >= levelLeast {
		own++
	}
	switch {
	case len(names) < 2, own == 0 && averaged:
		return nil
	case own == 0:
		s.out.SetAside = append(s.out.SetAside, result.SetVariable{Name: by, Label: "which " + by,
			Reason: "many were tried and none three times, so these trials cannot tell what each does"})
		return nil
	}
	level := map[string]int{}
	choice := result.Choice{By: by}
	for i, name := range names {
		if i > own { // shares the term of the first that is too seldom
			level[name] = level[names[own]]
			choice.Levels[own].Trials += times[name]
			continue
		}
		level[name] = len(s.beside)
		label := name
		if i == own {
			label = others
		}
		choice.Levels = append(choice.Levels, result.ChoiceLevel{Name: label, Trials: times[name]})
		term := len(s.beside)
		s.beside = append(s.beside, beside{name: by + ": " + label, of: by, level: label, averaged: averaged,
			prior: func(p prior) posterior.Normal {
				if averaged {
					return p.cook
				}
				return p.choice
			},
			at: func(t *placed) float64 {
				name, known := of[t]
				switch {
				case known && level[name] == term:
					return 1
				case !known && averaged:
					return 1 / float64(len(choice.Levels))
				}
				return 0
			}})
	}
	return &choice
}

// firstNames gives ingredients the log's first name for what is the same: one kind of one HLB.
type firstNames map[string]string

func (a firstNames) name(p trial.Amount) string {
	key := p.What.Name
	if h := p.What.HLB; h != nil {
		key = fmt.Sprint(key, h.Value)
	}
	if a[key] == "" {
		a[key] = p.Name
	}
	return a[key]
}

// emulsifierSets names the emulsifiers of every trial. One made with a part of a set
// only, such as the lipophilic one of a pair, is the end of that set's range of HLB.
func emulsifierSets(trials []*placed) map[*placed]string {
	names := firstNames{}
	sets := map[*placed][]string{}
	for _, t := range trials {
		var set []string
		for _, p := range t.Parts {
			if k := p.What.Kind; p.Grams > 0 && (k == ingredient.Emulsifier || k == ingredient.Ionic) {
				set = append(set, names.name(p))
			}
		}
		if len(set) > 0 {
			slices.Sort(set)
			sets[t] = slices.Compact(set)
		}
	}
	kinds := map[string][]string{}
	for _, set := range sets {
		kinds[strings.Join(set, " and ")] = set
	}
	whole := map[string]string{} // of a set, the one larger set it is a part of
	for name, set := range kinds {
		var larger []string
		for other, o := range kinds {
			if len(o) > len(set) && !slices.ContainsFunc(set, func(e string) bool { return !slices.Contains(o, e) }) {
				larger = append(larger, other)
			}
		}
		whole[name] = name
		if len(larger) == 1 {
			whole[name] = larger[0]
		}
	}
	out := map[*placed]string{}
	for t, set := range sets {
		out[t] = whole[strings.Join(set, " and ")]
	}
	return out
}

// mainFats names the fat that every trial has most of.
func mainFats(trials []*placed) map[*placed]string {
	names := firstNames{}
	out := map[*placed]string{}
	for _, t := range trials {
		most := 0.0
		for _, p := range t.Parts {
			if p.What.Kind == ingredient.Fat && p.Grams > most {
				most = p.Grams
				out[t] = names.name(p)
			}
		}
	}
	return out
}

// way is one combination of levels that trials were made with.
type way struct {
	beside []float64
	trials []*placed
}

// ways are those a start may be made in: of every choice a level used often enough.
// Where no choice was made there is one, with every trial.
func (s *study) ways() []way {
	var out []way
	for _, t := range s.onSurface() {
		held := slices.Clone(s.basis.Beside)
		chosen := 0
		for i, b := range s.beside {
			if b.chosen() && t.beside[i] != 0 && b.level != others {
				held[i] = t.beside[i]
				chosen++
			}
		}
		at := slices.IndexFunc(out, func(w way) bool { return slices.Equal(w.beside, held) })
		switch {
		case chosen < len(s.out.Choices): // one of the others, or the trial does not say
		case at < 0:
			out = append(out, way{held, []*placed{t}})
		default:
			out[at].trials = append(out[at].trials, t)
		}
	}
	if len(out) == 0 {
		out = []way{{s.basis.Beside, s.onSurface()}}
	}
	return out
}

// hold makes every mix from here on one of this way.
func (s *study) hold(w way) {
	s.basis = s.basis.With(w.beside)
	s.chain = s.chain.With(w.beside)
}

// levelOf is the level of a choice that a trial was made with, "" if it does not say.
func (s *study) levelOf(choice string, t *placed) string {
	for i, b := range s.beside {
		if b.of == choice && t.beside[i] != 0 {
			return b.level
		}
	}
	return ""
}

// madeAlike says whether a trial was made in the way that is held.
func (s *study) madeAlike(t *placed) bool {
	for i, b := range s.beside {
		if b.chosen() && t.beside[i] != s.basis.Beside[i] {
			return false
		}
	}
	return true
}

// choices says what mixes are named with, and what each other level does to the hold against the one that is held, or
// against the average.
func (s *study) choices() {
	for k := range s.out.Choices {
		c := &s.out.Choices[k]
		for i, b := range s.beside {
			if b.of == c.By && s.basis.Beside[i] != 0 {
				c.Held = b.level
			}
		}
		if c.Held != "" {
			s.compare(c)
		}
	}
	for k := range s.out.Averaged {
		s.compare(&s.out.Averaged[k])
	}
	for i, b := range s.beside {
		if b.of != "" {
			s.out.HeldTerms = append(s.out.HeldTerms, result.HeldTerm{Term: b.name, Value: s.basis.Beside[i]})
		}
	}
}

// compare holds every level of a choice against what the mixes are named with.
func (s *study) compare(c *result.Choice) {
	line := s.lineOf(result.HoldMinutes)
	if line == nil {
		return
	}
	z := distuv.UnitNormal.Quantile((1 + limitsLevel) / 2)
	for j := range c.Levels {
		l := &c.Levels[j]
		if l.Name == c.Held {
			continue
		}
		m, sd := line.Level(s.shift(c.By, l.Name))
		l.HoldFactor = &result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)}
		l.Verdict = verdict(distuv.UnitNormal.CDF(math.Abs(m) / sd))
	}
}

// shift is by what the features move from the named mixes' level of a choice to another.
func (s *study) shift(by, level string) []float64 {
	change := make([]float64, s.basis.Width())
	for i, b := range s.beside {
		if b.of == by {
			change[len(s.basis.Terms)+i] = -s.basis.Beside[i]
			if b.level == level {
				change[len(s.basis.Terms)+i]++
			}
		}
	}
	return change
}

// betweenCooks is the variance that a line of a mix made by any of the cooks has beside
// its scatter: the mean square of how far each is from their average.
func (s *study) betweenCooks(line *posterior.LinePosterior) (v float64) {
	for _, c := range s.out.Averaged {
		for _, l := range c.Levels {
			m, sd := line.Level(s.shift(c.By, l.Name))
			v += (m*m + sd*sd) / float64(len(c.Levels))
		}
	}
	return v
}
