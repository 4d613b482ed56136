package moves

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

// A trend is told in two halves: what the result did, and what was changed meanwhile. Both are said
// in many ways: "the stand time rose with the fat", "from 1 to 3 % emulsifier it drained more".

const (
	wentUp   = `(?:rises|rose|risen|rising|goes up|went up|going up|increases|increased|grows|grew|climbs|climbed|gets longer|got longer|became longer|becomes longer|improves|improved|lengthens|lengthened|gets higher|got higher|was higher|is higher|gets more|got more|doubled)`
	wentDown = `(?:falls|fell|fallen|falling|goes down|went down|going down|decreases|decreased|drops|dropped|sinks|sank|shrinks|shrank|declines|declined|gets shorter|got shorter|became shorter|becomes shorter|shortens|shortened|gets lower|got lower|was lower|is lower|gets less|got less|halved)`
	ofFat    = `(?:fat|butter|ghee|oil|cream|lard|margarine)`
	ofDose   = `(?:emulsifiers?|dose|dosage|powders?)`
)

var (
	holdMoves  = `(?:stand(?:ing)?[- ]?times?|stands?|hold(?:ing)?(?:[- ]times?)?|stability|life ?times?|life|foam(?:s)?['’]? (?:time|stability)|minutes|times?)`
	drainMoves = `(?:drained liquid|liquid(?: that)? drained|drained (?:part|share|amount|percent|ml|grams)|drainage|draining|liquid(?: loss)?|drip(?:ping|s)?|loss|run-?off|weeping|serum|wetness)`
	holdRose   = pattern.Of(`(?i)\b` + holdMoves + `\s+(?:\w+\s+){0,2}?` + wentUp + `\b`)
	holdSank   = pattern.Of(`(?i)\b` + holdMoves + `\s+(?:\w+\s+){0,2}?` + wentDown + `\b`)
	drainRose  = pattern.Of(`(?i)\b` + drainMoves + `\s+(?:\w+\s+){0,2}?` + wentUp + `\b`)
	overRose   = pattern.Of(`(?i)\b(?:overrun|foam volume|volume)\s+(?:\w+\s+){0,2}?` + wentUp + `\b`)
	overSank   = pattern.Of(`(?i)\b(?:overrun|foam volume|volume)\s+(?:\w+\s+){0,2}?` + wentDown + `\b`)
	drainSank  = pattern.Of(`(?i)\b` + drainMoves + `\s+(?:\w+\s+){0,2}?` + wentDown + `\b`)

	drivers = []driven{driver(method.Fat, ofFat), driver(method.Emulsifier, ofDose), driver(method.HLB, `(?:blend hlb|hlb)`)}
	atFat   = pattern.Of(`(?i)\bat (?:about )?(\d+(?:[.,]\d+)?)\s*% (?:of )?(?:fat|butter|oil)`)
	// ofBoth are words by which a trend has a turn in it.
	ofBoth = pattern.Of(`(?i)\b(first|then|until|up to|but|except|only|again|above|below|peak|maximum|optimum|before)\b`)
)

// driven is how sentences say that something was changed.
type driven struct {
	factor method.Factor
	with   *pattern.Pattern // "with the fat content", whichever way
	less   *pattern.Pattern // "with less fat"
	ends   *pattern.Pattern // "from 1 to 3 % emulsifier"
	moved  *pattern.Pattern // "as the fat went up"
	sank   *pattern.Pattern
	more   *pattern.Pattern // "the more butter I took"
}

