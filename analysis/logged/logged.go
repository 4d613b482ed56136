// Package logged is what was read, as the results carry it: the files, rows, problems
// and questions, every trial with what became of it, the ingredients, and the safety
// sentences that apply to them. It concludes nothing.
package logged

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

// Inputs is the files read.
func Inputs(log *trial.Log) (out []result.Input) {
	for _, f := range log.Inputs {
		out = append(out, result.Input{File: f.File, SHA256: f.SHA256})
	}
	return out
}

// Plans is the files that a plan of ours wrote, and the number of the next: the trials
// before any plan count as the first.
func Plans(log *trial.Log) (out []result.PlanFile, next int) {
	out, next = []result.PlanFile{}, 2
	for _, p := range log.Plans {
		follows := p.Follows
		if p.Start == nil {
			follows = ""
		}
		out, next = append(out, result.PlanFile{File: p.File, Number: p.Number, Follows: follows}), max(next, p.Number+1)
	}
	slices.SortStableFunc(out, func(a, b result.PlanFile) int { return a.Number - b.Number })
	return out, next
}

// Rows accounts for every row of the log's tables.
func Rows(log *trial.Log) result.Rows {
	out := result.Rows{Read: log.Rows.Read, Furniture: log.Rows.Furniture, Trials: len(log.Trials), SetAside: []result.SetAside{}}
	for i := range log.Trials {
		if t := &log.Trials[i]; t.Used() {
			out.Used++
		} else {
			out.SetAside = append(out.SetAside, result.SetAside{At: t.At.String(), Reason: t.Aside})
		}
	}
	return out
}

// Problems is what is to be mended or looked at, those of one kind as one.
func Problems(log *trial.Log) []result.Problem {
	out := []result.Problem{}
	for _, p := range trial.Grouped(log.Problems) {
		out = append(out, result.Problem{Kind: p.Kind, Severity: severities[p.Severity],
			At: p.At.String(), Count: max(p.Count, 1), Read: p.Read, Do: p.Do})
	}
	return out
}

var severities = map[trial.Severity]result.Severity{trial.MustFix: result.MustFix,
	trial.PleaseLook: result.PleaseLook, trial.ForInformation: result.ForInformation}

// Columns is what every column was read as.
func Columns(log *trial.Log) (out []result.Column) {
	for _, c := range log.Columns {
		out = append(out, result.Column{At: c.At.String(), Header: c.Header, ReadAs: c.ReadAs, Unit: c.Unit})
	}
	return out
}

// Method is the steps of the kitchen's own Method sheet.
func Method(log *trial.Log) []result.MethodStep {
	out := []result.MethodStep{}
	for _, m := range log.Method {
		out = append(out, result.MethodStep{Step: m.Text, Critical: m.Critical, Limit: m.Limit})
	}
	return out
}
