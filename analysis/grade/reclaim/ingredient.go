package reclaim

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// Ingredients finds what columns of grams are whose header is a part of a name, or a name of the
// student's own: "monooleate" where a line speaks of sorbitan monooleate, "mono" where a
// glossary says what that is, "lo hi = GMS; polysorbate 80".
func Ingredients(t *handin.Table, words []handin.Phrase, own *kitchen.Sheets) {
	lists := listsIn(words)
	for _, c := range t.Columns {
		if c.Role != column.IngredientAmount || c.Field == nil {
			continue
		}
		name := say.Fold(c.Field.Called())
		if name == "mg" && littleBesideFat(t, c) { // and no matière grasse
			f := *c.Field
			f.What, _ = ingredient.Lookup("monoglyceride")
			f.Kindless = !f.What.WeighedAsEmulsifier()
			c.Field = &f
			continue
		}
		full, ok := lists[name]
		if !ok && c.Field.Kindless {
			full, ok = fullName(name, words)
		}
		if !ok && c.Field.Kindless {
			full, ok = partName(c.Field.Called())
		}
		if !ok {
			continue
		}
		what, known := ingredient.Lookup(full)
		if !known {
			continue
		}
		f := *c.Field
		f.What, f.Kindless = what, false
		if st, said := own.Stated(full); said && !st.Disputed {
			from := st.At.String()
			if st.HLB != nil {
				f.What.HLB, f.What.From = &ingredient.Range{Low: *st.HLB, Value: *st.HLB, High: *st.HLB}, from
			}
			if st.Fat != nil {
				f.What.FatPercent, f.What.From = &ingredient.Range{Low: *st.Fat, Value: *st.Fat, High: *st.Fat}, from
			}
		}
		c.Field = &f
	}
}

// partName is the one part of a header of several that names something known: "the oily one,
// sorbitan monooleate", "cow, as butter".
func partName(header string) (full string, ok bool) {
	parts := strings.FieldsFunc(header, func(r rune) bool { return strings.ContainsRune(",;:()", r) })
	if len(parts) < 2 {
		return "", false
	}
	for _, p := range parts {
		p = strings.TrimPrefix(strings.TrimSpace(p), "as ")
		if _, known := ingredient.Lookup(p); !known {
			continue
		}
		if ok {
			return "", false
		}
		full, ok = p, true
	}
	return full, ok
}

// littleBesideFat reports grams that are little beside those of a fat of the same table.
func littleBesideFat(t *handin.Table, c *handin.Column) bool {
	most := func(c *handin.Column) (g float64) {
		for _, x := range c.Cells {
			g = max(g, x.Value)
		}
		return g
	}
	return slices.ContainsFunc(t.Weighed(), func(o *handin.Column) bool {
		return o != c && o.Field.What.Kind == ingredient.Fat && most(c) < 0.15*most(o)
	})
}

var (
	listed   = pattern.Of(`^([\p{L}\d,/ ]+?)\s*[=:]\s*(.+)$`)
	bySigns  = pattern.Of(`[;,]\s*`)
	someWord = pattern.Of(`[\p{L}\d]+`)
)

// listsIn are names of the student's own with what a list gives for each in the same order.
func listsIn(words []handin.Phrase) map[string]string {
	out := map[string]string{}
	for _, p := range words {
		m := listed.FindStringSubmatch(p.Text)
		if p.Note != nil || m == nil {
			continue
		}
		names, values := someWord.FindAllString(m[1], -1), strings.Split(m[2], ";") // a comma may be of a number
		if len(values) < 2 {
			values = bySigns.Split(m[2], -1)
		}
		if len(names) < 2 || len(names) != len(values) {
			continue
		}
		for i, n := range names {
			v, _, _ := strings.Cut(values[i], "(")
			if _, ok := ingredient.Lookup(v); ok {
				out[say.Fold(n)] = strings.TrimSpace(v)
			}
		}
	}
	return out
}

// fullName is the one known emulsifier that words beside the table name by a word and more.
func fullName(name string, words []handin.Phrase) (full string, ok bool) {
	if name == "" || strings.Contains(name, " ") {
		return "", false
	}
	found := map[string]string{}
	keep := func(text string) {
		if i, known := ingredient.Lookup(text); known && i.WeighedAsEmulsifier() {
			found[i.Name] = text
		}
	}
	for _, p := range words {
		if p.Note != nil {
			continue
		}
		if say.Fold(p.Text) == name && p.Right != "" { // a glossary
			said, _, _ := strings.Cut(p.Right, ",")
			keep(said)
		}
		all := someWord.FindAllString(p.Text, -1)
		for i, w := range all {
			if say.Fold(w) != name || len(name) < 4 {
				continue
			}
			if i > 0 {
				keep(all[i-1] + " " + w)
			}
			if i+1 < len(all) {
				keep(w + " " + all[i+1])
			}
		}
	}
	if len(found) != 1 {
		return "", false
	}
	for _, text := range found {
		full = text
	}
	return full, true
}
