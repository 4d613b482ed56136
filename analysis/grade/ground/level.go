package ground

import (
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/ingredient"
)

func FirstNumber(texts []string) float64 {
	for _, t := range texts {
		if v, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64); err == nil {
			return v
		}
	}
	return math.NaN()
}

// WeighedFatOf is a trial's fat ingredients in percent of the mix, as weighed.
func WeighedFatOf(x *handin.Trial) float64 {
	fat, sum := 0.0, 0.0
	for _, c := range x.Table.Weighed() {
		if cell := c.Cells[x.Index]; cell.Known {
			sum += cell.Value
			if what := &c.Field.What; what.Kind == ingredient.Fat && !(what.FatPercent != nil && what.FatPercent.Value < leanest) { // nobody takes cream for fat
				fat += cell.Value
			}
		}
	}
	if sum == 0 {
		return math.NaN()
	}
	return 100 * fat / sum
}

// leanest is the least fat percent of what may be taken for fat as it was weighed.
const leanest = 70

// InRow reports a percent that stands in a trial's own row.
func InRow(x *handin.Trial, v float64) bool {
	for _, c := range x.Table.Columns {
		if cell := c.Cells[x.Index]; cell.Known && strings.Contains(c.Whole, "%") && math.Abs(cell.Value-v) <= 0.51 {
			return true
		}
	}
	return false
}
