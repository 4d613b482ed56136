package ingest

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// declared is a row of an Ingredients sheet.
type declared struct {
	ingredient.Ingredient
	at trial.Place
}

// meaning is a row of a Columns sheet.
type meaning struct {
	words      string // what the column is, in words a header could have
	unit       quantity.Unit
	basis      column.Basis
	gramsPerML float64
	variable   bool // a number to carry along under the header's own name
	result     bool // and measured on the foam
	ignore     bool
	at         trial.Place
}

// kindWords are the words of the column "What it is", beside any ingredient's
// name.
var kindWords = map[string]ingredient.Kind{
	"other": ingredient.Other, "sugar": ingredient.Other, "salt": ingredient.Other, "flavour": ingredient.Other,
	"fat": ingredient.Fat, "oil": ingredient.Fat, "butter": ingredient.Fat, "cream": ingredient.Fat, "fat part": ingredient.Fat,
	"water": ingredient.Water, "water part": ingredient.Water, "liquid": ingredient.Water, "stock": ingredient.Water,
	"emulsifier": ingredient.Emulsifier, "lipophilic emulsifier": ingredient.Emulsifier, "hydrophilic emulsifier": ingredient.Emulsifier,
	"ionic": ingredient.Ionic, "ionic emulsifier": ingredient.Ionic, "emulsifier without hlb": ingredient.Ionic,
	"protein": ingredient.Ionic, "thickener": ingredient.Thickener, "stabiliser": ingredient.Thickener, "gum": ingredient.Thickener,
}

const howToSayKind = "type one of: fat, water, emulsifier, emulsifier without HLB, thickener, other, or the ingredient's common name"

func (k *kitchen) takeIngredients(ps *problems, t kitchenTable) {
	k.ingredients = map[string]declared{}
	for row := range t.rows {
		name, what := t.text(row, 0), t.text(row, 1)
		if name == "" {
			continue
		}
		d := declared{at: t.at(row, 0)}
		known, found := ingredient.Lookup(what)
		if !found {
			known, found = ingredient.Lookup(name)
		}
		if kind, ok := kindWords[fold(what)]; ok {
			if !found || known.Kind != kind {
				known, found = ingredient.Ingredient{Kind: kind}, true
			}
		} else if what != "" && !found {
			ps.add("ingredient not known", trial.MustFix, t.at(row, 1), quoted(what)+" is no kind of ingredient", howToSayKind)
			continue
		} else if !found {
			ps.add("ingredient not known", trial.MustFix, t.at(row, 0), quoted(name)+" has nothing in the column What it is", howToSayKind)
			continue
		}
		d.Ingredient = known
		if d.Name == "" {
			d.Name = name
		}
		own := false
		for _, v := range []struct {
			column    int
			low, high float64
			name      string
			set       func(ingredient.Range)
		}{
			{2, 0, 40, "HLB", func(r ingredient.Range) { d.HLB = &r }},
			{3, 0, 100, "fat percent", func(r ingredient.Range) { d.FatPercent = &r }},
			{4, 0, 100, "use limit", func(r ingredient.Range) {
				d.Limits = []ingredient.Limit{{Percent: r.High, Where: "the kitchen's own limit, " + t.at(row, 4).String(), Own: true}}
			}},
		} {
			text := t.text(row, v.column)
			if text == "" {
				continue
			}
			r, ok := rangeOf(text, v.low, v.high, v.column != 2)
			if !ok {
				ps.add("ingredient value not read", trial.MustFix, t.at(row, v.column), quoted(text)+" is no "+v.name,
					fmt.Sprintf("type a number between %s and %s", number(v.low), number(v.high)))
				continue
			}
			v.set(r)
			own = true
		}
		if text := t.text(row, 5); text != "" {
			d.Allergens = []string{}
			for a := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == ';' || r == '/' }) {
				if a = strings.TrimSpace(a); a != "" && !slices.Contains([]string{"none", "no", "-"}, fold(a)) {
					d.Allergens = append(d.Allergens, a)
				}
			}
			own = true
		}
		if text := t.text(row, 6); text != "" {
			d.Note = text
		}
		if own {
			d.From = d.at.String()
		}
		if first, again := k.ingredients[fold(name)]; again {
			ps.add("ingredient twice", trial.PleaseLook, d.at, quoted(name)+" stands at "+first.at.String()+" too", "delete one of the rows; the first is used")
			continue
		}
		k.ingredients[fold(name)] = d
	}
}

// rangeOf reads a number or a range within bounds. A percent of 0.4 is 0.4 %.
func rangeOf(text string, low, high float64, percent bool) (ingredient.Range, bool) {
	want, unit := quantity.Plain, quantity.NoUnit
	if percent {
		want, unit = quantity.Percent, quantity.PercentUnit
	}
	m, err := quantity.Parse(text, want, unit)
	if err != nil || m.Word != quantity.NoWord || !(low <= m.Low && m.High <= high) {
		return ingredient.Range{}, false
	}
	return ingredient.Range{Low: m.Low, Value: (m.Low + m.High) / 2, High: m.High}, true
}

