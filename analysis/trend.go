package analysis

import (
	"cmp"
	"slices"

	"foamfield/analysis/history"
	"foamfield/analysis/result"
	"foamfield/analysis/trend"
	"foamfield/ingest/trial"
)

// Weeks is what many weeks show: week by week, with all of them taken for one, and as rows
// for other programs.
type Weeks struct {
	Trend  *result.Trend
	Pooled *result.Results
	Tidy   result.Tidy
}

// Trend studies a log of many weeks: first with all of them taken for one, as Run does, then
// week by week. Trials are put in the order of time before anything else, so that the
// order of files, sheets and rows changes nothing.
func Trend(log *trial.Log, set Settings) (*Weeks, error) {
	h := history.Of(log)
	log = inOrder(log, h)
	h = history.Of(log)
	r, s, err := study(log, set, nil)
	if err != nil {
		return nil, err
	}
	t := trend.Of(trend.Input{Log: log, History: h, Surface: s, Want: r.Targets, Starts: r.Starts, Held: r.HeldTerms, Seed: set.Seed})
	t.Version = set.Version
	return &Weeks{t, r, trend.Tidy(log, h)}, nil
}

// inOrder is a log with its trials in the order of time, those that have no place in it
// last.
func inOrder(log *trial.Log, h *history.History) *trial.Log {
	at := map[*trial.Trial]int{}
	for i, t := range h.Trials {
		at[t] = i
	}
	order := make([]int, len(log.Trials))
	for i := range order {
		order[i] = i
	}
	place := func(i int) int {
		if k, placed := at[&log.Trials[i]]; placed {
			return k
		}
		return len(log.Trials)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(place(a), place(b)) })
	out := *log
	out.Trials = make([]trial.Trial, len(order))
	for k, i := range order {
		out.Trials[k] = log.Trials[i]
		out.Trials[k].Order = k + 1
	}
	return &out
}
