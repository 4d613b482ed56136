package cook

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// works says what was asked of a mix and who asked it.
func (b pages) works() document.Paragraph {
	t := b.R.Targets
	parts := []document.Text{say.Text("comes out")}
	if !b.LeftOut(result.Broke) {
		parts = append(parts, say.Text("does not split"))
	}
	parts = append(parts, say.Text("holds at least ", say.Trimmed("targets.hold_minutes.value", t.HoldMinutes.Value, 1), " minutes"))
	if !b.LeftOut(result.DrainedPercent) {
		parts = append(parts, say.Text("has drained at most ", say.Trimmed("targets.drained_percent.value", t.DrainedPercent.Value, 1),
			" % by minute ", say.Trimmed("targets.drained_at_minutes.value", t.DrainedAtMinutes.Value, 1)))
	}
	for i, asked := range t.Results {
		parts = append(parts, say.Text("has "+article(asked.Label)+" "+asked.Label+" of ", rangeAsked(fmt.Sprintf("targets.results[%d]", i), asked)))
	}
	meaning := say.Text("A mix works if it ", say.Listed(parts))
	if b.Bare() {
		meaning = say.Text(meaning, ". It is asked to do so ", wanted(t.WantedChance.Value), ". ")
	} else {
		meaning = say.Text(meaning, ". Sure enough means that it does so ", wanted(t.WantedChance.Value), ". ")
	}
	meaning = say.Text(meaning, b.NotPart(), b.Elsewhere())
	if offered := b.unasked(); len(offered) > 0 {
		meaning = say.Text(meaning, offered[1:], " ")
	}
	if len(b.Unknown()) > 0 {
		meaning = say.Text(meaning, b.Proviso(), " ")
	}
	type asked struct {
		name string
		t    result.Target
	}
	targets := []asked{{"the hold", t.HoldMinutes}}
	if !b.LeftOut(result.DrainedPercent) {
		targets = append(targets, asked{"the drained limit", t.DrainedPercent}, asked{"the minute of drainage", t.DrainedAtMinutes})
	}
	targets = append(targets, asked{"the wanted chance", t.WantedChance})
	var assumed []document.Text
	var by sources
	for _, asked := range t.Results {
		by.add(asked.From, "the "+asked.Label)
	}
	for _, one := range targets {
		if one.t.From == "assumed" {
			assumed = append(assumed, say.Text(one.name))
		} else {
			by.add(one.t.From, one.name)
		}
	}
	set := by.said()
	switch {
	case len(assumed) == len(targets) && len(set) == 0:
		return document.Paragraph{Text: say.Text(meaning, "These numbers are ", document.Span{Text: "assumed", Strong: true},
			": nobody set targets. To use your own, fill in a Targets sheet in the log.")}
	case len(assumed) > 0:
		return document.Paragraph{Text: say.Text(meaning, document.Span{Text: "Assumed", Strong: true}, ", since nobody set them: ", say.Listed(assumed), ".", set)}
	}
	return document.Paragraph{Text: say.Text(meaning, set)}
}

// sources are where targets come from, each with all that comes from it.
type sources struct {
	order []string
	names map[string][]document.Text
}

func (s *sources) add(from, name string) {
	if s.names == nil {
		s.names = map[string][]document.Text{}
	}
	from = source(from)
	if len(s.names[from]) == 0 {
		s.order = append(s.order, from)
	}
	s.names[from] = append(s.names[from], say.Text(name))
}

func (s *sources) said() (t document.Text) {
	for _, from := range s.order {
		names := s.names[from]
		t = say.Text(t, " ", say.Capital(say.Listed(names)), say.Plural(len(names), " comes", " come")+" from "+from+".")
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
func rangeAsked(path string, t result.ResultTarget) document.Text {
	unit := ""
	if t.Unit != "" {
		unit = " " + t.Unit
	}
	return say.Text(say.Seen(path, &result.Interval{Low: t.Low, High: t.High}, 1), unit)
}

// article is a or an, by the first letter of a kitchen's own word.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiouAEIOU", rune(word[0])) {
		return "an"
	}
	return "a"
}

// wanted says the chance that somebody asked for.
func wanted(p float64) document.Span {
	return document.Span{Text: wording.WantedTimes(p), Num: &document.Num{Path: "targets.wanted_chance.value", Value: p}}
}
