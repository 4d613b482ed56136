package claim

import (
	"fmt"
	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
)

// holdUp and holdDown are what a hold does by itself.
var (
	holdUp   = pattern.Of(`(?i)\b(the|its|their|mean) (mean )?hold( time)? (rises|rose|goes up|went up|increases|increased|grows|grew)\b`)
	holdDown = pattern.Of(`(?i)\b(the|its|their|mean) (mean )?hold( time)? (falls|fell|goes down|went down|decreases|decreased|drops|dropped|sinks)\b`)
)

var (
	drainsLo = pattern.Of(`(?i)(\b(drain|drains|drained|weeps?|wept|leaks?|leaked)\b[^.]{0,8}\bless\b|\bless (drainage|draining|weeping|liquid)|\bless (water|serum|whey) (drained|drains|wept|leaked)\b|\b(reduce[sd]?|lower(s|ed)?) (the )?drain)`)
	drainsHi = pattern.Of(`(?i)(\b(drain|drains|drained|weeps?|wept|leaks?|leaked)\b[^.]{0,8}\bmore\b|\bmore (drainage|draining|weeping)|\bmore (liquid|water|serum|whey) (drained|drains|wept|leaked|ran out|came out)\b|\bincrease[sd]? (the )?drain)`)

	rises    = `(?: content| share| percent| %)? (?:rises|rose|goes up|went up|increases|increased|grows|grew|climbs)\b`
	falls    = `(?: content| share| percent| %)? (?:falls|fell|goes down|went down|decreases|decreased|drops|dropped|sinks)\b`
	upWord   = `(?:more|higher|increasing|increased|raising|adding|extra|greater|a higher|mehr|höherer|höhere|plus de|más|mas|più)`
	downWord = `(?:less|lower|decreasing|decreased|reducing|reduced|a lower|fewer|weniger|niedriger(?:er)?|moins de|menos|meno)`
	anyRange = pattern.Of(`(?i)(\bup to\b|\buntil\b|\bbut only\b|\bat first\b|\bexcept\b|\bunless\b|\bonly (when|if|at|with)\b)`)
)

// subjects are the words for what may be changed.
var subjects = []struct {
	factor method.Factor
	words  string
}{
	{method.Fat, `(?:butter ?fat|fat|butter|ghee|oil|fett|beurre|matière grasse|mantequilla|grasa|burro|grasso|grassi|coconut oil|olive oil)`},
	{method.Emulsifier, `(?:emulsifiers?|total emulsifier|emulgator|émulsifiant|emulsionante|emulgente|emulsifying agent)`},
	{method.HLB, `(?:blend hlb|hlb)`},
}

// change is what a sentence says was changed, and which way.
func change(low string) (f method.Factor, up, ok bool) {
	type one struct {
		f  method.Factor
		up bool
	}
	all := map[one]bool{}
	for _, s := range subjects {
		for _, way := range []struct {
			words, moves string
			up           bool
		}{{upWord, rises, true}, {downWord, falls, false}} {
			if regexpFor(`\b`+way.words+`\s+(?:the\s+|of the\s+|in\s+)?`+s.words+`\b`).MatchString(low) || regexpFor(`\b`+s.words+way.moves).MatchString(low) {
				all[one{s.factor, way.up}] = true
				f, up = s.factor, way.up
			}
		}
	}
	if len(all) != 1 {
		return f, up, false
	}
	for _, s := range subjects { // "more butter and emulsifier" is of both
		if s.factor != f && regexpFor(`\b`+s.words+`\b`).MatchString(low) && !regexpFor("same").MatchString(low) {
			return f, up, false
		}
	}
	return f, up, true
}

var compiled = map[string]*pattern.Pattern{}

func init() {
	compiled["same"] = pattern.Of(`(?i)\b(at|with|for) (the same|both|equal|every|each|all|a fixed|constant)\b`)
	for _, s := range subjects {
		compiled[`\b`+s.words+`\b`] = pattern.Of(`(?i)\b` + s.words + `\b`)
		for _, way := range []string{rises, falls} {
			compiled[`\b`+s.words+way] = pattern.Of(`(?i)\b` + s.words + way)
		}
		for _, way := range []string{upWord, downWord} {
			expr := `\b` + way + `\s+(?:the\s+|of the\s+|in\s+)?` + s.words + `\b`
			compiled[expr] = pattern.Of(`(?i)` + expr)
		}
	}
}

