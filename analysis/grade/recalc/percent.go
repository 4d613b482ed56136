package recalc

import (
	"cmp"
	"fmt"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
)

// totals holds the student's totals against the sums of the grams.
func (j *job) totals() {
	col := j.Table.Find(column.BatchMass)
	if col == nil || !j.sumsUp(col) {
		return
	}
	left, always := j.leftOut(col)
	j.Column(col, criteria.Total, func(i int) (verdict.Expected, bool) {
		m := &j.mixes[i][0]
		if m.Open || m.Sum <= 0 || len(m.Parts) < 2 || col.Cells[i].Value < m.Sum && wentOff.MatchString(j.Table.Trials[i].Note) {
			return verdict.Expected{}, false
		}
		e := verdict.Expected{How: m.Listed(mixture.AnyPart), Digits: 1, Within: j.totalWithin(col, m.Sum)}
		if always {
			e.Ways = append(e.Ways, verdict.By(m.Sum-left.grams(m), "the sum without the "+left.said, "without "+left.said))
		}
		for k := range j.mixes[i] {
			e.Rights = append(e.Rights, verdict.Exactly(j.mixes[i][k].Sum))
			if g := j.emulsifiersTogether(i); g > 0 {
				e.Rights = append(e.Rights, verdict.Exactly(j.mixes[i][k].Sum+g))
			}
		}
		for k := range m.Parts {
			if p := &m.Parts[k]; p.Grams != 0 {
				e.Ways = append(e.Ways, verdict.By(m.Sum-p.Grams, "the sum without the "+p.Said(), "without "+p.Name),
					verdict.By(m.Sum+p.Grams, "the sum with the "+p.Said()+" counted twice", "twice "+p.Name))
			}
		}
		em := m.Of(mixture.IsEmulsifier)
		e.Ways = append(e.Ways, verdict.By(m.Sum-em, "the sum without the emulsifiers", "without emulsifiers"))
		e.Ways = append(e.Ways, j.otherRows(i, func(o *mixture.Mixture) float64 { return o.Sum })...)
		e.Ways = append(e.Ways, verdict.Slips(m.Sum)...)
		return e, true
	})
}

// wentOff is why a mix weighs less than what went into it.
var wentOff = pattern.Of(`(?i)\b(?:evaporat\w*|boil(?:ed|ing)?[- ](?:off|away|down)|(?:gone|lost|went off|off) as steam|lost (?:on|in|by|while|during) (?:heating|cooking|boiling)|water lost|weighed after|verdampf\w*|verdunstet|eingekocht|évapor\w*|evapor\w*|verdampt|ingekookt|spil(?:t|led)\b|stuck to|left in the (?:pan|pot|bowl))\b`)

// emulsifiersTogether are the grams of emulsifier in one column, where none is weighed by
// its name.
func (j *job) emulsifiersTogether(i int) (g float64) {
	if j.hasEmulsifiers() {
		return 0
	}
	for _, col := range j.Table.All(column.EmulsifierAmount) {
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
		if m := &j.mixes[i][0]; c.Known && !m.Open && m.Sum > 0 {
			n++
			if math.Abs(c.Value-m.Sum) <= max(0.02*m.Sum, 2) {
				near++
			}
		}
	}
	_, without := j.leftOut(col)
	return n > 0 && 2*near >= n && near > 0 || without
}

// omitted is what totals leave out.
type omitted struct {
	said  string
	grams func(m *mixture.Mixture) float64
}

// leftOut is the one ingredient, or else the emulsifiers, without which totals are the sum of
// the grams in every row.
func (j *job) leftOut(col *handin.Column) (left omitted, ok bool) {
	if len(j.mixes) < 3 || col.Known() < len(col.Cells) {
		return left, false
	}
	without := func(grams func(m *mixture.Mixture) float64) bool {
		left := 0
		for i, c := range col.Cells {
			m := &j.mixes[i][0]
			g := grams(m)
			if m.Open || math.Abs(c.Value-(m.Sum-g)) > max(c.Half, 0.06) {
				return false
			}
			if g > 0.5 {
				left++
			}
		}
		return left >= 3
	}
	for k := range j.mixes[0][0].Parts {
		if left = (omitted{j.mixes[0][0].Parts[k].Said(), func(m *mixture.Mixture) float64 { return m.Parts[k].Grams }}); without(left.grams) {
			return left, true
		}
	}
	left = omitted{"emulsifiers", func(m *mixture.Mixture) float64 { return m.Of(mixture.IsEmulsifier) }}
	return left, without(left.grams)
}

