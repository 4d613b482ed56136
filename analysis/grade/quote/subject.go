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
	"foamfield/ingest/units"
)

// A number right behind what a trial did, "T4 drained only 2 g", is of that trial and of no other that
// the sentence names.

var (
	did = pattern.Of(`(?i)\s+(?:also |even |only |just |then |already |both times )*(drained|drains|drained out|lost|loses|wept|weeps|leaked|dripped|ran out|held|holds|stood|stands|lasted|lasts|stayed|kept|aguanta|aguantó|tient|tenait|hält|hielt|stand|stond)\s+(?:(?:the )?(?:least|most|longest|shortest|best)\b,? (?:of all,? )?(?:with |at )?|only |just |up |for |out |exactly |even |its shape |pendant |während |nur |sólo |solo |slechts |seulement )*(\d+(?:[.,]\d+)?)\s*(%|percent\b|g\b|grams?\b|ml\b|mins?\b|minutes?\b|minuten\b|minutos\b)`)
	// clauseEnd parts a subject from what was said before it.
	clauseEnd = pattern.Of(`(?i)[.;:,]\s|\b(?:and|but|so|while|because|as|since|whereas|although|that|und|et|y|en|aber|mais|pero|maar)\b`)
	wetVerb   = pattern.Of(`(?i)^(drain|lost|lose|we[ep]|leak|drip|ran)`)
	// goesOn is a number that is one of several, or is compared.
	goesOn = pattern.Of(`(?i)^\s*(?:,|/|–|-|\band\b|\bund\b|\bet\b|\bto\b|\bor\b|\+|of)\s*\d|^\s*(?:more|less|longer|shorter|than|of (?:the )?\d|later)`)
)

// ofSubject finds the first number that stands right behind what one trial did, and that neither it has
// nor another making of its formula.
func ofSubject(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	if sentence.Unsure.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	for _, m := range did.FindAllStringSubmatchIndex(s.Text, -1) {
		before := s.Text[:m[0]]
		if cuts := clauseEnd.FindAllStringIndex(before, -1); cuts != nil {
			before = before[cuts[len(cuts)-1][1]:]
		}
		x := theSubject(tr, s, before)
		v, half := value(s.Text[m[4]:m[5]])
		if x == nil || math.IsNaN(v) || goesOn.MatchString(s.Text[m[7]:]) {
			continue
		}
		unit := strings.ToLower(s.Text[m[6]:m[7]])
		right, differs := tr.contradicts(x, wetVerb.MatchString(s.Text[m[2]:m[3]]), unit, v, half)
		if !differs {
			continue
		}
		f = finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: your table has %s %s for trial %s, not %s.", s.Said, say.Number(math.Round(10*right)/10), unit, x.ID, s.Text[m[4]:m[5]]), s.At).Kinds("value quoted").ShouldBe(right)
		f.Typed = graded.Txt(s.Said)
		return f, true
	}
	return f, false
}

// theSubject is the one trial with which a clause ends: "the second mix, T4 (1 + 2 g)".
func theSubject(tr *shown, s sentence.Sentence, clause string) *handin.Trial {
	all := sentence.Mentions(tr.Work, part(s, clause))
	if len(all) != 1 || all[0].Missing || len(all[0].Trials) != 1 {
		return nil
	}
	bare := strings.TrimSpace(inBrackets.ReplaceAllString(clause, " "))
	id := handin.ShortID(all[0].ID)
	if len(bare) < len(id) || !strings.EqualFold(bare[len(bare)-len(id):], id) {
		return nil
	}
	return all[0].Trials[0]
}

var inBrackets = pattern.Of(`\([^)]*\)`)

// contradicts reports a number that a trial has in no column of the measure and the unit, and no other
// making of its formula has; with what the trial has. A trial without any such number contradicts nothing.
func (tr *shown) contradicts(x *handin.Trial, wet bool, unit string, v, half float64) (right float64, yes bool) {
	d := tr.Design(x.Table)
	at := slices.Index(d.Trials, x)
	has := math.NaN()
	for i, o := range d.Trials {
		if o != x && !(at >= 0 && d.Same(i, at)) {
			continue
		}
		for _, c := range o.Table.Columns {
			cell := c.Cells[o.Index]
			if !cell.Number() || !inMeasure(c, wet, unit) {
				continue
			}
			scale := cell.Scale
			if scale == 0 || strings.HasPrefix(unit, "min") {
				scale = 1 // a hold is in minutes whatever it was typed in
			}
			if v >= cell.Low/scale-half-0.051 && v <= cell.High/scale+half+0.051 {
				return 0, false
			}
			if meant, ok := tr.Slips.Meant[cell.At]; ok && math.Abs(meant/scale-v) <= half+0.051 || tr.Slips.Not[cell.At] {
				return 0, false
			}
			if o == x && cell.Known && !(math.Abs(has-v) <= math.Abs(cell.Value/scale-v)) {
				has = cell.Value / scale
			}
		}
	}
	for _, m := range []evidence.Measure{evidence.Hold, evidence.Drained} {
		if mean, n := tr.OfFormula(x, m); n > 1 && math.Abs(mean-v) <= half+0.051 {
			return 0, false
		}
	}
	return has, !math.IsNaN(has)
}

// inMeasure reports a column of holds, or of what drained in a unit.
func inMeasure(c *handin.Column, wet bool, unit string) bool {
	if !wet {
		return c.Role == column.Hold && strings.HasPrefix(unit, "min")
	}
	if c.Role != column.DrainedAmount || c.Field == nil {
		return false
	}
	switch {
	case unit == "%" || unit == "percent":
		return c.Field.Want == units.Percent
	case unit == "ml":
		return c.Field.Want == units.Volume
	}
	return c.Field.Want == units.Mass
}
