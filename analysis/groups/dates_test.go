package groups

import (
	"cmp"
	"slices"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// Trials drift by their dates where each has one that can be read one way, else by the log.
func TestInOrder(t *testing.T) {
	for _, c := range []struct {
		name  string
		days  []string
		by    result.OrderBy
		order []int // the trials, first to last
	}{
		{"dates, the later sheet first", []string{"2024-05-04", "2024-05-03", "2024-05-04", "2024-05-03"}, result.ByDate, []int{1, 3, 0, 2}},
		{"times of a day", []string{"2024-05-03 14:30", "2024-05-03 09:15"}, result.ByDate, []int{1, 0}},
		{"day first", []string{"3.5.2024", "28.4.2024"}, result.ByDate, []int{1, 0}},
		{"names of months", []string{"2 May 2024", "28 April 2024"}, result.ByDate, []int{1, 0}},
		{"strokes that another date settles", []string{"2/5/2024", "28/4/2024"}, result.ByDate, []int{1, 0}},
		{"strokes, month first", []string{"5/2/2024", "4/28/2024"}, result.ByDate, []int{1, 0}},
		{"strokes that may be either", []string{"5/2/2024", "4/8/2024"}, result.ByLog, []int{0, 1}},
		{"numbered days", []string{"day 10", "Day 2"}, result.ByDate, []int{1, 0}},
		{"bare numbers", []string{"2", "1"}, result.ByLog, []int{0, 1}},
		{"weekdays", []string{"Tue", "Mon"}, result.ByLog, []int{0, 1}},
		{"one without", []string{"2024-05-04", "2024-05-03", ""}, result.ByLog, []int{0, 1, 2}},
		{"one that is none", []string{"2024-05-04", "2024-05-03", "soon"}, result.ByLog, []int{0, 1, 2}},
		{"one date", []string{"2024-05-04", "2024-05-04"}, result.ByLog, []int{0, 1}},
	} {
		var trials []*surface.Placed
		for i, day := range c.days {
			trials = append(trials, &surface.Placed{Trial: &trial.Trial{Day: day, Order: i + 1}})
		}
		q := inOrder(trials)
		order := make([]int, len(trials))
		for i := range order {
			order[i] = i
		}
		slices.SortFunc(order, func(a, b int) int { return cmp.Compare(q.number(trials[a]), q.number(trials[b])) })
		if q.orderBy != c.by || !slices.Equal(order, c.order) {
			t.Errorf("%s: by %s, %v; want by %s, %v", c.name, q.orderBy, order, c.by, c.order)
		}
		if first, last := q.number(trials[order[0]]), q.number(trials[order[len(order)-1]]); first != 0 || last != 1 {
			t.Errorf("%s: from %g to %g", c.name, first, last)
		}
	}
}
