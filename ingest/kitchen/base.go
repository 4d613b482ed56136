package kitchen

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/look"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Some kitchens change the emulsifiers only. What else goes into every mix stands once above
// the table, a row for each ingredient below a title that says so: "Base recipe, for all trials",
// or behind it: "Base of every mix: 300 g cream 35 %, 80 g butter". Such parts are as good as
// columns whose cells all say the same.

// Base is what goes into every mix.
type Base struct {
	Parts []BasePart
	At    trial.Place
}

// BasePart is one ingredient of a base; its grams stand in Cell.
type BasePart struct {
	Name     string
	Cell     sheet.Cell
	Row, Col int
}

var (
	// baseTitle is a text that says of what is below or behind it that it goes into every mix.
	baseTitle = pattern.Of(`^(?:the |our )?(?:(?:base|basic|common|constant|fixed)(?: (?:recipe|mix|mixture|formula|batch|ingredients|part))?|` +
		`recette de base|(?:base|mélange|partie)(?: de base| commune?| constante?)?|(?:grund|basis)(?:rezept|rezeptur|masse|mischung|ansatz)|basis|` +
		`(?:receta|mezcla|fórmula) base|base común|(?:ricetta|miscela) base|base comune|basisrecept|basismengsel|` +
		`(?:(?:always|the same) )?(?:in |for )?(?:every|each|all) (?:trials?|mix|mixes|batch|run|siphon)|` +
		`(?:dans |pour )?(?:chaque|tous les) (?:essais?|mélanges?)|(?:in |für )?(?:jede[rnm]?|alle) (?:versuche?|ansatz|ansätze|mischung(?:en)?)|` +
		`(?:en |para )?(?:cada|todos los|todas las) (?:ensayos?|pruebas?|mezclas?)|(?:in |per )?(?:ogni|tutte le) (?:prov[ae]|miscel[ae])|(?:in |voor )?(?:elke?|alle) (?:proef|proeven|mengsels?))(?:$|[ ,:(])`)
	// ofBaseTitle are the words that may stand beside it.
	ofBaseTitle = look.SetOf(`base recipe formula for of in all every each the a an trial trials mix mixes batch batches run runs siphon siphons test tests same g grams per always whole one
		pour de des du dans tous toutes les chaque essai essais mélange mélanges commun commune
		für von in aller alle allen jeder jeden jedem versuch versuche versuchen ansatz ansätze mischung mischungen gramm je pro immer gleich
		para de en todos todas los las cada ensayo ensayos prueba pruebas mezcla mezclas siempre igual
		per di in tutte tutti le i ogni prova prove miscela miscele sempre uguale
		voor van in elke elk alle proef proeven mengsel mengsels altijd gelijk`)
	gramsHead = pattern.Of(`^(?:(?:amount|weight|mass|quantity|menge|gewicht|einwaage|quantité|poids|masse|cantidad|peso|quantità|hoeveelheid)?[ ,]*[(\[]?(?:in )?(?:g|gr|grams?|gramm|grammes?|gramos|grammi)[)\]]?)$`)
)

// BasesOf are the bases of a sheet, those above its tables of trials or, on a sheet without one,
// all of it.
func BasesOf(at trial.Place, s *sheet.Sheet, tables []grid.Table) (bases []Base) {
	logged := func(row int) bool {
		return slices.ContainsFunc(tables, func(t grid.Table) bool {
			_, results := t.Looks()
			return results > 0 && !t.Transposed && len(t.Rows) > 0 && row >= t.HeaderRow && row <= t.Rows[len(t.Rows)-1].Number
		})
	}
	for i := range s.Rows {
		row := &s.Rows[i]
		first := look.FirstFilled(row.Cells)
		if first.Kind != sheet.Text || logged(row.Number) {
			continue
		}
		at.Row, at.Col = row.Number, int(first.Col)
		title, behind, _ := strings.Cut(first.Text, ":")
		if !saysBase(title) {
			continue
		}
		b := Base{At: at}
		if strings.TrimSpace(behind) != "" {
			b.Parts = partsBehind(behind, at)
		} else if look.Filled(row.Cells) == 1 || look.Filled(row.Cells) == 2 && gramsIn(row) > 0 {
			b.Parts = partsBelow(s.Rows[i+1:], row, strings.Contains(say.Fold(title), "(g)") || gramsIn(row) > 0)
		}
		if len(b.Parts) > 0 {
			bases = append(bases, b)
		}
	}
	return bases
}

// saysBase reports a title of a base, all of whose words are understood.
func saysBase(title string) bool {
	text := say.Fold(strings.TrimSpace(title))
	m := baseTitle.FindString(text)
	if m == "" || exceptHere.MatchString(text) {
		return false
	}
	for _, w := range strings.FieldsFunc(text[len(m):], func(r rune) bool { return strings.ContainsRune(" ,()-–", r) }) {
		if !ofBaseTitle[w] {
			return false
		}
	}
	return true
}

// partsBehind are the parts of a base that is told in a sentence, in grams.
func partsBehind(text string, at trial.Place) (parts []BasePart) {
	first, _, _ := strings.Cut(text, ". ")
	amounts, err := ParseAmounts(strings.TrimRight(strings.TrimSpace(andMore.ReplaceAllString(first, ", $1")), "."))
	if err != nil || len(amounts) < 2 || !massHere.MatchString(say.Fold(text)) {
		return nil
	}
	for _, a := range amounts {
		if a.Unit != InGrams {
			return nil
		}
		parts = append(parts, BasePart{Name: a.Name, Cell: sheet.Cell{Kind: sheet.Number, Number: a.Value, Col: int32(at.Col)}, Row: at.Row, Col: at.Col})
	}
	return parts
}

