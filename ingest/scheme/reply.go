package scheme

import (
	"strings"

	"foamfield/ingest/event"
	"foamfield/ingest/quantity"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
)

// replies remembers what texts answer, and what they say happened.
type replies struct {
	known map[string]answered
	heard map[string][]event.Event
	kinds map[string]uint8
}

// Events is what a text says happened.
func (s *Scheme) Events(text string) []event.Event {
	events, ok := s.heard[text]
	if !ok {
		events = event.Of(text)
		if s.heard == nil {
			s.heard = map[string][]event.Event{}
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

type answered struct {
	reply.Reply
	err error
}

// Reply is what a cell's text answers, whatever the question.
func (s *Scheme) Reply(text string) (reply.Reply, error) {
	r, ok := s.known[text]
	if !ok {
		r.Reply, r.err = reply.Parse(text)
		if s.known == nil {
			s.known = map[string]answered{}
		}
		if len(s.known) < keptTexts {
			s.known[strings.Clone(text)] = r
		}
	}
	return r.Reply, r.err
}

// Ticks reports whether a text in a column of one answer says that it is the one; it is not ok
// where the text may say anything else.
func (s *Scheme) Ticks(text string) (ticks, ok bool) {
	r, err := s.Reply(text)
	switch {
	case err != nil:
		return false, false
	case r.Sense == reply.Marks:
		return r.Mark != "-" && r.Mark != "0" && r.Mark != "○", !strings.ContainsAny(r.Mark, "23456789")
	case r.Sense == reply.Affirms && r.Answer != reply.Partly:
		return r.Answer == reply.Yes, true
	}
	return false, r.Word == quantity.NotMeasured
}

// Coded writes out the codes of a cell, "C" or "P/S", by what they stand for; false where
// one of them is none.
func Coded(meant map[string]string, text string) (full string, ok bool) {
	if words, known := meant[say.Fold(text)]; known {
		return words, true
	}
	var all []string
	for _, code := range strings.FieldsFunc(say.Fold(text), func(r rune) bool { return strings.ContainsRune("/,;+& ", r) }) {
		words, known := meant[code]
		if !known {
			return "", false
		}
		all = append(all, words)
	}
	return strings.Join(all, ", "), len(all) > 0
}
