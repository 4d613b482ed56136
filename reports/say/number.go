package say

import (
	"math"
	"strconv"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports/document"
)

// Num is the one way a number gets into a document: the value as people read it,
// with the path where results.json holds it.
func Num(path string, v float64, digits int) document.Span {
	return document.Span{Text: minus(strconv.FormatFloat(zeroed(v, digits), 'f', digits, 64)), Num: &document.Num{Path: path, Value: v}}
}

// minus gives a number below nothing the sign of print.
func minus(s string) string { return strings.Replace(s, "-", "−", 1) }

// zeroed keeps a number that rounds to nothing from being printed as -0.
func zeroed(v float64, digits int) float64 {
	if math.Abs(v) < 0.5*math.Pow(10, -float64(digits)) {
		return 0
	}
	return v
}

// Trimmed is Num without idle zeros: for what a person set or tried.
func Trimmed(path string, v float64, digits int) document.Span {
	s := Num(path, v, digits)
	if strings.Contains(s.Text, ".") {
		s.Text = strings.TrimRight(strings.TrimRight(s.Text, "0"), ".")
	}
	return s
}

// One precision an idea, so that the points of a column stand under each other.
const (
	OfTerm    = 3 // estimates, standard errors, scatter, R²
	OfScore   = 2 // log-likelihoods, statistics, scores, factors
	OfMinutes = 1 // medians on the scale of the result
)

// Optional is Num and its unit, or nothing where there is no number.
func Optional(path string, v *float64, digits int, unit string) document.Text {
	if v == nil {
		return nil
	}
	return Text(Num(path, *v, digits), unit)
}

// Probability is Num for a p, which may be too small to be written.
func Probability(path string, p *float64) document.Text {
	switch {
	case p == nil:
		return nil
	case *p < 0.001:
		return Text(document.Span{Text: "< 0.001", Num: &document.Num{Path: path, Value: *p}})
	}
	return Text(Num(path, *p, 3))
}

// Of100 is a share as so many of 100.
func Of100(path string, share float64) document.Span {
	return document.Span{Text: strconv.FormatFloat(100*share, 'f', 0, 64), Num: &document.Num{Path: path, Value: share}}
}

// Count is Num for a whole number.
func Count(path string, n int) document.Span { return Num(path, float64(n), 0) }

// Decimals a number needs to show steps of the given size: 0.1 g has one.
func Decimals(step float64) int {
	for d := range 4 {
		if scaled := step * math.Pow(10, float64(d)); scaled >= 1-1e-9 && math.Abs(scaled-math.Round(scaled)) < 1e-6 {
			return d
		}
	}
	return 3
}

// Seen words an observed number that may be known only up to bounds.
func Seen(path string, i *result.Interval, digits int) document.Text {
	return Bounded(path, i, digits, Trimmed)
}

// Bounded is Seen with a way to print the numbers.
func Bounded(path string, i *result.Interval, digits int, print func(string, float64, int) document.Span) document.Text {
	switch {
	case i == nil || i.Low == nil && i.High == nil:
		return nil
	case i.High == nil:
		return Text("at least ", print(path+".low", *i.Low, digits))
	case i.Low == nil || *i.Low == 0 && *i.High > 0:
		return Text("at most ", print(path+".high", *i.High, digits))
	case *i.Low == *i.High:
		return Text(print(path+".low", *i.Low, digits))
	}
	return Text(print(path+".low", *i.Low, digits), " to ", print(path+".high", *i.High, digits))
}
