// Package statistic works out again what a student made of results: means, differences,
// columns that follow from others, and tables that sum the trials up.
package statistic

import (
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
)

// results is one table whose results are being worked out again.
type results struct {
	*verdict.Bench
	mixes [][]mixture.Mixture // by trial: as typed, and with what was meant
	meant mixture.Meant
}

// Check holds what a table makes of its results against them. mixes are its trials' mixes.
func Check(w *handin.Work, b *verdict.Bench, mixes [][]mixture.Mixture, meant mixture.Meant) {
	j := &results{b, mixes, meant}
	j.means()
	j.differences()
	j.stopwatch()
	j.others()
	j.averages(w)
	j.lines(w, meant)
}
