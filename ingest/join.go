package ingest

import (
	"maps"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/outcome"
	"foamfield/ingest/row"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// Some kitchens keep the mix in one table and what happened in another. Joined by
// trial number they are trials; a table that cannot be joined stays as it is.

// pair is a table of mixes with the table of their results.
type pair struct{ mix, results *table }

// pairs finds the tables of a file that are two halves of the same trials.
func (r *reader) pairs(tables []table) (out []pair) {
	used := map[*table]bool{}
	for i := range tables {
		mix := &tables[i]
		if m, results := mix.half(); m == 0 || results > 0 {
			continue
		}
		for j := range tables {
			results := &tables[j]
			if m, n := results.half(); m > 0 || n == 0 || used[results] || !sameTrials(mix, results) {
				continue
			}
			used[results] = true
			out = append(out, pair{mix, results})
			break
		}
	}
	return out
}

// sameTrials reports whether most rows of two tables bear the same trial numbers,
// each once.
func sameTrials(a, b *table) bool {
	ids, others := idsOf(a), idsOf(b)
	if ids == nil || others == nil {
		return false
	}
	both := 0
	for id := range ids {
		if _, ok := others[id]; ok {
			both++
		}
	}
	return both >= 2 && 2*both > len(ids) && 2*both > len(others)
}

// repeats reports whether nearly all rows of a table bear trial numbers of another.
func repeats(t, of *table) bool {
	ids, others := idsOf(t), idsOf(of)
	both := 0
	for id := range ids {
		if _, ok := others[id]; ok {
			both++
		}
	}
	return both >= 2 && 5*both >= 4*len(ids)
}

// idsOf are the rows of a table by their trial's number; nil where one comes twice.
func idsOf(t *table) map[string]int {
	head := t.found.Find(column.TrialID)
	if head < 0 {
		return nil
	}
	ids := map[string]int{}
	for n := range t.found.Rows {
		c, _ := t.found.Cell(n, head)
		id := t.found.Sheet.Display(c)
		if _, twice := ids[id]; twice && !t.found.PerReading {
			return nil
		}
		if _, again := ids[id]; !again && id != "" {
			ids[id] = n
		}
	}
	return ids
}

// readJoined reads the trials of two tables, each its own half.
func (r *reader) readJoined(p pair) {
	from := len(r.log.Trials)
	names := scheme.NamesOf(p.mix.at, p.mix.found, r.several)
	head := p.results.found.Find(column.TrialID)
	results := map[string]*row.Line{}
	for rows := range row.Groups(p.results.found) {
		c, _ := p.results.found.Cell(rows[0], head)
		l := &row.Line{}
		l.Read(p.results.scheme, rows)
		results[p.results.found.Sheet.Display(c)] = l
	}
	for rows := range row.Groups(p.mix.found) {
		if !r.wanted(p.mix, rows[0]) {
			r.filtered++
			r.log.Rows.Read -= len(rows)
			continue
		}
		l := &row.Line{}
		l.Read(p.mix.scheme, rows)
		happened, ok := results[l.ID]
		if !ok {
			r.take(p.mix, l, p.mix.scheme, outcome.Seen{Row: rows[0]}, names)
			continue
		}
		delete(results, l.ID)
		join(l, happened)
		r.take(p.mix, l, p.results.scheme, happened.Seen, names)
	}
	r.said.add(trial.Note("mix and results joined", p.results.scheme.At(0, 0), "the results of this table are joined to the mixes of "+p.mix.at.String()+" by their trial number", "nothing to do"))
	for _, id := range slices.SortedFunc(maps.Keys(results), func(a, b string) int { return results[a].At.Row - results[b].At.Row }) {
		r.said.add(trial.Check("results without a mix", results[id].At, "no mix bears the number "+id, "give the mix the same number"))
	}
	r.tables = append(r.tables, whole.Span{At: p.mix.at, From: from, To: len(r.log.Trials)})
	// The rows of the results are parts of their trials.
	r.log.Rows.Furniture += len(p.results.found.Rows)
	p.mix.scheme, p.results.scheme = nil, nil
}

// join takes what the other half of a trial says beside its results.
func join(l, other *row.Line) {
	for _, text := range [...]struct{ into, from *string }{{&l.Day, &other.Day}, {&l.Cook, &other.Cook}, {&l.Student, &other.Student}, {&l.Canister, &other.Canister}, {&l.Void, &other.Void}} {
		if *text.into == "" {
			*text.into = *text.from
		}
	}
	if other.Note != "" && l.Note != "" {
		l.Note += "; "
	}
	l.Note += other.Note
	l.Extras = append(l.Extras, other.Extras...)
	l.Raw = append(l.Raw, other.Raw...)
	l.NotMade = l.NotMade || other.NotMade
	l.Findings = append(l.Findings, other.Findings...)
}
