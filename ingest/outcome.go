package ingest

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// said is what one cell answers, and where it stands; a column of 0 = nothing.
type said struct {
	answer trial.Answer
	col    int
	blank  bool // nothing is typed, which is no in a column that is only ever marked
}

// seen is what a row's cells say happened to the foam, before they are weighed
// against each other.
type seen struct {
	out, clogged, spits  said
	broke, oil           said
	hold, lastOK, goneBy measured
	drains               []drain
	sample               known
	cloggedSaid          bool // that results are logged though it clogged
	sampleSaid           bool // its cell cannot be used, which is said there
	liquidCup, foamCup   cup
	events               []event
}

func (s *seen) reset() { *s = seen{drains: s.drains[:0], events: s.events[:0]} }

func (s said) ok() bool { return s.col > 0 }

// dropBlanks forgets the blanks read as no where nothing at all is typed: an
// empty row is a trial nobody made yet.
func (s *seen) dropBlanks() {
	answers := [...]*said{&s.out, &s.clogged, &s.spits, &s.broke, &s.oil}
	if s.hold.ok() || s.lastOK.ok() || s.goneBy.ok() || len(s.drains) > 0 || len(s.events) > 0 {
		return
	}
	for _, a := range answers {
		if a.answer != trial.Unknown && !a.blank {
			return
		}
	}
	for _, a := range answers {
		*a = said{}
	}
}

// measured is a reading and where it stands; a column of 0 = nothing.
type measured struct {
	quantity.Reading
	col int
}

func (m measured) ok() bool { return m.col > 0 }

// event is something a free text says, with the column it stands in. The text
// of a result column, or one typed in place of a number, is meant as a result;
// a note's only counts when nothing else answers.
type event struct {
	what quantity.Event
	col  int
	note bool
}

// outcomes decides what happened in a trial. A clogged foam has no hold, no
// drainage and no breaking; that is a fact about it, not a missing number.
func (b *row) outcomes(t *trial.Trial, s *seen) {
	s.dropBlanks()
	t.CameOut = b.cameOut(s)
	t.Broke = b.broke(t, s)
	t.Hold = b.hold(t, s)
	t.Drained = b.drained(t, s)
	b.overrun(s)
	if t.Broke == trial.Unknown && t.CameOut != trial.No && t.Hold != nil && b.table.typesBreaks {
		t.Broke = trial.No
		b.book.told("not broken taken from the hold", b.at(s.hold.col), "the hold column says so where a foam split",
			"a foam with a hold is taken not to have split; add a column \"broke\" with yes or no")
	}
	if t.CameOut == trial.Unknown && (t.Hold != nil || t.Drained != nil || t.Broke != trial.Unknown) {
		t.CameOut = trial.Yes
		if col := b.table.outColumn; col == 0 {
			b.book.told("came out taken from results", b.at(0), "some trials say nothing of whether they came out",
				"a trial with a hold, a drainage or a split is taken to have come out; add a column \"came out\" with yes, partly or no")
		} else if text := b.text(col); text == "" {
			b.book.told("came out taken from results", b.at(col), "nothing is typed here, and what follows says that it came out",
				"type yes, partly or no; a trial with a hold, a drainage or a split is taken to have come out")
		}
	}
	why := trial.NotMeasured
	if t.CameOut == trial.No {
		why = trial.DidNotComeOut
	}
	var a absence
	for i, absent := range [...]bool{t.Hold == nil, t.Drained == nil, t.CameOut == trial.Unknown, t.Broke == trial.Unknown} {
		if absent {
			a[i] = 1 + uint8(why)
		}
	}
	t.Missing = b.book.sharedMissing(a)
}

