package survey

import (
	"fmt"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// A tick, a cross or a plus says something only beside the other marks of its
// column: it affirms what the header asks, or it calls the foam good or bad. The
// column decides, with what the other results say; where that cannot settle it,
// it is asked.

// fault reports a question to which yes is bad news.
func fault(r column.Role) bool { return r != column.CameOut }

// marks counts what a column is marked with.
type marks struct {
	order  []string
	rows   map[string][]int
	affirm int // rows that say yes, no or partly in words
	yes    int
	no     int
	blank  int
}

func (m *surveyor) marksOf(f *scheme.Field) marks {
	out := marks{rows: map[string][]int{}}
	for n := range m.Rows() {
		c := m.Cell(n, f.Col)
		if c.Kind == sheet.Blank {
			out.blank++
			continue
		}
		r, err := m.Reply(m.Found.Sheet.Display(c))
		switch {
		case err != nil:
		case r.Sense == reply.Marks:
			if out.rows[r.Mark] == nil {
				out.order = append(out.order, r.Mark)
			}
			out.rows[r.Mark] = append(out.rows[r.Mark], n)
		case r.Sense == reply.Affirms:
			out.affirm++
			if r.Answer == reply.No {
				out.no++
			} else if r.Answer != reply.NoAnswer {
				out.yes++
			}
		}
	}
	return out
}

// settleReplies decides what the marks of a column answer, and whether a blank in
// it is a no.
func (m *surveyor) settleReplies(f *scheme.Field) {
	if f.Ticked != trial.Unknown {
		return
	}
	if f.Marks == nil && m.legend(f) {
		return
	}
	m.letterOfPart(f)
	seen := m.marksOf(f)
	if f.Marks == nil && len(seen.order) > 0 {
		m.settleMarks(f, seen)
	}
	yes, no := seen.yes, seen.no
	for _, mark := range seen.order {
		switch f.Marks[mark] {
		case trial.No:
			no += len(seen.rows[mark])
		case trial.Yes, trial.Partly:
			yes += len(seen.rows[mark])
		}
	}
	if f.Reversed {
		yes, no = no, yes
	}
	f.BlankIsNo = fault(f.Role) && !f.Reversed && yes > 0 && no == 0 && seen.blank > 0
	if f.BlankIsNo {
		m.say(trial.Note("blank read as no", m.Heading(f.Col), fmt.Sprintf("%s is only ever marked, never denied: an empty cell is read as no", say.Quoted(f.Header)),
			"type no where it did not happen, and leave empty what nobody looked at"))
	}
}

// affirming are the marks that say yes and no where they stand together, the first
// of each pair yes.
var affirming = [][2]string{{"+", "-"}, {"1", "0"}, {"✓", "✗"}, {"✓", "x"}, {"✓", "-"}, {"✓", "0"}, {"x", "-"}, {"x", "0"}, {"o", "x"}, {"●", "○"}, {"1", "-"}}

// plainMarks are the marks that need no other beside them to be understood.
var plainMarks = map[string]trial.Answer{
	"✓": trial.Yes, "+": trial.Yes, "1": trial.Yes,
	"-": trial.No, "0": trial.No, "○": trial.No,
}

// settleMarks finds what each mark of a column answers.
func (m *surveyor) settleMarks(f *scheme.Field, seen marks) {
	ways := m.waysToRead(f, seen)
	fits := slices.DeleteFunc(slices.Clone(ways), func(w map[string]trial.Answer) bool { return m.contradicted(f, seen, w) })
	switch {
	case len(fits) == 1 || len(fits) > 1 && allAlike(fits):
		f.Marks = fits[0]
		if len(ways) > 1 {
			m.say(trial.Note("marks read", m.Heading(f.Col), fmt.Sprintf("in %s %s, as the other results show", say.Quoted(f.Header), described(seen.order, f.Marks)),
				"nothing to do, or type yes and no"))
		}
	default:
		m.askMarks(f, seen.order)
	}
}

// waysToRead are the readings of a column's marks that a person would think of.
func (m *surveyor) waysToRead(f *scheme.Field, seen marks) []map[string]trial.Answer {
	if len(seen.order) == 1 {
		return waysOfOne(seen.order[0], seen.affirm > 0)
	}
	for _, pair := range affirming {
		stranger := func(mark string) bool { return mark != pair[0] && mark != pair[1] }
		if !slices.ContainsFunc(seen.order, stranger) {
			return waysOfPair(f.Role, seen, pair[0], pair[1])
		}
	}
	return nil
}

// waysOfOne are the readings of the only mark of a column.
func waysOfOne(mark string, amongWords bool) []map[string]trial.Answer {
	answer, plain := plainMarks[mark]
	if !plain {
		if amongWords {
			return nil // a lone x among words may be either
		}
		answer = trial.Yes
	}
	return []map[string]trial.Answer{{mark: answer}}
}

// waysOfPair are the readings of two marks: the first affirms what the header asks,
// or it denies it, as a tick that calls the foam good denies that it broke.
func waysOfPair(r column.Role, seen marks, first, second string) []map[string]trial.Answer {
	affirms := map[string]trial.Answer{first: trial.Yes, second: trial.No}
	denies := map[string]trial.Answer{first: trial.No, second: trial.Yes}
	mostTicked := first == "✓" && len(seen.rows[first]) > len(seen.rows[second])
	switch {
	case r == column.CameOut, mostTicked: // most are ticked: it broke, or it is fine?
		return []map[string]trial.Answer{affirms, denies}
	case first == "o": // a ring is good and a cross is bad, or a cross marks the fault
		return []map[string]trial.Answer{denies}
	}
	return []map[string]trial.Answer{affirms}
}

// contradicted reports whether a reading of the marks would have results of foams
// that did not come out, or none of those that did.
func (m *surveyor) contradicted(f *scheme.Field, seen marks, way map[string]trial.Answer) bool {
	if f.Role != column.CameOut && f.Role != column.Clogged {
		return false
	}
	for mark, rows := range seen.rows {
		out := way[mark]
		if (f.Role == column.Clogged) != f.Reversed {
			out = opposite(out)
		}
		with := 0
		for _, n := range rows {
			if m.hasResults(n) {
				with++
			}
		}
		if out == trial.No && 2*with > len(rows) || out == trial.Yes && 2*with < len(rows) {
			return true
		}
	}
	return false
}

func opposite(a trial.Answer) trial.Answer {
	return [...]trial.Answer{trial.Unknown, trial.No, trial.Partly, trial.Yes}[a]
}

// hasResults reports whether a row has a hold or a drainage.
func (m *surveyor) hasResults(row int) bool {
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role != column.Hold && f.Role != column.DrainedAmount && f.Role != column.GoneBy && f.Role != column.HoldOver {
			continue
		}
		if r, err := m.ParseText(scheme.CellText(m.Found.Sheet, m.Cell(row, f.Col)), m.Cell(row, f.Col).Kind, f); err == nil && r.Word == quantity.NoWord && r.High > 0 {
			return true
		}
	}
	return false
}

