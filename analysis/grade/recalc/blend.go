package recalc

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// blends holds blend HLBs against the grams of the emulsifiers: the mass-weighted
// mean of their HLBs (Griffin 1954, J. Soc. Cosmet. Chem. 5:249-256).
func (j *job) blends() {
	for _, col := range j.table.All(column.BlendHLB) {
		j.notNamed(col)
		with := j.constants(col)
		j.askForeign(col, with)
		from := len(j.out)
		j.column(col, criteria.HLB, func(i int) (expected, bool) { return j.blend(i, with) })
		j.headsOrSums(col, from)
		j.gramsOrSum(col, from)
		j.neverChanges(col, with)
	}
}

// notNamed asks for the emulsifiers of which neither the name nor the HLB stands anywhere: no
// blend of them can be worked out again.
func (j *job) notNamed(col *handin.Column) {
	var at []trial.Place
	var heads []string
	for _, o := range j.table.Weighed() {
		if what := &o.Field.What; what.WeighedAsEmulsifier() && what.HLB == nil && what.Name == "emulsifier" && o.Known() > 0 {
			at, heads = append(at, o.Heading), append(heads, say.Quoted(o.Header))
		}
	}
	if len(at) > 0 && col.Known() > 1 {
		j.out = append(j.out, finding.New(criteria.Parts, graded.Formal, fmt.Sprintf("Which emulsifiers are %s, and what are their HLBs? Without them nobody can work your blends out again.", say.List(heads)), append(at, col.Heading)...).Kinds("emulsifier not named"))
	}
}

// headsOrSums turns blends that are exchanged in every row into a question: the headers
// of the two emulsifiers may be, and then the sums are right.
func (j *job) headsOrSums(col *handin.Column, from int) {
	for k := from; k < len(j.out); k++ {
		f := &j.out[k]
		n := 0
		for _, c := range col.Cells {
			if c.Known && slices.Contains(f.Cells, cellname.Of(c.At.Row, c.At.Col)) {
				n++
			}
		}
		if !strings.Contains(f.Words, "are exchanged") || n < 3 || n < col.Known() {
			continue
		}
		f.Certain = false
		f.Words += ". It is so in every row: are the headers of the two emulsifiers exchanged, or the grams in your sum?"
		for _, o := range j.table.Weighed() {
			if o.Field.What.WeighedAsEmulsifier() {
				*f = f.And(o.Heading)
			}
		}
	}
}

// gramsOrSum turns one blend that is exchanged into a question, where the grams of its row
// leave the order of their column and the blend does not: then the grams may be exchanged.
func (j *job) gramsOrSum(col *handin.Column, from int) {
	var grams []*handin.Column
	for _, o := range j.table.Weighed() {
		if o.Field.What.WeighedAsEmulsifier() && o.Known() >= 4 {
			grams = append(grams, o)
		}
	}
	for k := from; k < len(j.out) && len(grams) == 2; k++ {
		f := &j.out[k]
		i := slices.IndexFunc(col.Cells, func(c handin.Cell) bool { return c.At == f.At })
		if !strings.Contains(f.Words, "are exchanged") || len(f.Cells) != 1 || i < 0 || inOrder(grams[0], -1) || !inOrder(grams[0], i) || inOrder(grams[1], -1) || !inOrder(grams[1], i) || !inOrder(col, -1) {
			continue
		}
		f.Certain = false
		f.Words += ". The blend fits the trials above and below, and the grams do not: are the two grams exchanged, or is the blend?"
		*f = f.And(grams[0].Cells[i].At, grams[1].Cells[i].At)
	}
}

// inOrder reports a column that only ever rises, or only ever falls, from trial to trial; 0
// and one row left out.
func inOrder(col *handin.Column, but int) bool {
	up, down, last := true, true, math.NaN()
	for i, c := range col.Cells {
		if i == but || !c.Known || c.Value == 0 {
			continue
		}
		up, down = up && !(c.Value <= last), down && !(c.Value >= last)
		last = c.Value
	}
	return up || down
}

