package history

import (
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"

	"foamfield/ingest/quantity"
)

// reading is a text read as a date. Of 3/4/2026 nobody knows which is the month: then
// other is the date if the month stands first, and date if the day does.
type reading struct {
	date    time.Time
	other   time.Time // zero unless the text can be read in two ways
	stroked bool      // written so that the order of day and month is a habit
	noYear  bool
	week    bool   // only the week is known: date is its first day
	weekday int    // that it names, 1 = Monday; 0 = none
	clock   string // "09:30" as it stands beside the date, ""
}

var (
	clockTime  = pattern.Of(`\b\d{1,2}:\d{2}(?::\d{2})?(?:\.\d+)?\b`)
	eightDigit = pattern.Of(`^(20\d\d)(\d\d)(\d\d)$`)
	dayMonth   = pattern.Of(`(?:^|\s)\d{1,2}[-/.]\d{1,2}\.?$`)
)

// noYearYet to lastNoYear stand for the year of a date that names none; every fourth, which is
// leap, so that 29 February is one, and of these each begins on another weekday.
const noYearYet, lastNoYear = 4, 28

// beside are words that stand beside a date and change nothing of it.
var beside = map[string]bool{"the": true, "of": true, "th": true, "st": true, "nd": true, "rd": true, "de": true, "le": true, "el": true, "il": true,
	"der": true, "den": true, "er": true, "del": true, "week": true, "wk": true, "beginning": true, "commencing": true, "starting": true, "w": true, "c": true, "wc": true, "from": true, "am": true, "pm": true, "t": true, "z": true}

// readDate reads a text that is a date and nothing else.
func readDate(text string) (reading, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	r := reading{clock: clockTime.FindString(text)}
	text = clockTime.ReplaceAllString(text, " ")
	var numbers []string
	month, monthAt, perhaps, either := time.Month(0), -1, false, 0
	for _, w := range pieces(text) {
		if w[0] >= '0' && w[0] <= '9' {
			numbers = append(numbers, w)
			continue
		}
		d, day := weekdays[w] // "mar" is March and, in three languages, Tuesday
		m, ok := quantity.Month(w)
		switch {
		case day && ok:
			either = d + 1
		case day:
			r.weekday = d + 1
		}
		switch {
		case ok && (month == 0 || perhaps):
			month, monthAt, perhaps = m, len(numbers), day
		case !day && !beside[w]:
			return r, false
		}
	}
	// A word that can be either is the weekday where another is the month.
	if r.weekday == 0 && !perhaps {
		r.weekday = either
	}
	if month != 0 {
		if named, ok := r.named(numbers, month, monthAt); ok || !perhaps {
			return named, ok
		}
	}
	if r.weekday == 0 {
		r.weekday = either
	}
	out, ok := r.numbers(numbers, text)
	return out.byWeekday(), ok
}

// byWeekday settles by the weekday beside it a date that can be read in two ways.
func (r reading) byWeekday() reading {
	if r.weekday == 0 || r.noYear || r.other.IsZero() {
		return r
	}
	switch first, second := r.fits(r.date), r.fits(r.other); {
	case first && !second:
		r.other = time.Time{}
	case second && !first:
		r.date, r.other = r.other, time.Time{}
	}
	return r
}

// fits says whether a date is of the weekday that was named.
func (r reading) fits(d time.Time) bool { return (int(d.Weekday())+6)%7 == r.weekday-1 }

// pieces are the words and numbers of a text.
func pieces(text string) (out []string) {
	for _, field := range strings.FieldsFunc(text, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
		start := 0
		for i, c := range field {
			if i > 0 && unicode.IsDigit(c) != unicode.IsDigit(rune(field[start])) {
				out = append(out, field[start:i])
				start = i
			}
		}
		out = append(out, field[start:])
	}
	return out
}

// named reads "3 April 2026", "April 3, 2026", "3 Apr".
func (r reading) named(numbers []string, month time.Month, at int) (reading, bool) {
	switch {
	case len(numbers) == 1:
		r.noYear = true
		return r.on(strconv.Itoa(noYearYet), int(month), numbers[0])
	case len(numbers) == 2 && len(numbers[0]) == 4 && at > 0:
		return r.on(numbers[0], int(month), numbers[1])
	case len(numbers) == 2 && at < 2: // "3 - 12 May" is no date
		return r.on(numbers[1], int(month), numbers[0])
	}
	return r, false
}

