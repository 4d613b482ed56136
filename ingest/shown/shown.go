// Package shown knows what a spreadsheet makes of a number: which formats show it as a day
// or a time, which signs and units they put around it, and which day a serial number is.
package shown

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// plain writes up to 15 significant digits, which hides the last-digit
// noise of binary arithmetic as every spreadsheet does.
func plain(x float64) string {
	text := strconv.FormatFloat(x, 'e', 14, 64)
	mantissa, exponent, _ := strings.Cut(text, "e")
	mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	e, err := strconv.Atoi(exponent)
	if err != nil || e < -9 || e > 17 {
		if err != nil {
			return text // not finite
		}
		return mantissa + "E" + exponent
	}
	rounded, _ := strconv.ParseFloat(text, 64)
	if rounded == 0 {
		return "0"
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func (s *formatPart) readCondition(body string) {
	n := len(body) - len(strings.TrimLeft(body, "<>="))
	if n == 0 {
		return // a colour or a digit shape
	}
	limit, err := strconv.ParseFloat(strings.TrimSpace(body[n:]), 64)
	if err == nil {
		s.compare, s.limit = body[:n], limit
	}
}

func (s *formatPart) holds(x float64) bool {
	switch s.compare {
	case "<":
		return x < s.limit
	case "<=":
		return x <= s.limit
	case ">":
		return x > s.limit
	case ">=":
		return x >= s.limit
	case "=":
		return x == s.limit
	case "<>":
		return x != s.limit
	}
	return true
}

// sectionFor picks the section a number is shown by.
func (f *Format) sectionFor(x float64) formatPart {
	conditional := false
	for _, s := range f.sections {
		conditional = conditional || s.compare != ""
	}
	n := len(f.sections)
	switch {
	case n == 0:
		return formatPart{}
	case conditional:
		for _, s := range f.sections {
			if s.holds(x) {
				return s
			}
		}
		return formatPart{}
	case x < 0 && n > 1:
		return f.sections[1]
	case x == 0 && n > 2:
		return f.sections[2]
	}
	return f.sections[0]
}

// Text is a number as a person would type it: to 15 digits, never rounded to its format,
// with the signs and units that only the format holds.
func (f Format) Text(x float64) string {
	s := f.sectionFor(x)
	if !s.digits {
		// A section that shows only words, or nothing, hides the number; the
		// number is what was typed.
		return plain(x)
	}
	if s.percent > 0 {
		x *= math.Pow(100, float64(s.percent))
	}
	sign := ""
	if x < 0 {
		// The format's own way to write a negative number, (5) or 5-, is
		// undone: the sign stands before the digits.
		sign, x = "-", -x
		s.prefix = strings.Trim(s.prefix, "-(\u2212")
		s.suffix = strings.Trim(s.suffix, "-)\u2212")
	}
	text := s.prefix + sign + plain(x) + s.suffix + strings.Repeat("%", s.percent)
	return strings.TrimSpace(text)
}

const (
	lastSerial  = 2958466 // the day after 9999-12-31
	days1904    = 1462    // from the 1900 to the 1904 date system
	secondsADay = 24 * 60 * 60
	phantomDay  = 60 // 29 February 1900, which never was
	dayLayout   = "2006-01-02"
	milli       = time.Millisecond
	oneDay      = 24 * time.Hour
)

// timeOf is the serial number of a day and its time as a time in UTC, to the
// millisecond, clocks counted from the day before 1 January 1900 (or from
// 1 January 1904). It is false outside the calendar, and for 29 February 1900,
// which spreadsheets have and the calendar has not.
func timeOf(serial float64, date1904 bool) (time.Time, bool) {
	if !(serial >= 0 && serial < lastSerial) {
		return time.Time{}, false
	}
	base := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	switch {
	case date1904:
		base = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
		if serial >= lastSerial-days1904 {
			return time.Time{}, false
		}
	case serial < phantomDay:
		base = base.AddDate(0, 0, 1)
	case serial < phantomDay+1:
		return time.Time{}, false
	}
	day := math.Floor(serial)
	within := time.Duration(math.Round((serial-day)*secondsADay*1000)) * milli
	return base.AddDate(0, 0, int(day)).Add(within), true
}

// Of is what a number is shown as: outside the calendar it is no day, whatever its format.
func (f Format) Of(x float64, date1904 bool) As {
	switch {
	case f.As == Day && (x < 0 || x >= lastSerial || date1904 && x >= lastSerial-days1904):
		return Number
	case f.As == Day || f.As == Clock:
		return f.As
	}
	return Number
}

// Date is a serial day as 2006-01-02, with 15:04 where the format shows a time.
func (f Format) Date(serial float64, date1904 bool) string {
	t, ok := timeOf(serial, date1904)
	if !ok {
		if !date1904 && math.Floor(serial) == phantomDay {
			return "1900-02-29"
		}
		return plain(serial)
	}
	showsTime := f.timed || f.As != Day && serial != math.Floor(serial)
	if !showsTime {
		return t.Format(dayLayout)
	}
	t = t.Round(f.resolution())
	return clockText(t.Format(dayLayout)+" ", t.Sub(t.Truncate(oneDay)), f)
}

// Clock is a time as 15:04 or 15:04:05.
func (f Format) Clock(serial float64) string {
	if math.IsNaN(serial) || math.Abs(serial) >= lastSerial {
		return plain(serial)
	}
	sign := ""
	if serial < 0 {
		sign, serial = "-", -serial
	}
	d := time.Duration(math.Round(serial*secondsADay*1000)) * milli
	d = d.Round(f.resolution())
	if !f.elapsed {
		d %= oneDay // the day is not shown
	}
	return clockText(sign, d, f)
}

// resolution is the smallest time a format shows.
func (f *Format) resolution() time.Duration {
	if f.fractions {
		return milli
	}
	return time.Second
}

// clockText writes hours and minutes, and seconds where they count: also after
// a format without hours, so that 27:30 is never taken for hours.
func clockText(before string, d time.Duration, f Format) string {
	h, m, sec := d/time.Hour, d/time.Minute%60, d/time.Second%60
	text := fmt.Sprintf("%s%02d:%02d", before, h, m)
	if rest := d % time.Second; rest != 0 {
		return strings.TrimRight(fmt.Sprintf("%s:%02d.%03d", text, sec, rest/milli), "0")
	}
	if sec != 0 || f.As == Clock && f.noHours {
		text += fmt.Sprintf(":%02d", sec)
	}
	return text
}
