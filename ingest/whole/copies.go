package whole

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A trial may stand in a log more than once: on a copy of the sheet, in an old
// version, in a list of the best. In one block of a table equal rows are repeats; in another
// table, sheet or file, or below a header of its own, a trial that is equal in every cell of
// its mix and results and bears the same number is a copy, and counts once: where the most
// trials stand together.

// mostCopies is the share of a table's trials that have to be copies before those
// without a number count as copies too; of a table that goes on after a copied part, the share of
// those days that stand in an earlier table.
const mostCopies = 0.8

// block is trials that stand below one header.
type block struct{ table, from, to int }

// blocksOf are the blocks of all tables, the longest first.
func blocksOf(tables []Span) (all []block) {
	for k, t := range tables {
		from := t.From
		for _, next := range append(t.Blocks[:len(t.Blocks):len(t.Blocks)], t.To) {
			if next > from {
				all = append(all, block{k, from, next})
			}
			from = max(from, next)
		}
	}
	slices.SortStableFunc(all, func(a, b block) int { return (b.to - b.from) - (a.to - a.from) })
	return all
}

// Copies finds the trials of tables that repeat those of others; what was wrong with a
// trial's cells, by its index, is part of what it says.
func Copies(trials []trial.Trial, wrong map[int]string, tables []Span) (copies map[int]bool, found []trial.Finding) {
	copies = map[int]bool{}
	seen := map[string][]int{} // what a trial says -> the trials that say it
	days := map[string]bool{}  // of tables looked at
	tableOf := func(i int) int {
		return slices.IndexFunc(tables, func(t Span) bool { return t.From <= i && i < t.To })
	}
	content := func(i int) string { return contentOf(&trials[i]) + wrong[i] }
	blocks := blocksOf(tables)
	for _, b := range blocks {
		var alike, same []int
		known := 0 // trials of days of tables looked at
		for i := b.from; i < b.to && len(seen) > 0; i++ {
			x := &trials[i]
			others := seen[content(i)]
			numbered := slices.ContainsFunc(others, func(k int) bool {
				return x.ID != "" && say.Fold(trials[k].ID) == say.Fold(x.ID) &&
					(tableOf(k) != b.table && says(x) || sameDay(&trials[k], x) || x.Day == trials[k].Day && x.Hold != nil && x.FatPercent != nil)
			})
			if says(x) && slices.ContainsFunc(others, func(k int) bool { return tableOf(k) != b.table }) {
				alike = append(alike, i)
			}
			if days[x.Day] {
				known++
			}
			if numbered {
				same = append(same, i)
			}
		}
		of := b.to - b.from
		if ofDays := slices.DeleteFunc(slices.Clone(alike), func(i int) bool { return !days[trials[i].Day] }); len(ofDays) > len(same) && float64(len(ofDays)) >= mostCopies*float64(known) {
			alike, of = ofDays, known
		}
		if len(alike) > 1 && float64(len(alike)) >= mostCopies*float64(of) {
			same = alike
		}
		for _, i := range same {
			copies[i] = true
		}
		if len(same) > 0 {
			found = append(found, told(trials[same[0]].At, len(same)))
		}
		for i := b.from; i < b.to && len(blocks) > 1; i++ {
			if trials[i].Day != "" {
				days[trials[i].Day] = true
			}
			if !copies[i] {
				key := content(i)
				seen[key] = append(seen[key], i)
			}
		}
	}
	return copies, found
}

// says reports a trial that says enough to be told from others by it.
func says(x *trial.Trial) bool { return x.Hold != nil || x.Drained != nil || len(x.Parts) > 2 }

// sameDay reports trials of one day whose mix is known: of one number and mix they are one
// trial even if little came of it, as where it clogged.
func sameDay(a, b *trial.Trial) bool {
	return a.Day != "" && a.Day == b.Day && len(a.Parts) > 1 && a.FatPercent != nil && a.CameOut != trial.Unknown
}

// contentOf is what a trial says of its mix and results.
func contentOf(x *trial.Trial) string {
	var b strings.Builder
	for i := range x.Parts {
		fmt.Fprintf(&b, "%s %.6g|", say.Fold(x.Parts[i].Name), x.Parts[i].Grams)
	}
	for _, v := range [...]*float64{x.FatPercent, x.EmulsifierPercent, x.EmulsifierGrams, x.BlendHLB} {
		if v != nil {
			fmt.Fprintf(&b, "%.6g", *v)
		}
		b.WriteByte('|')
	}
	for _, v := range [...]*trial.Interval{x.Hold, x.Drained} {
		if v != nil {
			fmt.Fprintf(&b, "%.6g..%.6g", v.Low, v.High)
		}
		b.WriteByte('|')
	}
	fmt.Fprint(&b, x.CameOut, x.Broke)
	return b.String()
}

func told(at trial.Place, n int) trial.Finding {
	text := fmt.Sprintf("%d trials of this table stand elsewhere in the log, equal in every cell of their mix and results, and count once", n)
	if n == 1 {
		text = "this trial stands elsewhere in the log, equal in every cell of its mix and results, and counts once"
	}
	return trial.Note("copies", at, text, "nothing to do; if they were made again, give them numbers of their own")
}
