package kitchen

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"time"
)

var header = []string{
	"trial", "date", "sunflower oil (g)", "water (g)", "glycerol monostearate (g)", "sucrose ester HLB 15 (g)",
	"came out", "broke", "hold (min)", "drained at 20 min (%)",
}

// firstDay is the date of day 1; any date would do.
var firstDay = time.Date(2024, time.March, 4, 0, 0, 0, 0, time.UTC)

// WriteCSV writes the log as a kitchen would hand it over.
func WriteCSV(w io.Writer, log []Logged) error {
	out := csv.NewWriter(w)
	rows := [][]string{header}
	for _, l := range log {
		cameOut, broke, hold, drained := "n", "", "n/a", ""
		switch {
		case l.Partly:
			cameOut, hold = "partly", ""
		case l.CameOut && l.Broke:
			cameOut, broke, hold = "y", "y", ""
		case l.CameOut:
			cameOut, broke, hold, drained = "y", "n", l.Hold.text(), l.Drained.text()
		}
		rows = append(rows, []string{
			strconv.Itoa(l.No), firstDay.AddDate(0, 0, l.Day-1).Format(time.DateOnly),
			number(l.OilGrams), number(l.WaterGrams), number(l.LipophilicGrams), number(l.HydrophilicGrams),
			cameOut, broke, hold, drained,
		})
	}
	return out.WriteAll(rows)
}

// text is the bounds in a kitchen's hand: 14, 20+, <5, 10-15; "" for none.
func (b *Bounds) text() string {
	switch {
	case b == nil:
		return ""
	case b.Low == b.High:
		return number(b.Low)
	case math.IsInf(b.High, 1):
		return number(b.Low) + "+"
	case b.Low == 0:
		return "<" + number(b.High)
	}
	return number(b.Low) + "-" + number(b.High)
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
