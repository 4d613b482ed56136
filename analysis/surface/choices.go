package surface

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
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
func (b *beside) chooseChoices() {
	if c := b.offsets("emulsifiers", emulsifierSets(b.trials), false); c != nil {
		b.choices = append(b.choices, *c)
	}
	if c := b.offsets("fat", mainFats(b.trials), false); c != nil {
		b.choices = append(b.choices, *c)
	}
	if c := b.offsets("cook", cooks(b.trials), true); c != nil {
		b.averaged = append(b.averaged, *c)
	}
}

// cooks names who made every trial. Nobody chooses a cook for a formula: chances are
// those of a mix made by any of them.
func cooks(trials []*Placed) map[*Placed]string {
	out := map[*Placed]string{}
	for _, t := range trials {
		if t.Cook != "" {
			out[t] = t.Cook
		}
	}
	return out
}

// offsets puts the levels of one choice beside the mix, or of one thing to average over;
// of names each trial's level.
func (b *beside) offsets(by string, of map[*Placed]string, averaged bool) *result.Choice {
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
		b.aside = append(b.aside, result.SetVariable{Name: by, Label: "which " + by,
			Reason: "many were tried and none three times, so what each does is unclear"})
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
		term := len(b.terms)
		level[name] = term
		label := name
		if i == own {
			label = others
		}
		choice.Levels = append(choice.Levels, result.ChoiceLevel{Name: label, Trials: times[name]})
		b.terms = append(b.terms, Term{Name: by + ": " + label, Of: by, Level: label, Averaged: averaged,
			at: func(t *Placed) float64 {
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
func emulsifierSets(trials []*Placed) map[*Placed]string {
	names := firstNames{}
	sets := map[*Placed][]string{}
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
	out := map[*Placed]string{}
	for t, set := range sets {
		out[t] = whole[strings.Join(set, " and ")]
	}
	return out
}

// mainFats names the fat that every trial has most of.
func mainFats(trials []*Placed) map[*Placed]string {
	names := firstNames{}
	out := map[*Placed]string{}
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
