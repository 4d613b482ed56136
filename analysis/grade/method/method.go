package method

import (
	"fmt"
	"regexp"
	"slices"

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
		f := finding.New(criteria.Control, graded.Method, "No trial is named as the control, and none is made without what was changed: nothing tells what the change did. Name one, such as the recipe you began with.", at)
		f.Certain = !slices.ContainsFunc(w.Words, func(p handin.Phrase) bool {
			return (mayNameControl.MatchString(p.Text) || namesControl.MatchString(p.Text)) && !deniesControl.MatchString(p.Text)
		})
		out = append(out, f)
	} else if rules.Control {
		out = append(out, controlsOfTasks(w, designs)...)
	}
	if rules.Control {
		out = append(out, halfControls(designs)...)
	}
	if rules.Repeats && n >= 2 && !repeated(designs) {
		f := finding.New(criteria.Repeats, graded.Method, "No formula was made twice, so nobody can tell a difference from what two makings of one formula differ by. Make one of them again.", at).Surely()
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
	if n < rules.Trials {
		out = append(out, finding.New(criteria.LeastTrials, graded.Method, fmt.Sprintf("There are %d trials; at least %d were asked for.", n, rules.Trials), at).Surely())
	}
	return out
}

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
var namesControl = regexp.MustCompile(`(?i)(control|ctrl|kontroll|témoin|temoin|testigo|controllo|baseline|reference (trial|recipe|formula|foam)|starting (recipe|formula|point)|compared? (with|to|against) (trial|test|the (first|base|original|house|starting))|base (recipe|formula)|original recipe)`)

// mayNameControl are words that may be meant to.
var mayNameControl = regexp.MustCompile(`(?i)(\bstart(ed|ing)? (with|from|point)|\b(original|usual|normal|plain|unchanged|house|standard|book) (recipe|formula|mix|foam|trial|one)|\bcompar(ed|ing|e) (with|to|against)\b|\bbenchmark)`)

var deniesControl = regexp.MustCompile(`(?i)(\b(no|not a|never a|lacks a) control|without (a )?control|forgot (the|a) control|did not (make|do|have) (a |the )?control|didn'?t (make|do|have) (a |the )?control|control (the|over) )`)

// justCompares reports a label with a number beside it, "best minus control | 22", that
// says of no trial that it is the control.
func justCompares(p handin.Phrase) bool { return aNumber.MatchString(p.Right) && p.Note == nil }

var aNumber = regexp.MustCompile(`^\s*[-−]?\d+(?:[.,]\d+)?\s*(?:min|minutes)?\s*$`)

// hasControl reports a control: by its name, by words, or a trial without the
// emulsifier that others have.
func hasControl(w *handin.Work, designs []Design) bool {
	for _, x := range w.Trials() {
		if x.IsControl() {
			return true
		}
	}
	for _, p := range w.Words {
		if namesControl.MatchString(p.Text) && !deniesControl.MatchString(p.Text) && !justCompares(p) {
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

// changedTogether asks of a plan in which no factor was ever changed by itself.
func (d *Design) changedTogether() (f finding.Found, ok bool) {
	varied := []string{}
	for _, o := range []Factor{Fat, Emulsifier, HLB} {
		if !d.Varies(o) {
			continue
		}
		if d.Separates(o) {
			return f, false
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
		case e == 0 && len(d.points[i].parts) > 1 && d.points[i].mixed:
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
