package claim

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/overall"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

var (
	fatSaid = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s*(?:of\s+|de\s+|di\s+)?(fat|butter|oil|ghee|fett|vet|mg|matière grasse|grassi|grasso|grasa)\b|\b(fat|butter|oil)\s*(?:content|percent(?:age)?|level|share)?\s*(?:of|at|=|:|is|was|around|near|above|over)?\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent)`)
	emSaid  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent)\s*(?:of\s+)?emulsifier|\bemulsifier\s*(?:of|at|=|around|near|above)?\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent)`)
	hlbSaid = pattern.Of(`(?i)\bhlb\s*(?:of|at|=|around|near|about|is|was|above|over|:)?\s*(\d+(?:[.,]\d+)?)`)
	packet  = pattern.Of(`(?i)(packet|pack|label|supplier|contains|wrapper|of the butter is|butter (is|has|with)|counted|taken as)`)
)

// states are verbs of a statement, which a list of ingredients lacks.
var states = pattern.Of(`(?i)\b(will|would|can|hold|holds|held|stand|stands|stood|lasts?|lasted|works?|worked|best|better|longest|gives?|gave|is|are|was|were|needs?|should|makes?|made|drains?|drained|proves?|proved|proof|guarantees?|shows?|beweist|bewiesen|dimostra|prouve|demuestra|bewijst|ist|sind|est|sont|sono|zijn|hält|hielt|halten|tient|tenait|tiennent|tiendrait|aguanta\w*|tiene|tengono|terrebbe|würde|wäre|zou|houdt|stond|staat)\b`)

// madeOf says how much fat something has.
var madeOf = pattern.Of(`(\p{L}+) (?:is|are|has|have|had|with|at|=|:) (?:about |all )?\d+(?:[.,]\d+)? ?(?:%|percent) ?(?:fat|pure)\b`)

// ofWhat reports a sentence on what an ingredient is made of: "the oil is 100 % fat".
func ofWhat(text string) bool {
	m := madeOf.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	what, known := ingredient.Lookup(m[1])
	return known && (what.Kind == ingredient.Fat || what.Kind == ingredient.Water)
}

