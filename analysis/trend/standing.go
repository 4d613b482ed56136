package trend

import (
	"strings"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// Standing is how a history stands at its end, where weeks or lots matter: what each trial
// would have shown in the latest week with the latest lots.
type Standing struct {
	AsOf result.AsOf
	now  map[*trial.Trial]map[result.Outcome]float64
}

// Stands asks only what a start must know: whether hold differs by week or lot, or its
// optimum moved. It is nil if none of these is shown, and costs nothing where there is one
// week and one lot, or where files may be those of a class.
func Stands(in Input) *Standing {
	weeks := len(in.History.Periods) > 1
	if !weeks && !severalLots(in.Log) || weeks && !in.History.Said {
		return nil
	}
	v := look(in, mostForReport)
	v.fit()
	l := v.lineFor(result.HoldMinutes)
	if l == nil {
		return nil
	}
	var shown []string
	for _, q := range v.moving(l) {
		if q.Verdict == result.Shown {
			shown = append(shown, strings.TrimPrefix(q.Sentence, "shown: ")+orLot(l, q))
		}
	}
	if len(shown) == 0 {
		return nil
	}
	last := len(in.History.Periods) - 1
	s := &Standing{AsOf: result.AsOf{Period: v.label(last), Lots: v.latestLots(l), Why: shown}, now: map[*trial.Trial]map[result.Outcome]float64{}}
	for _, l := range v.lines {
		if l.main != nil {
			l.bringUp(s, last)
		}
	}
	return s
}

// severalLots says whether trials name more than one lot or supplier.
func severalLots(log *trial.Log) bool {
	for _, name := range log.Labels {
		if what := kindOf(name); what != "lot" && what != "supplier" {
			continue
		}
		first := ""
		for i := range log.Trials {
			text := log.Trials[i].Raw[name]
			if first == "" {
				first = text
			} else if text != "" && text != first {
				return true
			}
		}
	}
	return false
}

// moving is the tests of hold that a start rests on.
func (v *view) moving(l *line) []*question {
	var all []*question
	add := func(what, by string, ask func(*question)) {
		all = append(all, &question{TrendTest: result.TrendTest{What: what, By: by, Outcome: l.outcome, Verdict: result.NotTested}, l: l, ask: ask})
	}
	if l.data.Level {
		add("week", "", (*question).week)
		for i, x := range v.Surface.Vars {
			add("optimum:"+x.Name, "", func(q *question) { q.optimum(i) })
		}
	}
	for f, way := range v.factors {
		if way.what == "lot" || way.what == "supplier" {
			add(way.what, way.by, func(q *question) { q.factor(f) })
		}
	}
	region.Parallel(len(all), func(i int) { all[i].ask(all[i]) })
	holm(all)
	for _, q := range all {
		q.judge()
	}
	return all
}

// orLot adds to a difference between weeks that it may be that of a lot.
func orLot(l *line, q *question) string {
	for f, way := range l.factors {
		if q.What == "week" && l.inWeek[f] {
			return ": " + way.by + " or week, which of them is unclear"
		}
	}
	return ""
}

// latestLots names the lots and suppliers in use, of the columns that have several.
func (v *view) latestLots(l *line) []string {
	out := []string{}
	levels := l.latest()
	for f := range v.factors {
		if name, known := levels[f]; known && len(l.counts[f]) > 1 {
			out = append(out, v.factors[f].by+" "+name)
		}
	}
	return out
}

// bringUp notes for every trial what the latest week and lots would have made of it, over
// what its own did.
func (l *line) bringUp(s *Standing, last int) {
	latest := l.latest()
	for i, t := range l.on {
		own, now := map[int]string{}, map[int]string{}
		for f, way := range l.factors {
			own[f], now[f] = way.of(t), way.of(t)
			if name, known := latest[f]; known {
				now[f] = name
			}
		}
		was, _ := l.main.Likely(l.main.At(l.row(t.Mix, t.Beside, own), l.periodOf(i)))
		is, _ := l.main.Likely(l.main.At(l.row(t.Mix, t.Beside, now), last))
		if s.now[t.Trial] == nil {
			s.now[t.Trial] = map[result.Outcome]float64{}
		}
		s.now[t.Trial][l.outcome] = grow(is - was)
	}
}

// Log is a log with every trial as the latest week and lots would have given it.
func (s *Standing) Log(log *trial.Log) *trial.Log {
	out := *log
	out.Trials = append([]trial.Trial(nil), log.Trials...)
	scaled := func(i *trial.Interval, by float64, known bool) *trial.Interval {
		if i == nil || !known {
			return i
		}
		return &trial.Interval{Low: i.Low * by, High: i.High * by}
	}
	for i := range out.Trials {
		by := s.now[&log.Trials[i]]
		hold, knownHold := by[result.HoldMinutes]
		drained, knownDrained := by[result.DrainedPercent]
		t := &out.Trials[i]
		t.Hold, t.Drained = scaled(t.Hold, hold, knownHold), scaled(t.Drained, drained, knownDrained)
	}
	return &out
}

// Now is what a trial's results are multiplied with to be of the latest week and lots; nil
// where nothing is known of it.
func (s *Standing) Now(t *trial.Trial) map[result.Outcome]float64 { return s.now[t] }
