package workbook

import (
	"cmp"
	"math"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports/say"
)

func problems(b *book, r *result.Results) {
	p := b.sheet("Problems", 18, 34, 8, 50, 60)
	p.heads("", "first place", "how many", "what was read", "what to do")
	p.freeze(0)
	p.filter(len(r.Problems))
	for _, x := range r.Problems {
		p.add(in(ordinary, words(string(x.Severity))), text(x.At), count(x.Count), text(x.Read), text(x.Do))
	}
	p.write()
}

func questions(b *book, r *result.Results) {
	if len(r.Questions) == 0 {
		return
	}
	p := b.sheet("Questions", 34, 50, 50, 14, 40, 50)
	p.heads("place", "what is asked", "one of", "sheet", "its header", "row to type")
	p.freeze(0)
	for _, q := range r.Questions {
		p.add(text(q.At), text(q.Asked), text(strings.Join(q.Choices, "; ")), text(q.Cure.Sheet), text(strings.Join(q.Cure.Header, " | ")), text(strings.Join(q.Cure.Row, " | ")))
	}
	p.write()
}

func columns(b *book, r *result.Results) {
	p := b.sheet("Columns", 34, 34, 28, 10)
	p.heads("place", "header", "read as", "unit")
	p.freeze(0)
	for _, c := range r.Columns {
		p.add(text(c.At), text(c.Header), text(say.ColumnSaid(c.ReadAs)), in(ordinary, c.Unit))
	}
	p.write()
}

// groups are the trials of each day, cook and student.
func groups(b *book, r *result.Results) {
	p := b.sheet("Days and cooks", 10, 24, 9, 10, 9, 10, 16, 11)
	p.table = true
	p.heads("by", "name", "trials", "came out", "worked", "repeats", "repeats differ by, %", "problems")
	p.freeze(2)
	for _, s := range r.Summaries {
		p.add(in(ordinary, s.By), text(cmp.Or(s.Name, "not named")), count(s.Trials), count(s.CameOut), count(s.Worked), count(s.Repeats), number(s.CV, tenths), count(s.Problems))
	}
	p.write()
}

func ingredients(b *book, r *result.Results) {
	p := b.sheet("Ingredients", 30, 20, 8, 9, 9, 8, 40, 24, 50)
	p.heads("name", "what it is", "HLB", "HLB, low", "HLB, high", "fat, %", "from", "allergens", "note")
	p.freeze(1)
	for _, u := range r.Ingredients {
		p.add(text(u.Name), text(u.Kind), number(u.HLB, tenths), number(u.HLBLow, tenths), number(u.HLBHigh, tenths),
			number(u.FatPercent, tenths), text(u.From), text(strings.Join(u.Allergens, ", ")), text(u.Note))
	}
	p.add()
	if len(r.Allergens.Found) > 0 {
		p.wide(9, in(caution, "Allergens found by name: "+strings.Join(r.Allergens.Found, ", ")))
	}
	if len(r.Allergens.Unknown) > 0 {
		p.wide(9, in(caution, "Check labels; unknown for: "+strings.Join(r.Allergens.Unknown, ", ")))
	}
	p.write()
}

// fits is a row a fit; its terms are on a sheet of their own.
func fits(b *book, r *result.Results) {
	p := b.sheet("Fits", 5, 14, 12, 9, 9, 6, 6, 7, 7, 8, 7, 12, 10, 10, 8, 10, 10, 10, 10, 10, 6, 6, 10, 10, 14, 60)
	p.table = true
	p.heads("fit", "result", "distribution", "transform", "shape", "trials", "exact", "at least", "at most", "between", "judged by",
		"log-likelihood", "scatter σ", "residual SD", "residual df", "R²", "adjusted R²", "leave-one-out R²", "left-out score",
		"lack of fit F", "df 1", "df 2", "p", "likelihood R²", "estimated by", "notes")
	p.freeze(3)
	p.filter(len(r.Fits))
	for i, f := range r.Fits {
		row := []cell{count(i + 1), in(ordinary, words(f.Result)), in(ordinary, spelt(f.Distribution)), in(ordinary, f.Transform), in(ordinary, say.Shapes[f.Order]), count(f.N)}
		row = append(row, seen(f.Observations)...)
		df := cell{}
		if f.ResidualDF != nil {
			df = count(*f.ResidualDF)
		}
		row = append(row, in(ordinary, f.JudgedBy), number(f.LogLikelihood, precise), number(f.Scale, precise), number(f.ResidualSD, precise), df,
			number(f.RSquared, precise), number(f.AdjustedRSquared, precise), number(f.LeaveOneOutRSquared, precise), number(f.LeaveOneOutScore, precise))
		if l := f.LackOfFit; l != nil {
			row = append(row, number(l.F, precise), count(l.DF1), count(l.DF2), number(l.P, precise))
		} else {
			row = append(row, cell{}, cell{}, cell{}, cell{})
		}
		p.add(append(row, number(f.LikelihoodRSquared, precise), text(words(string(f.Estimator))), text(notesOf(f)))...)
	}
	p.write()
}

// spelt is a distribution as textbooks spell it.
func spelt(distribution string) string {
	if s := say.Distributions[distribution]; s != "" {
		return s
	}
	return distribution
}

