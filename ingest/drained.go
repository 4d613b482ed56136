package ingest

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// drain is one reading of the drained liquid.
type drain struct {
	quantity.Reading
	minute float64 // when it was read; NaN = not said
	grams  bool    // grams, to be divided by the sample; else percent of the foam
	field  *field
	col    int
	line   int // which of the trial's rows
}

// limit is the smallest amount a column of readings can tell from nothing, and
// the smallest it gave a number to.
type limit struct {
	step, least float64
	from        string // where the step comes from, in words
}

// defaultLimit is used where a column's readings do not show their step: half a
// gram on the scale, or half a percent.
const defaultLimit = 0.5

// stepReadings is how many different readings it takes to show a step.
const stepReadings = 4

// limitOf finds the step of a column from its readings: the smallest difference
// between them, or between them and 0.
func limitOf(values []float64) limit {
	slices.Sort(values)
	values = slices.Compact(values)
	l := limit{step: math.Inf(1)}
	last, positive := 0.0, 0
	for _, v := range values {
		if v <= 0 {
			continue
		}
		positive++
		if l.least == 0 {
			l.least = v
		}
		if d := v - last; d > 1e-9 {
			l.step = min(l.step, d)
		}
		last = v
	}
	if positive < stepReadings || l.step < 1e-6 {
		l.step = defaultLimit
		l.from = "the usual reading limit"
	} else {
		// A step worked out by a formula is no scale's step.
		l.step = max(math.Round(l.step*1e6)/1e6, 1e-6)
		l.from = "the smallest step seen in the column"
	}
	return l
}

// drained is the drained liquid in percent of the foam at the target minute.
func (b *row) drained(t *trial.Trial, s *seen) *trial.Interval {
	var series []point
	for i := range s.drains {
		d := &s.drains[i]
		b.now = d.line
		if d.Word == quantity.NotMeasured || d.Word == quantity.DidNotComeOut || d.Word == quantity.Ditto {
			continue
		}
		if t.CameOut == trial.No {
			if d.High > 0 && d.Word == quantity.NoWord && !s.cloggedSaid {
				b.problem("drained beside clogged", trial.PleaseLook, d.col,
					fmt.Sprintf("a drainage of %s is logged for a foam that did not come out", quoted(b.text(d.col))),
					"correct the drainage or the came out column; the trial counts as clogged")
			}
			continue
		}
		low, high, ok := b.amountDrained(d)
		if !ok {
			continue
		}
		scale := 1.0
		if d.grams {
			if !s.sample.ok() {
				if b.table.sampleColumn == 0 {
					b.book.once("no sample mass", trial.MustFix, b.at(d.col), "the drainage is in grams, and no column says how much foam it came from",
						"add a column \"Sample g\" with the grams of foam set to drain, or type percents and write % in the header")
				} else if !s.sampleSaid {
					b.problem("sample mass missing", trial.MustFix, b.table.sampleColumn,
						fmt.Sprintf("no mass is typed here, and a drainage of %s g needs it", b.text(d.col)),
						"type the grams of foam that were set to drain")
				}
				continue
			}
			scale = 100 / s.sample.value
		}
		low, high = low*scale, high*scale
		if low > 100 {
			b.moreThanTheFoam(d, s, low)
			continue
		}
		series = append(series, point{d.minute, max(low, 0), min(high, 100), d.col})
	}
	b.now = 0
	if len(series) == 0 {
		return nil
	}
	b.halfTime(series)
	return b.atTarget(series)
}

// moreThanTheFoam says that more drained than there was foam, and which cell most
// likely slipped: a sample unlike the others, or a drainage ten times too large.
func (b *row) moreThanTheFoam(d *drain, s *seen, percent float64) {
	read := quoted(b.text(d.col)) + " is more than the whole foam"
	if d.grams {
		read = fmt.Sprintf("%s of %s of foam is %s %%, more than the whole foam", quoted(b.text(d.col)), grams(s.sample.value), number(percent))
		u := b.table.usual(s.sample.col)
		if v := 10 * s.sample.value; !u.holds(s.sample.value, 0) && u.holds(v, 0) {
			b.problem("impossible drainage", trial.MustFix, s.sample.col, read, fmt.Sprintf("this sample is a tenth of the others: type %s here if that was weighed", number(v)))
			return
		}
	}
	do := "check the unit of the column and the sample mass"
	if v, ok := b.pointMissed(d.field, d.Low); ok {
		do = fmt.Sprintf("type %s here if the point was missed", number(v))
		if d.grams {
			do += fmt.Sprintf(" (%s %%)", number(percent*v/d.Low))
		}
	}
	b.problem("impossible drainage", trial.MustFix, d.col, read, do)
}

