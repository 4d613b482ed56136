package reports

import (
	"fmt"
	"maps"
	"slices"

	"foamfield/analysis/result"
)

// region is where it works and what ends it.
func (b *builder) region() Section {
	s := Section{ID: "region", Title: "Where it works, and what ends it", Reader: Scientist}
	s.Blocks = b.picture(nil, "region-emulsifier", "region-hlb", "fat-limit")
	if len(b.r.FatLimit) == 0 {
		return s
	}
	t := Table{Caption: "The surest mix at each fat percent, and what it fails first by.",
		Head: []string{"fat, %", "emulsifier", "HLB", "works" + b.given().String(), "fails first by"}, Numeric: []bool{true, true, true, false, false}}
	shown := b.someFats()
	for _, i := range shown {
		l := b.r.FatLimit[i]
		p := fmt.Sprintf("fat_limit[%d]", i)
		row := []Text{say(num(p+".fat_percent", l.FatPercent, 1)), nil, nil,
			chanceAndLimit(p+".chance", l.Chance.Mean, l.Chance.Low, b.r.Targets.WantedChance.Value), say(b.failings(l.LimitedBy))}
		switch {
		case l.Mix.EmulsifierPercent != nil:
			row[1] = say(num(p+".mix.emulsifier_percent", *l.Mix.EmulsifierPercent, 1), " %")
		case l.Mix.EmulsifierGrams != nil:
			row[1] = say(num(p+".mix.emulsifier_grams", *l.Mix.EmulsifierGrams, 1), " g")
		}
		if l.Mix.BlendHLB != nil {
			row[2] = say(num(p+".mix.blend_hlb", *l.Mix.BlendHLB, 1))
		}
		t.Rows = append(t.Rows, row)
	}
	if n := len(b.r.FatLimit); n > len(shown) {
		t.Cut = fmt.Sprintf("All %d steps are in report.xlsx.", n)
	}
	s.Blocks = append(s.Blocks, t)
	return s
}

// mostFats is how many rows show how a chance falls with the fat.
const mostFats = 7

// someFats are the fat percents worth a row: evenly spread, and the last that works.
func (b *builder) someFats() (out []int) {
	n, last := len(b.r.FatLimit), -1
	for i, l := range b.r.FatLimit {
		if l.Workable {
			last = i
		}
	}
	if n <= mostFats {
		for i := range n {
			out = append(out, i)
		}
		return out
	}
	for k := range mostFats {
		out = append(out, k*(n-1)/(mostFats-1))
	}
	if last >= 0 && !slices.Contains(out, last) {
		near := 1 // neither end
		for k := 1; k < mostFats-1; k++ {
			if max(out[k]-last, last-out[k]) < max(out[near]-last, last-out[near]) {
				near = k
			}
		}
		out[near] = last
	}
	return out
}

// moved is what moved the result.
func (b *builder) moved() Section {
	s := Section{ID: "effects", Title: "What moved the hold", Reader: Scientist}
	var items []Text
	for i, e := range b.r.Effects {
		items = append(items, b.effect(fmt.Sprintf("effects[%d]", i), e))
	}
	for i, c := range b.r.Choices {
		items = append(items, b.choice(fmt.Sprintf("choices[%d]", i), c)...)
	}
	for i, c := range b.r.Averaged {
		items = append(items, b.averaged(fmt.Sprintf("averaged[%d]", i), c)...)
	}
	for i, v := range b.r.Variables {
		if v.FixedAt != nil && v.Assumed > 0 {
			p := fmt.Sprintf("variables[%d]", i)
			items = append(items, say("Not every trial says the "+b.label(v.Name)+": ", count(p+".assumed_in", v.Assumed),
				" are taken to have had the usual, ", b.amount(p+".fixed_at", v.Name, *v.FixedAt), "."))
		}
	}
	for i, p := range b.r.Peaks {
		items = append(items, b.peak(fmt.Sprintf("peaks[%d]", i), p))
	}
	if len(items) > 0 {
		s.Blocks = append(s.Blocks, List{Items: items})
	}
	s.Blocks = b.picture(s.Blocks, "effects")
	if c := b.r.Confounded; len(c) > 0 {
		var told []Text
		for _, one := range c {
			told = append(told, capital(say(sentence(one.Sentence))))
		}
		s.Blocks = append(s.Blocks, head("What these trials do not separate"), List{Items: told})
	}
	var aside []Text
	for i, v := range b.r.SetAside {
		t := say(b.label(v.Name) + ": ")
		if v.Value != nil {
			t = say(t, "always ", trimmed(fmt.Sprintf("variables_set_aside[%d].value", i), *v.Value, 2), "; ")
		}
		aside = append(aside, capital(say(t, sentence(v.Reason))))
	}
	if len(aside) > 0 && len(s.Blocks) > 0 {
		s.Blocks = append(s.Blocks, head("Logged, but not part of this"), List{Items: aside})
	}
	return s
}

