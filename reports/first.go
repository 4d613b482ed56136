package reports

import (
	"cmp"
	"fmt"
	"slices"

	"foamfield/analysis/result"
)

const (
	worthSaying   = 0.015 // a way of failing less likely than this is not named
	firstProblems = 5
)

// first is the summary page.
func (b *builder) first() Section {
	s := Section{ID: "start", Title: b.title(), Reader: Cook}
	if len(b.r.Starts) > 0 {
		s.Blocks = b.starts()
	} else {
		s.Blocks = b.stopped()
	}
	s.Blocks = append(s.Blocks, b.check()...)
	if len(b.r.Cautions) > 0 {
		var items []Text
		for _, c := range b.r.Cautions {
			items = append(items, say(sentence(c.Text)))
		}
		s.Blocks = append(s.Blocks, head("Cautions"), List{items})
	}
	return s
}

func (b *builder) title() string {
	switch b.r.Status {
	case result.Recommended:
		return "Start from this"
	case result.BestAvailable:
		return "No mix is sure enough yet; the best there is"
	case result.TooFewTrials:
		return "Too few trials to name a start"
	case result.NothingWorked:
		return "Nothing worked yet"
	case result.NoSafeStart:
		return "No mix is safe enough to name as a start"
	}
	return "What the log says"
}

// starts is the page of a run that names a mix.
func (b *builder) starts() []Block {
	start := b.r.Starts[0]
	const path = "starts[0]"
	var blocks []Block
	if b.r.Status != result.Recommended {
		blocks = append(blocks, Paragraph{Lead: true, Text: capital(say(sentence(b.r.StatusReason)))})
	}
	blocks = append(blocks, b.formula("Surest start", path, start))
	blocks = append(blocks, Callout{Title: "What this promises", Text: say("Likely to work; says nothing of taste, canister or food safety.")})
	if b.r.Status != result.Recommended {
		blocks[len(blocks)-1] = Callout{Title: "What this promises", Text: say("The best guess these trials allow, not a promise; says nothing of taste, canister or food safety.")}
	}
	blocks = append(blocks, b.works(), head("How sure, and how it would fail"))
	blocks = append(blocks, b.sure(path, start)...)
	blocks = append(blocks, head("How far the fat can go"))
	blocks = append(blocks, b.richest()...)
	if items := b.beyond(); len(items) > 0 {
		blocks = append(blocks, head("What fails beyond"), List{items})
	}
	return blocks
}

// formula sets a start in grams.
func (b *builder) formula(name, path string, s result.Start) Formula {
	digits := decimals(b.r.Batch.ScaleStepGrams)
	f := Formula{Title: name}
	total := 0.0
	for i, l := range s.Ingredients {
		p := fmt.Sprintf("%s.ingredients[%d]", path, i)
		line := FormulaLine{
			Name: say(l.Name), Grams: say(num(p+".grams", l.Grams, digits), " g"),
			OfMix: say(num(p+".percent_of_mix", l.PercentOfMix, 1), " %"),
			Weigh: tolerance(p+".weighing_error_percent", l.WeighingErrorPercent),
		}
		if l.PercentOfPart != nil && l.Part != "" {
			line.OfPart = say(trimmed(p+".percent_of_part", *l.PercentOfPart, 1), " % of "+l.Part)
		}
		f.Lines = append(f.Lines, line)
		total += l.Grams
	}
	note := say(b.mix(path+".mix", s.Mix), ". ", b.made(path, s))
	if len(f.Lines) > 0 {
		f.Total = say(num(path+".ingredients[*].grams", total, digits), " g")
	}
	if s.GramsNote != "" {
		note = say(note, " ", capital(say(sentence(s.GramsNote))))
	}
	f.Note = note
	return f
}

// tolerance is the weighing error at most, of the ingredient's own grams.
func tolerance(path string, percent float64) Text {
	if percent < 0.1 {
		return say("better than ", Span{Text: "0.1", Num: &Num{path, percent}}, " %")
	}
	return say("± ", num(path, percent, 1), " %")
}

// made says whether a mix has been made.
func (b *builder) made(path string, s result.Start) Text {
	if s.MadeTimes == 0 {
		return say("Predicted, not yet made: make it twice first.")
	}
	return say("Made ", count(path+".made_times", s.MadeTimes), plural(s.MadeTimes, " time", " times"),
		" before; it worked ", count(path+".made_worked", s.MadeWorked), plural(s.MadeWorked, " time.", " times."))
}

