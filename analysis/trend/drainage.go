package trend

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// curveName is the law that the reader fits to the readings of one foam.
const curveName = "power law of half-times"

// drainage is the curve of every formula of which a trial was read often enough, with limits
// by how its repeats scatter.
func drainage(v *line.View) (out []result.DrainageCurve) {
	at := map[int]int{}
	half, target := map[int][]float64{}, map[int][]float64{}
	minute := v.Want.DrainedAtMinutes.Value
	for _, t := range v.On {
		if t.Curve == nil {
			continue
		}
		k, known := at[t.Group]
		if !known {
			k = len(out)
			at[t.Group] = k
			out = append(out, result.DrainageCurve{At: t.At.String(), Model: curveName})
		}
		c := t.Curve
		out[k].Trials++
		out[k].Readings += c.Readings
		half[k] = append(half[k], math.Log(c.Half))
		target[k] = append(target[k], math.Log(c.Most/(1+math.Pow(c.Half/minute, c.Power))))
	}
	for k := range out {
		d := &out[k]
		d.HalfTime, d.HalfTimeLimits = scattered(half[k])
		d.AtTarget, d.AtTargetLimits = scattered(target[k])
	}
	return out
}

// scattered is the geometric mean of logarithms with limits by Student's t.
func scattered(ln []float64) (float64, *result.Interval) {
	mean, sd := stat.MeanStdDev(ln, nil)
	n := float64(len(ln))
	if n < 2 {
		return line.Grow(mean), nil
	}
	reach := distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile((1+line.Level)/2) * sd / math.Sqrt(n)
	low, high := line.Grow(mean-reach), line.Grow(mean+reach)
	return line.Grow(mean), &result.Interval{Low: &low, High: &high}
}
