package main

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"foamfield/analysis"
	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/kitchen"
	"foamfield/reports/text"
	"foamfield/reports/workbook"
)

// afterLogs is a plan of the next trials as it was called for.
type afterLogs struct {
	logs  []string
	read  ingest.Options
	study analysis.Settings
	on    plan.Shifts
	stock []kitchen.Amount
}

// reportTrials is the most that a report names, and so a plan unless somebody says.
const reportTrials = 6

// notAfter are flags that only a plan before any log has: the logs say these.
var notAfter = []string{"of", "fat", "emulsifier", "hlb", "canister", "chargers", "layout"}

func parseAfter(f *flags, more []string, workbook string) (*afterLogs, error) {
	a := &afterLogs{
		logs: append([]string{f.text("after", "name the logs to go on from, for example --after week.xlsx")}, more...),
		read: ingest.Options{Kitchen: workbook, Only: f.text("only", "type part of the name of the dish, the sheet or the file")},
		study: analysis.Settings{
			Hold:      f.number("hold", "min", math.Inf(1), "20"),
			Drained:   f.number("drained", "%", 100, "10"),
			DrainedAt: f.number("drained-at", "min", math.Inf(1), "20"),
			Chance:    f.chance("chance"),
			Batch:     f.number("batch", "g", math.Inf(1), "500"),
			ScaleStep: f.number("scale-step", "g", math.Inf(1), "0.1"),
			Seed:      f.seed("seed", usualSeed),
			Version:   version(),
		},
	}
	for _, name := range notAfter {
		if f.typed[name] != nil {
			f.refuse(name, "after logs that is as they have it: leave the flag out")
		}
	}
	if n := f.number("trials", "", 100, "8"); n != nil {
		if *n != math.Trunc(*n) {
			f.refuse("trials", "type a whole number, for example --trials 8")
		}
		a.study.NextTrials = int(*n)
	}
	a.on = plan.Shifts{Days: f.dayNames(), Cooks: f.turns("cooks", nameCooks)}
	if d := a.on.Days; len(d) == 1 && daysText.MatchString(d[0]) {
		f.refuse("days", "after logs the days are named: "+`type for example --days "Thu, Fri", or --days "day 3"`)
	} else if n := cmp.Or(a.study.NextTrials, reportTrials); len(d) > n {
		f.refuse("days", fmt.Sprintf("%s for %s: name fewer days, or ask for more trials", count(len(d), "day"), count(n, "trial")))
	}
	var err error
	if a.stock, err = f.stock(); err != nil {
		return nil, err
	}
	if f.err != nil {
		return nil, f.err
	}
	if m := a.study.DrainedAt; m != nil {
		a.read.DrainedAt = *m
	}
	if s := a.study.ScaleStep; s != nil {
		a.read.ScaleStep = *s
	}
	return a, nil
}

// plan reads the logs and takes the next trials of their analysis.
func (a *afterLogs) plan(c *call) (*result.Plan, []byte, error) {
	show := watch(c.stderr, false)
	defer show.done()
	show.step("reading " + text.OneLine(strings.Join(a.logs, ", ")))
	log, err := ingest.Read(a.logs, a.read)
	if err != nil {
		return nil, nil, err
	}
	if err := oneDish(log); err != nil {
		return nil, nil, err
	}
	show.step("fitting and searching")
	r, err := analysis.Run(log, a.study)
	if err != nil {
		return nil, nil, fmt.Errorf("the analysis of this log did not come to an end (%w): run foamfield check on it and mend what it names", err)
	}
	if len(r.NextTrials) == 0 {
		return nil, nil, fmt.Errorf("no next trials can be named: %s; run foamfield check on the log and mend what it names", strings.TrimSuffix(r.StatusReason, "."))
	}
	p, ordered := plan.After(r, a.study.NextTrials, a.on)
	var names []string
	for _, n := range p.Needs {
		names = append(names, n.Name)
	}
	stock, err := gramsAtHand(a.stock, names)
	if err != nil {
		return nil, nil, err
	}
	plan.Beside(p, stock)
	content, err := workbook.NextTrials(ordered, p, declaredFor(log, ordered.NextTrials))
	return p, content, err
}
