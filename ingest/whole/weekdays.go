package whole

import (
	"path/filepath"
	"strings"

	"foamfield/ingest/look"
	"foamfield/ingest/trial"
)

// Weekdays tells the Monday of one week from that of the next: a day that is no date, the
// same in several weeks of a log, gets the name of its week, which a column says, or the
// file where its name is that of a day or a week. A class's files are of one day.
func Weekdays(trials []trial.Trial, isWeek func(file string) bool) {
	week := func(t *trial.Trial) string {
		switch stem := strings.TrimSuffix(t.At.File, filepath.Ext(t.At.File)); {
		case t.Raw["week"] != "":
			return "week " + strings.TrimSpace(strings.TrimPrefix(strings.ToLower(t.Raw["week"]), "week"))
		case isWeek(stem):
			return stem
		}
		return ""
	}
	of := map[string]map[string]bool{}
	for i := range trials {
		if t := &trials[i]; weekday(t.Day) {
			if of[t.Day] == nil {
				of[t.Day] = map[string]bool{}
			}
			of[t.Day][week(t)] = true
		}
	}
	for i := range trials {
		if t := &trials[i]; len(of[t.Day]) > 1 && week(t) != "" {
			t.Day += ", " + week(t)
		}
	}
}

// weekday reports a day that comes again every week: one without a number.
func weekday(day string) bool {
	return day != "" && look.IsDay(day) && !strings.ContainsAny(day, "0123456789")
}
