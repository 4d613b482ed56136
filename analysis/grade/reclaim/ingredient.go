package reclaim

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Ingredients finds what columns of grams are whose header is a part of a name, or a name of the
// student's own: "monooleate" where a line speaks of sorbitan monooleate, "mono" where a
// glossary says what that is, "lo hi = GMS; polysorbate 80".
func Ingredients(t *handin.Table, words []handin.Phrase, own *kitchen.Sheets) {
	lists := listsIn(words)
	for _, c := range t.Columns {
		madeUp(t, c)
		weighedByUnit(t, c)
		if c.Role != column.IngredientAmount || c.Field == nil {
			continue
		}
		if byOwnList(t, c, own) {
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
		if !ok && c.Field.Kindless {
			full, ok = kindName(name)
		}
		if !ok {
			if c.Field.Kindless {
				byItsFat(c, own)
			}
			continue
		}
		what, known := ingredient.Lookup(full)
		if !known {
			continue
		}
		f := *c.Field
		f.What, f.Kindless = what, false
		c.Field = &f
		for _, called := range []string{c.Field.Called(), full} {
			if st, said := own.Stated(called); said && !st.Disputed {
				take(c, st)
				break
			}
		}
	}
}

// weighedByUnit takes a column that is none of the mix by its head, for an ingredient of that name where
// the unit beside its values is grams: nobody weighs a "room", but in Dutch that is cream.
func weighedByUnit(t *handin.Table, c *handin.Column) {
	what, known := ingredient.Lookup(c.Header)
	if c.Role != column.None && c.Role != column.Unused || !known || !inGramsAlone.MatchString(c.UnitBelow) || c.Known() == 0 ||
		slices.ContainsFunc(t.Weighed(), func(o *handin.Column) bool { return o.Field.What.Name == what.Name }) {
		return
	}
	c.Role = column.IngredientAmount
	c.Field = &scheme.Field{Meaning: column.Meaning{Role: column.IngredientAmount, Ingredient: c.Header, Unit: units.Gram}, Header: c.Header, Want: units.Mass, Bare: units.Gram, InGrams: true, What: what}
}

var inGramsAlone = pattern.Of(`(?i)^\W*(?:g|gr|gram|grams|gramm|grammes|gramos|grammi)\W*$`)

// byOwnList takes an ingredient of which the student's own list says nothing by its head for the one of
// the list of which that head is a part: "Monostearate" for "glycerol monostearate | 3.8", the one butter
// of the log for "browned butter | 98". What another column is called by is that one's.
func byOwnList(t *handin.Table, c *handin.Column, own *kitchen.Sheets) bool {
	head := someWord.FindAllString(say.Fold(c.Field.Called()), -1)
	if own == nil || len(strings.Join(head, "")) < 3 {
		return false
	}
	if _, said := listedAs(own, c.Field.Called()); said && !c.Field.Kindless {
		return false
	}
	full := ""
	for _, name := range namesIn(own) {
		listed := someWord.FindAllString(name, -1)
		if len(listed) <= len(head) || name == full || slices.ContainsFunc(head, func(w string) bool { return !slices.Contains(listed, w) }) {
			continue
		}
		if full != "" {
			return false
		}
		full = name
	}
	if slices.ContainsFunc(t.Weighed(), func(o *handin.Column) bool {
		return o != c && (say.Fold(o.Field.Called()) == full || say.Fold(o.Field.What.Name) == full)
	}) {
		return false
	}
	st, said := listedAs(own, full)
	if full == "" || !said || st.Disputed || st.HLB == nil && st.Fat == nil {
		return false
	}
	f := *c.Field
	switch what, known := ingredient.Lookup(full); {
	case !f.Kindless && f.What.WeighedAsEmulsifier() != (st.HLB != nil):
		return false
	case !f.Kindless: // its values alone
	case known && what.WeighedAsEmulsifier() == (st.HLB != nil):
		f.What = what
	case st.HLB != nil:
		f.What = ingredient.Ingredient{Name: full, Kind: ingredient.Emulsifier}
	case *st.Fat >= fatFrom:
		f.What = ingredient.Ingredient{Name: full, Kind: ingredient.Fat}
	default:
		f.What = ingredient.Ingredient{Name: full, Kind: ingredient.Water}
	}
	f.Kindless = false
	c.Field = &f
	take(c, st)
	return true
}

// namesIn are the names of the student's own lists, folded: of a sheet Ingredients, and of others.
func namesIn(own *kitchen.Sheets) (names []string) {
	for name := range own.Ingredients {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, l := range own.Lines {
		if l.Of != "" {
			names = append(names, say.Fold(l.Of))
		}
	}
	return names
}

// listedAs is what the student's own lists say of a name.
func listedAs(own *kitchen.Sheets, name string) (st kitchen.Statement, said bool) {
	d, declared := own.Ingredient(name)
	if !declared {
		return own.Stated(name)
	}
	st.At = d.At
	if d.HLB != nil {
		st.HLB = &d.HLB.Value
	}
	if d.FatPercent != nil {
		st.Fat = &d.FatPercent.Value
	}
	return st, true
}

// madeUp takes a column of grams whose head says to what the mix was made up, "milk, made up to 400 g
// (g)", for the ingredient before those words: with it the grams add up to the total in most rows.
func madeUp(t *handin.Table, c *handin.Column) {
	m := upTo.FindStringSubmatch(c.Header)
	total := t.Find(column.BatchMass)
	free := c.Role == column.None || c.Role == column.Unused || c.Role == column.IngredientAmount && (c.Field == nil || !c.Field.InGrams)
	if !free || m == nil || total == nil || !inGramHead.MatchString(c.Whole) {
		return
	}
	name := strings.Trim(m[1], " ,;:(")
	what, known := ingredient.Lookup(name)
	if c.Field != nil && c.Field.What.Kind == ingredient.Water {
		what, known = c.Field.What, true // as a list of the student's own has it
	}
	if !known {
		return
	}
	agree := 0
	for i, x := range c.Cells {
		sum := x.Value
		for _, o := range t.Weighed() {
			sum += o.Cells[i].Value
		}
		if x.Known && total.Cells[i].Known && math.Abs(sum-total.Cells[i].Value) <= max(0.006*sum, total.Cells[i].Half) {
			agree++
		}
	}
	if 2*agree > len(c.Cells) {
		c.Role = column.IngredientAmount
		c.Field = &scheme.Field{Meaning: column.Meaning{Role: column.IngredientAmount, Unit: units.Gram, Ingredient: name}, Header: c.Header, Want: units.Mass, Bare: units.Gram, InGrams: true, What: what}
	}
}

// upTo is an ingredient with what brought the mix to its whole.
var upTo = pattern.Of(`(?i)^(.+?)[\s,;:(]+(?:(?:made|topped|filled) up |complété[es]? |rest |completar |completado |rabboccat[oa] |aufgefüllt |aangevuld |up )?(?:to|à|hasta|a|auf|tot)\s+\d+(?:[.,]\d+)?\s*(?:g|kg)\b`)

// take gives an ingredient the values that a line states of it.
func take(c *handin.Column, st kitchen.Statement) {
	f, from := *c.Field, st.At.String()
	if st.HLB != nil && f.What.WeighedAsEmulsifier() {
		f.What.HLB, f.What.From = &ingredient.Range{Low: *st.HLB, Value: *st.HLB, High: *st.HLB}, from
	}
	if st.Fat != nil {
		f.What.FatPercent, f.What.From = &ingredient.Range{Low: *st.Fat, Value: *st.Fat, High: *st.Fat}, from
	}
	c.Field = &f
}

// fatFrom is the fat percent from which an ingredient that nobody knows counts as a fat.
const fatFrom = 20

// byItsFat tells what an ingredient that nobody knows is, by the fat percent that a line or a
// list gives of it: "soya drink | 1.8".
func byItsFat(c *handin.Column, own *kitchen.Sheets) {
	st, said := own.Stated(c.Field.Called())
	if !said || st.Disputed || st.Fat == nil || st.HLB != nil {
		return
	}
	f := *c.Field
	f.What.Kind, f.Kindless = ingredient.Water, false
	if *st.Fat >= fatFrom {
		f.What.Kind = ingredient.Fat
	}
	c.Field = &f
	take(c, st)
}

var (
	headLast  = pattern.Of(`^[\p{L} .'-]+ (juice|oil|water|tea|stock|broth|drink|milk|infusion|purée|puree|nectar|cordial|syrup)$`)
	headFirst = pattern.Of(`^(jus|zumo|jugo|succo|eau|agua|acqua|huile|aceite|olio|thé|té|bouillon|caldo|brodo|infusion|sirop|jarabe|sciroppo|purée|puré|purea)\.? (?:de |d'|di |del |de la |d’|au |à la )?[\p{L} .'-]+$`)
)

// kindName is the word of a name that says what it is of, whatever fruit or nut it is made
// of: the juice of "cupuaçu juice", the jus of "jus de cassis".
func kindName(folded string) (full string, ok bool) {
	if m := headLast.FindStringSubmatch(folded); m != nil {
		if m[1] == "drink" {
			return "oat drink", true
		}
		return m[1], true
	}
	if m := headFirst.FindStringSubmatch(folded); m != nil {
		return m[1], true
	}
	return "", false
}

// OwnSheet lets what is said on a table's own sheet win over what is said on others: on these
// other students may speak of their own.
func OwnSheet(t *handin.Table, own *kitchen.Sheets) {
	if t.At.Sheet != "" {
		OwnLines(t, own, func(at trial.Place) bool { return at.Sheet == t.At.Sheet })
	}
}

// OwnLines lets what is said on lines of a student's own win.
func OwnLines(t *handin.Table, own *kitchen.Sheets, keep func(at trial.Place) bool) {
	if own == nil {
		return
	}
	here := &kitchen.Sheets{}
	for _, l := range own.Lines {
		if keep(l.At) {
			here.Lines = append(here.Lines, l)
		}
	}
	if len(here.Lines) == 0 {
		return
	}
	esters := 0
	for _, c := range t.Weighed() {
		if c.Field.What.Name == sucroseEster {
			esters++
		}
	}
	for _, c := range t.Weighed() {
		if _, declared := own.Ingredient(c.Field.Called(), c.Header, c.Field.What.Name); declared {
			continue
		}
		names := []string{c.Field.Called(), c.Field.What.Name}
		if c.Field.What.Name == sucroseEster && esters == 1 {
			names = append(names, "ester", "sugar ester", "SE")
		}
		for _, name := range names {
			if st, said := here.Stated(name); said && !st.Disputed && (st.HLB != nil || st.Fat != nil) {
				take(c, st)
				break
			}
		}
	}
}

const sucroseEster = "sucrose ester"

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

// joins are the words between a name and of what it is.
var joins = pattern.Of(`(?i)^(?:of|de|du|d|del|di|von|van)$`)

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
			if i+2 < len(all) && joins.MatchString(all[i+1]) {
				keep(strings.Join(all[i:i+3], " ")) // "monooleato de sorbitán"
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
