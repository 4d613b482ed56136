package trend

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
)

// summary is what the weeks show, the most wanted first, in plain words.
func summary(r *result.Trend) (out []string) {
	var shown, suggested []result.TrendTest
	for _, t := range r.Tests {
		switch t.Verdict {
		case result.Shown:
			shown = append(shown, t)
		case result.Suggested:
			suggested = append(suggested, t)
		}
	}
	for _, t := range shown {
		out = append(out, capital(strings.TrimPrefix(t.Sentence, "shown: "))+weekWords(r, t)+movedWords(r, t)+".")
	}
	for _, c := range r.Changes {
		out = append(out, capital(c.Sentence)+".")
	}
	if len(shown) == 0 && len(r.Changes) == 0 {
		switch tested := tested(r.Tests); {
		case tested == 0:
			out = append(out, "These trials are too few, or too close in time, to say whether the kitchen is steady.")
		default:
			out = append(out, fmt.Sprintf("Nothing that was looked for is shown: of %d things looked at, none differs by more than chance would make it.", tested))
		}
	}
	for _, a := range r.CannotSeparate {
		out = append(out, capital(a.Sentence)+".")
	}
	for _, t := range suggested {
		out = append(out, capital(t.Sentence)+".")
	}
	if r.Now != nil {
		out = append(out, capital(r.Now.Sentence)+".")
	}
	return out
}

// weekWords adds to a difference between weeks that it may be a lot's, where the two
// cannot be told apart.
func weekWords(r *result.Trend, t result.TrendTest) string {
	if t.By != "" || t.What != "week" && t.What != "drift" {
		return ""
	}
	for _, a := range r.CannotSeparate {
		if a.B == "week" && a.A != "day" {
			return fmt.Sprintf(": %s or week, which of them is unclear", a.A)
		}
	}
	return ""
}

// movedWords says where hold peaked first and where it peaks now.
func movedWords(r *result.Trend, t result.TrendTest) string {
	name, optimum := strings.CutPrefix(t.What, "optimum:")
	var of []result.Optimum
	for _, o := range r.Optimum {
		if optimum && o.Variable == name {
			of = append(of, o)
		}
	}
	if len(of) < 2 {
		return ""
	}
	first, last := of[0], of[len(of)-1]
	return strings.TrimSpace(fmt.Sprintf(": it was %.1f %s", first.At, first.Unit)) + strings.TrimRight(fmt.Sprintf(" in %s and is %.1f %s", line.InWords(first.Period), last.At, last.Unit), " ") + " in the latest"
}

func tested(tests []result.TrendTest) (n int) {
	for _, t := range tests {
		if t.P != nil {
			n++
		}
	}
	return n
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