// targetValue reads the value of a Targets row in the unit of its cell or of
// the Unit column.
func targetValue(text, unitText string, want targetRow) (float64, bool) {
	def, _ := quantity.ParseUnit(want.units)
	unit := def
	if unitText != "" {
		u, ok := quantity.ParseUnit(unitText)
		if !ok || u.Dimension() != def.Dimension() {
			return 0, false
		}
		unit = u
	}
	m, err := quantity.Parse(text, def.Dimension(), unit)
	if err != nil || m.Word != quantity.NoWord && m.Word != quantity.Zero {
		return 0, false
	}
	v, ok := m.Exact()
	if want.name == "wanted chance" && !(m.Unit == quantity.NoUnit && unitText == "" && v <= 1) {
		v /= 100 // 80 and 80 % are 0.8
	}
	return v, ok
}

func (k *kitchen) takeColumns(ps *problems, t kitchenTable) {
	k.columns = map[string]meaning{}
	for row := range t.rows {
		header, words := t.text(row, 0), t.text(row, 1)
		if header == "" {
			continue
		}
		m := meaning{words: words, at: t.at(row, 0)}
		switch fold(words) {
		case "variable", "result", "":
			m.variable, m.result = words != "", fold(words) == "result"
		case "ignore", "not used", "skip":
			m.ignore = true
		}
		if text := t.text(row, 2); text != "" {
			u, ok := quantity.ParseUnit(text)
			if !ok {
				ps.add("unit not known", trial.MustFix, t.at(row, 2), quoted(text)+" is no unit", "type g, %, min, °C, mL or the like")
				continue
			}
			m.unit = u
		}
		if text := t.text(row, 3); text != "" {
			switch fold(strings.TrimPrefix(fold(text), "% ")) {
			case "of mix", "mix", "of total", "total", "of batch":
				m.basis = column.OfMix
			case "of fat", "fat", "of oil", "oil":
				m.basis = column.OfFat
			case "of water", "water", "of water part":
				m.basis = column.OfWater
			default:
				density, ok := densityOf(text)
				if !ok {
					ps.add("basis not known", trial.MustFix, t.at(row, 3), quoted(text)+" is no basis", "type of mix, of fat or of water; for a volume type its density, such as 0.92 g/mL")
					continue
				}
				m.gramsPerML = density
			}
		}
		if words != "" && !m.variable && !m.ignore && column.Read(words).Role == column.None {
			if _, ok := ingredient.Lookup(words); !ok {
				ps.add("meaning not known", trial.MustFix, t.at(row, 1), quoted(words)+" is no meaning of a column",
					"type what a clear header would say, such as hold, drained, GMS, fat, came out; or variable, or ignore")
				continue
			}
		}
		k.columns[fold(header)] = m
	}
}

// densityOf reads "0.92 g/mL".
func densityOf(text string) (float64, bool) {
	head, tail, ok := strings.Cut(fold(text), "g")
	if !ok || strings.ReplaceAll(tail, " ", "") != "/ml" && strings.TrimSpace(tail) != "per ml" {
		return 0, false
	}
	m, err := quantity.Parse(strings.TrimSpace(head), quantity.Plain, quantity.NoUnit)
	if err != nil {
		return 0, false
	}
	v, exact := m.Exact()
	return v, exact && v >= 0.2 && v <= 3
}

// declare applies the kitchen's Columns sheet to a header.
func (k *kitchen) declare(f *field) {
	d, ok := k.columns[fold(f.header)]
	if !ok {
		d, ok = k.columns[fold(f.Words)]
	}
	if !ok {
		return
	}
	unit, basis, minute := f.Unit, f.Basis, f.AtMinute
	switch {
	case d.ignore:
		f.Meaning = column.Meaning{Role: column.Unused, Words: f.Words}
	case d.variable:
		f.Meaning = column.Meaning{Role: column.Declared, Words: f.Words}
		name := VariableName(f.Words)
		if slices.Contains(ourNames, name) {
			name += "_declared"
		}
		f.extra, f.raw, f.result = name, name, d.result
	case d.words != "":
		f.Meaning = column.Read(d.words)
		if f.Role == column.None {
			f.Role, f.Ingredient = column.IngredientAmount, d.words
		}
	}
	f.Doubt, f.Fuzzy = "", false
	if f.Unit == quantity.NoUnit {
		f.Unit = unit
	}
	if d.unit != quantity.NoUnit {
		f.Unit = d.unit
	}
	if f.Basis == column.NoBasis {
		f.Basis = basis
	}
	if d.basis != column.NoBasis {
		f.Basis = d.basis
	}
	if f.AtMinute == 0 {
		f.AtMinute = minute
	}
	f.gramsPerML = d.gramsPerML
	f.told = true
}

// ourNames are variables and outcomes of every log; a column that is declared under one
// of them is something else.
var ourNames = []string{"came_out", "broke", "hold_minutes", "drained_percent", "fat_percent", "emulsifier_percent", "emulsifier_grams",
	"ln_emulsifier_percent", "ln_emulsifier_grams", "blend_hlb"}

// VariableName is a header as the name of a variable: lower case words joined by _.
func VariableName(header string) string {
	words := strings.FieldsFunc(strings.ToLower(header), func(r rune) bool {
		return !('a' <= r && r <= 'z' || '0' <= r && r <= '9' || r > 127)
	})
	if len(words) == 0 {
		return "variable"
	}
	return strings.Join(words, "_")
}
