package cook

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// leftOut says whether an outcome is no part of what works, as nothing of it is known
// and nobody asked for it.
func (b pages) leftOut(o result.Outcome) bool {
	return slices.Contains(b.R.NotJudged, o) && !b.R.Targets.Needs(o)
}

// notPart names what is no part of what works, though a cook would ask for it.
func (b pages) notPart() document.Text {
	var names []document.Text
	for _, o := range b.R.NotJudged {
		if b.leftOut(o) {
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

// elsewhere says where what is not known of these mixes was logged after all; empty if
// nobody logged it.
func (b pages) elsewhere() (t document.Text) {
	for _, n := range b.R.CannotTell {
		if n.Kind == "not_judged" {
			t = say.Text(t, say.Sentence(n.Sentence), " ")
		}
	}
	return t
}

// about names what the chances are about.
func (b pages) about() document.Text {
	var names []document.Text
	for _, m := range b.R.Model {
		names = append(names, say.Text(b.Subject(m.Outcome)))
	}
	return say.Listed(names)
}

// proviso is the sentence without which no chance here may be read; empty where
// every target was put to the test.
func (b pages) proviso() document.Text {
	if names := b.Unknown(); len(names) > 0 {
		t := say.Text("No ", alternatives(names), " of these mixes is known")
		if about := b.about(); len(about) > 0 {
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

// oneFormula says whether the trials are all one formula.
func (b pages) oneFormula() bool {
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

// sureEnough is what a mix is called that reaches the wanted chance.
func (b pages) sureEnough() document.Text {
	if !b.Bare() {
		return say.Text("sure enough")
	}
	return say.Text("likely enough ", b.Condition())
}

// alternatives joins names after "no": "a", "a or b".
func alternatives(names []document.Text) document.Text {
	var t document.Text
	for i, n := range names {
		if i > 0 {
			t = say.Text(t, " or ")
		}
		t = say.Text(t, n)
	}
	return t
}
