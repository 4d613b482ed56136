package quote

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A conclusion may call its mixes by what is in them, "3 + 3 g held 20 and 19 min".

var (
	ofTwo = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:g\b\s*)?(?:[\p{L}][\p{L}\d ]{1,24}?)?\s*\+\s*(\d+(?:[.,]\d+)?)\s*g?\b`)
	// notOf are what numbers of minutes may be but a hold.
	notOf = pattern.Of(`(?i)(\b(about|around|roughly|nearly|almost|over|under|above|below|more than|less than|at least|at most|up to|after|within|than|reach\w*|short of|mindestens|unter|moins de|menos de|meno di|onder|minstens|au moins|al menos|almeno|sotto|by)|[~≈<>≤≥])\s*(?:the |de |die |den |los |les |las |i |gli )?$`)
	these = pattern.Of(`((?:\d+(?:[.,]\d+)?\s*(?:min\w*|%|g)?\s*(?:,|and|&|/|und|et|y|e|en|–|-)\s*)*\d+(?:[.,]\d+)?)\s*(%|percent\b|g\b|ml\b|min\b|mins\b|minutes?\b|minuten\b|minutos\b|minuti\b)`)
	wet   = pattern.Of(`(?i)\b(drain\w*|we[ep]\w*|leak\w*|drip\w*|lost|loses?|ran out|abgelaufen|égoutt\w*|drenad\w*|drenat\w*|uitgelekt)\b`)
)

// mixed is a place where a sentence names a mix by the grams of its two emulsifiers.
type mixed struct {
	trials   []*handin.Trial
	said     string
	from, to int
}

// mixesIn are the mixes that a sentence names so.
func mixesIn(tr *shown, s sentence.Sentence) (out []mixed) {
	for _, m := range ofTwo.FindAllStringSubmatchIndex(s.Text, -1) {
		a, _ := value(s.Text[m[2]:m[3]])
		b, _ := value(s.Text[m[4]:m[5]])
		var all, turned []*handin.Trial
		for _, x := range tr.Work.Trials() {
			g := emulsifiersOf(x)
			if len(g) != 2 {
				continue
			}
			if math.Abs(g[0]-a) < 1e-9 && math.Abs(g[1]-b) < 1e-9 {
				all = append(all, x)
			} else if math.Abs(g[0]-b) < 1e-9 && math.Abs(g[1]-a) < 1e-9 {
				turned = append(turned, x)
			}
		}
		if len(all) > 0 && len(turned) > 0 && a != b && ingredientSaid.MatchString(s.Text[m[0]:m[1]]) {
			continue // by which name which was said
		}
		if len(all) > 0 {
			out = append(out, mixed{all, s.Text[m[0]:m[1]], m[0], m[1]})
		}
	}
	for _, m := range ofOne.FindAllStringSubmatchIndex(s.Text, -1) {
		v, half := value(s.Text[m[2]:m[3]])
		unit, name := strings.ToLower(s.Text[m[4]:m[5]]), strings.ToLower(s.Text[m[6]:m[7]])
		var all []*handin.Trial
		for _, x := range tr.Work.Trials() {
			if slices.ContainsFunc(x.Table.Columns, func(c *handin.Column) bool {
				cell := c.Cells[x.Index]
				is := unit == "g" && c.Role == column.IngredientAmount && c.Field != nil && c.Field.InGrams && strings.Contains(strings.ToLower(c.Header), name) ||
					unit == "%" && (strings.HasPrefix(name, "emulsifier") && c.Role == column.EmulsifierAmount || name == "fat" && c.Role == column.FatPercent)
				return is && cell.Known && math.Abs(cell.Value-v) <= min(half, 0.051)
			}) && !x.IsControl() {
				all = append(all, x)
			}
		}
		if len(all) > 0 && !slices.ContainsFunc(out, func(o mixed) bool { return m[0] < o.to && o.from < m[1] }) {
			out = append(out, mixed{all, s.Text[m[0]:m[1]], m[0], m[1]})
		}
	}
	slices.SortFunc(out, func(a, b mixed) int { return a.from - b.from })
	return out
}

// ofOne is one thing by how much of it is in a mix: "60 g butter", "2 % emulsifier".
var ofOne = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(g|%)\s+(?:of )?(?:the )?(\p{L}{3,})`)

var ingredientSaid = pattern.Of(`\pL{3,}`)

// emulsifiersOf are the grams of the emulsifiers of a trial, in the order of their columns.
func emulsifiersOf(x *handin.Trial) (g []float64) {
	for _, c := range x.Table.Weighed() {
		if c.Field.What.WeighedAsEmulsifier() {
			g = append(g, c.Cells[x.Index].Value)
		}
	}
	return g
}

