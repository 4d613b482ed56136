package answers

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/trial"
)

// A formula asked about in amounts of the kitchen's own ingredients. What it leaves out is
// set to what is best for the rest: emulsifiers, and fat or water part where neither is
// said; what fills up is the water part, or the fat where the water part is said.

// recipe is such a formula on its way to grams.
type recipe struct {
	on    *Ground
	parts []formula.Part // of the trial whose ingredients it has, with the grams so far
	open  []int          // places that may take any grams
	fill  []int          // places that fill up to the batch, in their own proportions
	share []float64      // of those
	batch float64        // 0 = whatever it adds up to
}

// byName places a formula in the kitchen's own ingredients as grams and a point on the surface.
func byName(a trial.Try, found *Answers, note func(string, ...any)) (values []float64, parts []formula.Part, ok bool) {
	s := found.Ground
	base := s.baseFor(a, found)
	if base == nil {
		unknown, known := s.notLogged(a)
		switch {
		case len(known) == 0:
			note("the log has no grams of each ingredient, so a formula in ingredients cannot be placed: ask in fat, emulsifier and HLB")
		case len(unknown) > 0:
			note("%s is in none of these trials, so nothing is known of it; they have %s", listed(unknown), listed(known))
		default:
			note("no trial has all of these together, so nothing is known of them side by side")
		}
		return nil, nil, false
	}
	sum, all := percents(a, base)
	if sum > 100+mostMissing || all && sum < 100-mostMissing {
		note("its percents add up to %s, and a whole mix has 100: mend them, or leave one out to have it worked out", amount(sum, "%"))
		return nil, nil, false
	}
	r := newRecipe(a, s, base)
	if all {
		r.batch = 0 // as much as its rounded percents add up to
	}
	if sum := r.sum(); r.batch > 0 && sum > r.batch*(1+1e-9) {
		note("its grams add up to %s, more than the batch of %s: ask with a larger --batch", amount(sum, "g"), amount(r.batch, "g"))
		return nil, nil, false
	}
	open := r.openNames()
	if !r.fillIn() {
		note("whatever is added of %s, it stays outside what was tried", listed(open))
		return nil, nil, false
	}
	if len(open) > 0 {
		was := "was"
		if len(open) > 1 {
			was = "were"
		}
		note("%s %s left open: set to what is best for the rest", listed(open), was)
	}
	if r.batch > 0 && len(r.fill) > 0 {
		note("filled up to the batch of %s", amount(r.batch, "g"))
	}
	values, known := r.values()
	return values, r.parts, known
}

// mostMissing is how far percents may be from 100 by their rounding.
const mostMissing = 0.5

// percents is what a formula says in percent, and whether that is all of its mix.
func percents(a trial.Try, base []formula.Part) (sum float64, all bool) {
	said := map[int]bool{}
	for _, p := range a.Parts {
		if p.Percent {
			sum += p.Amount
			said[placeOf(base, p.Name)] = true
		}
	}
	for i, p := range base {
		if p.Grams > 0 && !said[i] {
			return sum, false
		}
	}
	return sum, true
}

// baseFor is the recipe that has all that is named: the surest start's, else that of the
// trial nearest to the middle of what worked.
func (s *Ground) baseFor(a trial.Try, found *Answers) []formula.Part {
	var best []formula.Part
	for _, t := range s.OnSurface() {
		if t.Recipe == nil || t.Blends() || t.Flagged != "" || !hasAll(t.Recipe, a.Parts) {
			continue
		}
		if len(found.Starts) > 0 && sameNames(t.Recipe, found.Starts[0].Ingredients) {
			return t.Recipe
		}
		if best == nil || t.Works == works.Yes {
			best = t.Recipe
		}
	}
	return best
}

func sameNames(recipe []formula.Part, lines []result.FormulaLine) bool {
	n := 0
	for _, p := range recipe {
		if p.Grams <= 0 {
			continue
		}
		n++
		if !slices.ContainsFunc(lines, func(l result.FormulaLine) bool { return l.Name == p.Name }) {
			return false
		}
	}
	return n == len(lines)
}

