package trend

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/belief"
	"foamfield/analysis/history"
	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/trend/line"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"

	"gonum.org/v1/gonum/stat/distuv"
)

// passes is the chance that the start passes hold and drainage in one possible truth, made
// on another day; week -1 is another week, of which nothing is known.
type passing struct {
	l     *line.Line
	draws []nested.Draw
	x     []float64
	floor float64 // ln of the least hold, or of the most drained
}

func passings(v *line.View, levels func(*line.Line) map[int]string) (out []passing) {
	for i, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		l := v.LineFor(o)
		if l == nil || !v.Want.Needs(o) && o == result.DrainedPercent && !v.Surface.Judged[o] {
			continue
		}
		target := v.Want.HoldMinutes.Value
		if o == result.DrainedPercent {
			target = v.Want.DrainedPercent.Value
		}
		p := passing{l: l, draws: l.Main.Draws(truths(len(v.History.Periods)), v.Stream(uint64(10+i))), floor: math.Log(target)}
		p.x = l.Row(v.Ref.Mix, v.Ref.Beside, levels(l))
		out = append(out, p)
	}
	return out
}

// given is the share that pass if the d-th truth holds.
func (p *passing) given(d, week int) float64 {
	t := p.draws[d]
	m, variance := 0.0, t.Rest*t.Rest
	for j, x := range p.x {
		m += x * t.B[j]
	}
	if p.l.Data.Within {
		variance += t.Inner * t.Inner
	}
	for a, j := range append([]int{0}, p.l.Data.Lean...) {
		if !p.l.Data.Level {
			break
		}
		if week >= 0 {
			m += p.x[j] * t.U[week][a]
		} else {
			variance += p.x[j] * p.x[j] * t.Outer[a] * t.Outer[a]
		}
	}
	z := (m - p.floor) / math.Sqrt(variance)
	if p.l.Outcome == result.DrainedPercent {
		z = -z
	}
	return distuv.UnitNormal.CDF(z)
}

// beside is the chance of all that is not compared by the week: coming out, not splitting,
// and results that the kitchen asks for.
func besideChance(v *line.View) float64 {
	s := v.Ref.Start
	p, all := 1.0, 1.0
	for o, share := range s.Fails {
		switch o {
		case result.HoldMinutes, result.DrainedPercent:
		case result.CameOut, result.Broke:
			p -= share
		}
		if slices.Contains(result.Chain, o) {
			all -= share
		}
	}
	if all > 0 {
		p *= math.Min(1, s.Chance.Mean/all)
	}
	return math.Max(0, p)
}

// chance is the start's chance in a week, beside what is the same in all.
func chance(ps []passing, week int, beside float64) *result.TrendChance {
	if len(ps) == 0 {
		return nil
	}
	n := len(ps[0].draws)
	all := make([]float64, n)
	mean := 0.0
	for d := range n {
		all[d] = beside
		for k := range ps {
			// Draws of two outcomes have nothing to do with each other: any may meet any.
			all[d] *= ps[k].given((d*(1+6*k)+k)%n, week)
		}
		mean += all[d] / float64(n)
	}
	slices.Sort(all)
	return &result.TrendChance{Mean: mean, Low: all[int((1-line.Level)/2*float64(n))], High: all[min(int((1+line.Level)/2*float64(n)), n-1)]}
}

// pooled is the start's chance with all weeks taken for one.
func pooled(v *line.View) *result.TrendChance {
	c := v.Ref.Start.Chance
	return &result.TrendChance{Mean: c.Mean, Low: c.Low, High: c.High}
}

// chances is the start's chance in every week, nil where there is no start. One week is all weeks. A
// straight line of hold, which is all that few trials carry, knows nothing of the peak at which a
// start stands, and no chance comes of it.
func chances(v *line.View) (out []*result.TrendChance) {
	l := v.LineFor(result.HoldMinutes)
	switch {
	case v.Ref.Start == nil:
		return nil
	case len(v.History.Periods) == 1:
		return []*result.TrendChance{pooled(v)}
	case l == nil || l.Order < 2:
		return nil
	}
	ps := passings(v, func(*line.Line) map[int]string { return nil })
	beside := besideChance(v)
	for k := range v.History.Periods {
		out = append(out, chance(ps, k, beside))
	}
	return out
}

// now is what the standing start promises as of the latest week and lot, where there is more than
// one of these.
func now(v *line.View, tests []result.TrendTest) *result.Now {
	hold := v.LineFor(result.HoldMinutes)
	if v.Ref.Start == nil || hold == nil {
		return nil
	}
	last := len(v.History.Periods) - 1
	n := &result.Now{Period: latestWeek(v), Lots: latestLots(v, hold), Pooled: pooled(v)}
	if last == 0 && len(n.Lots) == 0 {
		return nil
	}
	if hold.Order > 1 {
		n.Latest = chance(passings(v, (*line.Line).Latest), last, besideChance(v))
	}
	for _, t := range tests {
		n.Matters = n.Matters || matters(t.What) && t.Verdict == result.Shown
	}
	together := "with all weeks taken for one"
	if last == 0 {
		together = "with all lots taken for one"
	}
	if n.Latest == nil {
		n.Sentence = fmt.Sprintf("%s about %d of 100 starts work; what they do %s these trials are too few to say", together, ofHundred(n.Pooled.Mean), asOf(n.Period, n.Lots))
		return n
	}
	n.Sentence = fmt.Sprintf("of 100 foams of the surest start about %d work %s; %s it would be about %d", ofHundred(n.Latest.Mean), asOf(n.Period, n.Lots), together, ofHundred(n.Pooled.Mean))
	return n
}