// cameOut weighs the columns first, then words typed in place of a number,
// then a result column, then notes.
func (b *row) cameOut(s *seen) trial.Answer {
	out := s.out.answer
	col := s.out.col
	if s.clogged.answer != trial.Unknown {
		inverse := [...]trial.Answer{trial.Unknown, trial.No, trial.Partly, trial.Yes}[s.clogged.answer]
		if out != trial.Unknown && out != inverse {
			b.problem("came out and clogged disagree", trial.PleaseLook, s.clogged.col,
				fmt.Sprintf("one column says came out %s, another says clogged %s", out, s.clogged.answer),
				"correct one of them; the worse of the two is used")
		}
		if inverse > out {
			out, col = inverse, s.clogged.col
		}
	}
	told, where := trial.Unknown, event{}
	for _, e := range s.events {
		a := outOf(e.what)
		switch {
		case a == trial.Unknown:
		case told == trial.Unknown:
			told, where = a, e
		case where.note && e.note || !where.note && !e.note:
			// "clogged, strained, then fine": the last word of a text stands.
			told, where = a, e
		}
	}
	switch {
	case told == trial.Unknown:
	case out == trial.Unknown:
		out = told
		column := b.table.outColumn
		switch {
		case !where.note:
		case column == 0:
			b.problem("taken from a note", trial.PleaseLook, where.col,
				"no column says whether it came out; the note says: "+where.what.String(),
				"fill in a column \"came out\" with yes, partly or no; the note is used")
		case b.cellAt(column).Kind == sheet.Blank:
			b.problem("taken from a note", trial.PleaseLook, column,
				"nothing is typed here; the note says: "+where.what.String(), "type yes, partly or no; the note is used")
		} // else what is typed there could not be read, which is said there
	case told != out && !(out == trial.Partly && told == trial.Yes) && !(where.note && told == trial.Yes):
		b.problem("text disagrees", trial.PleaseLook, where.col,
			fmt.Sprintf("this text says it %s, but %s says came out %s", where.what, b.columnName(col), out),
			"correct one of them; the column is used")
	}
	if out == trial.Unknown && s.spits.answer == trial.Yes || out == trial.Unknown && s.spits.answer == trial.Partly {
		out = trial.Partly
	}
	return out
}

// outOf is what an event says of coming out.
func outOf(e quantity.Event) trial.Answer {
	switch e {
	case quantity.CameOut, quantity.CameOutLiquid, quantity.Broke, quantity.OilLeak, quantity.Stood, quantity.CollapsedAtOnce, quantity.Weeps:
		return trial.Yes
	case quantity.PartlyOut:
		return trial.Partly
	case quantity.Clogged:
		return trial.No
	}
	return trial.Unknown
}

// broke is yes when a column, a result or a note says the emulsion split or
// leaked oil.
func (b *row) broke(t *trial.Trial, s *seen) trial.Answer {
	if t.CameOut == trial.No {
		if s.broke.answer == trial.Yes || s.broke.answer == trial.Partly {
			b.problem("broke beside clogged", trial.ForInformation, s.broke.col,
				"a foam that did not come out cannot be seen to break", "nothing to do: the trial counts as clogged")
		}
		return trial.Unknown
	}
	broke, col := trial.Unknown, 0
	for _, a := range [...]said{s.broke, s.oil} {
		switch {
		case a.answer == trial.Yes || a.answer == trial.Partly:
			broke, col = trial.Yes, a.col
		case a.answer == trial.No && broke == trial.Unknown:
			broke, col = trial.No, a.col
		}
	}
	for _, e := range s.events {
		says := brokeBy(e.what)
		switch {
		case says == trial.Unknown:
		case broke == trial.Unknown:
			broke, col = says, e.col
			if e.note {
				b.problem("taken from a note", trial.PleaseLook, e.col,
					"no column says whether it broke; the note says: "+e.what.String(),
					"fill in a column \"broke\" with yes or no; the note is used")
			}
		case says == trial.Yes && broke == trial.No:
			b.problem("text disagrees", trial.PleaseLook, e.col,
				fmt.Sprintf("this text says it %s, but %s says it did not break", e.what, b.columnName(col)),
				"correct one of them; the column is used")
		}
	}
	return broke
}

func brokeBy(e quantity.Event) trial.Answer {
	switch e {
	case quantity.Broke, quantity.OilLeak:
		return trial.Yes
	case quantity.Whole:
		return trial.No
	}
	return trial.Unknown
}

