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
	var extras, names []string
	seenExtra, seenName := map[string]bool{}, map[string]bool{}
	for i := range r.Trials {
		for _, name := range slices.Sorted(maps.Keys(r.Trials[i].Extras)) {
			if !seenExtra[name] {
				seenExtra[name] = true
				extras = append(extras, name)
			}
		}
		for _, a := range r.Trials[i].Ingredient {
			if !seenName[a.Name] {
				seenName[a.Name] = true
				names = append(names, a.Name)
			}
		}
	}
	columns := []struct {
		name  string
		width float64
		value func(t *result.Trial) cell
	}{
		{"place", 30, func(t *result.Trial) cell { return in(ordinary, t.At) }},
		{"trial", 9, func(t *result.Trial) cell { return in(ordinary, t.ID) }},
		{"order", 7, func(t *result.Trial) cell { return count(t.Order) }},
		{"day", 12, func(t *result.Trial) cell { return in(ordinary, t.Day) }},
		{"cook", 10, func(t *result.Trial) cell { return in(ordinary, t.Cook) }},
		{"student", 14, func(t *result.Trial) cell { return in(ordinary, t.Student) }},
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
	widths := make([]float64, 0, len(columns)+len(names)+len(extras))
	heads := make([]string, 0, cap(widths))
	for _, c := range columns {
		widths, heads = append(widths, c.width), append(heads, c.name)
	}
	for _, n := range names {
		widths, heads = append(widths, 13), append(heads, n+", g")
	}
	for _, n := range extras {
		widths, heads = append(widths, 13), append(heads, n)
	}
	p := b.sheet("Trials", widths...)
	p.heads(heads...)
	p.freeze(2)
	p.filter(len(r.Trials))
	for i := range r.Trials {
		t := &r.Trials[i]
		row := make([]cell, 0, len(heads))
		for _, c := range columns {
			row = append(row, c.value(t))
		}
		grams := map[string]float64{}
		for _, a := range t.Ingredient {
			grams[a.Name] += a.Grams
		}
		for _, n := range names {
			row = append(row, found(grams, n, amount))
		}
		for _, n := range extras {
			row = append(row, found(t.Extras, n, amount))
		}
		p.add(row...)
	}
	p.stream()
}

func found(m map[string]float64, name string, l look) cell {
	if v, ok := m[name]; ok {
		return in(l, v)
	}
	return cell{}
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
