// Package working holds what a student works out beside the trials, on a sheet of the
// student's own or below the table, against the trials that its rows name.
package working

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// desk is a work whose workings are looked at.
type desk struct {
	*evidence.Trials
	rules criteria.Rules
	out   []finding.Found
	sums  []finding.Found // off in tables that sum trials up
}

// Check finds what is worked out wrong beside the trials.
func Check(tr *evidence.Trials, rules criteria.Rules) []finding.Found {
	d := &desk{Trials: tr, rules: rules}
	checked := map[string]int{}
	title := handin.Row{} // right above the rows, and what they are means of: "mean hold of the repeats"
	d.rows(func(r handin.Row, heads []handin.Cell) {
		texts, numbers := parted(r)
		under := r.At.File == title.At.File && r.At.Sheet == title.At.Sheet && r.At.Row == title.At.Row+1
		switch {
		case len(texts) == 1 && len(numbers) == 0 && meanWord.MatchString(texts[0].Text):
			title = r
			title.Label = texts[0].Text
			return
		case under:
			title.At.Row = r.At.Row
		default:
			title = handin.Row{}
		}
		switch {
		case len(numbers) == 1 && len(texts) >= 1 && d.labelled(strings.Join(textOf(texts), " "), numbers[0]):
		case under && len(numbers) == 1 && len(texts) == 1 && d.underTitle(title.Label, r, numbers[0]):
		case len(heads) > 0 && len(numbers) > 0 && d.summed(r, heads):
			for _, c := range r.Cells {
				checked[columnOf(finding.New(criteria.Means, graded.Calculation, "", c.At))]++
			}
		case len(heads) > 0 && len(numbers) > 0:
			d.underHeads(r, heads)
		}
	})
	d.borneOut(checked)
	return d.out
}

// rows goes through the rows that are no trials, each with the heads above it.
func (d *desk) rows(each func(r handin.Row, heads []handin.Cell)) {
	var heads []handin.Cell
	last := trial.Place{}
	for _, r := range d.Work.Rest {
		if r.At.File != last.File || r.At.Sheet != last.Sheet || r.At.Row > last.Row+1 {
			heads = nil
		}
		last = r.At
		if texts, numbers := parted(r); len(numbers) == 0 && len(texts) >= 2 {
			heads = texts
		} else {
			each(r, heads)
		}
	}
}

// parted are the texts and the numbers of a row.
func parted(r handin.Row) (texts, numbers []handin.Cell) {
	for _, c := range r.Cells {
		if c.Known {
			numbers = append(numbers, c)
		} else if c.Kind == sheet.Text {
			texts = append(texts, c)
		}
	}
	return texts, numbers
}

func textOf(cells []handin.Cell) (out []string) {
	for _, c := range cells {
		out = append(out, c.Text)
	}
	return out
}

var (
	meanWord = pattern.Of(`(?i)\b(mean|average|avg|mittel(?:wert|werte)?|mittlere[rs]?|durchschnitt\w*|schnitt|moyennes?|moy|medias?|medie|promedios?|gemiddelden?)\b`)
	drainy   = pattern.Of(`(?i)(drain|drip|weep|wept|leak|run[- ]?off|puddle|tears|dew|filtrate|tropf|écoul|égoutt|escurr|drenad|sgocciol|uitgelekt|%)`)
	hlbWord  = pattern.Of(`(?i)\bhlb\b`)
	fatWord  = pattern.Of(`(?i)\b(fat|oil|fett|gras)\b`)
	emWord   = pattern.Of(`(?i)\b(emulsifiers?|powders?|emuls?\.?)\b`)
	sumWord  = pattern.Of(`(?i)\b(total|sum|whole|all in|weight of (the )?mix)\b`)
	anyID    = pattern.Of(`[\p{L}\p{N}][\p{L}\p{N}-]*`)
)

// labelled judges a number beside a label that names trials; false where it names none.
func (d *desk) labelled(label string, c handin.Cell) bool {
	named := d.named(label)
	switch {
	case len(named) >= 2 && meanWord.MatchString(label):
		d.mean(label, c, named)
	case len(named) == 2 && lessWord.MatchString(label):
		d.difference(c, label, named)
	case len(named) == 1 && !meanWord.MatchString(label):
		if !d.scaledUp(label, c, named[0]) {
			d.ofOne(label, c, named[0])
		}
	case len(named) == 0 && meanWord.MatchString(label) && ofAll.MatchString(label):
		d.meanOfAll(label, c)
	default:
		return false
	}
	return true
}