// hold is the time the foam kept its shape.
func (b *row) hold(t *trial.Trial, s *seen) *trial.Interval {
	m, ok := b.holdLooks(s)
	if !ok {
		return nil
	}
	switch m.Word {
	case quantity.NoWord, quantity.Zero:
	case quantity.AtOnce, quantity.NoFoam:
		m.Low, m.High = 0, 0
	case quantity.StillStanding:
		b.problem("no time with it", trial.MustFix, m.col, quoted(b.text(m.col))+" does not say how long it was watched",
			"type the last minute it was looked at with a plus, for example 20+")
		return nil
	case quantity.Overnight:
		b.problem("no time with it", trial.PleaseLook, m.col, quoted(b.text(m.col))+" is read as no number of minutes",
			"type the hours it surely stood with a plus, for example 8 h+")
		return nil
	default:
		return nil
	}
	low, high := m.Low, m.High
	if high < 0 || low < 0 && !math.IsInf(low, -1) {
		b.problem("impossible hold", trial.MustFix, m.col, quoted(b.text(m.col))+" is less than no time", "type minutes, 0 or more")
		return nil
	}
	if t.CameOut == trial.No {
		if m.Low > 0 {
			s.cloggedSaid = true
			if drained := slices.IndexFunc(s.drains, func(d drain) bool { return d.High > 0 && d.Word == quantity.NoWord }); drained >= 0 && s.out.ok() && s.out.answer == trial.No {
				b.problem("hold beside clogged", trial.PleaseLook, s.out.col,
					fmt.Sprintf("%s here says that it did not come out, yet a hold of %s and a drainage of %s are logged", quoted(b.text(s.out.col)),
						b.text(m.col), b.text(s.drains[drained].col)),
					"type yes here if it came out, else empty the hold and the drainage; until then the trial counts as clogged")
				return nil
			}
			b.problem("hold beside clogged", trial.PleaseLook, m.col,
				fmt.Sprintf("a hold of %s is logged for a foam that did not come out", quoted(b.text(m.col))),
				"correct the hold or the came out column; the trial counts as clogged")
		}
		return nil
	}
	if low > mostHold || high > mostHold && !math.IsInf(high, 1) {
		b.impossible(m.col, "a hold: it is longer than 30 days", "type the minutes it stood, or a time with its unit such as 8 h")
		return nil
	}
	if high == 0 {
		// Down before anyone looked: a time between 0 and the first look.
		low, high = 0, b.table.firstLook
		b.book.told("hold of 0", b.at(m.col), fmt.Sprintf("a hold of 0 is read as at most %s min, the first look", number(high)),
			"type the minute of the first look, for example <1")
	}
	i := b.book.interval(max(low, 0), high)
	b.book.longest.see(*i, func() trial.Place { return b.at(m.col) })
	return i
}

// holdLooks joins the hold column with the columns of last look standing and
// first look gone.
func (b *row) holdLooks(s *seen) (measured, bool) {
	m := s.hold
	low, high := math.Inf(-1), math.Inf(1)
	if s.lastOK.ok() && s.lastOK.Word == quantity.NoWord && !math.IsInf(s.lastOK.Low, 0) {
		low = s.lastOK.Low
		m.col = max(m.col, s.lastOK.col)
	}
	if s.goneBy.ok() && s.goneBy.Word == quantity.NoWord && !math.IsInf(s.goneBy.High, 0) {
		high = s.goneBy.High
		m.col = max(m.col, s.goneBy.col)
	}
	if !s.hold.ok() || s.hold.Word == quantity.NotMeasured {
		if math.IsInf(low, 0) && math.IsInf(high, 0) {
			return m, s.hold.ok()
		}
		if low > high {
			b.problem("looks out of order", trial.MustFix, m.col,
				fmt.Sprintf("it stood at %s min but was gone by %s min", number(low), number(high)), "correct one of the two minutes")
			return m, false
		}
		m.Word = quantity.NoWord
		m.Low, m.High = max(low, 0), high
	}
	return m, true
}

// String is the answer as a word.
