package handin

import (
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
)

// MeanWord is what a mean is headed by, in five languages.
var MeanWord = pattern.Of(`(?i)(\bmean\b|\baverage[ds]?\b|\bavg\b\.?|\bmoyenne?\b|\bmoy\b\.?|\bmedia\b|\bpromedio\b|\bmittel(wert)?\b|\bdurchschnitt\w*|ø|x̄)`)

// Mean reports a column that is headed as a mean.
func (c *Column) Mean() bool { return MeanWord.MatchString(c.Header) }

// Twins are the columns that hold one hold each, the mean of them left out; none where
// there is but one.
func (t *Table) Twins() []*Column {
	out := slices.DeleteFunc(t.All(column.Hold), (*Column).Mean)
	if len(out) < 2 {
		return nil
	}
	return out
}

// Hold is the column that says how long a foam held: the only one, or the mean of
// several; nil where none is the one.
func (t *Table) Hold() *Column {
	all := t.All(column.Hold)
	if len(all) > 1 {
		all = slices.DeleteFunc(all, func(c *Column) bool { return !c.Mean() })
	}
	if len(all) != 1 {
		return nil
	}
	return all[0]
}
