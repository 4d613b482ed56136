package scheme

import (
	"foamfield/ingest/pattern"
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/sheet"
)

var clockText = pattern.Of(`(?i)^(\d{1,2})[:.h](\d{2})(?::(\d{2}))?\s*(am|pm|h|uhr)?$`)

// ClockMinutes is a time of the day in minutes after midnight.
func ClockMinutes(s *sheet.Sheet, c sheet.Cell) (float64, bool) {
	switch c.Kind {
	case sheet.Clock, sheet.Date:
		_, day := math.Modf(c.Number)
		return day * 24 * 60, c.Number >= 0
	case sheet.Text:
		m := clockText.FindStringSubmatch(strings.TrimSpace(c.Text))
		if m == nil {
			return 0, false
		}
		hour, _ := strconv.Atoi(m[1])
		minute, _ := strconv.Atoi(m[2])
		second, _ := strconv.Atoi(m[3])
		switch strings.ToLower(m[4]) {
		case "pm":
			hour = hour%12 + 12
		case "am":
			hour %= 12
		}
		return float64(60*hour+minute) + float64(second)/60, hour < 24 && minute < 60 && second < 60
	}
	return 0, false
}
