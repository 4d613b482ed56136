package analysis

import (
	"cmp"
	"fmt"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
)

// passed is a use limit that a line of a formula is above.
type passed struct {
	line  formula.Line
	limit ingredient.Limit
}

// overLimits is the use limits that a formula passes: the kitchen's own, or those on file.
func overLimits(template *surface.Placed, f *formula.Formula, own bool) (over []passed) {
	for _, l := range f.Lines {
		for _, p := range template.Parts {
			if p.Name != l.Name {
				continue
			}
			for _, limit := range p.What.Limits {
				if limit.Own == own && l.PercentOfMix > limit.Percent*(1+1e-9) {
					over = append(over, passed{l, limit})
				}
			}
		}
	}
	return over
}

func limitNotes(over []passed) (notes []string) {
	for _, o := range over {
		notes = append(notes, fmt.Sprintf("%s is %.3g %% of this mix, above the %.3g %% on file for %s: check the text in force where you serve",
			o.line.Name, o.line.PercentOfMix, o.limit.Percent, o.limit.Where))
	}
	return notes
}

// limited says whether the kitchen has set a use limit for anything it logged.
func (s *study) limited() bool {
	for _, t := range s.Trials {
		for _, p := range t.Parts {
			if slices.ContainsFunc(p.What.Limits, func(l ingredient.Limit) bool { return l.Own }) {
				return true
			}
		}
	}
	return false
}

// mostTemplates is how many trials' proportions limits are tried with; of more, as many
// evenly among them.
const mostTemplates = 50

// keepsLimits says of a mix in grams whether it keeps the kitchen's own use limits; nil
// if there are none.
func (s *study) keepsLimits() func(mix []float64) bool {
	if !s.limited() {
		return nil
	}
	all := s.templates()
	var some []*surface.Placed
	for i := 0; i < len(all); i += (len(all) + mostTemplates - 1) / mostTemplates {
		some = append(some, all[i])
	}
	return func(mix []float64) bool {
		f, template, _ := s.gramsOf(mix, slices.Clone(some))
		return f == nil || len(overLimits(template, f, true)) == 0
	}
}

// acceptable says whether a mix moved by rounding may still be named.
func (s *study) acceptable(rounded []float64, p region.Point, aim result.Aim) bool {
	if c := s.clogChance(rounded); c != nil && *c > clogLimitStart {
		return false
	}
	chance := s.chain.Chance(rounded)
	if aim == result.Richest && chance < s.want.WantedChance.Value-0.01 {
		return false
	}
	return chance > p.Chance-0.1
}

// grams scales a mix to the batch on the scale's step, in the proportions of the
// nearest trial that worked, or else the nearest; a trial whose ingredients cannot
// make the mix gives way to the next.
func (s *study) grams(values []float64) (*formula.Formula, *surface.Placed, string) {
	return s.gramsOf(values, s.templates())
}

// templates is the trials whose proportions a formula may have.
func (s *study) templates() (out []*surface.Placed) {
	for _, t := range s.OnSurface() {
		if t.Recipe != nil && t.Flagged == "" && s.MadeAlike(t, s.Basis.Beside) && s.SameAdditions(t, s.Basis.Beside) {
			out = append(out, t)
		}
	}
	return out
}

func (s *study) gramsOf(values []float64, templates []*surface.Placed) (*formula.Formula, *surface.Placed, string) {
	if len(templates) == 0 {
		return nil, nil, "the log has no grams of each ingredient, so the formula is given in percent only"
	}
	slices.SortStableFunc(templates, func(a, b *surface.Placed) int {
		if (a.Works == works.Yes) != (b.Works == works.Yes) {
			return map[bool]int{true: -1, false: 1}[a.Works == works.Yes]
		}
		return cmp.Compare(s.Distance(values, a.Mix), s.Distance(values, b.Mix))
	})
	m := s.Mix(values)
	note := ""
	for _, t := range templates {
		w := formula.Wanted{FatPercent: works.Or(m.FatPercent, t.FatPercent),
			EmulsifierPercent: works.Or(m.EmulsifierPercent, t.EmulsifierPercent), BlendHLB: m.BlendHLB}
		f, err := formula.Solve(t.Recipe, w, s.out.Batch.Grams, s.out.Batch.ScaleStepGrams)
		if err == nil {
			return f, t, ""
		}
		if note == "" {
			note = err.Error()
		}
	}
	return nil, nil, note
}

// valuesOf is a formula's point on the surface.
func (s *study) valuesOf(f *formula.Formula) []float64 {
	grams := f.EmulsifierPercent / 100 * f.BatchGrams
	return s.Values(result.Mix{FatPercent: &f.FatPercent, EmulsifierPercent: &f.EmulsifierPercent, EmulsifierGrams: &grams, BlendHLB: f.BlendHLB})
}

func (s *study) lines(f *formula.Formula) []result.FormulaLine {
	out := []result.FormulaLine{}
	for _, l := range f.Lines {
		out = append(out, result.FormulaLine{Name: l.Name, Kind: l.What.Kind.String(), Grams: l.Grams, Ounces: s.ounces(l.Grams), PercentOfMix: l.PercentOfMix,
			PercentOfPart: l.PercentOfPart, Part: l.Part, WeighingErrorPercent: l.WeighingErrorPercent})
	}
	return out
}
