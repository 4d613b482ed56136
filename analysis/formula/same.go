package formula

import (
	"math"
	"strings"
)

// Same reports whether b is a mix of the same formula as a: the same
// ingredients, by name, each with the same percent of the mix up to what two
// weighings on a scale of the given step can differ by. Batch sizes may differ.
func Same(a, b []Part, step float64) bool {
	countA, totalA := weighed(a)
	countB, totalB := weighed(b)
	if countA != countB || countA == 0 {
		return false
	}
	for i, p := range a {
		if p.Grams <= 0 {
			continue
		}
		q := named(b, p.Name, i)
		shareA, shareB := p.Grams/totalA, q/totalB
		if q <= 0 || math.Abs(shareA-shareB) > off(shareA, totalA, countA, step)+off(shareB, totalB, countB, step)+1e-9 {
			return false
		}
	}
	return true
}

// off is the most a share may be off: its own grams by half a step one way, all
// others' by half a step the other way.
func off(share, total float64, count int, step float64) float64 {
	return step / 2 / total * (1 - share + share*float64(count-1))
}

// MostOff is the most that the shares of some parts of a mix, added up, may be off by the weighing.
func MostOff(parts []Part, step float64, some func(Part) bool) float64 {
	count, total := weighed(parts)
	sum := 0.0
	for _, p := range parts {
		if p.Grams > 0 && some(p) {
			sum += off(p.Grams/total, total, count, step)
		}
	}
	return sum
}

func weighed(parts []Part) (count int, total float64) {
	for _, p := range parts {
		if p.Grams > 0 {
			count++
			total += p.Grams
		}
	}
	return count, total
}

// named is the grams of the part of that name, which most often stands at the
// same place.
func named(parts []Part, name string, place int) float64 {
	if place < len(parts) && parts[place].Name == name {
		return parts[place].Grams
	}
	for _, p := range parts {
		if strings.EqualFold(strings.TrimSpace(p.Name), strings.TrimSpace(name)) {
			return p.Grams
		}
	}
	return 0
}