// choice says what the trials' different emulsifiers or fats do to the hold.
func (b *builder) choice(path string, c result.Choice) (items []Text) {
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
		which := say(name+" (", count(p+".trials", l.Trials), many+")")
		switch f := l.HoldFactor; {
		case f == nil:
		case l.Verdict == result.CannotTell:
			items = append(items, say("These trials do not show whether ", which, " in place of "+c.Held+" changes the hold."))
		default:
			firm := map[result.Verdict]string{result.Clear: "Clear: ", result.Likely: "Likely: "}[l.Verdict]
			items = append(items, say(Span{Text: firm, Strong: true}, "with ", which, " in place of "+c.Held+", the same numbers hold ",
				num(p+".hold_factor.mid", f.Mid, 1), " times as long (", num(p+".hold_factor.low", f.Low, 1), " to ", num(p+".hold_factor.high", f.High, 1), ")."))
		}
	}
	if len(items) > 0 {
		items = append(items, say("The starts are made with "+c.Held+" and rest on where it was tried; the others are not taken for it, whatever their HLB."))
	}
	return items
}

// averaged says who or what a trial is not chosen by, and what it does all the same.
func (b *builder) averaged(path string, c result.Choice) (items []Text) {
	told := false
	for i, l := range c.Levels {
		f := l.HoldFactor
		if f == nil || l.Verdict != result.Clear { // days and cooks go together too often for less
			continue
		}
		told = true
		p := fmt.Sprintf("%s.levels[%d]", path, i)
		items = append(items, say(Span{Text: "Clear: ", Strong: true}, "made by "+l.Name+" (", count(p+".trials", l.Trials), " trials), the same numbers hold ",
			num(p+".hold_factor.mid", f.Mid, 1), " times as long as on average (", num(p+".hold_factor.low", f.Low, 1), " to ", num(p+".hold_factor.high", f.High, 1), ")."))
	}
	last := "The chances are for a mix made by any " + c.By + " of this log."
	if !told {
		last = "These trials do not show whether it matters who makes the mix. " + last
	}
	return append(items, say(last))
}

// more is a variable that rises, where "more" is not the word for it.
var more = map[string]string{blendHLB: "a higher HLB", "temperature_c": "a higher temperature",
	"chargers": "one more charger", "shakes": "shaking more often"}

