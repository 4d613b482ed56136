package rule

import (
	"math"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Verdict is what a rule says of a trial.
type Verdict uint8

// A trial may pass where a part of the rule was not logged for it.
const (
	Maybe Verdict = iota
	Passes
	Fails
)

// Judge holds a trial against a rule; why says what it fails by.
func (r Rule) Judge(tr *evidence.Trials, x *handin.Trial) (v Verdict, why string) {
	if !r.Set() {
		return Maybe, ""
	}
	if x.CameOut == trial.No {
		return Fails, "it did not come out"
	}
	sure := true
	if r.Hold != nil {
		low, high, ok := tr.Seen(x, evidence.Hold)
		switch {
		case !ok:
			sure = false
		case high < r.Hold.At || r.Hold.Strict && high <= r.Hold.At:
			return Fails, "it held " + say.Number(high) + " min"
		case low < r.Hold.At || (r.Hold.Strict || r.Hold.Open) && low <= r.Hold.At:
			sure = false
		}
	}
	if r.Drained != nil {
		low, high, ok := Drained(tr, x, r.Drained.Unit)
		switch {
		case !ok:
			sure = false
		case low > r.Drained.At || r.Drained.Strict && low >= r.Drained.At:
			return Fails, strings.TrimRight("it drained "+say.Number(low)+" "+r.Drained.Unit, " ")
		case high > r.Drained.At || r.Drained.Strict && high >= r.Drained.At:
			sure = false
		}
	}
	if r.Overrun != nil {
		low, high, ok := tr.Seen(x, evidence.Overrun)
		switch {
		case !ok:
			sure = false
		case high < r.Overrun.At || r.Overrun.Strict && high <= r.Overrun.At:
			return Fails, "its overrun is " + say.Number(math.Round(high)) + " %"
		case low < r.Overrun.At || r.Overrun.Strict && low <= r.Overrun.At:
			sure = false
		}
	}
	switch {
	case x.Broke == trial.Yes && r.Whole:
		return Fails, "it split"
	case x.Broke == trial.Yes, x.CameOut == trial.Partly, x.CameOut == trial.Unknown && r.Out:
		sure = false
	}
	if sure {
		return Passes, ""
	}
	return Maybe, ""
}

var (
	inPercent = pattern.Of(`(?i)(%|percent|pct|per cent)`)
	inMl      = pattern.Of(`(?i)\b(ml|cc)\b`)
	inGrams   = pattern.Of(`(?i)(\bg\b|\bgrams?\b)`)
)

// unitOf is the unit that a column of drainage is headed with, "" without one.
func unitOf(c *handin.Column) string {
	text := strings.ReplaceAll(c.Whole+" "+c.UnitBelow, "_", " ")
	switch {
	case inPercent.MatchString(text):
		return "%"
	case inMl.MatchString(text):
		return "ml"
	case inGrams.MatchString(text):
		return "g"
	}
	return ""
}

// Drained is what drained from a trial, in a unit, as it was typed.
func Drained(tr *evidence.Trials, x *handin.Trial, unit string) (low, high float64, ok bool) {
	if unit == "%" {
		if low, high, ok = tr.Seen(x, evidence.Drained); ok {
			return low, high, true
		}
	}
	if x.CameOut == trial.No {
		return 0, 0, false
	}
	all := x.Table.All(column.DrainedAmount)
	if unit == "" && len(all) != 1 {
		return 0, 0, false // nobody can say which is meant
	}
	for _, c := range all {
		cell := c.Cells[x.Index]
		if u := unitOf(c); u != unit && u != "" && unit != "" || !cell.Number() || tr.Slips.Not[cell.At] {
			continue
		}
		if v, meant := tr.Slips.Meant[cell.At]; meant {
			return v, v, true
		}
		scale := cell.Scale
		if scale == 0 {
			scale = 1
		}
		return max(cell.Low/scale, 0), cell.High / scale, !math.IsNaN(cell.Low)
	}
	return 0, 0, false
}
