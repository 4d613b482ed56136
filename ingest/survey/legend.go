package survey

import (
	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// legend takes what a line beside the table says of the marks of a column, where it
// explains more than one of them. A dash it does not explain answers nothing, nor does a
// mark that it explains in words that are not understood: "T" is no "true" then.
func (m *surveyor) legend(f *scheme.Field) bool {
	entries := m.kitchen.Legend(f.Header)
	if len(entries) < 2 || m.ofAnother(entries, f.Role) {
		return false
	}
	typed := map[string]bool{}
	for n := range m.Rows() {
		typed[say.Fold(m.Found.Sheet.Display(m.Cell(n, f.Col)))] = true
	}
	as, at, of := map[string]trial.Answer{}, trial.Place{}, []string{}
	var unheard []kitchen.Explained
	for _, e := range entries {
		mark := say.Fold(e.Mark)
		a := m.meant(e.Meaning, f.Role)
		switch had, known := as[mark]; {
		case !typed[mark]:
		case a == trial.Unknown:
			unheard = append(unheard, e)
		case known && had != a:
			return false // it says two things
		case !known:
			as[mark], at = a, e.At
			of = append(of, mark)
		}
	}
	for _, e := range unheard {
		if mark := say.Fold(e.Mark); e.At == at && as[mark] == trial.Unknown {
			as[mark] = trial.Unknown
		}
	}
	if len(of) == 0 || len(as) < 2 || f.Reversed {
		return false
	}
	f.Legend = as
	m.say(trial.Note("marks read", m.Heading(f.Col), "in "+say.Quoted(f.Header)+" "+described(of, as)+", as "+at.String()+" says",
		"nothing to do, or type yes and no"))
	return true
}

// ofAnother reports a legend that names no column and of which every word answers the other
// question, and not every one this: "2 = all out, 1 = half out, 0 = blocked" of a column of splits.
func (m *surveyor) ofAnother(entries []kitchen.Explained, r column.Role) bool {
	q, asks := map[column.Role]reply.Question{column.CameOut: reply.Split, column.Clogged: reply.Split, column.Broke: reply.CameOut}[r]
	all, own := asks, true
	for _, e := range entries {
		_, answers := reply.Explained(q, e.Meaning)
		all = all && answers && !e.Named
		own = own && m.meant(e.Meaning, r) != trial.Unknown
	}
	return all && !own
}

// letters takes what a legend says of the codes of a column of results, "C = clogged", where
// it says so of most that is typed there.
func (m *surveyor) letters(f *scheme.Field) {
	entries := m.kitchen.Legend(f.Header)
	if len(entries) == 0 || f.Letters != nil {
		return
	}
	meant := map[string]string{}
	for _, e := range entries {
		code := say.Fold(e.Mark)
		had, twice := meant[code]
		switch events, sure := event.Sure(e.Meaning); {
		case twice && had != e.Meaning:
			return // it says two things
		case sure && len(events) > 0:
			meant[code] = e.Meaning
		}
	}
	typed, explained, at := 0, 0, trial.Place{}
	for n := range m.Rows() {
		if text := m.Text(n, f.Col); text != "" {
			typed++
			if _, ok := scheme.Coded(meant, text); ok {
				explained++
			}
		}
	}
	if explained == 0 || 2*explained < typed {
		return
	}
	for _, e := range entries {
		if meant[say.Fold(e.Mark)] != "" {
			at = e.At
		}
	}
	f.Letters = meant
	m.say(trial.Note("marks read", m.Heading(f.Col), "the codes in "+say.Quoted(f.Header)+" are read as "+at.String()+" says", "nothing to do, or type what happened in words"))
}

// events are what a legend may say of a mark, by the question its column answers.
var events = map[column.Role]map[event.Event]trial.Answer{
	column.CameOut: {event.CameOut: trial.Yes, event.PartlyOut: trial.Partly, event.Clogged: trial.No, event.Fine: trial.Yes},
	column.Clogged: {event.CameOut: trial.No, event.PartlyOut: trial.Partly, event.Clogged: trial.Yes, event.Fine: trial.No},
	column.Broke:   {event.Broke: trial.Yes, event.Whole: trial.No, event.Fine: trial.No},
}

// meant is what the words of a legend answer to the question of a column.
func (m *surveyor) meant(words string, r column.Role) trial.Answer {
	if q, own := map[column.Role]reply.Question{column.CameOut: reply.CameOut, column.Broke: reply.Split}[r]; own {
		if a, ok := reply.Explained(q, words); ok {
			return [...]trial.Answer{reply.Yes: trial.Yes, reply.Partly: trial.Partly, reply.No: trial.No}[a]
		}
	}
	for _, e := range m.Events(words) {
		if a, ok := events[r][e]; ok {
			return a
		}
	}
	switch answer, err := m.Reply(words); {
	case err != nil:
	case answer.Answer == reply.Yes && (answer.Sense == reply.Affirms || r == column.CameOut):
		return trial.Yes
	case answer.Answer == reply.Partly:
		return trial.Partly
	case answer.Answer == reply.No && (answer.Sense == reply.Affirms || r == column.CameOut):
		return trial.No
	}
	return trial.Unknown
}
