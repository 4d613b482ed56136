package outcome

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/draining"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// point is percent drained, within bounds, at a minute.
type point struct {
	minute, low, high float64
	Cell
}

// drained is the drained liquid in percent of the foam at the target minute.
func (j *judge) drained() *trial.Interval {
	var series []point
	for i := range j.seen.Drains {
		d := &j.seen.Drains[i]
		switch {
		case d.Word == quantity.NotMeasured || d.Word == quantity.DidNotComeOut || d.Word == quantity.Ditto:
		case j.CameOut == trial.No:
			if hasNumber(*d) && !j.cloggedSaid {
				j.say(trial.Check("drained beside clogged", j.at(d.Cell), fmt.Sprintf("a drainage of %s is logged for a foam that did not come out", j.quotedCell(d.Cell)),
					"correct the drainage or the came out column; the trial counts as clogged"))
			}
		default:
			if p, ok := j.percentDrained(d); ok {
				series = append(series, p)
			}
		}
	}
	if len(series) == 0 {
		return nil
	}
	j.readings(series)
	return j.atTarget(series)
}

// readings keeps a series that may tell a curve.
func (j *judge) readings(series []point) {
	c := &trial.Curve{At: j.at(series[0].Cell)}
	for _, p := range series {
		// Of two readings at one minute the first stands, as it does at the target.
		if p.minute > 0 && !slices.Contains(c.Minutes, p.minute) && bounded(p.low) {
			c.Minutes, c.Percents = append(c.Minutes, p.minute), append(c.Percents, (p.low+p.high)/2)
		}
	}
	if len(c.Minutes) >= draining.Fewest {
		j.Curve = c
	}
}

// percentDrained is one reading in percent of the foam.
func (j *judge) percentDrained(d *Drain) (point, bool) {
	low, high, ok := j.amount(d)
	if !ok {
		return point{}, false
	}
	if d.Grams {
		sample := j.s.SampleGrams
		switch {
		case j.seen.Sample.OK():
			sample = j.seen.Sample.Low
		case sample == 0 || j.seen.SampleSaid:
			j.noSample(d)
			return point{}, false
		}
		scale := 100 / sample
		low, high = low*scale, high*scale
	}
	if low > 100 {
		j.moreThanTheFoam(d, low)
		return point{}, false
	}
	return point{d.Minute, max(low, 0), min(high, 100), d.Cell}, true
}

// noSample says that a drainage in grams needs the foam it came from.
func (j *judge) noSample(d *Drain) {
	if j.s.SampleColumn == 0 {
		j.say(trial.Fix("no sample mass", j.at(d.Cell), "the drainage is in grams, and no column says how much foam it came from",
			"add a column \"Sample g\" with the grams of foam set to drain, or type percents and write % in the header").Once())
	} else if !j.seen.SampleSaid {
		j.say(trial.Fix("sample mass missing", j.at(Cell{j.seen.Row, j.s.SampleColumn}),
			fmt.Sprintf("no mass is typed here, and a drainage of %s g needs it", j.text(d.Cell)), "type the grams of foam that were set to drain"))
	}
}

// moreThanTheFoam says that more drained than there was foam, and which cell most
// likely slipped: a sample unlike the others, or a drainage ten times too large.
func (j *judge) moreThanTheFoam(d *Drain, percent float64) {
	read := j.quotedCell(d.Cell) + " is more than the whole foam"
	if d.Grams {
		sample := j.seen.Sample
		if !sample.OK() {
			sample.Low = j.s.SampleGrams
		}
		read = fmt.Sprintf("%s of %s of foam is %s %%, more than the whole foam", j.quotedCell(d.Cell), say.Grams(sample.Low), say.Number(percent))
		if u, v := j.s.Usual[sample.Col], 10*sample.Low; !u.Holds(sample.Low, 0) && u.Holds(v, 0) {
			j.say(trial.Fix("impossible drainage", j.at(sample.Cell), read,
				fmt.Sprintf("this sample is a tenth of the others: type %s here if that was weighed", say.Number(v))))
			return
		}
	}
	do := "check the unit of the column and the sample mass"
	if v, ok := j.s.Usual[d.Col].PointMissed(d.Low); ok {
		do = fmt.Sprintf("type %s here if the point was missed", say.Number(v))
		if d.Grams {
			do += fmt.Sprintf(" (%s %%)", say.Number(percent*v/d.Low))
		}
	}
	j.say(trial.Fix("impossible drainage", j.at(d.Cell), read, do))
}

