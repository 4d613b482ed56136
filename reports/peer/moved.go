package peer

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// moved is what moved the result.
func (b pages) moved() document.Section {
	s := document.Section{ID: "effects", Title: "What moved the hold", Reader: document.Scientist}
	var items []document.Text
	for i, e := range b.R.Effects {
		items = append(items, b.effect(fmt.Sprintf("effects[%d]", i), e))
	}
	for i, c := range b.R.Choices {
		items = append(items, b.choice(fmt.Sprintf("choices[%d]", i), c)...)
	}
	for i, c := range b.R.Averaged {
		items = append(items, b.averaged(fmt.Sprintf("averaged[%d]", i), c)...)
	}
	for i, v := range b.R.Variables {
		if v.FixedAt != nil && v.Assumed > 0 {
			p := fmt.Sprintf("variables[%d]", i)
			items = append(items, say.Text("Not every trial says the "+b.Label(v.Name)+": ", say.Count(p+".assumed_in", v.Assumed),
				" are taken to have had the usual, ", b.Amount(p+".fixed_at", v.Name, *v.FixedAt), "."))
		}
	}
	for i, p := range b.R.Peaks {
		items = append(items, b.peak(fmt.Sprintf("peaks[%d]", i), p))
	}
	if len(items) > 0 {
		s.Blocks = append(s.Blocks, document.List{Items: items})
	}
	s.Blocks = b.picture(s.Blocks, "effects")
	if c := b.R.Confounded; len(c) > 0 {
		var told []document.Text
		for _, one := range c {
			told = append(told, say.Sentence(one.Sentence))
		}
		s.Blocks = append(s.Blocks, say.Head("What these trials do not separate"), document.List{Items: told})
	}
	var aside []document.Text
	for i, v := range b.R.SetAside {
		t := say.Text(b.Label(v.Name) + ": ")
		if v.Value != nil {
			t = say.Text(t, "always ", say.Trimmed(fmt.Sprintf("variables_set_aside[%d].value", i), *v.Value, 2), "; ")
		}
		aside = append(aside, say.Capital(say.Text(t, say.Ended(v.Reason))))
	}
	if len(aside) > 0 && len(s.Blocks) > 0 {
		s.Blocks = append(s.Blocks, say.Head("Logged, but not part of this"), document.List{Items: aside})
	}
	return s
}

// choice says what the trials' different emulsifiers or fats do to the hold.
func (b pages) choice(path string, c result.Choice) (items []document.Text) {
	if c.Held == "" {
		return nil
	}
	for i, l := range c.Levels {
		p := fmt.Sprintf("%s.levels[%d]", path, i)
		name := l.Name
		if name == "others" {
			name = "the others"
		}
		many := " trials"
		if l.Trials == 1 {
			many = " trial"
		}
		which := say.Text(name+" (", say.Count(p+".trials", l.Trials), many+")")
		switch f := l.HoldFactor; {
		case f == nil:
		case l.Verdict == result.CannotTell:
			items = append(items, say.Text("These trials do not show whether ", which, " in place of "+c.Held+" changes the hold."))
		default:
			firm := firmly(wording.Showing(l.Verdict))
			items = append(items, say.Text(firm, "with ", which, " in place of "+c.Held+", the same numbers hold ",
				say.Num(p+".hold_factor.mid", f.Mid, 1), " times as long (", say.Num(p+".hold_factor.low", f.Low, 1), " to ", say.Num(p+".hold_factor.high", f.High, 1), ")."))
		}
	}
	if len(items) > 0 {
		items = append(items, say.Text("The starts are made with "+c.Held+" and rest on where it was tried; the others are not taken for it, whatever their HLB."))
	}
	return items
}

// averaged says who or what a trial is not chosen by, and what it does all the same.
func (b pages) averaged(path string, c result.Choice) (items []document.Text) {
	tested, of := b.compared(c.By)
	for i, l := range c.Levels {
		f := l.HoldFactor
		if f == nil || l.Verdict != result.Clear { // days and cooks go together too often for less
			continue
		}
		firm := result.Shown
		if tested != result.Shown { // no firmer than the test between them
			firm = result.Suggested
		}
		p := fmt.Sprintf("%s.levels[%d]", path, i)
		items = append(items, say.Text(firmly(firm), "made by "+l.Name+" (", say.Count(p+".trials", l.Trials), " trials), the same numbers hold ",
			say.Num(p+".hold_factor.mid", f.Mid, 1), " times as long as on average (", say.Num(p+".hold_factor.low", f.Low, 1), " to ", say.Num(p+".hold_factor.high", f.High, 1), ")."))
	}
	last := say.Text("The chances are for a mix made by any " + c.By + " of this log.")
	switch {
	case len(items) > 0:
	case tested == result.Shown || tested == result.Suggested:
		last = say.Text(firmly(tested), outcomeWord(of)+" differs from one "+c.By+" to another (see Days, cooks, canisters, lots and settings). ", last)
	default:
		last = say.Text("These trials do not show whether it matters who makes the mix. ", last)
	}
	return append(items, last)
}

