package whole

import (
	"fmt"
	"math"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

const (
	leastWarm  = 5    // trials that say how warm they were, before one of them is odd
	sameWarmth = 2.0  // °C by which kitchens that mean one temperature differ
	oddWarmth  = 10.0 // °C from all others
)

// Warmth asks about a temperature that fits those of all other trials only in the other
// unit: 55 in a column of °F where the others have 131.
func Warmth(trials []trial.Trial) (found []trial.Finding) {
	var at []int
	for i := range trials {
		if _, ok := trials[i].Extras["temperature_c"]; ok {
			at = append(at, i)
		}
	}
	if len(at) < leastWarm {
		return nil
	}
	for _, i := range at {
		low, high := math.Inf(1), math.Inf(-1)
		for _, k := range at {
			if v := trials[k].Extras["temperature_c"]; k != i {
				low, high = min(low, v), max(high, v)
			}
		}
		fits := func(v float64) bool { return v >= low-sameWarmth && v <= high+sameWarmth }
		v := trials[i].Extras["temperature_c"]
		if v > low-oddWarmth && v < high+oddWarmth {
			continue
		}
		for _, unit := range []struct {
			read, meant string
			typed, is   float64 // the number in its cell, and the °C that it means in the other unit
			right       float64 // what to type
		}{
			{"°F", "°C", v*9/5 + 32, v*9/5 + 32, (v*9/5+32)*9/5 + 32},
			{"°C", "°F", v, (v - 32) * 5 / 9, (v - 32) * 5 / 9},
		} {
			if fits(unit.is) {
				found = append(found, trial.Check("temperature in another unit", trials[i].At,
					fmt.Sprintf("%s %s is far from the temperatures of the other trials; %s %s would be like them", say.Number(unit.typed), unit.read, say.Number(unit.typed), unit.meant),
					fmt.Sprintf("type %s if it was %s; it is used as it stands", say.Number(math.Round(unit.right)), unit.meant)))
				break
			}
		}
	}
	return found
}
