package html

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/reports"
)

// packed is reports.Live as the page carries it: what is believed and the maps are
// written short. The script's unpack is its other half.
type packed struct {
	*reports.Live
	Links []packedLink `json:"links"`
	Maps  []packedMap  `json:"maps"`
}

// packedLink is what is believed of one outcome, in whole counts of a decimal place.
type packedLink struct {
	Outcome  result.Outcome `json:"outcome"`
	Terms    [][]int        `json:"terms"`
	Decimals [2]int         `json:"decimals"` // the second of the covariance, the first of all else
	Triangle []float64      `json:"triangle"` // the rows of the covariance's lower half
	Mean     []float64      `json:"mean"`     // of a yes or no
	Scatter  [][]float64    `json:"scatter"`  // of a number: weight, ln of the scatter, mean of each term
	DaySD    float64        `json:"day_sd"`
}

// packedMap is a map whose axes and tested places are written short.
type packedMap struct {
	reports.LiveMap
	Size   [2]int     `json:"size"`
	Xs     [2]float64 `json:"xs"` // the ends of the axis
	Ys     [2]float64 `json:"ys"`
	Tested []int      `json:"tested"` // lengths of runs along the rows, untested and tested in turn
}

func pack(l *reports.Live) packed {
	p := packed{Live: l, Links: []packedLink{}, Maps: []packedMap{}}
	for _, link := range l.Links {
		p.Links = append(p.Links, packLink(link))
	}
	for _, m := range l.Maps {
		ends := func(axis []float64) [2]float64 { return [2]float64{axis[0], axis[len(axis)-1]} }
		p.Maps = append(p.Maps, packedMap{LiveMap: m, Size: [2]int{len(m.Xs), len(m.Ys)}, Xs: ends(m.Xs), Ys: ends(m.Ys), Tested: runs(m.Tested)})
	}
	return p
}

// digits are the decimals kept of a line in units of its scatter, or of the logit of a
// yes. A chance moves by at most 0.4 of what its line moves in those units, so that
// these keep it to 1e-6 with room to spare.
const digits = 7

func packLink(l reports.LiveLink) packedLink {
	scatter := 1.0
	for _, s := range l.Sigma {
		scatter = math.Min(scatter, math.Exp(s.LnSigma))
	}
	finer := -math.Log10(scatter)
	p := packedLink{Outcome: l.Outcome, Terms: l.Terms, DaySD: l.DaySD,
		Decimals: [2]int{digits + int(math.Round(finer)), digits + int(math.Round(2*finer))}}
	counts := func(decimals int, values ...float64) (out []float64) {
		for _, v := range values {
			out = append(out, math.Round(v*math.Pow10(decimals)))
		}
		return out
	}
	for i, row := range l.Covariance {
		p.Triangle = append(p.Triangle, counts(p.Decimals[1], row[:i+1]...)...)
	}
	if len(l.Sigma) == 0 {
		p.Mean = counts(p.Decimals[0], l.Mean...)
	}
	for _, s := range l.Sigma {
		p.Scatter = append(p.Scatter, counts(p.Decimals[0], append([]float64{s.Weight, s.LnSigma}, s.Mean...)...))
	}
	return p
}

// runs are the lengths of untested and tested places in turn, row after row.
func runs(tested []string) []int {
	out, at := []int{0}, byte('0')
	for _, row := range tested {
		for i := range len(row) {
			if row[i] != at {
				out, at = append(out, 0), row[i]
			}
			out[len(out)-1]++
		}
	}
	return out
}