// latestWeek is the label of the latest week, "" where the log names no weeks.
func latestWeek(v *line.View) string {
	if label := v.Label(len(v.History.Periods) - 1); label != history.AllTrials {
		return label
	}
	return ""
}

// asOf is a week and lots in a sentence.
func asOf(period string, lots []string) string {
	var words []string
	if period != "" {
		words = append(words, "as of "+line.InWords(period))
	}
	if len(lots) > 0 {
		words = append(words, "with "+strings.Join(lots, " and "))
	}
	return strings.Join(words, " ")
}

// ofHundred counts a chance, neither none nor all.
func ofHundred(p float64) int { return int(math.Round(100 * min(max(p, 0.01), 0.99))) }

const (
	mostForeseen  = 4    // weeks held against what those before them said
	longHistory   = 3000 // trials above which that takes too long
	disagrees     = 2.5  // standard deviations
	mostDisagree  = 20
	leastForeseen = 8
)

// foreseen holds each of the latest weeks against what the trials of the weeks before it
// made one expect: were we right as often as we said?
func foreseen(v *line.View) (out []result.WeekSaid) {
	h := v.History
	if len(h.Trials) > longHistory {
		return nil
	}
	for k := max(1, len(h.Periods)-mostForeseen); k < len(h.Periods); k++ {
		if w, ok := said(v, h, k); ok {
			out = append(out, w)
		}
	}
	return out
}

func said(v *line.View, h *history.History, week int) (w result.WeekSaid, ok bool) {
	log := &trial.Log{Extras: v.Log.Extras}
	for i, t := range h.Trials {
		if h.Of[i] < week {
			log.Trials = append(log.Trials, *t)
		}
	}
	if len(log.Trials) < leastForeseen {
		return w, false
	}
	s, err := surface.Of(log, v.Want, 0.1)
	if err != nil || len(s.Vars) == 0 {
		return w, false
	}
	b, err := belief.Of(s, v.Want, v.Seed, true)
	if err != nil || len(b.Chain.Links) == 0 {
		return w, false
	}
	w = result.WeekSaid{Period: h.Periods[week].Label}
	for i, t := range v.On {
		if v.PeriodOf(i) != week || t.Works == works.Unknown {
			continue
		}
		m := v.Surface.MixOf(t)
		values := s.Values(m)
		if !known(s, m) {
			continue
		}
		w.Trials++
		w.Said += b.Chain.Chance(values)
		if t.Works == works.Yes {
			w.Worked++
		}
	}
	return w, w.Trials > 0
}

// known says whether a mix has all that a surface asks for.
func known(s *surface.Surface, m result.Mix) bool {
	for _, x := range s.Vars {
		switch x.Name {
		case surface.FatPercent:
			if m.FatPercent == nil {
				return false
			}
		case surface.EmulsifierPercent:
			if m.EmulsifierPercent == nil || *m.EmulsifierPercent <= 0 {
				return false
			}
		case surface.EmulsifierGrams:
			if m.EmulsifierGrams == nil || *m.EmulsifierGrams <= 0 {
				return false
			}
		case surface.BlendHLB:
			if m.BlendHLB == nil {
				return false
			}
		}
	}
	return true
}

// disagree names the earlier trials that the latest week would hardly give.
func disagree(v *line.View) (out []result.OldTrial) {
	last := len(v.History.Periods) - 1
	if last < 1 {
		return nil
	}
	type far struct {
		result.OldTrial
		z float64
	}
	var all []far
	for _, l := range v.Lines {
		if l.Main == nil {
			continue
		}
		for k := range l.Rows {
			if l.Data.Outer[k] == last {
				continue
			}
			mean, sd := l.Main.Likely(l.Main.At(l.Own(k), last))
			scatter := math.Sqrt(sd*sd + l.Main.Mode.Rest*l.Main.Mode.Rest + l.Main.Mode.Inner*l.Main.Mode.Inner)
			off := 0.0
			if low := l.Data.Low[k]; low > mean {
				off = low - mean
			} else if high := l.Data.High[k]; high < mean {
				off = high - mean
			}
			if z := off / scatter; math.Abs(z) > disagrees {
				all = append(all, far{result.OldTrial{At: l.PlacedOf(k).At.String(), Period: v.Label(l.Data.Outer[k]), Outcome: l.Outcome, Ratio: line.Grow(off)}, z})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b far) int { return cmp.Compare(math.Abs(b.z), math.Abs(a.z)) })
	for _, f := range all[:min(len(all), mostDisagree)] {
		out = append(out, f.OldTrial)
	}
	return out
}
