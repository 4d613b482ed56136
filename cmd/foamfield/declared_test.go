package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest"
	"foamfield/ingest/ingredient"
)

// An ingredient is declared by what its names do not say, and read again as it was.
func TestDeclare(t *testing.T) {
	shipped := func(name string) ingredient.Ingredient {
		i, ok := ingredient.Lookup(name)
		if !ok {
			t.Fatalf("%s is not known", name)
		}
		return i
	}
	priced := shipped("GMS")
	priced.Price = &ingredient.Price{PerGram: 0.012, Currency: "€"}
	measured := shipped("GMS")
	measured.HLB = &ingredient.Range{Low: 4, Value: 4, High: 4}
	for _, c := range []struct {
		name, known string
		i           ingredient.Ingredient
		want        string
	}{
		{"GMS", "", shipped("GMS"), ""},
		{"cream 35", "", shipped("cream 35"), ""},
		{"GMS", "", priced, "GMS|emulsifier||||||€ 12 / kg"}, // its HLB has no middle in its range: not typed again
		{"GMS", "", measured, "GMS|emulsifier|4|||||"},
		{"white flakes", "GMS", shipped("GMS"), "white flakes|GMS||||||"},
		{"blue tin", "", ingredient.Ingredient{Kind: ingredient.Emulsifier, HLB: &ingredient.Range{Low: 13, Value: 13.5, High: 14}}, "blue tin|emulsifier|13-14|||||"},
		{"house fat", "", ingredient.Ingredient{Kind: ingredient.Fat, FatPercent: &ingredient.Range{Low: 91, Value: 91, High: 91}, Allergens: []string{"milk"}, Note: "tin of May"}, "house fat|fat||91||milk|tin of May|"},
	} {
		if got := strings.Join(declare(c.name, c.known, c.i), "|"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// The next trials are read as the log is, alone and beside it, whatever sheet of the log says
// what its ingredients are.
func TestNextTrialsTakeTheIngredientsAlong(t *testing.T) {
	rows := [][]any{{"trial", "barrel fat g", "pear must g", "white flakes g", "blue tin g", "came out", "hold min", "drained % at 20 min", "split"}}
	for i := range 12 {
		rows = append(rows, []any{i + 1, 100 + 7*i, 180 - 7*i, 4 + i%3, 1 + i%4, "yes", 12 + 3*((i*5)%7), 4 + i%6, "no"})
	}
	log := kitchenBook(t, map[string][][]any{"Log": rows, "Ingredients": {
		{"Name in the log", "What it is", "HLB", "Fat %", "Use limit %", "Allergens", "Note", "Prices"},
		{"barrel fat", "fat", nil, 96, nil, "milk", nil, "€ 9 / kg"}, {"pear must", "water part"}, {"white flakes", "GMS", nil, nil, 3}, {"blue tin", "emulsifier", "12-14"}}})
	dir := t.TempDir()
	next := filepath.Join(dir, "next.xlsx")
	called(t, exitDone, "plan", next, "--after", log, "--quiet")
	made := filepath.Join(dir, "report")
	called(t, exitDone, "report", log, "--out", made, "--write", "xlsx", "--quiet")
	for _, next := range []string{next, filepath.Join(made, "next-trials.xlsx")} {
		typeResults(t, next)
		want := ingredientsOf(t, log)
		for _, logs := range [][]string{{next}, {log, next}, {next, log}} {
			if got := ingredientsOf(t, logs...); !slices.Equal(got, want) {
				t.Errorf("%v: read\n%s\nwant\n%s", logs, strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
		}
	}
}

// typeResults fills in what the first trial of a plan came to.
func typeResults(t *testing.T, path string) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	const sheet = "Next trials"
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows {
		k := slices.Index(row, "came out")
		if k < 0 {
			continue
		}
		at, err := excelize.CoordinatesToCellName(k+1, i+2)
		if err == nil {
			err = f.SetSheetRow(sheet, at, &[]any{"yes", 22})
		}
		if err == nil {
			err = f.Save()
		}
		if err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Fatal("no column for what came out")
}

// ingredientsOf are those of logs as they are read, whoever says so.
func ingredientsOf(t *testing.T, logs ...string) (said []string) {
	t.Helper()
	log, err := ingest.Read(logs, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range log.Questions {
		t.Errorf("%v: asked %s", logs, q.Asked)
	}
	for _, i := range log.Ingredients {
		number := func(r *ingredient.Range) string {
			if r == nil {
				return "?"
			}
			return fmt.Sprint(*r)
		}
		limit := 0.0
		for _, l := range i.Limits {
			if l.Own {
				limit = l.Percent
			}
		}
		price := "?"
		if i.Price != nil {
			price = fmt.Sprintf("%.4g %s", i.Price.PerGram, i.Price.Currency)
		}
		s := fmt.Sprintln(i.Name, i.Known, i.Kind, "HLB", number(i.HLB), "fat", number(i.FatPercent), "limit", limit, i.Allergens, price)
		if !slices.Contains(said, s) {
			said = append(said, s)
		}
	}
	slices.Sort(said)
	return said
}
