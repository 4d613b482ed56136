package analysis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"

	"gonum.org/v1/gonum/stat/distuv"
)

// What counts as the same formula where only percents are known: closer than a
// kitchen scale tells apart.
const (
	sameFat        = 0.25 // points
	sameEmulsifier = 0.03 // of itself
	sameHLB        = 0.15
)

// sameMix says whether two points of the surface are one formula within the
// weighing error.
func (s *surface) sameMix(a, b []float64) bool {
	for i, v := range s.vars {
		d := math.Abs(a[i] - b[i])
		switch v.Name {
		case fatPercent:
			if d > sameFat {
				return false
			}
		case blendHLB:
			if d > sameHLB {
				return false
			}
		default:
			if d > sameEmulsifier*math.Max(a[i], b[i]) {
				return false
			}
		}
	}
	return true
}

// group finds the trials that repeat a formula. A repeat differs by less than a
// point of fat, so each trial is held only against first trials near in fat.
func (s *study) group() {
	bucket := func(t *placed) int {
		if t.FatPercent == nil {
			return math.MinInt
		}
		return int(math.Floor(*t.FatPercent))
	}
	firsts := map[int][]int{}
	labelled := map[string]int{}
	for i := range s.trials {
		t := &s.trials[i]
		t.group = i
		at := bucket(t)
		match := func(j int) bool {
			o := &s.trials[j]
			if !s.repeats(o, t) {
				return false
			}
			t.group, t.shown.RepeatOf = j, o.At.String()
			return true
		}
		if j, named := labelled[repeatOf(t.Raw["repeat"])]; named {
			t.group, t.shown.RepeatOf = j, s.trials[j].At.String()
		} else if !slices.ContainsFunc(firsts[at], match) && !slices.ContainsFunc(firsts[at-1], match) && !slices.ContainsFunc(firsts[at+1], match) {
			firsts[at] = append(firsts[at], i)
		}
		if t.ID != "" {
			labelled[t.ID] = t.group
		}
	}
}

// repeatOf is the number of the trial that a label names: "repeat of 2" is 2.
func repeatOf(label string) string {
	words := strings.Fields(label)
	if len(words) == 0 {
		return ""
	}
	return words[len(words)-1]
}

// sameBeside says whether two trials were made the same way, whoever made them: a tenth
// of the range tried apart at most in every setting.
func (s *surface) sameBeside(a, b []float64) bool {
	for i := range a {
		if !s.beside[i].averaged && math.Abs(a[i]-b[i]) > 0.2 {
			return false
		}
	}
	return true
}

// repeats says whether b is a new mix of a's formula, made the same way.
func (s *study) repeats(a, b *placed) bool {
	if a.mix != nil && b.mix != nil && !s.sameBeside(a.beside, b.beside) {
		return false
	}
	if a.recipe != nil && b.recipe != nil {
		return formula.Same(a.recipe, b.recipe, s.out.Batch.ScaleStepGrams)
	}
	return len(a.mix) > 0 && len(b.mix) > 0 && s.sameMix(a.mix, b.mix) && s.sameConstants(a, b)
}

// sameConstants keeps trials apart that differ in a number that is no variable of
// the surface.
func (s *study) sameConstants(a, b *placed) bool {
	same := func(x, y *float64) bool {
		return (x == nil) == (y == nil) && (x == nil || math.Abs(*x-*y) <= sameEmulsifier*math.Abs(*x))
	}
	return same(a.FatPercent, b.FatPercent) && same(a.BlendHLB, b.BlendHLB) &&
		(same(a.EmulsifierPercent, b.EmulsifierPercent) || same(a.EmulsifierGrams, b.EmulsifierGrams))
}

// repeatability pools the scatter of repeats on the log scale over groups of one
// formula; only exact results can show a scatter.
func (s *study) repeatability() {
	for _, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		if !s.judged[o] {
			continue
		}
		groups := map[int][]float64{}
		for _, t := range s.trials {
			seen := t.Hold
			if o == result.DrainedPercent {
				seen = t.Drained
			}
			if seen == nil {
				continue
			}
			if v, exact := seen.Exact(); exact && v > 0 {
				groups[t.group] = append(groups[t.group], math.Log(v))
			}
		}
		r := result.Repeatability{Result: string(o)}
		ss := 0.0
		for i := range s.trials { // in order, so that sums do not depend on the map
			squares, df := scatter(groups[i])
			if df == 0 {
				continue
			}
			ss += squares
			r.Groups++
			r.Trials += df + 1
			r.DF += df
		}
		if r.DF > 0 {
			sd := math.Sqrt(ss / float64(r.DF))
			chi := distuv.ChiSquared{K: float64(r.DF)}
			r.SDLn, r.CVPercent = &sd, coefficient(sd)
			r.CVLow = coefficient(math.Sqrt(ss / chi.Quantile(0.95)))
			r.CVHigh = coefficient(math.Sqrt(ss / chi.Quantile(0.05)))
			if r.DF < 3 {
				r.Note = fmt.Sprintf("from %d repeats only: a rough figure", r.DF)
				if r.DF == 1 {
					r.Note = "from one repeat only: a rough figure"
				}
			}
		} else {
			r.Note = "no formula was made twice with an exact result, so the spread of repeats is not known"
		}
		s.out.Repeatability = append(s.out.Repeatability, r)
	}
}
