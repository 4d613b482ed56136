// Package planned puts a plan of trials into words: for a terminal, and the sentences
// that stand in its workbook too.
package planned

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/text"
)

// Terminal is what a terminal says of a plan that follows logs and was written to a path.
func Terminal(p *result.Plan, logs []string, path string) string {
	var out strings.Builder
	fmt.Fprintf(&out, "Written: %s, %s to fill in. Then: foamfield report %s\n\n",
		text.OneLine(path), wording.Plural(len(p.Trials), "trial", "trials"), text.OneLine(strings.Join(append(logs, path), " ")))
	short := lacks(p)
	for _, s := range short {
		fmt.Fprintf(&out, "%s\n\n", text.OneLine(s))
	}
	rows := [][]string{{"trial", "day", "fat %", "emulsifier %", "HLB", "for", "if it clogs, leave out"}}
	for _, t := range p.Trials {
		rows = append(rows, []string{t.ID, t.DayName, text.Dash(t.Mix.FatPercent, 1), text.Dash(t.Mix.EmulsifierPercent, 2), text.Dash(t.Mix.BlendHLB, 1), purpose(t.Purpose), strings.Join(t.Skip, " ")})
	}
	if !slices.ContainsFunc(p.Trials, func(t result.PlannedTrial) bool { return t.DayName != "" }) {
		for i := range rows {
			rows[i] = slices.Delete(rows[i], 1, 2)
		}
	}
	text.Table(&out, rows)
	out.WriteString("\n")
	for _, s := range Says(p)[len(short):] {
		fmt.Fprintln(&out, text.Wrap(text.OneLine(s)))
	}
	for _, s := range p.Cautions {
		fmt.Fprintln(&out, text.Wrap(s))
	}
	return out.String()
}

// purpose is what a trial is for, in the words of the report.
func purpose(of string) string {
	if of == "map" {
		return "learn"
	}
	return of
}

// lacks are the ingredients that the plan takes more of than is at hand.
func lacks(p *result.Plan) (out []string) {
	for _, n := range p.Needs {
		if n.Short && n.Stock != nil {
			out = append(out, fmt.Sprintf("Not enough %s: the plan takes %.4g g and %.4g g are at hand.", n.Name, n.Grams, *n.Stock))
		}
	}
	return out
}

// Span is a range in words.
func Span(s [2]float64) string {
	if s[0] == s[1] {
		return exact(s[0])
	}
	return fmt.Sprintf("%s to %s", exact(s[0]), exact(s[1]))
}

func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// mostTimes is how many times as long a hold may have to be before too few trials is all
// that is said: nobody needs a plan to see more.
const mostTimes = 10

// apart says how far apart two formulas must be to be told apart.
func apart(s result.PlanShows) string {
	if s.Least > mostTimes {
		return fmt.Sprintf("Too few trials to tell two formulas made once each apart, unless one holds more than %d times as long as the other.", mostTimes)
	}
	return fmt.Sprintf("Two formulas made once each are told apart if one holds %s times as long as the other; if your foams repeat well, %.1f times.", times(s.Most), s.Least)
}

// times is a factor of hold in words.
func times(factor float64) string {
	if factor > mostTimes {
		return fmt.Sprintf("more than %d", mostTimes)
	}
	return fmt.Sprintf("%.1f", factor)
}

// Says is what a plan takes and tells, a sentence each.
func Says(p *result.Plan) (out []string) {
	out = lacks(p)
	var needs []string
	for _, n := range p.Needs {
		if n.Grams > 0 {
			needs = append(needs, fmt.Sprintf("%s %s g", n.Name, exact(n.Grams)))
		}
	}
	all := "Takes in all: " + strings.Join(needs, ", ")
	if p.BatchGrams == nil && p.Follows == nil {
		all = "Takes in all, at 100 g of mix a trial: " + strings.Join(needs, ", ")
	}
	if len(needs) > 0 {
		out = append(out, all+".")
	}
	if t := p.Tells; t != nil && t.Formulas.Least > 0 {
		out = append(out, apart(t.Formulas))
		var hlb [2]float64
		if p.Ranges.BlendHLB != nil {
			hlb = *p.Ranges.BlendHLB
		}
		var moves, blind []string
		for _, v := range []struct {
			key, name string
			over      [2]float64
		}{{"fat_percent", "fat from %s %%", p.Ranges.FatPercent}, {"emulsifier_percent", "emulsifier from %s %%", p.Ranges.EmulsifierPercent}, {"blend_hlb", "HLB from %s", hlb}} {
			if m, ok := t.Moves[v.key]; ok {
				if m.Least > mostTimes {
					blind = append(blind, fmt.Sprintf(v.name, Span(v.over)))
					continue
				}
				moves = append(moves, fmt.Sprintf(v.name+", by %s or %.1f times", Span(v.over), times(m.Most), m.Least))
			}
		}
		if len(moves) > 0 {
			out = append(out, "What a number does shows 8 times in 10 if it changes the hold this much, the smaller figure where your foams repeat well: "+strings.Join(moves, "; ")+".")
		}
		if len(blind) > 0 {
			out = append(out, fmt.Sprintf("Too few trials to show what a number does, unless it changes the hold more than %d times: %s.", mostTimes, strings.Join(blind, "; ")))
		}
	}
	for _, c := range p.Cannot {
		out = append(out, "Will not tell: "+c+".")
	}
	return append(out, p.Notes...)
}