// neverChanges asks of a blend that is the same in every row, while the grams of its
// emulsifiers are not and nobody knows their HLBs.
func (j *job) neverChanges(col *handin.Column, with constants) {
	if with.sure {
		return
	}
	n, low, high := 0, math.Inf(1), math.Inf(-1)
	var at []handin.Cell
	for i, c := range col.Cells {
		m := &j.mixes[i][0]
		em := m.of(isEmulsifier)
		k := slices.IndexFunc(m.parts, func(p part) bool { return isEmulsifier(&p) })
		if !c.Known || em <= 0 || k < 0 || m.parts[k].grams >= em || m.parts[k].grams <= 0 || m.open {
			continue
		}
		if len(at) > 0 && math.Abs(c.Value-at[0].Value) > 1e-9 {
			return
		}
		at = append(at, c)
		share := m.parts[k].grams / em
		n, low, high = n+1, min(low, share), max(high, share)
	}
	if n < 3 || high-low < 0.1 {
		return
	}
	f := finding.Of(criteria.HLB, graded.Calculation, fmt.Sprintf("%s stands in every row, and the grams of the emulsifiers change. Is it a plain mean? By grams it would change with them.", finding.Typed(at[0]).String()), at[0]).Kinds("blend that never changes")
	for _, c := range at[1:] {
		f = f.And(c.At)
	}
	j.out = append(j.out, f)
}

// constants are the HLBs that a student reckons with, by the name of the emulsifier:
// of those that a packet or a table may give, the ones that explain most cells. sure
// is false where they explain too few to be known.
type constants struct {
	hlb  map[string]float64
	sure bool
	few  bool // one of them is the student's alone, and few rows show it
}

// foreign is how far an HLB may be from what is known of an emulsifier and still be
// somebody's published value.
const foreign = 1.2

// askForeign asks whose HLB it is that most cells agree with and that is none of the
// values known here.
func (j *job) askForeign(col *handin.Column, with constants) {
	if !with.sure {
		return
	}
	for k := range j.mixes[0][0].parts {
		p := &j.mixes[0][0].parts[k]
		v, ok := with.hlb[p.name]
		if !ok || p.hlb == nil || v >= p.hlb.low-1e-9 && v <= p.hlb.high+1e-9 {
			continue
		}
		words := fmt.Sprintf("Your blends agree with an HLB of %s for %s, where %s is usual. Whose value is it? Write it on a sheet Ingredients.", num(v), p.name, num(p.hlb.value))
		j.out = append(j.out, finding.New(criteria.HLB, graded.Calculation, words, col.Heading).Kinds("another HLB"))
	}
}

func (j *job) constants(col *handin.Column) constants {
	best, most, rows := map[string]float64{}, -1, 0
	for _, with := range j.choices(col) {
		hit := 0
		rows = 0
		typed := map[float64]bool{}
		for i, c := range col.Cells {
			h, ok := blendOf(&j.mixes[i][0], with)
			if !c.Known || !ok {
				continue
			}
			rows++
			if math.Abs(h-c.Value) <= max(c.Half, 0.011)+slack(1) {
				hit++
				typed[c.Value] = true
			}
		}
		if j.outside(with) && (hit < 3 || len(typed) < 2) {
			continue // one blend agrees with something always
		}
		if hit > most {
			best, most = with, hit
		}
	}
	return constants{best, most >= 2 && 2*most > rows, most < 4 && j.unknown(best)}
}

// outside reports HLBs of which one is none of the values known here.
func (j *job) outside(with map[string]float64) bool {
	return slices.ContainsFunc(j.mixes[0][0].parts, func(p part) bool {
		v, ok := with[p.name]
		return ok && (p.hlb == nil || v < p.hlb.low-1e-9 || v > p.hlb.high+1e-9)
	})
}

