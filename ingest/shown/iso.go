package shown

import "time"

var isoLayouts = []struct {
	layout string
	as     As
}{
	{"2006-01-02", Day},
	{"2006-01-02T15:04:05", Day}, // seconds may carry decimals
	{"2006-01-02T15:04", Day},
	{"2006-01-02T15:04:05Z07:00", Day},
	{"2006-01-02T15:04Z07:00", Day},
	{"15:04:05", Clock},
	{"15:04", Clock},
	{"T15:04:05", Clock},
	{"T15:04", Clock},
}

// ReadISO reads an ISO 8601 date, date and time, or time as a serial. A time
// zone is dropped: a log means the clock on the wall.
func ReadISO(text string, date1904 bool) (serial float64, as As, ok bool) {
	for _, l := range isoLayouts {
		t, err := time.Parse(l.layout, text)
		if err != nil {
			continue
		}
		_, offset := t.Zone()
		t = t.Add(time.Duration(offset) * time.Second).UTC()
		within := float64(t.Sub(t.Truncate(oneDay))) / float64(oneDay)
		if l.as == Clock {
			return within, Clock, true
		}
		day := float64(t.Truncate(oneDay).Unix()/secondsADay - firstDay)
		switch {
		case date1904:
			day -= days1904
		case day <= phantomDay:
			day--
		}
		return day + within, Day, day >= 0
	}
	return 0, General, false
}

// firstDay is the Unix day of serial 0 after February 1900.
const firstDay = -25569
