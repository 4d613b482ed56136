// Package quote holds the numbers that a conclusion gives against the table they are taken
// from. What it finds is asked: words near a number may mean another than they seem to.
package quote

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// shown are the trials, with what was found right where a cell of theirs is wrong: a student
// may well quote that.
type shown struct {
	*evidence.Trials
	right map[string]float64
	asked float64 // minutes of the student's own rule
}

// Check finds numbers that are of no trial that their sentence names. wrong are the cells that
// were found wrong.
func Check(trials *evidence.Trials, wrong []finding.Found) (out []finding.Found) {
	tr := &shown{Trials: trials, right: map[string]float64{}}
	for _, f := range wrong {
		if f.Right.Kind == graded.ANumber {
			tr.right[f.At.String()] = f.Right.Number
		}
	}
	all, _ := sentence.SentencesOf(tr.Work)
	if r := rule.Of(tr.Work); r.Hold != nil {
		tr.asked = r.Hold.At
	}
	for _, s := range all {
		for _, check := range []func(*shown, sentence.Sentence) (finding.Found, bool){misquoted, ofSubject, ofMix, clocks, longestMix} {
			if f, ok := check(tr, s); ok {
				out = append(out, f)
				break
			}
		}
	}
	return out
}

var (
	numbers = pattern.Of(`((?:\d+(?:[.,]\d+)?\s*(?:,|and|&|/|or|to|against|–|-)\s*)*\d+(?:[.,]\d+)?)\s*(%|percent\b|mins?\b|minutes?\b)`)
	single  = pattern.Of(`\d+(?:[.,]\d+)?`)
	loosely = pattern.Of(`(?i)(\b(about|around|roughly|nearly|almost|over|under|above|below|more than|less than|at least|at most|up to|past|beyond|some|ca\.?|circa|by|within|every|another|only|first|last|until|than|target|aim\w*|rule|goal|of)|[~≈<>≤≥])\s*(the |a |of )?$`)
	moreBy  = pattern.Of(`(?i)^\s*(more|less|longer|shorter|higher|lower|better|worse|sure|certain|later|earlier|apart|difference|differ)`)
	doing   = pattern.Of(`(?i)\b(?:blend|blended|blending|mix|mixed|mixing|whisk|whisked|stir|stirred|melt|melted|heat|heated|warm|warmed|cook|cooked|simmer|simmered|cool|cooled|chill|chilled|rest|rested|shake|shook|shaken|sieve|sieved|beat|ice bath|fridge|wait|waited)(?: (?:for|it|all|them|well|hot|cold|on \p{L}+))*\s*$`)
	clock   = pattern.Of(`(?i)\b(after|in|at|within|for)\s*$`)
	packet  = pattern.Of(`(?i)(packet|pack|label|supplier|contains|by the jar|as 100|counts? as|counted|taken as|wrapper)`)
)

// unit is what numbers are of.
type unit uint8

const (
	percent unit = iota
	minutes
)

// misquoted finds the first number of a sentence that none of its trials has.
func misquoted(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	if packet.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	named := trialsOf(tr, s)
	if len(named) == 0 {
		return ofNone(tr, s)
	}
	for _, m := range numbers.FindAllStringSubmatchIndex(s.Text, -1) {
		list, of := s.Text[m[2]:m[3]], minutes
		if u := s.Text[m[4]:m[5]]; u == "%" || u == "percent" {
			of = percent
		}
		before, behind := s.Text[:m[2]], s.Text[m[5]:]
		if loosely.MatchString(before) || moreBy.MatchString(behind) || len(list) > 24 {
			continue
		}
		list, _, _ = strings.Cut(list, " against ") // what follows is of others
		for _, text := range single.FindAllString(list, -1) {
			v, half := value(text)
			if math.IsNaN(v) || of == minutes && v == tr.asked && list == text || isTrial(tr, before, text) || known(tr, s, named, v, half, of) || of == minutes && (clock.MatchString(before) && !soon(before) || doing.MatchString(before)) {
				continue
			}
			x := nearest(tr, s, m[2], m[5], named)
			right, has := beside(x, v, of, behind)
			if !has {
				continue
			}
			words := fmt.Sprintf("“%s”: your table has %s %s for trial %s, and %s for none that you name here. Which is it?", s.Said, say.Number(math.Round(10*right)/10), [...]string{"%", "min"}[of], x.ID, text)
			f = finding.New(criteria.Conclusion, graded.Conclusion, words, s.At).Kinds("value quoted").ShouldBe(right)
			f.Typed = graded.Txt(s.Said)
			return f, true
		}
	}
	return f, false
}

