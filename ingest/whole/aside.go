package whole

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/trial"
)

// HowToFillIn is what to do with a plan.
const HowToFillIn = "type what happened in the empty columns"

// Aside says of each file which of its trials are not used: one problem a reason, so
// that no file counts as clean while its rows are left out. Those with a cell that
// cannot be used have a problem of that cell. starts are the first trials of the
// files. What comes before all else is leading.
func Aside(all []trial.Trial, starts []int) (found, leading []trial.Finding) {
	clogged := slices.ContainsFunc(all, func(t trial.Trial) bool { return t.CameOut == trial.No })
	for i, from := range starts {
		to := len(all)
		if i+1 < len(starts) {
			to = starts[i+1]
		}
		some, first := asideOf(all[from:to], clogged)
		found, leading = append(found, some...), append(leading, first...)
	}
	return found, leading
}

func asideOf(trials []trial.Trial, clogged bool) (found, leading []trial.Finding) {
	for _, reason := range [...]string{NothingRead, NoMix} {
		if n, first := count(trials, reason); n > 0 {
			f := trial.Check("row not used", trials[first].At, rows(n, "is", "are")+" not used: "+reason,
				"fill in what was in the mix and what happened to it, or delete what is no trial")
			f.Count = n
			found = append(found, f)
		}
	}
	n, first := count(trials, NoResult)
	if n == 0 {
		return found, nil
	}
	at := trials[first].At
	if NotFilledIn(trials) {
		return append(found, trial.Check("not filled in", trial.Place{File: at.File, Sheet: at.Sheet}, "not filled in yet: no row says what happened", HowToFillIn)), nil
	}
	f := trial.Check("no result", at, rows(n, "has", "have")+" a mix but no result", "if they clogged, type no under came out (or clogged under hold)")
	f.Count = n
	if n == 1 {
		f.Do = strings.Replace(f.Do, "they", "it", 1)
	}
	if clogged {
		return append(found, f), nil
	}
	// A log in which nothing ever clogged most likely left out what did, and then no
	// limit can be found in it: that comes before all else.
	f.Read += ", and no trial is logged as clogged"
	return found, []trial.Finding{f}
}

func count(trials []trial.Trial, reason string) (n, first int) {
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

// NotFilledIn reports trials of which none has a result, though all have a mix: a
// plan.
func NotFilledIn(trials []trial.Trial) bool {
	n, _ := count(trials, NoResult)
	return n > 0 && n == len(trials)
}

// rows counts rows as the subject of a verb.
func rows(n int, one, many string) string {
	if n == 1 {
		return "1 row " + one
	}
	return fmt.Sprintf("%d rows %s", n, many)
}
