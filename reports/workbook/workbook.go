// Package workbook writes the two spreadsheets of a run: report.xlsx, every
// number with a formula sheet that follows the batch, and next-trials.xlsx, a
// log ready to fill in. Text from the log is always text, never a formula.
package workbook

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
)

// Report is report.xlsx.
func Report(r *result.Results, d document.Document) ([]byte, error) {
	b := newBook()
	apart := slices.ContainsFunc(d.Sections, func(s document.Section) bool { return s.Alone })
	summary(b, d, func(p *page) { p.contents(r, apart) })
	cards(b, r, d, formula(b, r))
	trials(b, r)
	groups(b, r)
	questions(b, r)
	problems(b, r)
	columns(b, r)
	fatLimit(b, r)
	grid(b, r)
	fits(b, r)
	terms(b, r)
	residuals(b, r)
	differences(b, r)
	cannotTell(b, r)
	modelTerms(b, r)
	nextTrials(b, r)
	ingredients(b, r)
	return b.bytes()
}
