package layout

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// remarksRead bounds the remarks that are looked up as header words.
const remarksRead = 300

// markRemarks finds the columns without a header that hold prose.
func (t *open) markRemarks(f *look.Reader) {
	last := 0
	for i := range t.Heads {
		if t.Heads[i].Row > 0 {
			last = max(last, t.Heads[i].Col)
		}
	}
	for i := range t.Heads {
		if h := &t.Heads[i]; h.Row == 0 {
			h.Remarks = !t.holdsLegend(h.Col, last) && t.holdsProse(f, h.Col)
		}
	}
}

// holdsLegend reports whether the texts of a column explain colours.
func (t *open) holdsLegend(col, last int) bool {
	if !t.Sheet.Coloured() || t.Transposed {
		return false
	}
	texts := 0
	for _, r := range t.Rows {
		c := look.CellAt(&t.Sheet.Rows[r.At], col)
		switch {
		case look.Empty(&c):
		case !look.InLegend(t.Sheet, r.Number, &c, last):
			return false
		default:
			texts++
		}
	}
	return texts > 0
}

// holdsProse reports whether a column is remarks: texts that are no values,
// most of them of several words or of what happened, hardly any that names a
// thing in the mix. Names come again, remarks hardly do: "used the old cream".
func (t *open) holdsProse(f *look.Reader, col int) bool {
	filled, prose, values, named := 0, 0, 0, 0
	different := map[string]bool{}
	for _, r := range t.Rows {
		c := look.CellAt(&t.Sheet.Rows[r.At], col)
		if look.Empty(&c) {
			continue
		}
		filled++
		switch several := strings.Contains(strings.TrimSpace(c.Text), " "); {
		case c.Kind != sheet.Text || look.ValueLike(c.Text) || look.IsUnit(c.Text):
			values++
		case filled > remarksRead:
			prose++
		case namesAmount(f, c.Text) && len(strings.Fields(c.Text)) > 2:
			named++
			different[c.Text] = true
		case namesAmount(f, c.Text):
			values++
		case several || look.Happened(f.Read(c.Text).Role):
			prose++
		}
	}
	if len(different)*2 > named {
		prose += named
	} else {
		values += named
	}
	return prose*2 >= filled && values*5 <= filled && filled > 0
}

// namesAmount reports whether a text is the name of a thing in the mix.
func namesAmount(f *look.Reader, text string) bool {
	m := f.Read(text)
	return m.Sure() && (m.Role == column.IngredientAmount || m.Role == column.EmulsifierAmount)
}
