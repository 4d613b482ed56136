package ingest

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// idCell is a trial's number as typed, and where.
type idCell struct {
	id, day, student string
	col              int // of the table
	row              int // of the table
}

// sayTwice says which trial numbers are typed for two trials. Numbers that start
// again every day or for every student are meant so, and where most are shared
// they name formulas, not trials.
func (r *reader) sayTwice(t *table, ids []idCell) {
	for _, key := range [...]func(idCell) string{
		func(c idCell) string { return fold(c.id) },
		func(c idCell) string { return fold(c.id) + "\x00" + c.day + "\x00" + c.student },
	} {
		first := map[string]idCell{}
		var again [][2]idCell
		for _, c := range ids {
			k := key(c)
			if f, seen := first[k]; seen {
				again = append(again, [2]idCell{f, c})
			} else {
				first[k] = c
			}
		}
		if len(again) > max(1, len(ids)/10) {
			continue
		}
		for _, pair := range again {
			at := t.at(pair[0].row, pair[0].col)
			r.problem("trial number twice", PleaseLook, t.at(pair[1].row, pair[1].col),
				fmt.Sprintf("trial %s stands in %s too", quoted(pair[1].id), sheet.CellName(at.Row, at.Col)),
				fmt.Sprintf("type %s here, or, if it is trial %s made again, leave the number and write “repeat of %s” in the notes; both count as trials",
					freeNumber(ids, pair[1]), pair[1].id, pair[1].id))
		}
		return
	}
}

// freeNumber is the number that fits a trial that bears another's: the one
// between its neighbours, else the next after all.
func freeNumber(ids []idCell, c idCell) string {
	used := map[int]bool{}
	highest, before := 0, 0
	for _, o := range ids {
		n, err := strconv.Atoi(strings.TrimSpace(o.id))
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

// idOf is the number a trial bears of its own: none when it is taken from above,
// when rows are readings or squirts of one trial, or when a column or the note
// says that it is a repeat.
func (b *row) idOf(t *Trial) (idCell, bool) {
	f := slices.IndexFunc(b.table.fields, func(f field) bool { return f.Role == column.TrialID })
	if f < 0 || len(b.rows) != 1 || t.ID == "" || t.Raw["repeat"] != "" || !strings.ContainsAny(t.ID, "0123456789") {
		return idCell{}, false
	}
	col := b.table.fields[f].col
	if _, filled := b.table.found.Cell(b.rows[0], col-1); filled {
		return idCell{}, false
	}
	return idCell{t.ID, t.Day, t.Student, col, b.rows[0]}, true
}
