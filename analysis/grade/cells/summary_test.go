package cells

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestIsPlan: tables of what was meant to be made, beside the table where it was weighed.
func TestIsPlan(t *testing.T) {
	table := func(weighed, results int, ids ...string) *handin.Table {
		tab := &handin.Table{}
		for i, id := range ids {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: tab})
		}
		for k := range weighed + results {
			c := &handin.Column{Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true}}
			if k >= weighed {
				c.Role = column.Hold
			}
			for range ids {
				c.Cells = append(c.Cells, handin.Cell{Kind: sheet.Number, Known: true, Value: 1})
			}
			tab.Columns = append(tab.Columns, c)
		}
		return tab
	}
	log := table(4, 1, "1", "2", "3", "L1-a", "L1.1", "L1.2", "L2-1", "L2-2")
	for _, c := range []struct {
		what string
		t    *handin.Table
		want bool
	}{
		{"one column of the same trials", table(1, 0, "1", "2"), true},
		{"no grams at all", table(0, 0, "T1", "T2", "T3"), true},
		{"with results of its own", table(1, 1, "1", "2"), false},
		{"weighed as well", table(3, 0, "1", "2"), false},
		{"a trial more", table(1, 0, "1", "2", "4"), false},
		{"without numbers", table(1, 0, "", ""), false},
		{"of makings, by what their names have in common", table(0, 0, "L1", "L2"), true},
		{"and of others", table(0, 0, "L1", "L3"), false},
	} {
		if got := isPlan(c.t, []*handin.Table{c.t, log}); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
	}
	for _, c := range []struct {
		what string
		t    *handin.Table
		want bool
	}{
		{"a row a level, beside the grams of one thing", table(1, 1, "L1", "L2"), true},
		{"a row a level", table(0, 2, "L1", "L2"), true},
		{"with what was made once", table(1, 1, "1", "L1", "L2"), true},
		{"the trials themselves", table(1, 1, "1", "2"), false},
		{"weighed as well", table(2, 1, "L1", "L2"), false},
		{"a level that nobody made", table(1, 1, "L1", "L2", "L4"), false},
		{"without names", table(1, 1, "L1", "L2", ""), false},
		{"a row below of all", table(0, 1, "L1", "L2", "median of both"), true},
		{"a row of words that was weighed", table(1, 1, "L1", "L2", "the other one"), false},
	} {
		if got := ofLevels(c.t, []*handin.Table{c.t, log}); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
	}
}

// TestIsList: ingredients with their fat are no trials; rows without weights of which something was seen are.
func TestIsList(t *testing.T) {
	list := func(cameOut trial.Answer, first ...string) *handin.Table {
		tab := &handin.Table{Columns: []*handin.Column{{}}}
		for i, text := range first {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{CameOut: cameOut}, Index: i, Table: tab})
			tab.Columns[0].Cells = append(tab.Columns[0].Cells, handin.Cell{Text: text})
		}
		return tab
	}
	for _, c := range []struct {
		what string
		t    *handin.Table
		want bool
	}{
		{"ingredients", list(trial.Unknown, "Butter", "GMS", "Water"), true},
		{"trials that came out", list(trial.Yes, "Butter", "Cream"), false},
		{"trials", list(trial.Unknown, "T1", "T2"), false},
	} {
		if got := isList(c.t); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
	}
}
