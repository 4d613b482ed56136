package row

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// highest is the most an ingredient's amount can be.
func highest(f *scheme.Field) float64 {
	switch {
	case f.InGrams || f.Want == units.Mass:
		return compose.MostGrams
	case f.Basis == column.OfMix && f.What.WeighedAsEmulsifier():
		return compose.MostEmulsify
	}
	return 100
}

// amount reads how much of an ingredient is in the mix. A blank is none of it:
// nobody types a zero for each thing left out. What is typed and cannot be read is
// not known.
func (r *reader) amount(f *scheme.Field) {
	if r.s.Found.Heads[f.Col-1].Always != nil && r.s.Found.OnlyNamed(r.row) {
		return // a trial nobody made yet has no base either
	}
	what, kindless := r.whatItIs(f)
	if f.Open != "" {
		r.openAmount(f, what, kindless)
		return
	}
	if f.What.Name == scheme.Recipes && r.s.Found.Fill(r.row, f.Col-1) == grid.WrittenOnce {
		r.open(f, what, true) // another trial's, for all one knows
		return
	}
	if r.namedAmounts(f) {
		return
	}
	if text := r.text(f); f.What.Name == scheme.Recipes && text != "" {
		r.say(trial.Fix("value not read", r.at(f), say.Quoted(text)+" is not all known ingredients with their amounts", "write each as “butter 200 g”, by its common name, with a comma and a blank between them"))
		r.open(f, what, true)
		return
	}
	if to, ok := remark.MadeTo(r.text(f)); ok && what.Kind == ingredient.Water {
		r.toMake(f, what, to)
		return
	}
	k, ok := r.single(f, 0, highest(f), "an amount")
	switch {
	case f.Second != "" && !k.OK():
		r.unshared(f)
		return
	case !ok, r.inKilograms(f, k):
		r.open(f, what, kindless)
		return
	case !k.OK() && r.meantToGoIn(f):
		r.open(f, what, kindless)
		return
	case !k.OK():
		r.Recipe.Blank = append(r.Recipe.Blank, f.Col)
		return
	}
	r.askFraction(f, k)
	if f.Want == units.Volume {
		k.Value *= f.GramsPerML
	}
	r.dose(f, what, kindless, k.Value)
}

// meantToGoIn reports, and says, that an amount is left empty that was planned: it is not
// none, and nobody knows what was weighed.
func (r *reader) meantToGoIn(f *scheme.Field) bool {
	if f.PlanCol == 0 {
		return false
	}
	v, ok := scheme.BareNumber(r.s.Found.Sheet, r.s.Cell(r.row, f.PlanCol))
	if !ok || v == 0 {
		return false
	}
	r.say(trial.Check("not weighed", r.at(f), fmt.Sprintf("nothing is typed here, where %s was planned", say.Number(v)), "type what was weighed, 0 if there was none"))
	return true
}

// inKilograms reports, and says, a mass a thousandth of the others of its column.
func (r *reader) inKilograms(f *scheme.Field, k compose.Known) bool {
	u := r.s.Usual[f.Col]
	if !k.OK() || f.Want != units.Mass || k.Value <= 0 || k.Value > u.High/100 || !u.Holds(1000*k.Value, u.High/4) {
		return false
	}
	r.impossible(f, "grams beside the others of its column", fmt.Sprintf("type %s if it was meant in kg, or what was weighed", say.Number(1000*k.Value)))
	return true
}

// openAmount reads a cell of a column whose amounts nobody can reckon with: only
// none is none.
func (r *reader) openAmount(f *scheme.Field, what *ingredient.Ingredient, kindless bool) {
	c := r.sheetCell(f)
	if v, bare := scheme.BareNumber(r.s.Found.Sheet, c); c.Kind == sheet.Blank || dashes[r.text(f)] || bare && v == 0 {
		return
	}
	r.open(f, what, kindless)
}

func (r *reader) open(f *scheme.Field, what *ingredient.Ingredient, kindless bool) {
	r.Recipe.Open = append(r.Recipe.Open, compose.Open{What: what, Kindless: kindless})
	if what.Kind == ingredient.Fat || r.Recipe.BadCell == 0 {
		r.Recipe.BadCell = f.Col
	}
}

