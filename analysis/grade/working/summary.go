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
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// A table that sums the trials up has a row a mix: it names the trials, "4, 5, 6", "(2, 3)", "nr 2
// to 6", or says what they have in common, "60 % fat, HLB 9.9", and gives their mean, their least
// and longest, their range.

// statistic is what a head says of some numbers.
type statistic uint8

const (
	noStatistic statistic = iota
	theMean
	theMiddle
	theLeast
	theMost
	theRange
	theCount
)

var (
	inBrackets = pattern.Of(`[(\[][^)\]]*[)\]]`)
	middleHead = pattern.Of(`(?i)\b(?:median\w*|mediaan|zentralwert)\b|\bmédiane?\b`)
	leastHead  = pattern.Of(`(?i)^\s*(?:min|minimum|minim[oa]|mínim[oa]|shortest|lowest|least|smallest|worst|kürzeste\w*|kleinste\w*|niedrigste\w*|(?:la )?plus court\w*|(?:la |le )?plus (?:basse?|petite?)|menor|(?:la )?más corta|(?:la )?più (?:corta|breve|bassa)|kortste|laagste|kleinste)(?:[^\pL]|$)`)
	mostHead   = pattern.Of(`(?i)^\s*(?:max|maximum|massim[oa]|máxim[oa]|longest|highest|most|largest|best|längste\w*|höchste\w*|größte\w*|(?:la |le )?plus (?:longue?|haute?|grande?)|mayor|(?:la )?más larga|(?:la )?più (?:lunga|alta)|langste|hoogste|grootste)(?:[^\pL]|$)`)
	rangeHead  = pattern.Of(`(?i)\b(?:range|spread|span|spann(?:e|weite)|bandbreite|schwankung\w*|plage|intervalles?|intervallo|rango|recorrido|escursione|spreiding|from[ -–]+to|von[ -–]+bis|van[ -–]+tot|min ?[-–/] ?max)\b|(?:^|\P{L})(?:étendue|écart)(?:$|\P{L})`)
	countHead  = pattern.Of(`(?i)^\s*(?:n|count|number(?: of .*)?|how many|runs|repeats|times|anzahl(?: .*)?|nombre(?: .*)?|nb|número(?: de .*)?|núm|cuántas?|numero(?: di .*)?|quante|aantal(?: .*)?)\s*$`)
	holdHead   = pattern.Of(`(?i)(\bmin\b|minutes|\bstand\w*|\bstood|\bhold\w*|\bheld|\bstays?|\blast\w*|\btime\b|\bstable|stability|\bhalte\w*|\bhält|\bsteht|\btenue|\btient|durée|\btenuta|\btiene|\bdura\w*|\baguant\w*|\bstaat|\bstond|\bhoudt)`)
	wetHead    = pattern.Of(`(?i)(drain|drip|weep|wept|wet\b|leak|run[- ]?off|ran off|puddle|liquid|lost|loss|\bml\b|filtrate|serum|tropf|abgelaufen|verlust|écoul|égoutt|exsud|perte|drenad|escurr|perdid|sgocciol|drenat|\bsiero|perdita|uitgelekt|lekvocht|vochtverlies)`)
)

// statisticOf is what a head says, with what is left of it.
func statisticOf(head string) (s statistic, rest string) {
	head = strings.ReplaceAll(head, "_", " ")
	bare := inBrackets.ReplaceAllString(head, " ")
	switch {
	case middleHead.MatchString(head):
		return theMiddle, middleHead.ReplaceAllString(head, " ")
	case meanWord.MatchString(head) || strings.Contains(head, "Ø"):
		return theMean, meanWord.ReplaceAllString(head, " ")
	case rangeHead.MatchString(bare):
		return theRange, rangeHead.ReplaceAllString(head, " ")
	case countHead.MatchString(bare):
		return theCount, ""
	case leastHead.MatchString(bare):
		return theLeast, leastHead.ReplaceAllString(head, " ")
	case mostHead.MatchString(bare):
		return theMost, mostHead.ReplaceAllString(head, " ")
	}
	return noStatistic, head
}