// underTitle judges a number below a title that says which mean it is, beside what its trials are
// called or have in common: "HLB 9 | 14".
func (d *desk) underTitle(title string, r handin.Row, c handin.Cell) bool {
	named := d.listed(r.Cells[0].Text)
	if len(named) < 2 {
		named = d.family(r.Cells[0].Text)
	}
	if len(named) < 2 {
		named = d.alikeIn(r, nil)
	}
	if len(named) < 2 {
		return false
	}
	d.mean(title, c, named)
	return true
}

// named are the trials that a label names, nil where it names one that is not there.
func (d *desk) named(label string) (out []*handin.Trial) {
	for _, m := range idList.FindAllString(label, -1) { // "mean hold, L2-L4", "trials 5-6-7"
		if listed := d.listed(m); len(listed) >= 2 {
			return listed
		}
	}
	s := sentence.Plainly(d.Work, label)
	for _, m := range sentence.Mentions(d.Work, s) {
		if m.Missing {
			return nil
		}
		out = append(out, m.Trials...)
	}
	if len(out) > 0 {
		return out
	}
	for _, word := range anyID.FindAllString(label, -1) { // "HLB of K"
		if found := d.Work.ByID(word); len(found) == 1 && !strings.EqualFold(word, "a") && !slices.Contains(out, found[0]) && word == found[0].ID {
			out = append(out, found[0])
		}
	}
	return out
}

// idList is a list or a range of trials within a label: with letters in their names, or behind the
// word for them.
var idList = pattern.Of(`(?i)\b(?:\pL{1,3}\d+|(?:trials|tests|runs|foams|nos|nr|mixes|versuche|essais|pruebas|ensayos|prove|proeven)\.?\s+\d+)(?:\s*(?:,|;|&|\+|/|-|–|—|\b(?:and|und|et|y|e|en|to|bis|à|tot)\b)\s*\pL{0,3}\d+)+\b`)

// mean holds a mean against the trials that its label names. Its own formula says of which
// column it is.
func (d *desk) mean(label string, c handin.Cell, named []*handin.Trial) {
	col, with := d.reckonsWith(c)
	m := measureOf(label)
	sum, n := 0.0, 0
	var typed, least []float64 // least are those of which only that is known
	var list, ids, wrong []string
	of := ""
	for _, x := range named {
		v, ok := d.valueOf(x, col, m)
		low, high, seen := d.Seen(x, m)
		switch {
		case ok:
			typed, list = append(typed, v), append(list, verdict.Num(v))
		case seen && math.IsInf(high, 1):
			least, list = append(least, low), append(list, ">"+verdict.Num(low))
		default:
			return
		}
		sum, n = sum+v, n+1
		ids = append(ids, handin.ShortID(x.ID))
		if h := x.Table.Hold(); h != nil && m == evidence.Hold {
			of = h.Header
		}
	}
	if len(least) > 0 {
		if f, wrong := ofBounds(c, theMean, c.Value, c.Half, of, ids, list, typed, least); wrong && of != "" && !atLeast.MatchString(label) {
			d.out = append(d.out, f)
		}
		return
	}
	for _, x := range with {
		if !slices.Contains(named, x) && !slices.Contains(wrong, handin.ShortID(x.ID)) {
			wrong = append(wrong, handin.ShortID(x.ID))
		}
	}
	mean := sum / float64(n)
	if n < 2 || math.Abs(mean-c.Value) <= max(c.Half, 0.051, 0.002*math.Abs(mean)) {
		return
	}
	words := fmt.Sprintf("%s is given as the mean of %s: (%s) / %d = %s", verdict.DigitsOf(c.Value, 2), strings.Join(ids, ", "), strings.Join(list, " + "), n, verdict.DigitsOf(mean, 2))
	if len(wrong) > 0 {
		words += fmt.Sprintf("; its formula takes trial %s instead", strings.Join(wrong, ", "))
	}
	f := finding.Of(criteria.Means, graded.Calculation, words+".", c).ShouldBe(mean)
	f.Certain = len(wrong) > 0 && len(with) == len(named)
	d.out = append(d.out, f)
}

// measureOf is what a label speaks of: the hold, where it names nothing else.
func measureOf(label string) evidence.Measure {
	switch {
	case overrunHead.MatchString(label):
		return evidence.Overrun
	case holdHead.MatchString(label) && !wetHead.MatchString(label): // "at 2 % of the mix: mean hold (min)"
		return evidence.Hold
	case drainy.MatchString(label):
		return evidence.Drained
	}
	return evidence.Hold
}

