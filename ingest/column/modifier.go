package column

import (
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/units"
)

// sense is what a word beside a column's name does to it. Some words do several
// things, by what they stand beside: "no" counts chargers and turns clogs round.
type sense uint32

const (
	nothing         sense = 1 << iota // changes nothing: of, the
	nothingOfAmount                   // weight of, added, used
	nothingOfResult                   // of the foam, out of the siphon
	lasting                           // time, how long
	counting                          // number of
	summing                           // total
	weighed                           // actual, weighed
	meant                             // planned, target
	computed                          // calculated: of a result nothing, of an amount the plan
	another                           // surely something else: rinse, frying, tare
	perhaps                           // may be something else: before reduction, bowl +
	reversing                         // not, never
	byVolume                          // vol %
	rate                              // per kg
	ofMeasure                         // mPas, bar
	joint                             // both together: of all emulsifiers nothing, of one thing it may be two

	anything sense = 1<<32 - 1
)

// senseLines are the lines of words.txt that hold such words.
var senseLines = map[string]sense{
	"(nothing)": nothing, "(nothing of amounts)": nothingOfAmount, "(nothing of results)": nothingOfResult, "(lasting)": lasting,
	"(counting)": counting, "(summing)": summing, "(actual)": weighed, "(planned)": meant, "(computed)": computed,
	"(apart)": another, "(apart?)": perhaps, "(reverses)": reversing, "(by volume)": byVolume, "(nothing of measures)": ofMeasure, "(joint)": joint,
}

// modifier is a run of such words in a header.
type modifier struct {
	sense  sense
	text   string // as typed
	tokens []token
}

// modifierAt is the longest run of modifying words that starts at place i, or
// ends there when backwards. A single letter is one only before an apostrophe or
// to count: "l'huile", "n° cartouches", but never the A of "emulsifier A".
func (r *reader) modifierAt(ts []token, i int, backwards bool) (modifier, bool) {
	for k := min(len(ts), r.v.longestModifier); k >= 1; k-- {
		from := i
		if backwards {
			from = i - k + 1
		}
		if from < 0 || from+k > len(ts) {
			continue
		}
		run := ts[from : from+k]
		key := joined(run)
		s, ok := r.v.modifiers[key]
		if !ok || run[0].kind == sign || run[k-1].kind == sign {
			continue
		}
		if len(key) == 1 && !r.besideApostrophe(ts, from) && !(s&counting != 0 && from == 0 && len(ts) > 1) {
			continue
		}
		return modifier{s, raw(r.header, run), run}, true
	}
	return modifier{}, false
}

func (r *reader) besideApostrophe(ts []token, i int) bool {
	if ts[i].text == "s" {
		return i > 0 && ts[i-1].text == "'"
	}
	return i+1 < len(ts) && ts[i+1].text == "'"
}

// peel takes a modifier with one of the senses off an end of the core.
func (r *reader) peel(senses sense) bool {
	n := len(r.core)
	if m, ok := r.modifierAt(r.core, n-1, true); ok && m.sense&senses != 0 {
		r.mods, r.core = append(r.mods, m), r.core[:n-len(m.tokens)]
		return true
	}
	if m, ok := r.modifierAt(r.core, 0, false); ok && m.sense&senses != 0 {
		r.mods, r.core = append(r.mods, m), r.core[len(m.tokens):]
		return true
	}
	return false
}

// fits reports whether a modifier is accounted for beside a role, apart from
// what it says of aim, part and polarity.
func (s sense) fits(m Meaning) bool {
	r := m.Role
	switch {
	case s&(nothing|weighed|meant|computed|another|perhaps|summing|joint) != 0,
		s&nothingOfAmount != 0 && measured(r),
		s&nothingOfResult != 0 && ofFoam(r),
		s&lasting != 0 && r.Takes(units.Minutes),
		s&counting != 0 && counted(r),
		s&reversing != 0 && reversible(r),
		s&byVolume != 0 && (r == Overrun || m.Unit.Dimension() == units.Volume),
		s&ofMeasure != 0 && r == Measure,
		s&rate != 0 && (r == Unused || r == Measure):
		return true
	}
	return false
}

// general reports whether a name stands for all ingredients of a kind, so that
// its total may be a sum of other columns.
func general(name string) bool {
	i, ok := ingredient.Lookup(name)
	return !ok || i.Name == "oil" || i.Name == "fat" || i.Name == "water"
}

// jointly reports whether a role is of all there is of something, so that "both
// together" says nothing new of it.
func jointly(r Role) bool {
	return r == EmulsifierAmount || r == BlendHLB || r == FatPercent || r == BatchMass || ofFoam(r)
}

