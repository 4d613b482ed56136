package reports

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"foamfield/analysis/result"
)

// richest says how far the fat can go.
func (b *builder) richest() []Block {
	if b.oneFormula() {
		return []Block{Paragraph{Text: say("All ", count("counts.used", b.r.Counts.Used), " trials are one formula: vary fat or emulsifier to learn more.")}}
	}
	if b.r.HoldIsAGuess {
		return []Block{Paragraph{Text: say("No rich mix can be named until foams are watched for ",
			trimmed("targets.hold_minutes.value", b.r.Targets.HoldMinutes.Value, 1), " minutes.")}}
	}
	want := b.r.Targets.WantedChance.Value
	for i, s := range b.r.Starts {
		if s.Aim != result.Richest {
			continue
		}
		if i > 0 && b.sameMix(b.r.Starts[0].Mix, s.Mix) {
			return []Block{Paragraph{Text: say("The surest start is also the richest mix that is ", b.sureEnough(), ".")}}
		}
		path := fmt.Sprintf("starts[%d]", i)
		mix := b.mix(path+".mix", s.Mix)
		if i > 0 && maps.Equal(b.r.Starts[0].Mix.Extras, s.Mix.Extras) {
			mix = b.mixOnly(path+".mix", s.Mix)
		}
		t := say("The richest mix that is ", b.sureEnough(), " has ", mix)
		if len(s.Ingredients) > 0 {
			t = say(t, ": ", bolder(b.inLine(path, s.Ingredients)))
		}
		blocks := []Block{Paragraph{Text: say(t, ". ", b.made(path, s))}, Paragraph{Text: b.oftenAndFails(path, s)}}
		if rests := b.rests("richest_fat_percent"); len(rests) > 0 {
			blocks = append(blocks, Paragraph{Text: rests})
		}
		return append(blocks, mind(s)...)
	}
	return []Block{Paragraph{Text: say("No rich mix can be named: none inside what was tried works ", wanted(want), b.given(), ".")}}
}

// sameMix says whether two mixes read the same.
func (b *builder) sameMix(x, y result.Mix) bool {
	return b.mix("", x).String() == b.mix("", y).String()
}

// beyond says in words what ends the mixes that are sure enough.
func (b *builder) beyond() []Text {
	var items []Text
	if b.oneFormula() {
		return nil
	}
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
		case b.r.HoldIsAGuess:
			items = append(items, say("How far the fat can go is not known: ", b.tooShort(), "."))
		case last < 0:
			worst := b.r.FatLimit[n-1]
			items = append(items, say("No mix is ", b.sureEnough(), " at any fat percent that was tried; at ", at(n-1), " % it fails first by "+b.failings(worst.LimitedBy)+"."))
		case last < n-1:
			end := slices.IndexFunc(b.r.FatLimit[last+1:], func(l result.FatLimit) bool { return l.Chance.Mean < b.r.Targets.WantedChance.Value })
			if end != 0 {
				items = append(items, say("From about ", at(last+1), " % fat on mixes may work as often, but none is named as a start: they clog too often, or lie too far from what was tried."))
			}
			if end >= 0 {
				end += last + 1
				items = append(items, say("From about ", at(end), " % fat on no mix is ", b.sureEnough(), ": it fails first by "+b.failings(b.r.FatLimit[end].LimitedBy)+"."))
			}
		default:
			items = append(items, say("Up to ", at(last), " % fat, the most that was tried, some mix is ", b.sureEnough(), "; of richer ones nothing is known."))
		}
	}
	other := "other "
	if last < 0 { // than none
		other = ""
	}
	if first := b.stoppers(); len(first) > 0 {
		items = append(items, say("Of 100 "+other+"mixes inside what was tried about ", listed(first), "."))
	}
	if t := b.tried(); t != nil {
		items = append(items, say("The trials cover ", t, "; of mixes outside nothing is known."))
	}
	return items
}

// tooShort says how long foams were watched, within a sentence.
func (b *builder) tooShort() Text {
	if b.r.WatchedMinutes == nil {
		return say("nobody watched long enough")
	}
	return say("nobody watched past ", trimmed("watched_minutes", *b.r.WatchedMinutes, 1), " minutes")
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
		n := ofHundred(fmt.Sprintf("limits[%d].share", i), l.Share)
		by := " by "
		if len(out) == 0 {
			by = " fail first by "
		}
		out = append(out, say(n, by+b.failings(l.Outcome)))
	}
	return out
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

func bolder(t Text) Text {
	out := make(Text, len(t))
	for i, s := range t {
		s.Strong = true
		out[i] = s
	}
	return out
}