// compared are words by which a number may be of two trials together.
var compared = pattern.Of(`(?i)\b(longer|shorter|more|less|than|differ\w*|minus|apart|gap|gain\w*|lost|mean|average|avg|both|between|beats?|ahead|behind|by)\b`)

// ofNone finds a number with decimals, in a sentence that names no trial, that stands in no
// trial at all.
func ofNone(tr *shown, s sentence.Sentence) (f finding.Found, ok bool) {
	all := tr.Work.Trials()
	if !claims.MatchString(s.Low) || compared.MatchString(s.Low) || len(sentence.Mentions(tr.Work, s)) > 0 || len(all) > mostTrials {
		return f, false
	}
	for _, m := range numbers.FindAllStringSubmatchIndex(s.Text, -1) {
		text, of := s.Text[m[2]:m[3]], minutes
		if u := s.Text[m[4]:m[5]]; u == "%" || u == "percent" {
			of = percent
		}
		v, half := value(text)
		if math.IsNaN(v) || !strings.ContainsAny(text, ".,") || loosely.MatchString(s.Text[:m[2]]) || moreBy.MatchString(s.Text[m[5]:]) || known(tr, s, all, v, half, of) {
			continue
		}
		f = finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: %s stands in no trial of yours. Where is it from?", s.Said, text), s.At).Kinds("value quoted")
		f.Typed = graded.Txt(s.Said)
		return f, true
	}
	return f, false
}

// mostTrials bounds what a number is looked for in.
const mostTrials = 60

// claims are words by which a sentence speaks of what was seen.
var claims = pattern.Of(`(?i)\b(held|holds?|stood|stands?|lasted|stayed|drained|drains?|wept|dripped|leaked|lived|fell|collapsed|was|were|had|has|gave|gives)\b`)

// soon reports words by which a foam ends: "gone in 3 min" is a hold.
func soon(before string) bool {
	return ends.MatchString(before)
}

var ends = pattern.Of(`(?i)\b(fell|falls|gone|collapsed|collapses|slumped|slumps|down|died|ended|over)\s+(after|in|at|within)\s*$`)

func value(text string) (v, half float64) {
	text = strings.Replace(text, ",", ".", 1)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN(), 0
	}
	half = 0.5
	if i := strings.Index(text, "."); i >= 0 {
		half *= math.Pow(10, -float64(len(text)-i-1))
	}
	return v, half
}

// trialsOf are the trials that a sentence names; none where one is named that is not there,
// or that stands in several tables.
func trialsOf(tr *shown, s sentence.Sentence) (out []*handin.Trial) {
	for _, m := range sentence.Mentions(tr.Work, s) {
		if m.Missing || len(m.Trials) > 2 {
			return nil
		}
		out = append(out, m.Trials...)
	}
	return out
}

// isTrial reports a number that is the number of a trial: "trials 2 and 8".
func isTrial(tr *shown, before, text string) bool {
	return trialBefore.MatchString(before) && len(tr.Work.ByID(text)) > 0
}

var trialBefore = pattern.Of(`(?i)\b(trials?|tests?|runs?|nos?\.?|nr\.?|numbers?|foams?|cards?|mix(es)?)\s*#?\s*$`)