// summed judges a row of a table that sums trials up; false for any other row.
func (d *desk) summed(r handin.Row, heads []handin.Cell) bool {
	said, counts := map[int]statistic{}, true
	for _, h := range heads {
		if s, _ := statisticOf(h.Text); s != noStatistic {
			said[h.At.Col] = s
			counts = counts && s == theCount
		}
	}
	if len(said) == 0 || counts || len(r.Cells) < 2 {
		return false
	}
	named, byName := d.rowOf(r, heads)
	if len(named) == 0 {
		return false
	}
	for _, c := range r.Cells {
		if s, ok := said[c.At.Col]; ok {
			d.sumUp(c, s, headOf(c, heads), named, byName)
		}
	}
	return true
}

// sumUp holds one cell against the trials that its row names.
func (d *desk) sumUp(c handin.Cell, s statistic, head string, named []*handin.Trial, byName bool) {
	if s == theCount {
		if byName {
			d.count(c, named)
		}
		return
	}
	var typed, meant, least []float64 // least are those of which only that is known
	var list, ids []string
	of := ""
	for _, x := range named {
		col := measuredBy(x.Table, head)
		if col == nil {
			return
		}
		of = col.Header
		switch v := col.Cells[x.Index]; {
		case !v.Known && math.IsInf(v.Low, 0) && math.IsInf(v.High, 0):
			continue
		case !v.Known && math.IsInf(v.Low, 0):
			return // of "<5" no mean is known at all
		case !v.Known:
			least = append(least, v.Low)
			list = append(list, v.Text)
		default:
			typed = append(typed, v.Value)
			list = append(list, verdict.Num(v.Value))
			if m, ok := d.Slips.Meant[v.At]; ok {
				meant = append(meant, m)
			} else {
				meant = append(meant, v.Value)
			}
		}
		ids = append(ids, handin.ShortID(x.ID))
	}
	v, half, known := numberOf(c)
	switch {
	case len(least) > 0:
		if known && !atLeast.MatchString(c.Text) {
			if f, wrong := ofBounds(c, s, v, half, of, ids, list, typed, least); wrong {
				d.sums = append(d.sums, f)
			}
		}
		return
	case len(typed) == 0:
		return
	case s == theRange:
		d.rangeOf(c, of, typed, meant, ids)
		return
	case !known:
		return
	}
	right := valueOf(s, typed)
	tolerance := max(half, 0.051, 0.002*math.Abs(right))
	if math.Abs(right-v) <= tolerance || math.Abs(valueOf(s, meant)-v) <= tolerance {
		return
	}
	words := fmt.Sprintf("%s is given as the %s of %s in %s: they have %s, and that makes %s", verdict.DigitsOf(v, 2), statistics[s], strings.Join(ids, ", "), of, strings.Join(list, ", "), verdict.DigitsOf(right, 2))
	_, with := d.reckonsWith(c)
	var wrong []string
	for _, x := range with {
		if id := handin.ShortID(x.ID); !slices.Contains(named, x) && !slices.Contains(wrong, id) {
			wrong = append(wrong, id)
		}
	}
	switch {
	case len(wrong) > 0:
		words += fmt.Sprintf("; its formula takes trial %s instead", strings.Join(wrong, ", "))
	case len(with) > 0 && len(with) < len(named):
		words += fmt.Sprintf("; its formula takes %d of the %d", len(with), len(named))
	}
	f := finding.Of(criteria.Means, graded.Calculation, words+".", c).ShouldBe(right)
	f.Certain = byName && len(wrong) > 0 && len(with) == len(named) // what mixes have in common is a guess
	d.sums = append(d.sums, f)
}

var statistics = map[statistic]string{theMean: "mean", theMiddle: "median", theLeast: "least", theMost: "most"}

