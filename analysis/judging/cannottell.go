package judging

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/belief"
	"foamfield/analysis/groups"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// oneAtATimeShare is the share of trials that differ from the usual mix in one
// variable at most, from which a log counts as made one thing at a time.
const oneAtATimeShare = 0.9

// CannotTell lists what these trials do not show, each in a plain sentence; b is nil where
// nothing is believed yet, and trends is how many were looked at.
func CannotTell(log *trial.Log, s *surface.Surface, b *belief.Belief, j *Judgement, trends int) []result.NotShown {
	out := &notShown{list: []result.NotShown{}}
	if s.HoldIsAGuess {
		out.add("extrapolation", "nobody watched a foam for as long as the hold asked for, so whether one holds that long is a guess beyond the watching")
	}
	if len(s.Vars) > 0 {
		out.add("extrapolation", "what a mix does outside the tested ranges of "+say.List(labels(s))+" is not known, and no start is named there")
	}
	for _, o := range s.NotJudged {
		kind := "not_logged"
		if s.Why[o].Elsewhere {
			kind = "not_judged"
		}
		out.add(kind, s.Why[o].Sentence+", so no chance here says anything of it")
	}
	if b != nil {
		out.bounded(b.Links)
	}
	out.repeats(j.Repeatability)
	out.levelsTried(s)
	out.notTold(j)
	out.days(s)
	if kinds := holdHeadings(log.Columns); len(kinds) > 1 {
		out.add("mixed_hold", "hold stands under different headings, "+say.List(quoted(kinds))+": if they mean different things, they are mixed here")
	}
	out.looks(j.GroupEffects, trends)
	return out.list
}

// notShown is the list in the making.
type notShown struct{ list []result.NotShown }

func (n *notShown) add(kind, sentence string) {
	n.list = append(n.list, result.NotShown{Kind: kind, Sentence: sentence})
}

func labels(s *surface.Surface) (out []string) {
	for _, v := range s.Vars {
		out = append(out, v.Label)
	}
	return out
}

func quoted(names []string) (out []string) {
	for _, n := range names {
		out = append(out, "“"+n+"”")
	}
	return out
}

var lineNames = map[result.Outcome]string{result.HoldMinutes: "hold", result.DrainedPercent: "drained percent"}

// bounded names results nobody read exactly.
func (n *notShown) bounded(links []belief.Link) {
	for _, l := range links {
		if !works.IsLine(l.Outcome) {
			continue
		}
		c := belief.Count(l.Seen)
		switch {
		case c.Exact+c.Between > 0:
		case c.AtLeast > 0 && c.AtMost == 0:
			n.add("all_bounded", "every "+lineNames[l.Outcome]+" is known only as at least so much, so what moves it and how much it scatters is not known")
		case c.AtMost > 0 && c.AtLeast == 0:
			n.add("all_bounded", "every "+lineNames[l.Outcome]+" is known only as at most so much, so what moves it and how much it scatters is not known")
		}
	}
}

// repeats names results whose repeats nobody made.
func (n *notShown) repeats(found []result.Repeatability) {
	for _, r := range found {
		if r.SDLn == nil {
			n.add("no_repeats", "no formula was made twice with an exact "+lineNames[result.Outcome(r.Result)]+", so the scatter of two mixes of one formula is not separated from what the variables do")
		}
	}
}

// levelsTried names variables tried at too few levels, or only one at a time.
func (n *notShown) levelsTried(s *surface.Surface) {
	for _, a := range s.SetAside {
		if a.Value == nil {
			continue
		}
		sentence, unknown := a.Label+" was the same in every trial", "what it does"
		if k := slices.IndexFunc(s.Extras, func(x trial.Variable) bool { return x.Name == a.Name }); k >= 0 {
			sentence = a.Label + ": the same in every trial that says it"
			if s.Extras[k].Result {
				unknown = "what moves it"
			}
		}
		n.add("constant", sentence+", so "+unknown+" is not known")
	}
	trials := s.OnSurface()
	for v := range s.Vars {
		if steps(s, trials, v) < 3 {
			n.add("few_levels", s.Vars[v].Label+" was tried at two levels only, so whether the results bend or peak between them is not known")
		}
	}
	if len(s.Vars) > 1 && oneAtATime(s, trials) {
		n.add("one_at_a_time", "nearly every trial differs from the usual mix in one thing only, so how "+say.List(labels(s))+" act together is not known")
	}
}

