package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/reports/planned"
)

// Declared is what a kitchen says of an ingredient, to go with a plan: in the order of the
// Ingredients sheet's columns.
type Declared []string

// Plan is a log of trials to be made, ready to fill in, with what else the plan says on a
// kitchen sheet that our reader takes for no trials.
func Plan(p *result.Plan, own []Declared) ([]byte, error) {
	b := newBook()
	planLog(b, p)
	c := b.sheet("Columns", 30, 20, 10, 10)
	c.heads("Header in the log", "Meaning", "Unit", "Basis")
	c.add(text(reasonHead), text("not used"))
	c.write()
	declaredSheet(b, own)
	planSheet(b, p)
	return b.bytes()
}

// declaredSheet is the kitchen sheet of what is declared, so that the workbook is read as
// the log it came from.
func declaredSheet(b *book, own []Declared) {
	if len(own) == 0 {
		return
	}
	p := b.sheet("Ingredients", 24, 22, 9, 9, 12, 22, 30, 12)
	p.heads("Name in the log", "What it is", "HLB", "Fat %", "Use limit %", "Allergens", "Note", "Prices")
	for _, d := range own {
		var row []cell
		for _, s := range d {
			row = append(row, text(s))
		}
		p.add(row...)
	}
	p.write()
}

// planLog is the sheet that goes to the bench and comes back as a log.
func planLog(b *book, p *result.Plan) {
	columns := planColumns(p)
	widths, heads := make([]float64, len(columns)), make([]string, len(columns))
	for i, c := range columns {
		widths[i], heads[i] = c.width, c.head
	}
	s := b.sheet("Trials", widths...)
	s.add(in(title, "Trials to make"))
	over := min(12, len(columns))
	s.wide(over, in(quiet, planHint(p)))
	s.add()
	s.heads(heads...)
	s.freeze(1)
	first := s.next()
	for _, t := range p.Trials {
		row := make([]cell, len(columns))
		for k, c := range columns {
			row[k] = in(input, nil)
			if c.value != nil {
				row[k] = c.value(t)
			}
		}
		s.add(row...)
	}
	last := len(s.rows)
	s.add()
	for _, c := range p.Cautions {
		s.wide(over, in(caution, c))
	}
	for k, c := range columns {
		if c.choose == nil {
			continue
		}
		v := excelize.NewDataValidation(true)
		v.SetSqref(place(k, first) + ":" + place(k, last))
		s.do(v.SetDropList(c.choose))
		v.ShowErrorMessage = false // people type ✓, and that is read too
		s.do(s.f.AddDataValidation(s.name, v))
	}
	s.write()
}

// planHint is what has to be known before weighing.
func planHint(p *result.Plan) string {
	order := "In this order; thick mixes come last in a day."
	if p.Follows != nil {
		order = "In this order; what may clog comes last."
	}
	hint := order + " Type what happened: yes or no under came out and split; hold 20+ if it still stood at 20, 15-20 between two looks; leave empty what nobody looked at."
	if p.BatchGrams == nil {
		hint = "Grams are for 100 g of mix: weigh so many times as much as your canister's marking allows. " + hint
	}
	if p.Canister == "" || p.Chargers == "" {
		hint += " Fill and chargers: to your canister's marking."
	}
	return hint
}

// planColumn is one column of that log.
type planColumn struct {
	head   string
	width  float64
	value  func(t result.PlannedTrial) cell
	choose []string
}

func planColumns(p *result.Plan) []planColumn {
	said := func(of func(result.PlannedTrial) string) func(result.PlannedTrial) cell {
		return func(t result.PlannedTrial) cell {
			if s := of(t); s != "" {
				return in(ordinary, s)
			}
			return in(input, nil)
		}
	}
	columns := []planColumn{
		{head: "trial", width: 7, value: said(func(t result.PlannedTrial) string { return t.ID })},
		{head: "day", width: 9, value: said(func(t result.PlannedTrial) string { return t.DayName })},
		{head: "cook", width: 9, value: said(func(t result.PlannedTrial) string { return t.Cook })},
	}
	for _, name := range planNames(p) {
		columns = append(columns, planColumn{head: name + " (g)", width: 13, value: func(t result.PlannedTrial) cell {
			for _, l := range t.Ingredients {
				if l.Name == name {
					return in(amount, l.Grams)
				}
			}
			if t.Purpose == "control" { // none of it, and meant so
				return in(amount, 0.0)
			}
			return cell{}
		}})
	}
	return append(columns,
		planColumn{head: "canister", width: 10, value: said(func(result.PlannedTrial) string { return p.Canister })},
		planColumn{head: "chargers", width: 9, value: said(func(result.PlannedTrial) string { return p.Chargers })},
		planColumn{head: "came out", width: 10, choose: []string{"yes", "partly", "no"}},
		planColumn{head: "hold (min)", width: 10},
		planColumn{head: "drained at 20 min (%)", width: 13},
		planColumn{head: "split", width: 9, choose: []string{"yes", "no"}},
		planColumn{head: "notes", width: 30},
		planColumn{head: reasonHead, width: 70, value: func(t result.PlannedTrial) cell { return text(t.Reason) }})
}

