package workbook

import (
	"fmt"

	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/reports/document"
)

func of[T any](v T) *T { return &v }

// third has more digits than a careless writer keeps.
const third = 1.0 / 3

// hostile are texts that a log may hold and a workbook must not obey or break on.
var hostile = []string{
	"=1+1", "+1", "-1", "@SUM(A1)", "=cmd|'/c calc'!A1", "=HYPERLINK(\"http://example.invalid\",\"x\")",
	"<script>alert(1)</script>", "]]>&amp;", "tab\there", "nul\x00bell\x07esc\x1b", "bad\xff\xfeutf", "_x0041_", " spaces ", "\U0001F9C8 日本 \u202Eevil",
}

// kitchen is an invented run of as many trials as there are hostile texts, each
// the note, place, cook and ingredient of one.
func kitchen() *result.Results {
	mix := result.Mix{FatPercent: of(128.4 * 99.5 / 300), EmulsifierPercent: of(10 / 3.0), BlendHLB: of((5.6*3.8 + 4.4*15) / 10)}
	lines := []result.FormulaLine{
		{Name: "clarified butter", Kind: "fat", Grams: 128.4, PercentOfMix: 100 * 128.4 / 300, WeighingErrorPercent: 5 / 128.4, PercentOfPart: of(100.0), Part: "fat"},
		{Name: "cider", Kind: "water part", Grams: 161.6, PercentOfMix: 100 * 161.6 / 300, WeighingErrorPercent: 5 / 161.6, PercentOfPart: of(100.0), Part: "water"},
		{Name: "GMS", Kind: "emulsifier", Grams: 5.6, PercentOfMix: 100 * 5.6 / 300, WeighingErrorPercent: 5 / 5.6, PercentOfPart: of(100 * 5.6 / 128.4), Part: "fat"},
		{Name: "sucrose ester 15", Kind: "emulsifier", Grams: 4.4, PercentOfMix: 100 * 4.4 / 300, WeighingErrorPercent: 5 / 4.4, PercentOfPart: of(100 * 4.4 / 161.6), Part: "water"},
	}
	for i, within := range []float64{5.6, 8.9, 0.2, 0} {
		lines[i].WithinGrams, lines[i].Ounces = of(within), of(lines[i].Grams/28.349523125)
	}
	parts := []result.Part{{Part: "fat", Lines: []int{0, 2}, Grams: 134, Ounces: of(134 / 28.349523125), PercentOfMix: 100 * 134 / 300.0},
		{Part: "water", Lines: []int{1, 3}, Grams: 166, Ounces: of(166.0 / 28.349523125), PercentOfMix: 100 * 166 / 300.0}}
	r := &result.Results{
		Status:  result.Recommended,
		Targets: result.Targets{DrainedAtMinutes: result.Target{Value: 20}},
		Batch:   result.Batch{Grams: 300, ScaleStepGrams: 0.1, LargestFillGrams: of(310.0), Ounces: of(300 / 28.349523125)},
		Variables: []result.Variable{
			{Name: "fat_percent", Label: "fat", Unit: "%", Low: 31, High: 57, Centre: 43 + third, Scale: 7},
			{Name: "emulsifier_percent", Label: "emulsifier", Unit: "%", Log: true, Low: 0.9, High: 3.3, Centre: 0.6, Scale: third}},
		Starts:    []result.Start{{Aim: result.Surest, Status: result.Recommended, Mix: mix, Chance: result.Chance{Mean: 0.93, Low: 0.6, High: 0.99, Level: 0.9}, Ingredients: lines, Parts: parts}},
		Summaries: []result.Summary{{By: "day", Name: "Mon", Trials: 5, CameOut: 5, Worked: 2, Repeats: 2, CV: of(100 * third)}},
		Problems: []result.Problem{
			{Kind: "percent", Severity: result.MustFix, At: "week.xlsx, sheet Tue, cell C6", Count: 2, Read: "a fat of 140 %", Do: "type a percent below 100"}},
		Columns: []result.Column{{At: "week.xlsx, cell A3", Header: "=1+1", ReadAs: "", Unit: "g"}},
		Grid: []result.Grid{{Name: "fat_by_emulsifier", X: result.Axis{Variable: "fat_percent", Values: []float64{35, 40, 45}}, Y: result.Axis{Variable: "emulsifier_percent", Values: []float64{1, 2}},
			Fixed: result.Mix{BlendHLB: of(8.0)}, Chance: [][]float64{{0.1, 0.2, third}, {0.5, 0.9, 0.8}}, Tested: [][]bool{{true, true, true}, {true, true, false}}}},
		Fits: []result.Fit{{Result: "hold_minutes", Distribution: "lognormal", Transform: "ln", Order: 1, N: 20, Observations: result.Observations{Exact: 12, AtLeast: 8}, JudgedBy: true,
			LogLikelihood: of(-61 - third), Scale: of(0.25), Terms: []result.Term{{Estimate: 3 + third, StdError: of(0.1)}, {Variables: []string{"fat_percent"}, Estimate: 0.2, StdError: of(0.05)}},
			Covariance: [][]float64{{0.01, 0, 0}, {0, 0.0025, 0}, {0, 0, third}}, NullReason: "bounds"}},
		Model: []result.Model{{Outcome: result.CameOut, Kind: "yes_no", N: 24, Events: of(4), Terms: [][]string{nil, {"fat_percent", "fat_percent"}}, Prior: []result.PriorTerm{{Mean: 1, SD: 2}, {SD: 1}},
			Mean: []float64{2, third}, Covariance: [][]float64{{0.25, 0}, {0, 0.04}}, Draws: 4000, ESS: 2200.5}},
		Residuals: []result.Residual{{Result: "hold_minutes", At: "week.xlsx, row 4", ID: "=1+1", Order: 1, Day: "@day", Fitted: 20.5, Ratio: &result.Interval{Low: of(0.75)},
			Standardised: result.Interval{Low: of(-0.5)}, Score: of(0.125), LeftOut: of(19.25)}},
		GroupEffects: []result.GroupEffect{{By: "=lot", Result: "hold_minutes", Distribution: "lognormal", N: 20, LikelihoodRatio: of(4 + third), DF: 1, ResidualDF: of(9.5), P: of(0.0625), PAdjusted: of(0.125), F: &result.FTest{F: 3.5, DF1: 1, DF2: 9.5, Counted: 15}, Verdict: result.CannotTell,
			Levels: []result.Level{{Name: "=1+1", Trials: 3, Factor: &result.Band{Mid: 1.25, Low: 0.75, High: 2}}, {Name: "b", Trials: 4}}, Sentence: "not shown"}},
		Detectable: []result.Detectable{{Result: "hold_minutes", Between: "two_formulas", Made: 2, SDLn: 0.25, DF: 9, Factor: 2.5}},
		CannotTell: []result.NotShown{{Kind: "few_levels", Sentence: "=1+1 was tried at two levels only"}},
		NextTrials: []result.NextTrial{
			{Purpose: "confirm", Mix: mix, Ingredients: lines, Reason: "Makes the start for the first time.", Chance: of(0.93), ClogChance: of(0.04)},
			{Purpose: "map", Mix: mix, Ingredients: lines[:3], Reason: "=1+1", ClogChance: of(0.12)}},
		Ingredients: []result.Used{{Name: "clarified butter", Kind: "fat", FatPercent: of(99.5), Allergens: []string{"milk"}}, {Name: "GMS", Kind: "emulsifier", HLB: of(3.8)}, {Name: "sucrose ester 15", Kind: "emulsifier", HLB: of(15.0)}},
		Allergens:   result.Allergens{Found: []string{"milk"}, Unknown: []string{"cider"}},
	}
	for _, fat := range []float64{35, 40, 45, 50} {
		r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: fat, Chance: result.Chance{Mean: 0.9, Low: 0.7, High: 0.97}, Mix: mix, LimitedBy: result.CameOut, Workable: true})
	}
	yes := result.Yes
	for i, s := range hostile {
		r.Trials = append(r.Trials, result.Trial{At: fmt.Sprintf("week.xlsx, row %d", i+4), ID: s, Order: i + 1, Cook: s, Note: s, Used: true, Ingredient: []result.Amount{{Name: s, Grams: 120}},
			FatPercent: of(40 + third), HoldMinutes: &result.Interval{Low: of(20.0)}, CameOut: &yes, Missing: map[string]string{"drained_percent": "not_measured"}, Extras: map[string]float64{"rest_minutes": 10}})
	}
	return r
}

