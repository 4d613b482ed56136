package reclaim

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
)

// weighed is a column of grams of an ingredient that nobody knows, or of one that is.
func weighed(head string, grams ...float64) *handin.Column {
	c := &handin.Column{Header: head, Whole: head, Role: column.IngredientAmount}
	what, known := ingredient.Lookup(head)
	c.Field = &scheme.Field{Meaning: column.Meaning{Ingredient: head}, InGrams: true, What: what, Kindless: !known}
	for _, x := range grams {
		c.Cells = append(c.Cells, handin.Cell{Kind: sheet.Number, Value: x, Known: true, Scale: 1})
	}
	return c
}

// TestByOwnList: heads that are a part of one name of the student's own list, and of none or of two.
func TestByOwnList(t *testing.T) {
	own := func(lines ...[2]string) *kitchen.Sheets {
		s := &kitchen.Sheets{}
		for _, l := range lines {
			s.Lines = append(s.Lines, kitchen.Line{Of: l[0], Text: l[0] + " " + l[1]})
		}
		return s
	}
	milk := ingredient.Range{Low: 1.4, Value: 1.4, High: 1.4}
	ofASheet := &kitchen.Sheets{Ingredients: map[string]kitchen.Declared{"thin milk of the farm": {Ingredient: ingredient.Ingredient{Name: "milk", Kind: ingredient.Water, FatPercent: &milk}}}}
	for _, c := range []struct {
		head   string
		list   *kitchen.Sheets
		beside string
		want   bool
	}{
		{"Monostearate", own([2]string{"glycerol monostearate", "HLB 3.8"}), "", true},
		{"emu low", own([2]string{"emu low (waxy)", "HLB 4.2"}), "", true},
		{"butter", own([2]string{"brown butter", "= 98 % fat"}), "", true},
		{"butter", own([2]string{"brown butter", "= 98 % fat"}), "brown butter", false}, // that is another's
		{"butter", own([2]string{"butter", "= 82 % fat"}, [2]string{"brown butter", "= 98 % fat"}), "", false},
		{"stearate", own([2]string{"glycerol stearate", "HLB 3.8"}, [2]string{"sorbitan stearate", "HLB 4.7"}), "", false},
		{"butter", own([2]string{"butter salt", "HLB 4.7"}), "", false}, // no fat has one
		{"monostearate", own([2]string{"glycerol monostearate", "HLB 3.8"}, [2]string{"glycerol monostearate", "= 0 % fat"}), "", true},
		{"monostearate", own([2]string{"glycerol monostearate", "= cheap"}), "", false},
		{"xy", own([2]string{"xy wax", "HLB 3.8"}), "", false},
		{"monostearate", nil, "", false},
		{"milk", ofASheet, "", true},
		{"milk", ofASheet, "thin milk of the farm", false},
		{"thin milk of the farm", ofASheet, "", false}, // it is read already
		{"butter", ofASheet, "", false},
	} {
		col := weighed(c.head, 1)
		tab := &handin.Table{Columns: []*handin.Column{col}}
		if c.beside != "" {
			tab.Columns = append(tab.Columns, weighed(c.beside, 1))
		}
		if got := byOwnList(tab, col, c.list); got != c.want {
			t.Errorf("%q: %v", c.head, got)
		}
	}
}

// TestMadeUp: heads that say to what a mix was made up, borne out by the totals or not.
func TestMadeUp(t *testing.T) {
	for _, c := range []struct {
		head string
		milk float64
		want bool
	}{
		{"milk, made up to 400 g (g)", 250, true},
		{"Milch, aufgefüllt auf 400 g (g)", 250, true},
		{"leche (hasta 400 g) (g)", 250, true},
		{"water to 400 g, g", 250, true},
		{"milk, made up to 400 g (g)", 150, false},
		{"juice of the day up to 400 g (g)", 250, false},
		{"milk (g)", 250, false},
	} {
		col := &handin.Column{Header: c.head, Whole: c.head, Cells: weighed("milk", c.milk, c.milk, c.milk).Cells}
		total := &handin.Column{Header: "total g", Role: column.BatchMass, Cells: weighed("x", 400, 400, 400).Cells}
		madeUp(&handin.Table{Columns: []*handin.Column{weighed("butter", 150, 150, 150), col, total}}, col)
		if got := col.Role == column.IngredientAmount; got != c.want {
			t.Errorf("%q: %v", c.head, got)
		}
	}
}

// TestShareOfMass: heads of a percent of so many grams, and of grams.
func TestShareOfMass(t *testing.T) {
	for head, want := range map[string]column.Role{
		"emulsifier % of the 350 g mix": column.EmulsifierAmount,
		"fat % of 350 g":                column.FatPercent,
		"shine % of 350 g":              column.None,
		"emulsifier g":                  column.IngredientAmount,
		"butter g of 82 %":              column.IngredientAmount,
	} {
		c := weighed(head, 1, 2)
		if shareOfMass(c); c.Role != want {
			t.Errorf("%q: %v", head, c.Role)
		}
	}
}
