package recalc

import (
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
)

// totals holds the student's totals against the sums of the grams.
func (j *job) totals() {
	col := j.table.Find(column.BatchMass)
	if col == nil || !j.sumsUp(col) {
		return
	}
	j.column(col, criteria.Total, func(i int) (expected, bool) {
		m := &j.mixes[i][0]
		if m.open || m.sum <= 0 || len(m.parts) < 2 {
			return expected{}, false
		}
		e := expected{how: m.listed(anyPart), digits: 1, within: j.totalWithin(col, m.sum)}
		for k := range j.mixes[i] {
			e.rights = append(e.rights, exactly(j.mixes[i][k].sum))
			if g := j.emulsifiersTogether(i); g > 0 {
				e.rights = append(e.rights, exactly(j.mixes[i][k].sum+g))
			}
		}
		for k := range m.parts {
			if p := &m.parts[k]; p.grams != 0 {
				e.ways = append(e.ways, way{m.sum - p.grams, "the sum without the " + p.name, "without " + p.name, false},
					way{m.sum + p.grams, "the sum with the " + p.name + " counted twice", "twice " + p.name, false})
			}
		}
		em := m.of(isEmulsifier)
		e.ways = append(e.ways, way{m.sum - em, "the sum without the emulsifiers", "without emulsifiers", false})
		e.ways = append(e.ways, j.otherRows(i, func(o *mixture) float64 { return o.sum })...)
		e.ways = append(e.ways, slips(m.sum)...)
		return e, true
	})
}

// emulsifiersTogether are the grams of emulsifier in one column, where none is weighed by
// its name.
func (j *job) emulsifiersTogether(i int) (g float64) {
	if j.hasEmulsifiers() {
		return 0
	}
	for _, col := range j.table.All(column.EmulsifierAmount) {
		if c := col.Cells[i]; col.Field != nil && col.Field.InGrams && c.Known {
			g += c.Value
		}
	}
	return g
}

// sumsUp reports that the totals of a table are the sums of its grams: in most rows
// they are, or nearly.
func (j *job) sumsUp(col *handin.Column) bool {
	near, n := 0, 0
	for i, c := range col.Cells {
		if m := &j.mixes[i][0]; c.Known && !m.open && m.sum > 0 {
			n++
			if math.Abs(c.Value-m.sum) <= max(0.02*m.sum, 2) {
				near++
			}
		}
	}
	return n > 0 && 2*near >= n && near > 0 || j.allWithoutOne(col)
}

// allWithoutOne reports totals that are the sum of the grams but for one ingredient, or
// for the emulsifiers, the same in every row.
func (j *job) allWithoutOne(col *handin.Column) bool {
	if len(j.mixes) < 3 || col.Known() < len(col.Cells) {
		return false
	}
	without := func(grams func(m *mixture) float64) bool {
		left := 0
		for i, c := range col.Cells {
			m := &j.mixes[i][0]
			g := grams(m)
			if m.open || math.Abs(c.Value-(m.sum-g)) > max(c.Half, 0.06) {
				return false
			}
			if g > 0.5 {
				left++
			}
		}
		return left >= 3
	}
	for k := range j.mixes[0][0].parts {
		if without(func(m *mixture) float64 { return m.parts[k].grams }) {
			return true
		}
	}
	return without(func(m *mixture) float64 { return m.of(isEmulsifier) })
}

// totalWithin is what a total may be off: little where the others of its column are
// exact, what weighing loses where they are not.
func (j *job) totalWithin(col *handin.Column, sum float64) float64 {
	exact, n := 0, 0
	for i, c := range col.Cells {
		if m := &j.mixes[i][0]; c.Known && !m.open {
			n++
			if math.Abs(c.Value-m.sum) <= c.Half+0.051 {
				exact++
			}
		}
	}
	half := 0.0
	for _, c := range col.Cells {
		half = max(half, min(c.Half, 0.5))
	}
	if 2*exact > n {
		return half + 0.051
	}
	return max(half+0.051, j.rules.TotalWithin/100*sum)
}

// otherRows are what the other rows of the table have: a value copied from one, or a
// formula that points at it.
func (j *job) otherRows(i int, value func(*mixture) float64) (out []way) {
	const near = 30 // rows: nobody copies from further off
	for k := max(0, i-near); k < min(len(j.mixes), i+near); k++ {
		if k != i {
			out = append(out, way{value(&j.mixes[k][0]), "what trial " + j.name(k) + " has", "row of " + j.name(k), true})
		}
	}
	return out
}

