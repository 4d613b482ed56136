package recalc

import (
	"fmt"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
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
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// blends holds blend HLBs against the grams of the emulsifiers: the mass-weighted
// mean of their HLBs (Griffin 1954, J. Soc. Cosmet. Chem. 5:249-256).
func (j *job) blends() {
	for _, col := range j.Table.All(column.BlendHLB) {
		j.notNamed(col)
		with := j.constants(col)
		j.askForeign(col, with)
		from := len(j.Out)
		j.wholeNumbers(col, with)
		j.known(col, criteria.HLB, func(i int) (verdict.Expected, bool) {
			e, ok := j.blend(i, with)
			e.Within = max(e.Within, wholeHalf(col.Cells[i])) // said once, of all of them
			return e, ok
		})
		j.headsOrSums(col, from)
		j.gramsOrSum(col, from)
		j.gramsOrTyped(col, from)
		j.neverChanges(col, with)
	}
}

// wholeFormula rounds to whole numbers.
var wholeFormula = pattern.Of(`(?i)^=?\s*(?:ROUND(?:UP|DOWN)?\(.*[,;]\s*0\s*\)|INT\(.*\)|TRUNC\([^,;]*\)|RUNDEN\(.*;\s*0\s*\)|ARRONDI\(.*;\s*0\s*\))$`)

// wholeHalf is what a formula that rounds to whole numbers may be off; 0 for any other cell.
func wholeHalf(c handin.Cell) float64 {
	if c.Formula != "" && wholeFormula.MatchString(c.Formula) {
		return 0.5
	}
	return 0
}

// wholeNumbers asks of blends that their formula rounds to whole numbers, so that blends that
// differ look the same.
func (j *job) wholeNumbers(col *handin.Column, with constants) {
	var off []handin.Cell
	right, seen := math.NaN(), map[float64]float64{}
	differ := false
	for i, c := range col.Cells {
		h, ok := mixture.BlendOf(&j.mixes[i][0], with.hlb)
		if !ok || !c.Known || wholeHalf(c) == 0 || math.Abs(h-c.Value) > 1 || math.Abs(h-c.Value) < 0.04 {
			continue
		}
		if was, again := seen[c.Value]; again && math.Abs(was-h) > 0.04 {
			differ = true
		}
		seen[c.Value] = h
		if off = append(off, c); len(off) == 1 {
			right = h
		}
	}
	if len(off) < 2 || !differ && len(seen) < 2 {
		return
	}
	f := finding.Of(criteria.HLB, graded.Calculation, fmt.Sprintf("%s is rounded too far: its formula makes whole numbers of the blends, and this one is %s. Blends that differ look the same.", off[0].Text, verdict.DigitsOf(right, 2)), off[0]).ShouldBe(right).Kinds("rounding")
	for _, c := range off[1:] {
		f = f.And(c.At)
	}
	j.Out = append(j.Out, f)
}

// notNamed asks for the emulsifiers of which neither the name nor the HLB stands anywhere: no
// blend of them can be worked out again.
func (j *job) notNamed(col *handin.Column) {
	var at []trial.Place
	var heads []string
	for _, o := range j.Table.Weighed() {
		if what := &o.Field.What; what.WeighedAsEmulsifier() && what.HLB == nil && what.Name == "emulsifier" && o.Known() > 0 {
			at, heads = append(at, o.Heading), append(heads, say.Quoted(o.Header))
		}
	}
	if len(at) > 0 && col.Known() > 1 {
		j.Out = append(j.Out, finding.New(criteria.Parts, graded.Formal, fmt.Sprintf("Which emulsifiers are %s, and what are their HLBs? Without them nobody can work your blends out again.", say.List(heads)), append(at, col.Heading)...).Kinds("emulsifier not named"))
	}
}

// headsOrSums turns blends that are exchanged in every row into a question: the headers
// of the two emulsifiers may be, and then the sums are right.
func (j *job) headsOrSums(col *handin.Column, from int) {
	for k := from; k < len(j.Out); k++ {
		f := &j.Out[k]
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
		for _, o := range j.Table.Weighed() {
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
	for _, o := range j.Table.Weighed() {
		if o.Field.What.WeighedAsEmulsifier() && o.Known() >= 4 {
			grams = append(grams, o)
		}
	}
	for k := from; k < len(j.Out) && len(grams) == 2; k++ {
		f := &j.Out[k]
		i := slices.IndexFunc(col.Cells, func(c handin.Cell) bool { return c.At == f.At })
		if !strings.Contains(f.Words, "are exchanged") || len(f.Cells) != 1 || i < 0 || inOrder(grams[0], -1) || !inOrder(grams[0], i) || inOrder(grams[1], -1) || !inOrder(grams[1], i) || !inOrder(col, -1) {
			continue
		}
		f.Certain = false
		f.Words += ". The blend fits the trials above and below, and the grams do not: are the two grams exchanged, or is the blend?"
		*f = f.And(grams[0].Cells[i].At, grams[1].Cells[i].At)
	}
}

// gramsOrTyped turns a typed blend that is exchanged in one row into a question: nothing in the
// row says whether its grams are exchanged or its blend. Where the grams go step by step it is
// the blend.
func (j *job) gramsOrTyped(col *handin.Column, from int) {
	for _, o := range j.Table.Weighed() {
		if o.Field.What.WeighedAsEmulsifier() && o.Known() >= 4 && inOrder(o, -1) {
			return
		}
	}
	for k := from; k < len(j.Out); k++ {
		f := &j.Out[k]
		i := slices.IndexFunc(col.Cells, func(c handin.Cell) bool { return c.At == f.At })
		if !f.Certain || !strings.Contains(f.Words, "are exchanged") || len(f.Cells) != 1 || i < 0 || col.Cells[i].Formula != "" || overFormulas(col) {
			continue
		}
		f.Certain = false
		f.Words += ". Are the two grams exchanged in the log, or only in your sum?"
		for _, o := range j.Table.Weighed() {
			if o.Field.What.WeighedAsEmulsifier() && o.Cells[i].Value > 0 {
				*f = f.And(o.Cells[i].At)
			}
		}
	}
}

// overFormulas reports a column most of whose cells are formulas: a number typed among them is
// what is wrong.
func overFormulas(col *handin.Column) bool {
	n := 0
	for _, c := range col.Cells {
		if c.Formula != "" {
			n++
		}
	}
	return 2*n > len(col.Cells)
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
		em := m.Of(mixture.IsEmulsifier)
		k := slices.IndexFunc(m.Parts, func(p mixture.Part) bool { return mixture.IsEmulsifier(&p) })
		if !c.Known || em <= 0 || k < 0 || m.Parts[k].Grams >= em || m.Parts[k].Grams <= 0 || m.Open {
			continue
		}
		if len(at) > 0 && math.Abs(c.Value-at[0].Value) > 1e-9 {
			return
		}
		at = append(at, c)
		share := m.Parts[k].Grams / em
		n, low, high = n+1, min(low, share), max(high, share)
	}
	if n < 3 || high-low < 0.1 {
		return
	}
	f := finding.Of(criteria.HLB, graded.Calculation, fmt.Sprintf("%s stands in every row, and the grams of the emulsifiers change. Is it a plain mean? By grams it would change with them.", finding.Typed(at[0]).String()), at[0]).Kinds("blend that never changes")
	for _, c := range at[1:] {
		f = f.And(c.At)
	}
	j.Out = append(j.Out, f)
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
	for k := range j.mixes[0][0].Parts {
		p := &j.mixes[0][0].Parts[k]
		v, ok := with.hlb[p.Name]
		if !ok || p.HLB == nil || v >= p.HLB.Low-1e-9 && v <= p.HLB.High+1e-9 {
			continue
		}
		words := fmt.Sprintf("Your blends agree with an HLB of %s for %s, where %s is usual. Whose value is it? Write it on a sheet Ingredients.", verdict.Num(v), p.Said(), verdict.Num(p.HLB.Value))
		j.Out = append(j.Out, finding.New(criteria.HLB, graded.Calculation, words, col.Heading).Kinds("another HLB"))
	}
}

func (j *job) constants(col *handin.Column) constants {
	best, most, rows := map[string]float64{}, -1, 0
	for _, with := range j.choices(col) {
		hit := 0
		rows = 0
		typed := map[float64]bool{}
		for i, c := range col.Cells {
			h, ok := mixture.BlendOf(&j.mixes[i][0], with)
			if !c.Known || !ok {
				continue
			}
			rows++
			if math.Abs(h-c.Value) <= max(c.Half, wholeHalf(c), 0.011)+verdict.Slack(1) {
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
	return slices.ContainsFunc(j.mixes[0][0].Parts, func(p mixture.Part) bool {
		v, ok := with[p.Name]
		return ok && (p.HLB == nil || v < p.HLB.Low-1e-9 || v > p.HLB.High+1e-9)
	})
}

// unknown reports HLBs of which one is known from the student's blends alone.
func (j *job) unknown(with map[string]float64) bool {
	return slices.ContainsFunc(j.mixes[0][0].Parts, func(p mixture.Part) bool {
		_, ok := with[p.Name]
		return ok && p.HLB == nil
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
	for k := range j.mixes[0][0].Parts {
		p := &j.mixes[0][0].Parts[k]
		if !mixture.IsEmulsifier(p) || j.ownColumn(j.Table.Weighed()[k]) {
			continue // trial by trial it is what its own column says
		}
		values := j.solved(col, k)
		if used := j.literals(col, k, false); overFormulas(col) && len(used) > 0 { // the formulas show with what they reckon
			values = slices.DeleteFunc(values, func(v float64) bool { return !has(used, v) })
		}
		if p.HLB != nil {
			values = append([]float64{p.HLB.Value, p.HLB.Low, p.HLB.High}, values...)
		} else if len(values) == 0 {
			continue
		}
		var more []map[string]float64
		for _, chosen := range out {
			for _, v := range values {
				with := maps.Clone(chosen)
				with[p.Name] = v
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
		if !c.Known || k >= len(m.Parts) || m.Parts[k].Grams <= 0 {
			continue
		}
		sum, rest := 0.0, 0.0
		for n := range m.Parts {
			p := &m.Parts[n]
			if p.HLB == nil && n != k || p.Grams <= 0 {
				continue
			}
			sum += p.Grams
			if n != k {
				rest += p.Grams * p.HLB.Value
			}
		}
		p := &m.Parts[k]
		low, high := 0.0, float64(ingredient.MostHLB) // nothing is known of it
		if p.HLB != nil {
			low, high = p.HLB.Low-foreign, p.HLB.High+foreign
		}
		if h := math.Round(10*(c.Value*sum-rest)/p.Grams) / 10; h >= low && h <= high && h > 0 && !slices.Contains(out, h) && len(out) < 6 {
			out = append(out, h)
		}
	}
	return out
}

func (j *job) blend(i int, with constants) (verdict.Expected, bool) {
	e := verdict.Expected{Within: j.rules.HLBWithin, Digits: 2, Guess: with.few}
	if !with.sure && j.unknown(with.hlb) {
		return e, false
	}
	for k := range j.mixes[i] {
		m := &j.mixes[i][k]
		h, ok := mixture.BlendOf(m, with.hlb)
		if !ok {
			return e, false
		}
		right := verdict.Exactly(h)
		if !with.sure {
			right = mixture.RangeOf(m, h)
		}
		e.Rights = append(e.Rights, right)
		if e.How == "" {
			e.How = mixture.BlendWritten(m, with.hlb)
		}
		e.Ways = append(e.Ways, mixture.BlendWays(m, with.hlb)...)
	}
	e.Ways = append(e.Ways, verdict.Slips(e.Rights[0].Value)...)
	e.Ways = append(e.Ways, j.otherRows(i, func(m *mixture.Mixture) float64 {
		h, ok := mixture.BlendOf(m, with.hlb)
		if !ok {
			return math.NaN()
		}
		return h
	})...)
	return e, true
}
