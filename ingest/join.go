package ingest

import (
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/outcome"
	"foamfield/ingest/row"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/whole"
)

// Some kitchens keep the mix in one table and what happened in another. Joined by
// trial number they are trials; a table that cannot be joined stays as it is.

// pair is a table of mixes with the table of their results, and the heads of both by which they
// belong together: the trial's number, or the recipe that several tests were made of.
type pair struct {
	mix, results *table
	is, of       int
	once         bool // each mix has one result at most, and is its trial
}

// pairs finds the tables of a file that are two halves of the same trials. Of several tables
// with these mixes that which says most of them is theirs; another is what was planned.
func pairs(tables []table) (out []pair) {
	used := map[*table]bool{}
	for i := range tables {
		best, most := pair{results: &tables[i]}, 0
		if mix, results := tables[i].half(); mix > 0 || results == 0 {
			continue
		}
		for j := range tables {
			mix := &tables[j]
			n, results := mix.half()
			if n <= most || results > 0 || used[mix] {
				continue
			}
			if p, ok := together(mix, best.results); ok {
				best, most = p, n
			}
		}
		if best.mix != nil {
			used[best.mix] = true
			out = append(out, best)
		}
	}
	return out
}

// additions finds the tables of results that name the trials of a fuller table of mixes and weigh
// something beside it that makes no mix by itself: a gum, or what nobody knows.
func additions(tables []table) {
	for i := range tables {
		t := &tables[i]
		if more, results := t.half(); more > 0 && results > 0 && t.onlyAdds() {
			t.adds = slices.ContainsFunc(tables, func(o table) bool {
				mix, results := o.half()
				_, ok := together(&o, t)
				return results == 0 && mix > more && ok
			})
		}
	}
}

// onlyAdds reports a table of which no amount is of a fat, a water part or an emulsifier.
func (t *table) onlyAdds() bool {
	for i := range t.found.Heads {
		switch m := &t.found.Heads[i].Meaning; m.Role {
		case column.PhaseRatio, column.EmulsifierAmount, column.FatPercent, column.BlendHLB:
			return false
		case column.IngredientAmount:
			if what, ok := ingredient.Lookup(m.Ingredient); ok && what.Kind != ingredient.Thickener && what.Kind != ingredient.Other {
				return false
			}
		}
	}
	return true
}

// plannedFor is the pair whose mixes have the numbers of a table without results: what was meant
// to be weighed; nil if there is none.
func plannedFor(t *table, joined []pair) *pair {
	if mix, results := t.half(); mix == 0 || results > 0 || slices.ContainsFunc(joined, func(p pair) bool { return p.mix == t }) {
		return nil
	}
	for i := range joined {
		if repeats(t, joined[i].mix) {
			return &joined[i]
		}
	}
	return nil
}

