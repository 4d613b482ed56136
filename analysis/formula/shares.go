package formula

import (
	"fmt"
	"math"

	"foamfield/ingest/ingredient"
)

// same is how close two HLBs, or two fat percents, count as equal.
const same = 1e-9

// Unreachable says that no mix of the template's ingredients is the wanted one.
type Unreachable struct{ Sentence string }

func (e *Unreachable) Error() string { return e.Sentence }

func unreachable(format string, args ...any) error {
	return &Unreachable{fmt.Sprintf(format, args...)}
}

func tooLittle(w Wanted, batch, step float64) error {
	return unreachable("%.3g g of emulsifier cannot be weighed on a scale of %.3g g steps: make a larger batch, or use a finer scale",
		w.EmulsifierPercent/100*batch, step)
}

// shares are the exact fractions of the mix, one for each part of the template.
func shares(template []Part, w Wanted) ([]float64, error) {
	if !(w.FatPercent >= 0 && w.FatPercent <= 100 && w.EmulsifierPercent >= 0 && w.EmulsifierPercent < 100) {
		return nil, unreachable("%.4g %% fat with %.3g %% emulsifier is no mix", w.FatPercent, w.EmulsifierPercent)
	}
	total := 0.0
	for _, p := range template {
		if p.Grams > 0 && p.What.NeedsFatPercent() {
			return nil, unreachable("the fat percent of %s is not known, so %.4g %% fat cannot be worked out", p.Name, w.FatPercent)
		}
		total += p.Grams
	}
	if total <= 0 {
		return nil, unreachable("the trial has no ingredients in grams")
	}
	out := make([]float64, len(template))
	if err := emulsifierShares(out, template, w); err != nil {
		return nil, err
	}
	if err := bulkShares(out, template, total, w); err != nil {
		return nil, err
	}
	return out, nil
}

// emulsifierShares fills in the emulsifiers.
func emulsifierShares(out []float64, template []Part, w Wanted) error {
	wanted := w.EmulsifierPercent / 100
	if wanted == 0 {
		return nil
	}
	var all, blended float64
	var pool []item
	any := false // of any HLB
	for i, p := range template {
		if !p.What.WeighedAsEmulsifier() || p.Grams <= 0 {
			continue
		}
		all += p.Grams
		if p.What.Kind != ingredient.Emulsifier {
			continue
		}
		blended += p.Grams
		any = any || p.Blended
		it := item{index: i, weight: p.Grams}
		switch {
		case p.Blended:
			continue
		case p.What.HLB != nil:
			it.value = p.What.HLB.Value
		case w.BlendHLB != nil:
			return unreachable("the HLB of %s is not known, so a blend HLB of %.4g cannot be worked out", p.Name, *w.BlendHLB)
		}
		pool = append(pool, it)
	}
	if all == 0 {
		return unreachable("%.3g %% emulsifier cannot be reached: the trial has no emulsifier named in grams", w.EmulsifierPercent)
	}
	for i, p := range template {
		if p.What.WeighedAsEmulsifier() && p.Grams > 0 {
			out[i] = wanted * p.Grams / all
		}
	}
	if w.BlendHLB == nil || any {
		return nil
	}
	if len(pool) == 0 {
		return unreachable("a blend HLB of %.4g cannot be reached: none of the emulsifiers has an HLB", *w.BlendHLB)
	}
	split, ok := splitAt(pool, *w.BlendHLB)
	if !ok {
		lean, rich := ends(pool)
		if rich.value-lean.value <= same {
			return unreachable("a blend HLB of %.4g cannot be reached: %s has HLB %.4g only", *w.BlendHLB, template[lean.index].Name, lean.value)
		}
		return unreachable("a blend HLB of %.4g cannot be reached: the emulsifiers go from %.4g (%s) to %.4g (%s)",
			*w.BlendHLB, lean.value, template[lean.index].Name, rich.value, template[rich.index].Name)
	}
	for _, it := range split {
		out[it.index] = wanted * blended / all * it.weight
	}
	return nil
}

