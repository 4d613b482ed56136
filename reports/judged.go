package reports

import (
	"slices"

	"foamfield/analysis/result"
)

// links name what a chance is about.
var links = map[result.Outcome]string{
	result.CameOut: "coming out", result.Broke: "splitting",
	result.HoldMinutes: "hold", result.DrainedPercent: "drainage",
}

func (b *builder) subject(o result.Outcome) string {
	if asked := b.r.Targets.Asked(o); asked != nil {
		return asked.Label
	}
	return links[o]
}

// unknown are the targets that no mix is recommended without and no chance is about.
func (b *builder) unknown() []Text {
	var names []Text
	for _, o := range b.r.NotJudged {
		if b.r.Targets.Needs(o) {
			names = append(names, say(b.subject(o)))
		}
	}
	return names
}

// leftOut says whether an outcome is no part of what works, as nothing of it is known
// and nobody asked for it.
func (b *builder) leftOut(o result.Outcome) bool {
	return slices.Contains(b.r.NotJudged, o) && !b.r.Targets.Needs(o)
}

// notPart names what is no part of what works, though a cook would ask for it.
func (b *builder) notPart() Text {
	var names []Text
	for _, o := range b.r.NotJudged {
		if b.leftOut(o) {
			names = append(names, say(b.subject(o)))
		}
	}
	switch len(names) {
	case 0:
		return nil
	case 1:
		return say("Nothing is known of ", names[0], ", so it is not part of this. ")
	}
	return say("Nothing is known of ", listed(names), ", so they are not part of this. ")
}

// elsewhere says where what is not known of these mixes was logged after all; empty if
// nobody logged it.
func (b *builder) elsewhere() (t Text) {
	for _, n := range b.r.CannotTell {
		if n.Kind == "not_judged" {
			t = say(t, capital(say(sentence(n.Sentence))), " ")
		}
	}
	return t
}

// about names what the chances are about.
func (b *builder) about() Text {
	var names []Text
	for _, m := range b.r.Model {
		names = append(names, say(b.subject(m.Outcome)))
	}
	return listed(names)
}

// bare says that the chances leave out something that was asked for, so that
// nothing may be called sure.
func (b *builder) bare() bool { return b.r.HoldIsAGuess || len(b.unknown()) > 0 }

// proviso is the sentence without which no chance here may be read; empty where
// every target was put to the test.
func (b *builder) proviso() Text {
	if names := b.unknown(); len(names) > 0 {
		t := say("No ", alternatives(names), " of these mixes is known")
		if about := b.about(); len(about) > 0 {
			t = say(t, ": this chance is about ", about, " only")
		}
		return say(t, ".")
	}
	if b.r.HoldIsAGuess && b.r.WatchedMinutes != nil {
		watched := func() Span { return trimmed("watched_minutes", *b.r.WatchedMinutes, 1) }
		t := say("Nobody watched past ", watched(), " minutes, so ", trimmed("targets.hold_minutes.value", b.r.Targets.HoldMinutes.Value, 1),
			" is not known: watch longer")
		if *b.r.WatchedMinutes > 0 {
			t = say(t, ", or ask for a hold of ", watched())
		}
		return say(t, ".")
	}
	return nil
}

// condition is the proviso inside a sentence.
func (b *builder) condition() Text {
	if names := b.unknown(); len(names) > 0 {
		return say("with ", listed(names), " left out")
	}
	if b.r.HoldIsAGuess && b.r.WatchedMinutes != nil {
		return say("if foams hold on as they did in the ", trimmed("watched_minutes", *b.r.WatchedMinutes, 1), " minutes watched")
	}
	return nil
}

// given is the condition after a chance.
func (b *builder) given() Text {
	if c := b.condition(); len(c) > 0 {
		return say(", ", c)
	}
	return nil
}

// oneFormula says whether the trials are all one formula.
func (b *builder) oneFormula() bool {
	same := false
	for _, v := range b.r.SetAside {
		if known[v.Name] != "" {
			if v.Value == nil {
				return false
			}
			same = true
		}
	}
	return same && len(b.r.Variables) == 0
}

// sureEnough is what a mix is called that reaches the wanted chance.
func (b *builder) sureEnough() Text {
	if !b.bare() {
		return say("sure enough")
	}
	return say("likely enough ", b.condition())
}

// alternatives joins names after "no": "a", "a or b".
func alternatives(names []Text) Text {
	var t Text
	for i, n := range names {
		if i > 0 {
			t = say(t, " or ")
		}
		t = say(t, n)
	}
	return t
}