func driver(f method.Factor, words string) driven {
	amount := `(?:'s)?(?: content| share| percent(?:age)?| level| %| amount)?`
	n := `(?:about |hlb )?(\d+(?:[.,]\d+)?)\s*(?:%|g)?`
	named := words
	if f == method.HLB {
		return driven{f,
			pattern.Of(`(?i)\b(?:with|along with) (?:the |a |its )?(?:rising |growing |increasing |higher |more )?` + named + `\b`),
			pattern.Of(`(?i)\bwith (?:the |a )?(?:less|lower|falling|decreasing|lower and lower) ` + named + `\b`),
			pattern.Of(`(?i)\bhlb (?:(?:went|goes|rose|rises|fell|falls|was raised|increased|decreased|changed|grew) )?(?:from |of )?` + n + `\s*(?:to|and|–|-)\s*` + n + `|\b(?:from|between) (?:an? )?hlb (?:of )?` + n + `\s*(?:to|and|–|-)\s*` + n),
			pattern.Of(`(?i)\b(?:as|when|while|if) (?:the |i |we )?(?:blend )?hlb ` + wentUp),
			pattern.Of(`(?i)\b(?:as|when|while|if) (?:the |i |we )?(?:blend )?hlb ` + wentDown),
			pattern.Of(`(?i)\bthe higher (?:the )?(?:blend )?hlb\b`)}
	}
	return driven{f,
		pattern.Of(`(?i)\b(?:with|along with) (?:the |a |its )?(?:rising |growing |increasing |higher |more |extra )?` + named + amount + `\b`),
		pattern.Of(`(?i)\bwith (?:the |a )?(?:less|lower|falling|decreasing) ` + named + `\b`),
		pattern.Of(`(?i)\b(?:from|between)\s+` + n + `\s*(?:of )?(?:` + named + `)?\s*(?:to|and|–|-|up to|down to)\s*` + n + `\s*(?:of )?` + named + `\b|\b` + named + amount + `(?: (?:went|goes|rose|rises|fell|falls|climbed|was raised|was increased|increased|decreased|changed|moved|varied|grew))? (?:from|between) ` + n + `\s*(?:to|and|–|-)\s*` + n),
		pattern.Of(`(?i)\b(?:as|when|while|if) (?:the |i |we )?` + named + amount + ` ` + wentUp + `|\b(?:as|when|while) (?:i|we) (?:add(?:ed)?|took|take|used?|put) more ` + named),
		pattern.Of(`(?i)\b(?:as|when|while|if) (?:the |i |we )?` + named + amount + ` ` + wentDown + `|\b(?:as|when|while) (?:i|we) (?:took|take|used?|put) less ` + named),
		pattern.Of(`(?i)\bthe (?:more|higher the) ` + named + `\b|\bthe (?:richer|fatter)\b`)}
}

// moved is what a sentence says a result did.
func moved(s sentence.Sentence) (m evidence.Measure, up bool) {
	n := 0
	for _, one := range []struct {
		re *pattern.Pattern
		m  evidence.Measure
		up bool
	}{{holdRose, evidence.Hold, true}, {holdSank, evidence.Hold, false}, {drainRose, evidence.Drained, true}, {drainSank, evidence.Drained, false}, {overRose, evidence.Overrun, true}, {overSank, evidence.Overrun, false}} {
		if one.re.MatchString(s.Low) {
			n, m, up = n+1, one.m, one.up
		}
	}
	if n == 0 {
		m, up, _ = effect(s.Low)
		return m, up
	}
	if n > 1 {
		return evidence.NoMeasure, false
	}
	return m, up
}

// driverOf is what a sentence says was changed meanwhile, and whether it grew; with the levels
// that it keeps to, NaN where it speaks of all.
func driverOf(s sentence.Sentence) (f method.Factor, up bool, low, high float64, ok bool) {
	low, high = math.NaN(), math.NaN()
	n := 0
	for _, d := range drivers {
		m := d.ends.FindStringSubmatch(s.Low)
		var ends []float64
		if m != nil {
			for _, x := range m[1:] {
				if v := ground.FirstNumber([]string{x}); x != "" && !math.IsNaN(v) {
					ends = append(ends, v)
				}
			}
		}
		switch {
		case len(ends) == 2 && ends[0] != ends[1]:
			f, up, low, high = d.factor, ends[1] > ends[0] || strings.Contains(s.Low, "between"), min(ends[0], ends[1]), max(ends[0], ends[1])
		case d.less.MatchString(s.Low), d.sank.MatchString(s.Low):
			f, up = d.factor, false
		case d.moved.MatchString(s.Low), d.more.MatchString(s.Low):
			f, up = d.factor, true
		case d.with.MatchString(s.Low) && (holdRose.MatchString(s.Low) || holdSank.MatchString(s.Low) || drainRose.MatchString(s.Low) || drainSank.MatchString(s.Low)):
			f, up = d.factor, true
		default:
			continue
		}
		n++
	}
	if _, _, all := changes(s.Low); all > 1 {
		return f, up, low, high, false // "more butter longer, a higher HLB shorter"
	}
	return f, up, low, high, n == 1
}

