package reports

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
)

const firstProblems = 5

// first is the summary page.
func (b *builder) first() Section {
	s := Section{ID: "start", Title: b.title(), Reader: Cook}
	if len(b.r.Starts) > 0 {
		s.Blocks = b.starts()
	} else {
		s.Blocks = b.stopped()
	}
	s.Blocks = append(s.Blocks, b.story()...)
	return s
}

// cautions are what to keep in mind whatever the foam does.
func (b *builder) cautions() Section {
	s := Section{ID: "cautions", Title: "Cautions", Reader: Cook}
	var items []Text
	for _, c := range b.r.Cautions {
		if c.Kind != "scope" || len(b.r.Starts) == 0 { // else it is said beside the formula
			items = append(items, say(sentence(c.Text)))
		}
	}
	if len(items) > 0 {
		s.Blocks = []Block{List{Items: items, Small: true}}
	}
	return s
}

// asOf says for which week and lots the starts are, where these matter.
func (b *builder) asOf() []Block {
	as := b.r.AsOf
	if as == nil {
		return nil
	}
	made := "as of " + inWords(as.Period)
	if len(as.Lots) > 0 {
		made += " with " + strings.Join(as.Lots, " and ")
	}
	return []Block{Callout{Title: "Weeks or lots matter", Text: say(strings.Join(wholeSentences(as.Why), " ") +
		" This start is " + made + ": older trials count as these would have given them. See foamfield trend for week by week.")}}
}

// wholeSentences begins each with a capital and ends it.
func wholeSentences(list []string) (out []string) {
	for _, s := range list {
		out = append(out, capital(say(sentence(s))).String())
	}
	return out
}

func (b *builder) title() string {
	if b.bare() && len(b.r.Starts) > 0 {
		if names := b.unknown(); len(names) > 0 {
			return say("No ", alternatives(names), " is known: the best mix as to ", b.about(), " only").String()
		}
		return "Not watched long enough; the best guess there is"
	}
	switch b.r.Status {
	case result.Recommended:
		return "Start from this"
	case result.BestAvailable:
		return "No mix is sure enough yet; the best there is"
	case result.ToBeSettled:
		return "Something has to be settled first"
	case result.TooFewTrials:
		return "Too few trials to name a start"
	case result.NothingWorked:
		return "Nothing worked yet"
	case result.NoSafeStart:
		return "No mix clogs seldom enough to be named as a start"
	}
	return "What the log says"
}

// starts is the page of a run that names a mix.
func (b *builder) starts() []Block {
	start := b.r.Starts[0]
	const path = "starts[0]"
	var blocks []Block
	switch {
	case b.bare():
		blocks = append(blocks, Paragraph{Lead: true, Text: b.proviso()})
	case b.r.Status != result.Recommended:
		blocks = append(blocks, Paragraph{Lead: true, Text: capital(say(sentence(b.r.StatusReason)))})
	}
	blocks = append(blocks, b.asOf()...)
	name := "Surest start"
	if b.bare() {
		name = "Best guess"
	}
	blocks = append(blocks, b.inGrams(name, path, start)...)
	blocks = append(blocks, b.costs()...)
	blocks = append(blocks, b.service()...)
	promise := "Likely to work"
	if b.r.Status != result.Recommended {
		promise = "The best guess these trials allow, not a promise"
	}
	silent := "; says nothing of taste, canister or food safety."
	if len(b.r.Targets.Results) > 0 {
		silent = "; says nothing of canister or food safety, nor of taste beyond what was asked."
	}
	blocks = append(blocks, Callout{Title: "What this promises", Text: say(promise + silent)})
	blocks = append(blocks, b.works(), head("How sure, and how it would fail"))
	blocks = append(blocks, b.sure(path, start)...)
	beyond := b.beyond()
	title := "How far the fat can go"
	if len(beyond) > 0 {
		title += ", and what fails beyond"
	}
	blocks = append(append(blocks, head(title)), b.richest()...)
	if len(beyond) > 0 {
		blocks = append(blocks, List{Items: beyond})
	}
	return blocks
}

// inGrams is a start in grams with what to mind beside it; without grams, in words.
func (b *builder) inGrams(name, path string, s result.Start) []Block {
	f := b.formula(name, path, s)
	if path == "starts[0]" && name != "" {
		f.Beside = b.smallMap()
	}
	blocks := []Block{f}
	if len(s.Ingredients) == 0 {
		lead := say(b.told(path, s.Mix), ".")
		if name != "" {
			lead = say(Span{Text: name, Strong: true}, ": ", lead)
		}
		blocks = []Block{Paragraph{Lead: true, Text: lead}}
		if f.Beside != "" {
			blocks = append(blocks, FigureRef{Name: f.Beside, Beside: true})
		}
		blocks = append(blocks, Paragraph{Text: say(b.noGrams(path, s), b.made(path, s))})
	}
	return append(blocks, mind(s)...)
}

