package blend

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result/blended"
	"foamfield/ingest/ingredient"
)

// StandIn is a mix with some emulsifiers instead of others.
type StandIn struct {
	Old, New *Blend
	HLBKept  bool // the blend HLB is that of the old mix, within what the scale does
	Compared []blended.Compared
}

// Replace puts the new emulsifiers in the place of those named. They take the grams of
// the old; where the blend HLB can be kept by sharing these out, among the new ones or
// with the emulsifiers that stay, it is.
func Replace(parts []Part, old []string, with []Part, batch, step float64) (*StandIn, error) {
	before, err := Of(parts, batch, step)
	if err != nil {
		return nil, err
	}
	stays, out, grams := split(parts, old)
	switch {
	case len(out) < len(old):
		for _, o := range old {
			if !slices.ContainsFunc(out, func(p Part) bool { return p.Name == o }) {
				return nil, fmt.Errorf("%s is not in the mix: name one of its emulsifiers", o)
			}
		}
	case grams == 0:
		return nil, fmt.Errorf("there is none of %s in the mix", strings.Join(old, " and "))
	}
	for _, p := range append(slices.Clone(out), with...) {
		if !p.What.WeighedAsEmulsifier() {
			return nil, fmt.Errorf("%s is no emulsifier (%s): only emulsifiers stand in for each other here", p.Name, p.What.Kind)
		}
	}
	for _, p := range with {
		if slices.ContainsFunc(stays, func(s Part) bool { return s.Name == p.Name }) {
			return nil, fmt.Errorf("%s is in the mix already: name another, or take it out with the others", p.Name)
		}
	}
	s := &StandIn{Old: before}
	after := slices.Clone(stays)
	for _, p := range with {
		p.Grams = grams / float64(len(with))
		after = append(after, p)
	}
	if kept, ok := keepHLB(after, before, step); ok {
		after, s.HLBKept = kept, true
	} else {
		for i := range after {
			after[i].Grams = onStep(after[i].Grams, step)
		}
	}
	if s.New, err = Of(after, batch, step); err != nil {
		return nil, err
	}
	s.Compared = compare(s, out, with)
	return s, nil
}

// split takes the named emulsifiers out.
func split(parts []Part, names []string) (stays, out []Part, grams float64) {
	for _, p := range parts {
		if slices.Contains(names, p.Name) {
			out, grams = append(out, p), grams+p.Grams
			continue
		}
		stays = append(stays, p)
	}
	return stays, out, grams
}

// keepHLB shares the emulsifier grams out so that the blend HLB stays, all else as it is.
func keepHLB(parts []Part, before *Blend, step float64) ([]Part, bool) {
	wanted := before.Totals.BlendHLB
	if wanted == nil {
		return nil, false
	}
	low, high, ok := Span(parts)
	if !ok || wanted.Value < low-1e-9 || wanted.Value > high+1e-9 {
		return nil, false
	}
	var emulsifiers []Part
	total := 0.0
	for _, p := range parts {
		if p.What.WeighedAsEmulsifier() {
			emulsifiers, total = append(emulsifiers, p), total+p.Grams
		}
	}
	// the emulsifiers among themselves: all of a mix of their grams
	rest := Part{Name: Rest, Grams: total, What: &ingredient.Ingredient{Kind: ingredient.Water, FatPercent: &ingredient.Range{}}}
	f, err := formula.Solve(append(emulsifiers, rest), formula.Wanted{EmulsifierPercent: 50, BlendHLB: &wanted.Value}, 2*total, step)
	if err != nil {
		return nil, false
	}
	shared := slices.Clone(parts)
	for i := range shared {
		if !shared[i].What.WeighedAsEmulsifier() {
			continue
		}
		shared[i].Grams = 0
		for _, l := range f.Lines {
			if l.Name == shared[i].Name {
				shared[i].Grams = l.Grams
			}
		}
	}
	return shared, true
}

// compare says in what the new ones match the old.
func compare(s *StandIn, old, new []Part) []blended.Compared {
	out := []blended.Compared{hlbCompared(s)}
	text := func(what string, of func(ingredient.Ingredient) string) {
		a, b := joined(old, of), joined(new, of)
		c := blended.Compared{What: what, Old: each(old, of), New: each(new, of), Same: blended.Differs}
		switch {
		case strings.Contains(a, unknown) || strings.Contains(b, unknown):
			c.Same = blended.Unclear
		case a == b:
			c.Old, c.New, c.Same = a, b, blended.Matches
		}
		out = append(out, c)
	}
	text("charge", func(i ingredient.Ingredient) string {
		if i.Kind == ingredient.Ionic {
			return "charged: no true HLB, and salt or acid may change what it does"
		}
		return "not charged"
	})
	for _, t := range []struct {
		what string
		of   func(ingredient.Traits) string
	}{
		{"thickening", func(t ingredient.Traits) string { return t.Thickens }},
		{"melting", func(t ingredient.Traits) string { return t.Cold }},
		{"taste", func(t ingredient.Traits) string { return t.Taste }},
	} {
		text(t.what, func(i ingredient.Ingredient) string {
			if said := t.of(ingredient.TraitsOf(i)); said != "" {
				return said
			}
			return unknown
		})
	}
	text("allergens by name", func(i ingredient.Ingredient) string {
		switch {
		case i.Allergens == nil:
			return unknown
		case len(i.Allergens) == 0:
			return "none by its name, check the label"
		}
		return strings.Join(i.Allergens, ", ")
	})
	return out
}

const unknown = "not known, ask the supplier"

func hlbCompared(s *StandIn) blended.Compared {
	c := blended.Compared{What: "blend HLB", Old: "none", New: "none", Same: blended.Differs}
	a, b := s.Old.Totals.BlendHLB, s.New.Totals.BlendHLB
	if a != nil {
		c.Old = fmt.Sprintf("%.1f", a.Value)
	}
	if b != nil {
		c.New = fmt.Sprintf("%.1f", b.Value)
	}
	if a != nil && b != nil && math.Abs(a.Value-b.Value) < 0.25 {
		c.Same = blended.Matches
	}
	return c
}

// joined says a thing of several ingredients once where all agree.
func joined(parts []Part, of func(ingredient.Ingredient) string) string {
	var all []string
	for _, p := range parts {
		if said := of(*p.What); !slices.Contains(all, said) {
			all = append(all, said)
		}
	}
	return strings.Join(all, "; ")
}

// each says whose a thing is where ingredients do not agree.
func each(parts []Part, of func(ingredient.Ingredient) string) string {
	var all []string
	for _, p := range parts {
		all = append(all, p.Name+": "+of(*p.What))
	}
	if first := of(*parts[0].What); joined(parts, of) == first {
		return first
	}
	return strings.Join(all, "; ")
}