// firstSerial and lastSerial are 2000 and 2060 in days of a spreadsheet, which counts them from
// 30 December 1899.
const firstSerial, lastSerial = 36526, 58440

// serial reads a number of days in a column of dates that lost its format: 45936.
func serial(text string) (reading, bool) {
	days, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || days < firstSerial || days >= lastSerial {
		return reading{}, false
	}
	whole := math.Floor(days)
	r := reading{date: time.Date(1899, time.December, 30, 0, 0, 0, 0, time.UTC).AddDate(0, 0, int(whole))}
	if minutes := int(math.Round(24 * 60 * (days - whole))); minutes > 0 {
		r.clock = fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
	}
	return r, true
}

// numbers reads 2026-04-03, 3.4.2026 and 3/4/2026, and beside a weekday 3-4.
func (r reading) numbers(n []string, text string) (reading, bool) {
	if len(n) == 1 {
		if m := eightDigit.FindStringSubmatch(n[0]); m != nil {
			n = m[1:]
		}
	}
	if len(n) == 2 && r.weekday > 0 && dayMonth.MatchString(text) && !weekSheet(text) {
		r.noYear = true
		n = append(n, strconv.Itoa(noYearYet))
	}
	if len(n) != 3 {
		return r, false
	}
	if len(n[0]) == 4 {
		month, err := strconv.Atoi(n[1])
		if err != nil {
			return r, false
		}
		return r.on(n[0], month, n[2])
	}
	first, err1 := strconv.Atoi(n[0])
	second, err2 := strconv.Atoi(n[1])
	if err1 != nil || err2 != nil {
		return r, false
	}
	dayFirst, okDay := r.on(n[2], second, n[0])
	if strings.ContainsRune(text, '.') {
		return dayFirst, okDay
	}
	monthFirst, okMonth := r.on(n[2], first, n[1])
	switch {
	case okDay && okMonth:
		dayFirst.stroked = true
		if !monthFirst.date.Equal(dayFirst.date) {
			dayFirst.other = monthFirst.date
		}
		return dayFirst, true
	case okDay:
		dayFirst.stroked = true
		return dayFirst, true
	}
	monthFirst.stroked = true
	return monthFirst, okMonth
}

// on is the reading of one year, month and day, if there is such a day.
func (r reading) on(year string, month int, day string) (reading, bool) {
	y, errYear := strconv.Atoi(year)
	d, errDay := strconv.Atoi(day)
	if errYear != nil || errDay != nil || len(year) == 3 || len(day) > 2 {
		return r, false
	}
	if len(year) == 2 {
		y += 2000
	}
	r.date = time.Date(y, time.Month(month), d, 0, 0, 0, 0, time.UTC)
	return r, r.date.Day() == d && int(r.date.Month()) == month && (r.noYear || y > 1990 && y < 2200)
}

// weekdays are the names of weekdays, Monday = 0, in five languages.
var weekdays = func() map[string]int {
	names := [7]string{"monday mon mo lundi lun lunes lunedì lunedi montag", "tuesday tue tues di mardi mar martes martedì martedi dienstag",
		"wednesday wed weds mi mercredi mer miércoles miercoles mié mie mercoledì mercoledi mittwoch", "thursday thu thur thurs do jeudi jeu jueves jue giovedì giovedi gio donnerstag",
		"friday fri fr vendredi ven viernes vie venerdì venerdi freitag", "saturday sat sa samedi sam sábado sabado sáb sab sabato samstag sonnabend",
		"sunday sun so dimanche dim domingo dom domenica sonntag"}
	out := map[string]int{}
	for i, list := range names {
		for _, n := range strings.Fields(list) {
			out[n] = i
		}
	}
	return out
}()

// weekday reads a text that is a weekday and nothing else but the time of day.
func weekday(text string) (int, bool) {
	found, known := 0, false
	text, _, _ = strings.Cut(text, ",") // what follows is the week, if the reader said it
	for _, w := range pieces(strings.ToLower(text)) {
		switch d, is := weekdays[w]; {
		case is && !known:
			found, known = d, true
		case !beside[w] && w != "morning" && w != "afternoon" && w != "evening" && w != "service":
			return 0, false
		}
	}
	return found, known
}
