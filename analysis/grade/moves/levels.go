package moves

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// twoLevels are a level with its unit and what it is of, and the other level behind "than":
// "the foams with 3 g emulsifier held longer than those with 6 g".
var (
	twoLevels = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(%|g|grams?|percent)\s+(?:of )?(?:the )?(\p{L}+(?: \d{2})?)\b[^.;]*?\bthan\b[^.;\d]{0,40}?(\d+(?:[.,]\d+)?)\s*(?:%|g\b|grams?\b|percent\b)`)
	twoHLBs   = pattern.Of(`(?i)\bhlb\s*(?:of |=|around |about )?(\d+(?:[.,]\d+)?)()()\b[^.;]*?\bthan\b[^.;\d]{0,40}?(\d+(?:[.,]\d+)?)`)
)

// Levels holds foams at one level that are said to do better than those at another against the means of both.
func Levels(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	m, grew, says := effect(s.Low)
	d := j.DesignOf(s)
	if m == evidence.NoMeasure || d == nil || s.NotClaimed() || len(sentence.Mentions(j.Work, s)) > 0 {
		return f, false
	}
	for _, re := range []*pattern.Pattern{twoLevels, twoHLBs} {
		p := re.FindStringSubmatch(s.Text)
		if p == nil {
			continue
		}
		one, other := j.atLevel(d, p[1], p[2], p[3]), j.atLevel(d, p[4], p[2], p[3])
		if len(one) == 0 || len(other) == 0 || slices.ContainsFunc(one, func(x *handin.Trial) bool { return slices.Contains(other, x) }) {
			continue
		}
		a, first := j.meanSeen(one, m, grew)
		b, second := j.meanSeen(other, m, !grew)
		if by := a - b; !first || !second || grew && by >= -j.Margin(d, m) || !grew && by <= j.Margin(d, m) {
			continue
		}
		return ground.About(fmt.Sprintf("“%s”: in your log %s is %s on average of the first (%s) and %s of the others (%s).", s.Said, says,
			say.Number(math.Round(10*a)/10), strings.Join(handin.ShortIDs(one), ", "), say.Number(math.Round(10*b)/10), strings.Join(handin.ShortIDs(other), ", ")), s, "comparison"), true
	}
	return f, false
}

// atLevel are the trials with emulsifier whose amount of something is a level that was typed.
func (j *judge) atLevel(d *method.Design, typed, unit, of string) (out []*handin.Trial) {
	level := ground.FirstNumber([]string{typed})
	near := func(v float64) bool { return math.Abs(v-level) <= max(0.05, 0.03*level) }
	of = strings.ToLower(of)
	for i, x := range d.Trials {
		if x.Bare() || x.IsControl() {
			continue
		}
		at := false
		switch {
		case unit == "":
			at = math.Abs(d.At(i, method.HLB)-level) <= 0.3
		case strings.HasPrefix(unit, "g"):
			at = slices.ContainsFunc(gramsNamed(x, of), near)
		case of == "emulsifier" || of == "emulsifiers":
			at = near(d.At(i, method.Emulsifier))
		case of == "fat" || of == "butter" || of == "oil":
			at = math.Abs(d.At(i, method.Fat)-level) <= 1.2 || math.Abs(ground.WeighedFatOf(x)-level) <= 1.2
		}
		if at {
			out = append(out, x)
		}
	}
	return out
}

// gramsNamed are the grams of a trial that a word may mean: of the emulsifiers together, or of one ingredient.
func gramsNamed(x *handin.Trial, of string) (out []float64) {
	together := 0.0
	for _, c := range x.Table.Weighed() {
		cell := c.Cells[x.Index]
		if !cell.Known {
			continue
		}
		if c.Field.What.WeighedAsEmulsifier() {
			together += cell.Value
		}
		if strings.Contains(strings.ToLower(c.Field.Called()+" "+c.Field.What.Name), of) {
			out = append(out, cell.Value)
		}
	}
	if strings.HasPrefix(of, "emulsifier") {
		return []float64{together}
	}
	return out
}

// meanSeen is the mean result of some trials; of bounds what speaks most for it being large, or small.
func (j *judge) meanSeen(all []*handin.Trial, m evidence.Measure, large bool) (mean float64, ok bool) {
	n := 0.0
	for _, x := range all {
		low, high, seen := j.Seen(x, m)
		switch {
		case !seen:
			continue
		case large:
			mean += high
		default:
			mean += low
		}
		n++
	}
	return mean / n, n > 0
}
