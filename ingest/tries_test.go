package ingest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/kitchen"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

func tryText(t trial.Try) string {
	show := func(v *float64) string {
		if v == nil {
			return "-"
		}
		return fmt.Sprintf("%g", *v)
	}
	if len(t.Parts) > 0 {
		return fmt.Sprint(t.Parts)
	}
	return strings.Join([]string{show(t.Fat), show(t.Emulsifier), show(t.EmulsifierGrams), show(t.HLB)}, " ")
}

func TestParseTries(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"fat 52, emulsifier 2.4, hlb 8", "52 2.4 - 8"},
		{"Fat 52 %, Emulsifiers 7 g; HLB: 8,5", "52 - 7 -|- - - 8.5"},
		{"fat=52,5, blend hlb = 8", "52.5 - - 8"},
		{" ; fat 40 ; ", "40 - - -"},
		{"", "no formula was typed"},
		{"sugar 3", "[{sugar 3 false}]"},
		{"olive oil 220, GMS 4.2; fat 52", "[{olive oil 220 false} {GMS 4.2 false}]|52 - - -"},
		{"huile d'olive 52 %, ester de sucre 15: 0,8 %", "[{huile d'olive 52 true} {ester de sucre 15 0.8 true}]"},
		{"butter 120, fat 40", "no value of a formula"},
		{"2 parts GMS", "is in parts"},
		{"fat", "no value of a formula"},
		{"fat 52 g", "no value of a formula"},
		{"fat 52, fat 53", "given twice"},
		{"fat 140", "cannot be: at most 100"},
		{"fat -3", "no value of a formula"},
		{"hlb 8 %", "no value of a formula"},
		{"fat 5e3", "no value of a formula"},
	} {
		tries, err := kitchen.ParseTries(c.typed)
		var got []string
		for _, one := range tries {
			got = append(got, tryText(one))
		}
		if err != nil {
			if !strings.Contains(err.Error(), c.want) {
				t.Errorf("%q: %v, want %q", c.typed, err, c.want)
			}
		} else if strings.Join(got, "|") != c.want {
			t.Errorf("%q is %q, want %q", c.typed, got, c.want)
		}
	}
}

// A Try sheet in the log, and one in a kitchen workbook, are both asked, each once.
func TestTrySheet(t *testing.T) {
	book := func(name string, rows ...[]any) string {
		f := excelize.NewFile()
		defer f.Close()
		if _, err := f.NewSheet("Try"); err != nil {
			t.Fatal(err)
		}
		for i, row := range append([][]any{{"Formula", "Fat %", "Emulsifier %", "HLB"}}, rows...) {
			if err := f.SetSheetRow("Try", fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
		for i, row := range [][]any{{"fat %", "emulsifier %", "HLB", "hold min"}, {40, 2, 8, 12}, {41, 2, 8, 13}} {
			if err := f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
		path := filepath.Join(t.TempDir(), name)
		if err := f.SaveAs(path); err != nil {
			t.Fatal(err)
		}
		return path
	}
	log, err := Read([]string{book("log.xlsx", []any{"rich", 52, "2,4", 8}, []any{"", "lots", "", ""}, []any{"", "", "3 %", ""})},
		Options{Kitchen: book("kitchen.xlsx", []any{"house", 45, 2, 9})})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, one := range log.Tries {
		got = append(got, one.Name+" "+tryText(one)+" "+one.From)
	}
	want := "house 45 2 - 9 kitchen.xlsx, sheet Try, cell B2|rich 52 2.4 - 8 log.xlsx, sheet Try, cell B2| - 3 - - log.xlsx, sheet Try, cell B4"
	if strings.Join(got, "|") != want {
		t.Errorf("%q, want %q", strings.Join(got, "|"), want)
	}
	bad := false
	for _, p := range log.Problems {
		bad = bad || p.Kind == "formula not read" && p.At.String() == "log.xlsx, sheet Try, cell B3"
	}
	if !bad {
		t.Errorf("lots of fat is no problem: %v", log.Problems)
	}
}