// planNames are the ingredients in the order of the plan's needs.
func planNames(p *result.Plan) (names []string) {
	for _, n := range p.Needs {
		if n.Grams > 0 && !slices.Contains(names, n.Name) {
			names = append(names, n.Name)
		}
	}
	return names
}

// planSheet is the kitchen sheet Plan: its settings, and beside them what the plan takes
// and what it will tell.
func planSheet(b *book, p *result.Plan) {
	s := b.sheet("Plan", 22, 44, 3, 90)
	settings := [][2]string{{"Plan number", fmt.Sprint(p.Number)}}
	if p.Follows != nil {
		settings = append(settings, [2]string{"Follows the start", startInWords(p.Follows)})
	} else {
		settings = append(settings, [][2]string{
			{"Ingredients", strings.Join(planNames(p), ", ")},
			{"Fat %", planned.Span(p.Ranges.FatPercent)}, {"Emulsifier %", planned.Span(p.Ranges.EmulsifierPercent)}, {"HLB", planned.Span(*p.Ranges.BlendHLB)},
			{"Trials", fmt.Sprint(len(p.Trials))}, {"Layout", p.Layout}, {"Seed", fmt.Sprint(p.Seed)}}...)
		settings = append(settings, weighedAs(p)...)
	}
	s.add(in(head, "Setting"), in(head, "Value"), cell{}, in(head, "What this plan takes and tells"))
	says := planned.Says(p)
	for i := range max(len(settings), len(says)) {
		row := make([]cell, 4)
		if i < len(settings) {
			row[0], row[1] = text(settings[i][0]), text(settings[i][1])
		}
		if i < len(says) {
			row[3] = text(says[i])
		}
		s.add(row...)
	}
	s.write()
}

// weighedAs are the settings of who makes what when, and of what size, as far as they were
// said: with them the sheet gives this plan again.
func weighedAs(p *result.Plan) (out [][2]string) {
	var days, cooks []string
	for _, t := range p.Trials {
		if t.Day > len(days) {
			days, cooks = append(days, t.DayName), append(cooks, t.Cook)
		}
	}
	out = append(out, [2]string{"Days", strings.Join(days, ", ")})
	if len(cooks) > 0 && cooks[0] != "" {
		out = append(out, [2]string{"Cooks", strings.Join(cooks, ", ")})
	}
	if p.BatchGrams != nil {
		out = append(out, [2]string{"Batch", exact(*p.BatchGrams) + " g"}, [2]string{"Scale step", exact(p.ScaleStepGrams) + " g"})
	}
	if p.Canister != "" {
		out = append(out, [2]string{"Canister", p.Canister})
	}
	if p.Chargers != "" {
		out = append(out, [2]string{"Chargers", p.Chargers})
	}
	return out
}

func startInWords(f *result.PlanFollows) string {
	var all []string
	for _, l := range f.Ingredients {
		if l.Together || l.BlendedToHLB != nil { // grams that do not say the mix
			all = nil
			break
		}
		all = append(all, fmt.Sprintf("%s %s g", l.Name, exact(l.Grams)))
	}
	if len(all) == 0 && f.Mix.FatPercent != nil {
		all = append(all, fmt.Sprintf("fat %.1f %%", *f.Mix.FatPercent))
		switch m := f.Mix; {
		case m.EmulsifierPercent != nil:
			all = append(all, fmt.Sprintf("emulsifier %.2f %%", *m.EmulsifierPercent))
		case m.EmulsifierGrams != nil:
			all = append(all, fmt.Sprintf("emulsifier %.1f g", *m.EmulsifierGrams))
		}
		if h := f.Mix.BlendHLB; h != nil {
			all = append(all, fmt.Sprintf("HLB %.1f", *h))
		}
	}
	if len(all) == 0 {
		return "no start could be named"
	}
	return strings.Join(all, ", ")
}
