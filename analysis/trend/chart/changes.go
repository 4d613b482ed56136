package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	mostCuts = 120 // places where a change is looked for
	// cutRows is how many rows all cuts together may take: of long histories fewer are looked at.
	cutRows = 300_000
	// changeP is how rare by chance alone a change must be to be named. Days that scatter make
	// steps rarer than they are reckoned to be, so that one is named in fewer steady histories.
	changeP = 0.02
	bridges = 4000
	// muchTheSame is how many standard errors a step may be clearer than a steady move and still
	// not be told from it: a factor of 12 of the likelihood where both are three errors.
	muchTheSame = 0.6
)

// cut is a place where a step is looked for: rows from there on are after it.
type cut struct {
	row   int
	share float64 // of the rows before it
	z     float64 // the step over its standard error
	step  float64
	se    float64
}

// Changes looks for one step of the level in time, days being what comes one after the
// other.
func Changes(v *line.View) (out []result.Change) {
	for _, l := range v.Lines {
		if l.Main == nil || l.Time() == nil {
			continue
		}
		if c, ok := change(l); ok {
			out = append(out, c)
		}
	}
	return out
}

// change is the clearest step, if by chance alone one so clear is rare (the largest of a
// Brownian bridge over its standard deviation, simulated at the same places). Days scatter
// less once a step is taken out of them, so spreads are those beside the clearest step; as
// these are known from few days, a step over its standard error counts as Student's t.
func change(l *line.Line) (result.Change, bool) {
	none := result.Change{}
	base, err := nested.Near(withoutOnce(l), line.Prior)
	if err != nil {
		return none, false
	}
	cuts := allCuts(l, base)
	if len(cuts) < 2 {
		return none, false
	}
	best := clearest(cuts)
	if base, err = base.Beside(after(cuts[best].row, len(l.Rows)), line.Prior); err != nil {
		return none, false
	}
	if cuts = allCuts(l, base); len(cuts) < 2 {
		return none, false
	}
	best = clearest(cuts)
	p := byChance(l, cuts, asNormal(l, cuts[best].z))
	if p >= changeP {
		return none, false
	}
	// Where it may be: places as likely as the clearest, down to nine tenths in all.
	sum, weights := 0.0, make([]float64, len(cuts))
	for k, c := range cuts {
		weights[k] = math.Exp((c.z*c.z - cuts[best].z*cuts[best].z) / 2)
		sum += weights[k]
	}
	order := make([]int, len(cuts))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(weights[b], weights[a]) })
	first, last, held := best, best, 0.0
	for _, k := range order {
		if held >= line.Level*sum {
			break
		}
		held += weights[k]
		first, last = min(first, k), max(last, k)
	}
	c := cuts[best]
	r := result.Ratio{Ratio: line.Grow(c.step), Low: line.Grow(c.step - 1.645*c.se), High: line.Grow(c.step + 1.645*c.se)}
	name := func(k int) string { return l.When(cuts[k].row) }
	words := fmt.Sprintf("%s changed to %.2f times what it was, most likely from %s on", line.Named(l.Outcome), r.Ratio, line.InWords(name(best)))
	if first != last {
		words += fmt.Sprintf(" (%s at the earliest, %s at the latest)", line.InWords(name(first)), line.InWords(name(last)))
	}
	if move, se, ok := base.Step(l.Time()); ok && math.Abs(move/se) > math.Abs(c.z)-muchTheSame {
		words += ", or little by little, which looks much the same here"
	}
	with := came(l, cuts[first].row, cuts[last].row)
	if len(with) > 0 {
		words += "; " + strings.Join(with, " and ") + " came in there, which may or may not be why"
	} else {
		words += "; no lot, cook or canister that the log names came in there"
	}
	return result.Change{Outcome: l.Outcome, At: name(best), Low: name(first), High: name(last), Ratio: r, P: p, With: with, Sentence: words}, true
}

