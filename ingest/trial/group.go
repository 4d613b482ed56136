package trial

import "slices"

// Alike is what problems have in common that are one thing to mend, and what Grouped groups by.
type Alike struct {
	kind        string
	file, sheet string
	col         int
}

// Alike is the group of a problem.
func (p *Problem) Alike() Alike { return Alike{p.Kind, p.At.File, p.At.Sheet, p.At.Col} }

// Group is the problems of one kind in one column: the first of them, with the
// count of all, and the others that were kept, in the order of the log.
type Group struct {
	Problem
	Others []Problem
}

// Grouped gives one Group for each kind of problem and column. The worst come
// first, then the order of the log.
func Grouped(problems []Problem) []Group {
	var out []Group
	at := map[Alike]int{}
	for _, p := range problems {
		key := p.Alike()
		if i, seen := at[key]; seen {
			g := &out[i]
			g.Count += p.Count
			g.Severity = min(g.Severity, p.Severity)
			g.Others = append(g.Others, p)
			continue
		}
		at[key] = len(out)
		out = append(out, Group{Problem: p})
	}
	slices.SortStableFunc(out, func(a, b Group) int { return int(a.Severity) - int(b.Severity) })
	return out
}
