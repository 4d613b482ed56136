package method

import (
	"fmt"
	"foamfield/ingest/pattern"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Check finds what the plan of a work lacks. What is missing is said at the first trial:
// no other cell is to blame.
func Check(w *handin.Work, designs []Design, rules criteria.Rules) (out []finding.Found) {
	n := len(w.Trials())
	if n == 0 {
		return nil
	}
	at := w.Tables[0].Trials[0].Table.Columns[0].Cells[0].At
	if rules.Control && !hasControl(w, designs) {
		f := finding.New(criteria.Control, graded.Method, "No trial is named as the control, and none is made without what was changed: nothing says what the others are to be compared with. Name one, such as the recipe you began with.", at)
		f.Certain = !mayHaveControl(w)
		out = append(out, f)
	} else if rules.Control {
		out = append(out, controlsOfTasks(w, designs)...)
	}
	if rules.Control {
		out = append(out, halfControls(designs)...)
	}
	squirts := squirtsAsRepeats(w)
	if rules.Repeats {
		out = append(out, squirts...)
	}
	if rules.Repeats && n >= 2 && repeated(designs) && !madeTwice(designs) {
		out = append(out, finding.New(criteria.Repeats, graded.Method, "A note speaks of a repeat, and by the grams no two trials are of one formula. Which was made twice?", at).Kinds(NoneMadeTwice))
	}
	if rules.Repeats && n >= 2 && !repeated(designs) && len(squirts) == 0 {
		f := finding.New(criteria.Repeats, graded.Method, "No formula was made twice, so nobody can tell a difference from what two makings of one formula differ by. Make one of them again.", at)
		f.Certain = !w.May(mayRepeat, nil)
		if slices.ContainsFunc(designs, func(d Design) bool { return d.ReadTwice() }) {
			f = finding.New(criteria.Repeats, graded.Method, "Each hold is there more than once. Are these new mixes of the formula, or readings of one? Only new mixes are repeats.", at).Kinds(TwiceInARow)
		}
		out = append(out, f)
	}
	for i := range designs {
		if f, ok := designs[i].changedTogether(); ok {
			out = append(out, f)
		}
	}
	out = append(out, contrasts(w, designs)...)
	out = append(out, aimsElsewhere(w, designs)...)
	if n < rules.Trials {
		out = append(out, finding.New(criteria.LeastTrials, graded.Method, fmt.Sprintf("There are %d trials; at least %d were asked for.", n, rules.Trials), at).Surely())
	}
	return out
}

// madeTwice reports two trials of one formula by their grams, or trials of which these are not known.
func madeTwice(designs []Design) bool {
	for i := range designs {
		d := &designs[i]
		for a := range d.Trials {
			if len(d.points[a].parts) < 2 || !d.points[a].mixed {
				return true
			}
			for b := range a {
				if d.Same(a, b) {
					return true
				}
			}
		}
		if d.ReadTwice() || slices.ContainsFunc(d.Tables, saysRepeat) {
			return true
		}
	}
	return false
}

// NoneMadeTwice is the kind of the question where a repeat is spoken of, and no two trials are of one formula.
const NoneMadeTwice = "no formula made twice"

// TwiceInARow is the kind of the question whether two holds of a trial are two makings.
const TwiceInARow = "hold twice in a row"

func repeated(designs []Design) bool {
	for i := range designs {
		if designs[i].Repeated() {
			return true
		}
	}
	return false
}

// namesControl are words that make one of the trials the control.
var namesControl = pattern.Of(`(?i)(control|ctrl|kontroll|témoin|temoin|testigo|controllo|baseline|reference (trial|recipe|formula|foam)|starting (recipe|formula|point)|compared? (with|to|against) (trial|test|the (first|base|original|house|starting))|base (recipe|formula)|original recipe)`)

// mayNameControl are words that may be meant to.
var mayNameControl = pattern.Of(`(?i)(\b(always|usually|normally|otherwise|what we) (make|made|use|used|do|cook|serve)\b|\bstart(ed|ing)? (with|from|point)|\b(original|usual|normal|plain|unchanged|house|standard|book) (recipe|formula|mix|foam|trial|one)|\bcompar(ed|ing|e) (with|to|against)\b|\bbenchmark)`)

// mayRepeat are words that may speak of a formula made twice.
var mayRepeat = pattern.Of(`(?i)(\brep(eat|eats|eated|etition)?s?\b|repli|\bagain\b|\btwice\b|\bboth (times|days|cans|canisters|batches|goes)|\b(second|third|2nd|3rd|two|three|2|3) (go|goes|time|times|batch|batches|mix|mixes|making|makings|canister|canisters|can|cans|siphon|siphons|bottles?|attempts?|tries|runs|portions|foams)\b|\bonce more\b|\banother (go|time|batch|mix|can)|\bsame (mix|formula|recipe|weights|as|again|blend)|duplic|triplic|in pairs|\bpairs?\b|\bmeans?\b|average|±|\bs\.?d\.?\b|scatter|spread|\bn ?= ?\d|\d ?[x×]\b|\b[x×] ?\d|\bbis\b|\bidem\b|\bditto\b|wiederh|nochmal|zweite|\bwdh|mittel|durchschnitt|moyenne|répét|deux fois|media\b|promedio|dos veces|due volte|ripet)`)

// mayHaveControl reports words that may name a control, and were not heard as doing so: of
// a recipe that others are held against, or of a trial by its number without any result.
func mayHaveControl(w *handin.Work) bool {
	for _, p := range w.Words {
		if (mayNameControl.MatchString(p.Text) || namesControl.MatchString(p.Text)) && !deniesControl.MatchString(p.Text) {
			return true
		}
		if p.Note == nil && !results.MatchString(p.Text) && namesTrial(w, p.Text) {
			return true
		}
	}
	return w.May(unsaidControl, nil)
}

// unsaidControl are words for a control that are too common to name one.
var unsaidControl = pattern.Of(`(?i)(\b(nothing|none|zero|without|bare|blank|neat|pure|naked|untreated|plain|unchanged|usual|normal|regular|classic|house|original|initial|reference|ref|standard|base|basic|starting|began|begin|oldest|known|old recipe|first recipe|null|nil|ohne|sans|sin|senza|nackt|témoin|nullprobe)\b|\bto compare|\bcompar|\bagainst (it|that|the|no|trial|card|t?\d)|\bkontroll)`)

// results are words of what a foam did: a sentence with them says why it names a trial.
var results = pattern.Of(`(?i)\b(held|hold|holds|stood|stands?|lasted|longest|shortest|best|better|worst|drained|drains|drip|dripped|stable|clogged|split|worked|works|min|minutes|won|wins|winner)\b`)

var trialNumber = pattern.Of(`(?i)(?:\b(?:trial|test|run|batch|card|mix|foam|recipe|formula|no\.?|nr\.?|number)\s*|#)([\p{L}\p{N}]{1,4})\b|\b(\p{L}{0,2}\d{1,2}[a-z]?|\p{Lu})\b`)

// namesTrial reports words that name a trial of a work by its number.
func namesTrial(w *handin.Work, text string) bool {
	for _, m := range trialNumber.FindAllStringSubmatch(text, -1) {
		if id := m[1] + m[2]; strings.ContainsAny(id, "0123456789") == (m[1] == "") && len(w.ByID(id)) > 0 && !strings.Contains(text, id+" %") && !strings.Contains(text, id+" g") {
			return true
		}
		if m[1] != "" && len(w.ByID(m[1])) > 0 {
			return true
		}
	}
	return false
}

var deniesControl = pattern.Of(`(?i)(\b(no|not a|never a|lacks a) control|without (a )?control|forgot (the|a) control|did not (make|do|have) (a |the )?control|didn'?t (make|do|have) (a |the )?control|control (the|over) )`)

// justCompares reports a label with a number beside it, "best minus control | 22", that
// says of no trial that it is the control.
func justCompares(p handin.Phrase) bool { return aNumber.MatchString(p.Right) && p.Note == nil }

var aNumber = pattern.Of(`^\s*[-−]?\d+(?:[.,]\d+)?\s*(?:min|minutes)?\s*$`)

// hasControl reports a control: by its name, by words, or a trial without the
// emulsifier that others have.
func hasControl(w *handin.Work, designs []Design) bool {
	for _, x := range w.Trials() {
		if x.IsControl() || x.Bare() && slices.ContainsFunc(x.Table.Trials, func(o *handin.Trial) bool { return !o.Bare() }) {
			return true
		}
	}
	for _, p := range w.Words {
		if namesControl.MatchString(p.Text) && !deniesControl.MatchString(p.Text) && !asksControl.MatchString(p.Text) && !justCompares(p) {
			return true
		}
	}
	for i := range designs {
		if designs[i].hasNone() {
			return true
		}
	}
	return false
}

// asksControl are words of what was to be done, and not of what was.
var asksControl = pattern.Of(`(?i)\b(task|assignment|asked|to be handed in|must (?:have|contain|include)|should (?:have|contain|include)|required|checklist|hand[- ]in (?:has|needs|must))\b`)

// changedTogether asks of a plan in which no factor was ever changed by itself.
func (d *Design) changedTogether() (f finding.Found, ok bool) {
	varied := []string{}
	for _, o := range []Factor{Fat, Emulsifier, HLB} {
		if !d.Varies(o) {
			continue
		}
		if d.Separates(o) {
			continue
		}
		varied = append(varied, "the "+o.String())
	}
	if len(varied) < 2 {
		return f, false
	}
	var at []trial.Place
	for i, x := range d.Trials {
		n := 0
		for _, o := range []Factor{Fat, Emulsifier, HLB} {
			if i > 0 && d.Differ(i, 0, o) {
				n++
			}
		}
		if n >= 2 {
			at = append(at, x.Table.Columns[0].Cells[x.Index].At)
		}
	}
	if len(at) == 0 {
		return f, false
	}
	return finding.New(criteria.OneChange, graded.Method, fmt.Sprintf("Several things were changed together here: %s. Which of them would a difference come from?", say.List(varied)), at...), true
}

// hasNone reports a trial without emulsifier beside trials with some.
func (d *Design) hasNone() bool {
	none, some := false, false
	for i := range d.points {
		switch e := d.points[i].emulsifier; {
		case e == 0 && max(len(d.points[i].parts), d.points[i].written) > 1 && d.points[i].mixed:
			none = true
		case e > 0:
			some = true
		}
	}
	return none && some
}

// halfControls asks of a control that has one emulsifier, where all others have two: it
// shows what the other one does, and not what the emulsifiers do.
func halfControls(designs []Design) (out []finding.Found) {
	for i := range designs {
		d := &designs[i]
		if d.hasNone() {
			continue
		}
		for _, x := range d.Trials {
			if mine := emulsifiersOf(x); x.IsControl() && len(mine) == 1 && !slices.ContainsFunc(d.Trials, func(o *handin.Trial) bool { return o != x && !o.IsControl() && len(emulsifiersOf(o)) < 2 }) {
				out = append(out, finding.New(criteria.Control, graded.Method, fmt.Sprintf("Your control has %s g of one emulsifier, and the others have both. Was a foam without any made? It would show what they do.", mine[0].Text),
					x.Table.Columns[0].Cells[x.Index].At, mine[0].At).Kinds("control with emulsifier"))
			}
		}
	}
	return out
}

// emulsifiersOf are the cells of the emulsifiers that a trial has.
func emulsifiersOf(x *handin.Trial) (cells []handin.Cell) {
	for _, c := range x.Table.Weighed() {
		if cell := c.Cells[x.Index]; c.Field.What.WeighedAsEmulsifier() && cell.Known && cell.Value > 0 {
			cells = append(cells, cell)
		}
	}
	return cells
}

// controlsOfTasks asks of a second task that has no control of its own.
func controlsOfTasks(w *handin.Work, designs []Design) (out []finding.Found) {
	for i := range designs {
		d := &designs[i]
		if len(designs) < 2 || len(d.Trials) < 3 || d.hasNone() || slices.ContainsFunc(d.Trials, func(x *handin.Trial) bool { return x.IsControl() }) {
			continue
		}
		if i > 0 || !namedInWords(w) {
			out = append(out, finding.New(criteria.Control, graded.Method, "Which of these trials is the control of this task?", d.Tables[0].Columns[0].Cells[0].At))
		}
	}
	return out
}

func namedInWords(w *handin.Work) bool {
	return slices.ContainsFunc(w.Words, func(p handin.Phrase) bool { return namesControl.MatchString(p.Text) })
}
