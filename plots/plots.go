// Package plots lists the figures that results can carry, in the order of the report.
// Its rooms make them: wording puts what they show into words, drawing is how a thing
// is drawn, mark is a trial as a mark; region maps where it works, curve follows one
// variable, trials are the trials themselves, trend is many weeks. Nothing is computed
// here but positions: every number that is shown or worded is read from the results.
package plots

import (
	"foamfield/analysis/result"
	"foamfield/plots/curve"
	"foamfield/plots/drawing"
	"foamfield/plots/region"
	"foamfield/plots/trend"
	"foamfield/plots/trials"
)

// All returns the figures that the results can carry, in the order of the
// report. It accepts any results, however little they hold.
func All(r *result.Results) []drawing.Figure {
	if r == nil {
		return nil
	}
	var figures []drawing.Figure
	for _, build := range []func(*result.Results) (drawing.Figure, bool){
		region.ByEmulsifier, region.ByHLB, curve.FatLimit, curve.Effects, trials.Made, trials.Foreseen, trials.Residuals,
	} {
		if f, ok := build(r); ok {
			figures = append(figures, f)
		}
	}
	return figures
}

// Trends returns the figures of many weeks, in the order of the report.
func Trends(t *result.Trend) (figures []drawing.Figure) {
	if t == nil {
		return nil
	}
	if f, ok := trend.Weeks(t); ok {
		figures = append(figures, f)
	}
	if f, ok := trend.Optima(t); ok {
		figures = append(figures, f)
	}
	for i := range t.Control {
		if f, ok := trend.Control(t, &t.Control[i]); ok {
			figures = append(figures, f)
		}
	}
	return figures
}
