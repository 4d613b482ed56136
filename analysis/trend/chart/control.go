// Package chart looks at a history point by point: a chart of the control formula, else of what
// is left beyond the line, with what stands out; and the one clearest step in time, with
// what came in there.
package chart

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/history"
	"foamfield/analysis/result"
	"foamfield/analysis/series"
	"foamfield/analysis/trend/line"
	"foamfield/analysis/works"
	"foamfield/ingest/say"
)

const (
	// leastControl is how often, and over how many days, a formula must have been made to be
	// charted as it is.
	leastControl     = 6
	leastControlDays = 4
	// leastExact is how many exact values limits need.
	leastExact = 5
	// longRun is how many on one side of the centre are pointed out: by chance as many come
	// once in some 250 times.
	longRun = 8
	// mostSlopes is how many values a slope is worked out of.
	mostSlopes = 1000
)

// point is one observation in the order of time.
type point struct {
	on        int // of view.on
	low, high float64
}

// Control charts the formula that was made most often, over the most days; else what is
// left of every trial beyond what the line of all weeks makes one expect of its mix.
func Control(v *line.View) (out []result.Control) {
	formula, mix := controlFormula(v)
	for _, l := range v.Lines {
		if len(l.Rows) == 0 {
			continue
		}
		c := result.Control{Outcome: l.Outcome, Of: "control formula", Unit: "min", Points: []result.ControlPoint{}, Outside: []string{}, Catches: []result.Catch{}}
		if l.Outcome == result.DrainedPercent {
			c.Unit = "%"
		}
		var points []point
		for k, i := range l.Rows {
			if formula >= 0 && v.On[i].Group == formula {
				points = append(points, point{i, l.Data.Low[k], l.Data.High[k]})
			}
		}
		if c.Mix = mix; len(points) < leastControl {
			if l.Main == nil {
				continue
			}
			c.Of, c.Unit, c.Mix = "residuals", "ratio", nil
			points = residuals(l)
		}
		chart(v, &c, points)
		if l.Main != nil {
			c.Catches = catches(l)
		}
		c.Sentence = controlWords(&c) + outsideWords(outside(v, &c, points))
		out = append(out, c)
	}
	return out
}

// controlFormula is the group of trials of one formula that was made on most days, -1 if
// none was made often.
func controlFormula(v *line.View) (group int, mix *result.Mix) {
	days, times := map[int]map[int]bool{}, map[int]int{}
	for k, t := range v.On {
		if days[t.Group] == nil {
			days[t.Group] = map[int]bool{}
		}
		times[t.Group]++
		day := k
		if v.History.Day != nil {
			day = v.History.Day[v.InHistory[k]]
		}
		days[t.Group][day] = true
	}
	group = -1
	for _, t := range v.On {
		g := t.Group
		if times[g] >= leastControl && len(days[g]) >= leastControlDays && (group < 0 || len(days[g]) > len(days[group]) || len(days[g]) == len(days[group]) && times[g] > times[group]) {
			group = g
		}
	}
	if group < 0 {
		return -1, nil
	}
	m := v.Surface.MixOf(&v.Surface.Trials[group])
	return group, &m
}

// residuals is every row over the line without what weeks and days add.
func residuals(l *line.Line) (out []point) {
	for k, i := range l.Rows {
		at := 0.0
		for j, x := range l.Own(k) {
			at += x * l.Main.B[j]
		}
		out = append(out, point{i, l.Data.Low[k] - at, l.Data.High[k] - at})
	}
	return out
}

// chart fills in the points, the limits by those known exactly, and what stands out.
func chart(v *line.View, c *result.Control, points []point) {
	var exact []float64
	for _, p := range points {
		if p.low == p.high {
			exact = append(exact, p.low)
		}
	}
	ch, ok := series.Individuals(exact)
	if ok = ok && len(exact) >= leastExact; ok {
		centre, low, high := line.Grow(ch.Centre), line.Grow(ch.Low), line.Grow(ch.High)
		c.Centre, c.Low, c.High = &centre, &low, &high
	}
	side, run := 0, 0
	for _, p := range points {
		t := v.On[p.on]
		cp := result.ControlPoint{At: t.At.String(), Period: v.Label(v.PeriodOf(p.on)),
			Value: result.Interval{Low: works.Finite(math.Exp(p.low)), High: works.Finite(math.Exp(p.high))}}
		if v.History.When != nil && !v.History.When[v.InHistory[p.on]].IsZero() {
			cp.Date = history.Written(v.History.When[v.InHistory[p.on]])
		}
		if math.IsInf(p.low, -1) {
			cp.Value.Low = nil
		}
		if ok {
			switch {
			case p.low > ch.High:
				cp.Out = "above"
			case p.high < ch.Low:
				cp.Out = "below"
			}
			if cp.Out != "" {
				c.Outside = append(c.Outside, cp.At)
			}
			now := 0
			if p.low > ch.Centre {
				now = 1
			} else if p.high < ch.Centre {
				now = -1
			}
			if now == side && now != 0 {
				run++
			} else {
				side, run = now, min(1, now*now)
			}
			if run == longRun {
				c.Outside = append(c.Outside, fmt.Sprintf("%d in a row on one side, up to %s", longRun, cp.At))
			}
		}
		c.Points = append(c.Points, cp)
	}
	slope(v, c, points)
}

