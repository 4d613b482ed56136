package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

// cannotTell is what these trials do not show.
func (b *builder) cannotTell() Section {
	s := Section{ID: "cannot-tell", Title: "What stays unclear", Reader: Scientist}
	var items []Text
	for _, n := range b.r.CannotTell {
		items = append(items, capital(say(sentence(n.Sentence))))
	}
	if len(items) > 0 {
		s.Blocks = []Block{List{Items: items}}
	}
	return s
}

var verdictWords = map[result.Verdict]string{result.Clear: "clear", result.Likely: "likely", result.CannotTell: "unclear"}

// mostLevels is how many levels of days, cooks and lots the report lists.
const mostLevels = 40

// differences is what days, cooks, canisters, lots, settings and the order do to each result.
func (b *builder) differences() []Block {
	if len(b.r.GroupEffects) == 0 {
		return nil
	}
	how := "A likelihood-ratio test beside the terms of the fit that the result is judged by, the settings and the choices, referred to F; a trial known only up to one bound counts half in the degrees of freedom. " +
		"Several things are looked at for each result, so the adjusted p (Holm) counts them all: clear is adjusted p below 0.01, likely below 0.05. " +
		"Where the group makes the variance of a term more than 10 times as large, the two are not separated."
	tests := Table{Caption: "Does a result differ between days, cooks, canisters and lots, change with a setting, or drift from first to last?",
		Head:    []string{"result", "by", "trials", "beside", "statistic", "df", "residual df", "p", "adjusted p", "verdict", "largest inflation", "note"},
		Numeric: []bool{false, false, true, false, true, true, true, true, true, false, true, false}}
	levels := Table{Caption: "Each level as a factor of their common mean at the same mix; what a setting does from the low end tried to the high; the drift from the first trial to the last.",
		Head: []string{"result", "by", "level", "trials", "factor", "90 % limits"}, Numeric: []bool{false, false, false, true, true, true}}
	var notes numbered
	for i, e := range b.r.GroupEffects {
		p := fmt.Sprintf("group_effects[%d]", i)
		df := Text(nil)
		if e.P != nil {
			df = say(count(p+".df", e.DF))
		}
		tests.Rows = append(tests.Rows, []Text{say(outcomeName(e.Result)), say(b.by(e)), say(count(p+".n", e.N)), say(besides[e.Order]), measure(p+".likelihood_ratio", e.LikelihoodRatio, ofScore), df,
			measure(p+".residual_df", e.ResidualDF, 1), probability(p+".p", e.P), probability(p+".p_adjusted", e.PAdjusted), say(verdictWords[e.Verdict]), measure(p+".variance_inflation", e.Inflation, 1), say(notes.mark(differenceNote(e)))})
		levels.Rows = append(levels.Rows, b.sizes(p, e)...)
	}
	blocks := []Block{head("Days, cooks, canisters, lots and settings"), Paragraph{Text: say(how)}, cut(tests, mostLevels, "results.json")}
	blocks = append(blocks, notes.list()...)
	if len(levels.Rows) > 0 {
		blocks = append(blocks, cut(levels, mostLevels, "results.json"))
	}
	return blocks
}

// besides names the terms of the mix that a test stands beside.
var besides = map[int]string{1: "straight", 2: "curved"}

// by names what a result may differ by.
func (b *builder) by(e result.GroupEffect) string {
	if e.OrderBy == result.ByDate {
		return "order, by date"
	}
	for _, v := range b.r.Variables {
		if v.Name == e.By {
			return v.Label
		}
	}
	return e.By
}

// differenceNote is what a verdict alone does not say.
func differenceNote(e result.GroupEffect) string {
	var parts []string
	if len(e.NotToldFrom) > 0 || strings.HasPrefix(e.Sentence, "suggested") {
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
func (b *builder) sizes(p string, e result.GroupEffect) (rows [][]Text) {
	if len(e.NotToldFrom) > 0 {
		return nil
	}
	row := func(level string, trials Span, size []Text) {
		rows = append(rows, append([]Text{say(outcomeName(e.Result)), say(b.by(e)), say(level), say(trials)}, size...))
	}
	for k, l := range e.Levels {
		q := fmt.Sprintf("%s.levels[%d]", p, k)
		size := band(q+".factor", l.Factor)
		if l.Factor == nil && e.P != nil {
			size[1] = say("none: every result is a bound on one side")
		}
		row(l.Name, count(q+".trials", l.Trials), size)
	}
	if e.Drift != nil {
		row("last over first", count(p+".n", e.N), band(p+".drift_factor", e.Drift))
	}
	if e.Change != nil {
		row("highest over lowest", count(p+".n", e.N), band(p+".range_factor", e.Change))
	}
	return rows
}

// band is a factor and its limits as two cells.
func band(path string, f *result.Band) []Text {
	if f == nil {
		return []Text{nil, nil}
	}
	return []Text{say(num(path+".mid", f.Mid, ofScore)), say(num(path+".low", f.Low, ofScore), " to ", num(path+".high", f.High, ofScore))}
}

// smallest is the smallest difference the layout could show.
func (b *builder) smallest() []Block {
	if len(b.r.Detectable) == 0 {
		return nil
	}
	how := "A factor this large is found 8 times in 10 where it is there (power 0.8) and called 1 time in 20 where it is not (two-sided, α 0.05). " +
		"Two formulas: each made so often more, with the scatter about the fit judged by. A variable: from one end of its tested range to the other, by the trials made and straight terms."
	t := Table{Caption: "The smallest difference these trials could show",
		Head: []string{"result", "between", "made", "SD of ln", "df", "factor"}, Numeric: []bool{false, false, true, true, true, true}}
	for i, d := range b.r.Detectable {
		p := fmt.Sprintf("detectable[%d]", i)
		between, made := "two formulas", Text(nil)
		if d.Made > 0 {
			made = say(count(p+".made", d.Made))
		} else {
			between = "ends of " + b.label(d.Between)
		}
		t.Rows = append(t.Rows, []Text{say(outcomeName(d.Result)), say(between), made, say(num(p+".sd_ln", d.SDLn, ofTerm)), say(count(p+".df", d.DF)), say(num(p+".factor", d.Factor, ofScore))})
	}
	return []Block{head("What this layout could show"), Paragraph{Text: say(how)}, t}
}

// farOff are the trials the judged fits predict worst, with what they give.
func (b *builder) farOff() []Block {
	var worst []int
	for i, r := range b.r.Residuals {
		if r.Score != nil {
			worst = append(worst, i)
		}
	}
	if len(worst) == 0 {
		return nil
	}
	slices.SortStableFunc(worst, func(i, k int) int {
		return cmp.Compare(math.Abs(*b.r.Residuals[k].Score), math.Abs(*b.r.Residuals[i].Score))
	})
	t := Table{Caption: "The trials farthest from the fit judged by, by the normal score of the residual; all are in report.xlsx.",
		Head: []string{"result", "trial", "day", "cook", "fitted median", "predicted from the others", "normal score"}, Numeric: []bool{false, false, false, false, true, true, true}}
	for _, i := range worst[:min(len(worst), 8)] {
		r, p := b.r.Residuals[i], fmt.Sprintf("residuals[%d]", i)
		name := r.ID
		if name == "" {
			name = b.place(r.At)
		}
		t.Rows = append(t.Rows, []Text{say(outcomeName(r.Result)), say(name), say(r.Day), say(r.Cook), say(num(p+".fitted_median", r.Fitted, ofMinutes)),
			measure(p+".left_out_median", r.LeftOut, ofMinutes), measure(p+".score", r.Score, ofScore)})
	}
	return []Block{t}
}
