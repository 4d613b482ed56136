package main

import (
	"slices"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/ingest/thorough"
)

// What is claimed of the two families, on seeds that `truths` does not print.
// Bounds leave room for 120 kitchens: a share of 0.27 has a standard error of 0.04.
func TestFamiliesAreAsClaimed(t *testing.T) {
	thorough.Only(t, "measures 240 kitchens")
	const kitchens, firstSeed = 120, 500_000
	easy := measure(kitchen.Easy, firstSeed, kitchens, truthsTrials)
	hard := measure(kitchen.Hard, firstSeed, kitchens, truthsTrials)

	if share := below(easy.best, 0.85); share > 0.1 {
		t.Errorf("easy: %.0f %% of kitchens cannot reach 0.85", 100*share)
	}
	if share := below(hard.best, 0.8); share < 0.18 || share > 0.36 {
		t.Errorf("hard: %.0f %% without a workable region, want a fifth to a third", 100*share)
	}
	if low, high := quantile(hard.best, 0.05), quantile(hard.best, 0.95); low > 0.55 || high < 0.9 {
		t.Errorf("hard: best chances from %.2f to %.2f, want 0.3 to 1", low, high)
	}
	if share := float64(hard.slips) / kitchens; easy.slips != 0 || share < 0.22 || share > 0.45 {
		t.Errorf("slips in %d easy logs and %.0f %% of hard ones, want 0 and a third", easy.slips, 100*share)
	}
	for name, s := range map[string]spread{"easy": easy, "hard": hard} {
		var habits []float64
		for layout, habit := range s.habit {
			habits = append(habits, habit...)
			if m := mean(s.works[layout]); m < 0.2 || m > 0.55 {
				t.Errorf("%s, %v: %.0f %% of trials work", name, layout, 100*m)
			}
			stands := slices.Sorted(slices.Values(s.stands[layout]))
			if m := mean(stands); m < 0.2 || m > 0.55 || quantile(stands, 0.85) > 0.75 {
				t.Errorf("%s, %v: mean %.0f %% still standing, at 85 %% of logs %.0f %%", name, layout, 100*m, 100*quantile(stands, 0.85))
			}
		}
		if m := mean(habits); m > 0.65 {
			t.Errorf("%s: repeating the best trial truly works %.2f, the table is too easy", name, m)
		}
	}
}
