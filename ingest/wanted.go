package ingest

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// wanted is a row of a Targets sheet that is none of ours: what it means depends
// on the columns of the log.
type wanted struct {
	name, text, unit string
	named, told      trial.Place // of the first two cells
}

// overWanted lays rows over others; of one name the first counts.
func overWanted(over, under []wanted) []wanted {
	out := slices.Clone(over)
	for _, w := range under {
		if !slices.ContainsFunc(out, func(o wanted) bool { return fold(o.name) == fold(w.name) }) {
			out = append(out, w)
		}
	}
	return out
}

// settleWanted finds the result that each such row speaks of.
func (r *reader) settleWanted(rows []wanted) {
	for _, w := range rows {
		v, ok := r.resultCalled(w.name)
		if !ok {
			r.problem("unknown target", trial.PleaseLook, w.named, strconv.Quote(w.name)+" is no target and no result of this log",
				"type one of: "+strings.Join(r.targetNames(), ", "))
			continue
		}
		if i := slices.IndexFunc(r.log.Targets.Results, func(t trial.ResultTarget) bool { return t.Result.Name == v.Name }); i >= 0 {
			r.problem(askedTwice, trial.PleaseLook, w.named, v.Label+" is asked for at "+r.log.Targets.Results[i].At.String()+" too", howToAskTwice)
			continue
		}
		m, err := w.read(v)
		low, high := m.Low, m.High
		switch {
		case err != nil || math.IsInf(low, 0) && math.IsInf(high, 0):
			r.problem("target not read", trial.MustFix, w.told, strconv.Quote(w.text)+" is no range of "+w.name,
				"type for example: at least 6, at most 3, or 6 to 8")
		case low == high:
			r.problem("target not read", trial.MustFix, w.told,
				strconv.Quote(w.text)+" does not say whether more or less of "+w.name+" would do as well",
				fmt.Sprintf("type at least %s, at most %[1]s, or a range such as %[1]s to %s", number(low), number(low+1)))
		default:
			r.log.Targets.Results = append(r.log.Targets.Results, trial.ResultTarget{Result: v, Interval: trial.Interval{Low: low, High: high}, At: w.told})
		}
	}
}

// What is said of a target that stands twice: the first counts.
const (
	askedTwice    = "target twice"
	howToAskTwice = "delete one of the rows; the first is used. Both ends of a range go in one row, such as 4 to 6"
)

// read reads what is asked in the unit of the cell, of the Unit column, or else the result's own.
func (w wanted) read(v trial.Variable) (quantity.Reading, error) {
	own, measured := quantity.ParseUnit(v.Unit)
	if !measured {
		return quantity.Parse(w.text, quantity.Plain, quantity.NoUnit)
	}
	unit := own
	if w.unit != "" {
		u, ok := quantity.ParseUnit(w.unit)
		if !ok || u.Dimension() != own.Dimension() {
			return quantity.Reading{}, fmt.Errorf("%s is no unit of %s", w.unit, v.Label)
		}
		unit = u
	}
	return quantity.Parse(w.text, own.Dimension(), unit)
}

// resultCalled is the result that a kitchen calls so: by its label or its header,
// with or without the unit.
func (r *reader) resultCalled(name string) (trial.Variable, bool) {
	called := []string{name}
	for _, c := range r.log.Columns {
		if words := column.Read(c.Header).Words; fold(c.Header) == fold(name) || fold(words) == fold(name) {
			called = append(called, c.ReadAs, words)
		}
	}
	for _, name := range called {
		for _, v := range r.log.Extras {
			if v.Result && (fold(v.Label) == fold(name) || fold(v.Name) == fold(name)) {
				return v, true
			}
		}
	}
	return trial.Variable{}, false
}

// targetNames is what a row of a Targets sheet can be called in this log.
func (r *reader) targetNames() (names []string) {
	for _, t := range targetRows {
		names = append(names, t.name)
	}
	for _, v := range r.log.Extras {
		if v.Result {
			names = append(names, v.Label)
		}
	}
	return names
}
