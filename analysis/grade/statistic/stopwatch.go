package statistic

import (
	"fmt"
	"math"
	"strconv"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

// A stopwatch shows minutes and seconds, 18:30, and what is typed beside it are minutes, 18.5.

var minutesSeconds = pattern.Of(`^\s*(\d{1,3})\s*[:′'’]\s*([0-5]\d)\s*(?:[″"”]|''|min)?\s*$`)

// stopwatch holds minutes against the stopwatch that most of them are of.
func (j *results) stopwatch() {
	for _, col := range j.Table.Columns {
		if col.Role != column.Hold && !unknownRole(col) {
			continue
		}
		for _, watch := range j.Table.Columns {
			if watch == col {
				continue
			}
			shown, fits := 0, 0
			for i, c := range col.Cells {
				if m, s, ok := onStopwatch(watch.Cells[i]); ok && c.Known {
					shown++
					if math.Abs(m+s/60-c.Value) <= c.Half+verdict.Slack(c.Value) {
						fits++
					}
				}
			}
			if fits < 3 || 4*fits < 3*shown {
				continue
			}
			j.Column(col, criteria.Means, func(i int) (e verdict.Expected, ok bool) {
				m, s, ok := onStopwatch(watch.Cells[i])
				right := m + s/60
				e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right)}, Within: col.Cells[i].Half, Digits: 2, How: fmt.Sprintf("%s min and %s s are %s + %s / 60", verdict.Num(m), verdict.Num(s), verdict.Num(m), verdict.Num(s)), Guess: true}
				e.Ways = append(verdict.Slips(right), verdict.By(m+s/100, "the seconds written behind the point", "seconds as decimals"), verdict.By(60*m+s, "the seconds, not the minutes", "in seconds"), verdict.Weakly(m, "the minutes alone", "seconds left out"))
				return e, ok
			})
			break
		}
	}
}

// onStopwatch are the minutes and the seconds of a cell as a stopwatch shows them.
func onStopwatch(c handin.Cell) (minutes, seconds float64, ok bool) {
	m := minutesSeconds.FindStringSubmatch(c.Text)
	if m == nil {
		return 0, 0, false
	}
	minutes, _ = strconv.ParseFloat(m[1], 64)
	seconds, _ = strconv.ParseFloat(m[2], 64)
	return minutes, seconds, true
}
