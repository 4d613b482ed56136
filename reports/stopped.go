package reports

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// stopped is the page of a run that names no start: what is known, and no more.
func (b *builder) stopped() []Block {
	var blocks []Block
	if b.r.StatusReason != "" {
		blocks = append(blocks, Paragraph{Lead: true, Text: capital(say(sentence(b.r.StatusReason)))})
	}
	blocks = append(blocks, b.questions()...)
	blocks = append(blocks, b.works())
	if best := b.r.BestSeen; best != nil {
		blocks = append(blocks, head("The best seen"))
		blocks = append(blocks, b.bestSeen(best)...)
	}
	if items := b.happened(); len(items) > 0 {
		blocks = append(blocks, head("What became of the trials"), List{Items: items})
	}
	if items := b.beyond(); len(items) > 0 && b.r.Status == result.NoSafeStart {
		blocks = append(blocks, head("What fails"), List{Items: items})
	}
	return blocks
}

// bestSeen sets the best trial made, and says what it is not.
func (b *builder) bestSeen(best *result.BestSeen) []Block {
	name := b.trialNamed(best.At, best.ID)
	fate := "The best trial made is " + name + "; whether it worked is unclear"
	if best.Works != nil {
		fate = map[bool]string{true: "The best trial made is " + name + ": it worked",
			false: "The trial that came nearest is " + name + ": it came out, but did not meet every target"}[*best.Works]
	}
	t := say(fate+". Made ", often("best_seen.made_times", best.MadeTimes))
	if hold := seen("best_seen.hold_minutes", best.HoldMinutes, 1); hold != nil {
		t = say(t, "; held ", hold, " minutes")
	}
	if drained := seen("best_seen.drained_percent", best.Drained, 1); drained != nil {
		t = say(t, "; drained ", drained, " %")
	}
	t = say(t, ". This is what was seen, not what to expect: a good trial may be luck.")
	blocks := []Block{Paragraph{Text: t}}
	if len(best.Ingredients) > 0 {
		blocks = append(blocks, b.formula("As it was made", "best_seen", result.Start{
			Mix: best.Mix, Ingredients: best.Ingredients, MadeTimes: best.MadeTimes}))
		f := blocks[1].(Formula)
		f.Note = say(b.mixTold("best_seen.mix", best.Mix), ".")
		blocks[1] = f
	} else if m := b.mix("best_seen.mix", best.Mix); len(m) > 0 {
		blocks = append(blocks, Paragraph{Text: say("Its mix: ", b.mixTold("best_seen.mix", best.Mix), ".")})
	}
	return blocks
}

// happened counts what became of the trials.
func (b *builder) happened() []Text {
	c := b.r.Counts
	var items []Text
	add := func(key string, n int, one, many string) {
		if n > 0 {
			items = append(items, say(count("counts."+key, n), " "+plural(n, one, many)))
		}
	}
	add("worked", c.Worked, "trial worked", "trials worked")
	add("clogged", c.Clogged, "trial clogged", "trials clogged")
	add("partly", c.Partly, "trial came out only partly", "trials came out only partly")
	add("broke", c.Broke, "trial split", "trials split")
	add("short_hold", c.ShortHold, "trial fell too soon", "trials fell too soon")
	add("too_wet", c.TooWet, "trial drained too much", "trials drained too much")
	add("unknown", c.Unknown, "trial is unclear", "trials are unclear")
	add("still_standing", c.StillStanding, "trial still stood when watching stopped", "trials still stood when watching stopped")
	add("no_emulsifier", c.NoEmulsifier, "trial had no emulsifier", "trials had no emulsifier")
	return items
}

// grams says a mix worth making in one line.
func (b *builder) grams(path string, n result.NextTrial) Text {
	if len(n.Ingredients) == 0 {
		return b.mix(path+".mix", n.Mix)
	}
	return b.inLine(path, n.Ingredients)
}

// inLine says a formula in one line: "107.1 g butter, 186.0 g cider and 3.9 g GMS".
func (b *builder) inLine(path string, lines []result.FormulaLine) Text {
	digits := decimals(b.r.Batch.ScaleStepGrams)
	var parts []Text
	for i, l := range lines {
		at := fmt.Sprintf("%s.ingredients[%d]", path, i)
		grams := say(num(at+".grams", l.Grams, digits), " g ")
		if oz := b.ounces(at+".ounces", l.Ounces); oz != nil {
			grams = say(grams, "(", oz, ") ")
		}
		parts = append(parts, say(grams, l.Name))
	}
	return listed(parts)
}

// toCheck says what to look at in the log.
func (b *builder) toCheck() Section {
	s := Section{ID: "check", Title: "What to check in the log", Reader: Cook}
	var items []Text
	more := 0
	for _, grade := range []result.Severity{result.MustFix, result.PleaseLook} {
		for i, p := range b.r.Problems {
			if p.Severity != grade {
				continue
			}
			if len(items) == firstProblems {
				more++
				continue
			}
			items = append(items, say(Span{Text: wording.Capital(grades[grade]), Strong: true}, " ", b.problem(i, p)))
		}
	}
	switch {
	case len(items) == 0:
		s.Blocks = []Block{Paragraph{Text: b.nothingElse("Nothing: every row was read without a question.")}}
		return s
	case more > 0:
		items = append(items, say(fmt.Sprintf("And %d more %s, listed under Problems.", more, plural(more, "kind of problem", "kinds of problem"))))
	}
	s.Blocks = []Block{List{Items: items}}
	return s
}

// problem says where, what was read, and what to type instead.
func (b *builder) problem(i int, p result.Problem) Text {
	t := say(Span{Text: b.place(p.At), Strong: true}, ": "+sentence(p.Read))
	if p.Do != "" {
		t = say(t, " ", capital(say(sentence(p.Do))))
	}
	if p.Count > 1 {
		t = say(t, " (", count(fmt.Sprintf("problems[%d].count", i), p.Count), " of this kind)")
	}
	return t
}