// smallMap is the figure that shows where the start lies, "" if there is none.
func (b *builder) smallMap() string {
	for _, name := range []string{"region-emulsifier", "region-hlb"} {
		if _, ok := b.figures[name]; ok {
			return name
		}
	}
	return ""
}

// mind is what to look at before a start is made.
func mind(s result.Start) []Block {
	var t Text
	for _, n := range s.Notes {
		if !proportions(n) {
			t = say(t, capital(say(sentence(n))), " ")
		}
	}
	if len(t) == 0 {
		return nil
	}
	return []Block{Callout{Caution: true, Title: "Look before you make it:", Text: t[:len(t)-1]}}
}

// told is the mix of a formula, with HLB in words where it is the first of the page.
func (b *builder) told(path string, m result.Mix) Text {
	if path == "starts[0]" || path == "best_seen" {
		return b.mixTold(path+".mix", m)
	}
	return b.mix(path+".mix", m)
}

// noGrams says why a start has no grams.
func (b *builder) noGrams(path string, s result.Start) Text {
	switch m := s.Mix; {
	case m.EmulsifierPercent == nil && m.EmulsifierGrams != nil:
		return say("That is ", b.amount(path+".mix.emulsifier_grams", emulsifierGrams, *m.EmulsifierGrams),
			" in your usual batch, whose weight the log does not say; log the batch grams to get a formula. ")
	case s.GramsNote != "":
		return say(capital(say(sentence(s.GramsNote))), " ")
	}
	return nil
}

// proportions says whether a note only tells whose proportions a formula has;
// every other note is a caution.
func proportions(note string) bool { return strings.HasPrefix(note, "proportions between ") }

// formula sets a start in grams.
func (b *builder) formula(name, path string, s result.Start) Formula {
	digits := decimals(b.r.Batch.ScaleStepGrams)
	f := Formula{Title: name}
	total, ounces := 0.0, 0.0
	for i, l := range s.Ingredients {
		p := fmt.Sprintf("%s.ingredients[%d]", path, i)
		line := FormulaLine{
			Name: say(l.Name), Grams: say(num(p+".grams", l.Grams, digits), " g"), Ounces: b.ounces(p+".ounces", l.Ounces),
			OfMix: say(num(p+".percent_of_mix", l.PercentOfMix, 1), " %"),
			Weigh: tolerance(p+".weighing_error_percent", l.WeighingErrorPercent),
		}
		if l.PercentOfPart != nil && l.Part != "" {
			line.OfPart = say(num(p+".percent_of_part", *l.PercentOfPart, 1), " % of "+l.Part)
		}
		f.Lines = append(f.Lines, line)
		total += l.Grams
		if l.Ounces != nil {
			ounces += *l.Ounces
		}
	}
	note := say(b.told(path, s.Mix), ". ", b.made(path, s))
	if len(f.Lines) > 0 {
		f.Total = say(num(path+".ingredients[*].grams", total, digits), " g")
		if s.Ingredients[0].Ounces != nil {
			f.TotalOunces = b.ounces(path+".ingredients[*].ounces", &ounces)
		}
	}
	if s.GramsNote != "" {
		note = say(note, " ", capital(say(sentence(s.GramsNote))))
	}
	for _, n := range s.Notes {
		if proportions(n) {
			note = say(note, " ", capital(say(sentence(n))))
		}
	}
	f.Note = note
	return f
}

// ounces says them, if they were asked for, to what a scale in ounces shows: hundredths,
// or thousandths beside a finer scale in grams.
func (b *builder) ounces(path string, oz *float64) Text {
	if oz == nil {
		return nil
	}
	return say(num(path, *oz, max(2, decimals(b.r.Batch.ScaleStepGrams)+1)), " oz")
}

// tolerance is the weighing error at most, of the ingredient's own grams; one
// too small to matter is not named.
func tolerance(path string, percent float64) Text {
	if percent < 0.1 {
		return nil
	}
	return say("± ", num(path, percent, 1), " %")
}

// made says whether a mix has been made.
func (b *builder) made(path string, s result.Start) Text {
	if s.MadeTimes == 0 {
		return say("Predicted, not yet made: make it twice first.")
	}
	if s.MadeTimes >= 2 && s.MadeWorked == s.MadeTimes {
		return say("Made ", often(path+".made_times", s.MadeTimes), ", worked every time: keep it.")
	}
	return say("Made ", often(path+".made_times", s.MadeTimes), " before; it worked ", often(path+".made_worked", s.MadeWorked), ".")
}

// often counts occasions.
func often(path string, n int) Text {
	switch n {
	case 0:
		return say("not once")
	case 1:
		return say("once")
	}
	return say(count(path, n), " times")
}

