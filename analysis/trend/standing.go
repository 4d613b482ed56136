package trend

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/analysis/trend/asked"
	"foamfield/analysis/trend/line"
	"foamfield/ingest/trial"
)

// Standing is how a history stands at its end, where weeks or lots matter: what each trial
// would have shown in the latest week with the latest lots.
type Standing struct {
	AsOf      *result.AsOf // nil = trials count as they are
	MayMatter []string     // what of lots is suggested, in words
	now       map[*trial.Trial]map[result.Outcome]float64
}

// Stands asks what a trend asks, so that a report and a trend of one log say the same: a week, a
// lot or an optimum that is shown to matter moves the trials, one of a lot that is suggested is said
// and moves nothing. It is nil if there is neither, and costs nothing where there is one week and
// one lot, or where files may be those of a class.
func Stands(in line.Input) *Standing {
	weeks := len(in.History.Periods) > 1
	if !weeks && !severalLots(in.Log) || weeks && !in.History.Said {
		return nil
	}
	v := line.Look(in, line.MostForReport)
	v.Fit()
	hold := v.LineFor(result.HoldMinutes)
	if hold == nil {
		return nil
	}
	s := &Standing{now: map[*trial.Trial]map[result.Outcome]float64{}}
	var shown []string
	for _, t := range asked.Wanted(v, matters) {
		if !matters(t.What) {
			continue
		}
		l := v.LineFor(t.Outcome)
		switch lot := orLot(l, t); {
		case t.Verdict == result.Shown:
			shown = append(shown, strings.TrimPrefix(t.Sentence, "shown: ")+lot)
		case t.Verdict == result.Suggested && (lot != "" || t.By != ""):
			s.MayMatter = append(s.MayMatter, strings.TrimPrefix(t.Sentence, "suggested, not shown: ")+lot)
		}
	}
	if len(shown) == 0 {
		if len(s.MayMatter) == 0 {
			return nil
		}
		return s
	}
	s.AsOf = &result.AsOf{Period: latestWeek(v), Lots: latestLots(v, hold), Why: shown}
	for _, l := range v.Lines {
		if l.Main != nil {
			bringUp(l, s, len(in.History.Periods)-1)
		}
	}
	return s
}

// matters says whether a test is of what a start must know: weeks, lots, and where hold peaks.
func matters(what string) bool {
	return what == "week" || what == "lot" || what == "supplier" || what == "drift" || strings.HasPrefix(what, "optimum:")
}

// severalLots says whether trials name more than one lot or supplier.
func severalLots(log *trial.Log) bool {
	for _, name := range log.Labels {
		if what := line.KindOf(name); what != "lot" && what != "supplier" {
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

// orLot adds to a difference between weeks, or over time, that it may be that of a lot.
func orLot(l *line.Line, t result.TrendTest) string {
	for f, way := range l.Factors {
		if t.By == "" && (t.What == "week" || t.What == "drift") && l.InWeek[f] && (way.What == "lot" || way.What == "supplier") {
			return fmt.Sprintf(": %s or %s, which of them is unclear", way.By, t.What)
		}
	}
	return ""
}

// latestLots names the lots and suppliers in use, of the columns that have several.
func latestLots(v *line.View, l *line.Line) []string {
	out := []string{}
	levels := l.Latest()
	for f := range v.Factors {
		if name, known := levels[f]; known && len(l.Counts[f]) > 1 {
			out = append(out, v.Factors[f].By+" "+name)
		}
	}
	return out
}

// bringUp notes for every trial what the latest week and lots would have made of it, over
// what its own did.
func bringUp(l *line.Line, s *Standing, last int) {
	latest := l.Latest()
	for i, t := range l.On {
		own, now := map[int]string{}, map[int]string{}
		for f, way := range l.Factors {
			own[f], now[f] = way.Of(t), way.Of(t)
			if name, known := latest[f]; known {
				now[f] = name
			}
		}
		was, _ := l.Main.Likely(l.Main.At(l.Row(t.Mix, t.Beside, own), l.PeriodOf(i)))
		is, _ := l.Main.Likely(l.Main.At(l.Row(t.Mix, t.Beside, now), last))
		if s.now[t.Trial] == nil {
			s.now[t.Trial] = map[result.Outcome]float64{}
		}
		s.now[t.Trial][l.Outcome] = line.Grow(is - was)
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