// ofBounds asks of a mean or a median of holds of which some are only known to be longer.
func ofBounds(c handin.Cell, s statistic, v, half float64, of string, ids, list []string, typed, least []float64) (f finding.Found, wrong bool) {
	near := func(x float64) bool { return math.Abs(x-v) <= max(half, 0.051) }
	all := slices.Concat(typed, least)
	plain, what := valueOf(s, all), ""
	switch {
	case s == theMean && near(plain):
		what = fmt.Sprintf("as if what still stood had fallen then; the mean is at least %s", verdict.DigitsOf(plain, 2))
	case s == theMean && len(typed) > 0 && near(valueOf(s, typed)):
		what = fmt.Sprintf("without what still stood; with it the mean is at least %s", verdict.DigitsOf(plain, 2))
	case s == theMiddle && slices.Max(typed) <= slices.Min(least) && 2*len(least) < len(all) && !near(plain):
		what = fmt.Sprintf("and their median is %s, however long those stood", verdict.DigitsOf(plain, 2))
	default:
		return f, false
	}
	return finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s is given as the %s of %s in %s, which have %s: %s.", verdict.DigitsOf(v, 2), statistics[s], strings.Join(ids, ", "), of, strings.Join(list, ", "), what), c).Kinds("bound counted"), true
}

