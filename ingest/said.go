package ingest

import "foamfield/ingest/trial"

// keptAlike bounds how many problems of one kind in one column are kept one by one.
// Beyond it they are only counted: nobody mends ten thousand cells by hand, and a
// log may have millions.
const keptAlike = 10_000

// said collects the findings of all rooms as problems and questions.
type said struct {
	list      []trial.Problem
	questions []trial.Question
	count     map[trial.Alike]int
	last      map[trial.Alike]int // index in list of the last one kept
	told      map[about]int       // index in list of what is said once
	asked     map[string]bool
}

// about is what a finding that is said once is about.
type about struct {
	kind, file, sheet, name string
	col                     int
}

func (s *said) add(found ...trial.Finding) {
	for i := range found {
		s.one(&found[i])
	}
}

func (s *said) one(f *trial.Finding) {
	if s.count == nil {
		s.count, s.last, s.told, s.asked = map[trial.Alike]int{}, map[trial.Alike]int{}, map[about]int{}, map[string]bool{}
	}
	switch f.Scope {
	case trial.OnceAColumn:
		key := about{kind: f.Kind, file: f.At.File, sheet: f.At.Sheet, col: f.At.Col}
		if i, again := s.told[key]; again {
			s.list[i].Count++
			return
		}
		s.told[key] = len(s.list)
	case trial.OnceAName:
		key := about{kind: f.Kind, file: f.At.File, name: f.Name}
		if _, again := s.told[key]; again {
			return
		}
		s.told[key] = len(s.list)
	}
	if f.Ask != nil {
		if key := f.Ask.Cure.Sheet + "\x00" + f.Ask.Cure.Row[0] + "\x00" + f.Kind; !s.asked[key] {
			s.asked[key] = true
			s.questions = append(s.questions, *f.Ask)
		}
	}
	alike := f.Alike()
	s.count[alike]++
	if s.count[alike] > keptAlike {
		s.list[s.last[alike]].Count++
		return
	}
	s.last[alike] = len(s.list)
	s.list = append(s.list, f.Problem)
}

// first puts a problem before all others.
func (s *said) first(p trial.Problem) { s.list = append([]trial.Problem{p}, s.list...) }
