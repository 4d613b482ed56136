// Package live gathers what a page needs to work out the grams and the chance of other
// mixes and targets by itself.
package live

import (
	"math"
	"slices"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// Of is nil where no model was made or no mix is named.
func Of(b say.Run) *document.Live { return page{b}.live() }

// page gathers what a page works out by itself.
type page struct{ say.Run }

var axisWords = map[string]struct{ label, right string }{
	wording.FatPercent:        {"fat, g per 100 g mix", "amount of fat"},
	wording.EmulsifierPercent: {"emulsifier, % of mix", "amount of emulsifier"},
	wording.EmulsifierGrams:   {"emulsifier, g", "amount of emulsifier"},
	wording.BlendHLB:          {"blend HLB", "HLB"},
}

// live is nil where no model was made or no mix is named.
func (b page) live() *document.Live {
	r := b.R
	if len(r.Starts) == 0 || len(r.Model) == 0 || len(r.Variables) == 0 {
		return nil
	}
	start := r.Starts[0]
	l := &document.Live{
		Title: wording.Capital(b.StartName(0, start)), LeftOut: say.Listed(b.Unknown()).String(),
		Chance: start.Chance.Mean, FewAs: say.AtLeast(start.Chance.Mean, start.Chance.Low),
		Batch: r.Batch.Grams, Ounces: r.Batch.Ounces, Step: r.Batch.ScaleStepGrams, Largest: r.Batch.LargestFillGrams, Watched: r.WatchedMinutes,
		DrainedAt: r.Targets.DrainedAtMinutes.Value, Wanted: r.Targets.WantedChance.Value,
	}
	place := map[string]int{}
	for i, v := range r.Variables {
		place[v.Name] = i
		l.Variables = append(l.Variables, document.LiveVariable{Name: v.Name, Log: v.Log, Centre: v.Centre, Scale: v.Scale})
	}
	var ok bool
	if l.Mix, ok = b.values(start.Mix); !ok || !(l.Batch > 0 && l.Step > 0) {
		return nil
	}
	// A term that is no product of variables is a variable of its own that never moves.
	for _, h := range r.HeldTerms {
		place[h.Term] = len(l.Variables)
		l.Variables = append(l.Variables, document.LiveVariable{Name: h.Term, Scale: 1, Held: true})
	}
	for _, m := range r.Model {
		link := document.LiveLink{Outcome: m.Outcome, Mean: m.Mean, Covariance: m.Covariance, Leanings: m.Leanings, Sigma: m.Sigma, Edges: m.Edges, DaySD: m.DaySD,
			Asked: m.Asked, Failing: say.Failing(r, m.Outcome), Fail: say.Fail(r, m.Outcome)}
		for _, names := range m.Terms {
			term := []int{}
			for _, name := range names {
				i, known := place[name]
				if !known {
					return nil
				}
				term = append(term, i)
			}
			link.Terms = append(link.Terms, term)
		}
		if !evaluable(m) {
			return nil
		}
		l.Links = append(l.Links, link)
		switch target := r.Targets; m.Outcome {
		case result.HoldMinutes:
			l.Hold = &target.HoldMinutes.Value
		case result.DrainedPercent:
			l.Drained = &target.DrainedPercent.Value
		}
	}
	l.Lines = b.liveLines(start)
	l.Own = b.liveOwn(l)
	for _, g := range r.Grid {
		if m, ok := b.liveMap(g, place); ok {
			l.Maps = append(l.Maps, m)
		}
	}
	return l
}

// kinds are what the page knows how to evaluate.
var kinds = map[result.Outcome]string{result.CameOut: "yes_no", result.Broke: "yes_no",
	result.HoldMinutes: "ln_minutes", result.DrainedPercent: "ln_percent"}

// evaluable says whether a page can work a model out: of a kind it knows, and whole.
func evaluable(m result.Model) bool {
	n := len(m.Terms)
	kind := kinds[m.Outcome]
	if kind == "" && m.Asked != nil {
		kind = "measured"
	}
	if n == 0 || m.Kind == "" || m.Kind != kind || len(m.Mean) != n || (m.Kind == "yes_no") != (len(m.Sigma) == 0) || (m.Kind == "yes_no") == (len(m.Edges) == 0) {
		return false
	}
	whole := func(rows [][]float64) bool {
		return !slices.ContainsFunc(rows, func(row []float64) bool { return len(row) != n })
	}
	square := func(covariance [][]float64) bool {
		return len(covariance) == n && whole(covariance)
	}
	if !square(m.Covariance) || !whole(m.Leanings) {
		return false
	}
	for _, e := range m.Edges {
		if len(e.Mean) != n || !square(e.Covariance) || !whole(e.Leanings) {
			return false
		}
	}
	for _, node := range m.Sigma {
		if len(node.Mean) != n {
			return false
		}
	}
	return true
}

// values is a mix by the place of each variable, then the terms that are held.
func (b page) values(m result.Mix) ([]float64, bool) {
	out := make([]float64, len(b.R.Variables))
	for i, v := range b.R.Variables {
		known := map[string]*float64{wording.FatPercent: m.FatPercent, wording.EmulsifierPercent: m.EmulsifierPercent,
			wording.EmulsifierGrams: m.EmulsifierGrams, wording.BlendHLB: m.BlendHLB}
		if x, ours := known[v.Name]; ours {
			if x == nil {
				return nil, false
			}
			out[i] = *x
			continue
		}
		x, ok := m.Extras[v.Name]
		if !ok {
			return nil, false
		}
		out[i] = x
	}
	for _, h := range b.R.HeldTerms {
		out = append(out, h.Value)
	}
	return out, true
}

// liveLines is what each ingredient of a start brings, nil where the results do not
// say: a page then shows no grams rather than wrong ones.
func (b page) liveLines(s result.Start) []document.LiveLine {
	// Some emulsifiers without HLB are weighed as emulsifiers and some, such as yolk,
	// are foods: the mix itself tells which.
	for _, weighed := range []bool{true, false} {
		var lines []document.LiveLine
		for _, f := range s.Ingredients {
			i := slices.IndexFunc(b.R.Ingredients, func(u result.Used) bool { return u.Name == f.Name })
			if i < 0 {
				return nil
			}
			u := b.R.Ingredients[i]
			l := document.LiveLine{Name: f.Name, Grams: f.Grams}
			if u.FatPercent != nil {
				l.FatPercent = *u.FatPercent
			}
			switch f.Kind {
			case "water part":
				l.Part = "water"
			case "fat":
				l.Part = "fat"
			case "emulsifier":
				l.Emulsifier, l.HLB = true, u.HLB
				if f.BlendedToHLB != nil {
					l.Blended, l.HLB = true, f.BlendedToHLB
				}
			case "emulsifier without HLB":
				l.Emulsifier = weighed
			}
			lines = append(lines, l)
		}
		if makes(lines, s.Mix) {
			return lines
		}
	}
	return nil
}

// makes says whether lines are the mix that a start claims.
func makes(lines []document.LiveLine, m result.Mix) bool {
	var all, fat, emulsifier, blended, hlb float64
	for _, l := range lines {
		all += l.Grams
		fat += l.Grams * l.FatPercent
		if l.Emulsifier {
			emulsifier += l.Grams
		}
		if l.HLB != nil {
			blended += l.Grams
			hlb += l.Grams * *l.HLB
		}
	}
	near := func(got float64, want *float64) bool { return want == nil || math.Abs(got-*want) < 1e-6 }
	return all > 0 && near(fat/all, m.FatPercent) && near(100*emulsifier/all, m.EmulsifierPercent) &&
		near(emulsifier, m.EmulsifierGrams) && (m.BlendHLB == nil || blended > 0 && near(hlb/blended, m.BlendHLB))
}

// liveOwn is nil where a mix is more than fat, emulsifier and HLB, or has no grams.
func (b page) liveOwn(l *document.Live) *document.LiveOwn {
	t := b.R.TestedRange
	if t == nil || len(l.Lines) == 0 {
		return nil
	}
	own, place := &document.LiveOwn{Inverse: t.Inverse, Most: t.Most, Best: [][]float64{}}, map[string]int{}
	fat, emulsifier := false, false
	for i, v := range b.R.Variables {
		place[v.Name] = i
		fat, emulsifier = fat || v.Name == wording.FatPercent, emulsifier || v.Name == wording.EmulsifierPercent
		low, moves := t.Low[v.Name]
		high := t.High[v.Name]
		if !moves { // a setting stays as it is
			low, high = l.Mix[i], l.Mix[i]
		}
		own.Low, own.High = append(own.Low, low), append(own.High, high)
	}
	if !fat || !emulsifier {
		return nil
	}
	for _, names := range t.Terms {
		term := []int{}
		for _, n := range names {
			i, ok := place[n]
			if !ok {
				return nil
			}
			term = append(term, i)
		}
		own.Terms = append(own.Terms, term)
	}
	for _, f := range b.R.FatLimit {
		if mix, ok := b.values(f.Mix); ok {
			own.Best = append(own.Best, mix[:len(b.R.Variables)])
		}
	}
	return own
}

// liveMap is a grid for the page.
func (b page) liveMap(g result.Grid, place map[string]int) (document.LiveMap, bool) {
	x, okX := place[g.X.Variable]
	y, okY := place[g.Y.Variable]
	xWords, yWords := axisWords[g.X.Variable], axisWords[g.Y.Variable]
	fixed, okFixed := b.values(g.Fixed)
	if !okX || !okY || !okFixed || xWords.label == "" || yWords.label == "" ||
		!even(b.R.Variables[x].Log, g.X.Values) || !even(b.R.Variables[y].Log, g.Y.Values) || len(g.Tested) != len(g.Y.Values) {
		return document.LiveMap{}, false
	}
	m := document.LiveMap{X: x, Y: y, XLabel: xWords.label, YLabel: yWords.label, Right: yWords.right,
		Title: b.Label(g.X.Variable) + " and " + b.Label(g.Y.Variable), Xs: g.X.Values, Ys: g.Y.Values, Fixed: fixed}
	var held []document.Text
	for i, v := range b.R.Variables {
		if i != x && i != y {
			held = append(held, b.Amount("", v.Name, fixed[i]))
		}
	}
	m.Held = say.Listed(held).String()
	for _, row := range g.Tested {
		if len(row) != len(g.X.Values) {
			return document.LiveMap{}, false
		}
		bits := make([]byte, len(row))
		for i, t := range row {
			bits[i] = '0'
			if t {
				bits[i] = '1'
			}
		}
		m.Tested = append(m.Tested, string(bits))
	}
	return m, true
}

// even says whether values lie at equal steps of their coordinate, as a page draws them.
func even(log bool, values []float64) bool {
	n := len(values) - 1
	if n < 1 || log && !(values[0] > 0) {
		return false
	}
	for i, v := range values {
		share := float64(i) / float64(n)
		want := values[0] + share*(values[n]-values[0])
		if log {
			want = values[0] * math.Pow(values[n]/values[0], share)
		}
		if !(math.Abs(v-want) <= 1e-9*math.Abs(values[n]-values[0])) {
			return false
		}
	}
	return values[n] > values[0]
}
