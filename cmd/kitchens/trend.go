package main

import (
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"time"

	"foamfield/analysis"
	"foamfield/analysis/result"
	"foamfield/ingest"

	"gonum.org/v1/gonum/stat"
)

// course is what truly happens over the weeks of a simulated history.
type course struct {
	name     string
	day      float64                            // SD of a day on ln hold
	moves    float64                            // HLB a week
	factor   func(week, day, trial int) float64 // of hold
	lot      func(week, day, trial int) string
	truth    string // the test that should show it, "" = none
	withWeek bool   // lot and week go together
	step     int    // the day, of all that are worked, from which on the level is another; 0 = none
}

const (
	historyWeeks  = 4
	historyTrials = 12 // a week, on four days
	historyDays   = 4
	repeatSD      = 0.2
	watchedUntil  = 32.0
)

func steady(int, int, int) float64 { return 1 }
func noLot(int, int, int) string   { return "" }

// twoTubs is a lot that changes within every week, by the day.
func twoTubs(_, day, _ int) string { return string(rune('A' + (day/2)%2)) }

// stepOn is a level of 0.65 from a day on, of all days that are worked.
func stepOn(from int) func(int, int, int) float64 {
	return func(week, day, _ int) float64 {
		if historyDays*week+day >= from {
			return 0.65
		}
		return 1
	}
}

func newTub(week, _, _ int) string {
	if week >= 2 {
		return "B"
	}
	return "A"
}

func ofTub(lot func(int, int, int) string) func(int, int, int) float64 {
	return func(w, d, t int) float64 {
		if lot(w, d, t) == "B" {
			return 0.7
		}
		return 1
	}
}

// courses are the histories that are looked at.
func courses() []course {
	return []course{
		{name: "nothing, day SD 0.1", day: 0.1, factor: steady, lot: twoTubs},
		{name: "nothing, day SD 0.2", day: 0.2, factor: steady, lot: twoTubs},
		{name: "nothing, day SD 0.3", day: 0.3, factor: steady, lot: twoTubs},
		{name: "best HLB moves 1 a week", day: 0.1, moves: 1, factor: steady, lot: noLot, truth: "optimum:blend_hlb"},
		{name: "lot x 0.7 within weeks", day: 0.1, factor: ofTub(twoTubs), lot: twoTubs, truth: "lot"},
		{name: "lot x 0.7 with week 3", day: 0.1, factor: ofTub(newTub), lot: newTub, truth: "week", withWeek: true},
		{name: "step to 0.7 with week 3", day: 0.1, factor: ofTub(newTub), lot: noLot, truth: "week", step: 2 * historyDays},
		{name: "step to 0.65 within week 2", day: 0.1, factor: stepOn(6), lot: noLot, truth: "week", step: 6},
		{name: "drift to 0.5 in four weeks", day: 0.1, factor: func(w, d, _ int) float64 {
			return math.Pow(0.5, (float64(w)+float64(d)/historyDays)/historyWeeks)
		}, lot: noLot, truth: "drift"},
		{name: "nothing, a lot with week 3", day: 0.1, factor: steady, lot: newTub, withWeek: true},
	}
}

// seenTrend is what one history came to.
type seenTrend struct {
	found, suggested bool // the truth
	plain            bool // the same by the comparisons of a report, which know no weeks
	falsely          bool // anything else shown
	plainFalsely     bool
	inside, optima   int
	bell             bool
	named            bool // lot and week named as not to be told apart
	lotAlone         bool
	change, changeAt bool // a step of hold is named; within a day of where it is
	alone            plainSeen
}

