package mixes

import (
	"fmt"
	"slices"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/say"
)

// Rests says which trials one headline rests on, and how far it moves with any one of them
// left out; nothing where it hardly moves.
func (b Run) Rests(headline string) document.Text {
	i := slices.IndexFunc(b.R.RestsOn, func(r result.Rest) bool { return r.Headline == headline })
	if i < 0 {
		return nil
	}
	r := b.R.RestsOn[i]
	path := fmt.Sprintf("rests_on[%d]", i)
	if len(r.Flips) > 0 {
		return b.flips(r)
	}
	if len(r.Trials) == 0 {
		return nil
	}
	first := r.Trials[0]
	said := func(v float64, of string) document.Span { return say.Num(path+of, v, 1) }
	subject, would, unit := "This start", "would have ", " % fat"
	if headline == "richest_fat_percent" {
		subject = "The richest start"
	}
	if headline == "surest_chance" {
		said = func(v float64, of string) document.Span { return say.OfHundred(path+of, v) }
		would, unit = "would work ", " times in 100"
	}
	return say.Text(subject+" rests most on "+b.TrialNamed(first.At, first.ID)+". Without that trial it "+would, said(*first.Without, ".trials[0].without"), unit+", not ",
		said(r.Value, ".value"), ". Leaving out any one trial gives ", said(r.Low, ".low"), " to ", said(r.High, ".high"), unit+".")
}

// flips says that the answer hangs on single trials.
func (b Run) flips(r result.Rest) document.Text {
	var names []document.Text
	for _, at := range r.Flips {
		id := ""
		for _, t := range b.R.Trials {
			if t.At == at {
				id = t.ID
			}
		}
		names = append(names, say.Text(b.TrialNamed(at, id)))
	}
	without := "no mix is "
	if b.R.Status == result.BestAvailable {
		without = "a mix is "
	}
	switch {
	case len(names) == 1:
		return say.Text("This hangs on one trial: without ", names[0], " "+without, b.SureEnough(), ".")
	case len(names) <= 3:
		return say.Text("This hangs on single trials: without one of ", say.Listed(names), " "+without, b.SureEnough(), ".")
	}
	return say.Text("This hangs on single trials: leave out one of ", fmt.Sprint(len(names)), " of them, and "+without, b.SureEnough(), ".")
}

// TrialNamed is what the log calls a trial, and where it stands.
func (b Run) TrialNamed(at, id string) string {
	if id == "" {
		return b.PlaceOf(at)
	}
	return "trial " + id + " (" + b.PlaceOf(at) + ")"
}
