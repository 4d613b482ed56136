package weigh

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
)

// Passed is a use limit that a line of a formula is above.
type Passed struct {
	line  formula.Line
	limit ingredient.Limit
}

// OverLimits is the use limits that a formula passes: the kitchen's own, or those on file.
func OverLimits(template *surface.Placed, f *formula.Formula, own bool) (over []Passed) {
	if template == nil { // no ingredient of it is known
		return nil
	}
	for _, l := range f.Lines {
		for _, p := range template.Parts {
			if p.Name != l.Name {
				continue
			}
			for _, limit := range p.What.Limits {
				if limit.Own == own && l.PercentOfMix > limit.Percent*(1+1e-9) {
					over = append(over, Passed{l, limit})
				}
			}
		}
	}
	return over
}

// LimitNotes puts use limits on file that are passed in words, one sentence an ingredient.
func LimitNotes(over []Passed) (notes []string) {
	for i, o := range over {
		if slices.ContainsFunc(over[:i], func(p Passed) bool { return p.line.Name == o.line.Name }) {
			continue
		}
		var limits []string
		for _, p := range over[i:] {
			if p.line.Name == o.line.Name {
				limits = append(limits, fmt.Sprintf("%.3g %% on file for %s", p.limit.Percent, p.limit.Where))
			}
		}
		notes = append(notes, fmt.Sprintf("%s is %.3g %% of this mix, above the %s: check the text in force where you serve", o.line.Name, o.line.PercentOfMix, strings.Join(limits, ", and the ")))
	}
	return notes
}

// Limited says whether the kitchen has set a use limit for anything it logged.
func Limited(trials []surface.Placed) bool {
	for _, t := range trials {
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

// KeepsLimits says of a mix in grams whether it keeps the kitchen's own use limits; nil
// if there are none.
func (s *Scale) KeepsLimits() func(mix []float64) bool {
	if !Limited(s.on.Trials) {
		return nil
	}
	all := s.templates()
	var some []*surface.Placed
	for i := 0; i < len(all); i += (len(all) + mostTemplates - 1) / mostTemplates {
		some = append(some, all[i])
	}
	return func(mix []float64) bool {
		f, template, _ := s.gramsOf(mix, some)
		return f == nil || len(OverLimits(template, f, true)) == 0
	}
}

// Grams scales a mix to the batch on the scale's step, in the proportions of the
// nearest trial that worked, or else the nearest; a trial whose ingredients cannot
// make the mix gives way to the next.
func (s *Scale) Grams(values []float64) (*formula.Formula, *surface.Placed, string) {
	return s.gramsOf(values, s.templates())
}

// templates is the trials whose proportions a formula may have.
func (s *Scale) templates() (out []*surface.Placed) {
	for _, t := range s.on.OnSurface() {
		if t.Recipe != nil && t.Flagged == "" && s.on.MadeAlike(t, s.held) && s.on.SameAdditions(t, s.held) {
			out = append(out, t)
		}
	}
	return out
}

func (s *Scale) gramsOf(values []float64, templates []*surface.Placed) (*formula.Formula, *surface.Placed, string) {
	m := s.on.Mix(values)
	if len(templates) == 0 {
		return s.inParts(m)
	}
	note := ""
	for _, t := range s.nearest(values, templates) {
		w := formula.Wanted{FatPercent: works.Or(m.FatPercent, t.FatPercent),
			EmulsifierPercent: works.Or(m.EmulsifierPercent, t.EmulsifierPercent), BlendHLB: m.BlendHLB}
		f, err := s.Solve(t.Recipe, w)
		if err == nil {
			note := ""
			if t.Blends() && m.BlendHLB != nil {
				note = blended(*m.BlendHLB)
			}
			return f, t, note
		}
		if note == "" {
			note = err.Error()
		}
	}
	return nil, nil, note
}

// nearest puts those that worked first, and of these and of the others the nearest.
func (s *Scale) nearest(values []float64, templates []*surface.Placed) []*surface.Placed {
	type near struct {
		*surface.Placed
		failed int
		far    float64
	}
	all := make([]near, len(templates))
	for i, t := range templates {
		all[i] = near{t, 1, s.on.Distance(values, t.Mix)}
		if t.Works == works.Yes {
			all[i].failed = 0
		}
	}
	slices.SortStableFunc(all, func(a, b near) int {
		return cmp.Or(cmp.Compare(a.failed, b.failed), cmp.Compare(a.far, b.far))
	})
	out := make([]*surface.Placed, len(all))
	for i, n := range all {
		out[i] = n.Placed
	}
	return out
}

// Values is a formula's point on the surface.
func (s *Scale) Values(f *formula.Formula) []float64 {
	grams := f.EmulsifierPercent / 100 * f.BatchGrams
	return s.on.Values(result.Mix{FatPercent: &f.FatPercent, EmulsifierPercent: &f.EmulsifierPercent, EmulsifierGrams: &grams, BlendHLB: f.BlendHLB})
}

// Lines is a formula as the results carry it.
func (s *Scale) Lines(f *formula.Formula) []result.FormulaLine {
	out := []result.FormulaLine{}
	little := tooLittle(f, s.batch.ScaleStepGrams)
	for _, l := range f.Lines {
		line := result.FormulaLine{Name: l.Name, Kind: l.What.Kind.String(), Grams: l.Grams, Ounces: ounces(s.batch, l.Grams), PercentOfMix: l.PercentOfMix,
			PercentOfPart: l.PercentOfPart, Part: l.Part, WeighingErrorPercent: l.WeighingErrorPercent}
		line.TooLittle = little[l.Name]
		if h := l.What.HLB; l.Blended && h != nil {
			line.BlendedToHLB = &h.Value
		}
		line.Together = slices.ContainsFunc(threeParts, func(p formula.Part) bool { return p.Name == l.Name })
		out = append(out, line)
	}
	return out
}

// AsMade is a trial's own formula scaled to the batch.
func (s *Scale) AsMade(t *surface.Placed) []result.FormulaLine {
	if t.Recipe == nil || t.FatPercent == nil || t.EmulsifierPercent == nil {
		return []result.FormulaLine{}
	}
	f, err := s.Solve(t.Recipe, formula.Wanted{FatPercent: *t.FatPercent, EmulsifierPercent: *t.EmulsifierPercent, BlendHLB: t.BlendHLB})
	if err != nil {
		return []result.FormulaLine{}
	}
	return s.Lines(f)
}
