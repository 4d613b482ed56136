package workbook

import (
	"maps"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports/say"
)

// trials is the log as it was read, one row a trial, with the cell it stands in.
func trials(b *book, r *result.Results) {
	columns := slices.Concat(whoAndWhere(r), whatCameOfIt(r), amounts(r))
	widths, heads := make([]float64, len(columns)), make([]string, len(columns))
	for i, c := range columns {
		widths[i], heads[i] = c.width, c.name
	}
	p := b.sheet("Trials", widths...)
	p.table = true
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
	at, where := places(r)
	out := []trialColumn{
		{where, 12, func(t *result.Trial) cell { return in(ordinary, at(t.At)) }},
		{"trial", 7, func(t *result.Trial) cell { return in(ordinary, t.ID) }},
		{"order", 6, func(t *result.Trial) cell { return count(t.Order) }},
		{"day", 7, func(t *result.Trial) cell { return in(ordinary, t.Day) }},
		{"cook", 7, func(t *result.Trial) cell { return in(ordinary, t.Cook) }},
		{"student", 12, func(t *result.Trial) cell { return in(ordinary, t.Student) }},
	}
	if slices.ContainsFunc(r.Trials, func(t result.Trial) bool { return t.Canister != "" }) {
		out = append(out, trialColumn{"canister", 9, func(t *result.Trial) cell { return in(ordinary, t.Canister) }})
	}
	for _, name := range inOrder(r, func(t *result.Trial) []string { return slices.Sorted(maps.Keys(t.Labels)) }) {
		out = append(out, trialColumn{name, 10, func(t *result.Trial) cell { return in(ordinary, t.Labels[name]) }})
	}
	return out
}

// whatCameOfIt is the mix in numbers and what was seen.
func whatCameOfIt(r *result.Results) []trialColumn {
	at, _ := places(r)
	return []trialColumn{
		{"used", 6, func(t *result.Trial) cell { return in(ordinary, t.Used) }},
		{"why not", 24, func(t *result.Trial) cell { return text(t.Reason) }},
		{"repeat of", 12, func(t *result.Trial) cell { return in(ordinary, at(t.RepeatOf)) }},
		{"batch, g", 8, func(t *result.Trial) cell { return number(t.BatchGrams, aligned) }},
		{"fat, %", 7, func(t *result.Trial) cell { return number(t.FatPercent, tenths) }},
		{"emulsifier, %", 11, func(t *result.Trial) cell { return number(t.EmulsifierPercent, tenths) }},
		{"emulsifier, g", 11, func(t *result.Trial) cell { return number(t.EmulsifierGrams, aligned) }},
		{"blend HLB", 7, func(t *result.Trial) cell { return number(t.BlendHLB, tenths) }},
		{"came out", 7, func(t *result.Trial) cell { return answer(t.CameOut) }},
		{"split", 6, func(t *result.Trial) cell { return known(t.Broke) }},
		{"hold at least, min", 9, func(t *result.Trial) cell { return bound(t.HoldMinutes, low, aligned) }},
		{"hold at most, min", 9, func(t *result.Trial) cell { return bound(t.HoldMinutes, high, aligned) }},
		{"drained at least, %", 9, func(t *result.Trial) cell { return bound(t.DrainedPercent, low, tenths) }},
		{"drained at most, %", 9, func(t *result.Trial) cell { return bound(t.DrainedPercent, high, tenths) }},
		{"worked", 8, func(t *result.Trial) cell { return known(t.Works) }},
		{"failed by", 14, func(t *result.Trial) cell { return text(failures(r, t.FailedBy)) }},
		{"not known", 18, func(t *result.Trial) cell { return text(missing(t.Missing)) }},
		{"predicted from the others", 10, func(t *result.Trial) cell { return number(t.ForeseenChance, chance) }},
		{"note", 26, func(t *result.Trial) cell { return text(t.Note) }},
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
		out = append(out, trialColumn{name + ", g", 10, func(t *result.Trial) cell {
			var grams cell
			sum := 0.0
			for _, a := range t.Ingredient {
				if a.Name == name {
					sum += a.Grams
					grams = in(aligned, sum)
				}
			}
			return grams
		}})
	}
	for _, name := range inOrder(r, func(t *result.Trial) []string { return slices.Sorted(maps.Keys(t.Extras)) }) {
		out = append(out, trialColumn{words(name), 9, func(t *result.Trial) cell {
			if v, ok := t.Extras[name]; ok {
				return in(aligned, v)
			}
			return cell{}
		}})
	}
	return out
}

// places shortens the places of trials that are all on one sheet; the head says which.
func places(r *result.Results) (short func(string) string, where string) {
	sheet := func(at string) string { return at[:strings.LastIndex(at, ", ")+1] }
	for _, t := range r.Trials {
		if sheet(t.At) == "" || sheet(t.At) != sheet(r.Trials[0].At) {
			return func(at string) string { return at }, "place"
		}
	}
	if len(r.Trials) == 0 {
		return func(at string) string { return at }, "place"
	}
	from := sheet(r.Trials[0].At)
	return func(at string) string { return strings.TrimPrefix(strings.TrimPrefix(at, from), " ") }, "place in " + strings.TrimSuffix(from, ",")
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

func bound(i *result.Interval, side func(*result.Interval) *float64, l look) cell {
	if i == nil {
		return cell{}
	}
	return number(side(i), l)
}

func failures(r *result.Results, by []result.Outcome) string {
	var said []string
	for _, o := range by {
		said = append(said, say.Failing(r, o))
	}
	return strings.Join(said, ", ")
}

// missing says why what was not seen of a trial was not, each reason once.
func missing(m map[string]string) string {
	by := map[string][]string{}
	for _, field := range slices.Sorted(maps.Keys(m)) {
		by[m[field]] = append(by[m[field]], map[string]string{"hold_minutes": "hold", "drained_percent": "drained"}[field])
		if last := by[m[field]]; last[len(last)-1] == "" {
			last[len(last)-1] = words(field)
		}
	}
	var said []string
	for _, why := range slices.Sorted(maps.Keys(by)) {
		said = append(said, strings.Join(by[why], ", ")+": "+words(why))
	}
	return strings.Join(said, "; ")
}

// said are the keys of results.json whose words are others.
var said = map[string]string{"broke": "split", "must_fix": "fix", "please_look": "check", "for_information": "note",
	"rest_minutes": "rest before serving, min", "std_error": "standard error", "map": "learn"}

// words turns a key of results.json into words.
func words(key string) string {
	if s := said[key]; s != "" {
		return s
	}
	return strings.ReplaceAll(key, "_", " ")
}
