package column

import "foamfield/ingest/units"

// covering is a reading of a core: some of its words name the column, the others
// are accounted for or left.
type covering struct {
	p       *phrase // nil where the words are an ingredient's name
	name    string
	letters int
	could   []entry
	mods    []modifier
	units   []units.Unit
	left    []token
	subject string // the ingredient an attribute is of: "olive oil price"
}

func (c covering) found() bool { return c.p != nil || c.name != "" }

// better says whether c leaves less than d, or names the column by more letters.
func (c covering) better(d covering) bool {
	if x, y := c.unfit(), d.unfit(); !d.found() || x != y {
		return !d.found() || x < y
	}
	return c.letters > d.letters
}

// unfit counts the words that nothing accounts for beside the name.
func (c covering) unfit() int {
	n := len(c.left)
	for _, b := range c.mods {
		if len(c.could) > 0 && !b.sense.fits(Meaning{Role: c.could[0].role, Ingredient: c.name}) {
			n++
		}
	}
	return n
}

// longestName is the longest core in which an ingredient's name is looked for
// beside other words; longer ones are prose.
const longestName = 6

// cover finds the words of the core that name the column so that fewest others
// are left: header texts first, then ingredients.
func (r *reader) cover() (best covering) {
	best = r.best(best, r.byPhrase)
	if (!best.found() || best.unfit() > 0) && len(r.core) <= longestName {
		best = r.best(best, r.byIngredient)
	}
	return best
}

// best tries every run of the core as the name.
func (r *reader) best(best covering, named func(run []token) (covering, bool)) covering {
	for i := range r.core {
		for j := i + 1; j <= len(r.core); j++ {
			if removable(r.core[i]) || removable(r.core[j-1]) {
				continue
			}
			c, ok := named(r.core[i:j])
			if !ok {
				continue
			}
			r.beside(&c, i, j)
			if c.better(best) {
				best = c
			}
		}
	}
	return best
}

// byPhrase reads a run as a header text.
func (r *reader) byPhrase(run []token) (c covering, ok bool) {
	if !r.v.first[run[0].text] || len(run) > r.v.longest+2 {
		return c, false
	}
	if c.p = r.exact(run); c.p == nil || !r.telling(c.p) {
		return c, false
	}
	c.could = c.p.entries
	return c, true
}

// byIngredient reads a run as an ingredient's name.
func (r *reader) byIngredient(run []token) (c covering, ok bool) {
	if label(run[0]) || label(run[len(run)-1]) || r.v.nickname[joined(run)] || !r.isIngredient(run) {
		return c, false
	}
	c.name = raw(r.header, run)
	c.could = []entry{{role: IngredientAmount, ingredient: c.name}}
	return c, true
}

// beside accounts for the words around the run from i to j.
func (r *reader) beside(c *covering, i, j int) {
	for _, t := range r.core[i:j] {
		c.letters += len(t.text)
	}
	for _, rest := range [][]token{r.core[:i], r.core[j:]} {
		left, mods, could, measured := r.account(rest, c.could)
		c.left, c.mods, c.units, c.could = append(c.left, left...), append(c.mods, mods...), append(c.units, measured...), could
	}
	if c.p != nil && len(c.left) > 0 {
		c.attribute(r)
	}
}

// telling reports whether a phrase names a column inside a longer header: one or
// two letters do not.
func (r *reader) telling(p *phrase) bool {
	role := p.entries[0].role
	return len(p.squashed) > 2 || role == Measure || role == Unused || p.key == "t" && r.m.Unit.Dimension() == units.Temperature
}

// label reports whether a token is the A of "sugar ester A".
func label(t token) bool { return t.kind == word && len(t.text) == 1 }