// dose adds an amount; of a stock its active part and its carrier.
func (r *reader) dose(f *scheme.Field, what *ingredient.Ingredient, kindless bool, amount float64) {
	d := compose.Dose{Name: f.Called(), What: what, Amount: amount, InGrams: f.InGrams, Basis: f.Basis, Kindless: kindless, Col: f.Col}
	if f.Role == column.FatPercent {
		d.Name = f.What.Name
	}
	if s := f.Stock; s != nil {
		carrier := d
		carrier.Name, carrier.What = "carrier of "+d.Name, waterOr(s)
		d.Amount, carrier.Amount = amount*s.Percent/100, amount*(1-s.Percent/100)
		d.Name = s.Of.Name
		r.Recipe.Doses = append(r.Recipe.Doses, carrier)
	}
	r.Recipe.Doses = append(r.Recipe.Doses, d)
	if f.Second != "" {
		d.Name, d.What, d.Amount = f.Second, &f.SecondWhat, 100-amount
		r.Recipe.Doses = append(r.Recipe.Doses, d)
	}
}

// waterOr is what a stock's active part is dissolved in: water where it is not said.
func waterOr(s *ingredient.Solution) *ingredient.Ingredient {
	if s.HasCarrier {
		return &s.Carrier
	}
	water, _ := ingredient.Lookup("water")
	return &water
}

// whatItIs is a column's ingredient, by its row's own word where a column of types
// says it.
func (r *reader) whatItIs(f *scheme.Field) (what *ingredient.Ingredient, kindless bool) {
	if f.TypeCol == 0 {
		return &f.What, f.Kindless
	}
	text := r.s.Text(r.row, f.TypeCol)
	if text == "" && r.sheetCell(f).Kind != sheet.Blank {
		text = r.writtenAbove(f.TypeCol)
	}
	if text == "" {
		return &f.What, f.Kindless
	}
	if i, ok := f.Types[say.Fold(text)]; ok {
		return &i, false
	}
	if i, ok := ingredient.Lookup(text); ok {
		return &i, false
	}
	c := r.sheetCell(f)
	if c.Kind != sheet.Blank {
		at := r.s.At(r.row, f.TypeCol)
		r.say(trial.Check("unknown ingredient", at, say.Quoted(text)+" is not an ingredient known here",
			fmt.Sprintf("type its common name; until then it is taken as %s", f.What.Name)))
	}
	return &f.What, f.Kindless
}

// writtenAbove is the name that a column of names has last above a row that has none: it is
// written once for the rows below it, which is said.
func (r *reader) writtenAbove(col int) string {
	rows := r.s.Found.Rows
	for n := r.row - 1; n >= 0 && rows[n].Section == rows[r.row].Section && n >= r.row-mostBelow; n-- {
		if text := r.s.Text(n, col); text != "" {
			r.say(trial.Note("written once", r.s.At(r.row, col), say.Quoted(text)+" holds for the rows below it", "nothing to do, or type the name in each row").Once())
			return text
		}
	}
	return ""
}

// mostBelow bounds for how many rows below it a name holds.
const mostBelow = 200

// emulsifier reads the amount of all emulsifiers together: to compare with their
// own columns, or in place of them.
func (r *reader) emulsifier(f *scheme.Field) {
	if !r.s.NamesEmulsifiers {
		before := len(r.Recipe.Doses) + len(r.Recipe.Open)
		r.amount(f)
		if len(r.Recipe.Doses)+len(r.Recipe.Open) == before && !r.otherTotal(f) {
			r.Recipe.Open = append(r.Recipe.Open, compose.Open{What: &f.What})
		}
		return
	}
	k, _ := r.single(f, 0, highest(f), "an amount")
	r.askFraction(f, k)
	switch {
	case f.InGrams:
		r.Recipe.EmulsifierGrams = k
	case f.Basis == column.OfMix:
		r.Recipe.Emulsifier = k
	default:
		r.Recipe.EmulsifierPart, r.Recipe.EmulsifierBasis = k, f.Basis
	}
}

// otherTotal reports that this row gives its emulsifiers together in another column: in
// grams, not in percent.
func (r *reader) otherTotal(f *scheme.Field) bool {
	return slices.ContainsFunc(r.s.Fields, func(o scheme.Field) bool {
		return o.Role == column.EmulsifierAmount && o.Col != f.Col && r.s.Cell(r.row, o.Col).Kind != sheet.Blank
	})
}

