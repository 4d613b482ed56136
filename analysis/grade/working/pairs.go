package working

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
)

// A sheet of pairs says of two trials what was changed between them, and what came of it.

var (
	between  = pattern.Of(`(?i)\s*(?:\band\b|\bvs\.?|\bversus\b|\bto\b|\bagainst\b|&|/|→|->|–|,|-|\bminus\b)\s*`)
	only     = pattern.Of(`(?i)\b(only|just|nothing (?:else )?but|alone)\b`)
	nothing  = pattern.Of(`(?i)^\s*(nothing|none|no change|a repeat|repeat|same|identical|-)\b`)
	changing = pattern.Of(`(?i)(differ\w*|chang\w*|gain\w*|longer|effect|minus|Δ|delta)`)
	things   = []struct {
		words *pattern.Pattern
		thing method.Thing
	}{
		{pattern.Of(`(?i)\b(butter|fat|ghee|oil|cream)\b`), method.Thing{Factor: method.Fat}},
		{pattern.Of(`(?i)\b(emulsifiers?|dose|powders?)\b`), method.Thing{Factor: method.Emulsifier}},
		{pattern.Of(`(?i)\b(blend|hlb|ratio)\b`), method.Thing{Factor: method.HLB}},
		{pattern.Of(`(?i)\b(chargers?|gas)\b`), method.Thing{Setting: "chargers"}},
		{pattern.Of(`(?i)\b(rest\w*|chill\w*|fridge)\b`), method.Thing{Setting: "rest_minutes"}},
		{pattern.Of(`(?i)\b(temperature|cold|warm)\b`), method.Thing{Setting: "temperature_c"}},
	}
)

// pair are the two trials that a text names and nothing else, nil for any other text.
func (d *desk) pair(text string) (out []*handin.Trial) {
	parts := between.Split(strings.TrimSpace(text), -1)
	if len(parts) != 2 {
		return nil
	}
	for _, p := range parts {
		found := d.Work.ByID(p)
		if len(found) != 1 {
			return nil
		}
		out = append(out, found[0])
	}
	return out
}

// compared judges a row on a pair of trials.
func (d *desk) compared(r handin.Row, heads []handin.Cell, pair []*handin.Trial) {
	design := d.Design(pair[0].Table)
	a, b := slices.Index(design.Trials, pair[0]), slices.Index(design.Trials, pair[1])
	if a < 0 || b < 0 {
		return
	}
	for _, c := range r.Cells[1:] {
		head := ""
		for _, h := range heads {
			if h.At.Col == c.At.Col {
				head = h.Text
			}
		}
		switch {
		case c.Known && changing.MatchString(head) && !strings.Contains(head, "%"):
			d.difference(c, head, pair)
		case c.Kind == sheet.Text && c.At.Col != r.Cells[0].At.Col:
			d.changedOnly(c, design, a, b)
		}
	}
}

// difference holds a difference between two trials against their results.
func (d *desk) difference(c handin.Cell, head string, pair []*handin.Trial) {
	m := measureOf(head)
	a, aHigh, ok1 := d.Seen(pair[0], m)
	b, bHigh, ok2 := d.Seen(pair[1], m)
	if !ok1 || !ok2 || a != aHigh || b != bHigh || math.Abs(math.Abs(c.Value)-math.Abs(b-a)) <= max(c.Half, 0.051) {
		return
	}
	f := finding.Of(criteria.Means, graded.Calculation, fmt.Sprintf("%s was typed, and by your trials it is %s − %s = %s.", c.Text, verdict.Num(b), verdict.Num(a), verdict.Num(b-a)), c).ShouldBe(b - a)
	d.out = append(d.out, f)
}

// changedOnly holds "only the blend" against what differs between two trials.
func (d *desk) changedOnly(c handin.Cell, design *method.Design, a, b int) {
	all, known := design.Changed(a, b)
	if !known {
		return
	}
	if nothing.MatchString(c.Text) {
		if len(all) > 0 {
			var names []string
			for _, t := range all {
				names = append(names, t.String())
			}
			d.ask(c, fmt.Sprintf("“%s”: by your table %s changed. Is it a repeat?", c.Text, say.List(names)))
		}
		return
	}
	var said []method.Thing
	for _, t := range things {
		if t.words.MatchString(c.Text) {
			said = append(said, t.thing)
		}
	}
	if len(said) != 1 || len(strings.Fields(c.Text)) > 8 || said[0].Factor == method.Fat && design.Alone(a, b, method.Fat) {
		return
	}
	var more []string
	for _, t := range all {
		if t != said[0] {
			more = append(more, t.String())
		}
	}
	if len(more) == 0 || !only.MatchString(c.Text) && len(strings.Fields(c.Text)) > 3 {
		return
	}
	d.ask(c, fmt.Sprintf("“%s”: between these two trials %s changed as well, so they do not show what the %s does.", c.Text, say.List(more), strings.TrimPrefix(said[0].String(), "the ")))
}

// ask is a question on the plan.
func (d *desk) ask(c handin.Cell, words string) {
	d.out = append(d.out, finding.Of(criteria.OneChange, graded.Method, words, c).Kinds("changed together"))
}
