package row

import (
	"fmt"
	"math"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/outcome"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// looked reads how long a foam stood.
func (r *reader) looked(f *scheme.Field, into *outcome.Measured) {
	if r.s.Found.PerReading && f.Role == column.Hold && r.standing(f) {
		return
	}
	m, ok := r.read(f)
	if !ok {
		return
	}
	*into = m
	r.wordEvent(m)
	r.events(m.Said, m.Cell, false)
}

// drained reads one reading of the drained liquid.
func (r *reader) drained(f *scheme.Field, minute float64) {
	m, ok := r.read(f)
	if !ok {
		return
	}
	r.wordEvent(m)
	r.events(m.Said, m.Cell, false)
	if f.Reversed {
		if f.Want != units.Percent || m.Word != quantity.NoWord {
			r.say(trial.Fix("what did not drain", r.s.Heading(f.Col), say.Quoted(f.Header)+" is what stayed in the foam", "type what drained, in percent of the foam").Once())
			return
		}
		m.Low, m.High = 100-m.High, 100-m.Low
		r.say(trial.Check("what did not drain", r.s.Heading(f.Col), say.Quoted(f.Header)+" is read as what stayed in the foam: the rest to 100 % drained",
			"type what drained, in percent of the foam").Once())
	}
	if f.Want == units.Volume {
		if f.GramsPerML == 0 {
			r.sayVolume(f, "weigh the liquid and write g in the header, or give \"1.00 g/mL\" as the Basis in a sheet Columns")
			return
		}
		m.Low, m.High = m.Low*f.GramsPerML, m.High*f.GramsPerML
	}
	if f.Want == units.Length {
		r.say(trial.Fix("drainage not a number", r.at(f), say.Quoted(f.Header)+" is a height of liquid, which is no part of the foam", "type the drained grams or percent").Once())
		return
	}
	if f.AtMinute > 0 {
		minute = f.AtMinute
	}
	r.Seen.Drains = append(r.Seen.Drains, outcome.Drain{Measured: m, Minute: minute, Grams: f.Want != units.Percent})
}

// oil reads whether oil leaked out of a foam from how much.
func (r *reader) oil(f *scheme.Field) {
	m, ok := r.read(f)
	if !ok {
		return
	}
	leaked := m.Low > 0 && m.Word == quantity.NoWord
	switch m.Word {
	case quantity.Trace, quantity.Ring, quantity.Puddle:
		leaked = true
	case quantity.NoWord, quantity.Zero:
	default:
		return
	}
	r.Seen.Oil = outcome.Said{Answer: trial.No, Cell: r.cell(f)}
	if leaked {
		r.Seen.Oil.Answer = trial.Yes
	}
}

// answer reads the yes/no columns.
func (r *reader) answer(f *scheme.Field) bool {
	var into *outcome.Said
	switch f.Role {
	case column.CameOut:
		into = &r.Seen.Out
	case column.Clogged:
		into = &r.Seen.Clogged
	case column.Spits:
		into = &r.Seen.Spits
	case column.Broke:
		into = &r.Seen.Broke
	case column.OilLeak:
		into = &r.Seen.Oil
	default:
		return false
	}
	if f.Ticked != trial.Unknown {
		r.tick(f, into)
		return true
	}
	// A later reading of the trial replaces an earlier one, a blank does not.
	if a := r.answerOf(f); a.Answer != trial.Unknown && !(a.Blank && into.Answer != trial.Unknown) {
		*into = a
	}
	return true
}

// tick reads a column of one answer; of two that are ticked in a row none is taken.
func (r *reader) tick(f *scheme.Field, into *outcome.Said) {
	c := r.sheetCell(f)
	if c.Kind == sheet.Blank || r.crossedCell(f, c) {
		return
	}
	text := r.text(f)
	switch ticks, ok := r.s.Ticks(text); {
	case !ok:
		r.unreadable(f, &quantity.Unreadable{Text: text, Why: "is no tick", Type: "type x, or leave it empty"})
	case ticks && into.OK() && into.Cell.Row == r.row:
		r.say(trial.Fix("two answers ticked", r.at(f), r.s.Name(into.Cell.Col)+" is ticked too, so neither is used", "leave the one that is true"))
		into.Answer = trial.Unknown
	case ticks:
		*into = outcome.Said{Answer: f.Ticked, Cell: r.cell(f)}
	}
}

func (r *reader) answerOf(f *scheme.Field) outcome.Said {
	c := r.sheetCell(f)
	if c.Kind == sheet.Blank {
		if a := r.s.AnswerAt(r.row, f.Col); a != reply.NoAnswer {
			return outcome.Said{Answer: r.settled(f, reply.Reply{Answer: a, Sense: reply.Affirms}), Cell: r.cell(f)}
		}
		if f.BlankIsNo {
			return outcome.Said{Answer: trial.No, Cell: r.cell(f), Blank: true}
		}
		return outcome.Said{}
	}
	if c.Kind == sheet.Fault {
		r.whole(f, c)
		return outcome.Said{}
	}
	if r.crossedCell(f, c) {
		return outcome.Said{}
	}
	text := r.text(f)
	if len(f.Legend) > 0 {
		if a, ok := f.Legend[say.Fold(text)]; ok {
			if a == trial.Unknown {
				r.say(trial.Fix("mark not explained", r.at(f), "what a line says of "+say.Quoted(text)+" is not understood", "type yes, partly or no"))
			}
			return outcome.Said{Answer: a, Cell: r.cell(f)}
		}
	}
	answer, err := r.reply(f, text)
	if err != nil {
		// A sentence may say what happened in words of its own.
		if events, sure := event.Sure(text); sure && len(events) > 0 {
			r.addEvents(events, r.cell(f), false)
		} else {
			r.unreadable(f, err)
		}
		r.setRaw(f.Raw, text)
		return outcome.Said{}
	}
	if c.Flags&sheet.Revised != 0 {
		r.say(trial.Check("struck out in part", r.at(f), "part of the cell is struck out or raised and was left out: "+say.Quoted(text)+" is read", "type the one answer that counts"))
	}
	if answerReplaced.MatchString(text) {
		r.say(trial.Check("value in doubt", r.at(f), say.Quoted(text)+" is read by its first word, which replaces the other", "type the one answer that counts"))
	}
	r.addEvents(answer.Events, r.cell(f), false)
	switch answer.Word {
	case quantity.DidNotComeOut:
		r.addEvents([]event.Event{event.Clogged}, r.cell(f), false)
	case quantity.NoFoam:
		r.addEvents([]event.Event{event.CameOutLiquid}, r.cell(f), false)
	}
	a := r.settled(f, answer)
	if a == trial.Partly {
		r.setRaw(f.Raw, text)
	}
	return outcome.Said{Answer: a, Cell: r.cell(f)}
}

// reply reads an answer, first in the words that only its question has.
func (r *reader) reply(f *scheme.Field, text string) (reply.Reply, error) {
	q, own := map[column.Role]reply.Question{column.CameOut: reply.CameOut, column.Broke: reply.Split}[f.Role]
	if !own || f.Reversed {
		return r.s.Reply(text)
	}
	if a, ok := reply.Whole(q, text); ok {
		return reply.Reply{Answer: a, Sense: reply.Affirms}, nil
	}
	answer, err := r.s.Reply(text)
	if a, ok := reply.InPieces(q, text); err != nil && ok {
		return reply.Reply{Answer: a, Sense: reply.Affirms}, nil
	}
	return answer, err
}

// answerReplaced is an answer beside the one before it: "yes (was no)".
var answerReplaced = pattern.Of(`(?i)\b(?:was|war|vorher|était|avant|era|antes|prima|statt|instead of|au lieu de|not)\s*:?\s*(?:yes|no|partly|ja|nein|teilweise|oui|non|si|sí|sì)\b`)

var plainAnswer = [...]trial.Answer{reply.NoAnswer: trial.Unknown, reply.Yes: trial.Yes, reply.Partly: trial.Partly, reply.No: trial.No}

// settled is what a reply answers to the question of its column.
func (r *reader) settled(f *scheme.Field, answer reply.Reply) trial.Answer {
	a := plainAnswer[answer.Answer]
	fault := f.Role != column.CameOut
	switch answer.Sense {
	case reply.Affirms:
	case reply.Marks:
		a = f.Marks[answer.Mark]
	case reply.Values: // good is good, whatever was asked
		switch {
		case fault && a == trial.Partly:
			r.say(trial.Check("value not read", r.at(f), r.quoted(f)+" is neither yes nor no", "type yes, partly or no"))
			return trial.Unknown
		case fault:
			a = opposite(a)
		}
		return a
	case reply.Strength:
		if !fault || f.Reversed {
			r.say(trial.Check("value not read", r.at(f), r.quoted(f)+" is neither yes nor no", "type yes, partly or no"))
			return trial.Unknown
		}
	case reply.Nearly:
		return r.nearly(f)
	}
	if f.Reversed {
		a = opposite(a)
	}
	return a
}

// nearly is what "almost" answers: a fault that nearly happened did not happen.
func (r *reader) nearly(f *scheme.Field) trial.Answer {
	a := trial.No
	if f.Role == column.CameOut || f.Role == column.Clogged {
		a = trial.Partly
	}
	r.say(trial.Check("value in doubt", r.at(f), fmt.Sprintf("%s is read as %s", r.quoted(f), a), "type yes, partly or no"))
	return a
}

func opposite(a trial.Answer) trial.Answer {
	return [...]trial.Answer{trial.Unknown, trial.No, trial.Partly, trial.Yes}[a]
}

// wordEvent turns a word in place of a number into what it says happened.
func (r *reader) wordEvent(m outcome.Measured) {
	switch m.Word {
	case quantity.DidNotComeOut:
		r.addEvents([]event.Event{event.Clogged}, m.Cell, false)
	case quantity.NoFoam:
		r.addEvents([]event.Event{event.CameOutLiquid}, m.Cell, false)
	}
}

// events adds what a text says happened.
func (r *reader) events(text string, at outcome.Cell, note bool) {
	if text != "" {
		r.addEvents(r.s.Events(text), at, note)
	}
}

func (r *reader) addEvents(events []event.Event, at outcome.Cell, note bool) {
	for _, e := range events {
		switch e {
		case event.Void:
			r.void(r.s.At(at.Row, at.Col), "the note says that it does not count: "+say.Quoted(r.s.Text(at.Row, at.Col)))
		case event.NotMade:
			r.NotMade = true
		default:
			r.Seen.Events = append(r.Seen.Events, outcome.Event{What: e, Cell: at, Note: note})
		}
	}
}

// saysWhatHappened takes "split" or "clogged" typed in place of a number.
func (r *reader) saysWhatHappened(f *scheme.Field) bool {
	switch f.Role {
	case column.Hold, column.DrainedAmount, column.GoneBy, column.HoldOver:
	default:
		return false
	}
	events, sure := event.Sure(r.text(f))
	if sure {
		r.addEvents(events, r.cell(f), false)
	}
	return sure && len(events) > 0
}

// words takes a note or a result text.
func (r *reader) words(f *scheme.Field, text string) {
	if text == "" {
		return
	}
	note := f.Role == column.Note
	if note {
		if r.Note == "" {
			r.Note = text
		} else if !strings.Contains(r.Note, text) {
			r.Note += "; " + text
		}
		if label := sameAs(text); label != "" {
			r.setRaw("repeat", label)
		}
	} else {
		r.setRaw("result", text)
		if full, short := scheme.Coded(f.Letters, text); short {
			text = full
		}
		r.sentence(f, text)
		r.unheard(f, text)
		// A result column may answer with a bare word: did it come out?
		if answer, err := r.s.Reply(text); err == nil && answer.Answer == reply.Partly && answer.Sense == reply.Affirms {
			r.addEvents([]event.Event{event.PartlyOut}, r.cell(f), false)
		}
	}
	if note {
		if ids, _ := r.ofOthers(text); len(ids) > 0 {
			return
		}
		r.correction(text, r.cell(f))
	}
	r.events(text, r.cell(f), note)
}

// unheard says of a result of which nothing is understood that it was not used.
func (r *reader) unheard(f *scheme.Field, text string) {
	events, left := event.Heard(text)
	answer, err := r.s.Reply(text)
	if err == nil && !(answer.Sense == reply.Affirms && len(text) == 1) || len(events) > 0 || len(left) == 0 && !strings.ContainsAny(text, "0123456789") || r.Seen.Hold.OK() || len(r.Seen.Drains) > 0 {
		return
	}
	r.say(trial.Check("result not read", r.at(f), r.quoted(f)+" does not say what happened in words that are known here, and is not used",
		"type for example came out, clogged, came out in part, split, held 20 min; or explain your codes beside the table, as in \"C = clogged\""))
}

// sameAs finds "same as 7" in a note: the label of a repeat.
func sameAs(note string) string {
	lower := strings.ToLower(note)
	for _, words := range [...]string{"same as ", "repeat of ", "rep of ", "comme ", "igual que ", "come ", "wie "} {
		i := strings.Index(lower, words)
		if i < 0 || i > 0 && lower[i-1] != ' ' {
			continue
		}
		rest := strings.Fields(note[min(i+len(words), len(note)):])
		if len(rest) == 0 {
			continue
		}
		id := strings.Trim(rest[0], ".,;:()")
		if strings.ContainsAny(id, "0123456789") {
			return strings.TrimSpace(words) + " " + id
		}
	}
	return ""
}

// valid takes the answer of a column that says whether a trial counts.
func (r *reader) valid(f *scheme.Field, text string) {
	if text == "" {
		return
	}
	answer, err := r.s.Reply(text)
	if err != nil {
		r.unreadable(f, err)
		return
	}
	a := plainAnswer[answer.Answer]
	if answer.Sense == reply.Marks {
		a = map[string]trial.Answer{"-": trial.No, "0": trial.No, "✗": trial.No}[answer.Mark]
		if a == trial.Unknown {
			a = trial.Yes
		}
	}
	if f.Reversed {
		a = opposite(a)
	}
	if a == trial.No {
		r.void(r.at(f), r.s.Name(f.Col)+" says that it does not count")
	}
}

// clockHold is the hold between two clocks, where no column gives it.
func (r *reader) clockHold() {
	start := r.s.Find(column.StartedAt)
	if start == nil || start.EndCol == 0 || r.Seen.Hold.OK() {
		return
	}
	end := r.s.Field(start.EndCol)
	if end == nil || r.text(end) == "" {
		return
	}
	from, ok := scheme.ClockMinutes(r.s.Found.Sheet, r.sheetCell(start))
	to, fell := scheme.ClockMinutes(r.s.Found.Sheet, r.sheetCell(end))
	most := 0.0 // beyond what was seen
	if at, stood := end.StoodTo[say.Fold(r.text(end))]; ok && !fell && stood {
		to, fell, most = at, true, math.Inf(1)
	}
	if ok && !fell {
		if at, over := stillUpAt(r.text(end)); over {
			to, fell, most = at, true, math.Inf(1)
		}
	}
	if !ok || !fell {
		if r.saysWhatHappenedIn(end) {
			return
		}
		r.say(trial.Fix("value not read", r.at(end), r.quoted(end)+" and "+r.quoted(start)+" are no two times of the day", "type both as 14:05"))
		return
	}
	minutes := to - from
	if minutes < 0 && minutes < -12*60 {
		minutes += 24 * 60 // past midnight
	}
	if minutes < 0 {
		r.say(trial.Fix("looks out of order", r.at(end), fmt.Sprintf("it fell at %s, before it was dispensed at %s", r.quoted(end), r.quoted(start)), "correct one of the two times"))
		return
	}
	r.Seen.Hold = outcome.Measured{Reading: quantity.Reading{Low: minutes, High: minutes + most}, Cell: r.cell(end)}
}

// stillUpAt is the time of the day at which a text says that a foam still stood: "still up
// 16:25", "16:25+".
func stillUpAt(text string) (minutes float64, ok bool) {
	clock := clockIn.FindString(text)
	rest := strings.TrimSpace(strings.Replace(text, clock, " ", 1))
	if clock == "" || rest != "+" && rest != ">" && !(event.AtLeast(rest) && len(strings.Fields(rest)) <= 4 && !strings.ContainsAny(rest, "0123456789")) {
		return 0, false
	}
	return scheme.ClockMinutes(nil, sheet.Cell{Kind: sheet.Text, Text: clock})
}

var clockIn = pattern.Of(`\b\d{1,2}[:.h]\d{2}\b`)

// saysWhatHappenedIn takes a word typed in place of a time: "clogged".
func (r *reader) saysWhatHappenedIn(f *scheme.Field) bool {
	events, sure := event.Sure(r.text(f))
	if sure {
		r.addEvents(events, r.cell(f), false)
	}
	return sure && len(events) > 0
}

// laterSquirt writes what a later squirt did into the trial's note.
func (r *reader) laterSquirt() {
	which := ""
	var said []string
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
		text := r.text(f)
		switch {
		case text == "":
		case f.Role == column.Squirt:
			which = text
		case f.Role == column.Note:
			said = append(said, text)
		case perReading(f.Role) || f.Role == column.Spits || f.Extra != "":
			said = append(said, f.Header+" "+text)
		}
	}
	note := "squirt " + which + ": " + strings.Join(said, ", ")
	if len(said) == 0 {
		note += "nothing logged"
	}
	if r.Note != "" {
		note = r.Note + "; " + note
	}
	r.Note = note
	r.say(trial.Note("later squirt", r.s.At(r.row, 0), "squirts of one trial are one trial: the first is used, what is logged of a later one stands in its note",
		"nothing to do; give it a trial number of its own if it was another mix").Once())
}
