package analysis

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// oneAtATimeShare is the share of trials that differ from the usual mix in one
// variable at most, from which a log counts as made one thing at a time.
const oneAtATimeShare = 0.9

// cannotTell lists what these trials do not show, each in a plain sentence.
func (s *study) cannotTell() {
	add := func(kind, sentence string) {
		s.out.CannotTell = append(s.out.CannotTell, result.NotShown{Kind: kind, Sentence: sentence})
	}
	if s.HoldIsAGuess {
		add("extrapolation", "nobody watched a foam for as long as the hold asked for, so whether one holds that long is a guess beyond the watching")
	}
	if len(s.Vars) > 0 {
		add("extrapolation", "what a mix does outside the tested ranges of "+inWords(s.labels())+" is not known, and nothing is recommended there")
	}
	for _, o := range s.NotJudged {
		if o == result.HoldMinutes {
			add("not_logged", "how long a foam holds is not logged, so no chance here says anything of it")
		} else {
			add("not_logged", "what drains is not logged, so no chance here says anything of it")
		}
	}
	s.bounded(add)
	s.levelsTried(add)
	s.notTold(add)
	s.days(add)
	if kinds := s.holdHeadings(); len(kinds) > 1 {
		add("mixed_hold", "hold stands under different headings, "+inWords(quoted(kinds))+": if they mean different things, they are mixed here")
	}
	s.looks(add)
}

func (s *study) labels() (out []string) {
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

// bounded names results nobody read exactly, and repeats nobody made.
func (s *study) bounded(add func(kind, sentence string)) {
	names := map[result.Outcome]string{result.HoldMinutes: "hold", result.DrainedPercent: "drained"}
	for _, l := range s.links {
		if !works.IsLine(l.Outcome) {
			continue
		}
		c := belief.Count(l.Seen)
		switch {
		case c.Exact+c.Between > 0:
		case c.AtLeast > 0 && c.AtMost == 0:
			add("all_bounded", "every "+names[l.Outcome]+" is known only as at least so much, so what moves it and how much it scatters cannot be told")
		case c.AtMost > 0 && c.AtLeast == 0:
			add("all_bounded", "every "+names[l.Outcome]+" is known only as at most so much, so what moves it and how much it scatters cannot be told")
		}
	}
	for _, r := range s.out.Repeatability {
		if r.DF == 0 {
			add("no_repeats", "no formula was made twice with an exact "+names[result.Outcome(r.Result)]+", so how far apart two mixes of one formula fall cannot be told from what the variables do")
		}
	}
}

// levelsTried names variables tried at too few levels, or only one at a time.
func (s *study) levelsTried(add func(kind, sentence string)) {
	labels := map[string]string{surface.FatPercent: "fat", surface.EmulsifierPercent: "emulsifier", surface.EmulsifierGrams: "emulsifier", surface.BlendHLB: "blend HLB"}
	for _, a := range s.out.SetAside {
		if a.Value != nil {
			add("constant", labels[a.Name]+" was the same in every trial, so what it does cannot be told")
		}
	}
	trials := s.OnSurface()
	for v := range s.Vars {
		if s.steps(trials, v) < 3 {
			add("few_levels", s.Vars[v].Label+" was tried at two levels only, so whether the results bend or peak between them cannot be told")
		}
	}
	if len(s.Vars) > 1 && s.oneAtATime(trials) {
		add("one_at_a_time", "nearly every trial differs from the usual mix in one thing only, so how "+inWords(s.labels())+" act together cannot be told")
	}
}

// steps counts a variable's levels, up to 3.
func (s *study) steps(trials []*surface.Placed, v int) int {
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
func (s *study) oneAtATime(trials []*surface.Placed) bool {
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
func (s *study) notTold(add func(kind, sentence string)) {
	said := map[string]bool{}
	once := func(sentence string) {
		if !said[sentence] {
			said[sentence] = true
			add("confounded", sentence)
		}
	}
	for _, c := range s.out.Confounded {
		once(c.Sentence)
	}
	for _, e := range s.out.GroupEffects {
		if len(e.NotToldFrom) > 0 {
			once(e.Sentence)
		}
	}
}

// days names what a log without days, of one day, or of one cook a day hides.
func (s *study) days(add func(kind, sentence string)) {
	var all []*surface.Placed
	for i := range s.Trials {
		all = append(all, &s.Trials[i])
	}
	day, dayAt := levels(all, func(t *surface.Placed) string { return t.Day })
	cook, cookAt := levels(all, func(t *surface.Placed) string { return t.Cook })
	switch len(day) {
	case 0:
		add("days", "no day is logged, so whether results differ from day to day cannot be told")
	case 1:
		add("days", "all trials are of one day, so whether another day gives the same cannot be told")
	}
	if len(day) > 1 && len(cook) > 1 && (nested(dayAt, cookAt) || nested(cookAt, dayAt)) {
		add("day_and_cook", "each day had one cook or each cook one day, so a difference between cooks cannot be told from one between days")
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
func (s *study) holdHeadings() (out []string) {
	var seen []string
	for _, c := range s.log.Columns {
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
func (s *study) looks(add func(kind, sentence string)) {
	tests := 0
	for _, e := range s.out.GroupEffects {
		if e.P != nil {
			tests++
		}
	}
	if tests+len(s.out.Effects) > 1 {
		add("many_looks", fmt.Sprintf("%d trends and %d differences were looked at: of those that are not there, by chance about 1 trend in 5 and 1 difference in 20 looks likely, "+
			"1 trend in 20 and 1 difference in 50 clear; a lone finding is a hint to repeat", len(s.out.Effects), tests))
	}
}