// notesOf is why a fit is judged by, and why numbers of it are missing.
func notesOf(f result.Fit) string {
	var notes []string
	for _, n := range []struct{ of, why string }{{"judged by", f.JudgedReason}, {"numbers not given", f.NullReason}, {"no score", f.NoScoreReason}, {"no fit", f.Failure},
		{"varied beside its terms", strings.Join(f.VariedBeside, ", ")}} {
		if n.why != "" {
			notes = append(notes, n.of+": "+n.why)
		}
	}
	return strings.Join(notes, "; ")
}

func seen(o result.Observations) []cell {
	return []cell{count(o.Exact), count(o.AtLeast), count(o.AtMost), count(o.Between)}
}

// terms is a row a coefficient, its covariance with the others to its right.
func terms(b *book, r *result.Results) {
	p := b.sheet("Terms", 5, 14, 12, 9, 30, 11, 11)
	p.heads("fit", "result", "distribution", "shape", "term", "estimate", "standard error", "covariance with each term, then ln σ")
	p.freeze(5)
	n := 0
	for _, f := range r.Fits {
		n += max(len(f.Terms), len(f.Covariance))
	}
	p.filter(n)
	for i, f := range r.Fits {
		for k := range max(len(f.Terms), len(f.Covariance)) {
			row := []cell{count(i + 1), in(ordinary, words(f.Result)), in(ordinary, spelt(f.Distribution)), in(ordinary, say.Shapes[f.Order])}
			if k < len(f.Terms) {
				t := f.Terms[k]
				row = append(row, in(ordinary, term(t.Variables)), in(precise, t.Estimate), number(t.StdError, precise))
			} else {
				row = append(row, in(ordinary, "ln σ"), cell{}, cell{})
			}
			if k < len(f.Covariance) {
				row = append(row, numbers(f.Covariance[k])...)
			}
			p.add(row...)
		}
	}
	p.add()
	p.add(in(ordinary, "Terms are per unit of (x − centre)/scale:"))
	p.heads("", "variable", "unit", "logarithm", "tested from", "to", "centre", "scale")
	for _, v := range r.Variables {
		p.add(cell{}, text(v.Label), in(ordinary, v.Unit), in(ordinary, v.Log), in(precise, v.Low), in(precise, v.High), in(precise, v.Centre), in(precise, v.Scale))
	}
	p.write()
}

func numbers(vs []float64) []cell {
	var out []cell
	for _, v := range vs {
		out = append(out, in(precise, v))
	}
	return out
}

func term(variables []string) string {
	if len(variables) == 0 {
		return "constant"
	}
	return words(strings.Join(variables, " × "))
}

// modelTerms is what the chances are worked out from.
func modelTerms(b *book, r *result.Results) {
	p := b.sheet("Model terms", 18, 14, 36, 14, 14, 14, 14)
	p.heads("outcome", "kind", "term", "prior mean", "prior SD", "mean", "SD", "covariance with each term")
	p.freeze(3)
	for _, m := range r.Model {
		for k, t := range m.Terms {
			row := []cell{in(ordinary, words(string(m.Outcome))), in(ordinary, words(m.Kind)), in(ordinary, term(t))}
			row = append(row, at(k, m.Prior, func(x result.PriorTerm) float64 { return x.Mean }), at(k, m.Prior, func(x result.PriorTerm) float64 { return x.SD }),
				at(k, m.Mean, func(x float64) float64 { return x }))
			if k < len(m.Covariance) && k < len(m.Covariance[k]) {
				row = append(row, in(precise, math.Sqrt(m.Covariance[k][k])))
				row = append(row, numbers(m.Covariance[k])...)
			}
			p.add(row...)
		}
	}
	p.add()
	p.heads("outcome", "kind", "trials", "events", "SD of another day", "draws", "effective draws")
	for _, m := range r.Model {
		events := cell{}
		if m.Events != nil {
			events = count(*m.Events)
		}
		p.add(in(ordinary, words(string(m.Outcome))), in(ordinary, words(m.Kind)), count(m.N), events, in(precise, m.DaySD), count(m.Draws), in(tenths, m.ESS))
	}
	p.add()
	p.heads("outcome", "ln scatter", "weight", "mean of each term at this scatter")
	for _, m := range r.Model {
		for _, s := range m.Sigma {
			p.add(append([]cell{in(ordinary, words(string(m.Outcome))), in(precise, s.LnSigma), in(precise, s.Weight)}, numbers(s.Mean)...)...)
		}
	}
	p.write()
}

func at[T any](k int, of []T, value func(T) float64) cell {
	if k >= len(of) {
		return cell{}
	}
	return in(precise, value(of[k]))
}

// nextTrials repeats the mixes of next-trials.xlsx with what is known of them.
func nextTrials(b *book, r *result.Results) {
	p := b.sheet("Next trials", 7, 12, 10, 12, 10, 12, 12, 50, 60)
	p.table = true
	p.heads("trial", "purpose", "fat, %", "emulsifier, %", "blend HLB", "chance of working", "chance of clogging", "why", "grams")
	p.freeze(0)
	for i, n := range r.NextTrials {
		var grams []string
		for _, l := range n.Ingredients {
			grams = append(grams, l.Name+" "+exact(l.Grams)+" g")
		}
		p.add(count(i+1), in(ordinary, words(n.Purpose)), number(n.Mix.FatPercent, tenths), number(n.Mix.EmulsifierPercent, tenths),
			number(n.Mix.BlendHLB, tenths), number(n.Chance, chance), number(n.ClogChance, chance), text(n.Reason), text(strings.Join(grams, "; ")))
	}
	p.write()
}
