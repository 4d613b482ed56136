package mixes

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

const (
	worthSaying = 0.01 // a way of failing as likely as this is always named
	mostOfThem  = 0.9  // and as many more as make up this share of the failures
)

// HowOften says how often a mix works, as a sentence without its stop.
func (b Run) HowOften(path string, c result.Chance) document.Text {
	return say.WorksAndLimit(path, c.Mean, c.Low, b.R.Targets.WantedChance.Value)
}

// OftenAndFails says in one go how often a start works and how it fails.
func (b Run) OftenAndFails(path string, s result.Start) document.Text {
	t := say.Text(b.HowOften(path+".chance", s.Chance))
	if ways := b.fails(path, s); len(ways) > 0 {
		t = say.Text(t, "; ", ways)
	}
	return say.Text(t, b.Limits())
}

// Sure says how sure a start is, how it would fail, and what it should do.
func (b Run) Sure(path string, s result.Start) []document.Block {
	lead := say.Text(b.HowOften(path+".chance", s.Chance), b.Limits())
	blocks := []document.Block{document.Paragraph{Lead: true, Text: lead}}
	var items []document.Text
	if ways := b.fails(path, s); len(ways) > 0 {
		items = append(items, say.Text("Of 100 such foams ", ways, "."))
	}
	if p, ok := s.Predicted[result.HoldMinutes]; ok {
		items = append(items, b.holds(path+".predicted.hold_minutes", p))
	}
	if p, ok := s.Predicted[result.DrainedPercent]; ok {
		at := path + ".predicted.drained_percent"
		items = append(items, say.Text("It should have drained about ", say.Num(at+".median", p.Median, 1), " % by minute ",
			say.Trimmed("targets.drained_at_minutes.value", b.R.Targets.DrainedAtMinutes.Value, 1), ", likely between ",
			say.Num(at+".low", p.Low, 1), " and ", say.Num(at+".high", p.High, 1), " %."))
	}
	for _, asked := range b.R.Targets.Results {
		if p, ok := s.Predicted[asked.Result]; ok {
			items = append(items, b.foretold(path+".predicted."+string(asked.Result), asked, p))
		}
	}
	var room []document.Text
	for _, v := range b.R.Variables {
		if k, ok := s.Slack[v.Name]; ok && k.Low < k.High {
			at := path + ".slack." + v.Name
			room = append(room, b.Span(at+".low", at+".high", v.Name, k.Low, k.High))
		}
	}
	if len(room) > 0 {
		items = append(items, say.Text("Change one number alone and at most 5 more foams in 100 fail, anywhere from ", say.Either(room), "."))
	}
	if t := b.settling(path, s); len(t) > 0 {
		items = append(items, t)
	}
	if s.Aim == result.Surest {
		for _, headline := range []string{"surest_chance", "surest_fat_percent"} {
			if t := b.Rests(headline); len(t) > 0 {
				items = append(items, t)
				break
			}
		}
	}
	if c := s.ClosestTrial; c != nil {
		items = append(items, b.closest(path+".closest_trial", c))
	}
	if len(items) > 0 {
		blocks = append(blocks, document.List{Items: items})
	}
	return blocks
}

// foretold says what a result that the kitchen asks for should be.
func (b Run) foretold(path string, asked result.ResultTarget, p result.Predicted) document.Text {
	unit := ""
	if asked.Unit != "" {
		unit = " " + asked.Unit
	}
	return say.Text(wording.Capital(asked.Label), " should be about ", say.Num(path+".median", p.Median, 1), ", likely between ",
		say.Num(path+".low", p.Low, 1), " and ", say.Num(path+".high", p.High, 1), unit+".")
}

// Limits ends the sentence on how sure a start is with what that leaves out.
func (b Run) Limits() document.Text {
	if len(b.Unknown()) > 0 {
		return say.Text(". ", b.Proviso())
	}
	return say.Text(b.Given(), ".")
}

// holds predicts a hold, but no minutes beyond those that anybody watched.
func (b Run) holds(path string, p result.Predicted) document.Text {
	w := b.R.WatchedMinutes
	if w == nil || p.Median <= *w {
		return say.Text("It should hold about ", say.Num(path+".median", p.Median, 0), " minutes, likely between ",
			say.Num(path+".low", p.Low, 0), " and ", say.Num(path+".high", p.High, 0), ".")
	}
	watched := say.Trimmed("watched_minutes", *w, 1)
	t := say.Text("It should hold more than ", watched, " minutes; none was seen for longer")
	if p.Low < *w { // the lower of 90 % limits
		t = say.Text(t, ". Of 20 such foams 19 should hold at least ", say.Num(path+".low", p.Low, 0), " minutes")
	}
	return say.Text(t, ".")
}

