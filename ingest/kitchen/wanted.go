package kitchen

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Wanted is a row of a Targets sheet that is none of ours: what it means depends
// on the columns of the log.
type Wanted struct {
	name, text, unit string
	named, told      trial.Place // of the first two cells
}

func (k *taker) want(w Wanted) {
	if j := slices.IndexFunc(k.Wanted, func(o Wanted) bool { return say.Fold(o.name) == say.Fold(w.name) }); j >= 0 {
		k.say(trial.Check(askedTwice, w.named, w.name+" is asked for at "+k.Wanted[j].told.String()+" too", howToAskTwice))
		return
	}
	k.Wanted = append(k.Wanted, w)
}

// overWanted lays rows over others; of one name the first counts.
func overWanted(over, under []Wanted) []Wanted {
	out := slices.Clone(over)
	for _, w := range under {
		if !slices.ContainsFunc(out, func(o Wanted) bool { return say.Fold(o.name) == say.Fold(w.name) }) {
			out = append(out, w)
		}
	}
	return out
}

// Settle finds the result of a log that each such row speaks of.
func Settle(rows []Wanted, columns []trial.Column, variables []trial.Variable) (targets []trial.ResultTarget, found []trial.Finding) {
	for _, w := range rows {
		v, ok := called(w.name, columns, variables)
		if !ok {
			found = append(found, trial.Check("unknown target", w.named, strconv.Quote(w.name)+" is no target and no result of this log",
				"type one of: "+strings.Join(append(TargetNames(), results(variables)...), ", ")))
			continue
		}
		if i := slices.IndexFunc(targets, func(t trial.ResultTarget) bool { return t.Result.Name == v.Name }); i >= 0 {
			found = append(found, trial.Check(askedTwice, w.named, v.Label+" is asked for at "+targets[i].At.String()+" too", howToAskTwice))
			continue
		}
		m, err := w.read(v)
		low, high := m.Low, m.High
		switch {
		case err != nil || math.IsInf(low, 0) && math.IsInf(high, 0):
			found = append(found, trial.Fix("target not read", w.told, strconv.Quote(w.text)+" is no range of "+w.name,
				"type for example: at least 6, at most 3, or 6 to 8"))
		case low == high:
			found = append(found, trial.Fix("target not read", w.told,
				strconv.Quote(w.text)+" does not say whether more or less of "+w.name+" would do as well",
				fmt.Sprintf("type at least %s, at most %[1]s, or a range such as %[1]s to %s", say.Number(low), say.Number(low+1))))
		default:
			targets = append(targets, trial.ResultTarget{Result: v, Interval: trial.Interval{Low: low, High: high}, At: w.told})
		}
	}
	return targets, found
}

// read reads what is asked in the unit of the cell, of the Unit column, or else
// the result's own.
func (w Wanted) read(v trial.Variable) (quantity.Reading, error) {
	own, measured := units.Parse(v.Unit)
	if !measured {
		return quantity.Parse(w.text, units.Plain, units.NoUnit)
	}
	unit := own
	if w.unit != "" {
		u, ok := units.Parse(w.unit)
		if !ok || u.Dimension() != own.Dimension() {
			return quantity.Reading{}, fmt.Errorf("%s cannot be read as a unit of %s", w.unit, v.Label)
		}
		unit = u
	}
	return quantity.Parse(w.text, own.Dimension(), unit)
}

// called is the result that a kitchen calls so: by its label or its header, with
// or without the unit.
func called(name string, columns []trial.Column, variables []trial.Variable) (trial.Variable, bool) {
	names := []string{name}
	for _, c := range columns {
		if words := column.Read(c.Header).Words; say.Fold(c.Header) == say.Fold(name) || say.Fold(words) == say.Fold(name) {
			names = append(names, c.ReadAs, words)
		}
	}
	for _, name := range names {
		for _, v := range variables {
			if v.Result && (say.Fold(v.Label) == say.Fold(name) || say.Fold(v.Name) == say.Fold(name)) {
				return v, true
			}
		}
	}
	return trial.Variable{}, false
}

// unwelcome are scores of which less is better; of any other more is.
var unwelcome = []string{"waxy", "wax", "greasy", "grease", "oily", "grainy", "grain", "graininess", "gritty", "bitter", "soapy", "sour", "salty", "off", "rancid", "chalky", "slimy", "sticky", "astringent", "weep", "runny"}

// Offer names the scores of a log that nobody asks for, with the row that would.
func Offer(targets []trial.ResultTarget, columns []trial.Column, variables []trial.Variable) (found []trial.Finding) {
	for _, v := range variables {
		if !v.Result || v.OutOf == 0 || slices.ContainsFunc(targets, func(t trial.ResultTarget) bool { return t.Result.Name == v.Name }) {
			continue
		}
		i := slices.IndexFunc(columns, func(c trial.Column) bool {
			return say.Fold(column.Read(c.Header).Words) == say.Fold(v.Label) || c.ReadAs == v.Label
		})
		if i < 0 {
			continue
		}
		row := fmt.Sprintf("%s | at least %s", v.Label, say.Number(math.Ceil(0.7*float64(v.OutOf))))
		if slices.ContainsFunc(strings.Fields(say.Fold(v.Label)), func(w string) bool { return slices.Contains(unwelcome, w) }) {
			row = fmt.Sprintf("%s | at most %s", v.Label, say.Number(math.Floor(0.4*float64(v.OutOf))))
		}
		found = append(found, trial.Note("score not asked for", columns[i].At, say.Quoted(columns[i].Header)+" is logged but nobody asked for it",
			"if it counts, type on a Targets sheet, under Target | Value: "+row))
	}
	return found
}

func results(variables []trial.Variable) (names []string) {
	for _, v := range variables {
		if v.Result {
			names = append(names, v.Label)
		}
	}
	return names
}
