// Package method looks at how the trials of a work were planned: a control, repeats,
// one thing changed at a time or each by itself, and so what they can tell apart.
package method

import (
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/record"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// Factor is something that may be changed from trial to trial.
type Factor uint8

// The factors.
const (
	NoFactor Factor = iota
	Fat
	Emulsifier
	HLB
	Other // any setting of the log
)

// String is the factor in words.
func (f Factor) String() string { return [...]string{"", "fat", "emulsifier", "HLB", "setting"}[f] }

// Design is the mixes of one dish as its trials were made, on one sheet or several.
type Design struct {
	Tables []*handin.Table
	Trials []*handin.Trial
	Extras []string // settings that vary
	points []point
}

// point is where a trial stands.
type point struct {
	fat, emulsifier, hlb float64 // NaN = not known
	extras               []float64
	parts                map[string]float64 // grams by ingredient
	beside               map[string]float64 // of them, what is neither fat nor water
	mixed                bool
	written              int // parts of a mix that stands in one text
}

// Of places the trials of a work, dish by dish, with what was most likely meant where
// a cell is a slip.
func Of(w *handin.Work, slips record.Slips) (out []Design) {
	var order []string
	by := map[string][]*handin.Table{}
	for _, t := range w.Tables {
		key := t.Task
		if len(t.Weighed()) < 2 {
			key += "percents"
		}
		if by[key] == nil {
			order = append(order, key)
		}
		by[key] = append(by[key], t)
	}
	for _, key := range order {
		out = append(out, of(by[key], slips))
	}
	return out
}

func of(tables []*handin.Table, slips record.Slips) Design {
	d := Design{Tables: tables}
	for _, t := range tables {
		d.Trials = append(d.Trials, t.Trials...)
	}
	for _, name := range []string{"chargers", "rest_minutes", "temperature_c", "shakes"} {
		low, high := math.Inf(1), math.Inf(-1)
		for _, x := range d.Trials {
			if v, ok := x.Extras[name]; ok && !tooMany(name, v) {
				low, high = min(low, v), max(high, v)
			}
		}
		if isAnother(name, low, high) {
			d.Extras = append(d.Extras, name)
		}
	}
	for _, x := range d.Trials {
		d.points = append(d.points, d.place(x, slips))
	}
	return d
}

// Has reports whether a table is part of the design.
func (d *Design) Has(t *handin.Table) bool { return slices.Contains(d.Tables, t) }

// place is a trial's mix out of its grams, or else as it was logged.
func (d *Design) place(x *handin.Trial, slips record.Slips) point {
	p, ok := fromGrams(x, slips)
	if !ok {
		p = point{written: len(x.Parts), fat: value(x.FatPercent), emulsifier: value(x.EmulsifierPercent), hlb: value(x.BlendHLB), mixed: true}
		if p.hlb < 0 || p.hlb > ingredient.MostHLB {
			p.hlb = math.NaN()
		}
	}
	if math.IsNaN(p.hlb) && p.emulsifier > 0 { // of an emulsifier nobody knows the student does
		if h := value(x.BlendHLB); h >= 0 && h <= ingredient.MostHLB {
			p.hlb = h
		}
	}
	for _, name := range d.Extras {
		v, ok := x.Extras[name]
		if !ok || slipped(x, name, slips) || tooMany(name, v) {
			v = math.NaN()
		}
		p.extras = append(p.extras, v)
	}
	return p
}

// tooMany reports more chargers than any canister takes: 22 for 2.
func tooMany(name string, v float64) bool { return name == "chargers" && v > 8 }

// slipped reports a trial of which a setting is a slip.
func slipped(x *handin.Trial, name string, slips record.Slips) bool {
	role, ok := map[string]column.Role{"temperature_c": column.Temperature, "rest_minutes": column.Rest}[name]
	return ok && slices.ContainsFunc(x.Table.All(role), func(c *handin.Column) bool { _, ok := slips.Meant[c.Cells[x.Index].At]; return ok })
}

func value(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}

// At is the level of a factor in a trial, NaN where it is not known.
func (d *Design) At(i int, f Factor) float64 {
	switch f {
	case Fat:
		return d.points[i].fat
	case Emulsifier:
		return d.points[i].emulsifier
	case HLB:
		return d.points[i].hlb
	}
	return math.NaN()
}

// Stands reports a trial that has so much of a factor: in percent or as an HLB, or in grams of all emulsifiers.
func (d *Design) Stands(i int, f Factor, level float64, unit string) bool {
	if strings.HasPrefix(unit, "g") {
		sum := 0.0
		for _, c := range emulsifiersOf(d.Trials[i]) {
			sum += c.Value
		}
		return f == Emulsifier && math.Abs(sum-level) <= 0.06
	}
	within := map[Factor]float64{Fat: 0.6, Emulsifier: 0.06, HLB: 0.25}[f]
	return math.Abs(d.At(i, f)-level) <= within
}

// step is the least change of a factor that is one.
func step(f Factor, level float64) float64 {
	switch f {
	case Fat:
		return 1.2
	case Emulsifier:
		return max(0.12, 0.08*level)
	}
	return 0.45
}

// Differ reports whether a factor was changed between two trials.
func (d *Design) Differ(a, b int, f Factor) bool {
	x, y := d.At(a, f), d.At(b, f)
	if f == HLB && math.IsNaN(x) && math.IsNaN(y) {
		return d.otherShares(a, b)
	}
	if math.IsNaN(x) || math.IsNaN(y) {
		return math.IsNaN(x) != math.IsNaN(y)
	}
	return math.Abs(x-y) > step(f, max(x, y))
}

// otherShares reports two mixes whose emulsifiers, of which nobody knows the HLB, stand in another ratio.
func (d *Design) otherShares(a, b int) bool {
	x, y := d.points[a], d.points[b]
	sum := func(p point) (g float64) {
		for _, v := range p.beside {
			g += v
		}
		return g
	}
	s, t := sum(x), sum(y)
	if s <= 0 || t <= 0 {
		return false
	}
	for name, g := range x.beside {
		if math.Abs(g/s-y.beside[name]/t) > 0.04 {
			return true
		}
	}
	return false
}

// Alone reports that of all factors and settings only one was changed between two
// trials.
func (d *Design) Alone(a, b int, f Factor) bool {
	if f == Fat && d.Differ(a, b, Fat) && d.sameBesideFat(a, b) {
		return !d.settingsDiffer(a, b)
	}
	for _, o := range []Factor{Fat, Emulsifier, HLB} {
		if (o == f) != d.Differ(a, b, o) {
			return false
		}
	}
	return !d.settingsDiffer(a, b)
}

// fromGrams is a trial's mix out of the grams of two ingredients and more.
func fromGrams(x *handin.Trial, slips record.Slips) (p point, ok bool) {
	p = point{hlb: math.NaN(), mixed: true, parts: map[string]float64{}, beside: map[string]float64{}}
	sum, hlb := 0.0, 0.0
	for _, col := range x.Table.Weighed() {
		c, what := col.Cells[x.Index], &col.Field.What
		g, meant := slips.Meant[c.At]
		if !meant && c.Known {
			g = c.Value
		}
		p.mixed = p.mixed && (meant || c.Known || c.Blank())
		p.parts[what.Name] += g
		if what.Kind != ingredient.Fat && what.Kind != ingredient.Water {
			p.beside[what.Name] += g
		}
		sum += g
		if what.FatPercent != nil {
			p.fat += g * what.FatPercent.Value / 100
		}
		if what.WeighedAsEmulsifier() && g > 0 {
			p.emulsifier += g
			hlb += g * hlbOf(what)
		}
	}
	if len(p.parts) < 2 || sum <= 0 {
		return p, false
	}
	if p.emulsifier > 0 {
		p.hlb = hlb / p.emulsifier
	}
	sum = wholeOf(x, sum)
	p.fat, p.emulsifier = 100*p.fat/sum, 100*p.emulsifier/sum
	if e := value(x.EmulsifierPercent); p.emulsifier == 0 && e > 0 { // in one column, not by name
		p.emulsifier = e
	}
	return p, true
}

// wholeOf is what a mix weighs in all: its total where no column gives the water.
func wholeOf(x *handin.Trial, sum float64) float64 {
	if total := x.Table.Find(column.BatchMass); total != nil && total.Cells[x.Index].Known {
		if g := total.Cells[x.Index].Value; g > 1.3*sum {
			return g
		}
	}
	return sum
}

// hlbOf is an ingredient's HLB, NaN where nobody knows it.
func hlbOf(what *ingredient.Ingredient) float64 {
	if what.HLB == nil {
		return math.NaN()
	}
	return what.HLB.Value
}

// apart is how far a setting has to be changed to be another: nobody meets a
// temperature or a rest to the degree and the minute.
var apart = map[string]float64{"chargers": 0.4, "rest_minutes": 3, "temperature_c": 3.5, "shakes": 1.5}

// isAnother reports two levels of a setting that are not one.
func isAnother(name string, low, high float64) bool {
	return high-low > apart[name]*max(1, math.Abs(high)/10)
}

func (d *Design) settingsDiffer(a, b int) bool {
	for k := range d.Extras {
		x, y := d.points[a].extras[k], d.points[b].extras[k]
		if math.IsNaN(x) || math.IsNaN(y) {
			continue
		}
		if isAnother(d.Extras[k], min(x, y), max(x, y)) {
			return true
		}
	}
	return false
}

// sameBesideFat reports two mixes that differ in the grams of fats and waters only: more
// butter in the same of all else thins the emulsifier, and is one change all the same.
func (d *Design) sameBesideFat(a, b int) bool {
	x, y := d.points[a].beside, d.points[b].beside
	if len(x) == 0 || len(x) != len(y) {
		return false
	}
	for name, g := range x {
		if math.Abs(g-y[name]) > max(0.35, 0.025*g) {
			return false
		}
	}
	return true
}

// Varies reports whether a factor was changed at all.
func (d *Design) Varies(f Factor) bool {
	for a := range d.points {
		for b := range a {
			if d.Differ(a, b, f) && !math.IsNaN(d.At(a, f)) && !math.IsNaN(d.At(b, f)) {
				return true
			}
		}
	}
	return false
}

// Separates reports whether some two trials differ in a factor alone, or the factor
// does not go along with the others over all trials.
func (d *Design) Separates(f Factor) bool {
	for a := range d.points {
		for b := range a {
			if d.Alone(a, b, f) {
				return true
			}
		}
	}
	return d.Varies(f) && len(d.Beside(f)) == 0
}

// Beside names what always moved along with a factor.
func (d *Design) Beside(f Factor) (names []string) {
	for _, o := range []Factor{Fat, Emulsifier, HLB} {
		if o != f && (d.Varies(o) && d.together(f, func(i int) float64 { return d.At(i, o) }) || d.inStep(f, o)) {
			names = append(names, "the "+o.String())
		}
	}
	for k, name := range d.Extras {
		if d.together(f, func(i int) float64 { return d.points[i].extras[k] }) {
			names = append(names, "the "+settings[name])
		}
	}
	return names
}

// settings are the words for what else is set.
var settings = map[string]string{"chargers": "chargers", "rest_minutes": "rest", "temperature_c": "temperature", "shakes": "shakes"}

// together reports a factor that always moved with something else: their correlation
// is all but 1.
func (d *Design) together(f Factor, other func(i int) float64) bool {
	var n, sx, sy, sxx, syy, sxy float64
	for i := range d.points {
		x, y := d.At(i, f), other(i)
		if math.IsNaN(x) || math.IsNaN(y) {
			continue
		}
		n, sx, sy, sxx, syy, sxy = n+1, sx+x, sy+y, sxx+x*x, syy+y*y, sxy+x*y
	}
	vx, vy, c := sxx-sx*sx/n, syy-sy*sy/n, sxy-sx*sy/n
	return n >= 2 && vx > 0 && vy > 0 && c*c > 0.9*vx*vy
}

// inStep reports that wherever a factor was changed another was too, always to the same side of it, in all
// trials that came out.
func (d *Design) inStep(f, o Factor) bool {
	n, same := 0, 0
	for a := range d.points {
		for b := range a {
			fa, fb, oa, ob := d.At(a, f), d.At(b, f), d.blendOr(a, o), d.blendOr(b, o)
			if !d.Differ(a, b, f) || math.IsNaN(fa+fb+oa+ob) || d.Trials[a].CameOut == trial.No || d.Trials[b].CameOut == trial.No {
				continue
			}
			if !d.Differ(a, b, o) {
				return false
			}
			if n++; (fa > fb) == (oa > ob) {
				same++
			}
		}
	}
	return n > 0 && (same == 0 || same == n)
}

// blendOr is the level of a factor; of two emulsifiers of which nobody knows the HLB the share of one.
func (d *Design) blendOr(i int, f Factor) float64 {
	if f != HLB || !math.IsNaN(d.At(i, f)) {
		return d.At(i, f)
	}
	var names []string
	sum := 0.0
	for name, g := range d.points[i].beside {
		names, sum = append(names, name), sum+g
	}
	if len(names) != 2 || sum == 0 {
		return math.NaN()
	}
	return d.points[i].beside[slices.Min(names)] / sum
}

// Range is the lowest and highest level that was tried.
func (d *Design) Range(f Factor) (low, high float64, ok bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range d.points {
		if x := d.At(i, f); !math.IsNaN(x) {
			low, high, ok = min(low, x), max(high, x), true
		}
	}
	return low, high, ok
}

var repeatWords = pattern.Of(`(?i)(\brepeat|\breplicate|\bagain\b|\bsame as\b|\bduplicate|\bidem\b|\bwie (nr\.? ?|versuch )?\d|\bcomme (le |l'essai )?\d|\bcome (la )?\d|\bcomo (el |la )?\d|\bwiederhol|\brépét|\brepet|\brépli|\bréplica|\bripet|\bcopy of the mix|\bdup\b|\brep\b|\bbis\b)`)

// Same reports two trials of one formula: equal within the weighing error, and made
// the same way.
func (d *Design) Same(a, b int) bool {
	x, y := d.points[a], d.points[b]
	if d.settingsDiffer(a, b) {
		return false
	}
	if len(x.parts) > 0 && len(y.parts) > 0 {
		if !x.mixed || !y.mixed {
			return false
		}
		for _, p := range [...][2]map[string]float64{{x.parts, y.parts}, {y.parts, x.parts}} {
			for name, g := range p[0] {
				if o := p[1][name]; math.Abs(g-o) > max(0.35, 0.025*max(g, o)) {
					return false
				}
			}
		}
		// A third of a gram of one emulsifier for the other is another blend, and one more of both another dose.
		return !(math.Abs(x.hlb-y.hlb) > step(HLB, 0)) && !d.Differ(a, b, Emulsifier)
	}
	if math.IsNaN(x.fat) && math.IsNaN(x.emulsifier) {
		return false
	}
	// What is not known of one may well be as in the other.
	same := func(p, q, within float64) bool { return math.IsNaN(p) || math.IsNaN(q) || math.Abs(p-q) <= within }
	return same(x.fat, y.fat, 0.4) && same(x.emulsifier, y.emulsifier, 0.05) && same(x.hlb, y.hlb, 0.15)
}

// Repeated reports whether any formula was made twice, or the log says so.
func (d *Design) Repeated() bool {
	for a, x := range d.Trials {
		for b := range a {
			if d.Same(a, b) {
				return true
			}
		}
		if repeatWords.MatchString(x.Note) || repeatWords.MatchString(x.ID) || strings.TrimSpace(x.Raw["repeat of"]) != "" {
			return true
		}
	}
	return slices.ContainsFunc(d.Tables, saysRepeat)
}

// saysRepeat reports a table that gives its repeats a column: their numbers, or the results of one making
// each, "batch 1", "batch 2".
func saysRepeat(t *handin.Table) bool {
	if c := t.Find(column.Repeat); c != nil && c.Filled() {
		return true
	}
	n := 0
	for _, c := range t.Columns {
		if c.Known() >= 2 && aMaking.MatchString(c.Header) {
			n++
		}
	}
	return n >= 2
}

var aMaking = pattern.Of(`(?i)^\s*(?:(?:hold|stand|time)\w*,?\s+)?(?:new )?(?:mix|batch|making|replicate|repeat|rep|charge|ansatz|mischung|wiederholung|mélange|répétition|réplicat|mezcla|réplica|repetición|miscela|replica|ripetizione|mengsel|herhaling)\.?\s*(?:no\.?|nr\.?|#)?\s*[1-9]\b`)

// ReadTwice reports columns that may be two makings of a formula, or two readings of
// one: hold A, hold B.
func (d *Design) ReadTwice() bool {
	for _, t := range d.Tables {
		n := map[string]int{}
		for _, c := range t.Columns {
			if c.Known() < 2 && c.Role != column.Hold || !holdHeader.MatchString(c.Header) {
				continue
			}
			if n[numbered.ReplaceAllString(strings.ToLower(c.Header), "")]++; n[numbered.ReplaceAllString(strings.ToLower(c.Header), "")] >= 2 {
				return true
			}
		}
	}
	return false
}

var (
	holdHeader = pattern.Of(`(?i)(hold|stood|stand|stays|time|tenue|aguante|tenuta|stand)`)
	numbered   = pattern.Of(`(\d|\b[a-c]\b|first|second|third|[ .#_-])`)
)

// Groups are the trials by formula, in order.
func (d *Design) Groups() (out [][]int) {
next:
	for i := range d.points {
		for k := range out {
			if d.Same(out[k][0], i) {
				out[k] = append(out[k], i)
				continue next
			}
		}
		out = append(out, []int{i})
	}
	return out
}

// Thing is a factor, or a setting by its name in the log.
type Thing struct {
	Factor  Factor
	Setting string
}

// String is the thing in words.
func (t Thing) String() string {
	if t.Setting != "" {
		return "the " + settings[t.Setting]
	}
	return "the " + t.Factor.String()
}

// Changed are all things that differ between two trials; known is false where the mix of
// one is not known.
func (d *Design) Changed(a, b int) (all []Thing, known bool) {
	for _, f := range []Factor{Fat, Emulsifier, HLB} {
		if d.Differ(a, b, f) {
			all = append(all, Thing{Factor: f})
		}
	}
	for k, name := range d.Extras {
		x, y := d.points[a].extras[k], d.points[b].extras[k]
		if !math.IsNaN(x) && !math.IsNaN(y) && isAnother(name, min(x, y), max(x, y)) {
			all = append(all, Thing{Setting: name})
		}
	}
	return all, d.points[a].mixed && d.points[b].mixed
}
