package whole

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// A trial may stand in a log more than once: on a copy of the sheet, in an old
// version, in a list of the best. In one table equal rows are repeats; in another
// table, sheet or file a trial that is equal in every cell of its mix and results
// and bears the same number is a copy, and counts once.

// mostCopies is the share of a table's trials that have to be copies before those
// without a number count as copies too; of a table that goes on after a copied part, the share of
// those days that stand in an earlier table.
const mostCopies = 0.8

// Copies finds the trials of later tables that repeat those of earlier ones; what
// was wrong with a trial's cells, by its index, is part of what it says.
func Copies(trials []trial.Trial, wrong map[int]string, tables []Span) (copies map[int]bool, found []trial.Finding) {
	copies = map[int]bool{}
	seen := map[string][]int{} // what a trial says -> the trials that say it
	days := map[string]bool{}  // of earlier tables
	content := func(i int) string { return contentOf(&trials[i]) + wrong[i] }
	for _, t := range tables {
		var alike, same []int
		known := 0 // trials of days of earlier tables
		for i := t.From; i < t.To && len(seen) > 0; i++ {
			x := &trials[i]
			earlier := seen[content(i)]
			numbered := slices.ContainsFunc(earlier, func(k int) bool {
				return x.ID != "" && say.Fold(trials[k].ID) == say.Fold(x.ID) && (says(x) || sameDay(&trials[k], x))
			})
			if len(earlier) > 0 && says(x) {
				alike = append(alike, i)
			}
			if days[x.Day] {
				known++
			}
			if numbered {
				same = append(same, i)
			}
		}
		of := t.To - t.From
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
		for i := t.From; i < t.To && len(tables) > 1; i++ {
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
