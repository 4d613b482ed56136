package reports

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
)

const (
	worthSaying = 0.01 // a way of failing as likely as this is always named
	mostOfThem  = 0.9  // and as many more as make up this share of the failures
)

// sure says how sure a start is, how it would fail, and what it should do.
func (b *builder) sure(path string, s result.Start) []Block {
	lead := capital(chanceAndLimit(path+".chance", s.Chance.Mean, s.Chance.Low, b.r.Targets.WantedChance.Value))
	lead = say(lead, b.limits())
	blocks := []Block{Paragraph{Lead: true, Text: lead}}
	var items []Text
	if ways := b.fails(path, s); len(ways) > 0 {
		items = append(items, ways)
	}
	if p, ok := s.Predicted[result.HoldMinutes]; ok {
		items = append(items, b.holds(path+".predicted.hold_minutes", p))
	}
	if p, ok := s.Predicted[result.DrainedPercent]; ok {
		at := path + ".predicted.drained_percent"
		items = append(items, say("It should have drained about ", num(at+".median", p.Median, 1), " % by minute ",
			trimmed("targets.drained_at_minutes.value", b.r.Targets.DrainedAtMinutes.Value, 1), "; most likely between ",
			num(at+".low", p.Low, 1), " and ", num(at+".high", p.High, 1), " %."))
	}
	for _, asked := range b.r.Targets.Results {
		if p, ok := s.Predicted[asked.Result]; ok {
			items = append(items, b.foretold(path+".predicted."+string(asked.Result), asked, p))
		}
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
	if t := b.settling(path, s); len(t) > 0 {
		items = append(items, t)
	}
	if s.Aim == result.Surest {
		for _, headline := range []string{"surest_chance", "surest_fat_percent"} {
			if t := b.rests(headline); len(t) > 0 {
				items = append(items, t)
				break
			}
		}
	}
	if c := s.ClosestTrial; c != nil {
		items = append(items, b.closest(path+".closest_trial", c))
	}
	if len(items) > 0 {
		blocks = append(blocks, List{Items: items})
	}
	return blocks
}

// foretold says what a result that the kitchen asks for should be.
func (b *builder) foretold(path string, asked result.ResultTarget, p result.Predicted) Text {
	unit := ""
	if asked.Unit != "" {
		unit = " " + asked.Unit
	}
	return say(capital(say(asked.Label)), " should be about ", num(path+".median", p.Median, 1), "; most likely between ",
		num(path+".low", p.Low, 1), " and ", num(path+".high", p.High, 1), unit+".")
}

// limits ends the sentence on how sure a start is with what that leaves out.
func (b *builder) limits() Text {
	if len(b.unknown()) > 0 {
		return say(". ", b.proviso())
	}
	return say(b.given(), ".")
}

// holds foretells a hold, but no minutes beyond those that anybody watched.
func (b *builder) holds(path string, p result.Predicted) Text {
	w := b.r.WatchedMinutes
	if w == nil || p.Median <= *w {
		return say("It should hold about ", num(path+".median", p.Median, 0), " minutes; most likely between ",
			num(path+".low", p.Low, 0), " and ", num(path+".high", p.High, 0), ".")
	}
	t := say("It should hold longer than anybody watched, which was ", trimmed("watched_minutes", *w, 1), " minutes")
	if p.Low < *w {
		t = say(t, "; most likely no less than ", num(path+".low", p.Low, 0))
	}
	return say(t, ".")
}

// fails is a sentence on the first failures of a mix: those worth naming, and
// as many more as it takes to make up most of them.
func (b *builder) fails(path string, s result.Start) Text {
	all, said := 0.0, 0.0
	byShare := b.r.Targets.Outcomes()
	slices.SortStableFunc(byShare, func(x, y result.Outcome) int { return cmp.Compare(s.Fails[y], s.Fails[x]) })
	for _, o := range byShare {
		all += s.Fails[o]
	}
	named := map[result.Outcome]bool{}
	for _, o := range byShare {
		if p := s.Fails[o]; p >= worthSaying || all >= worthSaying && p > 0 && said < mostOfThem*all {
			named[o] = true
			said += p
		}
	}
	var ways []Text
	for _, o := range b.r.Targets.Outcomes() {
		if named[o] {
			ways = append(ways, say(oneIn(path+".fails."+string(o), s.Fails[o]), " "+Failing(b.r, o), atMost(path, o, s)))
		}
	}
	if len(ways) == 0 {
		return nil
	}
	return say("Of such mixes, about ", listed(ways), ".")
}

// atMost says how often a start may clog, if that is more than was just said.
func atMost(path string, o result.Outcome, s result.Start) Text {
	if o != result.CameOut || s.Clogging == nil {
		return nil
	}
	most := oneIn(path+".clogging.high", s.Clogging.High)
	if s.Clogging.High <= s.Fails[o] || most.Text == oneIn("", s.Fails[o]).Text {
		return nil
	}
	return say(" (perhaps as many as ", most, ")")
}

// closest says what the nearest trial of the kitchen's own was.
func (b *builder) closest(path string, c *result.Closest) Text {
	name := b.trialNamed(c.At, c.ID)
	outcome := "whether it worked cannot be told"
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
		unit := map[string]string{fatPercent: " points", emulsifierPercent: " points", emulsifierGrams: " g"}[v.Name]
		if v.FixedAt != nil {
			step = trimmed(path+".differences."+v.Name, d, 2)
			if v.Unit != "" {
				unit = " " + v.Unit
			}
		}
		if step.Text == "0.0" || step.Text == "0" {
			continue
		}
		way := "more"
		if d < 0 {
			way = "less"
			step.Text = step.Text[1:]
		}
		if step.Text == "1.0" {
			unit = strings.TrimSuffix(unit, "s")
		}
		moves = append(moves, say(step, unit+" "+way+" "+b.label(v.Name)))
	}
	if len(moves) == 0 {
		return say("Your closest own trial is " + name + ", nearly the same mix; " + outcome + ".")
	}
	return say("Your closest own trial is "+name+"; "+outcome+". This start has ", listed(moves), ".")
}

// settling says what making the start again would settle.
func (b *builder) settling(path string, s result.Start) Text {
	if b.bare() || len(s.Confirm) == 0 {
		return nil
	}
	last := len(s.Confirm) - 1
	c := s.Confirm[last]
	at := fmt.Sprintf("%s.confirm[%d]", path, last)
	switch {
	case !c.Settles:
		return say("Not even ", count(at+".made", c.Made), " mixes that all work would settle that it is sure enough.")
	case c.Made == 0:
		return nil
	case c.Made == 1:
		return say("If it is made once more and works, that settles that it is sure enough.")
	}
	return say("If it is made ", count(at+".made", c.Made), " times and works every time, that settles that it is sure enough; one failure, and it is not.")
}
