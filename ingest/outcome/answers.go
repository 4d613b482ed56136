package outcome

import (
	"fmt"

	"foamfield/ingest/event"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// cameOut weighs the columns first, then words typed in place of a number, then a
// result column, then notes.
func (j *judge) cameOut() trial.Answer {
	out, cell := j.columnsOut()
	told, where := j.toldOut()
	switch {
	case told == trial.Unknown:
	case out == trial.Unknown:
		out = told
		if where.Note {
			j.takenFromNote(where)
		}
	case out == trial.Partly && where.Cell == cell: // "half, then clogged"
	case out == trial.Yes && told == trial.No && where.Cell == cell:
		out = trial.Partly
		j.say(trial.Check("text disagrees", j.at(where.Cell), j.quotedCell(where.Cell)+" is read as partly: it came out and then clogged", "type yes, partly or no"))
	case told != out && !(out == trial.Partly && told == trial.Yes) && !(where.Note && told == trial.Yes):
		j.say(trial.Check("text disagrees", j.at(where.Cell), fmt.Sprintf("this text says it %s, but %s says came out %s", where.What, j.s.Name(cell.Col), out),
			"correct one of them; the column is used"))
	}
	if spits := j.seen.Spits.Answer; out == trial.Unknown && (spits == trial.Yes || spits == trial.Partly) {
		out = trial.Partly
	}
	return out
}

// columnsOut is what the columns say of coming out, the worse of the two: a column
// of clogging is one of coming out turned round.
func (j *judge) columnsOut() (out trial.Answer, cell Cell) {
	out, cell = j.seen.Out.Answer, j.seen.Out.Cell
	c := j.seen.Clogged
	inverse := [...]trial.Answer{trial.Unknown, trial.No, trial.Partly, trial.Yes}[c.Answer]
	if inverse != trial.Unknown && out != trial.Unknown && out != inverse {
		j.say(trial.Check("came out and clogged disagree", j.at(c.Cell), fmt.Sprintf("one column says came out %s, another says clogged %s", out, c.Answer),
			"correct one of them; the worse of the two is used"))
	}
	if inverse > out {
		out, cell = inverse, c.Cell
	}
	return out, cell
}

// toldOut is what the texts say of coming out: "clogged, strained, then fine": the
// last word of a text stands, and a result's before a note's. What came out before it
// clogged came out in part.
func (j *judge) toldOut() (told trial.Answer, where Event) {
	some := Cell{} // whose text says that something came out
	for _, e := range j.seen.Events {
		a := outOf(e.What)
		switch {
		case e.What == event.CameOut || e.What == event.PartlyOut:
			some = e.Cell
		case a == trial.No && some == e.Cell:
			a, e.What = trial.Partly, event.PartlyOut
		case a == trial.Yes && some == e.Cell:
			continue // it split, which says no more than that something came out
		}
		if a != trial.Unknown && (told == trial.Unknown || where.Note == e.Note) {
			told, where = a, e
		}
	}
	return told, where
}

// unread reports an answer on coming out that is typed and could not be read.
func (j *judge) unread(out Cell) bool {
	text := j.text(out)
	if text == "" || j.seen.Out.Answer != trial.Unknown || j.seen.Clogged.Answer != trial.Unknown {
		return false
	}
	if _, err := j.s.Reply(text); err == nil {
		return false
	}
	events, sure := event.Sure(text)
	return !sure || len(events) == 0
}

func (j *judge) takenFromNote(where Event) {
	column := Cell{j.seen.Row, j.s.OutColumn}
	switch {
	case !column.OK():
		j.say(trial.Check("taken from a note", j.at(where.Cell), "no column says whether it came out; the note says: "+where.What.String(),
			"fill in a column \"came out\" with yes, partly or no; the note is used"))
	case j.s.Cell(column.Row, column.Col).Kind == sheet.Blank:
		j.say(trial.Check("taken from a note", j.at(column), "nothing is typed here; the note says: "+where.What.String(),
			"type yes, partly or no; the note is used"))
	} // else what is typed there could not be read, which is said there
}

// outOf is what an event says of coming out.
func outOf(e event.Event) trial.Answer {
	switch e {
	case event.CameOut, event.CameOutLiquid, event.Broke, event.OilLeak, event.Stood, event.CollapsedAtOnce, event.Weeps:
		return trial.Yes
	case event.PartlyOut:
		return trial.Partly
	case event.Clogged:
		return trial.No
	}
	return trial.Unknown
}

// broke is yes when a column, a result or a note says the emulsion split or leaked
// oil.
func (j *judge) broke() trial.Answer {
	if j.CameOut == trial.No {
		if b := j.seen.Broke; b.Answer == trial.Yes || b.Answer == trial.Partly {
			j.say(trial.Note("broke beside clogged", j.at(b.Cell), "a foam that did not come out cannot be seen to split", "nothing to do: the trial counts as clogged"))
		}
		return trial.Unknown
	}
	broke, cell := trial.Unknown, Cell{}
	for _, a := range [...]Said{j.seen.Broke, j.seen.Oil} {
		switch {
		case a.Answer == trial.Yes || a.Answer == trial.Partly:
			broke, cell = trial.Yes, a.Cell
		case a.Answer == trial.No && broke == trial.Unknown:
			broke, cell = trial.No, a.Cell
		}
	}
	for _, e := range j.seen.Events {
		says := BrokeBy(e.What)
		switch {
		case says == trial.Unknown:
		case broke == trial.Unknown:
			broke, cell = says, e.Cell
			if e.Note {
				j.say(trial.Check("taken from a note", j.at(e.Cell), "no column says whether it split; the note says: "+e.What.String(),
					"fill in a column \"split\" with yes or no; the note is used"))
			}
		case says == trial.Yes && broke == trial.No:
			j.say(trial.Check("text disagrees", j.at(e.Cell), fmt.Sprintf("this text says it %s, but %s says it did not split", e.What, j.s.Name(cell.Col)),
				"correct one of them; the column is used"))
		}
	}
	return broke
}

// BrokeBy is what an event says of splitting.
func BrokeBy(e event.Event) trial.Answer {
	switch e {
	case event.Broke, event.OilLeak:
		return trial.Yes
	case event.Whole:
		return trial.No
	}
	return trial.Unknown
}

// quotedCell is a cell's text in a message.
func (j *judge) quotedCell(c Cell) string { return say.Quoted(j.text(c)) }