func allAlike(ways []map[string]trial.Answer) bool {
	for _, w := range ways[1:] {
		for mark, a := range w {
			if ways[0][mark] != a {
				return false
			}
		}
	}
	return true
}

// described says what marks were read as.
func described(order []string, as map[string]trial.Answer) string {
	var parts []string
	for _, mark := range order {
		parts = append(parts, fmt.Sprintf("%s is read as %s", say.Quoted(mark), as[mark]))
	}
	return say.List(parts)
}

// askMarks asks what the marks of a column answer.
func (m *surveyor) askMarks(f *scheme.Field, order []string) {
	f.Marks = map[string]trial.Answer{}
	var quoted, choices []string
	for _, mark := range order {
		quoted = append(quoted, say.Quoted(mark))
		choices = append(choices, f.Role.Plain()+", "+mark+" is yes")
	}
	m.say(trial.Fix("marks not settled", m.Heading(f.Col), fmt.Sprintf("%s holds the marks %s, and nothing here says which of them is a yes", say.Quoted(f.Header), say.List(quoted)),
		fmt.Sprintf("type yes and no, or add a sheet Columns with the header \"Header in the log | Meaning\" and the row \"%s | %s\"", f.Header, choices[0])).Asking(trial.Question{Asked: fmt.Sprintf("Which mark in %s is a yes?", say.Quoted(f.Header)), Choices: choices,
		Blocks: f.Role == column.CameOut || f.Role == column.Clogged,
		Cure:   trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open}}}))
}