// compared is the firmest that a test says of these, and of which result.
func (b pages) compared(by string) (firmest result.Showing, of string) {
	firmest = result.NotTested
	for _, e := range b.R.GroupEffects {
		switch is := wording.Compared(e); {
		case e.By != by || is == result.NotTested || firmest == result.Shown:
		case is == result.Shown, is == result.Suggested, firmest == result.NotTested:
			firmest, of = is, e.Result
		}
	}
	return firmest, of
}

// firmly leads a sentence with how firmly it is stated.
func firmly(s result.Showing) document.Span {
	return document.Span{Text: wording.Capital(string(s)) + ": ", Strong: true}
}

// outcomeWord is a result in a sentence.
func outcomeWord(name string) string {
	if name == string(result.DrainedPercent) {
		return "what drains"
	}
	return strings.TrimSuffix(strings.ReplaceAll(name, "_", " "), " minutes")
}

// more is a variable that rises, where "more" is not the word for it.
var more = map[string]string{wording.BlendHLB: "a higher HLB", "temperature_c": "a higher temperature",
	"chargers": "one more charger", "shakes": "shaking more often"}

// effect says one trend no more firmly than it is known.
func (b pages) effect(path string, e result.Effect) document.Text {
	what := more[e.Variable]
	if what == "" {
		what = "more " + b.Label(e.Variable)
	}
	low, high := -1, -1
	for i, t := range e.Tested {
		if t && low < 0 {
			low = i
		}
		if t {
			high = i
		}
	}
	if e.Verdict == result.CannotTell || low < 0 {
		return say.Text("These trials do not show whether " + what + " changes the hold.")
	}
	firm := firmly(wording.Showing(e.Verdict))
	x := func(i int) string { return fmt.Sprintf("%s.x[%d]", path, i) }
	hold := func(i int) document.Text {
		if w := b.R.WatchedMinutes; w != nil && e.Hold[i].Mid > *w {
			return say.Text("more than ", say.Trimmed("watched_minutes", *w, 1), " minutes")
		}
		return say.Text("about ", say.Num(fmt.Sprintf("%s.hold_minutes[%d].mid", path, i), e.Hold[i].Mid, 0), " minutes")
	}
	way := "lengthens"
	if e.Change.Mid < 1 {
		way = "shortens"
	}
	if w := b.R.WatchedMinutes; w != nil && e.Shape != result.Peaks && e.Hold[low].Mid > *w && e.Hold[high].Mid > *w {
		return say.Text(firm, what+" "+way+" the hold, all else as in the start. By how much is not known: nobody watched past ",
			say.Trimmed("watched_minutes", *w, 1), " minutes.")
	}
	if e.Shape == result.Peaks && e.Peak != nil && *e.Peak < len(e.X) {
		top := *e.Peak
		return say.Text(firm, "the foam holds longest at about ", b.Amount(x(top), e.Variable, e.X[top]), ", for ", hold(top), "; it holds ",
			hold(low), " at ", b.Amount(x(low), e.Variable, e.X[low]), " and ", hold(high), " at ", b.Amount(x(high), e.Variable, e.X[high]), ", all else as in the start.")
	}
	return say.Text(firm, what+" "+way+" the hold, from ", hold(low), " at ",
		b.Amount(x(low), e.Variable, e.X[low]), " to ", hold(high), " at ", b.Amount(x(high), e.Variable, e.X[high]), ", all else as in the start.")
}

// peak says where more of a variable stops helping.
func (b pages) peak(path string, p result.Peak) document.Text {
	at := b.Amount(path+".best", p.Variable, p.Best)
	switch p.AtEdge {
	case "low":
		return say.Text("A mix works most often at ", at, ", the least that was tried, all else as in the start.")
	case "high":
		return say.Text("A mix works most often at ", at, ", the most that was tried, all else as in the start; more may help.")
	}
	return say.Text("A mix works most often at about ", at, ", all else as in the start; the best may lie anywhere from ",
		b.Span(path+".low", path+".high", p.Variable, p.Low, p.High), " (90 % limits).")
}