func regexpFor(expr string) *pattern.Pattern { return compiled[expr] }

// direction holds "more butter held longer" against the trials.
func (j *judge) direction(s sentence.Sentence, _ ownRule, _ evidence.Measure) (f finding.Found, ok bool) {
	factor, up, has := change(s.Low)
	m, better, says := effect(s.Low)
	if !has || m == evidence.NoMeasure || sentence.Unsure.MatchString(s.Low) || sentence.Denied.MatchString(s.Low) {
		return f, false
	}
	d := j.designOf(s)
	if d == nil {
		return f, false
	}
	if !d.Varies(factor) || !d.Separates(factor) {
		return j.notShown(s, d, factor)
	}
	part := j.spanOf(s, d, factor)
	with, against, n := j.pairs(d, factor, m, up == better, part)
	switch {
	case n == 0:
		return f, false
	case against > 0 && with == 0:
		return about(fmt.Sprintf("“%s”: in your own trials it is the other way round: where only the %s was changed, %s.", s.Said, factor, j.example(d, factor, m, part)), s, "the other way round").Unless(j.slipped()), true
	case against > with:
		return about(fmt.Sprintf("“%s”: %d of your comparisons say so and %d say the other. Which do you rest it on?", s.Said, with, against), s, "the other way round"), true
	case with == 0 && against == 0 && !anyRange.MatchString(s.Low):
		return about(fmt.Sprintf("“%s”: %s differs by no more than makings of one formula do. Is there a difference?", s.Said, says), s, "within the scatter"), true
	}
	return f, false
}

var (
	fromTo  = pattern.Of(`(?i)\b(?:from|between|in)\s+(?:trial\s+|test\s+)?([a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\s*(?:to|and|–|-|until|till|through)\s*(?:trial\s+|test\s+)?([a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b`)
	levels  = pattern.Of(`(?i)\b(?:from|between)\s+(?:about\s+|blend\s+)?(?:hlb\s+)?(\d+(?:[.,]\d+)?)\s*%?\s*(?:to|and|–|-)\s*(\d+(?:[.,]\d+)?)`)
	upUntil = pattern.Of(`(?i)\b(?:up to|above|over|below|under|beyond|past|after|until|at first|first|then|again)\b`)
)

// spanOf are the trials that a sentence keeps to, "from T3 to T6" or "between HLB 5 and
// 8"; nil where it speaks of all. A span that is not understood holds no trial.
func (j *judge) spanOf(s sentence.Sentence, d *method.Design, f method.Factor) map[int]bool {
	if m := fromTo.FindStringSubmatch(s.Text); m != nil {
		a, b := j.only(s, "trial "+m[1]), j.only(s, "trial "+m[2])
		from, to := slices.Index(d.Trials, a), slices.Index(d.Trials, b)
		if a != nil && b != nil && from >= 0 && to >= 0 {
			span := map[int]bool{}
			for i := min(from, to); i <= max(from, to); i++ {
				span[i] = true
			}
			return span
		}
	}
	span := map[int]bool{}
	if m := levels.FindStringSubmatch(s.Text); m != nil {
		low, high := firstNumber(m[1:2]), firstNumber(m[2:3])
		for i := range d.Trials {
			if v := d.At(i, f); v >= min(low, high)-0.2 && v <= max(low, high)+0.2 {
				span[i] = true
			}
		}
		return span
	}
	if upUntil.MatchString(s.Low) {
		return span
	}
	return nil
}

// notShown is a claim on a factor that the trials cannot show: it was hardly changed, or
// never without another.
func (j *judge) notShown(s sentence.Sentence, d *method.Design, factor method.Factor) (f finding.Found, ok bool) {
	if d.Varies(factor) {
		return about(fmt.Sprintf("“%s”: whenever the %s changed, %s changed too, so these trials do not show which of them did it. Change one of them alone.", s.Said, factor, say.List(d.Beside(factor))), s, "changed together").
			As(criteria.OneChange, graded.Method).Surely(), true
	}
	if low, high, known := d.Range(factor); known && high > low {
		return about(fmt.Sprintf("“%s”: the %s was hardly changed (%s to %s). Which trials show it?", s.Said, factor, say.Number(low), say.Number(high)), s, "not tried"), true
	}
	return f, false
}

