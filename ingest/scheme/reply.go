package scheme

import (
	"strings"

	"foamfield/ingest/quantity"
)

// replies remembers what texts answer, and what they say happened.
type replies struct {
	known map[string]reply
	heard map[string][]quantity.Event
	kinds map[string]uint8
}

// Events is what a text says happened.
func (s *Scheme) Events(text string) []quantity.Event {
	events, ok := s.heard[text]
	if !ok {
		events = quantity.Events(text)
		if s.heard == nil {
			s.heard = map[string][]quantity.Event{}
		}
		if len(s.heard) < keptTexts {
			s.heard[strings.Clone(text)] = events
		}
	}
	return events
}

// Kind is what work makes of a remark's words; the same remarks come again and again.
func (s *Scheme) Kind(text string, work func(string) uint8) uint8 {
	kind, ok := s.kinds[text]
	if !ok {
		kind = work(text)
		if s.kinds == nil {
			s.kinds = map[string]uint8{}
		}
		if len(s.kinds) < keptTexts {
			s.kinds[strings.Clone(text)] = kind
		}
	}
	return kind
}

type reply struct {
	quantity.Reply
	err error
}

// Reply is what a cell's text answers, whatever the question.
func (s *Scheme) Reply(text string) (quantity.Reply, error) {
	r, ok := s.known[text]
	if !ok {
		r.Reply, r.err = quantity.ParseReply(text)
		if s.known == nil {
			s.known = map[string]reply{}
		}
		if len(s.known) < keptTexts {
			s.known[strings.Clone(text)] = r
		}
	}
	return r.Reply, r.err
}