// askFraction asks about a bare percent of emulsifier that may be a fraction.
func (r *reader) askFraction(f *scheme.Field, k compose.Known) {
	if !k.OK() || k.Value <= 0 || k.Value > f.Small {
		return
	}
	if _, bare := scheme.BareNumber(r.s.Found.Sheet, r.sheetCell(f)); !bare {
		return
	}
	r.say(trial.Check("percent or fraction", r.at(f), fmt.Sprintf("%s is read as %s %%, far below the others of its column", r.quoted(f), say.Number(k.Value)),
		fmt.Sprintf("type %s if that is meant, %s%% if not", say.Number(100*k.Value), say.Number(k.Value))))
}

// fatPercent reads a fat percent of the mix, where 0.45 may be 45 %.
func (r *reader) fatPercent(f *scheme.Field) {
	if f.Want != units.Percent || f.Open != "" {
		r.amount(f)
		return
	}
	k, ok := r.single(f, 0, 100, "a fat percent")
	k = r.asPercent(f, k)
	if k.OK() && k.Value > 0 && k.Value < compose.LeastFat {
		r.impossible(f, "a fat percent", "type the percent, for example 45 for 45 %, or 0 for a mix without fat")
		k, ok = compose.Known{}, false
	}
	if !ok {
		r.Recipe.FatOpen = true
		if m, err := r.s.Parse(r.row, scheme.CellText(r.s.Found.Sheet, r.sheetCell(f)), r.sheetCell(f).Kind, f); err != nil || m.Word == quantity.NoWord {
			r.Recipe.BadCell = f.Col // what was not measured is no fault of the trial
		}
	}
	r.Recipe.Fat = k
}

// asPercent is a fat percent where the column's bare 0.45 are fractions.
func (r *reader) asPercent(f *scheme.Field, k compose.Known) compose.Known {
	if !k.OK() || !f.Fractions || k.Value <= 0 || k.Value > 1 {
		return k
	}
	if _, bare := scheme.BareNumber(r.s.Found.Sheet, r.sheetCell(f)); !bare {
		return k
	}
	if f.Mixed {
		r.say(trial.Check("percent or fraction", r.at(f),
			fmt.Sprintf("%s is read as %s %%, while other cells of the column say percent", r.quoted(f), say.Number(100*k.Value)),
			fmt.Sprintf("type %s if that is right, %s%% if not", say.Number(100*k.Value), say.Number(k.Value))))
	} else {
		r.say(trial.Note("fractions", r.at(f), fmt.Sprintf("fat is given as fractions: %s is read as %s %%", say.Number(k.Value), say.Number(100*k.Value)),
			"nothing to do, unless it is less than one percent of fat").Once())
	}
	k.Value *= 100
	return k
}

// ownValue reads a cell of a column such as "cream fat %" or "HLB GMS".
func (r *reader) ownValue(f *scheme.Field) {
	high := 100.0
	if f.Role == column.IngredientHLB {
		high = 40
	}
	k, _ := r.single(f, 0, high, "a "+f.Role.String())
	name := f.What.Name
	if i, ok := ingredient.Lookup(f.Ingredient); ok && !column.OnlyByPhase(f.Ingredient) {
		name = i.Name
	} else if ok {
		name = f.Ingredient // "HLB low"
	}
	if name != "" && k.OK() {
		r.Recipe.Own = append(r.Recipe.Own, compose.Own{Name: name, IsHLB: f.Role == column.IngredientHLB, Value: k.Value})
	}
}

// namedAmounts reads a cell that names its ingredients: "3 g GMS + 3 g PS60". Every
// name must be known; a column of one ingredient may hold another in its place, which
// is said.
func (r *reader) namedAmounts(f *scheme.Field) bool {
	c := r.sheetCell(f)
	if c.Kind != sheet.Text || !f.InGrams || !strings.ContainsAny(c.Text, "0123456789") {
		return false
	}
	doses := namedDoses(c.Text, f)
	if len(doses) == 0 || !anyOf(f.What) && !r.inPlace(f, doses) {
		return false
	}
	r.Recipe.Doses = append(r.Recipe.Doses, doses...)
	return true
}

// namedDoses reads the amounts of a text with their names, none if one of them cannot
// be read.
func namedDoses(text string, f *scheme.Field) (doses []compose.Dose) {
	for _, part := range scheme.PartsOf(text) {
		d, ok := namedAmount(part, f)
		if !ok {
			return nil
		}
		doses = append(doses, d)
	}
	return doses
}

