package say

import (
	"strings"

	"foamfield/analysis/result"
)

// Grades of problems, in words.
var Grades = map[result.Severity]string{result.MustFix: "fix", result.PleaseLook: "check", result.ForInformation: "note"}

// Distributions are those of results.json as textbooks spell them.
var Distributions = map[string]string{"lognormal": "log-normal", "weibull": "Weibull", "loglogistic": "log-logistic"}

// ColumnSaid is what a column was read as, in the words of the rest.
func ColumnSaid(readAs string) string {
	switch readAs {
	case "":
		return "not used"
	case "broke":
		return "split"
	case "rest in the fridge":
		return "rest before serving"
	}
	return readAs
}

// Failing names how a mix fails by an outcome, as a thing it does.
func Failing(r *result.Results, o result.Outcome) string {
	return failure(r, o, "misses", failing)
}

// Fail names the same of several.
func Fail(r *result.Results, o result.Outcome) string {
	return failure(r, o, "miss", fail)
}

// Failings names how a mix fails by an outcome, as a noun.
func Failings(r *result.Results, o result.Outcome) string {
	return failure(r, o, "missing", failings)
}

// Failed says it of a trial that was made.
func Failed(r *result.Results, o result.Outcome) string {
	return failure(r, o, "missed", fates)
}

// failure is the word for an outcome, or what of the kitchen's own results it misses.
func failure(r *result.Results, o result.Outcome, misses string, words map[result.Outcome]string) string {
	if asked := r.Targets.Asked(o); asked != nil {
		return misses + " the " + asked.Label + " asked for"
	}
	return words[o]
}

var failing = map[result.Outcome]string{
	result.CameOut: "clogs", result.Broke: "splits",
	result.HoldMinutes: "falls too soon", result.DrainedPercent: "drains too much",
}

var fail = map[result.Outcome]string{
	result.CameOut: "clog", result.Broke: "split",
	result.HoldMinutes: "fall too soon", result.DrainedPercent: "drain too much",
}

var failings = map[result.Outcome]string{
	result.CameOut: "clogging", result.Broke: "splitting",
	result.HoldMinutes: "falling too soon", result.DrainedPercent: "draining too much",
}

var fates = map[result.Outcome]string{
	result.CameOut: "clogged", result.Broke: "split",
	result.HoldMinutes: "fell too soon", result.DrainedPercent: "drained too much",
}

// outcomes are the results as a heading.
var outcomes = map[string]string{
	string(result.CameOut): "came out", string(result.Broke): "split",
	string(result.HoldMinutes): "hold, minutes", string(result.DrainedPercent): "drained, %",
}

// Outcome names a result, as a heading.
func Outcome(s string) string {
	if n := outcomes[s]; n != "" {
		return n
	}
	return strings.ReplaceAll(s, "_", " ")
}

// Shapes are the orders of fits in words: the terms of the mix that a fit has, or a test
// stands beside.
var Shapes = map[int]string{1: "straight", 2: "curved"}
