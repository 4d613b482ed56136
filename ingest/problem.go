package ingest

import "foamfield/ingest/trial"

// keptAlike bounds how many problems of one kind in one column are kept one by
// one. Beyond it they are only counted: nobody mends ten thousand cells by
// hand, and a log may have millions.
const keptAlike = 10_000

// problems collects what is found while reading.
type problems struct {
	list  []trial.Problem
	count map[trial.Alike]int
	last  map[trial.Alike]int // index in list of the last one kept
}

func (ps *problems) add(kind string, s trial.Severity, at trial.Place, read, do string) {
	if ps.count == nil {
		ps.count, ps.last = map[trial.Alike]int{}, map[trial.Alike]int{}
	}
	p := trial.Problem{Kind: kind, Severity: s, At: at, Count: 1, Read: read, Do: do}
	key := p.Alike()
	ps.count[key]++
	if ps.count[key] > keptAlike {
		ps.list[ps.last[key]].Count++
		return
	}
	ps.last[key] = len(ps.list)
	ps.list = append(ps.list, p)
}