// withoutOnce is the line's data without levels of weeks and without what changed for good at one
// time, such as a cook who took over: its step is one in time, and is to be found as such.
func withoutOnce(l *line.Line) nested.Data {
	d := l.Data
	d.Level = false
	var kept []int
	for j, c := range l.Columns {
		if c.Factor < 0 || len(l.Once(c.Factor)) == 0 {
			kept = append(kept, j)
		}
	}
	if len(kept) == len(l.Columns) {
		return d
	}
	d.X = make([][]float64, len(l.Data.X))
	for i, x := range l.Data.X {
		for _, j := range kept { // steps come last, so that leaning columns keep their places
			d.X[i] = append(d.X[i], x[j])
		}
	}
	return d
}

func clearest(cuts []cut) (best int) {
	for k, c := range cuts {
		if math.Abs(c.z) > math.Abs(cuts[best].z) {
			best = k
		}
	}
	return best
}

// after is a column of a step with a row.
func after(row, rows int) []float64 {
	x := make([]float64, rows)
	for j := row; j < rows; j++ {
		x[j] = 1
	}
	return x
}

// asNormal is a step over its standard error as one whose spreads are known: as rare as it is
// of Student's t with as many degrees of freedom as there are days less two, or, where days
// do not count, rows less columns.
func asNormal(l *line.Line, z float64) float64 {
	free := float64(len(l.Rows) - len(l.Columns) - 1)
	if l.Data.Within {
		free = math.Min(free, float64(l.Groups(func(k int) int { return l.Data.Inner[k] }).N()-2))
	}
	if free < 1 {
		return 0
	}
	return -distuv.UnitNormal.Quantile(math.Max(1e-300, distuv.StudentsT{Sigma: 1, Nu: free}.CDF(-math.Abs(z))))
}

// came are the levels of factors that first came in between two rows, or on their days.
func came(l *line.Line, from, to int) []string {
	time := l.Time()
	for to+1 < len(l.Rows) && time[to+1] == time[to] {
		to++
	}
	out := []string{}
	for _, way := range l.Factors {
		seen := map[string]bool{}
		for k, i := range l.Rows[:to+1] {
			name := way.Of(l.On[i])
			if name != "" && !seen[name] && k >= from {
				out = append(out, way.By+" "+name)
			}
			seen[name] = true
		}
	}
	return out
}

// allCuts are the steps between one day and the next, each beside a line with its spreads.
func allCuts(l *line.Line, base *nested.Fit) (out []cut) {
	time := l.Time()
	var rows []int
	for k := 1; k < len(l.Rows); k++ {
		if time[k] > time[k-1] && k >= line.LeastOf && len(l.Rows)-k >= line.LeastOf {
			rows = append(rows, k)
		}
	}
	most := max(8, min(mostCuts, cutRows/len(l.Rows)))
	every := max(1, (len(rows)+most-1)/most)
	for i := 0; i < len(rows); i += every {
		k := rows[i]
		step, se, ok := base.Step(after(k, len(l.Rows)))
		if ok {
			out = append(out, cut{row: k, share: float64(k) / float64(len(l.Rows)), z: step / se, step: step, se: se})
		}
	}
	return out
}

// byChance is how often the clearest of these cuts is as clear were there no change.
func byChance(l *line.Line, cuts []cut, z float64) float64 {
	rng := l.Stream(3)
	more := 0
	for range bridges {
		walk, at := make([]float64, len(cuts)), 0.0
		w := 0.0
		for k, c := range cuts {
			w += math.Sqrt(c.share-at) * rng.NormFloat64()
			at = c.share
			walk[k] = w
		}
		end := w + math.Sqrt(1-at)*rng.NormFloat64()
		for k, c := range cuts {
			if math.Abs(walk[k]-c.share*end) >= z*math.Sqrt(c.share*(1-c.share)) {
				more++
				break
			}
		}
	}
	return (float64(more) + 1) / (bridges + 1)
}