// steps counts a variable's levels, up to 3.
func steps(s *surface.Surface, trials []*surface.Placed, v int) int {
	var seen []float64
	for _, t := range trials {
		if !slices.ContainsFunc(seen, func(x float64) bool { return s.Near(v, x, t.Mix[v]) }) {
			if seen = append(seen, t.Mix[v]); len(seen) == 3 {
				break
			}
		}
	}
	return len(seen)
}

// oneAtATime says whether nearly every trial differs in one variable at most from
// one mix, the one in the middle of the cross.
func oneAtATime(s *surface.Surface, trials []*surface.Placed) bool {
	most := 0
	var bases []*surface.Placed
	for _, t := range trials { // a few bases tell: most trials of a cross share its middle
		if len(bases) < 50 && !slices.ContainsFunc(bases, func(b *surface.Placed) bool { return s.SameMix(b.Mix, t.Mix) }) {
			bases = append(bases, t)
		}
	}
	for _, base := range bases {
		close := 0
		for _, t := range trials {
			differ := 0
			for v := range s.Vars {
				if !s.Near(v, base.Mix[v], t.Mix[v]) {
					differ++
				}
			}
			if differ <= 1 {
				close++
			}
		}
		most = max(most, close)
	}
	return float64(most) >= oneAtATimeShare*float64(len(trials))
}

// notTold repeats what moved together, and which groups the variables hide.
func (n *notShown) notTold(j *Judgement) {
	said := map[string]bool{}
	once := func(sentence string) {
		if !said[sentence] {
			said[sentence] = true
			n.add("confounded", sentence)
		}
	}
	for _, c := range j.Confounded {
		once(c.Sentence)
	}
	for _, e := range j.GroupEffects {
		if len(e.NotToldFrom) > 0 {
			once(e.Sentence)
		}
	}
}

// days names what a log without days, of one day, or of one cook a day hides.
func (n *notShown) days(s *surface.Surface) {
	var all []*surface.Placed
	for i := range s.Trials {
		all = append(all, &s.Trials[i])
	}
	day, dayAt := groups.Levels(all, func(t *surface.Placed) string { return t.Day })
	cook, cookAt := groups.Levels(all, func(t *surface.Placed) string { return t.Cook })
	switch len(day) {
	case 0:
		n.add("days", "no day is logged, so whether results differ from day to day is not known")
	case 1:
		n.add("days", "all trials are of one day, so whether another day gives the same is not known")
	}
	if len(day) > 1 && len(cook) > 1 && (nested(dayAt, cookAt) || nested(cookAt, dayAt)) {
		n.add("day_and_cook", "each day had one cook or each cook one day, so a difference between cooks is not separated from one between days")
	}
}

// nested says whether every level of a goes with one level of b only.
func nested(a, b []int) bool {
	with := map[int]int{}
	for i := range a {
		if a[i] < 0 || b[i] < 0 {
			continue
		}
		if k, seen := with[a[i]]; seen && k != b[i] {
			return false
		}
		with[a[i]] = b[i]
	}
	return true
}

// holdHeadings is the different headings of columns of hold, units aside.
func holdHeadings(columns []trial.Column) (out []string) {
	var seen []string
	for _, c := range columns {
		if c.ReadAs != "hold" {
			continue
		}
		words := strings.FieldsFunc(strings.ToLower(c.Header), func(r rune) bool { return !unicode.IsLetter(r) })
		words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(minuteWords, w) })
		if key := strings.Join(words, " "); key != "" && !slices.Contains(seen, key) {
			seen = append(seen, key)
			out = append(out, c.Header)
		}
	}
	return out
}

// minuteWords are units a heading may carry.
var minuteWords = []string{"min", "mins", "minutes", "minute", "m", "h", "s", "sec", "seconds", "hours", "hour"}

// looks warns of chance findings where much was looked at.
func (n *notShown) looks(groups []result.GroupEffect, trends int) {
	tests := 0
	for _, e := range groups {
		if e.P != nil {
			tests++
		}
	}
	if tests+trends < 2 {
		return
	}
	sentence := fmt.Sprintf("%d trends and %d differences were looked at", trends, tests)
	if trends > 0 {
		sentence += ". Where a variable does nothing, about 5 of 100 such trends still look shown by chance and 15 more suggested"
	}
	if tests > 0 {
		sentence += ". Differences are adjusted for how many were looked at: of 100 results without any, about 5 still show one"
	}
	n.add("many_looks", sentence+". A lone finding is a hint to repeat")
}
