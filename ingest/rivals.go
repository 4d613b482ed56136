package ingest

import (
	"slices"
	"strings"

	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// rivalry is what becomes of a column whose role another has too.
type rivalry uint8

const (
	noRival      rivalry = iota
	setAside             // it and its rivals differ: neither is used
	speaksForAll         // it says all that its rivals say
	sameAgain            // another says all that it says
)

// settleRivals decides between columns with one role, by their index among the
// table's heads. Under the same header, one that says everything the others say
// stands for them; else none is used, as nobody can know which one is meant.
func (r *reader) settleRivals(t *table) map[int]rivalry {
	settled := map[int]rivalry{}
	for i := range t.found.Heads {
		all := t.found.Heads[i].Meaning.Rivals
		if len(all) == 0 || all[0] != i {
			continue
		}
		rivals := slices.DeleteFunc(slices.Clone(all), func(k int) bool { return r.declared(t, k) })
		if len(rivals) < 2 {
			for _, k := range rivals {
				settled[k] = speaksForAll
			}
			continue
		}
		speaker := -1
		if !slices.ContainsFunc(rivals, func(k int) bool { return t.words(k) != t.words(rivals[0]) }) {
			speaker = slices.IndexFunc(rivals, func(k int) bool { return t.saysAll(k, rivals) })
		}
		named := t.named(rivals)
		if speaker < 0 {
			for _, k := range rivals {
				settled[k] = setAside
			}
			r.problem("two columns for one thing", trial.MustFix, t.heading(rivals[0]+1),
				named+" both say "+t.found.Heads[i].Meaning.Else.String()+" and do not say the same, so none of them is used",
				"delete the one that is wrong, or rename the one that is something else")
			continue
		}
		for _, k := range rivals {
			settled[k] = sameAgain
		}
		used := rivals[speaker]
		settled[used] = speaksForAll
		r.problem("column twice", trial.ForInformation, t.heading(used+1), named+" say the same; "+t.cellOfHead(used)+" is used", "delete the other column")
	}
	return settled
}

// declared reports whether the kitchen itself says what a column is.
func (r *reader) declared(t *table, head int) bool {
	h := &t.found.Heads[head]
	d, ok := r.kitchen.columns[fold(h.Text)]
	if !ok {
		d = r.kitchen.columns[fold(h.Meaning.Words)]
	}
	return d.words != ""
}

// words are a header's own and those of the group it stands in.
func (t *table) words(head int) string {
	h := &t.found.Heads[head]
	return fold(h.Text) + "\x00" + fold(h.Meaning.Words)
}

// saysAll reports whether a column has every value that any of the others has.
func (t *table) saysAll(head int, others []int) bool {
	for n := range t.found.Rows {
		own := cellText(t.sheet, t.cell(n, head+1))
		for _, o := range others {
			if c := t.cell(n, o+1); o != head && c.Kind != sheet.Blank && cellText(t.sheet, c) != own {
				return false
			}
		}
	}
	return true
}

// named lists columns by the cell and text of their headers: D1 “hold min” and
// F1 “hold min”.
func (t *table) named(heads []int) string {
	var names []string
	for _, k := range heads {
		names = append(names, t.cellOfHead(k)+" "+quoted(t.found.Heads[k].Text))
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func (t *table) cellOfHead(k int) string {
	h := &t.found.Heads[k]
	return sheet.CellName(h.Row, h.Col)
}