// works says what was asked of a mix and who asked it.
func (b *builder) works() Paragraph {
	t := b.r.Targets
	meaning := say("A mix works if it comes out, does not split, holds at least ",
		trimmed("targets.hold_minutes.value", t.HoldMinutes.Value, 1), " minutes, and has drained at most ",
		trimmed("targets.drained_percent.value", t.DrainedPercent.Value, 1), " % by minute ",
		trimmed("targets.drained_at_minutes.value", t.DrainedAtMinutes.Value, 1), "; sure enough means ",
		wanted(t.WantedChance.Value), ". ")
	var assumed []Text
	var set Text
	for _, one := range []struct {
		name string
		t    result.Target
	}{{"the hold", t.HoldMinutes}, {"the drained limit", t.DrainedPercent}, {"its minute", t.DrainedAtMinutes}, {"how sure", t.WantedChance}} {
		if one.t.From == "assumed" {
			assumed = append(assumed, say(one.name))
		} else {
			set = say(set, " ", capital(say(one.name)), " comes from "+one.t.From+".")
		}
	}
	switch {
	case len(assumed) == 4:
		return Paragraph{Text: say(meaning, "All of this is ", Span{Text: "assumed", Strong: true},
			": nobody set targets. To use your own, fill in a Targets sheet in the log, or type for example --hold 15.")}
	case len(assumed) > 0:
		return Paragraph{Text: say(meaning, Span{Text: "Assumed", Strong: true}, ", since nobody set them: ", listed(assumed), ".", set)}
	}
	return Paragraph{Text: say(meaning, set)}
}

// wanted says the chance that somebody asked for.
func wanted(p float64) Span {
	s := Span{Num: &Num{Path: "targets.wanted_chance.value", Value: p}}
	for _, of := range []float64{10, 20, 100, 1000} {
		if n := p * of; n-float64(int(n+0.5)) < 1e-6 && float64(int(n+0.5))-n < 1e-6 {
			s.Text = fmt.Sprintf("%d times in %.0f", int(n+0.5), of)
			return s
		}
	}
	s.Text = Chance(p)
	return s
}

// sure says how sure a start is, how it would fail, and what it should do.
func (b *builder) sure(path string, s result.Start) []Block {
	lead := capital(chanceAndLimit(path+".chance", s.Chance.Mean, s.Chance.Low, b.r.Targets.WantedChance.Value))
	blocks := []Block{Paragraph{Lead: true, Text: say(lead, ".")}}
	var items []Text
	if ways := b.fails(path, s); len(ways) > 0 {
		items = append(items, say("Of such mixes, ", listed(ways), "."))
	}
	if p, ok := s.Predicted[result.HoldMinutes]; ok {
		at := path + ".predicted.hold_minutes"
		items = append(items, say("It should hold about ", num(at+".median", p.Median, 0), " minutes; most likely between ",
			num(at+".low", p.Low, 0), " and ", num(at+".high", p.High, 0), "."))
	}
	if p, ok := s.Predicted[result.DrainedPercent]; ok {
		at := path + ".predicted.drained_percent"
		items = append(items, say("It should have drained about ", num(at+".median", p.Median, 1), " % by minute ",
			trimmed("targets.drained_at_minutes.value", b.r.Targets.DrainedAtMinutes.Value, 1), "; most likely between ",
			num(at+".low", p.Low, 1), " and ", num(at+".high", p.High, 1), " %."))
	}
	var room []Text
	for _, v := range b.r.Variables {
		if k, ok := s.Slack[v.Name]; ok && k.Low < k.High {
			at := path + ".slack." + v.Name
			room = append(room, b.span(at+".low", at+".high", v.Name, k.Low, k.High))
		}
	}
	if len(room) > 0 {
		items = append(items, say("How exactly to hit it, moving one at a time: ", listed(room), " do nearly as well."))
	}
	if c := s.ClosestTrial; c != nil {
		items = append(items, b.closest(path+".closest_trial", c))
	}
	for _, n := range s.Notes {
		items = append(items, capital(say(sentence(n))))
	}
	if len(items) > 0 {
		blocks = append(blocks, List{items})
	}
	return blocks
}

// fails names the ways of failing that matter.
func (b *builder) fails(path string, s result.Start) []Text {
	var ways []Text
	for _, o := range result.Chain {
		if p, ok := s.Fails[o]; ok && p >= worthSaying {
			ways = append(ways, say(chance(path+".fails."+string(o), p), " "+failing[o]))
		}
	}
	return ways
}

// closest says what the nearest trial of the kitchen's own was.
func (b *builder) closest(path string, c *result.Closest) Text {
	name := b.place(c.At)
	if c.ID != "" {
		name = "trial " + c.ID + " (" + b.place(c.At) + ")"
	}
	outcome := "cannot be told whether it worked"
	if c.Worked != nil {
		outcome = map[bool]string{true: "it worked", false: "it did not work"}[*c.Worked]
	}
	var moves []Text
	for _, v := range b.r.Variables {
		d, ok := c.Differences[v.Name]
		if !ok {
			continue
		}
		step := num(path+".differences."+v.Name, d, 1)
		if step.Text == "0.0" {
			continue
		}
		way := "more"
		if d < 0 {
			way = "less"
			step.Text = step.Text[1:]
		}
		unit := map[string]string{fatPercent: " points", emulsifierPercent: " points", emulsifierGrams: " g"}[v.Name]
		moves = append(moves, say(step, unit+" "+way+" "+b.label(v.Name)))
	}
	if len(moves) == 0 {
		return say("Your closest own trial is " + name + ", nearly the same mix; " + outcome + ".")
	}
	return say("Your closest own trial is "+name+"; "+outcome+". This start has ", listed(moves), ".")
}

