package surface

import (
	"slices"

	"foamfield/analysis/result"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Split is a way a kitchen splits its trials.
type Split struct {
	By string
	Of func(*Placed) string
}

// The two splits that every log may have.
var (
	ByDay  = Split{"day", func(t *Placed) string { return t.Day }}
	ByCook = Split{"cook", func(t *Placed) string { return t.Cook }}
)

// MovedTogether names pairs that these trials cannot tell apart: two variables that
// moved together, or a variable that moved with a choice, the day or the cook.
func (s *Surface) MovedTogether() (out []result.Confounded) {
	trials := s.OnSurface()
	if len(trials) < 4 {
		return nil
	}
	for i, v := range s.Vars {
		column := s.Column(i, trials)
		for j := range i {
			if share := squaredCorrelation(s.Column(j, trials), column); share >= copied {
				out = append(out, hardlyTell(s.Vars[j].Label, v.Label, share))
			}
		}
		out = append(out, withDayOrCook(v.Label, column, trials)...)
	}
	for _, c := range s.Choices {
		of := func(t *Placed) string { return s.LevelOf(c.By, t) }
		for i, v := range s.Vars {
			if share, groups := betweenShare(s.Column(i, trials), trials, of); groups > 1 && share >= copied {
				out = append(out, hardlyTell(v.Label, "which "+c.By, share))
			}
		}
	}
	for i, v := range s.Settings {
		column := make([]float64, len(trials))
		for k, t := range trials {
			column[k] = t.Beside[i]
		}
		out = append(out, withDayOrCook(v.Label, column, trials)...)
	}
	return out
}

// withDayOrCook says where a variable changed from day to day or cook to cook only.
func withDayOrCook(label string, column []float64, trials []*Placed) (out []result.Confounded) {
	for _, g := range []Split{ByDay, ByCook} {
		if share, groups := betweenShare(column, trials, g.Of); groups > 1 && groups <= len(trials)/2 && share >= copied {
			out = append(out, hardlyTell(label, "the "+g.By, share))
		}
	}
	return out
}

func hardlyTell(a, b string, share float64) result.Confounded {
	return result.Confounded{A: a, B: b, Share: share,
		Sentence: "these trials hardly tell " + a + " from " + b + ": they changed together"}
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
func betweenShare(v []float64, trials []*Placed, of func(*Placed) string) (share float64, groups int) {
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

// follows is the share of a column's variation that goes with the others together, and
// which of them it goes with most.
func follows(column []float64, others [][]float64) (with int, share float64) {
	// Gram and Schmidt: take from each column what those before it explain.
	var basis [][]float64
	rest := func(v []float64) []float64 {
		v = centred(v)
		whole := floats.Dot(v, v)
		for _, b := range basis {
			along := floats.Dot(v, b)
			floats.AddScaled(v, -along, b)
		}
		if floats.Dot(v, v) <= 1e-9*whole {
			return make([]float64, len(v))
		}
		return v
	}
	most := -1.0
	for i, o := range others {
		if r := squaredCorrelation(column, o); r > most {
			with, most = i, r
		}
		if v := rest(o); floats.Dot(v, v) > 0 {
			floats.Scale(1/floats.Norm(v, 2), v)
			basis = append(basis, v)
		}
	}
	whole, left := centred(column), rest(column)
	return with, 1 - floats.Dot(left, left)/floats.Dot(whole, whole)
}

func centred(v []float64) []float64 {
	out := slices.Clone(v)
	floats.AddConst(-stat.Mean(v, nil), out)
	return out
}
