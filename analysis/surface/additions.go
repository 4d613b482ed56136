package surface

import (
	"maps"
	"math"
	"slices"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// An addition is an ingredient that is neither fat nor water nor emulsifier: a thickener,
// salt, sugar. Its percent of the mix is a setting like any other, and a formula keeps
// that percent whatever fat it is solved for.

// fineness is how many values of an addition are told apart between nothing and the
// power of ten below the most that was used: percents nearer than that are one.
const fineness = 20

// addAdditions gives every trial the percents of the additions that the log varied,
// as extras beside the log's own, in copies of the trials it changes; it returns all
// extras and the names of the additions.
func addAdditions(logged []trial.Variable, trials []Placed) (extras []trial.Variable, names []string) {
	extras = logged
	percents := percentsOf(trials)
	for _, name := range slices.Sorted(maps.Keys(percents)) {
		v := percents[name]
		most := 0.0
		for _, x := range v {
			if x > most {
				most = x
			}
		}
		step := math.Pow(10, math.Floor(math.Log10(most))) / fineness
		low, high := math.Inf(1), 0.0
		for i, x := range v {
			if !math.IsNaN(x) {
				v[i] = math.Round(x/step) * step
				low, high = math.Min(low, v[i]), math.Max(high, v[i])
			}
		}
		key := trial.VariableName(name) + "_percent"
		taken := slices.ContainsFunc(extras, func(e trial.Variable) bool { return e.Name == key })
		if taken || high-low <= 2*step { // no more than weighing makes of one percent
			continue
		}
		extras = append(slices.Clip(extras), trial.Variable{Name: key, Label: name, Unit: "% of mix"})
		names = append(names, key)
		for i, x := range v {
			if !math.IsNaN(x) {
				trials[i].give(key, x)
			}
		}
	}
	return extras, names
}

// percentsOf is the percent of every addition, by the log's name for it, one a trial;
// NaN where a trial does not say.
func percentsOf(trials []Placed) map[string][]float64 {
	percents := map[string][]float64{}
	unsaid := make([]float64, len(trials))
	for i := range trials {
		if trials[i].Recipe == nil {
			unsaid[i] = math.NaN()
		}
	}
	names := firstNames{}
	for i, t := range trials {
		if t.Recipe == nil {
			continue
		}
		for _, p := range t.Parts {
			if k := p.What.Kind; p.Grams <= 0 || k != ingredient.Thickener && k != ingredient.Other {
				continue
			}
			name := names.name(p)
			if percents[name] == nil {
				percents[name] = slices.Clone(unsaid)
			}
			percents[name][i] += 100 * p.Grams / *t.BatchGrams
		}
	}
	return percents
}

// give adds an extra to a trial, whose maps others share.
func (t *Placed) give(name string, v float64) {
	own := *t.Trial
	own.Extras = maps.Clone(own.Extras)
	if own.Extras == nil {
		own.Extras = map[string]float64{}
	}
	own.Extras[name] = v
	t.Trial = &own
}