// totalWithin is what a total may be off: little where the others of its column are
// exact, what weighing loses where they are not.
func (j *job) totalWithin(col *handin.Column, sum float64) float64 {
	exact, n := 0, 0
	for i, c := range col.Cells {
		if m := &j.mixes[i][0]; c.Known && !m.Open {
			n++
			if math.Abs(c.Value-m.Sum) <= c.Half+0.051 {
				exact++
			}
		}
	}
	half := 0.0
	for _, c := range col.Cells {
		half = max(half, min(c.Half, 0.5))
	}
	if _, without := j.leftOut(col); without || 2*exact > n { // weighing loses no one part in every row
		return half + 0.051
	}
	return max(half+0.051, j.rules.TotalWithin/100*sum)
}

// otherRows are what the other rows of the table have: a value copied from one, or a
// formula that points at it.
func (j *job) otherRows(i int, value func(*mixture.Mixture) float64) (out []verdict.Way) {
	const near = 30 // rows: nobody copies from further off
	for k := max(0, i-near); k < min(len(j.mixes), i+near); k++ {
		if k != i {
			out = append(out, verdict.Weakly(value(&j.mixes[k][0]), "what trial "+j.Name(k)+" has", "row of "+j.Name(k)))
		}
	}
	return out
}

// fats holds fat percents against the grams.
func (j *job) fats() {
	for _, col := range j.Table.All(column.FatPercent) {
		if col.Field == nil || len(j.Table.Weighed()) < 2 || strings.Contains(say.Fold(col.Header), "of fat") {
			continue // what is a percent of the fat is no percent of fat
		}
		if j.ofTheFatItself(col) {
			continue
		}
		if col.Field.InGrams {
			j.Column(col, criteria.Fat, j.fatOf)
			continue
		}
		asWeighed := j.said.asWeighed || saysPhase(col.Header)
		j.Column(col, criteria.Fat, j.ofLeft(col, func(i int) (verdict.Expected, bool) { return j.fat(i, asWeighed) }))
	}
}

// ofTheFatItself reports fat percents of what went in, not of the mix: another column beside
// them says that it is of the mix, and has less in every trial.
func (j *job) ofTheFatItself(col *handin.Column) bool {
	if col.Field.InGrams || ofMixHead.MatchString(col.Whole) {
		return false
	}
	return slices.ContainsFunc(j.Table.All(column.FatPercent), func(o *handin.Column) bool {
		n := 0
		for i, c := range col.Cells {
			if x := o.Cells[i]; c.Known && x.Known {
				if n++; c.Value <= x.Value {
					return false
				}
			}
		}
		return o != col && o.Field != nil && !o.Field.InGrams && n >= 2 && ofMixHead.MatchString(o.Whole)
	})
}

// ofMixHead is a header that says that its percents are of the mix.
var ofMixHead = pattern.Of(`(?i)\b(?:of|in) (?:the )?(?:whole |total |finished )?(?:mix|mixture|total|batch|foam)\b`)

// ownFat is the cell of a trial in which the student has the grams of fat.
func (j *job) ownFat(i int) handin.Cell {
	for _, col := range j.Table.All(column.FatPercent) {
		if col.Field != nil && col.Field.InGrams {
			return col.Cells[i]
		}
	}
	return handin.Cell{}
}

// fatOf is the grams of fat in a mix.
func (j *job) fatOf(i int) (e verdict.Expected, ok bool) {
	e = verdict.Expected{Within: 0.6, Digits: 1}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		fat, known := m.FatGrams()
		if !known || m.Open {
			return e, false
		}
		e.Rights = append(e.Rights, verdict.Accepted(fat))
		if e.How == "" {
			e.How = m.FatWritten()
		}
		e.Ways = append(e.Ways, verdict.By(m.Of(mixture.IsFat), "the grams of "+m.Names(mixture.IsFat)+", as if all of it were fat", "all fat"))
		for _, o := range mixture.OtherFats(m) {
			e.Ways = append(e.Ways, verdict.By(o.Grams, o.Words, o.Class))
		}
		e.Ways = append(e.Ways, verdict.Slips(fat.Value)...)
	}
	return e, e.Rights[0].Value > 0
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

