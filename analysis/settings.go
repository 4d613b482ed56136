package analysis

import (
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Settings are what the person who runs the study sets by hand; nil = not set,
// so the log's own Targets sheet or the assumption below counts.
type Settings struct {
	Hold, Drained, DrainedAt, Chance *float64
	Batch, ScaleStep                 *float64
	Tries                            []trial.Try      // formulas to judge, before those of the log
	FreeSigns                        bool             // do not assume the trade's signs
	Portions                         int              // that a batch gives; 0 = not said
	Service                          []trial.Canister // to split the surest start over; none = as the Targets sheet has it
	ServiceBatch                     *float64         // grams of it in all
	NextTrials                       int              // to name at least so many, as far as there are; 0 = a few
	Ounces                           bool             // beside grams
	Seed                             uint64
	Version                          string
}

// What is assumed unless the kitchen says otherwise. Common practice, no source.
const (
	assumedHoldMinutes      = 20.0
	assumedDrainedPercent   = 10.0
	assumedDrainedAtMinutes = 20.0
	assumedWantedChance     = 0.8
	assumedScaleStepGrams   = 0.1
	assumedBatchGrams       = 300.0
)

// pick resolves one value: flag, then the kitchen's sheet, then the assumption.
func pick(flag *float64, name string, sheet *trial.Target, assumed float64) result.Target {
	switch {
	case flag != nil:
		return result.Target{Value: *flag, From: name}
	case sheet != nil:
		return result.Target{Value: sheet.Value, From: sheet.At.String()}
	}
	return result.Target{Value: assumed, From: "assumed"}
}

func targets(log *trial.Log, s Settings) result.Targets {
	t := log.Targets
	return result.Targets{
		HoldMinutes:      pick(s.Hold, "--hold", t.HoldMinutes, assumedHoldMinutes),
		DrainedPercent:   pick(s.Drained, "--drained", t.DrainedPercent, assumedDrainedPercent),
		DrainedAtMinutes: pick(s.DrainedAt, "--drained-at", t.DrainedAtMinutes, assumedDrainedAtMinutes),
		WantedChance:     pick(s.Chance, "--chance", t.WantedChance, assumedWantedChance),
		Results:          measuredTargets(t.Results),
	}
}

func measuredTargets(asked []trial.ResultTarget) []result.ResultTarget {
	out := []result.ResultTarget{}
	for _, a := range asked {
		seen := works.Interval(&a.Interval)
		out = append(out, result.ResultTarget{Result: result.Outcome(a.Result.Name), Label: a.Result.Label, Unit: a.Result.Unit,
			Low: seen.Low, High: seen.High, From: a.At.String()})
	}
	return out
}

// batch settles the grams a formula is scaled to: the median logged batch unless
// set, on the scale's step.
func batch(log *trial.Log, s Settings) result.Batch {
	var logged []float64
	for i := range log.Trials {
		t := &log.Trials[i]
		if !t.Used() {
			continue
		}
		if t.BatchGrams != nil && t.Flagged == "" {
			logged = append(logged, *t.BatchGrams)
		}
	}
	b := result.Batch{
		ScaleStepGrams: pick(s.ScaleStep, "--scale-step", log.Targets.ScaleStepGrams, assumedScaleStepGrams).Value,
		Canisters:      1,
	}
	assumed := assumedBatchGrams
	if len(logged) > 0 {
		slices.Sort(logged)
		largest := logged[len(logged)-1]
		assumed = math.Min(formula.OnScale(int(math.Round(logged[len(logged)/2]/b.ScaleStepGrams)), b.ScaleStepGrams), largest)
		b.LargestFillGrams = &largest
	}
	grams := pick(s.Batch, "--batch", log.Targets.BatchGrams, assumed)
	b.Grams, b.GramsFrom = grams.Value, grams.From
	if s.Ounces {
		oz := b.Grams / weigh.GramsInAnOunce
		b.Ounces = &oz
	}
	if grams.From == "assumed" && len(logged) > 0 {
		b.GramsFrom = fmt.Sprintf("the middle of %d logged batches", len(logged))
	}
	if sizes := surface.Canisters(log); len(sizes) == 1 {
		b.Canister = sizes[0]
	}
	if b.LargestFillGrams != nil && b.Grams > *b.LargestFillGrams {
		for float64(b.Canisters)*(*b.LargestFillGrams) < b.Grams {
			b.Canisters++
		}
	}
	return b
}