// works says what was asked of a mix and who asked it.
func (b *builder) works() Paragraph {
	t := b.r.Targets
	parts := []Text{say("comes out")}
	if !b.leftOut(result.Broke) {
		parts = append(parts, say("does not split"))
	}
	parts = append(parts, say("holds at least ", trimmed("targets.hold_minutes.value", t.HoldMinutes.Value, 1), " minutes"))
	if !b.leftOut(result.DrainedPercent) {
		parts = append(parts, say("has drained at most ", trimmed("targets.drained_percent.value", t.DrainedPercent.Value, 1),
			" % by minute ", trimmed("targets.drained_at_minutes.value", t.DrainedAtMinutes.Value, 1)))
	}
	for i, asked := range t.Results {
		parts = append(parts, say("has "+article(asked.Label)+" "+asked.Label+" of ", rangeAsked(fmt.Sprintf("targets.results[%d]", i), asked)))
	}
	meaning := say("A mix works if it ", listed(parts))
	if b.bare() {
		meaning = say(meaning, ". It is asked to do so ", wanted(t.WantedChance.Value), ". ")
	} else {
		meaning = say(meaning, ". Sure enough means that it does so ", wanted(t.WantedChance.Value), ". ")
	}
	meaning = say(meaning, b.notPart(), b.elsewhere())
	if offered := b.unasked(); len(offered) > 0 {
		meaning = say(meaning, offered[1:], " ")
	}
	if len(b.unknown()) > 0 {
		meaning = say(meaning, b.proviso(), " ")
	}
	type asked struct {
		name string
		t    result.Target
	}
	targets := []asked{{"the hold", t.HoldMinutes}}
	if !b.leftOut(result.DrainedPercent) {
		targets = append(targets, asked{"the drained limit", t.DrainedPercent}, asked{"the minute of drainage", t.DrainedAtMinutes})
	}
	targets = append(targets, asked{"how sure", t.WantedChance})
	var assumed []Text
	var by sources
	for _, asked := range t.Results {
		by.add(asked.From, "the "+asked.Label)
	}
	for _, one := range targets {
		if one.t.From == "assumed" {
			assumed = append(assumed, say(one.name))
		} else {
			by.add(one.t.From, one.name)
		}
	}
	set := by.said()
	switch {
	case len(assumed) == len(targets) && len(set) == 0:
		return Paragraph{Text: say(meaning, "These numbers are ", Span{Text: "assumed", Strong: true},
			": nobody set targets. To use your own, fill in a Targets sheet in the log.")}
	case len(assumed) > 0:
		return Paragraph{Text: say(meaning, Span{Text: "Assumed", Strong: true}, ", since nobody set them: ", listed(assumed), ".", set)}
	}
	return Paragraph{Text: say(meaning, set)}
}

// sources are where targets come from, each with all that comes from it.
type sources struct {
	order []string
	names map[string][]Text
}

func (s *sources) add(from, name string) {
	if s.names == nil {
		s.names = map[string][]Text{}
	}
	from = source(from)
	if len(s.names[from]) == 0 {
		s.order = append(s.order, from)
	}
	s.names[from] = append(s.names[from], say(name))
}

func (s *sources) said() (t Text) {
	for _, from := range s.order {
		names := s.names[from]
		t = say(t, " ", capital(listed(names)), plural(len(names), " comes", " come")+" from "+from+".")
	}
	return t
}

// source is where a target comes from, without the names of what is typed at a terminal.
func source(from string) string {
	if strings.HasPrefix(from, "--") {
		return "the command that made this report"
	}
	return from
}

// rangeAsked is the range asked of a result: "at least 6", "6 to 8".
func rangeAsked(path string, t result.ResultTarget) Text {
	unit := ""
	if t.Unit != "" {
		unit = " " + t.Unit
	}
	return say(seen(path, &result.Interval{Low: t.Low, High: t.High}, 1), unit)
}

// article is a or an, by the first letter of a kitchen's own word.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiouAEIOU", rune(word[0])) {
		return "an"
	}
	return "a"
}

// wanted says the chance that somebody asked for.
func wanted(p float64) Span {
	s := Span{Num: &Num{Path: "targets.wanted_chance.value", Value: p}}
	for _, of := range []float64{10, 20, 100, 1000} {
		if n := p * of; n-float64(int(n+0.5)) < 1e-6 && float64(int(n+0.5))-n < 1e-6 {
			s.Text = fmt.Sprintf("%d times in %.0f", int(n+0.5), of)
			if int(n+0.5) == 1 {
				s.Text = fmt.Sprintf("once in %.0f", of)
			}
			return s
		}
	}
	s.Text = Chance(p)
	return s
}
