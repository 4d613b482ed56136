package history

import (
	"fmt"
	"foamfield/ingest/pattern"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"foamfield/ingest/trial"
)

// numbered is the number of a week in a name, "wk 31", "KW31", "2025-W31", and fullYear its year
// where the name has one; iso is a week that is surely the calendar's. begins is what stands
// before the day on which a week begins.
var (
	numbered = pattern.Of(`(?i)(?:^|[^\pL])(?:(?:week|weeks|wk|kw|woche|semaine|semana|settimana)[ _.\-]*(?:no\.?|nr\.?|#)?[ _.\-]*|w)(\d{1,2})(?:$|[^\d])`)
	iso      = pattern.Of(`(?i)(?:^|[^\d])20[0-4]\d[ -]?w\d\d`)
	begins   = pattern.Of(`(?i)(?:^|[^\pL])w[/.]?c(?:$|[^\pL])`)
	fullYear = pattern.Of(`(?:^|[^\d])(20[0-4]\d)(?:$|[^\d])`)
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
	type names struct{ week, sheet, file string }
	known := map[names][2]int{}
	sure := false
	of := func(p *placing) (week, year int) {
		k := names{p.Week, p.At.Sheet, p.At.File}
		if _, asked := known[k]; !asked {
			week, year = numberedWeek(p, log.Years[p.At.File])
			sure = sure || iso.MatchString(p.Week) || iso.MatchString(p.At.Sheet) || iso.MatchString(p.At.File)
			known[k] = [2]int{week, year}
		}
		return known[k][0], known[k][1]
	}
	var seen []int
	for _, p := range all {
		if n, year := of(p); n > 0 && year > 0 && !slices.Contains(seen, n) {
			seen = append(seen, n)
		}
	}
	if len(seen) == 0 || slices.Max(seen) > 53 || !sure && (slices.Max(seen) <= 2*len(seen) || slices.Max(seen)-slices.Min(seen) > 26) {
		return
	}
	said := sure
	for _, p := range all {
		week, year := of(p)
		if year == 0 || week == 0 {
			continue
		}
		r, ok := reading{date: mondayOf(year, week), week: true}.onDay(p.Day, year)
		if d, err := strconv.Atoi(p.Day); err == nil && sure && d >= 1 && d <= 7 { // as ISO 8601 numbers them
			r.date, r.week = r.date.AddDate(0, 0, d-1), false
		}
		if !ok {
			continue
		}
		if p.read, p.dated = r, true; !said {
			h.Notes = append(h.Notes, fmt.Sprintf("week %d and the others are taken for weeks of the calendar of %d", week, year))
			said = true
		}
	}
}

// numberedWeek is the number of a trial's week, by its column, else its sheet, else its file, and
// the year of it, by the name itself, else by the file.
func numberedWeek(p *placing, ofFile int) (week, year int) {
	file := strings.TrimSuffix(p.At.File, filepath.Ext(p.At.File))
	for _, name := range []string{p.Week, p.At.Sheet, file} {
		n, ok := weekNumber(name, name == p.Week)
		if !ok {
			continue
		}
		year = ofFile
		for _, text := range []string{file, name} {
			if m := fullYear.FindStringSubmatch(text); m != nil {
				year, _ = strconv.Atoi(m[1])
			}
		}
		return n, year
	}
	return 0, 0
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
