package html

import (
	"math"
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
)

// packed is document.Live as the page carries it: what is believed and the maps are
// written short. The script's unpack is its other half.
type packed struct {
	*document.Live
	Variables []document.LiveVariable `json:"variables"` // that move
	Mix       []float64               `json:"mix"`
	Links     []packedLink            `json:"links"`
	Maps      []packedMap             `json:"maps"`
	Own       *packedOwn              `json:"own"`
}

// packedOwn is where mixes were tried, and the best by fat, in the figures that count.
type packedOwn struct {
	Low      []float64   `json:"low"`
	High     []float64   `json:"high"`
	Terms    [][]int     `json:"terms"`
	Triangle []float64   `json:"triangle"` // the rows of the lower half of what the leverage is worked out from
	Most     float64     `json:"most"`
	Best     [][]float64 `json:"best"`
}

// figures rounds to so many that count.
func figures(v float64, n int) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	unit := math.Pow10(n - 1 - int(math.Floor(math.Log10(math.Abs(v)))))
	return math.Round(v*unit) / unit
}

func packOwn(o *document.LiveOwn) *packedOwn {
	if o == nil {
		return nil
	}
	p := &packedOwn{Low: o.Low, High: o.High, Terms: o.Terms, Most: o.Most, Best: [][]float64{}}
	for i, row := range o.Inverse {
		for _, v := range row[:i+1] {
			p.Triangle = append(p.Triangle, figures(v, 6))
		}
	}
	for _, mix := range o.Best {
		short := make([]float64, len(mix))
		for i, v := range mix {
			short[i] = figures(v, 4)
		}
		p.Best = append(p.Best, short)
	}
	return p
}

// packedLink is what is believed of one outcome, in whole counts of a decimal place.
type packedLink struct {
	Outcome  result.Outcome   `json:"outcome"`
	Terms    [][]int          `json:"terms"`
	Decimals [2]int           `json:"decimals"` // the second of the covariance, the first of all else
	Triangle []float64        `json:"triangle"` // of a number: the rows of the covariance's lower half
	Leanings [][]float64      `json:"leanings"` // of a number
	Edges    []packedEdge     `json:"edges"`    // of a yes or no
	Scatter  [][]float64      `json:"scatter"`  // of a number: weight, ln of the scatter, spread, mean of each term
	DaySD    float64          `json:"day_sd"`
	Asked    *result.Interval `json:"asked,omitempty"`
	Failing  string           `json:"failing"`
	Fail     string           `json:"fail"`
}

// packedEdge is a belief that a yes or no is averaged over. Its weight stays as it is.
type packedEdge struct {
	Weight   float64     `json:"weight"`
	Mean     []float64   `json:"mean"`
	Triangle []float64   `json:"triangle"`
	Leanings [][]float64 `json:"leanings"`
}

// packedMap is a map whose axes and tested places are written short.
type packedMap struct {
	document.LiveMap
	Size   [2]int     `json:"size"`
	Fixed  []float64  `json:"fixed"`
	Xs     [2]float64 `json:"xs"` // the ends of the axis
	Ys     [2]float64 `json:"ys"`
	Tested []int      `json:"tested"` // lengths of runs along the rows, untested and tested in turn
}

func pack(l *document.Live) packed {
	moving := slices.IndexFunc(l.Variables, func(v document.LiveVariable) bool { return v.Held })
	if moving < 0 {
		moving = len(l.Variables)
	}
	p := packed{Live: l, Variables: l.Variables[:moving], Mix: l.Mix[:moving], Links: []packedLink{}, Maps: []packedMap{}, Own: packOwn(l.Own)}
	for _, link := range l.Links {
		p.Links = append(p.Links, packLink(folded(link, l.Mix, moving)))
	}
	for _, m := range l.Maps {
		ends := func(axis []float64) [2]float64 { return [2]float64{axis[0], axis[len(axis)-1]} }
		p.Maps = append(p.Maps, packedMap{LiveMap: m, Size: [2]int{len(m.Xs), len(m.Ys)}, Fixed: m.Fixed[:moving], Xs: ends(m.Xs), Ys: ends(m.Ys), Tested: runs(m.Tested)})
	}
	return p
}