func everyBlock() document.Document {
	say := func(s string) document.Text { return document.Text{{Text: s}} }
	return document.Document{Title: "=1+1 week", Subtitle: "26 trials", Sections: []document.Section{
		{ID: "start", Title: "Start from this", Blocks: []document.Block{
			document.Paragraph{Lead: true, Text: say("Start from 43 % fat.")},
			document.List{Items: []document.Text{say("It clogs about 1 in 25."), say("=2+2")}},
			document.Callout{Caution: true, Title: "Vent first", Text: say("Do not open a clogged canister.")},
			document.Formula{Title: "For 300 g", Lines: []document.FormulaLine{{Name: say("=3+3"), Grams: say("128.4"), OfMix: say("42.8 %")}}, Total: say("300 g"), Note: say("Likely to work.")},
			document.Table{Caption: "Closest trial", Head: []string{"what", "here", "there"}, Rows: [][]document.Text{{say("fat"), say("43.0"), say("42.0")}}, Cut: "2 more"}}},
		{ID: "card", Title: "Bench card: surest start", Alone: true, Blocks: []document.Block{document.Card{Title: "surest start", Of: "starts[0]", Log: "=1+1", Mix: say("=2+2"),
			Aim: say("Works about 9 in 10."), Made: say("Predicted, not yet made."), Note: say("@note"), Mind: []document.Text{say("=3+3"), say("Vent first.")},
			Parts:  []document.CardPart{{Title: "Fat part", Lines: make([]document.CardLine, 2)}, {Title: "Water part", Lines: make([]document.CardLine, 2)}},
			Steps:  []document.CardStep{{Text: say("=cmd|'/c calc'!A1")}, {Text: say("<b>chill</b>"), Critical: true, Limit: say("=4+4")}},
			Blanks: []document.Blank{{Label: say("=5+5"), Choices: []string{"yes", "no"}}, {Label: say("hold"), Line: true, Unit: "min"}}}}},
		{ID: "card-2", Title: "Bench card: your next trial", Alone: true, Blocks: []document.Block{document.Card{Parts: []document.CardPart{{Title: "Fat part", Lines: make([]document.CardLine, 3)}}}}},
		{ID: "fits", Title: "Fits", Reader: document.Scientist, Blocks: []document.Block{document.Paragraph{Text: say("not for cooks")}}},
	}}
}

// nextTrialsOf is the sheet of a report's next trials.
func nextTrialsOf(r *result.Results) ([]byte, error) {
	p, ordered := plan.After(r, 0, plan.Shifts{})
	return NextTrials(ordered, p, nil)
}