// known reports a number that the table has for a trial that is named, for another making of
// its formula, as the mean of these, or as what two of them differ by.
func known(tr *shown, s sentence.Sentence, named []*handin.Trial, v, half float64, of unit) bool {
	compares := compared.MatchString(s.Low)
	var all []*handin.Trial
	for _, x := range named {
		d := tr.Design(x.Table)
		at := slices.Index(d.Trials, x)
		for i, o := range d.Trials {
			if o == x || at >= 0 && d.Same(i, at) || o.IsControl() {
				all = append(all, o)
			}
		}
		if mean, n := tr.OfFormula(x, evidence.Hold); n > 1 && math.Abs(mean-v) <= half+0.05 {
			return true
		}
		if mean, n := tr.OfFormula(x, evidence.Drained); n > 1 && math.Abs(mean-v) <= half+0.05 {
			return true
		}
	}
	for k, x := range all {
		for _, c := range cellsOf(x, of) {
			if right, ok := tr.right[c.At.String()]; near(c, v, half) || ok && math.Abs(right-v) <= half+0.051 {
				return true
			}
			for _, o := range all[:k] {
				for _, e := range cellsOf(o, of) {
					if !compares || e.At.Col != c.At.Col && e.At.Row != c.At.Row {
						continue
					}
					if math.Abs(math.Abs(c.Low-e.Low)-v) <= half+1e-9 || math.Abs((c.Low+e.Low)/2-v) <= half+1e-9 {
						return true
					}
				}
			}
		}
	}
	return false
}

// near reports a number that is a cell's, rounded or cut.
func near(c handin.Cell, v, half float64) bool {
	return v >= c.Low-half-0.051 && v <= c.High+half+0.051 || v >= c.Low && v <= c.High
}

// cellsOf are the cells of a trial in a unit.
func cellsOf(x *handin.Trial, of unit) (out []handin.Cell) {
	for _, c := range x.Table.Columns {
		isPercent := strings.Contains(c.Whole, "%") || c.UnitBelow == "%" || c.Role == column.FatPercent || c.Role == column.EmulsifierAmount
		isMinutes := c.Role == column.Hold || inMinutes.MatchString(c.Header)
		if cell := c.Cells[x.Index]; cell.Number() && (of == percent && isPercent || of == minutes && isMinutes && !isPercent) && c.Role != column.IngredientAmount && c.Role != column.TrialID {
			out = append(out, cell)
		}
	}
	return out
}

var inMinutes = pattern.Of(`(?i)\bmin(ute)?s?\b`)

// nearest is the trial that a number is most likely of: the one in brackets behind it, the
// last before it, or else the first.
func nearest(tr *shown, s sentence.Sentence, from, to int, named []*handin.Trial) *handin.Trial {
	if strings.HasPrefix(strings.TrimSpace(s.Text[to:]), "(") {
		inside, _, _ := strings.Cut(strings.TrimSpace(s.Text[to:])[1:], ")")
		if x := trialsOf(tr, part(s, inside)); len(x) > 0 {
			return x[0]
		}
	}
	if x := trialsOf(tr, part(s, s.Text[:from])); len(x) > 0 {
		return x[len(x)-1]
	}
	return named[0]
}

func part(s sentence.Sentence, text string) sentence.Sentence {
	return sentence.Sentence{At: s.At, Text: text, Low: " " + strings.ToLower(text) + " ", Said: text}
}

// beside is the number of a trial that was most likely meant: its fat, what drained, its
// hold; or the cell that has the same figures.
func beside(x *handin.Trial, v float64, of unit, behind string) (right float64, ok bool) {
	best := math.Inf(1)
	for _, c := range x.Table.Columns {
		cell := c.Cells[x.Index]
		if !cell.Known || !slices.Contains(cellsOf(x, of), cell) {
			continue
		}
		fat := strings.HasPrefix(strings.TrimSpace(strings.ToLower(behind)), "fat")
		if fat != (c.Role == column.FatPercent) && (fat || of == percent && c.Role == column.FatPercent) {
			continue
		}
		if of == minutes && c.Role != column.Hold {
			continue
		}
		if off := math.Abs(cell.Value - v); off < best {
			best, right, ok = off, cell.Value, true
		}
	}
	return right, ok
}