// folded is a link whose terms that never move are part of its constant: its line and
// its spread are the same at every mix.
func folded(l document.LiveLink, mix []float64, moving int) document.LiveLink {
	constant := slices.IndexFunc(l.Terms, func(term []int) bool { return len(term) == 0 })
	if constant < 0 {
		return l
	}
	place, weight := make([]int, len(l.Terms)), make([]float64, len(l.Terms)) // of each term among those that stay
	out := document.LiveLink{Outcome: l.Outcome, DaySD: l.DaySD, Asked: l.Asked, Failing: l.Failing, Fail: l.Fail}
	for i, term := range l.Terms {
		if len(term) == 1 && term[0] >= moving {
			place[i], weight[i] = -1, mix[term[0]]
			continue
		}
		place[i], weight[i] = len(out.Terms), 1
		out.Terms = append(out.Terms, term)
	}
	for i := range place {
		if place[i] < 0 {
			place[i] = place[constant]
		}
	}
	line := func(mean []float64) []float64 {
		to := make([]float64, len(out.Terms))
		for i, v := range mean {
			to[place[i]] += weight[i] * v
		}
		return to
	}
	spread := func(covariance [][]float64) (to [][]float64) {
		for range out.Terms {
			to = append(to, make([]float64, len(out.Terms)))
		}
		for i, row := range covariance {
			for k, v := range row {
				to[place[i]][place[k]] += weight[i] * weight[k] * v
			}
		}
		return to
	}
	lines := func(rows [][]float64) (to [][]float64) {
		for _, row := range rows {
			to = append(to, line(row))
		}
		return to
	}
	out.Mean, out.Covariance, out.Leanings = line(l.Mean), spread(l.Covariance), lines(l.Leanings)
	for _, e := range l.Edges {
		e.Mean, e.Covariance, e.Leanings = line(e.Mean), spread(e.Covariance), lines(e.Leanings)
		out.Edges = append(out.Edges, e)
	}
	for _, s := range l.Sigma {
		s.Mean = line(s.Mean)
		out.Sigma = append(out.Sigma, s)
	}
	return out
}

// digits are the decimals kept of a line in units of its scatter, or of the logit of a
// yes. A chance moves by at most 0.4 of what its line moves in those units, so that
// these keep it to 1e-6 with room to spare.
const digits = 7

func packLink(l document.LiveLink) packedLink {
	scatter := 1.0
	for _, s := range l.Sigma {
		scatter = math.Min(scatter, math.Exp(s.LnSigma))
	}
	finer := -math.Log10(scatter)
	p := packedLink{Outcome: l.Outcome, Terms: l.Terms, DaySD: l.DaySD, Asked: l.Asked, Failing: l.Failing, Fail: l.Fail,
		Decimals: [2]int{digits + int(math.Round(finer)), digits + int(math.Round(2*finer))}}
	counts := func(decimals int, values ...float64) (out []float64) {
		for _, v := range values {
			out = append(out, math.Round(v*math.Pow10(decimals)))
		}
		return out
	}
	triangle := func(covariance [][]float64) (out []float64) {
		for i, row := range covariance {
			out = append(out, counts(p.Decimals[1], row[:i+1]...)...)
		}
		return out
	}
	rows := func(leanings [][]float64) (out [][]float64) {
		for _, row := range leanings {
			out = append(out, counts(p.Decimals[0], row...))
		}
		return out
	}
	for _, e := range l.Edges {
		p.Edges = append(p.Edges, packedEdge{e.Weight, counts(p.Decimals[0], e.Mean...), triangle(e.Covariance), rows(e.Leanings)})
	}
	if len(l.Edges) == 0 {
		p.Triangle, p.Leanings = triangle(l.Covariance), rows(l.Leanings)
	}
	for _, s := range l.Sigma {
		p.Scatter = append(p.Scatter, counts(p.Decimals[0], append([]float64{s.Weight, s.LnSigma, s.Spread}, s.Mean...)...))
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
