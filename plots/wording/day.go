package wording

import "time"

// Day is a date as a person says it: "11 Apr 2022" of 2022-04-11; what is written otherwise
// stays.
func Day(date string) string {
	if t, err := time.Parse(time.DateOnly, date); err == nil {
		return t.Format("2 Jan 2006")
	}
	return date
}

// Days is from one day to another: "11 to 15 Apr 2022".
func Days(first, last string) string {
	from, err := time.Parse(time.DateOnly, first)
	to, wrong := time.Parse(time.DateOnly, last)
	switch {
	case err != nil || wrong != nil || from.Equal(to):
		return Day(first)
	case from.Year() != to.Year():
		return Day(first) + " to " + Day(last)
	case from.Month() != to.Month():
		return from.Format("2 Jan") + " to " + Day(last)
	}
	return from.Format("2") + " to " + Day(last)
}
