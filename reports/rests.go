package reports

import (
	"fmt"
	"slices"

	"foamfield/analysis/result"
)

// rests says which trials one headline rests on, and how far it moves with any one of them
// left out; nothing where it hardly moves.
func (b *builder) rests(headline string) Text {
	i := slices.IndexFunc(b.r.RestsOn, func(r result.Rest) bool { return r.Headline == headline })
	if i < 0 {
		return nil
	}
	r := b.r.RestsOn[i]
	path := fmt.Sprintf("rests_on[%d]", i)
	if len(r.Flips) > 0 {
		return b.flips(r)
	}
	if len(r.Trials) == 0 {
		return nil
	}
	first := r.Trials[0]
	said := func(v float64, of string) Span { return num(path+of, v, 1) }
	subject, unit := "This start", " % fat"
	if headline == "richest_fat_percent" {
		subject = "The richest"
	}
	if headline == "surest_chance" {
		said, unit = func(v float64, of string) Span { return chance(path+of, v) }, ""
	}
	return say(subject+" rests most on ", b.trialNamed(first.At, first.ID), ", without which it would be ", said(*first.Without, ".trials[0].without"), unit+
		"; leaving out any one trial, it stays between ", said(r.Low, ".low"), " and ", said(r.High, ".high"), unit+".")
}

// flips says that the answer hangs on single trials.
func (b *builder) flips(r result.Rest) Text {
	var names []Text
	for _, at := range r.Flips {
		id := ""
		for _, t := range b.r.Trials {
			if t.At == at {
				id = t.ID
			}
		}
		names = append(names, say(b.trialNamed(at, id)))
	}
	without := "no mix is "
	if b.r.Status == result.BestAvailable {
		without = "a mix is "
	}
	switch {
	case len(names) == 1:
		return say("This hangs on one trial: without ", names[0], " "+without, b.sureEnough(), ".")
	case len(names) <= 3:
		return say("This hangs on single trials: without one of ", listed(names), " "+without, b.sureEnough(), ".")
	}
	return say("This hangs on single trials: leave out one of ", fmt.Sprint(len(names)), " of them, and "+without, b.sureEnough(), ".")
}

// trialNamed is what the log calls a trial, and where it stands.
func (b *builder) trialNamed(at, id string) string {
	if id == "" {
		return b.place(at)
	}
	return "trial " + id + " (" + b.place(at) + ")"
}