// amount is a reading as bounds in its own unit: what is below the reading limit
// lies between 0 and it.
func (j *judge) amount(d *Drain) (low, high float64, ok bool) {
	l := j.s.Field(d.Col).Limit
	unit := "%"
	if d.Grams {
		unit = "g"
	}
	switch d.Word {
	case quantity.NoWord, quantity.Zero:
		switch {
		case d.High < 0 || d.Low < 0 && bounded(d.Low):
			j.say(trial.Fix("impossible drainage", j.at(d.Cell), j.quotedCell(d.Cell)+" is less than nothing", "type the drained amount, 0 or more"))
			return 0, 0, false
		case d.High > 0:
			return d.Low, d.High, true
		}
		j.say(trial.Note("drained nothing", j.at(d.Cell), fmt.Sprintf("0 is read as below %s %s, %s", say.Number(l.Step), unit, l.From),
			"type <0.2 or the like if you can tell less than that").Once())
		return 0, l.Step, true
	case quantity.Trace, quantity.Ring:
		high := max(l.Step, l.Least)
		j.say(trial.Note("drained a trace", j.at(d.Cell),
			fmt.Sprintf("%s is read as at most %s %s, the least that was given a number", j.quotedCell(d.Cell), say.Number(high), unit),
			"type the amount, or a bound such as <0.5").Once())
		return 0, high, true
	}
	j.say(trial.Fix("drainage not a number", j.at(d.Cell), j.quotedCell(d.Cell)+" is no amount of liquid", "type the drained grams or percent"))
	return 0, 0, false
}

// atTarget is the drainage at the target minute: read off between the readings
// around it, or bounded by the nearest when they all lie on one side. Liquid only
// ever leaves the foam, so an earlier reading is the least there can be and a later
// one the most.
func (j *judge) atTarget(series []point) *trial.Interval {
	for i := range series {
		if math.IsNaN(series[i].minute) {
			j.say(trial.Note("minute of drainage not said", j.at(series[i].Cell),
				fmt.Sprintf("no minute is given; the reading is taken as made at %s min", say.Number(j.target)),
				"write the minute in the header, for example \"drained at 20 min %\"").Once())
			series[i].minute = j.target
		}
	}
	slices.SortStableFunc(series, func(a, b point) int {
		switch {
		case a.minute < b.minute:
			return -1
		case a.minute > b.minute:
			return 1
		}
		return 0
	})
	before := point{minute: 0}
	for _, p := range series {
		switch {
		case p.minute == j.target:
			return &trial.Interval{Low: p.low, High: p.high}
		case p.minute < j.target:
			before = p
			continue
		case !before.OK():
			j.otherMinute(p, "at most")
			return &trial.Interval{Low: 0, High: p.high}
		}
		if j.Curve != nil && before.OK() && before.low == before.high && p.low == p.high {
			j.Curve.Around = &trial.Interval{Low: min(before.low, p.low), High: max(before.low, p.low)}
		}
		f := (j.target - before.minute) / (p.minute - before.minute)
		low := before.low + f*(p.low-before.low)
		high := before.high + f*(p.high-before.high)
		j.say(trial.Note("drainage between readings", j.at(p.Cell),
			fmt.Sprintf("the drainage at %s min is read off between %s and %s min", say.Number(j.target), say.Number(before.minute), say.Number(p.minute)),
			"nothing to do, unless you set another minute").Once())
		return &trial.Interval{Low: min(low, high), High: max(low, high)}
	}
	j.otherMinute(before, "at least")
	return &trial.Interval{Low: before.low, High: 100}
}

func (j *judge) otherMinute(p point, bound string) {
	j.say(trial.Check("drained at another minute", j.at(p.Cell),
		fmt.Sprintf("read at %s min; at %s min it is known only as %s that", say.Number(p.minute), say.Number(j.target), bound),
		fmt.Sprintf("if %s min is the minute that counts, set \"drained at\" to %[1]s in the Targets sheet or give --drained-at %[1]s", say.Number(p.minute))))
}