func (j *job) fat(i int, asWeighed bool) (verdict.Expected, bool) {
	first := &j.mixes[i][0]
	if first.Open {
		return verdict.Expected{}, false
	}
	e := verdict.Expected{Within: j.rules.FatWithin, Digits: 1, Guess: j.unsaid || j.Table.Unclear(i)} // what nobody knows may have fat
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		fat, ok := m.FatGrams()
		if !ok {
			return e, false
		}
		for _, d := range m.Denominators() {
			e.Rights = append(e.Rights, verdict.Between(100*fat.Low/d, 100*fat.Value/d, 100*fat.High/d))
			if asWeighed {
				e.Rights = append(e.Rights, verdict.Exactly(100*m.Of(mixture.IsFat)/d))
			}
			if e.How == "" {
				e.How = fmt.Sprintf("(%s) / %s × 100", m.FatWritten(), verdict.Num(d))
			}
		}
	}
	if g := j.ownFat(i); g.Known { // from the student's own grams of fat, which are looked at by themselves
		for _, d := range first.Denominators() {
			e.Rights = append(e.Rights, verdict.Exactly(100*g.Value/d))
		}
	}
	if len(e.Rights) == 0 || first.Of(mixture.IsFat) == 0 && e.Rights[0].Value == 0 {
		return e, false
	}
	for k := range j.mixes[i] {
		e.Ways = append(e.Ways, mixture.FatWays(&j.mixes[i][k])...)
	}
	e.Ways = append(e.Ways, j.otherRows(i, func(m *mixture.Mixture) float64 {
		fat, ok := m.FatGrams()
		if d := m.Denominators(); ok && len(d) > 0 {
			return 100 * fat.Value / d[0]
		}
		return math.NaN()
	})...)
	return e, true
}

// emulsifiers holds emulsifier percents, and their grams together, against the grams.
func (j *job) emulsifiers() {
	for _, col := range j.Table.All(column.EmulsifierAmount) {
		if col.Field == nil || !j.hasEmulsifiers() {
			continue
		}
		if col.Field.InGrams && !j.percents(col) {
			j.known(col, criteria.Emulsifier, func(i int) (verdict.Expected, bool) { return j.emulsifierGrams(i) })
			continue
		}
		basis := j.basisOf(col)
		j.known(col, criteria.Emulsifier, j.ofLeft(col, func(i int) (verdict.Expected, bool) {
			return j.share(i, mixture.IsEmulsifier, basis, j.rules.EmulsifierWithin, "the emulsifiers")
		}))
	}
}

// percents reports a column without a unit that agrees, in more rows than with the grams of the
// emulsifiers, with what these are in percent.
func (j *job) percents(col *handin.Column) bool {
	if unitSaid.MatchString(col.Whole) || col.UnitBelow != "" {
		return false
	}
	grams, percents := 0, 0
	for i, c := range col.Cells {
		e, ok := j.emulsifierGrams(i)
		p, ok2 := j.share(i, mixture.IsEmulsifier, j.basisOf(col), j.rules.EmulsifierWithin, "")
		if !c.Known || !ok || !ok2 {
			continue
		}
		if _, wrong := verdict.Judge(c, e); !wrong {
			grams++
		}
		if _, wrong := verdict.Judge(c, p); !wrong {
			percents++
		}
	}
	return percents > grams
}

// unitSaid is a unit of grams in a header.
var unitSaid = pattern.Of(`(?i)\b(g|gr|gms?|grams?|gramm|kg|mg|oz)\b`)

// known judges a column of emulsifiers. Where grams of something that nobody knows stand in
// the mix and most cells do not agree, it may be an emulsifier, and the column is left alone: but
// not where its formulas show what was done.
func (j *job) known(col *handin.Column, look criteria.Look, expect func(i int) (verdict.Expected, bool)) {
	right, told, n := 0, 0, 0 // told are formulas that one way explains to the last digit
	for i, c := range col.Cells {
		if e, ok := expect(i); ok && c.Known && j.Table.Unclear(i) {
			n++
			switch v, wrong := verdict.Judge(c, e); {
			case !wrong:
				right++
			case c.Formula != "" && v.Way != nil && !v.Way.Weak:
				told++
			}
		}
	}
	if n == 0 || 2*(right+told) > n {
		j.Column(col, look, expect)
	}
}

