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

// bestSeen sets the best trial made, and says what it is not.
func (b pages) bestSeen(best *result.BestSeen) []document.Block {
	name := b.TrialNamed(best.At, best.ID)
	fate := "The best trial made is " + name + "; whether it worked is unclear"
	if best.Works != nil {
		fate = map[bool]string{true: "The best trial made is " + name + ": it worked",
			false: "The trial that came nearest is " + name + ": it came out, but did not meet every target"}[*best.Works]
	}
	t := say.Text(fate+". Made ", mixes.Often("best_seen.made_times", best.MadeTimes))
	if hold := say.Seen("best_seen.hold_minutes", best.HoldMinutes, 1); hold != nil {
		t = say.Text(t, "; held ", hold, " minutes")
	}
	if drained := say.Seen("best_seen.drained_percent", best.Drained, 1); drained != nil {
		t = say.Text(t, "; drained ", drained, " %")
	}
	t = say.Text(t, ". This is what was seen, not what to expect: a good trial may be luck.")
	blocks := []document.Block{document.Paragraph{Text: t}}
	if len(best.Ingredients) > 0 {
		blocks = append(blocks, b.Formula("As it was made", "best_seen", result.Start{
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
	add("unknown", c.Unknown, "trial is unclear", "trials are unclear")
	add("still_standing", c.StillStanding, "trial still stood when watching stopped", "trials still stood when watching stopped")
	add("no_emulsifier", c.NoEmulsifier, "trial had no emulsifier", "trials had no emulsifier")
	return items
}
