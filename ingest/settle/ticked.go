package settle

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/reply"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// Some logs have a column for each answer, "came out | in part | clogged", and a cross in the
// one that is true. Such columns stand side by side, their headers answer one question, each
// in another way, and hardly a row has two crosses.

// ticked finds the columns of one answer each, by their index among the heads.
func (m *maker) ticked() map[int]answerOf {
	found := map[int]answerOf{}
	for _, q := range [...]column.Role{column.CameOut, column.Broke} {
		var run []int
		var answers []trial.Answer
		for k := 0; k <= len(m.Found.Heads); k++ {
			if k < len(m.Found.Heads) && !m.declaredByKitchen(k) {
				if a := m.headAnswers(q, k); a != trial.Unknown {
					run, answers = append(run, k), append(answers, a)
					continue
				}
			}
			if m.oneInEachRow(q, run, answers) {
				for i, k := range run {
					found[k] = answerOf{q, answers[i]}
				}
			}
			run, answers = nil, nil
		}
	}
	return found
}

// answerOf is what a cross in a column answers, and to which question.
type answerOf struct {
	question column.Role
	answer   trial.Answer
}

var answerTo = [...]trial.Answer{reply.NoAnswer: trial.Unknown, reply.Yes: trial.Yes, reply.Partly: trial.Partly, reply.No: trial.No}

// headAnswers is what a header answers to a question, all of its words: "pas tranché", or "yes"
// in the group "came out".
func (m *maker) headAnswers(question column.Role, k int) trial.Answer {
	q := reply.CameOut
	if question == column.Broke {
		q = reply.Split
	}
	text := m.Found.Heads[k].Text
	if at := strings.LastIndex(text, " / "); at >= 0 {
		if group := column.Read(text[:at]); group.Role == question && !group.Reversed {
			text = text[at+len(" / "):]
		}
	}
	a, _ := reply.Explained(q, text)
	return answerTo[a]
}

// oneInEachRow reports columns of which nearly every row that has a cross has one, and of which
// one at least names what happened: "yes | no" alone is of no question.
func (m *maker) oneInEachRow(question column.Role, run []int, answers []trial.Answer) bool {
	named := false
	for i, k := range run {
		named = named || len(event.Of(m.Found.Heads[k].Text)) > 0 || column.Read(m.Found.Heads[k].Text).Role == question
		if slices.Contains(answers[:i], answers[i]) {
			return false
		}
	}
	if len(run) < 2 || !named {
		return false
	}
	rows, several := 0, 0
	for n := range m.Rows() {
		crosses := 0
		for _, k := range run {
			c := m.Cell(n, k+1)
			if c.Kind == sheet.Blank {
				continue
			}
			ticks, ok := m.Ticks(m.Found.Sheet.Display(c))
			if !ok {
				return false
			}
			if ticks {
				crosses++
			}
		}
		if crosses > 0 {
			rows++
		}
		if crosses > 1 {
			several++
		}
	}
	return rows >= 2 && 8*several <= rows
}