// ofFoam reports whether a role is of the foam or its handling.
func ofFoam(r Role) bool {
	return r >= Chargers && r <= Squirt || r >= Hold && r <= Note || r == StartedAt || r == FellAt || r == Fill
}

// measured reports whether a role is an amount, of whatever.
func measured(r Role) bool {
	return (r.Takes(units.Mass) || r.Takes(units.Volume) || r.Takes(units.Percent) || r == Chargers) && r != CameOut
}

// counted reports whether a role is a count or a label.
func counted(r Role) bool {
	return r == Chargers || r == Shakes || r == Squirt || r == CanisterID || r <= Order && r > None || r == Student || r == Score
}

// reversible reports whether "not" turns a role round.
func reversible(r Role) bool {
	switch r {
	case CameOut, Clogged, Spits, Broke, OilLeak, Grainy, DrainedAmount, OilAmount, GoneBy, Valid:
		return true
	}
	return false
}

// judged reports whether a role may be marked on a scale.
func judged(r Role) bool {
	switch r {
	case Score, Mouthfeel, Grainy, CameOut, Clogged, Spits, Broke, OilLeak, Result:
		return true
	}
	return false
}

// seen reports whether a role is a result, which nobody can plan.
func seen(r Role) bool {
	return r >= Hold && r <= Result && r != SampleMass && r != DrainedAt && r != ReadingMinute
}

// timed reports whether a role's header may say a minute.
func timed(r Role) bool { return r >= Hold && r <= Note || r == Temperature || r == None }

// weigh lets the words beside the name say what they say: what nothing accounts
// for sets the column aside.
func (m Meaning) weigh() Meaning {
	m.Left, m.Reversed = slices.Clone(m.left), m.turned
	m = m.ranOut()
	if m.BasisName != "" && m.Role != None && m.Role != IngredientAmount && m.Role != EmulsifierAmount {
		m.Left = append(m.Left, m.BasisName) // "drained, % of the cream"
	}
	if m.OutOf > 0 && !judged(m.Role) && m.Role != None {
		m.Left = append(m.Left, m.scale)
	}
	if m.AtMinute > 0 && !timed(m.Role) {
		m.Left = append(m.Left, m.minute)
	}
	var away sense
	for _, b := range m.beside {
		away |= m.heed(b)
		if vocab().basis[joined(b.tokens)] == OfMix && vocab().preposed(b.tokens) && m.IfPercent == NoBasis {
			m.IfPercent = OfMix // "in the mix" beside an amount
		}
	}
	if m.Unit.Dimension() == units.Percent && m.Basis == NoBasis {
		m.Basis = m.IfPercent
	}
	switch {
	case len(m.Left) > 0:
		return m.unexplained()
	case away&another != 0:
		return m.elsewhere()
	case away != 0:
		return m.askedApart()
	case m.Aim == Planned && m.Role != None:
		return m.planned()
	}
	return m
}

// ranOut reads a liquid with a minute: nothing is weighed in at a minute, but
// "% liquid at 15 min" ran out of the foam.
func (m Meaning) ranOut() Meaning {
	if m.Role != IngredientAmount || m.AtMinute == 0 || !m.sure {
		return m
	}
	switch i, _ := ingredient.Lookup(m.Ingredient); i.Name {
	case "water part", "water":
		m.Role, m.Ingredient = DrainedAmount, ""
	case "oil", "fat":
		m.Role, m.Ingredient = OilAmount, ""
	}
	return m
}

// heed takes what one modifier says, and reports whether it sets the column apart:
// another or perhaps.
func (m *Meaning) heed(b modifier) (away sense) {
	amount := m.Role == IngredientAmount
	switch s := b.sense; {
	case m.Role != None && !s.fits(*m) && m.with(b):
		// "HLB (mean)" is a header text too
	case m.Role != None && !s.fits(*m):
		m.Left = append(m.Left, b.text)
	case s&reversing != 0 && reversible(m.Role):
		m.Reversed = !m.Reversed
	case s&meant != 0, s&computed != 0 && (amount || m.Role == EmulsifierAmount):
		m.Aim = Planned
	case s&weighed != 0:
		m.weighed = true
	case s&summing != 0 && amount && general(m.Ingredient), s&joint != 0 && !jointly(m.Role):
		away = perhaps
	case s&(nothing|nothingOfResult) == 0 || !ofFoam(m.Role):
		away = s & (another | perhaps)
	}
	if away != 0 {
		m.Apart = strings.TrimSpace(m.Apart + " " + b.text)
	}
	return away
}

// with reports whether the header's words and a modifier together are a header text
// for the same.
func (m Meaning) with(b modifier) bool {
	p := vocab().phrases[joined(tokens(m.Words))+" "+joined(b.tokens)]
	return p != nil && p.entries[0].role == m.Role
}