// outside finds numbers that a conclusion speaks of and nobody tried.
func (j *judge) outside(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if ground.Planned.MatchString(s.Low) || packet.MatchString(s.Low) || ofWhat(s.Low) || !states.MatchString(s.Low) || len(j.Designs) == 0 {
		return f, false
	}
	d := j.DesignOf(s)
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
		v := ground.FirstNumber(m[1:])
		if math.IsNaN(v) || j.isOwn(v, s, d) {
			continue
		}
		if one.factor == method.Fat {
			if low, high, known = triedFat(d); !known {
				continue
			}
		}
		if v < low-one.slack || v > high+one.slack {
			return ground.About(fmt.Sprintf("“%s”: you tried %s from %s to %s%s, so nothing tells what happens at %s. Say it as a question to test, or keep to what you tried.",
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
	itself   = pattern.Of(`(?i)(?:^|[,;]|\b(?:and|so|that)\b)\s*(?:the |any )?((?:\p{L}+ )?\p{L}+) (?:would|will|can) (?:also |surely |certainly )?(?:work|do|hold|stand|be (?:just )?as)\b`)
	with     = pattern.Of(`(?i)\b(?:with|for|using|in|on)\s+((?:\p{L}+ )?\p{L}+)\b`)
)

// beyond finds what a conclusion promises of a fat percent that nobody tried, "it will work at 80 %
// too", or of an ingredient that stands in no trial.
func (j *judge) beyond(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !promises.MatchString(s.Low) || sentence.OnlySafety(s.Text) || safetyLine.MatchString(s.Low) || asks.MatchString(s.Low) || packet.MatchString(s.Low) {
		return f, false
	}
	d := j.DesignOf(s)
	if d == nil {
		return f, false
	}
	low, high, known := triedFat(d)
	for _, m := range atLevel.FindAllStringSubmatch(s.Text, -1) {
		v := ground.FirstNumber(m[1:2])
		if !known || math.IsNaN(v) || v < 15 || v > 100 || inside.MatchString(m[2]) || j.isOwn(v, s, d) {
			continue
		}
		if v < low-2 || v > high+2 {
			return ground.About(fmt.Sprintf("“%s”: you tried fat from %s to %s %%, so nothing tells what happens at %s. Say it as a question to test, or keep to what you tried.",
				s.Said, say.Number(math.Round(10*low)/10), say.Number(math.Round(10*high)/10), say.Number(v)), s, "outside what was tried"), true
		}
	}
	for _, m := range slices.Concat(with.FindAllStringSubmatch(s.Low, -1), itself.FindAllStringSubmatch(s.Low, -1)) {
		if what, known := fatOrWater(m[1]); known && will.MatchString(s.Low) && !j.uses(what, d) {
			return ground.About(fmt.Sprintf("“%s”: %s is in none of your trials, so nothing tells what happens with it. Say it as a question to test.", s.Said, what.Name), s, "outside what was tried"), true
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

// weighedFat is the range of the fat ingredients in percent of the mix, as weighed.
func weighedFat(d *method.Design) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range d.Trials {
		if v := ground.WeighedFatOf(x); !math.IsNaN(v) {
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

var strong = pattern.Of(`(?i)(\bprove[sdn]?\b|\bproof\b|\balways\b|\bnever fails?\b|\bevery (foam|mix|time|recipe|siphon|fat|butter)\b|\ball (foams|fats|recipes|mixes)\b|\bin (all|every) cases?\b|\bguarantee|\bdefinitely\b|\bwithout (any )?doubt\b|\bundoubtedly\b|\bcertainly\b|\b100 ?% (sure|certain)\b|\bimpossible\b|\bthe only way\b|\bno other\b|\bfor any\b|\bnever (?:use|uses|works?|worked|holds?|stands?|gives?|possible)\b|\b(?:can|should|must|will) never\b|\b(?:can|must|should)(?: ?not|n't) (?:ever )?be used\b|\buseless\b|\bfor sure\b|\bwithout exception\b|\bit is (?:certain|proven)\b|\bobviously\b|\bin general\b|\bdoes(?: not|n't) work (?:at all|with|in)\b|\bonly (?:one|way) (?:that|which|to)\b|\ball (?:emulsifiers|oils|butters|esters)\b|\bany (?:fat|oil|butter|juice|mix|foam|recipe)\b|\bbeweist\b|\bbewiesen\b|\bimmer\b|\bprouve\b|\bprouvé\b|\bdémontre\b|\btoujours\b|\bdemuestra\b|\bdemostrado\b|\bsiempre\b|\bdimostra(?:to)?\b|\bsempre\b|\bbewijst\b|\bbewezen\b|\baltijd\b)`)

// everyone are words that are too strong of what foams do, and not of how they were made.
var (
	everyone = pattern.Of(`(?i)^\s*(always|immer|toujours|siempre|sempre|altijd|every|all|any|for any|in)\b`)
	outcome  = pattern.Of(`(?i)\b(hold\w*|held|stand\w*|stood|lasts?|lasted|stays?|longer|shorter|longest|better|best|worse|worst|stable|stability|works?|worked|success\w*|succeeds?|drain\w*|drip\w*|splits?|separat\w*|clogs?|clogged|gives?|gave|effect|helps?|improve\w*|good|bad|fails?|failed|collaps\w*|foams? (?:is|are|will)|hält|hielt|stabil\w*|besser|besten?|mieux|meilleure?s?|mejor|meglio|migliore|tient|tiene|aguanta\w*|houdt|stond|beter)\b`)
)

// tooStrong asks of words that no few trials can carry.
func (j *judge) tooStrong(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m := strong.FindString(s.Text)
	if m == "" || !states.MatchString(s.Low) || notProven.MatchString(strings.Replace(s.Low, strings.ToLower(m), "", 1)) || sentence.OnlySafety(s.Text) || safetyLine.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	if everyone.MatchString(m) && (!outcome.MatchString(s.Low) || overall.Speaks(s)) {
		return f, false // "every mix is 350 g" says how it was made
	}
	return ground.About(fmt.Sprintf("“%s”: “%s” is more than %d trials can show. What do they show, and for which mixes?", s.Said, strings.TrimSpace(m), len(j.Work.Trials())), s, "stronger than the data"), true
}

var (
	notProven  = pattern.Of(`(?i)(\bnothing\b|\bnone\b|\bnot\b|n't|\bcannot\b|\bno proof\b|\bdoes not|\bwithout proof)`)
	safetyLine = pattern.Of(`(?i)(\bopen|inhale|unscrew|goggle|vent|canister|eye protection|charger|gloves|strain|safety|pressure)`)
)