// bulkShares fills in everything that is not an emulsifier: first what keeps its
// percent of the mix, then fats and waters in the room that is left.
func bulkShares(out []float64, template []Part, total float64, w Wanted) error {
	room, fat := 1-w.EmulsifierPercent/100, w.FatPercent/100
	var fats, waters, pool []item
	for i, p := range template {
		own := 0.0
		if p.What.FatPercent != nil {
			own = p.What.FatPercent.Value / 100
		}
		it := item{i, p.Grams, own}
		switch {
		case p.Grams <= 0:
		case p.What.WeighedAsEmulsifier():
			fat -= out[i] * own
		case p.What.Kind == ingredient.Fat:
			fats, pool = append(fats, it), append(pool, it)
		case p.What.Kind == ingredient.Water:
			waters, pool = append(waters, it), append(pool, it)
		default:
			out[i] = p.Grams / total
			room -= out[i]
			fat -= out[i] * own
		}
	}
	if len(pool) == 0 {
		return unreachable("the trial has neither fat nor water named in grams")
	}
	if room <= 0 {
		return unreachable("%.3g %% emulsifier leaves no room for fat and water: all else is %.4g %% of the mix", w.EmulsifierPercent, 100-100*room-w.EmulsifierPercent)
	}
	need := fat / room // fat per gram of fats and waters together
	split, ok := twoGroups(waters, fats, need)
	if !ok {
		split, ok = splitAt(pool, need)
	}
	if !ok {
		var err error
		if split, err = nearestEnd(template, pool, need, room, w); err != nil {
			return err
		}
	}
	for _, it := range split {
		out[it.index] = room * it.weight
	}
	return nil
}

// nearEnough is how far, in percent of fat, a mix may stay from the wanted one
// when its ingredients go no farther: a carton says no more exactly what is in
// it. The formula says what fat it has.
const nearEnough = 0.5

// nearestEnd takes the richest or leanest ingredients alone if that is near
// enough to the fat needed.
func nearestEnd(template []Part, pool []item, need, room float64, w Wanted) ([]item, error) {
	lean, rich := ends(pool)
	end := lean
	if need > rich.value {
		end = rich
	}
	name, own := template[end.index].Name, 100*end.value
	reach := w.FatPercent + 100*room*(end.value-need)
	switch split, ok := splitAt(pool, end.value); {
	case ok && math.Abs(reach-w.FatPercent) <= nearEnough:
		return split, nil
	case need > rich.value:
		return nil, unreachable("%.4g %% fat cannot be reached with %s of %.4g %%: at most %.3g %%", w.FatPercent, name, own, reach)
	}
	return nil, unreachable("%.4g %% fat cannot be reached with nothing leaner than %s of %.3g %%: at least %.3g %%", w.FatPercent, name, own, reach)
}

// item is an ingredient of a group to be blended: its weight in the template
// (or, blended, its share) and the value that is averaged.
type item struct {
	index         int
	weight, value float64
}

// splitAt blends the pool to the target mean, the items below the target and
// those from it up keeping their proportions. It fails if all lie on one side.
func splitAt(pool []item, target float64) ([]item, bool) {
	var below, at, above []item
	for _, it := range pool {
		switch {
		case math.Abs(it.value-target) <= same:
			at = append(at, it)
		case it.value < target:
			below = append(below, it)
		default:
			above = append(above, it)
		}
	}
	switch {
	case len(below) > 0:
		return twoGroups(below, append(at, above...), target)
	case len(above) > 0:
		return twoGroups(at, above, target)
	}
	return twoGroups(at, nil, target)
}

// twoGroups blends two groups, each in its own proportions, to the target mean;
// the items come back with their shares, which add up to 1. It fails if the
// target is outside the two groups' means.
func twoGroups(a, b []item, target float64) ([]item, bool) {
	weightA, meanA := mean(a)
	weightB, meanB := mean(b)
	var shareB float64
	switch {
	case weightA == 0 && weightB == 0:
		return nil, false
	case weightA == 0:
		meanA, shareB = meanB, 1
	case weightB == 0:
		meanB = meanA
	case math.Abs(meanA-meanB) > same:
		shareB = (target - meanA) / (meanB - meanA)
	default:
		shareB = weightB / (weightA + weightB)
	}
	if math.Abs(meanA-meanB) <= same && math.Abs(target-meanA) > 2*same || shareB < -same || shareB > 1+same {
		return nil, false
	}
	shareB = min(max(shareB, 0), 1)
	var out []item
	for _, it := range a {
		out = append(out, item{it.index, (1 - shareB) * it.weight / weightA, it.value})
	}
	for _, it := range b {
		out = append(out, item{it.index, shareB * it.weight / weightB, it.value})
	}
	return out, true
}

func mean(group []item) (weight, mean float64) {
	for _, it := range group {
		weight += it.weight
		mean += it.weight * it.value
	}
	return weight, mean / weight
}

// ends are the items of lowest and highest value.
func ends(pool []item) (lean, rich item) {
	lean, rich = pool[0], pool[0]
	for _, it := range pool {
		if it.value < lean.value {
			lean = it
		}
		if it.value > rich.value {
			rich = it
		}
	}
	return lean, rich
}
