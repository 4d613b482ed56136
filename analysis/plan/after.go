package plan

import (
	"cmp"
	"fmt"
	"foamfield/ingest/pattern"
	"slices"
	"strconv"

	"foamfield/analysis/result"
)

// Shifts are who makes trials on which days; the zero value is as the log has it.
type Shifts struct{ Days, Cooks []string }

// After is the next trials of a report as a plan, in the report's order: at most so many,
// 0 = all. The results it returns are those given with these trials only.
func After(r *result.Results, many int, on Shifts) (*result.Plan, *result.Results) {
	ordered := *r
	ordered.NextTrials = slices.Clone(r.NextTrials)
	if many > 0 {
		ordered.NextTrials = ordered.NextTrials[:min(many, len(ordered.NextTrials))]
	}
	batch := r.Batch.Grams
	p := &result.Plan{Schema: result.PlanSchema, Version: r.Version, Seed: r.Seed, Number: r.NextPlan, Layout: "next", Follows: follows(r),
		BatchGrams: &batch, ScaleStepGrams: r.Batch.ScaleStepGrams, Canister: r.Batch.Canister, Chargers: chargers(r),
		Trials: []result.PlannedTrial{}, Needs: []result.PlanNeed{}, Cannot: []string{}, Notes: []string{}, Cautions: slices.Clone(Cautions)}
	on = on.after(r)
	ids := idsAfter(r, len(ordered.NextTrials))
	order := map[int]int{}
	for i, n := range ordered.NextTrials {
		day := i * len(on.Days) / len(ordered.NextTrials)
		order[day]++
		p.Trials = append(p.Trials, result.PlannedTrial{ID: ids[i], Day: day + 1, Order: order[day], DayName: on.Days[day], Cook: on.Cooks[day%len(on.Cooks)],
			Purpose: n.Purpose, Mix: n.Mix, Ingredients: n.Ingredients, Reason: n.Reason, Thick: clogs(n) > 0, Skip: []string{}, ClogChance: n.ClogChance})
	}
	skipAfter(p)
	p.Ranges = rangesAfter(p.Trials)
	for _, t := range p.Trials {
		for _, l := range t.Ingredients {
			i := slices.IndexFunc(p.Needs, func(n result.PlanNeed) bool { return n.Name == l.Name })
			if i < 0 {
				i, p.Needs = len(p.Needs), append(p.Needs, result.PlanNeed{Name: l.Name})
			}
			p.Needs[i].Grams += l.Grams
		}
	}
	for i := range p.Needs {
		p.Needs[i].Grams = roundHundredth(p.Needs[i].Grams)
	}
	if many > len(p.Trials) {
		p.Notes = append(p.Notes, fmt.Sprintf("%d trials were asked for; %d are worth making before what they show is read.", many, len(p.Trials)))
	}
	return p, &ordered
}

// InOrder brings trials to make into their order, for reports and plans alike: those that
// hardly clog first, as they were named; then the likelier the later.
func InOrder(trials []result.NextTrial) {
	slices.SortStableFunc(trials, func(a, b result.NextTrial) int { return cmp.Compare(clogs(a), clogs(b)) })
}

// countedDay is a day that a log counts, in its own way of writing.
var countedDay = pattern.Of(`(?i)^\s*(day ?|d ?)?([0-9]{1,3})\s*$`)

// after fills in what was not said: the day after the last where the log counts its days, and
// its cook where it has one. A date to come is for the kitchen to say.
func (on Shifts) after(r *result.Results) Shifts {
	last, next, counts := 0, "", true
	var cooks []string
	for _, t := range r.Trials {
		if !t.Used { // a row that nobody finished says nothing of how days are counted
			continue
		}
		if m := countedDay.FindStringSubmatch(t.Day); m == nil {
			counts = false
		} else if n, err := strconv.Atoi(m[2]); err == nil && n > last {
			last, next = n, fmt.Sprint(m[1], n+1)
		}
		if !slices.Contains(cooks, t.Cook) {
			cooks = append(cooks, t.Cook)
		}
	}
	if len(on.Days) == 0 {
		on.Days = []string{""}
		if counts {
			on.Days[0] = next
		}
	}
	if len(on.Cooks) == 0 {
		on.Cooks = []string{""}
		if len(cooks) == 1 {
			on.Cooks = cooks
		}
	}
	return on
}

