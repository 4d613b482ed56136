package cook

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// mostCards is how many of the next trials get a card where no start is named.
const mostCards = 2

// cards are the pages for the bench: one a start, or one for each of the first trials
// to make next where no start is named. A log that names no mix at all gets one to
// write a mix on.
func (b pages) cards() (out []document.Section) {
	add := func(c document.Card) {
		id := "card"
		if n := len(out); n > 0 {
			id = fmt.Sprintf("card-%d", n+1)
		}
		c.Log = b.LogName()
		b.steps(&c)
		c.Blanks = b.blanks()
		out = append(out, document.Section{ID: id, Title: "Bench card: " + c.Title, Reader: document.Cook, Alone: true, Blocks: []document.Block{c}})
	}
	for i, s := range b.R.Starts {
		if i > 0 && b.SameMix(b.R.Starts[0].Mix, s.Mix) {
			continue
		}
		add(b.startCard(i, s))
	}
	if len(b.R.Starts) > 0 {
		return out
	}
	for i, n := range b.R.NextTrials[:min(mostCards, len(b.R.NextTrials))] {
		add(b.trialCard(i, n))
	}
	if len(out) == 0 && len(b.R.Trials) > 0 {
		c := document.Card{Title: "your next trial", Aim: say.Text("These trials name no mix to make next: write your own here."), Parts: unnamed()}
		c.Mind = b.mindful("", result.Mix{})
		add(c)
	}
	return out
}

func (b pages) startCard(i int, s result.Start) document.Card {
	path := fmt.Sprintf("starts[%d]", i)
	c := document.Card{Title: b.StartName(i, s), Of: path, Mix: b.MixOnly(path+".mix", s.Mix), Made: b.Made(path, s)}
	c.Aim = say.Text(b.HowOften(path+".chance", s.Chance), b.Limits())
	if s.Status != result.Recommended {
		c.Aim = say.Text(c.Aim, " "+say.Promise(s)+".")
	}
	c.Mind = b.mindful(path+".mix", s.Mix)
	if len(mind(s)) > 0 {
		c.Mind = append(c.Mind, say.Text("The summary has a caution on this mix: read it first."))
	}
	b.weights(&c, path, s.Ingredients, s.Parts)
	if len(s.Ingredients) == 0 {
		c.NoGrams = b.NoGrams(path, s)
	}
	return c
}

func (b pages) trialCard(i int, n result.NextTrial) document.Card {
	path := fmt.Sprintf("next_trials[%d]", i)
	c := document.Card{Title: fmt.Sprintf("next trial %d", i+1), Of: path, Mix: b.MixOnly(path+".mix", n.Mix), Aim: say.Sentence(n.Reason)}
	c.Made = say.Text("Not yet made. A trial to learn from, not a start: these trials name none.")
	if best := b.R.BestSeen; n.Purpose == "repeat" && best != nil {
		c.Made = say.Text("Made ", mixes.Often("best_seen.made_times", best.MadeTimes), " before. A trial to learn from, not a start: these trials name none.")
	}
	if n.Clogging != nil {
		c.Aim = say.Text(c.Aim, " Clogs: ", say.Clogging(path, *n.Clogging), ".")
	}
	c.Mind = b.mindful(path+".mix", n.Mix)
	b.weights(&c, path, n.Ingredients, n.Parts)
	if len(n.Ingredients) == 0 {
		c.NoGrams = say.Text("The log has no grams of each ingredient for this mix: work them out and write them here.")
	}
	return c
}

// weights fills in what is weighed, in the order of addition.
func (b pages) weights(c *document.Card, path string, lines []result.FormulaLine, parts []result.Part) {
	if len(lines) == 0 || len(parts) == 0 {
		c.Parts = unnamed()
		return
	}
	digits := say.Decimals(b.R.Batch.ScaleStepGrams)
	total, ounces := 0.0, 0.0
	for k, p := range parts {
		at := fmt.Sprintf("%s.parts[%d]", path, k)
		part := document.CardPart{Title: partTitle(p, lines), Grams: say.Text(say.Num(at+".grams", p.Grams, digits), " g"), Ounces: b.Ounces(at+".ounces", p.Ounces),
			OfMix: say.Text(say.Num(at+".percent_of_mix", p.PercentOfMix, 1), " %")}
		for _, i := range p.Lines {
			l, q := lines[i], fmt.Sprintf("%s.ingredients[%d]", path, i)
			line := document.CardLine{Name: say.Text(l.Name), Grams: say.Text(say.Num(q+".grams", l.Grams, digits), " g"), Ounces: b.Ounces(q+".ounces", l.Ounces),
				OfMix: say.Text(say.Num(q+".percent_of_mix", l.PercentOfMix, 1), " %")}
			if l.TooLittle != nil {
				line.Within = say.Text("pre-mix")
				if l.TooLittle.Premix == nil {
					line.Within = say.Text("too little")
				}
				c.Mind = append(c.Mind, mixes.TooLittle(q, l, digits))
			} else if w := l.WithinGrams; w != nil && *w > 0 {
				line.Within = say.Text("± ", say.Num(q+".within_grams", *w, digits), " g")
			} else if w != nil {
				line.Within = say.Text("exactly")
			}
			if l.PercentOfPart != nil && l.Part != "" {
				line.OfPart = say.Text(say.Num(q+".percent_of_part", *l.PercentOfPart, 1), mixes.OfPart(l))
			}
			part.Lines = append(part.Lines, line)
			total += l.Grams
			if l.Ounces != nil {
				ounces += *l.Ounces
			}
		}
		c.Parts = append(c.Parts, part)
	}
	c.Total = say.Text(say.Num(path+".ingredients[*].grams", total, digits), " g")
	if lines[0].Ounces != nil {
		c.TotalOunces = b.Ounces(path+".ingredients[*].ounces", &ounces)
	}
	switch {
	case lines[0].WithinGrams == nil:
	case slices.ContainsFunc(lines, func(l result.FormulaLine) bool { return l.WithinGrams != nil && *l.WithinGrams > 0 }):
		c.Note = say.Text("Each weight may be off by this much, all at once: the mix still works nearly as often.")
	case slices.ContainsFunc(lines, func(l result.FormulaLine) bool { return l.TooLittle != nil }):
		c.Note = say.Text("Weigh each as exactly as the scale can, and what it cannot as a pre-mix: a little off, and this mix fails or clogs more often.")
	default:
		c.Note = say.Text("Weigh each as exactly as the scale can: a little off, and this mix fails or clogs more often.")
	}
}

