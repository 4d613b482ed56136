package main

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
	"foamfield/reports/workbook"
)

// A workbook of trials to make goes its own way, apart from the log: what the log's own
// sheets say of an ingredient goes with it.

// declaredFor is what the log says of the ingredients of its next trials and their names do
// not. One of which the log says two things is left for the reader to ask about.
func declaredFor(log *trial.Log, next []result.NextTrial) (out []workbook.Declared) {
	for i, met := range log.Ingredients {
		same := func(o ingredient.Ingredient) bool { return o.Name == met.Name }
		if slices.ContainsFunc(log.Ingredients[:i], same) || !weighed(next, met.Name) {
			continue
		}
		if slices.ContainsFunc(log.Ingredients[i:], func(o ingredient.Ingredient) bool { return same(o) && !alike(o, met) }) {
			continue
		}
		if row := declare(met.Name, met.Known, met); row != nil {
			out = append(out, row)
		}
	}
	return out
}

func weighed(next []result.NextTrial, name string) bool {
	return slices.ContainsFunc(next, func(n result.NextTrial) bool {
		return slices.ContainsFunc(n.Ingredients, func(l result.FormulaLine) bool { return l.Name == name })
	})
}

func alike(a, b ingredient.Ingredient) bool {
	return a.Kind == b.Kind && reflect.DeepEqual(a.HLB, b.HLB) && reflect.DeepEqual(a.FatPercent, b.FatPercent)
}

// declare is the row of an Ingredients sheet by which an ingredient is read again as it was:
// no cell repeats what its names say already. Known is the name it goes by where the log has
// one of its own. nil = the names say all.
func declare(name, known string, i ingredient.Ingredient) workbook.Declared {
	what := i.Kind.String()
	from, named := ingredient.Lookup(name)
	asNamed := named && from.Kind == i.Kind
	if !asNamed {
		if from, named = ingredient.Lookup(known); named && from.Kind == i.Kind {
			what = known
		} else {
			from = ingredient.Ingredient{Kind: i.Kind}
		}
	}
	row := workbook.Declared{name, what, rangeSaid(i.HLB, from.HLB), rangeSaid(i.FatPercent, from.FatPercent), "", "", "", ""}
	for _, l := range i.Limits {
		if l.Own {
			row[4] = strconv.FormatFloat(l.Percent, 'f', -1, 64)
		}
	}
	if !slices.Equal(i.Allergens, from.Allergens) {
		row[5] = strings.Join(i.Allergens, ", ")
	}
	if i.Note != from.Note {
		row[6] = i.Note
	}
	if i.Price != nil {
		row[7] = strings.TrimSpace(i.Price.Currency+" "+strconv.FormatFloat(i.Price.PerGram*1000, 'f', -1, 64)) + " / kg"
	}
	if asNamed && !slices.ContainsFunc(row[2:], func(cell string) bool { return cell != "" }) {
		return nil
	}
	return row
}

// rangeSaid writes a value where the name has another.
func rangeSaid(r, named *ingredient.Range) string {
	write := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	switch {
	case r == nil || named != nil && *r == *named:
		return ""
	case r.Value != (r.Low+r.High)/2 || r.Low == r.High: // a range is read as its middle
		return write(r.Value)
	}
	return write(r.Low) + "-" + write(r.High)
}
