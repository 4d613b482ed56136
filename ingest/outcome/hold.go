package outcome

import (
	"fmt"
	"math"

	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// mostHold is longer than any foam is watched: 30 days, in minutes.
const mostHold = 30 * 24 * 60

// hold is the time the foam kept its shape.
func (j *judge) hold() *trial.Interval {
	m, ok := j.looks()
	if !ok {
		return nil
	}
	switch m.Word {
	case quantity.NoWord, quantity.Zero:
	case quantity.AtOnce, quantity.NoFoam:
		m.Low, m.High = 0, 0
	case quantity.StillStanding:
		j.say(trial.Fix("no time with it", j.at(m.Cell), j.quotedCell(m.Cell)+" does not say how long it was watched",
			"type the last minute it was looked at with a plus, for example 20+"))
		return nil
	case quantity.Overnight:
		j.say(trial.Check("no time with it", j.at(m.Cell), j.quotedCell(m.Cell)+" is read as no number of minutes",
			"type the hours it surely stood with a plus, for example 8 h+"))
		return nil
	default:
		return nil
	}
	low, high := m.Low, m.High
	switch {
	case high < 0 || low < 0 && bounded(low):
		j.say(trial.Fix("impossible hold", j.at(m.Cell), j.quotedCell(m.Cell)+" is less than no time", "type minutes, 0 or more"))
		return nil
	case j.CameOut == trial.No:
		if m.Low > 0 {
			j.holdOfClogged(m)
		}
		return nil
	case low > mostHold || high > mostHold && bounded(high):
		j.say(trial.Fix("impossible value", j.at(m.Cell), j.quotedCell(m.Cell)+" cannot be a hold: it is longer than 30 days",
			"type the minutes it stood, or a time with its unit such as 8 h"))
		return nil
	case high == 0:
		// Down before anyone looked: a time between 0 and the first look.
		low, high = 0, j.s.FirstLook
		j.say(trial.Note("hold of 0", j.at(m.Cell), fmt.Sprintf("a hold of 0 is read as at most %s min, the first look", say.Number(high)),
			"type the minute of the first look, for example <1").Once())
	}
	j.HoldAt = j.at(m.Cell)
	return &trial.Interval{Low: max(low, 0), High: high}
}

// holdOfClogged says that a hold is logged for a foam that did not come out.
func (j *judge) holdOfClogged(m Measured) {
	j.cloggedSaid = true
	out := j.seen.Out
	if d := firstNumber(j.seen.Drains); d >= 0 && out.OK() && out.Answer == trial.No {
		j.say(trial.Check("hold beside clogged", j.at(out.Cell),
			fmt.Sprintf("%s here says that it did not come out, yet a hold of %s and a drainage of %s are logged", j.quotedCell(out.Cell),
				j.text(m.Cell), j.text(j.seen.Drains[d].Cell)),
			"type yes here if it came out, else empty the hold and the drainage; until then the trial counts as clogged"))
		return
	}
	j.say(trial.Check("hold beside clogged", j.at(m.Cell), fmt.Sprintf("a hold of %s is logged for a foam that did not come out", j.quotedCell(m.Cell)),
		"correct the hold or the came out column; the trial counts as clogged"))
}

// looks joins the hold column with the columns of last look standing and first
// look gone.
func (j *judge) looks() (Measured, bool) {
	m := j.seen.Hold
	low, high := math.Inf(-1), math.Inf(1)
	if l := j.seen.LastOK; l.OK() && l.Word == quantity.NoWord && bounded(l.Low) {
		low = l.Low
		if !m.OK() {
			m.Cell = l.Cell
		}
	}
	if g := j.seen.GoneBy; g.OK() && g.Word == quantity.NoWord && bounded(g.High) {
		high = g.High
		if !j.seen.Hold.OK() {
			m.Cell = g.Cell
		}
	}
	if j.seen.Hold.OK() && j.seen.Hold.Word != quantity.NotMeasured {
		return m, true
	}
	if !bounded(low) && !bounded(high) {
		return m, j.seen.Hold.OK()
	}
	if low > high {
		j.say(trial.Fix("looks out of order", j.at(m.Cell), fmt.Sprintf("it stood at %s min but was gone by %s min", say.Number(low), say.Number(high)),
			"correct one of the two minutes"))
		return m, false
	}
	m.Word, m.Low, m.High = quantity.NoWord, max(low, 0), high
	return m, true
}
