// Package blend is what emulsifiers weighed together come to, and back: percent of the mix
// and of its parts, blend HLB, what the scale does to them, how to weigh what is too
// little for it, and what changes when one emulsifier stands in for another.
package blend

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/result/blended"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
)

// Part is grams of one ingredient by the kitchen's name.
type Part = formula.Part

// Line is one ingredient of a blend. A nil percent has nothing to be of.
type Line struct {
	Name              string
	What              ingredient.Ingredient
	Grams             float64
	PercentOfMix      *float64
	PercentOfFat      *float64        // of the fat part as weighed; emulsifiers only
	PercentOfWater    *float64        // of the water part; emulsifiers only
	ScaleErrorPercent float64         // of its own grams, at most
	TooLittle         *blended.Remedy // nil where the scale is fine enough
}

// Blend is everything worked out of a mix.
type Blend struct {
	Lines   []Line
	Grams   float64 // of all that was named
	Batch   float64 // of the mix: the same, or what was said to be filled up to; 0 = not known
	Totals  mix.Totals
	Scale   mix.Errors // of what was named
	Over    []Over     // use limits
	Step    float64
	InParts bool // the grams are parts: no scale was asked
}

// Over is a use limit on file and how much of what shares it the mix has.
type Over struct {
	Names   []string
	Percent float64
	Limit   ingredient.Limit
	Passed  bool
}

// Of works out a mix. Batch is what it is filled up to with things not named, 0 if
// nothing else goes in; then a mix without fat and water is no mix but a blend of
// emulsifiers only, of which no percent can be said.
func Of(parts []Part, batch, step float64) (*Blend, error) {
	parts = slices.DeleteFunc(slices.Clone(parts), func(p Part) bool { return p.Grams <= 0 })
	mixed := mixParts(parts)
	t := mix.Total(mixed)
	if !(t.Grams > 0) {
		return nil, errors.New("nothing has any grams: type for example \"GMS 4, sucrose ester 15: 2\"")
	}
	b := &Blend{Grams: t.Grams, Totals: t, Scale: mix.WeighingErrors(mixed, step), Step: step}
	switch {
	case batch > 0 && batch < t.Grams*(1-1e-9):
		return nil, fmt.Errorf("the ingredients weigh %.4g g, more than the batch of %.4g g: leave the batch out, or make it larger", t.Grams, batch)
	case batch > 0:
		b.Batch = batch
	case t.FatPartGrams+t.WaterPartGrams > 0:
		b.Batch = t.Grams
	}
	for _, p := range parts {
		l := Line{Name: p.Name, What: *p.What, Grams: p.Grams, PercentOfMix: percent(p.Grams, b.Batch), ScaleErrorPercent: 100 * mix.WeighingError(p.Grams, step)}
		if p.What.WeighedAsEmulsifier() {
			l.PercentOfFat, l.PercentOfWater = percent(p.Grams, t.FatPartGrams), percent(p.Grams, t.WaterPartGrams)
		}
		bulk := p.What.Kind == ingredient.Fat || p.What.Kind == ingredient.Water
		if !bulk && l.ScaleErrorPercent > mostScaleError*(1+1e-9) {
			l.TooLittle = remedy(p, carrier(parts, p, t.BlendHLB), b.Batch, step)
		}
		b.Lines = append(b.Lines, l)
	}
	b.Over = limits(b)
	return b, nil
}

// EmulsifierPercent is of the batch; nil where there is none to be of.
func (b *Blend) EmulsifierPercent() *float64 { return percent(b.Totals.EmulsifierGrams, b.Batch) }

// EmulsifierScaleError is how far weighing can move the emulsifier percent, at most; nil
// where there is no percent. What fills up to a batch weighs so much more that its own
// error is nothing.
func (b *Blend) EmulsifierScaleError() *float64 {
	switch {
	case b.Batch == 0:
		return nil
	case b.Batch > b.Grams*(1+1e-9):
		weighed := 0.0
		for _, l := range b.Lines {
			if l.What.WeighedAsEmulsifier() {
				weighed++
			}
		}
		return percent(weighed*b.Step/2, b.Batch)
	case b.Scale.EmulsifierPercent == nil:
		return nil
	}
	return &b.Scale.EmulsifierPercent.AtMost
}

// FatPercent is of the batch; nil where it is not known.
func (b *Blend) FatPercent() *float64 {
	if b.Totals.FatGrams == nil || b.Batch > b.Grams*(1+1e-9) || b.Totals.FatPartGrams == 0 {
		return nil
	}
	return percent(*b.Totals.FatGrams, b.Batch)
}

func percent(grams, of float64) *float64 {
	if !(of > 0) {
		return nil
	}
	p := 100 * grams / of
	return &p
}