// unknown reports HLBs of which one is known from the student's blends alone.
func (j *job) unknown(with map[string]float64) bool {
	return slices.ContainsFunc(j.mixes[0][0].parts, func(p part) bool {
		_, ok := with[p.name]
		return ok && p.hlb == nil
	})
}

// mostChoices bounds the choices of HLBs that are tried.
const mostChoices = 400

// choices are the HLBs that the emulsifiers of a table may have, together; the usual ones
// come first.
func (j *job) choices(col *handin.Column) []map[string]float64 {
	out := []map[string]float64{{}}
	if len(j.mixes) == 0 {
		return out
	}
	for k := range j.mixes[0][0].parts {
		p := &j.mixes[0][0].parts[k]
		if !isEmulsifier(p) {
			continue
		}
		values := j.solved(col, k)
		if p.hlb != nil {
			values = append([]float64{p.hlb.value, p.hlb.low, p.hlb.high}, values...)
		} else if len(values) == 0 {
			continue
		}
		var more []map[string]float64
		for _, chosen := range out {
			for _, v := range values {
				with := maps.Clone(chosen)
				with[p.name] = v
				more = append(more, with)
			}
		}
		out = more[:min(len(more), mostChoices)]
	}
	return out
}

// solved are the HLBs of one emulsifier that each row would have it be, the others
// taken as usual, where they are within its range or near.
func (j *job) solved(col *handin.Column, k int) (out []float64) {
	for i, c := range col.Cells {
		m := &j.mixes[i][0]
		if !c.Known || k >= len(m.parts) || m.parts[k].grams <= 0 {
			continue
		}
		sum, rest := 0.0, 0.0
		for n := range m.parts {
			p := &m.parts[n]
			if p.hlb == nil && n != k || p.grams <= 0 {
				continue
			}
			sum += p.grams
			if n != k {
				rest += p.grams * p.hlb.value
			}
		}
		p := &m.parts[k]
		low, high := 0.0, float64(ingredient.MostHLB) // nothing is known of it
		if p.hlb != nil {
			low, high = p.hlb.low-foreign, p.hlb.high+foreign
		}
		if h := math.Round(10*(c.Value*sum-rest)/p.grams) / 10; h >= low && h <= high && h > 0 && !slices.Contains(out, h) && len(out) < 6 {
			out = append(out, h)
		}
	}
	return out
}

// blendOf is the blend HLB of a mix; false where an HLB is not known or nothing has
// one.
func blendOf(m *mixture, with map[string]float64) (float64, bool) {
	sum, weighted := 0.0, 0.0
	for k := range m.parts {
		p := &m.parts[k]
		if p.grams == 0 || !isEmulsifier(p) {
			continue
		}
		h, ok := hlbOf(p, with)
		if !ok {
			return 0, false
		}
		sum, weighted = sum+p.grams, weighted+p.grams*h
	}
	return weighted / sum, sum > 0 && !m.open
}

func hlbOf(p *part, with map[string]float64) (float64, bool) {
	if v, ok := with[p.name]; ok {
		return v, true
	}
	if p.hlb == nil {
		return 0, false
	}
	return p.hlb.value, true
}

func (j *job) blend(i int, with constants) (expected, bool) {
	e := expected{within: j.rules.HLBWithin, digits: 2, guess: with.few}
	if !with.sure && j.unknown(with.hlb) {
		return e, false
	}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		h, ok := blendOf(m, with.hlb)
		if !ok {
			return e, false
		}
		right := exactly(h)
		if !with.sure {
			right = rangeOf(m, h)
		}
		e.rights = append(e.rights, right)
		if e.how == "" {
			e.how = blendWritten(m, with.hlb)
		}
		e.ways = append(e.ways, blendWays(m, with.hlb)...)
	}
	e.ways = append(e.ways, slips(e.rights[0].value)...)
	e.ways = append(e.ways, j.otherRows(i, func(m *mixture) float64 {
		h, ok := blendOf(m, with.hlb)
		if !ok {
			return math.NaN()
		}
		return h
	})...)
	return e, true
}

