package judging

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

var groupings = []surface.Split{
	surface.ByDay,
	surface.ByCook,
	{By: "student", Of: func(t *surface.Placed) string { return t.Student }},
	{By: "file", Of: func(t *surface.Placed) string { return t.At.File }},
}

// summaries counts trials by day, cook, student and file, in order of first
// appearance; a grouping that does not split the log is left out.
func summaries(log *trial.Log, s *surface.Surface) (out []result.Summary) {
	problems := problemRows(log)
	for _, g := range groupings {
		var names []string
		of := map[string][]*surface.Placed{}
		asking := map[string]int{} // problems, also of trials set aside
		for i := range log.Trials {
			t := surface.Placed{Trial: &log.Trials[i]}
			for _, row := range t.Rows {
				asking[g.Of(&t)] += problems[rowOf{t.At.File, t.At.Sheet, row}]
			}
		}
		for i := range s.Trials {
			name := g.Of(&s.Trials[i])
			if of[name] == nil {
				names = append(names, name)
			}
			of[name] = append(of[name], &s.Trials[i])
		}
		if len(names) < 2 {
			continue
		}
		for _, name := range names {
			sum := summary(g.By, name, of[name])
			sum.Problems = asking[name]
			out = append(out, sum)
		}
	}
	return out
}

// rowOf is a row of the log.
type rowOf struct {
	file, sheet string
	row         int
}

// problemRows counts what must be mended or looked at, row by row.
func problemRows(log *trial.Log) map[rowOf]int {
	out := map[rowOf]int{}
	for _, p := range log.Problems {
		if p.Severity != trial.ForInformation && p.At.Row > 0 {
			out[rowOf{p.At.File, p.At.Sheet, p.At.Row}]++
		}
	}
	return out
}

func summary(by, name string, trials []*surface.Placed) result.Summary {
	out := result.Summary{By: by, Name: name, Trials: len(trials)}
	holds := map[int][]float64{}
	for _, t := range trials {
		if works.CameOut(t.Trial) == works.Yes {
			out.CameOut++
		}
		if t.Works == works.Yes {
			out.Worked++
		}
		if t.RepeatOf != "" {
			out.Repeats++
		}
		if works.Tells(t.Trial, result.HoldMinutes) {
			if v, exact := t.Hold.Exact(); exact && v > 0 {
				holds[t.Group] = append(holds[t.Group], math.Log(v))
			}
		}
	}
	ss, df := 0.0, 0
	done := map[int]bool{}
	for _, t := range trials {
		if done[t.Group] {
			continue
		}
		done[t.Group] = true
		s, d := scatter(holds[t.Group])
		ss, df = ss+s, df+d
	}
	if df > 0 {
		out.CV = coefficient(math.Sqrt(ss / float64(df)))
	}
	return out
}

// scatter is the sum of squares about the mean and its degrees of freedom.
func scatter(v []float64) (ss float64, df int) {
	if len(v) < 2 {
		return 0, 0
	}
	mean := 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		ss += (x - mean) * (x - mean)
	}
	return ss, len(v) - 1
}

// coefficient is the coefficient of variation, percent, of a lognormal with this
// standard deviation of logarithms.
func coefficient(sd float64) *float64 { return works.Finite(100 * math.Sqrt(math.Expm1(sd*sd))) }
