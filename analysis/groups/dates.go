package groups

import (
	"cmp"
	"foamfield/ingest/pattern"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// inOrder asks whether a result drifts: by the dates of its trials where all have one, and
// by the log on one date; else by the log alone.
func inOrder(trials []*surface.Placed) question {
	q := question{by: "order", name: "the order of the trials", orderBy: result.ByLog, setting: -1}
	place := map[*surface.Placed]float64{}
	for _, t := range trials {
		place[t] = float64(t.Order)
	}
	if when := dates(trials); when != nil {
		q.orderBy = result.ByDate
		sorted := slices.SortedStableFunc(slices.Values(trials), func(a, b *surface.Placed) int {
			return cmp.Or(when[a.Day].Compare(when[b.Day]), cmp.Compare(a.Order, b.Order))
		})
		for i, t := range sorted {
			place[t] = float64(i)
		}
	}
	first, last := math.Inf(1), math.Inf(-1)
	for _, p := range place {
		first, last = min(first, p), max(last, p)
	}
	q.number = func(t *surface.Placed) float64 { return (place[t] - first) / max(last-first, 1) }
	return q
}

// dates is what the days of trials are as dates, nil unless there are several and every
// trial has one that can be read in one way only. The names of weekdays are no dates, and
// a bare number may be the day of any month.
func dates(trials []*surface.Placed) map[string]time.Time {
	days := map[string]bool{}
	for _, t := range trials {
		days[t.Day] = true
	}
	if len(days) < 2 {
		return nil
	}
	var when map[string]time.Time
	for _, reading := range []func(string) (time.Time, bool){typed("2/1/2006", "2/1/06"), typed("1/2/2006", "1/2/06"), numbered} {
		read := map[string]time.Time{}
		for day := range days {
			if t, ok := reading(strings.TrimSpace(day)); ok {
				read[day] = t
			}
		}
		switch {
		case len(read) < len(days):
		case when != nil && !maps.Equal(when, read):
			return nil
		default:
			when = read
		}
	}
	return when
}

// plainDates are dates that can be read in one way only; a cell that is a date comes as
// the first two.
var plainDates = []string{"2006-1-2", "2006-1-2 15:04", "2006-1-2 15:04:05", "2006-1-2T15:04", "2006-1-2T15:04:05", "2006/1/2",
	"2.1.2006", "2.1.06", "2 January 2006", "2 Jan 2006", "2-Jan-2006", "January 2, 2006", "January 2 2006", "Jan 2, 2006", "Jan 2 2006"}

// typed reads plain dates, and those with strokes in the ways given.
func typed(stroked ...string) func(string) (time.Time, bool) {
	layouts := slices.Concat(plainDates, stroked)
	return func(day string) (time.Time, bool) {
		for _, l := range layouts {
			if t, err := time.Parse(l, day); err == nil {
				return t, true
			}
		}
		return time.Time{}, false
	}
}

var dayNumber = pattern.Of(`^(?i:day) ?(\d{1,4})$`)

// numbered reads "day 3".
func numbered(day string) (time.Time, bool) {
	m := dayNumber.FindStringSubmatch(day)
	if m == nil {
		return time.Time{}, false
	}
	n, err := strconv.Atoi(m[1])
	return time.Time{}.AddDate(0, 0, n), err == nil
}
