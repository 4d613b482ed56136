package workbook

import (
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// residuals is a row an observation: what the fit judged by gives for it, and what
// the same fit of all the other trials foresaw.
func residuals(b *book, r *result.Results) {
	at, where := places(r)
	p := b.sheet("Residuals", 14, 12, 7, 6, 8, 8, 11, 12, 12, 12, 12, 11, 12, 12)
	p.table = true
	p.heads("result", where, "trial", "order", "day", "cook", "fitted median", "observed/fitted, at least", "observed/fitted, at most",
		"standardised, at least", "standardised, at most", "normal score", "median predicted from the others", "left-out log-likelihood")
	p.freeze(3)
	p.filter(len(r.Residuals))
	for _, x := range r.Residuals {
		row := []cell{in(ordinary, words(x.Result)), in(ordinary, at(x.At)), in(ordinary, x.ID), count(x.Order), in(ordinary, x.Day), in(ordinary, x.Cook),
			in(precise, x.Fitted), {}, {}}
		if x.Ratio != nil {
			row[7], row[8] = number(x.Ratio.Low, precise), number(x.Ratio.High, precise)
		}
		p.add(append(row, number(x.Standardised.Low, precise), number(x.Standardised.High, precise), number(x.Score, precise),
			number(x.LeftOut, precise), number(x.LeftOutLogLike, precise))...)
	}
	p.stream()
}

// differences is days, cooks, canisters, lots, settings and the order against each result,
// and the smallest difference the layout could show.
func differences(b *book, r *result.Results) {
	p := b.sheet("Differences", 18, 16, 14, 8, 12, 7, 12, 12, 12, 12, 12, 12, 30, 50)
	p.heads("result", "by", "distribution", "trials", "likelihood ratio", "df", "residual df", "F", "p", "p, adjusted", "verdict", "variance inflation", "not told from", "what it comes to")
	for _, e := range r.GroupEffects {
		say := e.Sentence
		if e.Failure != "" && e.Failure != e.Sentence {
			say += "; " + e.Failure
		}
		if e.BesideReason != "" {
			say += "; " + e.BesideReason
		}
		by, f := e.By, cell{}
		if e.OrderBy == result.ByDate {
			by = "order, by date"
		}
		if e.F != nil {
			f = in(precise, e.F.F)
		}
		p.add(in(ordinary, words(e.Result)), in(ordinary, by), in(ordinary, spelt(e.Distribution)), count(e.N), number(e.LikelihoodRatio, precise), count(e.DF), number(e.ResidualDF, tenths),
			f, number(e.P, precise), number(e.PAdjusted, precise), in(ordinary, string(wording.Compared(e))), number(e.Inflation, precise), text(strings.Join(e.NotToldFrom, ", ")), text(say))
	}
	p.add(in(ordinary, "Shown: adjusted p below 0.05. Suggested: p below 0.05 alone. The adjustment (Holm) counts all tests of one result. Levels are factors of their common mean, with 90 % limits."))
	p.add()
	p.heads("result", "by", "level", "trials", "factor", "", "low", "high")
	for _, e := range r.GroupEffects {
		for _, l := range e.Levels {
			p.add(append([]cell{in(ordinary, words(e.Result)), in(ordinary, e.By), in(ordinary, l.Name), count(l.Trials)}, factor(l.Factor)...)...)
		}
		if e.Drift != nil {
			p.add(append([]cell{in(ordinary, words(e.Result)), in(ordinary, e.By), in(ordinary, "last/first"), count(e.N)}, factor(e.Drift)...)...)
		}
		if e.Change != nil {
			p.add(append([]cell{in(ordinary, words(e.Result)), in(ordinary, e.By), in(ordinary, "highest/lowest"), count(e.N)}, factor(e.Change)...)...)
		}
	}
	p.add()
	p.add(in(ordinary, "Smallest difference shown 8 times in 10 by a two-sided test at 0.05, as a factor:"))
	p.heads("result", "between", "", "made", "SD of ln", "df", "factor")
	for _, d := range r.Detectable {
		made := cell{}
		if d.Made > 0 {
			made = count(d.Made)
		}
		p.add(in(ordinary, words(d.Result)), in(ordinary, words(d.Between)), cell{}, made, in(precise, d.SDLn), count(d.DF), in(precise, d.Factor))
	}
	p.write()
}

func factor(f *result.Band) []cell {
	if f == nil {
		return []cell{{}, {}, {}, {}}
	}
	return []cell{in(precise, f.Mid), {}, in(precise, f.Low), in(precise, f.High)}
}

// cannotTell is what these trials do not show.
func cannotTell(b *book, r *result.Results) {
	p := b.sheet("Unclear", 18, 110)
	p.heads("about", "what these trials do not show")
	for _, n := range r.CannotTell {
		p.add(in(ordinary, words(n.Kind)), text(wording.Sentence(n.Sentence)))
	}
	p.write()
}
