package reclaim

import (
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
)

// A log for several mixes may name its ingredients in cells, "fat | fat content % | fat g", and
// say "corn oil", 100 and 70 in a row.

var contentHead = pattern.Of(`(?i)\b(?:content|purity|of the (?:fat|butter|oil)|by (?:the )?packet|in the (?:fat|butter|oil))\b`)

// namesInCells takes columns of names for what they are, and gives the grams beside them the
// ingredient that all rows name.
func namesInCells(t *handin.Table) {
	for _, c := range t.Columns {
		if c.Role != column.IngredientAmount && c.Role != column.FatPercent && c.Role != column.None && c.Role != column.Unused || c.Known() > 0 {
			continue
		}
		name, all := oneName(c)
		if !all {
			continue
		}
		c.Role, c.Field = column.None, nil
		what, known := ingredient.Lookup(name)
		if !known {
			continue
		}
		head := say.Fold(c.Header)
		for _, o := range t.Weighed() {
			if called := say.Fold(o.Header); head == "" || !strings.HasPrefix(called, head) || o == c {
				continue
			}
			f := *o.Field
			f.What, f.Kindless = what, false
			o.Field = &f
			contentOf(t, o)
		}
	}
}

// oneName is the name that stands in all cells of a column of names of ingredients, "" where they
// differ; false for a column of anything else.
func oneName(c *handin.Column) (name string, all bool) {
	filled, known := 0, 0
	for i := range c.Cells {
		x := &c.Cells[i]
		if x.Kind != sheet.Text {
			continue
		}
		filled++
		if _, ok := ingredient.Lookup(x.Text); ok {
			known++
		}
		switch {
		case filled == 1:
			name = x.Text
		case !strings.EqualFold(name, x.Text):
			name = ""
		}
	}
	return name, filled >= 3 && 4*filled >= 3*len(c.Cells) && 2*known > filled
}

// contentOf takes a column of fat contents, beside the fat percent of the mix, for that of an
// ingredient.
func contentOf(t *handin.Table, of *handin.Column) {
	if of.Field.What.Kind != ingredient.Fat {
		return
	}
	for _, c := range t.All(column.FatPercent) {
		if contentHead.MatchString(c.Header) && len(t.All(column.FatPercent)) > 1 && c.Field != nil && !c.Field.InGrams {
			f := *c.Field
			f.Ingredient = of.Field.Called()
			c.Role, c.Field = column.IngredientFat, &f
			return
		}
	}
}