// unnamed are lines to write ingredients on.
func unnamed() []document.CardPart {
	return []document.CardPart{{Title: "Fat part", Lines: make([]document.CardLine, 3)}, {Title: "Water part", Lines: make([]document.CardLine, 3)}}
}

// partTitle says what a part is and what is done with its emulsifiers.
func partTitle(p result.Part, lines []result.FormulaLine) string {
	emulsified := false
	for _, i := range p.Lines {
		emulsified = emulsified || strings.HasPrefix(lines[i].Kind, "emulsifier")
	}
	switch {
	case p.Part == "fat" && emulsified:
		return "Fat part: melt the emulsifier in"
	case p.Part == "fat":
		return "Fat part"
	case p.Part == "water" && emulsified:
		return "Water part: disperse together"
	case p.Part == "water":
		return "Water part"
	}
	return "Besides, when your method says"
}

// steps fills in the kitchen's own method; without one there are lines to write it on.
func (b pages) steps(c *document.Card) {
	var critical []document.Text
	for i, m := range b.R.Method {
		c.Steps = append(c.Steps, document.CardStep{Text: say.Text(m.Step), Critical: m.Critical, Limit: say.Text(m.Limit)})
		if m.Critical {
			critical = append(critical, say.Text(document.Span{Text: fmt.Sprint(i + 1), Strong: true}))
		}
	}
	if n := len(critical); n > 0 {
		c.Mind = append([]document.Text{say.Text("Take most care with ", say.Plural(n, "step ", "steps "), say.Listed(critical), " of the method.")}, c.Mind...)
	}
}

// mindful is what has to be kept in mind at the bench: what goes with the mix, and the
// cautions in few words. Fill and chargers are the canister's own business, so its
// marking is named with them.
func (b pages) mindful(path string, m result.Mix) (out []document.Text) {
	var with []document.Text
	weighed := map[string]bool{} // a percent of the mix that the grams say already
	for _, v := range b.R.Variables {
		weighed[v.Name] = v.Ingredient != ""
	}
	for _, name := range mixes.SortedKeys(m.Extras) {
		if weighed[name] {
			continue
		}
		with = append(with, b.Amount(path+".extras."+name, name, m.Extras[name]))
	}
	if len(with) > 0 {
		canister := ""
		if b.R.Batch.Canister != "" {
			canister = " in a canister of " + b.R.Batch.Canister
		}
		marking := "."
		for name := range m.Extras {
			if name == "chargers" || strings.HasPrefix(name, "fill") {
				marking = "; to your canister's marking."
			}
		}
		out = append(out, say.Text("With ", bolder(say.Listed(with)), canister+", as in the log"+marking))
	}
	for _, c := range b.R.Cautions {
		if c.Bench != "" {
			out = append(out, say.Text(c.Bench))
		}
	}
	return out
}

// blanks are what is written down of a trial, in the words of the log.
func (b pages) blanks() []document.Blank {
	out := []document.Blank{
		{Label: say.Text("day"), Line: true}, {Label: say.Text("made by"), Line: true}, {Label: say.Text("canister"), Line: true}, {Label: say.Text("chargers"), Line: true},
		{Label: say.Text("came out"), Choices: []string{"yes", "partly", "no"}},
		{Label: say.Text("split"), Choices: []string{"yes", "no"}},
		{Label: say.Text("hold"), Line: true, Unit: "min", Choices: []string{"still standing"}},
		{Label: say.Text("drained at minute ", say.Trimmed("targets.drained_at_minutes.value", b.R.Targets.DrainedAtMinutes.Value, 1)), Line: true, Unit: "%"},
	}
	for _, asked := range b.R.Targets.Results {
		out = append(out, document.Blank{Label: say.Text(asked.Label), Line: true, Unit: asked.Unit})
	}
	return out
}
