package analysis

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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
	log = inOrder(log, history.Of(log))
	whole := history.Of(log)
	some, every := thinned(log, whole)
	h := whole
	if every > 1 {
		h = history.Of(some)
		h.Notes = append(h.Notes, fmt.Sprintf("of so many trials one in %d of each day stands for all in what is fitted; all are counted", every))
	}
	r, s, err := study(some, set, nil)
	if err != nil {
		return nil, err
	}
	t := trend.Of(trend.Input{Log: some, History: h, Surface: s, Want: r.Targets, Starts: r.Starts, Held: r.HeldTerms, Seed: set.Seed})
	t.Version = set.Version
	t.Notes = append(t.Notes, doubts(r)...)
	t.Questions = append(t.Questions, r.Questions...)
	if every > 1 {
		t.Trials = len(whole.Trials)
		trend.Recount(t, whole)
	}
	return &Weeks{t, r, trend.Tidy(log, whole)}, nil
}

// told are the kinds of what was read that a history is told of one by one: files and trials that do
// not count.
var told = map[string]bool{"no trial in the file": true, "file not read": true, "copies": true}

// doubts are what of the log was not read as it stands, and why there is no start.
func doubts(r *result.Results) (out []string) {
	fix, check := 0, 0
	for _, p := range r.Problems {
		switch {
		case told[p.Kind]:
			out = append(out, p.At+": "+p.Read)
		case p.Severity == result.MustFix:
			fix += p.Count
		case p.Severity == result.PleaseLook:
			check += p.Count
		}
	}
	if fix+check > 0 {
		out = append(out, fmt.Sprintf("%s to fix and %d to check in the log: foamfield check names them", counted(fix, "thing"), check))
	}
	if len(r.Starts) == 0 {
		out = append(out, "no start is named: "+strings.TrimPrefix(strings.TrimRight(r.StatusReason, ".?"), "no start is named "))
	}
	return out
}

func counted(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

// mostStudied is how many trials of a history are studied; of more, one in so many of each day
// stands for all.
const mostStudied = 15000

// thinned is a log with one in so many trials of each day, in the order they have.
func thinned(log *trial.Log, h *history.History) (*trial.Log, int) {
	every := (len(h.Trials) + mostStudied - 1) / mostStudied
	if every < 2 {
		return log, 1
	}
	day := map[*trial.Trial]int{}
	for i, t := range h.Trials {
		if h.Day != nil {
			day[t] = h.Day[i]
		} else {
			day[t] = h.Of[i]
		}
	}
	out := *log
	out.Trials = nil
	seen := map[int]int{}
	for i := range log.Trials {
		d, placed := day[&log.Trials[i]]
		if !placed {
			continue
		}
		if seen[d]%every == 0 {
			out.Trials = append(out.Trials, log.Trials[i])
		}
		seen[d]++
	}
	return &out, every
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
