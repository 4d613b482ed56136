package workbook

import (
	"maps"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports"
)

// trials is the log as it was read, one row a trial, with the cell it stands in.
func trials(b *book, r *result.Results) {
	columns := slices.Concat(whoAndWhere(r), whatCameOfIt(r), amounts(r))
	widths, heads := make([]float64, len(columns)), make([]string, len(columns))
	for i, c := range columns {
		widths[i], heads[i] = c.width, c.name
	}
	p := b.sheet("Trials", widths...)
	p.heads(heads...)
	p.freeze(2)
	p.filter(len(r.Trials))
	for i := range r.Trials {
		row := make([]cell, len(columns))
		for k, c := range columns {
			row[k] = c.value(&r.Trials[i])
		}
		p.add(row...)
	}
	p.stream()
}

// trialColumn is one of the sheet's.
type trialColumn struct {
	name  string
	width float64
	value func(t *result.Trial) cell
}

// whoAndWhere is where a trial stands and who made it in what; a canister and labels such
// as lots only where the log has them.
func whoAndWhere(r *result.Results) []trialColumn {
	out := []trialColumn{
		{"place", 30, func(t *result.Trial) cell { return in(ordinary, t.At) }},
		{"trial", 9, func(t *result.Trial) cell { return in(ordinary, t.ID) }},
		{"order", 7, func(t *result.Trial) cell { return count(t.Order) }},
		{"day", 12, func(t *result.Trial) cell { return in(ordinary, t.Day) }},
		{"cook", 10, func(t *result.Trial) cell { return in(ordinary, t.Cook) }},
		{"student", 14, func(t *result.Trial) cell { return in(ordinary, t.Student) }},
	}
	if slices.ContainsFunc(r.Trials, func(t result.Trial) bool { return t.Canister != "" }) {
		out = append(out, trialColumn{"canister", 12, func(t *result.Trial) cell { return in(ordinary, t.Canister) }})
	}
	for _, name := range inOrder(r, func(t *result.Trial) []string { return slices.Sorted(maps.Keys(t.Labels)) }) {
		out = append(out, trialColumn{name, 14, func(t *result.Trial) cell { return in(ordinary, t.Labels[name]) }})
	}
	return out
}

// whatCameOfIt is the mix in numbers and what was seen.
func whatCameOfIt(r *result.Results) []trialColumn {
	return []trialColumn{
		{"used", 7, func(t *result.Trial) cell { return in(ordinary, t.Used) }},
		{"why not", 30, func(t *result.Trial) cell { return in(ordinary, t.Reason) }},
		{"repeat of", 24, func(t *result.Trial) cell { return in(ordinary, t.RepeatOf) }},
		{"batch, g", 9, func(t *result.Trial) cell { return number(t.BatchGrams, amount) }},
		{"fat, %", 9, func(t *result.Trial) cell { return number(t.FatPercent, hundredths) }},
		{"emulsifier, %", 11, func(t *result.Trial) cell { return number(t.EmulsifierPercent, hundredths) }},
		{"emulsifier, g", 11, func(t *result.Trial) cell { return number(t.EmulsifierGrams, amount) }},
		{"blend HLB", 9, func(t *result.Trial) cell { return number(t.BlendHLB, hundredths) }},
		{"came out", 10, func(t *result.Trial) cell { return answer(t.CameOut) }},
		{"broke", 8, func(t *result.Trial) cell { return known(t.Broke) }},
		{"hold at least, min", 10, func(t *result.Trial) cell { return bound(t.HoldMinutes, low) }},
		{"hold at most, min", 10, func(t *result.Trial) cell { return bound(t.HoldMinutes, high) }},
		{"drained at least, %", 10, func(t *result.Trial) cell { return bound(t.DrainedPercent, low) }},
		{"drained at most, %", 10, func(t *result.Trial) cell { return bound(t.DrainedPercent, high) }},
		{"worked", 10, func(t *result.Trial) cell { return known(t.Works) }},
		{"failed by", 22, func(t *result.Trial) cell { return in(ordinary, failures(r, t.FailedBy)) }},
		{"not known", 26, func(t *result.Trial) cell { return in(ordinary, missing(t.Missing)) }},
		{"chance foreseen from the others", 12, func(t *result.Trial) cell { return number(t.ForeseenChance, chance) }},
		{"note", 50, func(t *result.Trial) cell { return in(ordinary, t.Note) }},
	}
}

// amounts is the grams of each ingredient, then every other number of the log.
func amounts(r *result.Results) (out []trialColumn) {
	for _, name := range inOrder(r, func(t *result.Trial) (names []string) {
		for _, a := range t.Ingredient {
			names = append(names, a.Name)
		}
		return names
	}) {
		out = append(out, trialColumn{name + ", g", 13, func(t *result.Trial) cell {
			var grams cell
			sum := 0.0
			for _, a := range t.Ingredient {
				if a.Name == name {
					sum += a.Grams
					grams = in(amount, sum)
				}
			}
			return grams
		}})
	}
	for _, name := range inOrder(r, func(t *result.Trial) []string { return slices.Sorted(maps.Keys(t.Extras)) }) {
		out = append(out, trialColumn{name, 13, func(t *result.Trial) cell {
			if v, ok := t.Extras[name]; ok {
				return in(amount, v)
			}
			return cell{}
		}})
	}
	return out
}

// inOrder is the names that trials have, as they first appear.
func inOrder(r *result.Results, of func(t *result.Trial) []string) (names []string) {
	seen := map[string]bool{}
	for i := range r.Trials {
		for _, name := range of(&r.Trials[i]) {
			if !seen[name] {
				seen[name] = true
				names = append(names, name)
			}
		}
	}
	return names
}

func answer(a *result.Answer) cell {
	if a == nil {
		return cell{}
	}
	return in(ordinary, string(*a))
}

// known is yes, no, or nothing where nobody knows.
func known(v *bool) cell {
	if v == nil {
		return cell{}
	}
	return in(ordinary, *v)
}

func low(i *result.Interval) *float64  { return i.Low }
func high(i *result.Interval) *float64 { return i.High }

func bound(i *result.Interval, side func(*result.Interval) *float64) cell {
	if i == nil {
		return cell{}
	}
	return number(side(i), hundredths)
}

func failures(r *result.Results, by []result.Outcome) string {
	var said []string
	for _, o := range by {
		said = append(said, reports.Failing(r, o))
	}
	return strings.Join(said, ", ")
}

func missing(m map[string]string) string {
	var said []string
	for _, field := range slices.Sorted(maps.Keys(m)) {
		said = append(said, words(field)+": "+words(m[field]))
	}
	return strings.Join(said, "; ")
}

// words turns a key of results.json into words.
func words(key string) string { return strings.ReplaceAll(key, "_", " ") }
