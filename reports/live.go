package reports

import (
	"math"
	"slices"

	"foamfield/analysis/result"
)

// Live is what a page needs to work out, where there is nobody to ask, the grams
// of the surest start and its chance for other targets: numbers of the results as
// they are, by the place of each variable.
type Live struct {
	Title     string         `json:"title"`    // of the mix: "Surest start"
	LeftOut   string         `json:"left_out"` // what was asked for and is not known: "drainage"
	Chance    float64        `json:"chance"`   // of the mix for the targets below: a page that gets another stays still
	FewAs     string         `json:"few_as"`   // of the report's own chance: "perhaps only 62"
	Batch     float64        `json:"batch"`
	Ounces    *float64       `json:"batch_ounces"` // nil: nobody asked for them
	Step      float64        `json:"step"`
	Largest   *float64       `json:"largest_fill"`
	Watched   *float64       `json:"watched"`
	Hold      *float64       `json:"hold"` // nil: not judged
	Drained   *float64       `json:"drained"`
	DrainedAt float64        `json:"drained_at"`
	Wanted    float64        `json:"wanted"`
	Variables []LiveVariable `json:"variables"`
	Links     []LiveLink     `json:"links"`
	Mix       []float64      `json:"mix"`
	Lines     []LiveLine     `json:"lines"` // none where the log has no grams
	Maps      []LiveMap      `json:"maps"`
	Own       *LiveOwn       `json:"own"` // nil: no other mix can be asked about
}

// LiveOwn is what it takes to answer for another mix in the start's ingredients: where
// mixes were tried, and the best of each fat percent. All are by the place of a variable.
type LiveOwn struct {
	Low     []float64   `json:"low"`
	High    []float64   `json:"high"`
	Terms   [][]int     `json:"terms"`
	Inverse [][]float64 `json:"inverse"`
	Most    float64     `json:"most"`
	Best    [][]float64 `json:"best"` // mixes, by fat
}

// LiveVariable is how a value becomes a coordinate.
type LiveVariable struct {
	Name   string  `json:"name"`
	Log    bool    `json:"log"`
	Centre float64 `json:"centre"`
	Scale  float64 `json:"scale"`
	Held   bool    `json:"-"` // never moves; those that are held come last
}

// LiveLink is what is believed of one outcome.
type LiveLink struct {
	Outcome    result.Outcome     `json:"outcome"`
	Terms      [][]int            `json:"terms"`
	Mean       []float64          `json:"mean"`
	Covariance [][]float64        `json:"covariance"`
	Leanings   [][]float64        `json:"leanings"`
	Sigma      []result.SigmaNode `json:"sigma"`
	Edges      []result.Edge      `json:"edges"` // of a yes or no, in place of Mean and Covariance
	DaySD      float64            `json:"day_sd"`
	Asked      *result.Interval   `json:"asked"`   // of a measured result, on its line: no box of the page moves it
	Failing    string             `json:"failing"` // of one foam
	Fail       string             `json:"fail"`    // of several
}

// LiveLine is an ingredient of the start and what it brings to the mix. Without
// FatPercent the ingredient counts as free of fat.
type LiveLine struct {
	Name       string   `json:"name"`
	Grams      float64  `json:"grams"`
	Part       string   `json:"part"`       // "water", "fat" or "": who takes up the rounding
	Emulsifier bool     `json:"emulsifier"` // counts as emulsifier
	FatPercent float64  `json:"fat_percent"`
	HLB        *float64 `json:"hlb"` // of a non-ionic emulsifier
}

// LiveMap is one map of the chance: axes, what is held, and where trials are near.
type LiveMap struct {
	Title  string    `json:"title"`
	Held   string    `json:"held"`  // "HLB 8.7"
	Right  string    `json:"right"` // "amount of emulsifier"
	X      int       `json:"x"`     // places in the variables
	Y      int       `json:"y"`
	XLabel string    `json:"x_label"`
	YLabel string    `json:"y_label"`
	Xs     []float64 `json:"xs"`
	Ys     []float64 `json:"ys"`
	Fixed  []float64 `json:"fixed"`
	Tested []string  `json:"tested"` // rows of 0 and 1
}

var axisWords = map[string]struct{ label, right string }{
	fatPercent:        {"fat, g per 100 g mix", "amount of fat"},
	emulsifierPercent: {"emulsifier, % of mix", "amount of emulsifier"},
	emulsifierGrams:   {"emulsifier, g", "amount of emulsifier"},
	blendHLB:          {"blend HLB", "HLB"},
}

