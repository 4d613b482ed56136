package peer

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// cannotTell is what these trials do not show.
func (b pages) cannotTell() document.Section {
	s := document.Section{ID: "cannot-tell", Title: "What these trials do not show", Reader: document.Scientist}
	var items []document.Text
	for _, n := range b.R.CannotTell {
		items = append(items, say.Sentence(n.Sentence))
	}
	if len(items) > 0 {
		s.Blocks = []document.Block{document.List{Items: items}}
	}
	return s
}

// mostLevels is how many levels of days, cooks and lots the report lists.
const mostLevels = 40

// differences is what days, cooks, canisters, lots, settings and the order do to each result.
func (b pages) differences() []document.Block {
	if len(b.R.GroupEffects) == 0 {
		return nil
	}
	how := "A likelihood-ratio test beside the terms of the fit that the result is judged by, the settings and the choices, referred to F; a trial known only up to one bound counts half in the degrees of freedom. " +
		"Several things are looked at for each result, so the adjusted p (Holm) counts them all: shown is adjusted p below 0.05, suggested is p below 0.05 before that. " +
		"Where the group makes the variance of a term more than 10 times as large, the two are not separated."
	tests := document.Table{Of: "result", Caption: "Does a result differ between days, cooks, canisters and lots, change with a setting, or drift from first to last?",
		Head:    []string{"result", "by", "trials", "beside", "statistic", "df", "residual df", "p", "adjusted p", "verdict", "largest inflation", "note"},
		Numeric: []bool{false, false, true, false, true, true, true, true, true, false, true, false}}
	levels := document.Table{Of: "result", Caption: "Each day, cook, canister or lot as a factor of their common mean at the same mix; what a setting does from the low end tried to the high; the drift from the first trial to the last.",
		Head: []string{"result", "by", "which", "trials", "factor", "90 % limits"}, Numeric: []bool{false, false, false, true, true, true}}
	var notes numbered
	for i, e := range b.R.GroupEffects {
		p := fmt.Sprintf("group_effects[%d]", i)
		df := document.Text(nil)
		if e.P != nil {
			df = say.Text(say.Count(p+".df", e.DF))
		}
		tests.Rows = append(tests.Rows, []document.Text{say.Text(say.Outcome(e.Result)), say.Text(b.by(e)), say.Text(say.Count(p+".n", e.N)), say.Text(say.Shapes[e.Order]), measure(p+".likelihood_ratio", e.LikelihoodRatio, say.OfScore), df,
			measure(p+".residual_df", e.ResidualDF, 1), say.Probability(p+".p", e.P), say.Probability(p+".p_adjusted", e.PAdjusted), say.Text(string(wording.Compared(e))), measure(p+".variance_inflation", e.Inflation, 1), say.Text(notes.mark(differenceNote(e)))})
		levels.Rows = append(levels.Rows, b.sizes(p, e)...)
	}
	blocks := []document.Block{say.Head("Days, cooks, canisters, lots and settings"), document.Paragraph{Text: say.Text(how)}, say.Cut(tests, mostLevels, "results.json")}
	blocks = append(blocks, notes.list()...)
	if len(levels.Rows) > 0 {
		blocks = append(blocks, say.Cut(levels, mostLevels, "results.json"))
	}
	return blocks
}

// by names what a result may differ by.
func (b pages) by(e result.GroupEffect) string {
	if e.OrderBy == result.ByDate {
		return "order, by date"
	}
	for _, v := range b.R.Variables {
		if v.Name == e.By {
			return v.Label
		}
	}
	return e.By
}

// differenceNote is what a verdict alone does not say.
func differenceNote(e result.GroupEffect) string {
	var parts []string
	if len(e.NotToldFrom) > 0 || wording.Compared(e) == result.Suggested {
		parts = append(parts, e.Sentence)
	}
	for _, more := range []string{e.Failure, e.BesideReason} {
		if more != "" {
			parts = append(parts, more)
		}
	}
	return strings.Join(parts, "; ")
}

