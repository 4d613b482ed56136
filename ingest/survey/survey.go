// Package survey looks down the columns of a table before any row is read: what a
// bare 0.45, a 1,200, a tick or a blank means depends on what else stands in its
// column.
package survey

import (
	"foamfield/ingest/column"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// surveyor surveys one table.
type surveyor struct {
	*scheme.Scheme
	kitchen *kitchen.Sheets
	found   []trial.Finding
}

func (m *surveyor) say(f trial.Finding) { m.found = append(m.found, f) }

// Of completes a scheme by what stands in its columns, and says what it noticed.
func Of(s *scheme.Scheme, k *kitchen.Sheets) []trial.Finding {
	m := &surveyor{Scheme: s, kitchen: k}
	m.survey()
	m.RestUnlogged = m.restUnlogged()
	m.trials()
	return m.found
}

// trials keeps the numbers of the table's trials, where notes may speak of them.
func (m *surveyor) trials() {
	id := m.Find(column.TrialID)
	if id == nil || m.Find(column.Note) == nil {
		return
	}
	m.Trials = make(map[string]bool, m.Rows())
	for n := range m.Rows() {
		if text := m.Text(n, id.Col); text != "" {
			_, twice := m.Trials[say.Fold(text)]
			m.Trials[say.Fold(text)] = !twice // a number that comes again every day is nobody's
		}
	}
}
