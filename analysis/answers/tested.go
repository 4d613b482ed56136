package answers

import "foamfield/analysis/result"

// testedRange is where the trials support a statement; a reader can hold any mix against it.
func (s *Ground) testedRange() *result.TestedRange {
	t := s.Search.Tested
	out := &result.TestedRange{Low: map[string]float64{}, High: map[string]float64{}, Terms: [][]string{}}
	for i, v := range s.Vars {
		out.Low[v.Name], out.High[v.Name] = t.Low[i], t.High[i]
	}
	for _, term := range s.Basis.Terms {
		names := []string{}
		for _, i := range term {
			names = append(names, s.Vars[i].Name)
		}
		out.Terms = append(out.Terms, names)
	}
	out.Inverse, out.Most = t.Form()
	return out
}
