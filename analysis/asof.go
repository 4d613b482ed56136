package analysis

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/history"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/trend"
	"foamfield/ingest/trial"
)

// brought is what starts are made from: the trials as they are, or, where weeks or lots
// matter, as the latest of these would have given them.
type brought struct {
	surface  *surface.Surface
	belief   *belief.Belief
	standing *trend.Standing
}

// bringUp brings the trials up to the latest week and lots, if these are shown to matter.
func bringUp(log *trial.Log, s *surface.Surface, b *belief.Belief, want result.Targets, batch result.Batch, set Settings, h *history.History) (brought, error) {
	as := brought{surface: s, belief: b}
	if b == nil || h == nil {
		return as, nil
	}
	standing := trend.Stands(trend.Input{Log: log, History: h, Surface: s, Want: want, Seed: set.Seed})
	if as.standing = standing; standing == nil || standing.AsOf == nil {
		return as, nil
	}
	now, err := surface.Of(standing.Log(log), want, batch.ScaleStepGrams)
	if err != nil {
		return as, err
	}
	believed, err := belief.Of(now, want, set.Seed, !set.FreeSigns)
	return brought{now, believed, standing}, err
}

// factors notes what each trial's results were multiplied with.
func (as *brought) factors(log *trial.Log, trials []result.Trial) {
	for i := range trials {
		if by := as.standing.Now(&log.Trials[i]); by != nil {
			trials[i].NowFactors = by
		}
	}
}
