package history

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"foamfield/ingest/trial"
)

// numbered is the number of a week in a name, "wk 31", "KW31", "31st week", and its year where
// the name has one.
var (
	numbered = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:week|weeks|wk|kw|woche|semaine|semana|settimana)[ _.\-]*(?:no\.?|nr\.?|#)?[ _.\-]*(\d{1,2})(?:$|[^\d])`)
	fullYear = regexp.MustCompile(`(?:^|[^\d])(20[0-4]\d)(?:$|[^\d])`)
)

// withoutWeek is a name without the number of its week, and whether it has one.
func withoutWeek(name string) (rest string, had bool) {
	at := numbered.FindStringSubmatchIndex(name)
	if at == nil {
		return name, false
	}
	return name[:at[0]] + " " + strings.TrimLeft(name[at[3]:], " -_.,:"), true
}

// calendar gives trials of which only the number of a week is known, and of whose file the
// year, the Monday of that week of the calendar (ISO 8601), if their numbers are such as weeks
// of a calendar have: twice as high as there are weeks, or more. Weeks 1 to 6 may be those of
// a term.
func (h *History) calendar(all []*placing, log *trial.Log) {
	week, year := map[*placing]int{}, map[*placing]int{}
	var seen []int
	for _, p := range all {
		file := strings.TrimSuffix(p.At.File, filepath.Ext(p.At.File))
		for _, name := range []string{p.Week, p.At.Sheet, file} {
			n, ok := weekNumber(name, name == p.Week)
			if !ok {
				continue
			}
			year[p] = log.Years[p.At.File]
			for _, text := range []string{file, name} {
				if m := fullYear.FindStringSubmatch(text); m != nil {
					year[p], _ = strconv.Atoi(m[1])
				}
			}
			if week[p] = n; year[p] != 0 && !slices.Contains(seen, n) {
				seen = append(seen, n)
			}
			break
		}
	}
	if len(seen) == 0 || slices.Max(seen) <= 2*len(seen) || slices.Max(seen) > 53 || slices.Max(seen)-slices.Min(seen) > 26 {
		return
	}
	said := false
	for _, p := range all {
		if year[p] == 0 || week[p] == 0 {
			continue
		}
		r, ok := reading{date: mondayOf(year[p], week[p]), week: true}.onDay(p.Day, year[p])
		if !ok {
			continue
		}
		if p.read, p.dated = r, true; !said {
			h.Notes = append(h.Notes, fmt.Sprintf("week %d and the others are taken for weeks of the calendar of %d", week[p], year[p]))
			said = true
		}
	}
}

// weekNumber is the number of a week that a name has; a cell of a week column may be no more.
func weekNumber(name string, column bool) (int, bool) {
	m := numbered.FindStringSubmatch(name)
	if m != nil {
		name = m[1]
	} else if !column {
		return 0, false
	}
	n, err := strconv.Atoi(strings.TrimSpace(name))
	return n, err == nil && n > 0
}

// mondayOf is the first day of a week of a year: the week with 4 January is the first.
func mondayOf(year, week int) time.Time {
	fourth := time.Date(year, time.January, 4, 0, 0, 0, 0, time.UTC)
	return fourth.AddDate(0, 0, -(int(fourth.Weekday())+6)%7+7*(week-1))
}
