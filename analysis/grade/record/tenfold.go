package record

import (
	"fmt"
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
)

// setAlike are the measures that a series keeps as they are: one number ten times all others is a slip
// of the finger more often than a trial of its own.
var setAlike = []column.Role{column.Temperature, column.Rest, column.HotHold, column.Chargers, column.Shakes, column.Shear, column.Fill}

// onPurpose is how a row says that it was to be unlike the others.
var onPurpose = pattern.Of(`(?i)\b(?:warm\w*|hot|heated|kept|cold\w*|frozen|chilled|fridge|overnight|longer|shorter|on purpose|to (?:see|test|try)|more (?:gas|chargers?)|absichtlich|heiß|kalt|über nacht|chaude?|froide?|exprès|caliente|frío|caldo|freddo|warme?|koude?)(?:$|\P{L})`)

// tenfold asks of a measure that is ten times, or a tenth of, what all others of its column are, which
// are about the same.
func (r *reader) tenfold(t *handin.Table) {
	for _, col := range t.Columns {
		if !slices.Contains(setAlike, col.Role) {
			continue
		}
		for i, c := range col.Cells {
			low, high, n := others(col, i)
			if n < 3 || n < len(col.Cells)-2 || high > 1.6*low || !r.fresh(c) || c.Value <= 0 || slices.ContainsFunc(textsOf(t, t.Trials[i]), onPurpose.MatchString) {
				continue
			}
			for _, u := range anyPoint[:2] {
				if v := c.Value * u.factor; within(v, low, high, 0.1) {
					words := fmt.Sprintf("%s is far from the others of its column (%s to %s). Was it %s: %s?", c.Text, num(low/c.Scale), num(high/c.Scale), u.words, num(v/c.Scale))
					r.add(about(words, c, "unit slip").ShouldBe(v/c.Scale), c.At)
					r.meant[c.At] = v
				}
			}
		}
	}
}
