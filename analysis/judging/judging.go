// Package judging holds the trials against each other: how they scatter, what fits them
// (fits), what groups differ (groups), and what they cannot tell. Nothing is recommended here, and what is
// believed is taken for given; the numbers are those that another statistics program has.
package judging

import (
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/fits"
	"foamfield/analysis/groups"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// Judgement is what the trials themselves show. Where nothing is believed yet only the
// first three are filled in.
type Judgement struct {
	Summaries     []result.Summary
	Repeatability []result.Repeatability
	Confounded    []result.Confounded

	Fits         []result.Fit
	GroupEffects []result.GroupEffect
	Residuals    []result.Residual
	Detectable   []result.Detectable
	Foreseen     []*float64 // of each trial on the surface, from the others; nil if none is
}

// Of judges the trials of a log; b is nil where too little was tried to believe anything.
func Of(log *trial.Log, s *surface.Surface, b *belief.Belief) *Judgement {
	j := &Judgement{Summaries: summaries(log, s), Repeatability: repeatability(s), Confounded: s.Copied}
	if b == nil {
		return j
	}
	f := fits.Of(s, b.Links)
	j.Fits, j.Residuals, j.Detectable = f.All, f.Residuals(), f.Detectable()
	j.GroupEffects = groups.Effects(s, f, b.Links, log.Labels)
	j.Foreseen = foresee(b)
	j.Confounded = slices.Concat(j.Confounded, s.MovedTogether())
	return j
}