func (j *job) hasEmulsifiers() bool {
	for _, c := range j.Table.Weighed() {
		if c.Field.What.WeighedAsEmulsifier() {
			return true
		}
	}
	return false
}

// basisOf is what a percent column says that its percents are of.
func (j *job) basisOf(col *handin.Column) column.Basis {
	b := col.Field.Basis
	header := strings.TrimRight(denied.ReplaceAllString(say.Fold(col.Header), ""), " )")
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

// denied is what a header says that its percents are not of: "% of the fat, not of the mix".
var denied = pattern.Of(`[\s,;(–-]*\b(?:not|nicht|pas|non|niet)\b[^,;)]*`)

// ofWhat is an ingredient that a header's percents are of.
var ofWhat = pattern.Of(`\bof (?:the )?(\p{L}+(?: \p{L}+)?)\)?$`)

func (j *job) emulsifierGrams(i int) (e verdict.Expected, ok bool) {
	m := &j.mixes[i][0]
	if m.Open {
		return e, false
	}
	e = verdict.Expected{Within: 0.06, Digits: 2, How: m.Listed(mixture.IsEmulsifier)}
	for k := range j.mixes[i] {
		e.Rights = append(e.Rights, verdict.Exactly(j.mixes[i][k].Of(mixture.IsEmulsifier)))
	}
	for k := range m.Parts {
		if p := &m.Parts[k]; mixture.IsEmulsifier(p) {
			e.Ways = append(e.Ways, verdict.By(p.Grams, "the "+p.Said()+" alone", "only "+p.Name))
		}
	}
	e.Ways = append(e.Ways, j.otherRows(i, func(o *mixture.Mixture) float64 { return o.Of(mixture.IsEmulsifier) })...)
	return e, true
}

// share is some parts in percent of a basis. Without one in the header it is of the
// mix, or of the fat where words beside the trials say so.
func (j *job) share(i int, which func(*mixture.Part) bool, basis column.Basis, within float64, what string) (e verdict.Expected, ok bool) {
	first := &j.mixes[i][0]
	if first.Open || first.Of(which) == 0 {
		return e, false
	}
	e = verdict.Expected{Within: within, Digits: 2}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		g := m.Of(which)
		for _, d := range j.bases(m, basis) {
			if d.grams <= 0 {
				continue
			}
			if d.right {
				e.Rights = append(e.Rights, verdict.Between(100*g/max(d.most, d.grams), 100*g/d.grams, 100*g/min(cmp.Or(d.least, d.grams), d.grams)))
				if e.How == "" {
					e.How = fmt.Sprintf("%s / %s × 100", summed(m.Listed(which)), verdict.Num(d.grams))
				}
			} else {
				e.Ways = append(e.Ways, verdict.By(100*g/d.grams, d.words, d.words))
			}
			e.Ways = append(e.Ways, partWays(m, which, d, what)...)
		}
		e.Ways = append(e.Ways, verdict.By(g, "the grams of "+what+", not a percent", "grams"))
	}
	if len(e.Rights) == 0 {
		return e, false
	}
	e.Ways = append(e.Ways, verdict.Slips(e.Rights[0].Value)...)
	e.Ways = append(e.Ways, j.otherRows(i, func(m *mixture.Mixture) float64 {
		if d := m.Denominators(); len(d) > 0 && basis != column.OfFat && basis != column.OfWater {
			return 100 * m.Of(which) / d[0]
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

	least, most float64 // where its own grams may vary
}

// bases are what a percent may be of, and whether that is right under the header.
func (j *job) bases(m *mixture.Mixture, basis column.Basis) (out []base) {
	mix := basis == column.OfMix || basis == column.NoBasis
	fat := basis == column.OfFat || basis == column.NoBasis && j.said.ofFat
	for _, d := range m.Denominators() {
		out = append(out, base{grams: d, right: mix, words: "of the mix, not " + basis.String()})
	}
	em := m.Of(mixture.IsEmulsifier)
	for _, d := range m.Denominators() {
		out = append(out, base{grams: d - em, words: "of the mix without its emulsifiers"})
	}
	pure, ok := m.FatGrams()
	if !ok {
		pure = verdict.Exactly(0)
	}
	beside := ", not of the mix"
	if !mix {
		beside = ", not " + basis.String()
	}
	return append(out, base{grams: m.Of(mixture.IsFat), right: fat, words: "of the " + m.Names(mixture.IsFat) + beside},
		base{grams: pure.Value, right: fat, words: "of the fat" + beside, least: pure.Low, most: pure.High},
		base{grams: m.Of(mixture.IsWater), right: basis == column.OfWater, words: "of the water part" + beside},
		base{grams: m.Of(mixture.IsWater) + m.Of(mixture.IsFat), words: "of fat and water without the rest"})
}

// summed is a sum as part of a calculation; one number needs no brackets.
func summed(terms string) string {
	if strings.Contains(terms, " ") {
		return "(" + terms + ")"
	}
	return terms
}

// partWays are a share with one of its parts left out.
func partWays(m *mixture.Mixture, which func(*mixture.Part) bool, d base, what string) (out []verdict.Way) {
	n := 0
	for k := range m.Parts {
		if which(&m.Parts[k]) && m.Parts[k].Grams > 0 {
			n++
		}
	}
	for k := range m.Parts {
		p := &m.Parts[k]
		if n < 2 || !which(p) || p.Grams == 0 {
			continue
		}
		words := fmt.Sprintf("%s without the %s", what, p.Said())
		if !d.right {
			words += ", " + d.words
		}
		out = append(out, verdict.Either(100*(m.Of(which)-p.Grams)/d.grams, words, words, !d.right))
	}
	return out
}

// shareHeader is a header that says itself of what a percent of an ingredient is:
// "GMS % of fat part".
var shareHeader = pattern.Of(`(?i)^(.+?)\s*(?:%|percent)\s*of\s+(?:the\s+)?(fat|butter|oil|water|mix)`)

// partPercents holds the percents of single ingredients against their grams.
func (j *job) partPercents() {
	for _, col := range j.Table.Columns {
		name, basis, ok := j.shareOf(col)
		if !ok {
			continue
		}
		same := func(p *mixture.Part) bool { return p.What.Name == name && p.What.Kind != ingredient.Other }
		if len(j.mixes) == 0 || j.mixes[0][0].Of(same) == 0 {
			continue
		}
		if basis == column.NoBasis {
			basis = cmp.Or(hundred(col.Whole), j.said.hundred)
		}
		from := len(j.Out)
		j.Column(col, criteria.Emulsifier, func(i int) (verdict.Expected, bool) {
			return j.share(i, same, basis, max(j.rules.EmulsifierWithin, 0.01*j.mixes[i][0].Of(same)/3), "the "+name)
		})
		for k := from; k < len(j.Out) && basis == column.NoBasis; k++ {
			// Nobody said of what the percents are: where they all are of one thing, they may be right.
			if f := &j.Out[k]; f.Certain && len(f.Cells) >= 3 && len(f.Cells) >= col.Known()-1 {
				f.Certain, f.Words = false, f.Words+". Nothing says of what these percents are: did you mean them so? Then write it in the header."
			}
		}
	}
}

// reckonedFrom is what all else is reckoned in percent of: "baker's %, milk = 100".
var (
	reckonedFrom = pattern.Of(`(?i)\b(\p{L}+(?: \p{L}+)?)\s*(?:=|\bis\b|\bas\b|\bset to\b)\s*100\b`)
	ofItself     = pattern.Of(`(?i)^(?:[.,]\d|\s*(?:(?:%|per ?cent)\s*\(?\pL|[°º]|(?:g|grams?|gr|ml|kg|fat|pure)\b))`) // grams, or what fat something has
)

// hundred is the basis that words make 100 of; NoBasis where they say nothing of it.
func hundred(text string) column.Basis {
	for _, m := range reckonedFrom.FindAllStringSubmatchIndex(text, -1) {
		if ofItself.MatchString(text[m[1]:]) {
			continue
		}
		words := strings.Fields(text[m[2]:m[3]])
		for k := range words {
			switch what, ok := ingredient.Lookup(strings.Join(words[k:], " ")); {
			case ok && what.Kind == ingredient.Fat:
				return column.OfFat
			case ok && what.Kind == ingredient.Water:
				return column.OfWater
			}
		}
	}
	return column.NoBasis
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