// slope is how the points move by the week.
func slope(v *line.View, c *result.Control, points []point) {
	if v.History.When == nil || len(points) < leastExact || len(points) > mostSlopes {
		return
	}
	var when, value, exactAt, exact []float64
	for _, p := range points {
		at := v.History.When[v.InHistory[p.on]].Sub(v.History.When[v.InHistory[points[0].on]]).Hours() / (24 * 7)
		when = append(when, at)
		middle := p.low
		if math.IsInf(middle, -1) {
			middle = p.high
		}
		value = append(value, middle)
		if p.low == p.high {
			exactAt, exact = append(exactAt, at), append(exact, p.low)
		}
	}
	r := series.Rising(when, func(i, j int) int {
		switch {
		case points[j].low > points[i].high:
			return 1
		case points[j].high < points[i].low:
			return -1
		}
		return 0
	}, value)
	c.Rising = &r.P
	if s, ok := series.TheilSen(exactAt, exact, line.Level); ok {
		c.Slope = &result.Ratio{Ratio: line.Grow(s.Mid), Low: line.Grow(s.Low), High: line.Grow(s.High)}
	}
}

// catches is the fall that repeats of one formula in one week would catch, beside a level
// that is known from the weeks before: as many on one day as there are in the mean.
func catches(l *line.Line) (out []result.Catch) {
	day := 0.0
	if l.Data.Within {
		day = l.Main.Mode.Inner * l.Main.Mode.Inner
	}
	for _, k := range []int{1, 2, 3, 4, 6, 8} {
		days := math.Max(1, float64(k)/2)
		se := math.Sqrt(l.Main.Mode.Rest*l.Main.Mode.Rest/float64(k) + day/days)
		out = append(out, result.Catch{Repeats: k, Ratio: line.Grow(-line.Power(1) * se)})
	}
	return out
}

func controlWords(c *result.Control) string {
	what := "Each trial over what its mix makes one expect"
	if c.Of == "control formula" {
		what = "The control formula, made " + say.Times(len(c.Points))
	}
	if c.Centre == nil {
		return what + ": fewer than five were seen to the end, so there are no limits."
	}
	outside := 0
	for _, p := range c.Points {
		if p.Out != "" {
			outside++
		}
	}
	switch {
	case outside == 0 && len(c.Outside) == 0:
		return what + ": no trial lies outside the usual limits, and no long run lies on one side of the middle."
	case outside == 0:
		return what + ": no trial lies outside the usual limits, but a long run lies on one side of the middle, which by chance alone is rare: look at what changed there."
	}
	return fmt.Sprintf("%s: %d %s outside the usual limits. One of many may do so by chance; look at what was different there before anything is changed.", what, outside, line.Plural(outside, "trial lies", "trials lie"))
}

// stray is a point outside: what it is called, on which side, and what was noted that day.
type stray struct {
	name, side, note string
	times            int
}

// mostQuoted is how many letters of a note are quoted.
const mostQuoted = 120

// outside are the points outside, the first first. A note of any trial of the day may say why.
func outside(v *line.View, c *result.Control, points []point) (out []stray) {
	for k, cp := range c.Points {
		if cp.Out == "" {
			continue
		}
		s := stray{name: cp.At, side: cp.Out, times: 1}
		at := v.InHistory[points[k].on]
		if cp.Date != "" {
			s.name = history.Label(v.History.When[at])
		}
		s.note = v.History.Trials[at].Note
		for i, t := range v.History.Trials {
			if s.note == "" && v.History.Day != nil && v.History.Day[i] == v.History.Day[at] {
				s.note = t.Note
			}
		}
		if n := len(out) - 1; n >= 0 && out[n].name == s.name && out[n].side == s.side {
			out[n].times++
			continue
		}
		out = append(out, s)
	}
	return out
}

// outsideWords names the points outside and quotes what was noted, which may be why.
func outsideWords(list []stray) string {
	if len(list) == 0 {
		return ""
	}
	var words []string
	quoted := ""
	for _, s := range list[:min(len(list), line.MostNamed)] {
		w := s.name + " (" + s.side
		if s.times > 1 {
			w += ", " + say.Times(s.times)
		}
		if note := []rune(s.note); len(note) > mostQuoted {
			s.note = string(note[:mostQuoted]) + "…"
		}
		if s.note == quoted { // of the same day: once is enough
			s.note = ""
		}
		if s.note != "" {
			quoted = s.note
			w += fmt.Sprintf("; noted that day: “%s”, which may be why or not", s.note)
		}
		words = append(words, w+")")
	}
	more := 0
	for _, s := range list[min(len(list), line.MostNamed):] {
		more += s.times
	}
	if more > 0 {
		words = append(words, fmt.Sprintf("%d more", more))
	}
	return " Outside: " + strings.Join(words, ", ") + "."
}
