package trend

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
	"foamfield/ingest/draining"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// curveName is the law that the reader fits to the readings of all foams.
const curveName = "power law of half-times"

// drainage is the curve of every formula of which a trial was read often enough.
func drainage(v *line.View) (out []result.DrainageCurve) {
	d := drainedOf(v)
	for k, of := range d.formulas {
		c := result.DrainageCurve{At: d.at[of[0]], Model: curveName, Power: d.power, Trials: len(of)}
		for _, i := range of {
			c.Readings += len(d.foams[i].Minutes)
		}
		c.HalfTime, c.HalfTimeLimits, c.LimitsFrom = d.limits(k, d.half, (*draining.Scatter).HalfTime)
		c.AtTarget, c.AtTargetLimits, _ = d.limits(k, d.target, func(s *draining.Scatter, i int) (own, byPower float64) { return s.Drained(i, d.minute) })
		out = append(out, c)
	}
	return out
}

// drained is the foams with a curve, by formula.
type drained struct {
	minute, power float64
	foams         []draining.Readings
	at            []string
	half, target  []float64 // logarithms, of each foam
	formulas      [][]int   // the foams of each
	scatter       *draining.Scatter
}

func drainedOf(v *line.View) *drained {
	d := &drained{minute: v.Want.DrainedAtMinutes.Value}
	groups := map[int]int{}
	var curves []draining.Curve
	for _, t := range v.On {
		c := t.Curve
		if c == nil {
			continue
		}
		k, known := groups[t.Group]
		if !known {
			k = len(d.formulas)
			groups[t.Group] = k
			d.formulas = append(d.formulas, nil)
		}
		d.formulas[k] = append(d.formulas[k], len(d.foams))
		curve := draining.Curve{Most: c.Most, Half: c.Half}
		d.power = c.Power // one for all
		d.foams, curves, d.at = append(d.foams, draining.Readings{Minutes: c.Minutes, Percents: c.Percents}), append(curves, curve), append(d.at, t.At.String())
		d.half, d.target = append(d.half, math.Log(c.Half)), append(d.target, math.Log(curve.At(d.minute, c.Power)))
	}
	d.scatter = draining.About(d.foams, curves, d.power)
	return d
}

// leastRepeats is how many repeats, beyond the first of each formula, tell how these scatter.
const leastRepeats = 3

// limits is the geometric mean of a formula's foams. Its limits are by how repeats of one formula
// scatter, those of all formulas together; where too little was repeated, by how readings lie about
// the curves, which says how well these foams are known and nothing of the next. The power, which all
// share, is known no better by repeats.
func (d *drained) limits(formula int, ln []float64, known func(*draining.Scatter, int) (own, byPower float64)) (float64, *result.Interval, string) {
	of := d.formulas[formula]
	n := float64(len(of))
	mean, read, byPower := 0.0, 0.0, 0.0
	for _, i := range of {
		mean += ln[i] / n
		if d.scatter != nil {
			own, by := known(d.scatter, i)
			read, byPower = read+own/(n*n), byPower+by/n
		}
	}
	within := func(variance, free float64) *result.Interval {
		reach := distuv.StudentsT{Sigma: 1, Nu: free}.Quantile((1+line.Level)/2) * math.Sqrt(variance)
		low, high := line.Grow(mean-reach), line.Grow(mean+reach)
		return &result.Interval{Low: &low, High: &high}
	}
	power := 0.0
	if d.scatter != nil {
		power = byPower * byPower * d.scatter.PowerVar
	}
	sum, free := 0.0, 0.0
	for _, same := range d.formulas {
		var all []float64
		for _, i := range same {
			all = append(all, ln[i])
		}
		if more := float64(len(all) - 1); more > 0 {
			sum, free = sum+more*stat.Variance(all, nil), free+more
		}
	}
	switch {
	case free >= leastRepeats:
		return line.Grow(mean), within(sum/free/n+power, free), "repeats"
	case d.scatter != nil:
		return line.Grow(mean), within(read+power, d.scatter.Free), "readings"
	}
	return line.Grow(mean), nil, ""
}
