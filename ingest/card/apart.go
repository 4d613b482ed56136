package card

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Above a card, and below it, lines may stand apart that look like more of it: "GMS HLB |
// 3.8" over trials in columns, "conclusion | ..." under them. They say something of all
// trials, and stand under one column only.

// setApart takes the lines out of a card that an empty row parts from it, and that have
// something in half of its columns at most, or say what was planned of its trials.
func (t *card) setApart(f cards, b block) (lines []grid.Furniture) {
	filled := func(h grid.Head) int {
		at, _ := slices.BinarySearchFunc(f.Sheet.Rows, h.Row, func(r sheet.Row, n int) int { return r.Number - n })
		return look.Filled(look.Between(f.Sheet.Rows[at].Cells, b.values(), b.to))
	}
	most := 0
	for _, h := range t.Heads {
		most = max(most, filled(h))
	}
	few := func(heads []grid.Head) bool {
		return !slices.ContainsFunc(heads, func(h grid.Head) bool { return 2*filled(h) > most })
	}
	if most < 3 {
		return nil
	}
	from, to := 0, len(t.Heads)
	for i := 1; i < len(t.Heads); i++ {
		if t.Heads[i].Row <= t.Heads[i-1].Row+1 {
			continue
		}
		switch { // a gap
		case from == 0 && few(t.Heads[:i]) && !few(t.Heads[i:]):
			from = i
		case to == len(t.Heads) && (few(t.Heads[i:]) || t.plansAgain(f, b, i)):
			to = i
		}
	}
	for i, h := range t.Heads {
		if i < from || i >= to {
			lines = append(lines, grid.Furniture{Row: h.Row, Kind: grid.Title})
		}
	}
	t.Heads = slices.Clone(t.Heads[from:to])
	if from > 0 {
		t.HeaderRow = t.Heads[0].Row
	}
	return lines
}

// plansAgain reports a line that names the trials of the card once more, for what was planned of
// them: "Planned recipe (% of mix) | T1 | T2 | T3". What was weighed stands above it.
func (t *card) plansAgain(f cards, b block, i int) bool {
	label, _, _ := strings.Cut(t.Heads[i].Text, "(")
	if !slices.ContainsFunc(strings.Fields(label), column.IsAim) {
		return false
	}
	named := func(h grid.Head) (names []string) {
		at, _ := slices.BinarySearchFunc(f.Sheet.Rows, h.Row, func(r sheet.Row, n int) int { return r.Number - n })
		for _, c := range look.Between(f.Sheet.Rows[at].Cells, b.values(), b.to) {
			if !look.Empty(&c) {
				names = append(names, strings.ToLower(strings.TrimSpace(f.Sheet.Display(c))))
			}
		}
		return names
	}
	again := named(t.Heads[i])
	return len(again) >= 2 && slices.ContainsFunc(t.Heads[:i], func(h grid.Head) bool {
		return f.Read(h.Text).Role == column.TrialID && slices.Equal(named(h), again)
	})
}