// hardly is the chance of clogging up to which a trial need not come last.
const hardly = 0.1

// clogs is the chance that a trial clogs where it is worth an order, else 0.
func clogs(n result.NextTrial) float64 {
	if n.ClogChance == nil || *n.ClogChance <= hardly {
		return 0
	}
	return *n.ClogChance
}

// skipAfter leaves out, once a trial has clogged, those after it that are as thick.
func skipAfter(p *result.Plan) {
	thick := func(m result.Mix) (float64, bool) {
		if m.FatPercent == nil || m.EmulsifierPercent == nil || m.BlendHLB == nil {
			return 0, false
		}
		return Thickness(Mix{*m.FatPercent, *m.EmulsifierPercent, *m.BlendHLB}), true
	}
	for i := range p.Trials {
		own, ok := thick(p.Trials[i].Mix)
		for _, later := range p.Trials[i+1:] {
			if other, known := thick(later.Mix); ok && known && other >= own-1e-9 {
				p.Trials[i].Skip = append(p.Trials[i].Skip, later.ID)
			}
		}
	}
}

func rangesAfter(trials []result.PlannedTrial) (r result.PlanRanges) {
	first := true
	for _, t := range trials {
		if t.Mix.FatPercent == nil || t.Mix.EmulsifierPercent == nil {
			continue
		}
		f, e := *t.Mix.FatPercent, *t.Mix.EmulsifierPercent
		if first {
			r.FatPercent, r.EmulsifierPercent, first = [2]float64{f, f}, [2]float64{e, e}, false
		}
		r.FatPercent = [2]float64{min(r.FatPercent[0], f), max(r.FatPercent[1], f)}
		r.EmulsifierPercent = [2]float64{min(r.EmulsifierPercent[0], e), max(r.EmulsifierPercent[1], e)}
	}
	return r
}

// follows is the surest start of the logs.
func follows(r *result.Results) *result.PlanFollows {
	f := &result.PlanFollows{Logs: []string{}, Ingredients: []result.FormulaLine{}}
	for _, in := range r.Inputs {
		f.Logs = append(f.Logs, in.File)
	}
	for _, s := range r.Starts {
		if s.Aim == result.Surest {
			chance := s.Chance.Mean
			f.Mix, f.Ingredients, f.Chance = s.Mix, s.Ingredients, &chance
		}
	}
	return f
}

// chargers is how many every trial used that says so; "" if they differ, or were not the
// same size of canister: never more than what was logged.
func chargers(r *result.Results) string {
	said := ""
	for _, t := range r.Trials {
		v, ok := t.Extras["chargers"]
		if !ok || !t.Used {
			continue
		}
		text := strconv.FormatFloat(v, 'f', -1, 64)
		if said != "" && said != text || r.Batch.Canister == "" {
			return ""
		}
		said = text
	}
	return said
}

var numbered = pattern.Of(`^(.*?)([0-9]+)$`)

// idsAfter go on from the log's own numbers, in its own way of writing them.
func idsAfter(r *result.Results, many int) []string {
	prefix, last := "N", 0
	for _, t := range r.Trials {
		m := numbered.FindStringSubmatch(t.ID)
		if m == nil {
			continue
		}
		if n, err := strconv.Atoi(m[2]); err == nil && n >= last && n < 1e9 {
			prefix, last = m[1], n
		}
	}
	var out []string
	for i := range many {
		out = append(out, fmt.Sprintf("%s%d", prefix, last+1+i))
	}
	return out
}