// name is what a trial is called.
func (j *job) name(i int) string {
	if id := j.table.Trials[i].ID; id != "" {
		return id
	}
	return fmt.Sprint(i + 1)
}

// fats holds fat percents against the grams.
func (j *job) fats() {
	for _, col := range j.table.All(column.FatPercent) {
		if col.Field == nil || len(j.table.Weighed()) < 2 || strings.Contains(say.Fold(col.Header), "of fat") {
			continue // what is a percent of the fat is no percent of fat
		}
		if col.Field.InGrams {
			j.column(col, criteria.Fat, j.fatOf)
			continue
		}
		asWeighed := j.said.asWeighed || saysPhase(col.Header)
		j.column(col, criteria.Fat, func(i int) (expected, bool) { return j.fat(i, asWeighed) })
	}
}

// fatOf is the grams of fat in a mix.
func (j *job) fatOf(i int) (e expected, ok bool) {
	e = expected{within: 0.6, digits: 1}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		fat, known := m.fatGrams()
		if !known || m.open {
			return e, false
		}
		e.rights = append(e.rights, accepted(fat))
		if e.how == "" {
			e.how = m.fatWritten()
		}
		e.ways = append(e.ways, way{m.of(isFat), "the grams of " + m.names(isFat) + ", as if all of it were fat", "all fat", false})
		e.ways = append(e.ways, slips(fat.value)...)
	}
	return e, e.rights[0].value > 0
}

// saysPhase reports a header that speaks of the fat as it was weighed.
func saysPhase(header string) bool {
	for _, w := range []string{"phase", "butter", "beurre", "as weighed", "burro", "mantequilla", "fat part", "oil %", "oil phase", "ghee"} {
		if strings.Contains(say.Fold(header), w) {
			return true
		}
	}
	return false
}

func (j *job) fat(i int, asWeighed bool) (expected, bool) {
	first := &j.mixes[i][0]
	if first.open {
		return expected{}, false
	}
	e := expected{within: j.rules.FatWithin, digits: 1}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		fat, ok := m.fatGrams()
		if !ok {
			return e, false
		}
		for _, d := range m.denominators() {
			e.rights = append(e.rights, accepted{100 * fat.low / d, 100 * fat.value / d, 100 * fat.high / d})
			if asWeighed {
				e.rights = append(e.rights, exactly(100*m.of(isFat)/d))
			}
			if e.how == "" {
				e.how = fmt.Sprintf("(%s) / %s × 100", m.fatWritten(), num(d))
			}
		}
	}
	if len(e.rights) == 0 || first.of(isFat) == 0 && e.rights[0].value == 0 {
		return e, false
	}
	for k := range j.mixes[i] {
		e.ways = append(e.ways, fatWays(&j.mixes[i][k])...)
	}
	e.ways = append(e.ways, j.otherRows(i, func(m *mixture) float64 {
		fat, ok := m.fatGrams()
		if d := m.denominators(); ok && len(d) > 0 {
			return 100 * fat.value / d[0]
		}
		return math.NaN()
	})...)
	return e, true
}

// fatWays are the ways a fat percent goes wrong.
func fatWays(m *mixture) (out []way) {
	fat, _ := m.fatGrams()
	raw, water, em := m.of(isFat), m.of(isWater), m.of(isEmulsifier)
	add := func(x float64, class, words string) { out = append(out, way{x, words, class, false}) }
	for _, d := range m.denominators() {
		add(100*raw/d, "all fat", "the "+m.names(isFat)+" in percent of the mix, as if all of it were fat")
		add(100*fat.value/(d-em), "without emulsifiers", "the fat in percent of a mix without its emulsifiers")
		add(100*raw/(d-em), "all fat without emulsifiers", "the "+m.names(isFat)+" in percent of a mix without its emulsifiers, as if all of it were fat")
		add(100*(fat.value+em)/d, "with emulsifiers", "the fat with the emulsifiers")
		add(100*water/d, "water", "the percent of the water part")
		add(fat.value/d, "fraction", "a fraction, not a percent")
		if k := swapFatWater(m); k > 0 {
			add(100*k/d, "exchanged", "what follows if the grams of fat and of water are exchanged")
		}
	}
	for k := range m.parts {
		p := &m.parts[k]
		if isFat(p) && p.grams > 0 && p.fat.value > 0 {
			add(p.fat.value, "own percent", fmt.Sprintf("the fat percent of the %s itself, not of the mix", p.name))
		}
	}
	for _, d := range m.denominators() {
		add(100*fat.value/(d-water), "without water", "the fat in percent of everything but the water")
	}
	if water > 0 {
		add(100*fat.value/water, "of water", "the fat in percent of the water part, not of the mix")
		add(100*raw/water, "butter of water", "the "+m.names(isFat)+" in percent of the water part, not of the mix")
	}
	if raw > 0 {
		add(100*fat.value/raw, "of fat", "the fat in percent of the "+m.names(isFat)+", not of the mix")
	}
	add(fat.value, "grams", "the grams of fat, not its percent")
	add(raw, "grams as weighed", "the grams of "+m.names(isFat)+", not a percent")
	for _, d := range m.denominators() {
		for _, to := range []float64{5, 10} {
			add(to*math.Round(100*fat.value/d/to), "rounded to "+num(to), "rounded too far, to a multiple of "+num(to))
		}
	}
	return append(out, slipsOf(100*fat.value, m)...)
}

