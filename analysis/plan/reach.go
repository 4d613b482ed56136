package plan

import (
	"fmt"
	"math"

	"foamfield/ingest/ingredient"
)

// ranges settles the box: what was said if the ingredients reach it, else what is usual as
// far as they do.
func (a Asked) ranges() (Ranges, error) {
	r := Usual
	if err := a.complete(); err != nil {
		return r, err
	}
	hlb, err := a.hlb()
	if err != nil {
		return r, err
	}
	r.HLB = hlb
	if a.Given.Emulsifier != nil {
		r.Emulsifier = *a.Given.Emulsifier
	}
	lean, rich := a.fatReach(r.Emulsifier.High)
	if a.Given.Fat != nil {
		r.Fat = *a.Given.Fat
		switch {
		case r.Fat.High > rich+0.5:
			return r, fmt.Errorf("%.4g %% fat cannot be reached: beside %.3g %% emulsifier these ingredients make at most %.3g %%, so end the range there, or name a richer fat", r.Fat.High, r.Emulsifier.High, rich)
		case r.Fat.Low < lean-0.5:
			return r, fmt.Errorf("%.4g %% fat cannot be reached: these ingredients make at least %.3g %%, so begin the range there, or name a leaner water part", r.Fat.Low, lean)
		}
	} else {
		if rich < r.Fat.High {
			r.Fat = Span{math.Min(r.Fat.Low, math.Round(rich*0.6)), math.Floor(rich)}
		}
		if lean > r.Fat.Low {
			r.Fat.Low = math.Ceil(lean)
		}
		if !(r.Fat.High > r.Fat.Low) {
			return r, fmt.Errorf("these ingredients go from %.3g to %.3g %% fat, which is no range: name a leaner water part or a richer fat", lean, rich)
		}
	}
	if len(r.varied()) == 0 {
		return r, errNothingVaried
	}
	return r, nil
}

// complete says what is missing of what a mix is made of.
func (a Asked) complete() error {
	has := map[ingredient.Kind]bool{}
	for _, p := range a.At {
		has[p.What.Kind] = true
		if p.What.NeedsFatPercent() {
			return fmt.Errorf("the fat percent of %s is not known: type it behind the name, such as cream 35, or on an Ingredients sheet", p.Name)
		}
	}
	for _, need := range []struct {
		kind ingredient.Kind
		what string
	}{{ingredient.Fat, "fat"}, {ingredient.Water, "water part"}, {ingredient.Emulsifier, "emulsifier with an HLB"}} {
		if !has[need.kind] {
			return fmt.Errorf("no %s is named: name what you use, for example --of \"clarified butter, cider, GMS, sucrose ester 15\"", need.what)
		}
	}
	return nil
}

// hlb is the range of the blend HLB.
func (a Asked) hlb() (Span, error) {
	low, high := math.Inf(1), math.Inf(-1)
	name, without := "", ""
	for _, p := range a.At {
		if p.What.Kind == ingredient.Ionic && !p.What.Whole {
			without = fmt.Sprintf(", as %s is charged and has none", p.Name)
		}
		if p.What.Kind != ingredient.Emulsifier {
			continue
		}
		if p.What.HLB == nil {
			return Span{}, fmt.Errorf("the HLB of %s is not known: type its grade behind the name, such as sucrose ester 15, or its HLB on an Ingredients sheet", p.Name)
		}
		low, high, name = math.Min(low, p.What.HLB.Value), math.Max(high, p.What.HLB.Value), p.Name
	}
	given := a.Given.HLB
	switch {
	case given != nil && (given.Low < low-1e-9 || given.High > high+1e-9):
		if high-low < 1e-9 {
			return Span{}, fmt.Errorf("with %s alone the blend HLB is %.4g: name a second emulsifier, of an HLB on the other side of %.4g, or type --hlb %.4g", name, low, given.Low, low)
		}
		return Span{}, fmt.Errorf("a blend HLB from %.4g to %.4g cannot be reached: these emulsifiers go from %.4g to %.4g, so type a range within, or name another", given.Low, given.High, low, high)
	case given != nil:
		return *given, nil
	case high-low < 1e-9:
		return Span{}, fmt.Errorf("with %s alone the blend HLB cannot vary%s: name a second emulsifier, of another HLB, or type --hlb %.4g to try fat and percent only", name, without, low)
	}
	// a tenth of the way in from either end: a trace of an emulsifier cannot be weighed
	inner := Span{tenth(math.Ceil, low+(high-low)/10), tenth(math.Floor, high-(high-low)/10)}
	if inner.High < inner.Low {
		inner = Span{low + (high-low)/10, high - (high-low)/10}
	}
	usual := Span{math.Max(Usual.HLB.Low, inner.Low), math.Min(Usual.HLB.High, inner.High)}
	if usual.High-usual.Low < (high-low)/10 {
		usual = inner
	}
	return usual, nil
}

// tenth rounds to tenths.
func tenth(round func(float64) float64, v float64) float64 {
	return round(math.Round(v*1e9)/1e8) / 10
}

// narrowed says which of the usual ranges nobody set and the ingredients do not reach.
func (a Asked) narrowed(r Ranges) (out []string) {
	if a.Given.Fat == nil && r.Fat != Usual.Fat {
		lean, rich := a.fatReach(r.Emulsifier.High)
		out = append(out, fmt.Sprintf("These ingredients make from %.3g to %.3g %% fat, so the plan tries %.3g to %.3g %%, not %.3g to %.3g.", lean, rich, r.Fat.Low, r.Fat.High, Usual.Fat.Low, Usual.Fat.High))
	}
	if a.Given.HLB == nil && r.HLB != Usual.HLB {
		out = append(out, fmt.Sprintf("With these emulsifiers the plan tries a blend HLB of %.3g to %.3g, not %.3g to %.3g: nearer their own HLB there is too little of the other to weigh.", r.HLB.Low, r.HLB.High, Usual.HLB.Low, Usual.HLB.High))
	}
	return out
}

// fatReach is the least and the most fat percent that the ingredients make beside so much
// emulsifier.
func (a Asked) fatReach(emulsifier float64) (lean, rich float64) {
	lean, rich = math.Inf(1), math.Inf(-1)
	for _, p := range a.At {
		if p.What.Kind != ingredient.Fat && p.What.Kind != ingredient.Water {
			continue
		}
		own := 0.0
		if p.What.FatPercent != nil {
			own = p.What.FatPercent.Value
		}
		lean, rich = math.Min(lean, own), math.Max(rich, own)
	}
	room, all := 1-emulsifier/100, 0.0
	for _, p := range a.At {
		all += p.Grams
	}
	for _, p := range a.At { // what is neither keeps its part, as formula does
		if !Shared(*p.What) {
			room -= p.Grams / all
		}
	}
	return lean, math.Floor(10*rich*room) / 10
}

// Shared reports an ingredient whose part of the mix the plan works out; anything else has
// to come with its own percent.
func Shared(what ingredient.Ingredient) bool {
	return what.Kind == ingredient.Fat || what.Kind == ingredient.Water || what.WeighedAsEmulsifier()
}