// effect is the result that a sentence claims: of which measure, and whether it grew.
func effect(low string) (m evidence.Measure, grew bool, says string) {
	n := 0
	for _, e := range []struct {
		re   *pattern.Pattern
		m    evidence.Measure
		grew bool
		says string
	}{{holdUp, evidence.Hold, true, "the hold"}, {holdDown, evidence.Hold, false, "the hold"}, {sentence.Longer, evidence.Hold, true, "the hold"}, {sentence.Shorter, evidence.Hold, false, "the hold"}, {drainsLo, evidence.Drained, false, "the drainage"}, {drainsHi, evidence.Drained, true, "the drainage"}} {
		if e.re.MatchString(low) {
			if n > 0 && m == e.m && grew != e.grew {
				return evidence.NoMeasure, false, "" // "first longer, then shorter"
			}
			if n == 0 {
				m, grew, says = e.m, e.grew, e.says
			}
			n++
		}
	}
	if n > 3 {
		return evidence.NoMeasure, false, ""
	}
	return m, grew, says
}

// designOf is the design that a sentence speaks of: the only one, or that of the sheet
// it names.
func (j *judge) designOf(s sentence.Sentence) *method.Design {
	if len(j.Designs) == 1 {
		return &j.Designs[0]
	}
	var found *method.Design
	for i := range j.Designs {
		for _, x := range j.Designs[i].Trials {
			if name := strings.ToLower(x.At.Sheet); name != "" && strings.Contains(s.Low, name) || x.At.Sheet == s.At.Sheet && s.At.Sheet != "" {
				if found != nil && found != &j.Designs[i] {
					return nil
				}
				found = &j.Designs[i]
			}
		}
	}
	return found
}

// pairs counts the pairs of trials that differ in a factor alone, and whose results go
// with or against a claim by more than the scatter.
func (j *judge) pairs(d *method.Design, f method.Factor, m evidence.Measure, rises bool, part map[int]bool) (with, against, n int) {
	margin := j.Margin(d, m)
	alone := false
	for a := range d.Trials {
		for b := range a {
			alone = alone || d.Alone(a, b, f)
		}
	}
	for a, x := range d.Trials {
		for b := range a {
			y := d.Trials[b]
			if part != nil && !(part[a] && part[b]) || alone && !d.Alone(a, b, f) || !d.Differ(a, b, f) || d.Same(a, b) {
				continue
			}
			lowA, highA, okA := j.Seen(x, m)
			lowB, highB, okB := j.Seen(y, m)
			if !okA || !okB {
				continue
			}
			n++
			up := d.At(a, f) > d.At(b, f)
			switch {
			case lowA-highB > margin:
				count(up == rises, &with, &against)
			case lowB-highA > margin:
				count(up != rises, &with, &against)
			}
		}
	}
	return with, against, n
}

func count(yes bool, with, against *int) {
	if yes {
		*with++
	} else {
		*against++
	}
}

// example is the pair of trials that shows a factor most plainly.
func (j *judge) example(d *method.Design, f method.Factor, m evidence.Measure, part map[int]bool) string {
	best, words := 0.0, ""
	for a, x := range d.Trials {
		for b := range a {
			y := d.Trials[b]
			lowA, _, okA := j.Seen(x, m)
			lowB, _, okB := j.Seen(y, m)
			if !okA || !okB || part != nil && !(part[a] && part[b]) || !d.Alone(a, b, f) || math.Abs(lowA-lowB) <= best {
				continue
			}
			best = math.Abs(lowA - lowB)
			words = fmt.Sprintf("trial %s (%s %s) has %s %s and trial %s (%s) %s", y.ID, f, say.Number(d.At(b, f)), say.Number(lowB), j.Unit(m), x.ID, say.Number(d.At(a, f)), say.Number(lowA))
		}
	}
	return words
}

var (
	fatSaid = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s*(?:of\s+)?(fat|butter|oil|ghee)\b|\b(fat|butter|oil)\s*(?:content\s*)?(?:of|at|=|around|near|above|over)?\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent)`)
	emSaid  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent)\s*(?:of\s+)?emulsifier|\bemulsifier\s*(?:of|at|=|around|near|above)?\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent)`)
	hlbSaid = pattern.Of(`(?i)\bhlb\s*(?:of|at|=|around|near|about|is|was|above|over|:)?\s*(\d+(?:[.,]\d+)?)`)
	planned = pattern.Of(`(?i)(\bnext\b|\bshould (be )?(try|test|tried|tested)|\bwould (like|try|test)|\bto try\b|\bto test\b|\bnot (tried|tested)\b|\bplan\b|\bcurious\b|\buntested\b|\bwe could\b|\bi could\b|\?)`)
	packet  = pattern.Of(`(?i)(packet|pack|label|supplier|contains|wrapper|of the butter is|butter (is|has|with)|counted|taken as)`)
)

