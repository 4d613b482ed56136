package cook

import (
	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// stopped is the page of a run that names no start: what is known, and no more.
func (b pages) stopped() []document.Block {
	var blocks []document.Block
	if b.R.StatusReason != "" {
		blocks = append(blocks, document.Paragraph{Lead: true, Text: say.Sentence(b.R.StatusReason)})
	}
	blocks = append(blocks, b.questions()...)
	blocks = append(blocks, b.works())
	if best := b.R.BestSeen; best != nil {
		blocks = append(blocks, say.Head("The best seen"))
		blocks = append(blocks, b.bestSeen(best)...)
	}
	if items := b.happened(); len(items) > 0 {
		blocks = append(blocks, say.Head("What became of the trials"), document.List{Items: items})
	}
	if items := b.beyond(); len(items) > 0 && b.R.Status == result.NoSafeStart {
		blocks = append(blocks, say.Head("What fails"), document.List{Items: items})
	}
	return blocks
}

// bestMade is the best trial made, in one sentence beside a start that is another mix.
func (b pages) bestMade() []document.Block {
	best := b.R.BestSeen
	if best == nil || best.Works == nil || !*best.Works || b.SameMix(b.R.Starts[0].Mix, best.Mix) {
		return nil
	}
	mix := b.MixOnly("best_seen.mix", best.Mix)
	if len(best.Ingredients) > 0 {
		mix = b.InLine("best_seen", best.Ingredients)
	}
	return []document.Block{document.Paragraph{Text: say.Text("The best trial made so far is "+b.TrialNamed(best.At, best.ID)+": ", mix, ". ", b.saw(best))}}
}

// saw is what was seen of the best trial; other makings of its formula may have done worse.
func (b pages) saw(best *result.BestSeen) document.Text {
	var seen []document.Text
	if hold := say.Seen("best_seen.hold_minutes", best.HoldMinutes, 1); hold != nil {
		seen = append(seen, say.Text("held ", hold, " minutes"))
	}
	if drained := say.Seen("best_seen.drained_percent", best.Drained, 1); drained != nil {
		seen = append(seen, say.Text("drained ", drained, " %"))
	}
	t := say.Text("Made ", mixes.Often("best_seen.made_times", best.MadeTimes))
	for i, did := range seen {
		switch {
		case i == 0 && best.MadeTimes > 1:
			t = say.Text(t, "; this one ", did)
		case i == 0:
			t = say.Text(t, "; ", did)
		default:
			t = say.Text(t, ", ", did)
		}
	}
	return say.Text(t, ". This is what was seen, not what to expect: a good trial may be luck.")
}

// bestSeen sets the best trial made, and says what it is not.
func (b pages) bestSeen(best *result.BestSeen) []document.Block {
	name := b.TrialNamed(best.At, best.ID)
	fate := "The best trial made is " + name + "; whether it worked is unclear"
	if best.Works != nil {
		fate = map[bool]string{true: "The best trial made is " + name + ": it worked",
			false: "The trial that came nearest is " + name + ": it came out, but did not meet every target"}[*best.Works]
	}
	blocks := []document.Block{document.Paragraph{Text: say.Text(fate+". ", b.saw(best))}}
	if len(best.Ingredients) > 0 {
		blocks = append(blocks, b.Formula("Its formula, for one batch", "best_seen", result.Start{
			Mix: best.Mix, Ingredients: best.Ingredients, MadeTimes: best.MadeTimes}))
		f := blocks[1].(document.Formula)
		f.Note = say.Text(b.MixTold("best_seen.mix", best.Mix), ".")
		blocks[1] = f
	} else if m := b.Mix("best_seen.mix", best.Mix); len(m) > 0 {
		blocks = append(blocks, document.Paragraph{Text: say.Text("Its mix: ", b.MixTold("best_seen.mix", best.Mix), ".")})
	}
	return blocks
}

// happened counts what became of the trials.
func (b pages) happened() []document.Text {
	c := b.R.Counts
	var items []document.Text
	add := func(key string, n int, one, many string) {
		if n > 0 {
			items = append(items, say.Text(say.Count("counts."+key, n), " "+say.Plural(n, one, many)))
		}
	}
	add("worked", c.Worked, "trial worked", "trials worked")
	add("clogged", c.Clogged, "trial clogged", "trials clogged")
	add("partly", c.Partly, "trial came out only partly", "trials came out only partly")
	add("broke", c.Broke, "trial split", "trials split")
	add("short_hold", c.ShortHold, "trial fell too soon", "trials fell too soon")
	add("too_wet", c.TooWet, "trial drained too much", "trials drained too much")
	if c.Clogged+c.Partly+c.Broke+c.ShortHold+c.TooWet > c.Failed {
		items = append(items, say.Text("A trial that failed in two ways is counted in both."))
	}
	add("unknown", c.Unknown, "trial is unclear", "trials are unclear")
	add("still_standing", c.StillStanding, "trial still stood when watching stopped", "trials still stood when watching stopped")
	add("no_emulsifier", c.NoEmulsifier, "trial had no emulsifier", "trials had no emulsifier")
	return items
}