func hasAll(recipe []formula.Part, asked []trial.TryPart) bool {
	for _, a := range asked {
		if a.Amount > 0 && placeOf(recipe, a.Name) < 0 {
			return false
		}
	}
	return true
}

// placeOf is the part that a name speaks of: by its name in the log, else the only one
// that is the same ingredient; -1 for none.
func placeOf(recipe []formula.Part, name string) int {
	fold := func(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }
	same := -1
	what, known := ingredient.Lookup(name)
	for i, p := range recipe {
		if p.Grams <= 0 {
			continue
		}
		if fold(p.Name) == fold(name) {
			return i
		}
		if known && (p.What.Name == what.Name || p.What.Known == what.Name) && sameHLB(p.What.HLB, what.HLB) {
			if same >= 0 {
				return -1
			}
			same = i
		}
	}
	return same
}

func sameHLB(a, b *ingredient.Range) bool { return a == nil || b == nil || a.Value == b.Value }

// notLogged is which of the names no trial has, and those that there are.
func (s *Ground) notLogged(a trial.Try) (unknown, known []string) {
	for _, t := range s.OnSurface() {
		for _, p := range t.Recipe {
			if p.Grams > 0 && !slices.Contains(known, p.Name) {
				known = append(known, p.Name)
			}
		}
	}
	for _, part := range a.Parts {
		if !slices.ContainsFunc(s.OnSurface(), func(t *surface.Placed) bool { return placeOf(t.Recipe, part.Name) >= 0 }) {
			unknown = append(unknown, part.Name)
		}
	}
	return unknown, known
}

func newRecipe(a trial.Try, s *Ground, base []formula.Part) *recipe {
	r := &recipe{on: s, batch: s.batch.Grams}
	said := map[int]float64{}
	percents := 0.0
	for _, p := range a.Parts {
		i := placeOf(base, p.Name)
		if i < 0 {
			continue // none of something that is not there
		}
		said[i] = p.Amount
		if p.Percent {
			said[i], percents = p.Amount/100*r.batch, percents+p.Amount
		}
	}
	total := 0.0
	for _, p := range base {
		total += p.Grams
	}
	bulk := map[ingredient.Kind]int{} // of each kind, how many are not said
	for i, p := range base {
		if p.Grams <= 0 {
			continue
		}
		if _, ok := said[i]; !ok {
			bulk[p.What.Kind]++
		}
	}
	filler := ingredient.Water
	if bulk[ingredient.Water] == 0 {
		filler = ingredient.Fat
	}
	if bulk[filler] == 0 && percents == 0 {
		r.batch = 0 // fat and water part are said: it is as much as it adds up to
	}
	for i, p := range base {
		if p.Grams <= 0 {
			continue
		}
		one := formula.Part{Name: p.Name, What: p.What, Grams: said[i]}
		_, given := said[i]
		at := len(r.parts)
		switch {
		case given:
		case p.What.Kind == filler:
			r.fill, r.share = append(r.fill, at), append(r.share, p.Grams)
		case p.What.Kind == ingredient.Fat || p.What.WeighedAsEmulsifier():
			r.open = append(r.open, at)
		default:
			one.Grams = p.Grams / total * max(r.batch, s.batch.Grams)
		}
		r.parts = append(r.parts, one)
	}
	return r
}

func (r *recipe) sum() (g float64) {
	for _, p := range r.parts {
		g += p.Grams
	}
	return g
}

func (r *recipe) openNames() (names []string) {
	for _, i := range r.open {
		names = append(names, r.parts[i].Name)
	}
	return names
}

// values is the recipe's point on the surface; false where it has none.
func (r *recipe) values() ([]float64, bool) {
	parts := make([]mix.Part, len(r.parts))
	for i, p := range r.parts {
		parts[i] = mix.Part{Grams: p.Grams, What: *p.What}
	}
	t := mix.Total(parts)
	m := result.Mix{FatPercent: t.FatPercent, EmulsifierPercent: t.EmulsifierPercent, EmulsifierGrams: &t.EmulsifierGrams}
	if t.BlendHLB != nil {
		m.BlendHLB = &t.BlendHLB.Value
	}
	values := r.on.Values(m)
	return values, !slices.ContainsFunc(values, math.IsNaN) && t.EmulsifierGrams > 0
}

