package reclaim

import (
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/units"
)

var (
	number   = pattern.Of(`(?i)(\d|\b[a-z]\b|\b(first|second|third)\b)`)
	holdWord = pattern.Of(`(?i)^\s*(hold|held|stood|lasted|standzeit|tenue|aguante|tenuta)`)
	inUnit   = pattern.Of(`(?i)(?:[(\[,/]\s*|\s)(s|secs?|seconds?|sek|h|hrs?|hours?|std|mins?|minutes?)\.?\s*[)\]]?\s*$`)
)

// perMinute are minutes in one of the units that a header may name.
var perMinute = map[string]float64{"s": 1.0 / 60, "sec": 1.0 / 60, "secs": 1.0 / 60, "second": 1.0 / 60, "seconds": 1.0 / 60, "sek": 1.0 / 60, "h": 60, "hr": 60, "hrs": 60, "hour": 60, "hours": 60, "std": 60}

// Holds makes numbered columns holds as well, each in minutes: "hold 1 (s)", "hold 2
// (s)", with or without a "mean hold (min)" beside them, by which alone the log is read.
func Holds(t *handin.Table) {
	of := map[string]int{} // numbered columns by their stem
	var numbered []*handin.Column
	for _, c := range t.Columns {
		if (c.Role == column.None || c.Role == column.Unused) && c.Known() >= 2 && !c.Mean() && number.MatchString(c.Header) {
			of[stem(c.Header)]++
			numbered = append(numbered, c)
		}
	}
	all := t.All(column.Hold)
	for _, c := range all { // a unit without brackets, which the reader took for a word
		if m := inUnit.FindStringSubmatch(c.Header); m != nil && perMinute[strings.ToLower(m[1])] > 0 && unitOf(c) == 1 {
			rescale(c, perMinute[strings.ToLower(m[1])])
		}
	}
	if len(all) == 0 && !slices.ContainsFunc(numbered, func(c *handin.Column) bool { return of[stem(c.Header)] >= 2 && holdWord.MatchString(c.Header) }) {
		onlyMinutes(t)
	}
	if len(all) == 0 {
		meanOfNumbered(t, numbered, of)
		all = t.All(column.Hold)
	}
	means := slices.DeleteFunc(slices.Clone(all), func(c *handin.Column) bool { return !c.Mean() })
	for _, c := range numbered {
		switch s := stem(c.Header); {
		case len(means) == 1 && s == stem(means[0].Header):
		case len(all) == 0 && of[s] >= 2 && holdWord.MatchString(c.Header):
		default:
			continue
		}
		c.Role = column.Hold
		switch m := inUnit.FindStringSubmatch(c.Header); {
		case m != nil && perMinute[strings.ToLower(m[1])] > 0:
			rescale(c, perMinute[strings.ToLower(m[1])])
		case m == nil && len(means) == 1: // in the unit of their mean
			rescale(c, unitOf(means[0]))
		}
	}
}

// meanOfNumbered takes for the hold a column that is headed as the mean of numbered holds.
func meanOfNumbered(t *handin.Table, numbered []*handin.Column, of map[string]int) {
	for _, c := range t.Columns {
		if (c.Role == column.None || c.Role == column.Unused) && c.Mean() && holdWord.MatchString(handin.MeanWord.ReplaceAllString(c.Header, "")) && of[stem(c.Header)] >= 2 {
			c.Role = column.Hold
			return
		}
	}
}

var (
	inMinutes = pattern.Of(`(?i)\b(min|mins|minutes?|minuten|minuti|minutos)\b`)
	untilFall = pattern.Of(`(?i)\b(up|upright|stays?|stayed|stable|keeps?|kept|lasts?|lasted|stand(s|ing)?|stood|until|till|before|flat|fell|fall(s|en)?|slump(s|ed)?|collapse[sd]?|alive|lived?|endur\w+)\b`)
)

// onlyMinutes takes the one column of minutes for the hold, where the reader has none: its
// words were too free for it, "minutes up", "minutes of glory".
func onlyMinutes(t *handin.Table) {
	var free, until []*handin.Column
	for _, c := range t.Columns {
		if c.Role != column.None && c.Role != column.Unused && !(c.Role == column.Score && c.Field != nil && c.Field.Want == units.Minutes) || !inMinutes.MatchString(c.Header+" "+c.UnitBelow) || atMinute.MatchString(c.Header) || strings.Contains(c.Header, "%") {
			continue
		}
		if minSec.MatchString(c.Header) {
			readMinSec(c)
		}
		if c.Known() < 2 {
			continue
		}
		free = append(free, c)
		if untilFall.MatchString(c.Header) {
			until = append(until, c)
		}
	}
	switch {
	case len(until) == 1:
		until[0].Role = column.Hold
	case len(until) == 0 && len(free) == 1:
		free[0].Role = column.Hold
	}
}

var (
	atMinute = pattern.Of(`(?i)(\b(after|in|at|for) \d+ ?min|@|\b(rest|chill|fridge|shak|wait|mix|blend|heat|cook|cool|melt|drain|temp|°)\w*)`)
	minSec   = pattern.Of(`(?i)\b(min|mins|minutes|m)\s*:\s*(s|sec|secs|seconds)\b`)
	clock    = pattern.Of(`^(\d{1,3}):([0-5]\d)$`)
)

// readMinSec reads "39:20" in a column that says that these are minutes and seconds.
func readMinSec(c *handin.Column) {
	for i := range c.Cells {
		x := &c.Cells[i]
		m := clock.FindStringSubmatch(x.Text)
		if m == nil {
			continue
		}
		minutes, _ := strconv.Atoi(m[1])
		seconds, _ := strconv.Atoi(m[2])
		x.Value = float64(minutes) + float64(seconds)/60
		x.Low, x.High, x.Known, x.Scale, x.Half = x.Value, x.Value, true, 1, 0.5/60
	}
}

// unitOf is how many base units one typed unit of a column is, 1 where no cell tells.
func unitOf(c *handin.Column) float64 {
	for i := range c.Cells {
		if x := &c.Cells[i]; x.Known && x.Value != 0 && x.Scale > 0 {
			return x.Scale
		}
	}
	return 1
}

// rescale turns the numbers of a column into another unit.
func rescale(c *handin.Column, by float64) {
	for i := range c.Cells {
		x := &c.Cells[i]
		x.Value, x.Low, x.High, x.Half, x.Scale = x.Value*by, x.Low*by, x.High*by, x.Half*by, x.Scale*by
	}
}

// stem is a header without its unit, numbers and the word for mean.
func stem(header string) string {
	header = handin.MeanWord.ReplaceAllString(inUnit.ReplaceAllString(header, " "), " ")
	words := strings.FieldsFunc(say.Fold(header), func(r rune) bool { return !(r >= 'a' && r <= 'z' || r > 127) })
	words = slices.DeleteFunc(words, func(w string) bool {
		return len(w) == 1 || slices.Contains([]string{"of", "the", "min", "run", "rep", "repeat", "reading", "can", "no", "nr", "first", "second", "third", "st", "nd", "rd"}, w)
	})
	slices.Sort(words)
	return strings.Join(words, " ")
}
