package reports

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// trust is how good all this is.
func (b *builder) trust() Section {
	s := Section{ID: "trust", Title: "How far to trust this", Reader: Scientist}
	s.Blocks = b.picture(nil, "foreseen")
	if len(b.r.Repeatability) > 0 {
		t := Table{Caption: "Scatter of repeats of one formula, pooled on the log scale; one known only up to a bound on one side counts half in the degrees of freedom. CV with 90 % limits.",
			Head:    []string{"result", "formulas repeated", "trials", "df", "SD of ln", "CV, %", "limits, %", "note"},
			Numeric: []bool{false, true, true, true, true, true, true, false}}
		for i, r := range b.r.Repeatability {
			p := fmt.Sprintf("repeatability[%d]", i)
			row := []Text{say(outcomeName(r.Result)), say(count(p+".groups", r.Groups)), say(count(p+".trials", r.Trials)), say(trimmed(p+".df", r.DF, 1)),
				optional(p+".sd_ln", r.SDLn, 3, ""), optional(p+".cv_percent", r.CVPercent, 1, ""), nil, say(r.Note)}
			switch {
			case r.CVLow != nil && r.CVHigh != nil:
				row[6] = say(num(p+".cv_percent_low", *r.CVLow, 1), " to ", num(p+".cv_percent_high", *r.CVHigh, 1))
			case r.CVLow != nil:
				row[6] = say(num(p+".cv_percent_low", *r.CVLow, 1), " and more")
			}
			t.Rows = append(t.Rows, row)
		}
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, b.smallest()...)
	s.Blocks = b.picture(s.Blocks, "residuals")
	s.Blocks = append(s.Blocks, b.farOff()...)
	s.Blocks = append(s.Blocks, b.differences()...)
	if len(b.r.Confounded) > 0 {
		t := Table{Caption: "Variables that moved together: share of the first's variation that goes with the second.",
			Head: []string{"this", "with this", "share"}, Numeric: []bool{false, false, true}}
		for i, c := range b.r.Confounded {
			t.Rows = append(t.Rows, []Text{say(c.A), say(c.B), say(num(fmt.Sprintf("confounded[%d].share", i), c.Share, 2))})
		}
		s.Blocks = append(s.Blocks, cut(t, mostColumns, "results.json"))
	}
	if items := b.noLonger(); len(items) > 0 {
		s.Blocks = append(s.Blocks, head("Whether more would lengthen the hold, whatever else it does"), List{Items: items})
	}
	if len(b.r.Model) > 0 {
		t := Table{Caption: "What the chances rest on: what each link of the chain was learnt from.",
			Head: []string{"result", "trials", "exact", "at least", "at most", "between", "events", "effective draws"}, Numeric: []bool{false, true, true, true, true, true, true, true}}
		for i, m := range b.r.Model {
			p := fmt.Sprintf("model[%d]", i)
			row := append([]Text{say(outcomeName(string(m.Outcome))), say(count(p+".n", m.N))}, observed(p, m.Observations)...)
			events := Text(nil)
			if m.Events != nil {
				events = say(count(p+".events", *m.Events))
			}
			t.Rows = append(t.Rows, append(row, events, say(num(p+".ess", m.ESS, 0))))
		}
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// noLonger says, for each variable that has a best value inside what was tried,
// how likely more than that no longer lengthens the hold; working has its own best.
func (b *builder) noLonger() []Text {
	var items []Text
	for i, p := range b.r.Peaks {
		if p.AtEdge == "" && p.NoLongerPay != nil {
			path := fmt.Sprintf("peaks[%d]", i)
			items = append(items, say("The chance that more than ", b.amount(path+".best", p.Variable, p.Best), " does not lengthen the hold is ",
				chance(path+".chance_more_no_longer_helps", *p.NoLongerPay), ", all else as in the start."))
		}
	}
	return items
}

func observed(path string, o result.Observations) []Text {
	p := path + ".observations."
	return []Text{say(count(p+"exact", o.Exact)), say(count(p+"at_least", o.AtLeast)), say(count(p+"at_most", o.AtMost)), say(count(p+"between", o.Between))}
}

// fits is the judging view: the fit each result is judged by, with its terms,
// then every fit in one table.
func (b *builder) fits() Section {
	s := Section{ID: "fits", Title: "Fits", Reader: Scientist}
	if len(b.r.Fits) == 0 {
		return s
	}
	s.Blocks = append(s.Blocks, Paragraph{Text: say("Plain maximum likelihood, and for yes and no also bias-reduced likelihood, for checking elsewhere; the start is not chosen by these fits. " +
		"Each variable enters as (x − centre) / scale; emulsifier by its natural logarithm. The centres and scales are variables[] in results.json.")})
	for i, f := range b.r.Fits {
		if f.JudgedBy {
			s.Blocks = append(s.Blocks, head(capital(say(outcomeName(f.Result))).String()+", "+distribution(f)+", "+orders[f.Order]))
			if f.JudgedReason != "" {
				s.Blocks = append(s.Blocks, Paragraph{Text: capital(say("shown because " + sentence(f.JudgedReason)))})
			}
			s.Blocks = append(s.Blocks, b.judged(fmt.Sprintf("fits[%d]", i), f)...)
		}
	}
	all := Table{Caption: "Every fit. ● marks the one shown above.", Head: []string{"", "result", "distribution", "order", "n", "log-likelihood", "scatter σ", "left-out score", "likelihood R²", "R²", "note"},
		Numeric: []bool{false, false, false, false, true, true, true, true, true, true, false}}
	var notes numbered
	for i, f := range b.r.Fits {
		p := fmt.Sprintf("fits[%d]", i)
		mark := ""
		if f.JudgedBy {
			mark = "●"
		}
		all.Rows = append(all.Rows, []Text{say(mark), say(outcomeName(f.Result)), say(distribution(f)), say(orders[f.Order]), say(count(p+".n", f.N)),
			measure(p+".log_likelihood", f.LogLikelihood, ofScore), measure(p+".scale", f.Scale, ofTerm), measure(p+".leave_one_out_score", f.LeaveOneOutScore, ofScore),
			measure(p+".likelihood_r_squared", f.LikelihoodRSquared, ofTerm), measure(p+".r_squared", f.RSquared, ofTerm), say(notes.mark(why(f)))})
	}
	s.Blocks = append(append(s.Blocks, all), notes.list()...)
	return s
}

// numbered are notes under a table, each said once and marked in its rows.
type numbered struct{ said []string }

// mark is what stands in a row for a note, "" for none.
func (n *numbered) mark(note string) string {
	if note == "" {
		return ""
	}
	i := slices.Index(n.said, note)
	if i < 0 {
		i = len(n.said)
		n.said = append(n.said, note)
	}
	return fmt.Sprintf("(%d)", i+1)
}

func (n *numbered) list() []Block {
	var items []Text
	for i, note := range n.said {
		items = append(items, say(fmt.Sprintf("(%d) ", i+1), capital(say(sentence(note)))))
	}
	if len(items) == 0 {
		return nil
	}
	return []Block{List{Items: items, Small: true}}
}

// withoutEmpty is a table without the columns that say nothing in any row.
func withoutEmpty(t Table) Table {
	for i := len(t.Head) - 1; i >= 0; i-- {
		if slices.ContainsFunc(t.Rows, func(row []Text) bool { return row[i].String() != "" }) {
			continue
		}
		t.Head, t.Numeric = slices.Delete(t.Head, i, i+1), slices.Delete(t.Numeric, i, i+1)
		for r := range t.Rows {
			t.Rows[r] = slices.Delete(t.Rows[r], i, i+1)
		}
	}
	return t
}

// distribution names what a fit is of, and how it was estimated where that is not
// plain maximum likelihood.
func distribution(f result.Fit) string {
	name := f.Distribution
	if spelt := Distributions[name]; spelt != "" {
		name = spelt
	}
	if f.Estimator == result.BiasReduced {
		return name + ", bias-reduced"
	}
	return name
}

// Distributions are those of results.json as textbooks spell them.
var Distributions = map[string]string{"lognormal": "log-normal", "weibull": "Weibull", "loglogistic": "log-logistic"}

// why says what is missing of a fit.
func why(f result.Fit) string {
	if f.Failure == "" && f.NoScoreReason != "" {
		return "no left-out score: " + f.NoScoreReason
	}
	return f.Failure
}

var orders = map[int]string{1: "straight", 2: "curved"}

// measure is num, or nothing where there is no number.
func measure(path string, v *float64, digits int) Text {
	if v == nil {
		return nil
	}
	return say(num(path, *v, digits))
}

// judged is one fit: its terms and its measures.
func (b *builder) judged(path string, f result.Fit) []Block {
	terms := Table{Caption: "Terms, per unit of (x − centre) / scale.", Head: []string{"term", "estimate", "standard error"}, Numeric: []bool{false, true, true}}
	for i, t := range f.Terms {
		p := fmt.Sprintf("%s.terms[%d]", path, i)
		terms.Rows = append(terms.Rows, []Text{say(b.term(t.Variables)), say(num(p+".estimate", t.Estimate, ofTerm)), measure(p+".std_error", t.StdError, ofTerm)})
	}
	var items []Text
	add := func(name, key string, v *float64, digits int) {
		if v != nil {
			items = append(items, say(name+" ", num(path+"."+key, *v, digits)))
		}
	}
	if f.Distribution == "logistic" {
		items = append(items, say(count(path+".n", f.N), " trials"))
	} else {
		items = append(items, say(count(path+".n", f.N), " trials: ", count(path+".observations.exact", f.Observations.Exact), " exact, ",
			count(path+".observations.at_least", f.Observations.AtLeast), " at least, ", count(path+".observations.at_most", f.Observations.AtMost), " at most, ",
			count(path+".observations.between", f.Observations.Between), " between two bounds"))
	}
	add("log-likelihood", "log_likelihood", f.LogLikelihood, ofScore)
	add("scatter σ", "scale", f.Scale, ofTerm)
	add("likelihood R²", "likelihood_r_squared", f.LikelihoodRSquared, ofTerm)
	add(map[bool]string{false: "mean left-out log density", true: "mean left-out log chance"}[f.Distribution == "logistic"], "leave_one_out_score", f.LeaveOneOutScore, ofScore)
	add("residual SD", "residual_sd", f.ResidualSD, ofTerm)
	add("R²", "r_squared", f.RSquared, ofTerm)
	add("adjusted R²", "adjusted_r_squared", f.AdjustedRSquared, ofTerm)
	add("leave-one-out R²", "leave_one_out_r_squared", f.LeaveOneOutRSquared, ofTerm)
	if l := f.LackOfFit; l != nil && l.F != nil && l.P != nil {
		items = append(items, say("lack of fit F ", num(path+".lack_of_fit.f", *l.F, ofScore), " on ", count(path+".lack_of_fit.df1", l.DF1), " and ",
			count(path+".lack_of_fit.df2", l.DF2), " df, p ", probability(path+".lack_of_fit.p", l.P)))
	}
	if f.NullReason != "" {
		items = append(items, say("not given: the other measures, because "+f.NullReason))
	}
	return []Block{terms, List{Items: items}}
}

// term names a product of variables.
func (b *builder) term(names []string) string {
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

func (b *builder) termLabel(name string) string {
	for _, v := range b.r.Variables {
		if v.Name == name && v.Log {
			return "ln " + b.label(name)
		}
	}
	return b.label(name)
}

func version(v string) string {
	if v == "" {
		return ""
	}
	return " Version: " + v + "."
}

// priorWidths says what the surest start's chance would be with other priors.
func (b *builder) priorWidths() Text {
	if len(b.r.Starts) == 0 {
		return nil
	}
	var t Text
	for i, w := range b.r.Starts[0].Widths {
		if w.Chance == nil {
			continue
		}
		if len(t) > 0 {
			t = say(t, " and ")
		}
		path := fmt.Sprintf("starts[0].prior_widths[%d]", i)
		t = say(t, chance(path+".chance", *w.Chance), " with priors ", trimmed(path+".factor", w.Factor, 1), " times as wide")
	}
	if len(t) == 0 {
		return nil
	}
	return say("The surest start's chance is ", t, ".")
}

// method says how the numbers were made and from what.
func (b *builder) method() Section {
	s := Section{ID: "method", Title: "Method and sources", Reader: Scientist}
	var without Text
	for _, o := range b.r.NotJudged {
		without = say(without, " No link is about "+b.subject(o)+": no trial that can be compared tells of it.")
	}
	s.Blocks = []Block{List{Items: []Text{
		say("A mix works if it comes out, does not split, and meets the targets for hold and drained.", without, " Each link is learnt only from trials that reached it; the chance of working is the product along the chain, for a new mix on another day at the rounded grams."),
		say("Each link has a second-order surface in fat percent, ln emulsifier and blend HLB with weakly informative normal priors on centred, scaled variables. Settings that the log varied enough (chargers, rest, temperature, declared columns) enter as straight terms and are held at the value most trials that worked had. Hold and drained are log-normal; results known only up to bounds enter as probabilities. Came out and split are logistic, corrected by importance weighting, and averaged over how steep they may be, since clogging and splitting set in suddenly in one kitchen and little by little in another."),
		say("“Perhaps only” is the lower 5 % limit of the long-run share; ranges given beside a chance are the 90 % limits."),
		say("The surest start is the middle of the mixes that are nearly as good as the best inside what was tried, not at its edge: with at most half the leverage of the furthest trial, or that of the middle one. Before they are compared, chances are marked down with the distance from the three nearest trials that worked, so that of mixes nearly as sure it is the one best known; one that has the wanted chance comes first, and a mix that was made twice or more, always worked and is about as good is kept. The richest is the one with most fat whose chance, as weighed, is at least the wanted one, joined to the surest by mixes that reach it too. What the answers rest on is found by weighing the draws without each trial. A start clogs at most 5 times in 100, a suggested trial at most 20 times."),
		say("Blend HLB is the mass-weighted mean of the non-ionic emulsifiers (Griffin 1954, J. Soc. Cosmet. Chem. 5:249–256); each emulsifier's own value and source are in the table of ingredients."),
		say("Batch: ", trimmed("batch.grams", b.r.Batch.Grams, 3), " g ("+b.r.Batch.GramsFrom+"), weighed in steps of ", trimmed("batch.scale_step_grams", b.r.Batch.ScaleStepGrams, 3), " g. Seed of the draws: ", count("seed", int(b.r.Seed)), ".", version(b.r.Version)),
	}}}
	if p := b.r.PriorBelief; p != nil {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("Before any trial the chance that a mix in the middle of what was tried works is taken as ", chance("prior_belief.at_centre", p.AtCentre),
			", and that some mix within it is sure enough as ", chance("prior_belief.reaches_wanted", p.Reaches), ". ", b.priorWidths())})
	}
	if len(b.r.Assumed) > 0 {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("Taken for known in the trade, and switched off by --trade-signs off: " + strings.Join(b.r.Assumed, "; ") + ".")})
	}
	if len(b.r.Inputs) > 0 {
		t := Table{Caption: "Files read. Every number of this report is in results.json at full precision.", Head: []string{"file", "SHA-256"}, Numeric: make([]bool, 2)}
		for _, in := range b.r.Inputs {
			t.Rows = append(t.Rows, []Text{say(in.File), say(in.SHA256)})
		}
		s.Blocks = append(s.Blocks, cut(t, mostColumns, "results.json"))
	}
	return s
}
