// Package formal looks at what every log should have: dates, units, a word on safety,
// a conclusion; and at trials made after the last day.
package formal

import (
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Check finds what is missing or late. conclusion are the places of a conclusion, if
// there is one.
func Check(w *handin.Work, rules criteria.Rules, conclusion []trial.Place) (out []finding.Found, late bool) {
	if len(w.Trials()) == 0 {
		return nil, false
	}
	dates, late := dates(w, rules)
	out = append(out, dates...)
	out = append(out, afterOwn(w, rules)...)
	if rules.Units {
		out = append(out, withoutUnit(w)...)
	}
	if rules.Safety && !saysSafety(w) {
		f := finding.New(criteria.Safety, graded.Formal, "Nothing is said of safety: eye protection, venting before opening, straining, the canister's own marking. Add the line you worked by.", emptyLine(w, safetyLabel, missingAt(w))...)
		f.Certain = leftEmpty(w, safetyLabel) || !hints(w, safetyHints) && !hints(w, pressure) && !w.May(nothing, nil)
		out = append(out, f)
	}
	if rules.Conclusion && len(conclusion) == 0 {
		f := finding.New(criteria.Parts, graded.Formal, "There is no conclusion that could be read: which trial answers your question, and why?", emptyLine(w, sentence.Label, missingAt(w))...)
		f.Certain = !hasProse(w) && !w.May(nothing, nil)
		out = append(out, f)
	} else if rules.Conclusion && nothingSaid(w) {
		out = append(out, finding.New(criteria.Parts, graded.Formal, "Nothing is concluded from the trials: which of them answers your question, and what do they show?", conclusion...))
	} else if rules.Conclusion && onlyNamed(w, conclusion) {
		out = append(out, finding.New(criteria.Parts, graded.Formal, "A trial is named as the best, and no sentence says what your trials show and why. Where is the conclusion?", conclusion...))
	}
	if rules.Conclusion && rule.Missing(w) {
		out = append(out, finding.New(criteria.Parts, graded.Formal, "Nowhere is it said when a foam is a success: how long must it hold, how little may drain? Write your rule before you judge by it.", missingAt(w)...).Kinds(NoRule))
	}
	if rules.Conclusion && !hasAim(w, conclusion) {
		out = append(out, finding.New(criteria.Parts, graded.Formal, "Nowhere is it said what these trials were to find out. What was the question?", emptyLine(w, aimLabel, missingAt(w))...).Kinds(NoAim))
	}
	return out, late
}

// NoRule is the kind of the question for a rule of success, which a class may not have been
// asked for.
const NoRule = "no success rule"

// missingAt is where something is said to be missing: the head of the table and its first
// trial, for no cell is to blame.
func missingAt(w *handin.Work) []trial.Place {
	at := []trial.Place{w.First()}
	if t := w.Tables[0]; len(t.Trials) > 0 && len(t.Columns) > 0 {
		at = append(at, t.Columns[0].Cells[0].At)
	}
	return at
}

// onlyNamed reports that a trial is named the best and nothing else is concluded: no
// sentence stands beside the trials but labels, a rule and a word on safety.
func onlyNamed(w *handin.Work, conclusion []trial.Place) bool {
	said := map[trial.Place]string{}
	for _, p := range w.Words {
		said[p.At] = p.Text
	}
	for _, c := range conclusion {
		if len(strings.Fields(said[c])) > 3 || says.MatchString(said[c]) {
			return false
		}
	}
	for _, p := range w.Words {
		if isSentence(p.Text) && !speaksOfSafety(p.Text) && !strings.Contains(p.Text, "?") && !ruleLabel.MatchString(leftOf(w, p)) && !ruleLabel.MatchString(p.Text) {
			return false
		}
	}
	return true
}

// nothingSaid reports that no sentence names a trial, gives a number, or says what was better.
func nothingSaid(w *handin.Work) bool {
	all, _ := sentence.SentencesOf(w)
	return !slices.ContainsFunc(all, func(s sentence.Sentence) bool {
		return len(sentence.Mentions(w, s)) > 0 || measured.MatchString(s.Low) || better.MatchString(s.Low)
	})
}

var (
	measured = pattern.Of(`(?i)\d\s*(?:%|min\b|minutes?\b|ml\b|of \d)`)
	better   = pattern.Of(`(?i)\b(better|best|longe[rs]t?|shorte[rs]t?|more|most|less|least|worse|worst|higher|highest|lower|lowest|rose|fell|increas\w*|decreas\w*|richest|fattest|stable|works?|worked|hold|holds|held|stood|stands?|alike|same|difference|mejor|más|besser|länger|mieux|meglio|più|wins?|winner)\b`)
)

var says = pattern.Of(`(?i)\b(held|holds|is|are|was|were|lasted|lasts|stood|stands|drained|drains|worked|works)\b`)

// isSentence reports words that may say something, as a title does not.
func isSentence(text string) bool {
	n := len(strings.Fields(text))
	return n >= 8 || n >= 5 && strings.HasSuffix(strings.TrimSpace(text), ".")
}

// ruleLabel are labels of what counts as a success, and of what was asked.
var ruleLabel = pattern.Of(`(?i)(success|rule|criteri|target|question|aim|goal|hypothes|erfolg|frage|objectif|pregunta)`)

// leftOf is the label that a text stands beside.
func leftOf(w *handin.Work, p handin.Phrase) string {
	for _, o := range w.Words {
		if o.RightAt == p.At {
			return o.Text
		}
	}
	return ""
}

// hints reports words that may be meant as what is looked for.
func hints(w *handin.Work, re *pattern.Pattern) bool {
	return slices.ContainsFunc(w.Words, func(p handin.Phrase) bool { return re.MatchString(p.Text) })
}

// hasProse reports a sentence beside the trials, or in a note, that may be a conclusion in words that
// are not understood.
func hasProse(w *handin.Work) bool {
	for _, p := range w.Words {
		if len(strings.Fields(p.Text)) >= 6 && !speaksOfSafety(p.Text) {
			return true
		}
	}
	return false
}

// dates finds trials without a day, days that are none, and days too late.
func dates(w *handin.Work, rules criteria.Rules) (out []finding.Found, late bool) {
	days := daysOf(w)
	out = noSuchDays(w)
	logged := false
	for _, t := range w.Tables {
		col := dayColumn(t)
		if col == nil {
			continue
		}
		logged = true
		for i := range col.Cells {
			if col.Cells[i].Kind == sheet.Blank && !weighed(t, i) { // a row of sums is no trial that lacks a day
				continue
			}
			f, isLate, ok := day(col, i, days, rules)
			late = late || isLate
			if ok {
				out = append(out, f)
			}
		}
	}
	if lines := linesOf(w); !logged && len(lines) > 0 {
		found, late := lateLines(lines, rules)
		return append(out, found...), late
	}
	beside := daysBeside(w)
	if !logged && rules.Dates && beside < 2 && !datedElsewhere(w) {
		out = append(out, finding.New(criteria.Dates, graded.Formal, "No day is logged: add a column “Date”.", emptyLine(w, dayLabel, missingAt(w))...))
		out[len(out)-1].Certain = beside == 0 && !w.May(mayBeDay, dayLabel)
	}
	return out, late
}

// daysBeside counts the rows of a file that are no trials and have a day in a cell: of a table of weights
// apart from that of the results.
func daysBeside(w *handin.Work) (n int) {
	for _, r := range w.Rest {
		if slices.ContainsFunc(r.Cells, func(c handin.Cell) bool { _, ok := ParseDay(c); return ok }) {
			n++
		}
	}
	return n
}

// mayBeDay are words that may say when the trials were made.
var mayBeDay = pattern.Of(`(?i)(\b(days?|dates?|dated|week|weeks|lesson|session|morning|afternoon|evening|today|yesterday|calendar|(mon|tues|wednes|thurs|fri|satur|sun)day|mon|tue|tues|wed|thu|thur|fri|january|february|march|april|june|july|august|september|october|november|december|jan|feb|apr|jun|jul|aug|sept?|oct|nov|dec|montag|dienstag|mittwoch|donnerstag|freitag|januar|februar|märz|mai|juni|juli|oktober|dezember|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre|décembre|lundi|mardi|mercredi|jeudi|vendredi|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|novembre|dicembre|tag|jour|fecha|giorno|datum)\b|\bmay \d|\d (of )?may\b|(^|\D)20\d\d(\d{4})?(\D|$)|(^|\D)\d{6}(\D|$)|\b\d{1,2}/\d{1,2}\b|\b\d{1,2}\.\d{1,2}\.)`)

// nothing is a hint that no words give: only what is unread may hold what is missing.
var nothing = pattern.Of(`$.^`)

// leftEmpty reports a label of the work's own with nothing beside or below it.
func leftEmpty(w *handin.Work, label *pattern.Pattern) bool {
	return slices.ContainsFunc(w.Words, func(p handin.Phrase) bool {
		return p.Note == nil && p.Right == "" && label.MatchString(p.Text) && !below(w, p)
	})
}

// datedElsewhere reports a day in words, in the name of a sheet or of the file.
func datedElsewhere(w *handin.Work) bool {
	said := slices.ContainsFunc(w.Words, func(p handin.Phrase) bool { return datedLine.MatchString(p.Text) && !otherDay.MatchString(p.Text) })
	return said || slices.ContainsFunc(w.Files, datedLine.MatchString) ||
		slices.ContainsFunc(w.Trials(), func(x *handin.Trial) bool { return x.At.Sheet != "" && scheme.LooksLikeDay(x.At.Sheet) }) ||
		slices.ContainsFunc(w.Trials(), func(x *handin.Trial) bool { return x.Day != "" })
}

// otherDay are words by which a day is not that of the trials: of the hand-in, of a packet, of an excuse.
var otherDay = pattern.Of(`(?i)\b(deadline|due|hand(?:ed|ing)?[- ]?(?:in|over|out)|submi\w+|deliver\w*|task ?sheet|best before|use by|expir\w*|mail\w*|printed|version|told you|fever|ill\b|sick\b|bought|opened on|lot|revised|sorry)`)

var datedLine = pattern.Of(`(?i)(\b\d{1,2}\. ?(i{1,3}|iv|vi{0,3}|ix|xi{0,2})\. ?\d{2,4}\b|\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[./-]\d{1,2}[./-]\d{2,4}|\d{1,2}(st|nd|rd|th)?\.?[ /-]?(of )?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|mai|juin|juil|ago|enero|marzo|abril|januar|februar|märz)|\b(january|february|march|april|may|june|july|august|september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec)\.? \d{1,2}\b|\b(monday|tuesday|wednesday|thursday|friday|saturday|sunday)\b)`)

// weighed reports that a mix went into a trial: one weight where others have several is a note beside one.
func weighed(t *handin.Table, i int) bool {
	n := 0
	for _, c := range t.Weighed() {
		if c.Cells[i].Known {
			n++
		}
	}
	return n >= min(2, len(t.Weighed())) && n > 0
}

// dayColumn is the column of days: what the reader takes for one, else the first that has days
// and nothing else, whatever it is called ("baked on").
func dayColumn(t *handin.Table) *handin.Column {
	if col := t.Find(column.Day); col != nil {
		return col
	}
	for _, col := range t.Columns {
		days, other := 0, 0
		for _, c := range col.Cells {
			if _, ok := ParseDay(c); ok {
				days++
			} else if strings.TrimSpace(c.Text) != "" {
				other++
			}
		}
		if days > 0 && other == 0 && 2*days > len(col.Cells) {
			return col
		}
	}
	return nil
}

// daysOf are all days of a work that can be read, in order.
func daysOf(w *handin.Work) (out []time.Time) {
	for _, t := range w.Tables {
		if col := dayColumn(t); col != nil {
			for _, c := range col.Cells {
				if d, ok := ParseDay(c); ok {
					out = append(out, d)
				}
			}
		}
	}
	slices.SortFunc(out, time.Time.Compare)
	return out
}

var (
	isoDay   = pattern.Of(`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})`)
	plainDay = pattern.Of(`^(\d{1,2})[./-](\d{1,2})[./-](\d{2,4})$`)
)

// ParseDay is the day in a cell; days first where both readings are possible.
func ParseDay(c handin.Cell) (time.Time, bool) {
	d, ok, _ := parse(c.Text)
	return d, ok
}

// parse reads a day; cannot is set for what is written as a day and is none.
func parse(text string) (d time.Time, ok, cannot bool) {
	text = strings.TrimSpace(text)
	y, m, n := 0, 0, 0
	if p := isoDay.FindStringSubmatch(text); p != nil {
		y, m, n = whole(p[1]), whole(p[2]), whole(p[3])
	} else if p := wordDay.FindStringSubmatch(text); p != nil {
		if y, m, n = wordsOfDay(p); m == 0 {
			return d, false, false
		}
	} else if p := plainDay.FindStringSubmatch(text); p != nil {
		y, m, n = whole(p[3]), whole(p[2]), whole(p[1])
		if y < 100 {
			y += 2000
		}
		if m > 12 && n <= 12 {
			m, n = n, m
		}
	} else {
		return d, false, false
	}
	d = time.Date(y, time.Month(m), n, 0, 0, 0, 0, time.UTC)
	if m < 1 || m > 12 || n < 1 || d.Day() != n {
		return time.Time{}, false, true
	}
	return d, true, false
}

// whole is a number of figures only; "09" is 9.
func whole(figures string) int {
	n, err := strconv.Atoi(figures)
	if err != nil {
		return 0
	}
	return n
}

// ambiguous reports a day that can be read month first as well.
func ambiguous(text string) bool {
	p := plainDay.FindStringSubmatch(strings.TrimSpace(text))
	if p == nil || strings.Contains(text, ".") {
		return false
	}
	a, b := whole(p[1]), whole(p[2])
	return a <= 12 && b <= 12 && a != b
}

// day looks at the day of one trial.
func day(col *handin.Column, i int, days []time.Time, rules criteria.Rules) (f finding.Found, late, found bool) {
	c := col.Cells[i]
	if c.Kind == sheet.Blank || c.Repeats {
		f, found = missingDay(col, c)
		return f, false, found && rules.Dates
	}
	d, ok, cannot := parse(c.Text)
	switch {
	case cannot:
		return finding.Of(criteria.Dates, graded.Formal, fmt.Sprintf("There is no such day as %s.", c.Text), c).Surely(), false, true
	case !ok:
		return f, false, false
	case !rules.Deadline.IsZero() && d.After(rules.Deadline):
		f = finding.Of(criteria.Deadline, graded.Formal, fmt.Sprintf("This trial is dated %s, after the last day (%s).", d.Format("2 January 2006"), rules.Deadline.Format("2 January 2006")), c).Kinds("late")
		f.Certain = !ambiguous(c.Text)
		return f, true, true
	}
	f, found = dayApart(c, d, days)
	return f, false, found
}

// missingDay is a trial without a day where most have one of their own.
func missingDay(col *handin.Column, c handin.Cell) (f finding.Found, found bool) {
	if c.Kind != sheet.Blank && blocks(col) || 2*typed(col) <= len(col.Cells) || len(col.Cells) < 3 {
		return f, false
	}
	f = finding.Of(criteria.Dates, graded.Formal, "The day of this trial is missing.", handin.Cell{At: c.At})
	f.Certain = !c.Repeats && col.Role == column.Day // a day may be written once for two trials
	return f, true
}

// dayApart asks of a day far from those of the other trials.
func dayApart(c handin.Cell, d time.Time, days []time.Time) (f finding.Found, found bool) {
	if len(days) < 3 {
		return f, false
	}
	off := math.Abs(d.Sub(days[len(days)/2]).Hours()) / 24
	if off <= 9 || off <= 21 && !together(days) {
		return f, false
	}
	return finding.Of(criteria.Dates, graded.Formal, fmt.Sprintf("%s is %.0f days from your other trials. Is it the day the trial was made?", d.Format("2 January 2006"), off), c).Kinds("a day apart"), true
}

// together reports that nearly all days lie within a week of the middle one.
func together(days []time.Time) bool {
	near := 0
	for _, d := range days {
		if math.Abs(d.Sub(days[len(days)/2]).Hours()) <= 7*24 {
			near++
		}
	}
	return 4*near >= 3*len(days)
}

// typed counts the cells that hold a day of their own.
func typed(col *handin.Column) (n int) {
	for _, c := range col.Cells {
		if c.Kind != sheet.Blank && !c.Repeats {
			n++
		}
	}
	return n
}

// blocks reports a column in which a day is written once for several rows: as many
// rows are without one as with.
func blocks(col *handin.Column) bool { return len(col.Cells)-typed(col) >= 2 }

// coded reports a column of the steps of a plan: −, 0 and +, or low and high.
func coded(c *handin.Column) bool {
	signs := 0
	for _, x := range c.Cells {
		text := strings.TrimSpace(x.Text)
		switch {
		case aStep.MatchString(text):
			signs++
		case text != "" && x.Known && x.Value != 0:
			return false
		}
	}
	return signs >= 2
}

var aStep = pattern.Of(`(?i)^(?:[-−–+]1?|\+1|low|mid|middle|high|centre|center)$`)

// needsUnit are the roles whose numbers say nothing without a unit.
func needsUnit(c *handin.Column) bool {
	if c.Field != nil && c.Field.OutOf > 0 || coded(c) { // a score, or the steps of a plan
		return false
	}
	switch c.Role {
	case column.IngredientAmount, column.Hold, column.DrainedAmount:
		return true
	}
	return false
}

var allInUnit = pattern.Of(`(?i)(all|weights?|masses|amounts|quantities|everything|ingredients|times?|hold)[^.]{0,40}\b(in|are|is) (g|grams?|gramme|gramm|minutes?|min|%|percent)\b|\bin (grams?|gramm|grammes|minutes)\b|\bunits?\b.{0,30}\b(g|grams?|min|minutes)\b|\bgrams? (throughout|unless|everywhere)|\bg unless\b|\b(alles|tout|todo|tutto) (in|en) (g|gramm|grammes|gramos|grammi)\b`)

// withoutUnit finds headers without a unit.
func withoutUnit(w *handin.Work) (out []finding.Found) {
	for _, p := range w.Words {
		if allInUnit.MatchString(p.Text) {
			return nil
		}
	}
	for _, t := range w.Tables {
		var lacks []*handin.Column
		for _, col := range t.Columns {
			if needsUnit(col) && col.Known() >= 2 && (col.Field != nil || col.Role == column.Hold) && !hasUnit(col) && (t.Across || !unitNear(w, col)) && !(col.Role == column.Hold && meanHasUnit(t)) && !inOwnUnit(w, t, col) {
				lacks = append(lacks, col)
			}
		}
		if t.Across && slices.ContainsFunc(t.Columns, func(c *handin.Column) bool { return groupUnit.MatchString(c.Whole) && !needsUnit(c) }) {
			lacks = slices.DeleteFunc(lacks, func(c *handin.Column) bool { return c.Role == column.IngredientAmount })
		}
		if len(lacks) > 0 {
			out = append(out, noUnits(lacks))
		}
	}
	return out
}

// unitNear reports a unit in the cell right above or below a header, where the row of units was not
// taken for one: something else stands in it too, beside the table.
func unitNear(w *handin.Work, col *handin.Column) bool {
	first := 0
	for i := range col.Cells {
		if r := col.Cells[i].At.Row; first == 0 || r < first {
			first = r
		}
	}
	for _, h := range w.Log {
		for _, s := range h.Book.Sheets {
			if h.Book.File != col.Heading.File || s.Name != col.Heading.Sheet && col.Heading.Sheet != "" {
				continue
			}
			for _, r := range []int{col.Heading.Row - 1, col.Heading.Row + 1, col.Heading.Row + 2} {
				if r < 1 || r >= first && r > col.Heading.Row {
					continue
				}
				if text := strings.TrimSpace(s.Display(s.At(r, col.Heading.Col))); text != "" && len(strings.Fields(text)) <= 5 && unitAlone.MatchString(text) {
					return true
				}
			}
		}
	}
	return false
}

// unitAlone is a cell that begins with a unit, or ends in one in brackets.
var unitAlone = pattern.Of(`(?i)(^\s*[(\[]?\s*(?:in )?(?:%|g|gr|grams?|kg|oz|ml|min|mins|minutes?|h|s|sec|percent|pct|pcs|°c)(?:[)\]\s,./]|$)|[(\[](?:g|min|ml|%)[)\]]\s*$)`)

// groupUnit is a unit in a title above the labels of a card, which is that of all weights
// below it: "what went in (grams)".
var groupUnit = pattern.Of(`(?i)(\((in )?(g|grams?|gramm|grammes)\)|\bin grams?\b|\bgrams?\s*$)`)

// ownUnit is a unit that a line explains: "1 liang = 50 g".
var ownUnit = pattern.Of(`(?i)\b(?:1|one|a|an) (\pL[\pL.]*)\s*(?:=|is|are|was|weighs|holds|means)\s*(?:about |ca\.? |~ ?)?\d+(?:[.,]\d+)?\s*(?:g|grams?|kg|ml|min|minutes?)\b`)

// inOwnUnit reports a column whose unit the work says elsewhere: a header that names one which a
// line explains, what drained where words say in what, and what stands beside its own grams.
func inOwnUnit(w *handin.Work, t *handin.Table, col *handin.Column) bool {
	if col.Role == column.DrainedAmount && slices.ContainsFunc(w.Words, func(p handin.Phrase) bool { return drainedIn.MatchString(p.Text) }) {
		return true // a rule or a conclusion says in what
	}
	words := strings.FieldsFunc(strings.ToLower(col.Whole), func(r rune) bool { return !unicode.IsLetter(r) })
	for _, p := range w.Words {
		for _, m := range ownUnit.FindAllStringSubmatch(p.Text, -1) {
			one := strings.ToLower(m[1])
			if slices.ContainsFunc(words, func(x string) bool { return x == one || x == one+"s" || x == one+"es" }) {
				return true
			}
		}
	}
	return col.Role == column.IngredientAmount && slices.ContainsFunc(t.Weighed(), func(o *handin.Column) bool {
		return o != col && o.Field.What.Name == col.Field.What.Name && hasUnit(o) && proportional(o, col)
	})
}

// proportional reports two columns of which one is the other times a number that is not 1, in
// three different rows or more.
func proportional(x, y *handin.Column) bool {
	times, seen := 0.0, map[float64]bool{}
	for i, a := range x.Cells {
		b := y.Cells[i]
		if !a.Known || !b.Known || b.Value == 0 {
			continue
		}
		if times == 0 {
			times = a.Value / b.Value
		}
		if math.Abs(a.Value-times*b.Value) > 0.01*a.Value+x.Cells[i].Half {
			return false
		}
		seen[b.Value] = true
	}
	return len(seen) >= 3 && math.Abs(times-1) > 0.05
}

// meanHasUnit reports a unit in the header of a mean hold, which is that of its holds as well.
func meanHasUnit(t *handin.Table) bool {
	h := t.Hold()
	return h != nil && h.Mean() && h.Field != nil && hasUnit(h)
}

// noUnits is one finding of all headers of a table without a unit.
func noUnits(lacks []*handin.Column) finding.Found {
	var heads, with []string
	for _, col := range lacks {
		heads, with = append(heads, say.Quoted(col.Header)), append(with, example(col))
	}
	has, where := "has no unit: write it in the header", "such as "+with[0]
	if len(lacks) > 1 {
		has = "have no unit: write it in each header"
	}
	f := finding.New(criteria.Units, graded.Formal, fmt.Sprintf("%s %s, %s.", say.List(heads), has, where), lacks[0].Heading).Surely()
	for _, col := range lacks[1:] {
		f = f.And(col.Heading)
	}
	return f
}

// atMinute is when something is read: "at 10 min".
var atMinute = pattern.Of(`(?i)(?:\b(?:at|after|in|by|within)\s+|@\s*)?\b\d+\s*(?:min|mins|minutes?|minuten|h|hours?)\b`)

// drainedIn is an amount that words say to have drained, with its unit.
var drainedIn = pattern.Of(`(?i)(?:\b(?:drain|drip|ran|run|we[ep]|leak|los)\w*\b[^.;]{0,30}?\d\s*(?:%|g\b|grams?\b|ml\b|cc\b|per ?cent\b|percent\b|tsp)|\d\s*(?:%|g|grams?|ml|cc|per ?cent|percent|tsp)\b?\s*(?:\w+ ){0,3}(?:drain|drip|ran|run|we[ep]|leak|los))`)

var unitInHeader = pattern.Of(`(?i)(%|\b(g|gr|gms?|grams?|gramm|grammes?|gramos|grammi|kg|mg|oz|lb|ml|l|cl|min|mins|minutes?|minuten|minuti|minutos|h|hr|hrs|hours?|std|stunden|s|sec|secs|seconds?|°?c|°?f|ratio|prozent|percent|pct)\b|°|['’′]$)`)

// inBrackets is a short word in square brackets at the end, where nobody writes anything but
// a unit, whichever it is.
var inBrackets = pattern.Of(`\[[^\]\s]{1,4}\]\s*$`)

// hasUnit reports a unit in the header, above or below it, or in the cells.
func hasUnit(col *handin.Column) bool {
	head := col.Whole
	if col.Role == column.DrainedAmount {
		head = atMinute.ReplaceAllString(head, " ") // when it was read, not in what
	}
	said := unitInHeader.FindString(head)
	if inBrackets.MatchString(col.Whole) {
		return true
	}
	if said != "" && (col.Role == column.Hold || !strings.EqualFold(said, strings.TrimSpace(col.Whole))) || col.UnitBelow != "" || col.Field != nil && (col.Field.Meaning.Unit != units.NoUnit || col.Field.Told) { // GMS by itself is no gram
		return true
	}
	texts := 0
	for _, c := range col.Cells {
		if c.Known && strings.ContainsFunc(c.Text, func(r rune) bool { return r >= 'a' && r <= 'z' || r == '%' }) {
			texts++
		}
	}
	return 2*texts >= col.Known()
}

func example(col *handin.Column) string {
	switch col.Role {
	case column.Hold, column.Rest:
		return col.Header + " min"
	case column.DrainedAmount:
		return col.Header + " %"
	case column.Temperature:
		return col.Header + " °C"
	}
	return col.Header + " g"
}
