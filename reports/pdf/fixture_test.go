package pdf

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"foamfield/analysis/result"
	"foamfield/plots"
	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// An invented kitchen, only as much of it as the figures need.
func kitchen() *result.Results {
	number := func(v float64) *float64 { return &v }
	yes, no := result.Yes, result.No
	r := &result.Results{Status: result.Recommended,
		Targets:   result.Targets{HoldMinutes: result.Target{Value: 20}, WantedChance: result.Target{Value: 0.8}},
		Variables: []result.Variable{{Name: "fat_percent", Label: "fat", Unit: "%", Low: 31, High: 57}, {Name: "emulsifier_percent", Label: "emulsifier", Unit: "%", Log: true, Low: 0.9, High: 3.3}, {Name: "blend_hlb", Label: "blend HLB", Low: 5, High: 12}},
	}
	chance := func(fat, e float64) float64 {
		return math.Exp(-(fat-43)*(fat-43)/120 - 3*math.Log(e/2)*math.Log(e/2))
	}
	g := result.Grid{Name: "fat_by_emulsifier", X: result.Axis{Variable: "fat_percent"}, Y: result.Axis{Variable: "emulsifier_percent"}, Fixed: result.Mix{BlendHLB: number(8)}}
	for x := 30.0; x <= 58; x++ {
		g.X.Values = append(g.X.Values, x)
	}
	for y := 0.8; y <= 3.5; y *= 1.08 {
		g.Y.Values = append(g.Y.Values, y)
		var c []float64
		var t []bool
		var l []result.Outcome
		for _, x := range g.X.Values {
			c = append(c, chance(x, y))
			t = append(t, math.Hypot((x-43)/13, math.Log(y/1.8)) < 1)
			l = append(l, map[bool]result.Outcome{true: result.CameOut, false: result.HoldMinutes}[x > 43])
		}
		g.Chance, g.Tested, g.LimitedBy = append(g.Chance, c), append(g.Tested, t), append(g.LimitedBy, l)
	}
	r.Grid = []result.Grid{g}
	for x := 30.0; x <= 57; x++ {
		c := chance(x, 2)
		r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: x, Chance: result.Chance{Mean: c, Low: c * 0.8, High: math.Min(1, c*1.1), Level: 0.9}, LimitedBy: result.CameOut, Workable: c >= 0.8})
	}
	r.Starts = []result.Start{{Aim: result.Surest, Status: result.Recommended, Chance: result.Chance{Mean: 0.93, Low: 0.6, High: 0.99, Level: 0.9},
		Mix: result.Mix{FatPercent: number(43), EmulsifierPercent: number(2), BlendHLB: number(8)}}}
	for i := range 24 {
		fat, e, h := 32+float64(i*7%24), 1+float64(i%5)*0.5, 6+float64(i%6)
		hold, came := 8+float64(i), &yes
		works := hold >= 20
		t := result.Trial{At: fmt.Sprintf("week.xlsx, row %d", i+5), Order: i + 1, Used: true, FatPercent: &fat, EmulsifierPercent: &e, BlendHLB: &h, HoldMinutes: &result.Interval{Low: &hold, High: &hold}, Works: &works}
		if i%6 == 5 {
			came, works, t.HoldMinutes = &no, false, nil
			t.FailedBy = []result.Outcome{result.CameOut}
		}
		t.CameOut = came
		r.Trials = append(r.Trials, t)
	}
	return r
}

const hostileWords = "=cmd|'/c calc'!A1 <script>alert(1)</script> \\) Tj ET (x \x00\x07\x1b[31m \u202Eevil\u202C \U0001F9C8 日本 \xff\xfe {nb} "

func words(s string) document.Text { return document.Text{{Text: s}} }

// drawn are the kitchen's figures, which are only read.
var drawn = sync.OnceValue(func() []drawing.Figure { return plots.All(kitchen()) })

// everyBlock has every kind of block, and rows enough for several pages.
func everyBlock() document.Document {
	figures := drawn()
	d := document.Document{Title: "Week of foam trials: week.xlsx", Subtitle: "26 trials read, 24 used; holds 20 minutes or more, drains at most 10 % (assumed)", Figures: map[string]drawing.Figure{}}
	start := document.Section{ID: "start", Title: "Start from this", Blocks: []document.Block{
		document.Paragraph{Lead: true, Text: document.Text{{Text: "Start from 43 % fat: it works "}, {Text: "about 9 times in 10, perhaps as few as 6", Strong: true}, {Text: "."}}},
		document.Formula{Title: "For 500 g", Total: words("500.0 g"), Note: words("Likely to work; says nothing of taste, canister or food safety."), Lines: []document.FormulaLine{
			{Name: words("clarified butter"), Grams: words("215.0"), OfMix: words("43.0 %"), Weigh: words("± 0.1 g")},
			{Name: words("cider, reduced by half"), Grams: words("275.0"), OfMix: words("55.0 %"), Weigh: words("± 0.1 g")},
			{Name: words("glycerol monostearate"), Grams: words("5.6"), OfMix: words("1.12 %"), OfPart: words("2.6 % of fat"), Weigh: words("± 0.1 g (1.8 %)")},
			{Name: words("sucrose ester, HLB 15"), Grams: words("4.4"), OfMix: words("0.88 %"), OfPart: words("1.6 % of water"), Weigh: words("± 0.1 g (2.3 %)")}}},
		document.List{Items: []document.Text{words("It clogs about 1 in 25."), words("It falls before 20 minutes about 1 in 16. " + strings.Repeat("A longer sentence that has to go on to a second line. ", 3))}},
		document.Callout{Caution: true, Title: "Vent before opening", Text: words("A clogged canister is still under pressure: do not open it, vent it first, with eye protection. Follow the maker's instructions.")},
		document.Callout{Title: "How sure", Text: words("Crème brûlée, µ ± ≤ β σ² Ж “quoted” – and a decomposed e\u0301.")},
	}}
	seen := document.Section{ID: "figures", Title: "Where it works", Blocks: nil}
	for _, f := range figures {
		d.Figures[f.Name] = f
		seen.Blocks = append(seen.Blocks, document.FigureRef{Name: f.Name})
	}
	t := document.Table{Caption: "Every trial", Head: []string{"cell", "trial", "fat %", "emulsifier %", "blend HLB", "hold, min", "drained, %", "came out", "worked", "note"},
		Numeric: []bool{false, false, true, true, true, true, true}, Cut: "120 more rows are in report.xlsx, sheet Trials."}
	for i := range 90 {
		note := "a bit stiff, but it kept its shape on the plate"
		if i%5 == 1 {
			note = ""
		}
		if i == 7 {
			note = hostileWords
		}
		t.Rows = append(t.Rows, []document.Text{words(fmt.Sprintf("week.xlsx, sheet Tue, row %d", i+5)), words(fmt.Sprint(i + 1)), words("43.0"), words("2.0"), words("8.1"), words("20+"), words("4.2"), words("yes"), words("yes"), words(note)})
	}
	trials := document.Section{ID: "trials", Title: "Trials", Reader: document.Scientist, Blocks: []document.Block{t}}
	d.Sections = []document.Section{start, seen, trials}
	return d
}
