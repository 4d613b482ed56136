package mark

import (
	"fmt"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
)

// Used are the trials a figure may show.
func Used(r *result.Results) []*result.Trial {
	var ts []*result.Trial
	for i := range r.Trials {
		if t := &r.Trials[i]; t.Used {
			ts = append(ts, t)
		}
	}
	return ts
}

// Shown is a trial at its place in the variables of the axes.
type Shown struct {
	X, Y  float64
	Strip bool
	Fate  Fate
	Far   bool
}

// Key lists the marks that a figure shows.
func Key(r *result.Results, shown []Shown) []drawing.Entry {
	var n [Fates]int
	for _, s := range shown {
		n[s.Fate]++
	}
	var key []drawing.Entry
	for k := range Fates {
		if n[k] > 0 {
			key = append(key, drawing.Entry{Sign: keyMark(k), Words: FateWord(r, k), Set: "fates"})
		}
	}
	return key
}

// FatesOf is what became of the trials shown.
func FatesOf(shown []Shown) (out []Fate) {
	for _, s := range shown {
		out = append(out, s.Fate)
	}
	return out
}

// Tallied says how many trials a figure shows, and what became of them.
func Tallied(r *result.Results, shown []Fate) string {
	var n [Fates]int
	for _, k := range shown {
		n[k]++
	}
	var words []string
	for k := range Fates {
		if n[k] > 0 {
			words = append(words, fmt.Sprintf("%d %s", n[k], FateWord(r, k)))
		}
	}
	if len(words) == 0 {
		return "No trial is shown."
	}
	return "Trials shown: " + wording.List(words) + "."
}
