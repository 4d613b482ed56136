package ingest

import (
	"fmt"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// numbered is a trial with a number of its own: its index in the log, and its
// row of the table.
type numbered struct{ trial, row int32 }

// sayTwice says which trial numbers are typed for two trials. Numbers that start
// again every day or for every student are meant so, and where most are shared
// they name formulas, not trials.
func (r *reader) sayTwice(t *table, trials []numbered) {
	for _, key := range [...]func(*trial.Trial) string{
		func(x *trial.Trial) string { return x.ID },
		func(x *trial.Trial) string { return x.ID + "\x00" + x.Day + "\x00" + x.Student },
	} {
		first := make(map[string]numbered, len(trials))
		var again [][2]numbered
		most := max(1, len(trials)/10)
		for _, c := range trials {
			k := key(&r.log.Trials[c.trial])
			if f, seen := first[k]; !seen {
				first[k] = c
			} else if again = append(again, [2]numbered{f, c}); len(again) > most {
				break
			}
		}
		if len(again) > most {
			continue
		}
		for _, pair := range again {
			col := t.found.Find(column.TrialID) + 1
			at, id := t.at(int(pair[0].row), col), r.log.Trials[pair[1].trial].ID
			r.problem("trial number twice", trial.PleaseLook, t.at(int(pair[1].row), col),
				fmt.Sprintf("trial %s stands in %s too", quoted(id), sheet.CellName(at.Row, at.Col)),
				fmt.Sprintf("type %s here, or, if it is trial %s made again, leave the number and write “repeat of %s” in the notes; both count as trials",
					r.freeNumber(trials, pair[1]), id, id))
		}
		return
	}
}

// freeNumber is the number that fits a trial that bears another's: the one
// between its neighbours, else the next after all.
func (r *reader) freeNumber(trials []numbered, c numbered) string {
	used := map[int]bool{}
	highest, before := 0, 0
	for _, o := range trials {
		n, err := strconv.Atoi(r.log.Trials[o.trial].ID)
		if err != nil {
			return "a number of its own"
		}
		if used[n] = true; o.row < c.row {
			before = n
		}
		highest = max(highest, n)
	}
	if !used[before+1] {
		return strconv.Itoa(before + 1)
	}
	return strconv.Itoa(highest + 1)
}

// ownNumber reports a trial that bears a number of its own: none when it is
// taken from above, when rows are readings or squirts of one trial, or when a
// column or the note says that it is a repeat.
func (b *row) ownNumber(t *trial.Trial) bool {
	head := b.table.found.Find(column.TrialID)
	if head < 0 || len(b.rows) != 1 || t.Raw["repeat"] != "" || !strings.ContainsAny(t.ID, "0123456789") {
		return false
	}
	_, filled := b.table.found.Cell(b.rows[0], head)
	return !filled
}