// account goes through words beside a name that can have the meanings: each is a
// modifier, a unit, or another word for the same. The rest is left.
func (r *reader) account(ts []token, could []entry) (left []token, mods []modifier, same []entry, measured []units.Unit) {
	for i := 0; i < len(ts); {
		if b, ok := r.modifierAt(ts, i, false); ok {
			mods = append(mods, b)
			i += len(b.tokens)
			continue
		}
		if common, n := r.sameAt(ts[i:], could); n > 0 {
			could = common
			i += n
			continue
		}
		u, ok := units.Parse(raw(r.header, ts[i:i+1]))
		switch {
		case ok && len(could) > 0 && (ts[i].text == "%" || ts[i].kind == word && len(ts[i].text) > 1 && !r.noUnit(ts[i:i+1])):
			measured = append(measured, u)
		case ts[i].kind == number && len(could) > 0 && (could[0].role == Score || could[0].role == Mouthfeel):
			// "score 2" is one of several
		case !removable(ts[i]):
			left = append(left, ts[i])
		}
		i++
	}
	return left, mods, could, measured
}

// sameAt is the longest header text at the start of some words that can have one
// of the meanings too, the meanings in common and how many tokens it has.
func (r *reader) sameAt(ts []token, could []entry) ([]entry, int) {
	if len(could) == 0 || !r.v.first[ts[0].text] {
		return nil, 0
	}
	for n := min(len(ts), r.v.longest); n > 0; n-- {
		if p := r.v.exact(ts[:n]); p != nil {
			if common := inCommon(could, p.entries); len(common) > 0 {
				return common, n
			}
		}
	}
	return nil, 0
}

// inCommon are the entries whose role others have too.
func inCommon(es, others []entry) []entry {
	return only(es, func(e entry) bool {
		for _, o := range others {
			if o.role == e.role && o.reversed == e.reversed && e.ingredient == o.ingredient && e.role != IngredientAmount {
				return true
			}
		}
		return false
	})
}

// attribute lets words that are left be what a price, a temperature or the like
// is of.
func (c *covering) attribute(r *reader) {
	for _, e := range c.could {
		rest := r.withoutModifiers(c.left)
		if !attribute(e.role) || !r.thing(rest) && !(e.role == Note && r.known(rest)) {
			continue
		}
		if e.role == FatPercent {
			if r.m.Unit == units.NoUnit || r.m.Unit.Dimension() != units.Percent { // "goose fat" is something to weigh
				continue
			}
			if isEmulsifier(raw(r.header, rest)) {
				continue // "emulsifier / fat %" is no fat of the emulsifier
			}
			e.role = IngredientFat
		}
		c.could, c.left, c.subject = []entry{e}, nil, raw(r.header, rest)
		return
	}
}

// attribute reports whether a role is of a thing that its header may name.
func attribute(r Role) bool {
	switch r {
	case Unused, Measure, Temperature, FatPercent, IngredientType, Note:
		return true
	}
	return false
}

// thing reports whether words are an ingredient, all emulsifiers, the mix, the
// foam or some equipment: what has a price, a colour, a temperature.
func (r *reader) thing(ts []token) bool {
	if len(ts) == 0 || !hasWord(ts) {
		return false
	}
	if r.isIngredient(ts) {
		return true
	}
	if p := r.v.exact(ts); p != nil {
		switch e := p.entries[0]; e.role {
		case EmulsifierAmount, BatchMass, SampleMass, Canister, Chargers, Dish, Rest, FatPercent, CameOut, Shear, IngredientAmount:
			return true
		}
	}
	return r.v.modifiers[joined(ts)]&nothingOfResult != 0
}

// known reports whether words are some header text.
func (r *reader) known(ts []token) bool { return r.v.exact(ts) != nil }

// take makes a covering the reading of the core.
func (r *reader) take(c covering) {
	r.mods = append(r.mods, c.mods...)
	for _, u := range c.units {
		r.setUnit(u)
	}
	r.leave(c.left)
	r.m.subject = c.subject
	if c.p != nil {
		r.could = c.could
		return
	}
	r.m.Role, r.m.Ingredient, r.m.sure = IngredientAmount, c.name, true
}