// sizes is a row a level of a group, or one of a drift or a setting.
func (b pages) sizes(p string, e result.GroupEffect) (rows [][]document.Text) {
	if len(e.NotToldFrom) > 0 {
		return nil
	}
	row := func(level string, trials document.Span, size []document.Text) {
		rows = append(rows, append([]document.Text{say.Text(say.Outcome(e.Result)), say.Text(b.by(e)), say.Text(level), say.Text(trials)}, size...))
	}
	for k, l := range e.Levels {
		q := fmt.Sprintf("%s.levels[%d]", p, k)
		size := band(q+".factor", l.Factor)
		if l.Factor == nil && e.P != nil {
			size[1] = say.Text("none (bounds only)")
		}
		row(l.Name, say.Count(q+".trials", l.Trials), size)
	}
	if e.Drift != nil {
		row("last over first", say.Count(p+".n", e.N), band(p+".drift_factor", e.Drift))
	}
	if e.Change != nil {
		row("highest over lowest", say.Count(p+".n", e.N), band(p+".range_factor", e.Change))
	}
	return rows
}

// band is a factor and its limits as two cells.
func band(path string, f *result.Band) []document.Text {
	if f == nil {
		return []document.Text{nil, nil}
	}
	return []document.Text{say.Text(say.Num(path+".mid", f.Mid, say.OfScore)), say.Text(say.Num(path+".low", f.Low, say.OfScore), " to ", say.Num(path+".high", f.High, say.OfScore))}
}

// smallest is the smallest difference the layout could show.
func (b pages) smallest() []document.Block {
	if len(b.R.Detectable) == 0 {
		return nil
	}
	how := "The factor is the smallest that this log finds 8 times in 10 where it is there (power 0.8), with a false alarm 1 time in 20 (two-sided, α 0.05). " +
		"Two formulas: “made” is how many times more each of them is made. A variable: from one end of its tested range to the other, by the trials made and straight terms. " +
		"The SD of ln is the scatter about the fit judged by, by its degrees of freedom; σ under Fits is that of maximum likelihood, which is smaller."
	t := document.Table{Of: "result", Caption: "The smallest difference these trials could show",
		Head: []string{"result", "between", "made more times", "SD of ln", "df", "factor"}, Numeric: []bool{false, false, true, true, true, true}}
	for i, d := range b.R.Detectable {
		p := fmt.Sprintf("detectable[%d]", i)
		between, made := "two formulas", document.Text(nil)
		if d.Made > 0 {
			made = say.Text(say.Count(p+".made", d.Made))
		} else {
			between = "ends of " + b.Label(d.Between)
		}
		t.Rows = append(t.Rows, []document.Text{say.Text(say.Outcome(d.Result)), say.Text(between), made, say.Text(say.Num(p+".sd_ln", d.SDLn, say.OfTerm)), say.Text(say.Count(p+".df", d.DF)), say.Text(say.Num(p+".factor", d.Factor, say.OfScore))})
	}
	return []document.Block{say.Head("What this layout could show"), document.Paragraph{Text: say.Text(how)}, t}
}

// farOff are the trials the judged fits predict worst, with what they give.
func (b pages) farOff() []document.Block {
	var worst []int
	for i, r := range b.R.Residuals {
		if r.Score != nil {
			worst = append(worst, i)
		}
	}
	if len(worst) == 0 {
		return nil
	}
	slices.SortStableFunc(worst, func(i, k int) int {
		return cmp.Compare(math.Abs(*b.R.Residuals[k].Score), math.Abs(*b.R.Residuals[i].Score))
	})
	t := document.Table{Caption: "The trials farthest from the fit judged by, by the normal score of the residual; all are in report.xlsx.",
		Head: []string{"result", "trial", "day", "cook", "fitted median", "predicted from the others", "normal score"}, Numeric: []bool{false, false, false, false, true, true, true}}
	for _, i := range worst[:min(len(worst), 8)] {
		r, p := b.R.Residuals[i], fmt.Sprintf("residuals[%d]", i)
		name := r.ID
		if name == "" {
			name = b.Place(r.At)
		}
		t.Rows = append(t.Rows, []document.Text{say.Text(say.Outcome(r.Result)), say.Text(name), say.Text(r.Day), say.Text(r.Cook), say.Text(say.Num(p+".fitted_median", r.Fitted, say.OfMinutes)),
			measure(p+".left_out_median", r.LeftOut, say.OfMinutes), measure(p+".score", r.Score, say.OfScore)})
	}
	return []document.Block{t}
}