// andMore joins the last of a list to those before it.
var andMore = pattern.Of(`\s+(?:and|plus|und|et|y|e|ed|en)\s+(\d)`)

// gramsIn is the column of a row that says that its numbers are grams, 0 without.
func gramsIn(row *sheet.Row) int {
	for k := range row.Cells {
		if c := &row.Cells[k]; c.Kind == sheet.Text && gramsHead.MatchString(say.Fold(strings.TrimSpace(c.Text))) {
			return int(c.Col)
		}
	}
	return 0
}

// partsBelow are the parts of a list: the rows right below its title, up to one that is none.
// None of them where a total is not their sum.
func partsBelow(rows []sheet.Row, title *sheet.Row, inGrams bool) (parts []BasePart) {
	sum, next := 0.0, title.Number+1
	for i := range rows {
		row := &rows[i]
		if row.Number != next {
			break
		}
		next++
		if len(parts) == 0 && look.Filled(row.Cells) > 1 && gramsIn(row) > 0 && !slices.ContainsFunc(row.Cells, func(c sheet.Cell) bool { v, _ := massIn(&c); return v != nil }) {
			inGrams = true // the heads of the list
			continue
		}
		p, ok := partIn(row, inGrams)
		if !ok {
			break
		}
		if s, _ := look.Summary(withoutBase(p.Name)); s == look.Total {
			if math.Abs(p.Cell.Number-sum) > 0.01*sum {
				return nil
			}
			break
		}
		sum += p.Cell.Number
		parts = append(parts, p)
	}
	return parts
}

// withoutBase is the label of a sum without what it is of: "base total".
func withoutBase(label string) string {
	return strings.TrimSpace(strings.TrimPrefix(say.Fold(label), "base "))
}

// partIn is the ingredient of a row of a list: its name, its grams and, behind them, no other
// number: "cream 35 % | 300 | g | the blue carton".
func partIn(row *sheet.Row, inGrams bool) (p BasePart, ok bool) {
	name := look.FirstFilled(row.Cells)
	for k := range row.Cells {
		c := &row.Cells[k]
		v, unit := massIn(c)
		switch {
		case v == nil || c.Col <= name.Col:
			continue
		case ok || *v <= 0 || name.Kind != sheet.Text:
			return p, false
		}
		p = BasePart{Name: strings.TrimSpace(name.Text), Cell: sheet.Cell{Kind: sheet.Number, Number: *v, Col: c.Col}, Row: row.Number, Col: int(name.Col)}
		if unit == "" {
			unit = unitBehind(row, k+1)
		}
		if m := withUnit.FindStringSubmatch(p.Name); unit == "" && m != nil {
			p.Name, unit = strings.TrimSpace(m[1]), m[2]
		}
		u, is := units.Parse(unit)
		switch {
		case u == units.Kilogram:
			p.Cell.Number *= 1000
		case is && u != units.Gram, !is && !inGrams:
			return p, false
		}
		ok = true
	}
	return p, ok && strings.ContainsFunc(p.Name, unicode.IsLetter)
}

// massIn is the number of a cell, with the unit that stands in it.
func massIn(c *sheet.Cell) (v *float64, unit string) {
	if c.Kind == sheet.Number {
		return &c.Number, ""
	}
	if m := massAlone.FindStringSubmatch(strings.TrimSpace(c.Text)); c.Kind == sheet.Text && m != nil {
		return value(m[1]), m[2]
	}
	return nil, ""
}

var massAlone = pattern.Of(`(?i)^` + number + ` ?(kg|g|gr)?$`)

// Into makes heads of the parts of a base for a table that has no column of them. Of a table
// that has some of them nobody knows what the others are, and clash is the first it has.
func (b *Base) Into(t *grid.Table) (clash string, ok bool) {
	if t.Long || t.Places != nil || t.Find(column.FatPercent) >= 0 {
		return "", false
	}
	var heads []grid.Head
	own := 0
	for _, p := range b.Parts {
		meaning := column.Read(p.Name + " (g)")
		if meaning.Role != column.IngredientAmount {
			return "", false
		}
		if i := slices.IndexFunc(t.Heads, func(h grid.Head) bool {
			return h.Meaning.Role == column.IngredientAmount && sameThing(h.Meaning.Ingredient, meaning.Ingredient)
		}); i >= 0 {
			own++
			clash = cmp.Or(clash, t.Heads[i].Text)
		}
		heads = append(heads, grid.Head{Row: p.Row, Col: p.Col, Text: p.Name + " (g)", Always: &p.Cell, Meaning: meaning})
	}
	switch {
	case own == len(b.Parts):
		return "", false // the recipe of one of its trials, and no news
	case own > 0:
		return clash, false
	}
	t.Heads = append(t.Heads, heads...)
	return "", true
}

// sameThing reports two names of one ingredient.
func sameThing(a, b string) bool {
	x, known := ingredient.Lookup(a)
	y, too := ingredient.Lookup(b)
	return say.Fold(a) == say.Fold(b) || known && too && x.Name == y.Name
}
