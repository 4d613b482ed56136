package answers

import (
	"math"

	"foamfield/analysis/belief"
	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
)

// Ground is what is believed of mixes made in one way, and where that way was tried.
// Basis and Chain are those of the belief with the way held.
type Ground struct {
	*belief.Belief
	Basis  region.Basis
	Chain  *region.Chain
	Scale  *weigh.Scale
	Search *region.Search
	Draws  *region.Draws // for what a trial would tell
	limits *region.Draws
	Kept   func(mix []float64) bool // whether it keeps the kitchen's own use limits
	want   result.Targets
	batch  result.Batch
}

// hold is the ground of one way, yet without draws.
func hold(b *belief.Belief, asked Asked, w surface.Way) *Ground {
	s := &Ground{Belief: b, Basis: b.Basis.With(w.Beside), Chain: b.Chain.With(w.Beside),
		Scale: weigh.New(b.Surface, asked.Batch, w.Beside), want: asked.Want, batch: asked.Batch}
	s.Search = searchOf(s, w)
	return s
}

// surestGround is that of the way that has the surest mix.
func surestGround(b *belief.Belief, asked Asked) *Ground {
	var best *Ground
	top := math.Inf(-1)
	for _, w := range b.Ways() {
		s := hold(b, asked, w)
		if highest := s.Search.Highest().Chance; highest > top {
			best, top = s, highest
		}
	}
	best.Draws = best.Chain.Draw(drawsToTell, belief.Stream(asked.Seed, belief.StreamDraws))
	best.limits = best.Chain.DrawFrom(b.Finer(finerDraws), drawsForLimits, belief.Stream(asked.Seed, belief.StreamLimits))
	return best
}

// ClogChance is the chance that a mix does not come out, nil if nobody logged it.
func (s *Ground) ClogChance(mix []float64) *float64 { return s.clogs(s.Basis.Features(mix)) }

func (s *Ground) clogs(features []float64) *float64 {
	if i := s.cameOut(); i >= 0 {
		c := 1 - s.Chain.Links[i].Passes(features)
		return &c
	}
	return nil
}

// PointClogs is the chance that a tested point of the search does not come out, 0 if nobody
// logged it.
func (s *Ground) PointClogs(p region.Point) float64 {
	if i := s.cameOut(); i >= 0 {
		return 1 - p.Passes[i]
	}
	return 0
}

// cameOut is the place of that link, -1 if there is none.
func (s *Ground) cameOut() int {
	for i := range s.Links {
		if s.Links[i].Outcome == result.CameOut {
			return i
		}
	}
	return -1
}

// Clogging is the chance that a mix clogs, with its limits; nil if nobody logged it.
func (s *Ground) Clogging(mix []float64) *result.Chance { return s.clogging(s.Basis.Features(mix)) }

// CloggingOf is the same of a trial made once more, as it was made.
func (s *Ground) CloggingOf(t *surface.Placed) *result.Chance {
	return s.clogging(s.Basis.With(t.Beside).Features(t.Mix))
}

func (s *Ground) clogging(features []float64) *result.Chance {
	mean := s.clogs(features)
	if mean == nil {
		return nil
	}
	drawn, low, high := s.limits.PassLimits(s.cameOut(), features, belief.Level)
	return &result.Chance{Mean: *mean, MeanOfDraws: 1 - drawn, Low: min(1-high, *mean), High: max(1-low, *mean), Level: belief.Level}
}

// clogShares is the share of mixes that clog, as the first n draws believe; nil if nobody logged it.
func (s *Ground) clogShares(mix []float64, n int) []float64 {
	i := s.cameOut()
	if i < 0 {
		return nil
	}
	out := s.Draws.Passing(i, mix, n)
	for k, p := range out {
		out[k] = 1 - p
	}
	return out
}

// mayTurnOut says whether a mix may be a start once more is known of its clogging.
func (s *Ground) mayTurnOut(p region.Point) bool {
	if p.Allowed {
		return true
	}
	if !p.Core {
		return false
	}
	c := s.PointClogs(p)
	return c > ClogLimitStart && c <= ClogLimitTrial && s.Kept(p.Mix)
}

// chance of a mix with its limits.
func (s *Ground) chance(mix []float64) result.Chance { return s.chanceOf(mix, s.limits) }

// chanceOf is the same with its limits from some draws.
func (s *Ground) chanceOf(mix []float64, draws *region.Draws) result.Chance {
	mean := s.Chain.Chance(mix)
	// The mean is integrated and the limits are of draws: next to 0 and 1 they can
	// cross.
	drawn, low, high := draws.Limits(mix, belief.Level)
	return result.Chance{Mean: mean, MeanOfDraws: drawn, Low: min(low, mean), High: max(high, mean), Level: belief.Level}
}

// predicted is the median and 90 % limits of the next mix's hold and drained.
func (s *Ground) predicted(values []float64) map[result.Outcome]result.Predicted {
	out := map[result.Outcome]result.Predicted{}
	f := s.Basis.Features(values)
	for i, l := range s.Links {
		line := s.Chain.Links[i].Line
		if line == nil {
			continue
		}
		q := func(p float64) float64 { return l.Value(line.Quantile(f, p, s.Chain.Links[i].ExtraSD)) }
		out[l.Outcome] = result.Predicted{Median: q(0.5), Low: q((1 - belief.Level) / 2), High: q((1 + belief.Level) / 2)}
	}
	return out
}

// closest is the kitchen's own trial nearest to a mix.
func closest(s *Ground, values []float64) *result.Closest {
	var best *surface.Placed
	near := math.Inf(1)
	for _, t := range s.OnSurface() {
		d := s.Distance(values, t.Mix)
		for i, b := range s.Terms {
			if b.Averaged {
				continue
			}
			d = math.Hypot(d, t.Beside[i]-s.Basis.Beside[i])
		}
		if d < near {
			best, near = t, d
		}
	}
	if best == nil {
		return nil
	}
	c := &result.Closest{At: best.At.String(), ID: best.ID, Worked: best.Works.Pointer(), Note: best.Note, Differences: map[string]float64{}}
	for i, v := range s.Vars {
		c.Differences[v.Name] = values[i] - best.Mix[i]
	}
	for i, v := range s.Settings {
		c.Differences[v.Name] = -best.Beside[i] * v.Scale
	}
	return c
}

// within is how far each line of a formula may be off for the chance to stay and the mix
// to come out.
func within(s *Ground, f *formula.Formula) []float64 {
	chance, _ := s.misweighed(s.Scale.Point(f, make([]float64, len(f.Lines))))
	return s.Scale.Within(f, func(mix, beside []float64) bool {
		c, clogs := s.misweighed(mix, beside)
		return c >= chance-slackDrop && (clogs == nil || *clogs <= ClogLimitStart)
	})
}

// misweighed is the chance that a mix works that was made with other values beside it, and
// that it clogs.
func (s *Ground) misweighed(mix, beside []float64) (chance float64, clogs *float64) {
	return s.Chain.With(beside).Chance(mix), s.clogs(s.Basis.With(beside).Features(mix))
}