// inPlace reports whether what a cell names can stand in a column of one ingredient,
// and says where it is another.
func (r *reader) inPlace(f *scheme.Field, doses []compose.Dose) bool {
	other := doses[0].What.Name
	switch {
	case len(doses) > 1 && f.Role == column.IngredientAmount:
		return false
	case other == f.What.Name:
		return true
	case f.What.Kind == ingredient.Fat:
		return false // nobody knows how much of the fat it replaces
	}
	r.say(trial.Check("another ingredient in the cell", r.at(f), fmt.Sprintf("%s is read as %s, not %s", r.quoted(f), other, f.What.Name),
		"give it a column of its own"))
	return true
}

// namedAmount reads one amount with the name of its ingredient. Only a whole mix may be
// written in percent.
func namedAmount(part scheme.Part, f *scheme.Field) (d compose.Dose, ok bool) {
	what, known := f.Types[say.Fold(part.Name)]
	if !known {
		what, known = ingredient.Lookup(part.Name)
	}
	want, bare := units.Mass, f.Bare
	if part.Unit == "%" && f.What.Name == scheme.Recipes {
		want, bare = units.Percent, units.PercentUnit
	}
	reading, err := quantity.Parse(part.Amount+part.Unit, want, bare)
	v, exact := reading.Exact()
	if !known || err != nil || !exact {
		return d, false
	}
	return compose.Dose{Name: strings.TrimSpace(part.Name), What: &what, Amount: v, InGrams: want == units.Mass, Basis: basisOf(want), Col: f.Col}, true
}

// basisOf is what the numbers of a whole mix are of.
func basisOf(want units.Dimension) column.Basis {
	if want == units.Percent {
		return column.OfMix
	}
	return column.NoBasis
}

// anyOf reports an ingredient that stands for any of its kind.
func anyOf(i ingredient.Ingredient) bool {
	switch i.Name {
	case "oil", "fat", "emulsifier", "water part", "emulsifiers together", scheme.Recipes:
		return true
	}
	return false
}

// toMake takes a liquid that was added up to a mass: "to make 500", "q.s. 500 g".
func (r *reader) toMake(f *scheme.Field, what *ingredient.Ingredient, whole float64) {
	if r.madeTo > 0 {
		r.open(f, what, false)
		return
	}
	r.madeTo, r.rest = whole, what
	r.say(trial.Note("made up to a mass", r.at(f), fmt.Sprintf("%s is read as what brought the mix to %s", r.quoted(f), say.Grams(whole)), "nothing to do, or type the grams that were added").Once())
}

// madeUp adds the water that brought a mix to the mass said beside the table.
func (r *reader) madeUp() {
	whole, doses, water := r.s.WholeGrams, r.Recipe.Doses, plainWater()
	if r.madeTo > 0 {
		whole, water = r.madeTo, r.rest
	}
	if whole == 0 || len(doses) == 0 || len(r.Recipe.Open) > 0 {
		return
	}
	rest := whole
	for i := range doses {
		if !doses[i].InGrams {
			return
		}
		rest -= doses[i].Amount
	}
	r.Recipe.Batch = compose.Known{Value: whole, Col: doses[0].Col}
	if rest > 0 {
		r.Recipe.Doses = append(doses, compose.Dose{Name: water.Name, What: water, Amount: rest, InGrams: true, Col: doses[0].Col})
	}
}

var plainWater = sync.OnceValue(func() *ingredient.Ingredient { w, _ := ingredient.Lookup("water"); return &w })

// changedPlaces finds a fat percent and an HLB that stand in each other's column: the
// one cannot be an HLB, and the other is no fat percent of this table.
func (r *reader) changedPlaces() {
	fat, hlb := r.Recipe.Fat, r.Recipe.HLB
	if !fat.OK() || !hlb.OK() || hlb.Value <= ingredient.MostHLB || fat.Value > ingredient.MostHLB || !r.s.Usual[fat.Col].Holds(hlb.Value, 5) || r.s.Usual[fat.Col].Holds(fat.Value, 5) {
		return
	}
	r.say(trial.Fix("changed places", r.s.At(r.row, fat.Col), fmt.Sprintf("%s as fat and %s as HLB seem to have changed places", say.Number(fat.Value), say.Number(hlb.Value)),
		fmt.Sprintf("type %s here and %s as the HLB if that is so", say.Number(hlb.Value), say.Number(fat.Value))))
	r.Recipe.Fat, r.Recipe.HLB, r.Recipe.FatOpen, r.Recipe.BadCell = compose.Known{}, compose.Known{}, true, fat.Col
}