// count holds how many trials a row says it is of against those that it names: all of them, or those
// with a result.
func (d *desk) count(c handin.Cell, named []*handin.Trial) {
	v, _, known := numberOf(c)
	if !known || v != math.Trunc(v) || int(v) == len(named) {
		return
	}
	for _, m := range []evidence.Measure{evidence.Hold, evidence.Drained} {
		n := 0
		for _, x := range named {
			if _, _, ok := d.Seen(x, m); ok {
				n++
			}
		}
		if int(v) == n {
			return
		}
	}
	d.sums = append(d.sums, finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s is given as how many there are, and the log has %d: %s.", c.Text, len(named), strings.Join(handin.ShortIDs(named), ", ")), c).ShouldBe(float64(len(named))).Kinds("miscounted"))
}

var (
	withUnit = pattern.Of(`(?i)^\s*(?:about |ca\.? |[~≈] ?)?(\d+(?:[.,]\d+)?)\s*(?:min\w*|%|g|ml|trials?|times|x)?\s*$`)
	atLeast  = pattern.Of(`(?i)(\bat least\b|\bover\b|\bmore than\b|\bor more\b|\bmindestens\b|\bau moins\b|\bal menos\b|\balmeno\b|\bminstens\b|[>≥+])`)
)

// numberOf is the number of a cell, with its unit or without.
func numberOf(c handin.Cell) (v, half float64, ok bool) {
	if c.Known {
		return c.Value, max(c.Half, c.Rounded()), true
	}
	m := withUnit.FindStringSubmatch(c.Text)
	if m == nil {
		return 0, 0, false
	}
	v, half = numberIn(m[1])
	return v, half, true
}

// valueOf is a statistic of some numbers.
func valueOf(s statistic, xs []float64) float64 {
	switch s {
	case theLeast:
		return slices.Min(xs)
	case theMost:
		return slices.Max(xs)
	case theMiddle:
		sorted := slices.Sorted(slices.Values(xs))
		return (sorted[(len(xs)-1)/2] + sorted[len(xs)/2]) / 2
	}
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

var twoNumbers = pattern.Of(`^\D{0,6}?(\d+(?:[.,]\d+)?)\s*(?:-|–|—|to|bis|à|a|\.\.+|and|/)\s*(\d+(?:[.,]\d+)?)\D{0,6}$`)

// rangeOf holds a range, "20 - 26" or how wide it is, against the trials.
func (d *desk) rangeOf(c handin.Cell, of string, typed, meant []float64, ids []string) {
	low, high := slices.Min(typed), slices.Max(typed)
	fits := func(a, b float64) bool {
		near := func(x, y float64) bool { return math.Abs(x-y) <= 0.51 }
		return near(a, low) && near(b, high) || near(a, slices.Min(meant)) && near(b, slices.Max(meant))
	}
	switch m := twoNumbers.FindStringSubmatch(c.Text); {
	case c.Known:
		if len(typed) == 1 || math.Abs(c.Value-(high-low)) <= max(c.Half, 0.051) || math.Abs(c.Value-(slices.Max(meant)-slices.Min(meant))) <= max(c.Half, 0.051) {
			return
		}
	case m != nil:
		a, _ := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		b, _ := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
		if fits(min(a, b), max(a, b)) {
			return
		}
	default:
		return
	}
	d.sums = append(d.sums, finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s is given as the range of %s in %s, and in your log they go from %s to %s.", c.Text, strings.Join(ids, ", "), of, verdict.Num(low), verdict.Num(high)), c))
}

// measuredBy is the column of results that a head speaks of, nil where none is the one.
func measuredBy(t *handin.Table, head string) *handin.Column {
	_, rest := statisticOf(head)
	if overrunHead.MatchString(rest) {
		return t.Find(column.Overrun)
	}
	if wetHead.MatchString(rest) || strings.Contains(rest, "%") && !holdHead.MatchString(rest) && !fatWord.MatchString(rest) {
		all := t.All(column.DrainedAmount)
		if len(all) > 1 {
			want := units.Mass
			switch {
			case strings.Contains(rest, "%"):
				want = units.Percent
			case strings.Contains(strings.ToLower(rest), "ml"):
				want = units.Volume
			}
			all = slices.DeleteFunc(all, func(c *handin.Column) bool { return c.Field == nil || c.Field.Want != want })
		}
		if len(all) == 1 {
			return all[0]
		}
		return nil
	}
	if holdHead.MatchString(rest) || byTime.MatchString(head) {
		return t.Hold()
	}
	return nil
}

var overrunHead = pattern.Of(`(?i)\b(?:overrun|volume gain|aufschlag|volumenzunahme|foisonnement|aumento (?:de|di) volumen?|montatura|opslag|luchtopname)\b`)

var byTime = pattern.Of(`(?i)^\s*(?:shortest|longest)\b`)

var (
	noiseInList = pattern.Of(`(?i)\b(?:trials?|tests?|runs?|foams?|cards?|nos?|nr|nrs|number|numbers|mixes|mix|proeven|proef|versuche|versuch|essais|essai|pruebas|prueba|ensayos|ensayo|prove|prova)\b\.?|#|n°`)
	listSplit   = pattern.Of(`\s*(?:,|;|&|\+|/|\band\b|\bund\b|\bet\b|\by\b)\s*`)
	dashed      = pattern.Of(`^\pL{0,3}\d+(?:-\pL{0,3}\d+){2,}$`)
	aRange      = pattern.Of(`^(\S+)\s*(?:-|–|—|\bto\b|\bbis\b|\bà\b)\s*(\S+)$`)
	trialsHead  = pattern.Of(`(?i)^\s*(?:(?:trials?|tests?|runs?|foams?|cards?|nos?|nr|which|of|made of|from|numbers?)\b[\s.]*)+$`)
)

// rowOf are the trials of which a row speaks, and whether it names them.
func (d *desk) rowOf(r handin.Row, heads []handin.Cell) (named []*handin.Trial, byName bool) {
	for _, c := range r.Cells {
		if s, _ := statisticOf(headOf(c, heads)); s == noStatistic && c.Kind == sheet.Text && !c.Known {
			if named := d.listed(c.Text); len(named) > 0 {
				return named, true
			}
			for _, part := range inBrackets.FindAllString(c.Text, -1) {
				if named := d.listed(strings.Trim(part, "()[] ")); len(named) > 0 {
					return named, true
				}
			}
		}
	}
	for _, c := range r.Cells {
		if head := headOf(c, heads); head != "" && trialsHead.MatchString(head) {
			if found := d.ofMix(c.Text); len(found) == 1 {
				return found, true
			}
		}
	}
	if len(r.Cells) > 0 {
		if named := d.family(r.Cells[0].Text); len(named) > 0 {
			return named, true
		}
	}
	if len(r.Cells) > 0 && !r.Cells[0].Known { // "mix | B" is of all trials of mix B
		if named := d.Work.Under(headOf(r.Cells[0], heads), r.Cells[0].Text); len(named) > 0 {
			return named, true
		}
	}
	return d.alikeIn(r, heads), false
}

// family are the trials whose names are one name with a number or a letter behind it: A1, A2 and A3 of
// "A", or of "mix A"; and the controls of "control", "0 (control)". None where a trial has that very name and
// no other begins with it.
func (d *desk) family(label string) (out []*handin.Trial) {
	name := strings.TrimSpace(inBrackets.ReplaceAllString(label, ""))
	if words := strings.Fields(name); len(words) == 2 && familyNoun.MatchString(words[0]) {
		name = words[1]
	}
	if level := d.Work.Level(name); len(level) > 0 {
		return level
	}
	control := handin.NamesControl(label) && len(label) > 2
	for _, x := range d.Work.Trials() {
		rest, ok := strings.CutPrefix(strings.ToLower(handin.ShortID(x.ID)), strings.ToLower(name))
		if control && x.IsControl() || !control && ok && name != "" && isMember(name, rest) {
			out = append(out, x)
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

var (
	familyNoun = pattern.Of(`(?i)^(?:mix|blend|recipe|formula|batch|foam|mixture|group|series|mélange|mezcla|miscela|mischung|mengsel)$`)
	oneNumber  = pattern.Of(`^[-. ]?\d{1,2}$`)
	oneLetter  = pattern.Of(`^(?:[-. ]?[a-e])?$`)
)

// isMember reports what may stand behind the name of a family: a number behind a letter, nothing or a
// letter behind a number.
func isMember(name, rest string) bool {
	if last := name[len(name)-1]; last >= '0' && last <= '9' {
		return oneLetter.MatchString(rest)
	}
	return oneNumber.MatchString(rest)
}

// headOf is the text above a cell, "" without one.
func headOf(c handin.Cell, heads []handin.Cell) string {
	for _, h := range heads {
		if h.At.Col == c.At.Col {
			return h.Text
		}
	}
	return ""
}

// ofMix are the trials of a number that have a mix: their results may stand on another sheet.
func (d *desk) ofMix(id string) []*handin.Trial {
	found := d.Work.ByID(id)
	if len(found) > 1 {
		found = slices.DeleteFunc(found, func(x *handin.Trial) bool { return len(x.Table.Weighed()) < 2 })
	}
	return found
}

// listed are the trials of a list and nothing else, "4, 5 and 6", "A1-A3"; nil for any other
// text, and for a single number, which may be anything.
func (d *desk) listed(text string) (out []*handin.Trial) {
	bare := strings.TrimSpace(noiseInList.ReplaceAllString(text, " "))
	parts := listSplit.Split(bare, -1)
	if dashed.MatchString(bare) {
		parts = strings.Split(bare, "-")
	}
	for _, p := range parts {
		p = strings.Trim(p, " .:")
		if found := d.ofMix(p); len(found) == 1 && p != "" {
			out = append(out, found[0])
			continue
		}
		m := aRange.FindStringSubmatch(p)
		if m == nil {
			return nil
		}
		a, b := d.ofMix(m[1]), d.ofMix(m[2])
		if len(a) != 1 || len(b) != 1 || a[0].Table != b[0].Table || a[0].Index >= b[0].Index {
			return nil
		}
		out = append(out, a[0].Table.Trials[a[0].Index:b[0].Index+1]...)
	}
	if len(out) < 2 && !noiseInList.MatchString(text) {
		if len(out) == 1 && len(out[0].ID) >= 2 && strings.EqualFold(strings.TrimSpace(text), out[0].ID) && !isNumber(text) {
			return out // "B1" is nothing else
		}
		return nil
	}
	return out
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	return err == nil
}

var (
	fatPart   = pattern.Of(`(?i)^(\d+(?:[.,]\d+)?)\s*%\s*(?:fat|oil|butter|ghee|lard)?(?: in (?:the )?mix)?$|^(?:fat|oil|butter)\s*(?:of )?(\d+(?:[.,]\d+)?)\s*%$`)
	hlbPart   = pattern.Of(`(?i)^hlb\s*(?:of|=|:)?\s*(\d+(?:[.,]\d+)?)$`)
	pairPart  = pattern.Of(`(?i)^(\d+(?:[.,]\d+)?)\s*(?:g\s*)?\+\s*(\d+(?:[.,]\d+)?)\s*g?$`)
	gramsPart = pattern.Of(`(?i)^(\d+(?:[.,]\d+)?)\s*g(?:\s+(?:of )?(?:emulsifiers?|emu|powders?))?$`)
	partSplit = pattern.Of(`\s*(?:[;]|, |\band\b|\bwith\b|\bat\b)\s*`)
	fatHead   = pattern.Of(`(?i)^\s*fat\b.*(?:%|percent)`)
	hlbHead   = pattern.Of(`(?i)^\s*(?:blend |mix )?hlb\b`)
)

// alikeIn are the trials that have in common what a row says of its mix, as many as its own count;
// nil where a word of it is not understood.
func (d *desk) alikeIn(r handin.Row, heads []handin.Cell) (out []*handin.Trial) {
	count, traits := -1, []func(*handin.Trial) bool{}
	for k, c := range r.Cells {
		head := headOf(c, heads)
		s, _ := statisticOf(head)
		switch {
		case s == theCount && c.Known:
			count = int(c.Value)
		case s != noStatistic:
		case c.Known && fatHead.MatchString(head):
			traits = append(traits, d.hasFat(c.Value, c.Half))
		case c.Known && hlbHead.MatchString(head):
			traits = append(traits, d.hasHLB(c.Value, c.Half))
		case k == 0 && !c.Known:
			for _, p := range partSplit.Split(strings.TrimSpace(inBrackets.ReplaceAllString(c.Text, "")), -1) {
				switch fat, hlb, g, two := fatPart.FindStringSubmatch(p), hlbPart.FindStringSubmatch(p), gramsPart.FindStringSubmatch(p), pairPart.FindStringSubmatch(p); {
				case two != nil:
					a, _ := numberIn(two[1])
					b, _ := numberIn(two[2])
					traits = append(traits, hasPair(a, b))
				case fat != nil:
					traits = append(traits, d.hasFat(numberIn(fat[1]+fat[2])))
				case hlb != nil:
					traits = append(traits, d.hasHLB(numberIn(hlb[1])))
				case g != nil:
					v, half := numberIn(g[1])
					traits = append(traits, func(x *handin.Trial) bool {
						m := mixture.MixOf(x.Table, x.Index, d.rules, nil)
						return math.Abs(m.Of(mixture.IsEmulsifier)-v) <= half+1e-9
					})
				default:
					return nil
				}
			}
		}
	}
	if len(traits) == 0 {
		return nil
	}
	for _, x := range d.Work.Trials() {
		if len(x.Table.Weighed()) >= 2 && !slices.ContainsFunc(traits, func(has func(*handin.Trial) bool) bool { return !has(x) }) {
			out = append(out, x)
		}
	}
	if count >= 0 && len(out) != count || count < 0 && len(out) < 2 {
		return nil
	}
	return out
}

// hasPair reports a trial with so many grams of its two emulsifiers, in the order of the columns.
func hasPair(a, b float64) func(*handin.Trial) bool {
	return func(x *handin.Trial) bool {
		var grams []float64
		for _, c := range x.Table.Weighed() {
			if c.Field.What.WeighedAsEmulsifier() {
				grams = append(grams, c.Cells[x.Index].Value)
			}
		}
		return len(grams) == 2 && math.Abs(grams[0]-a) < 1e-9 && math.Abs(grams[1]-b) < 1e-9
	}
}

func numberIn(text string) (v, half float64) {
	text = strings.Replace(text, ",", ".", 1)
	v, _ = strconv.ParseFloat(text, 64)
	half = 0.5
	if i := strings.Index(text, "."); i >= 0 {
		half *= math.Pow(10, -float64(len(text)-i-1))
	}
	return v, half
}

// hasFat reports a trial whose fat percent, as typed or by its grams, rounds to one.
func (d *desk) hasFat(v, half float64) func(*handin.Trial) bool {
	own := hasOwn(column.FatPercent, v, half)
	return func(x *handin.Trial) bool {
		if own(x) {
			return true
		}
		m := mixture.MixOf(x.Table, x.Index, d.rules, d.Slips.Meant)
		fat, ok := m.FatGrams()
		return ok && !m.Open && len(m.Denominators()) > 0 && math.Abs(100*fat.Value/m.Denominators()[0]-v) <= max(half, 0.051)+1e-9
	}
}

// hasHLB is the like for the blend.
func (d *desk) hasHLB(v, half float64) func(*handin.Trial) bool {
	own := hasOwn(column.BlendHLB, v, half)
	return func(x *handin.Trial) bool {
		if own(x) || len(x.Table.All(column.BlendHLB)) > 0 {
			return own(x)
		}
		m := mixture.MixOf(x.Table, x.Index, d.rules, d.Slips.Meant)
		h, ok := mixture.BlendOf(&m, nil)
		return ok && math.Abs(h-v) <= max(half, 0.051)+1e-9
	}
}

func hasOwn(role column.Role, v, half float64) func(*handin.Trial) bool {
	return func(x *handin.Trial) bool {
		return slices.ContainsFunc(x.Table.All(role), func(col *handin.Column) bool {
			c := col.Cells[x.Index]
			return (col.Field == nil || !col.Field.InGrams) && c.Known && math.Abs(c.Value-v) <= max(half, 0.051)+1e-9
		})
	}
}

// borneOut leaves out the sums of a column of which most are off: it is of something else than it
// was taken for.
func (d *desk) borneOut(checked map[string]int) {
	off := map[string]int{}
	for _, f := range d.sums {
		off[columnOf(f)]++
	}
	for _, f := range d.sums {
		if k := columnOf(f); off[k] < 2 || 2*off[k] <= checked[k] || f.Certain {
			d.out = append(d.out, f)
		}
	}
}

func columnOf(f finding.Found) string { return fmt.Sprint(f.At.File, "|", f.At.Sheet, "|", f.At.Col) }

// Turned asks of holds and drained amounts that a table of the student's own sums up the other
// way round: the two columns look exchanged on that sheet. What was meant is noted in the slips.
func Turned(tr *evidence.Trials, rules criteria.Rules) (out []finding.Found) {
	d := &desk{Trials: tr, rules: rules}
	bySheet := map[string][]*handin.Trial{}
	var sheets []string
	d.rows(func(r handin.Row, heads []handin.Cell) {
		var hold, wet handin.Cell
		for _, c := range r.Cells {
			head := headOf(c, heads)
			if s, rest := statisticOf(head); s == theMean && c.Known {
				if wetHead.MatchString(rest) {
					wet = c
				} else if holdHead.MatchString(rest) {
					hold = c
				}
			}
		}
		named := []*handin.Trial(nil)
		if hold.Known && wet.Known && max(hold.Value, wet.Value) >= 1.2*min(hold.Value, wet.Value) {
			named, _ = d.rowOf(r, heads)
		}
		held, lost, n := 0.0, 0.0, 0
		for _, x := range named {
			a, b := resultsOf(x)
			if !a.Known || !b.Known || a.Formula != "" || b.Formula != "" || tr.Slips.Meant[a.At] != 0 || tr.Slips.Meant[b.At] != 0 {
				return
			}
			held, lost, n = held+a.Value, lost+b.Value, n+1
		}
		near := func(x, y float64) bool { return math.Abs(x-y) <= max(0.51, 0.03*y) }
		if n == 0 || !near(held/float64(n), wet.Value) || !near(lost/float64(n), hold.Value) {
			return
		}
		for _, x := range named {
			a, _ := resultsOf(x)
			if bySheet[a.At.Sheet] == nil {
				sheets = append(sheets, a.At.Sheet)
			}
			if !slices.Contains(bySheet[a.At.Sheet], x) {
				bySheet[a.At.Sheet] = append(bySheet[a.At.Sheet], x)
			}
		}
	})
	for _, s := range sheets {
		first, second := resultsOf(bySheet[s][0])
		words := fmt.Sprintf("%s and %s look exchanged: your own summary has them the other way round, for %d trials of this sheet. Are the two columns exchanged?", first.Text, second.Text, len(bySheet[s]))
		f := finding.Of(criteria.Record, graded.Record, words, first).Kinds("exchanged columns").And(second.At)
		for _, x := range bySheet[s] {
			a, b := resultsOf(x)
			tr.Slips.Meant[a.At], tr.Slips.Meant[b.At] = b.Value, a.Value
			if a.At != first.At {
				f = f.And(a.At, b.At)
			}
		}
		out = append(out, f)
	}
	return out
}

// resultsOf are the hold and what drained of a trial.
func resultsOf(x *handin.Trial) (hold, wet handin.Cell) {
	h, all := x.Table.Hold(), x.Table.All(column.DrainedAmount)
	if h == nil || len(all) != 1 {
		return hold, wet
	}
	return h.Cells[x.Index], all[0].Cells[x.Index]
}