// slipsOf are slips of the finger of a percent of the mix.
func slipsOf(hundredfold float64, m *mixture) (out []way) {
	for _, d := range m.denominators() {
		out = append(out, slips(hundredfold/d)...)
	}
	return out
}

// swapFatWater is the fat in grams if the fat and the water had changed places.
func swapFatWater(m *mixture) float64 {
	var fat, water *part
	for k := range m.parts {
		switch p := &m.parts[k]; {
		case p.grams == 0:
		case isFat(p) && fat == nil:
			fat = p
		case isWater(p) && water == nil:
			water = p
		case isFat(p), isWater(p):
			return 0
		}
	}
	if fat == nil || water == nil {
		return 0
	}
	return water.grams * fat.fat.value / 100
}

// emulsifiers holds emulsifier percents, and their grams together, against the grams.
func (j *job) emulsifiers() {
	for _, col := range j.table.All(column.EmulsifierAmount) {
		if col.Field == nil || !j.hasEmulsifiers() {
			continue
		}
		if col.Field.InGrams {
			j.column(col, criteria.Emulsifier, func(i int) (expected, bool) { return j.emulsifierGrams(i) })
			continue
		}
		basis := j.basisOf(col)
		j.column(col, criteria.Emulsifier, func(i int) (expected, bool) {
			return j.share(i, isEmulsifier, basis, j.rules.EmulsifierWithin, "the emulsifiers")
		})
	}
}

func (j *job) hasEmulsifiers() bool {
	for _, c := range j.table.Weighed() {
		if c.Field.What.WeighedAsEmulsifier() {
			return true
		}
	}
	return false
}

// basisOf is what a percent column says that its percents are of.
func (j *job) basisOf(col *handin.Column) column.Basis {
	b := col.Field.Basis
	header := say.Fold(col.Header)
	switch {
	case strings.Contains(header, "of mix") || strings.Contains(header, "of the mix") || strings.Contains(header, "of total"):
		return column.OfMix
	case strings.Contains(header, "butter") || strings.Contains(header, "of fat") || strings.Contains(header, "of oil"):
		if col.Role == column.EmulsifierAmount || b == column.OfFat {
			return column.OfFat
		}
	}
	if m := ofWhat.FindStringSubmatch(header); m != nil { // "% of ghee"
		switch what, ok := ingredient.Lookup(m[1]); {
		case ok && what.Kind == ingredient.Fat:
			return column.OfFat
		case ok && what.Kind == ingredient.Water:
			return column.OfWater
		}
	}
	return b
}

// ofWhat is an ingredient that a header's percents are of.
var ofWhat = pattern.Of(`\bof (?:the )?(\p{L}+(?: \p{L}+)?)\)?$`)

func (j *job) emulsifierGrams(i int) (e expected, ok bool) {
	m := &j.mixes[i][0]
	if m.open {
		return e, false
	}
	e = expected{within: 0.06, digits: 2, how: m.listed(isEmulsifier)}
	for k := range j.mixes[i] {
		e.rights = append(e.rights, exactly(j.mixes[i][k].of(isEmulsifier)))
	}
	for k := range m.parts {
		if p := &m.parts[k]; isEmulsifier(p) {
			e.ways = append(e.ways, way{p.grams, "the " + p.name + " alone", "only " + p.name, false})
		}
	}
	e.ways = append(e.ways, j.otherRows(i, func(o *mixture) float64 { return o.of(isEmulsifier) })...)
	return e, true
}