// Trend holds "the stand time rose with the fat" against the trials in which that alone was changed.
func Trend(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	m, grew := moved(s)
	factor, up, low, high, said := driverOf(s)
	if m == evidence.NoMeasure || !said || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) {
		return f, false
	}
	if g, _, known := change(s.Low); known && g == factor {
		if e, _, _ := effect(s.Low); e != evidence.NoMeasure {
			return f, false // direction has it
		}
	}
	d := j.DesignOf(s)
	if d == nil || !d.Varies(factor) || math.IsNaN(low) && ofBoth.MatchString(s.Low) {
		return f, false
	}
	slack := map[method.Factor]float64{method.Fat: 1.5, method.Emulsifier: 0.15, method.HLB: 0.3}[factor]
	part := map[int]bool{}
	fixed := math.NaN()
	if m := atFat.FindStringSubmatch(s.Low); m != nil {
		fixed = ground.FirstNumber(m[1:])
	}
	for i, x := range d.Trials {
		v := d.At(i, factor)
		if factor == method.Fat && !math.IsNaN(low) && !(v >= low-slack && v <= high+slack) {
			v = ground.WeighedFatOf(x)
		}
		in := math.IsNaN(low) || v >= low-slack && v <= high+slack
		if factor != method.Fat && !math.IsNaN(fixed) {
			in = in && (math.Abs(d.At(i, method.Fat)-fixed) <= 1.5 || math.Abs(ground.WeighedFatOf(x)-fixed) <= 1.5 || ground.InRow(x, fixed))
		}
		part[i] = in
	}
	with, against, _ := j.pairs(d, factor, m, up == grew, part)
	switch {
	case against > 0 && with == 0:
		f = ground.About(fmt.Sprintf("“%s”: in your own trials it is the other way round: where only the %s was changed, %s.", s.Said, factor, j.example(d, factor, m, part)), s, "the other way round")
		f.Certain = against > 1 && !j.Slipped()
		return f, true
	case against > with:
		return ground.About(fmt.Sprintf("“%s”: %d of your comparisons say so and %d say the other. Which do you rest it on?", s.Said, with, against), s, "the other way round"), true
	}
	return f, false
}

// noEffect are words by which something is said to change nothing.
var noEffect = pattern.Of(`(?i)(\bno (?:effect|influence|difference|matter|impact|role)\b|\b(?:did|does|do) ?(?:not|n't) (?:matter|change|make (?:a|any) difference|play a role|affect|influence)\b|\bmakes? no difference\b|\bmade no difference\b|\bis unimportant\b|\bdoes nothing\b|\bdid nothing\b|\bindependent of\b|\bregardless of\b|\bwhatever the\b)`)

// Without holds "the HLB makes no difference" against the trials in which it alone was changed.
func Without(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	if !noEffect.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || len(sentence.Mentions(j.Work, s)) > 0 || strings.Contains(s.Low, "between") {
		return f, false
	}
	d := j.DesignOf(s)
	var factors []method.Factor
	for _, one := range subjects {
		if regexpFor(`\b` + one.words + `\b`).MatchString(s.Low) {
			factors = append(factors, one.factor)
		}
	}
	if d == nil || len(factors) != 1 {
		return f, false
	}
	if !d.Tried(factors[0]) && len(d.Trials) > 2 {
		return ground.About(fmt.Sprintf("“%s”: the %s was the same in every trial that had any. Which trials show it?", s.Said, factors[0]), s, "not tried").As(criteria.OneChange, graded.Method), true
	}
	if !d.Varies(factors[0]) {
		return f, false
	}
	m := evidence.Hold
	if drainWord.MatchString(s.Low) {
		m = evidence.Drained
	}
	up, down, n := j.pairs(d, factors[0], m, true, nil)
	if n == 0 || 2*(up+down) <= n {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: where only the %s was changed, %s. Is that no difference?", s.Said, factors[0], j.example(d, factors[0], m, nil)), s, "called alike"), true
}

var drainWord = pattern.Of(`(?i)\b(drain\w*|drip\w*|weep\w*|liquid|leak\w*|loss)\b`)
