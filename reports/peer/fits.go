package peer

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// fits is the judging view: the fit each result is judged by, with its terms,
// then every fit in one table.
func (b pages) fits() document.Section {
	s := document.Section{ID: "fits", Title: "Fits", Reader: document.Scientist}
	if len(b.R.Fits) == 0 {
		return s
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Text("Plain maximum likelihood, and for yes and no also bias-reduced likelihood, for checking elsewhere; the start is not chosen by these fits. " +
		"Each variable enters as (x − centre) / scale; emulsifier by its natural logarithm. The centres and scales are variables[] in results.json.")})
	for i, f := range b.R.Fits {
		if f.JudgedBy {
			s.Blocks = append(s.Blocks, say.Head(wording.Capital(say.Outcome(f.Result))+", "+distribution(f)+", "+say.Shapes[f.Order]))
			if f.JudgedReason != "" {
				s.Blocks = append(s.Blocks, document.Paragraph{Text: say.Sentence("shown because " + f.JudgedReason)})
			}
			s.Blocks = append(s.Blocks, b.judged(fmt.Sprintf("fits[%d]", i), f)...)
		}
	}
	all := document.Table{Of: "result", Caption: "Every fit. ● marks the one judged by, shown above.", Head: []string{"", "result", "distribution", "shape", "n", "log-likelihood", "scatter σ", "left-out score", "likelihood R²", "R²", "note"},
		Numeric: []bool{false, false, false, false, true, true, true, true, true, true, false}}
	var notes numbered
	for i, f := range b.R.Fits {
		p := fmt.Sprintf("fits[%d]", i)
		mark := ""
		if f.JudgedBy {
			mark = "●"
		}
		all.Rows = append(all.Rows, []document.Text{say.Text(mark), say.Text(say.Outcome(f.Result)), say.Text(distribution(f)), say.Text(say.Shapes[f.Order]), say.Text(say.Count(p+".n", f.N)),
			measure(p+".log_likelihood", f.LogLikelihood, say.OfScore), measure(p+".scale", f.Scale, say.OfTerm), measure(p+".leave_one_out_score", f.LeaveOneOutScore, say.OfScore),
			measure(p+".likelihood_r_squared", f.LikelihoodRSquared, say.OfTerm), measure(p+".r_squared", f.RSquared, say.OfTerm), say.Text(notes.mark(why(f)))})
	}
	s.Blocks = append(append(s.Blocks, all), notes.list()...)
	return s
}

// distribution names what a fit is of, and how it was estimated where that is not
// plain maximum likelihood.
func distribution(f result.Fit) string {
	name := f.Distribution
	if spelt := say.Distributions[name]; spelt != "" {
		name = spelt
	}
	if f.Estimator == result.BiasReduced {
		return name + ", bias-reduced"
	}
	return name
}

// why says what is missing of a fit.
func why(f result.Fit) string {
	if f.Failure == "" && f.NoScoreReason != "" {
		return "no left-out score: " + f.NoScoreReason
	}
	return f.Failure
}

// measure is num, or nothing where there is no number.
func measure(path string, v *float64, digits int) document.Text {
	return say.Optional(path, v, digits, "")
}

// judged is one fit: its terms and its measures.
func (b pages) judged(path string, f result.Fit) []document.Block {
	terms := document.Table{Caption: "Terms, per unit of (x − centre) / scale.", Head: []string{"term", "estimate", "standard error"}, Numeric: []bool{false, true, true}}
	for i, t := range f.Terms {
		p := fmt.Sprintf("%s.terms[%d]", path, i)
		terms.Rows = append(terms.Rows, []document.Text{say.Text(b.term(t.Variables)), say.Text(say.Num(p+".estimate", t.Estimate, say.OfTerm)), measure(p+".std_error", t.StdError, say.OfTerm)})
	}
	var items []document.Text
	add := func(name, key string, v *float64, digits int) {
		if v != nil {
			items = append(items, say.Text(name+" ", say.Num(path+"."+key, *v, digits)))
		}
	}
	if f.Distribution == "logistic" {
		items = append(items, say.Text(say.Count(path+".n", f.N), " trials"))
	} else {
		items = append(items, say.Text(say.Count(path+".n", f.N), " trials: ", say.Count(path+".observations.exact", f.Observations.Exact), " exact, ",
			say.Count(path+".observations.at_least", f.Observations.AtLeast), " at least, ", say.Count(path+".observations.at_most", f.Observations.AtMost), " at most, ",
			say.Count(path+".observations.between", f.Observations.Between), " between two bounds"))
	}
	add("log-likelihood", "log_likelihood", f.LogLikelihood, say.OfScore)
	add("scatter σ", "scale", f.Scale, say.OfTerm)
	add("likelihood R²", "likelihood_r_squared", f.LikelihoodRSquared, say.OfTerm)
	add(map[bool]string{false: "left-out score (mean log density)", true: "left-out score (mean log chance)"}[f.Distribution == "logistic"], "leave_one_out_score", f.LeaveOneOutScore, say.OfScore)
	add("residual SD", "residual_sd", f.ResidualSD, say.OfTerm)
	add("R²", "r_squared", f.RSquared, say.OfTerm)
	add("adjusted R²", "adjusted_r_squared", f.AdjustedRSquared, say.OfTerm)
	add("leave-one-out R²", "leave_one_out_r_squared", f.LeaveOneOutRSquared, say.OfTerm)
	if l := f.LackOfFit; l != nil && l.F != nil && l.P != nil {
		items = append(items, say.Text("lack of fit F ", say.Num(path+".lack_of_fit.f", *l.F, say.OfScore), " on ", say.Count(path+".lack_of_fit.df1", l.DF1), " and ",
			say.Count(path+".lack_of_fit.df2", l.DF2), " df, p ", say.Probability(path+".lack_of_fit.p", l.P)))
	}
	if f.NullReason != "" {
		items = append(items, say.Text("not given: the other measures, because "+f.NullReason))
	}
	return []document.Block{terms, document.List{Items: items}}
}

// term names a product of variables.
func (b pages) term(names []string) string {
	if len(names) == 0 {
		return "constant"
	}
	if len(names) == 2 && names[0] == names[1] {
		return b.termLabel(names[0]) + "²"
	}
	var words []string
	for _, n := range names {
		words = append(words, b.termLabel(n))
	}
	return strings.Join(words, " × ")
}

func (b pages) termLabel(name string) string {
	for _, v := range b.R.Variables {
		if v.Name == name && v.Log {
			return "ln " + b.Label(name)
		}
	}
	return b.Label(name)
}