// states are verbs of a statement, which a list of ingredients lacks.
var states = pattern.Of(`(?i)\b(will|would|can|hold|holds|held|stand|stands|stood|lasts?|lasted|works?|worked|best|better|longest|gives?|gave|is|are|was|were|needs?|should|makes?|made|drains?|drained|proves?|proved|proof|guarantees?|shows?|beweist|hält|tient|aguanta|tiene)\b`)

// outside finds numbers that a conclusion speaks of and nobody tried.
func (j *judge) outside(s sentence.Sentence, _ ownRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if planned.MatchString(s.Low) || packet.MatchString(s.Low) || !states.MatchString(s.Low) || len(j.Designs) == 0 {
		return f, false
	}
	d := j.designOf(s)
	if d == nil {
		return f, false
	}
	for _, one := range []struct {
		factor method.Factor
		re     *pattern.Pattern
		slack  float64
		unit   string
	}{{method.Fat, fatSaid, 2, " %"}, {method.Emulsifier, emSaid, 0.3, " %"}, {method.HLB, hlbSaid, 0.6, ""}} {
		m := one.re.FindStringSubmatch(s.Text)
		low, high, known := d.Range(one.factor)
		if m == nil || !known || one.factor == method.HLB && ofIngredient.MatchString(s.Text) {
			continue
		}
		v := firstNumber(m[1:])
		if math.IsNaN(v) || j.isOwn(v, s, d) {
			continue
		}
		if one.factor == method.Fat {
			if low, high, known = triedFat(d); !known {
				continue
			}
		}
		if v < low-one.slack || v > high+one.slack {
			return about(fmt.Sprintf("“%s”: you tried %s from %s to %s%s, so nothing tells what happens at %s. Say it as a question to test, or keep to what you tried.",
				s.Said, one.factor, say.Number(math.Round(10*low)/10), say.Number(math.Round(10*high)/10), one.unit, say.Number(v)), s, "outside what was tried"), true
		}
	}
	return f, false
}

var (
	// promises are words of what a mix will do that nobody made.
	promises = pattern.Of(`(?i)\b(will|would|can|could|should|also|too|even|surely|as well|must|going to|carry|carries|possible)\b`)
	atLevel  = pattern.Of(`(?i)\b(?:at|with|to|up to|even|of|carry|carries|reach|hold|take|takes|past|beyond|over)\s+(?:about |even |over |more than )?(\d+(?:[.,]\d+)?)\s*(?:%|percent)(\s+\p{L}+)?`)
	inside   = pattern.Of(`(?i)^\s*(drain\w*|of|emulsifiers?|liquid|longer|more|less|better|sure|certain|wet|overrun|loss)$`)
	with     = pattern.Of(`(?i)\b(?:with|for|using|in|on)\s+((?:\p{L}+ )?\p{L}+)\b`)
)

// beyond finds what a conclusion promises of a fat percent that nobody tried, "it will work at 80 %
// too", or of an ingredient that stands in no trial.
func (j *judge) beyond(s sentence.Sentence, _ ownRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !promises.MatchString(s.Low) || sentence.OnlySafety(s.Text) || safetyLine.MatchString(s.Low) || asks.MatchString(s.Low) || packet.MatchString(s.Low) {
		return f, false
	}
	d := j.designOf(s)
	if d == nil {
		return f, false
	}
	low, high, known := triedFat(d)
	for _, m := range atLevel.FindAllStringSubmatch(s.Text, -1) {
		v := firstNumber(m[1:2])
		if !known || math.IsNaN(v) || v < 15 || v > 100 || inside.MatchString(m[2]) || j.isOwn(v, s, d) {
			continue
		}
		if v < low-2 || v > high+2 {
			return about(fmt.Sprintf("“%s”: you tried fat from %s to %s %%, so nothing tells what happens at %s. Say it as a question to test, or keep to what you tried.",
				s.Said, say.Number(math.Round(10*low)/10), say.Number(math.Round(10*high)/10), say.Number(v)), s, "outside what was tried"), true
		}
	}
	for _, m := range with.FindAllStringSubmatch(s.Low, -1) {
		if what, known := fatOrWater(m[1]); known && will.MatchString(s.Low) && !j.uses(what, d) {
			return about(fmt.Sprintf("“%s”: %s is in none of your trials, so nothing tells what happens with it. Say it as a question to test.", s.Said, what.Name), s, "outside what was tried"), true
		}
	}
	return f, false
}