// richest says how far the fat can go.
func (b *builder) richest() []Block {
	want := b.r.Targets.WantedChance.Value
	for i, s := range b.r.Starts {
		if s.Aim != result.Richest {
			continue
		}
		if i > 0 && b.sameMix(b.r.Starts[0].Mix, s.Mix) {
			return []Block{Paragraph{Text: say("The surest start is also the richest mix that is sure enough.")}}
		}
		path := fmt.Sprintf("starts[%d]", i)
		lead := say("The richest mix that is sure enough")
		if s.Mix.FatPercent != nil {
			lead = say(lead, " has ", Span{Text: num("", *s.Mix.FatPercent, 1).Text, Strong: true,
				Num: &Num{path + ".mix.fat_percent", *s.Mix.FatPercent}}, " % fat")
		}
		lead = say(lead, ". How sure: ", chanceAndLimit(path+".chance", s.Chance.Mean, s.Chance.Low, want), ".")
		if ways := b.fails(path, s); len(ways) > 0 {
			lead = say(lead, " Of such mixes, ", listed(ways), ".")
		}
		return []Block{Paragraph{Text: lead}, b.formula("Richest start", path, s)}
	}
	return []Block{Paragraph{Text: say("No rich mix can be named: none inside what was tried works ", wanted(want), ".")}}
}

// sameMix says whether two mixes read the same.
func (b *builder) sameMix(x, y result.Mix) bool {
	return b.mix("", x).String() == b.mix("", y).String()
}

// beyond says in words what ends the mixes that are sure enough.
func (b *builder) beyond() []Text {
	var items []Text
	last := -1
	for i, l := range b.r.FatLimit {
		if l.Workable {
			last = i
		}
	}
	if n := len(b.r.FatLimit); n > 0 {
		at := func(i int) Span {
			return num(fmt.Sprintf("fat_limit[%d].fat_percent", i), b.r.FatLimit[i].FatPercent, 0)
		}
		switch {
		case last < 0:
			worst := b.r.FatLimit[n-1]
			items = append(items, say("At no fat percent that was tried is a mix sure enough; at ", at(n-1), " % what stops it first is "+failings[worst.LimitedBy]+"."))
		case last < n-1:
			if r := b.richestFat(); r != nil && *r < b.r.FatLimit[last].FatPercent-1 {
				items = append(items, say("Richer mixes than that, up to about ", at(last), " % fat, may work as often, but none is safe enough from clogging, or near enough to the others, to be named as a start."))
			}
			items = append(items, say("From about ", at(last+1), " % fat no mix is sure enough; what stops it first is "+failings[b.r.FatLimit[last+1].LimitedBy]+"."))
		default:
			items = append(items, say("Up to ", at(last), " % fat, the most that was tried, some mix is sure enough; richer than that nothing is known."))
		}
	}
	if first := b.stoppers(); len(first) > 0 {
		items = append(items, say("What stops the other mixes inside what was tried: ", listed(first), "."))
	}
	if t := b.tried(); t != nil {
		items = append(items, say("Tried were ", t, ". Nothing is said of mixes outside."))
	}
	return items
}

// stoppers is what stops mixes first, the commonest first.
func (b *builder) stoppers() []Text {
	order := make([]int, 0, len(b.r.Limits))
	for i, l := range b.r.Limits {
		if l.Share >= 0.05 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.r.Limits[y].Share, b.r.Limits[x].Share) })
	var out []Text
	for _, i := range order {
		l := b.r.Limits[i]
		out = append(out, say(failings[l.Outcome]+" (", chance(fmt.Sprintf("limits[%d].share", i), l.Share), ")"))
	}
	return out
}

// richestFat is the fat percent of the richest start, nil if there is none.
func (b *builder) richestFat() *float64 {
	for _, s := range b.r.Starts {
		if s.Aim == result.Richest {
			return s.Mix.FatPercent
		}
	}
	return nil
}

// tried gives the ranges the trials cover.
func (b *builder) tried() Text {
	var parts []Text
	for i, v := range b.r.Variables {
		p := fmt.Sprintf("variables[%d]", i)
		parts = append(parts, b.span(p+".low", p+".high", v.Name, v.Low, v.High))
	}
	return listed(parts)
}