// fails counts the first failures of 100 such foams: those worth naming, and
// as many more as it takes to make up most of them, the commonest first.
func (b Run) fails(path string, s result.Start) document.Text {
	all, said := 0.0, 0.0
	byShare := b.R.Targets.Outcomes()
	slices.SortStableFunc(byShare, func(x, y result.Outcome) int { return cmp.Compare(s.Fails[y], s.Fails[x]) })
	for _, o := range byShare {
		all += s.Fails[o]
	}
	var ways []document.Text
	for _, o := range byShare {
		if p := s.Fails[o]; p >= say.AtLeastOne || all >= worthSaying && p > 0 && said < mostOfThem*all {
			said += p
			n, does := say.OfHundred(path+".fails."+string(o), p), say.Fail(b.R, o)
			if n.Text == "1" || n.Text == say.FewerThanOne {
				does = say.Failing(b.R, o)
			}
			way := say.Text(n, " "+does)
			switch most, never := atMost(path, o, s), b.unseen(o, p); {
			case len(most) > 0 && len(never) > 0:
				way = say.Text(way, " (", most, "; ", never, ")")
			case len(most)+len(never) > 0:
				way = say.Text(way, " (", most, never, ")")
			}
			ways = append(ways, way)
		}
	}
	if len(ways) == 0 {
		return nil
	}
	if ways[0][0].Text == say.FewerThanOne {
		return say.Listed(ways)
	}
	return say.Text("about ", say.Listed(ways))
}

// unseen says of a failure that no trial had it: the chance of it is from before any trial.
func (b Run) unseen(o result.Outcome, p float64) document.Text {
	c := b.R.Counts
	n, counted := map[result.Outcome]int{result.CameOut: c.Clogged + c.Partly, result.Broke: c.Broke, result.HoldMinutes: c.ShortHold, result.DrainedPercent: c.TooWet}[o]
	if !counted || n > 0 || p < say.AtLeastOne {
		return nil
	}
	return say.Text("no trial did")
}

// atMost says how often a start may clog, if that is more than was just said.
func atMost(path string, o result.Outcome, s result.Start) document.Text {
	if o != result.CameOut || s.Clogging == nil {
		return nil
	}
	most := say.UpTo(path+".clogging", result.Chance{Mean: s.Fails[o], High: s.Clogging.High})
	if len(most) == 0 || s.Clogging.High < say.AtLeastOne {
		return nil
	}
	return most
}

// closest says what the nearest trial of the kitchen's own was.
func (b Run) closest(path string, c *result.Closest) document.Text {
	name := b.TrialNamed(c.At, c.ID)
	outcome := "whether it worked is unclear"
	if c.Worked != nil {
		outcome = map[bool]string{true: "it worked", false: "it did not work"}[*c.Worked]
	}
	var had []document.Text
	for _, v := range b.R.Variables {
		d, ok := c.Differences[v.Name]
		if own, at := b.hadOf(c.At, v.Name); ok && own != nil && say.Num("", d, 1).Text != "0.0" {
			had = append(had, b.Amount(at, v.Name, *own))
		}
	}
	noted := ""
	if c.Note != "" {
		noted = " You noted of it: “" + shortened(c.Note) + "”."
	}
	if len(had) == 0 {
		return say.Text("The closest of your trials is " + name + ", nearly the same mix: " + outcome + "." + noted)
	}
	return say.Text("The closest of your trials is "+name+", with ", say.Listed(had), ": "+outcome+"."+noted)
}

// hadOf is what a trial had of a variable, and where results.json says so.
func (b Run) hadOf(place, name string) (*float64, string) {
	for i, t := range b.R.Trials {
		if t.At != place {
			continue
		}
		at := fmt.Sprintf("trials[%d].%s", i, name)
		switch name {
		case wording.FatPercent:
			return t.FatPercent, at
		case wording.EmulsifierPercent:
			return t.EmulsifierPercent, at
		case wording.EmulsifierGrams:
			return t.EmulsifierGrams, at
		case wording.BlendHLB:
			return t.BlendHLB, at
		}
		if v, ok := t.Extras[name]; ok {
			return &v, fmt.Sprintf("trials[%d].extras.%s", i, name)
		}
	}
	return nil, ""
}

// shortened is a note that fits a sentence.
func shortened(note string) string {
	const most = 120
	letters := []rune(strings.Join(strings.Fields(note), " "))
	if len(letters) > most {
		letters = append(letters[:most-1], '…')
	}
	return string(letters)
}

// settling says what making the start again would settle.
func (b Run) settling(path string, s result.Start) document.Text {
	if b.Bare() || len(s.Confirm) == 0 {
		return nil
	}
	if b.R.AsOf != nil {
		return say.Text("Weeks or lots matter in this kitchen, so no number of mixes is enough for good: make it again with each new lot.")
	}
	last := len(s.Confirm) - 1
	c := s.Confirm[last]
	at := fmt.Sprintf("%s.confirm[%d]", path, last)
	switch {
	case !c.Settles:
		return say.Text("Even ", say.Count(at+".made", c.Made), " more mixes of it that all work would not prove that it is sure enough.")
	case c.Made == 0:
		return nil
	case c.Made == 1:
		return say.Text("One more mix of it that works proves that it is sure enough.")
	}
	return say.Text("To prove that it is sure enough, the next ", say.Count(at+".made", c.Made), " mixes of it must all work; the chance of that is ",
		say.Chance(at+".all_work", c.AllWork), ". If one fails, it takes more.")
}