var (
	lessWord = pattern.Of(`(?i)(\bdifference\b|\bminus\b|\bgap\b|\blonger than\b|\bmore than\b|\bunterschied\b|\bdifférence\b|\bdiferencia\b|\bdifferenza\b|\bverschil\b| [−–-] )`)
	ofAll    = pattern.Of(`(?i)\b(?:all|every|whole|overall)\b`)
	notAll   = pattern.Of(`(?i)\b(?:pass\w*|good|success\w*|works?|worked|that|which|than|over|above|under|below|first|last|day|evening|repeats?|but|except|percent|fat|hlb|emulsifiers? %)\b`)
)

// meanOfAll holds "mean hold of all mixes" against the mean of all, of all but the controls, and of all but
// what was made without emulsifier; no word may narrow it further.
func (d *desk) meanOfAll(label string, c handin.Cell) {
	m := measureOf(label)
	if notAll.MatchString(label) || c.Formula != "" {
		return
	}
	var means []float64
	for _, leave := range []func(*handin.Trial) bool{func(*handin.Trial) bool { return false }, (*handin.Trial).IsControl, (*handin.Trial).Bare} {
		sum, n := 0.0, 0
		for _, x := range d.Work.Trials() {
			low, high, ok := d.Seen(x, m)
			if leave(x) || !ok {
				continue
			}
			if low != high {
				return
			}
			sum, n = sum+low, n+1
		}
		if n < 2 {
			return
		}
		means = append(means, sum/float64(n))
		if math.Abs(means[len(means)-1]-c.Value) <= max(c.Half, 0.051) {
			return
		}
	}
	d.out = append(d.out, finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s is given as the mean of all, and by your trials it is %s. Of which is it?", c.Text, verdict.DigitsOf(means[0], 2)), c).ShouldBe(means[0]))
}

// upFor is a mass that a recipe is made up for: "GMS for 1 kg of M4".
var upFor = pattern.Of(`(?i)^\s*(.+?)\s+(?:for|in|per)\s+(\d+(?:[.,]\d+)?)\s*(kg|g)\b`)

// scaledUp holds an ingredient of one mix for another mass against its own grams; false for any other label.
func (d *desk) scaledUp(label string, c handin.Cell, x *handin.Trial) bool {
	m := upFor.FindStringSubmatch(label)
	mix := mixture.MixOf(x.Table, x.Index, d.rules, d.Slips.Meant)
	if m == nil || mix.Open || mix.Sum == 0 || x.Table.Unclear(x.Index) {
		return false
	}
	mass, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	if err != nil {
		return false
	}
	if strings.EqualFold(m[3], "kg") {
		mass *= 1000
	}
	name := say.Fold(m[1])
	for _, col := range x.Table.Weighed() {
		called := say.Fold(col.Field.Called())
		grams := col.Cells[x.Index]
		if called != name && !strings.HasPrefix(called, name+" ") && !strings.HasSuffix(called, " "+name) || !grams.Known {
			continue
		}
		right := grams.Value * mass / mix.Sum
		if math.Abs(right-c.Value) > max(c.Half, 0.051, 0.01*right) {
			d.out = append(d.out, finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s was typed, and %s / %s × %s = %s. How did you get %s?", c.Text, verdict.Num(grams.Value), verdict.Num(mix.Sum), verdict.Num(mass), verdict.DigitsOf(right, 2), c.Text), c).ShouldBe(right))
		}
		return true
	}
	return false
}

// valueOf is a trial's number in a column that a formula reckons with, or its result.
func (d *desk) valueOf(x *handin.Trial, col *handin.Column, m evidence.Measure) (float64, bool) {
	if col != nil {
		for _, o := range x.Table.Columns {
			if (o == col || o.Header == col.Header) && o.Cells[x.Index].Known {
				c := o.Cells[x.Index]
				return c.Value / c.Scale, true
			}
		}
		return 0, false
	}
	l, h, ok := d.Seen(x, m)
	return l, ok && l == h
}

var reference = pattern.Of(`(?:(?:'([^']+)'|([\p{L}\d_]+))!)?\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?`)

// reckonsWith are the trials whose cells a formula takes, all of one column.
func (d *desk) reckonsWith(c handin.Cell) (col *handin.Column, with []*handin.Trial) {
	for _, m := range reference.FindAllStringSubmatch(c.Formula, -1) {
		from, err := excelize.ColumnNameToNumber(m[3])
		first, err2 := strconv.Atoi(m[4])
		last, to := first, from
		if m[6] != "" {
			last, _ = strconv.Atoi(m[6])
			to, _ = excelize.ColumnNameToNumber(m[5])
		}
		if err != nil || err2 != nil || last-first > 200 || to-from > 200 {
			return nil, nil
		}
		on := m[1] + m[2]
		if on == "" {
			on = c.At.Sheet
		}
		for row := first; row <= last; row++ {
			for at := from; at <= to; at++ {
				o, x := d.Work.At(trial.Place{File: c.At.File, Sheet: on, Row: row, Col: at})
				if x == nil || col != nil && o.Header != col.Header {
					return nil, nil
				}
				col, with = o, append(with, x)
			}
		}
	}
	return col, with
}

// ofOne judges what is worked out of one trial's mix.
func (d *desk) ofOne(label string, c handin.Cell, x *handin.Trial) {
	e, look, ok := d.expected(label, x)
	if !ok {
		return
	}
	e.Within = max(e.Within, c.Half)
	v, wrong := verdict.Judge(c, e)
	if !wrong || v.Rounded() {
		return
	}
	b := &verdict.Bench{Table: x.Table}
	f := b.Finding(look, v)
	f.Certain = f.Certain && v.Way != nil && !v.Way.Weak
	d.out = append(d.out, f)
}

// expected is what a label asks for of a trial's mix: its blend, its fat, its emulsifier or
// its total.
func (d *desk) expected(label string, x *handin.Trial) (e verdict.Expected, look criteria.Look, ok bool) {
	m := mixture.MixOf(x.Table, x.Index, d.rules, d.Slips.Meant)
	if m.Open || len(m.Parts) < 2 || x.Table.Unclear(x.Index) {
		return e, look, false
	}
	whole := m.Denominators()
	switch percent := strings.Contains(label, "%") || strings.Contains(strings.ToLower(label), "percent"); {
	case hlbWord.MatchString(label):
		h, known := mixture.BlendOf(&m, nil)
		e = verdict.Expected{Rights: []verdict.Accepted{mixture.RangeOf(&m, h)}, Ways: mixture.BlendWays(&m, nil), Within: max(0.2, d.rules.HLBWithin), Digits: 2, How: mixture.BlendWritten(&m, nil)}
		return e, criteria.HLB, known
	case fatWord.MatchString(label) && !emWord.MatchString(label) && percent && len(whole) > 0:
		fat, known := m.FatGrams()
		e = verdict.Expected{Within: d.rules.FatWithin, Digits: 1, How: fmt.Sprintf("(%s) / %s × 100", m.FatWritten(), verdict.Num(whole[0])), Ways: mixture.FatWays(&m)}
		for _, w := range whole {
			e.Rights = append(e.Rights, verdict.Between(100*fat.Low/w, 100*fat.Value/w, 100*fat.High/w))
		}
		return e, criteria.Fat, known
	case emWord.MatchString(label) && percent && len(whole) > 0:
		g := m.Of(mixture.IsEmulsifier)
		e = verdict.Expected{Within: max(0.06, d.rules.EmulsifierWithin), Digits: 2, How: fmt.Sprintf("(%s) / %s × 100", m.Listed(mixture.IsEmulsifier), verdict.Num(whole[0]))}
		for _, w := range whole {
			e.Rights = append(e.Rights, verdict.Exactly(100*g/w))
		}
		if fat := m.Of(mixture.IsFat); fat > 0 {
			e.Rights = append(e.Rights, verdict.Exactly(100*g/fat)) // of the fat is another right basis
		}
		if fat, known := m.FatGrams(); known && fat.Value > 0 {
			e.Rights = append(e.Rights, verdict.Between(100*g/fat.High, 100*g/fat.Value, 100*g/fat.Low))
		}
		return e, criteria.Emulsifier, g > 0
	case sumWord.MatchString(label) && !percent:
		e = verdict.Expected{Within: 1, Digits: 1, How: m.Listed(mixture.AnyPart), Rights: []verdict.Accepted{verdict.Exactly(m.Sum)}}
		return e, criteria.Total, true
	}
	return e, look, false
}

// underHeads judges a row of a table of the student's own that names one trial, by the heads
// above it.
func (d *desk) underHeads(r handin.Row, heads []handin.Cell) {
	name := r.Cells[0].Text
	found := d.Work.ByID(name)
	if len(found) > 1 { // its results may stand on another sheet
		found = slices.DeleteFunc(found, func(x *handin.Trial) bool { return len(x.Table.Weighed()) < 2 })
	}
	if pair := d.pair(name); len(pair) == 2 {
		d.compared(r, heads, pair)
		return
	}
	if len(found) != 1 {
		return
	}
	for _, c := range r.Cells[1:] {
		if !c.Known {
			continue
		}
		for _, h := range heads {
			if h.At.Col == c.At.Col && len(strings.Fields(h.Text)) <= 4 && !meanWord.MatchString(h.Text) && !partOfSum.MatchString(h.Text) {
				d.ofOne(h.Text, c, found[0])
			}
		}
	}
}

// partOfSum are heads of a step on the way: "GMS × 3.8".
var partOfSum = pattern.Of(`[×*·+/]`)