var (
	will = pattern.Of(`(?i)\b(will|would|can be|works? (?:just )?(?:as well|too|also)|also works?)\b`)
	asks = pattern.Of(`(?i)(\bnext\b|\btry\b|\btest\b|\bwould like\b|\bmaybe\b|\bperhaps\b|\bmight\b|\bwonder\b|\bif i had\b|\bnot (?:tried|tested|know\w*)\b|\bdon't know\b|\bdo not know\b|\b(?:can|could) ?not\b|\bcan't\b|\?)`)
)

// fatOrWater is a fat or a water by its name, or by the last word of it.
func fatOrWater(name string) (what ingredient.Ingredient, ok bool) {
	for _, n := range []string{name, name[strings.LastIndex(name, " ")+1:], strings.SplitN(name, " ", 2)[0]} {
		if what, known := ingredient.Lookup(n); known && len(n) > 3 && (what.Kind == ingredient.Fat || what.Kind == ingredient.Water) {
			return what, true
		}
	}
	return what, false
}

// uses reports an ingredient that stands in some trial, or may be meant by one of its columns.
func (j *judge) uses(what ingredient.Ingredient, d *method.Design) bool {
	for _, t := range d.Tables {
		for _, c := range t.Columns {
			if c.Field != nil && c.Field.What.Name == what.Name {
				return true
			}
			for _, word := range strings.Fields(strings.ToLower(what.Name)) {
				if len(word) > 2 && strings.Contains(strings.ToLower(c.Whole), word) {
					return true
				}
			}
		}
	}
	return false
}

func firstNumber(texts []string) float64 {
	for _, t := range texts {
		if v, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64); err == nil {
			return v
		}
	}
	return math.NaN()
}

// isOwn reports a number that stands as such in the student's trials: by whatever
// basis it is, it was tried.
func (j *judge) isOwn(v float64, s sentence.Sentence, d *method.Design) bool {
	for _, t := range d.Tables {
		for _, c := range t.Columns {
			if c.Field != nil && c.Field.What.HLB != nil && c.Field.What.HLB.Value == v && strings.Contains(s.Low, strings.ToLower(c.Field.What.Name)) {
				return true // of an ingredient that is named
			}
			for _, cell := range c.Cells {
				if cell.Known && math.Abs(cell.Value-v) <= 0.5 && (strings.Contains(c.Header, "%") || strings.Contains(strings.ToLower(c.Header), "hlb")) {
					return true
				}
			}
		}
	}
	return false
}

// weighedFatOf is a trial's fat ingredients in percent of the mix, as weighed.
func weighedFatOf(x *handin.Trial) float64 {
	fat, sum := 0.0, 0.0
	for _, c := range x.Table.Weighed() {
		if cell := c.Cells[x.Index]; cell.Known {
			sum += cell.Value
			if what := &c.Field.What; what.Kind == ingredient.Fat && !(what.FatPercent != nil && what.FatPercent.Value < leanest) { // nobody takes cream for fat
				fat += cell.Value
			}
		}
	}
	if sum == 0 {
		return math.NaN()
	}
	return 100 * fat / sum
}

// leanest is the least fat percent of what may be taken for fat as it was weighed.
const leanest = 70

// weighedFat is the range of the fat ingredients in percent of the mix, as weighed.
func weighedFat(d *method.Design) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range d.Trials {
		if v := weighedFatOf(x); !math.IsNaN(v) {
			low, high = min(low, v), max(high, v)
		}
	}
	return low, high
}

// triedFat is the range of fat that was tried: by grams, as weighed, and as the student has it; false where
// no fat is known.
func triedFat(d *method.Design) (low, high float64, ok bool) {
	low, high, _ = d.Range(method.Fat)
	l, h := weighedFat(d)
	if low, high = min(low, l), max(high, h); high < 1 {
		low, high = math.Inf(1), math.Inf(-1)
	}
	for _, t := range d.Tables {
		for _, c := range t.All(column.FatPercent) {
			for _, x := range c.Cells {
				if x.Known && x.Value > 1 && x.Value <= 100 {
					low, high = min(low, x.Value), max(high, x.Value)
				}
			}
		}
	}
	return low, high, high >= low
}

