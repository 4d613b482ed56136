package ingest

import (
	"fmt"
	"foamfield/ingest/trial"
	"slices"
	"strings"
)

// Why a whole trial is set aside.
const (
	nothingRead = "neither what was in it nor what happened could be read"
	noMix       = "nothing of what was in the mix could be read"
	noResult    = "no result: neither hold, drainage, coming out nor breaking is logged"
)

const howToFillIn = "type what happened in the empty columns"

// sayNoTrials says of one of several files that it gave no trial.
func (r *reader) sayNoTrials(file string, headed bool) {
	read, do := "no row of column headers was found, so no trial was read from the file", "type a header above its trials, or keep the file out of the folder of logs"
	if headed {
		read, do = "there is no trial below the header", "type one trial a row, right below the header"
	}
	r.problem("no trial in the file", trial.PleaseLook, trial.Place{File: file}, read, do)
}

// sayAside says of each file which of its trials are not used: one problem a
// reason, so that no file counts as clean while its rows are left out. Those
// with a cell that cannot be used have a problem of that cell. starts are the
// indices of the files' first trials.
func (r *reader) sayAside(starts []int) {
	all := r.log.Trials
	clogged := slices.ContainsFunc(all, func(t trial.Trial) bool { return t.CameOut == trial.No })
	for i, from := range starts {
		to := len(all)
		if i+1 < len(starts) {
			to = starts[i+1]
		}
		r.sayAsideOf(all[from:to], clogged)
	}
}

func (r *reader) sayAsideOf(trials []trial.Trial, clogged bool) {
	for _, reason := range [...]string{nothingRead, noMix} {
		if n, first := countAside(trials, reason); n > 0 {
			r.found.list = append(r.found.list, trial.Problem{Kind: "row not used", Severity: trial.PleaseLook, At: trials[first].At, Count: n,
				Read: rows(n, "is", "are") + " not used: " + reason,
				Do:   "fill in what was in the mix and what happened to it, or delete what is no trial"})
		}
	}
	n, first := countAside(trials, noResult)
	if n == 0 {
		return
	}
	at := trials[first].At
	if notFilledIn(trials) {
		r.problem("not filled in", trial.PleaseLook, trial.Place{File: at.File, Sheet: at.Sheet}, "not filled in yet: no row says what happened", howToFillIn)
		return
	}
	p := trial.Problem{Kind: "no result", Severity: trial.PleaseLook, At: at, Count: n, Read: rows(n, "has", "have") + " a mix but no result",
		Do: "if they clogged, type no under came out (or clogged under hold)"}
	if n == 1 {
		p.Do = strings.Replace(p.Do, "they", "it", 1)
	}
	if clogged {
		r.found.list = append(r.found.list, p)
		return
	}
	// A log in which nothing ever clogged most likely left out what did, and
	// then no limit can be found in it: that comes before all else.
	p.Read += ", and no trial is logged as clogged"
	r.found.list = slices.Insert(r.found.list, 0, p)
}

func countAside(trials []trial.Trial, reason string) (n, first int) {
	for i := range trials {
		if trials[i].Aside == reason {
			if n == 0 {
				first = i
			}
			n++
		}
	}
	return n, first
}

// notFilledIn reports trials of which none has a result, though all have a mix:
// a plan.
func notFilledIn(trials []trial.Trial) bool {
	n, _ := countAside(trials, noResult)
	return n > 0 && n == len(trials)
}

// rows counts rows as the subject of a verb.
func rows(n int, one, many string) string {
	if n == 1 {
		return "1 row " + one
	}
	return fmt.Sprintf("%d rows %s", n, many)
}