func mixParts(parts []Part) []mix.Part {
	out := make([]mix.Part, len(parts))
	for i, p := range parts {
		out[i] = mix.Part{Grams: p.Grams, What: *p.What}
	}
	return out
}

// limits are the use limits on file of what is in the mix. Those of one text are shared.
func limits(b *Blend) (out []Over) {
	for _, l := range b.Lines {
		if l.PercentOfMix == nil {
			continue
		}
	next:
		for _, limit := range l.What.Limits {
			for i := range out {
				if out[i].Limit.Where == limit.Where {
					out[i].Names, out[i].Percent = append(out[i].Names, l.Name), out[i].Percent+*l.PercentOfMix
					continue next
				}
			}
			out = append(out, Over{Names: []string{l.Name}, Percent: *l.PercentOfMix, Limit: limit})
		}
	}
	for i := range out {
		out[i].Passed = out[i].Percent > out[i].Limit.Percent*(1+1e-9)
	}
	return out
}

// Wanted is a blend to reach: of the emulsifiers at hand, so much of the mix at that HLB.
type Wanted struct {
	EmulsifierPercent float64
	HLB               *float64 // nil = the emulsifiers in equal parts
	FatPercent        *float64 // nil = the rest of the mix is not worked out
	Batch, Step       float64
}

// Rest is the name of what a wanted blend is filled up with where no fat or water is named.
const Rest = "the rest of the mix"

// Reach finds the grams of what is at hand that are the blend wanted. A mix out of reach
// is a *formula.Unreachable, whose sentence says what can be reached.
func Reach(at []Part, w Wanted) (*Blend, error) {
	template, bulk := make([]Part, 0, len(at)+1), false
	for _, p := range at {
		p.Grams = 1
		bulk = bulk || p.What.Kind == ingredient.Fat || p.What.Kind == ingredient.Water
		template = append(template, p)
	}
	wanted := formula.Wanted{EmulsifierPercent: w.EmulsifierPercent, BlendHLB: w.HLB}
	switch {
	case w.FatPercent != nil:
		wanted.FatPercent = *w.FatPercent
	case bulk:
		return nil, errors.New("fats or waters are named, but not how much fat the mix has: give --fat, or name only the emulsifiers")
	default:
		template = append(template, Part{Name: Rest, Grams: 1, What: &ingredient.Ingredient{Name: Rest, Kind: ingredient.Water, FatPercent: &ingredient.Range{}}})
	}
	if err := reachable(at, w.HLB); err != nil {
		return nil, err
	}
	f, err := formula.Solve(template, wanted, w.Batch, w.Step)
	if err != nil {
		return nil, err
	}
	var parts []Part
	for _, l := range f.Lines {
		if l.Name != Rest {
			parts = append(parts, Part{Name: l.Name, Grams: l.Grams, What: &l.What})
		}
	}
	return Of(parts, f.BatchGrams, w.Step)
}

// reachable refuses a blend HLB outside those of the emulsifiers, with what to do.
func reachable(at []Part, hlb *float64) error {
	if hlb == nil {
		return nil
	}
	for _, p := range at {
		if p.What.Kind == ingredient.Emulsifier && p.What.HLB == nil {
			return fmt.Errorf("the HLB of %s is not known, so a blend HLB of %.4g cannot be worked out: type its grade behind the name, such as sucrose ester 15, or its HLB on an Ingredients sheet", p.Name, *hlb)
		}
	}
	low, high, ok := Span(at)
	side := "above"
	switch {
	case *hlb > ingredient.MostHLB:
		return fmt.Errorf("a blend HLB of %.4g cannot be reached: no emulsifier without charge has one above %d", *hlb, ingredient.MostHLB)
	case !ok:
		return fmt.Errorf("a blend HLB of %.4g cannot be reached: none of these has an HLB, so name emulsifiers that have one", *hlb)
	case *hlb < low:
		side = "below"
	case *hlb <= high:
		return nil
	}
	if high-low < 1e-9 {
		return fmt.Errorf("a blend HLB of %.4g cannot be reached with HLB %.4g only: name a second emulsifier, of an HLB %s %.4g", *hlb, low, side, *hlb)
	}
	return fmt.Errorf("a blend HLB of %.4g cannot be reached: these emulsifiers go from %.4g to %.4g, so name one of an HLB %s %.4g too", *hlb, low, high, side, *hlb)
}

// Span is the lowest and the highest blend HLB that emulsifiers reach; false if none has one.
func Span(at []Part) (low, high float64, ok bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range at {
		if p.What.Kind == ingredient.Emulsifier && p.What.HLB != nil {
			low, high, ok = min(low, p.What.HLB.Value), max(high, p.What.HLB.Value), true
		}
	}
	return low, high, ok
}