// halfTime fits a curve to a series of readings and keeps its half-time.
func (b *row) halfTime(series []point) {
	var minutes, percents []float64
	for _, p := range series {
		// Of two readings at one minute the first stands, as it does at the target.
		if p.minute > 0 && !slices.Contains(minutes, p.minute) && !math.IsInf(p.low, 0) {
			minutes, percents = append(minutes, p.minute), append(percents, (p.low+p.high)/2)
		}
	}
	curve, ok := fitDrainage(minutes, percents)
	if !ok {
		return
	}
	v := trial.Variable{Name: "drain_half_minutes", Label: "half-time of drainage", Unit: "min", Result: true}
	b.book.extra(v)
	b.book.extras = append(b.book.extras, pair{name: v.Name, value: curve.half})
	b.book.told("drainage curve", b.at(series[0].col),
		fmt.Sprintf("%d readings follow a curve that ends at %s %% with half of it after %s min", len(minutes), number(curve.most), number(curve.half)),
		"nothing to do: the half-time is listed with the trial")
}

// amountDrained is a reading as bounds in its own unit: what is below the
// reading limit lies between 0 and it.
func (b *row) amountDrained(d *drain) (low, high float64, ok bool) {
	l := d.field.limit
	at := b.at(d.col)
	unit := "%"
	if d.grams {
		unit = "g"
	}
	switch d.Word {
	case quantity.NoWord, quantity.Zero:
		if d.High < 0 || d.Low < 0 && !math.IsInf(d.Low, -1) {
			b.problem("impossible drainage", trial.MustFix, d.col, quoted(b.text(d.col))+" is less than nothing", "type the drained amount, 0 or more")
			return 0, 0, false
		}
		if d.High > 0 {
			return d.Low, d.High, true
		}
		b.book.told("drained nothing", at,
			fmt.Sprintf("0 is read as below %s %s, %s", number(l.step), unit, l.from), "type <0.2 or the like if you can tell less than that")
		return 0, l.step, true
	case quantity.Trace, quantity.Ring:
		high := max(l.step, l.least)
		if l.least == 0 {
			high = l.step
		}
		b.book.told("drained a trace", at,
			fmt.Sprintf("%s is read as at most %s %s, the least that was given a number", quoted(b.text(d.col)), number(high), unit),
			"type the amount, or a bound such as <0.5")
		return 0, high, true
	}
	b.problem("drainage not a number", trial.MustFix, d.col, quoted(b.text(d.col))+" is no amount of liquid",
		"type the drained grams or percent")
	return 0, 0, false
}

// point is percent drained, within bounds, at a minute.
type point struct {
	minute, low, high float64
	col               int
}

// atTarget is the drainage at the target minute: read off between the readings
// around it, or bounded by the nearest when they all lie on one side. Liquid
// only ever leaves the foam, so an earlier reading is the least there can be
// and a later one the most.
func (b *row) atTarget(series []point) *trial.Interval {
	target := b.book.drainedAt()
	for i := range series {
		if math.IsNaN(series[i].minute) {
			b.book.told("minute of drainage not said", b.at(series[i].col),
				fmt.Sprintf("no minute is given; the reading is taken as made at %s min", number(target)),
				"write the minute in the header, for example \"drained at 20 min %\"")
			series[i].minute = target
		}
	}
	slices.SortStableFunc(series, func(a, c point) int {
		switch {
		case a.minute < c.minute:
			return -1
		case a.minute > c.minute:
			return 1
		}
		return 0
	})
	before := point{minute: 0}
	for _, p := range series {
		switch {
		case p.minute == target:
			return b.book.interval(p.low, p.high)
		case p.minute < target:
			before = p
			continue
		case before.col == 0:
			b.otherMinute(p, target, "at most")
			return b.book.interval(0, p.high)
		}
		f := (target - before.minute) / (p.minute - before.minute)
		low := before.low + f*(p.low-before.low)
		high := before.high + f*(p.high-before.high)
		b.book.told("drainage between readings", b.at(p.col),
			fmt.Sprintf("the drainage at %s min is read off between %s and %s min", number(target), number(before.minute), number(p.minute)),
			"nothing to do, unless you set another minute")
		return b.book.interval(min(low, high), max(low, high))
	}
	b.otherMinute(before, target, "at least")
	return b.book.interval(before.low, 100)
}

func (b *row) otherMinute(p point, target float64, bound string) {
	b.problem("drained at another minute", trial.PleaseLook, p.col,
		fmt.Sprintf("read at %s min; at %s min it is known only as %s that", number(p.minute), number(target), bound),
		fmt.Sprintf("if %s min is the minute that counts, set \"drained at\" to %s in the Targets sheet or give --drained-at %s",
			number(p.minute), number(p.minute), number(p.minute)))
}