// live is nil where no model was made or no mix is named.
func (b *builder) live() *Live {
	r := b.r
	if len(r.Starts) == 0 || len(r.Model) == 0 || len(r.Variables) == 0 {
		return nil
	}
	start := r.Starts[0]
	l := &Live{
		Title: "Surest start", LeftOut: listed(b.unknown()).String(),
		Chance: start.Chance.Mean, FewAs: AtLeast(start.Chance.Mean, start.Chance.Low),
		Batch: r.Batch.Grams, Ounces: r.Batch.Ounces, Step: r.Batch.ScaleStepGrams, Largest: r.Batch.LargestFillGrams, Watched: r.WatchedMinutes,
		DrainedAt: r.Targets.DrainedAtMinutes.Value, Wanted: r.Targets.WantedChance.Value,
	}
	if b.bare() {
		l.Title = "Best guess"
	}
	place := map[string]int{}
	for i, v := range r.Variables {
		place[v.Name] = i
		l.Variables = append(l.Variables, LiveVariable{Name: v.Name, Log: v.Log, Centre: v.Centre, Scale: v.Scale})
	}
	var ok bool
	if l.Mix, ok = b.values(start.Mix); !ok || !(l.Batch > 0 && l.Step > 0) {
		return nil
	}
	// A term that is no product of variables is a variable of its own that never moves.
	for _, h := range r.HeldTerms {
		place[h.Term] = len(l.Variables)
		l.Variables = append(l.Variables, LiveVariable{Name: h.Term, Scale: 1, Held: true})
	}
	for _, m := range r.Model {
		link := LiveLink{Outcome: m.Outcome, Mean: m.Mean, Covariance: m.Covariance, Leanings: m.Leanings, Sigma: m.Sigma, Edges: m.Edges, DaySD: m.DaySD,
			Asked: m.Asked, Failing: Failing(r, m.Outcome), Fail: Fail(r, m.Outcome)}
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
func (b *builder) values(m result.Mix) ([]float64, bool) {
	out := make([]float64, len(b.r.Variables))
	for i, v := range b.r.Variables {
		known := map[string]*float64{fatPercent: m.FatPercent, emulsifierPercent: m.EmulsifierPercent,
			emulsifierGrams: m.EmulsifierGrams, blendHLB: m.BlendHLB}
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
	for _, h := range b.r.HeldTerms {
		out = append(out, h.Value)
	}
	return out, true
}

// liveLines is what each ingredient of a start brings, nil where the results do not
// say: a page then shows no grams rather than wrong ones.
func (b *builder) liveLines(s result.Start) []LiveLine {
	// Some emulsifiers without HLB are weighed as emulsifiers and some, such as yolk,
	// are foods: the mix itself tells which.
	for _, weighed := range []bool{true, false} {
		var lines []LiveLine
		for _, f := range s.Ingredients {
			i := slices.IndexFunc(b.r.Ingredients, func(u result.Used) bool { return u.Name == f.Name })
			if i < 0 {
				return nil
			}
			u := b.r.Ingredients[i]
			l := LiveLine{Name: f.Name, Grams: f.Grams}
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
func makes(lines []LiveLine, m result.Mix) bool {
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
func (b *builder) liveOwn(l *Live) *LiveOwn {
	t := b.r.TestedRange
	if t == nil || len(l.Lines) == 0 {
		return nil
	}
	own, place := &LiveOwn{Inverse: t.Inverse, Most: t.Most, Best: [][]float64{}}, map[string]int{}
	fat, emulsifier := false, false
	for i, v := range b.r.Variables {
		place[v.Name] = i
		fat, emulsifier = fat || v.Name == fatPercent, emulsifier || v.Name == emulsifierPercent
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
	for _, f := range b.r.FatLimit {
		if mix, ok := b.values(f.Mix); ok {
			own.Best = append(own.Best, mix[:len(b.r.Variables)])
		}
	}
	return own
}

// liveMap is a grid for the page.
func (b *builder) liveMap(g result.Grid, place map[string]int) (LiveMap, bool) {
	x, okX := place[g.X.Variable]
	y, okY := place[g.Y.Variable]
	xWords, yWords := axisWords[g.X.Variable], axisWords[g.Y.Variable]
	fixed, okFixed := b.values(g.Fixed)
	if !okX || !okY || !okFixed || xWords.label == "" || yWords.label == "" ||
		!even(b.r.Variables[x].Log, g.X.Values) || !even(b.r.Variables[y].Log, g.Y.Values) || len(g.Tested) != len(g.Y.Values) {
		return LiveMap{}, false
	}
	m := LiveMap{X: x, Y: y, XLabel: xWords.label, YLabel: yWords.label, Right: yWords.right,
		Title: b.label(g.X.Variable) + " and " + b.label(g.Y.Variable), Xs: g.X.Values, Ys: g.Y.Values, Fixed: fixed}
	var held []Text
	for i, v := range b.r.Variables {
		if i != x && i != y {
			held = append(held, b.amount("", v.Name, fixed[i]))
		}
	}
	m.Held = listed(held).String()
	for _, row := range g.Tested {
		if len(row) != len(g.X.Values) {
			return LiveMap{}, false
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