// share is some parts in percent of a basis. Without one in the header it is of the
// mix, or of the fat where words beside the trials say so.
func (j *job) share(i int, which func(*part) bool, basis column.Basis, within float64, what string) (e expected, ok bool) {
	first := &j.mixes[i][0]
	if first.open || first.of(which) == 0 {
		return e, false
	}
	e = expected{within: within, digits: 2}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		g := m.of(which)
		for _, d := range j.bases(m, basis) {
			if d.grams <= 0 {
				continue
			}
			if d.right {
				e.rights = append(e.rights, exactly(100*g/d.grams))
				if e.how == "" {
					e.how = fmt.Sprintf("(%s) / %s × 100", m.listed(which), num(d.grams))
				}
			} else {
				e.ways = append(e.ways, way{100 * g / d.grams, d.words, d.words, false})
			}
			e.ways = append(e.ways, partWays(m, which, d, what)...)
		}
		e.ways = append(e.ways, way{g, "the grams of " + what + ", not a percent", "grams", false})
	}
	if len(e.rights) == 0 {
		return e, false
	}
	e.ways = append(e.ways, slips(e.rights[0].value)...)
	e.ways = append(e.ways, j.otherRows(i, func(m *mixture) float64 {
		if d := m.denominators(); len(d) > 0 && basis != column.OfFat && basis != column.OfWater {
			return 100 * m.of(which) / d[0]
		}
		return math.NaN()
	})...)
	return e, true
}

// base is something that percents may be of.
type base struct {
	grams float64
	right bool
	words string
}

// bases are what a percent may be of, and whether that is right under the header.
func (j *job) bases(m *mixture, basis column.Basis) (out []base) {
	mix := basis == column.OfMix || basis == column.NoBasis
	fat := basis == column.OfFat || basis == column.NoBasis && j.said.ofFat
	for _, d := range m.denominators() {
		out = append(out, base{d, mix, "of the mix, not " + basis.String()})
	}
	em := m.of(isEmulsifier)
	for _, d := range m.denominators() {
		out = append(out, base{d - em, false, "of the mix without its emulsifiers"})
	}
	pure := 0.0
	if f, ok := m.fatGrams(); ok {
		pure = f.value
	}
	beside := ", not of the mix"
	if !mix {
		beside = ", not " + basis.String()
	}
	return append(out, base{m.of(isFat), fat, "of the " + m.names(isFat) + beside}, base{pure, fat, "of the fat" + beside},
		base{m.of(isWater), basis == column.OfWater, "of the water part" + beside},
		base{m.of(isWater) + m.of(isFat), false, "of fat and water without the rest"})
}

// partWays are a share with one of its parts left out.
func partWays(m *mixture, which func(*part) bool, d base, what string) (out []way) {
	n := 0
	for k := range m.parts {
		if which(&m.parts[k]) && m.parts[k].grams > 0 {
			n++
		}
	}
	for k := range m.parts {
		p := &m.parts[k]
		if n < 2 || !which(p) || p.grams == 0 {
			continue
		}
		words := fmt.Sprintf("%s without the %s", what, p.name)
		if !d.right {
			words += ", " + d.words
		}
		out = append(out, way{100 * (m.of(which) - p.grams) / d.grams, words, words, !d.right})
	}
	return out
}

// shareHeader is a header that says itself of what a percent of an ingredient is:
// "GMS % of fat part".
var shareHeader = pattern.Of(`(?i)^(.+?)\s*(?:%|percent)\s*of\s+(?:the\s+)?(fat|butter|oil|water|mix)`)

// partPercents holds the percents of single ingredients against their grams.
func (j *job) partPercents() {
	for _, col := range j.table.Columns {
		name, basis, ok := j.shareOf(col)
		if !ok {
			continue
		}
		same := func(p *part) bool { return p.what.Name == name && p.what.Kind != ingredient.Other }
		if len(j.mixes) == 0 || j.mixes[0][0].of(same) == 0 {
			continue
		}
		j.column(col, criteria.Emulsifier, func(i int) (expected, bool) {
			return j.share(i, same, basis, max(j.rules.EmulsifierWithin, 0.01*j.mixes[i][0].of(same)/3), "the "+name)
		})
	}
}

// shareOf is the ingredient of which a column gives percents, and of what they are.
func (j *job) shareOf(col *handin.Column) (name string, basis column.Basis, ok bool) {
	f := col.Field
	if f != nil && col.Role == column.IngredientAmount {
		return f.What.Name, j.basisOf(col), !f.InGrams && f.What.Name != "" && strings.Contains(col.Whole, "%")
	}
	m := shareHeader.FindStringSubmatch(col.Header)
	if m == nil || col.Role == column.EmulsifierAmount {
		return "", basis, false
	}
	found, known := ingredient.Lookup(m[1])
	basis = map[string]column.Basis{"water": column.OfWater, "mix": column.OfMix}[strings.ToLower(m[2])]
	if basis == column.NoBasis {
		basis = column.OfFat
	}
	return found.Name, basis, known
}
