package ingest

import "slices"

// keptAlike bounds how many problems of one kind in one column are kept one by
// one. Beyond it they are only counted: nobody mends ten thousand cells by
// hand, and a log may have millions.
const keptAlike = 10_000

// alike is what Grouped groups by.
type alike struct {
	kind        string
	file, sheet string
	col         int
}

func (p *Problem) alike() alike { return alike{p.Kind, p.At.File, p.At.Sheet, p.At.Col} }

// problems collects what is found while reading.
type problems struct {
	list  []Problem
	count map[alike]int
	last  map[alike]int // index in list of the last one kept
}

func (ps *problems) add(kind string, s Severity, at Place, read, do string) {
	if ps.count == nil {
		ps.count, ps.last = map[alike]int{}, map[alike]int{}
	}
	p := Problem{Kind: kind, Severity: s, At: at, Count: 1, Read: read, Do: do}
	key := p.alike()
	ps.count[key]++
	if ps.count[key] > keptAlike {
		ps.list[ps.last[key]].Count++
		return
	}
	ps.last[key] = len(ps.list)
	ps.list = append(ps.list, p)
}

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
	at := map[alike]int{}
	for _, p := range problems {
		key := p.alike()
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