// historyCSV is the log of a history.
func historyCSV(c course, seed uint64) (text string, best [historyWeeks]float64, rows []plainRow) {
	rng := rand.New(rand.NewPCG(seed, 4711))
	var b strings.Builder
	b.WriteString("trial,date,butter lot,oil g,water g,glycerol monostearate g,sucrose ester HLB 15 g,came out,hold (min),drained at 20 min (%)\n")
	centre := 8.5 + rng.Float64()
	bell := seed%2 == 1
	no := 0
	for week := range historyWeeks {
		best[week] = centre + c.moves*(float64(week)-(historyWeeks-1)/2.0)
		for day := range historyDays {
			today := c.day * rng.NormFloat64()
			for trial := range historyTrials / historyDays {
				no++
				fat, emulsifier, hlb := 38+14*rng.Float64(), 1.2*math.Pow(3, rng.Float64()), 5+9*rng.Float64()
				off := hlb - best[week]
				fall := 0.05 * off * off
				if bell { // falls off less and less, which no square does
					fall = 1.2 * (1 - math.Exp(-off*off/20))
				}
				richer, more := (fat-45)/7, math.Log(emulsifier/2)
				level := 3.2 + 0.15*richer - 0.1*richer*richer + 0.3*more - fall
				level += math.Log(c.factor(week, day, trial)) + today
				hold := math.Exp(level + repeatSD*rng.NormFloat64())
				drained := math.Exp(1.6 - 0.1*richer - 0.2*more + 0.5*fall - 0.3*today + 0.25*rng.NormFloat64())
				said := fmt.Sprintf("%.1f", hold)
				if hold > watchedUntil {
					said = fmt.Sprintf(">%g", watchedUntil)
				}
				rows = append(rows, plainRow{week, float64(historyDays*week + day), c.lot(week, day, trial), []float64{richer, more, (hlb - 9.5) / 4.5}, math.Log(min(hold, watchedUntil)), hold > watchedUntil})
				lipophilic := emulsifier * (15 - hlb) / (15 - 3.8)
				fmt.Fprintf(&b, "%d,%s,%s,%.1f,%.1f,%.2f,%.2f,y,%s,%.1f\n", no, historyMonday.AddDate(0, 0, 7*week+day).Format(time.DateOnly), c.lot(week, day, trial),
					3*fat, 3*(100-fat-emulsifier), 3*lipophilic, 3*(emulsifier-lipophilic), said, drained)
			}
		}
	}
	return b.String(), best, rows
}

// historyMonday is when histories begin.
var historyMonday = time.Date(2026, time.March, 2, 0, 0, 0, 0, time.UTC)

// courseOf studies one history.
func courseOf(dir string, c course, seed uint64) (seenTrend, error) {
	text, best, rows := historyCSV(c, seed)
	path := filepath.Join(dir, fmt.Sprintf("%d.csv", seed))
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		return seenTrend{}, err
	}
	defer os.Remove(path)
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		return seenTrend{}, err
	}
	w, err := analysis.Trend(log, analysis.Settings{Seed: 1})
	if err != nil {
		return seenTrend{}, err
	}
	t, r := w.Trend, w.Pooled
	s := seenTrend{bell: seed%2 == 1, alone: c.plainly(rows)}
	s.tests(c, t.Tests)
	s.report(c, r.GroupEffects)
	for i, o := range t.Optimum {
		if o.Variable == "blend_hlb" {
			truth := best[i%historyWeeks]
			s.optima++
			if o.Low <= truth && truth <= o.High {
				s.inside++
			}
		}
	}
	for _, x := range t.Changes {
		if x.Outcome == result.HoldMinutes {
			s.change, s.changeAt = true, c.near(x.At)
		}
	}
	for _, a := range t.CannotSeparate {
		s.named = s.named || a.A == "butter lot" && a.B == "week"
	}
	return s, nil
}

// near says whether a date is the day of the step, or a day that is worked beside it.
func (c *course) near(date string) bool {
	d, err := time.Parse(time.DateOnly, date)
	days := int(d.Sub(historyMonday).Hours() / 24)
	day := days/7*historyDays + days%7
	return err == nil && c.step > 0 && day >= c.step-1 && day <= c.step+1
}

// is says whether a test is of what truly happens: a step is a move and a move a step.
func (c *course) is(what string) bool {
	return what == c.truth || c.truth == "drift" && what == "week" || c.truth == "week" && what == "drift"
}

// follows says whether a test may show what follows from the truth: where the optimum moves,
// drainage's does too, and so does the level at any one mix. Days do differ in all courses.
func (c *course) follows(what string) bool {
	return what == "day" || c.moves != 0 && (what == "week" || what == "drift" || what == c.truth)
}

// tests notes what is shown of the truth and beside it.
func (s *seenTrend) tests(c course, tests []result.TrendTest) {
	for _, x := range tests {
		ofHold := x.Outcome == result.HoldMinutes
		switch {
		case c.is(x.What) && ofHold && x.Verdict == result.Shown:
			s.found = true
		case c.is(x.What) && ofHold && x.Verdict == result.Suggested:
			s.suggested = true
		case x.Verdict == result.Shown && !c.follows(x.What):
			s.falsely = true
		}
		s.lotAlone = s.lotAlone || c.withWeek && x.What == "lot" && (x.Verdict == result.Shown || x.Verdict == result.Suggested)
	}
}