// rangeOf is the blend with the range its emulsifiers leave.
func rangeOf(m *mixture, value float64) accepted {
	low, high := map[string]float64{}, map[string]float64{}
	for k := range m.parts {
		if p := &m.parts[k]; p.hlb != nil {
			low[p.name], high[p.name] = p.hlb.low, p.hlb.high
		}
	}
	l, _ := blendOf(m, low)
	h, _ := blendOf(m, high)
	return accepted{min(l, value), value, max(h, value)}
}

// blendWritten writes the mean out: "(3.9 × 3.8 + 2.1 × 15) / 6".
func blendWritten(m *mixture, with map[string]float64) string {
	var terms []string
	sum := 0.0
	for k := range m.parts {
		if p := &m.parts[k]; isEmulsifier(p) && p.grams > 0 {
			h, _ := hlbOf(p, with)
			terms = append(terms, fmt.Sprintf("%s × %s", num(p.grams), num(h)))
			sum += p.grams
		}
	}
	return fmt.Sprintf("by grams (%s) / %s", strings.Join(terms, " + "), num(sum))
}

// blendWays are the ways a blend HLB goes wrong.
func blendWays(m *mixture, with map[string]float64) (out []way) {
	var ps []*part
	var hs []float64
	for k := range m.parts {
		if p := &m.parts[k]; isEmulsifier(p) && p.grams > 0 {
			h, _ := hlbOf(p, with)
			ps, hs = append(ps, p), append(hs, h)
		}
	}
	add := func(x float64, class, words string, weak bool) { out = append(out, way{x, words, class, weak}) }
	sum, weighted, plain := 0.0, 0.0, 0.0
	var list []string
	for k, p := range ps {
		sum, weighted, plain = sum+p.grams, weighted+p.grams*hs[k], plain+hs[k]
		list = append(list, num(hs[k]))
	}
	if len(ps) < 2 {
		return out
	}
	names := strings.Join(list, " and ")
	add(plain/float64(len(ps)), "plain mean", "the plain mean of "+names+", whatever they weigh", false)
	add(plain, "plain sum", "the sum of "+names, false)
	add(weighted, "not divided", "the weighted sum, not divided by the grams of the emulsifiers", false)
	for _, d := range m.denominators() {
		add(weighted/d, "over the mix", "weighted over the whole mix, not over the emulsifiers", false)
	}
	for _, d := range []float64{m.of(isFat), m.of(isWater)} {
		if d > 0 {
			add(weighted/d, "over a part", "weighted over a part of the mix, not over the emulsifiers", false)
		}
	}
	if len(ps) == 2 {
		add((ps[0].grams*hs[1]+ps[1].grams*hs[0])/sum, "exchanged", "what follows if the two grams are exchanged", false)
		if ps[0].grams != ps[1].grams {
			inverse := (hs[0]/ps[0].grams + hs[1]/ps[1].grams) / (1/ps[0].grams + 1/ps[1].grams)
			add(inverse, "exchanged", "what follows if the two grams are exchanged", false)
		}
		add(hs[0]*ps[0].grams/sum, "one term", "only the term of the "+ps[0].name, true)
		add(hs[1]*ps[1].grams/sum, "one term", "only the term of the "+ps[1].name, true)
	} else {
		for a := range ps {
			for b := range a {
				x := weighted + (hs[a]-hs[b])*(ps[b].grams-ps[a].grams)
				add(x/sum, "exchanged", fmt.Sprintf("what follows if the grams of %s and %s are exchanged", ps[b].name, ps[a].name), false)
			}
		}
		for k, p := range ps {
			add((weighted-p.grams*hs[k])/(sum-p.grams), "without "+p.name, "the blend without the "+p.name, false)
		}
	}
	for k, p := range ps {
		add(hs[k], "only "+p.name, "the HLB of the "+p.name+" alone", true)
	}
	return out
}
