// Package planned puts a plan of trials into words: for a terminal, and the sentences
// that stand in its workbook too.
package planned

import (
	"fmt"
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
	rows := [][]string{{"trial", "day", "fat %", "emulsifier %", "HLB", "for", "if it clogs, leave out"}}
	for _, t := range p.Trials {
		rows = append(rows, []string{t.ID, t.DayName, text.Dash(t.Mix.FatPercent), text.Dash(t.Mix.EmulsifierPercent), text.Dash(t.Mix.BlendHLB), t.Purpose, strings.Join(t.Skip, " ")})
	}
	text.Table(&out, rows)
	out.WriteString("\n")
	for _, s := range Says(p) {
		fmt.Fprintln(&out, text.OneLine(s))
	}
	for _, s := range p.Cautions {
		fmt.Fprintln(&out, s)
	}
	return out.String()
}

// Says is what a plan takes and tells, a sentence each.
func Says(p *result.Plan) (out []string) {
	var needs []string
	for _, n := range p.Needs {
		if n.Grams > 0 {
			needs = append(needs, fmt.Sprintf("%s %s g", n.Name, strconv.FormatFloat(n.Grams, 'f', -1, 64)))
		}
	}
	all := "Takes in all: " + strings.Join(needs, ", ")
	if p.BatchGrams == nil && p.Follows == nil {
		all = "Takes, for each 100 g of mix that a trial is: " + strings.Join(needs, ", ")
	}
	if len(needs) > 0 {
		out = append(out, all+".")
	}
	if t := p.Tells; t != nil && t.Formulas.Least > 0 {
		out = append(out, fmt.Sprintf("Two formulas made once each are told apart if one holds %.1f to %.1f times as long as the other, or more.", t.Formulas.Least, t.Formulas.Most))
		for _, v := range []struct{ key, name string }{{"fat_percent", "fat"}, {"emulsifier_percent", "emulsifier"}, {"blend_hlb", "blend HLB"}} {
			if m, ok := t.Moves[v.key]; ok {
				out = append(out, fmt.Sprintf("From one end of the %s range to the other, a hold that changes %.1f to %.1f times or more is seen, 8 times in 10.", v.name, m.Least, m.Most))
			}
		}
	}
	for _, c := range p.Cannot {
		out = append(out, "Will not tell: "+c+".")
	}
	return append(out, p.Notes...)
}