// ofMix finds the first number behind a mix named by its grams that none of its makings has.
func ofMix(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	if sentence.Unsure.MatchString(s.Low) || len(sentence.Mentions(tr.Work, part(s, ofTwo.ReplaceAllString(s.Text, " ")))) > 0 {
		return f, false
	}
	all := mixesIn(tr, s)
	for i, mix := range all {
		to := len(s.Text)
		if i+1 < len(all) {
			to = all[i+1].from
		}
		text := s.Text[mix.to:to]
		for _, m := range these.FindAllStringSubmatchIndex(text, -1) {
			if notOf.MatchString(text[:m[0]]) || moreBy.MatchString(text[m[1]:]) || strings.Contains(text[m[0]:m[1]], "+") {
				continue
			}
			unit := strings.ToLower(text[m[4]:m[5]])
			minutes := strings.HasPrefix(unit, "min")
			if !minutes && !wet.MatchString(s.Low) || !minutes && strings.HasPrefix(strings.TrimSpace(text[m[1]:]), "of ") {
				continue
			}
			for _, one := range single.FindAllString(text[m[2]:m[3]], -1) {
				v, half := value(one)
				if v == tr.asked && minutes && !rightBehind.MatchString(text[:m[0]]) && m[3]-m[2] == len(one) {
					continue
				}
				x := mix.trials[0]
				right, differs := tr.contradicts(x, !minutes, unit, v, half)
				if !differs || slices.ContainsFunc(mix.trials[1:], func(o *handin.Trial) bool { _, off := tr.contradicts(o, !minutes, unit, v, half); return !off }) {
					continue
				}
				f = finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: your table has %s %s for %s (trial %s), and no making of it has %s.", s.Said, say.Number(math.Round(10*right)/10), unit, strings.TrimSpace(mix.said), x.ID, one), s.At).Kinds("value quoted").ShouldBe(right)
				f.Typed = graded.Txt(s.Said)
				return f, true
			}
		}
	}
	return f, false
}

// rightBehind is a verb of holding right before a number.
var rightBehind = pattern.Of(`(?i)\b(?:held|hold|stood|lasted|stayed|hielt|tient|tiene|aguantó|stond)\s*$`)

// clocks finds the first hold in minutes and seconds, or hours and minutes, that no trial of those that a
// sentence names has.
func clocks(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	named := trialsOf(tr, s)
	if len(named) == 0 || sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	for _, m := range clocked.FindAllStringSubmatchIndex(s.Text, -1) {
		a, _ := value(s.Text[m[2]:m[3]])
		b, _ := value(s.Text[m[4]:m[5]])
		if notOf.MatchString(s.Text[:m[0]]) || moreBy.MatchString(s.Text[m[1]:]) || compared.MatchString(s.Low) {
			continue
		}
		has, off := math.NaN(), true
		for _, x := range named {
			for _, v := range []float64{a + b/60, 60*a + b} {
				right, differs := tr.contradicts(x, false, "min", v, -0.03)
				off = off && differs
				if differs && math.IsNaN(has) {
					has = right
				}
			}
		}
		if off && !math.IsNaN(has) {
			f = finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: %s is the hold of no trial that you name here; your table has %s min for trial %s.", s.Said, s.Text[m[0]:m[1]], say.Number(math.Round(100*has)/100), named[0].ID), s.At).Kinds("value quoted")
			f.Typed = graded.Txt(s.Said)
			return f, true
		}
	}
	return f, false
}

var clocked = pattern.Of(`\b(\d{1,2}):(\d\d)\b`)

// longestMix asks of a mix named by its grams that is said to have held longest, or to be the best, where another
// held longer by more than makings of one formula differ by.
func longestMix(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	if !sentence.Longest.MatchString(s.Low) && !alsoLongest.MatchString(s.Low) || s.NotClaimed() || len(tr.Designs) != 1 || len(sentence.Mentions(tr.Work, part(s, ofTwo.ReplaceAllString(s.Text, " ")))) > 0 {
		return f, false
	}
	all := mixesIn(tr, s)
	if len(all) != 1 || !ofTwo.MatchString(all[0].said) {
		return f, false
	}
	mine, n := tr.OfFormula(all[0].trials[0], evidence.Hold)
	if n == 0 {
		return f, false
	}
	d := &tr.Designs[0]
	for _, x := range d.Trials {
		if mean, k := tr.OfFormula(x, evidence.Hold); k > 0 && mean-mine > tr.Margin(d, evidence.Hold) {
			f = finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: it has %s min, and trial %s, of another mix, %s.", s.Said, say.Number(math.Round(10*mine)/10), x.ID, say.Number(math.Round(10*mean)/10)), s.At).Kinds("another trial did better")
			f.Typed = graded.Txt(s.Said)
			return f, true
		}
	}
	return f, false
}

var alsoLongest = pattern.Of(`(?i)\b(?:aguant\w+ más|más aguant\w+|la que más aguanta|am längsten|le plus longtemps|più a lungo|het langst)\b`)
