package analysis

import (
	"foamfield/analysis/region"
	"foamfield/analysis/result"
)

// foresee gives every trial on the surface the chance it would have been given
// from the other trials; a log of more than some hundred is not foreseen.
func (s *study) foresee() {
	trials := s.onSurface()
	if !s.chain.CanLeaveOut() {
		return
	}
	place := make([]map[*placed]int, len(s.links))
	for i, l := range s.links {
		place[i] = map[*placed]int{}
		for k, t := range l.trials {
			place[i][t] = k
		}
	}
	region.Parallel(len(trials), func(k int) {
		t := trials[k]
		forget := make([]int, len(s.links))
		for i := range forget {
			forget[i] = -1
			if obs, ok := place[i][t]; ok {
				forget[i] = obs
			}
		}
		c := s.chain.With(t.beside).ChanceWithout(t.mix, forget)
		t.shown.ForeseenChance = &c
	})
}

// confounded names pairs that these trials cannot tell apart: two variables that
// moved together, or a variable that moved with the day or the cook.
func (s *study) confounded() {
	trials := s.onSurface()
	if len(trials) < 4 {
		return
	}
	for i := range s.vars {
		for j := range i {
			if share := squaredCorrelation(s.column(j, trials), s.column(i, trials)); share >= copied {
				s.hardlyTell(s.vars[j].Label, s.vars[i].Label, share)
			}
		}
		s.withDayOrCook(s.vars[i].Label, s.column(i, trials), trials)
	}
	for _, c := range s.out.Choices {
		of := func(t *placed) string { return s.levelOf(c.By, t) }
		for i, v := range s.vars {
			if share, groups := betweenShare(s.column(i, trials), trials, of); groups > 1 && share >= copied {
				s.hardlyTell(v.Label, "which "+c.By, share)
			}
		}
	}
	for i, v := range s.settings {
		column := make([]float64, len(trials))
		for k, t := range trials {
			column[k] = t.beside[i]
		}
		s.withDayOrCook(v.Label, column, trials)
	}
}

// withDayOrCook says where a variable changed from day to day or cook to cook only.
func (s *study) withDayOrCook(label string, column []float64, trials []*placed) {
	for _, g := range groupings[:2] {
		if share, groups := betweenShare(column, trials, g.of); groups > 1 && groups <= len(trials)/2 && share >= copied {
			s.hardlyTell(label, "the "+g.by, share)
		}
	}
}

func (s *study) hardlyTell(a, b string, share float64) {
	s.out.Confounded = append(s.out.Confounded, result.Confounded{A: a, B: b, Share: share,
		Sentence: "these trials hardly tell " + a + " from " + b + ": they changed together"})
}

// column is a variable's coordinate in every trial.
func (s *study) column(v int, trials []*placed) []float64 {
	out := make([]float64, len(trials))
	for k, t := range trials {
		out[k] = s.basis.Coordinates[v].Of(t.mix[v])
	}
	return out
}

func squaredCorrelation(a, b []float64) float64 {
	n := float64(len(a))
	var ma, mb, aa, bb, ab float64
	for k := range a {
		ma += a[k] / n
		mb += b[k] / n
	}
	for k := range a {
		aa += (a[k] - ma) * (a[k] - ma)
		bb += (b[k] - mb) * (b[k] - mb)
		ab += (a[k] - ma) * (b[k] - mb)
	}
	if aa == 0 || bb == 0 {
		return 0
	}
	return ab * ab / (aa * bb)
}

// betweenShare is the share of a variable's variation that lies between groups.
func betweenShare(v []float64, trials []*placed, of func(*placed) string) (share float64, groups int) {
	sum, count := map[string]float64{}, map[string]float64{}
	mean := 0.0
	for k, t := range trials {
		sum[of(t)] += v[k]
		count[of(t)]++
		mean += v[k] / float64(len(v))
	}
	var within, total float64
	for k, t := range trials {
		g := of(t)
		within += (v[k] - sum[g]/count[g]) * (v[k] - sum[g]/count[g])
		total += (v[k] - mean) * (v[k] - mean)
	}
	if total == 0 {
		return 0, len(sum)
	}
	return 1 - within/total, len(sum)
}
