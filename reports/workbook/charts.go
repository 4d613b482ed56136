package workbook

import (
	"fmt"
	"math"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/reports/say"
)

// fatLimit is the best chance at each fat percent, with a chart of it.
func fatLimit(b *book, r *result.Results) {
	p := b.sheet("Fat limit", 9, 10, 10, 10, 16, 12, 10, 10)
	p.heads("fat, %", "chance", "low", "high", "fails first by", "emulsifier, %", "blend HLB", "may be a start")
	p.freeze(1)
	for _, f := range r.FatLimit {
		p.add(in(tenths, f.FatPercent), in(chance, f.Chance.Mean), in(chance, f.Chance.Low), in(chance, f.Chance.High),
			in(ordinary, say.Failings(r, f.LimitedBy)), number(f.Mix.EmulsifierPercent, tenths), number(f.Mix.BlendHLB, tenths), in(ordinary, f.Workable))
	}
	if n := len(r.FatLimit); n > 1 {
		series := func(col, colour string, dash excelize.LineDashType, width float64) excelize.ChartSeries {
			fill := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
			return excelize.ChartSeries{
				Fill:       fill,
				Name:       fmt.Sprintf("'%s'!$%s$1", p.name, col),
				Categories: fmt.Sprintf("'%s'!$A$2:$A$%d", p.name, n+1),
				Values:     fmt.Sprintf("'%s'!$%s$2:$%s$%d", p.name, col, col, n+1),
				Line:       excelize.LineOptions{Type: excelize.LineSolid, Width: width, Dash: dash, Fill: fill},
				Marker:     excelize.ChartMarker{Symbol: "none"},
			}
		}
		// The axis ends on round numbers, with a few ticks between.
		tick := 5.0
		if r.FatLimit[n-1].FatPercent-r.FatLimit[0].FatPercent < 10 {
			tick = 1
		}
		least, most := tick*math.Floor(r.FatLimit[0].FatPercent/tick), tick*math.Ceil(r.FatLimit[n-1].FatPercent/tick)
		zero, one := 0.0, 1.0
		words := func(s string, bold bool) excelize.ChartTitle {
			return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: s, Font: &excelize.Font{Family: "Liberation Sans", Size: 10, Bold: bold, Color: drawing.Ink}}}}
		}
		ticks := excelize.Font{Family: "Liberation Sans", Size: 9, Color: drawing.Quiet}
		p.do(p.f.AddChart(p.name, "J2", &excelize.Chart{
			Type:      excelize.Scatter,
			Series:    []excelize.ChartSeries{series("B", drawing.Accent, excelize.LineDashSolid, 2.25), series("C", drawing.Quiet, excelize.LineDashDash, 1), series("D", drawing.Quiet, excelize.LineDashDash, 1)},
			Title:     words("Best chance of working at each fat percent", true),
			Legend:    excelize.ChartLegend{Position: "bottom"},
			XAxis:     excelize.ChartAxis{Minimum: &least, Maximum: &most, MajorUnit: tick, Font: ticks, NumFmt: excelize.ChartNumFmt{CustomNumFmt: "0"}, Title: words("fat, g per 100 g of mix", false)},
			YAxis:     excelize.ChartAxis{Minimum: &zero, Maximum: &one, MajorGridLines: true, MajorUnit: 0.2, Font: ticks, Title: words("chance of working", false), NumFmt: excelize.ChartNumFmt{CustomNumFmt: "0 %"}},
			Dimension: excelize.ChartDimension{Width: 560, Height: 360},
			Format:    excelize.GraphicOptions{AltText: "Best chance of working against fat percent, with its low and high limits"},
		}))
	}
	p.write()
}

// grid is the chances of the first grid, on a scale of colours; mixes far from
// any trial are left out, as nothing is known of them.
func grid(b *book, r *result.Results) {
	p := b.sheet("Grid", 16)
	if len(r.Grid) > 0 {
		for range r.Grid[0].X.Values {
			p.widths = append(p.widths, 6.5)
		}
	}
	if len(r.Grid) == 0 {
		p.add(in(quiet, "There are too few trials for a grid of chances."))
		p.write()
		return
	}
	g := r.Grid[0]
	p.add(in(title, "Chance of working"))
	p.add(in(ordinary, fmt.Sprintf("Down: %s. Across: %s. %s. An empty cell is a mix that no trial comes near.", label(r, g.Y.Variable), label(r, g.X.Variable), fixed(g.Fixed))))
	row := []cell{in(head, label(r, g.Y.Variable)+" \\ "+label(r, g.X.Variable))}
	for _, x := range g.X.Values {
		row = append(row, in(headNumber, x))
	}
	p.add(row...)
	p.freeze(1)
	for j := len(g.Y.Values) - 1; j >= 0; j-- { // more is further up, as in the figure
		row := []cell{in(headNumber, g.Y.Values[j])}
		for i := range g.X.Values {
			c := cell{}
			if g.Tested[j][i] {
				c = in(chance, g.Chance[j][i])
			}
			row = append(row, c)
		}
		p.add(row...)
	}
	if nx, ny := len(g.X.Values), len(g.Y.Values); nx > 0 && ny > 0 {
		p.do(p.f.SetConditionalFormat(p.name, "B4:"+place(nx, 3+ny), []excelize.ConditionalFormatOptions{{
			Type: "3_color_scale", Criteria: "=", MinType: "num", MidType: "num", MaxType: "num", MinValue: "0", MidValue: "0.5", MaxValue: "1",
			MinColor: drawing.Bands[0], MidColor: drawing.Bands[2], MaxColor: drawing.Bands[4]}}))
	}
	p.write()
}

func label(r *result.Results, variable string) string {
	for _, v := range r.Variables {
		if v.Name == variable {
			if v.Unit != "" {
				return v.Label + ", " + v.Unit
			}
			return v.Label
		}
	}
	return words(variable)
}

// fixed says what the other numbers of a grid are held at.
func fixed(m result.Mix) string {
	for _, v := range []struct {
		name  string
		value *float64
	}{{"blend HLB", m.BlendHLB}, {"emulsifier percent", m.EmulsifierPercent}, {"emulsifier grams", m.EmulsifierGrams}, {"fat percent", m.FatPercent}} {
		if v.value != nil {
			return fmt.Sprintf("With %s at %.3g", v.name, *v.value)
		}
	}
	return "All else as in the start"
}
