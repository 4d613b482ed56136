package fits

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/thorough"
)

// A score is the mean over what was seen exactly; where a left-out trial is refused or
// impossible there is none.
func TestLeftOutScore(t *testing.T) {
	seen := func(ll ...float64) (out []likeliest.LeftOut) {
		for _, v := range ll {
			out = append(out, likeliest.LeftOut{LogLik: v})
		}
		return out
	}
	refused := append(seen(-1), likeliest.LeftOut{LogLik: math.NaN(), Err: errors.New("no fit")})
	all, first := func(int) bool { return true }, func(i int) bool { return i == 0 }
	for _, c := range []struct {
		name  string
		left  []likeliest.LeftOut
		exact func(int) bool
		want  *float64
		why   string
	}{
		{"two", seen(-1, -3), all, works.Finite(-2), ""},
		{"one of them bounded", seen(-1, -3), first, works.Finite(-1), ""},
		{"far off, but not beyond numbers", seen(-1, -743), all, works.Finite(-372), ""},
		{"beyond numbers", seen(-1, -746), all, nil, impossible},
		{"endlessly far", seen(math.Inf(-1), -1), all, nil, impossible},
		{"an absurd bound does not count", seen(-1, -1e54), first, works.Finite(-1), ""},
		{"refused", refused, all, nil, "cannot be fitted"},
		{"nothing exact", seen(-1), func(int) bool { return false }, nil, "no result is known exactly"},
	} {
		got, why := leftOutScore(c.left, c.exact)
		if read(got) != read(c.want) || (why == "") != (c.why == "") || !strings.Contains(why, c.why) {
			t.Errorf("%s: %v, %q; want %v, %q", c.name, read(got), why, read(c.want), c.why)
		}
	}
}

// The highest score decides; without any, plain and usual fits do, and never one by which
// a trial is impossible.
func TestJudgesBetter(t *testing.T) {
	yesNo := func(how result.Estimator, order int, score float64) result.Fit {
		return result.Fit{Distribution: "logistic", Estimator: how, Order: order, LeaveOneOutScore: works.Finite(score)}
	}
	hold := func(distribution string, order int, why string) result.Fit {
		return result.Fit{Distribution: distribution, Estimator: result.MaximumLikelihood, Order: order, NoScoreReason: why}
	}
	none := math.NaN()
	for _, c := range []struct {
		name          string
		better, worse result.Fit
	}{
		{"by the score", yesNo(result.BiasReduced, 1, -0.3), yesNo(result.MaximumLikelihood, 2, -0.4)},
		{"curved, if it foresees better", yesNo(result.MaximumLikelihood, 2, -0.3), yesNo(result.BiasReduced, 1, -0.4)},
		{"scored before unscored", yesNo(result.BiasReduced, 2, -3), yesNo(result.MaximumLikelihood, 1, none)},
		{"unscored: plain", yesNo(result.MaximumLikelihood, 1, none), yesNo(result.BiasReduced, 2, none)},
		{"unscored: curved", hold("lognormal", 2, ""), hold("lognormal", 1, "")},
		{"not the impossible one", hold("weibull", 1, ""), hold("lognormal", 2, impossible)},
		{"all impossible: straight", hold("lognormal", 1, impossible), hold("lognormal", 2, impossible)},
	} {
		if !judgesBetter(&c.better, &c.worse) || judgesBetter(&c.worse, &c.better) {
			t.Errorf("%s: %+v is not before %+v", c.name, c.better, c.worse)
		}
	}
}

// Whether foams come out is judged by the fit that foresees answers best, plain or
// bias-reduced, and never by one without a score where another has one.
func TestAnswersAreJudgedByScore(t *testing.T) {
	lines := func(out func(i int, fat float64) bool) string {
		var b strings.Builder
		b.WriteString("trial,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
		for i := range 40 {
			var fat float64
			fmt.Sscan(between(i, 0.618, 34, 54), &fat)
			answer, hold := "y", "20"
			if !out(i, fat) {
				answer, hold = "n", ""
			}
			fmt.Fprintf(&b, "%d,%.2f,%s,%s,%s,%s\n", i+1, fat, between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), hold, answer)
		}
		return b.String()
	}
	for _, c := range thorough.Glance(t, 2, []struct {
		name  string
		out   func(i int, fat float64) bool
		order int // bias-reduced: plainly, there is no fit, or none without the one clog
	}{
		{"a clean edge", func(_ int, fat float64) bool { return fat < 48 }, 1},
		{"one clog", func(i int, _ float64) bool { return i != 7 }, 1},
		{"a middle that comes out", func(_ int, fat float64) bool { return fat > 38 && fat < 50 }, 2},
	}) {
		r := fitted(t, written(t, lines(c.out)))
		var judged *result.Fit
		best := math.Inf(-1)
		for i, f := range r.All {
			if f.Result != string(result.CameOut) {
				continue
			}
			if f.JudgedBy {
				judged = &r.All[i]
			}
			if f.LeaveOneOutScore != nil {
				best = math.Max(best, *f.LeaveOneOutScore)
			}
		}
		if judged == nil || judged.Estimator != result.BiasReduced || judged.Order != c.order || judged.LeaveOneOutScore == nil || *judged.LeaveOneOutScore != best {
			t.Errorf("%s: judged by %+v, best score %v", c.name, judged, best)
		}
	}
}

