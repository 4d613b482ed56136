package cook

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// richest says how far the fat can go.
func (b pages) richest() []document.Block {
	if b.OneFormula() {
		return []document.Block{document.Paragraph{Text: say.Text("All ", say.Count("counts.used", b.R.Counts.Used), " trials are one formula: vary fat or emulsifier to learn more.")}}
	}
	if b.R.HoldIsAGuess {
		return []document.Block{document.Paragraph{Text: say.Text("No rich mix can be named until foams are watched for ",
			say.Trimmed("targets.hold_minutes.value", b.R.Targets.HoldMinutes.Value, 1), " minutes.")}}
	}
	want := b.R.Targets.WantedChance.Value
	for i, s := range b.R.Starts {
		if s.Aim != result.Richest {
			continue
		}
		if i > 0 && b.SameMix(b.R.Starts[0].Mix, s.Mix) {
			return []document.Block{document.Paragraph{Text: say.Text("The surest start is also the richest mix that is ", b.SureEnough(), ".")}}
		}
		path := fmt.Sprintf("starts[%d]", i)
		mix := b.Mix(path+".mix", s.Mix)
		if i > 0 && maps.Equal(b.R.Starts[0].Mix.Extras, s.Mix.Extras) {
			mix = b.MixOnly(path+".mix", s.Mix)
		}
		t := say.Text("The richest mix that is ", b.SureEnough(), " has ", mix)
		if len(s.Ingredients) > 0 {
			t = say.Text(t, ": ", bolder(b.InLine(path, s.Ingredients)))
		}
		blocks := []document.Block{document.Paragraph{Text: say.Text(t, ". ", b.Made(path, s))}, document.Paragraph{Text: b.OftenAndFails(path, s)}}
		if rests := b.Rests("richest_fat_percent"); len(rests) > 0 {
			blocks = append(blocks, document.Paragraph{Text: rests})
		}
		return append(blocks, mind(s)...)
	}
	return []document.Block{document.Paragraph{Text: say.Text("No rich mix can be named: none inside what was tried works ", wanted(want), b.Given(), ".")}}
}

// beyond says in words what ends the mixes that are sure enough.
func (b pages) beyond() []document.Text {
	var items []document.Text
	if b.OneFormula() {
		return nil
	}
	last := -1
	for i, l := range b.R.FatLimit {
		if l.Workable {
			last = i
		}
	}
	if n := len(b.R.FatLimit); n > 0 {
		at := func(i int) document.Span {
			return say.Num(fmt.Sprintf("fat_limit[%d].fat_percent", i), b.R.FatLimit[i].FatPercent, 0)
		}
		switch {
		case b.R.HoldIsAGuess:
			items = append(items, say.Text("How far the fat can go is not known: ", b.tooShort(), "."))
		case last < 0:
			worst := b.R.FatLimit[n-1]
			items = append(items, say.Text("No mix is ", b.SureEnough(), " at any fat percent that was tried. At ", at(n-1), " %, the most tried, the best mix fails first by "+b.Failings(worst.LimitedBy)+"."))
		case last < n-1:
			end := slices.IndexFunc(b.R.FatLimit[last+1:], func(l result.FatLimit) bool { return l.Chance.Mean < b.R.Targets.WantedChance.Value })
			if end != 0 {
				items = append(items, say.Text("From about ", at(last+1), " % fat on some mixes may work as often. None of them is named as a start: they clog too often, or lie too far from what was tried."))
			}
			if end >= 0 {
				items = append(items, say.Text("No richer mix is ", b.SureEnough(), ": the best of them most often fail first by "+b.Failings(b.endsBy(last+1+end))+"."))
			}
		default:
			items = append(items, say.Text("Up to ", at(last), " % fat, the most that was tried, some mix is ", b.SureEnough(), "; of richer ones nothing is known."))
		}
	}
	if first := b.stoppers(); len(first) > 0 {
		items = append(items, say.Text("Of the mixes inside what was tried that fail too often, about ", say.Listed(first), "."))
	}
	if t := b.tried(); t != nil {
		items = append(items, say.Text("The trials cover ", t, "; of mixes outside nothing is known."))
	}
	return items
}

// endsBy is what ends the fat: one cause for the whole page, else that of the first step.
func (b pages) endsBy(step int) result.Outcome {
	if end := b.R.FatEnd; end != nil && end.FailsFirstBy != "" {
		return end.FailsFirstBy
	}
	return b.R.FatLimit[step].LimitedBy
}

// tooShort says how long foams were watched, within a sentence.
func (b pages) tooShort() document.Text {
	if b.R.WatchedMinutes == nil {
		return say.Text("nobody watched long enough")
	}
	return say.Text("nobody watched past ", say.Trimmed("watched_minutes", *b.R.WatchedMinutes, 1), " minutes")
}

// stoppers is what stops mixes first, the commonest first.
func (b pages) stoppers() []document.Text {
	order := make([]int, 0, len(b.R.Limits))
	for i, l := range b.R.Limits {
		if l.Share >= 0.05 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.R.Limits[y].Share, b.R.Limits[x].Share) })
	var out []document.Text
	for _, i := range order {
		l := b.R.Limits[i]
		n := say.OfHundred(fmt.Sprintf("limits[%d].share", i), l.Share)
		by := " by "
		if len(out) == 0 {
			by = " in 100 fail first by "
		}
		out = append(out, say.Text(n, by+b.Failings(l.Outcome)))
	}
	return out
}

// tried gives the ranges the trials cover.
func (b pages) tried() document.Text {
	var parts []document.Text
	for i, v := range b.R.Variables {
		p := fmt.Sprintf("variables[%d]", i)
		parts = append(parts, b.Span(p+".low", p+".high", v.Name, v.Low, v.High))
	}
	return say.Listed(parts)
}

func bolder(t document.Text) document.Text {
	out := make(document.Text, len(t))
	for i, s := range t {
		s.Strong = true
		out[i] = s
	}
	return out
}
