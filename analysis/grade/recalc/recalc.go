// Package recalc works out again, from the student's own earlier cells, what a
// student worked out; and where it differs, how the typed value came about. One
// cause is one finding, however many cells it explains.
package recalc

import (
	"cmp"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/statistic"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Of finds what was worked out wrong in a work, and counts what was looked at.
// not are cells that cannot be: what is worked out from them is not to blame.
func Of(w *handin.Work, rules criteria.Rules, meant mixture.Meant, not map[trial.Place]bool) (out []finding.Found, counts map[criteria.Look]verdict.Tally) {
	said := saidOf(w)
	counts = map[criteria.Look]verdict.Tally{}
	asked := map[trial.Place]bool{}
	for _, t := range w.Tables {
		j := &job{Bench: &verdict.Bench{Table: t, Tally: counts}, rules: rules, said: said, meant: meant, not: not, asked: asked}
		j.conversions()
		for i := range t.Trials {
			j.mixes = append(j.mixes, mixture.MixesOf(t, i, rules, meant))
		}
		j.otherHLBs(w)
		j.unsaidFat()
		j.otherFat(w)
		j.otherFats(w)
		j.repairs()
		j.totals()
		j.fats()
		j.emulsifiers()
		j.partPercents()
		j.blends()
		j.drained()
		j.overrun()
		statistic.Check(w, j.Bench, j.mixes, meant)
		out = append(out, j.Out...)
	}
	return slices.Concat(out, otherRows(w, asked), statistic.Summaries(w, meant)), counts
}

// said is what the words beside the trials declare of percents.
type said struct {
	ofFat, asWeighed bool
	overMix          bool         // the overrun is defined as over the mix
	ofReduced        bool         // percents are of what was left of the mix
	hundred          column.Basis // of what all is reckoned in percent
}

func saidOf(w *handin.Work) (s said) {
	for _, p := range w.Words {
		s.ofFat = s.ofFat || ofFatWords.MatchString(p.Text)
		s.ofReduced = s.ofReduced || ofReduced.MatchString(p.Text)
		s.overMix = s.overMix || overMix.MatchString(p.Text)
		if p.Note == nil {
			s.hundred = cmp.Or(s.hundred, hundred(p.Text))
		}
		text := " " + say.Fold(p.Text) + " "
		for _, of := range []string{"% of fat", "% of the fat", "% of butter", "% of the butter", "percent of fat", "percent of the fat", "percent of the butter", "% of oil", "% of the oil", "percent of the oil"} {
			s.ofFat = s.ofFat || strings.Contains(text, of)
		}
		s.asWeighed = s.asWeighed || countsAsFat(text)
	}
	return s
}

var (
	asFat    = pattern.Of(`\b(?:counted as (?:all )?fat|as 100 ?% fat|(?:fat|butter) as weighed|taken as pure fat|as pure fat)\b`)
	notAsFat = pattern.Of(`\b(?:not|never|no|nor|none|without|isn't|aren't|don't|doesn't|emulsifiers?|powders?|gms|esters?|monoglycerides?|milk|juice)\b`)
)

// countsAsFat reports words that declare a fat as taken for pure: "butter counted as 100 %
// fat". "Emulsifiers are not counted as fat" says nothing of the butter.
func countsAsFat(folded string) bool {
	for _, clause := range strings.FieldsFunc(strings.ReplaceAll(folded, ". ", ";"), func(r rune) bool { return r == ';' || r == '\n' }) {
		for _, at := range asFat.FindAllStringIndex(clause, -1) {
			if !notAsFat.MatchString(clause[:at[0]]) {
				return true
			}
		}
	}
	return false
}

// ofFatWords declare percents of the fat in other words.
var ofFatWords = pattern.Of(`(?i)((per 100 ?g|based on|relative to|in % of|% of|percent of|referred to)( of)?( the| my)? (fat|butter|oil|ghee|fat phase|fat part|oil phase)\b|% (vom|des) (fett|butter)|% (de la|du) (matière grasse|beurre)|% (de la )?(grasa|mantequilla)|% (del )?(grasso|burro))`)

// job is one table being worked out again.
type job struct {
	*verdict.Bench
	rules criteria.Rules
	said  said
	mixes [][]mixture.Mixture // by trial: as typed, and with what was meant
	meant mixture.Meant
	not   map[trial.Place]bool
	asked map[trial.Place]bool // constants of which something was said

	unsaid bool // the fat of one ingredient is known from the student's own percents alone
}
