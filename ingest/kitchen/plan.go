package kitchen

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Setting is a row of a Plan sheet, as typed.
type Setting struct {
	Name, Text string
	At         trial.Place
}

// PlanSettings is what a Plan sheet can set.
var PlanSettings = []string{"Ingredients", "Fat %", "Emulsifier %", "HLB", "Trials", "Days", "Cooks", "Batch", "Canister", "Chargers", "Scale step", "Stock", "Seed", "Layout"}

// Story is what a plan of ours says of itself on its Plan sheet.
type Story struct {
	Number  string // of the plan
	Follows string // the start it went on from, in words; "" = none
	At      trial.Place
}

func (k *taker) plan(t table) {
	for row := range t.rows {
		name, text := t.text(row, 0), t.text(row, 1)
		if name == "" || text == "" {
			continue
		}
		s := Setting{Text: text, At: t.at(row, 1)}
		switch say.Fold(name) {
		case "plan number":
			k.Story.Number, k.Story.At = text, s.At
			continue
		case "follows the start":
			k.Story.Follows = text
			continue
		}
		i := slices.IndexFunc(PlanSettings, func(n string) bool { return say.Fold(n) == say.Fold(name) })
		if i < 0 {
			k.say(trial.Fix("setting not known", t.at(row, 0), say.Quoted(name)+" is nothing a plan can be set",
				fmt.Sprintf("type one of: %s", strings.Join(PlanSettings, ", "))))
			continue
		}
		s.Name = PlanSettings[i]
		if slices.ContainsFunc(k.Plan, func(o Setting) bool { return o.Name == s.Name }) {
			k.say(trial.Check("setting twice", t.at(row, 0), s.Name+" is set above too", "delete one of the rows; the first is used"))
			continue
		}
		k.Plan = append(k.Plan, s)
	}
}

// StartOf is a start that a plan wrote down in words, in grams of each ingredient or as fat,
// emulsifier and HLB; nil if it is none.
func StartOf(text string) *trial.Try {
	said, err := ParseTries(text)
	if err != nil || len(said) != 1 {
		return nil
	}
	start := said[0]
	if slices.ContainsFunc(start.Parts, func(p trial.TryPart) bool { return p.Percent }) || start.Fat == nil && len(start.Parts) == 0 {
		return nil
	}
	return &start
}