// The demo's curved Weibull fit had a score of -1e54: it is none.
func TestNoAbsurdScore(t *testing.T) {
	r := fitted(t, "../../testdata/demo/week.xlsx")
	impossibles := 0
	for _, f := range r.All {
		if f.LeaveOneOutScore != nil && *f.LeaveOneOutScore < nothing {
			t.Errorf("%s, %s, order %d has a score of %g", f.Result, f.Distribution, f.Order, *f.LeaveOneOutScore)
		}
		if f.NoScoreReason == impossible {
			impossibles++
		}
	}
	if impossibles == 0 {
		t.Error("no fit of the demo lacks a score for being impossible")
	}
}

// What a kitchen measures is fitted last, and the links that were given stay as they are.
func TestDeclaredComesLast(t *testing.T) {
	var b strings.Builder
	b.WriteString("trial,fat %,emulsifier % of mix,blend HLB,hold min,came out,taste /9,overrun %\n")
	for i := range 40 {
		fmt.Fprintf(&b, "%d,%s,%s,%s,%d,y,%d,%d\n", i+1, between(i, 0.618, 34, 54), between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), 10+i*i%13, 1+i*i%9, 150+i*i*i%90)
	}
	_, s := laidOut(t, written(t, b.String()))
	if len(s.Extras) != 2 {
		t.Fatalf("the log measures %d things beside hold", len(s.Extras))
	}
	links := []belief.Link{belief.Gather(s, result.HoldMinutes), belief.Declared(s, s.Extras[1].Name)}
	given := links[1].Outcome
	f := Of(s, links)
	if links[1].Outcome != given {
		t.Errorf("the link of %s became one of %s", given, links[1].Outcome)
	}
	var seen []string
	for _, r := range f.Residuals() {
		if !slices.Contains(seen, r.Result) {
			seen = append(seen, r.Result)
		}
	}
	if want := []string{"hold_minutes", s.Extras[0].Name, s.Extras[1].Name}; !slices.Equal(seen, want) {
		t.Errorf("residuals of %q, want of %q", seen, want)
	}
}

// A fit is of the mix alone; what else its own trials varied is named.
func TestVariedBeside(t *testing.T) {
	for _, c := range thorough.Glance(t, 2, []struct {
		name       string
		rest, cook func(i int) string
		held, out  []string // of hold, of coming out
	}{
		{"nothing else", func(int) string { return "10" }, func(int) string { return "Ana" }, nil, nil},
		{"a setting and who made it", func(i int) string { return strconv.Itoa(10 * (1 + i%3)) }, func(i int) string { return []string{"Ana", "Bo"}[i/2%2] },
			[]string{"rest_minutes", "cook: Ana", "cook: Bo"}, []string{"rest_minutes", "cook: Ana", "cook: Bo"}},
		{"a setting of the clogged alone", func(i int) string {
			if i%4 == 0 {
				return strconv.Itoa(20 + 10*(i%3))
			}
			return "10"
		}, func(int) string { return "Ana" }, nil, []string{"rest_minutes"}},
	}) {
		var b strings.Builder
		b.WriteString("trial,cook,rest min,fat %,emulsifier % of mix,blend HLB,hold min,came out\n")
		for i := range 40 {
			hold, came := strconv.Itoa(10+i*i%13), "y"
			if i%4 == 0 {
				hold, came = "", "n"
			}
			fmt.Fprintf(&b, "%d,%s,%s,%s,%s,%s,%s,%s\n", i+1, c.cook(i), c.rest(i), between(i, 0.618, 34, 54), between(i, 0.414, 0.9, 3), between(i, 0.732, 5, 11), hold, came)
		}
		for _, f := range fitted(t, written(t, b.String())).All {
			want := c.held
			if f.Result == string(result.CameOut) {
				want = c.out
			}
			if f.VariedBeside == nil || !slices.Equal(f.VariedBeside, want) {
				t.Errorf("%s: beside the terms of %s varied %q, want %q", c.name, f.Result, f.VariedBeside, want)
			}
		}
	}
}

// Limits by the multipliers that are told are Wald's.
func TestMultipliers(t *testing.T) {
	_, s := laidOut(t, groupReference+"/log.csv")
	v := Of(s, []belief.Link{belief.Gather(s, result.HoldMinutes)})
	for i, f := range v.All {
		fit := v.behind[i]
		a := make([]float64, len(fit.Coef))
		a[1] = 1
		w := fit.Wald(a, 0.9)
		if high := f.Terms[1].Estimate + *f.TMultiplier**f.StdErrorFactor**f.Terms[1].StdError; math.Abs(high-w.High) > 1e-12*math.Abs(w.High) {
			t.Errorf("%s, order %d: the upper limit is %v, told are %v", f.Distribution, f.Order, w.High, high)
		}
	}
}
