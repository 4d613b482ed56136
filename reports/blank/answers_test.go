package blank

import (
	"bytes"
	"reflect"
	"testing"

	"github.com/xuri/excelize/v2"
)

func TestKitchen(t *testing.T) {
	content, err := Kitchen([]Answer{
		{"Ingredients", []string{"=1+1", "emulsifier"}},
		{"Ingredients", []string{"=1+1", "", "3.8"}},
		{"Columns", []string{"stays", "hold", "min"}},
		{"Targets", []string{"Batch", "450"}},
		{"Targets", []string{"taste", "4 to 6"}},
	})
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if got, want := f.GetSheetList(), []string{"Targets", "Ingredients", "Columns"}; !reflect.DeepEqual(got, want) {
		t.Errorf("sheets %v, want %v", got, want)
	}
	for _, c := range []struct{ sheet, cell, want string }{
		{"Ingredients", "A5", "=1+1"}, {"Ingredients", "B5", "emulsifier"}, {"Ingredients", "C5", "3.8"}, {"Ingredients", "A6", ""},
		{"Columns", "A5", "stays"}, {"Columns", "B5", "hold"}, {"Columns", "C5", "min"},
		{"Targets", "A5", "holds at least"}, {"Targets", "B5", ""}, {"Targets", "A9", "batch"}, {"Targets", "B9", "450"}, {"Targets", "A11", "canisters"}, {"Targets", "A12", "taste"}, {"Targets", "B12", "4 to 6"},
	} {
		if got, err := f.GetCellValue(c.sheet, c.cell); err != nil || got != c.want {
			t.Errorf("%s %s is %q (%v), want %q", c.sheet, c.cell, got, err, c.want)
		}
	}
	if formula, _ := f.GetCellFormula("Ingredients", "A5"); formula != "" {
		t.Errorf("an answer became the formula %q", formula)
	}
	if kind, _ := f.GetCellType("Ingredients", "C5"); kind != excelize.CellTypeUnset && kind != excelize.CellTypeNumber {
		t.Errorf("a number was written as a text (%v)", kind)
	}
}

func TestRoom(t *testing.T) {
	for sheet, want := range map[string]int{"Targets": 3, "Ingredients": 8, "Columns": 4, "Method": 0, "Log": 0, "": 0} {
		if got := Room(sheet); got != want {
			t.Errorf("%q has room for %d cells, want %d", sheet, got, want)
		}
	}
}