// ofIngredient is an HLB of an emulsifier, and not of a blend.
var ofIngredient = pattern.Of(`(?i)\b(?:esters?|gms|se\d*|sms|ps\d*|stearate|monostearate|polysorbate(?: \d+)?|lecithin)\s*[(,:]?\s*(?:with |of )?(?:an? )?hlb\b`)

var strong = pattern.Of(`(?i)(\bprove[sdn]?\b|\bproof\b|\balways\b|\bnever fails?\b|\bevery (foam|mix|time|recipe|siphon|fat|butter)\b|\ball (foams|fats|recipes|mixes)\b|\bin (all|every) cases?\b|\bguarantee|\bdefinitely\b|\bwithout (any )?doubt\b|\bundoubtedly\b|\bcertainly\b|\b100 ?% (sure|certain)\b|\bimpossible\b|\bthe only way\b|\bno other\b|\bfor any\b|\bnever (?:use|uses|works?|worked|holds?|stands?|gives?|possible)\b|\b(?:can|should|must|will) never\b|\b(?:can|must|should)(?: ?not|n't) (?:ever )?be used\b|\buseless\b|\bfor sure\b|\bwithout exception\b|\bit is (?:certain|proven)\b|\bobviously\b|\bin general\b|\bdoes(?: not|n't) work (?:at all|with|in)\b|\bonly (?:one|way) (?:that|which|to)\b|\ball (?:emulsifiers|oils|butters|esters)\b|\bany (?:fat|oil|butter|juice|mix|foam|recipe)\b|\bbeweist\b|\bimmer\b|\bprouve\b|\btoujours\b|\bdemuestra\b|\bsiempre\b|\bdimostra\b|\bsempre\b)`)

// everyone are words that are too strong of what foams do, and not of how they were made.
var (
	everyone = pattern.Of(`(?i)^\s*(always|immer|toujours|siempre|sempre|every|all|any|for any|in)\b`)
	outcome  = pattern.Of(`(?i)\b(hold\w*|held|stand\w*|stood|lasts?|lasted|stays?|longer|shorter|longest|better|best|worse|worst|stable|stability|works?|worked|success\w*|succeeds?|drain\w*|drip\w*|splits?|separat\w*|clogs?|clogged|gives?|gave|effect|helps?|improve\w*|good|bad|fails?|failed|collaps\w*|foams? (?:is|are|will)|hält|stabil\w*|besser|mieux|mejor|meglio)\b`)
)

// tooStrong asks of words that no few trials can carry.
func (j *judge) tooStrong(s sentence.Sentence, _ ownRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m := strong.FindString(s.Text)
	if m == "" || !states.MatchString(s.Low) || notProven.MatchString(strings.Replace(s.Low, strings.ToLower(m), "", 1)) || sentence.OnlySafety(s.Text) || safetyLine.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	if everyone.MatchString(m) && !outcome.MatchString(s.Low) {
		return f, false // "every mix is 350 g" says how it was made
	}
	return about(fmt.Sprintf("“%s”: “%s” is more than %d trials can show. What do they show, and for which mixes?", s.Said, strings.TrimSpace(m), len(j.Work.Trials())), s, "stronger than the data"), true
}

var (
	notProven  = pattern.Of(`(?i)(\bnothing\b|\bnone\b|\bnot\b|n't|\bcannot\b|\bno proof\b|\bdoes not|\bwithout proof)`)
	safetyLine = pattern.Of(`(?i)(\bopen|inhale|unscrew|goggle|vent|canister|eye protection|charger|gloves|strain|safety|pressure)`)
)

// ownRule is what a student calls a success, and the best.
type ownRule struct {
	rule.Rule
	by *end // best is what does most by it; nil where nothing is said
}

// ruleOf is the student's own rule of success: on a Targets sheet, or in words.
func ruleOf(w *handin.Work) ownRule {
	return ownRule{Rule: rule.Of(w), by: bestBy(w)}
}