// report notes the same of a report's own comparisons, which know no weeks.
func (s *seenTrend) report(c course, effects []result.GroupEffect) {
	for _, x := range effects {
		if x.Verdict != result.Clear && x.Verdict != result.Likely {
			continue
		}
		truth := c.truth == "lot" && x.By == "butter lot" || (c.truth == "drift" || c.truth == "week") && (x.By == "order" || x.By == "day")
		switch {
		case truth && x.Result == string(result.HoldMinutes):
			s.plain = true
		case !truth && x.By != "day":
			s.plainFalsely = true
		}
	}
}

// coursesOf studies n histories of a course, as many at once as there are cores.
func coursesOf(dir string, c course, first uint64, n int) ([]seenTrend, error) {
	out, errs := make([]seenTrend, n), make([]error, n)
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for i := range next {
				out[i], errs[i] = courseOf(dir, c, first+uint64(i))
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// trends prints how often what truly happened is found, and what did not.
func trends(out io.Writer, first uint64, n int, only ...string) error {
	dir, err := os.MkdirTemp("", "kitchens")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fmt.Fprintf(out, "%d histories a row of %d weeks of %d trials, each row of its own, in percent; optima in their 90 %% limits of squares and of bells, with standard errors\n", n, historyWeeks, historyTrials)
	fmt.Fprintf(out, "%-28s %6s %10s %8s %12s %10s %12s %10s %25s %9s %13s\n", "truth", "shown", "suggested", "falsely", "by a report", "falsely", "not pooled", "falsely", "optimum in", "lot alone", "step named")
	for k, c := range courses() {
		if len(only) > 0 && !strings.Contains(c.name, only[0]) {
			continue
		}
		rows, err := coursesOf(dir, c, first+uint64(k)*rowApart, n)
		if err != nil {
			return err
		}
		s := sumTrend(rows)
		alone := "-"
		if c.withWeek {
			alone = fmt.Sprintf("%.0f of %.0f", s.alone, s.named)
		}
		percent := func(x float64) string { return fmt.Sprintf("%.1f", 100*x/float64(n)) }
		named := percent(s.change)
		if c.step > 0 {
			named = percent(s.changeAt) + " of " + named
		}
		fmt.Fprintf(out, "%-28s %6s %10s %8s %12s %10s %12s %10s %12s %12s %9s %13s\n", c.name, percent(s.found), percent(s.suggested), percent(s.falsely), percent(s.plain), percent(s.plainFalsely), percent(s.aloneFound), percent(s.aloneFalsely),
			held(rows, false), held(rows, true), alone, named)
	}
	return nil
}

// rowApart is how far apart the histories of one row and the next begin: rows of the same
// histories err together.
const rowApart = 1000

// held is how often limits hold the week's optimum, with its standard error: weeks of one
// history err together, so that it is that of the histories' means.
func held(rows []seenTrend, bell bool) string {
	var shares []float64
	for _, r := range rows {
		if r.bell == bell && r.optima > 0 {
			shares = append(shares, float64(r.inside)/float64(r.optima))
		}
	}
	if len(shares) < 2 {
		return "-"
	}
	mean, sd := stat.MeanStdDev(shares, nil)
	return fmt.Sprintf("%.3f±%.3f", mean, sd/math.Sqrt(float64(len(shares))))
}

// sumsOfTrend are counts over histories.
type sumsOfTrend struct {
	found, suggested, falsely, plain, plainFalsely, inside, optima, named, alone float64
	change, changeAt, aloneFound, aloneFalsely                                   float64
}

func sumTrend(rows []seenTrend) (s sumsOfTrend) {
	one := func(yes bool) float64 {
		if yes {
			return 1
		}
		return 0
	}
	for _, r := range rows {
		s.found += one(r.found)
		s.suggested += one(r.suggested && !r.found)
		s.falsely += one(r.falsely)
		s.plain += one(r.plain)
		s.plainFalsely += one(r.plainFalsely)
		s.inside += float64(r.inside)
		s.optima += float64(r.optima)
		s.named += one(r.named)
		s.change += one(r.change)
		s.changeAt += one(r.changeAt)
		s.aloneFound += one(r.alone.found)
		s.aloneFalsely += one(r.alone.falsely)
		s.alone += one(r.lotAlone)
	}
	return s
}
