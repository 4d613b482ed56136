package ingest

import (
	"slices"

	"foamfield/ingest/kitchen"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// based adds to each table of trials what lines say of all its mixes: the last base above it on
// its sheet, or the only one on sheets without a log.
func (r *reader) based(tables []table, bases []kitchen.Base) {
	logged := func(b kitchen.Base) bool {
		return slices.ContainsFunc(tables, func(t table) bool { _, results := t.half(); return results > 0 && t.at.Sheet == b.At.Sheet })
	}
	var apart []kitchen.Base
	for _, b := range bases {
		if !logged(b) {
			apart = append(apart, b)
		}
	}
	for i := range tables {
		t := &tables[i]
		if _, results := t.half(); results == 0 {
			continue
		}
		var of *kitchen.Base
		if len(apart) == 1 {
			of = &apart[0]
		}
		for k := range bases {
			if b := &bases[k]; b.At.Sheet == t.at.Sheet && b.At.Row < t.found.HeaderRow {
				of = b
			}
		}
		if of == nil {
			continue
		}
		switch clash, ok := of.Into(t.found); {
		case ok:
			r.said.add(trial.Note("said beside the table", of.At, "every mix is taken to have what this base says, beside what its own row says",
				"nothing to do; a column for each of these ingredients wins over it").OnceOf("base " + of.At.String()))
		case clash != "":
			r.said.add(trial.Check("base not used", of.At, "this base has an ingredient that the table has a column of, "+say.Quoted(clash)+", so nothing of the base is counted",
				"add a column for each ingredient of the base").OnceOf("base " + of.At.String()))
		}
	}
}