var (
	bestRule  = pattern.Of(`(?i)(\b(rule|criterion|criteria)\b.{0,20}\bbest\b|\bbest\b.{0,12}(=|:|\bmeans\b|\bis the (one|foam|trial)\b)|\b(our|my|the) rule\b|\brule:)`)
	byHold    = pattern.Of(`(?i)\b(longest|long) ?(hold|holding|stand|standing|time)?\b|\bholds? (the )?longest|\bstands? (the )?longest`)
	byDrained = pattern.Of(`(?i)\b(least|lowest|less|smallest) (drip|drain|drainage|drained|liquid|serum|weep|loss)|\b(drains?|drips?|weeps?|loses?) (the )?least`)
)

// bestBy is what a student calls best, in a rule of words: "our rule: best = least drip".
// None where the rule names both, or two rules differ.
func bestBy(w *handin.Work) (by *end) {
	for _, p := range w.Words {
		text := p.Text
		if len(strings.Fields(text)) <= 6 {
			text += " " + p.Right
		}
		long, dry := byHold.MatchString(text), byDrained.MatchString(text)
		if p.Note != nil || !bestRule.MatchString(p.Text) || long == dry {
			continue
		}
		e := end{evidence.Hold, true, "held longest"}
		if dry {
			e = end{evidence.Drained, false, "drained least"}
		}
		if by != nil && *by != e {
			return nil
		}
		by = &e
	}
	return by
}

// fails says how a trial surely fails a rule, "" if it may pass.
func (j *judge) fails(x *handin.Trial, r ownRule) string {
	_, why := r.Judge(j.Trials, x)
	return why
}

// passes reports a trial that surely passes a rule.
func (j *judge) passes(x *handin.Trial, r ownRule) bool {
	v, _ := r.Judge(j.Trials, x)
	return v == rule.Passes
}

var (
	worked = pattern.Of(`(?i)\b(works|worked|succeeded|succeeds|is a success|was a success|was successful|meets|met|fulfils|fulfilled|passed|passes|good by (?:my|our|the) rule)\b`)
	failed = pattern.Of(`(?i)\b(failed|fails|did not work|didn't work|does not work|missed the target|misses the target)\b`)
)

// success holds "trial 4 works" against the student's own rule.
func (j *judge) success(s sentence.Sentence, r ownRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || sentence.Narrowed.MatchString(s.Low) {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	yes, no := worked.MatchString(s.Low) && !sentence.Denied.MatchString(s.Low), failed.MatchString(s.Low)
	if yes == no {
		return f, false
	}
	for _, m := range named {
		if m.Missing || len(m.Trials) != 1 {
			continue
		}
		x := m.Trials[0]
		if why := j.fails(x, r); yes && why != "" {
			return about(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.Said, r.Words(), m.ID, why), s, "own rule").Unless(j.doubted(r)), true
		}
		if no && j.passes(x, r) && !strings.Contains(s.Low, "clog") && !strings.Contains(s.Low, "split") {
			return about(fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes. What failed?", s.Said, r.Words(), m.ID), s, "own rule"), true
		}
	}
	return f, false
}

var (
	successHeader = pattern.Of(`(?i)^\s*(works|worked|success|successful|met( my| the)? (rule|target)|(?:my |the )?rule (?:met|kept|ok|passed|fulfilled)|pass(ed)?|pass (?:or|/) fail|ok|good)\s*\??\s*$`)
	saysYes       = pattern.Of(`(?i)^\s*(yes|y|ja|oui|sí|si|x|✓|1|true)\s*$`)
	saysNo        = pattern.Of(`(?i)^\s*(no|n|nein|non|0|false)\s*$`)
)

// verdicts holds a column of yes and no, in which students judge their trials, against
// their own rule.
func (j *judge) verdicts(r ownRule) (out []finding.Found) {
	if !r.Set() {
		return nil
	}
	for _, t := range j.Work.Tables {
		for _, col := range t.Columns {
			if !successHeader.MatchString(strings.ReplaceAll(col.Header, "_", " ")) {
				continue
			}
			for i, c := range col.Cells {
				x := t.Trials[i]
				switch why := j.fails(x, r); {
				case saysYes.MatchString(c.Text) && why != "":
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", c.Text, r.Words(), x.ID, why), c).Kinds("own rule").Unless(j.doubted(r)))
				case saysNo.MatchString(c.Text) && j.passes(x, r):
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes.", c.Text, r.Words(), x.ID), c).Kinds("own rule").Unless(j.doubted(r) || r.Hold == nil || r.Drained == nil))
				}
			}
		}
	}
	return out
}
