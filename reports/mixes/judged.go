package mixes

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// LeftOut says whether an outcome is no part of what works, as nothing of it is known
// and nobody asked for it.
func (b Run) LeftOut(o result.Outcome) bool {
	return slices.Contains(b.R.NotJudged, o) && !b.R.Targets.Needs(o)
}

// NotPart names what is no part of what works, though a cook would ask for it.
func (b Run) NotPart() document.Text {
	var names []document.Text
	for _, o := range b.R.NotJudged {
		if b.LeftOut(o) {
			names = append(names, say.Text(b.Subject(o)))
		}
	}
	switch len(names) {
	case 0:
		return nil
	case 1:
		return say.Text("Nothing is known of ", names[0], ", so it is not part of this. ")
	}
	return say.Text("Nothing is known of ", say.Listed(names), ", so they are not part of this. ")
}

// Elsewhere says where what is not known of these mixes was logged after all; empty if
// nobody logged it.
func (b Run) Elsewhere() (t document.Text) {
	for _, n := range b.R.CannotTell {
		if n.Kind == "not_judged" {
			t = say.Text(t, say.Sentence(n.Sentence), " ")
		}
	}
	return t
}

// About names what the chances are about.
func (b Run) About() document.Text {
	var names []document.Text
	for _, m := range b.R.Model {
		names = append(names, say.Text(b.Subject(m.Outcome)))
	}
	return say.Listed(names)
}

// Proviso is the sentence without which no chance here may be read; empty where
// every target was put to the test.
func (b Run) Proviso() document.Text {
	if names := b.Unknown(); len(names) > 0 {
		t := say.Text("No ", Alternatives(names), " of these mixes is known")
		if about := b.About(); len(about) > 0 {
			t = say.Text(t, ": this chance is about ", about, " only")
		}
		return say.Text(t, ".")
	}
	if b.R.HoldIsAGuess && b.R.WatchedMinutes != nil {
		watched := func() document.Span { return say.Trimmed("watched_minutes", *b.R.WatchedMinutes, 1) }
		t := say.Text("Nobody watched past ", watched(), " minutes, so ", say.Trimmed("targets.hold_minutes.value", b.R.Targets.HoldMinutes.Value, 1),
			" is not known: watch longer")
		if *b.R.WatchedMinutes > 0 {
			t = say.Text(t, ", or ask for a hold of ", watched())
		}
		return say.Text(t, ".")
	}
	return nil
}

// OneFormula says whether the trials are all one formula.
func (b Run) OneFormula() bool {
	same := false
	for _, v := range b.R.SetAside {
		if say.Known[v.Name] != "" {
			if v.Value == nil {
				return false
			}
			same = true
		}
	}
	return same && len(b.R.Variables) == 0
}

// SureEnough is what a mix is called that reaches the wanted chance.
func (b Run) SureEnough() document.Text {
	if !b.Bare() {
		return say.Text("sure enough")
	}
	return say.Text("likely enough ", b.Condition())
}

// Alternatives joins names after "no": "a", "a or b".
func Alternatives(names []document.Text) document.Text {
	var t document.Text
	for i, n := range names {
		if i > 0 {
			t = say.Text(t, " or ")
		}
		t = say.Text(t, n)
	}
	return t
}