// together pairs a table of mixes with one of results that names them: by the trials' numbers,
// each once, or by what it calls the recipe.
func together(mix, results *table) (pair, bool) {
	p := pair{mix: mix, results: results, is: mix.found.Find(column.TrialID), of: results.found.Find(column.TrialID), once: true}
	if sameTrials(mix, results) {
		return p, true
	}
	p.once = false
	if p.is < 0 {
		p.is = mix.found.Find(column.Dish)
	}
	mixes := idsBy(mix, p.is)
	if mixes == nil {
		return p, false
	}
	for p.of = range results.found.Heads {
		head := &results.found.Heads[p.of]
		if role := head.Meaning.Role; role != column.TrialID && role != column.Dish && say.Fold(head.Text) != say.Fold(mix.found.Heads[p.is].Text) {
			continue
		}
		known, rows, distinct := 0, 0, map[string]bool{}
		for n := range results.found.Rows {
			c, _ := results.found.Cell(n, p.of)
			id := results.found.Sheet.Display(c)
			if id == "" {
				continue
			}
			rows++
			if _, ok := mixes[id]; ok {
				known++
				distinct[id] = true
			}
		}
		if len(distinct) >= 2 && 5*known >= 4*rows {
			return p, true
		}
	}
	return p, false
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
func idsOf(t *table) map[string]int { return idsBy(t, t.found.Find(column.TrialID)) }

// idsBy is the same by any head.
func idsBy(t *table, head int) map[string]int {
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

// readJoined reads the trials of two tables, each its own half. A mix of which no result tells is a
// trial all the same, if each is one.
func (r *reader) readJoined(p pair) {
	from := len(r.log.Trials)
	names := scheme.NamesOf(p.mix.at, p.mix.found, r.several)
	mixes := idsBy(p.mix, p.is)
	results := map[string][]*row.Line{}
	var strays []*row.Line
	for rows := range row.Groups(p.results.found) {
		c, _ := p.results.found.Cell(rows[0], p.of)
		l := &row.Line{}
		l.Read(p.results.scheme, rows)
		id := p.results.found.Sheet.Display(c)
		if _, known := mixes[id]; known {
			results[id] = append(results[id], l)
		} else {
			strays = append(strays, l)
		}
	}
	for rows := range row.Groups(p.mix.found) {
		if !r.wanted(p.mix, rows[0]) {
			r.filtered++
			r.log.Rows.Read -= len(rows)
			continue
		}
		l := &row.Line{}
		l.Read(p.mix.scheme, rows)
		c, _ := p.mix.found.Cell(rows[0], p.is)
		happened := results[p.mix.found.Sheet.Display(c)]
		if len(happened) == 0 {
			r.take(p.mix, l, p.mix.scheme, outcome.Seen{Row: rows[0]}, names)
			continue
		}
		for k, h := range happened {
			if k > 0 { // the same mix once more: what is to be said of its cells was said
				l = &row.Line{}
				l.Read(p.mix.scheme, rows)
				l.Findings = nil
			}
			if !p.once { // the test is the trial, the recipe no dish
				l.At, l.Rows, l.Dish = h.At, h.Rows, ""
				if h.ID != "" {
					l.ID, l.OwnID = h.ID, h.OwnID
				}
			}
			join(l, h)
			l.Findings = append(l.Findings, added(&l.Recipe, &h.Recipe, p)...)
			r.take(p.mix, l, p.results.scheme, h.Seen, names)
		}
	}
	r.said.add(trial.Note("mix and results joined", p.results.scheme.At(0, 0), "the results of this table are joined to the mixes of "+p.mix.at.String()+" by "+say.Quoted(p.results.found.Heads[p.of].Text), "nothing to do"))
	for i := range p.results.scheme.Fields {
		if f := &p.results.scheme.Fields[i]; f.Role == column.IngredientAmount && !f.Kindless {
			r.said.add(trial.Check("weighed beside the results", p.results.scheme.Heading(f.Col), say.Quoted(f.Header)+" is read as part of the mixes that this table is joined to", "nothing to do, unless it is no part of them: then type it on a sheet Columns as \"ignore\""))
		}
	}
	for _, l := range strays {
		r.said.add(trial.Check("results without a mix", l.At, "no mix bears "+say.Quoted(l.ID), "give the mix the same number"))
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

// added puts what was weighed beside the results into the mix. An emulsifier or a percent that
// stands there can only be reckoned with beside the others, so it leaves the mix unknown.
func added(mix, beside *compose.Recipe, p pair) (said []trial.Finding) {
	for _, d := range beside.Doses {
		if !d.InGrams || d.What.WeighedAsEmulsifier() || d.What.NeedsFatPercent() {
			mix.Open = append(mix.Open, compose.Open{What: d.What, Kindless: d.Kindless})
			said = append(said, trial.Fix("weighed beside the results", p.results.scheme.Heading(d.Col), say.Quoted(d.Name)+" stands beside the results, so the mix it went into is not worked out",
				"give it a column in the table of mixes").Once())
			continue
		}
		d.Col = 0 // of no column of the mix
		mix.Doses = append(mix.Doses, d)
	}
	mix.Open = append(mix.Open, beside.Open...)
	return said
}
