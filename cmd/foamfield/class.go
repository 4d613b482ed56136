package main

import (
	"fmt"
	"strings"

	"foamfield/analysis"
	"foamfield/analysis/grade"
	"foamfield/analysis/result/graded"
	"foamfield/plots"
	"foamfield/plots/drawing"
)

const (
	leastPooled = 8 // trials that a region can be drawn of
	mostRegions = 4 // tasks of one class
)

// regions judges the trials of each task together, as those of one kitchen, and draws where
// they work. A task that the arithmetic fails on has no region: nobody's mark rests on it.
func regions(done grade.Graded) map[string]drawing.Figure {
	figures := map[string]drawing.Figure{}
	for i, log := range done.Pools {
		if len(log.Trials) < leastPooled || len(figures) == mostRegions {
			continue
		}
		r, err := analysis.Run(log, analysis.Settings{Seed: usualSeed, Version: version()})
		if err != nil {
			continue
		}
		region := &graded.Region{Trials: r.Counts.Used, Status: string(r.Status), HoldAtLeast: r.Targets.HoldMinutes.Value, DrainedAtMost: r.Targets.DrainedPercent.Value}
		if len(r.Starts) > 0 {
			s := &r.Starts[0]
			region.Fat, region.Emulsifier, region.HLB = s.Mix.FatPercent, s.Mix.EmulsifierPercent, s.Mix.BlendHLB
			region.Chance, region.ChanceLow = &s.Chance.Mean, &s.Chance.Low
		}
		done.Class.Tasks[i].Region = region
		for _, f := range plots.All(r) {
			if strings.HasPrefix(f.Name, "region") {
				f.Name = fmt.Sprintf("region-%d", i+1)
				figures[f.Name] = f
				break
			}
		}
	}
	return figures
}
