package grade

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// rulesInForce are the rules that decided, and where each stands.
func rulesInForce(r criteria.Rules) (out []graded.Rule) {
	yes := func(b bool) string {
		if b {
			return "yes"
		}
		return "no"
	}
	at := func(words ...string) string {
		for _, s := range r.Said {
			if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(say.Fold(s.Rule), w) }) {
				return s.At
			}
		}
		return "assumed"
	}
	add := func(rule, value string, words ...string) {
		out = append(out, graded.Rule{Rule: rule, Value: value, From: at(words...)})
	}
	add("fat percent within", say.Number(r.FatWithin)+" points", "fat", "within")
	add("emulsifier percent within", say.Number(r.EmulsifierWithin)+" points", "emulsifier", "within")
	add("blend HLB within", say.Number(r.HLBWithin), "hlb", "within")
	add("total within", say.Number(r.TotalWithin)+" %", "total", "within")
	for _, k := range []struct {
		of   map[string]ingredient.Range
		word string
	}{{r.Fats, "fat"}, {r.HLBs, "HLB"}} {
		for _, name := range slices.Sorted(maps.Keys(k.of)) {
			add(name+" "+k.word, say.Number(k.of[name].Low)+" to "+say.Number(k.of[name].High), strings.ToLower(k.word), say.Fold(name))
		}
	}
	add("percents are of, where the header does not say", "the "+r.Basis, "percents")
	add("control needed", yes(r.Control), "control")
	add("repeats needed", yes(r.Repeats), "repeat")
	add("least trials", fmt.Sprint(r.Trials), "trials")
	add("dates needed", yes(r.Dates), "date")
	add("units needed", yes(r.Units), "unit")
	add("safety line needed", yes(r.Safety), "safety")
	add("conclusion needed", yes(r.Conclusion), "conclusion")
	last := "none"
	if !r.Deadline.IsZero() {
		last = r.Deadline.Format("2006-01-02")
	}
	add("last day", last, "deadline")
	return out
}

// doubtfulIn are the trials of which some grams are a slip, or cannot be: what they were
// mixed of is not known.
func doubtfulIn(all []checked) map[*handin.Trial]bool {
	out := map[*handin.Trial]bool{}
	for _, k := range all {
		for _, x := range k.work.Trials() {
			out[x] = slices.ContainsFunc(x.Table.Weighed(), func(c *handin.Column) bool {
				at := c.Cells[x.Index].At
				_, meant := k.slips.Meant[at]
				return meant || k.slips.Not[at]
			})
		}
	}
	return out
}

// tasks pools the class by dish; rows that two students have in common count once, and a
// trial whose grams are doubtful widens no range.
func tasks(works []*handin.Work, second, doubtful map[*handin.Trial]bool) []graded.Task {
	by := map[string]*graded.Task{}
	var order []string
	for _, w := range works {
		mine := map[string]bool{}
		for _, t := range w.Tables {
			g := by[t.Task]
			if g == nil {
				g = &graded.Task{Task: t.Task, Untried: []string{}}
				by[t.Task] = g
				order = append(order, t.Task)
			}
			if !mine[t.Task] {
				mine[t.Task] = true
				g.Students++
			}
			for _, x := range t.Trials {
				if second[x] {
					g.Copies++
					continue
				}
				pool(g, x, !doubtful[x])
			}
		}
	}
	out := []graded.Task{}
	for _, name := range order {
		g := by[name]
		g.Untried = untried(g, works)
		out = append(out, *g)
	}
	slices.SortStableFunc(out, func(a, b graded.Task) int { return cmp.Compare(b.Students, a.Students) })
	return out
}

// pool counts one trial.
func pool(g *graded.Task, x *handin.Trial, mixKnown bool) {
	g.Trials++
	worked := x.CameOut != trial.No && x.Broke != trial.Yes && x.Aside == ""
	if worked {
		g.Worked++
	}
	for _, v := range []struct {
		value      *float64
		all, works **graded.Span
	}{{x.FatPercent, &g.Fat, &g.Working}, {x.EmulsifierPercent, &g.Emuls, &g.WorkEm}, {x.BlendHLB, &g.HLB, &g.WorkHLB}} {
		if v.value == nil || x.Aside != "" || !mixKnown {
			continue
		}
		widen(v.all, *v.value)
		if worked {
			widen(v.works, *v.value)
		}
	}
}

func widen(s **graded.Span, v float64) {
	if *s == nil {
		*s = &graded.Span{Low: v, High: v}
		return
	}
	(*s).Low, (*s).High = min((*s).Low, v), max((*s).High, v)
}

// untried names the stretches of ten points of fat, and of two of HLB, that nobody
// tried.
func untried(g *graded.Task, works []*handin.Work) (out []string) {
	out = []string{}
	for _, k := range []struct {
		name, unit       string
		low, high, width float64
		of               func(*handin.Trial) *float64
	}{{"fat", " %", 20, 70, 10, func(x *handin.Trial) *float64 { return x.FatPercent }}, {"HLB", "", 4, 14, 2, func(x *handin.Trial) *float64 { return x.BlendHLB }}} {
		tried, any := map[int]bool{}, false
		for _, w := range works {
			for _, t := range w.Tables {
				for _, x := range t.Trials {
					if v := k.of(x); v != nil && t.Task == g.Task {
						tried[int(math.Floor((*v-k.low)/k.width))], any = true, true
					}
				}
			}
		}
		if !any {
			continue
		}
		steps := int(math.Round((k.high - k.low) / k.width))
		for from := 0; from < steps; from++ {
			to := from
			for to < steps && !tried[to] {
				to++
			}
			if to > from {
				out = append(out, fmt.Sprintf("%s from %s to %s%s", k.name, say.Number(k.low+k.width*float64(from)), say.Number(k.low+k.width*float64(to)), k.unit))
				from = to
			}
		}
	}
	return out
}

// commonest counts the kinds of certain mistakes by students.
func commonest(students []graded.Student) []graded.Common {
	by := map[string]*graded.Common{}
	for _, s := range students {
		mine := map[string]bool{}
		for _, f := range s.Findings {
			if !f.Certain {
				continue
			}
			c := by[f.Kind]
			if c == nil {
				c = &graded.Common{Kind: f.Kind}
				by[f.Kind] = c
			}
			c.Cells += len(f.Cells)
			if !mine[f.Kind] {
				mine[f.Kind] = true
				c.Students++
			}
		}
	}
	out := []graded.Common{}
	for _, k := range slices.Sorted(maps.Keys(by)) {
		out = append(out, *by[k])
	}
	slices.SortStableFunc(out, func(a, b graded.Common) int { return b.Students - a.Students })
	return out
}