// effect says one trend no more firmly than it is known.
func (b *builder) effect(path string, e result.Effect) Text {
	what := more[e.Variable]
	if what == "" {
		what = "more " + b.label(e.Variable)
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
		return say("These trials do not show whether " + what + " changes the hold.")
	}
	firm := "Clear: "
	if e.Verdict == result.Likely {
		firm = "Likely: "
	}
	x := func(i int) string { return fmt.Sprintf("%s.x[%d]", path, i) }
	hold := func(i int) Text {
		if w := b.r.WatchedMinutes; w != nil && e.Hold[i].Mid > *w {
			return say("more than ", trimmed("watched_minutes", *w, 1), " minutes")
		}
		return say("about ", num(fmt.Sprintf("%s.hold_minutes[%d].mid", path, i), e.Hold[i].Mid, 0), " minutes")
	}
	way := "lengthens"
	if e.Change.Mid < 1 {
		way = "shortens"
	}
	if w := b.r.WatchedMinutes; w != nil && e.Shape != result.Peaks && e.Hold[low].Mid > *w && e.Hold[high].Mid > *w {
		return say(Span{Text: firm, Strong: true}, what+" "+way+" the hold, all else as in the start. By how much is not known: nobody watched past ",
			trimmed("watched_minutes", *w, 1), " minutes.")
	}
	if e.Shape == result.Peaks && e.Peak != nil && *e.Peak < len(e.X) {
		top := *e.Peak
		return say(Span{Text: firm, Strong: true}, "the foam holds longest at about ", b.amount(x(top), e.Variable, e.X[top]), ", for ", hold(top), "; it holds ",
			hold(low), " at ", b.amount(x(low), e.Variable, e.X[low]), " and ", hold(high), " at ", b.amount(x(high), e.Variable, e.X[high]), ", all else as in the start.")
	}
	return say(Span{Text: firm, Strong: true}, what+" "+way+" the hold, from ", hold(low), " at ",
		b.amount(x(low), e.Variable, e.X[low]), " to ", hold(high), " at ", b.amount(x(high), e.Variable, e.X[high]), ", all else as in the start.")
}

// peak says where more of a variable stops helping.
func (b *builder) peak(path string, p result.Peak) Text {
	at := b.amount(path+".best", p.Variable, p.Best)
	switch p.AtEdge {
	case "low":
		return say("A mix works most often at ", at, ", the least that was tried, all else as in the start.")
	case "high":
		return say("A mix works most often at ", at, ", the most that was tried, all else as in the start; more may help.")
	}
	return say("A mix works most often at about ", at, ", all else as in the start; by these trials the best may lie anywhere from ",
		b.amount(path+".low", p.Variable, p.Low), " to ", b.amount(path+".high", p.Variable, p.High), ".")
}

// next is the table of trials to make.
func (b *builder) next() Section {
	s := Section{ID: "next", Title: "What to make next", Reader: Cook}
	if len(b.r.NextTrials) == 0 {
		return s
	}
	t := Table{Caption: "In this order. Strain every mix and wear eye protection; if one clogs, do not open it: vent first.",
		Head: []string{"", "make", "mix", "works", "clogs", "why"}, Numeric: []bool{true, false, false, false, false, false}}
	same := b.sameExtras()
	grams := slices.ContainsFunc(b.r.NextTrials, func(n result.NextTrial) bool { return len(n.Ingredients) > 0 })
	for i, n := range b.r.NextTrials {
		p := fmt.Sprintf("next_trials[%d]", i)
		mix := b.mix(p+".mix", n.Mix)
		if same {
			mix = b.mixOnly(p+".mix", n.Mix)
		}
		row := []Text{say(fmt.Sprint(i + 1)), nil, mix, say("not known"), say("not known"), say(n.Reason)}
		if len(n.Ingredients) > 0 {
			row[1] = b.grams(p, n)
		} else if grams {
			row[1] = say("grams not known")
		}
		if n.Chance != nil {
			row[3] = say(chance(p+".chance", *n.Chance))
		}
		if n.Clogging != nil {
			row[4] = clogging(p, *n.Clogging)
		}
		t.Rows = append(t.Rows, row)
	}
	if !grams { // said once, not in every row
		t.Caption += " Grams of each ingredient are not known."
	}
	s.Blocks = []Block{Paragraph{Text: b.withAll(same)}, t}
	if !same {
		s.Blocks = s.Blocks[1:]
	}
	return s
}

// sameExtras says whether all trials to make share settings such as chargers.
func (b *builder) sameExtras() bool {
	first := b.r.NextTrials[0].Mix.Extras
	return len(first) > 0 && !slices.ContainsFunc(b.r.NextTrials, func(n result.NextTrial) bool { return !maps.Equal(n.Mix.Extras, first) })
}

// withAll says the settings that all trials to make share.
func (b *builder) withAll(same bool) Text {
	if !same {
		return nil
	}
	return say("All with ", b.mix("next_trials[0].mix", result.Mix{Extras: b.r.NextTrials[0].Mix.Extras}), ", as in the log.")
}