// top fills up to the batch; false if there is too much already.
func (r *recipe) top() bool {
	if len(r.fill) == 0 || r.batch == 0 {
		return true
	}
	whole := 0.0
	for k, i := range r.fill {
		r.parts[i].Grams = 0
		whole += r.share[k]
	}
	rest := r.batch - r.sum()
	for k, i := range r.fill {
		r.parts[i].Grams = math.Max(rest, 0) * r.share[k] / whole
	}
	return rest >= 0
}

// worth is how good the recipe is as it stands: its chance, more where it may be named;
// -1 where nothing is known of it.
func (r *recipe) worth() float64 {
	if !r.top() {
		return -1
	}
	values, ok := r.values()
	if !ok {
		return -1
	}
	p := r.on.Search.At(values)
	switch {
	case !p.Tested:
		return -1
	case p.Allowed:
		return 1 + p.Chance
	}
	return p.Chance
}

const (
	recipeSteps   = 24 // grams tried of each open ingredient, before going finer
	recipeHalving = 8
)

// fillIn finds the grams of what is open: all along their ranges in steps, then finer.
func (r *recipe) fillIn() bool {
	if len(r.open) == 0 {
		return r.top()
	}
	batch := max(r.batch, r.on.batch.Grams)
	most := make([]float64, len(r.open))
	for k, i := range r.open {
		most[k] = batch
		if r.parts[i].What.WeighedAsEmulsifier() {
			most[k] = r.on.mostEmulsifier() / 100 * batch
		}
	}
	best, at := -1.0, make([]float64, len(r.open))
	try := func() {
		if w := r.worth(); w > best {
			best = w
			for k, i := range r.open {
				at[k] = r.parts[i].Grams
			}
		}
	}
	steps := recipeSteps
	if len(r.open) > 2 { // many open ones: fewer of each
		steps = 10
	}
	var along func(k int)
	along = func(k int) {
		if k == len(r.open) {
			try()
			return
		}
		for n := range steps + 1 {
			r.parts[r.open[k]].Grams = most[k] * float64(n) / float64(steps)
			along(k + 1)
		}
	}
	along(0)
	for half := range recipeHalving {
		for k, i := range r.open {
			for _, sign := range [...]float64{-1, 1} {
				for j, o := range r.open {
					r.parts[o].Grams = at[j]
				}
				r.parts[i].Grams = math.Max(0, at[k]+sign*most[k]/float64(steps)/math.Pow(2, float64(half)))
				try()
			}
		}
	}
	for k, i := range r.open {
		r.parts[i].Grams = at[k]
	}
	r.top()
	return best >= 0
}

// mostEmulsifier is the most that was tried, in percent of the mix.
func (s *Ground) mostEmulsifier() float64 {
	if i := s.Place(surface.EmulsifierPercent); i >= 0 {
		return s.Search.Tested.High[i]
	}
	if i := s.Place(surface.EmulsifierGrams); i >= 0 {
		return 100 * s.Search.Tested.High[i] / s.batch.Grams
	}
	return 5
}

// weighed is the recipe on the scale's step, as a formula has it.
func (s *Ground) weighed(parts []formula.Part) *formula.Formula {
	mixed := make([]mix.Part, len(parts))
	for i, p := range parts {
		mixed[i] = mix.Part{Grams: p.Grams, What: *p.What}
	}
	t := mix.Total(mixed)
	if t.FatPercent == nil {
		return nil
	}
	w := formula.Wanted{FatPercent: *t.FatPercent, EmulsifierPercent: *t.EmulsifierPercent}
	if t.BlendHLB != nil {
		w.BlendHLB = &t.BlendHLB.Value
	}
	f, err := formula.Solve(parts, w, t.Grams, s.batch.ScaleStepGrams)
	if err != nil {
		return nil
	}
	return f
}

func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
